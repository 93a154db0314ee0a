/** Joined pieces of a stock order are had whole or not at all: where sticks lack for one part, none is cut for the others. */
import type { ShortPiece, StockOutcome, StockProblem } from "./stock/problem.js";
import type { OrderQuestion } from "./stock-order.js";

/** Plans a stock problem, within so much work where that is said. */
export type PlanStock = (problem: StockProblem, work?: number) => StockOutcome;

/** Plans made in the hope that the parts that are cut come together otherwise. Assumption. */
const MOST_TURNS = 5;

/** The question and its plan. */
interface Completed {
  readonly of: OrderQuestion;
  readonly outcome: StockOutcome;
}

/**
 * Plans an order; where parts of joined pieces are short, so many pieces less are asked for, as few as the parts that lack make, until
 * all that is cut is whole.
 * @param make - The question with so many joined pieces of a name left out.
 */
export function completed(
  make: (incomplete: ReadonlyMap<string, number>) => OrderQuestion,
  stock: PlanStock,
  work?: number,
): Completed {
  const left = new Map<string, number>();
  let spent = 0;
  for (let turn = 0; ; turn++) {
    const of = make(new Map(left));
    const outcome = stock(of.problem, work);
    spent += outcome.work;
    const lacking = lackingParts(of, outcome.short, turn < MOST_TURNS);
    if (lacking.size === 0) {
      const short = [...outcome.short, ...incompleteOf(of)];
      return { of, outcome: { ...outcome, short, work: spent } };
    }
    for (const [piece, parts] of lacking) left.set(piece, (left.get(piece) ?? 0) + parts);
  }
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
export const incompleteOf = ({ incomplete }: OrderQuestion): ShortPiece[] =>
  [...incomplete].filter(([, count]) => count > 0).map(([name, count]) => ({ name, count, why: "stock-lacks" }));

/** Joined pieces of which a held plan cuts no part. @param cut - How often it cuts each piece. */
export function leftIncomplete(
  { problem, pieces }: OrderQuestion,
  cut: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  const left = new Map<string, number>();
  for (const { name, count } of problem.pieces) {
    const of = pieces.get(name);
    if (of?.part === undefined) continue;
    left.set(of.piece, Math.min(left.get(of.piece) ?? count, count - (cut.get(name) ?? 0)));
  }
  return left;
}
