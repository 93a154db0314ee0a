/**
 * Strips for one run when only so many pieces of each group are still wanted: a depth-first search, cut off by the worth
 * that the same width would have without the limit.
 */
import type { SawGroup } from "../sawing-problem.js";
import type { Job } from "./job.js";
import type { SlabKind } from "./slab-kinds.js";
import type { Run } from "./slab-worth.js";
import type { RunWorth, StripValues } from "./strip-values.js";

/** Pieces of a strip, and their worth. */
export interface Strip {
  readonly worth: number;
  readonly pieces: readonly number[];
}

/** A strip of a run, by number within the kind of slab. */
export interface RowStrip {
  readonly k: number;
  readonly pieces: readonly number[];
}

/** Strips of a run, and their worth with a rip cut each. */
export interface Row {
  readonly worth: number;
  readonly strips: readonly RowStrip[];
}

const NO_STRIPS: Row = { worth: 0, strips: [] };

/** A run that is being filled. */
interface Filled {
  readonly i: number;
  readonly s: number;
  readonly kind: SlabKind;
  readonly mask: number;
  readonly limit: RunWorth;
  readonly rip: number;
  readonly chosen: RowStrip[];
  /** The best worth so far, how many of the strips chosen give it until they are noted down, and those noted. */
  worth: number;
  open: number;
  best: readonly RowStrip[];
  tries: number;
}

/** Pieces being chosen for a strip, and the best found. */
interface StripSearch {
  readonly groups: readonly number[];
  readonly open: Int32Array;
  readonly chosen: number[];
  best: Strip;
}

/** Most strips tried for one run. Assumption: far more than a slab has sensible ways. */
const MOST_TRIES = 300;

/** Strips at one set of prices, remembered by what is open of the groups that come out of them. */
export class CappedStrips {
  /** By length, mask and section; then by what is open of its groups. */
  readonly #strips: (Map<number, Strip> | undefined)[] = [];
  /** Pieces still open while a slab is filled, by group. */
  readonly left: Int32Array;

  constructor(
    readonly job: Job,
    readonly values: StripValues,
  ) {
    this.left = new Int32Array(job.groups.length);
  }

  /** Takes pieces off what is open, or gives them back. */
  lay(pieces: readonly number[], by: 1 | -1): void {
    for (let p = 0; p < pieces.length; p++) {
      const j = pieces[p] as number;
      this.left[j] = (this.left[j] as number) + by;
    }
  }

  /** Best strips of a run. */
  row(i: number, s: number, run: Run): Row {
    const { values } = this;
    const limit = values.run(i, run.mask, s);
    if (limit.count === 0) return NO_STRIPS;
    const rip = values.rip(i, s);
    const kind = this.job.slabs[s] as SlabKind;
    const found = { chosen: [], worth: 0, open: -1, best: [], tries: 0 };
    const filled: Filled = { i, s, kind, mask: run.mask, limit, rip, ...found };
    this.#extend(filled, run.hi - run.lo, 0, 0);
    return filled.best.length === 0 ? NO_STRIPS : { worth: filled.worth, strips: filled.best };
  }

  /** Tries the worthy strips from the one numbered `from` on, densest first, in what room is left. */
  #extend(filled: Filled, room: number, from: number, worth: number): void {
    const { i, s, kind, mask, limit, rip, chosen } = filled;
    if (worth > filled.worth + 1e-9) {
      filled.worth = worth;
      filled.open = chosen.length;
    }
    const { count, worthy } = limit;
    const most = room > 0 ? worth + this.values.fill(limit, s, kind.pointOf[room] as number) : 0;
    for (let w = from; room > 0 && w < count && filled.tries < MOST_TRIES && most > filled.worth + 1e-9; w++) {
      const k = worthy[w] as number;
      const { width, section } = kind.strips[k] as SlabKind["strips"][number];
      if (width > room) continue;
      const strip = this.strip(i, mask, section);
      if (strip.pieces.length === 0) continue;
      filled.tries++;
      this.lay(strip.pieces, -1);
      chosen.push({ k, pieces: strip.pieces });
      this.#extend(filled, room - width - kind.kerf, w, worth + strip.worth - rip);
      chosen.pop();
      this.lay(strip.pieces, 1);
    }
    // What gives more only from here on was noted down there.
    if (filled.open !== chosen.length) return;
    filled.best = chosen.slice();
    filled.open = -1;
  }

  /** Best pieces of a section over a length, no more than are open. */
  strip(i: number, mask: number, section: number): Strip {
    const { job } = this;
    const long = job.lengths[i] as number;
    const all = job.sections[section]?.groups ?? [];
    let key = 0;
    for (let g = 0; g < all.length; g++) {
      const j = all[g] as number;
      const cap = Math.ceil(long / (job.groups[j] as SawGroup).length);
      const left = this.left[j] as number;
      key = key * (cap + 1) + Math.min(left, cap);
    }
    const at = (i * job.masks.length + mask) * job.sections.length + section;
    this.#strips[at] ??= new Map();
    const strips = this.#strips[at] as Map<number, Strip>;
    const known = key > Number.MAX_SAFE_INTEGER ? undefined : strips.get(key);
    if (known !== undefined) return known;
    const groups = all.filter((j) => job.masks[mask]?.[j] && (this.left[j] as number) > 0);
    const made = this.#search(long, groups, this.left);
    if (key <= Number.MAX_SAFE_INTEGER) strips.set(key, made);
    return made;
  }

  #search(long: number, groups: readonly number[], open: Int32Array): Strip {
    const search: StripSearch = { groups, open, chosen: [], best: { worth: 0, pieces: [] } };
    this.#choose(search, long, 0, 0);
    return search.best;
  }

  /** Tries none, one and more pieces of the group numbered `g`, then the next group in what room is left. */
  #choose(search: StripSearch, room: number, g: number, worth: number): void {
    const { groups, open, chosen } = search;
    if (worth > search.best.worth + 1e-9) search.best = { worth, pieces: chosen.slice() };
    const j = groups[g];
    if (j === undefined) return;
    const { length } = this.job.groups[j] as SawGroup;
    const { crossKerf } = this.job.problem.shop;
    const gain = (this.values.price[j] as number) - this.job.prices.crosscut;
    this.#choose(search, room, g + 1, worth);
    let n = 0;
    for (let rest = room - length; rest >= 0 && n < (open[j] as number); rest -= length + crossKerf) {
      n++;
      chosen.push(j);
      this.#choose(search, rest - crossKerf, g + 1, worth + n * gain);
    }
    chosen.length -= n;
  }
}
