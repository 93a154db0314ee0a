/**
 * One log for what is still wanted: each piece has its price as long as it is wanted, and none after that.
 *
 * First some steps of a subgradient method on what the limits are worth; each step's plan is a candidate once its
 * surplus is trimmed. Then a walk up the stack of the best bolts, face by face, that keeps a few partial stacks a
 * face (labels, as in resource-constrained shortest paths: Handler & Zang 1980), ranked by the same prices.
 */
import type { BoltPattern } from "../sawing-pattern.js";
import { type Arc, bestPath, type LogTable, onward, toward } from "./bucking.js";
import { CappedFilling } from "./capped-filling.js";
import type { Budget } from "./column-generation.js";
import type { Job } from "./job.js";
import { walkStack } from "./label-walk.js";
import { LogPricing } from "./log-pricing.js";
import { type LogPattern, leftLying, logPattern, trimmed } from "./pattern-cost.js";

/** How hard to look. */
export interface Effort {
  /** Steps on the worth of the limits. */
  readonly steps: number;
  /** Partial stacks kept a face; 0 leaves the walk out. */
  readonly labels: number;
  /** Best paths of bolts that are walked. */
  readonly paths: number;
}

/** Bolts of a log that are looked at again and again. */
const KEPT_ARCS = 24;

/** Plans logs one at a time. Remembers for each log which bolts are worth looking at. */
export class LogPlanner {
  readonly #arcs = new Map<LogTable, readonly Arc[]>();

  constructor(
    readonly job: Job,
    readonly budget: Budget,
  ) {}

  /** Worth of a pattern: pieces that are open at their prices, less its cost. */
  worth(pattern: LogPattern, open: ArrayLike<number>, price: ArrayLike<number>): number {
    return pattern.made.reduce(
      (sum, made, j) => sum + Math.min(made, Math.max(0, open[j] as number)) * (price[j] as number),
      -pattern.cost,
    );
  }

  /** The best pattern found; leaves the log lying where nothing is worth the work. */
  plan(log: LogTable, open: readonly number[], price: readonly number[], effort: Effort): LogPattern {
    const { job } = this;
    let best = leftLying(job);
    let bestWorth = 0;
    const offer = (bolts: readonly BoltPattern[]) => {
      const pattern = trimmed(job, log.log, logPattern(job, log.log, bolts), open);
      const worth = this.worth(pattern, open, price);
      if (worth > bestWorth + 1e-9) [best, bestWorth] = [pattern, worth];
      return pattern;
    };
    let limit = price.map(() => 0);
    let least = {
      value: Number.POSITIVE_INFINITY,
      limit,
      pricing: null as LogPricing | null,
      paths: [] as (readonly Arc[])[],
    };
    for (let step = 0; step < effort.steps && !this.budget.out; step++) {
      const pricing = new LogPricing(
        job,
        price.map((p, j) => ((open[j] as number) > 0 ? Math.max(0, p - (limit[j] as number)) : 0)),
      );
      const arcs = this.#arcsOf(log, pricing);
      const values = pricing.arcValues(arcs);
      const paths = pathsOf(log, arcs, values, effort.paths);
      const value = (onward(log, arcs, values).after[0] ?? 0) - job.prices.log;
      const upper = limit.reduce((sum, mu, j) => sum + mu * Math.max(0, open[j] as number), value);
      this.budget.spend(pricing.work);
      const raw = logPattern(job, log.log, pricing.patterns(paths[0] ?? []));
      offer(raw.bolts);
      if (upper < least.value - 1e-9) least = { value: upper, limit, pricing, paths };
      if (least.value <= bestWorth + 1e-6 || least.value <= 0) break;
      const over = Array.from(raw.made, (made, j) => made - Math.max(0, open[j] as number));
      const norm = over.reduce((sum, d, j) => sum + (d > 0 || (limit[j] as number) > 0 ? d * d : 0), 0);
      if (norm === 0) break;
      const size = Math.min(1, 1.5 / (1 + step / 4)) * ((upper - bestWorth) / norm);
      limit = limit.map((mu, j) => Math.min(price[j] as number, Math.max(0, mu + size * (over[j] as number))));
    }
    if (effort.labels > 0 && least.pricing !== null && least.value > bestWorth + 1e-6) {
      const pricing = least.pricing;
      const filling = new CappedFilling(job, pricing.worth);
      for (const path of least.paths) offer(this.#walk(path, filling, open, price, least.limit, effort.labels));
    }
    return best;
  }

  /** Bolts one after another, each for what the ones before have left open. */
  #walk(
    path: readonly Arc[],
    filling: CappedFilling,
    open: readonly number[],
    price: readonly number[],
    limit: readonly number[],
    labels: number,
  ): BoltPattern[] {
    const left = open.map((count) => Math.max(0, count));
    return path.map((arc) => {
      const stack = walkStack({ job: this.job, table: arc.table, filling, open: left, price, limit, labels });
      this.budget.spend(Math.ceil(stack.labels / 40));
      stack.made.forEach((made, j) => {
        left[j] = (left[j] as number) - made;
      });
      return { z0: arc.z0, z1: arc.z0 + arc.shape.length, slabs: stack.slabs };
    });
  }

  /** All bolts of a log with few; of one with many, those whose best paths come near the best, at the first prices asked. */
  #arcsOf(log: LogTable, pricing: LogPricing): readonly Arc[] {
    const known = this.#arcs.get(log);
    if (known !== undefined) return known;
    if (log.arcs.length <= KEPT_ARCS) {
      this.#arcs.set(log, log.arcs);
      return log.arcs;
    }
    const values = pricing.arcValues(log.arcs);
    const { after } = onward(log, log.arcs, values);
    const before = toward(log, log.arcs, values);
    const through = log.arcs.map((arc, i) => ({
      arc,
      worth: (before[arc.from] as number) + (values[i] as number) + (arc.to >= 0 ? (after[arc.to] as number) : 0),
    }));
    const kept = through
      .sort((a, b) => b.worth - a.worth)
      .slice(0, KEPT_ARCS)
      .map(({ arc }) => arc);
    kept.sort((a, b) => a.from - b.from || a.length - b.length);
    this.#arcs.set(log, kept);
    return kept;
  }
}

/** The best path, and the best ones through other first bolts. */
function pathsOf(log: LogTable, arcs: readonly Arc[], values: Float64Array, most: number): Arc[][] {
  const steps = onward(log, arcs, values);
  const best = bestPath(log, steps);
  const paths = [best];
  if (most > 1) {
    const others = arcs
      .map((arc, i) => ({ i, worth: (values[i] as number) + (arc.to >= 0 ? (steps.after[arc.to] as number) : 0), arc }))
      .filter(({ arc, i }) => arc.from === 0 && i !== best[0] && (values[i] as number) > 0)
      .sort((a, b) => b.worth - a.worth)
      .slice(0, most - 1);
    for (const { i, arc } of others) paths.push([i, ...(arc.to >= 0 ? bestPath(log, steps, arc.to) : [])]);
  }
  return paths.map((path) => path.map((i) => arcs[i] as Arc));
}
