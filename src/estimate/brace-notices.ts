/** Braces that run through an opening: they stand in the plane of the wall, in the upper corners of its bays. */

import type { Basis } from "./basis.js";
import type { Notice } from "./notice.js";
import type { FrameCells } from "./pieces/outline.js";
import { type Decimal, ZERO } from "./quantity/decimal.js";
import { wholeNumber } from "./quantity/whole.js";
import { aside } from "./sheet/aside.js";
import type { Cell } from "./sheet/expression.js";

type Side = FrameCells["walls"][number];

/** A bay of a side, clear between posts, and at which of its ends a brace stands. */
interface Bay {
  readonly start: Decimal;
  readonly end: Decimal;
  readonly braced: readonly [start: boolean, end: boolean];
}

/** One notice for each opening that a brace runs through. Ends below a single slope, whose beams are not level, are not looked at. */
export function braceNotices({ sheet, request, cutList: { frame, groups } }: Basis): Notice[] {
  const { structure } = request;
  const leg = sheet.find("frame.braceLeg");
  const post = groups.find(({ role }) => role === "post");
  if (!frame || !leg || !post || structure.kind === "pieces" || !structure.walls) return [];
  if (!groups.some(({ role }) => role === "brace")) return [];
  const find = (name: string): Cell | undefined => sheet.find(name);
  const clearance = find("frame.wallClearance");
  return structure.walls.sides.flatMap(({ side: name, openings = [] }, i) => {
    const side = frame.walls.find((one) => one.name === name);
    const beam = side?.beam && find(`sections.${side.beam}.width`);
    if (!side || !beam || !clearance || side.heights[0] !== side.heights[1]) return [];
    const under = aside(side.heights[0]).minus(aside(beam));
    const bays = baysOf(frame, side, aside(post.width));
    return openings.flatMap((_, nth): Notice[] => {
      const at = (field: string) => find(`walls.${name}.opening${nth + 1}.${field}`);
      const [width, height, sill] = [at("width"), at("height"), at("sill")];
      if (!width || !height) return [];
      const top = aside(clearance)
        .plus(sill ? aside(sill) : 0)
        .plus(aside(height));
      const room = aside(leg).minus(under.minus(top));
      const copies = Array.from({ length: 50 }, (__, k) => at(k === 0 ? "from" : `from${k + 1}`));
      const crossed = copies.some(
        (from) => from && bays.some((bay) => isCrossed(bay, [aside(from), aside(from).plus(aside(width))], room)),
      );
      if (!crossed) return [];
      const text = `Opening ${nth + 1} of the ${side.label}: a brace of ${sheet.onTape(leg)} legs runs through its upper corner. Give it another place or less height, give shorter legs, or leave the brace out there.`;
      return [{ code: "in-the-way", text, at: `/structure/walls/sides/${i}/openings/${nth}` }];
    });
  });
}

/** @param room - From a post, less than which an opening's upper corner lies below a brace. */
const isCrossed = ({ start, end, braced }: Bay, [from, to]: readonly [Decimal, Decimal], room: Decimal): boolean => {
  if (from.lt(start) || to.gt(end)) return false;
  return (braced[0] && from.minus(start).lt(room)) || (braced[1] && end.minus(to).lt(room));
};

/** Below the end beams of a gable braces stand at the corner posts alone; elsewhere at every post. */
function baysOf(frame: FrameCells, { width, bays, firstBays, name }: Side, post: Decimal): Bay[] {
  const reach = aside(width).minus(post);
  const count = firstBays ? firstBays.length + 1 : bays ? wholeNumber(aside(bays)) : 1;
  const corners = frame.kind === "gable" && (name === "left" || name === "right");
  const before = (i: number): Decimal =>
    firstBays
      ? firstBays.slice(0, i).reduce((sum, bay) => sum.plus(aside(bay)), ZERO)
      : reach.times(i).dividedBy(count);
  return Array.from({ length: count }, (_, i): Bay => {
    const last = i === count - 1;
    return {
      start: before(i).plus(post),
      end: last ? reach : before(i + 1),
      braced: [!corners || i === 0, !corners || last],
    };
  });
}
