/**
 * From fractions to whole logs: fix what the relaxation is sure of and the best tenth or so of the rest, take what
 * that makes off the demand, solve again with the columns at hand, until no log is left.
 */
import { type Column, relax, type Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import { within } from "./effort.js";
import type { LogPlanner } from "./log-planner.js";
import { trimmed } from "./pattern-cost.js";
import type { WholePlan } from "./whole-plan.js";

/** A fraction that counts as a whole log, and the share of the logs left that is fixed at least. Assumption, measured. */
const SURE = 0.95;
const SHARE = 0.15;
/** At most so many logs are left to the log planner at the end. */
const LAST_LOGS = 3;

/** Fills an empty plan. @param x - Fractions of the yard's columns in the first relaxation. */
export function dive(yard: Yard, plan: WholePlan, first: Float64Array, planner: LogPlanner, budget: Budget): void {
  const { job } = yard;
  const free = yard.logs.map((log) => [...log.alike]);
  let x = first;
  for (;;) {
    const left = free.reduce((sum, logs) => sum + logs.length, 0);
    const open = plan.open().map((count) => Math.max(0, count));
    if (left === 0 || open.every((count) => count === 0) || budget.out) return;
    if (left <= LAST_LOGS) break;
    let toFix = Math.max(1, Math.floor(left * SHARE));
    const columns = [...x.keys()]
      .filter((q) => (x[q] as number) > 1e-6)
      .sort((a, b) => (x[b] as number) - (x[a] as number) || a - b);
    let fixed = 0;
    for (const q of columns) {
      const { logClass, pattern } = yard.columns[q] as Column;
      for (let amount = x[q] as number; amount > 1e-6 && (amount >= SURE || toFix > 0); amount -= 1) {
        const log = (free[logClass] as number[])[0];
        if (log === undefined) break;
        const table = yard.logs[logClass];
        if (table === undefined) break;
        const whole = trimmed(job, table.log, pattern, plan.open());
        const before = plan.cost;
        plan.set(log, whole);
        if (plan.cost >= before) {
          plan.set(log, { ...whole, bolts: [], made: whole.made.map(() => 0), cost: 0 });
          break;
        }
        (free[logClass] as number[]).shift();
        toFix--;
        fixed++;
      }
    }
    if (fixed === 0) break;
    const ask = {
      demand: plan.open().map((n) => Math.max(0, n)),
      logs: free.map((logs) => logs.length),
      gap: 0.003,
      rounds: 0,
      quick: 8,
    };
    x = relax(yard, ask, budget).master.x;
  }
  let left = free.reduce((sum, logs) => sum + logs.length, 0);
  for (const [logClass, logs] of free.entries()) {
    const table = yard.logs[logClass];
    for (const log of logs) {
      if (table === undefined || budget.out) return;
      const effort = {
        steps: 16,
        labels: 4,
        plans: 2,
        bolts: 3,
        shares: [1],
        starts: 16,
        fresh: true,
        patient: false,
        most: 800,
      };
      plan.set(log, planner.plan(table, plan.open(), job.buy, within(effort, budget.left / left--)));
    }
  }
}
