/** What the cells of a sheet are called away from the block that they stand in. */
import type { Model, SheetCell } from "./model.js";
import { capital } from "./words.js";

/** A cell, and what it is called. */
export interface Titled {
  readonly cell: SheetCell;
  readonly title: string;
}

/** Cells by their names, each once. Titles say which "amount" is meant, and whose where several are called alike. */
export function titledCells(sheets: readonly Model["sheet"][], names: ReadonlySet<string>): Titled[] {
  const left = new Set(names);
  const found = sheets.flatMap((sheet) =>
    (sheet?.blocks ?? []).flatMap(({ title: block, cells, lines }) => [
      ...cells
        .filter(({ name }) => left.delete(name))
        .map((cell) => ({ cell, title: capital(cell.label), full: `${capital(block)}: ${cell.label}` })),
      ...lines.flatMap((line) =>
        line.cells.filter(({ name }) => left.delete(name)).map((cell) => inLine(block, line.title, cell)),
      ),
    ]),
  );
  const alike = (title: string) => found.filter((one) => one.title === title).length > 1;
  return found.map(({ cell, title, full }) => ({ cell, title: alike(title) ? full : title }));
}

/** What a line costs is called like the line. */
function inLine(block: string, line: string, cell: SheetCell): Titled & { readonly full: string } {
  const words = cell.label === "amount" ? line : `${line}: ${cell.label}`;
  return { cell, title: capital(words), full: `${capital(block)}: ${words}` };
}
