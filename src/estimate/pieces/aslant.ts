/**
 * Members below a slope, each cut aslant at its upper end. Two in turn come out of one piece as long as both; where no piece is
 * that long they come one by one, those of the higher half of the slope as long as the highest, the others as long as the
 * slope's middle is high. Common practice.
 */
import {
  type Cell,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  times,
} from "../sheet/expression.js";
import type { WallSide } from "./frame.js";
import type { PieceGroup } from "./piece-group.js";
import { wholesIn } from "./spacing.js";
import { type Walling, type WallPieces, wallGroup } from "./walling.js";

/** Members side by side below one slope, or below two that meet at a peak. */
export interface AslantRow {
  readonly base: Parameters<typeof wallGroup>[1];
  /** In words, such as `wall boards`. */
  readonly label: string;
  readonly slopes: 1 | 2;
  /** How many stand side by side. */
  readonly across: Operand;
  /** The highest, to its long edge. */
  readonly highest: Operand;
  /** Two out of one piece. */
  readonly pair: Cell;
  /** How far the long edge of a member in the lower half reaches past the middle's height. */
  readonly past?: Operand;
  /** Length that openings take out of the row. */
  readonly off?: Operand;
  /** Whether each member is fixed at its ends. */
  readonly ends?: boolean;
  readonly plan?: Pick<WallPieces, "supportsApart" | "covered">;
}

const [ONE, TWO, FOUR] = [number("1"), number("2"), number("4")] as const;

/** The groups of a row: pairs, or its two halves. */
export function aslant(walling: Walling, side: WallSide, row: AslantRow): PieceGroup[] {
  const { sheet, longestPiece } = walling;
  return sheet.decide(row.pair).lte(sheet.decide(longestPiece))
    ? inPairs(walling, side, row)
    : inHalves(walling, side, row);
}

function inPairs(walling: Walling, side: WallSide, row: AslantRow): PieceGroup[] {
  const { base, across, pair: length, off, ends, plan } = row;
  const pieces = off ? over(minus(over(times(across, length), TWO), off), length) : over(across, TWO);
  return wallGroup(walling.laying, base, side, `Paired ${row.label}`, {
    ...plan,
    length,
    count: greatest(roundUp(pieces), ONE),
    ...(plan?.supportsApart && { crossings: pairSupports(walling, side, length) }),
    ...(ends && { members: across }),
  });
}

/**
 * Supports of two boards that are cut aslant out of one piece: rails at most `backing` apart from the lower end of each to its
 * upper one, both counted.
 */
function pairSupports({ sheet, backing }: Walling, { name }: WallSide, length: Cell): number {
  const [cell, label] = [`walls.${name}.pairSupports`, "supports of two such boards"];
  const supports = plus(roundUp(over(length, backing)), number("3"));
  return sheet.decideWhole(sheet.find(cell) ?? sheet.lay(cell, supports, { label }));
}

/** Below two slopes the members alike are two, one on each; what openings take out is taken off the shorter ones. */
function inHalves({ sheet, laying }: Walling, side: WallSide, row: AslantRow): PieceGroup[] {
  const { base, label, across, slopes, highest, pair, past, off, plan } = row;
  const lower = slopes === 1 ? wholesIn(across, TWO) : times(TWO, wholesIn(across, FOUR));
  const halfway = over(pair, TWO);
  const length = past ? plus(halfway, past) : halfway;
  const count = off ? greatest(minus(lower, wholesIn(off, length)), ONE) : lower;
  const none = sheet.decideOf(`walls.${side.name}.${base}Lower`, lower).isZero();
  const shorter = { ...plan, length, count, part: "lower" };
  return [
    ...wallGroup(laying, base, side, `Higher ${label}`, { ...plan, length: highest, count: minus(across, lower) }),
    ...(none ? [] : wallGroup(laying, base, side, `Lower ${label}`, shorter)),
  ];
}

/** Studs from the boards' lower ends to the plate; below a slope two that are as far from either corner out of one piece. */
export function studGroup(walling: Walling, side: WallSide, studs: Operand): PieceGroup[] {
  const { sheet, laying, clearance, units } = walling;
  const [from, to] = side.heights;
  if (from === to) {
    return wallGroup(laying, "wall-studs", side, "Wall studs", { length: minus(from, clearance), count: studs });
  }
  const both = minus(plus(from, to), times(TWO, clearance));
  const label = "two studs, cut aslant from one";
  const pair = sheet.lay(`walls.${side.name}.studPair`, both, { label, display: units.long });
  const highest = minus(greatest(from, to), clearance);
  return aslant(walling, side, { ...studRow, slopes: 1, across: studs, highest, pair });
}

/** What all rows of studs have alike. */
export const studRow = { base: "wall-studs", label: "wall studs", ends: true } as const;

/** How far the upper edge of a lapped board of the lower half reaches past the height at the middle of a single slope. */
export function halfLap({ lap }: Walling, { heights: [from, to], width }: WallSide): Operand {
  return over(times(lap, minus(greatest(from, to), least(from, to))), times(TWO, width));
}
