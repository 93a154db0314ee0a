/**
 * What one slab of a bolt is worth, and the strips that make it so.
 *
 * A slab clear of rot and pith is one run of strips over its usable width. One that meets rot is two runs beside it.
 * One that meets the pith is the best of: one run without free and boxed pieces; two runs clear of the pith; or, where
 * it holds the whole pith, a strip that boxes it in, with a run on either side. All strips of a slab keep to one wane.
 */

import { sawableHole } from "../bolt.js";
import type { StripPattern } from "../sawing-pattern.js";
import type { SawGroup } from "../sawing-problem.js";
import type { BoltTable } from "./bolt-table.js";
import type { Job } from "./job.js";
import type { SlabKind, StripKind } from "./slab-kinds.js";
import type { WaneRow } from "./species-rules.js";
import type { StripValues } from "./strip-values.js";

/** A run of strips [lo, hi] of a slab that keeps to a mask. */
export interface Run {
  readonly lo: number;
  readonly hi: number;
  readonly mask: number;
}

/** A way to use a slab: runs, or a strip over the pith and the runs beside it. */
export interface SlabUse {
  readonly runs: readonly Run[];
  /** Strip number of the slab's kind, its edge and its mask. */
  readonly boxed: { readonly strip: number; readonly x0: number; readonly mask: number } | null;
  /** Whether the runs are a cut apart that strips on both sides of it share. */
  readonly shared?: boolean;
}

/** Best way to use the slab of a kind between the heights `near` and `outer` of its faces from the axis. */
export interface Worth {
  readonly value: number;
  readonly use: SlabUse | null;
}

/** Values of slabs at one set of prices after another, for all bolts. */
export class SlabWorth {
  /** By row and length; then by half the width and the pith. */
  #boxed: Map<number, number>[] = [];

  constructor(
    readonly job: Job,
    readonly values: StripValues,
  ) {}

  /** Begins anew at other prices. */
  reprice(price: ArrayLike<number>): void {
    this.values.reprice(price);
    this.#boxed = [];
  }

  /** Remembered: it depends on length, kind, wane, width and pith only, and these come back from bolt to bolt. */
  boxedValue(table: BoltTable, s: number, row: WaneRow, half: number): number {
    const place = row.id * this.job.lengths.length + table.length;
    let known = this.#boxed[place];
    if (known === undefined) {
      known = new Map();
      this.#boxed[place] = known;
    }
    const key = half * 4096 + table.box;
    let value = known.get(key);
    if (value === undefined) {
      value = this.#bestBoxed(table, s, row, half)?.value ?? 0;
      known.set(key, value);
    }
    return value;
  }

