/**
 * What lies on the ground after each cut: boxes of wood, sawn faces where a saw has been, round elsewhere.
 *
 * Read by the judge and by the price of a plan; the makers of plans do not use it.
 */
import type { SawCut, SawLog } from "./sawing-problem.js";

/** From `lo` to `hi` in grid steps; infinite on a side that is still round. */
export interface Span {
  readonly lo: number;
  readonly hi: number;
}

/** A box of wood: x and y about its bolt's sawing axis, z along the log. */
export interface Part {
  readonly x: Span;
  readonly y: Span;
  readonly z: Span;
  /** The round stock it was sawn from, once the first lengthwise cut has fixed a sawing axis. */
  readonly bolt: Span | undefined;
}

const ROUND: Span = { lo: Number.NEGATIVE_INFINITY, hi: Number.POSITIVE_INFINITY };

/** Part 0: the whole log, uncut. */
export function wholeLog(log: SawLog): Part {
  return { x: ROUND, y: ROUND, z: { lo: 0, hi: log.length }, bolt: undefined };
}

/** Distance between two ends or faces; infinite where one of them is round. */
export function extent(span: Span): number {
  return span.hi - span.lo;
}

/** Whether both sides have been sawn. */
export function isFlat(span: Span): boolean {
  return Number.isFinite(extent(span));
}

/** The direction a lengthwise cut runs across its stock: y for a cut square to x. */
export function across(axis: "x" | "y"): "x" | "y" {
  return axis === "x" ? "y" : "x";
}

/** The parts below and above a cut; undefined where the kerf leaves nothing, as when it trims an end. */
export function split(part: Part, cut: SawCut): readonly [Part | undefined, Part | undefined] {
  const { lo, hi } = part[cut.axis];
  const bolt = cut.axis === "z" ? part.bolt : (part.bolt ?? part.z);
  const left = (span: Span) => (span.hi > span.lo ? { ...part, bolt, [cut.axis]: span } : undefined);
  return [left({ lo, hi: Math.min(cut.lo, hi) }), left({ lo: Math.max(cut.hi, lo), hi })];
}
