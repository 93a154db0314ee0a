/** Values that a cell may be overridden with. */
import { type Decimal, decimal } from "../../src/estimate/quantity/decimal.js";
import type { Cell } from "../../src/estimate/sheet/expression.js";
import { placesOf } from "../../src/estimate/sheet/overriding.js";

/** The value, away from zero to what the cell takes: counts whole, amounts of money in their minor unit. */
export function upTo(cell: Cell, value: Decimal): Decimal {
  const places = placesOf(cell);
  if (places === undefined) return decimal(value.toFixed());
  const scale = decimal(10).pow(places);
  const size = value.abs().times(scale).ceil().dividedBy(scale);
  return decimal((value.isNegative() ? size.negated() : size).toFixed());
}
