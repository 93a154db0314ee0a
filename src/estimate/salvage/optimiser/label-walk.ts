/**
 * A walk up one bolt's stack that knows what it has made: partial stacks (labels) are carried from face to face, and
 * the few best at each face go on.
 */
import { beyondWaste } from "../bolt.js";
import type { SlabPattern } from "../sawing-pattern.js";
import { bestFew } from "./best-few.js";
import type { BoltTable } from "./bolt-table.js";
import { type CappedFilling, drawFilling, type Filling } from "./capped-filling.js";
import type { Job } from "./job.js";
import type { SlabGains } from "./slab-gains.js";
import type { SlabKind } from "./slab-kinds.js";

/** What a walk starts from. */
export interface WalkAsk {
  readonly job: Job;
  readonly table: BoltTable;
  /** At the prices of the ranking; then perhaps at full prices. */
  readonly fillings: readonly CappedFilling[];
  /** Pieces open, by group. */
  readonly open: readonly number[];
  /** Labels kept a face. */
  readonly labels: number;
  /** Whether a yield goes on again from another face though that promises no more. */
  readonly patient: boolean;
  /** Faces that a stack is started from, the most promising ones. */
  readonly starts: number;
  /** Stacks wanted. */
  readonly stacks: number;
  /** A stack's rank, with all that could still be added above it, has to reach this to go on. */
  readonly least: number;
}

/** One stack found. */
export interface Walked {
  readonly slabs: readonly SlabPattern[];
  readonly made: readonly number[];
  /** Worth of the pieces at full price, less all cuts. */
  readonly worth: number;
  /** Worth less what the pieces made were worth to be left open. */
  readonly rank: number;
}

/** The best stacks of one bolt, best rank first, no two of one yield; last the one worth most as it stands. */
export interface Walk {
  readonly stacks: readonly Walked[];
  /** Steps taken: about as many as fillings looked up. */
  readonly work: number;
}

interface Label {
  /** Worth of the pieces at full price, less all cuts so far. */
  readonly worth: number;
  /** Worth less what the pieces made were worth to be left open. */
  readonly rank: number;
  readonly made: readonly number[];
  /** Stands for `made`: equal for equal yields. */
  readonly mark: number;
  readonly before: Label | null;
  readonly slab: { readonly y0: number; readonly thickness: number; readonly filling: Filling } | null;
}

/** A few labels, the best rank first, no two of one yield. */
class Best {
  readonly labels: Label[] = [];

  constructor(readonly keep: number) {}

  /** Whether a label of this yield and rank would stay. */
  takes(mark: number, rank: number): boolean {
    const { labels } = this;
    for (let i = 0; i < labels.length; i++) {
      const label = labels[i] as Label;
      if (label.mark === mark) return rank > label.rank;
    }
    return labels.length < this.keep || rank > (labels[labels.length - 1] as Label).rank;
  }

  add(label: Label): void {
    const same = this.labels.findIndex(({ mark }) => mark === label.mark);
    if (same >= 0) this.labels.splice(same, 1);
    let at = this.labels.length;
    while (at > 0 && (this.labels[at - 1] as Label).rank < label.rank) at--;
    this.labels.splice(at, 0, label);
    if (this.labels.length > this.keep) this.labels.pop();
  }
}

/** Walks one bolt. */
export function walkStack(ask: WalkAsk): Walk {
  const { job, table } = ask;
  const kerf = job.problem.shop.millKerf;
  for (const { gains } of ask.fillings) gains.fill(table);
  const guide = completions(job, table, (ask.fillings[0] as CappedFilling).gains);
  const faces: (Best | undefined)[] = new Array(2 * table.top + kerf + 2).fill(undefined);
  const face = (f: number): Best => {
    const known = faces[f + table.top];
    if (known !== undefined) return known;
    const made = new Best(ask.labels);
    faces[f + table.top] = made;
    return made;
  };
  const root: Label = { worth: 0, rank: 0, made: job.groups.map(() => 0), mark: 0, before: null, slab: null };
  const ends = new Best(ask.stacks);
  // The same yield goes on from another face only where that promises more.
  const gone = new Map<number, number>();
  let richest = root;
  let work = 2 * table.top * job.slabs.length;
  const move = (label: Label, to: number, cost: number) => {
    if (!face(to).takes(label.mark, label.rank - cost)) return;
    face(to).add({ ...label, worth: label.worth - cost, rank: label.rank - cost });
  };
  for (const f of starts(ask, guide)) move(root, f, cutAt(table, kerf, f - kerf));
  for (let f = -table.top; f <= table.top; f++) {
    const here = faces[f + table.top]?.labels;
    if (here === undefined) continue;
    const rest = guide.above[f + table.top] as number;
    const going: Label[] = [];
    for (const label of here) {
      const hope = label.rank + rest;
      if (hope < ask.least) continue;
      if (!ask.patient && hope <= (gone.get(label.mark) ?? Number.NEGATIVE_INFINITY)) continue;
      gone.set(label.mark, hope);
      going.push(label);
    }
    if (going.length === 0) continue;
    for (let s = 0; s < job.slabs.length; s++) {
      const { thickness } = job.slabs[s] as SlabKind;
      const end = f + thickness;
      if (end > table.top) break;
      const cut = cutAt(table, kerf, end);
      const onward = end + kerf <= table.top ? face(end + kerf) : null;
      const restAbove = guide.above[end + kerf + table.top] as number;
      for (const fillings of ask.fillings) {
        const place = fillings.place(table, s, f);
        if (place === null) continue;
        for (const label of going) {
          work += 4;
          const filling = fillings.best(place, ask.open, label.made);
          if (filling === null) continue;
          const rank = label.rank + filling.rank - cut;
          const worth = label.worth + filling.worth - cut;
          const mark = label.mark + filling.mark;
          const goes = onward !== null && rank + restAbove >= ask.least && onward.takes(mark, rank);
          const ends1 = rank >= ask.least && ends.takes(mark, rank);
          const rich = worth > richest.worth;
          if (!goes && !ends1 && !rich) continue;
          const next = extend(label, filling, { y0: f, thickness, filling }, { worth, rank, mark });
          if (goes) onward?.add(next);
          if (ends1) ends.add(next);
          if (rich) richest = next;
        }
      }
    }
    const jump = guide.next[f + table.top] as number;
    if (jump > f) for (const label of going) move(label, jump, cutAt(table, kerf, jump - kerf));
  }
  const stacks = ends.labels.includes(richest) || richest === root ? ends.labels : [...ends.labels, richest];
  return { stacks: stacks.map((end) => walked(job, table, end)), work };
}

