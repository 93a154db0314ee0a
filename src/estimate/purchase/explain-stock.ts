/** A stock plan as things to do at the saw: which pieces come off each stick, and what is left of it. */
import type { StockCut, StockProblem } from "./stock/problem.js";

/** Sticks cut alike. Lengths in the problem's steps. */
export interface StickSteps {
  readonly stock: string;
  readonly times: number;
  /** In the order cut, equal ones together. */
  readonly pieces: readonly { readonly group: string; readonly length: number; readonly count: number }[];
  /** What is left after the last cut; 0 where the kerf takes it. */
  readonly offcut: number;
}

/**
 * The plan's steps, stick by stick.
 * @throws Error when the plan names a stock or a piece that the problem has not.
 */
export function explainStock(problem: StockProblem, plan: readonly StockCut[]): StickSteps[] {
  const lengthOf = (list: readonly { readonly name: string; readonly length: number }[], name: string): number => {
    const found = list.find((one) => one.name === name);
    if (!found) throw new Error(`The plan names what is not there: ${name}.`);
    return found.length;
  };
  return plan.map(({ stock, pieces, times }) => {
    const cuts = [...new Set(pieces)].map((group) => ({
      group,
      length: lengthOf(problem.pieces, group),
      count: pieces.filter((piece) => piece === group).length,
    }));
    const used = cuts.reduce((sum, { length, count }) => sum + count * (length + problem.kerf), 0);
    const offcut = Math.max(0, lengthOf(problem.stocks, stock) - problem.endTrim - used);
    return { stock, times, pieces: cuts, offcut };
  });
}

/** A piece where it lies on its stick, from the squared end, in the problem's steps. */
export interface PlacedPiece {
  readonly group: string;
  readonly from: number;
  readonly to: number;
}

/** Each piece of a stick in the order cut, a kerf between them. */
export function placedOn({ pieces }: StickSteps, kerf: number): PlacedPiece[] {
  let at = 0;
  return pieces.flatMap(({ group, length, count }) =>
    Array.from({ length: count }, () => {
      const from = at;
      at += length + kerf;
      return { group, from, to: from + length };
    }),
  );
}

/** Length of a stick when it is squared. @throws Error when the problem has no such stock. */
export function squaredLength({ stocks, endTrim }: StockProblem, stock: string): number {
  const found = stocks.find(({ name }) => name === stock);
  if (!found) throw new Error(`The plan names what is not there: ${stock}.`);
  return found.length - endTrim;
}
