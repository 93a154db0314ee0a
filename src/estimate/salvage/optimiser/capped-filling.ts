/**
 * Strips for one slab when only so many pieces of each group are still wanted: a depth-first search over strips, cut
 * off by the worth that the same width would have without the limit.
 */

import type { StripPattern } from "../sawing-pattern.js";
import type { SawGroup } from "../sawing-problem.js";
import type { BoltTable } from "./bolt-table.js";
import { CappedStrips, type Row, type RowStrip } from "./capped-strips.js";
import type { Job } from "./job.js";
import type { LogPricing } from "./log-pricing.js";
import type { SlabGains } from "./slab-gains.js";
import type { SlabKind } from "./slab-kinds.js";
import type { Run, SlabUse, SlabWorth } from "./slab-worth.js";
import type { WaneRow } from "./species-rules.js";

/** A slab's strips. */
export interface Filling {
  /** Worth at full prices, rip cuts and crosscuts paid. */
  readonly worth: number;
  /** Worth less what the pieces were worth to be left open. */
  readonly rank: number;
  /** Groups that come out of it, and how many of each. */
  readonly groups: readonly number[];
  readonly counts: readonly number[];
  /** A number for its yield, such that the numbers of a stack's slabs add up to the number of its yield. */
  readonly mark: number;
  /** What its strips are drawn from. */
  readonly prepared: PreparedUse;
  readonly boxed: readonly number[] | null;
  readonly laid: readonly Laid[];
}

/** Strips of a run of a use, by its number. */
interface Laid {
  readonly run: number;
  readonly row: Row;
}

/** A slab's place in a bolt, ready to be filled for any open counts. */
export interface Place {
  readonly uses: readonly PreparedUse[];
}

/** A use of a slab with what has been found for it, by the counts open of the groups that it can make. */
interface PreparedUse {
  readonly use: SlabUse;
  /** Wane, by number, of a use over the whole width: it stands for every such slab that takes the same strips. */
  readonly wane: number | null;
  readonly kind: SlabKind;
  readonly s: number;
  readonly length: number;
  /** Groups that it can make, and the most of each. */
  readonly groups: readonly number[];
  readonly most: readonly number[];
  readonly found: Map<number, Filling | null>;
}

