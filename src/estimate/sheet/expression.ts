/**
 * The formula of a cell, as a tree over cells already laid. The unit of every node is worked out, and
 * checked, as the node is built: feet plus dollars never becomes a formula.
 *
 * Every reading of the tree (value, floats, working, workbook formula) is one file with one exhaustive `switch`.
 */
import { Decimal, decimal } from "../quantity/decimal.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly } from "../quantity/text.js";
import { type Factor, factorBetween, held, NUMBER, type Unit, unit, unitOver, unitTimes } from "../quantity/unit.js";

/** Where a cell's value comes from. */
export type CellKind = "input" | "assumption" | "catalog" | "formula" | "planned" | "override";

/** One number of the sheet, with a name that is laid once. Values are in `unit`; people see `display`. */
export interface Cell {
  readonly name: string;
  readonly label: string;
  readonly kind: CellKind;
  readonly unit: Unit;
  readonly display: Unit;
  /** Effective value: what the user put in its place, where there is an override. */
  readonly value: Decimal;
  /** Absent on inputs, assumptions, catalog and planned cells. Kept beneath an override. */
  readonly expression?: Expression | undefined;
  /** Where the number comes from: a publication, the user's price list, or that it is an assumption. */
  readonly source?: string | undefined;
  /** Assumptions only, in `unit`. */
  readonly range?: { readonly low: Decimal; readonly high: Decimal } | undefined;
  /** Set where it can't be overridden, although it is no plan: it is told together with what it follows from. */
  readonly fixed?: true | undefined;
  /** Planned cells only. */
  readonly proof?: PlanProof | undefined;
}

/** What an optimiser proved about the number that it put in a planned cell. */
export interface PlanProof {
  /** No plan of the covered family is better than this; in the cell's unit. */
  readonly bound?: Decimal;
  /** (value − bound) ÷ value, as a share. */
  readonly gap?: Decimal;
  /** What the bound covers, in words. */
  readonly covers: string;
}

/** A table of needs: row i holds from `rows[i].from` (whole steps of the need) up to the next row. */
export interface StepTable {
  readonly name: string;
  /** The need is counted in whole steps of this unit. */
  readonly stepUnit: Unit;
  readonly rows: readonly { readonly from: number; readonly columns: readonly Decimal[] }[];
  /** Names and units of the columns. */
  readonly columns: readonly { readonly name: string; readonly unit: Unit }[];
  /** Past the last row's reach (`upTo`), whole repeats of `size` steps are added, each adding `columns`. */
  readonly beyond: { readonly upTo: number; readonly size: number; readonly columns: readonly Decimal[] };
}

/** How two values are compared: near ties count as at least. */
export type Comparison = "atLeast" | "above";

/** A formula as a tree. Each node carries its unit, checked when it is built. */
export type Expression =
  | { readonly kind: "number"; readonly unit: Unit; readonly value: Decimal; readonly written: Unit }
  | { readonly kind: "cell"; readonly unit: Unit; readonly cell: Cell }
  | BinaryExpression
  | { readonly kind: "sum" | "least" | "greatest"; readonly unit: Unit; readonly items: readonly Scaled[] }
  | { readonly kind: "square"; readonly unit: Unit; readonly of: Expression; readonly factor: Factor }
  | { readonly kind: "root"; readonly unit: Unit; readonly of: Expression }
  | {
      readonly kind: "roundUp";
      readonly unit: Unit;
      readonly of: Expression;
      readonly step: Unit;
      readonly factor: Factor;
    }
  | { readonly kind: "roundMoney"; readonly unit: Unit; readonly of: Expression; readonly places: number }
  | { readonly kind: "arctangent" | "tangent"; readonly unit: Unit; readonly of: Expression; readonly factor: Factor }
  | {
      readonly kind: "when";
      readonly unit: Unit;
      readonly comparison: Comparison;
      readonly left: Expression;
      readonly right: Scaled;
      readonly yes: Expression;
      readonly otherwise: Scaled;
    }
  | {
      readonly kind: "steps";
      readonly unit: Unit;
      readonly need: Scaled;
      readonly table: StepTable;
      readonly column: number;
    };

interface BinaryExpression {
  readonly kind: "plus" | "minus" | "times" | "over";
  readonly unit: Unit;
  readonly left: Expression;
  readonly right: Expression;
  /** plus, minus: turns `right` into `left`'s unit. times, over: turns the result into `unit`. */
  readonly factor: Factor;
}

/** An expression and the factor that brings it to its neighbours' unit. */
export interface Scaled {
  readonly of: Expression;
  readonly factor: Factor;
}

/** A cell, or a formula over cells. */
export type Operand = Cell | Expression;

