/**
 * A plan as a list of things to do at the mill: for each bolt the opening face, each cut's height, what slab it frees,
 * and what strips and pieces come of the slab. Read off the cuts; numbers only, words are for whoever prints it.
 */
import { type MetCut, type Walk, walkCuts } from "./cut-walk.js";
import type { LogPlan, SawingPlan, SawingProblem, SawnPiece } from "./sawing-problem.js";

/** A strip of a slab: its edges about the sawing axis and the pieces crosscut from it, from the bolt's small end. */
export interface StripSteps {
  readonly x0: number;
  readonly x1: number;
  readonly pieces: readonly { readonly group: string; readonly length: number }[];
}

/** Kerf of a cut: its edges about the sawing axis, and its face in whole grid squares. */
export interface KerfSteps {
  readonly lo: number;
  readonly hi: number;
  readonly area: number;
}

/** A slab in the order in which it comes off. */
export interface SlabSteps {
  /** Lower and upper face about the sawing axis, grid steps. */
  readonly y0: number;
  readonly y1: number;
  /** Whether it goes back on the mill to be ripped: it is deeper than the rip saw. */
  readonly onMill: boolean;
  /** Kerfs that rip it, x about the sawing axis, in the order made. */
  readonly rips: readonly KerfSteps[];
  /** Strips with their pieces, from one edge to the other. */
  readonly strips: readonly StripSteps[];
}

/** One bolt at the mill. All measures in grid steps. */
export interface BoltSteps {
  readonly z0: number;
  readonly z1: number;
  /** Distance of the first cut's lower edge from the sawing axis: the opening face. */
  readonly opening: number;
  /** Kerf of each cut of the stack, in the order made. */
  readonly stackCuts: readonly KerfSteps[];
  readonly slabs: readonly SlabSteps[];
  /** Times that wood is turned on the mill's bed after the first set-up: once a cant that is sawn across. */
  readonly turns: number;
}

/** One log: where it is bucked and what is done with each bolt. */
export interface LogSteps {
  readonly log: string;
  /** Kerfs of the bucking cuts from the small end, in the order made. */
  readonly bucks: readonly { readonly lo: number; readonly hi: number }[];
  readonly bolts: readonly BoltSteps[];
}

/** The plan's steps, log by log. */
export function explainSawing(problem: SawingProblem, plan: SawingPlan): LogSteps[] {
  return plan.logs.map((logPlan) => {
    const log = problem.logs.find(({ name }) => name === logPlan.log);
    if (log === undefined) throw new Error(`The plan names a log that is not there: ${logPlan.log}.`);
    const walk = walkCuts(log, logPlan);
    const bucks = logPlan.cuts.filter(({ tool }) => tool === "buck").map(({ lo, hi }) => ({ lo, hi }));
    return { log: log.name, bucks, bolts: walk.bolts.map((extent, bolt) => boltSteps(walk, logPlan, extent, bolt)) };
  });
}

function boltSteps(walk: Walk, plan: LogPlan, [z0, z1]: readonly [number, number], bolt: number): BoltSteps {
  const own = walk.cuts.filter(({ cut, part }) => part.bolt === bolt && cut.tool !== "buck");
  const stackCuts = own.filter(({ cut }) => cut.axis === "y").map(kerfOf);
  const pieces = plan.pieces.filter((piece) => walk.parts.get(piece.part)?.bolt === bolt);
  const across = own.filter(({ cut }) => cut.axis === "x");
  const milled = new Set(across.filter(({ cut }) => cut.tool === "mill").map(({ part }) => part.y[0]));
  const slabs = groupBy(pieces, (piece) => piece.y0).map(([y0, inSlab]): SlabSteps => {
    const y1 = (inSlab[0] as SawnPiece).y1;
    const rips = across.filter(({ part }) => part.y[0] === y0).map(kerfOf);
    return { y0, y1, onMill: milled.has(y0), rips, strips: stripSteps(inSlab) };
  });
  const opening = stackCuts[0]?.lo ?? 0;
  return { z0, z1, opening, stackCuts, slabs: slabs.reverse(), turns: milled.size };
}

function kerfOf({ cut: { lo, hi }, area }: MetCut): KerfSteps {
  return { lo, hi, area: Math.round(area) };
}

function stripSteps(pieces: readonly SawnPiece[]): StripSteps[] {
  return groupBy(pieces, (piece) => piece.x0).map(([x0, inStrip]) => ({
    x0,
    x1: (inStrip[0] as SawnPiece).x1,
    pieces: [...inStrip].sort((a, b) => a.z0 - b.z0).map(({ group, z0, z1 }) => ({ group, length: z1 - z0 })),
  }));
}

/** Groups by a number, ascending. */
function groupBy(pieces: readonly SawnPiece[], key: (piece: SawnPiece) => number): [number, SawnPiece[]][] {
  const groups = new Map<number, SawnPiece[]>();
  for (const piece of pieces) groups.set(key(piece), [...(groups.get(key(piece)) ?? []), piece]);
  return [...groups].sort(([a], [b]) => a - b);
}
