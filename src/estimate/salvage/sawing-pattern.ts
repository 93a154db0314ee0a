/**
 * A bolt's sawing pattern as a sawyer draws it (slabs, strips, pieces), and the ordered cuts that make it.
 *
 * The order is the one worked in: bolts from the butt, each opened at its top face and sawn down; then slabs are
 * ripped, then strips crosscut.
 */
import { ripTool } from "./bolt.js";
import type { LogPlan, SawCut, SawGroup, SawLog, SawnPiece, SawShop, SawTool } from "./sawing-problem.js";

/** A strip [x0, x0 + width] of a slab, with its pieces laid from the bolt's small end. */
export interface StripPattern {
  readonly x0: number;
  readonly width: number;
  readonly pieces: readonly SawGroup[];
}

/** A slab [y0, y0 + thickness] with its strips, x ascending. */
export interface SlabPattern {
  readonly y0: number;
  readonly thickness: number;
  readonly strips: readonly StripPattern[];
}

/** A bolt [z0, z1] with its slabs, y ascending. Neighbours are one kerf apart, or two kerfs and waste between. */
export interface BoltPattern {
  readonly z0: number;
  readonly z1: number;
  readonly slabs: readonly SlabPattern[];
}

type Interval = readonly [lo: number, hi: number];

/** Cuts and pieces of one log while they are being laid. */
class CutList {
  readonly cuts: SawCut[] = [];
  readonly pieces: SawnPiece[] = [];

  /** Adds a cut through a part. @returns the numbers of the parts below and above it. */
  cut(tool: SawTool, axis: SawCut["axis"], part: number, lo: number, hi: number): { below: number; above: number } {
    const index = this.cuts.length;
    this.cuts.push({ tool, axis, part, lo, hi });
    return { below: 2 * index + 1, above: 2 * index + 2 };
  }
}

/** Cuts intervals out of a part from the highest down; touching ones share a kerf. @returns their part numbers, ascending. */
function takeOut(
  list: CutList,
  how: { tool: SawTool; kerf: number; axis: "x" | "y" },
  part: number,
  wanted: readonly Interval[],
): number[] {
  const parts: number[] = [];
  let rest = part;
  let top = Number.POSITIVE_INFINITY;
  for (const [lo, hi] of [...wanted].reverse()) {
    if (hi !== top) rest = list.cut(how.tool, how.axis, rest, hi, hi + how.kerf).below;
    const split = list.cut(how.tool, how.axis, rest, lo - how.kerf, lo);
    parts.unshift(split.above);
    rest = split.below;
    top = lo - how.kerf;
  }
  return parts;
}

/** Crosscuts a strip into its pieces from the small end. */
function layPieces(
  list: CutList,
  shop: SawShop,
  bolt: BoltPattern,
  slab: SlabPattern,
  strip: StripPattern,
  part: number,
) {
  let rest = part;
  let z = bolt.z0;
  for (const group of strip.pieces) {
    const end = z + group.length;
    let own = rest;
    if (end < bolt.z1) {
      const split = list.cut("cross", "z", rest, end, end + shop.crossKerf);
      own = split.below;
      rest = split.above;
    }
    const across = { x0: strip.x0, x1: strip.x0 + strip.width, y0: slab.y0, y1: slab.y0 + slab.thickness };
    list.pieces.push({ group: group.name, part: own, ...across, z0: z, z1: end });
    z = end + shop.crossKerf;
  }
}

function layBoltCuts(list: CutList, shop: SawShop, bolt: BoltPattern, part: number): void {
  const faces = bolt.slabs.map((slab): Interval => [slab.y0, slab.y0 + slab.thickness]);
  const slabs = takeOut(list, { tool: "mill", kerf: shop.millKerf, axis: "y" }, part, faces);
  const strips = bolt.slabs.map((slab, i) => {
    const edges = slab.strips.map((strip): Interval => [strip.x0, strip.x0 + strip.width]);
    return takeOut(list, { ...ripTool(shop, slab.thickness), axis: "x" }, slabs[i] as number, edges);
  });
  bolt.slabs.forEach((slab, i) => {
    slab.strips.forEach((strip, k) => {
      layPieces(list, shop, bolt, slab, strip, strips[i]?.[k] as number);
    });
  });
}

/**
 * The cuts of one log, in order, and its pieces.
 *
 * @param bolts - In any order; at least a bucking kerf apart. A kerf at the end of the log or of a strip may run out
 *   of the wood.
 */
export function layLogPlan(log: SawLog, shop: SawShop, bolts: readonly BoltPattern[]): LogPlan {
  const list = new CutList();
  let rest = 0;
  let top = Math.floor(log.length);
  for (const bolt of [...bolts].sort((a, b) => b.z0 - a.z0)) {
    if (bolt.z1 < top) rest = list.cut("buck", "z", rest, bolt.z1, bolt.z1 + shop.buckKerf).below;
    let own = rest;
    if (bolt.z0 > 0) {
      const split = list.cut("buck", "z", rest, bolt.z0 - shop.buckKerf, bolt.z0);
      own = split.above;
      rest = split.below;
      top = bolt.z0 - shop.buckKerf;
    }
    layBoltCuts(list, shop, bolt, own);
  }
  return { log: log.name, cuts: list.cuts, pieces: list.pieces };
}
