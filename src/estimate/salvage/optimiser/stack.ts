/**
 * The best stack of slabs out of one bolt at given prices: a dynamic program over the heights of faces.
 *
 * A stack is the same upside down, so only what lies above the axis is reckoned, and two such halves are joined over
 * a slab, a kerf or a waste that covers the axis (the staged pattern of Faaland & Briggs 1984, halved).
 */
import type { BoltTable } from "./bolt-table.js";
import type { Job, SlabKind } from "./job.js";
import type { ClearUse, SlabWorth } from "./slab-worth.js";

/** A slab of a stack, by number of its kind. */
export interface StackSlab {
  readonly kind: number;
  readonly y0: number;
}

/** What two halves are joined over: a slab, a kerf, or else a waste. */
interface Joint {
  readonly value: number;
  readonly slab: StackSlab | null;
  readonly kerfAt: number | null;
}

/** Room for one stack's work; used again from bolt to bolt. */
export class StackProgram {
  /** Best of what lies above face f, the cut under it paid. */
  #above = new Float64Array(0);
  /** Best of any face from f up that starts with a cut of its own; 0 for leaving it. */
  #afresh = new Float64Array(0);
  /** Stacks reckoned so far: the measure of work. */
  work = 0;

  constructor(
    readonly job: Job,
    readonly worth: SlabWorth,
  ) {}

  /** Worth of the best stack of a bolt, its set-up not yet paid. */
  value(table: BoltTable): number {
    this.#fill(table);
    return this.#join(table).value;
  }

  #room(table: BoltTable): void {
    const thickest = this.job.slabs.at(-1)?.thickness ?? 0;
    const size = table.top + thickest + 2 * this.job.problem.shop.millKerf + 4;
    if (this.#above.length < size) {
      this.#above = new Float64Array(2 * size);
      this.#afresh = new Float64Array(2 * size);
    }
    this.#above.fill(0, table.top, size);
    this.#afresh.fill(0, table.top, size);
  }

  #fill(table: BoltTable): void {
    this.work++;
    this.#room(table);
    const kerf = this.job.problem.shop.millKerf;
    const waste = Math.max(1, kerf);
    const [above, afresh] = [this.#above, this.#afresh];
    const { cut, top, core } = table;
    const uses = this.worth.clearUses(table.length, table.rules);
    const halves = uses.map(({ wane }) => table.half[wane] as Uint16Array);
    for (let f = top; f >= core; f--) {
      let best = afresh[f + waste] as number;
      for (let u = 0; u < uses.length; u++) {
        const { thickness, wide } = uses[u] as ClearUse;
        const end = f + thickness;
        if (end > top) break;
        const gain = wide[(halves[u] as Uint16Array)[end] as number] as number;
        if (gain <= 0) continue;
        const value = gain - (cut[end + kerf] as number) + (above[end + kerf] as number);
        if (value > best) best = value;
      }
      above[f] = best;
      const started = f >= kerf ? best - (cut[f] as number) : 0;
      const later = afresh[f + 1] as number;
      afresh[f] = Math.max(started, later);
    }
    for (let f = Math.min(core - 1, top); f >= 0; f--) {
      const best = this.#core(table, f, afresh[f + waste] as number);
      above[f] = best;
      afresh[f] = Math.max(afresh[f + 1] as number, f >= kerf ? best - (cut[f] as number) : 0);
    }
  }

  /** The same step where the slab may meet rot or pith. */
  #core(table: BoltTable, f: number, least: number): number {
    const kerf = this.job.problem.shop.millKerf;
    let best = least;
    for (let s = 0; s < this.job.slabs.length; s++) {
      const end = f + (this.job.slabs[s] as SlabKind).thickness;
      if (end > table.top) break;
      const gain = this.worth.outside(table, s, f, end);
      if (gain <= 0) continue;
      const value = gain - (table.cut[end + kerf] as number) + (this.#above[end + kerf] as number);
      if (value > best) best = value;
    }
    return best;
  }

  #join(table: BoltTable): Joint {
    const { job } = this;
    const kerf = job.problem.shop.millKerf;
    const [above, afresh] = [this.#above, this.#afresh];
    const { cut } = table;
    let best: Joint = {
      value: 2 * (afresh[kerf] as number),
      slab: null,
      kerfAt: null,
    };
    for (let y = -kerf; 2 * y <= -kerf; y++) {
      // The kerf [y, y + kerf], and its mirror image when y goes on.
      const value = (above[y + kerf] as number) + (above[-y] as number) - (cut[-y] as number);
      if (value > best.value) best = { value, slab: null, kerfAt: y };
    }
    for (const [kind, { thickness }] of job.slabs.entries()) {
      best = this.#overAxis(table, kind, thickness, best.value) ?? best;
    }
    return best;
  }

  /** The best stack with a slab of a kind over the axis, if it is worth more than `least`; lower half the thinner one. */
  #overAxis(table: BoltTable, kind: number, thickness: number, least: number): Joint | null {
    const kerf = this.job.problem.shop.millKerf;
    const above = this.#above;
    const { cut, top } = table;
    const uses = this.worth.clearUses(table.length, table.rules).filter((use) => use.kind === kind);
    if (table.core === 0 && uses.length === 0) return null;
    let best: Joint | null = null;
    let most = least;
    for (let over = Math.ceil(thickness / 2); over < thickness && over <= top; over++) {
      const under = thickness - over;
      let gain = 0;
      if (table.core > 0) gain = this.worth.over(table, kind, under, over);
      else
        for (const { wide, wane } of uses)
          gain = Math.max(gain, wide[(table.half[wane] as Uint16Array)[over] as number] as number);
      if (gain <= 0) continue;
      const cuts = (cut[over + kerf] as number) + (cut[under + kerf] as number);
      const value = gain - cuts + (above[over + kerf] as number) + (above[under + kerf] as number);
      if (value <= most) continue;
      most = value;
      best = { value, slab: { kind, y0: -under }, kerfAt: null };
    }
    return best;
  }

  /** Slabs of the best stack, y ascending. */
  slabs(table: BoltTable): StackSlab[] {
    this.#fill(table);
    const { slab, kerfAt, value } = this.#join(table);
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
    const half = this.#fresh(table, kerf);
    return [...half.map(flip).reverse(), ...half];
  }

  /** Slabs above face f, whose cut is paid. */
  #upward(table: BoltTable, f: number): StackSlab[] {
    const { job, worth } = this;
    const kerf = job.problem.shop.millKerf;
    const [above, afresh] = [this.#above, this.#afresh];
    if (f > table.top || (above[f] as number) <= 0) return [];
    for (const [kind, { thickness }] of job.slabs.entries()) {
      const end = f + thickness;
      if (end > table.top) break;
      const gain = worth.outside(table, kind, f, end);
      if (gain <= 0 || gain - (table.cut[end + kerf] as number) + (above[end + kerf] as number) !== above[f]) continue;
      return [{ kind, y0: f }, ...this.#upward(table, end + kerf)];
    }
    if (afresh[f + Math.max(1, kerf)] === above[f]) return this.#fresh(table, f + Math.max(1, kerf));
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
