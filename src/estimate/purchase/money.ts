/** Prices as whole numbers for the optimisers: as fine as the prices are given, so that none is rounded before it is multiplied. */
import { type Decimal, decimal } from "../quantity/decimal.js";

/** Digits below the minor unit that a price may have; finer ones are rounded to that. Assumption: a millionth of a dollar. */
const MOST_DIGITS = 4;

/** Money of one optimisation: `whole` turns a price into units of 10^−digits of the currency. */
export interface WholeMoney {
  readonly digits: number;
  readonly whole: (price: Decimal) => number;
}

/** The coarsest unit of money, the minor unit or below it, that holds all prices exactly. */
export function wholeMoney(prices: readonly Decimal[], minorDigits: number): WholeMoney {
  const needed = Math.max(minorDigits, ...prices.map((price) => price.decimalPlaces()));
  const digits = Math.min(needed, minorDigits + MOST_DIGITS);
  const scale = decimal(10).pow(digits);
  return { digits, whole: (price) => price.times(scale).toDecimalPlaces(0).toNumber() };
}
