/**
 * Frames walked member by member in plain coordinates, to judge the piece rules. Shares nothing with them: it counts by
 * stepping along, and measures sticks as how far the corners of the cut piece lie apart along its axis. Inches and floats.
 *
 * Axes: x across the building from the outer face of the near (or low) beam, y along it from the outer face of the first
 * post, z up from the top of the near beam.
 */

/** Sizes in inches, as they were drawn. */
export interface Sizes {
  readonly kind: "gable" | "lean-to" | "ledger" | "hip" | "pergola";
  readonly span: number;
  readonly length: number;
  readonly height: number;
  readonly rise: number;
  /** Past the near, far and end sides. */
  readonly near: number;
  readonly far: number;
  readonly end: number;
  readonly bays: number;
  /** Centre to centre of posts, bay by bay from the first end; all alike where absent. */
  readonly unlike: readonly number[] | undefined;
  readonly endBays: number;
  readonly rafterSpacing: number;
  readonly purlinSpacing: number;
  readonly longest: number;
  readonly short: boolean;
  readonly square: boolean;
  readonly brace: number;
  readonly post: number;
  readonly beam: { readonly thick: number; readonly deep: number };
  readonly rafter: { readonly thick: number; readonly deep: number };
  readonly hip: { readonly thick: number; readonly deep: number };
  readonly ridge: number;
  readonly ledger: number;
  /** Width of purlins; of those on the ends of a hip. */
  readonly purlin: number;
  readonly endPurlin: number;
}

export type Point = readonly [x: number, y: number, z: number];

/** Equal sticks: how many, and how long the stock must be. */
export interface Sticks {
  readonly count: number;
  readonly length: number;
}

const TINY = 1e-7;

/** Centres from one flush end to the other, none further apart than `most`; by stepping until the end is near enough. */
export function centres(length: number, width: number, most: number, short = false): number[] {
  const reach = length - width;
  let spaces = 0;
  while (spaces * most < reach - TINY) spaces++;
  return Array.from({ length: spaces + 1 }, (_, i) =>
    i === spaces ? length - width / 2 : width / 2 + (short ? i * most : (i * reach) / spaces),
  );
}

/** Length of a stick along its axis, from the corners of what is cut from it. */
export function extent(axis: Point, corners: readonly Point[]): number {
  const size = Math.hypot(...axis);
  const along = corners.map((p) => (p[0] * axis[0] + p[1] * axis[1] + p[2] * axis[2]) / size);
  return Math.max(...along) - Math.min(...along);
}

/** A rafter seen from the side between two level places, by its four corners. */
export function rafterStick(s: Sizes, tail: number, top: number, deep = s.rafter.deep): number {
  const slope = s.rise / 12;
  const plumb = deep * Math.hypot(1, slope);
  const angle = Math.atan(slope);
  const lowerTail: Point = s.square
    ? [tail + deep * Math.sin(angle), 0, tail * slope - deep * Math.cos(angle)]
    : [tail, 0, tail * slope - plumb];
  return extent(
    [1, 0, slope],
    [[tail, 0, tail * slope], lowerTail, [top, 0, top * slope], [top, 0, top * slope - plumb]],
  );
}

/** A hip: upper and lower edge along its middle, between the corner of the eaves and the ridge's end. */
export function hipStick(s: Sizes): number {
  const slope = s.rise / 12;
  const [tail, top] = [-s.near, s.span / 2 - s.rafter.thick / 2];
  const plumb = s.hip.deep * Math.hypot(1, slope / Math.SQRT2);
  const at = (c: number, down: number): Point => [c, c, c * slope - down];
  return extent([1, 1, slope], [at(tail, 0), at(tail, plumb), at(top, 0), at(top, plumb)]);
}

