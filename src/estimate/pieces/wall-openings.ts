/** Openings of boarded walls: how large, what they save, and the frame round each. */
import { toQuantity } from "../../catalog/reading.js";
import { type Fault, pointer } from "../faults.js";
import { onTape } from "../quantity/text.js";
import type { OpeningShape } from "../request/structure-walls.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import type { WallSide } from "./frame.js";
import { AT } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { wholesIn } from "./spacing.js";
import { widestClear } from "./wall-bays.js";
import { nth, type Walling, wallGroup } from "./walling.js";

/** Openings of equal size in one wall. */
export interface Opening {
  readonly width: Cell;
  readonly height: Cell;
  readonly count: Cell;
  /** From the boards' lower end to its sill; absent of a door. */
  readonly sill: Cell | undefined;
}

/**
 * Lays the sizes of a side's openings.
 * @param faults - Takes what is larger than the side, wider than any of its bays, or cuts the beam over it, at `at`.
 */
export function layOpenings(
  { sheet, units, clearance, post }: Walling,
  side: WallSide,
  shapes: readonly OpeningShape[],
  at: string,
  faults: Fault[],
): Opening[] {
  const lower = side.heights.reduce((a, b) => (sheet.decide(a).lte(sheet.decide(b)) ? a : b));
  const room = sheet.decide(lower).minus(sheet.decide(clearance));
  const refuse = (where: string, wrong: string, cure: string) =>
    faults.push({ code: "cannot-build", at: where, wrong, cure });
  if (room.lte(0)) {
    refuse(`${AT}/walls/clearance`, `The boards of the ${side.label} would begin above their upper end.`, "Give less.");
  }
  const beam = side.beam === undefined ? undefined : sheet.find(`sections.${side.beam}.width`);
  const below = beam ? room.minus(sheet.decide(beam)) : room;
  const wallHeight = onTape({ value: room, unit: lower.unit }, lower.display);
  const clear = widestClear(sheet, side, post);
  const clearBay = onTape({ value: clear, unit: side.width.unit }, side.width.display);
  let free = sheet.decide(side.width);
  return shapes.map((shape, i) => {
    const here = pointer(at, "openings", i);
    const [width, height] = [toQuantity(shape.width, "mm"), toQuantity(shape.height, "mm")];
    free = free.minus(width.value.times(shape.count ?? 1));
    if (free.lt(0)) {
      const wrong = `The openings are wider than the ${side.label} (${sheet.onTape(side.width)}).`;
      refuse(pointer(here, "width"), wrong, "Make them narrower, or fewer.");
    } else if (width.value.gt(clear)) {
      const wrong = `A post would stand in the opening: the widest bay of the ${side.label} is ${clearBay} clear between posts.`;
      refuse(pointer(here, "width"), wrong, "Make it narrower, or give fewer bays on that side.");
    }
    const sill = shape.sill === undefined ? undefined : toQuantity(shape.sill, "mm");
    if (height.value.plus(sill?.value ?? 0).gt(room)) {
      const wrong = `The opening${sill ? " and what is below its sill are" : " is"} higher than the ${side.label}'s boards (${wallHeight}).`;
      refuse(pointer(here, "height"), wrong, "Make it lower.");
    } else if (height.value.plus(sill?.value ?? 0).gt(below)) {
      const most = onTape({ value: below.minus(sill?.value ?? 0), unit: lower.unit }, lower.display, "most");
      const wrong = `The opening would cut the beam over the ${side.label}: up to its underside there is room for ${most}.`;
      refuse(pointer(here, "height"), wrong, "Make it lower, or the wall higher.");
    }
    const lay = (name: string, label: string, value: typeof width) =>
      sheet.input(`walls.${side.name}.opening${i + 1}.${name}`, value, { label, display: units.long });
    return {
      width: lay("width", "width of the opening", width),
      height: lay("height", "height of the opening", height),
      count: sheet.input(`walls.${side.name}.opening${i + 1}.count`, plain(shape.count ?? 1), { label: "alike" }),
      sill: sill && lay("sill", "from the boards' lower end to the sill", sill),
    };
  });
}

/**
 * Frames of a side's openings: two jambs as high as the opening, and across their ends a header; below a window a sill as
 * long. What is cut of the rails or studs that hold the frame, `opening-cuts.ts` says.
 */
export function openingFrames({ laying }: Walling, side: WallSide, openings: readonly Opening[]): PieceGroup[] {
  return openings.flatMap((opening, i) => {
    const { width, height, count: alike, sill } = opening;
    const across = () => plus(width, times(number("2"), laying.sections["opening-jambs"].thickness));
    const each = number(sill ? "2" : "1");
    return [
      ...wallGroup(laying, "opening-jambs", side, nth("Opening jambs", i), {
        length: height,
        count: times(number("2"), alike),
        index: i,
      }),
      ...wallGroup(laying, "opening-headers", side, nth(sill ? "Opening headers and sills" : "Opening headers", i), {
        length: across(),
        count: times(each, alike),
        index: i,
      }),
    ];
  });
}

/** What openings save, each as often as it is there. */
const deducted = (openings: readonly Opening[], each: (opening: Opening) => Operand): Operand =>
  openings.length === 0 ? number("0 mm") : sum(openings.map((opening) => times(opening.count, each(opening))));

/** Upright boards that openings take out whole, each over its height. */
export const savedBoards = ({ cover }: Walling, openings: readonly Opening[]): Operand =>
  deducted(openings, ({ width, height }) => times(wholesIn(width, cover), height));

/**
 * Battens that openings take out: of one that begins at a board's edge those whose far edge it reaches. The one over the gap
 * beside that edge stays, cut round the opening.
 */
export function savedBattens({ laying, lap, cover }: Walling, openings: readonly Opening[]): Operand {
  const beyond = over(minus(laying.sections["wall-battens"].width, lap), number("2"));
  const reached = (opening: Opening) => greatest(wholesIn(minus(opening.width, beyond), cover), number("0"));
  return deducted(openings, (opening) => times(reached(opening), opening.height));
}

/** Courses that lie whole within the height of an opening: those below its sill or through it stay. */
function coursesWithin({ height, sill }: Opening, cover: Cell): Operand {
  if (!sill) return wholesIn(height, cover);
  return greatest(minus(wholesIn(plus(sill, height), cover), roundUp(over(sill, cover))), number("0"));
}

/** Level boards that openings take out whole, each over its width. */
export const savedCourses = ({ cover }: Walling, openings: readonly Opening[]): Operand =>
  deducted(openings, (opening) => times(coursesWithin(opening, cover), opening.width));
