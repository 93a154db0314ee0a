/**
 * The best stack of slabs out of one bolt at given prices: a dynamic program over the heights of faces.
 *
 * A stack is the same upside down, so only what lies above the axis is reckoned, and two such halves are joined over
 * a slab, a kerf or a waste that covers the axis (the staged pattern of Faaland & Briggs 1984, halved).
 */
import { beyondWaste } from "../bolt.js";
import type { BoltTable } from "./bolt-table.js";
import type { Job } from "./job.js";
import type { RowWorth, SlabGains } from "./slab-gains.js";
import type { SlabKind } from "./slab-kinds.js";

/** A slab of a stack, by number of its kind. */
export interface StackSlab {
  readonly kind: number;
  readonly y0: number;
}

/** What two halves are joined over: a slab, a kerf, or else a waste. */
interface Joint {
  value: number;
  slab: StackSlab | null;
  kerfAt: number | null;
  /** How far above the axis a waste reaches at the least. */
  waste: number;
}

/** Room for one stack's work; used again from bolt to bolt. */
export class StackProgram {
  /** Best of what lies above face f, the cut under it paid. */
  #above = new Float64Array(0);
  /** The same with that cut to pay. */
  #started = new Float64Array(0);
  /** Best of any face from f up that starts with a cut of its own; 0 for leaving it. */
  #afresh = new Float64Array(0);
  /** The bolt that these are of, and its best joint. */
  #table: BoltTable | null = null;
  #joint: Joint | null = null;
  /** The lowest face that slabs of each row have been put on. */
  readonly #sawn: Int32Array;
  /** Stacks reckoned so far: the measure of work. */
  work = 0;

  constructor(
    readonly job: Job,
    readonly gains: SlabGains,
  ) {
    this.#sawn = new Int32Array(job.slabs.length * job.groups.length);
  }

  /** Begins anew at other prices. */
  reprice(): void {
    this.#joint = null;
    this.work = 0;
  }

  /** Worth of the best stack of a bolt, its set-up not yet paid. */
  value(table: BoltTable): number {
    return this.#best(table).value;
  }

