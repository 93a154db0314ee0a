/** The cheapest plan out of given fillings by a mixed-integer program, where an engine is plugged in. */
import { boundUp, type Column, type IntegerProgram, type IntegerSolution, type LinearSolver } from "../../solver.js";
import type { Bar, Draft, NormalForm, Pattern } from "./normal-form.js";
import { isPlain } from "./paid.js";
import type { Demand } from "./relaxation.js";
import type { Work } from "./work.js";

/** Microseconds of an iteration and of the start, by columns. Assumptions, measured. */
const perIteration = (columns: number) => 150 + columns / 10;
const perStart = (columns: number) => 5_000 + 10 * columns;

/** Just under one unit of money: plans closer than that cost the same. */
const ONE = 0.999;

/** The engine's answer, checked row by row. */
export interface WholePlan {
  readonly draft: Draft | null;
  /** No plan out of these fillings costs less, in whole units of money; Infinity when there is none. */
  readonly bound: number;
}

/**
 * @param anyPlan - True: the first plan found will do, whatever it costs.
 */
export function wholePlan(
  form: NormalForm,
  fillings: readonly Pattern[],
  demand: Demand,
  anyPlan: boolean,
  solver: LinearSolver,
  work: Work,
): WholePlan {
  const program = programOf(form, fillings, demand);
  const answer = answered(program, anyPlan ? Number.MAX_SAFE_INTEGER : ONE, solver, work);
  if (!answer) return { draft: null, bound: 0 };
  const draft = answer.values && draftOf(form, fillings, answer.values);
  if (answer.status === "infeasible") return { draft, bound: Number.POSITIVE_INFINITY };
  return { draft, bound: Math.max(0, boundUp(answer.bound, 1)) };
}

/** What the engine makes of a program within the work that is left; null where that is too little to begin. */
export function answered(
  program: IntegerProgram,
  gap: number,
  solver: LinearSolver,
  work: Work,
): IntegerSolution | null {
  const columns = program.columns.length;
  const iterations = Math.floor((work.left - perStart(columns)) / perIteration(columns));
  // The engine can be told to stop only once its first relaxation is solved, which takes some iterations a row.
  if (iterations < program.rows.length) return null;
  work.spend(perStart(columns));
  const answer = solver.solveInteger(program, { nodes: 1_000_000, iterations, gap });
  work.spend(answer.iterations * perIteration(columns));
  return answer;
}

/**
 * Fillings as columns; a row a length of piece, a row a bar. Where bars come in bundles, or for less from a number on, a column for
 * their number at each price, one for whether it is chosen, and a row for all of them.
 */
export function programOf(form: NormalForm, fillings: readonly Pattern[], demand: Demand): IntegerProgram {
  const size = form.weights.length;
  const bundled = form.bars.map((bar) => !isPlain(bar));
  const columns = fillings.map(({ bar, take }): Column => {
    const rows = [...take.flatMap((count, item) => (count > 0 ? [item] : [])), size + bar];
    const values = [...take.filter((count) => count > 0), 1];
    return {
      cost: bundled[bar] ? 0 : (form.bars[bar] as Bar).price,
      ...upTo(demand.available[bar] as number),
      rows,
      values,
    };
  });
  const rows: IntegerProgram["rows"][number][] = [
    ...demand.counts.map((lower) => ({ lower, upper: Number.POSITIVE_INFINITY })),
    ...demand.available.map((most, bar) => ({ ...upTo(bundled[bar] ? 0 : most), lower: Number.NEGATIVE_INFINITY })),
  ];
  const pieces = demand.counts.reduce((sum, count) => sum + count, 0);
  const bought = form.bars.flatMap((bar, index): Column[] => {
    if (isPlain(bar)) return [];
    // Whatever they are paid at, no more of them than there are.
    const all = rows.push({ ...upTo(demand.available[index] as number), lower: Number.NEGATIVE_INFINITY }) - 1;
    return bar.levels.flatMap((level): Column[] => {
      const bundles = Math.ceil(level.from / bar.bundle);
      const most = Math.max(bundles, Math.ceil(Math.min(pieces, demand.available[index] as number) / bar.bundle));
      const count = { cost: level.price * bar.bundle, ...upTo(most) };
      if (level.from <= 1) return [{ ...count, rows: [size + index, all], values: [-bar.bundle, bar.bundle] }];
      // None, or at least as many as the price asks for: bundles × chosen ≤ count ≤ most × chosen.
      const [atLeast, atMost] = [rows.length, rows.length + 1];
      rows.push({ ...upTo(0), lower: Number.NEGATIVE_INFINITY }, { ...upTo(0), lower: Number.NEGATIVE_INFINITY });
      return [
        { ...count, rows: [size + index, all, atLeast, atMost], values: [-bar.bundle, bar.bundle, -1, 1] },
        { cost: 0, ...upTo(1), rows: [atLeast, atMost], values: [bundles, -most] },
      ];
    });
  });
  return { columns: [...columns, ...bought], rows };
}

const upTo = (upper: number) => ({ lower: 0, upper });

function draftOf(form: NormalForm, fillings: readonly Pattern[], values: readonly number[]): Draft {
  const cuts = fillings.flatMap((filling, i) => {
    const times = values[i] as number;
    return times > 0 ? [{ ...filling, times }] : [];
  });
  return { cuts, missing: form.weights.map(() => 0) };
}
