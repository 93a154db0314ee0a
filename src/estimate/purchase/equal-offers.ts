/**
 * Which of several offers that serve equally well is bought for each group: those by which all pieces cost least, in whole sticks,
 * spares, bundles and bulk prices included. Groups that may take the same offer choose together, for they share its sticks: those
 * with the same offers to choose from first, then all of them, one change at a time.
 */
import type { LumberOffer } from "../../catalog/offers/lumber.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { type CuttingRules, decidePrices, triedQuestion } from "./lumber.js";
import { equalOffers, type NothingSold, type Substitution } from "./substitution.js";
import { TriedOrders } from "./tried-orders.js";

/** What is bought for a group out of some offers. */
export type Substitute = (group: PieceGroup, lumber: readonly LumberOffer[]) => Substitution | NothingSold;

/** What is bought for a group, and what would serve as well. */
export interface Sold {
  readonly substitution: Substitution | NothingSold;
  /** As each of the equal offers, the one that is chosen among them. */
  readonly rivals: readonly Substitution[];
}

/** What is bought for each group, in their order. */
export function substitutions(
  rules: CuttingRules,
  groups: readonly PieceGroup[],
  lumber: readonly LumberOffer[],
  substitute: Substitute,
): readonly Sold[] {
  const { sheet } = rules.pricing;
  const rivals = groups.map((group) =>
    equalOffers(sheet, group, { lumber, endTrim: rules.endTrim }).flatMap((offer) => {
      const substitution = substitute(group, [offer]);
      return "offer" in substitution ? [substitution] : [];
    }),
  );
  const chosen = rivals.some((all) => all.length > 1) ? chosenAmong(rules, rivals) : new Map();
  return groups.map((group, i) => {
    const all = rivals[i] as readonly Substitution[];
    const [only] = all.length === 1 ? all : [];
    return { substitution: chosen.get(group) ?? only ?? substitute(group, lumber), rivals: all };
  });
}

/** What a group may be bought as: each has a price. */
type Options = readonly [Substitution, ...(readonly Substitution[])];

/** What each of some groups is bought as, in their order. */
type Choice = readonly Substitution[];

/** What each group is bought as that has a choice, or shares its offer with one that has; what has no price is not chosen. */
function chosenAmong(
  rules: CuttingRules,
  rivals: readonly (readonly Substitution[])[],
): ReadonlyMap<PieceGroup, Substitution> {
  const offers = new Set(rivals.flatMap((all) => all.map(({ offer }) => offer)));
  const priced = new Set([...offers].filter((offer) => triedQuestion(rules, offer, []).priced));
  const options = rivals.flatMap((all): Options[] => {
    const [first, ...others] = all.filter(({ offer }) => priced.has(offer));
    return first ? [[first, ...others]] : [];
  });
  const orders = new TriedOrders(rules);
  return new Map(
    sharing(options)
      .filter((some) => some.some(({ length }) => length > 1))
      .flatMap((some) => {
        const choice = leastCostly(orders, some);
        // That an offer was chosen among others hangs on its prices.
        for (const offer of new Set(choice.map((one) => one.offer))) decidePrices(rules, offer);
        return choice.map((one) => [one.group, one] as const);
      }),
  );
}

/** Groups put together that may take the same offer, or do so by way of others. */
function sharing(options: readonly Options[]): readonly (readonly Options[])[] {
  const offersOf = (some: readonly Options[]) => some.flatMap((all) => all.map(({ offer }) => offer));
  return options.reduce<readonly (readonly Options[])[]>((parts, one) => {
    const own = new Set(offersOf([one]));
    const joined = parts.filter((part) => offersOf(part).some((offer) => own.has(offer)));
    return [...parts.filter((part) => !joined.includes(part)), [...joined.flat(), one]];
  }, []);
}

/** Counted work of the orders that are tried for other choices than those of groups by themselves. Assumption. */
const TOGETHER = 60_000;
/** Choices that are all tried where there are no more. Assumption. */
const FEW = 64;

/** The choice by which fewest pieces are left out and all of them cost least, of equals the first that is found. */
function leastCostly(orders: TriedOrders, groups: readonly Options[]): Choice {
  const alike = sameOptions(groups);
  let best: Choice = groups.map(([first]) => first);
  for (const places of alike) {
    const alone = (choice: Choice): Choice => places.map((i) => choice[i] as Substitution);
    for (const { offer } of groups[places[0] as number] as Options) {
      const other = changed(groups, best, places, offer);
      if (orders.beats(alone(other), orders.billOf(alone(best)))) best = other;
    }
  }
  if (groups.length === 1) return best;
  const until = orders.spent + TOGETHER;
  const better = (tried: readonly Choice[]): Choice | undefined =>
    tried.find((other) => orders.spent < until && orders.beats(other, orders.billOf(best)));
  for (let next = better(changes(groups, alike, best)); next; next = better(changes(groups, alike, best))) best = next;
  for (let next = better(allOf(groups)); next; next = better(allOf(groups))) best = next;
  return best;
}

/** Every choice, where there are few; none where there are many. */
function allOf(groups: readonly Options[]): readonly Choice[] {
  if (groups.reduce((count, all) => count * all.length, 1) > FEW) return [];
  return groups.reduce<readonly Choice[]>(
    (begun, all) => begun.flatMap((some) => all.map((one) => [...some, one])),
    [[]],
  );
}

/** Choices beside one: all groups that may take an offer do, or those with the same options, or a single one. */
function changes(groups: readonly Options[], alike: readonly (readonly number[])[], from: Choice): readonly Choice[] {
  const every = groups.map((_, i) => i);
  const offers = [...new Set(groups.flatMap((all) => all.map(({ offer }) => offer)))];
  return [every, ...alike, ...every.map((i) => [i])]
    .flatMap((places) => offers.map((offer) => changed(groups, from, places, offer)))
    .filter((other) => other.some((one, i) => one !== from[i]));
}

/** The same with all of some places that may take an offer bought as that. */
const changed = (groups: readonly Options[], choice: Choice, places: readonly number[], offer: LumberOffer): Choice =>
  choice.map((now, i) =>
    places.includes(i) ? ((groups[i] as Options).find((one) => one.offer === offer) ?? now) : now,
  );

/** Places of the groups that have the same offers to choose from. */
function sameOptions(groups: readonly Options[]): readonly (readonly number[])[] {
  const places = new Map<string, number[]>();
  for (const [i, all] of groups.entries()) {
    const key = all.map(({ offer }) => offer.name).join("\n");
    places.set(key, [...(places.get(key) ?? []), i]);
  }
  return [...places.values()];
}
