/**
 * Ways to saw each log that were met on the way, and the best of them for some logs of a plan together.
 *
 * Together logs never give more than each alone for what is open: worths are capped by it. So most ways are out at a
 * glance, and two or three logs are tried in all ways that are left (branch and bound).
 */
import type { LogTable } from "./bucking.js";
import type { Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import { type LogPattern, leftLying, trimmed } from "./pattern-cost.js";
import type { WholePlan } from "./whole-plan.js";

/** Most ways remembered of a class of logs, and how many stay when there are more. Assumption, measured. */
const MOST_WAYS = 800;
const KEPT_WAYS = 400;
/** Counts looked at that take about as long as a unit of work. Measured. */
const COUNTS_A_UNIT = 60_000;
/** Noise of money in float. */
const NOISE = 1e-7;

/** Ways to saw a log of one class. Their counts stand one after another, by group. */
class Ways {
  patterns: LogPattern[] = [];
  made: Int32Array;
  readonly #seen = new Map<number, number>();

  constructor(
    readonly groups: number,
    readonly worth: (pattern: LogPattern) => number,
  ) {
    this.made = new Int32Array(MOST_WAYS * groups);
  }

  /** Remembers a way unless one that makes the same costs no more. */
  add(pattern: LogPattern): void {
    let mark = 0;
    for (let j = 0; j < this.groups; j++) mark = (mark * 31 + (pattern.made[j] as number)) % 9007199254739;
    const known = this.#seen.get(mark);
    if (known !== undefined) {
      if (pattern.cost < (this.patterns[known] as LogPattern).cost - NOISE) this.#put(known, pattern);
      return;
    }
    if (this.patterns.length >= MOST_WAYS) this.#forget();
    this.#seen.set(mark, this.patterns.length);
    this.#put(this.patterns.length, pattern);
  }

  #put(at: number, pattern: LogPattern): void {
    this.patterns[at] = pattern;
    this.made.set(pattern.made, at * this.groups);
  }

  #forget(): void {
    const kept = this.patterns
      .map((pattern) => ({ pattern, worth: this.worth(pattern) }))
      .sort((a, b) => b.worth - a.worth)
      .slice(0, KEPT_WAYS);
    this.patterns = [];
    this.#seen.clear();
    for (const { pattern } of kept) this.add(pattern);
  }
}

/** Remembers ways and puts them together. */
export class Remembered {
  readonly #waysOf: ReadonlyMap<LogTable, Ways>;
  readonly #levels: Level[] = [];
  readonly #buy: Float64Array;
  #looked = 0;

  /** @param worth - What a piece is worth by the relaxation: says which ways to keep. */
  constructor(
    readonly yard: Yard,
    worth: ArrayLike<number>,
  ) {
    const { job } = yard;
    const gain = ({ made, cost }: LogPattern) =>
      made.reduce((sum, count, j) => sum + Math.min(count, job.count[j] as number) * (worth[j] as number), -cost);
    this.#waysOf = new Map(yard.logs.map((table) => [table, new Ways(job.groups.length, gain)]));
    for (const table of yard.logs) this.add(table, leftLying(job));
    for (const { logClass, pattern } of yard.columns) this.add(yard.logs[logClass] as LogTable, pattern);
    this.#buy = Float64Array.from(job.buy);
  }

  /** Remembers a way to saw a log of a table; those of single bolts are none. */
  add(table: LogTable, pattern: LogPattern): void {
    this.#waysOf.get(table)?.add(pattern);
  }

  /** Remembers what a plan does with each log. */
  addAll(plan: WholePlan): void {
    for (const [log, pattern] of plan.patterns.entries()) this.add(this.yard.tableOf(log), pattern);
  }

