/**
 * Pieces from a spacing: spaces and pieces are different numbers.
 *
 * Over a length L with pieces of width t flush at both ends, centres lie L − t apart end to end; at a spacing of at
 * most s that is ⌈(L − t) ÷ s⌉ spaces and one more piece.
 * @see public-domain carpentry texts: "three quarters of the length in feet, plus one" is this rule at 16 in.
 */

import type { Cell } from "../sheet/expression.js";
import { minus, number, over, plus, roundUp } from "../sheet/expression.js";
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
