/**
 * Pieces from a spacing: spaces and pieces are different numbers.
 *
 * Over a length L with pieces of width t flush at both ends, centres lie L − t apart end to end; at a spacing of at
 * most s that is ⌈(L − t) ÷ s⌉ spaces and one more piece.
 * @see public-domain carpentry texts: "three quarters of the length in feet, plus one" is this rule at 16 in.
 */

import { FaultError } from "../faults.js";
import { onTape } from "../quantity/text.js";
import type { Cell } from "../sheet/expression.js";
import { minus, number, type Operand, over, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Spaces and pieces of a row: two different numbers. */
export interface SpacedCells {
  /** Between the outermost centres. */
  readonly reach: Cell;
  readonly spaces: Cell;
  readonly pieces: Cell;
  /** Centre to centre when all spaces are alike. */
  readonly equalSpace: Cell;
}

/** @param most - Largest spacing allowed, centre to centre. */
export function laySpacing(
  sheet: Sheet,
  name: string,
  { length, width, most }: { readonly length: Cell; readonly width: Cell; readonly most: Cell },
  display: string,
): SpacedCells {
  const reach = sheet.lay(`${name}.reach`, minus(length, width), { label: "between outer centres", display });
  const spaces = sheet.lay(`${name}.spaces`, roundUp(over(reach, most)), { label: "spaces" });
  const pieces = sheet.lay(`${name}.lines`, plus(spaces, number("1")), { label: "lines" });
  const equalSpace = sheet.lay(`${name}.equalSpace`, over(reach, spaces), { label: "spacing, all alike", display });
  return { reach, spaces, pieces, equalSpace };
}

/** Pieces that may come to stand in one another, and what the request calls their spacing. */
export interface Spread {
  readonly width: Cell;
  /** JSON Pointer of the spacing. */
  readonly at: string;
  /** In the plural, such as `Rafters`. */
  readonly what: string;
  /** The spacing as asked for, where all spaces but the last have it. */
  readonly shortLast?: Cell | undefined;
}

/**
 * Refuses pieces that stand in one another, though the asked spacing has room for them: spread evenly they are closer, and a last
 * space takes what the others leave.
 */
export function refuseTight(sheet: Sheet, lines: Pick<SpacedCells, "reach" | "spaces">, spread: Spread): void {
  const { width, at, what, shortLast } = spread;
  const [reach, spaces, own] = [sheet.decide(lines.reach), sheet.decide(lines.spaces), sheet.decide(width)];
  if (spaces.lte(0)) return;
  const apart = shortLast ? reach.minus(sheet.decide(shortLast).times(spaces.minus(1))) : reach.dividedBy(spaces);
  // Next to a whole space the last piece may touch the one before it.
  if (apart.gt(own) || (shortLast && apart.eq(own))) return;
  const say = onTape({ value: apart, unit: width.unit }, width.display);
  const wrong = shortLast
    ? `${what} at this spacing leave ${say} for the last space, centres; each is ${sheet.onTape(width)} thick.`
    : `${what} spread evenly are ${say} apart, centres, and ${sheet.onTape(width)} thick.`;
  const cure = shortLast ? "Give another spacing, or make all spaces equal." : "Give a wider spacing.";
  throw new FaultError([{ code: "cannot-build", at, wrong, cure }]);
}

/** Whole pieces in a length: ⌊x⌋ is −⌈−x⌉. */
export const wholesIn = (length: Operand, each: Operand): Operand =>
  times(number("-1"), roundUp(over(times(number("-1"), length), each)));
