/** What orders of lumber that are only tried would cost, in whole sticks, spares, bundles and bulk prices included. */
import type { LumberOffer } from "../../catalog/offers/lumber.js";
import { Decimal, decimal } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";
import { type CuttingRules, type StockQuestion, sticksOf, triedQuestions } from "./lumber.js";
import { type PlanOrder, plannedOnce } from "./planned-once.js";
import type { StockOutcome, StockProblem } from "./stock/problem.js";
import { planStock } from "./stock-plan.js";
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
export const isLess = (a: Bill, b: Bill): boolean => (a.short === b.short ? a.cost.lt(b.cost) : a.short < b.short);

/** Orders by what they ask for, each planned once; and the work that they took. */
export class TriedOrders {
  private readonly known = new Map<LumberOffer, Map<string, Bill>>();
  private work = 0;

  constructor(private readonly rules: CuttingRules) {}

  /** Counted, also where another sheet asked for the same. */
  get spent(): number {
    return this.work;
  }

  /** Of all pieces of some groups, those of each offer together. @param bought - As offers that have a price. */
  billOf(bought: readonly Substitution[]): Bill {
    const { sheet } = this.rules.pricing;
    const counted = bought.map((substitution) => ({
      substitution,
      count: sheet.decideWhole(substitution.group.count),
    }));
    return triedQuestions(this.rules, counted)
      .map((question) => this.ofOffer(question))
      .reduce((sum, { short, cost }) => ({ short: sum.short + short, cost: sum.cost.plus(cost) }));
  }

  private ofOffer({ offer, problem, moneyDigits }: StockQuestion): Bill {
    const bills = this.known.get(offer) ?? new Map<string, Bill>();
    this.known.set(offer, bills);
    const owned = problem.stocks.filter((stock) => stock.owned);
    const key = JSON.stringify([problem.pieces, owned]);
    const bill = bills.get(key) ?? this.planned(problem, moneyDigits);
    bills.set(key, bill);
    return bill;
  }

  private planned(problem: StockProblem, moneyDigits: number): Bill {
    const { costMinor, short } = this.plan(this.withSpares(problem));
    return {
      short: short.reduce((sum, { count }) => sum + count, 0),
      cost: decimal(costMinor).dividedBy(Decimal.pow(10, moneyDigits)),
    };
  }

  private plan(problem: StockProblem): StockOutcome {
    const outcome = this.rules.tried(problem);
    this.work += outcome.work;
    return outcome;
  }

  /**
   * The order with its spares as pieces: so many sticks as long as the longest that it cuts, as they are bought after all. Their
   * share is rounded up in decimals; the count goes to the optimiser, which counts in numbers.
   */
  private withSpares(problem: StockProblem): StockProblem {
    const cut = [...sticksOf(this.plan(problem).plan)].flatMap(([name, count]) => {
      const stock = problem.stocks.find((one) => one.name === name);
      return stock && !stock.owned ? [{ length: stock.length, count }] : [];
    });
    const sticks = cut.reduce((sum, { count }) => sum + count, 0);
    const spares = wholeNumber(this.rules.pricing.sheet.decide(this.rules.spoiled).times(sticks).ceil());
    if (spares === 0) return problem;
    const longest = cut.reduce((most, { length }) => Math.max(most, length), 0);
    const spare = { name: "spare sticks", length: longest - problem.endTrim, count: spares };
    return { ...problem, pieces: [...problem.pieces, spare] };
  }
}
