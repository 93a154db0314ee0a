/**
 * How much slower a wood works than the softwood that the rates are for. Cutting takes effort about as the wood is dense;
 * an assumption, which one measures by a cut in each wood. Softer woods go no faster: the feed is the hand's.
 */
import type { Assumed } from "../request/assumed.js";
import type { WoodCells } from "../salvage/wood.js";
import { type Cell, greatest, number, over } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Lays one factor a wood, 1 or more. */
export function layHardness(
  sheet: Sheet,
  assumed: Assumed,
  woods: ReadonlyMap<string, WoodCells>,
): ReadonlyMap<string, Cell> {
  const softwood = assumed.cell("saw.softwood");
  return new Map(
    [...woods].map(([id, wood]) => [
      id,
      sheet.lay(`wood.${id}.hardness`, greatest(number("1"), over(wood.dryDensity, softwood)), {
        label: "slower to work than softwood, times",
      }),
    ]),
  );
}
