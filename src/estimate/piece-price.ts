/** What buying a piece counts for in a sawing plan: a guess for the optimiser alone, that reaches no printed figure. */
import type { Basis } from "./basis.js";
import type { GroupBasis } from "./group-basis.js";
import { type StockQuestion, stockQuestions } from "./purchase/lumber.js";
import { Decimal, decimal, ZERO } from "./quantity/decimal.js";

/** Where nothing is known of the price, milling is worth a good deal. Assumption. */
export const UNPRICED = decimal(1000);
/** What is to be milled at any price is worth so many times what it costs. Assumption: no sawing costs as much. */
const DEAR = decimal(20);
/** What the user pins to the mill goes before all that is only dear. Assumption: no log holds thousands of others in its place. */
const PINNED = decimal(10_000);

/** Whether the user asks for a group from the logs, and they may serve it. */
export const isPinned = ({ group, millable }: GroupBasis): boolean =>
  millable !== undefined && group.rules.source === "mill";

/** What a piece of a group costs, by the length of the piece and the cheapest length sold; `UNPRICED` where nobody knows. */
export function roughPrice({ cutting }: Basis, { substitution, group }: GroupBasis): Decimal {
  if ("add" in substitution) return UNPRICED;
  const { problem, priced, moneyDigits } = stockQuestions(cutting, [{ substitution, count: 1 }])[0] as StockQuestion;
  const piece = problem.pieces.find(({ name }) => name === group.name)?.length ?? 0;
  if (!priced || problem.stocks.length === 0) return UNPRICED;
  const rates = problem.stocks
    .filter(({ owned }) => !owned)
    .map(({ priceMinor, length }) => decimal(priceMinor).dividedBy(length));
  if (rates.length === 0) return UNPRICED;
  return Decimal.min(...rates)
    .times(piece)
    .dividedBy(decimal(10).pow(moneyDigits).times(substitution.abreast));
}

/** The price at which the dearest of what is milled at any price comes first. */
export const dearPrice = (price: Decimal): Decimal => (price.gt(0) ? price.times(DEAR) : UNPRICED);

/** What a piece that is to come from the logs is worth beside others that are. */
const known = (price: Decimal): Decimal => (price.gt(0) ? price : UNPRICED);

/** The price at which pieces of a pinned group come before all others; where the logs lack some, it is what costs least. */
export const pinnedPrice = (price: Decimal): Decimal => known(price).times(PINNED);

/** What a route buys of groups that are pinned to the mill, in money: by it the plan is chosen that keeps most to the pins. */
export function boughtOfPins(
  basis: Basis,
  {
    milled,
    sawing,
  }: {
    readonly milled: ReadonlySet<string>;
    readonly sawing: { readonly plan: { readonly buy: Readonly<Record<string, number>> } } | undefined;
  },
): Decimal {
  return basis.groups.filter(isPinned).reduce((sum, one) => {
    const { name, count } = one.group;
    const bought = sawing && milled.has(name) ? (sawing.plan.buy[name] ?? 0) : basis.sheet.decideWhole(count);
    return sum.plus(known(roughPrice(basis, one)).times(bought));
  }, ZERO);
}
