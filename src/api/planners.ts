/** The planners of the service: which optimiser answers which question, and how much work it may spend on it. */
import type { Planners } from "../estimate/plan.js";
import type { StockOutcome, StockProblem } from "../estimate/purchase/stock/problem.js";
import { planStock } from "../estimate/purchase/stock-plan.js";
import { decimal } from "../estimate/quantity/decimal.js";
import { carefulSawyer } from "../estimate/salvage/careful-sawyer.js";
import { planSawing } from "../estimate/salvage/plan-sawing.js";
import { CalledOff } from "../estimate/watch.js";
import { loadHighs } from "./highs.js";

/** Counted work of one stock plan: proves nearly all jobs of up to 300 pieces. */
const STOCK_WORK = 1_000_000;
/** Of one that is asked for by itself, with an engine for the mixes that are hard to fill. */
const ORDER_WORK = 4_000_000;
/** Of one that is only tried. */
const SKETCH_WORK = 80_000;
/** Of a sawing plan that is asked for by itself: half a second or less. */
export const WHOLE_SAWING_WORK = 6_000;
/** Of a sawing plan of an estimate, which has several; with more the best mix of the demos is not cheaper. */
const SAWING_WORK = 1_500;
/** Of the one that saws or buys piece by piece, which most best mixes come from, and which the bound on mixes rests on. */
const JOINT_WORK = 4_000;
/** Of one for a point of the frontier, of which there are several. */
const POINT_WORK = 1_500;
const SEED = 2;

/** Whoever watches a job that plans: `Stages` will do. */
export interface PlanWatch {
  /** Asked now and then; true ends the planning in `CalledOff`. */
  readonly stopped: () => boolean;
  /** Told how much of the present stage is done. */
  part(done: number, of: number): void;
}

const NOBODY: PlanWatch = { stopped: () => false, part: () => {} };

/**
 * Plans a stock order. Estimates, which plan dozens of times, go without the engine.
 * @param stopped - Asked now and then; true ends the planning in `CalledOff`.
 */
export async function orderPlanner(stopped: () => boolean = NOBODY.stopped): Promise<StockPlanner> {
  const solver = await loadHighs();
  return (problem) => planStock(problem, { work: ORDER_WORK, solver, stopped });
}

/** Least cost of sticks for pieces, with its bound. */
export type StockPlanner = (problem: StockProblem) => StockOutcome;

/**
 * The planners; the same question gives the same plan, whoever watches.
 * @param sawingWork - Counted work of a sawing plan.
 */
export function planners(watch: PlanWatch = NOBODY, sawingWork = SAWING_WORK): Planners {
  const sawing =
    (work: number): Planners["sawing"] =>
    (problem) => {
      const report = ({ done, of }: { done: number; of: number }) => watch.part(done, of);
      const search = { work, seed: SEED, shouldStop: watch.stopped, report };
      const { plan, gap, bound, boundCovers, complete } = planSawing(problem, search);
      if (!complete) throw new CalledOff();
      return { plan, bound, proof: { gap: decimal(gap.toFixed(4)), covers: boundCovers } };
    };
  const stock =
    (work: number): Planners["stock"] =>
    (problem) =>
      planStock(problem, { work, stopped: watch.stopped });
  return {
    sawing: sawing(sawingWork),
    joint: sawing(JOINT_WORK),
    stock: stock(STOCK_WORK),
    points: { sawing: sawing(POINT_WORK), stock: stock(STOCK_WORK) },
    sketch: {
      sawing: (problem) => ({ plan: carefulSawyer(problem), proof: { covers: "a careful sawyer's rule, no bound" } }),
      stock: stock(SKETCH_WORK),
    },
  };
}
