/** Notices of a takeoff: what of the structure is left to others, or sold in another size than it is laid out in. */

import type { Basis } from "./basis.js";
import type { Notice } from "./notice.js";
import { decimal } from "./quantity/decimal.js";
import { markedSmall } from "./quantity/text.js";
import { lowered } from "./quantity/words.js";
import { aside } from "./sheet/aside.js";
import type { Cell } from "./sheet/expression.js";
import type { Takeoffs } from "./takeoffs.js";

/** All of them, in the order of the work. */
export function structureNotices(basis: Basis, takeoffs: Takeoffs): Notice[] {
  return [
    ...pierNotices(basis, takeoffs),
    ...bareJointNotices(basis, takeoffs),
    ...boughtRafterNotices(basis, takeoffs),
  ];
}

/** Bases on precast blocks: each maker's block holds them in its own way. */
function pierNotices({ request: { structure } }: Basis, { fasteners }: Takeoffs): Notice[] {
  const onBases = fasteners?.lines.some(({ kind }) => kind === "post-base");
  if (structure.footings?.kind !== "precast" || !onBases) return [];
  const text =
    "Post bases on precast blocks: what fixes a base to its block comes with the block or is named by its maker, and is not taken off. A block that has a base of its own needs none of those listed.";
  return [{ code: "no-hardware", text, at: "/structure/footings/kind" }];
}

/** Pieces of a list whose joint nobody said: their hours are counted, their hardware is not. */
function bareJointNotices({ cutList: { frame, groups } }: Basis, { fasteners }: Takeoffs): Notice[] {
  if (frame) return [];
  const held = new Set(fasteners?.lines.flatMap((line) => line.groups));
  const bare = groups.filter(({ name, jointGiven }) => !held.has(name) && !jointGiven);
  const [first, ...others] = bare;
  if (!first) return [];
  const labels = [first.label, ...others.map(({ label }) => lowered(label))].join(", ");
  const who = bare.length === groups.length ? "All pieces" : labels;
  const text = `${who}: no bolts, screws or nails are taken off, for nothing says how they are joined. Give each its "joint".`;
  return [{ code: "no-hardware", text, at: first.at }];
}

/** Rafters that are sold shallower than laid out: what moves, and by how much. */
export function boughtRafterNotices({ sheet, groups, request }: Basis, { boughtRafter }: Takeoffs): Notice[] {
  const rafters = groups.find(({ group }) => group.role === "rafter")?.group;
  if (!boughtRafter || !rafters) return [];
  const { depth, lower, heightAbovePlate, notchShare } = boughtRafter;
  const marked = (cell: Cell): string => markedSmall({ value: aside(cell), unit: cell.unit }, request.system);
  const deep = aside(notchShare).gt(QUARTER) ? ", past the quarter that is advised" : "";
  const text = [
    `${rafters.label} are laid out ${marked(rafters.width)} deep and sold ${marked(depth)} deep.`,
    `Bought and cut with the same seat, their upper edges stand ${marked(heightAbovePlate)} above the plate, ${marked(lower)} lower,`,
    `and the birdsmouth takes ${sheet.shown(notchShare)} of their depth${deep}: mark them from the depth in hand.`,
  ].join(" ");
  return [{ code: "bought-size", text, at: rafters.at }];
}

const QUARTER = decimal("0.25");
