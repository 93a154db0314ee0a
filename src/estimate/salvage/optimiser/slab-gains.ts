/**
 * What every slab of a bolt is worth at given prices, by its kind and the height of its lower face. What may meet rot or
 * pith is filled in for a bolt at once; clear of both, a slab's worth hangs on its width alone and is looked up by it.
 */
import type { BoltTable } from "./bolt-table.js";
import type { Job } from "./job.js";
import type { SlabKind } from "./slab-kinds.js";
import type { SlabWorth } from "./slab-worth.js";
import type { SpeciesRules, WaneRow } from "./species-rules.js";
import type { RunWorth } from "./strip-values.js";

/** Slabs of a kind that keep to a wane: their worth over a length, by the point of their width. */
export interface RowWorth {
  readonly kind: number;
  readonly slab: SlabKind;
  readonly row: WaneRow;
  readonly clear: RunWorth;
  readonly touching: RunWorth;
  /** Whether a strip that boxes the pith in is worth anything. */
  boxed: boolean;
  /** Money for one rip cut. */
  readonly rip: number;
}

/** All rows of a length, and those first that may be worth anything at the prices of that number. */
interface LengthRows {
  readonly all: readonly RowWorth[];
  readonly live: RowWorth[];
  count: number;
  prices: number;
}

/** Worths of the slabs of the bolt that was filled in last. */
export class SlabGains {
  /** Of a slab that lies on one side of the axis and may meet rot or pith, at [kind × stride + height of its nearer face]. */
  outside = new Float64Array(0);
  /** Of a slab that holds the axis, at [kind × stride + height of its farther face]; below 0 until it is asked for. */
  #over = new Float64Array(0);
  #table: BoltTable | null = null;
  stride = 0;
  /** Kinds that are worth something somewhere, thin to thick: the first `kindCount`. Arrays stay as long as they were, for cutting them short costs time. */
  readonly kinds: Int32Array;
  kindCount = 0;
  /** Their rows, kind by kind: the first `rowCount`. */
  readonly rows: RowWorth[] = [];
  rowCount = 0;
  /** By kind: the first of its rows, and the first after them. */
  readonly #first: Int32Array;
  readonly #after: Int32Array;
  /** Number of the bolt filled in last, and of the last one that each kind is worth something in. */
  #bolt = 0;
  readonly #live: Int32Array;
  /** How many prices there have been. */
  #prices = 0;
  readonly #byLength: LengthRows[] = [];

  constructor(
    readonly job: Job,
    readonly worth: SlabWorth,
  ) {
    this.kinds = new Int32Array(job.slabs.length);
    this.#first = new Int32Array(job.slabs.length);
    this.#after = new Int32Array(job.slabs.length);
    this.#live = new Int32Array(job.slabs.length);
  }

  /** Begins anew at other prices. */
  reprice(price: ArrayLike<number>): void {
    this.worth.reprice(price);
    this.#table = null;
    this.#prices++;
  }

  /** Makes a bolt the one whose slabs are asked for. */
  fill(table: BoltTable): void {
    if (table === this.#table) return;
    const { job } = this;
    this.#table = table;
    this.#bolt++;
    this.kindCount = 0;
    this.rowCount = 0;
    this.stride = table.top + 1;
    const size = job.slabs.length * this.stride;
    if (this.outside.length < size) {
      this.outside = new Float64Array(2 * size);
      this.#over = new Float64Array(2 * size);
    }
    const rows = this.#rowsOf(table.length, table.rules);
    for (let r = 0; r < rows.count; r++) this.#take(table, rows.live[r] as RowWorth);
  }

  /** Takes the slabs of a row, unless none of the bolt is worth anything. */
  #take(table: BoltTable, one: RowWorth): void {
    const { kind, slab, row, clear, touching } = one;
    const { thickness, pointOfHalf } = slab;
    // The widest slab there can be lies with its middle on the axis.
    const middle = (thickness + 1) >> 1;
    if (middle > table.top) return;
    const widest = pointOfHalf[(table.half[row.wane] as Uint16Array)[middle] as number] as number;
    const { values } = this.worth;
    values.reach(clear, kind, widest);
    if (!this.#worthSawing(one, widest) && !one.boxed) return;
    values.reach(touching, kind, widest);
    if (this.#live[kind] !== this.#bolt) {
      this.#live[kind] = this.#bolt;
      this.kinds[this.kindCount++] = kind;
      this.#first[kind] = this.rowCount;
      const at = kind * this.stride;
      this.outside.fill(0, at, at + Math.min(table.core, this.stride));
      this.#over.fill(-1, at, at + Math.min(thickness, this.stride));
    }
    this.rows[this.rowCount++] = one;
    this.#after[kind] = this.rowCount;
    if (table.core > 0) this.#core(table, one);
  }

  #worthSawing({ clear, rip }: RowWorth, widest: number): boolean {
    return clear.count > 0 && (this.worth.values.pool[clear.at + widest] as number) > rip;
  }

  /** Rows of a length; touching and boxing masks take no more than the clear one and boxed pieces. */
  #rowsOf(i: number, rules: SpeciesRules): LengthRows {
    const key = rules.id * this.job.lengths.length + i;
    this.#byLength[key] ??= { all: this.#allRows(i, rules), live: [], count: 0, prices: 0 };
    const rows = this.#byLength[key];
    if (rows.prices === this.#prices) return rows;
    const { values } = this.worth;
    rows.prices = this.#prices;
    rows.count = 0;
    for (const one of rows.all) {
      const { kind, row } = one;
      values.run(i, row.clear, kind);
      one.boxed = row.boxing !== row.touching && values.boxes(i, row.boxing, kind);
      if (one.clear.count === 0 && !one.boxed) continue;
      values.run(i, row.touching, kind);
      rows.live[rows.count++] = one;
    }
    return rows;
  }