/** A jack at a distance from the ridge's end: cut along the face of the hip, whose middle is the line x = y. */
export function jackStick(s: Sizes, fromEnd: number): number {
  const slope = s.rise / 12;
  const plumb = s.rafter.deep * Math.hypot(1, slope);
  const y = s.span / 2 - fromEnd;
  const angle = Math.atan(slope);
  const corners: Point[] = [-1, 1].flatMap((side) => {
    const edge = y + (side * s.rafter.thick) / 2;
    // The near face of the hip lies half its thickness from its middle, measured square to it.
    const top = edge - (s.hip.thick / 2) * Math.SQRT2;
    const tail: Point = [-s.near, edge, -s.near * slope];
    const lower: Point = s.square
      ? [-s.near + s.rafter.deep * Math.sin(angle), edge, -s.near * slope - s.rafter.deep * Math.cos(angle)]
      : [-s.near, edge, -s.near * slope - plumb];
    return [tail, lower, [top, edge, top * slope], [top, edge, top * slope - plumb]] as Point[];
  });
  return extent([1, 0, slope], corners);
}

/** Distances from the ridge's end at which jacks stand, up to the corner. */
export function jackPlaces(s: Sizes): number[] {
  const run = s.span / 2;
  let spaces = 0;
  const shared = s.short ? run - s.beam.thick - s.hip.thick : run;
  while (spaces * s.rafterSpacing < shared - TINY) spaces++;
  const apart = s.short ? s.rafterSpacing : run / spaces;
  return Array.from({ length: Math.max(0, spaces - 1) }, (_, i) => (i + 1) * apart);
}

/** Centres of the posts along a side, from the outer face of the first. */
export function postLine(s: Sizes): number[] {
  if (!s.unlike) return Array.from({ length: s.bays + 1 }, (_, i) => s.post / 2 + (i * (s.length - s.post)) / s.bays);
  const places = [s.post / 2];
  for (const bay of s.unlike) places.push((places.at(-1) as number) + bay);
  return places;
}

/** Middles of so many equal bays between corner posts that are flush with both ends. */
export const wallLine = (width: number, post: number, bays: number): number[] =>
  Array.from({ length: bays + 1 }, (_, i) => post / 2 + (i * (width - post)) / bays);

/**
 * Middles of rows up a slope, the outer ones flush: evenly, or with so many halved spaces next to both ends; edge to edge there
 * where half a space has no room for one.
 */
export function rowMiddles(slope: number, width: number, most: number, closer = 0): number[] {
  const even = centres(slope, width, most);
  if (closer === 0 || even.length < 2) return even;
  const space = (even[1] as number) - (even[0] as number);
  const spaces = even.length - 1;
  if (space / 2 > width + TINY) {
    const rows = spaces + 1 + Math.min(2 * closer, spaces);
    // As many halves as there would be, of so many whole and halved spaces together.
    const whole = rows - 1 - 2 * closer;
    const halves = rows - 1 >= 4 * closer ? 2 * whole : rows - 1;
    const places = Array.from({ length: halves + 1 }, (_, half) => half).filter(
      (half) => half % 2 === 0 || half < 2 * closer || half > halves - 2 * closer,
    );
    return places.map((half) => width / 2 + (half * (slope - width)) / halves);
  }
  const block = (1 + closer) * width;
  const between = slope - 2 * block + width;
  let middle = 0;
  while (middle * most < between - TINY) middle++;
  const blocks = Array.from({ length: 1 + closer }, (_, i) => width / 2 + i * width);
  const inner = Array.from(
    { length: Math.max(0, middle - 1) },
    (_, i) => block - width / 2 + ((i + 1) * between) / middle,
  );
  return [...blocks, ...inner, ...blocks.map((at) => slope - at).reverse()];
}

/** Posts by plan: one at a time round the frame, each place once. */
export function postPlaces(s: Sizes): { readonly rows: number; readonly ends: number } {
  const seen = new Set<string>();
  const along = (n: number) => Array.from({ length: n + 1 }, (_, i) => i / n);
  const sides = s.kind === "ledger" ? [0] : [0, 1];
  for (const side of sides) for (const place of postLine(s)) seen.add(`${side} ${place}`);
  const rows = seen.size;
  for (const end of [0, 1])
    for (const place of along(s.endBays)) if (place > 0 && place < 1) seen.add(`${place} ${end}`);
  return { rows, ends: seen.size - rows };
}

