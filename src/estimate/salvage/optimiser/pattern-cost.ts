/** What a log's pattern costs to saw and what it makes, straight from its slabs and strips. */
import { diameterAt } from "../bolt.js";
import type { BoltPattern, SlabPattern, StripPattern } from "../sawing-pattern.js";
import type { SawGroup, SawLog } from "../sawing-problem.js";
import { type Job, logPrice, type Prices, ripPrice } from "./job.js";

/** A way to saw one log. */
export interface LogPattern {
  readonly bolts: readonly BoltPattern[];
  /** Pieces made, by group. */
  readonly made: Int32Array;
  /** Money for the sawing, getting the log ready included; 0 for a log that is left. */
  readonly cost: number;
}

/** A log left lying. */
export function leftLying(job: Job): LogPattern {
  return { bolts: [], made: new Int32Array(job.groups.length), cost: 0 };
}

/** Counts and prices a pattern; bolts and slabs without pieces leave it. */
export function logPattern(job: Job, log: SawLog, drawn: readonly BoltPattern[]): LogPattern {
  const bolts = drawn.map((bolt) => ({ ...bolt, slabs: bolt.slabs.filter(({ strips }) => strips.length > 0) }));
  const sawn = bolts.filter(({ slabs }) => slabs.length > 0);
  if (sawn.length === 0) return leftLying(job);
  const made = countPieces(job, sawn);
  return {
    bolts: sawn,
    made,
    cost: logPrice(job, log) + sawn.reduce((sum, bolt) => sum + boltCost(job, log, bolt), 0),
  };
}

/** Pieces of some bolts, by group. */
export function countPieces(job: Job, bolts: readonly BoltPattern[]): Int32Array {
  const made = new Int32Array(job.groups.length);
  for (const { slabs } of bolts) {
    for (const { strips } of slabs) {
      for (const { pieces } of strips) {
        for (const piece of pieces) {
          const j = job.numberOf.get(piece);
          if (j !== undefined) made[j] = (made[j] as number) + 1;
        }
      }
    }
  }
  return made;
}

/** Money for one bolt: set-up, stack cuts, rip cuts, crosscuts. */
export function boltCost(job: Job, log: SawLog, bolt: BoltPattern): number {
  const { prices, problem } = job;
  const length = bolt.z1 - bolt.z0;
  const square = (diameterAt(log, (bolt.z0 + bolt.z1) / 2) / 2) ** 2;
  const kerf = problem.shop.millKerf;
  let cost = prices.bolt;
  let top = Number.NEGATIVE_INFINITY;
  for (const slab of bolt.slabs) {
    if (slab.y0 - kerf !== top) cost += stackCut(prices, square, length, slab.y0 - kerf / 2);
    top = slab.y0 + slab.thickness;
    cost += stackCut(prices, square, length, top + kerf / 2) + slabCost(job, slab, length);
  }
  return cost;
}

/** Money for a cut of the stack. @param square - Of the radius at mid-length. @param middle - Height of the middle of its kerf. */
function stackCut(prices: Prices, square: number, length: number, middle: number): number {
  const chord = 2 * Math.sqrt(Math.max(0, square - middle ** 2));
  return prices.millCut + prices.millSquare * chord * length;
}

function slabCost(job: Job, slab: SlabPattern, length: number): number {
  const { kerf } = job.slabs.find(({ thickness }) => thickness === slab.thickness) ?? { kerf: 0 };
  const pieces = slab.strips.reduce((sum, strip) => sum + strip.pieces.length, 0);
  return ripCuts(slab.strips, kerf) * ripPrice(job, slab.thickness, length) + pieces * job.prices.crosscut;
}

/** Strips a kerf apart share a cut. */
function ripCuts(strips: readonly StripPattern[], kerf: number): number {
  let cuts = 0;
  let edge = Number.NEGATIVE_INFINITY;
  for (const { x0, width } of strips) {
    cuts += x0 - kerf === edge ? 1 : 2;
    edge = x0 + width;
  }
  return cuts;
}

/**
 * The pattern without pieces that nobody wants: strips and slabs that are left empty go, and strips of a slab are
 * closed up again where rot and heart allow it.
 *
 * @param open - Pieces still wanted, by group.
 */
export function trimmed(job: Job, log: SawLog, pattern: LogPattern, open: ArrayLike<number>): LogPattern {
  const over = Array.from(pattern.made, (made, j) => made - Math.max(0, open[j] as number));
  if (over.every((count) => count <= 0)) return pattern;
  const { numberOf } = job;
  const keep = (group: SawGroup) => {
    const j = numberOf.get(group) ?? -1;
    if ((over[j] ?? 1) <= 0) return true;
    over[j] = (over[j] as number) - 1;
    return false;
  };
  const whole = (strip: StripPattern) => strip.pieces.every((group) => (over[numberOf.get(group) ?? -1] ?? 1) > 0);
  // Strips that go as a whole first: they save a rip cut beside the crosscuts.
  const first = mapStrips(pattern.bolts, (strip) =>
    whole(strip) ? { ...strip, pieces: strip.pieces.filter(keep) } : strip,
  );
  const second = mapStrips(first, (strip) => ({ ...strip, pieces: strip.pieces.filter(keep) }));
  return logPattern(job, log, closeUp(job, second));
}

function mapStrips(bolts: readonly BoltPattern[], change: (strip: StripPattern) => StripPattern): BoltPattern[] {
  return bolts.map((bolt) => ({
    ...bolt,
    slabs: bolt.slabs.map((slab) => ({
      ...slab,
      strips: slab.strips.map(change).filter(({ pieces }) => pieces.length > 0),
    })),
  }));
}

/** Moves strips that may lie anywhere on their side of the axis against their neighbour, to share its cut. */
function closeUp(job: Job, bolts: readonly BoltPattern[]): BoltPattern[] {
  return bolts.map((bolt) => ({
    ...bolt,
    slabs: bolt.slabs.map((slab) => {
      const kind = job.slabs.find(({ thickness }) => thickness === slab.thickness);
      return { ...slab, strips: kind === undefined ? slab.strips : against(slab.strips, kind.kerf) };
    }),
  }));
}

/** From the axis outward: a strip right of it moves left towards the last one right of it, and the mirror image. */
function against(strips: readonly StripPattern[], kerf: number): StripPattern[] {
  const left = strips.filter(({ x0, width }) => x0 + width <= 0);
  const middle = strips.filter(({ x0, width }) => x0 < 0 && x0 + width > 0);
  const right = strips.filter(({ x0 }) => x0 >= 0);
  const moved: StripPattern[] = [...middle];
  let edge = middle.at(-1);
  for (const strip of right) {
    const x0: number = edge === undefined ? strip.x0 : edge.x0 + edge.width + kerf;
    edge = { ...strip, x0: Math.min(strip.x0, x0) };
    moved.push(edge);
  }
  let inner = middle[0];
  for (const strip of [...left].reverse()) {
    const x0: number = inner === undefined ? strip.x0 : inner.x0 - kerf - strip.width;
    inner = { ...strip, x0: Math.max(strip.x0, x0) };
    moved.unshift(inner);
  }
  return moved;
}
