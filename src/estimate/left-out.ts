/**
 * What leaving one group out of a milled route would buy: the yard's lumber planned anew with the group's pieces bought beside all that
 * the route buys. Its sawing plan is kept, with the cuts that served the group alone left out.
 */
import type { Basis } from "./basis.js";
import type { LeftOut } from "./compare/group-savings.js";
import type { RoutePlan } from "./compare/route.js";
import { hasPrice } from "./compare/unpriced.js";
import type { GroupBasis } from "./group-basis.js";
import { wholes } from "./pieces/laying.js";
import { type Planners, planStockOf } from "./plan.js";
import { type BoughtPieces, piecesShort, stockQuestions } from "./purchase/lumber.js";
import type { HeldPlans } from "./request/held-plans.js";

/** Key of a route without a group, for held plans. */
const keyOf = (route: RoutePlan, group: string): string => `${route.key} without ${group}`;

/**
 * Plans for each group that some route saws and that can be bought at a price.
 * @param routes - That mill; each group is left out of the first of them that saws any of it.
 * @throws FaultError when a held plan does not fit.
 */
export function planLeftOut(
  basis: Basis,
  routes: readonly RoutePlan[],
  planners: Planners,
  held: HeldPlans | undefined,
): readonly LeftOut[] {
  return basis.groups.flatMap((one): LeftOut[] => {
    const route = routes.find((each) => sawsAnyOf(each, one));
    if (!route || !one.millable || !hasPrice(basis, one)) return [];
    const { name } = one.group;
    const stock = stockWithout(basis, route, one, planners, held);
    // Of pieces that no stick holds, or sticks lack for, nothing says what buying them would cost.
    if (stock.some(({ question, plan }) => piecesShort(question, plan).has(name))) return [];
    return [{ group: name, route, stock }];
  });
}

const sawsAnyOf = ({ sawing }: RoutePlan, { group }: GroupBasis): boolean =>
  sawing?.plan.logs.some(({ pieces }) => pieces.some((piece) => piece.group === group.name)) ?? false;

/** Stock plans of the offers of which the route would buy otherwise. */
function stockWithout(
  basis: Basis,
  route: RoutePlan,
  { group, substitution }: GroupBasis,
  planners: Planners,
  held: HeldPlans | undefined,
): LeftOut["stock"] {
  if (!("offer" in substitution)) return [];
  const others = route.bought.filter((one) => one.substitution.group.name !== group.name);
  const own: BoughtPieces = { substitution, count: wholes(basis.sheet, group.count) };
  const inOrder = basis.groups.flatMap(
    (one) => [...others, own].find((bought) => bought.substitution.group.name === one.group.name) ?? [],
  );
  const known = new Map(route.stock.map(({ question }) => [question.offer, JSON.stringify(question.problem)]));
  const key = keyOf(route, group.name);
  return stockQuestions(basis.cutting, inOrder)
    .filter(({ offer, problem }) => known.get(offer) !== JSON.stringify(problem))
    .map((question) => planStockOf(question, key, planners, held?.stock?.[key]?.[question.offer.name]));
}

/** As a request hands them back. */
export const heldLeftOut = (plans: readonly LeftOut[]): NonNullable<HeldPlans["stock"]> =>
  Object.fromEntries(
    plans.map(({ group, route, stock }) => [
      keyOf(route, group),
      Object.fromEntries(stock.map(({ question, plan }) => [question.offer.name, [...plan]])),
    ]),
  ) as NonNullable<HeldPlans["stock"]>;
