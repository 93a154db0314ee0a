/**
 * What a slab's width is worth at given prices of the pieces: best pieces out of a strip, best strips in a width.
 *
 * Two nested knapsacks (Gilmore & Gomory 1965, staged patterns), filled once for all logs, and for each length only
 * when it is first asked for.
 */
import type { Job } from "./job.js";
import type { SlabKind, StripKind } from "./slab-kinds.js";

/** Strips of one kind of slab over one length, worth at [at + point] what they are up to that point of the width. */
export interface RunWorth {
  at: number;
  /** Points reckoned so far. */
  points: number;
  /** How many strips are worth their own cut; they, most gain for their width first, and the gains. */
  count: number;
  readonly worthy: number[];
  readonly gains: number[];
  /** Number of the prices that it was reckoned at. */
  prices: number;
}

/** Worths of the best pieces within a length: at [at + length], as far as reckoned. */
interface StripWorths {
  readonly at: number;
  lengths: number;
  readonly groups: readonly number[];
}

/** Room for worths at first; it doubles as it fills. Assumption: enough for one log with few lengths of bolts. */
const FIRST_ROOM = 1 << 13;

/** Worths at one set of prices after another. All stand in one pool, each reckoned no further than it was asked for. */
export class StripValues {
  /** Every worth; another array once it has grown. */
  pool = new Float64Array(FIRST_ROOM);
  #taken = 0;
  /** What a piece is worth, by group. */
  price: ArrayLike<number> = [];
  /** How many prices there have been. */
  #prices = 0;
  readonly #strips: (StripWorths | undefined)[];
  readonly #runs: (RunWorth | undefined)[];

  constructor(readonly job: Job) {
    this.#strips = new Array(job.masks.length * job.sections.length).fill(undefined);
    this.#runs = new Array(job.lengths.length * job.masks.length * job.slabs.length).fill(undefined);
  }

  /** Begins anew. @param price - What a piece is worth, by group; pieces worth no more than their crosscut are never laid. */
  reprice(price: ArrayLike<number>): void {
    this.price = price;
    this.#prices++;
    this.#taken = 0;
    this.#strips.fill(undefined);
  }

  #take(size: number): number {
    const at = this.#taken;
    this.#taken += size;
    if (this.#taken > this.pool.length) {
      const grown = new Float64Array(Math.max(2 * this.pool.length, this.#taken));
      grown.set(this.pool.subarray(0, at));
      this.pool = grown;
    }
    return at;
  }

  /** Money for one rip cut through slab kind `s` over length number `i`. */
  rip(i: number, s: number): number {
    return this.job.rips[i * this.job.slabs.length + s] as number;
  }

  /** Worth of strips of slab kind `s` up to its points, each with its own rip cut but without the last one; `fill` it. */
  run(i: number, mask: number, s: number): RunWorth {
    const key = (i * this.job.masks.length + mask) * this.job.slabs.length + s;
    const known = this.#runs[key];
    if (known?.prices === this.#prices) return known;
    const run = known ?? { at: 0, points: 1, count: 0, worthy: [], gains: [], prices: 0 };
    this.#runs[key] = run;
    run.prices = this.#prices;
    this.#begin(run, i, mask, s);
    return run;
  }

  /** Puts the strips that are worth their own cut, for no others help, in order of what they gain for their width. */
  #begin(run: RunWorth, i: number, mask: number, s: number): void {
    const { strips, points, kerf } = this.job.slabs[s] as SlabKind;
    const { worthy, gains } = run;
    const rip = this.rip(i, s);
    let count = 0;
    for (let k = 0; k < strips.length; k++) {
      const { section, width } = strips[k] as StripKind;
      const gain = this.stripWorth(mask, section, i) - rip;
      if (gain <= 0) continue;
      const dense = gain / (width + kerf);
      let at = count++;
      for (; at > 0; at--) {
        const other = worthy[at - 1] as number;
        if ((gains[at - 1] as number) / ((strips[other] as StripKind).width + kerf) >= dense) break;
        worthy[at] = other;
        gains[at] = gains[at - 1] as number;
      }
      worthy[at] = k;
      gains[at] = gain;
    }
    run.points = 1;
    run.count = count;
    if (count === 0) return;
    run.at = this.#take(points.length);
    this.pool[run.at] = 0;
  }

  /** Reckons a run as far as a point, and says what it is worth there. */
  fill(run: RunWorth, s: number, point: number): number {
    if (run.count === 0) return 0;
    this.reach(run, s, point);
    return this.pool[run.at + point] as number;
  }

  /** Reckons a run as far as a point. */
  reach(run: RunWorth, s: number, point: number): void {
    if (run.count > 0 && run.points <= point) this.#reckon(run, s, point);
  }

  #reckon(run: RunWorth, s: number, point: number): void {
    const { before, strips } = this.job.slabs[s] as SlabKind;
    const { pool } = this;
    const { at, count, worthy, gains } = run;
    const n = strips.length;
    for (let p = run.points; p <= point; p++) {
      let best = pool[at + p - 1] as number;
      for (let g = 0; g < count; g++) {
        const from = before[p * n + (worthy[g] as number)] as number;
        if (from < 0) continue;
        const value = (pool[at + from] as number) + (gains[g] as number);
        if (value > best) best = value;
      }
      pool[at + p] = best;
    }
    run.points = point + 1;
  }

