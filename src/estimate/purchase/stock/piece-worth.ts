/**
 * What each piece adds to the cost of sticks at the least, whichever other pieces are bought with it: prices at which no
 * filling of a stick is worth more than the stick. Whatever part of the pieces is bought, it costs their sum or more.
 *
 * These are the dual prices of the linear relaxation (Gilmore and Gomory 1961), shrunk as Farley (1990) does.
 */
import { Decimal, decimal, ZERO } from "../../quantity/decimal.js";
import { wholeNumber } from "../../quantity/whole.js";
import { cellsOf, workOf } from "./knapsack.js";
import { normalForm } from "./normal-form.js";
import type { StockProblem } from "./problem.js";
import { Relaxation } from "./relaxation.js";
import { Work } from "./work.js";

/** Off the prices by length, so that floats never round one up. */
const SAFE = 1 - 1e-9;

/** Decimals that a worth keeps of a minor unit. */
const PLACES = 6;

/** A length that may be had in any number, and what one costs at the least: exact minor units. */
export interface CostedLength {
  readonly name: string;
  readonly length: number;
  readonly cost: Decimal;
}

/** Pieces that may be cut from such lengths. */
export type WorthQuestion = Pick<StockProblem, "pieces" | "kerf" | "endTrim"> & {
  readonly stocks: readonly CostedLength[];
};

/**
 * Minor units a piece, by its length in steps; a piece that no stick holds adds nothing. Decimals come in and go out: what the
 * relaxation reckons in floats is rounded down on either side.
 * @param budget - Counted work; where it does not suffice, pieces are worth their length at the best price.
 */
export function pieceWorth(question: WorthQuestion, budget: number): ReadonlyMap<number, Decimal> {
  const stocks = question.stocks.map(({ name, length, cost }) => ({
    ...{ name, length, available: null },
    priceMinor: wholeNumber(cost.floor()),
  }));
  const worth = inFloats({ ...question, stocks }, budget);
  const down = (each: number): Decimal => decimal(each).toDecimalPlaces(PLACES, Decimal.ROUND_DOWN);
  return new Map([...worth].map(([length, each]) => [length, each > 0 ? down(each) : ZERO]));
}

function inFloats(problem: StockProblem, budget: number): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const { length, count } of problem.pieces) counts.set(length, (counts.get(length) ?? 0) + count);
  const form = normalForm(problem, counts);
  if (form.weights.length === 0) return new Map();
  const byLength = Math.min(...form.bars.map(({ price, capacity }) => price / capacity)) * form.moneyGrid * SAFE;
  const cells = cellsOf(form.weights, form.counts, Math.max(...form.bars.map(({ capacity }) => capacity)));
  if (10 * workOf(cells) > budget) return new Map(form.lengths.map((l, i) => [l, (form.weights[i] ?? 0) * byLength]));
  const available = form.bars.map((bar) => bar.available);
  const { prices } = new Relaxation(form, new Work(budget)).solve({ counts: form.counts, available });
  const worth = (item: number) => ((prices.piece[item] ?? 0) / prices.scale) * form.moneyGrid;
  return new Map(form.lengths.map((length, item) => [length, worth(item)]));
}
