/**
 * A stock problem boiled down to what the optimisers need: distinct lengths, sticks worth having, small whole numbers.
 *
 * A kerf is added to every piece and one to every stick, so that Σ(ℓ + k) ≤ stock − trim + k says that n pieces take
 * n − 1 cuts. Lengths are divided by their common divisor, money by that of the prices.
 */
import { type Level, noDearer, paidFor, type Sale, usefulLevels, wholeBundles } from "./paid.js";
import type { StockLength, StockProblem } from "./problem.js";

/** A stick that can be had. */
export interface Bar extends Sale {
  /** Place in the problem's list of stocks. */
  readonly stock: number;
  /** What pieces and kerfs may take up, in steps of the normal form. */
  readonly capacity: number;
  /** Of one, in units of money of the normal form; the least of its levels: no number of sticks costs less each. */
  readonly price: number;
  /** Infinity where there are as many as there are pieces. */
  readonly available: number;
}

/** The boiled-down problem. Lists by weight have the order of `weights`. */
export interface NormalForm {
  /** Lengths of the pieces as the problem gives them, longest first; each list below that is by weight has this order. */
  readonly lengths: readonly number[];
  /** The same with a kerf each, in steps of the normal form. */
  readonly weights: readonly number[];
  /** Pieces wanted of each weight. */
  readonly counts: readonly number[];
  /** By length, then price, then name; none is worthless beside another. */
  readonly bars: readonly Bar[];
  /** Minor units in one unit of money. */
  readonly moneyGrid: number;
  /**
   * What leaving out one piece is held to cost: more than any plan, so that as few as can be are left out.
   * Infinity where sticks never lack.
   */
  readonly missing: number;
}

/** Sticks cut alike. */
export interface Pattern {
  /** Place in the normal form's bars. */
  readonly bar: number;
  /** Pieces of each weight. */
  readonly take: readonly number[];
}

/** Bars cut alike, and how many. */
export interface Cut extends Pattern {
  readonly times: number;
}

/** A plan in the normal form: what is cut, and how many pieces of each weight are left out. */
export interface Draft {
  readonly cuts: readonly Cut[];
  readonly missing: readonly number[];
}

/** Longest stick in steps of the normal form; assumption: 12 m in 0.1 mm is 120,000. */
export const MOST_STEPS = 2_000_000;

/** @param lengths - How many pieces of each length; those that fit no stick are left away. */
export function normalForm(problem: StockProblem, lengths: ReadonlyMap<number, number>): NormalForm {
  const { kerf } = problem;
  const stocks = problem.stocks.map((stock, index) => ({ ...stock, index, ...supplyOf(problem, stock) }));
  const longest = Math.max(0, ...stocks.filter((stock) => stock.available > 0).map((stock) => stock.room));
  const wanted = [...lengths]
    .filter(([length, count]) => count > 0 && length + kerf <= longest)
    .sort((a, b) => b[0] - a[0]);
  const step = wanted.map(([length]) => length + kerf).reduce(gcd, 0) || 1;
  const pieces = wanted.reduce((sum, [, count]) => sum + count, 0);
  const moneyGrid = stocks.flatMap(({ levels }) => levels.map(({ price }) => price)).reduce(gcd, 0) || 1;
  const shortest = Math.min(...wanted.map(([length]) => length + kerf));
  const bars = stocks
    .filter((stock) => stock.available > 0 && stock.levels.length > 0 && stock.room >= shortest)
    .sort((a, b) => a.room - b.room || a.priceMinor - b.priceMinor || (a.name < b.name ? -1 : 1))
    .map(
      ({ index, room, levels, priceMinor, available, bundle }): Bar => ({
        stock: index,
        capacity: Math.floor(room / step),
        price: (levels.at(-1) as Level).price / moneyGrid,
        levels: levels.map(({ from, price }) => ({ from, price: price / moneyGrid })),
        available: usableOf(available, wholeBundles(pieces, bundle), priceMinor),
        bundle,
      }),
    );
  const useful = bars.filter((bar, i) => !bars.some((other, j) => makesWorthless(other, j, bar, i)));
  if (useful.some((bar) => bar.capacity > MOST_STEPS)) throw new RangeError("the grid is too fine for sticks so long");
  const weights = wanted.map(([length]) => (length + kerf) / step);
  const always = Math.max(
    0,
    ...useful.filter((bar) => bar.available === Number.POSITIVE_INFINITY).map((b) => b.capacity),
  );
  const dearest = Math.max(0, ...useful.map((bar) => paidFor(bar, 1).cost));
  return {
    lengths: wanted.map(([length]) => length),
    weights,
    counts: wanted.map(([, count]) => count),
    bars: useful,
    moneyGrid,
    missing: (weights[0] ?? 0) <= always ? Number.POSITIVE_INFINITY : 1 + pieces * dearest,
  };
}

