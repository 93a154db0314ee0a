/** The sheet as JSON: blocks of lines of cells. */
import { z } from "zod";
import { measureOf } from "../../../catalog/measures.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import type { Sheet } from "../../../estimate/sheet/sheet.js";
import { workingText } from "../../../estimate/sheet/working.js";
import { blocksOf, type Line } from "../blocks.js";
import { decimalField, digits } from "./figures.js";

/** How much of the sheet is shown. */
export interface SheetView {
  /** Every cell, not only what a request may change as it stands. */
  readonly whole: boolean;
  /** Formulas, sources, ranges and what plans are worth. */
  readonly workings: boolean;
}

const CellSchema = z
  .strictObject({
    name: z.string().describe("Name of the cell, laid once."),
    label: z.string().describe("In words."),
    kind: z
      .enum(["input", "assumption", "catalog", "formula", "planned", "override"])
      .describe("Where the number comes from; override: put there by the request."),
    value: decimalField("The value in `unit`, rounded to what makes sense on paper; what was given is not rounded."),
    unit: z.string().describe("The unit; empty for a plain number."),
    structural: z
      .literal(true)
      .optional()
      .describe("The estimate branches on it: changing it takes a new estimate, not only new arithmetic."),
    working: z.string().optional().describe("With include=workings: the formula, in names, in numbers, and its value."),
    usedBy: z
      .array(z.string())
      .optional()
      .describe("With include=workings: names of the cells whose formulas name it; what moves when it is overridden."),
    source: z.string().optional().describe("With include=workings: where it comes from."),
    low: decimalField("With include=workings: as low as it reasonably comes, in `unit`.").optional(),
    high: decimalField("With include=workings: as high as it reasonably comes, in `unit`.").optional(),
    measure: z.string().optional().describe("With include=workings: how to replace it by a figure of your own."),
    covers: z.string().optional().describe("With include=workings: what the plan behind it was compared with."),
  })
  .meta({ id: "Cell", description: "One number of the estimate." });

const cells = (describe: string) => z.array(CellSchema).describe(describe);

const LineSchema = z
  .strictObject({
    name: z.string().describe("What the names of its cells begin with."),
    title: z.string().describe("In words."),
    cells: cells("Its cells, in the order laid."),
  })
  .meta({ id: "SheetLine", description: "Cells about one thing." });

const BlockSchema = z
  .strictObject({
    name: z.string().describe("Name of the block."),
    title: z.string().describe("In words."),
    cells: cells("Cells that belong to no line."),
    lines: z.array(LineSchema).describe("Its lines."),
  })
  .meta({ id: "SheetBlock", description: "A block of the sheet." });

export const SheetSchema = z
  .strictObject({
    whole: z
      .boolean()
      .describe(
        "False: only inputs (but those of the logs, and sections, which the cut list has), assumptions, prices and overrides. See include=sheet.",
      ),
    blocks: z.array(BlockSchema).describe("Blocks, in the order laid."),
  })
  .meta({ id: "Sheet", description: "The estimate as a table of blocks of lines of cells." });

/** The sheet as asked for; lines and blocks of which nothing is shown are left out. */
export function shownSheet(sheet: Sheet, view: SheetView): z.output<typeof SheetSchema> {
  const users = view.workings ? sheet.users() : undefined;
  const shownLine = ({ name, title, cells }: Line, isShown: (cell: Cell) => boolean) => ({
    name,
    title,
    cells: cells.filter((cell) => view.whole || isShown(cell)).map((cell) => shownCell(sheet, cell, users)),
  });
  const blocks = blocksOf(sheet).map(({ lines, ...own }) => {
    const inLine = ECHOES.has(own.name) ? isNews : isGiven;
    const shown = lines.map((line) => shownLine(line, inLine));
    return { ...shownLine(own, isGiven), lines: shown.filter(({ cells }) => cells.length > 0) };
  });
  return { whole: view.whole, blocks: blocks.filter(({ cells, lines }) => cells.length + lines.length > 0) };
}

/** Blocks of which the request or the cut list tells each line already. */
const ECHOES: ReadonlySet<string> = new Set(["logs", "sections"]);
const isNews = (cell: Cell): boolean => isGiven(cell) && cell.kind !== "input";
/** A price is given, too, where it comes of a rate. */
const isGiven = ({ kind, name }: Cell): boolean =>
  name.startsWith("price.") || (kind !== "formula" && kind !== "planned");

type Users = ReturnType<Sheet["users"]>;

/** @param users - Where workings are shown. */
function shownCell(sheet: Sheet, cell: Cell, users: Users | undefined): z.output<typeof CellSchema> {
  return {
    name: cell.name,
    label: cell.label,
    kind: cell.kind,
    value: digits(cell),
    unit: cell.display.symbol,
    ...(sheet.isStructural(cell) && { structural: true as const }),
    ...(users && workingsOf(sheet, cell, users.get(cell) ?? [])),
  };
}

/** What the user put in the place of a formula has no working: the formula's own value is another. */
function workingsOf(sheet: Sheet, cell: Cell, users: readonly Cell[]): Partial<z.output<typeof CellSchema>> {
  const measure = cell.range && measureOf(cell.name);
  const working = cell.kind === "formula" ? sheet.working(cell) : undefined;
  return {
    ...(working && { working: workingText(working) }),
    ...(users.length > 0 && { usedBy: users.map(({ name }) => name) }),
    ...(cell.source !== undefined && { source: cell.source }),
    ...(cell.range && { low: digits(cell, cell.range.low), high: digits(cell, cell.range.high) }),
    ...(measure && { measure }),
    ...(cell.proof && { covers: cell.proof.covers }),
  };
}
