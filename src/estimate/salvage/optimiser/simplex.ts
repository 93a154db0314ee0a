/**
 * The master program of column generation by a revised simplex method with a dense inverse of the basis.
 *
 * min Σ c x + Σ P u;  Σ a x + u ≥ n by group;  Σ x ≤ m by class of logs.  Buying everything is always feasible, so no
 * first phase is needed. Small on purpose: rows are groups and logs, at most a few hundred.
 */

/** A column: a way to saw one log of a class. */
export interface MasterColumn {
  readonly logClass: number;
  readonly cost: number;
  /** Groups of which it makes something, and how much. */
  readonly groups: Int32Array;
  readonly made: Int32Array;
}

/** The optimum over the columns so far. */
export interface MasterSolution {
  readonly value: number;
  /** One a column. */
  readonly x: Float64Array;
  /** Worth of one more piece of each group, from 0 to its price. */
  readonly piece: Float64Array;
  /** Worth of one more log of each class, ≥ 0. */
  readonly log: Float64Array;
}

/** Noise below which a reduced cost or a pivot counts as 0. Assumption: costs are of the order of 1 to 10⁵. */
const EPSILON = 1e-9;
/** Pivots for each row and column after which a solve ends where it stands: rounding can make it go in circles. Assumption. */
const MOST_PIVOTS = 20;
/** Pivots between two fresh inverses. */
const REFRESH = 150;

/** A master program that keeps its basis from one solve to the next. */
export class Master {
  readonly #columns: MasterColumn[] = [];
  /** Costs, classes, groups and counts of all columns one after another; `#ends` says where each leaves off. */
  #costs = new Float64Array(64);
  #classes = new Int32Array(64);
  #ends = new Int32Array(64);
  #entered = new Int32Array(512);
  #counts = new Float64Array(512);
  readonly #rows: number;
  readonly #groups: number;
  /** Variable in the basis, by row: u is j, surplus is groups + j, slack of class c is 2 groups + c, then columns. */
  #basis: Int32Array;
  #inverse: Float64Array;
  #value: Float64Array;
  /** Pivots so far: the measure of work. */
  pivots = 0;

