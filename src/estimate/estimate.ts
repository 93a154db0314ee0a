/** The whole job, read top to bottom: plan the routes, then lay the sheet of the answer. */
import { type Basis, layBasis } from "./basis.js";
import { type Caution, cautionsOf, type Notice, noticesOf } from "./cautions.js";
import { type Decision, decide, type LeftOut } from "./compare/decision.js";
import { type CommonCells, layRoute, type RouteCells, type RoutePlan } from "./compare/route.js";
import { type Verdict, verdictOf } from "./compare/verdict.js";
import { type Fault, FaultError } from "./faults.js";
import { heldForm, millable, type Planners, planRoute, WITHOUT } from "./plan.js";
import type { HeldPlans } from "./request/held-plans.js";
import type { EstimateRequest } from "./request/request.js";
import { Sheet } from "./sheet/sheet.js";
import { layCommon, layTakeoffs, type Takeoffs } from "./takeoffs.js";

export interface Estimate {
  readonly basis: Basis;
  readonly takeoffs: Takeoffs;
  readonly common: CommonCells;
  readonly routes: Routes;
  readonly decision: Decision;
  readonly verdict: Verdict;
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  /** For `heldPlans` of a later request. */
  readonly plans: HeldPlans;
}

/** All routes that were laid. `mix` is one of the others where no other mix is better. */
export interface Routes {
  readonly buy: RouteCells;
  readonly mill: RouteCells | undefined;
  readonly mix: RouteCells;
  readonly leftOut: readonly LeftOut[];
}

/** The plans of every route, ready to be laid. */
interface RoutePlans {
  readonly buy: RoutePlan;
  readonly mill: RoutePlan | undefined;
  readonly mix: RoutePlan;
  readonly leftOut: readonly RoutePlan[];
}

/**
 * Estimates a request that has passed the door.
 * @throws FaultError when it can't be built, an override is wrong, or a held plan does not fit.
 */
export function estimate(request: EstimateRequest, planners: Planners): Estimate {
  // Planning reads sizes from cells: they are laid on a scratch sheet first.
  const basis = layBasis(newSheet(request), request);
  const plan = (key: string, label: string, milled: ReadonlySet<string>) =>
    planRoute(basis, key, label, milled, planners, request.heldPlans);
  const names = millable(basis);
  const buy = plan("bought", "Everything bought", new Set());
  if (names.length === 0) return layEstimate(request, { buy, mill: undefined, mix: buy, leftOut: [] });
  const mill = plan("milled", "Milled wherever the logs serve", new Set(names));
  const without = (name: string) => plan(`${WITHOUT}${name}`, `As milled, but ${name} bought`, butFor(names, name));
  const plans = { buy, mill, mix: mill, leftOut: names.map(without) };
  const mixed = (milled: ReadonlySet<string>): RoutePlans => ({
    ...plans,
    mix: [buy, mill].find((route) => sameSet(route.milled, milled)) ?? plan("mixed", "Best mix found", milled),
  });
  const held = request.heldPlans?.milled;
  if (held) return layEstimate(request, mixed(new Set(held.filter((name) => names.includes(name)))));
  return withBestMix(request, plans, mixed);
}

const butFor = (names: readonly string[], left: string): ReadonlySet<string> =>
  new Set(names.filter((name) => name !== left));

function sameSet(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  return a.size === b.size && [...a].every((name) => b.has(name));
}

/**
 * Mills the groups that cost more when left out than when milled, at the value of an hour; never dearer than all milled
 * or all bought, for those are priced beside it.
 */
function withBestMix(
  request: EstimateRequest,
  plans: RoutePlans,
  mixed: (milled: ReadonlySet<string>) => RoutePlans,
): Estimate {
  const first = layEstimate(request, plans);
  const mill = first.routes.mill ?? first.routes.buy;
  const pinned = first.basis.groups.filter(({ group }) => group.rules.source === "mill").map(({ group }) => group.name);
  const worth = first.routes.leftOut.filter(
    ({ name, route }) => pinned.includes(name) || route.total.value.gt(mill.total.value),
  );
  const second = layEstimate(request, mixed(new Set(worth.map(({ name }) => name))));
  const { routes } = second;
  const allowed = [routes.mix, mill, ...(pinned.length > 0 ? [] : [routes.buy])];
  const best = allowed.reduce((least, route) => (route.total.value.lt(least.total.value) ? route : least));
  return best === routes.mix ? second : layEstimate(request, mixed(best.plan.milled));
}

function layEstimate(request: EstimateRequest, plans: RoutePlans): Estimate {
  const sheet = newSheet(request);
  const basis = layBasis(sheet, request);
  const takeoffs = layTakeoffs(basis);
  const common = layCommon(basis, takeoffs, [], []);
  const laid = new Map<string, RouteCells>();
  const lay = (plan: RoutePlan): RouteCells => {
    const known = laid.get(plan.key);
    if (known) return known;
    const route = layRoute(basis, plan, common);
    laid.set(plan.key, route);
    return route;
  };
  const buy = lay(plans.buy);
  const mill = plans.mill && lay(plans.mill);
  const leftOut = plans.leftOut.map((plan) => ({ name: plan.key.slice(WITHOUT.length), route: lay(plan) }));
  const mix = lay(plans.mix);
  const routes = { buy, mill, mix, leftOut };
  const decision = decide(basis, routes);
  const faults: Fault[] = [
    ...basis.assumed.faults,
    ...basis.assumed.unknownFaults(),
    ...sheet.faults,
    ...sheet.overrideFaults(),
  ];
  if (faults.length > 0) throw new FaultError(faults);
  const all = [plans.buy, ...(plans.mill ? [plans.mill] : []), plans.mix, ...plans.leftOut];
  const verdict = verdictOf(basis, routes, decision);
  const cautions = cautionsOf(basis, takeoffs, routes);
  const notices = noticesOf(basis, routes, common);
  return {
    basis,
    takeoffs,
    common,
    routes,
    decision,
    verdict,
    cautions,
    notices,
    plans: heldForm(all, plans.mix.milled),
  };
}

function newSheet(request: EstimateRequest): Sheet {
  return new Sheet(new Map(Object.entries(request.overrides ?? {})));
}
