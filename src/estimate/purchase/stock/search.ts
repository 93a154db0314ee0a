/**
 * Exact search for a cheaper plan of a small job, or of a few sticks of a large one.
 *
 * The longest piece left is always served next, so plans that differ only in the order of their sticks are met once. A branch
 * ends when its cost plus the prices of what is left (a bound, see `relaxation.ts`) cannot beat the plan known.
 */
import { nextShorter } from "./fillings.js";
import type { Knapsack } from "./knapsack.js";
import { addTake, type Bar, type Cut, type Draft, type NormalForm, type Pattern } from "./normal-form.js";
import type { Demand, Prices } from "./relaxation.js";
import type { Work } from "./work.js";

export interface SearchResult {
  /** Cheapest plan under `below`, or null. */
  readonly draft: Draft | null;
  /** Its cost stick by stick, or `below`. */
  readonly cost: number;
  /** Nothing under `cost` exists. False when work ran out. */
  readonly done: boolean;
}

/** Steps of the enumeration in about a microsecond. Assumption, measured. */
const STEPS = 10;

/** States remembered; assumption: some tens of megabytes. */
const MOST_STATES = 200_000;

/**
 * @param knapsack - Filled with these prices and at least this demand.
 * @param below - Only plans that cost less are of interest, in units of money.
 */
export function searchCheaper(
  form: NormalForm,
  prices: Prices,
  knapsack: Knapsack,
  demand: Demand,
  below: number,
  work: Work,
): SearchResult {
  const search = new Search(form, prices, knapsack, work, below);
  search.run(demand);
  return { draft: search.best, cost: search.below, done: !work.over };
}

interface Option {
  /** −1: the longest piece is left out. */
  readonly bar: number;
  readonly take: readonly number[];
  /** Price less worth, in 1/scale of a unit of money; ≥ 0. */
  readonly waste: number;
  readonly price: number;
}

class Search {
  best: Draft | null = null;
  private readonly seen = new Map<string, number>();
  private readonly path: Option[] = [];
  /** Prices of the whole demand less the rents of its scarce bars, in 1/scale of a unit of money. */
  private worth = 0;
  /** For a bar that never lacks, the capacity of the next shorter such bar: a load that fits there is not put here. */
  private readonly shorter: readonly number[];

  constructor(
    private readonly form: NormalForm,
    private readonly prices: Prices,
    private readonly knapsack: Knapsack,
    private readonly work: Work,
    public below: number,
  ) {
    this.shorter = form.bars.map((_, index) => nextShorter(form.bars, index));
  }

  run(demand: Demand): void {
    const { piece, rent } = this.prices;
    const pieces = demand.counts.reduce((sum, count, item) => sum + count * (piece[item] as number), 0);
    const rents = rent.reduce((sum, each, i) => (each > 0 ? sum + each * (demand.available[i] as number) : sum), 0);
    this.worth = pieces - rents;
    this.visit(demand.counts.slice(), demand.available.slice(), 0, 0);
  }

  /** Waste that a plan under `below` may have in all: its cost is the worth of the demand plus the waste of its options. */
  private get allowance(): number {
    return (this.below - 1) * this.prices.scale - this.worth;
  }

  private visit(left: number[], available: number[], cost: number, waste: number): void {
    const first = left.findIndex((count) => count > 0);
    if (first < 0) {
      this.accept(cost);
      return;
    }
    if (waste > this.allowance || this.work.over || this.isKnown(left, available, cost)) return;
    this.work.spend(1);
    for (const option of this.options(first, left, available, this.allowance - waste)) {
      // A plan found meanwhile may have lowered the allowance.
      if (waste + option.waste > this.allowance || this.work.over) return;
      this.step(option, left, available, -1);
      this.path.push(option);
      this.visit(left, available, cost + option.price, waste + option.waste);
      this.path.pop();
      this.step(option, left, available, 1);
    }
  }

  private step(option: Option, left: number[], available: number[], sign: 1 | -1): void {
    addTake(left, option.take, sign);
    if (option.bar >= 0) available[option.bar] = (available[option.bar] as number) + sign;
  }

  /** A state met before at no more cost has nothing new to give. */
  private isKnown(left: readonly number[], available: readonly number[], cost: number): boolean {
    const scarce = available.filter((count) => count < Number.POSITIVE_INFINITY);
    const key = stateKey([...left, ...scarce]);
    const known = this.seen.get(key);
    if (known !== undefined && known <= cost) return true;
    if (known !== undefined || this.seen.size < MOST_STATES) this.seen.set(key, cost);
    return false;
  }

  private accept(cost: number): void {
    if (cost >= this.below) return;
    this.below = cost;
    const missing = this.form.weights.map(() => 0);
    for (const { bar, take } of this.path) if (bar < 0) addTake(missing, take, 1);
    this.best = { cuts: gathered(this.path.filter((option) => option.bar >= 0)), missing };
  }

  /** All fillings for the longest piece left that leave no room for another piece and fit the slack, least waste first. */
  private options(first: number, left: readonly number[], available: readonly number[], slack: number): Option[] {
    const options: Option[] = [];
    this.form.bars.forEach((bar, index) => {
      if ((available[index] as number) > 0) this.fillings(bar, index, first, left, slack, options);
    });
    const { missing, weights } = this.form;
    const waste = missing * this.prices.scale - (this.prices.piece[first] as number);
    if (waste <= slack)
      options.push({ bar: -1, take: weights.map((_, i) => (i === first ? 1 : 0)), waste, price: missing });
    return options.sort((a, b) => a.waste - b.waste);
  }

  private fillings(
    bar: Bar,
    index: number,
    first: number,
    left: readonly number[],
    slack: number,
    options: Option[],
  ): void {
    const { weights } = this.form;
    const { piece, rent, scale } = this.prices;
    const worth = bar.price * scale + (rent[index] as number);
    const take = weights.map(() => 0);
    const fill = (item: number, room: number, value: number): void => {
      this.work.spend(1 / STEPS);
      if (value + this.knapsack.value(room) < worth - slack || this.work.over) return;
      if (item === weights.length) {
        const tight = left.every((count, k) => count === take[k] || (weights[k] as number) > room);
        if (!tight || bar.capacity - room <= (this.shorter[index] as number)) return;
        options.push({ bar: index, take: take.slice(), waste: worth - value, price: bar.price });
        return;
      }
      const weight = weights[item] as number;
      const most = Math.min(left[item] as number, Math.floor(room / weight));
      for (let count = most; count >= (item === first ? 1 : 0); count--) {
        take[item] = count;
        fill(item + 1, room - count * weight, value + count * (piece[item] as number));
      }
      take[item] = 0;
    };
    fill(first, bar.capacity, 0);
  }
}

/** One character a count where that is exact. */
function stateKey(counts: readonly number[]): string {
  return counts.every((count) => count < 0xffff) ? String.fromCharCode(...counts) : counts.join();
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
