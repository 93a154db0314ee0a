/** Parts that views of several kinds of structure share. Everything here is in millimetres of the structure. */
import type { Cell } from "../../../estimate/sheet/expression.js";
import { mm, type Section, type Subject } from "./subject.js";
import type { Point, View } from "./view.js";

/** A slope in a view across the building: rise for one of run, and its length for one of run. */
export interface Slope {
  readonly pitch: number;
  readonly stretch: number;
}

export const slopeOf = (rise: number, run: number): Slope => ({
  pitch: rise / run,
  stretch: Math.hypot(rise, run) / run,
});

/** One rafter seen from the side. `x` grows up the slope from the plate's outer face. */
export interface RafterSide {
  readonly slope: Slope;
  /** Square to the rafter. */
  readonly depth: number;
  readonly overhang: number;
  /** Level, from the plate's face to its upper end. */
  readonly upTo: number;
  readonly squareTail: boolean;
  /** Birdsmouths: where their plumb face stands, and how deep they are, level and plumb. */
  readonly seats: readonly { readonly at: number; readonly level: number; readonly plumb: number }[];
  /** Plumb, from the level of the first seat to the upper edge. */
  readonly above: number;
}

/** Its outline, from the tail's upper corner along the upper edge and back; the first seat lies at (0, 0). */
export function rafterOutline({ slope, depth, overhang, upTo, squareTail, seats, above }: RafterSide): Point[] {
  const upper = (x: number) => above + x * slope.pitch;
  const lower = (x: number) => upper(x) - depth * slope.stretch;
  // A square tail leans in below by as much as the depth rises.
  const foot = squareTail ? -overhang + (depth * slope.pitch) / slope.stretch : -overhang;
  const notches = seats.flatMap(({ at, level, plumb }): Point[] => [
    [at, lower(at)],
    [at, lower(at) + plumb],
    [at + level, lower(at + level)],
  ]);
  const back: Point[] = [[foot, lower(foot)], ...notches, [upTo, lower(upTo)]];
  return [[-overhang, upper(-overhang)], [upTo, upper(upTo)], ...back.reverse()];
}

/** Moves an outline, and turns it left to right where `mirrored`. */
export const moved = (points: readonly Point[], [dx, dy]: Point, mirrored = false): Point[] =>
  points.map(([x, y]) => [mirrored ? dx - x : dx + x, dy + y]);

/** Purlins lie flat on the upper edges, the outer ones flush with the rafter's ends. */
export function purlinsAcross(
  { slope, overhang, above }: RafterSide,
  { t, w }: Section,
  rows: number,
  length: number,
): Point[][] {
  const [cos, sin] = [1 / slope.stretch, slope.pitch / slope.stretch];
  return rowsUp(rows, length, w).map((from) => {
    const [x, y] = [-overhang + from * cos, above - overhang * slope.pitch + from * sin];
    return [
      [x, y],
      [x + w * cos, y + w * sin],
      [x + w * cos - t * sin, y + w * sin + t * cos],
      [x - t * sin, y + t * cos],
    ];
  });
}

/** Where rows begin along a length, the outer ones flush with its ends. */
export const rowsUp = (rows: number, length: number, width: number): number[] =>
  rows === 1 ? [0] : Array.from({ length: rows }, (_, i) => (i * (length - width)) / (rows - 1));

/** Left edges of equal pieces that stand along a length, the last one where it ends. */
export function linesAlong(count: number, space: number, reach: number): number[] {
  return Array.from({ length: count }, (_, i) => Math.min(i * space, reach));
}

/** Lookouts along a rake, in plan: from the fly rafter over the end rafter to the next one. @param up - Tail to upper end, in plan. @returns where the lowest lies. */
export function lookoutsInPlan(
  view: View,
  subject: Subject,
  { from, up, ends: [left, right], rafters, thick, width }: LookoutPlan,
): number {
  const rows = subject.known("roof.lookouts");
  if (!rows) return from;
  const spaces = subject.count(rows) + 1;
  for (let i = 1; i < spaces; i++) {
    const y = from + (i * up) / spaces;
    view.box([left + thick, y - width / 2], [rafters[1] ?? 0, y + width / 2]);
    view.box([(rafters.at(-2) ?? 0) + thick, y - width / 2], [right - thick, y + width / 2]);
  }
  return from + up / spaces;
}

/** Where lookouts run: from fly rafters inside `ends` to the second rafters, on a slope `up` from `from`. */
interface LookoutPlan {
  readonly from: number;
  readonly up: number;
  readonly ends: readonly [left: number, right: number];
  readonly rafters: readonly number[];
  readonly thick: number;
  readonly width: number;
}

/** A brace from below: its foot on a post's face, its head under a beam. @param towards - 1 to the right, −1 to the left. */
export function brace(view: View, [x, y]: Point, leg: number, width: number, towards: 1 | -1): void {
  const inner = Math.max(0, leg - width * Math.SQRT2);
  view.polygon([
    [x, y - leg],
    [x + towards * leg, y],
    [x + towards * inner, y],
    [x, y - inner],
  ]);
}

/** The ground, at the posts' bases. */
export function ground(view: View, from: number, to: number): void {
  view.line(
    [
      [from, 0],
      [to, 0],
    ],
    "cut",
  );
}

/** How high a slope's triangle stands beside a gable: level with the peak, but clear of the eave with the figure below it. */
export const besideEave = (peak: number, eave: number, span: number, { pitch }: Slope): number =>
  Math.max(peak - (span / 9) * pitch, eave + span / 8);

