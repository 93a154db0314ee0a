/** Groups that have no price to be bought at: what is not known is no zero, and no comparison speaks for buying them. */
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { stockQuestions } from "../purchase/lumber.js";
import type { RouteCells } from "./route.js";

/** Whether some length of what the group is bought as has a price. */
export function hasPrice({ cutting }: Basis, { substitution }: GroupBasis): boolean {
  if ("add" in substitution) return false;
  return stockQuestions(cutting, [{ substitution, count: 1 }]).every(({ priced }) => priced);
}

/** Groups that the logs may serve, that nobody asked to mill, and that have no price: a mix mills them for want of one. */
export function forWantOfPrice(basis: Basis): readonly GroupBasis[] {
  return basis.groups.filter((one) => one.millable && one.group.rules.source === "auto" && !hasPrice(basis, one));
}

/** Groups that a route has to buy at no known price. */
export function boughtUnpriced(basis: Basis, { plan }: RouteCells): readonly GroupBasis[] {
  const bought = new Set([
    ...plan.bought.map(({ substitution }) => substitution.group.name),
    ...plan.unsold.map(({ group }) => group.group.name),
  ]);
  return basis.groups.filter((one) => bought.has(one.group.name) && !hasPrice(basis, one));
}
