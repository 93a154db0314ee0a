/**
 * HiGHS behind the solver port. The only file that imports it.
 *
 * The engine is WebAssembly: loaded once, about 0.1 s, then synchronous. It has one thread and refuses the option
 * `threads`. Its models live outside the garbage collector, so each is disposed when its use ends.
 */
import highsModule, { type Highs, type InitOptions, type Model, type ModelData } from "highs";
import {
  type Bounds,
  type Column,
  type IntegerLimits,
  type IntegerProgram,
  type IntegerSolution,
  type LinearProgram,
  type LinearSolution,
  type LinearSolver,
  SolverMisuse,
  type SolveStatus,
  wholeSolution,
} from "../estimate/solver.js";

// Typed as a module by its declarations, but at run time the default export is the loader itself.
const loadModule = highsModule as unknown as (options?: InitOptions) => Promise<Highs>;

/** A seed of its own would change nothing but which of several equal optima comes first. */
const PINNED = { output_flag: false, log_to_console: false, random_seed: 0, solver: "choose" } as const;

/** Safety net of one LP solve; master programs here take hundreds. Assumption. */
const LP_ITERATIONS = 200_000;

let loading: Promise<LinearSolver> | undefined;

/** The engine, loaded on the first call. Rejects with a short message when it cannot be loaded; a later call tries again. */
export function loadHighs(): Promise<LinearSolver> {
  loading ??= loadModule().then(portOf, (cause: unknown) => {
    loading = undefined;
    throw new Error(`HiGHS did not load: ${brief(cause)}`);
  });
  return loading;
}

function portOf(highs: Highs): LinearSolver {
  return {
    name: `HiGHS ${highs.version.string}`,
    withProgram: (rows, use) => withProgram(highs, rows, use),
    solveInteger: (program, limits) => solveInteger(highs, program, limits),
  };
}

function withProgram<T>(highs: Highs, rows: readonly Bounds[], use: (program: LinearProgram) => T): T {
  const model = guarded(() => highs.createModel(modelData([], rows)));
  try {
    guarded(() => model.options.set({ ...PINNED, simplex_iteration_limit: LP_ITERATIONS }));
    return use(programOf(highs, model, rows));
  } finally {
    dispose(model);
  }
}

function programOf(highs: Highs, model: Model, given: readonly Bounds[]): LinearProgram {
  const rows = [...given];
  let columns = 0;
  return {
    addColumns(added) {
      if (added.length === 0) return;
      guarded(() => model.addCols(columnData(added, rows.length)));
      columns += added.length;
    },
    setRow(row, bounds) {
      guarded(() => model.changeRowBounds(row, bounds.lower, bounds.upper));
      rows[row] = bounds;
    },
    setColumn: (column, { lower, upper }) => void guarded(() => model.changeColBounds(column, lower, upper)),
    setCosts(costs) {
      if (costs.length !== columns) throw new SolverMisuse(`${costs.length} costs for ${columns} columns`);
      if (columns > 0) guarded(() => model.changeColsCost({ kind: "range", from: 0, to: columns - 1 }, costs));
    },
    solve: () => (columns > 0 ? solveLinear(highs, model) : emptyLinear(rows)),
  };
}

/** The engine answers a program without columns with numbers it never set, so it is not asked. */
function holdsAtZero(rows: readonly Bounds[]): boolean {
  return rows.every(({ lower, upper }) => lower <= 0 && upper >= 0);
}

function solveLinear(highs: Highs, model: Model): LinearSolution {
  const empty = { objective: Number.NaN, values: new Float64Array(), duals: new Float64Array(), iterations: 0 };
  try {
    const status = statusOf(highs, model.run().modelStatus);
    const iterations = Math.max(0, Number(model.info.get("simplex_iteration_count")));
    if (status === "failed") return { ...empty, status, reason: `model status ${model.getModelStatus()}` };
    if (status !== "optimal") return { ...empty, status, iterations };
    const { colValue, rowDual } = model.getSolution();
    return { status, objective: model.getObjectiveValue(), values: colValue, duals: rowDual, iterations };
  } catch (cause) {
    return { ...empty, status: "failed", reason: brief(cause) };
  }
}

function emptyLinear(rows: readonly Bounds[]): LinearSolution {
  const status = holdsAtZero(rows) ? "optimal" : "infeasible";
  const duals = new Float64Array(status === "optimal" ? rows.length : 0);
  return { status, objective: status === "optimal" ? 0 : Number.NaN, values: new Float64Array(), duals, iterations: 0 };
}

