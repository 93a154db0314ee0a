/**
 * What a user may put in the place of a cell: one rule for every cell, by what the cell itself tells. A count stays
 * whole and an amount stays in whole cents, for their formulas give nothing else; nothing goes below zero that is not
 * below zero by itself; an assumption stays within a hundred times of what is thought high.
 */
import type { FaultCode } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { inUnit, type Quantity } from "../quantity/quantity.js";
import { parseQuantity, quote, TextFault } from "../quantity/text.js";
import { describeDimension, parseUnit, type Unit } from "../quantity/unit.js";
import type { Cell, Expression, Scaled } from "./expression.js";
import { shownCell } from "./working.js";

/** What the user wrote for a cell: `"14 ft"`, or a value beside its unit. */
export type OverrideText = string | { readonly value: string; readonly unit: string };

/** A cell as it would be without the override. */
export interface Replaced extends Omit<Cell, "value"> {
  /** Undefined where its formula has no finite value. */
  readonly value: Decimal | undefined;
  /** It may go below zero. */
  readonly signed?: boolean;
}

/** What is wrong with an override, and what would be right. */
export interface OverrideFault {
  readonly code: FaultCode;
  readonly wrong: string;
  readonly cure: string;
}

/** Times the high end of an assumption that may be put in its place. Assumption: beyond it a unit was mistaken. */
export const MOST_TIMES_HIGH = 100;

/** The value to put in the cell's place, in the cell's unit, or why it can't be. */
export function valueInPlace(text: OverrideText, replaced: Replaced): Decimal | OverrideFault {
  const found = readOverride(text, replaced);
  if (found instanceof TextFault) return found;
  const value = inUnit(found, replaced.unit);
  return rangeFault(value, replaced, quote(written(text))) ?? value;
}

const written = (text: OverrideText): string => (typeof text === "string" ? text : `${text.value} ${text.unit}`.trim());

function readOverride(text: OverrideText, { unit: like, display }: Replaced): Quantity | TextFault {
  if (like.dimension === "" && typeof text !== "string" && text.unit === "") return parseQuantity(text.value, like);
  // Of a share, a bare 0.6 would be 60 % to one reader and 0.6 % to another.
  const seen = display.symbol === "%" ? display : like;
  if (typeof text !== "string" && !parseUnit(text.unit) && text.unit !== "") {
    return new TextFault(
      "not-a-quantity",
      `There is no unit “${text.unit.slice(0, 24)}”.`,
      `Give ${describeDimension(seen)}.`,
    );
  }
  return parseQuantity(written(text), seen);
}

function rangeFault(value: Decimal, replaced: Replaced, given: string): OverrideFault | undefined {
  const out = (wrong: string, cure: string): OverrideFault => ({ code: "out-of-range", wrong, cure });
  const mayBeNegative = replaced.signed || replaced.value?.isNegative();
  if (value.lt(0) && !mayBeNegative) return out(`${given} is negative.`, "Give zero or more.");
  const places = placesOf(replaced);
  if (places !== undefined && value.decimalPlaces() > places) {
    return replaced.unit.dimension === ""
      ? out(`${given} is no whole number, and this is a count.`, "Give a whole number.")
      : out(`${given} is finer than money is paid in.`, `Give at most ${places} digits after the point.`);
  }
  const most = replaced.range?.high.times(MOST_TIMES_HIGH);
  if (most?.gt(0) && value.gt(most)) {
    const limit = shownCell({ ...replaced, value: most });
    return out(`${given} is more than makes sense here.`, `Give at most ${limit}, a hundred times what is high.`);
  }
  return undefined;
}

const known = new WeakMap<Expression, { readonly places: number | undefined }>();

/**
 * The most digits after the point that a count or an amount of money ever has: none of counts, those of the minor unit of
 * amounts that are rounded to it, and of sums of such. Undefined of all else.
 */
export function placesOf(
  cell: Pick<Replaced, "kind" | "unit" | "display" | "expression" | "value">,
): number | undefined {
  // What is seen as a share is no count, whole though it may be.
  if (cell.display.symbol === "%") return undefined;
  if (cell.expression) return placesIn(cell.expression);
  const counted = cell.unit.dimension === "" && cell.display.symbol === "";
  if (cell.kind === "planned") return counted ? 0 : undefined;
  // Of what stands in the request, only counts are plain numbers without a unit.
  const stated = cell.kind === "input" || cell.kind === "override";
  return counted && stated && cell.value?.isInteger() ? 0 : undefined;
}

function placesIn(expression: Expression): number | undefined {
  const found = known.get(expression);
  if (found) return found.places;
  const places = isCounted(expression.unit) ? derived(expression) : undefined;
  known.set(expression, { places });
  return places;
}

const isCounted = (of: Unit): boolean => of.dimension === "" || /^[A-Z]{3}1$/.test(of.dimension);

function derived(expression: Expression): number | undefined {
  switch (expression.kind) {
    case "number":
      return expression.written.symbol === "%" ? undefined : literal(expression.value, expression.unit);
    case "cell":
      return placesOf(expression.cell);
    case "plus":
    case "minus":
      return widest([expression.left, expression.right]);
    case "times": {
      const sides = [placesIn(expression.left), placesIn(expression.right)];
      return sides.every((side) => side !== undefined) ? Math.max(...(sides as number[])) : undefined;
    }
    case "sum":
    case "least":
    case "greatest":
      return widest(expression.items.map(of));
    case "roundUp":
      return expression.step.symbol === "" && expression.unit.dimension === "" ? 0 : undefined;
    case "roundMoney":
      return expression.places;
    case "when":
      return widest([expression.yes, of(expression.otherwise)]);
    case "steps": {
      const { table, column } = expression;
      const cells = [...table.rows, table.beyond].map(({ columns }) => columns[column]);
      return expression.unit.dimension === "" && cells.every((cell) => cell?.isInteger()) ? 0 : undefined;
    }
    case "square":
      return placesIn(expression.of) === 0 ? 0 : undefined;
    case "over":
    case "root":
    case "arctangent":
    case "tangent":
      return undefined;
  }
}

const of = (scaled: Scaled): Expression => scaled.of;

const literal = (value: Decimal, like: Unit): number | undefined =>
  value.isInteger() && (like.dimension === "" || value.isZero()) ? 0 : undefined;

function widest(parts: readonly Expression[]): number | undefined {
  const all = parts.map(placesIn);
  return all.every((one) => one !== undefined) ? Math.max(0, ...(all as number[])) : undefined;
}
