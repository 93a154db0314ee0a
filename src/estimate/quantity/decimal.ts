/**
 * The only import of decimal.js. Precision and rounding are set once, here.
 *
 * 40 significant digits; half away from zero, as a spreadsheet rounds; exponents fenced at ±60 so that
 * no input can make a number that takes seconds to print.
 */
import { Decimal as Base } from "decimal.js";

/** Significant digits. */
const PRECISION = 40;

/** The project's one constructor: 40 significant digits, half away from zero, bounded exponents. */
export const Decimal = Base.clone({
  precision: PRECISION,
  rounding: Base.ROUND_HALF_UP,
  maxE: 60,
  minE: -60,
  toExpPos: 61,
  toExpNeg: -61,
});

/** The project's one constructor: 40 significant digits, half away from zero, bounded exponents. */
export type Decimal = Base;

/** Nothing, made once. */
export const ZERO = new Decimal(0);

/** One, made once. */
export const ONE = new Decimal(1);

/** What a person may write as a number: at most 12 digits before the point and 9 after. No exponent, no NaN. */
const PLAIN = /^-?(?:0|[1-9]\d{0,11})(?:\.\d{1,9})?$/;

/** A plain decimal numeral, or undefined. */
export function parseDecimal(text: string): Decimal | undefined {
  if (text.length > 32) return undefined;
  const padded = text.replace(/^(-?)\./, "$10.");
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

/**
 * Square root, rounded as every other result is; NaN below zero.
 *
 * By the whole root of a coefficient with digits enough, a tenth of the time of decimal.js's own: roots were a fifth
 * of the time of a sheet.
 */
export function squareRoot(value: Decimal): Decimal {
  if (!value.isFinite() || value.isZero() || value.isNegative()) return value.sqrt();
  const places = value.decimalPlaces();
  const coefficient = value.toFixed().replace(".", "").replace(/^0+/, "");
  let shift = Math.max(0, 2 * (PRECISION + 1) - coefficient.length);
  if ((places + shift) % 2 === 1) shift++;
  const whole = BigInt(coefficient + "0".repeat(shift));
  const root = wholeRoot(whole);
  // A digit more, so that an inexact root is never taken for an exact one or for a tie.
  const digits = `${root}${root * root === whole ? "0" : "1"}`;
  return new Decimal(`${digits}e-${(places + shift) / 2 + 1}`).toSignificantDigits(PRECISION);
}

/** Greatest whole number whose square is not above `of`, by Newton's method from the float's root. */
function wholeRoot(of: bigint): bigint {
  let root = BigInt(Math.floor(Math.sqrt(Number(of))));
  for (let last = 0n; root !== last && root !== last + 1n && root !== last - 1n; ) {
    last = root;
    root = (root + of / root) / 2n;
  }
  while (root * root > of) root--;
  while ((root + 1n) * (root + 1n) <= of) root++;
  return root;
}
