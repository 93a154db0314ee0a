/**
 * Roof coverings: least slope by code, what lies under them, laps, exposures, fixing and weight.
 * Slopes: `irc` chapter 9. Weights: `asce-7` commentary, sheet steel by `galvanized-gauge`. What is only practice
 * says so in its citation. Slopes are a rise on 12 in of run, kept as two lengths by whoever uses them.
 */
import { inUnit, type Quantity } from "../estimate/quantity/quantity.js";
import { exactly, type MeasureSystem } from "../estimate/quantity/text.js";
import type { Spread } from "./finishes.js";
import type { Citation, HowKnown } from "./sources.js";

/** Panels are counted across the roof, courses up it, rolls by lapped area, boards by cover width. */
export type CoveringForm = "panels" | "courses" | "rolls" | "boards";

/** What carries the covering: purlins at a spacing, boards with gaps, or a closed deck. */
export type CarriedBy = "purlins" | "spaced-boards" | "closed-deck";

/** Pieces along the edges of a roof, sold by their length. */
export type EdgePiece =
  | "ridge-cap"
  | "hip-cap"
  | "eave-trim"
  | "rake-trim"
  | "drip-edge"
  | "starter-strip"
  | "eave-closure"
  | "ridge-closure";

/** The least slope at which a covering may be laid, and under which condition. */
export interface LeastSlope {
  /** Rise on 12 in of run. */
  readonly rise: string;
  /** Condition for this slope, in words for the page; absent when there is none. */
  readonly when?: string;
  readonly from: Citation;
}

/** Underlay layers by slope: from this rise on 12 in upwards. */
export interface UnderlayRule {
  readonly fromRise: string;
  readonly layers: 1 | 2;
}

/** Screws or nails, as a pattern; the count comes from the roof. */
export interface Fixing {
  readonly with: "roof-screw" | "roofing-nail" | "box-nail" | "panel-clip" | "adhesive" | "deck-screw";
  /** Fasteners per panel and purlin row, per strip, shingle or tile, per board and support; per clip one. */
  readonly each: Spread;
  /** Apart, along seams of panels and laps of rolls. */
  readonly apart?: Spread;
  /** How often the end rows (eave, ridge, end laps) are fixed compared with the others. */
  readonly endRowFactor?: Spread;
  /** Side laps are stitched at this spacing up the slope. */
  readonly stitchEvery?: string;
  readonly from: Citation;
}

/** A kind of roof covering as a complete system: slopes, laps, fixings, weight. */
export interface Covering {
  readonly name: string;
  readonly form: CoveringForm;
  /** Steepest condition first; the least demanding that applies is the limit. */
  readonly slopes: readonly LeastSlope[];
  readonly deck: CarriedBy;
  /** Centres of purlins or boards, where the deck is not closed. */
  readonly supportEvery?: Spread;
  readonly underlay: readonly UnderlayRule[];
  /** Width that one panel, strip, shingle or tile covers, and whole width of a roll or board, when the catalog does not say. */
  readonly coverWidth?: string;
  /** The same in the round sizes of metric trade, and what a bundle or tile covers there: from memory. */
  readonly metric?: { readonly coverWidth: string; readonly covers?: string; readonly name?: string };
  /** Height of one course to the weather, when neither slope nor grade decides. */
  readonly exposure?: Spread;
  /** Lap of rolls on one another, and of boards on their neighbours. */
  readonly sideLap?: Spread;
  readonly endLap?: Spread;
  /** Sheet or course past the fascia, level. */
  readonly drip: Spread;
  readonly weight: Spread;
  readonly weightFrom: Citation;
  /** Years until it is laid anew. */
  readonly life: Spread;
  readonly lifeFrom: Citation;
  readonly fixing: Fixing;
  /** Panels need ridge and eave closures against birds, wasps and driven snow. */
  readonly closures: boolean;
  /** Edge pieces that belong to the system. */
  readonly edges: readonly EdgePiece[];
  /** Both edges of a sheet lap alike: turned end for end, the offcut of one hip serves another. */
  readonly reversible?: boolean;
  /** The first course is laid twice. */
  readonly doubledCourse?: boolean;
  /** Roof area that one bundle or tile covers at the likely exposure, when the catalog does not say. */
  readonly covers?: string;
  readonly from: Citation;
}

