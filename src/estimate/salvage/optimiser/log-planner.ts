/**
 * One log for what is still wanted: each piece has its price as long as it is wanted, and none after that.
 *
 * First some steps of a subgradient method on what the limits are worth; each step's plan is a candidate once its
 * surplus is trimmed. Then a walk up the stack of the best bolts, face by face, that keeps a few partial stacks a
 * face (labels, as in resource-constrained shortest paths: Handler & Zang 1980), ranked by the same prices.
 */
import type { BoltPattern } from "../sawing-pattern.js";
import type { Arc, LogTable } from "./bucking.js";
import { CappedFilling } from "./capped-filling.js";
import type { Budget } from "./counted-work.js";
import type { Effort } from "./effort.js";
import type { Job } from "./job.js";
import { KeptBolts } from "./kept-bolts.js";
import { walkStack } from "./label-walk.js";
import { type LogPricing, Pricings, type SharedBolts, STACKS_A_UNIT } from "./log-pricing.js";
import { Onward } from "./paths.js";
import { type LogPattern, leftLying, logPattern, trimmed } from "./pattern-cost.js";

/** Steps without a better worth after which they are halved (Held, Wolfe & Crowder 1974). */
const PATIENCE = 3;

/** Prices that rank partial plans, and what the bolts are worth at them. */
interface Guidance {
  /** No plan of the log is worth more. */
  readonly value: number;
  readonly limit: readonly number[];
  readonly pricing: LogPricing;
  readonly arcs: readonly Arc[];
  /** Of each bolt; no less than it is worth where it was not reckoned. */
  readonly values: Float64Array;
  readonly exact: Uint8Array;
  /** Numbers of the best path's bolts. */
  readonly path: readonly number[];
}

/** A log, the pieces open, what they are worth, and the guidance without limits where it is known. */
interface Question {
  readonly log: LogTable;
  readonly open: readonly number[];
  readonly price: readonly number[];
  readonly full: Guidance | null;
}

/** Bolts of a log so far. */
interface Partial {
  readonly bolts: readonly BoltPattern[];
  readonly made: readonly number[];
  readonly key: string;
  /** Worth at the ranking's prices. */
  readonly rank: number;
}

interface WalkTask {
  readonly log: LogTable;
  readonly open: readonly number[];
  readonly effort: Effort;
  readonly guidance: Guidance;
  /** At full prices. */
  readonly full: LogPricing;
  readonly offer: (bolts: readonly BoltPattern[]) => void;
  readonly enough: () => number;
  /** Work of the budget at which to end. */
  readonly end: number;
}

/** Steps of a walk that take about as long as one stack of the dynamic program. Measured. */
const STEPS_A_STACK = 60;

/** Plans logs one at a time. Remembers for each log which bolts are worth looking at. */
export class LogPlanner {
  readonly #kept: KeptBolts;
  readonly #bolts = new Map<string, LogTable | null>();
  readonly #pricings: Pricings;

  constructor(
    readonly job: Job,
    shared: SharedBolts,
    readonly budget: Budget,
    /** Told of every pattern that is offered. */
    readonly met: (log: LogTable, pattern: LogPattern) => void = () => {},
  ) {
    this.#kept = new KeptBolts(shared);
    this.#pricings = new Pricings(job);
  }

  /** Worth of a pattern: pieces that are open at their prices, less its cost. */
  worth(pattern: LogPattern, open: ArrayLike<number>, price: ArrayLike<number>): number {
    return pattern.made.reduce(
      (sum, made, j) => sum + Math.min(made, Math.max(0, open[j] as number)) * (price[j] as number),
      -pattern.cost,
    );
  }

  /**
   * The best pattern found; leaves the log lying where nothing is worth the work.
   *
   * @param atLeast - A pattern worth no more than this is of no use, and the search ends where none can be. Below 0
   *   where the log is used anyway, for what getting it ready costs is then spent.
   */
  plan(log: LogTable, open: readonly number[], price: readonly number[], effort: Effort, atLeast = 0): LogPattern {
    const { job } = this;
    const end = this.budget.used + effort.most;
    let best = leftLying(job);
    let bestWorth = atLeast;
    const offer = (bolts: readonly BoltPattern[]) => {
      const pattern = trimmed(job, log.log, logPattern(job, log.log, bolts), open);
      this.met(log, pattern);
      const worth = this.worth(pattern, open, price);
      if (worth > bestWorth + 1e-9) [best, bestWorth] = [pattern, worth];
    };
    if (effort.fresh) this.#lookOver(log, open, price);
    const enough = () => bestWorth;
    const question = { log, open, price, full: null };
    const { full, least } = this.#limits(question, effort.steps, offer, enough);
    if (full === null || least === null) return best;
    for (const share of effort.labels === 0 ? [] : effort.shares) {
      if (least.value <= bestWorth + 1e-6 || this.budget.out || this.budget.used >= end) break;
      const guidance = this.#shared({ ...question, full }, least, share);
      this.#walk({ log, open, effort, guidance, full: full.pricing, offer, enough, end });
      if (guidance !== full && guidance !== least) this.#pricings.free(guidance.pricing);
    }
    if (least !== full) this.#pricings.free(least.pricing);
    this.#pricings.free(full.pricing);
    return best;
  }

