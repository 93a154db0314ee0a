/**
 * Log scale: what a log is reckoned to yield by the published rules, and its cubic volume.
 *
 * D is the diameter inside bark at the small end in inches, L the length in feet. A log rule is a formula over bare
 * numbers of inches and feet, so diameters and lengths are first divided by one inch and one foot.
 */

import { type Decimal, decimal } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  type Operand,
  over,
  PI,
  plus,
  square,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** What a log rule measures. Diameters inside the bark. */
export interface ScaledLog {
  readonly smallDiameter: Cell;
  readonly largeDiameter: Cell;
  readonly length: Cell;
}

/** A log by each rule. */
export interface LogScaleCells {
  readonly international: Cell;
  readonly scribner: Cell;
  readonly doyle: Cell;
  readonly smalian: Cell;
}

const ZERO_BF = number("0 bf");

/** A rule's bare result, never below nothing, in board feet. */
const boardFeet = (bare: Operand) => greatest(times(bare, number("1 bf")), ZERO_BF);
const inches = (length: Operand) => over(length, number("1 in"));
const feet = (length: Operand) => over(length, number("1 ft"));

/**
 * International 1/4-inch rule: over 4-ft sections from the small end, 0.904762 × (0.22 d² − 0.71 d), d growing
 * 1/2 in a section; of a last section under 4 ft, that fraction (common practice). 0.904762 is 19/21: the kerfs and
 * shrinkage of a 1-in board, (1 + 1/8 + 1/16) ÷ (1 + 1/4 + 1/16).
 *
 * The sections are summed by their coefficients: with d = D + i/2, section i is
 * 0.22 D² + (0.22 i − 0.71) D + 0.055 i² − 0.355 i, and n of them add up to n, Σi and Σi² of these.
 * @param wholeSections - How many full 4-ft sections the log has: a count that code decides.
 * @see Massachusetts General Laws ch. 96 s. 11A; Michigan Compiled Laws 290.401.
 */
export function internationalQuarter(diameter: Operand, length: Operand, wholeSections: number): Operand {
  const n = wholeSections;
  const d = inches(diameter);
  const squared = square(d);
  const [first, second] = [(n * (n - 1)) / 2, ((n - 1) * n * (2 * n - 1)) / 6];
  const whole = sections(d, squared, n, first, second);
  const rest = minus(over(feet(length), number("4")), number(String(n)));
  const all = plus(whole, times(rest, sections(d, squared, 1, n, n * n)));
  return boardFeet(over(times(all, number("19")), number("21")));
}

/** `count` sections whose indices add up to `sum` and their squares to `squares`. */
function sections(d: Operand, squared: Operand, count: number, sum: number, squares: number): Operand {
  const of = (each: string, times: number) => decimal(each).times(times);
  const linear = of("0.22", sum).minus(of("0.71", count));
  const constant = of("0.055", squares).minus(of("0.355", sum));
  return plus(times(exact(of("0.22", count)), squared), times(exact(linear), d), exact(constant));
}

const exact = (value: Decimal): Operand => number(value.toFixed());

/**
 * Scribner rule by formula: (0.79 D² − 2 D − 4) × L ÷ 16.
 * @see Purdue Extension FNR-191.
 */
export function scribner(diameter: Operand, length: Operand): Operand {
  const d = inches(diameter);
  const bracket = minus(minus(times(number("0.79"), square(d)), times(number("2"), d)), number("4"));
  return boardFeet(over(times(bracket, feet(length)), number("16")));
}

/**
 * Doyle rule: ((D − 4) ÷ 4)² × L; nothing below 4 in.
 * @see Louisiana Revised Statutes 3:4641.
 */
export function doyle(diameter: Operand, length: Operand): Operand {
  const d = greatest(minus(inches(diameter), number("4")), number("0"));
  return boardFeet(over(times(square(d), feet(length)), number("16")));
}

/**
 * Smalian's cubic volume: length × mean of the end areas.
 * @see University of Missouri, forestry functions, cubic log volume.
 */
export function smalian(smallDiameter: Operand, largeDiameter: Operand, length: Operand): Operand {
  const ends = plus(square(smallDiameter), square(largeDiameter));
  return over(times(PI, ends, length), number("8"));
}

/** Huber's cubic volume: length × area at mid-length. */
export function huber(midDiameter: Operand, length: Operand): Operand {
  return over(times(PI, square(midDiameter), length), number("4"));
}

/** Newton's cubic volume: length × (small + 4 × mid + large) ÷ 6. */
export function newton(smallDiameter: Operand, midDiameter: Operand, largeDiameter: Operand, length: Operand): Operand {
  const areas = plus(square(smallDiameter), times(number("4"), square(midDiameter)), square(largeDiameter));
  return over(times(PI, areas, length), number("24"));
}

/** Lays a log's scale by all rules. Lengths are scaled as they are, trim allowance included. */
export function layLogScale(
  sheet: Sheet,
  line: string,
  log: ScaledLog,
  units: { readonly log: string },
): LogScaleCells {
  const { smallDiameter: d, length } = log;
  const sections = wholeNumber(sheet.decideIn(length, "ft").dividedBy(4).floor());
  const lay = (column: string, label: string, formula: Operand, display: string) =>
    sheet.lay(`${line}.${column}`, formula, { label, display });
  return {
    international: lay("international", "International 1/4-inch", internationalQuarter(d, length, sections), "bf"),
    scribner: lay("scribner", "Scribner", scribner(d, length), "bf"),
    doyle: lay("doyle", "Doyle", doyle(d, length), "bf"),
    smalian: lay("smalian", "cubic, Smalian", smalian(d, log.largeDiameter, length), units.log),
  };
}
