/** A view put on paper: its lines, the dimensions about it, and the numbers that point at its parts. */
import { element, words } from "./svg.js";
import type { Dimension, Note, Point, Pointer, Shape, Side, View, Weight } from "./view.js";

/** Where a view stands on the page, and how much smaller it is than the structure. */
export interface Placing {
  readonly scale: number;
  readonly bounds: readonly [Point, Point];
  /** Of its upper left corner, millimetres of paper. */
  readonly left: number;
  readonly top: number;
  /** What lies beyond the bounds is cut off. */
  readonly clipped: boolean;
}

/** Line widths in millimetres, after ISO 128: heavy, medium, fine. */
const LINES: Readonly<Record<Weight, Readonly<Record<string, string>>>> = {
  cut: { "stroke-width": ".6" },
  edge: { "stroke-width": ".3" },
  fine: { "stroke-width": ".13" },
  hidden: { "stroke-width": ".18", "stroke-dasharray": "2 1" },
  center: { "stroke-width": ".15", "stroke-dasharray": "6 1 1 1" },
};

/** From the view to the nearest dimension, and between two. */
const FIRST_ROW = 7;
const ROW = 7;
const TEXT = 3;

/** What of a view is put on paper. */
export type Seen = Pick<View, "shapes" | "dimensions" | "pointers" | "notes">;

/** Room about a view for its dimensions and its words. */
export function marginsOf(view: Seen, captioned: boolean): Readonly<Record<Side, number>> {
  const rows = (side: Side) => {
    const of = view.dimensions.filter((dimension) => dimension.side === side).map(({ row }) => row);
    return of.length === 0 ? 4 : FIRST_ROW + Math.max(...of) * ROW + (side === "below" || side === "right" ? 3 : 6);
  };
  const reach = (of: 0 | 1, sign: number) => Math.max(0, ...view.pointers.map(({ away }) => sign * away[of] + 4));
  return {
    left: Math.max(rows("left"), reach(0, -1) / 2) + 2,
    right: Math.max(rows("right"), reach(0, 1) / 2) + 2,
    above: Math.max(rows("above"), reach(1, 1)) + (captioned ? 5 : 0),
    below: Math.max(rows("below"), reach(1, -1)),
  };
}

/** @param name - Unique on a web page. */
export function drawnView(view: Seen, placing: Placing, name: string): string {
  const to = ([x, y]: Point): Point => {
    const [[x0], [, y1]] = placing.bounds;
    return [placing.left + (x - x0) / placing.scale, placing.top + (y1 - y) / placing.scale];
  };
  const shapes = view.shapes.map((shape) => drawnShape(shape, to));
  const lines = { stroke: "#000", "stroke-linejoin": "round" };
  const body = placing.clipped ? clipped(shapes, placing, name, lines) : element("g", lines, ...shapes);
  return [
    body,
    ...view.dimensions.map((dimension) => drawnDimension(dimension, placing, to)),
    ...view.notes.map((note) => drawnNote(note, to)),
    ...view.pointers.map((pointer) => drawnPointer(pointer, to)),
  ].join("");
}

type ToPaper = (point: Point) => Point;

function clipped(
  shapes: readonly string[],
  { bounds: [[x0, y0], [x1, y1]], scale, left, top }: Placing,
  name: string,
  lines: Readonly<Record<string, string>>,
): string {
  const window = { x: left, y: top, width: (x1 - x0) / scale, height: (y1 - y0) / scale };
  const clip = element("clipPath", { id: `${name}-clip` }, element("rect", window));
  return clip + element("g", { ...lines, "clip-path": `url(#${name}-clip)` }, ...shapes);
}

function drawnShape({ points, closed, weight, opaque }: Shape, to: ToPaper): string {
  const places = points.map((point) => to(point).map((value) => Math.round(value * 100) / 100 + 0));
  const path = `M${places.map((place) => place.join(" ")).join("L")}${closed ? "Z" : ""}`;
  return element("path", { d: path, fill: closed && opaque ? "#fff" : "none", ...LINES[weight] });
}

