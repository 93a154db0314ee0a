/**
 * How wide boards are that lie side by side. The yard's measure less than their name, so that it takes more of them: boards
 * that can only be bought are counted as they are sold; of those that logs may give, too, both counts are laid.
 */
import type { Quantity } from "../quantity/quantity.js";
import type { Cell, Operand } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type Laying, yardFor } from "./laying.js";
import type { SoldFor } from "./run-cutting.js";

/** Width that rows are counted by. */
export interface BoardWidths {
  readonly width: Cell;
  /** Of the yard's boards, where these are narrower and the logs may serve, too. */
  readonly bought?: Cell;
}

/** The widths of a group's boards. */
export function boardWidths<Group extends string>(laying: Laying<Group>, base: Group, label: string): BoardWidths {
  const { sheet, sections, units } = laying;
  const yard = yardFor(laying, base, label);
  return widthsAsSold(sheet, { name: `sections.${base}`, width: sections[base].width, yard }, units.small);
}

/** Boards wanted, and what the yard has for them. */
interface WantedBoards {
  /** Prefix of the cells. */
  readonly name: string;
  readonly width: Cell;
  readonly yard: SoldFor | undefined;
}

/** The widths of boards: as wanted, and as sold where that is narrower. */
export function widthsAsSold(sheet: Sheet, { name, width, yard }: WantedBoards, display: string): BoardWidths {
  if (!yard?.board || yard.board.width.value.gte(sheet.decide(width))) return { width };
  const { width: sold, of } = yard.board;
  const lay = (as: string, value: Quantity): Cell =>
    sheet.find(`${name}.${as}`) ?? sheet.catalog(`${name}.${as}`, value, { label: `width of ${of} as sold`, display });
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
