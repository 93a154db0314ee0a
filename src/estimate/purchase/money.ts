/** Prices as whole numbers for the optimisers: as fine as the prices are given, so that none is rounded before it is multiplied. */
import { Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";
import type { StockOutcome } from "./stock/problem.js";

/** Digits below the minor unit that a price may have; finer ones are rounded to that. Assumption: a millionth of a dollar. */
const MOST_DIGITS = 4;

/** Largest price in whole units that leaves room for thousands of them in a number. */
const MOST_WHOLE = decimal("1e12");

/** Money of one optimisation: `whole` turns a price into units of 10^−digits of the currency. */
export interface WholeMoney {
  readonly digits: number;
  readonly whole: (price: Decimal) => number;
}

/** The coarsest unit of money, the minor unit or below it, that holds all prices exactly; of vast prices the minor unit. */
export function wholeMoney(prices: readonly Decimal[], minorDigits: number): WholeMoney {
  const needed = Math.max(minorDigits, ...prices.map((price) => price.decimalPlaces()));
  const finest = Math.min(needed, minorDigits + MOST_DIGITS);
  const fits = prices.every((price) => price.times(decimal(10).pow(finest)).lte(MOST_WHOLE));
  const digits = fits ? finest : minorDigits;
  const scale = decimal(10).pow(digits);
  return { digits, whole: (price) => wholeNumber(price.times(scale).toDecimalPlaces(0)) };
}

/** How much less the least plan may cost at most, as a share of this one's cost, rounded up; 0 where that is 0. */
export function gapOf({ costMinor, boundMinor }: Pick<StockOutcome, "costMinor" | "boundMinor">): Decimal {
  if (costMinor === 0) return ZERO;
  return decimal(costMinor).minus(boundMinor).dividedBy(costMinor).toDecimalPlaces(6, Decimal.ROUND_UP);
}