/** Millimetres that words take: a character of these faces is about half as wide as it is high. */
export const widthOf = (text: string): number => text.length * TEXT * 0.52;

function drawnDimension({ from, to: until, side, row, text, past }: Dimension, placing: Placing, to: ToPaper): string {
  const [[x0, y0], [x1, y1]] = placing.bounds;
  const level = side === "below" || side === "above";
  const off = FIRST_ROW + row * ROW;
  const corner = to(side === "below" ? [x0, y0] : side === "above" ? [x0, y1] : side === "left" ? [x0, y0] : [x1, y0]);
  const away = side === "below" || side === "right" ? 1 : -1;
  const base = corner[level ? 1 : 0] + away * off;
  const edge = corner[level ? 1 : 0] + away * 1.5;
  const [a, b] = (level ? [to([from, y0])[0], to([until, y0])[0]] : [to([x0, from])[1], to([x0, until])[1]]) as [
    number,
    number,
  ];
  const at = (along: number, across: number) =>
    level ? `${round(along)} ${round(across)}` : `${round(across)} ${round(along)}`;
  const fits = widthOf(text) + 1 <= Math.abs(b - a);
  const sign = (past === "to" ? b - a : a - b) < 0 ? -1 : 1;
  const end = past === "to" ? b : a;
  const outside = end + sign * (2 + widthOf(text) / 2);
  const middle = fits ? (a + b) / 2 : outside;
  const far = fits ? undefined : end + sign * (2 + widthOf(text));
  const lines = [
    `M${at(a, edge)}L${at(a, base + away)}`,
    `M${at(b, edge)}L${at(b, base + away)}`,
    `M${at(a, base)}L${at(b, base)}`,
    ...(far === undefined ? [] : [`M${at(end, base)}L${at(far, base)}`]),
  ];
  const ticks = [a, b].map((along) => tick(along, base, level));
  const [x, y] = level ? [middle, base - 1] : [base - 1, middle];
  const turn = level ? {} : { transform: `rotate(-90 ${round(x)} ${round(y)})` };
  return [
    element("path", { d: lines.join(""), stroke: "#000", "stroke-width": ".13", fill: "none" }),
    element("path", { d: ticks.join(""), stroke: "#000", "stroke-width": ".4", fill: "none" }),
    element("text", { x, y, "font-size": TEXT, "text-anchor": "middle", ...turn }, words(text)),
  ].join("");
}

function tick(along: number, across: number, level: boolean): string {
  const [x, y] = level ? [along, across] : [across, along];
  return `M${round(x - 1)} ${round(y + 1)}L${round(x + 1)} ${round(y - 1)}`;
}

function drawnNote({ at, text, anchor, away }: Note, to: ToPaper): string {
  const [x, y] = [to(at)[0] + away[0], to(at)[1] - away[1]];
  const halo = { stroke: "#fff", "stroke-width": ".8", "paint-order": "stroke" };
  return element("text", { x, y, "font-size": TEXT, "text-anchor": anchor, ...halo }, words(text));
}

function drawnPointer({ at, number, away }: Pointer, to: ToPaper): string {
  const [x, y] = to(at);
  const [cx, cy] = [x + away[0], y - away[1]];
  const long = Math.hypot(away[0], away[1]);
  const [ex, ey] = [cx - (away[0] / long) * 2.4, cy + (away[1] / long) * 2.4];
  return [
    element("path", { d: `M${round(x)} ${round(y)}L${round(ex)} ${round(ey)}`, stroke: "#000", "stroke-width": ".2" }),
    element("circle", { cx: x, cy: y, r: 0.5 }),
    element("circle", { cx, cy, r: 2.4, fill: "#fff", stroke: "#000", "stroke-width": ".2" }),
    element("text", { x: cx, y: cy + 1, "font-size": "2.9", "text-anchor": "middle" }, String(number)),
  ].join("");
}

const round = (value: number): number => Math.round(value * 100) / 100 + 0;
