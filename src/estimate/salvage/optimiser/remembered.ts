/**
 * Ways to saw each log, and each bolt, that were met on the way, and the best of them for some logs or bolts together.
 *
 * Together they never give more than each alone for what is open: worths are capped by it. So most ways are out at a
 * glance, and a few logs are tried in all ways that are left (branch and bound).
 */
import type { BoltPattern } from "../sawing-pattern.js";
import type { LogTable } from "./bucking.js";
import type { Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import { boltCost, countPieces, type LogPattern, leftLying, logPattern, trimmed } from "./pattern-cost.js";
import { type Way, WayChoice, Ways } from "./way-choice.js";
import type { WholePlan } from "./whole-plan.js";

/** A way to saw one bolt. */
interface BoltWay extends Way {
  readonly bolt: BoltPattern | null;
}

/** A bolt of a plan. */
interface Slot {
  readonly log: number;
  readonly bolt: BoltPattern;
}

/** Counts looked at that take about as long as a unit of work. Measured. */
const COUNTS_A_UNIT = 60_000;

/** Remembers ways and puts them together. */
export class Remembered {
  readonly #logs: ReadonlyMap<LogTable, Ways<LogPattern>>;
  readonly #bolts = new Map<string, Ways<BoltWay>>();
  readonly #seen = new WeakSet<LogPattern>();
  readonly #choice: WayChoice;
  readonly #gain: (way: Way) => number;

  /** @param worth - What a piece is worth by the relaxation: says which ways to keep. */
  constructor(
    readonly yard: Yard,
    worth: ArrayLike<number>,
  ) {
    const { job } = yard;
    this.#gain = ({ made, cost }) =>
      made.reduce((sum, count, j) => sum + Math.min(count, job.count[j] as number) * (worth[j] as number), -cost);
    this.#logs = new Map(yard.logs.map((table) => [table, new Ways(this.#gain, leftLying(job))]));
    for (const { logClass, pattern } of yard.columns) this.add(yard.logs[logClass] as LogTable, pattern);
    this.#choice = new WayChoice(job.buy);
  }

  /** Remembers a way to saw a log of a table, or one bolt of it, and the bolts of that way. */
  add(table: LogTable, pattern: LogPattern): void {
    if (this.#seen.has(pattern)) return;
    this.#seen.add(pattern);
    this.#logs.get(table)?.add(pattern);
    for (const bolt of pattern.bolts) {
      const made = pattern.bolts.length === 1 ? pattern.made : countPieces(this.yard.job, [bolt]);
      this.#slot(table, bolt).add({ made, cost: boltCost(this.yard.job, table.log, bolt), bolt });
    }
  }

  #slot({ log }: LogTable, { z0, z1 }: BoltPattern): Ways<BoltWay> {
    const key = `${log.name} ${z0} ${z1}`;
    let ways = this.#bolts.get(key);
    if (ways === undefined) {
      ways = new Ways<BoltWay>(this.#gain, { made: new Int32Array(this.yard.job.groups.length), cost: 0, bolt: null });
      this.#bolts.set(key, ways);
    }
    return ways;
  }

  /** Remembers what a plan does with each log. */
  addAll(plan: WholePlan): void {
    for (const [log, pattern] of plan.patterns.entries()) this.add(this.yard.tableOf(log), pattern);
  }

  /** Saws some logs of a plan in the best of the ways remembered; false where the plan is no cheaper for it. */
  improveLogs(plan: WholePlan, logs: readonly number[], budget: Budget): boolean {
    const ways = logs.map((log) => this.#logs.get(this.yard.tableOf(log)) as Ways<LogPattern>);
    const found = this.#best(
      plan,
      ways,
      logs.map((log) => plan.patterns[log] as LogPattern),
      budget,
    );
    if (found === null) return false;
    for (const log of logs) plan.set(log, leftLying(this.yard.job));
    for (const [i, log] of logs.entries()) this.#set(plan, log, found[i] as LogPattern);
    return true;
  }

  /** Saws some bolts of a plan in the best of the ways remembered. */
  improveBolts(plan: WholePlan, slots: readonly Slot[], budget: Budget): boolean {
    const { job } = this.yard;
    const ways = slots.map(({ log, bolt }) => this.#slot(this.yard.tableOf(log), bolt));
    const now = slots.map(({ log, bolt }): BoltWay => {
      const made = countPieces(job, [bolt]);
      return { made, cost: boltCost(job, this.yard.tableOf(log).log, bolt), bolt };
    });
    const found = this.#best(plan, ways, now, budget);
    if (found === null) return false;
    for (const log of new Set(slots.map((slot) => slot.log))) {
      const bolts = (plan.patterns[log] as LogPattern).bolts.flatMap((bolt) => {
        const slot = slots.findIndex((one) => one.log === log && one.bolt === bolt);
        return slot < 0 ? [bolt] : [(found[slot] as BoltWay).bolt ?? []].flat();
      });
      plan.set(log, leftLying(job));
      this.#set(plan, log, logPattern(job, this.yard.tableOf(log).log, bolts));
    }
    return true;
  }

  #set(plan: WholePlan, log: number, pattern: LogPattern): void {
    plan.set(log, trimmed(this.yard.job, this.yard.tableOf(log).log, pattern, plan.open()));
  }

  /** The ways that are worth most together; null where none are worth more than those now. */
  #best<T extends Way>(plan: WholePlan, ways: readonly Ways<T>[], now: readonly T[], budget: Budget): T[] | null {
    const open = Int32Array.from(plan.open(), (count, j) =>
      Math.max(
        0,
        now.reduce((sum, { made }) => sum + (made[j] as number), count),
      ),
    );
    const before = this.#choice.looked;
    const found = this.#choice.best(ways, now, open);
    budget.spend(Math.ceil((this.#choice.looked - before) / COUNTS_A_UNIT));
    return found;
  }
}
