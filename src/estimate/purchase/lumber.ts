/**
 * Bought lumber of one route: which offer serves which group, how its stock lengths are cut, and what they cost.
 *
 * Groups that take the same offer share its stock plan. Lengths are whole steps: 1/64 in, or 0.1 mm.
 */
import { sameSection } from "../../catalog/look-up.js";
import { availableOf, type LumberOffer, pricedLengthsOf } from "../../catalog/offers/lumber.js";
import { toQuantity, toSection } from "../../catalog/reading.js";
import { servesAs } from "../../catalog/species.js";
import { type Decimal, decimal } from "../quantity/decimal.js";
import type { Quantity } from "../quantity/quantity.js";
import { type MeasureSystem, marked, onTape } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import { wholeNumber } from "../quantity/whole.js";
import type { BoardsAtHand } from "../request/at-hand.js";
import { aside } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { lengthSlugs, stockPrices } from "./board-prices.js";
import { type LevelPrice, levelCells, levelsInForce, type Prices } from "./bulk.js";
import type { Pricing } from "./line.js";
import { wholeMoney } from "./money.js";
import type { PlanOrder } from "./planned-once.js";
import { leastPrice, type StockCut, type StockLength, type StockProblem } from "./stock/problem.js";
import type { TellSteps } from "./stock-judge.js";
import type { Substitution } from "./substitution.js";

/** Pieces of a group that a route buys. */
export interface BoughtPieces {
  readonly substitution: Substitution;
  readonly count: number;
}

/** Pieces as they are cut to length, before each is ripped into several. */
function toCrosscut({ substitution: { abreast }, count }: BoughtPieces): number {
  const odd = count % abreast;
  return (count - odd) / abreast + (odd > 0 ? 1 : 0);
}

/** Pieces that are ripped side by side out of one that the plan cuts. */
export const abreastOf = ({ bought }: Pick<StockQuestion, "bought">, group: string): number =>
  (bought.get(group) as BoughtPieces).substitution.abreast;

/** A group as it stands on a stick: `2 × slats` where two are ripped out of each length. */
export function groupOnStick(question: Pick<StockQuestion, "bought">, group: string): string {
  const abreast = abreastOf(question, group);
  return abreast > 1 ? `${abreast} × ${group}` : group;
}

/** One offer's stock problem in a route. */
export interface StockQuestion {
  /** Whose steps the problem counts in. */
  readonly system: MeasureSystem;
  readonly offer: LumberOffer;
  readonly problem: StockProblem;
  /** What is bought, by its group: the problem counts pieces before they are ripped into several. */
  readonly bought: ReadonlyMap<string, BoughtPieces>;
  /** Stock length by the name it has in the problem. */
  readonly lengths: ReadonlyMap<string, Decimal>;
  /** Prices of one by the name of its length; the plan reckoned with what the user puts in their place. */
  readonly prices: ReadonlyMap<string, Prices>;
  /** True when some length has a price; otherwise the plan buys the least length. */
  readonly priced: boolean;
  /** The problem's money is whole in units of 10^−this of the currency. */
  readonly moneyDigits: number;
}

const STEP_MM: Readonly<Record<MeasureSystem, Decimal>> = {
  "inch-pound": decimal("25.4").dividedBy(64),
  metric: decimal("0.1"),
};

/** Whole steps of a stock problem in millimetres. */
export const stepsInMm = (system: MeasureSystem, steps: number): Decimal => STEP_MM[system].times(steps);

/** A length in whole steps as a tape shows it, to the mark that still holds. */
export const stepsOnTape = (system: MeasureSystem): TellSteps => {
  const display = unit(system === "metric" ? "mm" : "ft");
  return (steps, limit) => onTape({ value: stepsInMm(system, steps), unit: unit("mm") }, display, limit);
};

