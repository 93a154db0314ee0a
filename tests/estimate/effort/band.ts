/** Low and high end of figures of an estimate: every assumption at whichever end makes them less, and more. */
import type { decimal } from "../../../src/estimate/quantity/decimal.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import type { Sheet } from "../../../src/estimate/sheet/sheet.js";

export interface Band {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * Band of a figure that is made of cells.
 * @param figure - Made of the values of cells, each asked for by name and given in its held unit.
 * @param moved - Which assumptions may move; all where nothing is said.
 */
export function bandOf(
  sheet: Sheet,
  figure: (value: (name: string) => number) => number,
  moved: (name: string) => boolean = () => true,
): Band {
  const spread = sheet.cells.filter((cell) => cell.range && moved(cell.name));
  const at = (values: ReadonlyMap<string, ReturnType<typeof decimal>>): number => {
    const again = evaluateAgain(sheet.cells, values);
    return figure((name) => again(sheet.find(name) as Cell).toNumber() ?? 0);
  };
  const likely = at(new Map());
  const side = (cell: Cell, wanted: "less" | "more") => {
    const range = cell.range as NonNullable<Cell["range"]>;
    const [low, high] = [range.low, range.high].map((value) => at(new Map([[cell.name, value]]))) as [number, number];
    return [cell.name, low < high === (wanted === "less") ? range.low : range.high] as const;
  };
  const end = (wanted: "less" | "more") => at(new Map(spread.map((cell) => side(cell, wanted))));
  return { low: end("less"), likely, high: end("more") };
}
