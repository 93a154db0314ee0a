/**
 * What a slab's width is worth at given prices of the pieces: best pieces out of a strip, best strips in a width.
 *
 * Two nested knapsacks (Gilmore & Gomory 1965, staged patterns), filled once for all logs, and for each length only
 * when it is first asked for.
 */
import type { Job, SlabKind, StripKind } from "./job.js";

/** Worths at one set of prices. */
export class StripValues {
  /** Worth of the best pieces within a length: [mask × sections + section][length]. */
  readonly #strips: (Float64Array | undefined)[];
  /** Filled when first asked for: [(length × masks + mask) × slabs + slab]. */
  readonly #runs: (Float64Array | undefined)[];
  readonly #sawn: (Float64Array | undefined)[];

  /** @param price - What a piece is worth, by group; pieces worth no more than their crosscut are never laid. */
  constructor(
    readonly job: Job,
    readonly price: ArrayLike<number>,
  ) {
    const tables = job.lengths.length * job.masks.length * job.slabs.length;
    this.#runs = new Array(tables).fill(undefined);
    this.#sawn = new Array(tables).fill(undefined);
    this.#strips = new Array(job.masks.length * job.sections.length).fill(undefined);
  }

  /** Money for one rip cut through slab kind `s` over length number `i`. */
  rip(i: number, s: number): number {
    return this.job.rips[i * this.job.slabs.length + s] as number;
  }

  #key(i: number, mask: number, s: number): number {
    return (i * this.job.masks.length + mask) * this.job.slabs.length + s;
  }

  /** Worth of strips up to each point of slab kind `s`, each with its own rip cut but without the last one. */
  run(i: number, mask: number, s: number): Float64Array {
    const key = this.#key(i, mask, s);
    const known = this.#runs[key];
    if (known !== undefined) return known;
    const made = this.#runWorth(i, mask, s);
    this.#runs[key] = made;
    return made;
  }

  /** Worth of a whole run that is `width` wide: with the last rip cut, never below 0. */
  slab(i: number, mask: number, s: number, width: number): number {
    const point = this.job.slabs[s]?.pointOf[width] as number;
    return this.sawn(i, mask, s)[point] as number;
  }

  /** Worth of a whole run by the point of its width: with the last rip cut, never below 0. */
  sawn(i: number, mask: number, s: number): Float64Array {
    const key = this.#key(i, mask, s);
    const known = this.#sawn[key];
    if (known !== undefined) return known;
    const rip = this.rip(i, s);
    const run = this.run(i, mask, s);
    const made = new Float64Array(run.length);
    for (let p = 0; p < run.length; p++) {
      const worth = (run[p] as number) - rip;
      if (worth > 0) made[p] = worth;
    }
    this.#sawn[key] = made;
    return made;
  }

  /** Whether any strip of slab kind `s` is worth something over length number `i`. */
  boxes(i: number, mask: number, s: number): boolean {
    return (this.job.slabs[s] as SlabKind).strips.some(({ section }) => this.stripWorth(mask, section, i) > 0);
  }

  #strip(mask: number, section: number): Float64Array {
    const key = mask * this.job.sections.length + section;
    const known = this.#strips[key];
    if (known !== undefined) return known;
    const made = this.#stripWorth(mask, section);
    this.#strips[key] = made;
    return made;
  }

  #stripWorth(mask: number, section: number): Float64Array {
    const { job } = this;
    const worth = new Float64Array(job.lengths.length);
    const flags = job.masks[mask];
    const groups = job.sections[section]?.groups.filter((j) => flags?.[j]) ?? [];
    for (let i = 0; i < worth.length; i++) {
      let best = i > 0 ? (worth[i - 1] as number) : 0;
      for (const j of groups) {
        const before = job.lengthBefore[i * job.groups.length + j] as number;
        if (before === -2) continue;
        const value = (this.price[j] as number) - job.prices.crosscut + (before >= 0 ? (worth[before] as number) : 0);
        if (value > best) best = value;
      }
      worth[i] = best;
    }
    return worth;
  }

  /** Worth of the best strip of a section over length number `i`. */
  stripWorth(mask: number, section: number, i: number): number {
    return this.#strip(mask, section)[i] as number;
  }

  #runWorth(i: number, mask: number, s: number): Float64Array {
    const slab = this.job.slabs[s];
    if (slab === undefined) throw new Error("no such slab");
    const { strips, before, points } = slab;
    const run = new Float64Array(points.length);
    const rip = this.rip(i, s);
    // Strips that are not worth their own cut never help.
    const worthy: number[] = [];
    const gains: number[] = [];
    for (let k = 0; k < strips.length; k++) {
      const gain = this.stripWorth(mask, (strips[k] as StripKind).section, i) - rip;
      if (gain <= 0) continue;
      worthy.push(k);
      gains.push(gain);
    }
    if (worthy.length === 0) return run;
    for (let p = 1; p < run.length; p++) {
      let best = run[p - 1] as number;
      for (let g = 0; g < worthy.length; g++) {
        const from = before[p * strips.length + (worthy[g] as number)] as number;
        if (from < 0) continue;
        const value = (run[from] as number) + (gains[g] as number);
        if (value > best) best = value;
      }
      run[p] = best;
    }
    return run;
  }

  /** Groups of the pieces that make a strip worth what it is. */
  stripPieces(mask: number, section: number, i: number): number[] {
    const { job } = this;
    const worth = this.#strip(mask, section);
    const flags = job.masks[mask];
    const pieces: number[] = [];
    for (let at = i; at >= 0 && (worth[at] as number) > 0; ) {
      if (at > 0 && worth[at - 1] === worth[at]) {
        at--;
        continue;
      }
      const j = job.sections[section]?.groups.find((j) => {
        const before = job.lengthBefore[at * job.groups.length + j] as number;
        if (!flags?.[j] || before === -2) return false;
        return (
          (this.price[j] as number) - job.prices.crosscut + (before >= 0 ? (worth[before] as number) : 0) === worth[at]
        );
      });
      if (j === undefined) throw new Error("a strip's worth has no pieces");
      pieces.push(j);
      at = job.lengthBefore[at * job.groups.length + j] as number;
    }
    return pieces;
  }

  /** Kinds of the strips that make a run worth what it is, by number within the kind of slab. */
  runStrips(i: number, mask: number, s: number, point: number): number[] {
    const slab = this.job.slabs[s];
    const worth = this.run(i, mask, s);
    if (slab === undefined) throw new Error("no such slab");
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
