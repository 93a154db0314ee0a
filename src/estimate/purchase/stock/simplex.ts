/**
 * A small linear program of its own, so that stock is planned well where no engine is plugged in:
 * min Σ cost x, rows Σ a x ≥ demand or ≤ supply, x ≥ 0.
 *
 * Primal revised simplex with a dense inverse (Chvátal, Linear Programming, 1983, ch. 7), Bland's rule once it stalls.
 * Floats; whoever needs a proof takes the prices to whole numbers first.
 */
import type { Work } from "./work.js";

/** A variable of 0 or more: its cost, and where it stands in the rows. */
export interface MasterColumn {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/** A row: Σ ≥ bound or Σ ≤ bound. */
export interface MasterRow {
  /** 1: at least; −1: at most. */
  readonly sense: 1 | -1;
  readonly bound: number;
}

/** An optimum, or the best basis when work ran out. */
export interface MasterSolution {
  readonly objective: number;
  /** One a column, in the order added. */
  readonly values: Float64Array;
  /** One a row; ≥ 0 for at least, ≤ 0 for at most. */
  readonly prices: Float64Array;
}

const EPSILON = 1e-9;
/** Pivots between two fresh inversions, and without progress before Bland's rule. Assumptions. */
const REFRESH = 60;
const STALL = 40;
/** Multiply-adds in about a microsecond. Assumption, measured. */
const FLOPS = 600;

/** Basic variable: a column, or the slack of a row as −1 − row. */
type Basic = number;

/** Keeps its basis from one solve to the next. */
export class Simplex {
  private readonly columns: MasterColumn[] = [];
  private readonly size: number;
  private inverse: Float64Array[] = [];
  private basis: Basic[] = [];
  private level: Float64Array;
  private bounds: number[];
  /** Prices of the rows: basic costs times the inverse. They follow each pivot. */
  private prices: Float64Array;

  /** @param start - One column a `≥` row that serves it alone; together they and the slacks are the first plan. */
  constructor(
    private readonly rows: readonly MasterRow[],
    private readonly start: readonly MasterColumn[],
    private readonly work: Work,
  ) {
    this.size = rows.length;
    this.level = new Float64Array(this.size);
    this.bounds = rows.map((row) => row.bound);
    this.prices = new Float64Array(this.size);
    this.columns.push(...start);
    this.reset();
  }

  add(column: MasterColumn): void {
    this.columns.push(column);
  }

  /** New right-hand sides. Columns and basis stay: `solve` repairs the basis where it no longer serves. */
  setBounds(bounds: readonly number[]): void {
    this.bounds = [...bounds];
    this.computeLevels();
  }

  /** The first plan: each `≥` row by its starting column, each `≤` row by its slack. */
  private reset(): void {
    this.basis = this.rows.map((row, i) => (row.sense === 1 ? i : -1 - i));
    // Starting columns come first and in the order of the rows that they serve.
    const serving = new Map(this.start.map((column, index) => [column.rows[0] as number, index]));
    this.basis = this.basis.map((basic, row) => (basic >= 0 ? (serving.get(row) as number) : basic));
    this.invert();
  }

  solve(): MasterSolution {
    if (!this.repaired()) this.reset();
    let stalled = 0;
    for (let pivots = 0; !this.work.over; pivots++) {
      const entering = this.entering(stalled > STALL);
      if (entering === undefined) break;
      const direction = this.times(entering);
      const leaving = this.leaving(direction, stalled > STALL);
      if (leaving === undefined) break; // costs are ≥ 0: only float noise leads here
      stalled = (this.level[leaving] ?? 0) > EPSILON ? 0 : stalled + 1;
      this.pivot(entering, leaving, direction);
      if (pivots % REFRESH === REFRESH - 1) this.invert();
    }
    return this.solution();
  }

  /** Dual simplex steps until no basic variable is below zero; false when that takes too many. */
  private repaired(): boolean {
    for (let pivots = 0; pivots <= this.size; pivots++) {
      const leaving = lowest(this.level);
      if ((this.level[leaving] ?? 0) >= -EPSILON) return true;
      const entering = this.repairing(this.inverse[leaving] as Float64Array);
      if (entering === undefined) return false;
      this.pivot(entering, leaving, this.times(entering));
      if (pivots % REFRESH === REFRESH - 1) this.invert();
    }
    return false;
  }

