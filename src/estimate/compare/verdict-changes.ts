/** What would turn the verdict round: an hour worth more or less, dearer lumber, mixed sizes, the building office. */
import type { Basis } from "../basis.js";
import type { Decimal } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { ComparedRoutes, Comparison, Decision } from "./decision.js";
import type { HourRange } from "./envelope.js";
import { forWantOfPrice } from "./unpriced.js";
import type { Judged } from "./verdict-limits.js";

/** What would make another route the best, each in one sentence. */
export function changes(basis: Basis, routes: ComparedRoutes, decision: Judged): string[] {
  const { mix } = routes;
  const ungraded = (basis.request.site?.ungradedAccepted ?? "unknown") === "unknown";
  const structural = basis.groups.some(({ group }) => group.rules.structural && mix.plan.sawn.has(group.name));
  const office =
    ungraded && structural
      ? ["Where the building office refuses ungraded lumber, the structural pieces must be bought."]
      : [];
  if (forWantOfPrice(basis).length > 0)
    return ["Prices for what is bought: put them in, and the two ways can be compared.", ...office];
  return [
    ...hourChanges(basis, routes, decision),
    ...lumberChange(basis, routes, decision),
    ...sizesChange(basis, decision),
    ...office,
  ];
}

/**
 * The values of an hour between which this mix is the best of all tried, and between which milling stops to pay: against this
 * mix, and against all that were tried.
 */
function hourChanges({ pricing, labor }: Basis, { mix, buy }: ComparedRoutes, decision: Judged): string[] {
  const { standing } = decision;
  const money = (value: Decimal) => moneyText(value, pricing.currency);
  if (mix === buy) {
    const mixes = standing?.buying?.from;
    const mill = pays(decision.mill) ? aside(decision.mill.payPerHour) : undefined;
    return [
      ...(mixes?.gt(0) && !(mill && money(mill) === money(mixes))
        ? [
            `If an hour is worth less than ${money(mixes)} to you, milling some of it costs less: the best mix of those tried.`,
          ]
        : []),
      ...(mill
        ? [`If an hour is worth less than ${money(mill)} to you, even milling all that the logs serve costs less.`]
        : []),
    ];
  }
  const { from, to } = rangeOf(standing?.hour, decision, aside(labor.valueOfHour));
  const least = from?.gt(0) ? ` more than ${money(from)}` : "";
  const most = to ? `${least ? " and" : ""} less than ${money(to)}` : "";
  const best = `Of all mixes tried this is the best as long as an hour is worth${least}${most} to you`;
  const range = least || most ? [`${best}.`] : [];
  if (!pays(decision.mix)) return range;
  const even = money(aside(decision.mix.payPerHour));
  const more = standing?.frontier ? "" : " (a search of the mixes between may find one that pays for longer)";
  const stop = standing?.buying && money(standing.buying.from);
  if (to && stop === even && money(to) === even) return [`${best}; above that, buying everything is better than any.`];
  if (stop && stop !== even)
    return [
      ...range,
      `Milling stops paying where an hour is worth between ${even} and ${stop} to you: above the first, buying everything costs less than this mix; above the second, less than any mix tried${more}.`,
    ];
  const than = stop ? " than any mix tried" : "";
  return [
    ...range,
    `If an hour is worth more than ${even} to you, buying everything costs less${than}${stop ? more : ""}.`,
  ];
}

/**
 * Where buying everything is ruled out by what is pinned it is not among the mixes, and yet it ends the range of this one. There is
 * none to tell where limits chose a mix that is not the best at this value of an hour.
 */
function rangeOf(hour: HourRange | undefined, { mix }: Judged, own: Decimal): Partial<HourRange> {
  if (!hour || own.lt(hour.from) || (hour.to && own.gt(hour.to))) return {};
  const even = pays(mix) ? aside(mix.payPerHour) : undefined;
  const to = even && (!hour.to || even.lt(hour.to)) ? even : hour.to;
  return { from: hour.from, to };
}

const pays = (one: Comparison | undefined): one is Comparison =>
  one !== undefined && aside(one.extraHours).gt(0) && aside(one.payPerHour).gt(0);

/** What a plan would save that mixes sawn and bought pieces of unlike measures. */
function sizesChange({ pricing }: Basis, { standing }: Judged): string[] {
  if (!standing?.mixedSizes) return [];
  return [
    `Sawn and bought pieces of unlike measures side by side in one run would save ${moneyText(standing.mixedSizes, pricing.currency)} more, your hours counted: allow mixed sizes.`,
  ];
}

const MEASURES = {
  nominal: "by its nominal size",
  actual: "by its actual size",
  both: "by the size that it is sold by, nominal of dressed boards and actual of full-sawn ones",
} as const;

/** At what price of bought wood the two ends cost the same, by the sections sold and tax apart, and what it costs now. */
function lumberChange({ pricing }: Basis, { mill, mix }: ComparedRoutes, { breakEven }: Decision): string[] {
  if (!breakEven || !mill || mix === mill || aside(breakEven.price).lte(0)) return [];
  const [price, now] = [breakEven.price, breakEven.now].map((cell) =>
    moneyText(asideIn(cell, cell.display.symbol), pricing.currency),
  );
  const volume = breakEven.price.display.symbol.endsWith("/bf") ? "board foot" : "cubic metre";
  const each = `a ${volume} ${MEASURES[breakEven.measure]}`;
  return [
    `Milling all that the logs serve costs less than buying everything where bought wood is above ${price} ${each}, before tax; what it would replace costs ${now} now.`,
  ];
}