const irc = (part: string, known?: HowKnown): Citation => ({ source: "irc", part, ...(known ? { known } : {}) });
const practice: Citation = { source: "common-practice" };
const psf = (low: string, likely: string, high: string): Spread => [
  `${low} lb/ft2`,
  `${likely} lb/ft2`,
  `${high} lb/ft2`,
];
const inch = (low: string, likely: string, high: string): Spread => [`${low} in`, `${likely} in`, `${high} in`];

const years = (low: string, likely: string, high: string): Spread => [`${low} year`, `${likely} year`, `${high} year`];
/** Lives that a study names stand as its likely figure; the range about them, and all other lives, are assumptions. */
const nahb = (part: string): Citation => ({ source: "nahb-life", part });
const ownChoice: Citation = { source: "own-choice", part: "coat, gauge and weather decide" };
const PANEL_EDGES: readonly EdgePiece[] = ["ridge-cap", "hip-cap", "eave-trim", "rake-trim"];
const COURSE_EDGES: readonly EdgePiece[] = ["drip-edge", "ridge-cap", "hip-cap"];

/** Lapped metal panels: 3 in 12, or 1/2 in 12 when the laps are sealed. */
const LAPPED_METAL: readonly LeastSlope[] = [
  { rise: "3 in", from: irc("R905.10.2") },
  { rise: "1/2 in", when: "the laps are sealed with lap sealant", from: irc("R905.10.2") },
];
/** Flat 29 gauge at 0.719 lb/ft2 times developed over cover width, 1.05 to 1.2; the high end is 26 gauge. */
const PROFILED_STEEL = psf("0.75", "0.81", "1.09");
const GAUGE: Citation = { source: "galvanized-gauge", part: "29 and 26 gauge", known: "computed" };
const PANEL_DRIP = inch("1", "1.5", "2");
/** About four a panel and row, near 80 a square at 24 in; eave, ridge and end-lap rows doubled. */
const PANEL_SCREWS: Fixing = {
  with: "roof-screw",
  each: ["4", "4", "5"],
  endRowFactor: ["1", "2", "2"],
  stitchEvery: "24 in",
  from: practice,
};
const PURLINS = inch("16", "24", "36");
const SINGLE: readonly UnderlayRule[] = [{ fromRise: "0 in", layers: 1 }];

