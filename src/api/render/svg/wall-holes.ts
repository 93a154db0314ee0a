/** Where openings of a boarded wall stand, and what they leave of the rails and studs behind it. */
import type { WallSide } from "../../../estimate/pieces/frame.js";
import { mm, type Subject } from "./subject.js";

/** Sides that are seen from outside with the corner from which they are measured on the right. */
const FROM_RIGHT = new Set(["far", "high", "left"]);

/** Whether a side is measured from the right. */
export const fromRight = (name: string): boolean => FROM_RIGHT.has(name);

/** An opening, in millimetres as it is drawn. */
export interface Opening {
  /** Its clear edges, from the left. */
  readonly x: readonly [from: number, to: number];
  /** Above the posts' bases. */
  readonly y: readonly [from: number, to: number];
  readonly window: boolean;
  readonly size: string;
  /** From the corner that the wall is measured from. */
  readonly place: string;
}

/** A wall as far as its openings need it. */
interface Measured {
  readonly side: WallSide;
  readonly subject: Subject;
  readonly width: number;
  readonly bottom: number;
}

/** All openings of a wall. */
export function openingsOf({ side, subject, width, bottom }: Measured): Opening[] {
  const found: Opening[] = [];
  for (let i = 1; ; i++) {
    const at = (name: string) => subject.known(`walls.${side.name}.opening${i}.${name}`);
    const [wide, high, count, sill] = [at("width"), at("height"), at("count"), at("sill")];
    if (!wide || !high || !count) return found;
    const size = `${subject.long(wide)} × ${subject.long(high)}`;
    const low = bottom + (sill ? mm(sill) : 0);
    for (let n = 1; n <= mm(count); n++) {
      const from = at(n === 1 ? "from" : `from${n}`);
      if (!from) continue;
      const left = fromRight(side.name) ? width - mm(from) - mm(wide) : mm(from);
      const place = subject.long(from);
      found.push({ x: [left, left + mm(wide)], y: [low, low + mm(high)], window: sill !== undefined, size, place });
    }
  }
}

/** What openings leave of a line from one place to another. @param across - Of a line along the wall; else up it. */
export function besideOpenings(
  holes: readonly Opening[],
  [from, to]: readonly [number, number],
  at: number,
  across: boolean,
): [number, number][] {
  return holes.reduce<[number, number][]>(
    (left, { x, y }) => {
      const [along, over] = across ? [x, y] : [y, x];
      if (at <= over[0] || at >= over[1]) return left;
      return left.flatMap(([a, b]): [number, number][] =>
        [[a, Math.min(b, along[0])] as [number, number], [Math.max(a, along[1]), b] as [number, number]].filter(
          ([c, d]) => d > c,
        ),
      );
    },
    [[from, to]],
  );
}
