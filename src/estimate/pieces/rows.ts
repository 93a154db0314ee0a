/**
 * Rows that shorten towards the ridge of a hip roof, cut into pieces that meet only over rafters. Which rafter a piece ends
 * on is decided here; how long it is stays a formula.
 */
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { minus, type Operand } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { cutBays, type SoldFor } from "./run-cutting.js";

/** A place along an eave, level from its corner: a formula, and its value in millimetres. */
export interface Place {
  readonly at: Operand;
  readonly value: Decimal;
}

/** Equal pieces of rows. */
export interface RowPieces {
  readonly length: Operand;
  readonly count: number;
  /** Where such pieces begin, from the beginning of a row: of all rows that are alike. */
  readonly begins: readonly Operand[];
  /** Supports that such a piece lies on, both its ends counted; of rows that say what they cross. */
  readonly crossings: number | undefined;
}

/** A row as it is cut. */
export interface CutRow {
  /** Of its pieces, its own two included. */
  readonly ends: readonly Place[];
  /** How many rows are just so. */
  readonly count: number;
  /** What it crosses. */
  readonly supports?: readonly Place[];
}

/** Lays a place as a cell, so that it can be read. */
export function layPlace(sheet: Sheet, name: string, label: string, at: Operand, display: string): Place {
  const cell = sheet.lay(name, at, { label, display });
  return { at: cell, value: sheet.decide(cell) };
}

/**
 * Cuts one row over its supports, as a run is cut: its ends lie on something, too.
 * @param supports - In order; those outside the row do not matter.
 */
export function rowPieces(
  from: Place,
  to: Place,
  supports: readonly Place[],
  { longest, yard }: { readonly longest: Decimal; readonly yard?: SoldFor | undefined },
): Place[] {
  const inside = supports.filter(({ value }) => value.gt(from.value) && value.lt(to.value));
  const places = [from, ...inside, to];
  const sizes = places.slice(1).map(({ value }, i) => value.minus((places[i] as Place).value));
  let at = 0;
  const ends = cutBays({ sizes, endSizes: { first: ZERO, last: ZERO }, longest }, yard).map((bays) => {
    at += bays;
    return places[at] as Place;
  });
  return [from, ...ends];
}

/** Ninth decimal of a millimetre: what differs by less is the same length. */
const SAME = 9;

/** Gathers the pieces of all rows by length, and by what they cross, in the order they come up. */
export function gatherPieces(rows: readonly CutRow[]): RowPieces[] {
  const found = new Map<string, RowPieces>();
  for (const { ends, count, supports } of rows) {
    for (const [i, end] of ends.slice(1).entries()) {
      const start = ends[i] as Place;
      const between = supports?.filter(({ value }) => value.gt(start.value) && value.lt(end.value));
      const crossings = between && between.length + 2;
      const key = `${end.value.minus(start.value).toDecimalPlaces(SAME).toFixed()} ${crossings ?? ""}`;
      const known = found.get(key);
      const begins = [...(known?.begins ?? []), minus(start.at, (ends[0] as Place).at)];
      const length = known?.length ?? minus(end.at, start.at);
      found.set(key, { length, count: (known?.count ?? 0) + count, begins, crossings });
    }
  }
  return [...found.values()];
}
