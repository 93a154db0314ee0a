/**
 * Which sticks, before how they are cut: the cheapest mix of sticks that is not yet proven too small.
 *
 * The cost of a plan depends on its mix alone. Any prices of pieces give an inequality that every sufficient mix keeps: what the
 * sticks could hold at most, at those prices, is no less than what is wanted (Benders, "Partitioning procedures for solving
 * mixed-variables programming problems", Numerische Mathematik 4, 1962). With whole prices it is exact.
 */
import type { Bar } from "./normal-form.js";
import { paidFor, wholeBundles } from "./paid.js";
import type { Work } from "./work.js";

/** Σ holds × sticks ≥ need. */
export interface MixCut {
  readonly holds: readonly number[];
  readonly need: number;
}

/** Sticks of each bar. */
export interface Mix {
  readonly sticks: readonly number[];
  /** Whole bundles paid for. */
  readonly cost: number;
  readonly paid: number;
}

/** Steps of the enumeration in about a microsecond. Assumption, measured. */
const STEPS = 10;

/** More than any count of sticks: cost × FINE + sticks orders mixes by cost, then by sticks. */
const FINE = 2 ** 20;

/**
 * The cheapest mix, of equals the one with fewest sticks, that keeps every cut and is not excluded.
 *
 * @param cuts - The first orders the search: bars that are worth least at its prices are settled first.
 * @param from - No mix costs less: where the search starts.
 * @param below - Only mixes that come before this one are of interest.
 * @returns null when there is none; undefined when work ran out.
 */
export function cheapestMix(
  bars: readonly Bar[],
  cuts: readonly MixCut[],
  excluded: ReadonlySet<string>,
  from: number,
  below: { readonly cost: number; readonly paid: number },
  work: Work,
): Mix | null | undefined {
  const last = below.cost * FINE + below.paid;
  // The nearer the limit, the less there is to look through, so it is moved away step by step.
  for (let window = 1; ; window *= 4) {
    const limit = Math.min(last, (from + window) * FINE);
    const search = new MixSearch(bars, cuts, excluded, limit, (from + 1) * FINE, work);
    search.visit(
      0,
      0,
      cuts.map((cut) => cut.need),
    );
    if (work.over) return undefined;
    if (search.best || limit === last) return search.best;
  }
}

class MixSearch {
  best: Mix | null = null;
  private readonly sticks: number[];
  /** Bars in the order in which they are settled. */
  private readonly order: readonly number[];
  /** The least price of a stick, and itself, as one number, in that order. */
  private readonly prices: readonly number[];
  /** By place and cut: the least price for a unit of need, of the bars from this place on. */
  private readonly rates: readonly (readonly number[])[];

  constructor(
    private readonly bars: readonly Bar[],
    private readonly cuts: readonly MixCut[],
    private readonly excluded: ReadonlySet<string>,
    private limit: number,
    private readonly enough: number,
    private readonly work: Work,
  ) {
    this.sticks = bars.map(() => 0);
    const worth = (index: number) => (cuts[0]?.holds[index] ?? 0) / Math.max(1, (bars[index] as Bar).price);
    const scarce = (index: number) => ((bars[index] as Bar).available < Number.POSITIVE_INFINITY ? 0 : 1);
    this.order = bars.map((_, index) => index).sort((a, b) => scarce(a) - scarce(b) || worth(a) - worth(b) || b - a);
    this.prices = this.order.map((index) => (bars[index] as Bar).price * FINE + 1);
    this.rates = [...bars, null].map((_, first) => cuts.map((cut) => this.bestRate(cut, first)));
  }

  private bestRate(cut: MixCut, first: number): number {
    return this.order.reduce((least, index, place) => {
      const holds = cut.holds[index] as number;
      return place < first || holds <= 0 ? least : Math.min(least, (this.prices[place] as number) / holds);
    }, Number.POSITIVE_INFINITY);
  }

  visit(place: number, cost: number, needs: readonly number[]): void {
    this.work.spend((1 + needs.length / 5) / STEPS);
    if (this.work.over || cost >= this.limit) return;
    const index = this.order[place];
    if (index === undefined) {
      if (needs.every((need) => need <= 0)) this.accept(cost);
      return;
    }
    const bar = this.bars[index] as Bar;
    const [least, most] = this.range(place, index, cost, needs);
    for (let paid = wholeBundles(least, bar.bundle); paid < most + bar.bundle; paid += bar.bundle) {
      const bought = paidFor(bar, paid);
      // Where more costs no more, more is bought.
      paid = bought.count;
      const usable = Math.min(paid, bar.available);
      const left = needs.map((need, k) => need - usable * (this.cuts[k]?.holds[index] as number));
      this.sticks[index] = usable;
      this.visit(place + 1, cost + bought.cost * FINE + paid, left);
      // Once nothing is needed, more only costs more; but what is excluded may do with a stick more.
      if (usable < paid || (this.excluded.size === 0 && left.every((need) => need <= 0))) break;
    }
    this.sticks[index] = 0;
  }

  /** Fewest and most sticks of a bar with which each cut, on its own, can still be kept under the limit. */
  private range(place: number, index: number, cost: number, needs: readonly number[]): [number, number] {
    const price = this.prices[place] as number;
    let least = 0;
    let most = Math.min((this.bars[index] as Bar).available, (this.limit - cost) / price);
    needs.forEach((need, k) => {
      if (need <= 0) return;
      const holds = this.cuts[k]?.holds[index] as number;
      const rate = this.rates[place + 1]?.[k] as number;
      if (rate === Number.POSITIVE_INFINITY) {
        least = Math.max(least, holds > 0 ? need / holds : Number.POSITIVE_INFINITY);
        return;
      }
      // cost + price × sticks + rate × (need − holds × sticks) < limit; a part of a stick forgives float noise.
      const gain = rate * holds - price;
      const over = cost + rate * need - this.limit;
      if (gain > price * 1e-9) least = Math.max(least, over / gain);
      else if (gain < -price * 1e-9) most = Math.min(most, over / gain);
      else if (over > price * 1e-6) most = -1;
    });
    return [Math.max(0, Math.ceil(least - 1e-6)), Math.floor(most + 1e-6)];
  }

  private accept(cost: number): void {
    if (this.excluded.has(this.sticks.join())) return;
    // At the least cost there can be, any mix will do.
    this.limit = cost < this.enough ? 0 : cost;
    this.best = { sticks: this.sticks.slice(), cost: Math.floor(cost / FINE), paid: cost % FINE };
  }
}
