/**
 * Strips for one slab when only so many pieces of each group are still wanted: a depth-first search over strips, cut
 * off by the worth that the same width would have without the limit.
 */

import type { StripPattern } from "../sawing-pattern.js";
import type { SawGroup } from "../sawing-problem.js";
import type { BoltTable } from "./bolt-table.js";
import type { Job, SlabKind } from "./job.js";
import type { LogPricing } from "./log-pricing.js";
import type { SlabGains } from "./slab-gains.js";
import type { Run, SlabUse, SlabWorth } from "./slab-worth.js";

/** A slab's strips. */
export interface Filling {
  /** Worth at full prices, rip cuts and crosscuts paid. */
  readonly worth: number;
  /** Worth less what the pieces were worth to be left open. */
  readonly rank: number;
  /** Groups that come out of it, and how many of each. */
  readonly groups: readonly number[];
  readonly counts: readonly number[];
  /** Draws its strips. */
  readonly strips: () => readonly StripPattern[];
}

/** A slab's place in a bolt, ready to be filled for any open counts. */
export interface Place {
  readonly uses: readonly PreparedUse[];
}

/** A use of a slab with what has been found for it, by the counts open of the groups that it can make. */
interface PreparedUse {
  readonly use: SlabUse;
  readonly kind: SlabKind;
  readonly s: number;
  readonly length: number;
  /** Groups that it can make, and the most of each. */
  readonly groups: readonly number[];
  readonly most: readonly number[];
  readonly found: Map<number, Filling | null>;
}

interface Strip {
  readonly worth: number;
  readonly pieces: readonly number[];
}

/** Strips of a run, and their worth with a rip cut each. */
interface Row {
  readonly worth: number;
  readonly strips: readonly { readonly k: number; readonly pieces: readonly number[] }[];
}

/** Most strips tried for one run. Assumption: far more than a slab has sensible ways. */
const MOST_TRIES = 300;

/** Fillings at one set of prices, remembered by slab and by what is open of the groups that come out of it. */
export class CappedFilling {
  readonly #uses = new Map<string, PreparedUse>();
  readonly #strips = new Map<string, Strip>();
  readonly worth: SlabWorth;
  /** Of the bolt that is walked. */
  readonly gains: SlabGains;

  /**
   * @param pricing - At full prices, or at prices less `limit`.
   * @param limit - What being open is worth, by group.
   * @param full - Whether the pricing is at full prices.
   */
  constructor(
    readonly job: Job,
    { worth, gains }: LogPricing,
    readonly limit: readonly number[],
    readonly full: boolean,
  ) {
    this.worth = worth;
    this.gains = gains;
  }

  /** The place of a slab of kind `s` at y0; null where the slab would be worth nothing even without a limit. */
  place(table: BoltTable, s: number, y0: number): Place | null {
    const kind = this.job.slabs[s] as SlabKind;
    if (this.gains.at(s, y0) <= 0) return null;
    return { uses: this.worth.uses(table, s, y0).map((use) => this.#prepare(table.length, s, kind, use)) };
  }

  #prepare(length: number, s: number, kind: SlabKind, use: SlabUse): PreparedUse {
    let key = `${length};${s}`;
    for (const { lo, hi, mask } of use.runs) key += `;${lo},${hi},${mask}`;
    if (use.boxed !== null) key += `b${use.boxed.strip},${use.boxed.x0},${use.boxed.mask}`;
    const known = this.#uses.get(key);
    if (known !== undefined) return known;
    const most = kind.groups.map((j) => this.#mostOf(length, kind, use, this.job.groups[j] as SawGroup));
    const made: PreparedUse = { use, kind, s, length, groups: kind.groups, most, found: new Map() };
    this.#uses.set(key, made);
    return made;
  }

  #mostOf(length: number, kind: SlabKind, use: SlabUse, group: SawGroup): number {
    const { crossKerf } = this.job.problem.shop;
    const width = group.thickness === kind.thickness ? group.width : group.thickness;
    const beside = use.runs.reduce(
      (sum, { lo, hi }) => sum + Math.floor((hi - lo + kind.kerf) / (width + kind.kerf)),
      0,
    );
    const along = Math.floor(((this.job.lengths[length] as number) + crossKerf) / (group.length + crossKerf));
    return (beside + (use.boxed === null ? 0 : 1)) * along;
  }

  /** The best strips for a slab; null when none is worth its cuts. */
  best(place: Place, open: readonly number[], made: readonly number[]): Filling | null {
    let best: Filling | null = null;
    for (const prepared of place.uses) {
      const filling = this.#filling(prepared, open, made);
      if (filling === null) continue;
      if (best === null || (this.full ? filling.worth > best.worth : filling.rank > best.rank)) best = filling;
    }
    return best;
  }

  #filling(prepared: PreparedUse, open: readonly number[], made: readonly number[]): Filling | null {
    const { groups, most, found } = prepared;
    let key = 0;
    for (let g = 0; g < groups.length; g++) {
      const j = groups[g] as number;
      const left = (open[j] as number) - (made[j] as number);
      const cap = most[g] as number;
      key = key * (cap + 1) + Math.min(left, cap);
    }
    // Beyond exact whole numbers two keys might meet: such a slab is filled anew each time.
    if (key > Number.MAX_SAFE_INTEGER) return this.#fill(prepared, open, made);
    const known = found.get(key);
    if (known !== undefined) return known;
    const filling = this.#fill(prepared, open, made);
    found.set(key, filling);
    return filling;
  }

