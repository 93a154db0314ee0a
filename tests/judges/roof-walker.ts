/**
 * A covered roof walked in plain coordinates, to judge the coverings: sheets laid side by side until the edge is reached,
 * courses one above the other until the ridge is. Shares nothing with the takeoff. Inches and floats.
 */
import { centres } from "./frame-walker.js";

/** Sizes of a roof and of what is laid on it, in inches. */
export interface RoofSizes {
  readonly kind: "gable" | "lean-to" | "hip";
  readonly span: number;
  readonly length: number;
  readonly rise: number;
  /** Past the plates at the eaves, and past the end posts. */
  readonly eave: number;
  readonly end: number;
  readonly fascia: number;
  readonly drip: number;
  readonly ridgeGap: number;
  readonly ridge: number;
  readonly purlin: number;
  readonly purlinSpacing: number;
}

/** Equal planes as they are covered, sheet edge to sheet edge. */
export interface Plane {
  readonly alike: number;
  readonly eave: number;
  readonly top: number;
  readonly up: number;
}

const TINY = 1e-7;
const slopeOf = ({ rise }: RoofSizes): number => Math.hypot(12, rise) / 12;

/** @param gap - Whether sheets stop short of the ridge or of the upper edge. */
export function coveredPlanes(s: RoofSizes, gap: boolean): Plane[] {
  const past = s.eave + s.fascia + s.drip - (gap && s.kind !== "hip" ? s.ridgeGap : 0);
  const wide = s.length + 2 * s.end + 2 * s.fascia;
  // A lean-to is covered out to the outer face of its high fascia.
  const level = s.kind === "lean-to" ? s.span + s.eave + s.fascia : s.span / 2;
  const up = (level + past) * slopeOf(s);
  if (s.kind !== "hip") return [{ alike: s.kind === "gable" ? 2 : 1, eave: wide, top: wide, up }];
  const out = 2 * (s.eave + s.fascia + s.drip);
  return [
    { alike: 2, eave: s.length + out, top: s.length - s.span, up },
    { alike: 2, eave: s.span + out, top: 0, up },
  ];
}

/** Area by plan: every plane of a roof of one slope is its plan, stretched by the slope. */
export function areaByPlan(s: RoofSizes, gap: boolean): number {
  const out = s.eave + s.fascia + s.drip;
  const stretch = slopeOf(s);
  if (s.kind === "hip") return (s.span + 2 * out) * (s.length + 2 * out) * stretch;
  const wide = s.length + 2 * (s.end + s.fascia);
  const short = gap ? s.ridgeGap : 0;
  const deep = s.kind === "gable" ? s.span + 2 * (out - short) : s.span + s.eave + s.fascia + out - short;
  return wide * deep * stretch;
}

/** Sheets side by side, each adding its cover, the first laid whole: how many until the edge is covered. */
export function sideBySide(width: number, cover: number, first = cover): number {
  let count = 1;
  for (let covered = first; covered < width - TINY; covered += cover) count++;
  return count;
}

/** How far up the slope each sheet of a plane reaches: as high as the highest point of its strip. */
export function reaches({ eave, top, up }: Plane, cover: number, count: number): number[] {
  const corner = (eave - top) / 2;
  const heightAt = (x: number) =>
    corner === 0 ? up : (Math.min(corner, Math.max(0, Math.min(x, eave - x))) * up) / corner;
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [i * cover, Math.min((i + 1) * cover, eave)];
    const places = [from, to, Math.min(Math.max(eave / 2, from), to), Math.min(Math.max(corner, from), to)];
    return Math.max(...places.map(heightAt));
  });
}

/** Up to the next step of a length, by steps. */
export function upTo(length: number, step: number): number {
  let reached = 0;
  while (reached < length - TINY) reached += step;
  return reached;
}

/** Screws of one sheet on so many rows, the two end rows with twice as many. */
export function screwsOf(rows: number, each: number): number {
  let screws = 0;
  for (let row = 0; row < rows; row++) screws += row === 0 || row === rows - 1 ? 2 * each : each;
  return screws;
}

/** Purlin rows up one slope of a gable or lean-to. */
export function purlinRows(s: RoofSizes): number {
  const level = s.kind === "gable" ? s.span / 2 - s.ridge / 2 + s.eave : s.span + 2 * s.eave;
  return centres(level * slopeOf(s), s.purlin, s.purlinSpacing).length;
}

/** Rolled strips one above the other: the width of the plane at each strip's lower edge, summed. */
export function rolledOut({ eave, top, up }: Plane, cover: number, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += eave - ((eave - top) * i * cover) / up;
  return sum;
}
