/**
 * Where the pieces of a frame stand and lie, by their corners. Of each piece only its length and, along a run, its beginning are
 * taken as laid; everything else is walked. So a piece that is too long or begins too late shows where it ends.
 *
 * Axes as in `frame-walker.ts`, but z up from the post bases. Inches and floats.
 */
import { boardsOver, centres, jackPlaces, type Point, postLine, type Sizes, wallLine } from "./frame-walker.js";

/** A group as it was laid. */
export interface LaidGroup {
  readonly name: string;
  readonly length: number;
  /** From the beginning of its run; zero where it is the whole run. */
  readonly begins: readonly number[];
}

/** One piece: its corners, and how far it may pass what rafters and posts take up, sideways and upwards. */
export interface Placed {
  readonly corners: readonly Point[];
  readonly past: number;
  readonly above: number;
  /** Ends that meet another piece: how far they are from it. */
  readonly misses: readonly number[];
}

type Range = readonly [from: number, to: number];

/** What is sized alike in every drawn structure. */
const TIE = 7;
const FASCIA = { thick: 1, deep: 5 };
const SKIN = 2;

const pitchOf = (s: Sizes): number => (s.kind === "pergola" ? 0 : s.rise / 12);
const stretch = (s: Sizes): number => Math.hypot(1, pitchOf(s));

/** Upper edge of a rafter above its plate, at the outer face: by the default seat. */
export function abovePlate(s: Sizes): number {
  if (s.kind === "pergola") return s.rafter.deep;
  const pitch = pitchOf(s);
  const seat = Math.min(s.beam.thick, s.rafter.deep / (4 * (pitch / stretch(s))));
  return s.rafter.deep * stretch(s) - seat * pitch;
}

/** Level, from the outer face of the nearest plate that a slope stands on. */
function inwardsOf(s: Sizes, x: number, y: number): number {
  switch (s.kind) {
    case "gable":
      return Math.min(x, s.span - x);
    case "hip":
      return Math.min(x, s.span - x, y, s.length - y);
    case "pergola":
      return 0;
    default:
      return x;
  }
}

/** The rafters' upper edges over a point of the plan. */
export function roofOver(s: Sizes, x: number, y: number): number {
  return s.height + abovePlate(s) + inwardsOf(s, x, y) * pitchOf(s);
}

/** How far a piece is outside the space that the structure takes; nothing where it is inside. */
export function outside(s: Sizes, { corners, past, above }: Placed): number {
  const end = s.kind === "hip" ? s.near : s.end;
  const far = s.kind === "ledger" ? 0 : s.kind === "hip" || s.kind === "pergola" ? s.near : s.far;
  const [base, pitch] = [s.height + abovePlate(s), pitchOf(s)];
  let most = 0;
  for (const [x, y, z] of corners) {
    const across = Math.max(-s.near - x, x - s.span - far) - past;
    const along = Math.max(-end - y, y - s.length - end) - past;
    most = Math.max(most, across, along, -z, z - base - inwardsOf(s, x, y) * pitch - above);
  }
  return most;
}

const box = ([a, b]: Range, [c, d]: Range, [e, f]: Range): Point[] => [
  [a, c, e],
  [a, c, f],
  [a, d, e],
  [a, d, f],
  [b, c, e],
  [b, c, f],
  [b, d, e],
  [b, d, f],
];

const placed = (corners: readonly Point[], misses: readonly number[] = [], past = 0, above = 0): Placed => ({
  corners,
  past,
  above,
  misses,
});

/** The same on the other side of the building, or at its other end. */
const acrossFrom = (s: Sizes, piece: Placed): Placed => ({
  ...piece,
  corners: piece.corners.map(([x, y, z]): Point => [s.span - x, y, z]),
});
const endFrom = (s: Sizes, piece: Placed): Placed => ({
  ...piece,
  corners: piece.corners.map(([x, y, z]): Point => [x, s.length - y, z]),
});
const bothSides = (s: Sizes, pieces: readonly Placed[]): Placed[] =>
  pieces.flatMap((piece) => [piece, acrossFrom(s, piece)]);
