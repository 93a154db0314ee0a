/**
 * A drawing on paper: views to scale in black on white, with title, key and notes. One unit of the SVG is a millimetre; the
 * page fits both A4 and Letter across, so that what is printed at full size can be measured.
 */
import type { MeasureSystem } from "../../../estimate/quantity/text.js";
import { element, words } from "./svg.js";
import type { View } from "./view.js";
import { drawnView, marginsOf, type Placing } from "./view-on-paper.js";

/** Part of the page, from its upper left corner. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PlacedView {
  readonly view: View;
  readonly area: Area;
  /** Stands above a view that shares its page; its scale is put behind it. */
  readonly caption?: string;
  /** Only this part of the structure is shown, in millimetres of it. */
  readonly window?: readonly [readonly [number, number], readonly [number, number]];
}

export interface Page {
  /** Unique among the drawings of an answer; a name in the SVG begins with it. */
  readonly name: string;
  readonly title: string;
  /** In one sentence, for who cannot see it. */
  readonly description: string;
  readonly views: readonly PlacedView[];
  /** Words for the numbers that point at parts, from 1. */
  readonly key: readonly string[];
  readonly notes: readonly string[];
  readonly system: MeasureSystem;
}

export const PAGE = { width: 259, height: 190 } as const;
const KEY_WIDTH = 58;
const HEAD = 14;

/** All of the page but head, key and notes. */
export function wholeArea(notes: number): Area {
  return { x: 0, y: HEAD, width: PAGE.width - KEY_WIDTH, height: PAGE.height - HEAD - notes * 4.5 - 2 };
}

/** Two views beside each other above so many notes, the first on a share of the width. */
export function sideBySide(
  notes: number,
  share: number,
  [first, second]: readonly [Omit<PlacedView, "area">, Omit<PlacedView, "area">],
): readonly PlacedView[] {
  const { width, ...whole } = wholeArea(notes);
  const left = width * share;
  return [
    { ...first, area: { ...whole, width: left } },
    { ...second, area: { ...whole, x: left, width: width - left } },
  ];
}

/** Scales in common use: architect's scales by their denominators, and ISO 5455. */
const SCALES: Readonly<Record<MeasureSystem, readonly number[]>> = {
  "inch-pound": [1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768, 1536],
  metric: [1, 2, 5, 10, 20, 25, 50, 75, 100, 200, 250, 500, 1000, 2000],
};

const ARCHITECT: Readonly<Record<number, string>> = {
  1: "full size",
  2: "half size",
  4: `3" = 1'`,
  8: `1 1/2" = 1'`,
  12: `1" = 1'`,
  16: `3/4" = 1'`,
  24: `1/2" = 1'`,
  32: `3/8" = 1'`,
  48: `1/4" = 1'`,
  64: `3/16" = 1'`,
  96: `1/8" = 1'`,
  128: `3/32" = 1'`,
  192: `1/16" = 1'`,
};

const scaleText = (denominator: number, system: MeasureSystem): string =>
  (system === "inch-pound" && ARCHITECT[denominator]) || `1:${denominator}`;

/** The page as one SVG. */
export function drawn(page: Page): string {
  const { name, title, description, system } = page;
  const placings = page.views.map((placed) => placing(placed, system));
  const scales = placings.map(({ scale }) => scaleText(scale, system));
  const single = placings.length === 1 ? `Scale ${scales[0]}. ` : "";
  const unit = system === "metric" ? "Millimetres. " : "";
  const views = page.views.map((placed, i) => {
    const { area, view, caption } = placed;
    const body = drawnView(view, placings[i] as Placing, `${name}-${i}`);
    const said = caption ? [text(area.x + 4, area.y + 5, `${caption}, ${scales[i]}`, 3.6, "bold")] : [];
    return element("g", {}, ...said, body);
  });
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: `${PAGE.width}mm`,
      height: `${PAGE.height}mm`,
      viewBox: `0 0 ${PAGE.width} ${PAGE.height}`,
      role: "img",
      "aria-labelledby": `${name}-title ${name}-desc`,
      "font-family": "Helvetica, Arial, sans-serif",
      fill: "#000",
    },
    element("title", { id: `${name}-title` }, words(title)),
    element("desc", { id: `${name}-desc` }, words(description)),
    element("rect", { width: PAGE.width, height: PAGE.height, fill: "#fff" }),
    text(4, 7, title, 5, "bold"),
    text(4, 12, `${single}${unit}To scale when printed at full size; work to the figures, not to the paper.`, 3),
    ...views,
    ...keyLines(page.key),
    ...page.notes.map((note, i) => text(4, PAGE.height - 3 - (page.notes.length - 1 - i) * 4.5, note, 3)),
  );
}

function placing({ view, area, caption, window }: PlacedView, system: MeasureSystem): Placing {
  const [[x0, y0], [x1, y1]] = window ?? view.bounds;
  const margins = marginsOf(view, caption !== undefined);
  const [width, height] = [area.width - margins.left - margins.right, area.height - margins.above - margins.below];
  const scales = SCALES[system];
  const fits = (scale: number) => (x1 - x0) / scale <= width && (y1 - y0) / scale <= height;
  const scale = scales.find(fits) ?? Math.ceil(Math.max((x1 - x0) / width, (y1 - y0) / height));
  const left = area.x + margins.left + (width - (x1 - x0) / scale) / 2;
  const top = area.y + margins.above + (height - (y1 - y0) / scale) / 2;
  return {
    scale,
    bounds: [
      [x0, y0],
      [x1, y1],
    ],
    left,
    top,
    clipped: window !== undefined,
  };
}

/** Characters of a line of the key. */
const KEY_LINE = 28;

function keyLines(key: readonly string[]): string[] {
  const x = PAGE.width - KEY_WIDTH + 4;
  let y = HEAD + 8;
  return key.flatMap((line, i) => {
    const lines = wrapped(line, KEY_LINE);
    const at = y;
    y += lines.length * 4.2 + 2.6;
    return [...circled(x + 2.4, at - 1, i + 1), ...lines.map((part, j) => text(x + 7, at + j * 4.2, part, 3))];
  });
}

function circled(x: number, y: number, number: number): string[] {
  const ring = { cx: x, cy: y, r: 2.4, fill: "#fff", stroke: "#000", "stroke-width": ".2" };
  const says = { x, y: y + 1, "font-size": "2.9", "text-anchor": "middle" };
  return [element("circle", ring), element("text", says, String(number))];
}

function wrapped(line: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of line.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

function text(x: number, y: number, says: string, size: number, weight?: "bold"): string {
  return element("text", { x, y, "font-size": size, ...(weight && { "font-weight": weight }) }, words(says));
}
