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
  const { stocks, bundle = 1 } = problem;
  const tables = stocks.map((stock) =>
    Array.from({ length: pieces.length + 1 }, (_, needed) => cheapestPurchase(stock, needed, stock.owned ? 1 : bundle)),
  );
  let best: TrialBest = { short: Number.POSITIVE_INFINITY, costMinor: 0, sticks: 0 };
  const open: { stock: number; used: number; cuts: number }[] = [];
  const deal = (next: number, short: number): void => {
    const length = pieces[next];
    if (length === undefined) {
      const paid = payFor(
        tables,
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

/** The cheapest purchase of what is used, or undefined when there are not so many. */
function payFor(tables: readonly (readonly ReturnType<typeof cheapestPurchase>[])[], used: readonly number[]) {
  let costMinor = 0;
  let sticks = 0;
  for (const [index, table] of tables.entries()) {
    const paid = table[used.filter((each) => each === index).length];
    if (!paid) return undefined;
    costMinor += paid.costMinor;
    sticks += paid.count;
  }
  return { costMinor, sticks };
}

/** Every number of sticks from the needed one on is tried, each at the lowest price that holds for it, in whole bundles. */
export function cheapestPurchase(stock: StockProblem["stocks"][number], needed: number, bundle: number) {
  if (needed === 0) return { count: 0, costMinor: 0 };
  const { available, priceMinor, from = 1, bulk = [] } = stock;
  const prices = [{ from, priceMinor }, ...bulk];
  let best: { count: number; costMinor: number } | undefined;
  for (let count = needed; count <= Math.min(available ?? 100, 100); count++) {
    const each = Math.min(...prices.flatMap((price) => (count >= price.from ? [price.priceMinor] : [])));
    if (count % bundle !== 0 || each === Number.POSITIVE_INFINITY) continue;
    if (!best || count * each < best.costMinor) best = { count, costMinor: count * each };
  }
  return best;
}

function isBetter(a: TrialBest, b: TrialBest): boolean {
  if (a.short !== b.short) return a.short < b.short;
  return a.costMinor < b.costMinor || (a.costMinor === b.costMinor && a.sticks < b.sticks);
}
