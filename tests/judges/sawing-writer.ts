/**
 * Writes bolts, slabs, strips and pieces, given as boxes, down as cuts in order. For plans made by hand and by the
 * plain enumeration; the planner has its own.
 */
import type { LogPlan, SawCut, SawingProblem, SawnPiece } from "../../src/estimate/salvage/sawing-problem.js";

/** Pieces from the small end; `z0` of the first is the bolt's. */
export interface StripBox {
  readonly x0: number;
  readonly x1: number;
  readonly pieces: readonly { readonly group: string; readonly z0: number; readonly z1: number }[];
}
/** Strips by rising x. */
export interface SlabBox {
  readonly y0: number;
  readonly y1: number;
  readonly strips: readonly StripBox[];
}
/** Slabs by rising y. */
export interface BoltBox {
  readonly z0: number;
  readonly z1: number;
  readonly slabs: readonly SlabBox[];
}

class Writer {
  readonly cuts: SawCut[] = [];
  readonly pieces: SawnPiece[] = [];

  /** Makes a cut; returns the parts below and above it. */
  cut(tool: SawCut["tool"], axis: SawCut["axis"], part: number, lo: number, hi: number): readonly [number, number] {
    const index = this.cuts.push({ tool, axis, part, lo, hi }) - 1;
    return [2 * index + 1, 2 * index + 2];
  }

  /** Takes boxes out of a part from its low side up; boxes just a kerf apart share their cut. */
  take<T>(
    saw: { tool: SawCut["tool"]; axis: SawCut["axis"]; kerf: number; part: number },
    boxes: readonly T[],
    span: (box: T) => readonly [number, number],
    found: (box: T, part: number) => void,
  ): void {
    const { tool, axis, kerf } = saw;
    let rest = saw.part;
    let face = Number.NaN;
    for (const box of boxes) {
      const [lo, hi] = span(box);
      if (lo !== face) [, rest] = this.cut(tool, axis, rest, lo - kerf, lo);
      const [wanted, above] = this.cut(tool, axis, rest, hi, hi + kerf);
      found(box, wanted);
      rest = above;
      face = hi + kerf;
    }
  }
}

/** The cuts and pieces of one log; `bolts` from the butt end down. */
export function writeLog(problem: SawingProblem, logName: string, bolts: readonly BoltBox[]): LogPlan {
  const writer = new Writer();
  const log = problem.logs.find((one) => one.name === logName);
  if (log === undefined) throw new Error(`no log ${logName}`);
  let rest = 0;
  let end = log.length;
  for (const bolt of bolts) {
    let part = rest;
    const { buckKerf } = problem.shop;
    if (bolt.z1 < end) [part] = writer.cut("buck", "z", part, bolt.z1, bolt.z1 + buckKerf);
    if (bolt.z0 > 0) [rest, part] = writer.cut("buck", "z", part, bolt.z0 - buckKerf, bolt.z0);
    end = bolt.z0 - buckKerf;
    writeBolt(problem, writer, bolt, part);
  }
  return { log: logName, cuts: writer.cuts, pieces: writer.pieces };
}

function writeBolt(problem: SawingProblem, writer: Writer, bolt: BoltBox, part: number): void {
  const { millKerf, ripKerf, deepestRip } = problem.shop;
  const stack = { tool: "mill", axis: "y", kerf: millKerf, part } as const;
  writer.take(
    stack,
    bolt.slabs,
    (slab) => [slab.y0, slab.y1],
    (slab, slabPart) => {
      const rips = slab.y1 - slab.y0 <= deepestRip;
      const saw = { tool: rips ? "rip" : "mill", axis: "x", kerf: rips ? ripKerf : millKerf, part: slabPart } as const;
      writer.take(
        saw,
        slab.strips,
        (strip) => [strip.x0, strip.x1],
        (strip, stripPart) => writeStrip(problem, writer, bolt, slab, strip, stripPart),
      );
    },
  );
}

function writeStrip(
  problem: SawingProblem,
  writer: Writer,
  bolt: BoltBox,
  slab: SlabBox,
  strip: StripBox,
  part: number,
): void {
  const { crossKerf } = problem.shop;
  const { x0, x1 } = strip;
  const { y0, y1 } = slab;
  let rest = part;
  for (const { group, z0, z1 } of strip.pieces) {
    let own = rest;
    if (z1 < bolt.z1) [own, rest] = writer.cut("cross", "z", rest, z1, z1 + crossKerf);
    writer.pieces.push({ group, part: own, x0, x1, y0, y1, z0, z1 });
  }
}
