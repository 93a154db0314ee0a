/** Joined pieces of a stock order are had whole or not at all: where sticks lack for one part, none is cut for the others. */
import type { Had } from "./stock/joints.js";
import type { ShortPiece, StockOutcome, StockProblem } from "./stock/problem.js";
import type { JoinedOrder, OrderQuestion } from "./stock-order.js";

/** Plans a stock problem, within so much work where that is said. */
export type PlanStock = (problem: StockProblem, work?: number) => StockOutcome;

/** Plans made in the hope that the parts that are cut come together otherwise. Assumption. */
const MOST_TURNS = 5;

/** The question and its plan. */
export interface Completed {
  readonly of: OrderQuestion;
  readonly outcome: StockOutcome;
}

/**
 * Plans an order; where parts of joined pieces are short, so many pieces less are asked for, as few as the parts that lack make, until
 * all that is cut is whole.
 */
export function completed(
  { pieces, question }: JoinedOrder,
  wanted: readonly Had[],
  stock: PlanStock,
  work?: number,
): Completed {
  let had = wanted;
  let spent = 0;
  for (let turn = 0; ; turn++) {
    const of = question(had);
    const outcome = stock(of.problem, work);
    spent += outcome.work;
    const lacking = lackingParts(of, outcome.short, turn < MOST_TURNS);
    if (lacking.size === 0) {
      const short = [...outcome.short, ...leftOutWhole(of)];
      return { of, outcome: { ...outcome, short, work: spent } };
    }
    had = had.map((one, i) => fewer(one, lacking.get(pieces[i]?.name ?? "") ?? 0));
  }
}

/** So many joined pieces less, the last ways first. */
function fewer({ whole, joined }: Had, less: number): Had {
  let left = less;
  const kept = joined.toReversed().map(({ way, count }) => {
    const off = Math.min(left, count);
    left -= off;
    return { way, count: count - off };
  });
  return { whole, joined: kept.toReversed().filter(({ count }) => count > 0) };
}

/** Pieces that at least are incomplete, by the parts that a plan leaves out; or all that are. */
function lackingParts(
  { pieces }: OrderQuestion,
  short: readonly ShortPiece[],
  atLeast: boolean,
): ReadonlyMap<string, number> {
  const lacking = new Map<string, number[]>();
  for (const { name, count } of short) {
    const of = pieces.get(name);
    if (of?.part !== undefined) lacking.set(of.piece, [...(lacking.get(of.piece) ?? []), count]);
  }
  return new Map(
    [...lacking].map(([piece, counts]) => {
      const parts = [...pieces.values()].filter((one) => one.piece === piece && one.part !== undefined).length;
      const all = counts.reduce((sum, count) => sum + count, 0);
      return [piece, atLeast ? Math.ceil(all / parts) : Math.max(...counts)];
    }),
  );
}

/** As pieces that are short: for each of them sticks lack. */
export const leftOutWhole = ({ leftOutWhole: left }: OrderQuestion): ShortPiece[] =>
  [...left].map(([name, { count }]) => ({ name, count, why: "stock-lacks" }));
