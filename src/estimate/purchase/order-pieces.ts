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
  /** The longest part that a stick gives. */
  readonly most: number;
  readonly system: MeasureSystem;
}

/** One piece whole, or in the ways in which it may be joined; the name of a part says how long it is, so that a held plan fits one way alone. */
export function waysOf(
  { name, length, count, supports }: StockOrder["pieces"][number],
  { steps, most, system }: Joining,
): (readonly Part[])[] {
  const long = steps.up(toQuantity(length, "ft"));
  const apart = supports === undefined ? 0 : steps.down(toQuantity(supports, "ft"));
  return waysToJoin({ length: long, apart, most }).map((lengths) =>
    lengths.map((each, i): Part => {
      if (lengths.length === 1) return { row: { name, length: long, count }, of: { piece: name, part: undefined } };
      const part = `${i + 1} of ${lengths.length}`;
      const size = marked({ value: stepsInMm(system, each), unit: unit("mm") }, system);
      return { row: { name: `${name} (${part}, ${size})`, length: each, count }, of: { piece: name, part } };
    }),
  );
}
