/** What the judges of walls know of a drawn structure: how its walls were asked for, and what is sized alike in all of them. */
import type { Sizes } from "./frame-walker.js";
import type { Range } from "./wall-plan.js";

/** A group as it was laid; of pairs two pieces are cut out of one. */
export interface LaidWallGroup {
  readonly name: string;
  readonly length: number;
  readonly count: number;
}

/** Openings alike. */
interface Openings {
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly sill: number | undefined;
}

/** How walls were asked for. */
export interface AskedWalls {
  readonly boards: "vertical" | "board-and-batten" | "horizontal";
  readonly openings: readonly Openings[];
  readonly part: "whole" | "below-plate" | "gable";
}

/** What is sized alike in every drawn structure. */
export const BOARD = 8;
export const LAP = 0.5;
export const BATTEN = 2;
export const CORNER = 4;
export const JAMB = 2;
export const RAIL = 4;
export const STUD = 2;
export const CLEARANCE = 4;
export const BACKING = 30;
export const GABLE_LAP = 2;
export const TINY = 1e-7;

/** A side between the outer faces of its corner posts. */
export interface Side {
  readonly name: string;
  readonly width: number;
  readonly heights: Range;
  readonly posts: readonly number[];
  readonly bays: readonly number[];
  readonly sizes: Sizes;
}

export const coverOf = ({ boards }: AskedWalls): number => (boards === "board-and-batten" ? BOARD + LAP : BOARD - LAP);

/** Boards side by side over a width, from a place on; the last is ripped at the far end. */
export function places(from: number, to: number, cover: number): Range[] {
  const found: Range[] = [[from, Math.min(to, from + BOARD)]];
  while ((found.at(-1) as Range)[0] + BOARD < to - TINY) {
    const at = Math.min(to, (found.at(-1) as Range)[0] + cover);
    found.push([at, Math.min(to, at + BOARD)]);
  }
  return found;
}
