/**
 * What wall boards lie on beside rails and studs: posts and beams behind level boards, end rafters behind those of a gable.
 * Where pieces only cross, as rails cross posts, the flat share of joints stands for it.
 */
import type { WallsShape } from "../request/structure-walls.js";
import { type Cell, count, greatest, minus, number, type Operand, over, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { LaidFrame, WallSide } from "./frame.js";
import type { PieceGroup } from "./piece-group.js";

/** A side as it is boarded. */
interface Boarded {
  readonly side: WallSide;
  readonly part: NonNullable<WallsShape["sides"][number]["part"]>;
}

/** The frame's groups, with the faces that boards hide from a brush laid beside them. */
export function behindBoards(
  sheet: Sheet,
  { groups, walls }: Pick<LaidFrame, "groups" | "walls">,
  shape: WallsShape,
  display: string,
): PieceGroup[] {
  const sides = shape.sides.flatMap(({ side: name, part = "whole" }): Boarded[] => {
    const side = walls.find((wall) => wall.name === name);
    return side ? [{ side, part }] : [];
  });
  const level = shape.boards === "horizontal";
  return groups.map((group) => {
    if (group.facesGiven) return group;
    const hidden = sides.flatMap(({ side, part }) => [
      ...(level && part !== "gable" ? [...ofPosts(sheet, group, side), ...ofBeams(groups, group, side)] : []),
      ...(part !== "below-plate" && side.gable ? ofRafters(groups, group) : []),
    ]);
    if (hidden.length === 0) return group;
    const laid = sheet.lay(`pieces.${group.name}.boarded`, sum(hidden), { label: "faces behind wall boards", display });
    return { ...group, contacts: [...(group.contacts ?? []), laid] };
  });
}

/** The outer face of each post, from the boards' lower ends up. */
function ofPosts(sheet: Sheet, { name, length, width }: PieceGroup, { posts }: WallSide): Operand[] {
  const pieces = posts[name];
  const clearance = sheet.find("frame.wallClearance");
  if (!pieces || !clearance) return [];
  return [times(pieces, width, greatest(minus(length, clearance), number("0 mm")))];
}

/** The outer face of the beam, over the width of the wall: each group of its run in the share of its length. */
function ofBeams(groups: readonly PieceGroup[], group: PieceGroup, { beam, width }: WallSide): Operand[] {
  if (sectionOf(group.thickness) !== beam) return [];
  const run = groups.filter(({ thickness }) => thickness === group.thickness).map(({ totalLength }) => totalLength);
  const face = times(group.width, width);
  return [run.length === 1 ? face : over(times(face, group.totalLength), sum(run))];
}

/** The outer faces of the two end rafters of a gable, near and far. */
function ofRafters(groups: readonly PieceGroup[], { name, length, width }: PieceGroup): Operand[] {
  const slopes = groups.filter((group) => COMMON.test(group.name)).length;
  return COMMON.test(name) ? [times(count(slopes === 1 ? 2 : 1), length, width)] : [];
}

const COMMON = /^rafters(-near|-far)?$/;

/** `sections.beams.thickness` belongs to the beams, whatever the groups of their run are called. */
const sectionOf = ({ name }: Cell): string | undefined => name.split(".")[1];
