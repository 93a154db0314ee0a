/** Tree to exact decimal, and a whole sheet again with some cells changed. */
import { FaultError, pointer } from "../faults.js";
import { Decimal, decimal, squareRoot, ZERO } from "../quantity/decimal.js";
import { applyFactor, divideWithFactor, type Factor, removeFactor } from "../quantity/unit.js";
import { wholeNumber } from "../quantity/whole.js";
import { type Cell, cellsIn, type Expression, type Scaled, type StepTable } from "./expression.js";
import { shownCell } from "./working.js";

/** Decimals to which a value is rounded before it is rounded up (design: one node, the same in all readings). */
const ROUND_UP_GUARD = 9;

/** Decimals to which money is rounded before it is rounded to its minor unit: the tail of a division is no tie lost. */
const MONEY_GUARD = 20;

/**
 * Two values are told apart by more than this, or by more than this share of the larger: so much a float keeps,
 * and a spreadsheet likewise takes values for equal whose first digits are. (20 ÷ 3) × 3 is at least 20.
 */
export const TOLD_APART = { by: 1e-9, share: 1e-12 } as const;
const APART_BY = decimal(TOLD_APART.by);
const APART_SHARE = decimal(TOLD_APART.share);

/** The value of a cell that a formula names, in the cell's unit. */
type ValueIn = (cell: Cell) => Decimal;

const RADIAN = Decimal.acos(-1).dividedBy(180);

/** Thrown by a division by zero; `evaluateCell` turns it into a fault that names the cell. */
export class DivisionByZero extends Error {}

/**
 * Value of a cell's formula in the cell's unit.
 * @throws FaultError where it has no finite value, naming the cell and what it was worked out from.
 */
export function evaluateCell(name: string, expression: Expression, valueIn: ValueIn): Decimal {
  try {
    const value = evaluate(expression, valueIn);
    if (value.isFinite()) return value;
  } catch (error) {
    if (error instanceof FaultError) throw placed(error, cellsIn(expression), valueIn);
    if (!(error instanceof DivisionByZero)) throw error;
  }
  const cells = cellsIn(expression);
  const from = cells.map((cell) => `${cell.name} = ${shownCell(cell, valueIn(cell))}`);
  const told = from.length > 0 ? ` (${from.join(", ").slice(0, 200)})` : "";
  throw new FaultError([
    {
      code: "out-of-range",
      at: blamed(cells, valueIn),
      wrong: `The cell ${name} has no finite value${told}.`,
      cure: "Give the values it is worked out from in a sensible range; none of its divisors may be zero.",
    },
  ]);
}

/** The faults of a formula that name no place, with the place of what the formula hangs on. */
function placed(error: FaultError, cells: readonly Cell[], valueIn: ValueIn): FaultError {
  return new FaultError(error.faults.map((fault) => ({ ...fault, at: fault.at || blamed(cells, valueIn) })));
}

/**
 * Where the request may have put what broke a formula: the nearest override or assumption that leads to it, a zero above
 * all; "" where there is none.
 */
export function blamed(from: readonly Cell[], valueIn: ValueIn): string {
  const all = new Set(from);
  // A set is walked as it grows: nearest first.
  for (const cell of all) {
    if (cell.kind === "override" || !cell.expression) continue;
    for (const part of cellsIn(cell.expression)) all.add(part);
  }
  const given = [...all].filter(({ kind }) => kind === "override" || kind === "assumption");
  const zero = given.find((cell) => valueIn(cell).isZero());
  const found =
    given.find((cell) => cell.kind === "override" && valueIn(cell).isZero()) ??
    given.find(({ kind }) => kind === "override") ??
    zero;
  return found ? pointer(found.kind === "override" ? "/overrides" : "/assumptions", found.name) : "";
}

/** Value of a formula in its own unit. `valueIn` gives the value of each cell that it names. */
export function evaluate(expression: Expression, valueIn: ValueIn): Decimal {
  switch (expression.kind) {
    case "number":
      return expression.value;
    case "cell":
      return valueIn(expression.cell);
    case "plus":
      return evaluate(expression.left, valueIn).plus(rightIn(expression, valueIn));
    case "minus":
      return evaluate(expression.left, valueIn).minus(rightIn(expression, valueIn));
    case "times":
      return applyFactor(
        evaluate(expression.left, valueIn).times(evaluate(expression.right, valueIn)),
        expression.factor,
      );
    case "over":
      return divided(evaluate(expression.left, valueIn), evaluate(expression.right, valueIn), expression.factor);
    case "sum":
      return allScaled(expression.items, valueIn).reduce((total, item) => total.plus(item), ZERO);
    case "least":
      return Decimal.min(...allScaled(expression.items, valueIn));
    case "greatest":
      return Decimal.max(...allScaled(expression.items, valueIn));
    case "square": {
      const side = evaluate(expression.of, valueIn);
      return applyFactor(side.times(side), expression.factor);
    }
    case "root":
      return squareRoot(evaluate(expression.of, valueIn));
    case "roundUp":
      return removeFactor(upToWhole(inFactor(expression, valueIn)), expression.factor);
    case "roundMoney":
      return evaluate(expression.of, valueIn).toDecimalPlaces(MONEY_GUARD).toDecimalPlaces(expression.places);
    case "arctangent":
      return remembered("arctangent", inFactor(expression, valueIn));
    case "tangent":
      return remembered("tangent", inFactor(expression, valueIn));
    case "when": {
      const order = compared(evaluate(expression.left, valueIn), inFactor(expression.right, valueIn));
      const holds = expression.comparison === "atLeast" ? order >= 0 : order > 0;
      return holds ? evaluate(expression.yes, valueIn) : inFactor(expression.otherwise, valueIn);
    }
    case "steps":
      return stepValue(expression.table, expression.column, wholeNumber(upToWhole(inFactor(expression.need, valueIn))));
  }
}