  #bestBoxed(table: BoltTable, s: number, row: WaneRow, half: number) {
    const { values } = this;
    const { box } = table;
    const kind = this.job.slabs[s] as SlabKind;
    const cut = values.rip(table.length, s);
    const sides = values.run(table.length, row.clear, s);
    let [best, strip, x0] = [0, -1, 0];
    for (let k = 0; k < kind.strips.length; k++) {
      const { width, section } = kind.strips[k] as StripKind;
      const pieces = values.stripWorth(row.boxing, section, table.length);
      // Left edge of the strip from the left edge of the wood; it must leave the pith inside.
      const least = Math.max(0, half + box - width);
      const most = Math.min(half - box, 2 * half - width);
      if (pieces <= 0 || least > most) continue;
      for (let p = kind.pointOf[Math.max(0, least - kind.kerf)] as number; p < kind.points.length; p++) {
        const at = Math.max(kind.points[p] as number, least);
        if (at > most) break;
        const right = 2 * half - at - width - kind.kerf;
        const beside = right > 0 ? values.fill(sides, s, kind.pointOf[right] as number) : 0;
        const value = pieces - 2 * cut + values.fill(sides, s, p) + beside;
        if (value > best) [best, strip, x0] = [value, k, at - half];
      }
    }
    return strip < 0 ? null : { value: best, strip, x0 };
  }

  /** The use that gives the slab [y0, y0 + thickness] its worth; null when it is worth nothing. */
  use(table: BoltTable, s: number, y0: number): SlabUse | null {
    const uses = this.uses(table, s, y0);
    let best: { value: number; use: SlabUse } | null = null;
    for (const use of uses) {
      const value = this.#useValue(table, s, use);
      if (value > 0 && (best === null || value > best.value)) best = { value, use };
    }
    return best?.use ?? null;
  }

  /**
   * All ways to use a slab, whatever they are worth; of those around a boxed heart the best.
   * @param every - Of those around a boxed heart all that can differ in what they give; beside a hole that a cut may cover
   *   all places of that cut.
   */
  uses(table: BoltTable, s: number, y0: number, every = false): SlabUse[] {
    const { thickness, kerf } = this.job.slabs[s] as SlabKind;
    const y1 = y0 + thickness;
    const near = y0 <= 0 && y1 >= 0 ? 0 : Math.min(Math.abs(y0), Math.abs(y1));
    const outer = Math.max(Math.abs(y0), Math.abs(y1));
    const rot = near < table.core ? (table.rot[near] as number) : 0;
    const pith = near < table.core ? (table.pith[near] as number) : 0;
    if (outer > table.top) return [];
    return (table.rules.rows[s] as readonly WaneRow[]).flatMap((row): SlabUse[] => {
      const half = (table.half[row.wane] as Uint16Array)[outer] as number;
      if (half <= rot) return [];
      const clear = Math.max(rot, pith);
      const found = this.#sides(half, rot, clear > rot ? row.touching : row.clear, kerf, every);
      if (clear > rot && row.clear !== row.touching) found.push(...this.#sides(half, clear, row.clear, kerf, every));
      if (near === 0 && Math.min(-y0, y1) >= table.box && row.boxing !== row.touching) {
        const best = every ? null : this.#bestBoxed(table, s, row, half);
        const boxed = every ? this.#everyBoxed(table, s, half) : best === null ? [] : [best];
        found.push(...boxed.map((one) => this.#around(s, row, half, one)));
      }
      return found;
    });
  }

  /** The whole width, or both sides of a hole. */
  #sides(half: number, hole: number, mask: number, kerf: number, every: boolean): SlabUse[] {
    if (every && hole > 0 && 2 * hole <= kerf) return acrossCut(half, hole, kerf, mask);
    const keep = every ? hole : sawableHole(this.job.problem.shop, hole);
    return half > keep ? [beside(half, keep, mask)] : [];
  }

  /** Strips over the pith: wherever strips left of them leave off, or as far left as the pith allows. */
  #everyBoxed({ box }: BoltTable, s: number, half: number): { strip: number; x0: number }[] {
    const { strips, points, kerf, pointOf } = this.job.slabs[s] as SlabKind;
    return strips.flatMap(({ width }, strip) => {
      const least = Math.max(0, half + box - width);
      const most = Math.min(half - box, 2 * half - width);
      const first = pointOf[Math.max(0, least - kerf)] as number;
      const places = new Set(points.slice(first).map((point) => Math.max(point, least)));
      return [...places].filter((at) => at <= most).map((at) => ({ strip, x0: at - half }));
    });
  }

  #around(s: number, row: WaneRow, half: number, { strip, x0 }: { strip: number; x0: number }): SlabUse {
    const kind = this.job.slabs[s] as SlabKind;
    const width = kind.strips[strip]?.width as number;
    const runs = [
      { lo: -half, hi: x0 - kind.kerf, mask: row.clear },
      { lo: x0 + width + kind.kerf, hi: half, mask: row.clear },
    ].filter(({ lo, hi }) => hi > lo);
    return { runs, boxed: { strip, x0, mask: row.boxing } };
  }

  #useValue(table: BoltTable, s: number, { runs, boxed }: SlabUse): number {
    const { values } = this;
    const i = table.length;
    const kind = this.job.slabs[s] as SlabKind;
    if (boxed === null) return runs.reduce((sum, { lo, hi, mask }) => sum + values.slab(i, mask, s, hi - lo), 0);
    const section = kind.strips[boxed.strip]?.section as number;
    const centre = values.stripWorth(boxed.mask, section, i) - 2 * values.rip(i, s);
    const side = ({ lo, hi, mask }: Run) => values.fill(values.run(i, mask, s), s, kind.pointOf[hi - lo] as number);
    return runs.reduce((sum, run) => sum + side(run), centre);
  }

  /** Strips, x ascending, of a use at these prices. */
  strips(table: BoltTable, s: number, use: SlabUse): StripPattern[] {
    const kind = this.job.slabs[s] as SlabKind;
    const { boxed } = use;
    const strips: StripPattern[] = [];
    for (const run of use.runs) {
      if (boxed === null && this.values.slab(table.length, run.mask, s, run.hi - run.lo) <= 0) continue;
      strips.push(...this.#runStrips(table, s, run, boxed !== null && run.hi < boxed.x0));
    }
    if (boxed !== null) {
      const { strip, x0, mask } = boxed;
      const { width, section } = kind.strips[strip] as SlabKind["strips"][number];
      strips.push({ x0, width, pieces: this.#pieces(table, mask, section) });
    }
    return strips.sort((a, b) => a.x0 - b.x0);
  }

  /** Laid from the lower edge, or, left of a boxed strip, up against it, so that they share its cut. */
  #runStrips(table: BoltTable, s: number, { lo, hi, mask }: Run, against: boolean): StripPattern[] {
    const kind = this.job.slabs[s] as SlabKind;
    const chosen = this.values.runStrips(table.length, mask, s, kind.pointOf[hi - lo] as number);
    const whole = chosen.reduce((sum, k) => sum + (kind.strips[k]?.width as number) + kind.kerf, -kind.kerf);
    let x0 = against ? hi - whole : lo;
    let last = -1;
    let pieces: readonly SawGroup[] = [];
    return chosen.map((k) => {
      const { width, section } = kind.strips[k] as SlabKind["strips"][number];
      if (k !== last) pieces = this.#pieces(table, mask, section);
      last = k;
      const strip = { x0, width, pieces };
      x0 += width + kind.kerf;
      return strip;
    });
  }

  #pieces(table: BoltTable, mask: number, section: number): SawGroup[] {
    return this.values.stripPieces(mask, section, table.length).map((j) => this.job.groups[j] as SawGroup);
  }
}

/** Runs on both sides of a cut that covers a hole, wherever the cut may lie. */
function acrossCut(half: number, hole: number, kerf: number, mask: number): SlabUse[] {
  return Array.from({ length: kerf - 2 * hole + 1 }, (_, i): SlabUse => {
    const cut = hole - kerf + i;
    const runs = [
      { lo: -half, hi: cut, mask },
      { lo: cut + kerf, hi: half, mask },
    ];
    return { runs: runs.filter(({ lo, hi }) => hi > lo), boxed: null, shared: true };
  });
}

/** One run over the whole width, or two beside what is kept clear of. */
function beside(half: number, keep: number, mask: number): SlabUse {
  const runs =
    keep > 0
      ? [
          { lo: -half, hi: -keep, mask },
          { lo: keep, hi: half, mask },
        ]
      : [{ lo: -half, hi: half, mask }];
  return { runs, boxed: null };
}
