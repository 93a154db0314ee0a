/**
 * Rows that shorten towards the ridge of a hip roof, cut into pieces that meet only over rafters. Which rafter a piece ends
 * on is decided here; how long it is stays a formula.
 */
import type { Decimal } from "../quantity/decimal.js";
import { minus, type Operand } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** A place along an eave, level from its corner: a formula, and its value in millimetres. */
export interface Place {
  readonly at: Operand;
  readonly value: Decimal;
}

/** Equal pieces of rows. */
export interface RowPieces {
  readonly length: Operand;
  readonly count: number;
}

/** Lays a place as a cell, so that it can be read. */
export function layPlace(sheet: Sheet, name: string, label: string, at: Operand, display: string): Place {
  const cell = sheet.lay(name, at, { label, display });
  return { at: cell, value: sheet.decide(cell) };
}

/**
 * Cuts one row into as few pieces as it takes to keep each within `longest`, as even as its supports allow; where those are
 * further apart than that, a piece spans to the next.
 * @param supports - In order; those outside the row do not matter.
 */
export function rowPieces(from: Place, to: Place, supports: readonly Place[], longest: Decimal): Place[] {
  const inside = supports.filter(({ value }) => value.gt(from.value) && value.lt(to.value));
  const greedy = farthest(from, to, inside, longest);
  const pieces = greedy.length - 1;
  const length = to.value.minus(from.value);
  const even = Array.from({ length: pieces - 1 }, (_, i) => {
    const wished = from.value.plus(length.times(i + 1).dividedBy(pieces));
    // The earlier of two that are as near, up to the middle, and the later beyond: a row is its own mirror image.
    const early = 2 * (i + 1) <= pieces;
    return inside.reduce((best, place) => {
      const [nearer, known] = [place.value.minus(wished).abs(), best.value.minus(wished).abs()];
      return nearer.lt(known) || (nearer.eq(known) && !early) ? place : best;
    });
  });
  const ends = [from, ...even, to];
  const fits = ends.slice(1).every(({ value }, i) => {
    const piece = value.minus((ends[i] as Place).value);
    return piece.gt(0) && piece.lte(longest);
  });
  return fits ? ends : greedy;
}

/** Each piece as far as it can go. */
function farthest(from: Place, to: Place, inside: readonly Place[], longest: Decimal): Place[] {
  const ends: Place[] = [from];
  let start = from;
  while (to.value.minus(start.value).gt(longest)) {
    const ahead = inside.filter(({ value }) => value.gt(start.value));
    const next = ahead.filter(({ value }) => value.minus(start.value).lte(longest)).at(-1) ?? ahead[0];
    if (!next) break;
    ends.push(next);
    start = next;
  }
  return [...ends, to];
}

/** Ninth decimal of a millimetre: what differs by less is the same length. */
const SAME = 9;

/** Gathers the pieces of all rows by length, in the order they come up. */
export function gatherPieces(
  rows: readonly { readonly ends: readonly Place[]; readonly count: number }[],
): RowPieces[] {
  const found = new Map<string, RowPieces>();
  for (const { ends, count } of rows) {
    for (const [i, end] of ends.slice(1).entries()) {
      const start = ends[i] as Place;
      const key = end.value.minus(start.value).toDecimalPlaces(SAME).toFixed();
      const known = found.get(key);
      found.set(key, known ? { ...known, count: known.count + count } : { length: minus(end.at, start.at), count });
    }
  }
  return [...found.values()];
}
