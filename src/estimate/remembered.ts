/** Orders of sticks that one estimate asks for again and again: mixes differ in a group or two, the other orders are the same. */
import type { Planners } from "./plan.js";
import { plannedOnce } from "./purchase/planned-once.js";

/** Planners that plan each order of sticks once. For one estimate: what is remembered goes with them. */
export function remembering(planners: Planners): Planners {
  const { sketch } = planners;
  return {
    ...planners,
    stock: plannedOnce(planners.stock),
    ...(sketch ? { sketch: { ...sketch, stock: plannedOnce(sketch.stock) } } : {}),
  };
}
