/**
 * A walk up one bolt's stack that knows what it has made: partial stacks (labels) are carried from face to face, and
 * the few best at each face go on.
 */
import type { SlabPattern } from "../sawing-pattern.js";
import type { BoltTable } from "./bolt-table.js";
import type { CappedFilling, Filling } from "./capped-filling.js";
import type { Job, SlabKind } from "./job.js";

/** What a walk starts from. */
export interface WalkAsk {
  readonly job: Job;
  readonly table: BoltTable;
  /** At the prices of the ranking; then perhaps at full prices. */
  readonly fillings: readonly CappedFilling[];
  /** Pieces open, by group. */
  readonly open: readonly number[];
  /** What a piece's being open is worth: price less this is what it counts in the ranking. */
  readonly limit: readonly number[];
  /** Labels kept a face. */
  readonly labels: number;
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

/** The best stacks of one bolt, best rank first, no two of one yield. */
export interface Walk {
  readonly stacks: readonly Walked[];
  /** Labels that went on. */
  readonly labels: number;
}

interface Label {
  /** Worth of the pieces at full price, less all cuts so far. */
  readonly worth: number;
  /** Worth less what the pieces made were worth to be left open. */
  readonly rank: number;
  readonly made: readonly number[];
  readonly key: string;
  readonly before: Label | null;
  readonly slab: SlabPattern | null;
}

/** Faces from which a stack is started. Assumption: the best at the prices of the ranking, the rest are hopeless. */
const STARTS = 48;

/** Walks one bolt. */
export function walkStack(ask: WalkAsk): Walk {
  const { job, table, open, labels: keep } = ask;
  const kerf = job.problem.shop.millKerf;
  const guide = completions(ask);
  const faces: Label[][] = Array.from({ length: 2 * table.top + kerf + 2 }, () => []);
  const root: Label = { worth: 0, rank: 0, made: job.groups.map(() => 0), key: "", before: null, slab: null };
  const ends: Label[] = [];
  let labels = 0;
  for (const f of starts(ask, guide)) {
    const cost = cutAt(table, kerf, f - kerf);
    (faces[f + table.top] as Label[]).push({ ...root, worth: -cost, rank: -cost });
  }
  for (let f = -table.top; f <= table.top; f++) {
    const here = bestLabels(faces[f + table.top] as Label[], keep);
    const rest = guide.above[f + table.top] as number;
    for (const label of here) {
      if (label.rank + rest < ask.least) continue;
      labels++;
      const left = open.map((count, j) => count - (label.made[j] as number));
      for (let s = 0; s < job.slabs.length; s++) {
        const { thickness } = job.slabs[s] as SlabKind;
        const end = f + thickness;
        if (end > table.top) break;
        for (const [i, fillings] of ask.fillings.entries()) {
          const filling = fillings.slab(table, s, f, left);
          if (filling === null) continue;
          const worths = worthOf(ask, filling, i > 0);
          const next = extend(
            label,
            filling,
            { y0: f, thickness, strips: filling.strips },
            worths,
            cutAt(table, kerf, end),
          );
          ends.push(next);
          if (end + kerf <= table.top) (faces[end + kerf + table.top] as Label[]).push(next);
        }
      }
      const jump = guide.next[f + table.top] as number;
      if (jump > f) {
        const cost = cutAt(table, kerf, jump - kerf);
        (faces[jump + table.top] as Label[]).push({ ...label, worth: label.worth - cost, rank: label.rank - cost });
      }
    }
  }
  return { stacks: bestLabels(ends, ask.stacks).map(walked), labels };
}

function walked(end: Label): Walked {
  const slabs: SlabPattern[] = [];
  for (let label: Label | null = end; label !== null; label = label.before)
    if (label.slab !== null) slabs.unshift(label.slab);
  return { slabs, made: end.made, worth: end.worth, rank: end.rank };
}

/** A filling's worth at full prices and at the ranking's. */
function worthOf(ask: WalkAsk, { worth, made }: Filling, full: boolean): { worth: number; rank: number } {
  const spared = made.reduce((sum, count, j) => sum + count * (ask.limit[j] as number), 0);
  return full ? { worth, rank: worth - spared } : { worth: worth + spared, rank: worth };
}

function extend(
  label: Label,
  filling: Filling,
  slab: SlabPattern,
  gain: { worth: number; rank: number },
  cut: number,
): Label {
  const made = label.made.map((count, j) => count + (filling.made[j] as number));
  const [worth, rank] = [label.worth + gain.worth - cut, label.rank + gain.rank - cut];
  return { worth, rank, made, key: made.join(" "), before: label, slab };
}

/** The best label of each yield, and of these the best few. */
function bestLabels(labels: Label[], keep: number): Label[] {
  if (labels.length <= 1) return labels;
  const sorted = labels.sort((a, b) => b.rank - a.rank || b.worth - a.worth || (a.key < b.key ? -1 : 1));
  const seen = new Set<string>();
  const kept: Label[] = [];
  for (const label of sorted) {
    if (seen.has(label.key)) continue;
    seen.add(label.key);
    kept.push(label);
    if (kept.length === keep) break;
  }
  return kept;
}

/** Money for the cut whose kerf begins at height y, of either sign. */
function cutAt(table: BoltTable, kerf: number, y: number): number {
  return table.cut[y + kerf >= 0 ? y + kerf : -y] ?? table.cut.at(-1) ?? 0;
}

interface Guide {
  /** At each face from −top: best of what lies above, its lower cut paid, at the prices of the ranking. */
  readonly above: Float64Array;
  /** The best face to go on from after a waste; the face itself when there is none. */
  readonly next: Int32Array;
}

function completions({ job, table, fillings }: WalkAsk): Guide {
  const { worth } = fillings[0] as CappedFilling;
  const kerf = job.problem.shop.millKerf;
  const waste = Math.max(1, kerf);
  const { top } = table;
  const size = 2 * top + (job.slabs.at(-1)?.thickness ?? 0) + 2 * kerf + 2;
  const above = new Float64Array(size);
  const fresh = new Float64Array(size);
  const from = new Int32Array(size).fill(-1);
  const next = new Int32Array(2 * top + 1);
  for (let f = top; f >= -top; f--) {
    const i = f + top;
    let best = fresh[i + waste] as number;
    next[i] = best > 0 ? (from[i + waste] as number) : f;
    for (let s = 0; s < job.slabs.length; s++) {
      const end = f + (job.slabs[s] as SlabKind).thickness;
      if (end > top) break;
      const gain =
        f >= 0
          ? worth.outside(table, s, f, end)
          : end > 0
            ? worth.over(table, s, -f, end)
            : worth.outside(table, s, -end, -f);
      if (gain <= 0) continue;
      best = Math.max(best, gain - cutAt(table, kerf, end) + (above[end + kerf + top] as number));
    }
    above[i] = best;
    const started = best - cutAt(table, kerf, f - kerf);
    const later = fresh[i + 1] as number;
    fresh[i] = Math.max(started, later);
    from[i] = started > later ? f : (from[i + 1] as number);
  }
  return { above, next };
}

/** The most promising faces to start from. */
function starts({ job, table }: WalkAsk, guide: Guide): number[] {
  const kerf = job.problem.shop.millKerf;
  const faces = Array.from({ length: 2 * table.top + 1 }, (_, i) => i - table.top);
  const promise = (f: number) => (guide.above[f + table.top] as number) - cutAt(table, kerf, f - kerf);
  return faces
    .map((f) => ({ f, worth: promise(f) }))
    .sort((a, b) => b.worth - a.worth || a.f - b.f)
    .slice(0, STARTS)
    .map(({ f }) => f);
}
