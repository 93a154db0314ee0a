/**
 * Exterior finishes: how far a gallon goes by texture, how many coats, how long they last.
 * Coverage of stain, coats and life: `wood-handbook` chapter 16 and table 16-5 (vertical faces), seen. The other
 * coverages are from memory of the same laboratory's finishing notes, confidence medium. The likely figure is the
 * middle of the published range; an assumption.
 */
import type { Citation } from "./sources.js";

/** Low, likely and high, each with its unit. */
export type Spread = readonly [low: string, likely: string, high: string];

/** How a face was left: planed, or as the saw left it. */
export type Texture = "smooth" | "rough";

/** A kind of finish: coats, coverage on either texture, how long it lasts. */
export interface Finish {
  readonly name: string;
  /** First coat, ft²/gal. Rough is saw-textured or weathered wood. */
  readonly coverage: Readonly<Record<Texture, Spread>>;
  readonly coats: Readonly<Record<Texture, number>>;
  /** A primer comes first and counts as no coat. */
  readonly primed: boolean;
  /** Years to the next coat, on vertical faces; the likely figure is the middle of the published range. */
  readonly years: Spread;
  /** From one coat to the next. */
  readonly betweenCoats: Spread;
  readonly from: Citation;
}

const spread = (low: string, likely: string, high: string): Spread => [
  `${low} ft2/gal`,
  `${likely} ft2/gal`,
  `${high} ft2/gal`,
];

const years = (low: string, likely: string, high: string): Spread => [`${low} year`, `${likely} year`, `${high} year`];
/**
 * From one coat to the next. A penetrating stain takes its second coat before the first has dried, 20 to 60 minutes on
 * (`wood-handbook`, chapter 16, seen); what forms a film dries first: common practice, the can decides.
 */
const WET_ON_WET: Spread = ["20 min", "40 min", "60 min"];
const FILM_DRIES: Spread = ["4 h", "16 h", "48 h"];

const memory: Citation = { source: "wood-handbook", part: "finishing notes of the laboratory", known: "memory" };

/** Finishes by kind, each row with its source. */
export const FINISHES = {
  "oil-stain": {
    name: "oil-based semitransparent penetrating stain",
    coverage: { smooth: spread("200", "300", "400"), rough: spread("100", "150", "200") },
    coats: { smooth: 1, rough: 2 },
    primed: false,
    years: years("4", "6", "8"),
    betweenCoats: WET_ON_WET,
    from: { source: "wood-handbook", part: "chapter 16, table 16-5", known: "seen" },
  },
  "water-repellent": {
    name: "water-repellent preservative or penetrating oil",
    coverage: { smooth: spread("150", "200", "250"), rough: spread("100", "125", "150") },
    coats: { smooth: 1, rough: 1 },
    primed: false,
    years: years("1", "2", "3"),
    betweenCoats: WET_ON_WET,
    from: memory,
  },
  "solid-stain": {
    name: "solid-color stain",
    coverage: { smooth: spread("300", "350", "400"), rough: spread("150", "200", "250") },
    coats: { smooth: 2, rough: 2 },
    primed: true,
    years: years("6", "10.5", "15"),
    betweenCoats: FILM_DRIES,
    from: memory,
  },
  paint: {
    name: "exterior paint",
    coverage: { smooth: spread("350", "400", "450"), rough: spread("200", "250", "300") },
    coats: { smooth: 2, rough: 2 },
    primed: true,
    years: years("10", "15", "20"),
    betweenCoats: FILM_DRIES,
    from: memory,
  },
  primer: {
    name: "exterior primer",
    coverage: { smooth: spread("350", "400", "450"), rough: spread("200", "250", "300") },
    coats: { smooth: 1, rough: 1 },
    primed: false,
    years: years("10", "15", "20"),
    betweenCoats: FILM_DRIES,
    from: { source: "common-practice", part: "taken as one coat of paint" },
  },
} as const satisfies Readonly<Record<string, Finish>>;

/** Key of a finish. */
export type FinishKind = keyof typeof FINISHES;

/** All kinds of finish. */
export const finishKinds = Object.keys(FINISHES) as readonly FinishKind[];

/** How much further the second coat goes than the first (`common-practice`). */
export const SECOND_COAT: Spread = ["1.2", "1.35", "1.5"];
