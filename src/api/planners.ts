/** The planners of the service: which optimiser answers which question, and how much work it may spend on it. */
import type { Planners } from "../estimate/plan.js";
import { joinedLeast } from "../estimate/purchase/stock/joined-program.js";
import type { StockOutcome, StockProblem } from "../estimate/purchase/stock/problem.js";
import type { OrderPlanner } from "../estimate/purchase/stock-order-plan.js";
import { planStock } from "../estimate/purchase/stock-plan.js";
import { decimal } from "../estimate/quantity/decimal.js";
import { carefulSawyer } from "../estimate/salvage/careful-sawyer.js";
import { improveSawing, planSawing } from "../estimate/salvage/plan-sawing.js";
import { CalledOff } from "../estimate/watch.js";
import { loadHighs } from "./highs.js";

/** Counted work of one stock plan: proves nearly all jobs of up to 300 pieces. */
const STOCK_WORK = 1_000_000;
/** Of one that is asked for by itself, with an engine for the mixes that are hard to fill. */
const ORDER_WORK = 4_000_000;
/** Of all ways to join the pieces of such an order. */
const JOINED_WORK = 1_000_000;
/** Of one that is only tried. */
const SKETCH_WORK = 80_000;
/** Of a sawing plan that is asked for by itself: half a second or less for few logs, some seconds for hundreds. */
export const wholeSawingWork = (logs: number): number => Math.max(6_000, 200 * logs);
/** Of a sawing plan of an estimate that mills all it can. */
const SAWING_WORK = 500;
/** Of one of several, of which the best is chosen. */
const QUICK_WORK = 300;
/** Of the one that saws or buys piece by piece, which most best mixes come from, and which the bound on mixes rests on. */
const JOINT_WORK = 4_000;
/** Of the same at another value of an hour, from what was learnt of the logs. Measured on ten jobs: no dearer with less. */
const ONWARD_WORK = 2_500;
const SEED = 4;

/** Whoever watches a job that plans: `Stages` will do. */
export interface PlanWatch {
  /** Asked now and then; true ends the planning in `CalledOff`. */
  readonly stopped: () => boolean;
  /** Told how much of the present stage is done. */
  part(done: number, of: number): void;
}

const NOBODY: PlanWatch = { stopped: () => false, part: () => {} };

/**
 * Plans stock orders. Estimates, which plan dozens of times, go without the engine.
 * @param stopped - Asked now and then; true ends the planning in `CalledOff`.
 */
export async function orderPlanner(stopped: () => boolean = NOBODY.stopped): Promise<OrderPlanner> {
  const solver = await loadHighs();
  return {
    stock: (problem, work = ORDER_WORK) => planStock(problem, { work, solver, stopped }),
    joined: (problem, rows, known) => joinedLeast(problem, rows, known, { solver, work: JOINED_WORK, stopped }),
  };
}

/** Least cost of sticks for pieces, with its bound. @param work - Counted; a whole plan's where nothing is said. */
export type StockPlanner = (problem: StockProblem, work?: number) => StockOutcome;

/**
 * The planners; the same question gives the same plan, whoever watches.
 * @param sawingWork - Counted work of a sawing plan.
 */
export function planners(watch: PlanWatch = NOBODY, sawingWork = SAWING_WORK): Planners {
  const report = ({ done, of }: { done: number; of: number }) => watch.part(done, of);
  const searching = { seed: SEED, shouldStop: watch.stopped, report };
  const sawing =
    (work: number): Planners["sawing"] =>
    (problem, learnt) => {
      const { plan, gap, bound, boundCovers, ...found } = planSawing(problem, { ...searching, work, learnt });
      if (!found.complete) throw new CalledOff();
      return { plan, bound, learnt: found.learnt, proof: { gap: decimal(gap.toFixed(4)), covers: boundCovers } };
    };
  const quick: Planners["sawing"] = (problem, learnt) => {
    const { plan, bound, complete } = improveSawing(problem, { ...searching, work: QUICK_WORK, learnt });
    if (!complete) throw new CalledOff();
    return { plan, bound, proof: { covers: "a careful sawyer's rule, improved; no bound" } };
  };
  const stock =
    (work: number): Planners["stock"] =>
    (problem) =>
      planStock(problem, { work, stopped: watch.stopped });
  return {
    sawing: sawing(sawingWork),
    joint: sawing(JOINT_WORK),
    onward: sawing(ONWARD_WORK),
    stock: stock(STOCK_WORK),
    quick,
    sketch: {
      sawing: (problem) => ({ plan: carefulSawyer(problem), proof: { covers: "a careful sawyer's rule, no bound" } }),
      stock: stock(SKETCH_WORK),
    },
  };
}
