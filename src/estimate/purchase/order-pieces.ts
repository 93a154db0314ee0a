/** Pieces of a stock order as rows of its problem: whole, or in parts that are joined. */
import { toQuantity } from "../../catalog/reading.js";
import type { Quantity } from "../quantity/quantity.js";
import { type MeasureSystem, marked } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import type { StockOrder } from "../request/stock-order.js";
import { stepsInMm, stepsOf } from "./lumber.js";
import { waysToJoin } from "./stock/joints.js";
import type { StockPiece } from "./stock/problem.js";

/** One piece of the problem: a wanted one, or a part of one that is joined. */
export interface CutPiece {
  readonly piece: string;
  /** `1 of 2`; undefined where it is whole. */
  readonly part: string | undefined;
}

/** Lengths in whole steps of the problem: what is wanted up, what is sold down. */
export interface Steps {
  up(length: Quantity): number;
  down(length: Quantity): number;
}

/** Steps of a measure system. */
export const countingIn = (system: MeasureSystem): Steps => ({
  up: ({ value }) => stepsOf(system, value, "up"),
  down: ({ value }) => stepsOf(system, value, "down"),
});

/** A row of the problem, and what it is of. */
export interface Part {
  readonly row: StockPiece;
  readonly of: CutPiece;
}

/** How pieces are counted and joined. */
interface Joining {
  readonly steps: Steps;
  /** The longest part that a stick on offer gives. */
  readonly most: number;
  /** How many pieces so long sticks give of which there are only so many; infinitely many where such are sold without end. */
  readonly fewOf: (length: number) => number;
  readonly system: MeasureSystem;
}

/** Numbers of pieces left whole that are weighed, and ways to join the others beside them. Assumptions. */
const MOST_WHOLE = 6;
const BESIDE_WHOLE = 6;

/**
 * The ways in which equal pieces may be had: whole; joined; or as many whole as there are sticks that take them, or fewer, and the
 * others joined. The name of a part says how long it is, so that a held plan fits one way alone.
 */
export function waysOf(
  { name, length, count, supports }: StockOrder["pieces"][number],
  { steps, most, fewOf, system }: Joining,
): (readonly Part[])[] {
  const long = steps.up(toQuantity(length, "ft"));
  const apart = supports === undefined ? 0 : steps.down(toQuantity(supports, "ft"));
  const whole = (some: number): Part => ({
    row: { name, length: long, count: some },
    of: { piece: name, part: undefined },
  });
  const few = Math.min(count, fewOf(long));
  const unending = fewOf(long) === Number.POSITIVE_INFINITY;
  const joined = unending
    ? []
    : waysToJoin({ length: long, apart, most, joined: true }).filter((parts) => parts.length > 1);
  if (joined.length === 0) return [[whole(count)]];
  const inParts = (lengths: readonly number[], some: number) =>
    lengths.map((each, i): Part => {
      const part = `${i + 1} of ${lengths.length}`;
      const size = marked({ value: stepsInMm(system, each), unit: unit("mm") }, system);
      return { row: { name: `${name} (${part}, ${size})`, length: each, count: some }, of: { piece: name, part } };
    });
  const mixed = evenly(few, MOST_WHOLE).flatMap((some) =>
    some === count
      ? [[whole(count)]]
      : joined.slice(0, BESIDE_WHOLE).map((lengths) => [whole(some), ...inParts(lengths, count - some)]),
  );
  return [...mixed, ...joined.map((lengths) => inParts(lengths, count))];
}

/** From a number down to one, evenly, so many of them at most. */
function evenly(from: number, most: number): readonly number[] {
  const step = Math.max(1, Math.ceil(from / most));
  return Array.from({ length: Math.ceil(from / step) }, (_, i) => from - i * step);
}