/** Room for pieces with one kerf each (the last needs none, so the stick is given one), and how many can be had. */
function supplyOf({ endTrim, kerf, bundle: sold = 1 }: StockProblem, stock: StockLength) {
  const { length, available, owned, priceMinor, from = 1, bulk = [] } = stock;
  const bundle = owned ? 1 : sold;
  const most = available === null ? Number.POSITIVE_INFINITY : Math.floor(available / bundle) * bundle;
  const all = [{ from, priceMinor }, ...bulk].map((one) => ({ from: one.from, price: one.priceMinor }));
  return { room: length - endTrim + kerf, available: most, bundle, levels: usefulLevels(all, bundle, most) };
}

/**
 * One stick a piece is the most that can be used, so more is as good as any number. What is free is always counted: a search
 * that stops where the money ends would not stop there.
 */
function usableOf(available: number, most: number, price: number): number {
  if (price === 0) return Math.min(available, most);
  return available >= most ? Number.POSITIVE_INFINITY : available;
}

/** A stick that is no longer and no cheaper than another that can always be had. Of equals the first stays. */
function makesWorthless(other: Bar, place: number, bar: Bar, ofBar: number): boolean {
  if (place === ofBar || other.available < Number.POSITIVE_INFINITY) return false;
  if (other.capacity < bar.capacity || !noDearer(other, bar)) return false;
  const equal = other.capacity === bar.capacity && noDearer(bar, other);
  return equal && bar.available === Number.POSITIVE_INFINITY ? place < ofBar : true;
}

/** Money of a plan in units of the normal form, bundles, bulk prices and left-out pieces counted. */
export function costOf(form: NormalForm, draft: Draft): number {
  const left = draft.missing.reduce((sum, count) => sum + count, 0);
  const sticks = sticksOf(form, draft.cuts);
  const bought = form.bars.reduce((sum, bar, i) => sum + paidFor(bar, sticks[i] ?? 0).cost, 0);
  return bought + (left > 0 ? left * form.missing : 0);
}

/** What the sheer length of the pieces costs at the best price per step: a bound, for jobs too large for a better one. */
export function lengthBound({ weights, counts, bars }: NormalForm): number {
  let left = loadOf(weights, counts);
  let cost = 0;
  for (const { price, capacity, available } of bars.toSorted((a, b) => a.price / a.capacity - b.price / b.capacity)) {
    const sticks = Math.min(available, left / capacity);
    cost += sticks * price;
    left -= sticks * capacity;
    if (left <= 0) break;
  }
  // A billionth off forgives the floats; costs are whole.
  return Math.ceil(cost * (1 - 1e-9));
}

/** Sticks cut of each bar. */
export function sticksOf(form: NormalForm, cuts: readonly Cut[]): number[] {
  const sticks = form.bars.map(() => 0);
  for (const { bar, times } of cuts) sticks[bar] = (sticks[bar] ?? 0) + times;
  return sticks;
}

/** Equal patterns put together, in order of first appearance. */
export function gathered(patterns: readonly Pattern[]): Cut[] {
  const cuts = new Map<string, Cut>();
  for (const { bar, take } of patterns) {
    const key = `${bar}:${take.join()}`;
    const known = cuts.get(key);
    cuts.set(key, { bar, take, times: (known?.times ?? 0) + 1 });
  }
  return [...cuts.values()];
}

/** Of equal cost the one with fewer sticks. */
export function cheaper(form: NormalForm, a: Draft, b: Draft): Draft {
  const difference = costOf(form, b) - costOf(form, a) || paidSticks(form, b) - paidSticks(form, a);
  return difference < 0 ? b : a;
}

/** Sticks paid for. */
export function paidSticks(form: NormalForm, draft: Draft): number {
  const sticks = sticksOf(form, draft.cuts);
  return form.bars.reduce((sum, bar, i) => sum + paidFor(bar, sticks[i] as number).count, 0);
}

/** Steps that a pattern takes up, kerfs included. */
export function loadOf(weights: readonly number[], take: readonly number[]): number {
  return take.reduce((sum, count, i) => sum + count * (weights[i] ?? 0), 0);
}

/** Adds a pattern's pieces to a list by weight, or takes them away. */
export function addTake(target: number[], take: readonly number[], times: number): void {
  for (let item = 0; item < target.length; item++)
    target[item] = (target[item] as number) + times * (take[item] as number);
}

/** Greatest common divisor of two whole numbers of 0 or more. */
export function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
