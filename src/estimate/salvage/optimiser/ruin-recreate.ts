/**
 * Ruin and recreate (Shaw 1998; Ropke & Pisinger 2006): one to three logs are dropped from the plan and planned again
 * one after another for what is then wanted, all but the last at prices lowered at random; slightly worse plans are
 * taken now and then.
 */
import type { Budget, Yard } from "./column-generation.js";
import type { Effort, LogPlanner } from "./log-planner.js";
import { leftLying } from "./pattern-cost.js";
import type { WholePlan } from "./whole-plan.js";

/** Highest factor of a lowered price; above 1 a group may be overrated for once. Small noise gets stuck. */
const HIGHEST_FACTOR = 1.3;
/** Share of the cost by which a plan may be worse and still be taken, at the start; falls to 0 with the budget. */
const WARMTH = 0.02;

/** What the search runs on. */
export interface Search {
  readonly yard: Yard;
  readonly planner: LogPlanner;
  readonly budget: Budget;
  /** Share of the budget that is used up, 0 to 1. */
  readonly used: () => number;
  readonly chance: () => number;
  /** No plan costs less: reached, the search ends. */
  readonly bound: number;
}

/** @returns the best plan found, never worse than the one given. */
export function ruinAndRecreate(start: WholePlan, search: Search): WholePlan {
  const { yard, planner, budget, chance } = search;
  const { job } = yard;
  const tableOf = new Map(yard.logs.flatMap((table) => table.alike.map((log) => [log, table] as const)));
  let now = start.copy();
  let best = start.copy();
  const logs = job.problem.logs.length;
  while (!budget.out && best.cost > search.bound + 1e-6 * Math.abs(search.bound)) {
    const trial = now.copy();
    const dropped = draw(logs, Math.min(logs, 1 + Math.floor(chance() * 3)), chance);
    for (const log of dropped) trial.set(log, leftLying(job));
    const most = now.cost + WARMTH * now.cost * (1 - search.used()) * chance() ** 3;
    for (const [i, log] of dropped.entries()) {
      const table = tableOf.get(log);
      if (table === undefined) continue;
      const last = i === dropped.length - 1;
      const price = last ? job.buy : job.buy.map((p) => p * Math.min(HIGHEST_FACTOR, chance() * 1.6));
      trial.set(log, planner.plan(table, trial.open(), price, effortFor(chance), last ? trial.cost - most : 0));
    }
    budget.spend(1);
    if (trial.cost < most) now = trial;
    if (trial.cost < best.cost - 1e-9) best = trial.copy();
    if (now.cost > best.cost * (1 + WARMTH)) now = best.copy();
  }
  return best;
}

/** Mostly quick looks, sometimes thorough ones; how far the limits count in the ranking is left to chance. */
function effortFor(chance: () => number): Effort {
  const luck = chance();
  const shares = [[1, 1, 0, 0.5][Math.floor(chance() * 4)] as number];
  const fresh = chance() < 0.15;
  if (luck < 0.2) return { steps: 5, labels: 0, plans: 0, bolts: 0, shares, starts: 0, fresh };
  if (luck < 0.8) return { steps: 4, labels: 4, plans: 1, bolts: 1, shares, starts: 12, fresh };
  return { steps: 6, labels: 6, plans: 2, bolts: 3, shares, starts: 40, fresh };
}

/** Different numbers below `most`, in random order. */
function draw(most: number, count: number, chance: () => number): number[] {
  const drawn = new Set<number>();
  while (drawn.size < count) drawn.add(Math.floor(chance() * most));
  return [...drawn];
}
