/**
 * A third method for stock plans: all fillings written out plainly, and the engine asked for the best choice among them. No
 * prices, no bounds, no mixes. For up to about six lengths.
 */
import type { StockProblem } from "../../src/estimate/purchase/stock/problem.js";
import type { Column, LinearSolver } from "../../src/estimate/solver.js";

/** Least cost, or null when sticks lack. No bundles. */
export function bestByProgram(problem: StockProblem, solver: LinearSolver): number | null {
  const wanted = problem.pieces.filter(({ count }) => count > 0);
  const columns = problem.stocks.flatMap(({ length, priceMinor }, index): Column[] =>
    fillings(wanted, length - problem.endTrim, problem.kerf).map((take) => {
      const rows = [...take.flatMap((count, i) => (count > 0 ? [i] : [])), wanted.length + index];
      const values = [...take.filter((count) => count > 0), 1];
      return { cost: priceMinor, lower: 0, upper: Number.POSITIVE_INFINITY, rows, values };
    }),
  );
  const rows = [
    ...wanted.map(({ count }) => ({ lower: count, upper: count })),
    ...problem.stocks.map(({ available }) => ({ lower: 0, upper: available ?? Number.POSITIVE_INFINITY })),
  ];
  const { status, objective } = solver.solveInteger({ columns, rows }, { nodes: 1e6, iterations: 1e6, gap: 0.5 });
  if (status !== "optimal" && status !== "infeasible") throw new Error(`the engine says ${status}`);
  return status === "optimal" ? objective : null;
}

/** Every choice of at least one piece that fits, each from none to all. */
function fillings(wanted: StockProblem["pieces"], room: number, kerf: number): number[][] {
  const found: number[][] = [];
  const take = wanted.map(() => 0);
  const fill = (item: number, used: number, pieces: number): void => {
    const piece = wanted[item];
    if (!piece) {
      if (pieces > 0) found.push(take.slice());
      return;
    }
    for (let count = 0; count <= piece.count; count++) {
      const cuts = Math.max(0, pieces + count - 1);
      if (used + count * piece.length + cuts * kerf > room) break;
      take[item] = count;
      fill(item + 1, used + count * piece.length, pieces + count);
    }
    take[item] = 0;
  };
  fill(0, 0, 0);
  return found;
}