  #lookOver(log: LogTable, open: readonly number[], price: readonly number[]): void {
    const pricing = this.#pricings.at(price.map((p, j) => ((open[j] as number) > 0 ? p : 0)));
    this.#kept.lookOver(log, pricing);
    this.budget.spend(pricing.work);
    this.#pricings.free(pricing);
  }

  /**
   * Steps on the worth of the limits. @returns the guidance without limits, and that of the limits under which the log is
   * worth least; null where there was no step.
   */
  #limits(
    question: Question,
    steps: number,
    offer: (bolts: readonly BoltPattern[]) => void,
    enough: () => number,
  ): { readonly full: Guidance | null; readonly least: Guidance | null } {
    const { log, open, price } = question;
    let limit = price.map(() => 0);
    let least: Guidance | null = null;
    let full: Guidance | null = null;
    let pace = 1;
    let idle = 0;
    for (let step = 0; step < steps && !this.budget.out; step++) {
      const guidance: Guidance = this.#guidance({ ...question, full }, limit);
      full ??= guidance;
      const { value: upper, pricing, arcs, path } = guidance;
      const raw = logPattern(this.job, log.log, pricing.patterns(path.map((i) => arcs[i] as Arc)));
      offer(raw.bolts);
      const before: Guidance | null = least;
      if (least === null || upper < least.value - 1e-9) [least, idle] = [guidance, 0];
      else if (++idle % PATIENCE === 0) pace /= 2;
      const dropped = least === guidance ? before : guidance;
      if (dropped !== null && dropped !== full) this.#pricings.free(dropped.pricing);
      if (least.value <= enough() + 1e-6) break;
      const over = Array.from(raw.made, (made, j) => made - Math.max(0, open[j] as number));
      const norm = over.reduce((sum, d, j) => sum + (d > 0 || (limit[j] as number) > 0 ? d * d : 0), 0);
      if (norm === 0) break;
      const size = pace * ((upper - enough()) / norm);
      limit = limit.map((mu, j) => Math.min(price[j] as number, Math.max(0, mu + size * (over[j] as number))));
    }
    return { full, least };
  }

  /** The guidance where the limits count a share of what they are worth. */
  #shared(question: Question & { readonly full: Guidance }, least: Guidance, share: number): Guidance {
    if (share === 1) return least;
    if (share === 0) return question.full;
    return this.#guidance(
      question,
      least.limit.map((mu) => mu * share),
    );
  }

  /** The log as if it were one bolt of it and no more; null where bucking from the butt does not reach that bolt. */
  boltOf(log: LogTable, z0: number, z1: number): LogTable | null {
    const key = `${log.log.name} ${z0} ${z1}`;
    const known = this.#bolts.get(key);
    if (known !== undefined) return known;
    const found = log.arcs.find((arc) => arc.z0 === z0 && z0 + arc.shape.length === z1);
    const table = found === undefined ? null : { ...log, places: 1, arcs: [found.alone()], skips: [] };
    this.#bolts.set(key, table);
    return table;
  }

  /** Bolts and their worth when a piece counts its price less the worth of its limit. @param full - At limits of 0. */
  #guidance({ log, open, price, full }: Question, limit: readonly number[]): Guidance {
    const counts = price.map((p, j) => ((open[j] as number) > 0 ? Math.max(0, p - (limit[j] as number)) : 0));
    const pricing = this.#pricings.at(counts);
    const arcs = full?.arcs ?? this.#kept.of(log, pricing);
    // At lower prices than the full ones no bolt is worth more.
    const values = full === null ? pricing.arcValues(arcs) : full.values.slice();
    const exact = new Uint8Array(arcs.length).fill(full === null ? 1 : 0);
    const { value: unlimited, path } = pricing.lowered(log, arcs, values, exact);
    const value = limit.reduce((sum, mu, j) => sum + mu * Math.max(0, open[j] as number), unlimited);
    // Counted as if all were reckoned: how many need not be hangs on the prices, and the work shall not.
    const spared = exact.reduce((count, known) => count - known, exact.length);
    this.budget.spend(pricing.work + spared / STACKS_A_UNIT);
    return { value, limit, pricing, arcs, values, exact, path };
  }

  /** Reckons the bolts that were not; they are counted already. */
  #complete({ pricing, arcs, values, exact }: Guidance): void {
    for (const [i, arc] of arcs.entries()) if (exact[i] === 0) values[i] = pricing.arcValue(arc);
    exact.fill(1);
  }

  /** Partial plans from place to place, from the butt; each bolt for what the ones before have left open. */
  #walk({ log, open, effort, guidance, full, offer, enough, end }: WalkTask): void {
    const { job } = this;
    this.#complete(guidance);
    const { arcs, values, limit } = guidance;
    const ranked = new CappedFilling(job, guidance.pricing, limit, full === guidance.pricing);
    // A slab may be worth sawing though nothing at the ranking's prices: it is tried at full prices as well.
    const fillings = full === guidance.pricing ? [ranked] : [ranked, new CappedFilling(job, full, limit, true)];
    const { after } = new Onward(log, arcs, values);
    const hopes = arcs.map((arc, i) => ({
      arc,
      hope: (values[i] as number) + (arc.to >= 0 ? (after[arc.to] as number) : 0),
    }));
    const places: Partial[][] = Array.from({ length: log.places }, () => []);
    (places[0] as Partial[]).push({ bolts: [], made: open.map(() => 0), key: "", rank: -log.price });
    const allOpen = limit.reduce((sum, mu, j) => sum + mu * Math.max(0, open[j] as number), 0);
    const tried = new Set<string>();
    let [skip, first] = [0, 0];
    for (let place = 0; place < log.places; place++) {
      const partials = places[place] as Partial[];
      const skips: number[] = [];
      for (; log.skips[skip]?.from === place; skip++) skips.push(log.skips[skip]?.to as number);
      let end1 = first;
      while (arcs[end1]?.from === place) end1++;
      const here = hopes.slice(first, end1);
      first = end1;
      if (partials.length === 0) continue;
      for (const plan of bestPartials(partials, effort.plans)) {
        for (const to of skips) (places[to] as Partial[]).push(plan);
        const left = open.map((count, j) => Math.max(0, count - (plan.made[j] as number)));
        const promising = here
          .filter(({ hope }) => plan.rank + hope + allOpen > enough() + 1e-6)
          .sort((a, b) => b.hope - a.hope)
          .slice(0, effort.bolts);
        for (const { arc, hope } of promising) {
          const name = `${arc.from} ${arc.length} ${plan.key}`;
          if (this.budget.out || this.budget.used >= end || tried.has(name)) continue;
          tried.add(name);
          const rest = arc.to >= 0 ? (after[arc.to] as number) : 0;
          if (plan.rank + hope + allOpen <= enough() + 1e-6) continue;
          const leastRank = enough() + job.prices.bolt - rest - plan.rank - allOpen;
          const ask = {
            job,
            table: arc.table,
            fillings,
            open: left,
            labels: effort.labels,
            patient: effort.patient,
            starts: effort.starts,
          };
          const walk = walkStack({ ...ask, stacks: effort.plans, least: leastRank });
          this.budget.spend(Math.ceil(walk.work / STEPS_A_STACK));
          for (const stack of walk.stacks) {
            const bolts = [...plan.bolts, { z0: arc.z0, z1: arc.z0 + arc.shape.length, slabs: stack.slabs }];
            offer(bolts);
            const made = plan.made.map((count, j) => count + (stack.made[j] as number));
            const rank = plan.rank + stack.rank - job.prices.bolt;
            if (arc.to >= 0) (places[arc.to] as Partial[]).push({ bolts, made, key: made.join(" "), rank });
          }
        }
      }
    }
  }
}

/** The best partial plan of each yield, and of these the best few. */
function bestPartials(plans: Partial[], keep: number): Partial[] {
  const seen = new Set<string>();
  return plans
    .sort((a, b) => b.rank - a.rank || (a.key < b.key ? -1 : 1))
    .filter(({ key }) => !seen.has(key) && seen.add(key))
    .slice(0, keep);
}
