/** How a terminal's lines are made: columns, wrapping, and a cell's value in words. */
import { fixed } from "../../estimate/quantity/decimal.js";
import { inUnit } from "../../estimate/quantity/quantity.js";
import { moneyText, shownValue } from "../../estimate/quantity/text.js";
import type { Cell } from "../../estimate/sheet/expression.js";

/** No line is longer. */
export const COLUMNS = 100;

/** Value in its display unit, without the unit. */
export const bare = (cell: Cell): string =>
  shownValue(inUnit(cell, cell.display), cell.display).split(" ")[0] as string;
/** Person-hours, or hours by the clock. */
export const hours = (cell: Cell): string => fixed(inUnit(cell, cell.unit.dimension === "time1" ? "h" : "person-h"), 1);

/** Rounded to the currency's minor unit. */
export function money(cell: Cell): string {
  const [currency = ""] = cell.display.symbol.split("/");
  return moneyText(cell.value, currency);
}

/** The first column to the left, the others to the right; what is too long goes on in the next line. */
export function columns(texts: readonly string[], widths: readonly number[]): string {
  const lead = /^ */.exec(texts[0] ?? "")?.[0].length ?? 0;
  const cells = texts.map((text, i) => {
    const width = (widths[i] ?? 12) - 1;
    return i === 0 ? wrap(text, lead + 2, width) : wrap(text, 0, width);
  });
  const tall = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: tall }, (_, row) =>
    cells
      .map((lines, i) => {
        const [text, width] = [lines[row] ?? "", widths[i] ?? 12];
        return i === 0 ? text.padEnd(width) : text.padStart(width);
      })
      .join("")
      .trimEnd(),
  ).join("\n");
}

/** Breaks at spaces; the first line keeps its own indent, the others get `indent`. */
export function wrap(text: string, indent: number, width = COLUMNS): string[] {
  const lead = /^ */.exec(text)?.[0] ?? "";
  const lines: string[] = [];
  let line = lead;
  for (const word of text.trim().split(" ")) {
    const joined = line.trim() === "" ? line + word : `${line} ${word}`;
    if (joined.length <= width || line.trim() === "") line = joined;
    else {
      lines.push(line);
      line = " ".repeat(indent) + word;
    }
  }
  return [...lines, line];
}
