/**
 * The question a stock plan answers, and the form of a plan. All lengths are whole steps of a grid that the caller
 * chooses (1/16 in, 0.1 mm …): pieces rounded up, stock rounded down. Money is whole minor units.
 */

/** Equal pieces wanted. Names differ; lengths may be equal. */
export interface StockPiece {
  readonly name: string;
  readonly length: number;
  readonly count: number;
}

/** A price of one that holds where so many and more are bought, for all of them. */
export interface PriceFrom {
  readonly from: number;
  readonly priceMinor: number;
}

/** A length that is sold, or that lies at hand. */
export interface StockLength {
  readonly name: string;
  readonly length: number;
  /** Price of one; 0 for what is owned. */
  readonly priceMinor: number;
  /** The price holds for so many of it and more; default 1. */
  readonly from?: number;
  /** Other prices of one, each for all sticks of this length where so many and more are bought. */
  readonly bulk?: readonly PriceFrom[];
  /** How many can be had; null = any number. */
  readonly available: number | null;
  /** At hand already: never sold in bundles. */
  readonly owned?: boolean;
}

/** The least that one costs, however many are bought. */
export const leastPrice = ({ priceMinor, bulk = [] }: StockLength): number =>
  Math.min(priceMinor, ...bulk.map((level) => level.priceMinor));

/** A stock problem. Names within a list differ. */
export interface StockProblem {
  readonly pieces: readonly StockPiece[];
  readonly stocks: readonly StockLength[];
  /** Lost at each cut between two pieces; what is left after the last piece may be shorter than a kerf. */
  readonly kerf: number;
  /** Cut off each stick before use, both ends together, its kerf included. */
  readonly endTrim: number;
  /** Sticks that are not owned are bought in whole bundles of so many; default 1. The price stays that of one stick. */
  readonly bundle?: number;
}

/** Sticks cut alike. */
export interface StockCut {
  readonly stock: string;
  /** Names of pieces, longest first; a name as often as it is cut from one stick. */
  readonly pieces: readonly string[];
  readonly times: number;
}

/** Pieces that the plan leaves out. */
export interface ShortPiece {
  readonly name: string;
  readonly count: number;
  /** `too-long` for every stock; `stock-lacks`: it fits, but the sticks that can be had are used up. */
  readonly why: "too-long" | "stock-lacks";
}

/** A plan, what it costs and what is proven of it. */
export interface StockOutcome {
  readonly plan: readonly StockCut[];
  /** Sticks to pay for, by stock: those cut, up to whole bundles, or to a bulk price. Only stocks that are used. */
  readonly sticks: readonly { readonly stock: string; readonly count: number }[];
  readonly costMinor: number;
  /** No plan for the same pieces (those short left out) costs less. A multiple of the prices' common divisor. */
  readonly boundMinor: number;
  /** Cost = bound. Ties within the cost are broken among the plans that were seen: fewer sticks, longest leftover, name. */
  readonly proven: boolean;
  readonly short: readonly ShortPiece[];
  /** Work counted, in the units of the budget. */
  readonly work: number;
}