/** Coverings by kind, each row with its source. */
export const COVERINGS = {
  "ribbed-steel": {
    name: "ribbed steel panels, exposed screws",
    form: "panels",
    slopes: LAPPED_METAL,
    deck: "purlins",
    supportEvery: PURLINS,
    underlay: [],
    coverWidth: "36 in",
    metric: { coverWidth: "1000 mm" },
    endLap: inch("6", "9", "12"),
    drip: PANEL_DRIP,
    weight: PROFILED_STEEL,
    weightFrom: GAUGE,
    fixing: PANEL_SCREWS,
    life: years("25", "40", "50"),
    lifeFrom: ownChoice,
    closures: true,
    edges: PANEL_EDGES,
    from: practice,
  },
  "corrugated-steel": {
    name: "corrugated steel sheets, 2 1/2 × 1/2 in",
    form: "panels",
    slopes: LAPPED_METAL,
    deck: "purlins",
    supportEvery: PURLINS,
    underlay: [],
    coverWidth: "24 in",
    // Eleven waves of 76 mm.
    metric: { coverWidth: "836 mm", name: "corrugated steel sheets, 76 × 18 mm" },
    endLap: inch("6", "9", "12"),
    drip: PANEL_DRIP,
    weight: PROFILED_STEEL,
    weightFrom: GAUGE,
    fixing: { ...PANEL_SCREWS, each: ["3", "4", "5"] },
    life: years("20", "35", "50"),
    lifeFrom: ownChoice,
    closures: true,
    edges: PANEL_EDGES,
    reversible: true,
    from: practice,
  },
  "standing-seam-steel": {
    name: "standing-seam steel panels, hidden clips",
    form: "panels",
    slopes: [{ rise: "1/4 in", from: irc("R905.10.2", "seen") }],
    deck: "closed-deck",
    underlay: SINGLE,
    coverWidth: "16 in",
    metric: { coverWidth: "500 mm" },
    drip: PANEL_DRIP,
    weight: psf("1.1", "1.3", "1.5"),
    weightFrom: { source: "galvanized-gauge", part: "24 gauge with seams", known: "computed" },
    fixing: { with: "panel-clip", each: ["1", "1", "1"], apart: inch("18", "24", "24"), from: practice },
    life: years("40", "50", "70"),
    lifeFrom: ownChoice,
    closures: true,
    edges: PANEL_EDGES,
    from: practice,
  },
  "asphalt-shingles": {
    name: "asphalt strip shingles",
    form: "courses",
    slopes: [{ rise: "2 in", from: irc("R905.2.2", "seen") }],
    deck: "closed-deck",
    underlay: [
      { fromRise: "2 in", layers: 2 },
      { fromRise: "4 in", layers: 1 },
    ],
    coverWidth: "36 in",
    metric: { coverWidth: "1000 mm", covers: "3 m2" },
    exposure: inch("4", "5", "5"),
    drip: inch("1/4", "1/2", "3/4"),
    weight: psf("1.8", "2", "3.5"),
    weightFrom: { source: "asce-7", part: "table C3.1-1; 180 to 350 lb a square in the estimating textbook" },
    fixing: { with: "roofing-nail", each: ["4", "4", "6"], from: irc("R905.2.6") },
    life: years("15", "20", "30"),
    lifeFrom: nahb("asphalt shingles about 20 years"),
    closures: false,
    edges: ["drip-edge", "starter-strip", "ridge-cap", "hip-cap"],
    covers: "33.33 ft2",
    from: { source: "estimating-text", part: "chapter 14" },
  },
  "wood-shingles": {
    name: "wood shingles",
    form: "courses",
    slopes: [{ rise: "3 in", from: irc("R905.7.2") }],
    deck: "spaced-boards",
    underlay: [],
    coverWidth: "4 in",
    metric: { coverWidth: "100 mm", covers: "2.3 m2" },
    drip: inch("1", "1.5", "1.5"),
    weight: psf("2", "3", "3"),
    weightFrom: { source: "asce-7", part: "table C3.1-1" },
    fixing: { with: "box-nail", each: ["2", "2", "2"], from: irc("R905.7.5", "seen") },
    life: years("20", "30", "40"),
    lifeFrom: nahb("wood about 30 years"),
    closures: false,
    edges: COURSE_EDGES,
    doubledCourse: true,
    covers: "25 ft2",
    from: { source: "common-practice", part: "a shingle is reckoned as 4 in wide" },
  },
  "wood-shakes": {
    name: "wood shakes",
    form: "courses",
    slopes: [{ rise: "3 in", from: irc("R905.8.2", "seen") }],
    deck: "spaced-boards",
    underlay: SINGLE,
    coverWidth: "6 in",
    metric: { coverWidth: "150 mm", covers: "1.8 m2" },
    exposure: inch("7 1/2", "10", "10"),
    drip: inch("1", "1.5", "1.5"),
    weight: psf("3", "3.5", "4.5"),
    weightFrom: practice,
    fixing: { with: "box-nail", each: ["2", "2", "2"], from: irc("table R905.7.5(2)", "seen") },
    life: years("20", "30", "40"),
    lifeFrom: nahb("wood shakes about 30 years"),
    closures: false,
    edges: COURSE_EDGES,
    doubledCourse: true,
    covers: "20 ft2",
    from: irc("table R905.8.6"),
  },
  tile: {
    name: "clay or concrete tile on battens",
    form: "courses",
    slopes: [{ rise: "2 1/2 in", from: irc("R905.3.2", "seen") }],
    deck: "closed-deck",
    underlay: [
      { fromRise: "2 1/2 in", layers: 2 },
      { fromRise: "4 in", layers: 1 },
    ],
    coverWidth: "12 in",
    metric: { coverWidth: "300 mm", covers: "0.1 m2" },
    exposure: inch("13", "13.5", "14"),
    drip: inch("1", "1.5", "2"),
    weight: psf("9.5", "11", "19"),
    weightFrom: { source: "tile-article", part: "concrete tile 9 1/2 to 12 lb/ft²; Spanish clay tile 19 by ASCE 7" },
    fixing: { with: "deck-screw", each: ["1", "1", "2"], from: irc("R905.3.7") },
    life: years("40", "50", "100"),
    lifeFrom: nahb("clay and concrete over 50 years"),
    closures: false,
    edges: ["eave-closure", "rake-trim", "ridge-cap", "hip-cap"],
    covers: "1.125 ft2",
    from: { source: "common-practice", part: "16 1/2 × 13 in tile, 3 in head lap, 1 in side lap" },
  },
  "mineral-roll": {
    name: "mineral-surfaced roll roofing",
    form: "rolls",
    slopes: [{ rise: "1 in", from: irc("R905.5.2") }],
    deck: "closed-deck",
    underlay: SINGLE,
    coverWidth: "36 in",
    metric: { coverWidth: "1 m" },
    sideLap: inch("2", "2", "3"),
    endLap: inch("4", "6", "6"),
    drip: inch("1/4", "1/2", "3/4"),
    weight: psf("0.9", "1", "1.1"),
    weightFrom: { source: "asce-7", part: "table C3.1-1, ready roofing" },
    fixing: { with: "roofing-nail", each: ["1", "1", "1"], apart: inch("3", "3", "4"), from: practice },
    life: years("5", "10", "15"),
    lifeFrom: ownChoice,
    closures: false,
    edges: ["drip-edge"],
    from: { source: "roll-goods", part: "36 in roll, 2 in lap, one square", known: "memory" },
  },
  membrane: {
    name: "single-ply membrane",
    form: "rolls",
    slopes: [{ rise: "1/4 in", from: irc("R905.12.1, R905.13.1") }],
    deck: "closed-deck",
    underlay: [],
    coverWidth: "10 ft",
    metric: { coverWidth: "3 m" },
    sideLap: inch("3", "4", "6"),
    endLap: inch("3", "4", "6"),
    drip: inch("0", "1/2", "1"),
    weight: psf("0.4", "0.7", "1"),
    weightFrom: { source: "asce-7", part: "table C3.1-1" },
    fixing: { with: "adhesive", each: ["0", "0", "0"], from: practice },
    life: years("15", "20", "30"),
    lifeFrom: ownChoice,
    closures: false,
    edges: ["drip-edge"],
    from: practice,
  },
  polycarbonate: {
    name: "corrugated polycarbonate sheets",
    form: "panels",
    slopes: [{ rise: "1 in", from: { source: "common-practice", part: "no code section; the maker's sheet decides" } }],
    deck: "purlins",
    supportEvery: inch("18", "24", "30"),
    underlay: [],
    coverWidth: "24 in",
    metric: { coverWidth: "836 mm" },
    endLap: inch("6", "8", "12"),
    drip: inch("1", "2", "3"),
    weight: psf("0.2", "0.25", "0.4"),
    weightFrom: practice,
    fixing: { with: "roof-screw", each: ["4", "5", "6"], endRowFactor: ["1", "1.5", "2"], from: practice },
    life: years("10", "15", "20"),
    lifeFrom: ownChoice,
    closures: true,
    edges: PANEL_EDGES,
    reversible: true,
    from: practice,
  },
  boards: {
    name: "boards only, laid up and down the slope, each second one over the joints",
    form: "boards",
    slopes: [{ rise: "6 in", from: { source: "common-practice", part: "no code section; a roof that may drip" } }],
    deck: "purlins",
    supportEvery: inch("24", "32", "36"),
    underlay: [],
    coverWidth: "9 in",
    metric: { coverWidth: "225 mm" },
    sideLap: inch("1", "1.5", "2"),
    endLap: inch("2", "3", "4"),
    drip: inch("1", "1.5", "2"),
    weight: psf("3.5", "4.5", "6"),
    weightFrom: { source: "asce-7", part: "3 lb/ft2 for an inch of wood, half as much again for the covered joints" },
    fixing: { with: "deck-screw", each: ["2", "2", "3"], from: practice },
    life: years("8", "12", "20"),
    lifeFrom: ownChoice,
    closures: false,
    edges: [],
    from: practice,
  },
} as const satisfies Readonly<Record<string, Covering>>;

