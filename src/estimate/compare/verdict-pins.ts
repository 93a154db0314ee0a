/** What the verdict says of what the user pins: pieces that the logs lack for it, and what it loses against leaving it open. */
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { isPinned } from "../piece-price.js";
import { type Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { lowered } from "../quantity/words.js";
import { missInWords } from "../salvage/miss-words.js";
import { nearMiss } from "../salvage/near-miss.js";
import type { SawingProblem } from "../salvage/sawing-problem.js";
import { aside } from "../sheet/aside.js";
import type { ComparedRoutes } from "./decision.js";
import type { GroupSaving } from "./group-savings.js";
import type { RoutePlan } from "./route.js";

/** The best mix of the same request with every pin left open. */
export interface LeftOpen {
  /** Cash and hours together. */
  readonly total: Decimal;
  /** What each group saves that it mills, hours counted. */
  readonly saves: ReadonlyMap<string, Decimal>;
}

/** What milling a group saves, hours counted; below zero where it loses. */
export const netOf = ({ labor }: Basis, { cashSaved, extraHours }: GroupSaving): Decimal =>
  aside(cashSaved).minus(aside(extraHours).times(aside(labor.valueOfHour)));

/** Less than a cent is no loss. */
const LITTLE = decimal("0.005");

/**
 * Why the logs lack some of a group that is pinned to the mill; undefined where they give all of it.
 * @param mill - All milled: where the mix does not even try, its question knows the group.
 */
export function whyLacking(one: GroupBasis, mix: RoutePlan, mill: RoutePlan | undefined): string | undefined {
  if (!isPinned(one)) return undefined;
  const { name } = one.group;
  if (mix.sawing && mix.milled.has(name) && (mix.sawing.plan.buy[name] ?? 0) === 0) return undefined;
  const problem = [mix, mill].map((plan) => plan?.sawing?.problem).find((asked) => asked && groupOf(asked, name));
  const wanted = problem && groupOf(problem, name);
  if (!problem || !wanted) return "No log gives any.";
  // That a log holds one says little where what is pinned comes before all else.
  if (nearMiss(problem, wanted).lacks === "nothing")
    return "Single logs hold some, but from all of them together no plan found saws more.";
  return missInWords(problem, wanted);
}

const groupOf = ({ groups }: SawingProblem, name: string) => groups.find((group) => group.name === name);

/** Pieces that pins lack, group by group, and what the pins lose. */
export function pins(
  basis: Basis,
  { mix: { plan, total }, mill }: ComparedRoutes,
  { open, groups }: { readonly open?: LeftOpen | undefined; readonly groups: readonly GroupSaving[] },
): string[] {
  const lacking = basis.groups.flatMap((one) => {
    const why = whyLacking(one, plan, mill?.plan);
    if (!why) return [];
    const bought = plan.bought.find(({ substitution }) => substitution.group.name === one.group.name)?.count ?? 0;
    const unsold = plan.unsold.find(({ group: { group } }) => group.name === one.group.name)?.count ?? 0;
    const count = aside(one.group.count);
    const given = count.minus(bought + unsold);
    return [
      `You ask for ${lowered(one.group.label)} from the logs, and they give ${given.toFixed()} of ${count.toFixed()}, rejects made up for. ${why}`,
    ];
  });
  const lost = open ? aside(total).minus(open.total) : ZERO;
  if (!open || lost.lte(LITTLE)) return lacking;
  const money = (value: Decimal): string => moneyText(value, basis.pricing.currency);
  const savings = new Map(groups.map((saving) => [saving.name, saving]));
  const each = basis.groups.flatMap((one) => {
    const { name, label, rules } = one.group;
    const saving = savings.get(name);
    const milled = saving && isPinned(one) ? netOf(basis, saving).negated() : ZERO;
    const loses = rules.source === "buy" ? (open.saves.get(name) ?? ZERO) : milled;
    return loses.gt(LITTLE) ? [`${lowered(label)} ${money(loses)}`] : [];
  });
  const parts = each.length > 0 ? ` Group by group it loses: ${each.join("; ")}.` : "";
  return [
    ...lacking,
    `What you pin loses ${money(lost)}, your hours counted: left open, the best mix found comes to ${money(open.total)}.${parts}`,
  ];
}