  /** The variable that can raise a row of the inverse with the least loss of optimality. */
  private repairing(row: Float64Array): Basic | undefined {
    const { prices } = this;
    let chosen: Basic | undefined;
    let least = Number.POSITIVE_INFINITY;
    const offer = (basic: Basic, reduced: number, along: number): void => {
      if (along > -1e-7) return;
      const ratio = Math.max(0, reduced) / -along;
      if (ratio >= least) return;
      chosen = basic;
      least = ratio;
    };
    for (let i = 0; i < this.size; i++) {
      const sense = (this.rows[i] as MasterRow).sense;
      offer(-1 - i, sense * (prices[i] as number), -sense * (row[i] as number));
    }
    this.columns.forEach((column, index) => {
      offer(index, column.cost - dot(column, prices), dot(column, row));
    });
    this.work.spend((this.columns.length * 12) / FLOPS);
    return chosen;
  }

  private solution(): MasterSolution {
    const values = new Float64Array(this.columns.length);
    let objective = 0;
    this.basis.forEach((basic, i) => {
      if (basic < 0) return;
      values[basic] = Math.max(0, this.level[i] as number);
      objective += (values[basic] as number) * (this.columns[basic] as MasterColumn).cost;
    });
    return { objective, values, prices: this.prices.slice() };
  }

  private computePrices(): void {
    this.prices.fill(0);
    this.basis.forEach((basic, i) => {
      const cost = this.costOf(basic);
      if (cost !== 0) addScaled(this.prices, this.inverse[i] as Float64Array, cost);
    });
  }

  private costOf(basic: Basic): number {
    return basic < 0 ? 0 : (this.columns[basic] as MasterColumn).cost;
  }

  /** Cost of a variable less what its rows pay for it. */
  private reduced(basic: Basic): number {
    const [rows, values] = this.entriesOf(basic);
    return rows.reduce(
      (left, row, k) => left - (values[k] as number) * (this.prices[row] as number),
      this.costOf(basic),
    );
  }

  /** Most negative reduced cost; with Bland's rule the first negative one. Slacks are numbered before columns. */
  private entering(bland: boolean): Basic | undefined {
    const { prices } = this;
    let chosen: Basic | undefined;
    let least = -EPSILON * 100;
    const offer = (basic: Basic, reduced: number, scale: number): boolean => {
      if (reduced >= least * (bland ? 1 : scale)) return false;
      chosen = basic;
      least = reduced / scale;
      return bland;
    };
    for (let row = 0; row < this.size; row++) {
      const sense = (this.rows[row] as MasterRow).sense;
      if (offer(-1 - row, sense * (prices[row] as number), 1)) return chosen;
    }
    for (const [index, column] of this.columns.entries()) {
      if (offer(index, column.cost - dot(column, prices), Math.max(1, column.cost))) return chosen;
    }
    this.work.spend((this.columns.length * 6) / FLOPS);
    return chosen;
  }

  /** The entering variable's column in terms of the basis. A slack stands with −sense in its row. */
  private times(entering: Basic): Float64Array {
    const result = new Float64Array(this.size);
    const [rows, values] = this.entriesOf(entering);
    for (let i = 0; i < this.size; i++) {
      const row = this.inverse[i] as Float64Array;
      let sum = 0;
      for (let k = 0; k < rows.length; k++) sum += (row[rows[k] as number] as number) * (values[k] as number);
      result[i] = sum;
    }
    return result;
  }

  private entriesOf(basic: Basic): [readonly number[], readonly number[]] {
    if (basic < 0) return [[-1 - basic], [-(this.rows[-1 - basic] as MasterRow).sense]];
    const { rows, values } = this.columns[basic] as MasterColumn;
    return [rows, values];
  }

