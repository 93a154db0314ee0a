/** What would turn the verdict round: an hour worth more or less, dearer lumber, mixed sizes, the building office. */
import type { Basis } from "../basis.js";
import type { Decimal } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { ComparedRoutes, Comparison, Decision } from "./decision.js";
import { type HourRange, tieWage } from "./envelope.js";
import type { RouteCells } from "./route.js";
import { forWantOfPrice } from "./unpriced.js";
import { dryingChange } from "./verdict-drying.js";
import type { Judged } from "./verdict-limits.js";
import { oversizeChange } from "./verdict-oversize.js";

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
    ...dryingChange(basis, mix),
    ...hourChanges(basis, routes, decision),
    ...lumberChange(basis, routes, decision),
    ...oversizeChange(basis, routes.buy),
    ...sizesChange(basis, decision),
    ...office,
  ];
}

/**
 * For which values of an hour this mix is the best of all that were searched for them, or, where none were, at which each other way
 * of the answer costs less than it; and where milling stops to pay: against this mix, and against all that were tried.
 */
function hourChanges(basis: Basis, routes: ComparedRoutes, decision: Judged): string[] {
  const { standing } = decision;
  if (routes.mix === routes.buy) return towardsMilling(basis, decision);
  const money = moneyOf(basis);
  const best = standing?.frontier ? stretch(basis, decision) : undefined;
  const others = standing?.frontier ? [] : otherWays(basis, routes);
  const range = best
    ? [`${best.words}; at another value than yours, a new estimate tries other mixes and may find a better one.`]
    : others;
  if (!pays(decision.mix)) return range;
  const even = money(aside(decision.mix.payPerHour));
  const stop = standing?.buying && money(standing.buying.from);
  if (best?.to && stop === even && money(best.to) === even)
    return [`${best.words}; above that, buying everything is better than any.`];
  if (stop && stop !== even)
    return [
      ...range,
      `Milling stops paying where an hour is worth between ${even} and ${stop} to you: above the first, buying everything costs less than this mix; above the second, less than any mix tried${unsearched(decision)}.`,
    ];
  const than = stop ? ` than any mix tried${unsearched(decision)}` : "";
  return [...range, `If an hour is worth more than ${even} to you, buying everything costs less${than}.`];
}

const moneyOf =
  ({ pricing }: Pick<Basis, "pricing">) =>
  (value: Decimal): string =>
    moneyText(value, pricing.currency);

const unsearched = ({ standing }: Judged): string =>
  standing?.frontier ? "" : " (a search of the mixes between may find one that pays for longer)";

/** Below which value of an hour some mix is better than buying everything, and below which even all milled. */
function towardsMilling(basis: Basis, decision: Judged): string[] {
  const money = moneyOf(basis);
  const mixes = decision.standing?.buying?.from;
  const mill = pays(decision.mill) ? aside(decision.mill.payPerHour) : undefined;
  const some =
    mixes?.gt(0) && !(mill && money(mill) === money(mixes))
      ? [
          `If an hour is worth less than ${money(mixes)} to you, milling some of it costs less: the best mix of those tried${unsearched(decision)}.`,
        ]
      : [];
  const all = mill
    ? [`If an hour is worth less than ${money(mill)} to you, even milling all that the logs serve costs less.`]
    : [];
  return [...some, ...all];
}

/** For which values of an hour no mix that was searched is better; undefined where for all of them. */
function stretch(
  basis: Basis,
  decision: Judged,
): { readonly words: string; readonly to: Decimal | undefined } | undefined {
  const money = moneyOf(basis);
  const { from, to } = rangeOf(decision.standing?.hour, decision, aside(basis.labor.valueOfHour));
  const least = from?.gt(0) ? ` more than ${money(from)}` : "";
  const most = to ? `${least ? " and" : ""} less than ${money(to)}` : "";
  if (!least && !most) return undefined;
  return { words: `Of all mixes tried this is the best as long as an hour is worth${least}${most} to you`, to };
}

/** At which values of an hour milling all of it, by oneself or hired, costs less than this mix. */
function otherWays(basis: Basis, { mill, hired, mix }: ComparedRoutes): string[] {
  const own = aside(basis.labor.valueOfHour);
  const point = ({ cash, hours }: RouteCells) => ({ cash: aside(cash), hours: aside(hours) });
  const now = point(mix);
  return [
    { way: mill, words: "milling all that the logs serve" },
    { way: hired, words: "a hired sawyer milling all that the logs serve" },
  ].flatMap(({ way, words }) => {
    if (!way || way === mix) return [];
    const other = point(way);
    const slower = other.hours.gt(now.hours);
    // What costs more and takes longer is never the better one.
    if (slower ? other.cash.gte(now.cash) : other.cash.lte(now.cash) || other.hours.eq(now.hours)) return [];
    const tie = slower ? tieWage(other, now) : tieWage(now, other);
    if (slower ? tie.gt(own) : tie.lt(own)) return [];
    return [
      `If an hour is worth ${slower ? "less" : "more"} than ${moneyOf(basis)(tie)} to you, ${words} costs less than this mix; another mix may cost less still, which a search of the mixes between tells.`,
    ];
  });
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
    `Milling all that the logs serve costs less than buying everything, your hours counted, where bought wood is above ${price} ${each}, before tax; what it would replace costs ${now} now.`,
  ];
}
