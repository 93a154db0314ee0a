/**
 * Everything that a slab can give, with the best worth of each yield: no more than wanted, and no further below the
 * slab's best worth than a slack.
 *
 * The same two nested knapsacks as in `strip-values`, over yields instead of worths alone.
 */
import type { StripPattern } from "../sawing-pattern.js";
import type { SawGroup } from "../sawing-problem.js";
import type { BoltTable } from "./bolt-table.js";
import type { Job } from "./job.js";
import type { SlabKind } from "./slab-kinds.js";
import type { SlabUse, SlabWorth } from "./slab-worth.js";
import type { WaneRow } from "./species-rules.js";
import { NOTHING, type Yield, type YieldCode } from "./yield-code.js";

interface Valued extends Yield {
  readonly value: number;
}

interface StripYield extends Valued {
  readonly pieces: readonly number[];
}

/** Strips of a run, the last one first; each with its rip cut. */
interface RunYield extends Valued {
  readonly kind: number;
  readonly strip: StripYield | null;
  readonly before: RunYield | null;
}

/** A run whose next strip is of a kind and has its rip cut paid. */
interface Paid {
  readonly before: RunYield;
  readonly kind: number;
  readonly value: number;
}

/** One yield of a slab: runs in the order of the use's, null where one is left empty. Cuts are paid. */
export interface SlabYield extends Valued {
  readonly boxed: StripYield | null;
  readonly runs: readonly (RunYield | null)[];
}

/** A way to use a slab with its yields, best worth first. */
export interface SlabSource {
  readonly use: SlabUse;
  readonly yields: readonly SlabYield[];
}

const EMPTY: RunYield = { ...NOTHING, value: 0, kind: -1, strip: null, before: null };

/** Yields of slabs at one set of prices. */
export class SlabYields {
  readonly #strips = new Map<string, readonly StripYield[]>();
  readonly #rows = new Map<number, (readonly RunYield[])[]>();
  readonly #slabs = new Map<string, readonly SlabYield[]>();
  readonly #clear = new Map<number, readonly SlabYield[]>();
  /** Yields made so far. */
  work = 0;

  /** @param slack - What is worth less than the best by more than this is left out. */
  constructor(
    readonly job: Job,
    readonly worth: SlabWorth,
    readonly code: YieldCode,
    readonly slack: number,
  ) {}

