/**
 * What a nominal section really measures, and board measure.
 *
 * Source of the inch sizes: American Softwood Lumber Standard, PS 20-20 (`ps-20`), table 3, seen in a reprint. "Dry" is
 * at most 19 % moisture when dressed, "green" is above. The standard lists 7, 9 and 11 in for boards only, and the
 * half-inch widths for dimension only; both are taken for both here, by the same figures.
 */
import { type Decimal, ONE } from "../estimate/quantity/decimal.js";
import { inUnit, type Quantity, quantity } from "../estimate/quantity/quantity.js";
import { exactly } from "../estimate/quantity/text.js";
import type { Section } from "./reading.js";

/** State in which a section has its size: dry, or green from the saw. */
export type Seasoning = "dry" | "green";

/** One side of a section: nominal, dressed dry, dressed green, all in inches. */
type Row = readonly [nominal: string, dry: string, green: string];

const THICKNESSES: readonly Row[] = [
  ["3/8", "5/16", "11/32"],
  ["1/2", "7/16", "15/32"],
  ["5/8", "9/16", "19/32"],
  ["3/4", "5/8", "11/16"],
  ["1", "3/4", "25/32"],
  ["1 1/4", "1", "1 1/32"],
  ["1 1/2", "1 1/4", "1 9/32"],
  ["2", "1 1/2", "1 9/16"],
  ["2 1/2", "2", "2 1/16"],
  ["3", "2 1/2", "2 9/16"],
  ["3 1/2", "3", "3 1/16"],
  ["4", "3 1/2", "3 9/16"],
  ["4 1/2", "4", "4 1/16"],
];

const WIDTHS: readonly Row[] = [
  ["2", "1 1/2", "1 9/16"],
  ["2 1/2", "2", "2 1/16"],
  ["3", "2 1/2", "2 9/16"],
  ["3 1/2", "3", "3 1/16"],
  ["4", "3 1/2", "3 9/16"],
  ["4 1/2", "4", "4 1/16"],
  ["5", "4 1/2", "4 5/8"],
  ["6", "5 1/2", "5 5/8"],
  ["7", "6 1/2", "6 5/8"],
  ["8", "7 1/4", "7 1/2"],
  ["9", "8 1/4", "8 1/2"],
  ["10", "9 1/4", "9 1/2"],
  ["11", "10 1/4", "10 1/2"],
  ["12", "11 1/4", "11 1/2"],
  ["14", "13 1/4", "13 1/2"],
  ["16", "15 1/4", "15 1/2"],
];

/** Timbers (least side 5 in and over): what dressing takes off each side, by nominal inches. */
const TIMBER_OFF: readonly { readonly below: number; readonly dry: string; readonly green: string }[] = [
  { below: 7, dry: "1/2", green: "1/2" },
  { below: 16, dry: "3/4", green: "1/2" },
  { below: Number.POSITIVE_INFINITY, dry: "1", green: "1/2" },
];

/** Least side of a timber, nominal inches (PS 20, size classes). */
const TIMBER_FROM = 5;

const inches = (text: string): Decimal => inUnit(exactly(`${text} in`), "in");
const inchesOf = (side: Quantity): Decimal => inUnit(side, "in");

/** True for a section of the timber class: 5 in nominal and over both ways. */
function isTimber(nominal: Section): boolean {
  return [nominal.thickness, nominal.width].every((side) => inchesOf(side).gte(TIMBER_FROM));
}

/** Timbers are normally dressed green, thinner stock dry (PS 20; retail practice). */
export function usualSeasoning(nominal: Section): Seasoning {
  return isTimber(nominal) ? "green" : "dry";
}

/**
 * The dressed section of a nominal one.
 * @returns undefined when the standard has no such nominal section.
 * @example 2 × 6 in, dry, is 1 1/2 × 5 1/2 in.
 */
export function dressedSize(nominal: Section, seasoning: Seasoning = usualSeasoning(nominal)): Section | undefined {
  const timber = isTimber(nominal);
  const side = (of: Quantity, table: readonly Row[]) =>
    timber ? timberSide(inchesOf(of), seasoning) : tableSide(inchesOf(of), table, seasoning);
  const thickness = side(nominal.thickness, THICKNESSES);
  const width = side(nominal.width, WIDTHS);
  return thickness && width && { thickness: quantity(thickness, "in"), width: quantity(width, "in") };
}

function tableSide(nominal: Decimal, table: readonly Row[], seasoning: Seasoning): Decimal | undefined {
  const row = table.find(([name]) => inches(name).eq(nominal));
  return row && inches(seasoning === "dry" ? row[1] : row[2]);
}

function timberSide(nominal: Decimal, seasoning: Seasoning): Decimal | undefined {
  if (!nominal.isInteger()) return undefined;
  const row = TIMBER_OFF.find(({ below }) => nominal.lt(below));
  return row && nominal.minus(inches(row[seasoning]));
}

/**
 * The thickness that board measure counts: stock under 1 in is counted as 1 in.
 * Source: PS 20 and US Army EN5155, board measure.
 */
export function countedThickness(thickness: Quantity): Quantity {
  const least = quantity(ONE, "in");
  return thickness.value.lt(least.value) ? least : thickness;
}

/** What board measure multiplies, in whatever units: a thickness of 1 in at least, the width and the length. */
export const boardMeasure = ({ thickness, width }: Section, length: Quantity): readonly Quantity[] => [
  countedThickness(thickness),
  width,
  length,
];

/**
 * Board measure of one piece: thickness in × width in × length ft ÷ 12, thickness counted as 1 in at least.
 * Give the nominal section for yard lumber, the actual rough section for full-sawn stock.
 */
export function boardFeet(section: Section, length: Quantity): Quantity {
  const face = inchesOf(countedThickness(section.thickness)).times(inchesOf(section.width));
  return quantity(face.times(inUnit(length, "ft")).dividedBy(12), "bf");
}

/** How exactly a side is sawn: class 1 as sawn, class 2 planed or machined. */
export type ToleranceClass = "T1" | "T2";

/** Under and over the target size, millimetres: of sides up to 100 mm, and of larger ones. */
const PERMITTED = {
  T1: [
    ["1", "3"],
    ["2", "4"],
  ],
  T2: [
    ["1", "1"],
    ["1.5", "1.5"],
  ],
} as const;

/** Sides up to this are of the first row. */
const SMALL_SIDE = exactly("100 mm").value;

/**
 * How far a side of sawn softwood may be under or over its target size, at 20 % moisture.
 * @see EN 336 (`en-336`), permitted deviations; in the mean no side may be under its target size.
 */
export function permittedDeviation(side: Quantity, tolerance: ToleranceClass): { under: Quantity; over: Quantity } {
  const [small, large] = PERMITTED[tolerance];
  const [under, over] = side.value.lte(SMALL_SIDE) ? small : large;
  return { under: quantity(under, "mm"), over: quantity(over, "mm") };
}
