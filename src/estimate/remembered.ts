/** Orders of sticks that one estimate asks for again and again: mixes differ in a group or two, the other orders are the same. */
import type { Planners } from "./plan.js";
import type { StockOutcome } from "./purchase/stock/problem.js";

type PlanStock = Planners["stock"];

/** Planners that plan each order of sticks once. For one estimate: what is remembered goes with them. */
export function remembering(planners: Planners): Planners {
  const { sketch } = planners;
  return {
    ...planners,
    stock: plannedOnce(planners.stock),
    ...(sketch ? { sketch: { ...sketch, stock: plannedOnce(sketch.stock) } } : {}),
  };
}

function plannedOnce(plan: PlanStock): PlanStock {
  const outcomes = new Map<string, StockOutcome>();
  return (problem) => {
    const question = JSON.stringify(problem);
    const outcome = outcomes.get(question) ?? plan(problem);
    outcomes.set(question, outcome);
    return outcome;
  };
}
