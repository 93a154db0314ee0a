/**
 * Follows a log's cuts in order: what part each cut meets, which bolt it belongs to, how large its face is.
 *
 * Everything is read off the cuts; nothing the planner thought is taken over.
 */
import { chordWithin, diameterAt } from "./bolt.js";
import type { LogPlan, SawCut, SawLog } from "./sawing-problem.js";

/** A part of a log: its faces, infinite where it still ends in the round, and the bolt it belongs to. */
export interface Part {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
  /** Number of the bolt, in the order in which they first meet the mill; -1 before that. */
  readonly bolt: number;
}

/** One cut with what it meets. */
export interface MetCut {
  readonly cut: SawCut;
  readonly part: Part;
  /** Length of the cut along the log, grid steps; 0 for a cut across it. */
  readonly length: number;
  /** Face of a mill or rip cut, grid squares, not rounded; 0 for a cut across the log. */
  readonly area: number;
  /** Whether both edges of the cut are flat faces, as in a cant that is sawn again. */
  readonly flat: boolean;
}

/** A log's cuts and the parts that are left at the end, by part number. */
export interface Walk {
  readonly cuts: readonly MetCut[];
  readonly parts: ReadonlyMap<number, Part>;
  /** The bolts sawn, in order: their extent along the log. */
  readonly bolts: readonly (readonly [z0: number, z1: number])[];
}

/**
 * Walks through a log's cuts.
 * @throws Error when a cut names a part that is not there: the plan is no plan.
 */
export function walkCuts(log: SawLog, plan: LogPlan): Walk {
  const round: readonly [number, number] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const parts = new Map<number, Part>([[0, { x: round, y: round, z: [0, log.length], bolt: -1 }]]);
  const bolts: (readonly [number, number])[] = [];
  const cuts = plan.cuts.map((cut, index): MetCut => {
    let part = parts.get(cut.part);
    if (part === undefined) throw new Error(`Cut ${index} of log ${plan.log} is through a part that is not there.`);
    if (cut.tool !== "buck" && part.bolt < 0) {
      bolts.push(part.z);
      part = { ...part, bolt: bolts.length - 1 };
    }
    parts.delete(cut.part);
    const [lo, hi] = part[cut.axis];
    parts.set(2 * index + 1, { ...part, [cut.axis]: [lo, cut.lo] });
    parts.set(2 * index + 2, { ...part, [cut.axis]: [cut.hi, hi] });
    return { cut, part, ...face(log, cut, part) };
  });
  return { cuts, parts, bolts };
}

/**
 * Face of a cut: between two flat faces their distance, else what of the circle at mid-length lies between the
 * part's edges, at the kerf's centre line; times the length.
 */
function face(log: SawLog, cut: SawCut, part: Part): { length: number; area: number; flat: boolean } {
  if (cut.axis === "z") return { length: 0, area: 0, flat: false };
  const length = part.z[1] - part.z[0];
  const [lo, hi] = cut.axis === "x" ? part.y : part.x;
  if (Number.isFinite(lo) && Number.isFinite(hi)) return { length, area: (hi - lo) * length, flat: true };
  const radius = diameterAt(log, (part.z[0] + part.z[1]) / 2) / 2;
  const centre = (cut.lo + cut.hi) / 2;
  return { length, area: chordWithin(radius, centre, [lo, hi]) * length, flat: false };
}
