/** The boarded triangle of a gable, placed as the walls below it are. Inches and floats. */

import { aslantMembers } from "./aslant-members.js";
import { abovePlate } from "./frame-places.js";
import type { Sizes } from "./frame-walker.js";
import { type Range, WallPlan } from "./wall-plan.js";
import {
  type AskedWalls,
  BACKING,
  BATTEN,
  BOARD,
  coverOf,
  GABLE_LAP,
  LAP,
  type LaidWallGroup,
  places,
} from "./wall-sizes.js";

/** The triangle of a gable, from below the plate's top to the rafters' upper edges. */
export function gableOf(s: Sizes, asked: AskedWalls, groups: readonly LaidWallGroup[]): WallPlan {
  const [run, pitch] = [s.span / 2, s.rise / 12];
  const bottom = s.height - GABLE_LAP;
  const low = s.height + abovePlate(s);
  const top = (u: number) => low + Math.max(0, run - Math.abs(u - run)) * pitch;
  const plan = new WallPlan("left-gable", { width: s.span, bottom, top, peaks: [run] }, []);
  const own = (base: string) => groups.filter(({ name }) => name.startsWith(`${base}-left-gable`));
  const peak = top(run);
  if (asked.boards === "horizontal") {
    const ups = places(bottom, peak, BOARD - LAP);
    for (const up of ups) plan.course(up, LAP);
    const used = ups.reduce((sum, [from]) => sum + plan.widthAt(from), 0);
    const laid = own("wall-boards");
    const all = laid.reduce((sum, { length, count }) => sum + length * count, 0);
    plan.within("courses, end to end,", used, all);
    plan.within("courses laid, less one board,", all - (laid[0]?.length ?? 0), used);
    return plan;
  }
  const cover = coverOf(asked);
  const across = places(0, s.span, cover).length;
  gablePairs(plan, { count: across, cover, wide: BOARD }, own("wall-boards"));
  if (asked.boards === "board-and-batten" && across > 1) {
    gablePairs(plan, { count: across - 1, cover, wide: BATTEN }, own("wall-battens"));
  }
  const rails = own("wall-rails").toSorted((a, b) => b.length - a.length);
  for (const [i, { length }] of rails.entries()) {
    const up = bottom + (i + 1) * BACKING;
    const from = (s.span - length) / 2;
    plan.same("a gable's rail ends below the rafter", length, plan.widthAt(up));
    plan.spots(
      "wall-rails",
      [
        [from, up],
        [s.span - from, up],
      ],
      0,
    );
  }
  const free = peak - bottom - rails.length * BACKING;
  plan.within("above a gable's uppermost rail", free, BACKING);
  return plan;
}

/** Boards, or battens over their gaps, from both corners to the peak; two that come out of one piece side by side in it. */
function gablePairs(
  plan: WallPlan,
  { count, cover, wide }: { readonly count: number; readonly cover: number; readonly wide: number },
  laid: readonly LaidWallGroup[],
): void {
  const { width, bottom, top } = plan.outline;
  const layer = wide === BOARD ? "wall-boards" : "wall-battens";
  const from = (width - ((count - 1) * cover + wide)) / 2;
  const pieces = laid.reduce((sum, group) => sum + group.count, 0);
  const columns = Array.from({ length: count }, (_, i): Range => {
    return [Math.max(0, from + i * cover), Math.min(width, from + i * cover + wide)];
  });
  const long = columns.map(([a, b]) => plan.longEdge(a, b) - bottom);
  const members = aslantMembers(laid, long, 2);
  plan.same(`${layer}, two out of one`, pieces, members.pieces, 0);
  for (const [i, u] of columns.entries()) {
    const most = members.most[i];
    for (const { length } of most === undefined ? laid : [{ length: most }])
      plan.within(`one of ${layer}`, long[i] as number, length);
    plan.lay(layer, u, [bottom, top], wide === BOARD ? LAP : 0);
  }
}
