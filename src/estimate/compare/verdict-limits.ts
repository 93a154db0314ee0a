/** What the verdict says of the user's limits, and of how much better any mix could be. */
import { toQuantity } from "../../catalog/reading.js";
import type { Basis } from "../basis.js";
import { isPinned } from "../piece-price.js";
import { Decimal, ONE } from "../quantity/decimal.js";
import { inUnit } from "../quantity/quantity.js";
import { moneyText } from "../quantity/text.js";
import { aside } from "../sheet/aside.js";
import type { SlopeVerdict } from "../takeoff/slope-verdict.js";
import type { Decision } from "./decision.js";
import type { MixStanding } from "./envelope.js";
import { keptUpTo } from "./mix-point.js";
import type { RouteCells } from "./route.js";
import type { LeftOpen } from "./verdict-pins.js";

/** The comparison, what is proven of all mixes, and whether the code allows the covering at its slope. */
export type Judged = Decision & {
  readonly proven?: { readonly least: Decimal; readonly gap: Decimal } | undefined;
  readonly slope?: SlopeVerdict | undefined;
  readonly standing?: MixStanding | undefined;
  readonly open?: LeftOpen | undefined;
};

/**
 * Whether the mix keeps within what the user is ready to spend and to work. Where no mix found keeps a limit, what can be had; where
 * none keeps both, what each of them leaves of the other.
 */
export function limits(
  { request, pricing, groups }: Basis,
  { cash, hours }: RouteCells,
  { standing }: Judged,
): string[] {
  const { mostCash, mostHours } = request.options ?? {};
  const money = (value: Decimal): string => moneyText(value, pricing.currency);
  const time = (value: Decimal): string => {
    const inHours = inUnit({ value, unit: hours.unit }, "person-h");
    return `${inHours.toDecimalPlaces(2, Decimal.ROUND_UP).toFixed()} person-hours`;
  };
  const reach = standing?.reach;
  const limit = mostCash ? toQuantity(mostCash, pricing.currency).value : undefined;
  const hourLimit = mostHours ? toQuantity(mostHours, "person-h").value : undefined;
  const asked = [
    ...(limit ? [{ limit, upTo: limit, value: aside(cash), least: reach?.cash, words: money }] : []),
    ...(hourLimit
      ? [{ limit: hourLimit, upTo: keptUpTo(hourLimit), value: aside(hours), least: reach?.hours, words: time }]
      : []),
  ];
  const reachable = asked.every((one) => one.least?.lte(one.upTo));
  const broken = asked.some((one) => one.value.gt(one.upTo));
  const { hoursWithinCash, cashWithinHours } = reach ?? {};
  const both =
    asked.length === 2 && reachable && broken && hoursWithinCash && cashWithinHours
      ? [
          `No mix found keeps both of your limits; this one comes nearest. Within the cash it takes ${time(hoursWithinCash)} at the least, within the hours it costs ${money(cashWithinHours)} at the least.`,
        ]
      : [];
  const mix = groups.some(isPinned) ? "no mix found that mills what you ask for does" : "no mix found does";
  return [...both, ...asked.map((one) => limitInWords(one, mix))];
}

/** One limit, and what the mix comes to beside it. */
interface Asked {
  readonly limit: Decimal;
  /** What is shown as no more keeps it, too. */
  readonly upTo: Decimal;
  readonly value: Decimal;
  /** The least that was found of all mixes; undefined where they were not searched. */
  readonly least: Decimal | undefined;
  readonly words: (value: Decimal) => string;
}

function limitInWords({ limit, upTo, value, least, words }: Asked, none: string): string {
  const own = words(limit);
  if (value.lte(upTo)) return `It keeps within your limit of ${own}.`;
  if (least?.gt(upTo)) {
    const nearest = value.eq(least) ? "Of the mixes tried this one comes nearest, at" : "The least found is";
    const more = least.minus(limit);
    // In per cent as long as that says how near it is.
    const share = more.lt(limit)
      ? ` (${more.dividedBy(limit).times(100).toDecimalPlaces(1, Decimal.ROUND_UP).toFixed()} %)`
      : "";
    return `It does not keep within your limit of ${own}: ${none}. ${nearest} ${words(least)}, ${words(more)}${share} more.`;
  }
  return `It does not keep within your limit of ${own}: it takes ${words(value.minus(limit))} more.`;
}

/** How much better any mix could be: proven, so an upper end. */
export function proof(basis: Basis, { proven }: Judged): string[] {
  if (!proven) return [];
  const { pricing, request } = basis;
  const limited = request.options?.mostCash !== undefined || request.options?.mostHours !== undefined;
  // The gap is a share of what this mix comes to; how far it is above the least is a share of that.
  const share = proven.gap.dividedBy(ONE.minus(proven.gap)).times(100).toDecimalPlaces(1, Decimal.ROUND_UP).toFixed();
  const least = moneyText(proven.least, pricing.currency);
  const mixes = basis.groups.some(isPinned) ? "mix that mills what you ask for" : "mix of milling and buying";
  return [
    `No ${mixes} comes to less than ${least}, your hours counted${limited ? " and limits left aside" : ""}: this one is at most ${share} % above the best there can be.`,
  ];
}
