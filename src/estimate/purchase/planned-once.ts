/** Orders of sticks that are asked for again and again: one plan answers for all that are alike. */
import type { StockOutcome, StockProblem } from "./stock/problem.js";

/** Plans an order. */
export type PlanOrder = (problem: StockProblem) => StockOutcome;

/** The same, but each order once. What is remembered goes with it. */
export function plannedOnce(plan: PlanOrder): PlanOrder {
  const outcomes = new Map<string, StockOutcome>();
  return (problem) => {
    const question = JSON.stringify(problem);
    const outcome = outcomes.get(question) ?? plan(problem);
    outcomes.set(question, outcome);
    return outcome;
  };
}
