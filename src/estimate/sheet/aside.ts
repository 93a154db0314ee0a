/**
 * The way from a cell's value to what is not on the sheet: words, lists to show, refusals, the floats of an optimiser.
 *
 * Nothing laid on the sheet may hang on what is read here, so the cell stays live: after it is changed, evaluating again
 * gives every cell, and only the words beside the sheet are those of the estimate as it was laid. A branch that decides
 * what is laid asks `Sheet.decide` in its place.
 */
import type { Decimal } from "../quantity/decimal.js";
import { inUnit } from "../quantity/quantity.js";
import type { Cell } from "./expression.js";

/** The effective value, in the cell's own unit. */
export const aside = (cell: Cell): Decimal => cell.value;

/** The effective value in a unit of the same dimension: `asideIn(length, "ft")`. */
export const asideIn = (cell: Cell, target: string): Decimal => inUnit(cell, target);
