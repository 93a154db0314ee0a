/** The whole job, read top to bottom: lay the basis, plan the routes, lay and compare them. */
import { type Basis, basisOf, layBasis } from "./basis.js";
import { findBestMix } from "./best-mix.js";
import { type Caution, cautionsOf, roofWeightCaution } from "./cautions.js";
import { type ComparedRoutes, type Decision, decide } from "./compare/decision.js";
import type { LeftOut } from "./compare/group-savings.js";
import type { MixBound } from "./compare/mix-bound.js";
import { type CommonCells, layRoute, type RouteCells, type RoutePlan } from "./compare/route.js";
import { laySpending, type Spending } from "./compare/spending.js";
import { type Verdict, verdictOf } from "./compare/verdict.js";
import { type ComparedCovering, compareCoverings } from "./covering-comparison.js";
import { type Fault, FaultError } from "./faults.js";
import { type MixSearched, searchOf } from "./frontier.js";
import { mixFaults, unaskedPlans } from "./held-plan-faults.js";
import { mixLabel } from "./joint-route.js";
import { heldLeftOut, planLeftOut } from "./left-out.js";
import { withinLimits } from "./limit-plans.js";
import { bestMix, endsOf, type PlanMilled } from "./mix-choice.js";
import type { Notice } from "./notice.js";
import { noticesOf } from "./notices.js";
import { chosenOffers, withChosenFirst } from "./offer-choice.js";
import { improvedByPiece } from "./piece-moves.js";
import { boughtOfPins } from "./piece-price.js";
import { heldForm, knowing, millable, type Planners, planRoute, quickly } from "./plan.js";
import type { Decimal } from "./quantity/decimal.js";
import { remembering } from "./remembered.js";
import type { HeldPlans } from "./request/held-plans.js";
import type { EstimateRequest } from "./request/request.js";
import { layYield, logsSawn, type YieldCells } from "./salvage/overrun.js";
import { aside } from "./sheet/aside.js";
import { idleFaults, layOwnLines } from "./sheet/own-lines.js";
import { Sheet } from "./sheet/sheet.js";
import { layCommon, layTakeoffs, type Takeoffs } from "./takeoffs.js";
import { Stages, UNWATCHED } from "./watch.js";
import { leftOpen, leftOpenBy } from "./without-pins.js";

/** An estimate: the sheet and its parts, the routes, and what is said of them. */
export interface Estimate {
  readonly basis: Basis;
  readonly takeoffs: Takeoffs;
  readonly common: CommonCells;
  /** `mix` is one of the others where no other mix is better. */
  readonly routes: ComparedRoutes;
  readonly decision: Decision;
  readonly verdict: Verdict;
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
  /** Absent where the mix was held, or nothing may be milled. */
  readonly searched: MixSearched | undefined;
  /** Coverings compared, best first; empty where nobody asked. */
  readonly coverings: readonly ComparedCovering[];
  /** Lumber beside log scale, by the key of the route, where it mills. */
  readonly yields: ReadonlyMap<string, YieldCells>;
  /** Where the cash goes, by the key of the route. */
  readonly spent: ReadonlyMap<string, Spending>;
  /** For `heldPlans` of a later request. */
  readonly plans: HeldPlans;
}

/** The plans of every route, ready to be laid. */
interface RoutePlans {
  readonly buy: RoutePlan;
  readonly mill: RoutePlan | undefined;
  readonly hired: RoutePlan | undefined;
  readonly mix: RoutePlan;
  /** Groups left out of the routes that mill, one by one. */
  readonly leftOut: readonly LeftOut[];
}

/** What is told of an estimate under way, in the order of the work. */
export const ESTIMATE_STAGES = {
  lay: "laying out pieces, logs and prices",
  bought: "planning what to buy",
  mixes: "trying mixes of milling and buying",
  milled: "planning the cuts of everything that the logs serve",
  mixed: "planning the cuts of the best mix",
  price: "pricing every way",
} as const;

/** How far an estimate has come, told stage by stage. */
export type EstimateStages = Stages<keyof typeof ESTIMATE_STAGES>;

/**
 * Estimates a request that has passed the door.
 * @throws FaultError when it can't be built, an override is wrong, or a held plan does not fit; CalledOff.
 */