const bothEnds = (s: Sizes, pieces: readonly Placed[]): Placed[] =>
  pieces.flatMap((piece) => [piece, endFrom(s, piece)]);
/** Sides and ends of a corner change places: the plan mirrored in the line of the hip. */
const turned = (piece: Placed): Placed => ({
  ...piece,
  corners: piece.corners.map(([x, y, z]): Point => [y, x, z]),
});

/** Upper end of the slope in plan: face of the ridge or the wall, or the end of the high tails. */
function topOf(s: Sizes): number {
  if (s.kind === "gable") return s.span / 2 - s.ridge / 2;
  if (s.kind === "hip") return s.span / 2 - s.ridge / 2;
  return s.kind === "ledger" ? s.span - s.ledger : s.span + s.far;
}

/** Along the upper edge of a slope and square to it, out from a tail so far past the plate. */
function onSlope(s: Sizes, tail: number) {
  const [pitch, size] = [pitchOf(s), stretch(s)];
  const low = s.height + abovePlate(s) - tail * pitch;
  return (along: number, up: number, y: number): Point => [
    -tail + (along - up * pitch) / size,
    y,
    low + (along * pitch + up) / size,
  ];
}

/**
 * A stick up a slope between two faces, its upper end cut plumb; found from its tail and its length.
 * @param deep - Below the upper edge; its own plumb depth is left at the upper end.
 */
function upSlope(s: Sizes, tail: number, length: number, faces: Range, deep: number, square: boolean) {
  const pitch = pitchOf(s);
  const at = onSlope(s, tail);
  // A plumb cut leaves the lower corner further down the slope than the upper one.
  const reach = square ? length : length - deep * pitch;
  const plumb = deep * stretch(s);
  const corners = faces.flatMap((y): Point[] => {
    const [tailTop, upper] = [at(0, 0, y), at(reach, 0, y)];
    const tailLow: Point = square ? at(0, -deep, y) : [tailTop[0], y, tailTop[2] - plumb];
    return [tailTop, tailLow, upper, [upper[0], y, upper[2] - plumb]];
  });
  return { corners, top: at(reach, 0, 0)[0] };
}

/** Pieces of runs along the building, from its end so far past the posts. */
function along(group: LaidGroup, from: number, x: Range, z: Range, past = 0): Placed[] {
  return group.begins.map((at) => placed(box(x, [from + at, from + at + group.length], z), [], past));
}

const sidesOf = (s: Sizes, name: string): readonly number[] => {
  if (name.includes("-near")) return [s.near];
  if (name.includes("-far")) return [s.far];
  return s.kind === "gable" ? [s.near, s.far] : [s.near];
};

/** The far slope of a gable is the near one, seen from the other side. */
const onItsSide = (s: Sizes, group: LaidGroup, pieces: readonly Placed[], side: number): Placed[] =>
  s.kind === "gable" && (side === 1 || group.name.includes("-far"))
    ? pieces.map((one) => acrossFrom(s, one))
    : [...pieces];

function rafters(s: Sizes, group: LaidGroup, ys: readonly Range[]): Placed[] {
  if (s.kind === "pergola") {
    const z: Range = [s.height, s.height + s.rafter.deep];
    return ys.map((y) => placed(box([-s.near, -s.near + group.length], y, z), [s.span + 2 * s.near - group.length]));
  }
  return sidesOf(s, group.name).flatMap((tail, side) => {
    const pieces = ys.map((faces) => {
      const { corners, top } = upSlope(s, tail, group.length, faces, s.rafter.deep, s.square);
      return placed(corners, [top - topOf(s)]);
    });
    return onItsSide(s, group, pieces, side);
  });
}

const around = (middle: number, thick: number): Range => [middle - thick / 2, middle + thick / 2];