// A plain look at the field: "in" takes several times as long, and this is asked of every operand of a sheet.
const isCell = (operand: Operand): operand is Cell => (operand as Partial<Cell>).name !== undefined;

/** An operand as a tree: a cell becomes the node that names it. */
export function expressionOf(operand: Operand): Expression {
  return isCell(operand) ? { kind: "cell", unit: operand.unit, cell: operand } : operand;
}

const constants = new Map<string, Expression>();
/** Constants are written in our own code; only a bug could make more. */
const MOST_CONSTANTS = 10_000;

/** A constant of the trade or of arithmetic: `number("2")`, `number("8 in")`. Shown as it is written. */
export function number(text: string): Expression {
  const known = constants.get(text);
  if (known) return known;
  const { value, unit: of, written } = exactly(text);
  const constant: Expression = { kind: "number", unit: of, value, written: written ?? of };
  if (constants.size < MOST_CONSTANTS) constants.set(text, constant);
  return constant;
}

/** A quantity that was given, as a part of a formula; shown in the unit that it was given in. */
export function given({ value, unit: of, written = of }: Quantity): Expression {
  return { kind: "number", unit: of, value, written };
}

/** A count of things, such as the number of cells in a column. */
export function count(of: number): Expression {
  return { kind: "number", unit: NUMBER, value: decimal(of), written: NUMBER };
}

function binary(kind: "plus" | "minus", left: Expression, right: Expression): Expression {
  return { kind, unit: left.unit, left, right, factor: factorBetween(right.unit, left.unit) };
}

/** Throws when the operands measure different things: a bug in the caller. */
export function plus(first: Operand, ...rest: readonly Operand[]): Expression {
  return rest.reduce<Expression>((sum, next) => binary("plus", sum, expressionOf(next)), expressionOf(first));
}

/** The first less all the others, in the unit of the first. */
export function minus(first: Operand, ...rest: readonly Operand[]): Expression {
  return rest.reduce<Expression>((left, next) => binary("minus", left, expressionOf(next)), expressionOf(first));
}

function product(kind: "times" | "over", left: Expression, right: Expression): Expression {
  const raw = kind === "times" ? unitTimes(left.unit, right.unit) : unitOver(left.unit, right.unit);
  const of = held(raw);
  return { kind, unit: of, left, right, factor: factorBetween(raw, of) };
}

/** Product of all. The unit is the product of theirs. */
export function times(first: Operand, ...rest: readonly Operand[]): Expression {
  return rest.reduce<Expression>((left, next) => product("times", left, expressionOf(next)), expressionOf(first));
}

/** Quotient. The unit is the quotient of theirs. */
export function over(left: Operand, right: Operand): Expression {
  return product("over", expressionOf(left), expressionOf(right));
}

function many(kind: "sum" | "least" | "greatest", operands: readonly Operand[]): Expression {
  const items = operands.map(expressionOf);
  const first = items[0];
  if (!first) throw new Error(`${kind} of nothing has no unit`);
  return { kind, unit: first.unit, items: items.map((of) => ({ of, factor: factorBetween(of.unit, first.unit) })) };
}

/** Sum of a column. An empty column needs its unit: see `sumOr`. */
export const sum = (operands: readonly Operand[]): Expression => many("sum", operands);

/** The least of values of one dimension, in the unit of the first. */
export const least = (...operands: readonly Operand[]): Expression => many("least", operands);

/** The greatest of values of one dimension, in the unit of the first. */
export const greatest = (...operands: readonly Operand[]): Expression => many("greatest", operands);

/** Sum of a column that may be empty: then zero in the given unit. */
export function sumOr(operands: readonly Operand[], empty: string): Expression {
  return operands.length > 0 ? sum(operands) : number(`0 ${empty}`);
}

/** A value times itself. */
export function square(operand: Operand): Expression {
  const of = expressionOf(operand);
  const raw = unitTimes(of.unit, of.unit);
  const result = held(raw);
  return { kind: "square", unit: result, of, factor: factorBetween(raw, result) };
}

/** Square root of an area (a length) or of a number. */
export function root(operand: Operand): Expression {
  const of = expressionOf(operand);
  const lengths = of.unit.dimension === "length2" ? unit("mm") : of.unit.dimension === "" ? NUMBER : undefined;
  if (!lengths) throw new Error(`no root of ${of.unit.symbol}`);
  return { kind: "root", unit: lengths, of };
}

/** Up to the next whole `step`: the value is first rounded to nine decimals, so that 12.000000000000001 is 12. */
export function roundUp(operand: Operand, step = ""): Expression {
  const of = expressionOf(operand);
  const whole = unit(step);
  return { kind: "roundUp", unit: of.unit, of, step: whole, factor: factorBetween(of.unit, whole) };
}

