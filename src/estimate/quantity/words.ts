/** Words within a sentence, and at its beginning. */
import { type Decimal, decimal } from "./decimal.js";

/**
 * `about 12.5`; without the word where nothing is rounded off, `under 0.1` where all is. For figures beside a quotient of the
 * whole.
 */
export function about(value: Decimal, places: number): string {
  const digits = value.toFixed(places);
  if (value.eq(digits)) return digits;
  return value.toDecimalPlaces(places).isZero() ? `under ${decimal(10).pow(-places).toFixed()}` : `about ${digits}`;
}

/** With a capital: the beginning of a sentence, or a label. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** A label as it stands within a sentence. */
export const lowered = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** `a, b and c`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
