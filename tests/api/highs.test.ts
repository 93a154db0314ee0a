import { beforeAll, describe, expect, it } from "vitest";
import { loadHighs } from "../../src/api/highs.js";
import { boundUp, type IntegerProgram, type LinearSolver, wholeSolution } from "../../src/estimate/solver.js";

const ANY = Number.POSITIVE_INFINITY;
const column = (cost: number, rows: number[], values: number[], upper = ANY) => ({
  cost,
  lower: 0,
  upper,
  rows,
  values,
});

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighs();
});

describe("HiGHS behind the solver port", () => {
  it("is loaded once", async () => {
    expect(await loadHighs()).toBe(solver);
    expect(solver.name).toMatch(/^HiGHS \d+\.\d+/);
  });

  // Chvátal, Linear Programming (1983), ch. 13: rolls of 100; 97 × 45, 610 × 36, 395 × 31, 211 × 14;
  // the LP optimum is 452.25 rolls, reached with (2,0,0,0), (0,2,0,2), (0,2,0,0) and (0,1,2,0).
  it("re-solves a growing program to the published optimum of a cutting-stock LP", () => {
    const demand = [97, 610, 395, 211];
    const rows = demand.map((lower) => ({ lower, upper: ANY }));
    const objective = solver.withProgram(rows, (program) => {
      program.addColumns([2, 2, 3, 7].map((most, row) => column(1, [row], [most])));
      const first = program.solve();
      expect(first.objective).toBeCloseTo(97 / 2 + 610 / 2 + 395 / 3 + 211 / 7, 6);
      expect([...first.duals].map((dual) => dual.toFixed(6))).toEqual(["0.500000", "0.500000", "0.333333", "0.142857"]);
      program.addColumns([column(1, [1, 3], [2, 2]), column(1, [0, 2], [1, 1])]);
      program.addColumns([column(1, [1, 2], [1, 2]), column(1, [0, 1, 3], [1, 1, 1])]);
      return program.solve().objective;
    });
    expect(objective).toBeCloseTo(452.25, 6);
  });

  it("takes new costs, new demand and new column limits without starting over", () => {
    solver.withProgram([{ lower: 4, upper: ANY }], (program) => {
      program.addColumns([column(3, [0], [1]), column(5, [0], [1])]);
      expect(program.solve()).toMatchObject({ status: "optimal", objective: 12 });
      program.setCosts([6, 5]);
      expect(program.solve().objective).toBe(20);
      program.setRow(0, { lower: 6, upper: ANY });
      expect(program.solve().objective).toBe(30);
      program.setColumn(1, { lower: 0, upper: 1 });
      expect([...program.solve().values]).toEqual([5, 1]);
    });
  });

  it("says infeasible and unbounded in words", () => {
    solver.withProgram([{ lower: 4, upper: ANY }], (program) => {
      program.addColumns([column(1, [0], [1], 3)]);
      expect(program.solve().status).toBe("infeasible");
    });
    solver.withProgram([{ lower: 0, upper: ANY }], (program) => {
      program.addColumns([column(-1, [0], [1])]);
      expect(program.solve().status).toBe("unbounded");
    });
    const none: IntegerProgram = { columns: [column(1, [0], [2])], rows: [{ lower: 3, upper: 3 }] };
    expect(solver.solveInteger(none, LIMITS)).toMatchObject({ status: "infeasible", values: null });
  });

  it("answers for a program without columns, of which the engine knows nothing", () => {
    const empty = (lower: number) => ({ columns: [], rows: [{ lower, upper: ANY }] });
    expect(solver.solveInteger(empty(0), LIMITS)).toMatchObject({
      status: "optimal",
      values: [],
      objective: 0,
      nodes: 0,
    });
    expect(solver.solveInteger(empty(1), LIMITS)).toMatchObject({ status: "infeasible", values: null, nodes: 0 });
    expect(solver.withProgram(empty(0).rows, (program) => program.solve())).toMatchObject({
      status: "optimal",
      objective: 0,
    });
    expect(solver.withProgram(empty(1).rows, (program) => program.solve().status)).toBe("infeasible");
  });

  it("agrees with enumeration on small whole-number programs", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const program = randomProgram(mulberry32(seed));
      const { status, objective, values, bound } = solver.solveInteger(program, LIMITS);
      const best = enumerate(program);
      if (best === ANY) expect(status).toBe("infeasible");
      else {
        expect(objective).toBe(best);
        expect(bound).toBeLessThanOrEqual(best + 1e-6);
        expect(values?.every(Number.isInteger)).toBe(true);
      }
    }
  });

  it("stops at counted work, twice at the same place, with a bound below its plan", () => {
    const program = hardProgram();
    const limits = { nodes: 1_000_000, iterations: 600, gap: 0 };
    const once = solver.solveInteger(program, limits);
    expect(once.status).toBe("stopped");
    expect(once.bound).toBeLessThan(once.objective);
    expect(solver.solveInteger(program, limits)).toEqual(once);
  });

  it("starts from a given plan", () => {
    const limits = { nodes: 1, iterations: 1, gap: 0 };
    const best = solver.solveInteger(hardProgram(), { ...LIMITS, iterations: 3_000 });
    const start = best.values ?? [];
    expect(solver.solveInteger(hardProgram(), limits).objective).toBeGreaterThan(best.objective);
    expect(solver.solveInteger({ ...hardProgram(), start }, limits).objective).toBeLessThanOrEqual(best.objective);
  });

  it("throws a short error for a row that does not exist", () => {
    const misuse = () => solver.withProgram([], (program) => program.addColumns([column(1, [3], [1])]));
    expect(misuse).toThrow(/^.{1,210}$/);
  });

  it("frees its models: a thousand programs leave the memory where it was", () => {
    const run = () =>
      solver.withProgram([{ lower: 1, upper: ANY }], (p) => {
        p.addColumns([column(1, [0], [1])]);
        p.solve();
      });
    for (let i = 0; i < 50; i++) run();
    const before = process.memoryUsage().arrayBuffers + process.memoryUsage().external;
    for (let i = 0; i < 1_000; i++) run();
    expect(process.memoryUsage().arrayBuffers + process.memoryUsage().external - before).toBeLessThan(8e6);
  });
});

