/**
 * Shop machines for dressing, where not the usual ones of the assumptions are at hand: what goes through them and how fast.
 * Feeds and capacities are common practice of small shops; the request replaces them by those of the machines at hand.
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

/** Machines other than those that the assumptions are for (portable planer, jointer, 10 in table saw); each with its source. */
export const MACHINES = {
  "stationary-planer": {
    name: "stationary thickness planer",
    widest: "20 in",
    deepest: "8 in",
    heaviest: "200 lb",
    feed: feed("15", "25", "40"),
    from: practice("feed of stationary planers"),
  },
} as const satisfies Readonly<Record<string, Machine>>;

/** Key of a machine of the shop. */
export type MachineKind = keyof typeof MACHINES;

/** One machine's row, widened to the common type. */
export const machineOf = (kind: MachineKind): Machine => MACHINES[kind];
