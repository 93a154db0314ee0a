/**
 * Exact search for a cheaper plan of a small job, or of a few sticks of a large one.
 *
 * The longest piece left is always served next, so plans that differ only in the order of their sticks are met once. A branch
 * ends when its cost plus the prices of what is left (a bound, see `relaxation.ts`) cannot beat the plan known.
 */
import { eachFilling, type Filling } from "./fillings.js";
import type { Knapsack } from "./knapsack.js";
import { addTake, type Draft, gathered, type NormalForm } from "./normal-form.js";
import type { Demand, Prices } from "./relaxation.js";
import type { Work } from "./work.js";

/** What the search came to. */
export interface SearchResult {
  /** Cheapest plan under `below`, or null. */
  readonly draft: Draft | null;
  /** Its cost stick by stick, or `below`. */
  readonly cost: number;
  /** Nothing under `cost` exists. False when work ran out. */
  readonly done: boolean;
}

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

/** Bar −1: the longest piece is left out. */
interface Option extends Filling {
  readonly price: number;
}

class Search {
  best: Draft | null = null;
  private readonly seen = new Map<string, number>();
  private readonly path: Option[] = [];
  /** Prices of the whole demand less the rents of its scarce bars, in 1/scale of a unit of money. */
  private worth = 0;

  constructor(
    private readonly form: NormalForm,
    private readonly prices: Prices,
    private readonly knapsack: Knapsack,
    private readonly work: Work,
    public below: number,
  ) {}

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

  /** All fillings with the longest piece left that fit the slack, least waste first. */
  private options(first: number, left: readonly number[], available: readonly number[], slack: number): Option[] {
    const { form, prices, knapsack } = this;
    const options: Option[] = [];
    form.bars.forEach(({ price }, index) => {
      if ((available[index] as number) <= 0) return;
      eachFilling({ form, prices, knapsack, counts: left, first, slack }, index, this.work, (filling) => {
        return options.push({ ...filling, price }) > 0;
      });
    });
    const waste = form.missing * prices.scale - (prices.piece[first] as number);
    const take = form.weights.map((_, item) => (item === first ? 1 : 0));
    if (waste <= slack) options.push({ bar: -1, take, waste, price: form.missing });
    return options.sort((a, b) => a.waste - b.waste);
  }
}

/** One character a count where that is exact. */
function stateKey(counts: readonly number[]): string {
  return counts.every((count) => count < 0xffff) ? String.fromCharCode(...counts) : counts.join();
}