// Functions of the module and not of a call: this is the innermost loop, and making closures cost half of it.

/** A part in its neighbours' unit. */
function inFactor({ of, factor }: Scaled, valueIn: ValueIn): Decimal {
  return applyFactor(evaluate(of, valueIn), factor);
}

function rightIn({ right, factor }: { right: Expression; factor: Factor }, valueIn: ValueIn): Decimal {
  return applyFactor(evaluate(right, valueIn), factor);
}

function allScaled(items: readonly Scaled[], valueIn: ValueIn): Decimal[] {
  return items.map((item) => inFactor(item, valueIn));
}

const upToWhole = (value: Decimal): Decimal => value.toDecimalPlaces(ROUND_UP_GUARD).ceil();

const angles = new Map<string, Decimal>();
const MOST_ANGLES = 500;

/** Degrees of a tangent, or tangent of degrees; each takes as long as a hundred products, and the same ones come again. */
function remembered(kind: "arctangent" | "tangent", value: Decimal): Decimal {
  const key = `${kind} ${value.toFixed()}`;
  const known = angles.get(key);
  if (known) return known;
  const found = kind === "arctangent" ? value.atan().dividedBy(RADIAN) : value.times(RADIAN).tan();
  if (angles.size >= MOST_ANGLES) angles.clear();
  angles.set(key, found);
  return found;
}

/** 1, 0 or −1 as the left value is above the right one, as good as equal to it, or below it. */
function compared(left: Decimal, right: Decimal): number {
  const off = left.minus(right);
  // Nearly always they are far apart, which the powers of ten tell without a multiplication.
  if (off.e > APART_BY.e && off.e > Math.max(left.e, right.e) + APART_SHARE.e + 1) return off.cmp(ZERO);
  const size = off.abs();
  if (size.lte(APART_BY) || size.lte(left.abs().times(APART_SHARE))) return 0;
  return size.lte(right.abs().times(APART_SHARE)) ? 0 : off.cmp(ZERO);
}

function divided(left: Decimal, right: Decimal, factor: Factor): Decimal {
  if (right.isZero()) throw new DivisionByZero();
  return divideWithFactor(left, right, factor);
}

/** Looks a need up, in whole steps; zero or less needs nothing. */
export function stepValue(table: StepTable, column: number, need: number): Decimal {
  if (need <= 0) return ZERO;
  const { upTo, size } = table.beyond;
  const repeats = need > upTo ? Math.ceil((need - upTo) / size) : 0;
  const row = stepRow(table, need - repeats * size);
  const base = row?.columns[column] ?? ZERO;
  return repeats === 0 ? base : base.plus((table.beyond.columns[column] ?? ZERO).times(repeats));
}

/** Last row that starts at or before the need; none for a need of zero or less. */
export function stepRow(table: StepTable, need: number): StepTable["rows"][number] | undefined {
  if (need <= 0) return undefined;
  let low = 0;
  let high = table.rows.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((table.rows[middle]?.from ?? Number.POSITIVE_INFINITY) <= need) low = middle;
    else high = middle - 1;
  }
  return table.rows[low];
}

/**
 * Works a sheet out again with some cells changed; in the order they were laid.
 * A changed cell keeps the given value, whatever its formula says.
 *
 * @param changes - By name, in the cell's unit.
 * @returns the value of each of the cells, in its unit.
 * @throws FaultError where a cell has no finite value.
 */
export function evaluateAgain(cells: readonly Cell[], changes: ReadonlyMap<string, Decimal>): ValueIn {
  // Only what moved is kept beside the cells: the maps took a sixth of the time.
  const moved = new Map<Cell, Decimal>();
  const valueIn = (cell: Cell): Decimal => moved.get(cell) ?? cell.value;
  for (const cell of cells) {
    const value = changes.get(cell.name) ?? againIn(cell, moved, valueIn);
    if (value !== cell.value) moved.set(cell, value);
  }
  return valueIn;
}

/** The value that the cell has already, where nothing has moved that its formula names. */
function againIn(cell: Cell, moved: ReadonlyMap<Cell, Decimal>, valueIn: ValueIn): Decimal {
  const { expression } = cell;
  if (!expression || cell.kind === "override") return cell.value;
  for (const part of cellsIn(expression)) {
    if (moved.has(part)) return evaluateCell(cell.name, expression, valueIn);
  }
  return cell.value;
}
