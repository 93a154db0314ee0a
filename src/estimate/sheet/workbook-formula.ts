/** Tree to a live spreadsheet formula (OpenFormula functions that every spreadsheet program knows). */
import { type Decimal, trimmed } from "../quantity/decimal.js";
import type { Cell, StepTable } from "./expression.js";
import { type Readable, readable } from "./readable.js";

/**
 * The formula of a cell, without the leading "=", or undefined where it is no formula.
 * @param reference - Address or defined name under which the workbook keeps a cell, in its display unit.
 */
export function workbookFormula(cell: Cell, reference: (cell: Cell) => string): string | undefined {
  return cell.expression && write(readable(cell.expression, cell.display), reference);
}

const SIGN = { plus: "+", minus: "-", times: "*", over: "/" } as const;

function write(node: Readable, reference: (cell: Cell) => string): string {
  const inner = (part: Readable): string => write(part, reference);
  switch (node.kind) {
    case "number":
    case "factor":
      return literal(node.value);
    case "cell":
      return reference(node.cell);
    case "plus":
    case "minus":
    case "times":
    case "over":
      return `(${inner(node.left)}${SIGN[node.kind]}${inner(node.right)})`;
    case "sum":
      return `SUM(${node.items.map(inner).join(",")})`;
    case "least":
      return `MIN(${node.items.map(inner).join(",")})`;
    case "greatest":
      return `MAX(${node.items.map(inner).join(",")})`;
    case "square":
      return `(${inner(node.of)}^2)`;
    case "root":
      return `SQRT(${inner(node.of)})`;
    case "roundUp":
      return `CEILING(ROUND(${inner(node.of)},9),1)`;
    case "roundMoney":
      return `ROUND(${inner(node.of)},${node.places})`;
    case "arctangent":
      return `DEGREES(ATAN(${inner(node.of)}))`;
    case "tangent":
      return `TAN(RADIANS(${inner(node.of)}))`;
    case "when": {
      const sign = node.comparison === "atLeast" ? ">=" : ">";
      return `IF(${inner(node.left)}${sign}${inner(node.right)},${inner(node.yes)},${inner(node.otherwise)})`;
    }
    case "steps":
      return stepFormula(node.table, node.column, inner(node.need));
  }
}

/** Whole repeats past the table's reach, and a look-up of what remains; a need of nothing costs nothing. */
function stepFormula(table: StepTable, column: number, need: string): string {
  const q = `CEILING(ROUND(${need},9),1)`;
  const { upTo, size, columns } = table.beyond;
  const repeats = `MAX(0,CEILING((${q}-${upTo})/${size},1))`;
  const from = `{-1E9,${table.rows.map((row) => row.from).join(",")}}`;
  const values = `{0,${table.rows.map((row) => literal(row.columns[column] as Decimal)).join(",")}}`;
  return `(LOOKUP(${q}-${repeats}*${size},${from},${values})+${repeats}*${literal(columns[column] as Decimal)})`;
}

const literal = (value: Decimal): string => (value.isNegative() ? `(${trimmed(value, 30)})` : trimmed(value, 30));
