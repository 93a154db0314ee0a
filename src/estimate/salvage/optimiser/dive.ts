/**
 * From fractions to whole logs: fix what the relaxation is sure of and the best tenth or so of the rest, take what
 * that makes off the demand, solve again with the columns at hand, until no log is left.
 */
import { type Column, type Relaxation, relax, type Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import { within } from "./effort.js";
import type { LogPlanner } from "./log-planner.js";
import { leftLying, trimmed } from "./pattern-cost.js";
import { WholePlan } from "./whole-plan.js";

/** A fraction that counts as a whole log, and the share of the logs left that is fixed at least. Assumption, measured. */
const SURE = 0.95;
const SHARE = 0.15;
/** How the last logs are planned: one by one for what is still wanted, for patterns of the relaxation fit it no more. */
export interface DiveEnd {
  /** How many are planned so. */
  readonly last: number;
  /** How late prices rise to those of buying: high powers late. */
  readonly late: number;
}

/** For so many logs at the least, which ends are tried. Assumption, measured on the frozen problems. */
const ENDS: readonly { readonly logs: number; readonly ends: readonly DiveEnd[] }[] = [
  { logs: 100, ends: [{ last: 25, late: 2 }] },
  {
    logs: 30,
    ends: [
      { last: 25, late: 2 },
      { last: 16, late: 1 },
    ],
  },
  { logs: 0, ends: [{ last: 3, late: 0 }] },
];

/** The ends that dives for so many logs are tried with. */
export const diveEnds = (logs: number): readonly DiveEnd[] => ENDS.find((one) => logs >= one.logs)?.ends ?? [];
const LAST_LOOK = {
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

/** What a dive runs on. */
export interface Diving {
  readonly yard: Yard;
  readonly planner: LogPlanner;
  readonly budget: Budget;
}

/** A whole plan. @param first - Fractions of the yard's columns in the first relaxation. */
export function dive({ yard, planner, budget }: Diving, first: Float64Array, end: DiveEnd): WholePlan {
  const plan = new WholePlan(yard.job);
  const free = yard.logs.map((log) => [...log.alike]);
  let x = first;
  for (;;) {
    const left = free.reduce((sum, logs) => sum + logs.length, 0);
    if (left === 0 || plan.open().every((count) => count <= 0) || budget.out) return plan;
    if (left <= end.last || fixBest({ yard, plan, free }, x, Math.max(1, Math.floor(left * SHARE))) === 0) break;
    x = again({ yard, plan, free }, 8, budget).master.x;
  }
  planLast({ yard, plan, free }, planner, budget, end.late);
  return plan;
}

/** A plan that is being filled, and the logs of each class that are free. */
interface Filling {
  readonly yard: Yard;
  readonly plan: WholePlan;
  readonly free: readonly number[][];
}

/** Fixes what the relaxation is sure of, and some more. @returns how many logs. */
function fixBest({ yard, plan, free }: Filling, x: Float64Array, most: number): number {
  const { job } = yard;
  const columns = [...x.keys()]
    .filter((q) => (x[q] as number) > 1e-6)
    .sort((a, b) => (x[b] as number) - (x[a] as number) || a - b);
  let toFix = most;
  let fixed = 0;
  for (const q of columns) {
    const { logClass, pattern } = yard.columns[q] as Column;
    for (let amount = x[q] as number; amount > 1e-6 && (amount >= SURE || toFix > 0); amount -= 1) {
      const log = (free[logClass] as number[])[0];
      if (log === undefined) break;
      const whole = trimmed(job, yard.tableOf(log).log, pattern, plan.open());
      const before = plan.cost;
      plan.set(log, whole);
      if (plan.cost >= before) {
        plan.set(log, leftLying(job));
        break;
      }
      (free[logClass] as number[]).shift();
      toFix--;
      fixed++;
    }
  }
  return fixed;
}

function again({ yard, plan, free }: Filling, quick: number, budget: Budget): Relaxation {
  const demand = plan.open().map((n) => Math.max(0, n));
  return relax(
    yard,
    { demand, logs: free.map((logs) => logs.length), gap: 0.003, rounds: 0, quick, haste: false },
    budget,
  );
}

/** The log worth most by what is left first, at prices that rise from its worth to that of buying; or in any order at those of buying. */
function planLast(filling: Filling, planner: LogPlanner, budget: Budget, late: number): void {
  const { yard, plan, free } = filling;
  const { buy } = yard.job;
  for (let left = free.reduce((sum, logs) => sum + logs.length, 0); left > 0 && !budget.out; left--) {
    const worths = late > 0 ? again(filling, 8, budget).master : null;
    const classes = free.flatMap((logs, c) => (logs.length > 0 ? [c] : []));
    const worth = (c: number) => worths?.log[c] ?? 0;
    const best = classes.reduce((one, c) => (worth(c) > worth(one) ? c : one));
    const log = (free[best] as number[]).shift() as number;
    const rise = (1 / left) ** late;
    const price = buy.map((full, j) => full - (full - (worths?.piece[j] ?? 0)) * (1 - rise));
    plan.set(log, planner.plan(yard.tableOf(log), plan.open(), price, within(LAST_LOOK, budget.left / left)));
  }
}