function solveInteger(highs: Highs, program: IntegerProgram, limits: IntegerLimits): IntegerSolution {
  if (program.columns.length === 0) {
    if (!holdsAtZero(program.rows)) return { ...NOTHING_FOUND, status: "infeasible" };
    return { ...NOTHING_FOUND, status: "optimal", values: [], objective: 0, bound: 0 };
  }
  const model = guarded(() =>
    highs.createModel({
      ...modelData(program.columns, program.rows),
      integrality: new Int32Array(program.columns.length).fill(highs.constants.variableType.integer),
    }),
  );
  try {
    return searchInteger(highs, model, program, limits);
  } catch (cause) {
    return { ...NOTHING_FOUND, status: "failed", reason: brief(cause) };
  } finally {
    dispose(model);
  }
}

const NOTHING_FOUND = {
  values: null,
  objective: Number.POSITIVE_INFINITY,
  bound: Number.NEGATIVE_INFINITY,
  nodes: 0,
  iterations: 0,
};

function searchInteger(
  highs: Highs,
  model: Model,
  program: IntegerProgram,
  { nodes, iterations, gap }: IntegerLimits,
): IntegerSolution {
  model.options.set({ ...PINNED, mip_max_nodes: nodes, mip_rel_gap: 0, mip_abs_gap: gap });
  if (program.start) model.setSolution({ colValue: program.start });
  let counted = 0;
  const { modelStatus } = model.run({
    [highs.constants.callbackType.mipInterrupt](event) {
      counted = Number(event.data.mip_total_lp_iterations ?? 0n);
      if (counted >= iterations) event.interrupt();
      return undefined;
    },
  });
  return { ...readInteger(highs, model, program, modelStatus), iterations: counted };
}

function readInteger(
  highs: Highs,
  model: Model,
  program: IntegerProgram,
  modelStatus: number,
): Omit<IntegerSolution, "iterations"> {
  const status = statusOf(highs, modelStatus);
  // Without a feasible point the engine still hands out arrays; they mean nothing.
  const found = model.info.get("primal_solution_status") === highs.constants.solutionStatus.feasible;
  const values = found ? wholeSolution(program, model.getSolution().colValue) : null;
  const objective = values ? costOf(program.columns, values) : Number.POSITIVE_INFINITY;
  const bound = Number(model.info.get("mip_dual_bound"));
  const nodes = Math.max(0, Number(model.info.get("mip_node_count")));
  if (status === "optimal" && !values) {
    return { status: "failed", values, objective, bound, nodes, reason: "the optimum is not whole once rounded" };
  }
  return { status, values, objective, bound: Number.isNaN(bound) ? Number.NEGATIVE_INFINITY : bound, nodes };
}

function costOf(columns: readonly Column[], values: readonly number[]): number {
  return columns.reduce((sum, column, index) => sum + column.cost * (values[index] ?? 0), 0);
}

function modelData(columns: readonly Column[], rows: readonly Bounds[]): ModelData {
  const { cost, lower, upper, matrix } = columnData(columns, rows.length);
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: cost,
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map((row) => row.lower),
    rowUpper: rows.map((row) => row.upper),
    matrix,
  };
}

/** Sparse columns, packed one after another, as the engine takes them. */
function columnData(columns: readonly Column[], numRows: number) {
  const starts = [0];
  for (const { rows, values } of columns) {
    if (rows.length !== values.length) throw new SolverMisuse("a column's rows and values differ in length");
    starts.push((starts.at(-1) ?? 0) + rows.length);
  }
  return {
    cost: Float64Array.from(columns, (column) => column.cost),
    lower: Float64Array.from(columns, (column) => column.lower),
    upper: Float64Array.from(columns, (column) => column.upper),
    matrix: {
      format: "csc" as const,
      numCols: columns.length,
      numRows,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(columns.flatMap((column) => column.rows)),
      values: Float64Array.from(columns.flatMap((column) => column.values)),
    },
  };
}

function statusOf(highs: Highs, modelStatus: number): SolveStatus {
  const code = highs.constants.modelStatus;
  switch (modelStatus) {
    case code.optimal:
    case code.empty: // no columns: all rows are met by nothing, or presolve would have said infeasible
      return "optimal";
    case code.infeasible:
      return "infeasible";
    case code.unbounded:
    case code.unboundedOrInfeasible:
      return "unbounded";
    case code.timeLimit:
    case code.iterationLimit:
    case code.solutionLimit:
    case code.interrupted:
    case code.objectiveBound:
    case code.objectiveTarget:
      return "stopped";
    default:
      return "failed";
  }
}

/** Turns what the engine throws into a short error: its own would print the whole bundle, one line of 168 KB. */
function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (cause) {
    throw new SolverMisuse(brief(cause));
  }
}

function dispose(model: Model): void {
  try {
    model.dispose();
  } catch {
    // After a trap the instance is lost with everything in it; there is nothing left to free.
  }
}

function brief(cause: unknown): string {
  const text = cause instanceof Error ? cause.message : String(cause);
  return text.length > 200 ? `${text.slice(0, 200)}…` : text;
}
