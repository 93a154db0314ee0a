/** Pieces of a stock order as rows of its problem: whole, or in parts that are joined. */
import { toQuantity } from "../../catalog/reading.js";
import type { Quantity } from "../quantity/quantity.js";
import { type MeasureSystem, marked } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import type { StockOrder } from "../request/stock-order.js";
import { heldAs } from "./held-joints.js";
import { stepsInMm, stepsOf } from "./lumber.js";
import { type Joinable, waysAlike } from "./stock/joint-choice.js";
import { type Had, type WaysToJoin, waysToJoin } from "./stock/joints.js";
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

/** Sticks that take a piece whole: none; some; as many as may be wanted. */
export type Takers = "none" | "some" | "endless";

/** How pieces are counted and joined. */
interface Joining {
  readonly steps: Steps;
  /** The longest part that a stick on offer gives. */
  readonly most: number;
  /** What takes a length whole. */
  readonly takers: (length: number) => Takers;
  readonly system: MeasureSystem;
}

/** Equal pieces of an order with the rows that they come to. */
export interface WantedPiece extends Joinable {
  readonly name: string;
  readonly length: number;
  /** How each may be joined; none where none may be. */
  readonly join: WaysToJoin;
  /** Whether it is only what the order wants of parts and joints that leaves no way to join it. */
  readonly withheld: boolean;
  /** Had so. */
  readonly rows: (had: Had) => readonly Part[];
  /** How a held plan has them, by how often it cuts each name. */
  readonly held: (cut: ReadonlyMap<string, number>) => Had;
}

/** Pieces are joined where there are supports to join them over, and not sticks without end that take them whole. */
export function wantedPiece(
  { name, length, count, supports, leastPart, mostJoints }: StockOrder["pieces"][number],
  { steps, most, takers, system }: Joining,
): WantedPiece {
  const long = steps.up(toQuantity(length, "ft"));
  const apart = supports === undefined ? 0 : steps.down(toQuantity(supports, "ft"));
  const least = leastPart === undefined ? 0 : steps.up(toQuantity(leastPart, "ft"));
  const limits = { least, ...(mostJoints !== undefined && { mostJoints }) };
  const needed = takers(long) !== "endless";
  const join = needed ? waysToJoin({ length: long, apart, most, ...limits }) : { ways: [], all: true };
  const withheld = needed && join.ways.length === 0 && waysToJoin({ length: long, apart, most }).ways.length > 0;
  // Each part says how long it is, so that a held plan tells how the piece is joined.
  const named = join.ways.map((lengths) =>
    lengths.map((each, i) => {
      const part = `${i + 1} of ${lengths.length}`;
      const size = marked({ value: stepsInMm(system, each), unit: unit("mm") }, system);
      return { name: `${name} (${part}, ${size})`, length: each, part };
    }),
  );
  const rows = ({ whole, joined }: Had): Part[] => {
    const all: Part = { row: { name, length: long, count: whole }, of: { piece: name, part: undefined } };
    const parts = new Map<string, Part>();
    for (const { way, count: times } of joined)
      for (const { part, ...row } of named[way] ?? []) {
        const before = parts.get(row.name)?.row.count ?? 0;
        parts.set(row.name, { row: { ...row, count: before + times }, of: { piece: name, part } });
      }
    return [all, ...parts.values()].filter(({ row }) => row.count > 0);
  };
  const mostWhole = join.ways.length > 0 && takers(long) === "none" ? 0 : count;
  const names = named.map((all) => all.map((part) => part.name));
  const held = (cut: ReadonlyMap<string, number>): Had => heldAs({ name, count, mostWhole, names }, cut);
  return { name, count, length: long, mostWhole, joints: waysAlike(join.ways), join, withheld, rows, held };
}
