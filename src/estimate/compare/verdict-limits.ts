/** What the verdict says of the user's limits, and of how much better any mix could be. */
import { toQuantity } from "../../catalog/reading.js";
import type { Basis } from "../basis.js";
import { isPinned } from "../piece-price.js";
import { Decimal, ONE } from "../quantity/decimal.js";
import { inUnit, type Quantity } from "../quantity/quantity.js";
import { moneyText } from "../quantity/text.js";
import { aside } from "../sheet/aside.js";
import type { SlopeVerdict } from "../takeoff/slope-verdict.js";
import type { Decision } from "./decision.js";
import type { MixStanding } from "./mix-search.js";
import type { RouteCells } from "./route.js";
import type { LeftOpen } from "./verdict-pins.js";

/** The comparison, what is proven of all mixes, and whether the code allows the covering at its slope. */
export type Judged = Decision & {
  readonly proven?: { readonly least: Decimal; readonly gap: Decimal } | undefined;
  readonly slope?: SlopeVerdict | undefined;
  readonly standing?: MixStanding | undefined;
  readonly open?: LeftOpen | undefined;
};

/** Whether the mix keeps within what the user is ready to spend and to work; told where it does not, and where it does. */
export function limits({ request, pricing }: Basis, { cash, hours: worked }: RouteCells): string[] {
  const { mostCash, mostHours } = request.options ?? {};
  const told = (limit: Quantity, value: Decimal, words: string) =>
    value.lte(limit.value)
      ? `It keeps within your limit of ${words}.`
      : `It does not keep within your limit of ${words}: of the mixes tried none does, and this one comes nearest.`;
  const money = mostCash && toQuantity(mostCash, pricing.currency);
  const time = mostHours && toQuantity(mostHours, "person-h");
  return [
    ...(money ? [told(money, aside(cash), moneyText(money.value, pricing.currency))] : []),
    ...(time
      ? [told(time, aside(worked), `${inUnit(time, "person-h").toDecimalPlaces(2).toFixed()} person-hours`)]
      : []),
  ];
}

/** How much better any mix could be: proven, so an upper end. */
export function proof(basis: Basis, { proven }: Judged): string[] {
  if (!proven) return [];
  const { pricing } = basis;
  // The gap is a share of what this mix comes to; how far it is above the least is a share of that.
  const share = proven.gap.dividedBy(ONE.minus(proven.gap)).times(100).toDecimalPlaces(1, Decimal.ROUND_UP).toFixed();
  const least = moneyText(proven.least, pricing.currency);
  const mixes = basis.groups.some(isPinned) ? "mix that mills what you ask for" : "mix of milling and buying";
  return [
    `No ${mixes} comes to less than ${least}, your hours counted: this one is at most ${share} % above the best there can be.`,
  ];
}
