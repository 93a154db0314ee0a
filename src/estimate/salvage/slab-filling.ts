/**
 * Fills one slab by rule: widest strips first from one wany edge, longest pieces first in each strip, never more than
 * is still wanted. The work of a careful sawyer, not of a search.
 */
import { type Bolt, holdsPith, millSaws, pithHalf, ripTool, rotHalf, sawableHole, usableHalf, waneOf } from "./bolt.js";
import type { SlabPattern, StripPattern } from "./sawing-pattern.js";
import type { SawGroup, SawShop } from "./sawing-problem.js";

/** A group with the pieces still wanted of it. */
export interface Want {
  readonly group: SawGroup;
  open: number;
}

/** A run of the slab's width that strips may be laid in, and whether free or boxed pieces may lie there. */
interface Run {
  readonly lo: number;
  readonly hi: number;
  readonly free: boolean;
}

/** The other dimension of a group's section when a slab is `thickness` thick; 0 when the slab or the mill does not suit it. */
export function stripWidth(shop: SawShop, group: SawGroup, thickness: number): number {
  const width = group.thickness === thickness ? group.width : group.width === thickness ? group.thickness : 0;
  return millSaws(shop, thickness, width) ? width : 0;
}

/** Pieces of one section into a strip, in the order of preference, each group no oftener than it is open. */
function fillStrip(bolt: Bolt, shop: SawShop, wants: readonly Want[]): SawGroup[] {
  const pieces: SawGroup[] = [];
  let z = 0;
  for (const want of wants) {
    for (let n = want.open; n > 0 && z + want.group.length <= bolt.length; n--) {
      pieces.push(want.group);
      z += want.group.length + shop.crossKerf;
    }
  }
  return pieces;
}

/** Takes pieces off what is wanted. */
export function takeOff(wants: readonly Want[], pieces: readonly SawGroup[]): void {
  for (const want of wants) for (const group of pieces) if (group === want.group) want.open--;
}

/** Widest strips first into a run; the waste is left at its upper end. */
function fillRun(bolt: Bolt, shop: SawShop, wants: readonly Want[], thickness: number, wane: number, run: Run) {
  const { kerf } = ripTool(shop, thickness);
  const strips: StripPattern[] = [];
  let x = run.lo;
  for (const [width, alike] of byStripWidth(shop, wants, thickness, wane, run)) {
    while (x + width <= run.hi) {
      const pieces = fillStrip(bolt, shop, alike);
      if (pieces.length === 0) break;
      takeOff(alike, pieces);
      strips.push({ x0: x, width, pieces });
      x += width + kerf;
    }
  }
  return strips;
}

/** What may lie in the run, by the width of its strips, widest first. */
function byStripWidth(
  shop: SawShop,
  wants: readonly Want[],
  thickness: number,
  wane: number,
  run: Run,
): [number, Want[]][] {
  const widths = new Map<number, Want[]>();
  for (const want of wants) {
    const width = stripWidth(shop, want.group, thickness);
    const { heart } = want.group;
    if (width === 0 || heart === "boxed" || (heart === "free" && !run.free) || waneOf(want.group) < wane) continue;
    widths.set(width, [...(widths.get(width) ?? []), want]);
  }
  return [...widths].sort(([a], [b]) => b - a);
}

/**
 * Fills the slab [y0, y0 + thickness] for a first group and whatever else suits it.
 *
 * @param wants - In the order of preference; their open counts are lowered by what the slab yields.
 * @returns null when not one piece of `first` comes out of it; nothing is taken off then.
 */
export function fillSlab(
  bolt: Bolt,
  shop: SawShop,
  wants: readonly Want[],
  first: Want,
  y0: number,
  thickness: number,
): SlabPattern | null {
  const y1 = y0 + thickness;
  const half = usableHalf(bolt, y0, y1, waneOf(first.group));
  const width = stripWidth(shop, first.group, thickness);
  if (half < 0 || width === 0) return null;
  const strips =
    first.group.heart === "boxed"
      ? aroundBoxed(bolt, shop, wants, first, { y0, thickness, half, width })
      : overWidth(bolt, shop, wants, first, { y0, thickness, half, width });
  return strips.length === 0 ? null : { y0, thickness, strips };
}

interface SlabSpace {
  readonly y0: number;
  readonly thickness: number;
  readonly half: number;
  readonly width: number;
}

/** The heart timber in the middle, other strips of the same thickness in what is left on either side. */
function aroundBoxed(bolt: Bolt, shop: SawShop, wants: readonly Want[], first: Want, space: SlabSpace): StripPattern[] {
  const { y0, thickness, half, width } = space;
  const x0 = -Math.floor(width / 2);
  const inside = x0 >= -half && x0 + width <= half && -x0 >= bolt.pithRadius && x0 + width >= bolt.pithRadius;
  if (!inside || !holdsPith(bolt, y0, y0 + thickness) || first.group.length > bolt.length) return [];
  const pieces = [first.group];
  for (let z = 2 * first.group.length + shop.crossKerf; z <= bolt.length && pieces.length < first.open; ) {
    pieces.push(first.group);
    z += first.group.length + shop.crossKerf;
  }
  takeOff(wants, pieces);
  const { kerf } = ripTool(shop, thickness);
  const wane = waneOf(first.group);
  const below = fillRun(bolt, shop, wants, thickness, wane, { lo: -half, hi: x0 - kerf, free: true });
  const above = fillRun(bolt, shop, wants, thickness, wane, { lo: x0 + width + kerf, hi: half, free: true });
  return [...below, { x0, width, pieces }, ...above];
}

/** The whole width, or the two sides of what has to be kept clear of: rot, and the pith where the first group asks it. */
function overWidth(bolt: Bolt, shop: SawShop, wants: readonly Want[], first: Want, space: SlabSpace): StripPattern[] {
  const { y0, thickness, half, width } = space;
  const pith = pithHalf(bolt, y0, y0 + thickness);
  const hole = Math.max(rotHalf(bolt, y0, y0 + thickness), first.group.heart === "free" ? pith : 0);
  const keep = sawableHole(shop, hole);
  const free = pith <= keep;
  const runs: Run[] =
    keep > 0
      ? [
          { lo: -half, hi: -keep, free },
          { lo: keep, hi: half, free },
        ]
      : [{ lo: -half, hi: half, free }];
  if (first.open <= 0 || !runs.some((run) => run.lo + width <= run.hi) || first.group.length > bolt.length) return [];
  return runs.flatMap((run) => fillRun(bolt, shop, wants, thickness, waneOf(first.group), run));
}