/** To the currency's minor unit (ISO 4217), half away from zero. Line amounts only, once. */
export function roundMoney(operand: Operand, places: number): Expression {
  const of = expressionOf(operand);
  if (!/^[A-Z]{3}1$/.test(of.unit.dimension)) throw new Error(`${of.unit.symbol} is no money`);
  return { kind: "roundMoney", unit: of.unit, of, places };
}

/** Angle whose tangent is the operand. */
export function arctangent(operand: Operand): Expression {
  const of = expressionOf(operand);
  return { kind: "arctangent", unit: unit("deg"), of, factor: factorBetween(of.unit, NUMBER) };
}

/** Tangent of an angle. */
export function tangent(operand: Operand): Expression {
  const of = expressionOf(operand);
  return { kind: "tangent", unit: NUMBER, of, factor: factorBetween(of.unit, unit("deg")) };
}

/** One formula or another, by a comparison that stays live in every reading. */
export function when(
  left: Operand,
  comparison: Comparison,
  right: Operand,
  then: Operand,
  otherwise: Operand,
): Expression {
  const [l, r, t, o] = [left, right, then, otherwise].map(expressionOf) as [
    Expression,
    Expression,
    Expression,
    Expression,
  ];
  return {
    kind: "when",
    unit: t.unit,
    comparison,
    left: l,
    right: { of: r, factor: factorBetween(r.unit, l.unit) },
    yes: t,
    otherwise: { of: o, factor: factorBetween(o.unit, t.unit) },
  };
}

/**
 * A column of a step table at a need: the least cost of covering it, or how many of one pack.
 * @throws Error when the table is out of form: its rows must begin at 0 or 1 and go up.
 */
export function steps(need: Operand, table: StepTable, column: number): Expression {
  const of = expressionOf(need);
  const heading = table.columns[column];
  if (!heading) throw new Error(`${table.name} has no column ${column}`);
  const starts = table.rows.map((row) => row.from);
  if (![0, 1].includes(starts[0] ?? -1) || starts.some((from, i) => i > 0 && from <= (starts[i - 1] ?? 0))) {
    throw new Error(`the rows of ${table.name} do not begin at 0 or 1 and go up`);
  }
  return {
    kind: "steps",
    unit: heading.unit,
    need: { of, factor: factorBetween(of.unit, table.stepUnit) },
    table,
    column,
  };
}

/** Direct parts of a node, in the order they are written. */
export function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.kind) {
    case "number":
    case "cell":
      return [];
    case "plus":
    case "minus":
    case "times":
    case "over":
      return [expression.left, expression.right];
    case "sum":
    case "least":
    case "greatest":
      return expression.items.map((item) => item.of);
    case "square":
    case "root":
    case "roundUp":
    case "roundMoney":
    case "arctangent":
    case "tangent":
      return [expression.of];
    case "when":
      return [expression.left, expression.right.of, expression.yes, expression.otherwise.of];
    case "steps":
      return [expression.need.of];
  }
}

const named = new WeakMap<Expression, readonly Cell[]>();

/** Cells that a formula names, each once, in the order they are written. Worked out once a formula. */
export function cellsIn(expression: Expression): readonly Cell[] {
  const known = named.get(expression);
  if (known) return known;
  const found = new Set<Cell>();
  collect(expression, found);
  const cells = [...found];
  named.set(expression, cells);
  return cells;
}

function collect(node: Expression, found: Set<Cell>): void {
  if (node.kind === "cell") found.add(node.cell);
  for (const part of partsOf(node)) collect(part, found);
}

/** The cells that some cells are worked out from, through all formulas, and themselves; in the order they were laid. */
export function leadingTo(cells: readonly Cell[], wanted: readonly Cell[]): Cell[] {
  const needed = new Set(wanted);
  const found: Cell[] = [];
  for (let i = cells.length - 1; i >= 0; i--) {
    const cell = cells[i] as Cell;
    if (!needed.has(cell)) continue;
    found.push(cell);
    if (cell.expression && cell.kind !== "override") for (const part of cellsIn(cell.expression)) needed.add(part);
  }
  return found.reverse();
}

/** True of a formula that hangs on no cell: a sum of nothing, whatever stands in its place. */
export const isNothing = ({ expression }: Cell): boolean =>
  expression !== undefined && cellsIn(expression).length === 0;

/** π to forty digits: exact far beyond any figure shown. */
export const PI: Expression = { kind: "number", unit: NUMBER, value: Decimal.acos(-1), written: NUMBER };
