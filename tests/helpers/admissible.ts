/** Values that a cell may be overridden with. */
import { Decimal, decimal } from "../../src/estimate/quantity/decimal.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { unit } from "../../src/estimate/quantity/unit.js";
import type { Cell } from "../../src/estimate/sheet/expression.js";
import { LONGEST, placesOf } from "../../src/estimate/sheet/overriding.js";

/** The value, away from zero to what the cell takes: counts whole, amounts of money in their minor unit, lengths up to the longest. */
export function upTo(cell: Cell, value: Decimal): Decimal {
  const places = placesOf(cell);
  if (cell.unit.dimension === unit("mm").dimension) {
    const longest = inUnit({ value: LONGEST, unit: unit("mm") }, cell.display).floor();
    return decimal(Decimal.min(value.toFixed(), longest).toFixed());
  }
  if (places === undefined) return decimal(value.toFixed());
  const scale = decimal(10).pow(places);
  const size = value.abs().times(scale).ceil().dividedBy(scale);
  return decimal((value.isNegative() ? size.negated() : size).toFixed());
}
