/**
 * The one way from decimals to numbers: whole counts alone, for lists, for the grids and minor units that optimisers
 * reckon in, and for days of a calendar. What has a fraction stays a decimal.
 */
import { FaultError } from "../faults.js";
import type { Decimal } from "./decimal.js";

/**
 * A whole value as a number, exactly.
 * @throws Error where it has a fraction: a bug in the caller, who is to round it. FaultError where it is past what a number
 * holds exactly (2^53), or endless: only figures beyond all sense come to that.
 */
export function wholeNumber(value: Decimal): number {
  if (value.isFinite() && !value.isInteger()) throw new Error(`${value.toFixed()} is no whole number`);
  const whole = value.toNumber();
  if (Number.isSafeInteger(whole)) return whole;
  const wrong = `A figure comes to ${value.toPrecision(3)}, more than anybody counts to.`;
  throw new FaultError([
    { code: "too-large", at: "", wrong, cure: "Give prices, sizes and counts in a sensible range." },
  ]);
}