  /** Saws some logs of a plan in the best of the ways remembered; false where the plan is no cheaper for it. */
  improve(plan: WholePlan, logs: readonly number[], budget: Budget): boolean {
    const { job } = this.yard;
    this.#looked = 0;
    const open = Int32Array.from(plan.open());
    let now = 0;
    for (const log of logs) {
      const { made, cost } = plan.patterns[log] as LogPattern;
      now -= cost;
      for (let j = 0; j < open.length; j++) open[j] = (open[j] as number) + (made[j] as number);
    }
    for (let j = 0; j < open.length; j++) {
      const most = Math.max(0, open[j] as number);
      open[j] = most;
      const made = logs.reduce((sum, log) => sum + ((plan.patterns[log] as LogPattern).made[j] as number), 0);
      now += Math.min(most, made) * (job.buy[j] as number);
    }
    const ways = logs.map((log) => this.#waysOf.get(this.yard.tableOf(log)) as Ways);
    const best: Choosing["best"] = { value: now + NOISE, chosen: null };
    this.#choose({ ways, best, chosen: [] }, open, 0, 0);
    const found = best.chosen;
    budget.spend(Math.ceil(this.#looked / COUNTS_A_UNIT));
    if (found === null) return false;
    for (const log of logs) plan.set(log, leftLying(job));
    for (const [i, log] of logs.entries()) {
      const pattern = ways[i]?.patterns[found[i] as number] as LogPattern;
      plan.set(log, trimmed(job, this.yard.tableOf(log).log, pattern, plan.open()));
    }
    return true;
  }

  #choose(ask: Choosing, open: Int32Array, depth: number, base: number): void {
    const { ways, best, chosen } = ask;
    const groups = open.length;
    const level = this.#level(depth, groups);
    for (let w = depth; w < ways.length; w++) this.#reckon(ask, open, depth, w, base);
    let rest = 0;
    for (let w = depth + 1; w < ways.length; w++) rest += level.most[w] as number;
    const values = level.values[depth] as Float64Array;
    const { made, patterns } = ways[depth] as Ways;
    for (let p = 0; p < patterns.length; p++) {
      const value = base + (values[p] as number);
      if (value + rest <= best.value) continue;
      chosen[depth] = p;
      if (depth === ways.length - 1) {
        best.value = value;
        best.chosen = chosen.slice();
        continue;
      }
      const { left } = level;
      for (let j = 0; j < groups; j++) left[j] = Math.max(0, (open[j] as number) - (made[p * groups + j] as number));
      this.#choose(ask, left, depth + 1, value);
    }
  }

  #level(depth: number, groups: number): Level {
    this.#levels[depth] ??= { values: [], most: [], left: new Int32Array(groups) };
    return this.#levels[depth] as Level;
  }

  /** Worth of each way of log `w` for what is open. What was worth too little when more was open stays so. */
  #reckon({ ways, best }: Choosing, open: Int32Array, depth: number, w: number, base: number): void {
    const { patterns, made, groups } = ways[w] as Ways;
    const level = this.#level(depth, groups);
    level.values[w] ??= new Float64Array(MOST_WAYS);
    const values = level.values[w] as Float64Array;
    const above = depth > 0 ? this.#levels[depth - 1] : undefined;
    const known = above?.values[w];
    let least = Number.NEGATIVE_INFINITY;
    if (above !== undefined) {
      least = best.value - base;
      for (let other = depth; other < ways.length; other++)
        if (other !== w) least -= above.most[other] as number;
    }
    const buy = this.#buy;
    let most = Number.NEGATIVE_INFINITY;
    for (let p = 0; p < patterns.length; p++) {
      if (known !== undefined && (known[p] as number) <= least) {
        values[p] = Number.NEGATIVE_INFINITY;
        continue;
      }
      let value = -(patterns[p] as LogPattern).cost;
      for (let j = 0, at = p * groups; j < groups; j++, at++) {
        const count = made[at] as number;
        if (count !== 0) value += Math.min(count, open[j] as number) * (buy[j] as number);
      }
      this.#looked += groups;
      values[p] = value;
      if (value > most) most = value;
    }
    level.most[w] = most;
  }
}

/** Some logs whose ways are to be chosen. */
interface Choosing {
  readonly ways: readonly Ways[];
  readonly best: { value: number; chosen: number[] | null };
  readonly chosen: number[];
}

/** Room for one depth of the search: worth of each way by log, the most of each log, what is left open. */
interface Level {
  readonly values: Float64Array[];
  readonly most: number[];
  readonly left: Int32Array;
}