  /** Least ratio; of near equals the largest pivot, with Bland's rule the lowest number. */
  private leaving(direction: Float64Array, bland: boolean): number | undefined {
    let chosen: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.size; i++) {
      const pivot = direction[i] as number;
      if (pivot <= EPSILON) continue;
      const ratio = Math.max(0, this.level[i] as number) / pivot;
      if (ratio > least + EPSILON) continue;
      const near = ratio >= least - EPSILON && chosen !== undefined;
      const keeps = bland ? this.number(chosen) < this.number(i) : (direction[chosen ?? i] as number) >= pivot;
      if (near && keeps) continue;
      chosen = i;
      least = Math.min(least, ratio);
    }
    return chosen;
  }

  /** Order of Bland's rule: slacks by row, then columns. */
  private number(place: number | undefined): number {
    const basic = this.basis[place ?? 0] as Basic;
    return basic < 0 ? -1 - basic : this.size + basic;
  }

  private pivot(entering: Basic, leaving: number, direction: Float64Array): void {
    const pivotRow = this.inverse[leaving] as Float64Array;
    const pivot = direction[leaving] as number;
    const reduced = this.reduced(entering);
    for (let k = 0; k < this.size; k++) pivotRow[k] = (pivotRow[k] as number) / pivot;
    const step = (this.level[leaving] as number) / pivot;
    for (let i = 0; i < this.size; i++) {
      const factor = direction[i] as number;
      if (i === leaving || factor === 0) continue;
      addScaled(this.inverse[i] as Float64Array, pivotRow, -factor);
      this.level[i] = (this.level[i] as number) - factor * step;
    }
    addScaled(this.prices, pivotRow, reduced);
    this.level[leaving] = step;
    this.basis[leaving] = entering;
    this.work.spend((this.size * this.size) / FLOPS);
  }

  /** Gauss and Jordan, with the largest pivot of each column. */
  private invert(): void {
    const size = this.size;
    const matrix: Float64Array[] = this.rows.map(() => new Float64Array(size));
    this.basis.forEach((basic, place) => {
      const [rows, values] = this.entriesOf(basic);
      rows.forEach((row, k) => {
        (matrix[row] as Float64Array)[place] = values[k] as number;
      });
    });
    const inverse: Float64Array[] = this.rows.map((_, i) => new Float64Array(size).fill(1, i, i + 1));
    for (let place = 0; place < size; place++) {
      let best = place;
      for (let i = place + 1; i < size; i++) {
        if (Math.abs(matrix[i]?.[place] as number) > Math.abs(matrix[best]?.[place] as number)) best = i;
      }
      [matrix[place], matrix[best]] = [matrix[best] as Float64Array, matrix[place] as Float64Array];
      [inverse[place], inverse[best]] = [inverse[best] as Float64Array, inverse[place] as Float64Array];
      eliminate(matrix, inverse, place);
    }
    this.inverse = inverse;
    this.computeLevels();
    this.computePrices();
    this.work.spend(size ** 3 / FLOPS / 2);
  }

  private computeLevels(): void {
    this.level = Float64Array.from(this.inverse, (row) =>
      this.bounds.reduce((sum, b, k) => sum + b * (row[k] as number), 0),
    );
  }
}

function eliminate(matrix: Float64Array[], inverse: Float64Array[], place: number): void {
  const row = matrix[place] as Float64Array;
  const own = inverse[place] as Float64Array;
  const pivot = row[place] as number;
  for (let k = 0; k < row.length; k++) {
    row[k] = (row[k] as number) / pivot;
    own[k] = (own[k] as number) / pivot;
  }
  matrix.forEach((other, i) => {
    const factor = other[place] as number;
    if (i === place || factor === 0) return;
    addScaled(other, row, -factor);
    addScaled(inverse[i] as Float64Array, own, -factor);
  });
}

function lowest(values: Float64Array): number {
  let place = 0;
  for (let i = 1; i < values.length; i++) if ((values[i] as number) < (values[place] as number)) place = i;
  return place;
}

function addScaled(target: Float64Array, source: Float64Array, factor: number): void {
  for (let k = 0; k < target.length; k++) target[k] = (target[k] as number) + factor * (source[k] as number);
}

function dot(column: MasterColumn, prices: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < column.rows.length; k++)
    sum += (column.values[k] as number) * (prices[column.rows[k] as number] as number);
  return sum;
}
