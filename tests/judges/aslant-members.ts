/** Members below a slope as they were laid: two out of one piece, or each by itself in a higher and a lower half. */
import type { LaidWallGroup } from "./wall-sizes.js";

/** Pieces that the members come from, and how long each member may be: of two out of one piece nothing is known. */
export interface Members {
  readonly pieces: number;
  readonly most: readonly (number | undefined)[];
}

/** @param heights - Long edge of each. @param alike - Members of one height: two below two slopes. */
export function aslantMembers(laid: readonly LaidWallGroup[], heights: readonly number[], alike: 1 | 2): Members {
  const lower = laid.find(({ name }) => name.endsWith("-lower"));
  const higher = laid.find((one) => one !== lower);
  if (!lower || !higher) return { pieces: Math.ceil(heights.length / 2), most: heights.map(() => undefined) };
  const short = alike * Math.floor(heights.length / 2 / alike);
  const ranked = heights.map((_, i) => i).sort((a, b) => (heights[a] as number) - (heights[b] as number));
  const most = heights.map((_, i) => (ranked.indexOf(i) < short ? lower.length : higher.length));
  return { pieces: heights.length, most };
}