  /** All ways to use slab kind `s` at y0. */
  of(table: BoltTable, s: number, y0: number): SlabSource[] {
    const kind = this.job.slabs[s] as SlabKind;
    const y1 = y0 + kind.thickness;
    const near = y0 <= 0 && y1 >= 0 ? 0 : Math.min(Math.abs(y0), Math.abs(y1));
    if (near < table.core) {
      const uses = this.worth.uses(table, s, y0, true);
      return uses.map((use) => ({ use, yields: this.#used(table.length, s, kind, use) }));
    }
    const outer = Math.max(Math.abs(y0), Math.abs(y1));
    const sources: SlabSource[] = [];
    for (const { wane, clear } of table.rules.rows[s] as readonly WaneRow[]) {
      const half = (table.half[wane] as Uint16Array)[outer] as number;
      if (half <= 0) continue;
      const yields = this.#wide(table.length, clear, s, kind.pointOf[2 * half] as number);
      if (yields.length > 0)
        sources.push({ use: { runs: [{ lo: -half, hi: half, mask: clear }], boxed: null }, yields });
    }
    return sources;
  }

  /** Yields of one run over the whole width. */
  #wide(i: number, mask: number, s: number, point: number): readonly SlabYield[] {
    const key = ((i * this.job.masks.length + mask) * this.job.slabs.length + s) * 65536 + point;
    const known = this.#clear.get(key);
    if (known !== undefined) return known;
    const rip = this.worth.values.rip(i, s);
    const made = this.#row(i, mask, s, point)
      .filter((run) => run !== EMPTY)
      .map((run): SlabYield => ({ ...plain(run), value: run.value - rip, boxed: null, runs: [run] }))
      .sort(bestFirst);
    this.#clear.set(key, made);
    return made;
  }

  #used(i: number, s: number, kind: SlabKind, { runs, boxed, shared }: SlabUse): readonly SlabYield[] {
    let key = `${i};${s}`;
    for (const { lo, hi, mask } of runs) key += `;${hi - lo},${mask}`;
    if (boxed !== null) key += `b${boxed.strip},${boxed.mask}`;
    if (shared) key += "s";
    const known = this.#slabs.get(key);
    if (known !== undefined) return known;
    const rip = this.worth.values.rip(i, s);
    let all: SlabYield[] = [{ ...NOTHING, value: 0, boxed: null, runs: [] }];
    if (boxed !== null) {
      const strips = this.#stripYields(i, boxed.mask, kind.strips[boxed.strip]?.section as number);
      all = strips.map((strip) => ({ ...plain(strip), value: strip.value - 2 * rip, boxed: strip, runs: [] }));
    }
    for (const run of runs) {
      const row = this.#row(i, run.mask, s, kind.pointOf[run.hi - run.lo] as number);
      all = this.#beside(all, row, { lastCut: boxed === null ? rip : 0, shared: shared === true });
    }
    const made = all.filter(({ key }) => key !== 0).sort(bestFirst);
    this.#slabs.set(key, made);
    return made;
  }

  /** Each of some yields with each of a run's beside it; where strips on both sides share a cut, it is paid already. */
  #beside(
    all: readonly SlabYield[],
    row: readonly RunYield[],
    { lastCut, shared }: { readonly lastCut: number; readonly shared: boolean },
  ): SlabYield[] {
    const best = new Map<number, SlabYield>();
    const most = Math.max(...all.map(({ value }) => value)) + Math.max(...row.map(({ value }) => value - lastCut), 0);
    for (const one of all) {
      const cut = shared && one.key !== 0 ? 0 : lastCut;
      for (const run of row) {
        this.work++;
        const value = one.value + (run === EMPTY ? 0 : run.value - cut);
        const key = one.key + run.key;
        if (value < most - this.slack || !this.code.fits(one.lo + run.lo, one.hi + run.hi)) continue;
        const known = best.get(key);
        if (known !== undefined && known.value >= value) continue;
        const runs = [...one.runs, run === EMPTY ? null : run];
        best.set(key, { lo: one.lo + run.lo, hi: one.hi + run.hi, key, value, boxed: one.boxed, runs });
      }
    }
    return [...best.values()];
  }