/** Middles of the rafters along straight slopes, or along a pergola's beams. */
export function rafterLines(s: Sizes): number[] {
  if (s.kind !== "pergola") return centres(s.length, s.rafter.thick, s.rafterSpacing, s.short);
  return centres(s.length + 2 * s.end, s.rafter.thick, s.rafterSpacing).map((y) => y - s.end);
}

/** Posts, and what lies on them or stands between them. */
function frameOf(s: Sizes, group: LaidGroup): Placed[] | undefined {
  const { name, length } = group;
  const is = (base: string) => name === base || name.startsWith(`${base}-`);
  const past = s.kind === "hip" ? 0 : s.end;
  const under = s.height - s.beam.deep;
  const post: Range = [0, s.post];
  const highTop = s.height + (s.span - s.beam.thick) * pitchOf(s);
  const standing = (y: number, top: number): Placed =>
    placed(box(post, around(y, s.post), [0, length]), [length - top]);
  const beam = (top: number) => along(group, -past, [0, s.beam.thick], [top - s.beam.deep, top]);
  if (is("high-posts")) return postLine(s).map((y) => acrossFrom(s, standing(y, highTop - s.beam.deep)));
  if (is("low-posts")) return postLine(s).map((y) => standing(y, under));
  if (is("posts")) {
    const ends = s.kind === "hip" ? wallLine(s.span, s.post, s.endBays).slice(1, -1) : [];
    return [
      ...bothSides(
        s,
        postLine(s).map((y) => standing(y, under)),
      ),
      ...bothEnds(
        s,
        ends.map((x) => placed(box(around(x, s.post), post, [0, length]), [length - under])),
      ),
    ];
  }
  if (is("end-posts")) {
    const middles = wallLine(s.span, s.post, s.endBays).slice(1, -1);
    const up = s.height - (s.kind === "hip" ? s.beam.deep : TIE);
    return bothEnds(
      s,
      middles.map((x) => placed(box(around(x, s.post), post, [0, length]), [length - up])),
    );
  }
  if (is("low-beams")) return beam(s.height);
  if (is("high-beams")) return beam(highTop).map((one) => acrossFrom(s, one));
  if (is("beams")) return bothSides(s, beam(s.height));
  if (s.kind === "hip" && is("end-beams")) {
    const z: Range = [under, s.height];
    const one = group.begins.map((at) => placed(box([at, at + length], [0, s.beam.thick], z)));
    return bothEnds(s, one);
  }
  if (is("gable-beams") || is("ties") || is("end-beams")) {
    const line = postLine(s);
    const ys = is("ties") ? line.slice(1, -1) : [line[0] as number, line.at(-1) as number];
    const z: Range = [s.height - TIE, s.height];
    return ys.map((y) => placed(box([0, length], around(y, 4), z), [length - s.span]));
  }
  if (is("king-posts")) {
    const z: Range = [s.height, s.height + length];
    return postLine(s).map((y) => placed(box(around(s.span / 2, 4), around(y, 4), z)));
  }
  if (is("braces")) return braces(s, length);
  if (is("bearers")) {
    const one = along(group, 0, [s.post, s.post + 4], [0, 6]);
    return s.kind === "ledger" ? one : bothSides(s, one);
  }
  if (is("floor-ledger")) return along(group, 0, [s.span - 4, s.span], [0, 6]);
  if (is("floor-boards")) {
    // Half an inch apart; the last one is ripped.
    const rows = boardsOver(s.span, 6.5, 6);
    const x = (i: number): Range => [i * 6.5, Math.min(s.span, i * 6.5 + 6)];
    return Array.from({ length: rows }, (_, i) => along(group, 0, x(i), [6, 7])).flat();
  }
  if (is("joists"))
    return centres(s.length, 2, 17).map((y) => placed(box([0, length], around(y, 2), [0, 6]), [length - s.span]));
  return undefined;
}