  constructor(
    readonly price: readonly number[],
    readonly demand: readonly number[],
    readonly logs: readonly number[],
  ) {
    this.#groups = price.length;
    this.#rows = price.length + logs.length;
    this.#basis = Int32Array.from({ length: this.#rows }, (_, i) => (i < this.#groups ? i : i + this.#groups));
    this.#inverse = new Float64Array(this.#rows ** 2);
    for (let i = 0; i < this.#rows; i++) this.#inverse[i * this.#rows + i] = 1;
    this.#value = Float64Array.from([...demand, ...logs]);
  }

  /** Adds a column. */
  add(column: MasterColumn): void {
    const number = this.#columns.push(column) - 1;
    if (number >= this.#costs.length) {
      this.#costs = doubled(this.#costs);
      this.#classes = doubled(this.#classes);
      this.#ends = doubled(this.#ends);
    }
    const from = number > 0 ? (this.#ends[number - 1] as number) : 0;
    const end = from + column.groups.length;
    while (end > this.#entered.length) {
      this.#entered = doubled(this.#entered);
      this.#counts = doubled(this.#counts);
    }
    this.#costs[number] = column.cost;
    this.#classes[number] = column.logClass;
    this.#entered.set(column.groups, from);
    this.#counts.set(column.made, from);
    this.#ends[number] = end;
  }

  #cost(variable: number): number {
    if (variable < this.#groups) return this.price[variable] as number;
    const column = this.#columns[variable - 2 * this.#groups - this.logs.length];
    return column?.cost ?? 0;
  }

  /** Rows and coefficients of a variable. */
  #entries(variable: number): [number, number][] {
    const G = this.#groups;
    if (variable < G) return [[variable, 1]];
    if (variable < 2 * G) return [[variable - G, -1]];
    if (variable < 2 * G + this.logs.length) return [[variable - G, 1]];
    const column = this.#columns[variable - 2 * G - this.logs.length] as MasterColumn;
    const pieces = Array.from(column.groups, (j, k): [number, number] => [j, column.made[k] as number]);
    return [...pieces, [G + column.logClass, 1]];
  }

  /** Solves on from the last basis. Where it goes in circles, what it has found is feasible, and its prices are as good as any. */
  solve(): MasterSolution {
    const end = this.pivots + MOST_PIVOTS * (this.#rows + this.#columns.length);
    let idle = 0;
    let y = this.#duals();
    let exact = true;
    for (;;) {
      const entering = this.#enter(y, idle > 3 * this.#rows);
      if ((entering < 0 && exact) || this.pivots >= end) return this.#solution(y);
      if (entering >= 0) {
        const step = this.#pivot(entering, y);
        idle = step > EPSILON ? 0 : idle + 1;
        if (++this.pivots % REFRESH === 0) this.#refresh();
      }
      // Prices follow each pivot; they are reckoned anew before an end is called one.
      exact = entering < 0 || this.pivots % REFRESH === 0;
      if (exact) y = this.#duals();
    }
  }

  #duals(): Float64Array {
    const n = this.#rows;
    const y = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const cost = this.#cost(this.#basis[i] as number);
      if (cost === 0) continue;
      for (let k = 0; k < n; k++) y[k] = (y[k] as number) + cost * (this.#inverse[i * n + k] as number);
    }
    return y;
  }

  /** Most negative reduced cost; the first one where the last pivots went nowhere (Bland's rule). */
  #enter(y: Float64Array, first: boolean): number {
    const G = this.#groups;
    const base = 2 * G + this.logs.length;
    let best = -EPSILON * 100;
    let chosen = -1;
    const offer = (variable: number, reduced: number): boolean => {
      if (reduced >= best) return false;
      chosen = variable;
      if (first) return true;
      best = reduced;
      return false;
    };
    for (let j = 0; j < G; j++) {
      if (offer(j, (this.price[j] as number) - (y[j] as number)) || offer(G + j, y[j] as number)) return chosen;
    }
    for (let c = 0; c < this.logs.length; c++) if (offer(2 * G + c, -(y[G + c] as number))) return chosen;
    const column = this.#enterColumn(y, first, best);
    return column < 0 ? chosen : base + column;
  }

