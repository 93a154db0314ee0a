/** Where the names of a plot's points stand, so that none lies on another or on a point. Places only: floats. */

/** A point that has a name. */
export interface Named {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}

/** Where a name begins, ends or has its middle, and its foot. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

/** The paper: names stay on it. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  /** Height of the letters. */
  readonly size: number;
}

interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** A letter is about so wide for its height. */
const LETTER = 0.56;
/** A point with its ring. */
const RADIUS = 13;

/** A place for each, in the order given: beside the point, above or below it, then further off. */
export function placesOf(points: readonly Named[], paper: Paper): Place[] {
  const taken: Box[] = points.map(({ x, y }) => ({
    ...{ x0: x - RADIUS, x1: x + RADIUS, y0: y - RADIUS, y1: y + RADIUS },
  }));
  return points.map((point) => {
    const places = candidates(point, paper);
    const free = places.find((place) => {
      const box = boxOf(place, point.name, paper.size);
      return onPaper(box, paper) && !taken.some((other) => overlap(box, other));
    });
    const chosen = free ?? (places[0] as Place);
    taken.push(boxOf(chosen, point.name, paper.size));
    return chosen;
  });
}

function candidates({ x, y }: Named, { size }: Paper): Place[] {
  const beside = y + size / 3;
  const steps = [0, 1, 2, 3].map((step) => step * size * 1.2);
  return [
    { x: x + RADIUS + 3, y: beside, anchor: "start" },
    { x: x - RADIUS - 3, y: beside, anchor: "end" },
    ...steps.flatMap((step): Place[] => [
      { x, y: y - RADIUS - 5 - step, anchor: "middle" },
      { x, y: y + RADIUS + size + step, anchor: "middle" },
      { x: x + RADIUS, y: y - RADIUS - 5 - step, anchor: "end" },
      { x: x + RADIUS, y: y + RADIUS + size + step, anchor: "end" },
    ]),
  ];
}

function boxOf({ x, y, anchor }: Place, name: string, size: number): Box {
  const width = name.length * size * LETTER;
  const x0 = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { x0, x1: x0 + width, y0: y - size * 0.8, y1: y + size * 0.25 };
}

const overlap = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

const onPaper = ({ x0, x1, y0, y1 }: Box, { width, height }: Paper): boolean =>
  x0 >= 0 && x1 <= width && y0 >= 0 && y1 <= height;
