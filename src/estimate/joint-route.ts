/** The plan that goes piece by piece, as a route: what is sold in another measure stays whole, run by run. */
import { type Basis, basisOf } from "./basis.js";
import type { JointPlan } from "./compare/mix-bound.js";
import { runsOf } from "./compare/mix-search.js";
import type { RoutePlan } from "./compare/route.js";
import { isPinned } from "./piece-price.js";
import { keptWhole, type Planners, planRoute, quickly } from "./plan.js";
import type { SawingPlan } from "./salvage/sawing-problem.js";

/** What the best mix is called. */
export const mixLabel = (hired: boolean): string =>
  hired ? "Best mix found, milled by a hired sawyer" : "Best mix found";

/** A plan that goes piece by piece, as routes. */
export interface JointRoutes {
  /**
   * Where bought pieces of a run measure less, with every such run on one side as far as the logs go: on the side that most
   * of its pieces were on, and all of them bought, in a plan that was soon made; and the better of them planned well.
   */
  readonly whole: readonly RoutePlan[];
  /** As it was, where it mixes two measures in one run. */
  readonly mixing: RoutePlan | undefined;
}

/**
 * A plan of the bound as a route: piece by piece sawn or bought as it pays, groups that it saws nothing of bought. Where it
 * mixes two measures in one run, the logs are planned anew.
 * @param basis - Of the answer, on which the route is to be laid.
 * @param choice - Where the better of some routes is to be planned well.
 * @returns undefined where it saws nothing.
 */
export function planOfBound(
  basis: Basis,
  { plan, proof, hired, learnt }: JointPlan,
  planners: Planners,
  { better, allMilled = [] }: Choice = {},
): JointRoutes | undefined {
  const sawn = new Set(plan.logs.flatMap(({ pieces }) => pieces.map(({ group }) => group)));
  if (sawn.size === 0) return undefined;
  const route = (milled: ReadonlySet<string>, sawing: Planners["sawing"]) =>
    planRoute(basisOf(basis, { hired }), "mixed", mixLabel(hired), milled, { ...planners, sawing }, undefined);
  const buy = Object.fromEntries(Object.entries(plan.buy).filter(([group]) => sawn.has(group)));
  const found = route(sawn, () => ({ plan: { ...plan, buy }, proof }));
  const split = splitRuns(basis, plan, allMilled);
  if (split.length === 0) return { whole: [found], mixing: undefined };
  const most = settled(sawn, split);
  const none = settled(
    sawn,
    split.map((run) => ({ ...run, mostSawn: false })),
  );
  const quick = quickly(planners, learnt).sawing;
  const whole = [route(most, quick)];
  if (none.size > 0 && none.size < most.size) whole.push(route(none, quick));
  if (!better) return { whole, mixing: found };
  let best = better(whole);
  // Run by run to the other side, the one that is least clear first.
  for (const { groups } of split.toSorted((a, b) => a.lean - b.lean).slice(0, MOST_TURNED)) {
    const turned = route(turnedOver(best.milled, groups), quick);
    whole.push(turned);
    best = better([best, turned]);
  }
  return { whole: [...whole, route(best.milled, planners.joint ?? planners.sawing)], mixing: found };
}

/** How to choose among routes, and what is known of the logs. */
interface Choice {
  /** The better of some routes. */
  readonly better?: (plans: readonly RoutePlan[]) => RoutePlan;
  /** Routes that mill whatever they can: what they lack is no choice. */
  readonly allMilled?: readonly RoutePlan[];
}

/** Runs that are tried on their other side; each takes a quick plan. */
const MOST_TURNED = 4;

/** The run on its other side: bought where any of it was milled. */
function turnedOver(milled: ReadonlySet<string>, run: readonly string[]): ReadonlySet<string> {
  const others = [...milled].filter((name) => !run.includes(name));
  return new Set(others.length < milled.size ? others : [...others, ...run]);
}

/** A run of which some pieces are sawn and some bought, in another measure; whether most are sawn. */
interface SplitRun {
  readonly groups: readonly string[];
  readonly mostSawn: boolean;
  /** How far from half of it is sawn, in pieces. */
  readonly lean: number;
}

/** @param allMilled - Runs of which no more is bought than these lack are whole, as far as the logs go. */
function splitRuns(basis: Basis, plan: SawingPlan, allMilled: readonly RoutePlan[]): SplitRun[] {
  const lacked = (name: string): number => Math.max(0, ...allMilled.map(({ sawing }) => sawing?.plan.buy[name] ?? 0));
  // What is pinned stays at the mill whichever side the rest of its run is on.
  const whole = basis.groups
    .filter((one) => one.millable && !isPinned(one) && keptWhole(basis, one))
    .map(({ group }) => group.name);
  return runsOf(whole).flatMap((groups): SplitRun[] => {
    const bought = groups.reduce((sum, name) => sum + (plan.buy[name] ?? 0), 0);
    const sawn = plan.logs.flatMap(({ pieces }) => pieces).filter(({ group }) => groups.includes(group)).length;
    const chosen = groups.some((name) => (plan.buy[name] ?? 0) > lacked(name));
    return chosen && bought > 0 && sawn > 0 ? [{ groups, mostSawn: sawn > bought, lean: Math.abs(sawn - bought) }] : [];
  });
}

/** What is milled once each such run is on one side. */
function settled(sawn: ReadonlySet<string>, split: readonly SplitRun[]): ReadonlySet<string> {
  const milled = new Set(sawn);
  for (const { groups, mostSawn } of split)
    for (const name of groups) {
      if (mostSawn) milled.add(name);
      else milled.delete(name);
    }
  return milled;
}
