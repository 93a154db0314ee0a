/**
 * Mills: kerf, what goes through them, how fast they cut, what they use up.
 *
 * Kerfs, rates, fuel and wear are common practice, confidence low: starting points that own records should replace.
 * The all-in outputs (`output`) are a check on the rates, not an input. A field study of a mobile mill found 127 to
 * 1187 board feet an hour with several workers (`small-scale-forestry` 8:367).
 */
import type { BladeKind } from "./blades.js";
import type { Spread } from "./finishes.js";
import type { Citation } from "./sources.js";

/** A chain's speed falls with the width of the cut, so area counts; a band is fed at a speed along the log. */
export type SawingPace =
  | { readonly by: "area"; readonly rate: Spread }
  | { readonly by: "feed"; readonly rate: Spread; readonly feed: Spread; readonly back: Spread };

/** A type of mill: kerf, capacities, rates, wear and fuel. */
export interface Mill {
  readonly name: string;
  readonly blade: BladeKind;
  readonly kerf: Spread;
  /** Widest cut. */
  readonly widestCut: string;
  /** Largest diameter that the mill can be set to, at the log's large end. */
  readonly largestLog: string;
  readonly longestLog: string;
  readonly shortestLog: string;
  readonly pace: SawingPace;
  /** Lumber an hour with everything, for comparison. */
  readonly output: Spread;
  /** Fuel for each hour that the engine runs. */
  readonly fuel: Spread;
  /** Bar oil as a share of the fuel volume; absent where there is no chain. */
  readonly barOil?: Spread;
  /** Cut area (chain) or board feet (band, circular) between sharpenings. */
  readonly sharpenEvery: Spread;
  /** Sharpenings before chain or band is worn out, or a circular blade needs new tips. */
  readonly bladeLife: Spread;
  readonly crew: string;
  /** First straight, untwisted cut of each bolt: lay it, chock it, level the guide. */
  readonly setUp: Spread;
  /** Turn a bolt, or lay a slab on the mill again. */
  readonly turn: Spread;
  /** Clear away what was sawn and set the next cut. */
  readonly cutHandling: Spread;
  readonly from: Citation;
}

const practice = (part: string): Citation => ({ source: "common-practice", part });
const of = (unit: string, low: string, likely: string, high: string): Spread => [
  `${low} ${unit}`,
  `${likely} ${unit}`,
  `${high} ${unit}`,
];

/** Mills by type, each figure with its source. */
export const MILLS = {
  "chainsaw-mill": {
    name: "chainsaw mill on a slabbing frame",
    blade: "chain",
    // 3/8 and 0.404 pitch ripping chain together; low-profile chain cuts 1/4 in, on small saws only.
    kerf: of("in", "0.31", "0.34", "0.42"),
    widestCut: "28 in",
    largestLog: "36 in",
    longestLog: "24 ft",
    shortestLog: "3 ft",
    pace: { by: "area", rate: of("ft2/min", "0.6", "1.5", "3") },
    output: of("bf/h", "10", "25", "60"),
    fuel: of("L/h", "1.2", "2", "3"),
    barOil: ["0.4", "0.6", "1"],
    sharpenEvery: of("ft2", "15", "40", "80"),
    bladeLife: ["8", "15", "25"],
    crew: "1 people",
    setUp: of("h", "0.25", "0.5", "1"),
    turn: of("h", "0.1", "0.2", "0.4"),
    cutHandling: of("min", "0.5", "1.5", "4"),
    from: practice("chain kerfs, cutting rate through softwood, fuel of 70 to 120 cc saws"),
  },
  "manual-band-mill": {
    name: "manual band mill, pushed by hand",
    blade: "band",
    kerf: of("in", "0.065", "0.085", "0.1"),
    widestCut: "22 in",
    largestLog: "26 in",
    longestLog: "16 ft",
    shortestLog: "4 ft",
    pace: {
      by: "feed",
      rate: of("ft2/min", "8", "20", "40"),
      feed: of("ft/min", "10", "20", "40"),
      back: of("ft/min", "40", "60", "100"),
    },
    output: of("bf/h", "60", "125", "250"),
    fuel: of("L/h", "1.5", "2.5", "4"),
    sharpenEvery: of("bf", "200", "400", "700"),
    bladeLife: ["4", "8", "15"],
    crew: "2 people",
    setUp: of("h", "0.07", "0.15", "0.3"),
    turn: of("h", "0.04", "0.08", "0.2"),
    cutHandling: of("min", "0.3", "0.8", "2"),
    from: practice("thin-band kerf, feed through 10 to 16 in cants, sharpening by board feet"),
  },
  "hydraulic-band-mill": {
    name: "hydraulic band mill",
    blade: "band",
    kerf: of("in", "0.065", "0.085", "0.1"),
    widestCut: "27 in",
    largestLog: "36 in",
    longestLog: "20 ft",
    shortestLog: "4 ft",
    pace: {
      by: "feed",
      rate: of("ft2/min", "15", "45", "75"),
      feed: of("ft/min", "20", "45", "60"),
      back: of("ft/min", "80", "120", "200"),
    },
    output: of("bf/h", "150", "300", "500"),
    fuel: of("L/h", "2", "3.5", "5.5"),
    sharpenEvery: of("bf", "200", "400", "700"),
    bladeLife: ["4", "8", "15"],
    crew: "2 people",
    setUp: of("h", "0.03", "0.05", "0.12"),
    turn: of("h", "0.01", "0.02", "0.05"),
    cutHandling: of("min", "0.1", "0.25", "0.8"),
    from: practice("thin-band kerf, feed through 10 to 16 in cants, fuel of 18 to 27 hp engines"),
  },
  "swing-blade-mill": {
    name: "swing-blade circular mill",
    blade: "circular",
    kerf: of("in", "0.18", "0.2", "0.24"),
    widestCut: "8 in",
    largestLog: "48 in",
    longestLog: "20 ft",
    shortestLog: "4 ft",
    pace: {
      by: "feed",
      rate: of("ft2/min", "8", "18", "35"),
      feed: of("ft/min", "15", "30", "60"),
      back: of("ft/min", "60", "90", "150"),
    },
    output: of("bf/h", "80", "150", "300"),
    fuel: of("L/h", "3", "5", "7"),
    sharpenEvery: of("bf", "300", "500", "900"),
    bladeLife: ["10", "20", "40"],
    crew: "2 people",
    setUp: of("h", "0.1", "0.2", "0.4"),
    turn: of("h", "0", "0.02", "0.05"),
    cutHandling: of("min", "0.2", "0.6", "1.5"),
    from: practice("swing-blade kerf; the rates are guesses between manual and hydraulic band mills"),
  },
} as const satisfies Readonly<Record<string, Mill>>;