  /** The best joint of a bolt's halves. Asked again of the same bolt it is counted again, though nothing is reckoned. */
  #best(table: BoltTable): Joint {
    this.work++;
    this.gains.fill(table);
    if (this.#joint === null || table !== this.#table) {
      this.#table = table;
      this.#fill(table);
      this.#joint = this.#join(table);
    }
    return this.#joint;
  }

  #room(table: BoltTable): void {
    const thickest = this.job.slabs.at(-1)?.thickness ?? 0;
    const { shop } = this.job.problem;
    const size = table.top + thickest + shop.millKerf + beyondWaste(shop) + 4;
    if (this.#above.length < size) {
      this.#above = new Float64Array(2 * size);
      this.#started = new Float64Array(2 * size);
      this.#afresh = new Float64Array(2 * size);
    }
    this.#above.fill(0, table.top, size);
    this.#afresh.fill(0, table.top, size);
  }

  /**
   * From the outermost face in. A slab leads on to a face that is its thickness and a kerf farther out: where all faces from one
   * on are known, those so far below it can be reckoned, row by row, thick slabs for many faces at a time.
   */
  #fill(table: BoltTable): void {
    this.#room(table);
    const { rows, rowCount } = this.gains;
    const kerf = this.job.problem.shop.millKerf;
    const started = this.#started;
    const sawn = this.#sawn;
    const { cut, top, core } = table;
    for (let f = top + 1; f <= top + kerf; f++) started[f] = -(cut[f] as number);
    this.#above.fill(0, 0, top + 1);
    sawn.fill(top + 1);
    const step = rowCount > 0 ? (rows[0] as RowWorth).slab.thickness + kerf : top + 1;
    for (let end = top; end >= 0; end -= step) {
      const begin = Math.max(0, end - step + 1);
      for (let r = 0; r < rowCount; r++) {
        const known = sawn[r] as number;
        if (known <= begin) continue;
        const row = rows[r] as RowWorth;
        const from = Math.max(0, end - row.slab.thickness - kerf + 1);
        if (known > core) this.#saw(table, row, Math.max(from, core), known - 1);
        if (from < core) this.#sawCore(row, from, Math.min(core, known) - 1);
        sawn[r] = from;
      }
      this.#start(table, begin, end);
    }
  }

  /** Puts slabs of a row's kind that may meet rot or pith on the faces from `begin` to `end` where they are worth more than what is there. */
  #sawCore({ kind, slab: { thickness } }: RowWorth, begin: number, end: number): void {
    const { outside, stride } = this.gains;
    const above = this.#above;
    const started = this.#started;
    const on = thickness + this.job.problem.shop.millKerf;
    const last = Math.min(end, stride - 1 - thickness);
    for (let f = begin; f <= last; f++) {
      const value = (outside[kind * stride + f] as number) + (started[f + on] as number);
      if (value > (above[f] as number)) above[f] = value;
    }
  }

  /** The same for slabs of a row that are clear of both. */
  #saw({ half, top }: BoltTable, { slab, row, clear, rip }: RowWorth, begin: number, end: number): void {
    if (clear.count === 0) return;
    const { pool } = this.gains.worth.values;
    const above = this.#above;
    const started = this.#started;
    const halves = half[row.wane] as Uint16Array;
    const { thickness, pointOfHalf } = slab;
    const base = clear.at;
    const on = thickness + this.job.problem.shop.millKerf;
    const last = Math.min(end, top - thickness);
    let known = -1;
    let worth = 0;
    for (let f = begin; f <= last; f++) {
      const wide = halves[f + thickness] as number;
      if (wide !== known) {
        known = wide;
        worth = (pool[base + (pointOfHalf[wide] as number)] as number) - rip;
        // Slabs farther out are no wider, and one that is worth nothing is no better than waste.
        if (worth <= 0) return;
      }
      const value = worth + (started[f + on] as number);
      if (value > (above[f] as number)) above[f] = value;
    }
  }

  /** Waste where it is better than any slab, and what a cut of its own under the face leaves. */
  #start({ cut }: BoltTable, begin: number, end: number): void {
    const kerf = this.job.problem.shop.millKerf;
    const waste = beyondWaste(this.job.problem.shop);
    const above = this.#above;
    const started = this.#started;
    const afresh = this.#afresh;
    for (let f = end; f >= begin; f--) {
      const wasted = afresh[f + waste] as number;
      let best = above[f] as number;
      if (wasted > best) {
        best = wasted;
        above[f] = wasted;
      }
      const start = best - (cut[f] as number);
      started[f] = start;
      const later = afresh[f + 1] as number;
      afresh[f] = f >= kerf && start > later ? start : later;
    }
  }

  #join(table: BoltTable): Joint {
    const { job } = this;
    const kerf = job.problem.shop.millKerf;
    const above = this.#above;
    const afresh = this.#afresh;
    const { cut } = table;
    const best: Joint = { value: Number.NEGATIVE_INFINITY, slab: null, kerfAt: null, waste: 0 };
    // A waste that may not be thin reaches as far below the axis as it stops short above.
    const { thinnestSlab = 0 } = job.problem.shop;
    for (let up = 0; up <= thinnestSlab; up++) {
      const value = (afresh[kerf + up] ?? 0) + (afresh[kerf + thinnestSlab - up] ?? 0);
      if (value <= best.value) continue;
      best.value = value;
      best.waste = up;
    }
    for (let y = -kerf; 2 * y <= -kerf; y++) {
      // The kerf [y, y + kerf], and its mirror image when y goes on.
      const value = (above[y + kerf] as number) + (above[-y] as number) - (cut[-y] as number);
      if (value <= best.value) continue;
      best.value = value;
      best.kerfAt = y;
    }
    const { kinds, kindCount } = this.gains;
    for (let k = 0; k < kindCount; k++) this.#overAxis(table, kinds[k] as number, best);
    return best;
  }

  /** Puts the best stack with a slab of a kind over the axis in the place of a poorer one; lower half the thinner one. */
  #overAxis({ top }: BoltTable, kind: number, best: Joint): void {
    const kerf = this.job.problem.shop.millKerf;
    const started = this.#started;
    const { gains } = this;
    const { thickness } = this.job.slabs[kind] as SlabKind;
    const middle = Math.ceil(thickness / 2);
    if (middle > top) return;
    // None farther off the middle is worth more.
    let widest = gains.over(kind, middle);
    let most = best.value;
    const highest = (this.#afresh[middle + kerf] as number) + (this.#afresh[kerf + 1] as number);
    if (widest + highest <= most) return;
    let found = 0;
    for (let over = middle; over < thickness && over <= top; over++) {
      const halves = (started[over + kerf] as number) + (started[thickness - over + kerf] as number);
      if (widest + halves <= most) continue;
      const gain = gains.over(kind, over);
      if (gain <= 0) break;
      widest = gain;
      if (gain + halves <= most) continue;
      most = gain + halves;
      found = over;
    }
    if (found === 0) return;
    best.value = most;
    best.slab = { kind, y0: found - thickness };
  }

  /** Slabs of the best stack, y ascending. */
  slabs(table: BoltTable): StackSlab[] {
    const { slab, kerfAt, value, waste } = this.#best(table);
    if (value <= 0) return [];
    const kerf = this.job.problem.shop.millKerf;
    const flip = ({ kind, y0 }: StackSlab) => ({ kind, y0: -y0 - (this.job.slabs[kind]?.thickness as number) });
    if (slab !== null) {
      const over = slab.y0 + (this.job.slabs[slab.kind]?.thickness as number);
      return [
        ...this.#upward(table, kerf - slab.y0)
          .map(flip)
          .reverse(),
        slab,
        ...this.#upward(table, over + kerf),
      ];
    }
    if (kerfAt !== null)
      return [...this.#upward(table, -kerfAt).map(flip).reverse(), ...this.#upward(table, kerfAt + kerf)];
    const { thinnestSlab = 0 } = this.job.problem.shop;
    const below = this.#fresh(table, kerf + thinnestSlab - waste);
    return [...below.map(flip).reverse(), ...this.#fresh(table, kerf + waste)];
  }

  /** Slabs above face f, whose cut is paid. */
  #upward(table: BoltTable, f: number): StackSlab[] {
    const { job, gains } = this;
    const kerf = job.problem.shop.millKerf;
    const [above, started, afresh] = [this.#above, this.#started, this.#afresh];
    if (f > table.top || (above[f] as number) <= 0) return [];
    for (let k = 0; k < gains.kindCount; k++) {
      const kind = gains.kinds[k] as number;
      const end = f + (job.slabs[kind] as SlabKind).thickness;
      if (end > table.top) break;
      const gain = gains.at(kind, f);
      if (gain <= 0 || gain + (started[end + kerf] as number) !== above[f]) continue;
      return [{ kind, y0: f }, ...this.#upward(table, end + kerf)];
    }
    const waste = beyondWaste(job.problem.shop);
    if (afresh[f + waste] === above[f]) return this.#fresh(table, f + waste);
    throw new Error("a stack's worth has no slabs");
  }

  /** Slabs of the best start at or above face f. */
  #fresh(table: BoltTable, f: number): StackSlab[] {
    const value = this.#afresh[f] as number;
    if (value <= 0) return [];
    let from = f;
    while ((this.#afresh[from + 1] as number) === value) from++;
    return this.#upward(table, from);
  }
}