  /** Worth of a whole run that is `width` wide: with the last rip cut, never below 0. */
  slab(i: number, mask: number, s: number, width: number): number {
    const point = this.job.slabs[s]?.pointOf[width] as number;
    return Math.max(0, this.fill(this.run(i, mask, s), s, point) - this.rip(i, s));
  }

  /** Whether any strip of slab kind `s` is worth something over length number `i`. */
  boxes(i: number, mask: number, s: number): boolean {
    return (this.job.slabs[s] as SlabKind).strips.some(({ section }) => this.stripWorth(mask, section, i) > 0);
  }

  #strip(mask: number, section: number, i: number): StripWorths {
    const key = mask * this.job.sections.length + section;
    let worths = this.#strips[key];
    if (worths === undefined) {
      const flags = this.job.masks[mask];
      const groups = this.job.sections[section]?.groups.filter((j) => flags?.[j]) ?? [];
      worths = { at: groups.length > 0 ? this.#take(this.job.lengths.length) : 0, lengths: 0, groups };
      this.#strips[key] = worths;
    }
    if (worths.lengths <= i && worths.groups.length > 0) this.#lay(worths, i);
    return worths;
  }

  #lay(worths: StripWorths, i: number): void {
    const { job, price, pool } = this;
    const { at, groups } = worths;
    for (let l = worths.lengths; l <= i; l++) {
      let best = l > 0 ? (pool[at + l - 1] as number) : 0;
      for (let g = 0; g < groups.length; g++) {
        const j = groups[g] as number;
        const before = job.lengthBefore[l * job.groups.length + j] as number;
        if (before === -2) continue;
        const value = (price[j] as number) - job.prices.crosscut + (before >= 0 ? (pool[at + before] as number) : 0);
        if (value > best) best = value;
      }
      pool[at + l] = best;
    }
    worths.lengths = i + 1;
  }

  /** Worth of the best strip of a section over length number `i`. */
  stripWorth(mask: number, section: number, i: number): number {
    const { at, groups } = this.#strip(mask, section, i);
    return groups.length === 0 ? 0 : (this.pool[at + i] as number);
  }

  /** Groups of the pieces that make a strip worth what it is. */
  stripPieces(mask: number, section: number, i: number): number[] {
    const { job } = this;
    const { at: from, groups } = this.#strip(mask, section, i);
    if (groups.length === 0) return [];
    const { pool } = this;
    const pieces: number[] = [];
    for (let at = i; at >= 0 && (pool[from + at] as number) > 0; ) {
      const worth = pool[from + at] as number;
      if (at > 0 && pool[from + at - 1] === worth) {
        at--;
        continue;
      }
      const j = this.#lastPiece(groups, from, at, worth);
      pieces.push(j);
      at = job.lengthBefore[at * job.groups.length + j] as number;
    }
    return pieces;
  }

  /** The piece that makes a strip over length number `at` worth what it is. */
  #lastPiece(groups: readonly number[], from: number, at: number, worth: number): number {
    const { job, pool, price } = this;
    for (const j of groups) {
      const before = job.lengthBefore[at * job.groups.length + j] as number;
      if (before === -2) continue;
      const rest = before >= 0 ? (pool[from + before] as number) : 0;
      if ((price[j] as number) - job.prices.crosscut + rest === worth) return j;
    }
    throw new Error("a strip's worth has no pieces");
  }

  /** Kinds of the strips that make a run worth what it is, by number within the kind of slab. */
  runStrips(i: number, mask: number, s: number, point: number): number[] {
    const slab = this.job.slabs[s];
    if (slab === undefined) throw new Error("no such slab");
    const run = this.run(i, mask, s);
    if (this.fill(run, s, point) <= 0) return [];
    const worth = this.pool.subarray(run.at, run.at + point + 1);
    const n = slab.strips.length;
    const chosen: number[] = [];
    for (let p = point; p > 0; ) {
      if (worth[p - 1] === worth[p]) {
        p--;
        continue;
      }
      const k = slab.strips.findIndex(({ section }, k) => {
        const from = slab.before[p * n + k] as number;
        return from >= 0 && (worth[from] as number) + (this.stripWorth(mask, section, i) - this.rip(i, s)) === worth[p];
      });
      if (k < 0) throw new Error("a run's worth has no strips");
      chosen.push(k);
      p = slab.before[p * n + k] as number;
    }
    return chosen;
  }
}
