/**
 * What every slab of a bolt is worth at given prices, by its kind and the height of its lower face: filled in one sweep
 * for a bolt, so that the programs over stacks have only to look it up.
 */
import type { BoltTable } from "./bolt-table.js";
import type { Job, SlabKind, SpeciesRules, WaneRow } from "./job.js";
import type { SlabWorth } from "./slab-worth.js";

/** Slabs of a kind that keep to a wane: their worth over a length, by the point of their width. */
interface RowWorth {
  readonly kind: number;
  readonly row: WaneRow;
  readonly clear: Float64Array;
  readonly touching: Float64Array;
}

/** Rows of one length, by kind, and the kinds that have any. */
interface Rows {
  readonly byKind: readonly (readonly RowWorth[])[];
  readonly kinds: readonly number[];
  readonly thick: Int32Array;
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
  kinds: readonly number[] = [];
  /** Their thicknesses. */
  thick: Readonly<Int32Array> = new Int32Array(0);
  #byKind: readonly (readonly RowWorth[])[] = [];
  readonly #rows: Rows[] = [];

  constructor(
    readonly job: Job,
    readonly worth: SlabWorth,
  ) {}

  /** Reckons all slabs of a bolt. */
  fill(table: BoltTable): void {
    const { job } = this;
    const { byKind, kinds, thick } = this.#rowsOf(table.length, table.rules);
    this.#table = table;
    this.kinds = kinds;
    this.thick = thick;
    this.#byKind = byKind;
    this.stride = table.top + 1;
    const size = job.slabs.length * this.stride;
    if (this.outside.length < size) {
      this.outside = new Float64Array(2 * size);
      this.#over = new Float64Array(2 * size);
    }
    this.outside.fill(0, 0, size);
    this.#over.fill(-1, 0, size);
    for (const kind of kinds) {
      for (const row of byKind[kind] as readonly RowWorth[]) {
        this.#clear(table, row);
        if (table.core > 0) this.#core(table, row);
      }
    }
  }

  /** Rows of a length that are worth anything; touching and boxing masks take no more than the clear one and boxed pieces. */
  #rowsOf(i: number, rules: SpeciesRules): Rows {
    const key = rules.id * this.job.lengths.length + i;
    const known = this.#rows[key];
    if (known !== undefined) return known;
    const { values } = this.worth;
    const byKind = rules.rows.map((rows, kind) => {
      const worthy: RowWorth[] = [];
      for (const row of rows) {
        const clear = values.sawn(i, row.clear, kind);
        const boxed = row.boxing !== row.touching && values.boxes(i, row.boxing, kind);
        if (!((clear[clear.length - 1] as number) > 0) && !boxed) continue;
        worthy.push({ kind, row, clear, touching: values.sawn(i, row.touching, kind) });
      }
      return worthy;
    });
    const kinds: number[] = [];
    for (let kind = 0; kind < byKind.length; kind++) if ((byKind[kind] as RowWorth[]).length > 0) kinds.push(kind);
    const thick = Int32Array.from(kinds, (kind) => (this.job.slabs[kind] as SlabKind).thickness);
    const made = { byKind, kinds, thick };
    this.#rows[key] = made;
    return made;
  }

  /** Slabs clear of rot and pith. */
  #clear({ half, top, core }: BoltTable, { kind, row, clear }: RowWorth): void {
    const { outside } = this;
    const { thickness, pointOfHalf } = this.job.slabs[kind] as SlabKind;
    const halves = half[row.wane] as Uint16Array;
    const at = kind * this.stride - thickness;
    for (let end = core + thickness; end <= top; end++) {
      const value = clear[pointOfHalf[halves[end] as number] as number] as number;
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
        value = one.clear[(this.job.slabs[kind] as SlabKind).pointOfHalf[half] as number] as number;
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
  #meeting(table: BoltTable, { kind, row, clear, touching }: RowWorth, near: number, outer: number): number {
    const half = (table.half[row.wane] as Uint16Array)[outer] as number;
    const rot = table.rot[near] as number;
    if (half <= rot) return 0;
    const { pointOfHalf } = this.job.slabs[kind] as SlabKind;
    const value =
      rot > 0 ? this.#beside(table, kind, touching, half, rot) : (touching[pointOfHalf[half] as number] as number);
    const keep = Math.max(rot, table.pith[near] as number);
    if (row.clear === row.touching || half <= keep) return value;
    return Math.max(value, this.#beside(table, kind, clear, half, keep));
  }

  /**
   * Both sides of a hole. Where it is no wider than a kerf, strips just one kerf apart would share the cut between them:
   * that cut is not charged twice, so that no plan is worth more than is reckoned here.
   */
  #beside(table: BoltTable, kind: number, sawn: Float64Array, half: number, hole: number): number {
    const { kerf, pointOf } = this.job.slabs[kind] as SlabKind;
    const sides = 2 * (sawn[pointOf[half - hole] as number] as number);
    return sides > 0 && 2 * hole <= kerf ? sides + this.worth.values.rip(table.length, kind) : sides;
  }

  /** Worth of slab kind `kind` of the bolt filled in last, its lower face at y0; it must lie in the wood. */
  at(kind: number, y0: number): number {
    const end = y0 + (this.job.slabs[kind] as SlabKind).thickness;
    const base = kind * this.stride;
    if (y0 >= 0) return this.outside[base + y0] as number;
    if (end > 0) return this.over(kind, Math.max(-y0, end));
    return this.outside[base - end] as number;
  }
}
