/**
 * The port to an LP/MILP engine: types and two helpers, no engine. `api` plugs one in; where none is plugged in,
 * optimisers fall back to methods of their own.
 *
 * Everything is minimised. Work is counted (simplex iterations, nodes), never timed, so that the same request gives
 * the same answer on every machine.
 */

/** Limits of a row's activity or of a column's value; ±Infinity where there is none. */
export interface Bounds {
  readonly lower: number;
  readonly upper: number;
}

/** A variable: its cost, its bounds, and where it stands in the rows (`rows[k]` takes `values[k]`; no row twice). */
export interface Column extends Bounds {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/**
 * `optimal`; `infeasible`; `unbounded`; `stopped`: a limit was reached before the proof;
 * `failed`: the engine broke down, see `reason`.
 */
export type SolveStatus = "optimal" | "infeasible" | "unbounded" | "stopped" | "failed";

/** Floats, to the engine's tolerance of about 1e-7. Arrays are empty unless the status is `optimal`. */
export interface LinearSolution {
  readonly status: SolveStatus;
  readonly objective: number;
  /** One a column, in the order the columns were added. */
  readonly values: Float64Array;
  /** One a row: what the objective grows by for one more unit of the row's bound. ≥ 0 for a lower bound, ≤ 0 for an upper. */
  readonly duals: Float64Array;
  readonly iterations: number;
  /** Short, only with `failed`. */
  readonly reason?: string;
}

/** A linear program that stays in the engine between solves, so that each solve starts from the last basis. */
export interface LinearProgram {
  /** Appends columns; their numbers go on from the last. Throws `SolverMisuse` on a row that does not exist. */
  addColumns(columns: readonly Column[]): void;
  setRow(row: number, bounds: Bounds): void;
  setColumn(column: number, bounds: Bounds): void;
  /** New costs for all columns, in order. */
  setCosts(costs: readonly number[]): void;
  solve(): LinearSolution;
}

/** All columns take whole numbers only. Bounds and coefficients are whole; costs may be any finite number. */
export interface IntegerProgram {
  readonly columns: readonly Column[];
  readonly rows: readonly Bounds[];
  /** A feasible plan to start from, one value a column. */
  readonly start?: readonly number[];
}

/** Where a search stops, in counted work. */
export interface IntegerLimits {
  /** Branch-and-bound nodes. */
  readonly nodes: number;
  /** Simplex iterations over all nodes; checked at the engine's checkpoints, so overrun by a little, always equally. */
  readonly iterations: number;
  /** The search may end when objective − bound is no more than this. 0 asks for the optimum to the engine's tolerance. */
  readonly gap: number;
}

/** The best plan found and what is proven of it. */
export interface IntegerSolution {
  readonly status: SolveStatus;
  /** Whole numbers that satisfy every row and bound exactly (checked again after rounding), or null if none was found. */
  readonly values: readonly number[] | null;
  /** Computed again from `values`; Infinity without them. */
  readonly objective: number;
  /** No plan costs less, to the engine's tolerance. −Infinity if nothing is known. */
  readonly bound: number;
  readonly nodes: number;
  readonly iterations: number;
  /** Short, only with `failed`. */
  readonly reason?: string;
}

/** An engine. Solves are synchronous. */
export interface LinearSolver {
  /** Name and version, for the answer's `about`. */
  readonly name: string;
  /** Runs `use` with a program of these rows and no columns yet; the program is gone when `use` returns. */
  withProgram<T>(rows: readonly Bounds[], use: (program: LinearProgram) => T): T;
  solveInteger(program: IntegerProgram, limits: IntegerLimits): IntegerSolution;
}

/** The caller handed the engine something malformed: a bug, never a user's fault. */
export class SolverMisuse extends Error {
  constructor(message: string) {
    super(message);
    this.name = "SolverMisuse";
  }
}

/**
 * Rounds a bound up to the next multiple of `grid` (costs come only in multiples of it), forgiving the float noise
 * of a solver: 439.0000002 on a grid of 1 stays 439.
 *
 * @param noise - Assumption: 1e-6 of the bound, or of one grid step where that is more.
 */
export function boundUp(bound: number, grid: number, noise = 1e-6): number {
  return Math.ceil((bound - Math.max(Math.abs(bound), grid) * noise) / grid) * grid + 0; // + 0 turns −0 into 0
}

/**
 * Whole numbers next to `values` if they satisfy every bound and row exactly, else null.
 * Coefficients and bounds are whole, so the sums are exact.
 */
export function wholeSolution(program: IntegerProgram, values: ArrayLike<number>): number[] | null {
  const activity = new Float64Array(program.rows.length);
  const whole: number[] = [];
  for (const [index, column] of program.columns.entries()) {
    const value = Math.round(values[index] ?? Number.NaN) + 0; // + 0 turns −0 into 0
    if (!within(value, column)) return null;
    column.rows.forEach((row, k) => {
      activity[row] = (activity[row] ?? 0) + value * (column.values[k] ?? 0);
    });
    whole.push(value);
  }
  return program.rows.every((bounds, row) => within(activity[row] ?? 0, bounds)) ? whole : null;
}

/** NaN is within nothing. */
function within(value: number, bounds: Bounds): boolean {
  return value >= bounds.lower && value <= bounds.upper;
}
