/**
 * One view of a structure: what is seen, in millimetres of the structure, `y` upwards; dimensions and numbers that point at
 * parts are placed about it when it is put on paper.
 */

/** In millimetres of the structure. */
export type Point = readonly [x: number, y: number];

/** How heavy a line is: cut through, an edge that is seen, something fine, something hidden, a line of symmetry. */
export type Weight = "cut" | "edge" | "fine" | "hidden" | "center";

export interface Shape {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly weight: Weight;
  /** Hides what was drawn before it. */
  readonly opaque: boolean;
}

export type Side = "below" | "above" | "left" | "right";

/** A distance, written beside the view on a line of its own. */
export interface Dimension {
  readonly from: number;
  readonly to: number;
  readonly side: Side;
  /** Nearest to the view is 0. */
  readonly row: number;
  readonly text: string;
  /** Where its words go when they do not fit between its ends. */
  readonly past: "from" | "to";
}

/** A number in a circle that points at a part; its words stand in the key. */
export interface Pointer {
  readonly at: Point;
  readonly number: number;
  /** From the part to the circle, in millimetres of paper, `y` upwards. */
  readonly away: Point;
}

/** Words at a place of the view. */
export interface Note {
  readonly at: Point;
  readonly text: string;
  readonly anchor: "start" | "middle" | "end";
  /** From the place to the words' foot, in millimetres of paper, `y` upwards. */
  readonly away: Point;
}

export class View {
  readonly shapes: Shape[] = [];
  readonly dimensions: Dimension[] = [];
  readonly pointers: Pointer[] = [];
  readonly notes: Note[] = [];

  polygon(points: readonly Point[], weight: Weight = "edge", opaque = true): void {
    this.shapes.push({ points, closed: true, weight, opaque });
  }

  line(points: readonly Point[], weight: Weight = "edge"): void {
    this.shapes.push({ points, closed: false, weight, opaque: false });
  }

  /** A piece whose sides lie along the view's own. */
  box([x0, y0]: Point, [x1, y1]: Point, weight: Weight = "edge", opaque = true): void {
    this.polygon(
      [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ],
      weight,
      opaque,
    );
  }

  /** A timber cut across: heavy, with the cross that marks end grain. */
  cut([x0, y0]: Point, [x1, y1]: Point): void {
    this.box([x0, y0], [x1, y1], "cut");
    this.line(
      [
        [x0, y0],
        [x1, y1],
      ],
      "fine",
    );
    this.line(
      [
        [x0, y1],
        [x1, y0],
      ],
      "fine",
    );
  }

  /** Distances along one side, one after the other. */
  chain(side: Side, row: number, start: number, parts: readonly (readonly [length: number, text: string])[]): void {
    let from = start;
    for (const [i, [length, text]] of parts.entries()) {
      const to = from + length;
      const past = i === 0 && parts.length > 1 ? "from" : "to";
      if (length > 0) this.dimensions.push({ from, to, side, row, text, past });
      from = to;
    }
  }

  point(number: number, at: Point, away: Point): void {
    this.pointers.push({ at, number, away });
  }

  note(at: Point, text: string, away: Point = [0, 0], anchor: Note["anchor"] = "middle"): void {
    this.notes.push({ at, text, anchor, away });
  }

  /** Corners of all that is drawn, as [least, greatest]. */
  get bounds(): readonly [Point, Point] {
    const points = this.shapes.flatMap((shape) => shape.points);
    const along = (of: 0 | 1) => points.map((point) => point[of]);
    const [xs, ys] = [along(0), along(1)];
    return [
      [Math.min(...xs), Math.min(...ys)],
      [Math.max(...xs), Math.max(...ys)],
    ];
  }
}
