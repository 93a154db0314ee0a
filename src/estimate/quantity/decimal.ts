/**
 * The only import of decimal.js. Precision and rounding are set once, here.
 *
 * 40 significant digits; half away from zero, as a spreadsheet rounds; exponents fenced at ±60 so that
 * no input can make a number that takes seconds to print.
 */
import { Decimal as Base } from "decimal.js";

export const Decimal = Base.clone({
  precision: 40,
  rounding: Base.ROUND_HALF_UP,
  maxE: 60,
  minE: -60,
  toExpPos: 61,
  toExpNeg: -61,
});
export type Decimal = Base;

export const ZERO = new Decimal(0);
export const ONE = new Decimal(1);

/** What a person may write as a number: at most 12 digits before the point and 9 after. No exponent, no NaN. */
const PLAIN = /^-?(?:0|[1-9]\d{0,11})(?:\.\d{1,9})?$/;

/** A plain decimal numeral, or undefined. Thousands commas are taken when they stand where they should. */
export function parseDecimal(text: string): Decimal | undefined {
  if (text.length > 32) return undefined;
  const bare = /^-?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(text) ? text.replaceAll(",", "") : text;
  const padded = bare.replace(/^(-?)\./, "$10.");
  return PLAIN.test(padded) ? new Decimal(padded) : undefined;
}

/** A decimal that our own code wrote (a constant, a published table row). Throws on anything else: a bug. */
export function decimal(text: string | number | bigint): Decimal {
  const value = new Decimal(typeof text === "bigint" ? text.toString() : text);
  if (!value.isFinite()) throw new Error(`not a finite decimal: ${String(text)}`);
  return value;
}

/** Rounded to `places` and written without exponent and without a negative zero; zeros at the end stay. */
export function fixed(value: Decimal, places: number): string {
  return noNegativeZero(value.toDecimalPlaces(places)).toFixed(places);
}

/** Rounded to at most `places`, zeros at the end dropped. */
export function trimmed(value: Decimal, places: number): string {
  return noNegativeZero(value.toDecimalPlaces(places)).toFixed();
}

function noNegativeZero(value: Decimal): Decimal {
  return value.isZero() ? ZERO : value;
}
