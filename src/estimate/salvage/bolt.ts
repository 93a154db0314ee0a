/**
 * Geometry of one bolt in grid steps: what circle of sound wood it offers, and how wide a slab of it is.
 *
 * Wood is rounded down and whatever must be kept clear of is rounded up, always to whole steps about the sawing
 * axis, so that every box laid here lies in the wood whichever way the bolt is turned.
 */
import type { SawGroup, SawLog, SawShop } from "./sawing-problem.js";

/** A length bucked from a log, with what it offers to the mill. All in grid steps. */
export interface Bolt {
  readonly z0: number;
  readonly z1: number;
  readonly length: number;
  /** Radius of the circle about the sawing axis that is wood at every z of the bolt. */
  readonly radius: number;
  /** Radius about the sawing axis that unsound heart may reach; 0 = sound. */
  readonly rotRadius: number;
  /** Radius about the sawing axis that the pith may reach. */
  readonly pithRadius: number;
  /** Diameter at mid-length, by which the area of a cut is reckoned. */
  readonly midDiameter: number;
  /** Diameter at the large end, bark included: what has to pass the mill. */
  readonly throatDiameter: number;
}

/** Diameter inside bark at z steps from the small end; the taper is a straight line. */
export function diameterAt(log: SawLog, z: number): number {
  return log.smallDiameter + ((log.largeDiameter - log.smallDiameter) * z) / log.length;
}

/** Diameter of unsound heart at z; a cone between the two ends. */
export function rotDiameterAt(log: SawLog, z: number): number {
  return log.rot.smallEnd + ((log.rot.largeEnd - log.rot.smallEnd) * z) / log.length;
}

/**
 * Sweep of a bolt of the given length about its own end centres. The bow is taken as a parabola, whose height over a
 * chord goes with the square of the chord: half the length has a quarter of the sweep.
 */
export function boltSweep(log: SawLog, length: number): number {
  return log.sweep * (length / log.length) ** 2;
}

/**
 * The bolt [z0, z1] of a log. The sawing axis is the bolt's chord moved half the sweep to the bulge, so that the
 * centre of the wood, and with it rot and pith, stays within half the sweep of it.
 */
export function layBolt(log: SawLog, shop: SawShop, z0: number, z1: number): Bolt {
  const sweep = boltSweep(log, z1 - z0);
  const rot = Math.max(rotDiameterAt(log, z0), rotDiameterAt(log, z1));
  const thin = Math.min(diameterAt(log, z0), diameterAt(log, z1));
  const thick = Math.max(diameterAt(log, z0), diameterAt(log, z1));
  return {
    z0,
    z1,
    length: z1 - z0,
    radius: Math.max(0, (thin - sweep) / 2),
    rotRadius: rot > 0 ? (rot + sweep) / 2 : 0,
    pithRadius: (shop.pith + sweep) / 2,
    midDiameter: diameterAt(log, (z0 + z1) / 2),
    throatDiameter: thick + 2 * log.bark,
  };
}

/** Whether the bolt can be put on the mill: its length, and its large end through the throat. */
export function passesMill(bolt: Bolt, shop: SawShop): boolean {
  return bolt.length <= shop.longestBolt && (shop.throat <= 0 || bolt.throatDiameter <= shop.throat);
}

/** How much of the chord at height y lies between two edges, either of which may be endless; grid steps, not rounded. */
export function chordWithin(radius: number, y: number, [lo, hi]: readonly [number, number]): number {
  const half = Math.sqrt(Math.max(0, radius * radius - y * y));
  return Math.max(0, Math.min(half, hi) - Math.max(-half, lo));
}

/** Whole steps from the axis to the edge of a circle at height y, rounded down; -1 when y lies outside it. */
export function halfChord(radius: number, y: number): number {
  const square = radius * radius - y * y;
  return square < 0 ? -1 : Math.floor(Math.sqrt(square));
}

/** Whole steps from the axis that clear a circle at height y, rounded up; 0 when y clears it already. */
export function clearOf(radius: number, y: number): number {
  const square = radius * radius - y * y;
  return square <= 0 ? 0 : Math.ceil(Math.sqrt(square));
}

/**
 * Half the usable width of the slab [y0, y1], by its narrower face; -1 when there is none.
 *
 * @param wane - As `waneOf` gives it. Each corner of a piece may lack up to that both ways: the edge may stand where
 *   the wood is full so far below the face, if the face itself is no more than that narrower. The circle between the
 *   two points is outside the chamfer, so two points suffice.
 */
