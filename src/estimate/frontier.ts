/** What the search of mixes came to, and the frontier of cash against hours with better plans than those that found it. */
import type { MixFound } from "./best-mix.js";
import { type FrontierGap, type FrontierPoint, frontierGap, type MixStanding, supported } from "./compare/envelope.js";
import type { MixBound } from "./compare/mix-bound.js";
import type { MixPoint } from "./compare/mix-point.js";
import type { RoutePlan } from "./compare/route.js";
import type { LeftOpen } from "./compare/verdict-pins.js";
import { frontierPlans } from "./frontier-plans.js";
import type { BestMix } from "./mix-choice.js";
import { judgeStockPlan } from "./purchase/stock-judge.js";
import type { Decimal } from "./quantity/decimal.js";
import { judgeSawingPlan } from "./salvage/sawing-judge.js";

/** What the search of mixes came to. */
export interface MixSearched {
  /** Mixes that were priced, of so many that there are. */
  readonly tried: number;
  readonly possible: number;
  /** Best mixes for every value of an hour, cheapest first; empty where nobody asked. */
  readonly frontier: readonly FrontierPoint[];
  /** How far below the frontier any mix may lie; undefined where that is not known. */
  readonly frontierGap: FrontierGap | undefined;
  /** What is proven of all mixes; undefined where the planner proves nothing. */
  readonly bound: MixBound | undefined;
  /** How far the mix is above the bound at most, as a share of its total. */
  readonly gap: Decimal | undefined;
  /** What pricing the others told of the best one. */
  readonly standing: MixStanding;
  /** The best mix with every pin left open; absent where nothing is pinned. */
  readonly open?: LeftOpen | undefined;
}

/**
 * What the search came to, its frontier where one was asked for, and the best mix with all plans that the frontier found.
 * @param routes - Plans of the other routes of the answer.
 */
export function searchOf(
  found: MixFound,
  first: BestMix,
  routes: readonly RoutePlan[],
): { readonly searched: MixSearched; readonly best: BestMix } {
  const known = [first.plan, ...routes].map(found.price);
  const wanted = found.frontier.length > 0;
  const better = wanted ? frontierPlans(found) : [];
  const best = wanted ? first.among([...found.tried, ...better]) : first;
  const frontier = wanted ? refinedFrontier(found, [...first.priced, ...known, ...better]) : [];
  const { tried, possible, bound } = found;
  return {
    searched: {
      ...{ tried: tried.length, possible, frontier, bound, gap: undefined, standing: best.standing },
      frontierGap: frontierGap(frontier, found.proven()),
    },
    best,
  };
}

/** The lower envelope of all that was ever priced. Each point is a judged plan; cash rises and hours fall. */
function refinedFrontier(found: MixFound, better: readonly MixPoint[]): readonly FrontierPoint[] {
  const frontier = supported([...found.tried, ...better]);
  for (const { point } of frontier) judge(point.plan);
  return frontier;
}

/** @throws Error when a plan that we made is wrong: a bug. */
function judge(plan: RoutePlan | undefined): void {
  if (!plan) throw new Error("a point of the frontier has no plan");
  const { sawing, stock } = plan;
  const wrong = [
    ...(sawing ? judgeSawingPlan(sawing.problem, sawing.plan) : []),
    ...stock.flatMap(({ question, plan: cuts }) => judgeStockPlan(question.problem, cuts)),
  ];
  if (wrong.length > 0) throw new Error(`a plan of the frontier is wrong: ${wrong[0]}`);
}