describe("helpers of the port", () => {
  it("rounds a bound up to the money grid, float noise forgiven", () => {
    expect(boundUp(439.0000002, 1)).toBe(439);
    expect(boundUp(439.2, 1)).toBe(440);
    expect(boundUp(4_312.1, 25)).toBe(4_325);
    expect(boundUp(0, 5)).toBe(0);
  });

  it("refuses values that break a row once rounded", () => {
    const program: IntegerProgram = { columns: [column(1, [0], [2])], rows: [{ lower: 5, upper: ANY }] };
    expect(wholeSolution(program, [2.5000001])).toEqual([3]);
    expect(wholeSolution(program, [2.4999999])).toBeNull();
    expect(wholeSolution(program, [Number.NaN])).toBeNull();
  });
});

const LIMITS = { nodes: 10_000, iterations: 100_000, gap: 0 };

/** Three columns of 0…4, two rows, so that 125 plans can be tried one by one. */
function randomProgram(random: () => number): IntegerProgram {
  const whole = (most: number) => Math.floor(random() * (most + 1));
  const columns = [0, 1, 2].map(() => column(1 + whole(20), [0, 1], [whole(5), whole(5) - 2], 4));
  return {
    columns,
    rows: [
      { lower: 3 + whole(20), upper: ANY },
      { lower: -ANY, upper: whole(6) },
    ],
  };
}

function enumerate({ columns, rows }: IntegerProgram): number {
  let best = ANY;
  for (let plan = 0; plan < 125; plan++) {
    const values = [plan % 5, Math.floor(plan / 5) % 5, Math.floor(plan / 25)];
    const fits = rows.every(({ lower, upper }, row) => {
      const sum = columns.reduce((total, { values: part }, i) => total + (part[row] ?? 0) * (values[i] ?? 0), 0);
      return sum >= lower && sum <= upper;
    });
    if (fits)
      best = Math.min(
        best,
        columns.reduce((cost, c, i) => cost + c.cost * (values[i] ?? 0), 0),
      );
  }
  return best;
}

/** A covering program too knotty for its root node. */
function hardProgram(): IntegerProgram {
  const random = mulberry32(7);
  const rows = Array.from({ length: 30 }, () => ({ lower: 1, upper: ANY }));
  const columns = Array.from({ length: 90 }, () => {
    const hit = rows.map((_, row) => row).filter(() => random() < 0.15);
    return column(
      10 + Math.floor(random() * 10),
      hit,
      hit.map(() => 1),
      1,
    );
  });
  return { columns, rows };
}

/** Mulberry32, public domain (T. Ettinger). */
function mulberry32(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
