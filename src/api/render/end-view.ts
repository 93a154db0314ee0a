/**
 * A bolt's end view as an SVG image: to scale, in millimetres, readable in black and white. Numbered cuts with their
 * heights stand beside it; what it shows is said again in words for whoever does not see it.
 *
 * Attributes only, no style: a page may forbid styles that stand in it.
 */
import type { Box, CutBox, Disc, EndView, StripBox } from "../../estimate/drawing/end-view.js";
import { type Decimal, decimal, trimmed } from "../../estimate/quantity/decimal.js";
import { type MeasureSystem, markedSmall } from "../../estimate/quantity/text.js";
import { unit } from "../../estimate/quantity/unit.js";

/** What is written on a view. */
export interface EndViewText {
  /** Unlike those of all other images on a page. */
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly system: MeasureSystem;
  /** Words in each strip, by slab and strip. */
  readonly strips: readonly (readonly string[])[];
  /** Height of each cut, in the order of the cuts. */
  readonly heights: readonly string[];
}

const WOOD = "#eddfc0";
const BARK = "#6b5a45";
const INK = "#111111";
const SAWN = "#4d4d4d";

/** Hundredths of a millimetre are finer than any screen. */
const at = (value: Decimal): string => trimmed(value, 2);
/** Screens count downwards. */
const down = (value: Decimal): string => at(value.negated());

/** The whole image. */
export function endViewSvg(view: EndView, text: EndViewText): string {
  const { reach } = view;
  const size = reach.dividedBy(13); // letters, as tall as an inch on a 26 in log
  const left = reach.times("1.04");
  const width = left.plus(reach).plus(size.times(8));
  const height = left.plus(reach).plus(size.times("2.6"));
  const thin = at(reach.dividedBy(160));
  const hatch = `${text.id}-rot`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${at(left.negated())} ${at(left.negated())} ${at(width)} ${at(height)}" role="img" aria-labelledby="${text.id}-title ${text.id}-desc">`,
    `<title id="${text.id}-title">${escaped(text.title)}</title>`,
    `<desc id="${text.id}-desc">${escaped(text.description)}</desc>`,
    `<defs><pattern id="${hatch}" patternUnits="userSpaceOnUse" width="${at(size.dividedBy(2))}" height="${at(size.dividedBy(2))}" patternTransform="rotate(45)"><rect width="${at(size.dividedBy(5))}" height="${at(size)}" fill="${INK}"/></pattern></defs>`,
    `<g stroke="${INK}" stroke-width="${thin}" fill="none">`,
    disc(view.bark, `fill="${BARK}"`),
    disc(view.wood, `fill="${WOOD}"`),
    view.middle ? disc(view.middle, `stroke-dasharray="${dash(reach, 2)}"`) : "",
    ...view.cuts.map((cut) => box(cut, `fill="${SAWN}" stroke="none"`)),
    ...view.rips.map((rip) => box(rip, `fill="${SAWN}" stroke="none"`)),
    ...view.strips.map((strip) => box(strip, `fill="#ffffff" stroke-width="${at(reach.dividedBy(90))}"`)),
    view.rot ? disc(view.rot, `fill="url(#${hatch})"`) : "",
    view.middle ? disc(view.sure, `stroke-dasharray="${dash(reach, 5)}"`) : "",
    cross(size),
    "</g>",
    `<g font-family="sans-serif" fill="${INK}" text-anchor="middle">`,
    ...view.strips.map((strip) => stripLabel(strip, text.strips[strip.slab]?.[strip.strip] ?? "", size)),
    "</g>",
    ...cutLabels(view, text, size),
    scaleBar(view, text.system, size),
    "</svg>",
  ].join("");
}

const dash = (reach: Decimal, parts: number): string => at(reach.times(parts).dividedBy(100));

const disc = ({ radius, y }: Disc, attributes: string): string =>
  `<circle cx="0" cy="${down(y)}" r="${at(radius)}" ${attributes}/>`;