/** Two in each bay of every row, and two under each beam across; from a post's face up to the beam's underside. */
function braces(s: Sizes, length: number): Placed[] {
  const leg = length / Math.SQRT2;
  const under = s.height - s.beam.deep;
  const z: Range = [under - leg, under];
  const inBays = (line: readonly number[]): Range[] =>
    line.slice(1).flatMap((y, i): Range[] => {
      const [from, to] = [(line[i] as number) + s.post / 2, y - s.post / 2];
      return [
        [from, from + leg],
        [to - leg, to],
      ];
    });
  // Two in one bay do not cross.
  const crossing = (line: readonly number[]): number[] =>
    line.slice(1).map((at, i) => Math.max(0, 2 * leg - (at - (line[i] as number) - s.post)));
  const rows = inBays(postLine(s)).map((y) => placed(box([0, s.post], y, z), crossing(postLine(s))));
  const low = s.height - TIE;
  const room = (s.span - 2 * s.post) / (s.kind === "ledger" ? 1 : 2);
  const across = (y: number): Placed =>
    placed(box([s.post, s.post + leg], around(y, 4), [low - leg, low]), [Math.max(0, leg - room)]);
  const line = postLine(s);
  const corners = [line[0] as number, line.at(-1) as number];
  const inner = line.slice(1, -1);
  switch (s.kind) {
    case "pergola":
      return bothSides(s, rows);
    case "gable":
      return bothSides(s, [...rows, ...line.map(across)]);
    case "lean-to":
      return bothSides(s, [...rows, ...corners.map(across)]);
    case "ledger":
      return [...rows, ...corners.map(across)];
    case "hip": {
      const round = wallLine(s.span, s.post, s.endBays);
      const ends = inBays(round).map((x) => placed(box(x, [0, s.post], z), crossing(round)));
      return [...bothSides(s, [...rows, ...inner.map(across)]), ...bothEnds(s, ends)];
    }
  }
}

/** Ridge, rafters of all kinds, and what lies on or hangs from them. */
function roofOf(s: Sizes, group: LaidGroup, more: Laying): Placed[] | undefined {
  const { name, length } = group;
  const is = (base: string) => name === base || name.startsWith(`${base}-`);
  const pitch = pitchOf(s);
  const { thick } = s.rafter;
  const lines = rafterLines(s).map((y) => around(y, thick));
  const ends: Range[] = [
    [-s.end, -s.end + thick],
    [s.length + s.end - thick, s.length + s.end],
  ];
  if (is("ridge")) {
    const top = s.height + abovePlate(s) + (s.span / 2 - s.ridge / 2) * pitch;
    const x = around(s.span / 2, s.ridge);
    if (s.kind !== "hip") return along(group, -s.end, x, [top - more.ridgeDeep, top]);
    const from = s.span / 2 - thick / 2;
    const ends = [from + length - (s.length - from)];
    return [placed(box(x, [from, from + length], [top - more.ridgeDeep, top]), ends, 0, bevelled(s))];
  }
  if (s.kind === "hip") return hippedOf(s, group);
  if (is("rafters")) return rafters(s, group, lines);
  if (is("fly-rafters")) return rafters(s, group, ends);
  if (is("ledger")) {
    const top = s.height + abovePlate(s) + topOf(s) * pitch;
    return along(group, -s.end, [s.span - s.ledger, s.span], [top - 8, top]);
  }
  if (is("slats")) {
    const rows = centres(s.span + 2 * s.near, 2, more.slats);
    const z: Range = [s.height + s.rafter.deep, s.height + s.rafter.deep + SKIN];
    return rows.flatMap((x) => along(group, -s.end, around(x - s.near, 2), z).map((one) => ({ ...one, above: SKIN })));
  }
  if (is("lookouts")) return lookoutsOf(s, group, more);
  if (is("purlins") || is("deck-boards")) return rowsOf(s, group, is("purlins") ? more.purlinRows : more.boardRows);
  if (is("eave-fascia") || is("low-fascia")) {
    return sidesOf(s, name).flatMap((tail, side) => {
      const low = s.height + abovePlate(s) - tail * pitch;
      const one = along(group, -s.end, [-tail - FASCIA.thick, -tail], [low - FASCIA.deep, low], FASCIA.thick);
      return onItsSide(
        s,
        group,
        one.map((each) => ({ ...each, above: FASCIA.thick * pitch })),
        side,
      );
    });
  }
  if (is("high-fascia")) {
    const x = s.span + s.far;
    const top = s.height + abovePlate(s) + x * pitch;
    return along(group, -s.end, [x, x + FASCIA.thick], [top - FASCIA.deep, top], FASCIA.thick);
  }
  if (is("rake-fascia")) {
    const outer: Range[] = [
      [-s.end - FASCIA.thick, -s.end],
      [s.length + s.end, s.length + s.end + FASCIA.thick],
    ];
    const peak = s.kind === "gable" ? s.span / 2 : topOf(s);
    return sidesOf(s, name).flatMap((tail, side) => {
      const pieces = outer.map((faces) => {
        const { corners, top } = upSlope(s, tail, length, faces, FASCIA.deep, false);
        return placed(corners, [top - peak], FASCIA.thick);
      });
      return onItsSide(s, group, pieces, side);
    });
  }
  return undefined;
}

