/** The best mix of milling and buying at the user's value of an hour, and on request the whole frontier. */
import { toQuantity } from "../catalog/reading.js";
import { atHour, type Basis, basisOf, layBasis } from "./basis.js";
import { type FrontierPoint, type ProvenLeast, supported } from "./compare/envelope.js";
import { boundMixes, type MixBound, type Prover } from "./compare/mix-bound.js";
import { keptUpTo, type MixLimits, type MixPoint } from "./compare/mix-point.js";
import { MixSearch, searchFrontier } from "./compare/mix-search.js";
import { layRoute, type RoutePlan } from "./compare/route.js";
import { forWantOfPrice } from "./compare/unpriced.js";
import { planOfBound } from "./joint-route.js";
import { boughtOfPins } from "./piece-price.js";
import { millable, type Planners, planRoute, quickly } from "./plan.js";
import type { Decimal } from "./quantity/decimal.js";
import type { EstimateRequest } from "./request/request.js";
import type { Learnt } from "./salvage/optimiser/learnt.js";
import { aside } from "./sheet/aside.js";
import { layOwnLines } from "./sheet/own-lines.js";
import { Sheet } from "./sheet/sheet.js";
import { layCommon, layTakeoffs } from "./takeoffs.js";

/** Mixes priced before the search ends; a mix takes some milliseconds. */
const BUDGET = { mix: 64, frontier: 80 } as const;

/** The best mixes, the frontier where it was asked for, and how many mixes were tried. */
export interface MixFound {
  /** One for each way of milling: at one's own mill, and by a hired sawyer where one is asked for. */
  readonly bests: readonly MixPoint[];
  /** Cheapest first; empty where nobody asked. */
  readonly frontier: readonly FrontierPoint[];
  /** All that were priced, and of how many. */
  readonly tried: readonly MixPoint[];
  readonly possible: number;
  /** Plans a mix better than it was tried, and prices plans, on the search's own sheet. */
  readonly plan: (milled: ReadonlySet<string>, hired: boolean) => RoutePlan;
  readonly price: (plan: RoutePlan) => MixPoint;
  /** Whether a mix is better than another at the user's value of an hour, within the user's limits first. */
  readonly better: (a: MixPoint, b: MixPoint) => boolean;
  /** What is proven of all mixes; undefined where the planner proves nothing. */
  readonly bound: MixBound | undefined;
  /** What the proof learnt of the logs, at one's own mill or a hired sawyer's. */
  readonly learntOf: (hired: boolean) => Learnt | undefined;
  readonly limits: MixLimits;
  /** The user's value of an hour. */
  readonly wage: Decimal;
  /** What was proven at the values of an hour that were asked for so far, the user's own first. */
  readonly proven: () => readonly ProvenLeast[];
  /** Begins a chain of searches that know nothing of the user's value of an hour, so that they find the same whatever it is. */
  readonly jointChain: () => JointAt;
}

/** Plans that go piece by piece as it would pay at another value of an hour, priced; each search starts from what those before it in its chain learnt. */
export type JointAt = (valueOfHour: Decimal) => readonly MixPoint[];

/**
 * Searches on a scratch sheet of its own.
 * @param tell - Told before each mix how many have been tried, of at most how many; what it throws ends the search.
 * @returns undefined when nothing may be milled.
 */