function walked(job: Job, table: BoltTable, end: Label): Walked {
  const slabs: SlabPattern[] = [];
  for (let label: Label | null = end; label !== null; label = label.before) {
    if (label.slab === null) continue;
    const { y0, thickness, filling } = label.slab;
    slabs.unshift({ y0, thickness, strips: drawFilling(job, filling, table, y0) });
  }
  return { slabs, made: end.made, worth: end.worth, rank: end.rank };
}

function extend(
  label: Label,
  { groups, counts }: Filling,
  slab: Label["slab"],
  sums: { worth: number; rank: number; mark: number },
): Label {
  const made = label.made.slice();
  for (let g = 0; g < groups.length; g++)
    made[groups[g] as number] = (made[groups[g] as number] as number) + (counts[g] as number);
  return { ...sums, made, before: label, slab };
}

/** Money for the cut whose kerf begins at height y, of either sign. */
export function cutAt(table: BoltTable, kerf: number, y: number): number {
  return table.cut[y + kerf >= 0 ? y + kerf : -y] ?? table.cut.at(-1) ?? 0;
}

/** What a stack may still be worth from each face on, whatever is wanted. */
export interface Guide {
  /** At each face from −top: best of what lies above, its lower cut paid, at the prices of the ranking. */
  readonly above: Float64Array;
  /** Best of any face from each on that starts with a cut of its own. */
  readonly fresh: Float64Array;
  /** The best face to go on from after a waste; the face itself when there is none. */
  readonly next: Int32Array;
}

/** No stack is worth more from a face on than this says, whatever is wanted. @param gains - The bolt's. */
export function completions(job: Job, table: BoltTable, gains: SlabGains): Guide {
  const kerf = job.problem.shop.millKerf;
  const waste = beyondWaste(job.problem.shop);
  const { top } = table;
  const size = 2 * top + (job.slabs.at(-1)?.thickness ?? 0) + kerf + waste + 2;
  const above = new Float64Array(size);
  /** The same with the cut under the face to pay. */
  const started = new Float64Array(size);
  const fresh = new Float64Array(size);
  const from = new Int32Array(size).fill(-1);
  const next = new Int32Array(2 * top + 1);
  const { kinds, kindCount } = gains;
  const thick = job.slabs.map(({ thickness }) => thickness);
  for (let f = top + kerf; f > top; f--) started[f + top] = -cutAt(table, kerf, f - kerf);
  for (let f = top; f >= -top; f--) {
    const i = f + top;
    let best = fresh[i + waste] as number;
    next[i] = best > 0 ? (from[i + waste] as number) : f;
    for (let k = 0; k < kindCount; k++) {
      const t = thick[kinds[k] as number] as number;
      if (f + t > top) break;
      const value = gains.at(kinds[k] as number, f) + (started[i + t + kerf] as number);
      if (value > best) best = value;
    }
    above[i] = best;
    const start = best - cutAt(table, kerf, f - kerf);
    started[i] = start;
    const later = fresh[i + 1] as number;
    fresh[i] = Math.max(start, later);
    from[i] = start > later ? f : (from[i + 1] as number);
  }
  return { above, fresh, next };
}

/** The most promising faces to start from. */
function starts({ job, table, starts: most }: WalkAsk, guide: Guide): number[] {
  const kerf = job.problem.shop.millKerf;
  const promise = new Float64Array(2 * table.top + 1);
  for (let i = 0; i < promise.length; i++)
    promise[i] = (guide.above[i] as number) - cutAt(table, kerf, i - table.top - kerf);
  return bestFew(promise, most).map((i) => i - table.top);
}
