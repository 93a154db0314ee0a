/** The routes of an estimate, each once: the mix may be one of the others. */
import type { ComparedRoutes } from "../../estimate/compare/decision.js";
import type { RouteCells } from "../../estimate/compare/route.js";

/** Milled, by a hired sawyer, mixed, bought; what is the same route is listed once. */
export function distinctRoutes({ mill, hired, mix, buy }: ComparedRoutes): RouteCells[] {
  return [...new Set([...(mill ? [mill] : []), ...(hired ? [hired] : []), mix, buy])];
}
