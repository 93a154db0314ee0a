/**
 * A first plan where logs are few: every order of every choice of them, each log planned for what the ones before have
 * left. With much wood the question is which logs to leave, and no fraction answers it.
 */
import type { Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import type { LogPlanner } from "./log-planner.js";
import type { LogPattern } from "./pattern-cost.js";
import { WholePlan } from "./whole-plan.js";

/** Most logs for which all orders are tried: 15 of three, 64 of four. */
const FEW = 4;
const LOOK = { steps: 5, labels: 4, plans: 1, bolts: 2, starts: 12, patient: false, fresh: false };

/** The best plan of all orders within the budget; null where logs are many. */
export function orderLogs(yard: Yard, planner: LogPlanner, budget: Budget): WholePlan | null {
  const { job } = yard;
  const logs = yard.logs.flatMap((table) => table.alike.map((log) => ({ log, table })));
  if (logs.length > FEW) return null;
  let best = new WholePlan(job);
  const planned = new Map<string, LogPattern>();
  const extend = (plan: WholePlan): void => {
    if (plan.cost < best.cost - 1e-9) best = plan;
    for (const { log, table } of logs) {
      if (budget.out || (plan.patterns[log] as LogPattern).bolts.length > 0) continue;
      const open = plan.open();
      const key = `${log} ${open.join(" ")}`;
      const pattern = planned.get(key) ?? planner.plan(table, open, job.buy, { ...LOOK, shares: [1, 0] });
      planned.set(key, pattern);
      if (pattern.bolts.length === 0) continue;
      const next = plan.copy();
      next.set(log, pattern);
      extend(next);
    }
  };
  extend(best);
  return best;
}