export function estimate(
  asked: EstimateRequest,
  given: Planners,
  stages: EstimateStages = new Stages(ESTIMATE_STAGES, UNWATCHED),
): Estimate {
  stages.begin("lay");
  const request = withChosenFirst(asked);
  const basis = layBasis(newSheet(request), request);
  const names = millable(basis);
  const held = request.heldPlans;
  refuse(mixFaults(held ?? {}, new Set(basis.cutList.groups.map(({ name }) => name)), basis.hired));
  const planners = remembering(given);
  const plan = (key: string, label: string, milled: ReadonlySet<string>, hired = false, by = planners) =>
    planRoute(basisOf(basis, { hired }), key, label, milled, by, held);
  stages.begin("bought");
  const buy = plan("bought", "Everything bought", new Set());
  if (names.length === 0) {
    stages.begin("price");
    return layEstimate(basis, { buy, mill: undefined, hired: undefined, mix: buy, leftOut: [] });
  }
  const withLeftOut = (plans: Omit<RoutePlans, "leftOut">): RoutePlans => {
    const counted = [plans.mix, plans.mill].filter((one) => one?.sawing !== undefined);
    return { ...plans, leftOut: planLeftOut(basis, counted as RoutePlan[], planners, held) };
  };
  stages.begin("mixes");
  const found = held?.milled ? undefined : findBestMix(request, planners, (done, of) => stages.part(done, of));
  stages.begin("milled");
  const all = (key: string, label: string, byHired: boolean) =>
    plan(key, label, new Set(names), byHired, knowing(planners, found?.learntOf(byHired)));
  const mill = all("milled", "Milled wherever the logs serve", false);
  const hired = basis.hired && all("hired", "Milled by a hired sawyer wherever the logs serve", true);
  const ends = [buy, mill, ...(hired ? [hired] : [])];
  // A mix may mill some of every group, as all milled does, by a plan of its own.
  const others = held?.sawing?.mixed ? [] : ends;
  const mixed: PlanMilled = (milled, byHired) =>
    others.find((route) => sameSet(route.milled, milled) && route.hired === byHired) ??
    plan("mixed", mixLabel(byHired), milled, byHired, found ? quickly(planners, found.learntOf(byHired)) : planners);
  if (held?.milled) {
    const milled = new Set(held.milled.filter((name) => names.includes(name)));
    stages.begin("price");
    const mix = mixed(milled, held.hired === true && basis.hired !== undefined);
    return layEstimate(basis, withLeftOut({ buy, mill, hired, mix }));
  }
  stages.begin("mixed");
  const free = found && leftOpen(basis, planners, (open) => estimate(open, planners));
  const routes = [...endsOf(basis, { buy, mill, hired }), ...(free?.kept ?? [])];
  const near = found && withinLimits(found, bestMix(basis, found, mixed, { planners, routes, buy }));
  const best = found && near && improvedByPiece(basis, found, near, planners);
  const search = found && best && searchOf(found, best, ends);
  const chosen = search?.best.plan ?? mill;
  const open = found && free && leftOpenBy(basis, found, free, chosen, ends);
  const searched = search && { ...search.searched, open };
  // A plan that saws nothing buys everything, whatever it was asked to mill.
  const plans = { buy, mill, hired, mix: chosen.sawn.size === 0 ? buy : chosen };
  stages.begin("price");
  const made = layEstimate(basis, withLeftOut(plans), searched);
  const better = betterRoute(made, request);
  if (!better) return made;
  return layEstimate(layBasis(newSheet(request), request), withLeftOut({ ...plans, mix: better }), searched);
}

/** All milled or all bought, where its own plan turned out cheaper than the mix that was found by sketches. */
function betterRoute({ routes, basis }: Estimate, { options }: EstimateRequest): RoutePlan | undefined {
  const { mix, mill } = routes;
  if (!mill || options?.mostCash !== undefined || options?.mostHours !== undefined) return undefined;
  const kept = boughtOfPins(basis, mix.plan);
  const others = endsOf(basis, routes).filter(({ plan }) => boughtOfPins(basis, plan).lte(kept));
  if (others.length === 0) return undefined;
  const least = others.reduce((a, b) => (aside(b.total).lt(aside(a.total)) ? b : a));
  return aside(least.total).lt(aside(mix.total)) ? least.plan : undefined;
}