  /** The column of the most negative reduced cost below `best`, or the first one; -1 where there is none. */
  #enterColumn(y: Float64Array, first: boolean, best: number): number {
    const G = this.#groups;
    const costs = this.#costs;
    const classes = this.#classes;
    const ends = this.#ends;
    const groups = this.#entered;
    const made = this.#counts;
    let least = best;
    let chosen = -1;
    for (let q = 0, k = 0; q < this.#columns.length; q++) {
      let reduced = (costs[q] as number) - (y[G + (classes[q] as number)] as number);
      for (const end = ends[q] as number; k < end; k++)
        reduced -= (made[k] as number) * (y[groups[k] as number] as number);
      if (reduced >= least) continue;
      if (first) return q;
      least = reduced;
      chosen = q;
    }
    return chosen;
  }

  /**
   * Takes a variable into the basis; the prices follow.
   * @returns how far it went.
   */
  #pivot(entering: number, y: Float64Array): number {
    const n = this.#rows;
    const inverse = this.#inverse;
    const direction = new Float64Array(n);
    let reduced = this.#cost(entering);
    for (const [row, value] of this.#entries(entering)) {
      reduced -= value * (y[row] as number);
      for (let i = 0; i < n; i++) direction[i] = (direction[i] as number) + value * (inverse[i * n + row] as number);
    }
    let leaving = -1;
    let step = Number.POSITIVE_INFINITY;
    for (let i = 0; i < n; i++) {
      const d = direction[i] as number;
      if (d <= 1e-7) continue;
      const ratio = Math.max(0, this.#value[i] as number) / d;
      const better = ratio < step - EPSILON || (ratio < step + EPSILON && d > (direction[leaving] ?? 0));
      if (!better) continue;
      leaving = i;
      step = Math.min(step, ratio);
    }
    if (leaving < 0) throw new Error("a cost is negative without limit");
    const pivot = direction[leaving] as number;
    // A row names few logs, and what it does not name it does not change.
    const named: number[] = [];
    for (let k = 0; k < n; k++) {
      const value = (inverse[leaving * n + k] as number) / pivot;
      inverse[leaving * n + k] = value;
      if (value === 0) continue;
      named.push(k);
      y[k] = (y[k] as number) + reduced * value;
    }
    for (let i = 0; i < n; i++) {
      const d = direction[i] as number;
      if (i === leaving || d === 0) continue;
      this.#value[i] = (this.#value[i] as number) - step * d;
      const [to, from] = [i * n, leaving * n];
      for (const k of named) inverse[to + k] = (inverse[to + k] as number) - d * (inverse[from + k] as number);
    }
    this.#value[leaving] = step;
    this.#basis[leaving] = entering;
    return step;
  }

  /** Inverts the basis anew (Gauss–Jordan with row exchange) and takes the values from it. */
  #refresh(): void {
    const n = this.#rows;
    const matrix = new Float64Array(n * n);
    const inverse = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      inverse[i * n + i] = 1;
      for (const [row, value] of this.#entries(this.#basis[i] as number)) matrix[row * n + i] = value;
    }
    const swap = (a: number, b: number) => {
      for (const m of [matrix, inverse]) {
        const row = m.slice(a * n, a * n + n);
        m.copyWithin(a * n, b * n, b * n + n);
        m.set(row, b * n);
      }
    };
    for (let c = 0; c < n; c++) {
      let p = c;
      for (let r = c + 1; r < n; r++)
        if (Math.abs(matrix[r * n + c] as number) > Math.abs(matrix[p * n + c] as number)) p = r;
      if (Math.abs(matrix[p * n + c] as number) < 1e-11) return; // keep the old inverse rather than a broken one
      if (p !== c) swap(p, c);
      const scale = 1 / (matrix[c * n + c] as number);
      for (let k = 0; k < n; k++) {
        matrix[c * n + k] = (matrix[c * n + k] as number) * scale;
        inverse[c * n + k] = (inverse[c * n + k] as number) * scale;
      }
      const [left, right] = [namedIn(matrix, c, n), namedIn(inverse, c, n)];
      for (let r = 0; r < n; r++) {
        const factor = matrix[r * n + c] as number;
        if (r === c || factor === 0) continue;
        for (const k of left)
          matrix[r * n + k] = (matrix[r * n + k] as number) - factor * (matrix[c * n + k] as number);
        for (const k of right)
          inverse[r * n + k] = (inverse[r * n + k] as number) - factor * (inverse[c * n + k] as number);
      }
    }
    this.#inverse = inverse;
    const right = [...this.demand, ...this.logs];
    this.#value = Float64Array.from({ length: n }, (_, i) =>
      right.reduce((sum, value, k) => sum + value * (inverse[i * n + k] as number), 0),
    );
  }

  #solution(y: Float64Array): MasterSolution {
    const x = new Float64Array(this.#columns.length);
    const base = 2 * this.#groups + this.logs.length;
    let value = 0;
    for (let i = 0; i < this.#rows; i++) {
      const variable = this.#basis[i] as number;
      const amount = Math.max(0, this.#value[i] as number);
      value += amount * this.#cost(variable);
      if (variable >= base) x[variable - base] = amount;
    }
    const piece = Float64Array.from(this.price, (price, j) => Math.min(price, Math.max(0, y[j] as number)));
    const log = Float64Array.from(this.logs, (_, c) => Math.max(0, -(y[this.#groups + c] as number)));
    return { value, x, piece, log };
  }
}

/** The same numbers at the beginning of twice the room. */
function doubled<T extends Float64Array | Int32Array>(array: T): T {
  const room = new (array.constructor as new (length: number) => T)(2 * array.length);
  room.set(array);
  return room;
}

/** Columns in which a row of a square matrix is not 0: few, since a row names few logs. */
function namedIn(matrix: Float64Array, row: number, n: number): number[] {
  const named: number[] = [];
  for (let k = 0; k < n; k++) if (matrix[row * n + k] !== 0) named.push(k);
  return named;
}