export function findBestMix(
  request: EstimateRequest,
  planners: Planners,
  tell: (tried: number, most: number) => void = () => {},
): MixFound | undefined {
  const sheet = new Sheet(new Map(Object.entries(request.overrides ?? {})));
  const basis = layBasis(sheet, request);
  const names = millable(basis);
  if (names.length === 0) return undefined;
  const unpriced = forWantOfPrice(basis);
  const pinned = basis.groups
    .filter((one) => (one.group.rules.source === "mill" && names.includes(one.group.name)) || unpriced.includes(one))
    .map(({ group }) => group.name);
  const limits = limitsOf(request);
  const wantsFrontier = request.options?.frontier === true;
  // A limit is met by mixes that are the best at other values of an hour.
  const wide = wantsFrontier || limits.cash !== undefined || limits.hours !== undefined;
  const budget = wide ? BUDGET.frontier : BUDGET.mix;
  let tries = 0;
  const price = (plan: RoutePlan) => priced(basis, { ...plan, key: `try${++tries}` });
  const plan = (milled: ReadonlySet<string>, hired: boolean, by: Planners) =>
    planRoute(basisOf(basis, { hired }), `try${++tries}`, "A mix", milled, by, undefined);
  // At one's own mill, and at a hired sawyer's where one is asked for: a search each.
  const ways = basis.hired ? [false, true] : [false];
  const searches = ways.map((hired) => {
    const sketched = (milled: ReadonlySet<string>): MixPoint => price(plan(milled, hired, planners.sketch ?? planners));
    const search: MixSearch = new MixSearch({
      free: names.filter((name) => !pinned.includes(name)),
      pinned,
      limits,
      budget,
      price: (milled) => {
        tell(search.tried.length, budget);
        return sketched(milled);
      },
    });
    search.add(sketched(new Set(names)));
    search.add(sketched(new Set(pinned)));
    return search;
  }) as [MixSearch, ...MixSearch[]];
  const wage = aside(basis.labor.valueOfHour);
  for (const search of searches) search.bestFromAll(wage);
  if (wide) for (const search of searches) searchFrontier(search);
  const bests = searches.map((search) => search.best(wage));
  const all = searches.flatMap(({ tried }) => tried);
  const possible = searches.reduce((sum, search) => sum + search.possible, 0);
  // Nothing is proven of mixes that buy what has no price.
  const provable = unpriced.length === 0 ? ways : [];
  const milled = provable.map((hired) =>
    layRoute(basis, plan(new Set(names), hired, planners.sketch ?? planners), commonOf(basis)),
  );
  const proofAt = (of: Basis, prove: Prover): MixBound | undefined =>
    milled.length > 0 ? boundMixes(of, commonOf(basis), milled, prove) : undefined;
  const bound = proofAt(basis, (problem) => (planners.joint ?? planners.sawing)(problem));
  const learntOf = (hired: boolean): Learnt | undefined => bound?.plans.find((one) => one.hired === hired)?.learnt;
  const proven: ProvenLeast[] = bound ? [{ wage, least: bound.least }] : [];
  const jointChain = (): JointAt => {
    let latest: MixBound["plans"] = [];
    return (valueOfHour) => {
      const other = atHour(basis, valueOfHour, `hour${++tries}`);
      const found = proofAt(other, (problem, hired) => {
        const learnt = latest.find((one) => one.hired === hired)?.learnt;
        return ((learnt && planners.onward) ?? planners.joint ?? planners.sawing)(problem, learnt);
      });
      latest = found?.plans ?? latest;
      if (found) proven.push({ wage: valueOfHour, least: found.least });
      return (found?.plans ?? []).flatMap((one) => planOfBound(other, one, planners)?.whole ?? []).map(price);
    };
  };
  const better = (a: MixPoint, b: MixPoint): boolean => searches[0].better(a, b, wage);
  return {
    bests,
    frontier: wantsFrontier ? supported(all) : [],
    tried: all,
    possible,
    plan: (milled, hired) => plan(milled, hired, quickly(planners, learntOf(hired))),
    price,
    better,
    bound,
    learntOf,
    limits,
    wage,
    proven: () => proven,
    jointChain,
  };
}

/** A mix as a whole route, laid under its plan's key. */
function priced(basis: Basis, plan: RoutePlan): MixPoint {
  const route = layRoute(basis, plan, commonOf(basis));
  const unpinned = boughtOfPins(basis, plan);
  return { milled: plan.milled, cash: aside(route.cash), hours: aside(route.hours), unpinned, plan };
}

const commons = new WeakMap<Basis, ReturnType<typeof layCommon>>();

function commonOf(basis: Basis): ReturnType<typeof layCommon> {
  const known = commons.get(basis);
  if (known) return known;
  const own = layOwnLines(basis.sheet, basis.request.lines ?? [], { at: "/lines", currency: basis.catalog.currency });
  const common = layCommon(basis, layTakeoffs(basis), own.cells);
  commons.set(basis, common);
  return common;
}

/** The user's limits on cash and hours. */
function limitsOf(request: EstimateRequest): MixLimits {
  const { mostCash, mostHours } = request.options ?? {};
  return {
    ...(mostCash === undefined ? {} : { cash: toQuantity(mostCash, request.catalog.currency).value }),
    ...(mostHours === undefined ? {} : { hours: keptUpTo(toQuantity(mostHours, "person-h").value) }),
  };
}
