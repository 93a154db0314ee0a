/**
 * The linear relaxation of a stock problem by column generation, and prices that prove its bound.
 *
 * Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9 (1961) and 11
 * (1963). Bound from any prices: A. A. Farley, "A note on bounding a class of linear programming problems, including
 * cutting stock problems", Operations Research 38 (1990). Prices are taken to whole numbers before the knapsack runs, so the
 * bound is exact whatever the simplex method's floats did.
 */
import { Knapsack } from "./knapsack.js";
import { type Bar, loadOf, type NormalForm, type Pattern } from "./normal-form.js";
import { type MasterColumn, type MasterSolution, Simplex } from "./simplex.js";
import type { Work } from "./work.js";

/**
 * Prices of pieces and of scarce bars, whole, in 1/scale of a unit of money. No filling of a bar is worth more than the
 * bar: Σ piece × take ≤ price × scale + rent. So demand × piece − available × rent is a bound, for a part of the job too.
 */
export interface Prices {
  readonly scale: number;
  readonly piece: readonly number[];
  readonly rent: readonly number[];
}

/** What is still to be cut, and from how many bars. */
export interface Demand {
  readonly counts: readonly number[];
  readonly available: readonly number[];
}

/** A column: a filled bar, or one piece left out (bar −1). */
export type Choice = Pattern;

/** Keeps its columns from one demand to the next; a demand may not be more than the form's. */
export class Relaxation {
  readonly choices: Choice[] = [];
  readonly knapsack: Knapsack;
  private readonly simplex: Simplex;
  private readonly scarce: readonly number[];
  private readonly scale: number;
  private readonly known = new Set<string>();
  /** What a piece costs by its starting choice: no price of it may be more. */
  private readonly dearest: readonly number[];

  constructor(
    readonly form: NormalForm,
    private readonly work: Work,
  ) {
    const { weights, counts, bars } = form;
    this.knapsack = new Knapsack(weights, Math.max(...bars.map((bar) => bar.capacity)), work, counts);
    this.scarce = bars.flatMap((bar, i) => (bar.available < Number.POSITIVE_INFINITY ? [i] : []));
    const start = weights.map((_, item) => startingChoice(form, item));
    this.dearest = start.map((choice, item) => this.costOf(choice) / (choice.take[item] as number));
    const worth = this.dearest.reduce((sum, price, item) => sum + price * (counts[item] as number), 0);
    // Values are added up below 2^51, so that they stay exact.
    this.scale = 2 ** Math.floor(Math.log2(2 ** 50 / Math.max(1, worth)));
    const rows = [
      ...counts.map((bound) => ({ sense: 1 as const, bound })),
      ...this.scarce.map((bar) => ({ sense: -1 as const, bound: (bars[bar] as Bar).available })),
    ];
    for (const choice of start) this.remember(choice);
    this.simplex = new Simplex(
      rows,
      start.map((choice) => this.columnOf(choice)),
      work,
    );
  }

  /** Adds a filling unless it is known. */
  add(choice: Choice): boolean {
    if (!this.remember(choice)) return false;
    this.simplex.add(this.columnOf(choice));
    return true;
  }

  private remember(choice: Choice): boolean {
    const key = `${choice.bar}:${choice.take.join()}`;
    if (this.known.has(key)) return false;
    this.known.add(key);
    this.choices.push(choice);
    return true;
  }

  /**
   * Solves for a demand, adding fillings until none is worth more than its bar, or until work runs out.
   *
   * @param rounds - Most rounds of new fillings.
   */
  solve(
    demand: Demand,
    rounds = Number.POSITIVE_INFINITY,
  ): { solution: MasterSolution; prices: Prices; bound: number } {
    const { bars } = this.form;
    this.simplex.setBounds([...demand.counts, ...this.scarce.map((bar) => demand.available[bar] ?? 0)]);
    let best: { prices: Prices; bound: number } = { prices: this.noPrices(), bound: 0 };
    for (let round = 0; ; round++) {
      const solution = this.simplex.solve();
      const asked = this.wholePrices(solution.prices);
      this.knapsack.fill(asked.piece, demand.counts);
      const found = this.feasible(asked, demand);
      if (found.bound > best.bound || round === 0) best = found;
      const proven = best.bound >= Math.ceil(solution.objective - 1e-6 * Math.max(1, solution.objective));
      if (proven || round >= rounds || this.work.over) return { solution, ...best };
      const added = bars.filter((bar, i) => this.addBest(bar, i, asked, demand)).length;
      if (added === 0) return { solution, ...best };
    }
  }

  private addBest(bar: Bar, index: number, asked: Prices, demand: Demand): boolean {
    if ((demand.available[index] ?? 0) <= 0) return false;
    const worth = bar.price * this.scale + (asked.rent[index] ?? 0);
    const value = this.knapsack.value(bar.capacity);
    // A gain of less than a millionth of the bar is float noise of the master.
    if (value - worth <= Math.max(worth, this.scale) * 1e-7) return false;
    return this.add({ bar: index, take: this.filledUp(this.knapsack.pattern(bar.capacity), bar, demand.counts) });
  }

  /** Pieces of no price go where there is room: harmless to the relaxation, welcome in a plan. */
  private filledUp(take: number[], bar: Bar, counts: readonly number[]): number[] {
    let room = bar.capacity - loadOf(this.form.weights, take);
    this.form.weights.forEach((weight, item) => {
      const more = Math.min((counts[item] ?? 0) - (take[item] ?? 0), Math.floor(room / weight));
      if (more <= 0) return;
      take[item] = (take[item] ?? 0) + more;
      room -= more * weight;
    });
    return take;
  }

