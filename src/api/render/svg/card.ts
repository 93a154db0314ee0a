/**
 * A view on a card that a phone or a narrow column shows in full, its words still to be read: no key, no numbers that
 * point at parts, and of the dimensions those alone that fit between their ends. Not to be measured: it has no scale.
 */
import { drawn, type Page } from "./paper.js";
import { element, words } from "./svg.js";
import { drawnView, marginsOf, type Placing, type Seen, widthOf } from "./view-on-paper.js";

/** One drawing as an SVG. */
export interface Drawn {
  readonly name: string;
  readonly title: string;
  readonly svg: string;
}

/** A page, and a card of it under its name and `-card`. */
export function drawnBoth(page: Page): Drawn[] {
  const { name, title } = page;
  return [
    { name, title, svg: drawn(page) },
    { name: `${name}-card`, title, svg: drawnCard(page) },
  ];
}

/** Millimetres. */
const CARD = { width: 96, most: 96, head: 8 } as const;

/** Room for words that stand out on the right. */
const NOTE = 4;

/** The first view of a page as a card, as high as it needs to be. */
function drawnCard({ name, title, description, system, views: [first] }: Page): string {
  if (!first) throw new Error(`the page ${name} has no view`);
  const { view } = first;
  const { bounds, shapes, notes } = view;
  const bare: Seen = { shapes, notes, dimensions: view.dimensions, pointers: [] };
  const margins = { ...marginsOf(bare, false) };
  margins.right += notes.length > 0 ? NOTE : 0;
  const [[x0, y0], [x1, y1]] = bounds;
  const [wide, high] = [x1 - x0, y1 - y0];
  const room = { width: CARD.width - margins.left - margins.right, height: CARD.most - margins.above - margins.below };
  const scale = Math.max(wide / room.width, high / (room.height - CARD.head));
  const left = margins.left + (room.width - wide / scale) / 2;
  const placing: Placing = { scale, bounds, left, top: CARD.head + margins.above, clipped: false };
  const height = Math.ceil(placing.top + high / scale + margins.below);
  const dimensions = bare.dimensions.filter(({ from, to, text }) => widthOf(text) + 1 <= Math.abs(to - from) / scale);
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${CARD.width} ${height}`,
      role: "img",
      "aria-labelledby": `${name}-card-title ${name}-card-desc`,
      "font-family": "Helvetica, Arial, sans-serif",
      fill: "#000",
    },
    element("title", { id: `${name}-card-title` }, words(title)),
    element("desc", { id: `${name}-card-desc` }, words(description)),
    element("rect", { width: CARD.width, height, fill: "#fff" }),
    element(
      "text",
      { x: 3, y: 6, "font-size": 3.4, "font-weight": "bold" },
      words(system === "metric" ? `${title}${/\d$/.test(title) ? "" : ","} mm` : title),
    ),
    drawnView({ ...bare, dimensions }, placing, `${name}-card`),
  );
}