/** Fillings at one set of prices, remembered by slab and by what is open of the groups that come out of it. */
export class CappedFilling {
  readonly #uses = new Map<string, PreparedUse>();
  /** Of slabs clear of rot and pith, by length, row and point of the width. */
  readonly #clear = new Map<number, PreparedUse>();
  readonly #strips: CappedStrips;
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
    this.#strips = new CappedStrips(job, worth.values);
  }

  /** The place of a slab of kind `s` at y0; null where the slab would be worth nothing even without a limit. */
  place(table: BoltTable, s: number, y0: number): Place | null {
    if (this.gains.at(s, y0) <= 0) return null;
    const kind = this.job.slabs[s] as SlabKind;
    const y1 = y0 + kind.thickness;
    const near = y0 <= 0 && y1 >= 0 ? 0 : Math.min(Math.abs(y0), Math.abs(y1));
    if (near < table.core)
      return { uses: this.worth.uses(table, s, y0).map((use) => this.#prepare(table.length, s, kind, use)) };
    const outer = Math.max(-y0, y1);
    const uses: PreparedUse[] = [];
    for (const row of table.rules.rows[s] as readonly WaneRow[]) {
      const half = (table.half[row.wane] as Uint16Array)[outer] as number;
      if (half > 0) uses.push(this.#whole(table.length, s, kind, row, half));
    }
    return { uses };
  }

  /** The use of a slab over its whole width. */
  #whole(length: number, s: number, kind: SlabKind, row: WaneRow, half: number): PreparedUse {
    const point = kind.pointOfHalf[half] as number;
    const key = (row.id * this.job.lengths.length + length) * 65536 + point;
    const known = this.#clear.get(key);
    if (known !== undefined) return known;
    const use = { runs: [{ lo: -half, hi: half, mask: row.clear }], boxed: null };
    const made = this.#prepared(length, s, kind, use, row.wane);
    this.#clear.set(key, made);
    return made;
  }

  #prepare(length: number, s: number, kind: SlabKind, use: SlabUse): PreparedUse {
    let key = `${length};${s}`;
    for (const { lo, hi, mask } of use.runs) key += `;${lo},${hi},${mask}`;
    if (use.boxed !== null) key += `b${use.boxed.strip},${use.boxed.x0},${use.boxed.mask}`;
    const known = this.#uses.get(key);
    if (known !== undefined) return known;
    const made = this.#prepared(length, s, kind, use, null);
    this.#uses.set(key, made);
    return made;
  }

  #prepared(length: number, s: number, kind: SlabKind, use: SlabUse, wane: number | null): PreparedUse {
    const most = kind.groups.map((j) => this.#mostOf(length, kind, use, this.job.groups[j] as SawGroup));
    return { use, wane, kind, s, length, groups: kind.groups, most, found: new Map() };
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
  best({ uses }: Place, open: readonly number[], made: readonly number[]): Filling | null {
    let best: Filling | null = null;
    for (let u = 0; u < uses.length; u++) {
      const filling = this.#filling(uses[u] as PreparedUse, open, made);
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

  #fill(prepared: PreparedUse, open: readonly number[], made: readonly number[]): Filling | null {
    const { use, kind, s, length, groups } = prepared;
    const strips = this.#strips;
    const { left } = strips;
    for (let j = 0; j < left.length; j++) left[j] = (open[j] as number) - (made[j] as number);
    const rip = this.worth.values.rip(length, s);
    const laid: Laid[] = [];
    let worth = 0;
    let boxed: readonly number[] | null = null;
    if (use.boxed !== null) {
      const strip = strips.strip(length, use.boxed.mask, kind.strips[use.boxed.strip]?.section as number);
      if (strip.pieces.length === 0) return null;
      worth += strip.worth - 2 * rip;
      boxed = strip.pieces;
      strips.lay(boxed, -1);
    }
    for (let run = 0; run < use.runs.length; run++) {
      const row = strips.row(length, s, use.runs[run] as Run);
      const gain = row.worth - (use.boxed === null ? rip : 0);
      if (row.strips.length === 0 || gain <= 0) continue;
      worth += gain;
      laid.push({ run, row });
      for (let k = 0; k < row.strips.length; k++) strips.lay((row.strips[k] as RowStrip).pieces, -1);
    }
    if (worth <= 0) return null;
    const counts: number[] = [];
    let spared = 0;
    for (let g = 0; g < groups.length; g++) {
      const j = groups[g] as number;
      const count = (open[j] as number) - (made[j] as number) - (left[j] as number);
      counts.push(count);
      spared += count * (this.limit[j] as number);
    }
    const rank = this.full ? worth - spared : worth;
    if (!this.full) worth += spared;
    return { worth, rank, groups, counts, mark: marked(groups, counts), prepared, boxed, laid };
  }
}

/** The use where a slab lies: one over the whole width is as wide as the wood is there. */
function useAt({ use, wane, kind }: PreparedUse, table: BoltTable, y0: number): SlabUse {
  if (wane === null) return use;
  const half = (table.half[wane] as Uint16Array)[Math.max(-y0, y0 + kind.thickness)] as number;
  return { runs: use.runs.map(({ mask }) => ({ lo: -half, hi: half, mask })), boxed: null };
}

/** Draws the strips of a filling, for the slab of a bolt with its lower face at a height. */
export function drawFilling(
  job: Job,
  { prepared, boxed, laid }: Filling,
  table: BoltTable,
  y0: number,
): StripPattern[] {
  const { kind } = prepared;
  const use = useAt(prepared, table, y0);
  const strips: StripPattern[] = [];
  const lay = (x0: number, k: number, pieces: readonly number[]) => {
    const width = kind.strips[k]?.width as number;
    strips.push({ x0, width, pieces: pieces.map((j) => job.groups[j] as SawGroup) });
    return x0 + width + kind.kerf;
  };
  if (use.boxed !== null && boxed !== null) lay(use.boxed.x0, use.boxed.strip, boxed);
  for (const { run: number, row } of laid) {
    const run = use.runs[number] as Run;
    const whole = row.strips.reduce((sum, { k }) => sum + (kind.strips[k]?.width as number) + kind.kerf, -kind.kerf);
    // Left of a boxed strip, and left of the axis, up against the inner edge: the bark side is the waste.
    const inward = run.hi < 0 || (use.boxed !== null && run.hi < use.boxed.x0);
    let x = inward ? run.hi - whole : run.lo;
    for (const { k, pieces } of row.strips) x = lay(x, k, pieces);
  }
  return strips.sort((a, b) => a.x0 - b.x0);
}

/** Different yields meet so rarely that losing one does no harm. */
function marked(groups: readonly number[], counts: readonly number[]): number {
  let mark = 0;
  for (let g = 0; g < groups.length; g++) {
    // Scattered by a multiplier of Knuth's (The Art of Computer Programming, vol. 3, 6.4): 2^32 over the golden ratio.
    mark += (counts[g] as number) * (Math.imul((groups[g] as number) + 1, 2654435761) >>> 0);
  }
  return mark;
}
