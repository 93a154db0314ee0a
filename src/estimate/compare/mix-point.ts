/** One priced mix, and how far it is from what the user asks for. */
import { Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import type { RoutePlan } from "./route.js";

/** Cash and person-hours of one priced mix, as its cells have them. */
export interface MixPoint {
  readonly milled: ReadonlySet<string>;
  readonly cash: Decimal;
  readonly hours: Decimal;
  /** What it buys of groups that are pinned to the mill, in money as the plan was told; absent: nothing. */
  readonly unpinned?: Decimal;
  /** The plans behind it, where they are kept: with a frontier, whose points are shown. */
  readonly plan?: RoutePlan;
}

/** Limits that the user sets; a mix within them is preferred to any mix beyond them. */
export interface MixLimits {
  readonly cash?: Decimal;
  readonly hours?: Decimal;
}

/** Half of the last digit that hours are shown with, in person-hours: what is less is rounded off. */
const HALF_SHOWN = decimal("0.004999999");

/** Hours that keep a limit: up to it, or up to what is shown as no more, so that hours copied from an answer are kept by it. */
export const keptUpTo = (hours: Decimal): Decimal =>
  Decimal.max(hours, hours.toDecimalPlaces(2, Decimal.ROUND_DOWN).plus(HALF_SHOWN));

/** What it buys of what is pinned to the mill. */
export const unpinnedOf = ({ unpinned }: MixPoint): Decimal => unpinned ?? ZERO;

/** How far a mix is past the limits, in shares of them. */
export function beyondOf({ cash, hours }: Pick<MixPoint, "cash" | "hours">, limits: MixLimits): Decimal {
  const past = (value: Decimal, limit: Decimal | undefined): Decimal =>
    limit ? Decimal.max(ZERO, value.dividedBy(Decimal.max(limit, EQUAL)).minus(ONE)) : ZERO;
  return past(cash, limits.cash).plus(past(hours, limits.hours));
}

/** Below a thousandth of a cent or of an hour, two mixes cost the same. */
export const EQUAL = decimal("0.00001");