/** What the walk knows of rows up a slope: places of their middles along it by the tail, and how wide they are. */
export interface Laying {
  readonly ridgeDeep: number;
  readonly slats: number;
  readonly lookouts: number;
  readonly purlinRows: (slope: number) => { readonly middles: readonly number[]; readonly width: number };
  readonly boardRows: (slope: number) => { readonly middles: readonly number[]; readonly width: number };
}

/** Rows along straight slopes, flat on the rafters. */
function rowsOf(s: Sizes, group: LaidGroup, rows: Laying["purlinRows"]): Placed[] {
  return sidesOf(s, "").flatMap((tail, side) => {
    const at = onSlope(s, tail);
    const slope = (topOf(s) + tail) * stretch(s);
    const { middles, width } = rows(slope);
    const pieces = middles.flatMap((middle) =>
      group.begins.map((begin) => {
        const y: Range = [-s.end + begin, -s.end + begin + group.length];
        // The last board of a closed deck is ripped.
        const ups: Range = [middle - width / 2, Math.min(slope, middle + width / 2)];
        const corners = ups.flatMap((up) => [0, SKIN].flatMap((high) => y.map((one) => at(up, high, one))));
        return placed(corners, [], SKIN, SKIN * stretch(s));
      }),
    );
    return onItsSide(s, { ...group, name: "" }, pieces, side);
  });
}

/** Flat below the rafters' upper edges, from the first inner rafter's face to the fly rafter's. */
function lookoutsOf(s: Sizes, group: LaidGroup, { lookouts }: Laying): Placed[] {
  const lines = rafterLines(s);
  const { thick } = s.rafter;
  const inner = [lines[1] as number, lines.at(-2) as number];
  const fly = -s.end + thick;
  const which = group.name.endsWith("-last") ? [1] : s.short && lines.length > 2 ? [0] : [0, 1];
  return sidesOf(s, "").flatMap((tail, side) => {
    const at = onSlope(s, tail);
    const slope = (topOf(s) + tail) * stretch(s);
    let spaces = 0;
    while (spaces * lookouts < slope - 1e-7) spaces++;
    const pieces = which.flatMap((end) => {
      const from = end === 0 ? (inner[0] as number) - thick / 2 : s.length - (inner[1] as number) - thick / 2;
      return Array.from({ length: spaces - 1 }, (_, i): Placed => {
        const middle = ((i + 1) * slope) / spaces;
        const y: Range = [from - group.length, from];
        const corners = around(middle, 4).flatMap((up) => [-2, 0].flatMap((low) => y.map((one) => at(up, low, one))));
        const one = placed(corners, [from - group.length - fly]);
        return end === 0 ? one : endFrom(s, one);
      });
    });
    return onItsSide(s, { ...group, name: "" }, pieces, side);
  });
}

