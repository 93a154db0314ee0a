/**
 * Logs planned one after another, the one worth most first: each at prices between what the relaxation says that a
 * piece is worth and what it costs to buy, from the former for the first log to the latter for the last.
 *
 * The first logs must not take what later ones make more cheaply, and the last must not leave what nobody makes then.
 */
import type { Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import { type Effort, within } from "./effort.js";
import type { LogPlanner } from "./log-planner.js";
import { leftLying } from "./pattern-cost.js";
import { WholePlan } from "./whole-plan.js";

/** What the relaxation says of pieces, by group, and of logs, by class. */
export interface Worths {
  readonly piece: ArrayLike<number>;
  readonly log: ArrayLike<number>;
}

/** What it runs on. */
export interface ByWorth {
  readonly yard: Yard;
  readonly planner: LogPlanner;
  readonly worths: Worths;
  readonly effort: Effort;
}

/** Work that each log may take where one of few is planned first and for everything. Assumption, measured on the frozen problems. */
const LOOK = {
  steps: 16,
  labels: 4,
  plans: 1,
  bolts: 2,
  shares: [1],
  starts: 12,
  fresh: false,
  patient: false,
  most: 700,
};

/** Of few logs one may do it all, if it is looked at well: the best of the plans that begin with each of them, within the budget. */
export function planOneFirst(ask: Omit<ByWorth, "effort">, budget: Budget): WholePlan {
  const { job } = ask.yard;
  const logs = inOrder(ask, [...job.problem.logs.keys()]);
  let best = new WholePlan(job);
  for (const log of logs) {
    if (budget.out) break;
    const plan = new WholePlan(job);
    const order = [log, ...logs.filter((other) => other !== log)];
    planLogs(plan, order, 0, { ...ask, effort: within(LOOK, budget.left / logs.length) });
    if (plan.cost < best.cost) best = plan;
  }
  return best;
}

/** Some logs, the one worth most by the relaxation first. */
export function inOrder({ yard, worths }: Omit<ByWorth, "effort">, logs: readonly number[]): number[] {
  const worth = new Map<number, number>();
  for (const [logClass, { alike }] of yard.logs.entries())
    for (const log of alike) worth.set(log, worths.log[logClass] as number);
  return [...logs].sort((a, b) => (worth.get(b) as number) - (worth.get(a) as number) || a - b);
}

/** Plans some logs of a plan anew, in the order given. */
export function planLogs(
  plan: WholePlan,
  logs: readonly number[],
  late: number,
  { yard, planner, worths, effort }: ByWorth,
): void {
  const { job } = yard;
  for (const log of logs) plan.set(log, leftLying(job));
  for (const [i, log] of logs.entries()) {
    const rise = logs.length > 1 ? (i / (logs.length - 1)) ** late : 1;
    const price = job.buy.map((buy, j) => {
      const worth = worths.piece[j] as number;
      return worth + (buy - worth) * rise;
    });
    plan.set(log, planner.plan(yard.tableOf(log), plan.open(), price, effort));
  }
}
