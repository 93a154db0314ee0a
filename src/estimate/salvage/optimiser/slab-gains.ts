/**
 * What every slab of a bolt is worth at given prices, by its kind and the height of its lower face: filled in one sweep
 * for a bolt, so that the programs over stacks have only to look it up.
 */
import type { BoltTable } from "./bolt-table.js";
import type { Job } from "./job.js";
import type { SlabKind } from "./slab-kinds.js";
import type { SlabWorth } from "./slab-worth.js";
import type { SpeciesRules, WaneRow } from "./species-rules.js";
import type { RunWorth } from "./strip-values.js";

/** Slabs of a kind that keep to a wane: their worth over a length, by the point of their width. */
interface RowWorth {
  readonly kind: number;
  readonly row: WaneRow;
  readonly clear: RunWorth;
  readonly touching: RunWorth;
  /** Whether a strip that boxes the pith in is worth anything. */
  readonly boxed: boolean;
  /** Money for one rip cut. */
  readonly rip: number;
}

/** Worths of the slabs of the bolt that was filled in last. */
export class SlabGains {
  /** Of a slab that lies on one side of the axis, at [kind × stride + height of its nearer face]. */
  outside = new Float64Array(0);
  /** Of a slab that holds the axis, at [kind × stride + height of its farther face]; below 0 until it is asked for. */
  #over = new Float64Array(0);
  #table: BoltTable | null = null;
  stride = 0;
  /** Kinds that are worth something somewhere, thin to thick. */
  readonly kinds: number[] = [];
  /** Their thicknesses. */
  readonly thick: number[] = [];
  readonly #byKind: RowWorth[][];
  /** Number of the bolt filled in last, and of the last one that each kind is worth something in. */
  #bolt = 0;
  readonly #live: Int32Array;
  /** Rows of each length, all kinds together. */
  #rows: (readonly RowWorth[])[] = [];

  constructor(
    readonly job: Job,
    readonly worth: SlabWorth,
  ) {
    this.#byKind = job.slabs.map(() => []);
    this.#live = new Int32Array(job.slabs.length);
  }

  /** Begins anew at other prices. */
  reprice(price: ArrayLike<number>): void {
    this.worth.reprice(price);
    this.#rows = [];
  }

  /** Reckons all slabs of a bolt. */
  fill(table: BoltTable): void {
    const { job, kinds, thick } = this;
    this.#table = table;
    this.#bolt++;
    kinds.length = 0;
    thick.length = 0;
    this.stride = table.top + 1;
    const size = job.slabs.length * this.stride;
    if (this.outside.length < size) {
      this.outside = new Float64Array(2 * size);
      this.#over = new Float64Array(2 * size);
    }
    for (const row of this.#rowsOf(table.length, table.rules)) this.#take(table, row);
  }

  /** Fills in the slabs of a row, unless none of the bolt is worth anything. */
  #take(table: BoltTable, one: RowWorth): void {
    const { kind, row, clear, boxed, rip } = one;
    const { thickness, pointOfHalf } = this.job.slabs[kind] as SlabKind;
    // The widest slab there can be lies with its middle on the axis.
    const middle = (thickness + 1) >> 1;
    if (middle > table.top) return;
    const widest = pointOfHalf[(table.half[row.wane] as Uint16Array)[middle] as number] as number;
    const { values } = this.worth;
    if (!(values.fill(clear, kind, widest) > rip) && !boxed) return;
    values.fill(one.touching, kind, widest);
    if (this.#live[kind] !== this.#bolt) {
      this.#live[kind] = this.#bolt;
      this.kinds.push(kind);
      this.thick.push(thickness);
      const at = kind * this.stride;
      this.outside.fill(0, at, at + this.stride);
      this.#over.fill(-1, at, at + this.stride);
      (this.#byKind[kind] as RowWorth[]).length = 0;
    }
    (this.#byKind[kind] as RowWorth[]).push(one);
    if (clear.count > 0) this.#clear(table, one);
    if (table.core > 0) this.#core(table, one);
  }

  /** Rows of a length that may be worth anything; touching and boxing masks take no more than the clear one and boxed pieces. */
  #rowsOf(i: number, rules: SpeciesRules): readonly RowWorth[] {
    const key = rules.id * this.job.lengths.length + i;
    const known = this.#rows[key];
    if (known !== undefined) return known;
    const { values } = this.worth;
    const made: RowWorth[] = [];
    for (const [kind, rows] of rules.rows.entries()) {
      for (const row of rows) {
        const clear = values.run(i, row.clear, kind);
        const boxed = row.boxing !== row.touching && values.boxes(i, row.boxing, kind);
        if (clear.count === 0 && !boxed) continue;
        made.push({ kind, row, clear, touching: values.run(i, row.touching, kind), boxed, rip: values.rip(i, kind) });
      }
    }
    this.#rows[key] = made;
    return made;
  }

  /** Slabs clear of rot and pith. */
  #clear({ half, top, core }: BoltTable, { kind, row, clear: { at: base }, rip }: RowWorth): void {
    const { outside } = this;
    const { pool } = this.worth.values;
    const { thickness, pointOfHalf } = this.job.slabs[kind] as SlabKind;
    const halves = half[row.wane] as Uint16Array;
    const at = kind * this.stride - thickness;
    for (let end = core + thickness; end <= top; end++) {
      const value = (pool[base + (pointOfHalf[halves[end] as number] as number)] as number) - rip;
      // Slabs farther out are no wider.
      if (value <= 0) break;
      if (value > (outside[at + end] as number)) outside[at + end] = value;
    }
  }

  /** Slabs on one side of the axis that may meet rot or pith. */
  #core(table: BoltTable, one: RowWorth): void {
    const { outside, stride } = this;
    const { thickness } = this.job.slabs[one.kind] as SlabKind;
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
    for (const one of this.#byKind[kind] as readonly RowWorth[]) {
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
    const base = kind * this.stride;
    if (y0 >= 0) return this.outside[base + y0] as number;
    if (end > 0) return this.over(kind, Math.max(-y0, end));
    return this.outside[base - end] as number;
  }
}
