/**
 * How wide boards are that lie side by side. The yard's measure less than their name, so that it takes more of them: boards
 * that can only be bought are counted as they are sold; of those that logs may give, too, both counts are laid.
 */
import type { Quantity } from "../quantity/quantity.js";
import type { Cell, Operand } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type Laying, yardFor } from "./laying.js";

/** Width that rows are counted by. */
export interface BoardWidths {
  readonly width: Cell;
  /** Of the yard's boards, where these are narrower and the logs may serve, too. */
  readonly bought?: Cell;
}

/** The widths of a group's boards. */
export function boardWidths<Group extends string>(laying: Laying<Group>, base: Group, label: string): BoardWidths {
  const { sheet, sections, units } = laying;
  const { width } = sections[base];
  const yard = yardFor(laying, base, label);
  if (!yard?.board || yard.board.width.value.gte(sheet.decide(width))) return { width };
  const { width: sold, of } = yard.board;
  const lay = (name: string, value: Quantity): Cell =>
    sheet.find(`sections.${base}.${name}`) ??
    sheet.catalog(`sections.${base}.${name}`, value, { label: `width of ${of} as sold`, display: units.small });
  return yard.mayMill ? { width, bought: lay("boughtWidth", sold) } : { width: lay("soldWidth", sold) };
}

/** Lays a count of rows; where the yard's boards are narrower, theirs beside it, under the same name and `Bought`. */
export function layRows(
  sheet: Sheet,
  [name, label]: readonly [name: string, label: string],
  { width, bought }: BoardWidths,
  rowsOf: (width: Cell) => Operand,
): Cell {
  const rows = sheet.lay(name, rowsOf(width), { label });
  if (bought) sheet.lay(`${name}Bought`, rowsOf(bought), { label: `${label}, of boards as they are sold` });
  return rows;
}
