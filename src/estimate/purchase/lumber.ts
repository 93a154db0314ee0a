/**
 * Bought lumber of one route: which offer serves which group, how its stock lengths are cut, and what they cost.
 *
 * Groups that take the same offer share its stock plan. Lengths are whole steps: 1/64 in, or 0.1 mm.
 */
import { type LumberOffer, lengthsOf, pieceCost } from "../../catalog/offers/lumber.js";
import type { Decimal } from "../quantity/decimal.js";
import { decimal } from "../quantity/decimal.js";
import { type MeasureSystem, marked } from "../quantity/text.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { StockCut, StockProblem } from "./stock/problem.js";
import type { Substitution } from "./substitution.js";

/** Pieces of a group that a route buys. */
export interface BoughtPieces {
  readonly substitution: Substitution;
  readonly count: number;
}

/** One offer's stock problem in a route. */
export interface StockQuestion {
  readonly offer: LumberOffer;
  readonly problem: StockProblem;
  /** Stock length by the name it has in the problem. */
  readonly lengths: ReadonlyMap<string, Decimal>;
  /** True when some length has a price; otherwise the plan buys the least length. */
  readonly priced: boolean;
}

const STEP_MM: Readonly<Record<MeasureSystem, Decimal>> = {
  "inch-pound": decimal("25.4").dividedBy(64),
  metric: decimal("0.1"),
};

/** One step of a stock problem in millimetres. */
export const stepOf = (system: MeasureSystem): Decimal => STEP_MM[system];

/** Whole steps of a stock problem in millimetres. */
export const stepsInMm = (system: MeasureSystem, steps: number): Decimal => STEP_MM[system].times(steps);

/** A length in whole steps of stock problems; what is wanted up, what is sold down. */
export const stepsOf = (system: MeasureSystem, length: Decimal, way: "up" | "down"): number => {
  const steps = length.dividedBy(STEP_MM[system]).toDecimalPlaces(6);
  return (way === "up" ? steps.ceil() : steps.floor()).toNumber();
};

/** What is lost where pieces are cut from stock lengths, and the grid that lengths are counted in. */
export interface CuttingRules {
  readonly sheet: Sheet;
  readonly system: MeasureSystem;
  readonly kerf: Cell;
  readonly endTrim: Cell;
  /** Digits of the currency's minor unit. */
  readonly minorDigits: number;
}

/** The stock problems of a route, one an offer, in the order of the offers' names. */
export function stockQuestions(rules: CuttingRules, bought: readonly BoughtPieces[]): StockQuestion[] {
  const offers = new Map(bought.map(({ substitution: { offer } }) => [offer.name, offer]));
  return [...offers.values()]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((offer) =>
      stockQuestion(
        rules,
        offer,
        bought.filter((one) => one.substitution.offer === offer),
      ),
    );
}

function stockQuestion(rules: CuttingRules, offer: LumberOffer, bought: readonly BoughtPieces[]): StockQuestion {
  const { sheet, system } = rules;
  const step = STEP_MM[system];
  const up = (cell: Cell): number => sheet.decide(cell).dividedBy(step).toDecimalPlaces(6).ceil().toNumber();
  const { stocks, lengths, priced } = shelfOf(rules, offer);
  const problem: StockProblem = {
    pieces: bought.map(({ substitution: { group }, count }) => ({ name: group.name, length: up(group.length), count })),
    stocks,
    kerf: up(rules.kerf),
    endTrim: up(rules.endTrim),
    ...(offer.bundle > 1 ? { bundle: offer.bundle } : {}),
  };
  return { offer, problem, lengths, priced };
}

/** An offer's lengths as the optimiser takes them. */
type Shelf = Pick<StockQuestion, "lengths" | "priced"> & Pick<StockProblem, "stocks">;

const shelves = new WeakMap<LumberOffer, Map<string, Shelf>>();

/** Lengths with a price, or all of them where none has one; worked out once an offer. */
function shelfOf({ system, minorDigits }: CuttingRules, offer: LumberOffer): Shelf {
  const known = shelves.get(offer) ?? new Map<string, Shelf>();
  shelves.set(offer, known);
  const found = known.get(system) ?? makeShelf(offer, system, minorDigits);
  known.set(system, found);
  return found;
}

function makeShelf(offer: LumberOffer, system: MeasureSystem, minorDigits: number): Shelf {
  const all = lengthsOf(offer).map((length) => ({
    length,
    price: pieceCost(offer, length),
    name: marked(length, system),
  }));
  const withPrice = all.filter(({ price }) => price.kind === "priced");
  const priced = withPrice.length > 0;
  const minor = decimal(10).pow(minorDigits);
  const stocks = (priced ? withPrice : all).map(({ name, length, price }) => ({
    name,
    length: length.value.dividedBy(STEP_MM[system]).toDecimalPlaces(6).floor().toNumber(),
    // Without any price the plan buys the least length.
    priceMinor: (price.kind === "priced" ? price.amount.value.times(minor) : length.value)
      .toDecimalPlaces(0)
      .toNumber(),
    available: null,
  }));
  return { stocks, lengths: new Map(all.map(({ name, length }) => [name, length.value])), priced };
}

/**
 * Each length of a question as a part of the names of cells: `10' 6"` is `10_6`. Where two lengths come to the same, as
 * `1' 1/2"` and `1 1/2"` do, the later ones get a number.
 */
export function lengthSlugs({ lengths }: Pick<StockQuestion, "lengths">): ReadonlyMap<string, string> {
  const taken = new Map<string, number>();
  return new Map(
    [...lengths.keys()].map((length) => {
      const slug = length.replaceAll(/[^0-9A-Za-z]+/g, "_").replaceAll(/^_|_$/g, "");
      const before = taken.get(slug) ?? 0;
      taken.set(slug, before + 1);
      return [length, before === 0 ? slug : `${slug}_no${before + 1}`];
    }),
  );
}

/** Sticks to pay for, by the name of their length; each length is bought in whole bundles. */
export function sticksOf(problem: StockProblem, plan: readonly StockCut[]): ReadonlyMap<string, number> {
  const bundle = problem.bundle ?? 1;
  const sticks = new Map<string, number>();
  for (const { stock, times } of plan) sticks.set(stock, (sticks.get(stock) ?? 0) + times);
  return new Map([...sticks].map(([stock, count]) => [stock, Math.ceil(count / bundle) * bundle]));
}

/** Pieces of each group that a plan does not cut. */
export function uncut(problem: StockProblem, plan: readonly StockCut[]): ReadonlyMap<string, number> {
  const left = new Map(problem.pieces.map(({ name, count }) => [name, count]));
  for (const { pieces, times } of plan) {
    for (const name of pieces) left.set(name, (left.get(name) ?? 0) - times);
  }
  return new Map([...left].filter(([, count]) => count > 0));
}
