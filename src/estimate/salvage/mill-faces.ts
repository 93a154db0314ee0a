/**
 * Faces sawn by the mill, by what the pace depends on: their area, their length, and how much of both is in cuts wider than
 * a foot. A band is fed no faster than the hand goes, and through a wide face no faster than its teeth clear the dust: the
 * first limit tells in narrow cuts, the second in wide ones, so the two are reckoned apart.
 */
import type { MetCut } from "./cut-walk.js";

/** Whole grid squares and steps. */
export interface MillFaces {
  readonly area: number;
  /** The part of `area` in dirty logs. */
  readonly dirtyArea: number;
  readonly length: number;
  /** The parts of `area` and `length` in wide cuts. */
  readonly wideArea: number;
  readonly wideLength: number;
}

/** No face at all. */
export const NO_FACES: MillFaces = { area: 0, dirtyArea: 0, length: 0, wideArea: 0, wideLength: 0 };

/** 12 in: where area begins to tell on thin-band mills (20 ft² against 20 ft a minute). Exact, 304.8 mm. */
const WIDE_MM = 304.8;

/** One cut by the mill. The face is rounded to whole squares, so that decimals made of sums are exact. */
export function faceOf({ area, length }: MetCut, gridMm: string, dirty: boolean): MillFaces {
  const squares = Math.round(area);
  const wide = area > (length * WIDE_MM) / Number(gridMm);
  return {
    area: squares,
    dirtyArea: dirty ? squares : 0,
    length,
    wideArea: wide ? squares : 0,
    wideLength: wide ? length : 0,
  };
}

/** Faces of both. */
export const addFaces = (a: MillFaces, b: MillFaces): MillFaces => ({
  area: a.area + b.area,
  dirtyArea: a.dirtyArea + b.dirtyArea,
  length: a.length + b.length,
  wideArea: a.wideArea + b.wideArea,
  wideLength: a.wideLength + b.wideLength,
});
