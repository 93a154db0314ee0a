/**
 * Strips for one slab when only so many pieces of each group are still wanted: a depth-first search over strips, cut
 * off by the worth that the same width would have without the limit.
 */

import type { StripPattern } from "../sawing-pattern.js";
import type { SawGroup } from "../sawing-problem.js";
import type { BoltTable } from "./bolt-table.js";
import type { Job, SlabKind } from "./job.js";
import type { Run, SlabUse, SlabWorth } from "./slab-worth.js";

/** A slab's strips; `worth` at the prices of the search, rip cuts and crosscuts paid. */
export interface Filling {
  readonly worth: number;
  readonly made: readonly number[];
  readonly strips: readonly StripPattern[];
}

interface Strip {
  readonly worth: number;
  readonly pieces: readonly number[];
}

/** Most strips tried for one run. Assumption: far more than a slab has sensible ways. */
const MOST_TRIES = 400;

/** Fillings at one set of prices, remembered by slab and by what is open of the groups that come out of it. */
export class CappedFilling {
  readonly #slabs = new Map<string, Filling | null>();
  readonly #strips = new Map<string, Strip>();

  constructor(
    readonly job: Job,
    readonly worth: SlabWorth,
  ) {}

  /** The best strips for the slab of kind `s` at y0; null when none is worth its cuts. */
  slab(table: BoltTable, s: number, y0: number, open: ArrayLike<number>): Filling | null {
    const kind = this.job.slabs[s] as SlabKind;
    let best: Filling | null = null;
    for (const use of this.worth.uses(table, s, y0)) {
      const filling = this.#use(table, s, kind, use, open);
      if (filling !== null && (best === null || filling.worth > best.worth)) best = filling;
    }
    return best;
  }

  #use(table: BoltTable, s: number, kind: SlabKind, use: SlabUse, open: ArrayLike<number>): Filling | null {
    const runs = use.runs.map(({ lo, hi, mask }) => `${hi - lo} ${lo} ${mask}`).join(",");
    const boxed = use.boxed === null ? "" : `${use.boxed.strip} ${use.boxed.x0} ${use.boxed.mask}`;
    const key = `${table.length};${s};${runs};${boxed};${kind.groups.map((j) => open[j]).join(" ")}`;
    const known = this.#slabs.get(key);
    if (known !== undefined) return known;
    const made = this.#fill(table.length, s, kind, use, open);
    this.#slabs.set(key, made);
    return made;
  }

  #fill(i: number, s: number, kind: SlabKind, use: SlabUse, open: ArrayLike<number>): Filling | null {
    const left = Array.from(open);
    const made = new Array<number>(left.length).fill(0);
    const strips: StripPattern[] = [];
    const rip = this.worth.values.rip(i, s);
    let worth = 0;
    const lay = (x0: number, k: number, pieces: readonly number[]) => {
      for (const j of pieces) {
        left[j] = (left[j] as number) - 1;
        made[j] = (made[j] as number) + 1;
      }
      const width = kind.strips[k]?.width as number;
      strips.push({ x0, width, pieces: pieces.map((j) => this.job.groups[j] as SawGroup) });
    };
    if (use.boxed !== null) {
      const { strip: k, x0, mask } = use.boxed;
      const strip = this.#strip(i, mask, kind.strips[k]?.section as number, left);
      if (strip.pieces.length === 0) return null;
      worth += strip.worth - 2 * rip;
      lay(x0, k, strip.pieces);
    }
    for (const run of use.runs) {
      const chosen = this.#run(i, s, kind, run, left);
      const gain = chosen.worth - (use.boxed === null ? rip : 0);
      if (chosen.strips.length === 0 || gain <= 0) continue;
      worth += gain;
      const whole = chosen.strips.reduce(
        (sum, { k }) => sum + (kind.strips[k]?.width as number) + kind.kerf,
        -kind.kerf,
      );
      // Left of a boxed strip, and left of the axis, up against the inner edge: the bark side is the waste.
      let x = run.hi < 0 || (use.boxed !== null && run.hi < use.boxed.x0) ? run.hi - whole : run.lo;
      for (const { k, pieces } of chosen.strips) {
        lay(x, k, pieces);
        x += (kind.strips[k]?.width as number) + kind.kerf;
      }
    }
    if (worth <= 0 || strips.length === 0) return null;
    return { worth, made, strips: strips.sort((a, b) => a.x0 - b.x0) };
  }

  /** Best strips of a run, each with its own rip cut paid. */
  #run(i: number, s: number, kind: SlabKind, run: Run, open: readonly number[]) {
    const { values } = this.worth;
    const limit = values.run(i, run.mask, s);
    const rip = values.rip(i, s);
    const left = [...open];
    const chosen: { k: number; pieces: readonly number[] }[] = [];
    let best: { worth: number; strips: { k: number; pieces: readonly number[] }[] } = { worth: 0, strips: [] };
    let tries = 0;
    const extend = (room: number, from: number, worth: number): void => {
      if (worth > best.worth + 1e-9) best = { worth, strips: [...chosen] };
      for (let k = from; k < kind.strips.length && tries < MOST_TRIES; k++) {
        const { width, section } = kind.strips[k] as SlabKind["strips"][number];
        const rest = room - width - kind.kerf;
        if (rest < -kind.kerf) continue;
        if (worth + (limit[kind.pointOf[room] as number] as number) <= best.worth + 1e-9) return;
        const strip = this.#strip(i, run.mask, section, left);
        if (strip.pieces.length === 0) continue;
        tries++;
        for (const j of strip.pieces) left[j] = (left[j] as number) - 1;
        chosen.push({ k, pieces: strip.pieces });
        if (rest > 0) extend(rest, k, worth + strip.worth - rip);
        else if (worth + strip.worth - rip > best.worth + 1e-9)
          best = { worth: worth + strip.worth - rip, strips: [...chosen] };
        chosen.pop();
        for (const j of strip.pieces) left[j] = (left[j] as number) + 1;
      }
    };
    extend(run.hi - run.lo, 0, 0);
    return best;
  }

  /** Best pieces of a section over a length, no more than are open. */
  #strip(i: number, mask: number, section: number, open: readonly number[]): Strip {
    const groups =
      this.job.sections[section]?.groups.filter((j) => this.job.masks[mask]?.[j] && (open[j] as number) > 0) ?? [];
    const long = this.job.lengths[i] as number;
    const most = groups.map((j) =>
      Math.min(open[j] as number, Math.ceil(long / (this.job.groups[j] as SawGroup).length)),
    );
    const key = `${i};${groups.join(" ")};${most.join(" ")}`;
    const known = this.#strips.get(key);
    if (known !== undefined) return known;
    const made = this.#search(long, groups, most);
    this.#strips.set(key, made);
    return made;
  }

  #search(long: number, groups: readonly number[], most: readonly number[]): Strip {
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
      for (let rest = room - length; rest >= 0 && n < (most[g] as number); rest -= length + crossKerf) {
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
