/** What the verdict says of what the user pins: pieces that the logs lack for it, and what it loses against leaving it open. */
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { isPinned } from "../piece-price.js";
import { Decimal, decimal } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { lowered } from "../quantity/words.js";
import { missInWords } from "../salvage/miss-words.js";
import { nearMiss } from "../salvage/near-miss.js";
import type { SawingProblem } from "../salvage/sawing-problem.js";
import { aside } from "../sheet/aside.js";
import type { ComparedRoutes } from "./decision.js";
import type { RouteCells, RoutePlan } from "./route.js";

/** What the same request comes to without its pins: cash and hours together. */
export interface LeftOpen {
  /** The best mix with every pin left open, or with one of them where that was found to cost less. */
  readonly total: Decimal;
  /** That mix with all of one group bought, by the group that is pinned to the yard. */
  readonly alone: ReadonlyMap<string, Decimal>;
  /** The best found of the mix that keeps the pins with all of one group bought and of mixes that break its pin alone, by the group that is pinned to the mill. */
  readonly freed: ReadonlyMap<string, Decimal>;
}

/** What pins lose, hours counted. Whatever was found with the pins counts without them, too, so that none alone loses more than all. */
export interface PinsLose {
  /** The best mix found without them. */
  readonly open: Decimal;
  readonly all: Decimal;
  /** By group: what its own pin loses, as far as was tried; or, of one that is pinned to the yard, by itself. */
  readonly each: ReadonlyMap<string, Decimal>;
}

/** @param mix - What the mix comes to that keeps the pins. */
export function pinsLose({ total, alone, freed }: LeftOpen, mix: Decimal): PinsLose {
  const open = Decimal.min(total, mix);
  const each = new Map([
    ...[...alone].map(([name, one]) => [name, Decimal.min(one, mix).minus(open)] as const),
    ...[...freed].map(([name, one]) => [name, mix.minus(one)] as const),
  ]);
  return { open, all: mix.minus(open), each: new Map([...each].filter(([, loses]) => loses.gt(LITTLE))) };
}

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

/** Pieces of a group that do not come from the logs. */
function notGiven({ bought, unsold }: RoutePlan, { group: { name } }: GroupBasis): number {
  const sold = bought.find(({ substitution }) => substitution.group.name === name)?.count ?? 0;
  return sold + (unsold.find(({ group: { group } }) => group.name === name)?.count ?? 0);
}

/** Why the mix is dearer than a way beside it that mills whatever it can: that way gives less of what is pinned. */
function cheaperAndShorter(basis: Basis, { mix, mill, hired }: ComparedRoutes): string[] {
  const less = (way: RouteCells): Decimal => aside(mix.total).minus(aside(way.total));
  const more = (way: RouteCells): string[] =>
    basis.groups.filter(isPinned).flatMap((one) => {
      const lacks = notGiven(way.plan, one) - notGiven(mix.plan, one);
      return lacks > 0 ? [`${lowered(one.group.label)} (${lacks})`] : [];
    });
  const ways = [mill, hired].flatMap((way) => (way && less(way).gt(LITTLE) && more(way).length > 0 ? [way] : []));
  if (ways.length === 0) return [];
  const way = ways.reduce((a, b) => (less(b).gt(less(a)) ? b : a));
  const money = moneyText(less(way), basis.pricing.currency);
  return [
    `${way.plan.label}, it comes to ${money} less than this mix, your hours counted, but the logs then give fewer of what you ask for from them, which goes first: ${more(way).join(", ")}.`,
  ];
}

/** Pieces that pins lack, group by group, why that mix all the same, and what the pins lose. */
export function pins(
  basis: Basis,
  routes: ComparedRoutes,
  { open }: { readonly open?: LeftOpen | undefined },
): string[] {
  const { mix, mill } = routes;
  const reasons = basis.groups.flatMap((one) => {
    const why = whyLacking(one, mix.plan, mill?.plan);
    if (!why) return [];
    const count = aside(one.group.count);
    const given = count.minus(notGiven(mix.plan, one));
    return [
      `You ask for ${lowered(one.group.label)} from the logs, and they give ${given.toFixed()} of ${count.toFixed()}, rejects made up for. ${why}`,
    ];
  });
  const lacking = [...reasons, ...cheaperAndShorter(basis, routes)];
  const lose = open && pinsLose(open, aside(mix.total));
  if (!lose || lose.all.lte(LITTLE)) return lacking;
  const money = (value: Decimal): string => moneyText(value, basis.pricing.currency);
  const each = basis.groups.flatMap(({ group: { name, label } }) => {
    const loses = lose.each.get(name);
    return loses ? [`${lowered(label)} ${money(loses)}`] : [];
  });
  const parts = each.length > 0 ? ` Group by group, as far as was tried, it loses: ${each.join("; ")}.` : "";
  return [
    ...lacking,
    `What you pin loses ${money(lose.all)}, your hours counted: left open, the best mix found comes to ${money(lose.open)}.${parts}`,
  ];
}
