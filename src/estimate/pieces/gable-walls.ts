/**
 * The triangle of a gable, boarded by itself from the plate up to the rafters' upper edges: its boards are short, where boards
 * from the ground to the ridge would be longer than any that is sawn or sold. They reach down over the boards below them, so
 * that rain runs off.
 *
 * Boards of the two slopes, and studs, are cut aslant two out of one piece: laid out from the middle, the long edge of one and
 * the short edge of the other come to what the lowest and the highest place come to together.
 */
import {
  type Cell,
  count,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  times,
} from "../sheet/expression.js";
import { aslant, studRow } from "./aslant.js";
import { layRows } from "./board-width.js";
import type { WallSide } from "./frame.js";
import { wholes } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { wholesIn } from "./spacing.js";
import { nth, type Walling, wallGroup } from "./walling.js";

const TWO = number("2");
const ONE = number("1");

/** A gable as it is boarded. */
interface Triangle {
  readonly side: WallSide;
  /** From the boards' lower ends to the rafters' upper edges: at either corner, and at the peak. */
  readonly low: Operand;
  readonly height: Operand;
  /** Rise of the slope over its level run. */
  readonly unitRise: Operand;
  readonly unitRun: Operand;
}

/** The boards of a gable, and what is behind them; none on other sides, nor below a roof that does not rise. */
export function layGableWall(walling: Walling, under: WallSide): PieceGroup[] {
  const { sheet, gableLap, boards, units } = walling;
  const { gable } = under;
  if (!gable || !gableLap || sheet.decide(gable.rise).lte(0)) return [];
  const side: WallSide = { ...under, name: `${under.name}-gable`, label: `gable, ${under.label}` };
  sheet.title(`walls.${side.name}`, `Gable, ${under.label}`);
  const low = sheet.lay(`walls.${side.name}.low`, plus(gable.abovePlate, gableLap), {
    label: "boards' lower end to the rafters, at a corner",
    display: units.small,
  });
  const height = sheet.lay(`walls.${side.name}.height`, plus(low, gable.rise), {
    label: "boards' lower end to the peak",
    display: units.long,
  });
  const triangle = { side, low, height, unitRise: gable.unitRise, unitRun: gable.unitRun };
  return boards === "horizontal"
    ? courses(walling, triangle)
    : upright(walling, triangle, boards === "board-and-batten");
}

/** Two boards out of one piece; where they lap, the middle ones reach half a lap past the peak's line. */
function layPair({ sheet, units, boards, lap }: Walling, { side, low, height, unitRise, unitRun }: Triangle): Cell {
  const past = over(times(lap, unitRise), times(TWO, unitRun));
  const length = boards === "vertical" ? plus(low, height, past) : plus(low, height);
  const label = "two boards, cut aslant from one";
  return sheet.lay(`walls.${side.name}.boardLength`, length, { label, display: units.long });
}

function upright(walling: Walling, triangle: Triangle, battened: boolean): PieceGroup[] {
  const { sheet, covers, lap, backing, hidden } = walling;
  const { side, height, unitRise, unitRun } = triangle;
  const pair = layPair(walling, triangle);
  const wide = battened ? plus(side.width, lap) : minus(side.width, lap);
  const named = [`walls.${side.name}.boardsAcross`, "boards across"] as const;
  const across = layRows(sheet, named, covers, (each) => roundUp(over(wide, each)));
  const row = {
    slopes: 2 as const,
    highest: height,
    pair,
    ...(!battened && { past: over(times(lap, unitRise), times(TWO, unitRun)) }),
  };
  const plan = { supportsApart: backing };
  const boards = { base: "wall-boards", label: "wall boards", across, plan: { ...plan, covered: hidden } } as const;
  const battens = { base: "wall-battens", label: "wall battens", across: minus(across, ONE), plan } as const;
  return [
    ...aslant(walling, side, { ...row, ...boards }),
    ...(battened ? aslant(walling, side, { ...row, ...battens }) : []),
    ...gableRails(walling, triangle),
  ];
}