/** Key of a covering. */
export type CoveringKind = keyof typeof COVERINGS;

/** All kinds of covering. */
export const coveringKinds = Object.keys(COVERINGS) as readonly CoveringKind[];

/** One covering's row, widened to the common type. */
export const coveringOf = (kind: CoveringKind): Covering => COVERINGS[kind];

/** The least rise on 12 in of run at which a covering is allowed, and the clause that says so. */
export function leastSlope(kind: CoveringKind, lapsSealed: boolean): LeastSlope {
  const { slopes } = coveringOf(kind);
  return (lapsSealed ? slopes[slopes.length - 1] : slopes[0]) as LeastSlope;
}

/** Underlay layers at a rise on 12 in of run: the last rule that the rise reaches; 0 when none is needed. */
export function underlayLayers(kind: CoveringKind, rise: Quantity): 0 | 1 | 2 {
  const reached = coveringOf(kind).underlay.filter((rule) => rise.value.gte(exactly(rule.fromRise).value));
  return reached.at(-1)?.layers ?? 0;
}

/** Grade of wood shingles. */
export type ShingleGrade = "No. 1" | "No. 2" | "No. 3";

/** Largest exposure of wood shingles by length, grade and slope (`irc`, table R905.7.5(1), seen). */
interface ShingleExposure {
  readonly length: string;
  readonly grade: ShingleGrade;
  /** From 3 in 12 to under 4 in 12. */
  readonly low: string;
  /** From 4 in 12 up. */
  readonly steep: string;
}