/** The last commons stand half over the end slopes: their outer corners, and the ridge's, are bevelled off. */
const bevelled = (s: Sizes): number => (s.rafter.thick / 2) * pitchOf(s);

/** Rafters and fascia of a hip; its rows are laid by themselves. */
function hippedOf(s: Sizes, group: LaidGroup): Placed[] | undefined {
  const { name, length } = group;
  const is = (base: string) => name === base || name.startsWith(`${base}-`);
  const { thick, deep } = s.rafter;
  const run = s.span / 2;
  const stick = (faces: Range, top: number, above = 0): Placed => {
    const found = upSlope(s, s.near, length, faces, deep, s.square);
    return placed(found.corners, [found.top - top], 0, above);
  };
  if (is("rafters")) {
    const ridgeLine = s.length - s.span;
    const commons = ridgeLine === 0 ? [0] : centres(ridgeLine, 0, s.rafterSpacing);
    return bothSides(
      s,
      commons.map((y) => stick(around(run + y, thick), run - s.ridge / 2, bevelled(s))),
    );
  }
  if (is("end-rafters")) return bothEnds(s, [turned(stick(around(run, thick), run - thick / 2))]);
  if (is("jacks")) {
    const place = jackPlaces(s)[Number(name.slice("jacks-".length)) - 1] as number;
    const faces = around(run - place, thick);
    // The face nearer to the ridge is the long one; its cheek cut lies on the hip's near face.
    const long = stick([faces[1], faces[1]], faces[1] - (s.hip.thick / 2) * Math.SQRT2);
    const short = long.corners.map(
      ([x, , z], i): Point => (i % 4 < 2 ? [x, faces[0], z] : [x - thick, faces[0], z - thick * pitchOf(s)]),
    );
    const jack: Placed = { ...long, corners: [...long.corners, ...short] };
    return bothEnds(s, bothSides(s, [jack, turned(jack)]));
  }
  if (is("hips")) return bothEnds(s, bothSides(s, [hipOf(s, length)]));
  if (is("side-fascia") || is("end-fascia")) {
    const low = s.height + abovePlate(s) - s.near * pitchOf(s);
    const from = -s.near - FASCIA.thick;
    const one = along(group, from, [from, -s.near], [low - FASCIA.deep, low], FASCIA.thick).map((each) => ({
      ...each,
      above: FASCIA.thick * pitchOf(s),
    }));
    return is("side-fascia") ? bothSides(s, one) : bothEnds(s, one.map(turned));
  }
  return undefined;
}

/** Along the line x = y, its upper corners in both planes; up to the end common. */
function hipOf(s: Sizes, length: number): Placed {
  const pitch = pitchOf(s);
  const size = Math.hypot(Math.SQRT2, pitch);
  const plumb = s.hip.deep * Math.hypot(1, pitch / Math.SQRT2);
  const off = s.hip.thick / 2 / Math.SQRT2;
  const middle = s.height + abovePlate(s) - off * pitch;
  // Its tail is cut plumb: the lower corner is further down by the depth times the slope of the hip.
  const reach = length - (s.hip.deep * pitch) / Math.SQRT2;
  const top = -s.near + reach / size;
  const corners = [-s.near, top].flatMap((c) =>
    [-1, 1].flatMap((side) =>
      [0, plumb].map((down): Point => [c - side * off, c + side * off, middle + c * pitch - down]),
    ),
  );
  return placed(corners, [top - (s.span / 2 - s.rafter.thick / 2)], off);
}

/** Every piece of a group, placed; undefined of groups that stand in walls or that nobody has told where. */
export const placesOf = (s: Sizes, group: LaidGroup, more: Laying): Placed[] | undefined =>
  frameOf(s, group) ?? roofOf(s, group, more);
