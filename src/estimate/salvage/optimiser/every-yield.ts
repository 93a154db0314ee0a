/**
 * Small jobs to the optimum: every yield of every log that a cheaper plan could hold, and all ways to join them.
 *
 * At prices π of the pieces, a plan costs Σ π n − Σ (best worth of each log) + what each log's pattern falls short of
 * its best + what buying costs over π. So a plan that costs D more than the first two sums falls short by D in all: all
 * plans within D are listed, for D growing, until one of them is found (and is the best there is) or the work is out
 * (and then no plan costs less than that with the D tried last).
 */

import { BoltYields, type LogYield } from "./bolt-yields.js";
import type { LogTable } from "./bucking.js";
import type { Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import { LogPricing } from "./log-pricing.js";
import { logPattern } from "./pattern-cost.js";
import { SlabYields } from "./slab-yields.js";
import { WholePlan } from "./whole-plan.js";
import { NOTHING, type Yield, YieldCode } from "./yield-code.js";

/** What is asked. */
export interface EveryYieldAsk {
  readonly yard: Yard;
  /** Worth of a piece at the relaxation's best bound, by group. */
  readonly prices: ArrayLike<number>;
  /** Cost of the best plan known. */
  readonly most: number;
  readonly budget: Budget;
}

/** What came out. */
export interface EveryYieldFound {
  /** Null when none cheaper was found. */
  readonly plan: WholePlan | null;
  /** No plan of the family costs less; -Infinity where nothing is proven. */
  readonly bound: number;
}

/** A class of equal logs. */
interface Class {
  readonly log: LogTable;
  /** Worth of each bolt at the prices, whatever is wanted. */
  readonly values: Float64Array;
  /** Of a log without limits. */
  readonly unlimited: number;
  /** No pattern of the log is worth more; comes down as yields are listed. */
  ceiling: number;
}

interface Joined extends Yield {
  readonly short: number;
  readonly log: number;
  readonly yielded: LogYield | null;
  readonly before: Joined | null;
}

/** The first D as a share of the bound, and how it grows. Assumption, measured on the frozen problems. */
const FIRST = 0.005;
const GROWTH = 1.8;
const NOISE = 1e-7;
/** A bound this near is the cost itself, but for noise. */
const PROVEN = 1e-5;

/** Lists and joins yields within ever more; nothing where there are too many pieces to tell yields apart. */
export function everyYield(ask: EveryYieldAsk): EveryYieldFound {
  const { yard, budget } = ask;
  const code = YieldCode.of(yard.job.count);
  if (code === null) return { plan: null, bound: Number.NEGATIVE_INFINITY };
  const search = new Search(ask, code);
  let bound = search.bound;
  let plan: WholePlan | null = null;
  let most = ask.most;
  for (let within = FIRST * Math.max(1, bound); !budget.out && bound < most - PROVEN; within *= GROWTH) {
    const found = search.within(Math.min(within, most - search.bound));
    bound = Math.max(bound, Math.min(most, found.bound));
    if (found.plan !== null && found.plan.cost < most - NOISE) {
      plan = found.plan;
      most = plan.cost;
    }
  }
  return { plan, bound: Math.min(bound, most) };
}

class Search {
  readonly #prices: Float64Array;
  readonly #pricing: LogPricing;
  readonly #classes: readonly Class[];

  constructor(
    readonly ask: EveryYieldAsk,
    readonly code: YieldCode,
  ) {
    const { job, logs } = ask.yard;
    this.#prices = Float64Array.from(job.buy, (buy, j) => Math.min(buy, Math.max(0, ask.prices[j] as number)));
    this.#pricing = new LogPricing(job, this.#prices);
    this.#classes = logs.map((log) => {
      const values = this.#pricing.arcValues(log.arcs);
      const unlimited = Math.max(0, this.#pricing.bestOf(log, log.arcs, values).value);
      return { log, values, unlimited, ceiling: unlimited };
    });
    ask.budget.spend(this.#pricing.work);
  }

  /** What no plan costs less than, by what each log can be worth. */
  get bound(): number {
    const { job } = this.ask.yard;
    const wanted = job.count.reduce((sum, count, j) => sum + count * (this.#prices[j] as number), 0);
    return this.#classes.reduce((sum, { log, ceiling }) => sum - log.alike.length * ceiling, wanted);
  }

  /** The best of all plans that fall short by no more than `within`. */
  within(within: number): { plan: WholePlan | null; bound: number } {
    const { budget } = this.ask;
    const lists = this.#classes.map((one) => (budget.out ? null : this.#list(one, within)));
    const base = this.bound;
    if (lists.includes(null)) return { plan: null, bound: base };
    const best = this.#join(lists as LogYield[][], within);
    if (best === undefined) return { plan: null, bound: base };
    if (best === null) return { plan: null, bound: base + within };
    const plan = this.#draw(best.joined);
    return { plan, bound: base + Math.min(within, best.short) };
  }

  /** All yields of a log that fall short of its best by no more than `within`; brings its ceiling down to its best. */
  #list(one: Class, within: number): LogYield[] | null {
    for (;;) {
      const { log, values, unlimited, ceiling } = one;
      const slabs = new SlabYields(this.ask.yard.job, this.#pricing.worth, this.code, unlimited - ceiling + within);
      const bolts = new BoltYields(this.ask.yard.job, this.#pricing, slabs, this.code, this.ask.budget);
      const found = bolts.ofLog(log, values, ceiling - within);
      if (found === null) return null;
      const best = Math.max(0, found[0]?.value ?? 0);
      const listed = found[0] !== undefined || ceiling - within <= 0;
      one.ceiling = listed ? best : ceiling - within;
      if (listed && best >= ceiling - NOISE) return found;
    }
  }

  /** The way to join a yield of each log that costs least; null where none is within; undefined when the work ran out. */
  #join(lists: readonly LogYield[][], within: number): { joined: Joined; short: number } | null | undefined {
    const root: Joined = { ...NOTHING, short: 0, log: -1, yielded: null, before: null };
    let all = new Map<number, Joined>([[0, root]]);
    for (const [c, { log, ceiling }] of this.#classes.entries()) {
      for (const number of log.alike) {
        const next = new Map<number, Joined>();
        for (const joined of all.values()) {
          const add = (short: number, yielded: LogYield | null): void => {
            const { lo, hi, key } = yielded ?? NOTHING;
            if (!this.code.fits(joined.lo + lo, joined.hi + hi)) return;
            const known = next.get(joined.key + key);
            if (known !== undefined && known.short <= short) return;
            const sum = { lo: joined.lo + lo, hi: joined.hi + hi, key: joined.key + key };
            next.set(sum.key, { ...sum, short, log: number, yielded, before: joined });
          };
          if (joined.short + ceiling <= within + NOISE) add(joined.short + ceiling, null);
          let tried = 0;
          for (const yielded of lists[c] as LogYield[]) {
            const short = joined.short + ceiling - yielded.value;
            if (short > within + NOISE) break;
            tried++;
            add(short, yielded);
          }
          if (!this.ask.budget.spend(tried / 400)) return undefined;
        }
        all = next;
      }
    }
    return this.#settle(all.values());
  }

  /** Buys what is short; the cheapest. */
  #settle(all: Iterable<Joined>): { joined: Joined; short: number } | null {
    const { buy, count } = this.ask.yard.job;
    let best: { joined: Joined; short: number } | null = null;
    for (const joined of all) {
      const made = this.code.counts(joined);
      const short = made.reduce(
        (sum, n, j) => sum + ((count[j] as number) - n) * ((buy[j] as number) - (this.#prices[j] as number)),
        joined.short,
      );
      if (best === null || short < best.short) best = { joined, short };
    }
    return best;
  }

  #draw(last: Joined): WholePlan {
    const { job } = this.ask.yard;
    const plan = new WholePlan(job);
    const slabs = new SlabYields(job, this.#pricing.worth, this.code, 0);
    const bolts = new BoltYields(job, this.#pricing, slabs, this.code, this.ask.budget);
    for (let joined: Joined | null = last; joined !== null; joined = joined.before) {
      if (joined.yielded === null) continue;
      const { log } = this.ask.yard.tableOf(joined.log);
      plan.set(joined.log, logPattern(job, log, bolts.draw(joined.yielded)));
    }
    return plan;
  }
}
