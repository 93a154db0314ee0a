/**
 * Decimals: exact to 40 significant digits, half away from zero, as a spreadsheet rounds. Exponents are fenced at ±60 so
 * that no input can make a number that takes seconds to print.
 *
 * Arithmetic is our own, because a sheet is made of it: some four times as quick as decimal.js, whose results it gives to
 * the last digit (property tests hold it to them). Angles are left to decimal.js, which is imported here alone.
 */
import { Decimal as Base } from "decimal.js";
import {
  type Coefficient,
  digitsIn,
  FLOAT_TENS,
  isExact,
  leanest,
  roundedOff,
  roundedUp,
  SHORT_TENS,
  tenTo,
  wholeRoot,
  written,
} from "./coefficient.js";

/** Significant digits. */
const PRECISION = 40;
/** Greatest exponent of ten, and the least with a minus sign: beyond is an infinity, below is zero. */
const FENCE = 60;

const Angles = Base.clone({ precision: PRECISION, rounding: Base.ROUND_HALF_UP, toExpPos: 99, toExpNeg: -99 });

type Source = Decimal | string | number;

/** A whole coefficient divided by a power of ten. */
export class Decimal {
  private readonly coefficient: Coefficient;
  /** Digits after the point; the last ones may be zeros. Below zero: zeros that end the whole number. */
  private readonly places: number;

  /**
   * As given, without rounding.
   * @param places - With it, `of` is a coefficient: `new Decimal(1234, 2)` is 12.34.
   * @throws Error on a text that is no number.
   */
  constructor(of: Source | bigint, places?: number) {
    if (places !== undefined) {
      this.coefficient = of as Coefficient;
      this.places = places;
    } else {
      const same = of instanceof Decimal ? of : read(of);
      this.coefficient = same.coefficient;
      this.places = same.places;
    }
  }

  static isDecimal(of: unknown): of is Decimal {
    return of instanceof Decimal;
  }

  static min(...of: readonly Source[]): Decimal {
    return of.map(from).reduce((least, next) => (next.isNaN() || next.lt(least) ? next : least));
  }

  static max(...of: readonly Source[]): Decimal {
    return of.map(from).reduce((most, next) => (next.isNaN() || next.gt(most) ? next : most));
  }

  plus(of: Source): Decimal {
    const that = from(of);
    const [a, b] = [this.coefficient, that.coefficient];
    if (typeof a === "number" && typeof b === "number") {
      const shift = this.places - that.places;
      const left = shift < 0 ? a * (SHORT_TENS[-shift] ?? Number.NaN) : a;
      const right = shift > 0 ? b * (SHORT_TENS[shift] ?? Number.NaN) : b;
      const total = left + right;
      if (isExact(left) && isExact(right) && isExact(total))
        return fenced(total, shift < 0 ? that.places : this.places);
    }
    if (!this.isFinite() || !that.isFinite()) return new Decimal(Number(a) + Number(b), 0);
    const places = Math.max(this.places, that.places);
    return settled(this.raised(places) + that.raised(places), places);
  }

  minus(of: Source): Decimal {
    return this.plus(from(of).negated());
  }

  times(of: Source): Decimal {
    const that = from(of);
    const [a, b] = [this.coefficient, that.coefficient];
    const places = this.places + that.places;
    if (typeof a === "number" && typeof b === "number") {
      const product = a * b;
      if (isExact(product)) return fenced(product, places);
    }
    if (!this.isFinite() || !that.isFinite()) return new Decimal(Number(a) * Number(b), 0);
    return settled(BigInt(a) * BigInt(b), places);
  }

  dividedBy(of: Source): Decimal {
    const that = from(of);
    const [a, b] = [this.coefficient, that.coefficient];
    if (!this.isFinite() || !that.isFinite() || that.isZero()) return new Decimal(Number(a) / Number(b), 0);
    const places = this.places - that.places;
    if (typeof a === "number" && typeof b === "number") {
      let dividend = a;
      for (let more = 0; more <= QUOTIENT_TRIES && isExact(dividend); more++) {
        if (dividend % b === 0) return fenced(dividend / b, places + more);
        dividend *= 10;
      }
    }
    // A digit more than is kept tells how to round: half goes up, whatever follows.
    const more = Math.max(0, PRECISION + 1 + digitsIn(b) - digitsIn(a));
    return settled((BigInt(a) * tenTo(more)) / BigInt(b), places + more);
  }

