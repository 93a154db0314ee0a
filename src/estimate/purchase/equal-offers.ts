/**
 * Which of several offers that serve equally well is bought: the one by which all pieces that they serve for cost least, in whole
 * sticks, spares, bundles and bulk prices included. Groups with the same offers to choose from choose together, for they share sticks.
 */
import type { LumberOffer } from "../../catalog/offers/lumber.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { Decimal, decimal } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";
import { type CuttingRules, decidePrices, sticksOf, triedQuestion } from "./lumber.js";
import type { StockProblem } from "./stock/problem.js";
import { planStock } from "./stock-plan.js";
import { equalOffers, type NothingSold, type Substitution } from "./substitution.js";

/** Counted work of an order that is only tried: proves most of a few dozen pieces. */
const WORK = 20_000;

/** What is bought for a group out of some offers. */
export type Substitute = (group: PieceGroup, lumber: readonly LumberOffer[]) => Substitution | NothingSold;

/** What is bought for a group, and what would serve as well. */
export interface Sold {
  readonly substitution: Substitution | NothingSold;
  /** As each of the equal offers, the one that is chosen among them. */
  readonly rivals: readonly Substitution[];
}

/** What is bought for each group, in their order. */
export function substitutions(
  rules: CuttingRules,
  groups: readonly PieceGroup[],
  lumber: readonly LumberOffer[],
  substitute: Substitute,
): readonly Sold[] {
  const { sheet } = rules.pricing;
  const serving = groups.map((group) => equalOffers(sheet, group, { lumber, endTrim: rules.endTrim }));
  const keys = serving.map((offers) => offers.map(({ name }) => name).join("\n"));
  const chosen = new Map<string, readonly LumberOffer[]>();
  for (const [i, offers] of serving.entries()) {
    const key = keys[i] as string;
    if (chosen.has(key)) continue;
    const alike = groups.filter((_, j) => keys[j] === key);
    chosen.set(key, offers.length < 2 ? lumber : leastCostly(rules, alike, offers, substitute));
  }
  const asOffers = (group: PieceGroup, offers: readonly LumberOffer[]) =>
    offers.flatMap((offer) => {
      const substitution = substitute(group, [offer]);
      return "offer" in substitution ? [substitution] : [];
    });
  return groups.map((group, i) => ({
    substitution: substitute(group, chosen.get(keys[i] as string) as readonly LumberOffer[]),
    rivals: asOffers(group, serving[i] as readonly LumberOffer[]),
  }));
}

/** The one that leaves fewest pieces out and costs least, of equals the first; all of them where none has a price. */
function leastCostly(
  rules: CuttingRules,
  groups: readonly PieceGroup[],
  offers: readonly LumberOffer[],
  substitute: Substitute,
): readonly LumberOffer[] {
  const tried = offers.flatMap((offer) => tryOrder(rules, groups, offer, substitute) ?? []);
  const [one, ...others] = tried;
  if (!one) return offers;
  const best = others.reduce((low, order) => (isLess(order, low) ? order : low), one);
  decidePrices(rules, best.offer);
  return [best.offer];
}

/** An order of one offer for all pieces of some groups. */
interface Order {
  readonly offer: LumberOffer;
  readonly short: number;
  readonly cost: Decimal;
}

const isLess = (a: Order, b: Order): boolean => (a.short === b.short ? a.cost.lt(b.cost) : a.short < b.short);

/** @returns undefined where it has no price. */
function tryOrder(
  rules: CuttingRules,
  groups: readonly PieceGroup[],
  offer: LumberOffer,
  substitute: Substitute,
): Order | undefined {
  const bought = groups.flatMap((group) => {
    const substitution = substitute(group, [offer]);
    const count = rules.pricing.sheet.decideWhole(group.count);
    return "offer" in substitution ? [{ substitution, count }] : [];
  });
  const { problem, priced, moneyDigits } = triedQuestion(rules, offer, bought);
  if (!priced) return undefined;
  const { costMinor, short } = planStock(withSpares(rules, problem), { work: WORK });
  return {
    offer,
    short: short.reduce((sum, { count }) => sum + count, 0),
    cost: decimal(costMinor).dividedBy(Decimal.pow(10, moneyDigits)),
  };
}

/** The order with its spares as pieces: so many sticks as long as the longest that it cuts, as they are bought after all. */
function withSpares({ pricing, spoiled }: CuttingRules, problem: StockProblem): StockProblem {
  const cut = [...sticksOf(planStock(problem, { work: WORK }).plan)].flatMap(([name, count]) => {
    const stock = problem.stocks.find((one) => one.name === name);
    return stock && !stock.owned ? [{ length: stock.length, count }] : [];
  });
  const sticks = cut.reduce((sum, { count }) => sum + count, 0);
  const spares = wholeNumber(pricing.sheet.decide(spoiled).times(sticks).ceil());
  if (spares === 0) return problem;
  const longest = cut.reduce((most, { length }) => Math.max(most, length), 0);
  const spare = { name: "spare sticks", length: longest - problem.endTrim, count: spares };
  return { ...problem, pieces: [...problem.pieces, spare] };
}