/** A length in whole steps of stock problems; what is wanted up, what is sold down. */
export const stepsOf = (system: MeasureSystem, length: Decimal, way: "up" | "down"): number => {
  const steps = length.dividedBy(STEP_MM[system]).toDecimalPlaces(6);
  return wholeNumber(way === "up" ? steps.ceil() : steps.floor());
};

/** What is lost where pieces are cut from stock lengths, and the grid that lengths are counted in. */
export interface CuttingRules {
  readonly pricing: Pricing;
  readonly system: MeasureSystem;
  readonly kerf: Cell;
  readonly endTrim: Cell;
  /** Share of all sticks of an offer that is set aside for defects. */
  readonly spoiled: Cell;
  /** Plans orders that are only tried, each once. */
  readonly tried: PlanOrder;
  readonly atHand: BoardsAtHand;
}

/** The stock problems of a route, one an offer, in the order of the offers' names; the prices of what is bought are laid. */
export const stockQuestions = (rules: CuttingRules, bought: readonly BoughtPieces[]): StockQuestion[] =>
  questionsOf(rules, bought, (offer) => shelfOf(rules, offer));

function questionsOf(rules: CuttingRules, bought: readonly BoughtPieces[], shelf: Shelves): StockQuestion[] {
  const offers = new Map(bought.map(({ substitution: { offer } }) => [offer.name, offer]));
  const orders = [...offers.values()]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((offer) => ({ offer, pieces: bought.filter((one) => one.substitution.offer === offer) }));
  const given = boardsGiven(rules, orders, shelf);
  return orders.map(({ offer, pieces }) =>
    stockQuestion(rules, offer, pieces, ownedOf(rules.system, given.get(offer) ?? []), shelf(offer)),
  );
}

interface Order {
  readonly offer: LumberOffer;
  readonly pieces: readonly BoughtPieces[];
}

/**
 * Boards at hand by the offer that they serve for. A board that several are like saves most where wood is dearest by length, so
 * that one takes it, but no more boards than it has pieces that fit; the rest go to the next.
 */
function boardsGiven(
  rules: CuttingRules,
  orders: readonly Order[],
  shelf: Shelves,
): ReadonlyMap<LumberOffer, BoardsAtHand> {
  const { atHand, pricing, endTrim } = rules;
  const given = new Map<LumberOffer, BoardsAtHand>();
  if (atHand.length === 0) return given;
  const dearest = orders
    .map((order) => ({ ...order, rate: rateOf(shelf(order.offer)) }))
    .sort((a, b) => b.rate.cmp(a.rate));
  let left = atHand;
  for (const { offer, pieces } of dearest) {
    const taken: BoardsAtHand = [];
    const rest: BoardsAtHand = [];
    for (const board of left) {
      const long = toQuantity(board.length, "ft").value.minus(pricing.sheet.decide(endTrim));
      const fitting = pieces.filter(({ substitution: { group } }) => pricing.sheet.decide(group.length).lte(long));
      const wanted = fitting.reduce((sum, one) => sum + toCrosscut(one), 0);
      const count = isLike(board, offer) ? Math.min(board.count, wanted) : 0;
      if (count > 0) taken.push({ ...board, count });
      if (count < board.count) rest.push({ ...board, count: board.count - count });
    }
    given.set(offer, taken);
    left = rest;
  }
  return given;
}

/** What its cheapest length costs by the millimetre. */
function rateOf({ stocks, moneyDigits }: Shelf): Decimal {
  const rates = stocks.map((stock) => decimal(leastPrice(stock)).dividedBy(Math.max(1, stock.length)));
  const least = rates.reduce<Decimal | undefined>((low, rate) => (low?.lte(rate) ? low : rate), undefined);
  return (least ?? decimal(0)).dividedBy(decimal(10).pow(moneyDigits));
}

/**
 * Of the section that is sold or measured, of a wood that serves as the one that is sold, treated as well as it is, and with
 * its faces where the user tells how they are.
 */
