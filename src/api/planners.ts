/** The planners of the service: which optimiser answers which question, and how much work it may spend on it. */
import type { Planners } from "../estimate/plan.js";
import { planStock } from "../estimate/purchase/stock-plan.js";
import { carefulSawyer } from "../estimate/salvage/careful-sawyer.js";

/** Counted work of one stock plan: proves nearly all jobs of up to 300 pieces. */
const STOCK_WORK = 1_000_000;

/** The planners; the same question gives the same plan. */
export function planners(): Planners {
  return {
    sawing: (problem) => ({ plan: carefulSawyer(problem), proof: { covers: "a careful sawyer's rule, no bound" } }),
    stock: (problem) => planStock(problem, { work: STOCK_WORK }),
  };
}