/** Exposure of wood shingles by length, grade and slope. */
export const SHINGLE_EXPOSURES: readonly ShingleExposure[] = [
  { length: "16 in", grade: "No. 1", low: "3 3/4 in", steep: "5 in" },
  { length: "16 in", grade: "No. 2", low: "3 1/2 in", steep: "4 in" },
  { length: "16 in", grade: "No. 3", low: "3 in", steep: "3 1/2 in" },
  { length: "18 in", grade: "No. 1", low: "4 1/4 in", steep: "5 1/2 in" },
  { length: "18 in", grade: "No. 2", low: "4 in", steep: "4 1/2 in" },
  { length: "18 in", grade: "No. 3", low: "3 1/2 in", steep: "4 in" },
  { length: "24 in", grade: "No. 1", low: "5 3/4 in", steep: "7 1/2 in" },
  { length: "24 in", grade: "No. 2", low: "5 1/2 in", steep: "6 1/2 in" },
  { length: "24 in", grade: "No. 3", low: "5 in", steep: "5 1/2 in" },
];

/** The exposure allowed for a shingle length and grade at a rise on 12 in, or undefined below 3 in 12 or off the table. */
export function shingleExposure(length: Quantity, grade: ShingleGrade, rise: Quantity): Quantity | undefined {
  const row = SHINGLE_EXPOSURES.find((each) => each.grade === grade && exactly(each.length).value.eq(length.value));
  if (!row || inUnit(rise, "in").lt(3)) return undefined;
  return exactly(inUnit(rise, "in").gte(4) ? row.steep : row.low);
}

/** Its name, with any measures in the units of a system. */
export function coveringName(kind: CoveringKind, system: MeasureSystem): string {
  const { name, metric } = coveringOf(kind);
  return (system === "metric" ? metric?.name : undefined) ?? name;
}

/** The likely exposure of a covering laid in courses at a rise on 12 in of run; undefined where it has none. */
export function usualExposure(kind: CoveringKind, rise: Quantity): Quantity | undefined {
  if (kind === "wood-shingles") {
    // Below 3 in 12 no table says any: the least that one does.
    const [length, three] = [exactly("16 in"), exactly("3 in")];
    return shingleExposure(length, "No. 1", rise) ?? shingleExposure(length, "No. 1", three);
  }
  const spread = coveringOf(kind).exposure;
  return spread && exactly(spread[1]);
}

/** Underlay rolls by the roll: width, length, and the lap between courses. */
export interface UnderlayRoll {
  readonly name: string;
  readonly width: string;
  readonly length: string;
  /** Weight of the laid layer. */
  readonly weight: string;
  readonly from: Citation;
}

/** Underlays by kind: what a roll covers, and its laps. */
export const UNDERLAYS = {
  "felt-15": {
    name: "No. 15 asphalt felt",
    width: "36 in",
    length: "144 ft",
    weight: "0.12 lb/ft2",
    from: { source: "roll-goods", known: "seen" },
  },
  "felt-30": {
    name: "No. 30 asphalt felt",
    width: "36 in",
    length: "72 ft",
    weight: "0.25 lb/ft2",
    from: { source: "roll-goods", known: "seen" },
  },
  synthetic: {
    name: "synthetic underlay",
    width: "48 in",
    length: "250 ft",
    weight: "0.03 lb/ft2",
    from: { source: "common-practice" },
  },
} as const satisfies Readonly<Record<string, UnderlayRoll>>;

/** Laps of underlay (`irc` R905.1.1): side lap by layers, end lap. */
export const UNDERLAY_LAPS = { single: "2 in", double: "19 in", end: "4 in" } as const;