/** Braces by walking round: two in each bay of every row, and two below every beam across that stands on posts. */
export function braceCount(s: Sizes): number {
  let count = 0;
  const rows = s.kind === "ledger" ? 1 : 2;
  for (let row = 0; row < rows; row++) for (let bay = 0; bay < s.bays; bay++) count += 2;
  if (s.kind === "gable") for (let pair = 0; pair <= s.bays; pair++) count += 2;
  if (s.kind === "lean-to") for (let end = 0; end < 2; end++) count += 2;
  if (s.kind === "ledger") for (let end = 0; end < 2; end++) count += 1;
  if (s.kind === "hip") {
    for (let end = 0; end < 2; end++) for (let bay = 0; bay < s.endBays; bay++) count += 2;
    for (let tie = 1; tie < s.bays; tie++) count += 2;
  }
  return count;
}

/** Rows up a slope, the outer ones flush. */
export const rowCount = (slope: number, width: number, most: number): number => centres(slope, width, most).length;

const from = (o: Point, p: Point): Point => [p[0] - o[0], p[1] - o[1], p[2] - o[2]];

/** Area of a flat polygon in space, by the cross products of its corners about the first. */
export function polygonArea(corners: readonly Point[]): number {
  const [o, ...rest] = corners as [Point, ...Point[]];
  const sum: [number, number, number] = [0, 0, 0];
  for (let i = 0; i + 1 < rest.length; i++) {
    const [a, b] = [from(o, rest[i] as Point), from(o, rest[i + 1] as Point)];
    sum[0] += a[1] * b[2] - a[2] * b[1];
    sum[1] += a[2] * b[0] - a[0] * b[2];
    sum[2] += a[0] * b[1] - a[1] * b[0];
  }
  return Math.hypot(...sum) / 2;
}

/** The planes of the roof by their corners, on the rafters' upper edges. */
export function roofPlanes(s: Sizes): Point[][] {
  const slope = s.rise / 12;
  const [y0, y1] = [-s.end, s.length + s.end];
  const run = s.span / 2;
  const at = (x: number, y: number, from = x): Point => [x, y, from * slope];
  switch (s.kind) {
    case "gable":
      return [
        [at(-s.near, y0), at(-s.near, y1), at(run, y1), at(run, y0)],
        [at(s.span + s.far, y0, -s.far), at(s.span + s.far, y1, -s.far), at(run, y1), at(run, y0)],
      ];
    case "lean-to":
      return [[at(-s.near, y0), at(-s.near, y1), at(s.span + s.far, y1), at(s.span + s.far, y0)]];
    case "ledger":
      return [[at(-s.near, y0), at(-s.near, y1), at(s.span - s.ledger, y1), at(s.span - s.ledger, y0)]];
    case "hip": {
      const [o, w, l] = [s.near, s.span, s.length];
      const corners: Point[] = [at(-o, -o, -o), at(w + o, -o, -o), at(w + o, l + o, -o), at(-o, l + o, -o)];
      const [a, b, c, d] = corners as [Point, Point, Point, Point];
      const [first, last] = [at(run, run), at(run, l - run)];
      return [
        [a, d, last, first],
        [b, c, last, first],
        [a, b, first],
        [c, d, last],
      ];
    }
    default:
      return [];
  }
}

/** Whole boards that fit a width, and courses or boards that cover one: by laying them down. */
export function boardsOver(width: number, cover: number, first: number): number {
  let [boards, covered] = [1, first];
  while (covered < width - TINY) {
    boards++;
    covered += cover;
  }
  return boards;
}

/** Boards of a pitch that lie whole within a width. */
export function boardsWithin(width: number, cover: number): number {
  let boards = 0;
  while ((boards + 1) * cover <= width + TINY) boards++;
  return boards;
}

/** Lookouts up one rake: a step at a time, none where rafter and ridge or fascia hold already. */
export function lookoutsUp(slope: number, most: number): number {
  let found = 0;
  while ((found + 1) * most < slope - TINY) found++;
  return found;
}