/** Rails between plate and peak, each as long as the gable is wide there: none where boards reach from beam to rafter. */
function gableRails(walling: Walling, triangle: Triangle): PieceGroup[] {
  const { sheet, backing, laying, units } = walling;
  const { side, height } = triangle;
  const rows = sheet.lay(`walls.${side.name}.rails`, minus(roundUp(over(height, backing)), ONE), {
    label: "rails between plate and peak",
  });
  return Array.from({ length: wholes(sheet, rows) }, (_, i) => {
    const at = times(count(i + 1), backing);
    const length = sheet.lay(`walls.${side.name}.rail${i + 1}`, widthAt(triangle, at), {
      label: `rail ${i + 1}, counted from the plate`,
      display: units.long,
    });
    return wallGroup(laying, "wall-rails", side, nth("Wall rails", i), { length, count: ONE, index: i });
  }).flat();
}

/** How wide the gable is at a height above its boards' lower ends. */
const widthAt = ({ side, low, unitRise, unitRun }: Triangle, height: Operand): Operand =>
  least(side.width, minus(side.width, over(times(TWO, minus(height, low), unitRun), unitRise)));

/**
 * Courses, each as long as the gable is wide at its lower edge: whole ones below the corners' height, the others shorter by
 * one step each, so that their sum is that of an arithmetic series.
 */
function courses(walling: Walling, triangle: Triangle): PieceGroup[] {
  const { sheet, units, covers, cover, lap, longestPiece, laying, backing, gableLap } = walling;
  const { side, low, height, unitRise, unitRun } = triangle;
  const lay = (name: string, label: string, formula: Operand, display?: string) =>
    sheet.lay(`walls.${side.name}.${name}`, formula, { label, ...(display && { display }) });
  const named = [`walls.${side.name}.courses`, "courses"] as const;
  const all = layRows(sheet, named, covers, (each) => roundUp(over(minus(height, lap), each)));
  const full = lay("fullCourses", "of them as long as the end", least(all, plus(wholesIn(low, cover), ONE)));
  const shorter = minus(all, full);
  const falls = over(times(minus(times(cover, minus(plus(all, full), ONE)), times(TWO, low)), unitRun), unitRise);
  const total = lay(
    "courseLength",
    "all courses, end to end",
    plus(times(full, side.width), times(shorter, minus(side.width, falls))),
    units.long,
  );
  const pieces = lay("lengths", "pieces end to end", roundUp(over(side.width, longestPiece)));
  const length = lay("boardLength", "board", over(side.width, pieces), units.long);
  const studs = lay("studs", "studs", minus(roundUp(over(side.width, backing)), ONE));
  const pair = lay("studLength", "two studs, cut aslant from one", studPair(triangle, gableLap, studs), units.long);
  const none = sheet.decide(studs).isZero();
  return [
    ...wallGroup(laying, "wall-boards", side, "Wall boards", {
      length,
      count: roundUp(over(total, length)),
      supportsApart: backing,
      covered: walling.hidden,
    }),
    ...(none
      ? []
      : aslant(walling, side, {
          ...studRow,
          slopes: 2,
          across: studs,
          highest: highestStud(triangle, gableLap),
          pair,
        })),
  ];
}

/**
 * From the plate's top, notched over the end rafter up to its upper edge. A stud and the one that is as far from the middle as
 * it is from the corner stand as far in together as the last of a half and one space more.
 */
function studPair({ side, low, unitRise, unitRun }: Triangle, gableLap: Cell | undefined, studs: Cell): Operand {
  const above = gableLap ? minus(low, gableLap) : low;
  const inwards = over(times(plus(wholesIn(studs, TWO), ONE), side.width), plus(studs, ONE));
  return plus(above, above, over(times(inwards, unitRise), unitRun));
}

/** A stud in the middle, notched over the end rafters. */
function highestStud({ height }: Triangle, gableLap: Cell | undefined): Operand {
  return gableLap ? minus(height, gableLap) : height;
}