  /** The quotient without what comes after its point. */
  dividedToIntegerBy(of: Source): Decimal {
    const that = from(of);
    if (!this.isFinite() || !that.isFinite() || that.isZero()) return this.dividedBy(that);
    const [a, b] = [this.coefficient, that.coefficient];
    if (this.places === that.places && typeof a === "number" && typeof b === "number") {
      return fenced((a - (a % b)) / b, 0);
    }
    const places = Math.max(this.places, that.places);
    return settled(this.raised(places) / that.raised(places), 0);
  }

  /** @param power - Whole. */
  pow(power: number): Decimal {
    if (power < 0) return ONE.dividedBy(this.pow(-power));
    if (!this.isFinite()) return new Decimal(Number(this.coefficient) ** power, 0);
    return settled(BigInt(this.coefficient) ** BigInt(power), this.places * power);
  }

  negated(): Decimal {
    return this.isZero() ? this : new Decimal(-this.coefficient, this.places);
  }

  abs(): Decimal {
    return this.isNegative() ? this.negated() : this;
  }

  /** Below, equal to or above zero as this is below, equal to or above the other; NaN where either is. */
  cmp(of: Source): number {
    const that = from(of);
    const [a, b] = [this.coefficient, that.coefficient];
    const shift = this.places - that.places;
    if (shift === 0 || !this.isFinite() || !that.isFinite()) return a < b ? -1 : a > b ? 1 : a === b ? 0 : Number.NaN;
    if (typeof a === "number" && typeof b === "number") {
      const left = shift < 0 ? a * (SHORT_TENS[-shift] ?? Number.NaN) : a;
      const right = shift > 0 ? b * (SHORT_TENS[shift] ?? Number.NaN) : b;
      if (isExact(left) && isExact(right)) return Math.sign(left - right);
    }
    const places = Math.max(this.places, that.places);
    const [left, right] = [this.raised(places), that.raised(places)];
    return left < right ? -1 : left > right ? 1 : 0;
  }

  eq(of: Source): boolean {
    return this.cmp(of) === 0;
  }
  lt(of: Source): boolean {
    return this.cmp(of) < 0;
  }
  lte(of: Source): boolean {
    return this.cmp(of) <= 0;
  }
  gt(of: Source): boolean {
    return this.cmp(of) > 0;
  }
  gte(of: Source): boolean {
    return this.cmp(of) >= 0;
  }

  isZero(): boolean {
    return this.coefficient === 0;
  }
  isNegative(): boolean {
    return this.coefficient < 0;
  }
  isFinite(): boolean {
    return typeof this.coefficient === "bigint" || Number.isFinite(this.coefficient);
  }
  isNaN(): boolean {
    return Number.isNaN(this.coefficient);
  }
  isInteger(): boolean {
    return this.isFinite() && this.decimalPlaces() === 0;
  }

  /** Half away from zero. */
  toDecimalPlaces(places: number): Decimal {
    if (this.places <= places || !this.isFinite()) return this;
    return new Decimal(roundedOff(this.coefficient, this.places - places), places);
  }

  /** Half away from zero. */
  toSignificantDigits(digits: number): Decimal {
    if (!this.isFinite()) return this;
    const drop = digitsIn(this.coefficient) - digits;
    return drop <= 0 ? this : new Decimal(roundedOff(this.coefficient, drop), this.places - drop);
  }

  /** The least whole number that is not below this. */
  ceil(): Decimal {
    return this.places <= 0 || !this.isFinite() ? this : new Decimal(roundedUp(this.coefficient, this.places), 0);
  }

  /** The greatest whole number that is not above this. */
  floor(): Decimal {
    return this.negated().ceil().negated();
  }

  /** Digits after the point, zeros at the end apart. */
  decimalPlaces(): number {
    const text = this.toFixed();
    const point = text.indexOf(".");
    return point < 0 ? 0 : text.length - point - 1;
  }

  /** Significant digits, zeros at either end apart. */
  precision(): number {
    return Math.max(
      1,
      this.toFixed()
        .replace(/[-.]/g, "")
        .replace(/^0+|0+$/g, "").length,
    );
  }

  atan(): Decimal {
    return new Decimal(Angles.atan(this.toFixed()).toFixed());
  }

  /** Of an angle in radians. */
  tan(): Decimal {
    return new Decimal(Angles.tan(this.toFixed()).toFixed());
  }

  toNumber(): number {
    const { coefficient, places } = this;
    const scale = FLOAT_TENS[places];
    // Both exact, so that the quotient is rounded once.
    if (typeof coefficient === "number" && scale !== undefined) return coefficient / scale;
    return this.isFinite() ? Number(`${coefficient}e${-places}`) : Number(coefficient);
  }

