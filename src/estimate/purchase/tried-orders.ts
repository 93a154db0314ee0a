/** What orders of lumber that are only tried would cost, in whole sticks, spares, bundles and bulk prices included. */
import type { LumberOffer } from "../../catalog/offers/lumber.js";
import { Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";
import { type CuttingRules, sticksOf, triedQuestions } from "./lumber.js";
import { type PlanOrder, plannedOnce } from "./planned-once.js";
import type { StockOutcome, StockProblem } from "./stock/problem.js";
import { leastByLength, planStock } from "./stock-plan.js";
import type { Substitution } from "./substitution.js";

/** Counted work of one plan: proves most of a few dozen pieces. */
const WORK = 20_000;

/** Plans such orders, each once. */
export const triedPlanner = (): PlanOrder => plannedOnce((problem) => planStock(problem, { work: WORK }));

/** What an order comes to: pieces that sticks lack for, and money. */
export interface Bill {
  readonly short: number;
  readonly cost: Decimal;
}

/** Fewer pieces left out, then less cost. */
const isLess = (a: Bill, b: Bill): boolean => (a.short === b.short ? a.cost.lt(b.cost) : a.short < b.short);

/** Orders by what they ask for, each planned once; and the work that they took. */
export class TriedOrders {
  private readonly known = new Map<LumberOffer, Map<string, Tried>>();
  private work = 0;

  constructor(private readonly rules: CuttingRules) {}

  /** Counted, also where another sheet asked for the same. */
  get spent(): number {
    return this.work;
  }

  /** Of all pieces of some groups, those of each offer together. @param bought - As offers that have a price. */
  billOf(bought: readonly Substitution[]): Bill {
    return this.sumOf(this.ordersOf(bought));
  }

  /** Whether they come to less than another bill; planned no further than it takes to tell. */
  beats(bought: readonly Substitution[], other: Bill): boolean {
    const orders = this.ordersOf(bought);
    const atLeast = (each: (order: Tried) => number): boolean =>
      orders.reduce((sum, order) => sum.plus(order.bill?.cost ?? moneyOf(order, each(order))), ZERO).gte(other.cost);
    // No plan costs less than the sheer length at the best price by length, nor less without its spares.
    const asLong = ({ problem }: Tried): number => leastByLength(this.withFewestSpares(problem));
    const planned = ({ problem }: Tried): number =>
      Math.max(leastByLength(this.withSpares(problem)), this.plan(problem).boundMinor);
    if (other.short === 0 && (atLeast(asLong) || atLeast(planned))) return false;
    return isLess(this.sumOf(orders), other);
  }

  private sumOf(orders: readonly Tried[]): Bill {
    return orders
      .map((order) => this.planned(order))
      .reduce((sum, { short, cost }) => ({ short: sum.short + short, cost: sum.cost.plus(cost) }));
  }

  private ordersOf(bought: readonly Substitution[]): readonly Tried[] {
    const { sheet } = this.rules.pricing;
    const counted = bought.map((substitution) => ({
      substitution,
      count: sheet.decideWhole(substitution.group.count),
    }));
    return triedQuestions(this.rules, counted).map(({ offer, problem, moneyDigits }) => {
      const orders = this.known.get(offer) ?? new Map<string, Tried>();
      this.known.set(offer, orders);
      const owned = problem.stocks.filter((stock) => stock.owned);
      const key = JSON.stringify([problem.pieces, owned]);
      const order = orders.get(key) ?? { problem, moneyDigits };
      orders.set(key, order);
      return order;
    });
  }

  private planned(order: Tried): Bill {
    if (order.bill) return order.bill;
    const { costMinor, short } = this.plan(this.withSpares(order.problem));
    order.bill = { short: short.reduce((sum, { count }) => sum + count, 0), cost: moneyOf(order, costMinor) };
    return order.bill;
  }

  private plan(problem: StockProblem): StockOutcome {
    const outcome = this.rules.tried(problem);
    this.work += outcome.work;
    return outcome;
  }

  /** The order with its spares as pieces: so many sticks as long as the longest that it cuts, as they are bought after all. */
  private withSpares(problem: StockProblem): StockProblem {
    const cut = [...sticksOf(this.plan(problem).plan)].flatMap(([name, count]) => {
      const stock = problem.stocks.find((one) => one.name === name);
      return stock && !stock.owned ? [{ length: stock.length, count }] : [];
    });
    const longest = cut.reduce((most, { length }) => Math.max(most, length), 0) - problem.endTrim;
    return this.spared(problem, { sticks: decimal(cut.reduce((sum, { count }) => sum + count, 0)), length: longest });
  }

  /** With no more than any plan has: of as many sticks as the sheer length fills, none at hand, as long as the longest piece. */
  private withFewestSpares(problem: StockProblem): StockProblem {
    const { pieces, stocks, kerf, endTrim } = problem;
    // In the optimiser's whole steps.
    const room = Math.max(...stocks.map(({ length }) => length)) - endTrim;
    const fitting = pieces.filter(({ length }) => length <= room);
    if (fitting.length === 0 || stocks.some(({ owned }) => owned)) return problem;
    const all = fitting.reduce((sum, { length, count }) => sum + count * (length + kerf), 0);
    const length = Math.max(...fitting.map((piece) => piece.length));
    return this.spared(problem, {
      sticks: decimal(all)
        .dividedBy(room + kerf)
        .ceil(),
      length,
    });
  }

  /** The share of spares is taken and rounded up in decimals; only the whole count goes to the optimiser. */
  private spared(
    problem: StockProblem,
    { sticks, length }: { readonly sticks: Decimal; readonly length: number },
  ): StockProblem {
    const spares = this.rules.pricing.sheet.decide(this.rules.spoiled).times(sticks).ceil();
    if (spares.isZero()) return problem;
    const count = wholeNumber(spares);
    return { ...problem, pieces: [...problem.pieces, { name: "spare sticks", length, count }] };
  }
}

/** What is asked of one offer, and what it comes to once that is planned. */
interface Tried {
  readonly problem: StockProblem;
  readonly moneyDigits: number;
  bill?: Bill;
}

const moneyOf = ({ moneyDigits }: Tried, minor: number): Decimal =>
  decimal(minor).dividedBy(Decimal.pow(10, moneyDigits));
