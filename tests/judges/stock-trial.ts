/**
 * A second method for stock plans: every way to deal the pieces to sticks is tried. Shares nothing with the planner but
 * the form of the problem. For up to about seven pieces.
 */
import type { StockProblem } from "../../src/estimate/purchase/stock/problem.js";

export interface TrialBest {
  /** Fewest pieces that must be left out. */
  readonly short: number;
  /** Least cost with so few left out. */
  readonly costMinor: number;
  /** Fewest sticks paid for at that cost. */
  readonly sticks: number;
}

export function bestByTrial(problem: StockProblem): TrialBest {
  const pieces = problem.pieces.flatMap(({ length, count }) => new Array<number>(count).fill(length));
  let best: TrialBest = { short: Number.POSITIVE_INFINITY, costMinor: 0, sticks: 0 };
  const open: { stock: number; used: number; cuts: number }[] = [];
  const deal = (next: number, short: number): void => {
    const length = pieces[next];
    if (length === undefined) {
      const paid = payFor(
        problem,
        open.map(({ stock }) => stock),
      );
      if (paid && isBetter({ short, ...paid }, best)) best = { short, ...paid };
      return;
    }
    for (const stick of open) {
      const room = (problem.stocks[stick.stock]?.length ?? 0) - problem.endTrim;
      if (stick.used + length + (stick.cuts + 1) * problem.kerf > room) continue;
      stick.used += length;
      stick.cuts += 1;
      deal(next + 1, short);
      stick.used -= length;
      stick.cuts -= 1;
    }
    problem.stocks.forEach((stock, index) => {
      if (length > stock.length - problem.endTrim) return;
      open.push({ stock: index, used: length, cuts: 0 });
      deal(next + 1, short);
      open.pop();
    });
    deal(next + 1, short + 1);
  };
  deal(0, 0);
  return best;
}

/** Whole bundles of what is sold, or undefined when there are not so many. */
function payFor({ stocks, bundle = 1 }: StockProblem, used: readonly number[]) {
  let costMinor = 0;
  let sticks = 0;
  for (const [index, stock] of stocks.entries()) {
    const lot = stock.owned ? 1 : bundle;
    const count = Math.ceil(used.filter((each) => each === index).length / lot) * lot;
    if (stock.available !== null && count > stock.available) return undefined;
    costMinor += count * stock.priceMinor;
    sticks += count;
  }
  return { costMinor, sticks };
}

function isBetter(a: TrialBest, b: TrialBest): boolean {
  if (a.short !== b.short) return a.short < b.short;
  return a.costMinor < b.costMinor || (a.costMinor === b.costMinor && a.sticks < b.sticks);
}