  /** Without an exponent. @param places - With it rounded, and zeros put at the end to fill them. */
  toFixed(places?: number): string {
    if (!this.isFinite()) return String(this.coefficient);
    if (places === undefined) return written(this.coefficient, this.places);
    const text = this.toDecimalPlaces(places).toFixed();
    if (places === 0) return text;
    const point = text.indexOf(".");
    return point < 0 ? `${text}.${"0".repeat(places)}` : text.padEnd(point + 1 + places, "0");
  }

  toString(): string {
    return this.toFixed();
  }

  toJSON(): string {
    return this.toFixed();
  }

  /**
   * Square root, rounded as every other result is; NaN below zero.
   * By the whole root of a coefficient with digits enough.
   */
  sqrt(): Decimal {
    const { coefficient, places } = this;
    if (this.isZero() || !this.isFinite() || this.isNegative()) return new Decimal(Math.sqrt(Number(coefficient)), 0);
    const short = Math.sqrt(Number(coefficient));
    if (
      places % 2 === 0 &&
      typeof coefficient === "number" &&
      Number.isInteger(short) &&
      short * short === coefficient
    ) {
      return fenced(short, places / 2);
    }
    let shift = Math.max(0, 2 * (PRECISION + 1) - digitsIn(coefficient));
    if ((places + shift) % 2 !== 0) shift++;
    const whole = BigInt(coefficient) * tenTo(shift);
    const root = wholeRoot(whole);
    // A digit more, so that an inexact root is never taken for an exact one or for a tie.
    const digits = root * 10n + (root * root === whole ? 0n : 1n);
    return settled(digits, (places + shift) / 2 + 1);
  }

  /** The coefficient with so many digits after the point. */
  private raised(places: number): bigint {
    return BigInt(this.coefficient) * tenTo(places - this.places);
  }
}

/** Digits by which a dividend is lengthened to find a quotient that ends; most that end do so by then. */
const QUOTIENT_TRIES = 4;

const from = (of: Source): Decimal => (of instanceof Decimal ? of : new Decimal(of));

/** A coefficient that needs no rounding. */
function fenced(coefficient: Coefficient, places: number): Decimal {
  if (coefficient === 0) return ZERO;
  // Within these places no coefficient of forty digits is beyond the fence.
  if (places > FENCE || places < PRECISION - FENCE) return atFence(coefficient, places);
  return new Decimal(coefficient, places);
}

function atFence(coefficient: Coefficient, places: number): Decimal {
  const exponent = digitsIn(coefficient) - 1 - places;
  if (exponent > FENCE) return new Decimal(coefficient > 0 ? Infinity : -Infinity, 0);
  if (exponent < -FENCE) return ZERO;
  return new Decimal(coefficient, places);
}

const TOO_LONG = tenTo(PRECISION);

/** Rounded to the digits that are kept. */
function settled(whole: bigint, places: number): Decimal {
  if (whole < TOO_LONG && whole > -TOO_LONG) return fenced(leanest(whole), places);
  const drop = digitsIn(whole) - PRECISION;
  return fenced(roundedOff(whole, drop), places - drop);
}

const NUMERAL = /^([+-]?)(\d*)(?:\.(\d*))?(?:e([+-]?\d+))?$/i;
/** Digits that are surely a safe integer. */
const SHORT = 15;

function read(of: string | number | bigint): Decimal {
  if (typeof of === "bigint") return fenced(leanest(of), 0);
  if (typeof of === "number") {
    if (Number.isSafeInteger(of) || !Number.isFinite(of)) return fenced(of, 0);
    return read(String(of));
  }
  const [, sign, whole = "", part = "", power = "0"] = NUMERAL.exec(of) ?? [];
  const digits = whole + part;
  if (sign === undefined || digits === "") {
    if (/^(?:NaN|-?Infinity)$/.test(of)) return new Decimal(Number(of), 0);
    throw new Error(`not a number: ${of.slice(0, 80)}`);
  }
  const size = digits.length <= SHORT ? Number(digits) : leanest(BigInt(digits));
  const within = digits.length > PRECISION && size !== 0 ? atFence : fenced;
  return within(sign === "-" ? -size : size, part.length - Number(power));
}

/** Nothing, made once. */
export const ZERO = new Decimal(0, 0);
/** One, made once. */
export const ONE = new Decimal(1, 0);
/** π, as all results are rounded. */
export const PI = new Decimal(Angles.acos(-1).toFixed());

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
  const value = new Decimal(text);
  if (!value.isFinite()) throw new Error(`not a finite decimal: ${String(text)}`);
  return value;
}

/** Rounded to `places` and written without exponent; zeros at the end stay. */
export const fixed = (value: Decimal, places: number): string => value.toFixed(places);

/** Rounded to at most `places`, zeros at the end dropped. */
export const trimmed = (value: Decimal, places: number): string => value.toDecimalPlaces(places).toFixed();