function sameSet(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  return a.size === b.size && [...a].every((name) => b.has(name));
}

/** Lays takeoffs, routes and comparison on a basis, and collects what is wrong with the whole. */
function layEstimate(basis: Basis, plans: RoutePlans, searched?: MixSearched): Estimate {
  const { sheet } = basis;
  const held = plansToHold(basis, plans);
  refuse(unaskedPlans(basis.request.heldPlans ?? {}, held));
  const takeoffs = layTakeoffs(basis);
  const own = layOwnLines(sheet, basis.request.lines ?? [], { at: "/lines", currency: basis.catalog.currency });
  const common = layCommon(basis, takeoffs, own.cells);
  const lay = (plan: RoutePlan): RouteCells => layRoute(basis, plan, common);
  const buy = lay(plans.buy);
  const mill = plans.mill && lay(plans.mill);
  const hired = plans.hired && lay(plans.hired);
  const laid = [buy, mill, hired].find((route) => route?.plan === plans.mix);
  const routes = { buy, mill, hired, mix: laid ?? lay(plans.mix) };
  const decision = decide(basis, routes, plans.leftOut);
  const wanted = basis.request.options?.coverings;
  const coverings = wanted ? compareCoverings(basis, wanted, takeoffs.covering) : [];
  const yields = new Map([mill, hired, routes.mix].flatMap((route) => (route ? layYields(basis, route) : [])));
  const shown = new Set([buy, mill, hired, routes.mix].flatMap((route) => route ?? []));
  const spent = new Map([...shown].map((route) => [route.plan.key, laySpending(basis, route, common)]));
  refuse([
    ...basis.assumed.faults,
    ...basis.assumed.unknownFaults(),
    ...own.faults(),
    ...idleFaults(own.cells, basis.request.lines ?? [], "/lines"),
    ...sheet.faults,
    // Where the best mix is a route by itself, its cells are those of that route.
    ...sheet.overrideFaults((name) => name.replace(/^mixed\./, `${plans.mix.key}.`)),
  ]);
  const gap = gapOf(routes.mix, searched?.bound);
  const proven = searched?.bound && gap ? { least: searched.bound.least, gap } : undefined;
  const slope = takeoffs.covering?.slope;
  const { standing, open } = searched ?? {};
  const verdict = verdictOf(basis, common, routes, { ...decision, proven, slope, standing, open });
  const weights = coverings.map(({ weight }) => weight);
  const cautions = [...roofWeightCaution(basis, weights), ...cautionsOf(basis, takeoffs, mill !== undefined)];
  const notices = noticesOf(basis, takeoffs, routes, common);
  return {
    basis,
    takeoffs,
    common,
    routes,
    decision,
    verdict,
    cautions,
    notices,
    searched: searched && { ...searched, gap },
    coverings,
    yields,
    spent,
    plans: held,
  };
}

/** All plans, in the form in which a request may hand them back. */
function plansToHold({ request }: Basis, { buy, mill, hired, mix, leftOut }: RoutePlans): HeldPlans {
  const routes = new Set([buy, mill, hired, mix].flatMap((route) => route ?? []));
  const form = heldForm([...routes], mix);
  const stock = { ...form.stock, ...heldLeftOut(leftOut) };
  return { ...form, stock, offers: [...chosenOffers(request)] };
}

/** @returns undefined where nothing is proven, nothing costs anything, or the user's own figures go below the bound. */
function gapOf({ total }: RouteCells, bound: MixBound | undefined): Decimal | undefined {
  const cost = aside(total);
  return bound && cost.gt(0) && cost.gte(bound.least) ? cost.minus(bound.least).dividedBy(cost) : undefined;
}

/** A route's lumber beside log scale, by its key; laid once where the mix is all milled. */
function layYields({ sheet, logs, units }: Basis, { plan, cuts }: RouteCells): [string, YieldCells][] {
  if (!plan.sawing || !cuts || sheet.find(`${plan.key}.yield.lumber`)) return [];
  return [[plan.key, layYield(sheet, plan.key, cuts.pieceVolume, logsSawn(logs, plan.sawing), units)]];
}

function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new FaultError(faults);
}

function newSheet(request: EstimateRequest): Sheet {
  return new Sheet(new Map(Object.entries(request.overrides ?? {})));
}
