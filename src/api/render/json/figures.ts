/** Cells as JSON: a decimal as text, its unit, and the name of the cell that holds it. */
import { z } from "zod";
import { fixed, trimmed } from "../../../estimate/quantity/decimal.js";
import { inUnit } from "../../../estimate/quantity/quantity.js";
import { type MeasureSystem, marked, markedSmall, placesFor } from "../../../estimate/quantity/text.js";
import { minorDigits } from "../../../estimate/quantity/unit.js";
import type { Cell } from "../../../estimate/sheet/expression.js";

/** A decimal of an answer; as long as it takes. */
export const decimalField = (describe: string) =>
  z
    .string()
    .regex(/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/)
    .describe(describe);

const figureFields = {
  cell: z.string().describe("Name of its cell: for overrides, and for lines of your own."),
  value: decimalField("The value in `unit`, rounded to what makes sense on paper; what was given is not rounded."),
  unit: z.string().describe("The unit; empty for a plain number."),
};

/** One number of the sheet. */
export const FigureSchema = z
  .strictObject(figureFields)
  .meta({ id: "Figure", description: "A number of the sheet, with its unit and the name of its cell." });
export type Figure = z.output<typeof FigureSchema>;

/** One length of the sheet. */
export const LengthSchema = z
  .strictObject({ ...figureFields, marked: z.string().describe("As it is marked on the piece, to 1/16 in or 1 mm.") })
  .meta({ id: "LengthFigure", description: "A length of the sheet, also as a person marks it." });
export type LengthFigure = z.output<typeof LengthSchema>;

/** A figure with words. */
export const LabeledSchema = z
  .strictObject({ label: z.string().describe("What it is, in words."), ...figureFields })
  .meta({ id: "LabeledFigure", description: "A number of the sheet with its words." });

const GIVEN: ReadonlySet<Cell["kind"]> = new Set(["input", "assumption", "catalog", "override"]);
/** As many as a request may have: what was given comes back unchanged. */
const MOST_PLACES = 9;

/** A cell's value in its display unit: money to its minor unit, what was given in full, the rest as on paper. */
export function digits(cell: Cell, value = cell.value): string {
  const found = inUnit({ value, unit: cell.unit }, cell.display);
  const places = placesFor(cell.display);
  const money = minorDigits(cell.display.symbol) !== undefined;
  if (money && found.decimalPlaces() <= places) return fixed(found, places);
  if (GIVEN.has(cell.kind)) return trimmed(found, MOST_PLACES);
  return money ? fixed(found, places) : trimmed(found, places);
}

/** A cell's value and unit alone. */
export const amount = (cell: Cell) => ({ value: digits(cell), unit: cell.display.symbol });

/** A cell as a figure. */
export function figure(cell: Cell): Figure {
  return { cell: cell.name, ...amount(cell) };
}

/** A cell that may be absent. */
export const figureOrNull = (cell: Cell | undefined): Figure | null => (cell ? figure(cell) : null);

/** A cell with its own words. */
export const labeled = (cell: Cell): z.output<typeof LabeledSchema> => ({ label: cell.label, ...figure(cell) });

/** A length of a piece or a building: feet and inches, or millimetres. */
export function lengthFigure(cell: Cell, system: MeasureSystem): LengthFigure {
  return { ...figure(cell), marked: marked({ value: cell.value, unit: cell.unit }, system) };
}

/** A length across a piece as it is marked: inches without feet, or millimetres. */
export const markedOf = (cell: Cell, system: MeasureSystem): string =>
  markedSmall({ value: cell.value, unit: cell.unit }, system);

/** A length across a piece. */
export function smallFigure(cell: Cell, system: MeasureSystem): LengthFigure {
  return { ...figure(cell), marked: markedOf(cell, system) };
}
