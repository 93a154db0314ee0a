/**
 * Tree to words and numbers: the formula with names, the same with numbers put in, and the answer.
 * Bracketed so that reading it back, names standing for exact cells, gives the value.
 */
import { type Decimal, trimmed } from "../quantity/decimal.js";
import { inUnit } from "../quantity/quantity.js";
import { pretty, shownValue } from "../quantity/text.js";
import type { Cell } from "./expression.js";
import { type Readable, readable } from "./readable.js";

/** A cell's formula in words and in numbers, and its answer. */
export interface Working {
  /** With the names of cells: `2 × roof.length × rafter.edge`. */
  readonly formula: string;
  /** With their numbers, each rounded as the cell is shown: `2 × 26 ft × 10.06 ft`. */
  readonly numbers: string;
  /** The answer as it is shown: `523.12 ft²`. */
  readonly answer: string;
}

/** The working of a cell, or undefined where it is no formula (a measured, assumed or priced number). */
export function workingOf(cell: Cell, valueIn: (cell: Cell) => Decimal = (c) => c.value): Working | undefined {
  if (!cell.expression) return undefined;
  const tree = readable(cell.expression, cell.display);
  return {
    formula: write(tree, (c) => c.name),
    numbers: write(tree, (c) => shownCell(c, valueIn(c))),
    answer: shownCell(cell, valueIn(cell)),
  };
}

/** One line: formula = numbers = answer, nothing twice. */
export function workingText({ formula, numbers, answer }: Working): string {
  return [formula, numbers, answer].filter((part, i, all) => part !== all[i - 1]).join(" = ");
}

/** A cell's value as people see it. */
export function shownCell(cell: Cell, value: Decimal = cell.value): string {
  return shownValue(inUnit({ value, unit: cell.unit }, cell.display), cell.display);
}

type Level = 0 | 1 | 2;
const LEVEL: Readonly<Partial<Record<Readable["kind"], Level>>> = { plus: 0, minus: 0, sum: 0, times: 1, over: 1 };
const SIGN = { plus: "+", minus: "−", times: "×", over: "÷" } as const;

function write(node: Readable, name: (cell: Cell) => string): string {
  const inner = (part: Readable): string => write(part, name);
  switch (node.kind) {
    case "number":
      return withUnit(node.value, node.unit.symbol === "" ? "" : pretty(node.unit));
    case "factor":
      return withUnit(node.value, node.name);
    case "cell":
      return name(node.cell);
    case "plus":
    case "minus":
    case "times":
    case "over": {
      const level = LEVEL[node.kind] as Level;
      const left = bracketed(node.left, level, name);
      // a − (b + c) and a ÷ (b × c) keep their brackets: the right side must bind tighter
      const right = bracketed(node.right, node.kind === "plus" ? level : ((level + 1) as Level), name);
      return `${left} ${SIGN[node.kind]} ${right}`;
    }
    case "sum":
      return node.items.map((item) => bracketed(item, 0, name)).join(" + ");
    case "least":
    case "greatest":
      return `${node.kind}(${node.items.map(inner).join("; ")})`;
    case "square":
      return `${squarable(node.of, inner(node.of))}²`;
    case "root":
      return `√(${inner(node.of)})`;
    case "roundUp":
      return `roundUp(${inner(node.of)})`;
    case "roundMoney":
      return `toCent(${inner(node.of)})`;
    case "arctangent":
      return `arctan(${inner(node.of)})`;
    case "tangent":
      return `tan(${inner(node.of)})`;
    case "when": {
      const sign = node.comparison === "atLeast" ? "≥" : ">";
      return `if(${inner(node.left)} ${sign} ${inner(node.right)}; ${inner(node.yes)}; ${inner(node.otherwise)})`;
    }
    case "steps":
      return `${node.table.name}[${node.table.columns[node.column]?.name}](${inner(node.need)})`;
  }
}

function bracketed(node: Readable, least: Level, name: (cell: Cell) => string): string {
  const text = write(node, name);
  return (LEVEL[node.kind] ?? 2) < least ? `(${text})` : text;
}

/** (9 in)² and not 9 in², (-3)² and not -3², (a²)² and not a²²; but √(a)² and least(a; b)². */
function squarable(node: Readable, text: string): string {
  const signed = node.kind === "square" || LEVEL[node.kind] !== undefined;
  const word = node.kind === "number" || node.kind === "factor" || node.kind === "cell";
  return signed || (word && /^-| /.test(text)) ? `(${text})` : text;
}

function withUnit(value: Decimal, symbol: string): string {
  const digits = trimmed(value, 12);
  return symbol === "" ? digits : `${digits} ${symbol}`;
}