  #fill(
    { use, kind, s, length, groups }: PreparedUse,
    open: readonly number[],
    made: readonly number[],
  ): Filling | null {
    const left = open.map((count, j) => count - (made[j] as number));
    const rip = this.worth.values.rip(length, s);
    const laid: { readonly run: Run; readonly row: Row }[] = [];
    let worth = 0;
    let boxed: readonly number[] | null = null;
    if (use.boxed !== null) {
      const strip = this.#strip(length, use.boxed.mask, kind.strips[use.boxed.strip]?.section as number, left);
      if (strip.pieces.length === 0) return null;
      worth += strip.worth - 2 * rip;
      boxed = strip.pieces;
      for (const j of boxed) left[j] = (left[j] as number) - 1;
    }
    for (const run of use.runs) {
      const row = this.#row(length, s, kind, run, left);
      const gain = row.worth - (use.boxed === null ? rip : 0);
      if (row.strips.length === 0 || gain <= 0) continue;
      worth += gain;
      laid.push({ run, row });
      for (const { pieces } of row.strips) for (const j of pieces) left[j] = (left[j] as number) - 1;
    }
    if (worth <= 0) return null;
    const counts = groups.map((j) => (open[j] as number) - (made[j] as number) - (left[j] as number));
    const spared = groups.reduce((sum, j, g) => sum + (counts[g] as number) * (this.limit[j] as number), 0);
    const worths = this.full ? { worth, rank: worth - spared } : { worth: worth + spared, rank: worth };
    return { ...worths, groups, counts, strips: () => this.#draw(kind, use, boxed, laid) };
  }

  #draw(kind: SlabKind, use: SlabUse, boxed: readonly number[] | null, laid: readonly { run: Run; row: Row }[]) {
    const strips: StripPattern[] = [];
    const lay = (x0: number, k: number, pieces: readonly number[]) => {
      const width = kind.strips[k]?.width as number;
      strips.push({ x0, width, pieces: pieces.map((j) => this.job.groups[j] as SawGroup) });
      return x0 + width + kind.kerf;
    };
    if (use.boxed !== null && boxed !== null) lay(use.boxed.x0, use.boxed.strip, boxed);
    for (const { run, row } of laid) {
      const whole = row.strips.reduce((sum, { k }) => sum + (kind.strips[k]?.width as number) + kind.kerf, -kind.kerf);
      // Left of a boxed strip, and left of the axis, up against the inner edge: the bark side is the waste.
      const inward = run.hi < 0 || (use.boxed !== null && run.hi < use.boxed.x0);
      let x = inward ? run.hi - whole : run.lo;
      for (const { k, pieces } of row.strips) x = lay(x, k, pieces);
    }
    return strips.sort((a, b) => a.x0 - b.x0);
  }

  /** Best strips of a run. */
  #row(i: number, s: number, kind: SlabKind, run: Run, open: readonly number[]): Row {
    const { values } = this.worth;
    const limit = values.run(i, run.mask, s);
    const rip = values.rip(i, s);
    const left = [...open];
    const chosen: { k: number; pieces: readonly number[] }[] = [];
    let best: Row = { worth: 0, strips: [] };
    let tries = 0;
    const extend = (room: number, from: number, worth: number): void => {
      if (worth > best.worth + 1e-9) best = { worth, strips: [...chosen] };
      if (room <= 0) return;
      const most = worth + (limit[kind.pointOf[room] as number] as number);
      for (let k = from; k < kind.strips.length && tries < MOST_TRIES && most > best.worth + 1e-9; k++) {
        const { width, section } = kind.strips[k] as SlabKind["strips"][number];
        if (width > room) continue;
        const strip = this.#strip(i, run.mask, section, left);
        if (strip.pieces.length === 0) continue;
        tries++;
        for (const j of strip.pieces) left[j] = (left[j] as number) - 1;
        chosen.push({ k, pieces: strip.pieces });
        extend(room - width - kind.kerf, k, worth + strip.worth - rip);
        chosen.pop();
        for (const j of strip.pieces) left[j] = (left[j] as number) + 1;
      }
    };
    extend(run.hi - run.lo, 0, 0);
    return best;
  }

  /** Best pieces of a section over a length, no more than are open. */
  #strip(i: number, mask: number, section: number, open: readonly number[]): Strip {
    const { job } = this;
    const long = job.lengths[i] as number;
    let key = `${i} ${mask} ${section}`;
    const all = job.sections[section]?.groups ?? [];
    for (const j of all) key += ` ${Math.min(open[j] as number, Math.ceil(long / (job.groups[j] as SawGroup).length))}`;
    const known = this.#strips.get(key);
    if (known !== undefined) return known;
    const groups = all.filter((j) => job.masks[mask]?.[j] && (open[j] as number) > 0);
    const made = this.#search(long, groups, open);
    this.#strips.set(key, made);
    return made;
  }

  #search(long: number, groups: readonly number[], open: readonly number[]): Strip {
    const { crossKerf } = this.job.problem.shop;
    const gain = (j: number) => (this.worth.values.price[j] as number) - this.job.prices.crosscut;
    let best: Strip = { worth: 0, pieces: [] };
    const chosen: number[] = [];
    const extend = (room: number, g: number, worth: number): void => {
      if (worth > best.worth + 1e-9) best = { worth, pieces: [...chosen] };
      const j = groups[g];
      if (j === undefined) return;
      const length = (this.job.groups[j] as SawGroup).length;
      extend(room, g + 1, worth);
      let n = 0;
      for (let rest = room - length; rest >= 0 && n < (open[j] as number); rest -= length + crossKerf) {
        n++;
        chosen.push(j);
        extend(rest - crossKerf, g + 1, worth + n * gain(j));
      }
      chosen.length -= n;
    };
    extend(long, 0, 0);
    return best;
  }
}