export function isLike(
  { section, wood, treatment = "none", surface }: BoardsAtHand[number],
  offer: LumberOffer,
): boolean {
  const own = toSection(section);
  const alike = sameSection(own, offer.section) || sameSection(own, offer.actual);
  const treated =
    treatment === offer.treatment || (treatment === "ground-contact" && offer.treatment === "above-ground");
  return (
    alike &&
    treated &&
    (surface === undefined || surface === offer.surface) &&
    (wood === undefined || servesAs(wood, offer.species) || servesAs(offer.species, wood))
  );
}

/** Boards at hand as stock that costs nothing, those of one length together. */
function ownedOf(system: MeasureSystem, boards: BoardsAtHand): StockLength[] {
  const counts = new Map<string, StockLength>();
  for (const { length: text, count } of boards) {
    const length = toQuantity(text, "ft");
    const name = `at hand, ${marked(length, system)}`;
    const available = (counts.get(name)?.available ?? 0) + count;
    const steps = stepsOf(system, length.value, "down");
    counts.set(name, { name, length: steps, priceMinor: 0, available, owned: true });
  }
  return [...counts.values()].filter(({ length }) => length > 0);
}

function stockQuestion(
  rules: CuttingRules,
  offer: LumberOffer,
  bought: readonly BoughtPieces[],
  owned: readonly StockLength[],
  { stocks, ...shelf }: Shelf,
): StockQuestion {
  const { pricing, system } = rules;
  const up = (cell: Cell): number => stepsOf(system, pricing.sheet.decide(cell), "up");
  const problem: StockProblem = {
    pieces: bought.map((one) => {
      const { name, length } = one.substitution.group;
      return { name, length: up(length), count: toCrosscut(one) };
    }),
    stocks: [...stocks, ...owned],
    kerf: up(rules.kerf),
    endTrim: up(rules.endTrim),
    ...(offer.bundle > 1 ? { bundle: offer.bundle } : {}),
  };
  return { system, offer, problem, bought: new Map(bought.map((one) => [one.substitution.group.name, one])), ...shelf };
}

/**
 * The question of an offer by itself, with all boards at hand that are like it, at the prices in force: none is laid but those
 * that the user has changed, for it may not be bought.
 * @param bought - All as this offer.
 */
export function triedQuestion(rules: CuttingRules, offer: LumberOffer, bought: readonly BoughtPieces[]): StockQuestion {
  const owned = rules.atHand.filter((board) => isLike(board, offer));
  return stockQuestion(rules, offer, bought, ownedOf(rules.system, owned), triedShelf(rules, offer));
}

/** The questions of a route that is only tried, as `stockQuestions` asks them. */
export const triedQuestions = (rules: CuttingRules, bought: readonly BoughtPieces[]): StockQuestion[] =>
  questionsOf(rules, bought, (offer) => triedShelf(rules, offer));

/** Lays and decides every price of an offer: that it was chosen among others hangs on them. */
export function decidePrices(rules: CuttingRules, offer: LumberOffer): void {
  makeShelf(rules, offer, (name, one, label) => {
    const cells = levelCells(rules.pricing, name, one, label);
    return cells.map(({ from, price }) => ({ from, price: rules.pricing.sheet.decide(price) }));
  });
}

/** An offer's lengths as the optimiser takes them. */
type Shelf = Pick<StockQuestion, "lengths" | "prices" | "priced" | "moneyDigits"> & Pick<StockProblem, "stocks">;

type Shelves = (offer: LumberOffer) => Shelf;

/** By sheet and offer: with its prices laid, and with those alone that the user has changed. */
const shelves = new WeakMap<Sheet, Map<LumberOffer, Shelf>>();
const triedShelves = new WeakMap<Sheet, Map<LumberOffer, Shelf>>();

