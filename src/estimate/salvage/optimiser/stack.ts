/**
 * The best stack of slabs out of one bolt at given prices: a dynamic program over the heights of faces.
 *
 * A stack is the same upside down, so only what lies above the axis is reckoned, and two such halves are joined over
 * a slab, a kerf or a waste that covers the axis (the staged pattern of Faaland & Briggs 1984, halved).
 */
import { beyondWaste } from "../bolt.js";
import type { BoltTable } from "./bolt-table.js";
import type { Job } from "./job.js";
import type { SlabGains } from "./slab-gains.js";
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
  /** Stacks reckoned so far: the measure of work. */
  work = 0;

  constructor(
    readonly job: Job,
    readonly gains: SlabGains,
  ) {}

  /** Worth of the best stack of a bolt, its set-up not yet paid. */
  value(table: BoltTable): number {
    this.#fill(table);
    return this.#join(table).value;
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

  #fill(table: BoltTable): void {
    this.work++;
    this.#room(table);
    this.gains.fill(table);
    const kerf = this.job.problem.shop.millKerf;
    const waste = beyondWaste(this.job.problem.shop);
    const [above, started, afresh] = [this.#above, this.#started, this.#afresh];
    const { cut, top } = table;
    const { outside, stride, kinds, thick } = this.gains;
    for (let f = top + 1; f <= top + kerf; f++) started[f] = -(cut[f] as number);
    for (let f = top; f >= 0; f--) {
      let best = afresh[f + waste] as number;
      for (let k = 0; k < thick.length; k++) {
        const end = f + (thick[k] as number);
        if (end > top) break;
        const value = (outside[(kinds[k] as number) * stride + f] as number) + (started[end + kerf] as number);
        if (value > best) best = value;
      }
      above[f] = best;
      const start = best - (cut[f] as number);
      started[f] = start;
      const later = afresh[f + 1] as number;
      afresh[f] = f >= kerf && start > later ? start : later;
    }
  }

  #join(table: BoltTable): Joint {
    const { job } = this;
    const kerf = job.problem.shop.millKerf;
    const [above, afresh] = [this.#above, this.#afresh];
    const { cut } = table;
    const best: Joint = { value: Number.NEGATIVE_INFINITY, slab: null, kerfAt: null, waste: 0 };
    // A waste that may not be thin reaches as far below the axis as it stops short above.
    const { thinnestSlab = 0 } = job.problem.shop;
    for (let up = 0; up <= thinnestSlab; up++) {
      const value = (afresh[kerf + up] ?? 0) + (afresh[kerf + thinnestSlab - up] ?? 0);
      if (value > best.value) [best.value, best.waste] = [value, up];
    }
    for (let y = -kerf; 2 * y <= -kerf; y++) {
      // The kerf [y, y + kerf], and its mirror image when y goes on.
      const value = (above[y + kerf] as number) + (above[-y] as number) - (cut[-y] as number);
      if (value > best.value) [best.value, best.kerfAt] = [value, y];
    }
    for (const kind of this.gains.kinds) this.#overAxis(table, kind, best);
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
    // The widest slab: none off the middle is worth more.
    const widest = gains.over(kind, middle);
    let most = best.value;
    let found = 0;
    for (let over = middle; over < thickness && over <= top; over++) {
      const halves = (started[over + kerf] as number) + (started[thickness - over + kerf] as number);
      if (widest + halves <= most) continue;
      const gain = gains.over(kind, over);
      if (gain <= 0 || gain + halves <= most) continue;
      most = gain + halves;
      found = over;
    }
    if (found > 0) [best.value, best.slab] = [most, { kind, y0: found - thickness }];
  }

  /** Slabs of the best stack, y ascending. */
  slabs(table: BoltTable): StackSlab[] {
    this.#fill(table);
    const { slab, kerfAt, value, waste } = this.#join(table);
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
    for (const kind of gains.kinds) {
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