/** Key of a type of mill. */
export type MillKind = keyof typeof MILLS;

/** All types of mill. */
export const millKinds = Object.keys(MILLS) as readonly MillKind[];

/** One mill's row, widened to the common type. */
export const millOf = (kind: MillKind): Mill => MILLS[kind];

/** Kerfs of the other saws in the yard and the shop. */
export const SAW_KERFS = {
  "bucking-chain": { kerf: of("in", "0.31", "0.34", "0.36"), from: practice("3/8 pitch chain") },
  "table-saw": { kerf: of("in", "0.094", "0.11", "0.125"), from: practice("10 in blades, thin and full kerf") },
  "crosscut-saw": { kerf: of("in", "0.094", "0.11", "0.125"), from: practice("as the table saw") },
  "wide-band-headsaw": {
    kerf: of("in", "0.125", "0.16", "0.19"),
    from: { source: "sawmill-studies", known: "memory" },
  },
  "circular-headsaw": {
    kerf: of("in", "0.25", "0.28", "0.34"),
    from: { source: "sawmill-studies", part: "inserted teeth", known: "memory" },
  },
} as const satisfies Readonly<Record<string, { readonly kerf: Spread; readonly from: Citation }>>;

/** How one measures one's own mill, by the name of its cell. */
export const MILL_MEASURES: Readonly<Record<string, string>> = {
  "mill.kerf": "Saw a board, caliper what is left of the step on both sides of the cut.",
  "mill.rate": "Time three cuts without the handling; divide the face sawn by the minutes.",
  "mill.feed": "Time three cuts in a narrow cant; divide their length by the minutes.",
  "mill.back": "Time three returns of the head; divide the length by the minutes.",
  "mill.setUp": "Time three bolts from the rollers to the first cut.",
  "mill.turn": "Time three turnings, clamps and levelling included.",
  "mill.cutHandling": "Time ten cuts without the sawing itself.",
  "mill.fuel": "Fill the tank, saw an hour by the engine's clock, fill it again.",
  "mill.barOil": "Note oil and fuel filled in over a day.",
  "mill.sharpenEvery": "Add up the faces, or the lumber, sawn between two sharpenings.",
  "mill.bladeLife": "Count the sharpenings of three chains, bands or sets of tips.",
  "mill.ripKerf": "Rip a board and caliper both halves.",
  "mill.crossKerf": "Crosscut a board and measure both halves.",
  "mill.buckKerf": "Cut half through a slab and caliper the slot.",
};