  private noPrices(): Prices {
    return { scale: this.scale, piece: this.form.weights.map(() => 0), rent: this.form.bars.map(() => 0) };
  }

  private wholePrices(prices: Float64Array): Prices {
    const { weights, bars } = this.form;
    // Dearest prices alone add up to 2^50 at most; a simplex method cut short could ask for more, or for nonsense.
    const piece = this.dearest.map((most, item) =>
      Math.floor(Math.min(most, Math.max(0, prices[item] || 0)) * this.scale),
    );
    const rent = bars.map(() => 0);
    this.scarce.forEach((bar, k) => {
      rent[bar] = Math.max(0, Math.ceil(-(prices[weights.length + k] || 0) * this.scale));
    });
    return { scale: this.scale, piece, rent };
  }

  /** Farley: shrinks the prices until every filling of the knapsack's array is worth no more than its bar. */
  private feasible(asked: Prices, demand: Demand): { prices: Prices; bound: number } {
    const { bars } = this.form;
    const values = bars.map((bar) => this.knapsack.value(bar.capacity));
    const ratio = (list: readonly number[]) =>
      list.reduce((least, i) => {
        const value = values[i] as number;
        return value === 0 ? least : Math.min(least, ((bars[i] as Bar).price * this.scale) / value);
      }, 1);
    const plenty = bars.flatMap((bar, i) => (bar.available < Number.POSITIVE_INFINITY ? [] : [i]));
    // Scarce bars may be worth more than their price, at a rent; whether to shrink for them too is tried both ways.
    const tries = this.scarce.length > 0 ? [ratio(plenty), ratio(bars.map((_, i) => i))] : [ratio(plenty)];
    const bounds = tries.map((factor) => this.shrunk(asked, values, factor, demand));
    return bounds.reduce((best, next) => (next.bound > best.bound ? next : best));
  }

  private shrunk(
    asked: Prices,
    values: readonly number[],
    factor: number,
    demand: Demand,
  ): { prices: Prices; bound: number } {
    const { bars } = this.form;
    // The product of two doubles may be rounded up in its last place; 2^-50 off the factor makes up for it.
    const safe = factor < 1 ? factor * (1 - 2 ** -50) : 1;
    const piece = asked.piece.map((price) => Math.floor(price * safe));
    const rent = bars.map((bar, i) => {
      if (bar.available === Number.POSITIVE_INFINITY) return 0;
      return Math.max(0, Math.ceil((values[i] as number) * factor * (1 + 2 ** -50)) - bar.price * this.scale);
    });
    const prices = { scale: this.scale, piece, rent };
    return { prices, bound: Math.max(0, Math.ceil(worthOf(prices, demand) / this.scale)) };
  }

  private costOf(choice: Choice): number {
    return choice.bar < 0 ? this.form.missing : (this.form.bars[choice.bar] as Bar).price;
  }

  private columnOf(choice: Choice): MasterColumn {
    const rows: number[] = [];
    const values: number[] = [];
    choice.take.forEach((count, item) => {
      if (count === 0) return;
      rows.push(item);
      values.push(count);
    });
    const scarce = this.scarce.indexOf(choice.bar);
    if (scarce >= 0) {
      rows.push(this.form.weights.length + scarce);
      values.push(1);
    }
    return { cost: this.costOf(choice), rows, values };
  }
}

/** What a demand is worth at these prices, in 1/scale of a unit of money: no plan costs less. */
export function worthOf(prices: Prices, demand: Demand): number {
  const pieces = demand.counts.reduce((sum, count, item) => sum + count * (prices.piece[item] as number), 0);
  return prices.rent.reduce((sum, rent, i) => (rent > 0 ? sum - rent * (demand.available[i] as number) : sum), pieces);
}

/**
 * Prices by length beside those of the relaxation, averaged, where both prove the same bound on one length of bar: a filling
 * that wastes nothing by the average wastes nothing by either, which leaves far fewer of them.
 */
export function sharpened(form: NormalForm, prices: Prices, demand: Demand): Prices {
  const [bar] = form.bars;
  if (form.bars.length !== 1 || !bar || bar.available < Number.POSITIVE_INFINITY) return prices;
  const unit = Math.floor((bar.price * prices.scale) / bar.capacity);
  const byLength = { ...prices, piece: form.weights.map((weight) => weight * unit) };
  const bound = (each: Prices) => Math.ceil(worthOf(each, demand) / prices.scale);
  if (bound(byLength) < bound(prices)) return prices;
  return {
    ...prices,
    piece: prices.piece.map((price, item) => Math.floor((price + (byLength.piece[item] as number)) / 2)),
  };
}

/** One length alone on the bar that gives it cheapest, from bars that never lack; else the piece is left out. */
function startingChoice(form: NormalForm, item: number): Choice {
  const weight = form.weights[item] as number;
  const count = form.counts[item] as number;
  let best: Choice = { bar: -1, take: form.weights.map((_, i) => (i === item ? 1 : 0)) };
  let least = Number.POSITIVE_INFINITY;
  form.bars.forEach((bar, index) => {
    const fits = Math.min(count, Math.floor(bar.capacity / weight));
    if (bar.available < Number.POSITIVE_INFINITY || fits === 0 || bar.price / fits >= least) return;
    least = bar.price / fits;
    best = { bar: index, take: form.weights.map((_, i) => (i === item ? fits : 0)) };
  });
  return best;
}