/** Lengths with a price, or all of them where none has one; worked out once an offer and sheet. */
const shelfOf = (rules: CuttingRules, offer: LumberOffer): Shelf =>
  remembered(shelves, rules, offer, (name, one, label) =>
    levelCells(rules.pricing, name, one, label).map(({ from, price }) => ({ from, price: aside(price) })),
  );

/** The same at the prices in force, without a cell for each. */
const triedShelf = (rules: CuttingRules, offer: LumberOffer): Shelf =>
  remembered(triedShelves, rules, offer, (name, one, label) => levelsInForce(rules.pricing, name, one, label));

function remembered(all: typeof shelves, rules: CuttingRules, offer: LumberOffer, levels: LevelsOf): Shelf {
  const { sheet } = rules.pricing;
  const known = all.get(sheet) ?? new Map<LumberOffer, Shelf>();
  all.set(sheet, known);
  const found = known.get(offer) ?? makeShelf(rules, offer, levels);
  known.set(offer, found);
  return found;
}

/** The prices of one length, least number first. */
type LevelsOf = (name: string, prices: Prices, label: string) => readonly LevelPrice[];

/** Takes the price of each length, bought or not: which of them are bought hangs on them all. */
function makeShelf({ pricing, system }: CuttingRules, offer: LumberOffer, levelsOf: LevelsOf): Shelf {
  const all = pricedLengthsOf(offer).map((one) => ({ ...one, name: marked(one.length, system) }));
  const lengths = new Map(all.map(({ name, length }) => [name, length.value]));
  const slugs = lengthSlugs({ lengths });
  const withPrice = all.flatMap((one) => {
    const { name, length } = one;
    const levels = levelsOf(`${offer.name}-${slugs.get(name) ?? name}`, one, `${offer.label}, ${name}`);
    return levels.length > 0 ? [{ name, length, levels, available: availableOf(offer, length) }] : [];
  });
  const money = wholeMoney(
    withPrice.flatMap(({ levels }) => levels.map(({ price }) => price)),
    pricing.minorDigits,
  );
  const priced = withPrice.length > 0;
  const steps = (length: Quantity) => stepsOf(system, length.value, "down");
  const stocks = priced
    ? withPrice.map(({ name, length, levels, available }) => ({
        ...{ name, length: steps(length), available, ...stockPrices(levels, money.whole) },
      }))
    : // Without any price the plan buys the least length.
      all.map(({ name, length }) => ({
        name,
        length: steps(length),
        priceMinor: steps(length),
        available: availableOf(offer, length),
      }));
  const prices = new Map(all.map(({ name, price, bulk }) => [name, { price, bulk }]));
  return { stocks, lengths, prices, priced, moneyDigits: money.digits };
}

/** Sticks that a plan cuts, by the name of their length. */
export function sticksOf(plan: readonly StockCut[]): ReadonlyMap<string, number> {
  const sticks = new Map<string, number>();
  for (const { stock, times } of plan) sticks.set(stock, (sticks.get(stock) ?? 0) + times);
  return sticks;
}

/** Pieces of each group that a plan's sticks do not give. */
export function piecesShort(
  { problem, bought }: StockQuestion,
  plan: readonly StockCut[],
): ReadonlyMap<string, number> {
  return new Map(
    [...uncut(problem, plan)].flatMap(([name, left]) => {
      const { count, substitution } = bought.get(name) as BoughtPieces;
      const cut = toCrosscut({ substitution, count }) - left;
      const lacking = count - cut * substitution.abreast;
      return lacking > 0 ? [[name, lacking] as const] : [];
    }),
  );
}

/** Pieces of each row of a problem that a plan does not cut. */
export function uncut(problem: StockProblem, plan: readonly StockCut[]): ReadonlyMap<string, number> {
  const left = new Map(problem.pieces.map(({ name, count }) => [name, count]));
  for (const { pieces, times } of plan) {
    for (const name of pieces) left.set(name, (left.get(name) ?? 0) - times);
  }
  return new Map([...left].filter(([, count]) => count > 0));
}
