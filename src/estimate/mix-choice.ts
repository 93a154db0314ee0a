/** The choice of the best mix: among the mixes that the search found, plans that go piece by piece, and both ends. */
import { type Basis, basisOf } from "./basis.js";
import type { MixFound } from "./best-mix.js";
import { bestFor, type MixStanding, reachOf } from "./compare/envelope.js";
import type { MixPoint } from "./compare/mix-point.js";
import type { RoutePlan } from "./compare/route.js";
import { forWantOfPrice } from "./compare/unpriced.js";
import { mixLabel, planOfBound } from "./joint-route.js";
import { isPinned } from "./piece-price.js";
import { ALL_MILLED, type Planners, planRoute } from "./plan.js";
import { Decimal, ZERO } from "./quantity/decimal.js";

/** Plans a route on a basis. */
export type PlanMilled = (milled: ReadonlySet<string>, hired: boolean) => RoutePlan;

/** The best mix, and what was learnt of the others by pricing them. */
export interface BestMix {
  readonly plan: RoutePlan;
  readonly point: MixPoint;
  /** All that it was chosen from, and that the search tried. */
  readonly priced: readonly MixPoint[];
  /** How it stands among all that were priced. */
  readonly standing: MixStanding;
  /** The better of it and of plans that were priced since, all of which the user's pins allow. */
  readonly among: (more: readonly MixPoint[]) => BestMix;
}

interface Candidate {
  readonly plan: RoutePlan;
  readonly point: MixPoint;
}

/**
 * The best of what was planned: the mixes that the search of groups found, planned anew and as they were, the plans that go
 * piece by piece, and the ways that mill or buy everything.
 * @param routes - Those that the user's pins and prices allow, and what keeps to the pins from a search without them.
 * @param buy - Everything bought.
 */
export function bestMix(
  basis: Basis,
  { bests, bound, price, better, tried, limits, wage }: MixFound,
  mixed: PlanMilled,
  {
    planners,
    routes,
    buy,
  }: { readonly planners: Planners; readonly routes: readonly RoutePlan[]; readonly buy: RoutePlan },
): BestMix {
  const betterOf = (a: RoutePlan, b: RoutePlan) => (better(price(b), price(a)) ? b : a);
  const joint = (bound?.plans ?? []).flatMap(
    (one) =>
      planOfBound(basis, one, planners, {
        better: (plans) => plans.reduce(betterOf),
        allMilled: routes.filter(({ key, hired }) => ALL_MILLED.has(key) && hired === one.hired),
      }) ?? [],
  );
  const groups = bests.map(({ milled, plan }) => mixed(milled, plan?.hired ?? false));
  const candidates = (plans: readonly RoutePlan[]) => plans.map((plan) => ({ plan, point: price(plan) }));
  const drawn = tried.reduce((a, b) => (better(b, a) ? b : a));
  const found = [...candidates([...groups, ...joint.flatMap(({ whole }) => whole), ...routes]), ...asMixes([drawn])];
  const allowed = [...found, ...candidates(pinsAlone(basis, found, planners))];
  const loose = candidates(joint.flatMap(({ mixing }) => mixing ?? []));
  const total = ({ point }: Candidate) => point.cash.plus(wage.times(point.hours));
  const bestOf = (all: readonly Candidate[], others: readonly MixPoint[]): BestMix => {
    const best = all.reduce((a, b) => (better(b.point, a.point) ? b : a));
    const saving = Decimal.max(ZERO, ...loose.map((one) => total(best).minus(total(one))));
    return {
      ...best,
      priced: others,
      standing: {
        hour: bestFor(best.point, others),
        buying: bestFor(price(buy), others),
        frontier: basis.request.options?.frontier === true,
        mixedSizes: saving.gt(0) ? saving : undefined,
        reach: reachOf(others, limits),
      },
      among: (more) => bestOf([best, ...asMixes(more)], [...others, ...more]),
    };
  };
  return bestOf(allowed, [...tried, ...allowed.map(({ point }) => point)]);
}

/** Where every plan found buys some of what is pinned to the mill: what is pinned by itself, planned well. */
function pinsAlone(basis: Basis, found: readonly Candidate[], planners: Planners): readonly RoutePlan[] {
  if (found.some(({ point }) => !point.unpinned?.gt(0))) return [];
  const pinned = new Set(basis.groups.filter(isPinned).map(({ group }) => group.name));
  const by = { ...planners, sawing: planners.joint ?? planners.sawing };
  return (basis.hired ? [false, true] : [false]).map((hired) =>
    planRoute(basisOf(basis, { hired }), "mixed", mixLabel(hired), pinned, by, undefined),
  );
}

/** Plans of the search as mixes of the answer. */
function asMixes(points: readonly MixPoint[]): Candidate[] {
  return points.flatMap((point) => {
    const { plan } = point;
    return plan ? [{ point, plan: { ...plan, key: "mixed", label: mixLabel(plan.hired) } }] : [];
  });
}

/** The ways that mill or buy everything, of those that the user's pins allow and that prices let compare. */
export function endsOf<Way>(
  basis: Basis,
  { buy, mill, hired }: { readonly buy: Way; readonly mill: Way | undefined; readonly hired: Way | undefined },
): Way[] {
  const pinned = basis.groups.some(({ group, millable }) => millable && group.rules.source === "mill");
  const comparable = !pinned && forWantOfPrice(basis).length === 0;
  return [...(mill ? [mill] : []), ...(hired ? [hired] : []), ...(comparable ? [buy] : [])];
}
