/**
 * Whole coefficients of decimals: a number while that is exact, a bigint beyond. Most of a sheet's numbers are short,
 * and arithmetic on short ones is what makes a sheet quick.
 */

/** A whole number. As a number it is a safe integer; NaN and the infinities stand for what is not finite. */
export type Coefficient = number | bigint;

const MOST = Number.MAX_SAFE_INTEGER;
const MOST_WHOLE = BigInt(MOST);

/** True of whole results that floats hold exactly; false of NaN. */
export const isExact = (whole: number): boolean => whole <= MOST && whole >= -MOST;

/** Powers of ten that are safe integers: 10⁰ to 10¹⁵. */
export const SHORT_TENS: readonly number[] = Array.from({ length: 16 }, (_, power) => Number(`1e${power}`));

/** Powers of ten that floats hold exactly: 10⁰ to 10²². */
export const FLOAT_TENS: readonly number[] = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

const TENS: readonly bigint[] = Array.from({ length: 256 }, (_, power) => 10n ** BigInt(power));

/** A power of ten. */
export const tenTo = (power: number): bigint => TENS[power] ?? 10n ** BigInt(power);

/** Without its sign. */
export const sizeOf = (whole: bigint): bigint => (whole < 0n ? -whole : whole);

/** As a number where that is exact. */
export function leanest(whole: bigint): Coefficient {
  return whole <= MOST_WHOLE && whole >= -MOST_WHOLE ? Number(whole) : whole;
}

/** Number of its digits; one for zero. */
export function digitsIn(of: Coefficient): number {
  if (typeof of === "number") {
    const size = Math.abs(of);
    let digits = 1;
    while (size >= (FLOAT_TENS[digits] as number)) digits++;
    return digits;
  }
  const size = sizeOf(of);
  const float = Number(size);
  if (!Number.isFinite(float)) return String(size).length;
  // The logarithm may be a digit off beside a power of ten.
  const guess = Math.max(1, Math.floor(Math.log10(float)));
  return guess + (size >= tenTo(guess + 1) ? 2 : size >= tenTo(guess) ? 1 : 0);
}

/** Without its last `drop` digits, half away from zero. */
export function roundedOff(of: Coefficient, drop: number): Coefficient {
  const scale = SHORT_TENS[drop];
  if (typeof of === "number" && scale !== undefined) {
    const rest = of % scale;
    const whole = (of - rest) / scale;
    return 2 * Math.abs(rest) >= scale ? whole + Math.sign(of) : whole;
  }
  const whole = BigInt(of);
  const half = tenTo(drop) / 2n;
  return leanest((whole < 0n ? whole - half : whole + half) / tenTo(drop));
}

/** Without its last `drop` digits, towards the greater whole number. */
export function roundedUp(of: Coefficient, drop: number): Coefficient {
  const scale = SHORT_TENS[drop];
  if (typeof of === "number" && scale !== undefined) {
    const rest = of % scale;
    return (of - rest) / scale + (rest > 0 ? 1 : 0);
  }
  const whole = BigInt(of);
  const cut = whole / tenTo(drop);
  return leanest(whole > 0n && cut * tenTo(drop) !== whole ? cut + 1n : cut);
}

/** Digits with a point before the last `places` of them, zeros at the end dropped. */
export function written(of: Coefficient, places: number): string {
  const sign = of < 0 ? "-" : "";
  const digits = String(typeof of === "number" ? Math.abs(of) : sizeOf(of));
  if (places <= 0) return digits === "0" ? "0" : sign + digits + "0".repeat(-places);
  const padded = digits.length > places ? digits : "0".repeat(places - digits.length + 1) + digits;
  const point = padded.length - places;
  let end = padded.length;
  while (end > point && padded.charCodeAt(end - 1) === ZERO_DIGIT) end--;
  const whole = sign + padded.slice(0, point);
  return end > point ? `${whole}.${padded.slice(point, end)}` : whole;
}

const ZERO_DIGIT = 0x30;

/** Greatest whole number whose square is not above `of`, by Newton's method from the float's root. */
export function wholeRoot(of: bigint): bigint {
  let root = BigInt(Math.floor(Math.sqrt(Number(of))));
  for (let last = 0n; root !== last && root !== last + 1n && root !== last - 1n; ) {
    last = root;
    root = (root + of / root) / 2n;
  }
  while (root * root > of) root--;
  while ((root + 1n) * (root + 1n) <= of) root++;
  return root;
}