const box = ({ x0, x1, y0, y1 }: Box, attributes: string): string =>
  `<rect x="${at(x0)}" y="${down(y1)}" width="${at(x1.minus(x0))}" height="${at(y1.minus(y0))}" ${attributes}/>`;

/** The sawing axis. */
function cross(size: Decimal): string {
  const arm = at(size.times("0.6"));
  return `<path d="M-${arm} 0H${arm}M0 -${arm}V${arm}"/>`;
}

/** Letters are half as wide as they are tall, near enough to fit. */
const LETTER = "0.58";

/** As large as the strip allows; upright strips are read from the right. */
function stripLabel({ x0, x1, y0, y1 }: StripBox, words: string, largest: Decimal): string {
  const [wide, high] = [x1.minus(x0), y1.minus(y0)];
  const upright = high.gt(wide);
  const [long, short] = upright ? [high, wide] : [wide, high];
  const fits = long.times("0.94").dividedBy(decimal(LETTER).times(Math.max(1, words.length)));
  const tall = [short.times("0.72"), fits, largest].reduce((a, b) => (b.lt(a) ? b : a));
  const [x, y] = [x0.plus(x1).dividedBy(2), y0.plus(y1).dividedBy(2).negated()];
  const turn = upright ? ` transform="rotate(-90 ${at(x)} ${at(y)})"` : "";
  return `<text x="${at(x)}" y="${at(y)}" dy="0.35em" font-size="${at(tall)}"${turn} stroke="#ffffff" stroke-width="${at(tall.dividedBy(4))}" paint-order="stroke">${escaped(words)}</text>`;
}

/** Numbers and heights of the cuts, right of the log, one below the other even where cuts lie close. */
function cutLabels({ cuts, reach }: EndView, { heights }: EndViewText, size: Decimal): string[] {
  const line = size.times("1.08");
  let lowest = reach.negated().minus(line);
  return cuts.flatMap((cut, i) => {
    const own = middle(cut).negated();
    lowest = own.gt(lowest.plus(line)) ? own : lowest.plus(line);
    const x = reach.plus(size.times("0.9"));
    const points = `${at(cut.x1)},${at(own)} ${at(reach.plus(size.times("0.2")))},${at(own)} ${at(x)},${at(lowest)}`;
    const words = `${cut.order}: ${heights[i] ?? ""}`;
    return [
      `<polyline points="${points}" fill="none" stroke="${INK}" stroke-width="${at(reach.dividedBy(220))}"/>`,
      `<text x="${at(x.plus(size.dividedBy(5)))}" y="${at(lowest)}" dy="0.35em" font-family="sans-serif" font-size="${at(size)}" fill="${INK}">${escaped(words)}</text>`,
    ];
  });
}

const middle = ({ y0, y1 }: CutBox): Decimal => y0.plus(y1).dividedBy(2);

/** A third of the log at most: whole inches, or tens of millimetres. */
function scaleBar({ reach }: EndView, system: MeasureSystem, size: Decimal): string {
  const steps = system === "metric" ? [10, 20, 50, 100, 200, 500] : [1, 2, 3, 6, 12, 24];
  const each = decimal(system === "metric" ? 1 : "25.4");
  const long = steps.map((count) => each.times(count)).findLast((mm) => mm.lte(reach.times("0.67"))) ?? each;
  const y = reach.plus(size.times("1.2"));
  const x = reach.negated();
  const tick = size.times("0.35");
  const path = `M${at(x)} ${at(y.minus(tick))}V${at(y)}H${at(x.plus(long))}V${at(y.minus(tick))}`;
  const words = markedSmall({ value: long, unit: unit("mm") }, system);
  return [
    `<path d="${path}" fill="none" stroke="${INK}" stroke-width="${at(reach.dividedBy(120))}"/>`,
    `<text x="${at(x.plus(long).plus(size.dividedBy(2)))}" y="${at(y)}" font-family="sans-serif" font-size="${at(size)}" fill="${INK}">${escaped(words)}</text>`,
  ].join("");
}

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
