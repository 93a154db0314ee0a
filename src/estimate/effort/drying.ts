/**
 * Calendar time of air drying, in the stack, to about 20 % moisture: by species and thickness, from the shortest, piled in
 * good weather, to the longest, piled in autumn.
 *
 * 1 in lumber by the published table of the species. Time rises faster than thickness: with 2 in taking f times as long
 * as 1 in, T inches take T × (1 + (f ÷ 2 − 1) × (T − 1)), which is T itself at f = 2 and T² at f = 4, the two ends of the
 * published range.
 * @see USDA FPL, Air Drying of Lumber, FPL-GTR-117; Technical Note 233.
 */
import type { Assumed } from "../request/assumed.js";
import { type Cell, greatest, least, minus, number, type Operand, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** In the stack, from the last board laid to the first one dressed. */
export interface DryingCells {
  readonly soonest: Cell;
  readonly likely: Cell;
  readonly latest: Cell;
}

/** Pieces that dry. */
export interface DryingPiece {
  /** Rough. */
  readonly thickness: Cell;
  /** Woods that it may be sawn from. */
  readonly species: readonly string[];
}

type Case = "low" | "likely" | "high";

/** Lays the longest drying among the pieces of a route; undefined where nothing needs to dry. */
export function layDrying(
  sheet: Sheet,
  key: string,
  pieces: readonly DryingPiece[],
  assumed: Assumed,
): DryingCells | undefined {
  if (pieces.length === 0) return undefined;
  const lay = (name: string, label: string, of: Case): Cell => {
    const times = pieces.flatMap((piece) => piece.species.map((id) => dryingOf(assumed, id, piece.thickness, of)));
    return sheet.lay(`${key}.drying.${name}`, greatest(...times), { label, display: "week" });
  };
  return {
    soonest: lay("soonest", "drying in the stack, piled in good weather", "low"),
    likely: lay("likely", "drying in the stack", "likely"),
    latest: lay("latest", "drying in the stack, piled in autumn", "high"),
  };
}

function dryingOf(assumed: Assumed, id: string, thickness: Cell, of: Case): Operand {
  const inches = over(thickness, number("1 in"));
  const twice = end(assumed.cell("drying.twoInch"), of, "");
  const slower = times(minus(over(twice, number("2")), number("1")), minus(inches, number("1")));
  // Thin stock of a wood that slows down with thickness never dries in less than no time.
  return times(
    end(assumed.cell(`drying.${id}`), of, "day"),
    inches,
    greatest(plus(number("1"), slower), number("1/2")),
  );
}

/** An end of an assumption's range, never on the wrong side of what stands in the cell. */
function end(cell: Cell, of: Case, unit: string): Operand {
  if (of === "likely" || !cell.range) return cell;
  const text = `${cell.range[of].toFixed()} ${unit}`.trim();
  return of === "low" ? least(cell, number(text)) : greatest(cell, number(text));
}
