/** A decimal with its unit. Plain dimensions are always in their held unit, rates in the unit they were given in. */
import { Decimal, decimal } from "./decimal.js";
import { applyFactor, factorBetween, held, type Unit, unit } from "./unit.js";

/** A decimal and the unit that it counts. */
export interface Quantity {
  readonly value: Decimal;
  readonly unit: Unit;
  /** The unit it was written in, kept for showing it back. */
  readonly written?: Unit;
}

/** From a value in any unit, to the held form. */
export function quantity(value: Decimal | string | number, of: Unit | string): Quantity {
  const written = typeof of === "string" ? unit(of) : of;
  const number = Decimal.isDecimal(value) ? value : decimal(value);
  const holding = held(written);
  return { value: applyFactor(number, factorBetween(written, holding)), unit: holding, written };
}

/** The value in another unit of the same dimension. Throws when it measures something else: a bug. */
export function inUnit(of: Quantity, target: Unit | string): Decimal {
  return applyFactor(of.value, factorBetween(of.unit, typeof target === "string" ? unit(target) : target));
}
