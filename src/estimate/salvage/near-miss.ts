/** Why a wanted piece comes out of no log: which log comes nearest, and what it lacks. */
import { type Bolt, layBolt, millSaws, passesMill, seatPiece, speciesServes } from "./bolt.js";
import type { SawGroup, SawingProblem, SawLog, SawShop } from "./sawing-problem.js";

/** The log that comes nearest to holding one piece of a group; amounts in grid steps, rounded up. */
export type NearMiss =
  | { readonly lacks: "nothing"; readonly log: string }
  /** The log is shorter than the piece by so much. */
  | { readonly lacks: "length"; readonly log: string; readonly by: number }
  /** The best place in the log would have to be so much thicker. */
  | { readonly lacks: "diameter"; readonly log: string; readonly by: number }
  /** The piece is longer than the mill takes a bolt, by so much. */
  | { readonly lacks: "bolt-length"; readonly log: string; readonly by: number }
  /** Wherever the log holds the piece, it is too thick for the mill's throat, by so much. */
  | { readonly lacks: "throat"; readonly log: string; readonly by: number }
  /** The mill saws neither a slab nor, where it rips the slab, a strip so thin: by so much. */
  | { readonly lacks: "mill-slab"; readonly log: string; readonly by: number }
  /** Rot reaches through the heart that the piece has to box in. */
  | { readonly lacks: "sound-heart"; readonly log: string }
  /** No log is of a species that serves. */
  | { readonly lacks: "species" };

/** Places tried along a log. Assumption: taper between neighbours is far below a grid step's worth of blame. */
const PLACES = 64;

/** How near the logs come to one piece of a group; the log that lacks least, in relation to what is asked. */
export function nearMiss(problem: SawingProblem, group: SawGroup): NearMiss {
  const misses = problem.logs
    .filter((log) => speciesServes(log, group))
    .map((log) => ({ miss: missOf(log, problem.shop, group), log: log.name }));
  misses.sort((a, b) => weight(a.miss, group) - weight(b.miss, group) || (a.log < b.log ? -1 : 1));
  return misses[0]?.miss ?? { lacks: "species" };
}

/** Share of what is asked that is missing: makes an inch of diameter and a foot of length comparable. */
function weight(miss: NearMiss, group: SawGroup): number {
  switch (miss.lacks) {
    case "nothing":
      return -1;
    case "mill-slab":
      return miss.by / group.thickness;
    case "length":
    case "bolt-length":
      return miss.by / group.length;
    case "diameter":
    case "throat":
      return miss.by / Math.hypot(group.thickness, group.width);
    case "sound-heart":
      return Number.MAX_VALUE;
    case "species":
      return Number.POSITIVE_INFINITY;
  }
}

function missOf(log: SawLog, shop: SawShop, group: SawGroup): NearMiss {
  const length = Math.floor(log.length);
  if (group.length > length) return { lacks: "length", log: log.name, by: group.length - length };
  if (group.length > shop.longestBolt) {
    return { lacks: "bolt-length", log: log.name, by: Math.ceil(group.length - shop.longestBolt) };
  }
  if (!sawable(shop, group)) {
    const by = (shop.thinnestSlab ?? 0) - (millSaws(shop, group.width, group.width) ? group.thickness : group.width);
    return { lacks: "mill-slab", log: log.name, by };
  }
  const bolts = places(length - group.length).map((z0) => layBolt(log, shop, z0, z0 + group.length));
  const holding = bolts.filter((bolt) => seatPiece(bolt, group) !== null);
  if (holding.some((bolt) => passesMill(bolt, shop))) return { lacks: "nothing", log: log.name };
  if (holding.length > 0) {
    const over = Math.min(...holding.map((bolt) => bolt.throatDiameter - shop.throat));
    return { lacks: "throat", log: log.name, by: Math.ceil(over) };
  }
  const sound = group.heart === "boxed" ? bolts.filter((bolt) => bolt.rotRadius === 0) : bolts;
  const lacking = sound.map((bolt) => thicknessLacking(bolt, group)).filter((by) => by !== null);
  if (lacking.length === 0) return { lacks: "sound-heart", log: log.name };
  return { lacks: "diameter", log: log.name, by: Math.min(...lacking) };
}

/** Whether the mill saws the section lying or on edge. */
function sawable(shop: SawShop, { thickness, width }: SawGroup): boolean {
  return millSaws(shop, thickness, width) || millSaws(shop, width, thickness);
}

function places(slack: number): number[] {
  const last = slack > 0 ? PLACES : 0;
  return Array.from({ length: last + 1 }, (_, i) => Math.floor((slack * i) / Math.max(1, last)));
}

/** Whole steps of diameter by which the bolt is too thin; null when no thickness would do. */
function thicknessLacking(bolt: Bolt, group: SawGroup): number | null {
  const enough = Math.ceil(2 * (group.thickness + group.width + bolt.rotRadius + bolt.pithRadius) + 4);
  const holds = (by: number) => seatPiece({ ...bolt, radius: bolt.radius + by / 2 }, group) !== null;
  if (!holds(enough)) return null;
  let [low, high] = [0, enough];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
