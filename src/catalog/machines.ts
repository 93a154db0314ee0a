/**
 * Shop machines for dressing: what goes through them and how fast. Feeds and capacities are common practice of small
 * shops; the request replaces them by those of the machines at hand.
 */
import type { Spread } from "./finishes.js";
import type { Citation } from "./sources.js";

/** A machine of the shop: what it takes in at most, and how fast it is fed. */
export interface Machine {
  readonly name: string;
  /** Widest piece that is dressed or cut in one pass; absent where nothing limits it. */
  readonly widest?: string;
  /** Thickest piece (planer), or deepest cut (saw). */
  readonly deepest?: string;
  /** Heaviest piece that two people still feed safely and straight. */
  readonly heaviest: string;
  readonly feed: Spread;
  readonly from: Citation;
}

const feed = (low: string, likely: string, high: string): Spread => [
  `${low} ft/min`,
  `${likely} ft/min`,
  `${high} ft/min`,
];
const practice = (part: string): Citation => ({ source: "common-practice", part });

/** Machines of the shop by kind, each row with its source. */
export const MACHINES = {
  "portable-planer": {
    name: "portable thickness planer",
    widest: "12 1/2 in",
    deepest: "6 in",
    heaviest: "80 lb",
    feed: feed("16", "22", "26"),
    from: practice("feed of portable planers"),
  },
  "stationary-planer": {
    name: "stationary thickness planer",
    widest: "20 in",
    deepest: "8 in",
    heaviest: "200 lb",
    feed: feed("15", "25", "40"),
    from: practice("feed of stationary planers"),
  },
  jointer: {
    name: "jointer",
    widest: "8 in",
    heaviest: "60 lb",
    feed: feed("8", "12", "20"),
    from: practice("hand feed on a jointer"),
  },
  "table-saw": {
    name: "table saw, 10 in blade",
    deepest: "3 1/8 in",
    heaviest: "80 lb",
    feed: feed("6", "12", "25"),
    from: practice("hand feed, ripping 1 to 2 in stock"),
  },
} as const satisfies Readonly<Record<string, Machine>>;

/** Key of a machine of the shop. */
export type MachineKind = keyof typeof MACHINES;

/** One machine's row, widened to the common type. */
export const machineOf = (kind: MachineKind): Machine => MACHINES[kind];
