/** Lines that repeat: one template for many keys, and the sums of their columns. */
import { type Cell, sumOr } from "./expression.js";
import type { CellNotes, Sheet } from "./sheet.js";

/**
 * Lays one line per key from one template, in the order of the keys.
 *
 * @param block - Name of the block; the template is given `block.key` to name its cells by.
 */
export function layLines<Key, Cells>(
  block: string,
  keys: readonly Key[],
  nameOf: (key: Key) => string,
  template: (key: Key, line: string) => Cells,
): readonly Cells[] {
  return keys.map((key) => template(key, `${block}.${nameOf(key)}`));
}

/** Lays the sum of one column; zero in `empty`'s unit where there are no lines. */
export function layColumnSum<Cells>(
  sheet: Sheet,
  name: string,
  lines: readonly Cells[],
  column: (line: Cells) => Cell,
  empty: string,
  notes: CellNotes = {},
): Cell {
  return sheet.lay(name, sumOr(lines.map(column), empty), notes);
}
