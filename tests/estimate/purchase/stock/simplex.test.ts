import { beforeAll, describe, expect, it } from "vitest";
import { loadHighs } from "../../../../src/api/highs.js";
import { type MasterColumn, Simplex } from "../../../../src/estimate/purchase/stock/simplex.js";
import { Work } from "../../../../src/estimate/purchase/stock/work.js";
import type { LinearSolver } from "../../../../src/estimate/solver.js";
import { mulberry32 } from "../../../bench/mulberry32.js";

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighs();
});

interface Case {
  readonly demand: number[];
  readonly supply: number[];
  readonly start: MasterColumn[];
  readonly more: MasterColumn[];
}

/** Covering rows, then supply rows; a dear column alone for each covering row. */
function randomCase(random: () => number): Case {
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const demand = Array.from({ length: whole(2, 12) }, () => whole(1, 30));
  const supply = Array.from({ length: whole(0, 2) }, () => whole(1, 6));
  const start = demand.map((_, row) => ({ cost: 1_000, rows: [row], values: [1] }));
  const more = Array.from({ length: whole(3, 60) }, () => {
    const hit = demand.flatMap((_, row) => (random() < 0.3 ? [row] : []));
    const scarce = supply.length > 0 && random() < 0.3 ? [demand.length + whole(0, supply.length - 1)] : [];
    return {
      cost: whole(1, 400),
      rows: [...hit, ...scarce],
      values: [...hit.map(() => whole(1, 4)), ...scarce.map(() => 1)],
    };
  });
  return { demand, supply, start, more };
}

function byEngine({ demand, supply, start, more }: Case): number {
  const rows = [
    ...demand.map((lower) => ({ lower, upper: Number.POSITIVE_INFINITY })),
    ...supply.map((upper) => ({ lower: Number.NEGATIVE_INFINITY, upper })),
  ];
  return solver.withProgram(rows, (program) => {
    program.addColumns([...start, ...more].map((each) => ({ ...each, lower: 0, upper: Number.POSITIVE_INFINITY })));
    return program.solve().objective;
  });
}

function simplexFor({ demand, supply, start }: Case): Simplex {
  const rows = [
    ...demand.map((bound) => ({ sense: 1 as const, bound })),
    ...supply.map((bound) => ({ sense: -1 as const, bound })),
  ];
  return new Simplex(rows, start, new Work(1e9));
}

describe("the simplex method of the stock planner", () => {
  it("finds the engine's optimum, columns added bit by bit and demands changed in between", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = mulberry32(seed);
      const first = randomCase(random);
      const simplex = simplexFor(first);
      const half = first.more.length >> 1;
      for (const column of first.more.slice(0, half)) simplex.add(column);
      simplex.solve();
      for (const column of first.more.slice(half)) simplex.add(column);
      expect(simplex.solve().objective).toBeCloseTo(byEngine(first), 5);
      for (let change = 0; change < 3; change++) {
        const next = { ...first, demand: first.demand.map((each) => Math.floor(each * random() * 1.3)) };
        simplex.setBounds([...next.demand, ...next.supply]);
        expect(simplex.solve().objective).toBeCloseTo(byEngine(next), 5);
      }
    }
  });

  it("gives prices that pay for the optimum and make no column worth more than it costs", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const one = randomCase(mulberry32(seed));
      const simplex = simplexFor(one);
      for (const column of one.more) simplex.add(column);
      const { objective, prices } = simplex.solve();
      const worth = [...one.demand, ...one.supply].reduce(
        (sum, bound, row) => sum + bound * (prices[row] as number),
        0,
      );
      expect(worth).toBeCloseTo(objective, 5);
      for (const { cost, rows, values } of [...one.start, ...one.more]) {
        const value = rows.reduce((sum, row, k) => sum + (values[k] as number) * (prices[row] as number), 0);
        expect(value).toBeLessThanOrEqual(cost + 1e-4);
      }
    }
  });
});
