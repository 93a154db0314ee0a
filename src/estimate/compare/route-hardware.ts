/** Hardware of one route that is made for pieces of one size: for those that it mills as they are milled, for others as they are sold. */
import type { Basis } from "../basis.js";
import { atStage } from "../effort/used-in.js";
import type { GroupBasis } from "../group-basis.js";
import { leastEach } from "../purchase/fastener-articles.js";
import { amountsOf, type ShoppingLine, taxRatesOn, withTax } from "../purchase/line.js";
import { layShoppingList } from "../purchase/shopping-list.js";
import { type Decimal, ONE, ZERO } from "../quantity/decimal.js";
import { aside } from "../sheet/aside.js";
import { minus, type Operand } from "../sheet/expression.js";
import { hasSpares, itemOf } from "../takeoff/fastener-needs.js";
import { type FittedHardware, layFittedNeeds } from "../takeoff/fitted-hardware.js";
import type { ScheduleItem } from "../takeoff/schedule.js";
import type { SplitGroup } from "./finishing.js";

/** Its lines, and what they were laid from. */
export interface RouteHardware {
  readonly fitted: FittedHardware | undefined;
  readonly lines: readonly ShoppingLine[];
}

/** Lays what it takes and what it costs, under the route's key; none where milled and bought pieces measure the same. */
export function layRouteHardware(
  basis: Basis,
  key: string,
  split: readonly SplitGroup[],
  fitted: FittedHardware | undefined,
): RouteHardware {
  if (!fitted) return { fitted, lines: [] };
  const { sheet, pricing, catalog, request, cutList } = basis;
  const parts = new Map(split.map(({ one: { group }, milled }) => [group.name, { milled, count: group.count }]));
  const ofGroup = (name: string) => parts.get(name) as NonNullable<ReturnType<typeof parts.get>>;
  const needs = layFittedNeeds(sheet, fitted, ofGroup, `${key}.`);
  const list = layShoppingList(pricing, catalog, needs, request.system, `${key}.`);
  return { fitted, lines: list.map((served) => atStage(served, cutList.groups)) };
}

/** What the hardware of a route costs beyond what it would, were a group bought; empty where that is no matter. */
export function hardwareBeyondBought(
  basis: Basis,
  { group }: GroupBasis,
  { hardware: { fitted, lines }, split }: { readonly split: readonly SplitGroup[]; readonly hardware: RouteHardware },
): Operand[] {
  if (!fitted?.lines.some(({ groups }) => groups.includes(group.name))) return [];
  const bought = split.map((part) => (part.one.group === group ? { ...part, milled: undefined } : part));
  const instead = layRouteHardware(basis, `decision.group.${group.name}`, bought, fitted).lines;
  const cost = (all: readonly ShoppingLine[]) => amountsOf(basis.pricing, all);
  return [withTax(basis, "fasteners", minus(cost(lines), cost(instead)))];
}

/** Of one piece, milled or bought, what its hardware costs at the least: in the pack that is cheapest by the piece, tax included. */
export function leastHardware(
  basis: Basis,
  { group }: GroupBasis,
  way: "milled" | "bought",
  hardware: FittedHardware | undefined,
): Decimal {
  const lines = hardware?.lines.filter(({ groups }) => groups.includes(group.name)) ?? [];
  return lines.reduce((sum, { fitted, groups }) => {
    const all = groups.reduce((count, name) => {
      const found = basis.groups.find((one) => one.group.name === name);
      return found ? count.plus(aside(found.group.count)) : count;
    }, ZERO);
    return all.isZero() ? sum : sum.plus(leastForAll(basis, fitted[way]).dividedBy(all));
  }, ZERO);
}

/** What some fasteners cost at the least; nothing where they have no price. */
export function leastForAll({ sheet, catalog, pricing, assumed }: Basis, items: readonly ScheduleItem[]): Decimal {
  const taxes = taxRatesOn(pricing, catalog.taxes, "fasteners").reduce((sum, rate) => sum.plus(aside(rate)), ONE);
  const costs = items.map((item) => {
    const each = leastEach(sheet, catalog, itemOf(item));
    const spares = hasSpares(item.fastener) ? aside(assumed.cell("fastener.spare")) : ZERO;
    return each ? each.times(aside(item.count)).times(spares.plus(ONE)) : ZERO;
  });
  return costs
    .reduce((sum, cost) => sum.plus(cost), ZERO)
    .times(aside(pricing.level))
    .times(taxes);
}
