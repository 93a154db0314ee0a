/**
 * What sticks of one length cost: whole bundles, at the price that holds for as many as are bought. Where a greater number costs less
 * than the one that is wanted, the greater number is bought. The cost never falls as more sticks are used.
 */

/** A price of one stick that holds for so many and more. */
export interface Level {
  readonly from: number;
  readonly price: number;
}

/** How one length is sold. */
export interface Sale {
  /** By `from`, each cheaper than the one before. */
  readonly levels: readonly Level[];
  /** Sold in whole bundles of so many. */
  readonly bundle: number;
}

/** Sticks to pay for, and what they cost. */
export interface Paid {
  readonly count: number;
  readonly cost: number;
}

const NOTHING: Paid = { count: 0, cost: 0 };

/** The cheapest purchase of at least so many sticks, of equals the smaller. */
export function paidFor({ levels, bundle }: Sale, sticks: number): Paid {
  if (sticks === 0) return NOTHING;
  let best: Paid | undefined;
  for (const { from, price } of levels) {
    const count = wholeBundles(Math.max(sticks, from), bundle);
    const cost = count * price;
    if (!best || cost < best.cost) best = { count, cost };
  }
  return best ?? NOTHING;
}

/** Sticks to pay for when so many are used. */
export function wholeBundles(sticks: number, bundle: number): number {
  return Math.ceil(sticks / bundle) * bundle;
}

/** Levels in order, without those that no number of sticks makes worth while or that ask for more than can be had. */
export function usefulLevels(levels: readonly Level[], bundle: number, available: number): Level[] {
  const useful: Level[] = [];
  for (const level of levels.toSorted((a, b) => a.from - b.from || a.price - b.price)) {
    const before = useful.at(-1);
    if (wholeBundles(level.from, bundle) <= available && (!before || level.price < before.price)) useful.push(level);
  }
  return useful;
}

/** True of what costs the same each, whatever the number. */
export const isPlain = ({ levels, bundle }: Sale): boolean =>
  bundle === 1 && levels.length === 1 && levels[0]?.from === 1;

/** True where no number of the other costs less. */
export const noDearer = (one: Sale, other: Sale): boolean =>
  one.bundle <= other.bundle &&
  other.levels.every(({ from, price }) => one.levels.some((level) => level.from <= from && level.price <= price));