  #allRows(i: number, rules: SpeciesRules): RowWorth[] {
    const { values } = this.worth;
    return rules.rows.flatMap((rows, kind) =>
      rows.map((row) => ({
        kind,
        slab: this.job.slabs[kind] as SlabKind,
        row,
        clear: values.run(i, row.clear, kind),
        touching: values.run(i, row.touching, kind),
        boxed: false,
        rip: values.rip(i, kind),
      })),
    );
  }

  /** Slabs on one side of the axis that may meet rot or pith. */
  #core(table: BoltTable, one: RowWorth): void {
    const { outside, stride } = this;
    const { thickness } = one.slab;
    for (let near = 0; near < table.core && near + thickness <= table.top; near++) {
      const value = this.#meeting(table, one, near, near + thickness);
      const at = one.kind * stride + near;
      if (value > (outside[at] as number)) outside[at] = value;
    }
    if (table.box > 0 || thickness > table.top) return;
    // A slab that begins at the axis holds it where the pith is a point.
    const at = one.kind * stride;
    outside[at] = Math.max(outside[at] as number, this.#boxed(table, one, thickness));
  }

  /** Worth of a slab that holds the axis. @param end - Height of its farther face, in the wood. */
  over(kind: number, end: number): number {
    const at = kind * this.stride + end;
    const known = this.#over[at] as number;
    if (known >= 0) return known;
    const table = this.#table as BoltTable;
    let best = 0;
    for (let r = this.#first[kind] as number; r < (this.#after[kind] as number); r++) {
      const one = this.rows[r] as RowWorth;
      let value: number;
      if (table.core === 0) {
        const half = (table.half[one.row.wane] as Uint16Array)[end] as number;
        value = this.#sawn(one, one.clear, (this.job.slabs[kind] as SlabKind).pointOfHalf[half] as number);
      } else {
        value = this.#meeting(table, one, 0, end);
        if ((this.job.slabs[kind] as SlabKind).thickness - end >= table.box)
          value = Math.max(value, this.#boxed(table, one, end));
      }
      if (value > best) best = value;
    }
    this.#over[at] = best;
    return best;
  }

  #boxed(table: BoltTable, { kind, row }: RowWorth, end: number): number {
    const half = (table.half[row.wane] as Uint16Array)[end] as number;
    if (row.boxing === row.touching || half <= (table.rot[0] as number)) return 0;
    return this.worth.boxedValue(table, kind, row, half);
  }

  /** One run where nothing is in the way, or two beside rot or pith. */
  #meeting(table: BoltTable, one: RowWorth, near: number, outer: number): number {
    const { kind, row, clear, touching } = one;
    const half = (table.half[row.wane] as Uint16Array)[outer] as number;
    const rot = table.rot[near] as number;
    if (half <= rot) return 0;
    const { pointOfHalf } = this.job.slabs[kind] as SlabKind;
    const keep = Math.max(rot, table.pith[near] as number);
    if (keep === 0) return this.#sawn(one, clear, pointOfHalf[half] as number);
    const value =
      rot > 0 ? this.#beside(one, touching, half, rot) : this.#sawn(one, touching, pointOfHalf[half] as number);
    if (row.clear === row.touching || half <= keep) return value;
    return Math.max(value, this.#beside(one, clear, half, keep));
  }

  /**
   * Both sides of a hole. Where it is no wider than a kerf, strips just one kerf apart would share the cut between them:
   * that cut is not charged twice, so that no plan is worth more than is reckoned here.
   */
  #beside(one: RowWorth, run: RunWorth, half: number, hole: number): number {
    const { kerf, pointOf } = this.job.slabs[one.kind] as SlabKind;
    const sides = 2 * this.#sawn(one, run, pointOf[half - hole] as number);
    return sides > 0 && 2 * hole <= kerf ? sides + one.rip : sides;
  }

  /** Worth of a whole run, reckoned already: with the last rip cut, never below 0. */
  #sawn({ rip }: RowWorth, { at, count }: RunWorth, point: number): number {
    return count === 0 ? 0 : Math.max(0, (this.worth.values.pool[at + point] as number) - rip);
  }

  /** Worth of slab kind `kind` of the bolt filled in last, its lower face at y0; it must lie in the wood. */
  at(kind: number, y0: number): number {
    if (this.#live[kind] !== this.#bolt) return 0;
    const end = y0 + (this.job.slabs[kind] as SlabKind).thickness;
    if (y0 < 0 && end > 0) return this.over(kind, Math.max(-y0, end));
    const near = y0 >= 0 ? y0 : -end;
    const table = this.#table as BoltTable;
    if (near < table.core) return this.outside[kind * this.stride + near] as number;
    let best = 0;
    for (let r = this.#first[kind] as number; r < (this.#after[kind] as number); r++) {
      const one = this.rows[r] as RowWorth;
      const half = (table.half[one.row.wane] as Uint16Array)[y0 >= 0 ? end : -y0] as number;
      const value = this.#sawn(one, one.clear, one.slab.pointOfHalf[half] as number);
      if (value > best) best = value;
    }
    return best;
  }
}