export function usableHalf(bolt: Bolt, y0: number, y1: number, wane: number): number {
  const outer = Math.max(Math.abs(y0), Math.abs(y1));
  if (wane <= 0) return halfChord(bolt.radius, outer);
  const face = halfChord(bolt.radius, outer);
  if (face < 0) return -1;
  return Math.min(halfChord(bolt.radius, Math.max(0, outer - wane)), face + wane);
}

/** Wane that counts: a corner never lacks more than half the piece's thickness, or the chamfers would meet. */
export function waneOf(group: SawGroup): number {
  return Math.min(group.wane, Math.floor(group.thickness / 2));
}

/** Distance from the axis of the nearest wood of the slab [y0, y1]; 0 when it holds the axis. */
export function nearestToAxis(y0: number, y1: number): number {
  return y0 <= 0 && y1 >= 0 ? 0 : Math.min(Math.abs(y0), Math.abs(y1));
}

/** Half the width about the axis that no piece of the slab [y0, y1] may enter, for rot; 0 = all is sound. */
export function rotHalf(bolt: Bolt, y0: number, y1: number): number {
  return clearOf(bolt.rotRadius, nearestToAxis(y0, y1));
}

/** Half the width about the axis that a piece free of the pith may not enter; 0 = the slab is clear of it. */
export function pithHalf(bolt: Bolt, y0: number, y1: number): number {
  return clearOf(bolt.pithRadius, nearestToAxis(y0, y1));
}

/**
 * Half of what strips keep clear of about a hole: a hole narrower than a kerf is as wide as one and a step, for the cut
 * beside one strip must not bite into the other.
 */
export function sawableHole({ millKerf, ripKerf }: SawShop, half: number): number {
  return half === 0 ? 0 : Math.max(half, Math.floor(Math.max(millKerf, ripKerf) / 2) + 1);
}

/** Whether the slab [y0, y1] holds the whole pith between its faces, so that a boxed piece may be cut from it. */
export function holdsPith(bolt: Bolt, y0: number, y1: number): boolean {
  return bolt.rotRadius === 0 && -y0 >= bolt.pithRadius && y1 >= bolt.pithRadius;
}

/** Whether a log's species serves a group; an empty list takes any. */
export function speciesServes(log: SawLog, group: SawGroup): boolean {
  return group.species.length === 0 || group.species.includes(log.species);
}

/** Saw and kerf that rip a slab of this thickness: the rip saw to its depth, the mill beyond. */
export function ripTool(shop: SawShop, thickness: number): { tool: "rip" | "mill"; kerf: number } {
  return thickness <= shop.deepestRip ? { tool: "rip", kerf: shop.ripKerf } : { tool: "mill", kerf: shop.millKerf };
}

/** Whether the mill leaves slabs so thin, and strips of such a width where it is the mill that rips them. */
export function millSaws(shop: SawShop, thickness: number, width: number): boolean {
  const { thinnestSlab = 0 } = shop;
  return thickness >= thinnestSlab && (width >= thinnestSlab || ripTool(shop, thickness).tool === "rip");
}

/** From a face of a stack to the next one beyond a waste slab: the waste, no thinner than the mill saws, and its kerf. */
export function beyondWaste({ millKerf, thinnestSlab = 0 }: SawShop): number {
  return Math.max(1, millKerf + thinnestSlab);
}

/** Where one piece of a group sits best in a bolt, as a slab [y0, y1] and a strip [x0, x1]; null when it does not. */
export interface Seat {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Seats one piece alone: on the heart, or against what it must keep clear of; lying first, then on edge. */
export function seatPiece(bolt: Bolt, group: SawGroup): Seat | null {
  if (group.length > bolt.length) return null;
  const keep = Math.max(bolt.rotRadius, group.heart === "free" ? bolt.pithRadius : 0);
  for (const [high, wide] of [
    [group.thickness, group.width],
    [group.width, group.thickness],
  ] as const) {
    const y0 = keep > 0 ? Math.ceil(keep) : -Math.floor(high / 2);
    const seat = { x0: -Math.floor(wide / 2), x1: Math.ceil(wide / 2), y0, y1: y0 + high };
    if (seat.x1 > usableHalf(bolt, seat.y0, seat.y1, waneOf(group))) continue;
    if (group.heart !== "boxed" || boxesPith(bolt, seat)) return seat;
  }
  return null;
}

/** Whether a box about the sawing axis contains the pith, and no rot. */
function boxesPith(bolt: Bolt, box: Seat): boolean {
  return holdsPith(bolt, box.y0, box.y1) && -box.x0 >= bolt.pithRadius && box.x1 >= bolt.pithRadius;
}