/** The slope as a carpenter writes it: a triangle of rise over run. `at` is its lower corner on the side of the eave. */
export function slopeTriangle(
  view: View,
  [x, y]: Point,
  size: number,
  { pitch }: Slope,
  said: { readonly rise: string; readonly run: string },
): void {
  view.polygon(
    [
      [x, y],
      [x + size, y],
      [x + size, y + size * pitch],
    ],
    "fine",
    false,
  );
  view.note([x + size / 2, y], said.run, [0, -3.5]);
  view.note([x + size, y + (size * pitch) / 2], said.rise, [1, -1], "start");
}

/** A row of posts below a beam, with its braces, from the side. */
export interface PostRow {
  /** Left faces. */
  readonly posts: readonly number[];
  readonly post: Section;
  readonly brace: Section;
  readonly leg: number;
  /** Upper end of the posts. */
  readonly under: number;
}

/** Draws posts, and a brace to either side of each but outwards. */
export function postRow(view: View, { posts, post, brace: member, leg, under }: PostRow): void {
  for (const [i, x] of posts.entries()) {
    view.box([x, 0], [x + post.w, under]);
    if (member.t === 0) continue;
    if (i > 0) brace(view, [x, under], leg, member.w, -1);
    if (i < posts.length - 1) brace(view, [x + post.w, under], leg, member.w, 1);
  }
}

/** Lengths of all bays along the building, in order. */
export function baysOf(subject: Subject): readonly Cell[] {
  const count = subject.count(subject.cell("frame.bays"));
  const alike = subject.known("frame.bay");
  const cell = (i: number) => alike ?? subject.cell(i + 1 < count ? `frame.bay${i + 1}` : "frame.lastBay");
  return Array.from({ length: count }, (_, i) => cell(i));
}

/** Left faces of the posts along a side. */
export function postLines(subject: Subject): readonly number[] {
  let at = 0;
  return [0, ...baysOf(subject).map((bay) => (at += mm(bay)))];
}

/** Bays from centre to centre: all in one where they are alike. */
export function bayChain(subject: Subject): readonly (readonly [size: number, text: string])[] {
  const bays = baysOf(subject);
  const [first] = bays as [Cell];
  const alike = bays.every((bay) => bay === first);
  if (!alike) return bays.map((bay) => [mm(bay), subject.long(bay)]);
  return [[bays.length * mm(first), each(bays.length, "bays", subject.long(first))]];
}

/** Where pieces of a run meet, from its beginning: the ends of all pieces of its groups but the outer ones. */
export function jointsOf(base: string, subject: Subject): readonly number[] {
  const begins = subject.groupsOf(base).flatMap((group) => group.begins ?? []);
  return [...new Set(begins.map(mm))].filter((at) => at > 0).sort((a, b) => a - b);
}

/** Marks the joints of a run across a box along the building. @param from - Lower left and upper edge. */
export function jointMarks(
  view: View,
  base: string,
  subject: Subject,
  [x, low, high]: readonly [number, number, number],
): void {
  for (const at of jointsOf(base, subject)) {
    view.line(
      [
        [x + at, low],
        [x + at, high],
      ],
      "edge",
    );
  }
}

/** `3 bays of 7' 10"`. */
export const each = (count: number, what: string, size: string): string =>
  count === 1 ? size : `${count} ${what} of ${size}`;

/** Posts in plan: two rows along the building, and those between the corners of its ends. */
export interface PostPlan {
  readonly span: number;
  readonly length: number;
  readonly post: Section;
  /** Left faces along a side. */
  readonly posts: readonly number[];
  /** Bays across each end; one where only the corners have posts. */
  readonly endBays: number;
  /** Without it there is a wall on the far side. */
  readonly farRow: boolean;
}

/** Centres of all posts in plan, corner by corner and then those between. */
export function postCentres({ span, length, post, posts, endBays, farRow }: PostPlan): Point[] {
  const rows = farRow ? [post.t / 2, span - post.t / 2] : [post.t / 2];
  const along = rows.flatMap((y) => posts.map((x): Point => [x + post.w / 2, y]));
  const between = linesAlong(endBays + 1, (span - post.w) / endBays, span).slice(1, -1);
  const ends = between.flatMap((y): Point[] => [post.t / 2, length - post.t / 2].map((x) => [x, y + post.w / 2]));
  return [...along, ...ends];
}

/** Posts between the corners of an end, as they are seen across the building, behind what stands before them. */
export function endPosts(view: View, { span, post, endBays }: PostPlan, under: number): void {
  for (const x of linesAlong(endBays + 1, (span - post.w) / endBays, span).slice(1, -1)) {
    view.box([x, 0], [x + post.w, under], "fine");
  }
}

/** Draws all posts as if what lies on them were clear. */
export function postsInPlan(view: View, { span, length, post, posts, endBays, farRow }: PostPlan): void {
  const rows = farRow ? [0, span - post.t] : [0];
  for (const y of rows) for (const x of posts) view.box([x, y], [x + post.w, y + post.t], "cut", false);
  const between = linesAlong(endBays + 1, (span - post.w) / endBays, span).slice(1, -1);
  for (const y of between) {
    for (const x of [0, length - post.t]) view.box([x, y], [x + post.t, y + post.w], "cut", false);
  }
}