  /** Yields of strips up to a point, the last rip cut not paid. */
  #row(i: number, mask: number, s: number, point: number): readonly RunYield[] {
    const key = (i * this.job.masks.length + mask) * this.job.slabs.length + s;
    let rows = this.#rows.get(key);
    if (rows === undefined) {
      rows = [[EMPTY]];
      this.#rows.set(key, rows);
    }
    const { strips, before } = this.job.slabs[s] as SlabKind;
    const { values } = this.worth;
    const most = values.run(i, mask, s);
    const rip = this.worth.values.rip(i, s);
    for (let p = rows.length; p <= point; p++) {
      const least = values.fill(most, s, p) - this.slack;
      const best = new Map<number, RunYield>();
      for (const run of rows[p - 1] as readonly RunYield[]) if (run.value >= least) best.set(run.key, run);
      for (const [kind, { section }] of strips.entries()) {
        const from = before[p * strips.length + kind] as number;
        if (from < 0) continue;
        const beside = this.#stripYields(i, mask, section);
        for (const run of rows[from] as readonly RunYield[])
          this.#extend(best, { before: run, kind, value: run.value - rip }, beside, least);
      }
      rows.push([...best.values()]);
    }
    return rows[point] as readonly RunYield[];
  }

  /** Adds one run with each of some strips after it, the strip's rip cut already paid. */
  #extend(best: Map<number, RunYield>, run: Paid, strips: readonly StripYield[], least: number): void {
    for (const strip of strips) {
      const value = run.value + strip.value;
      if (value < least) break;
      this.work++;
      const [lo, hi] = [run.before.lo + strip.lo, run.before.hi + strip.hi];
      if (!this.code.fits(lo, hi)) continue;
      const key = run.before.key + strip.key;
      const known = best.get(key);
      if (known === undefined || value > known.value)
        best.set(key, { lo, hi, key, value, strip, kind: run.kind, before: run.before });
    }
  }

  /** Yields of a strip with at least one piece, best first. */
  #stripYields(i: number, mask: number, section: number): readonly StripYield[] {
    const key = `${i} ${mask} ${section}`;
    const known = this.#strips.get(key);
    if (known !== undefined) return known;
    const { job, code } = this;
    const { values } = this.worth;
    const groups = (job.sections[section]?.groups ?? []).filter((j) => job.masks[mask]?.[j]);
    const least = values.stripWorth(mask, section, i) - this.slack;
    const found: StripYield[] = [];
    const chosen: number[] = [];
    const extend = (room: number, g: number, at: Valued): void => {
      const j = groups[g];
      if (j === undefined) {
        if (at.key !== 0 && at.value >= least) found.push({ ...at, pieces: [...chosen] });
        return;
      }
      const { length } = job.groups[j] as SawGroup;
      const one = code.one(j);
      const gain = (values.price[j] as number) - job.prices.crosscut;
      let [now, rest, laid] = [at, room, 0];
      for (;;) {
        extend(rest, g + 1, now);
        if (length > rest) break;
        const next = { lo: now.lo + one.lo, hi: now.hi + one.hi, key: now.key + one.key, value: now.value + gain };
        if (!code.fits(next.lo, next.hi)) break;
        [now, rest, laid] = [next, rest - length - job.problem.shop.crossKerf, laid + 1];
        chosen.push(j);
      }
      chosen.length -= laid;
    };
    extend(job.lengths[i] as number, 0, { ...NOTHING, value: 0 });
    this.work += found.length;
    found.sort(bestFirst);
    this.#strips.set(key, found);
    return found;
  }

  /** Strips of a yield, x ascending. */
  draw(s: number, use: SlabUse, { boxed, runs }: SlabYield): StripPattern[] {
    const kind = this.job.slabs[s] as SlabKind;
    const strips: StripPattern[] = [];
    const lay = (x0: number, k: number, pieces: readonly number[]) => {
      const width = kind.strips[k]?.width as number;
      strips.push({ x0, width, pieces: pieces.map((j) => this.job.groups[j] as SawGroup) });
      return x0 + width + kind.kerf;
    };
    if (use.boxed !== null && boxed !== null) lay(use.boxed.x0, use.boxed.strip, boxed.pieces);
    for (const [r, { lo, hi }] of use.runs.entries()) {
      const row = rowOf(runs[r] ?? null);
      const whole = row.reduce((sum, { kind: k }) => sum + (kind.strips[k]?.width as number) + kind.kerf, -kind.kerf);
      // Left of a boxed strip, and left of the axis, up against the inner edge: the bark side is the waste.
      let x = hi < 0 || (use.boxed !== null && hi < use.boxed.x0) ? hi - whole : lo;
      for (const { kind: k, strip } of row) x = lay(x, k, strip?.pieces ?? []);
    }
    return strips.sort((a, b) => a.x0 - b.x0);
  }
}

function rowOf(last: RunYield | null): RunYield[] {
  const row: RunYield[] = [];
  for (let run = last; run !== null && run !== EMPTY; run = run.before) row.unshift(run);
  return row;
}

const plain = ({ lo, hi, key }: Yield): Yield => ({ lo, hi, key });
const bestFirst = (a: Valued, b: Valued): number => b.value - a.value || a.key - b.key;
