/**
 * What the best mix would be without the user's pins, and without each of them. Where it keeps to them all the same it is one more
 * mix to choose from, so that pinning what is best anyway makes nothing dearer.
 */
import { type Basis, basisOf } from "./basis.js";
import type { MixFound } from "./best-mix.js";
import { beyondOf } from "./compare/mix-point.js";
import { type CommonCells, layRoute, type RouteCells, type RoutePlan } from "./compare/route.js";
import type { LeftOpen } from "./compare/verdict-pins.js";
import { FaultError } from "./faults.js";
import type { GroupBasis } from "./group-basis.js";
import { mixLabel } from "./joint-route.js";
import { isPinned } from "./piece-price.js";
import { type Planners, planRoute, quickly } from "./plan.js";
import { Decimal } from "./quantity/decimal.js";
import type { EstimateRequest } from "./request/request.js";
import { aside } from "./sheet/aside.js";

/** An estimate as far as it is looked at here. */
interface Made {
  readonly basis: Basis;
  readonly common: CommonCells;
  readonly routes: { readonly mix: RouteCells };
}

/** The best mix without the pins. */
interface Open {
  /** Plans made of it that keep to the pins. */
  readonly kept: readonly RoutePlan[];
  /** It, and it with what is pinned to the yard bought. */
  readonly ways: readonly Way[];
}

/** What one of them comes to. */
interface Way {
  readonly cash: Decimal;
  readonly hours: Decimal;
  readonly total: Decimal;
  /** The group that is bought in it, where that is the only one and pinned to the yard. */
  readonly bought: string | undefined;
  /** The group whose pin it breaks, where it keeps every other. */
  readonly breaks: string | undefined;
}

/**
 * The best mix of the request without the user's pins.
 * @returns undefined where nothing is pinned, or nothing can be built without the pins.
 */
export function leftOpen(
  basis: Basis,
  planners: Planners,
  estimate: (open: EstimateRequest) => Made,
): Open | undefined {
  const free = withoutPins(basis.request);
  if (!free || basis.request.heldPlans) return undefined;
  try {
    const made = estimate(free);
    const { mix } = made.routes;
    const all = [{ names: [], route: mix }, ...withPinsToYard(basis, made, planners)];
    const same = samePieces(basis, made.basis);
    return {
      kept: all.flatMap(({ route: { plan } }) => keptToPins(basis, made.basis, plan, planners) ?? []),
      ways: all.map(({ names, route: { cash, hours, total, plan } }) => ({
        ...{ cash: aside(cash), hours: aside(hours), total: aside(total), bought: only(names) },
        // Where the pins change the pieces themselves no plan without them tells of one.
        breaks: same ? only(basis.groups.filter((one) => !keeps(one, plan)).map(({ group }) => group.name)) : undefined,
      })),
    };
  } catch (error) {
    // What cannot be built without the pins tells nothing of what can be with them.
    if (error instanceof FaultError) return undefined;
    throw error;
  }
}

/** The one of a list of one. */
const only = (names: readonly string[]): string | undefined => (names.length === 1 ? names[0] : undefined);

/** The open mix with all of one group bought that is pinned to the yard, one after another, and with all of them bought. */
function withPinsToYard(
  pinned: Basis,
  { basis, common, routes }: Made,
  planners: Planners,
): readonly { readonly names: readonly string[]; readonly route: RouteCells }[] {
  const { sawn, hired } = routes.mix.plan;
  const by = quickly(planners, undefined);
  const bought = pinned.groups.flatMap(({ group: { name, rules } }) =>
    rules.source === "buy" && sawn.has(name) ? [name] : [],
  );
  const sets = [...bought.map((name) => [name]), ...(bought.length > 1 ? [bought] : [])];
  return sets.map((names, i) => {
    const milled = new Set([...sawn].filter((name) => !names.includes(name)));
    const plan = planRoute(basisOf(basis, { hired }), `alone${i}`, "", milled, by, undefined);
    return { names, route: layRoute(basis, plan, common) };
  });
}

/** The mix with each group bought that is pinned to the mill, one after another: whatever the pins cost, one of them costs no more. */
export function leftOpenBy(
  basis: Basis,
  found: MixFound,
  { ways }: Open,
  mix: RoutePlan,
  ends: readonly RoutePlan[],
): LeftOpen {
  const { sawn, hired } = mix;
  const pins = basis.groups.filter(({ group }) => group.rules.source !== "auto");
  const now = found.price(mix);
  const beyond = beyondOf(now, found.limits);
  const pinned = basis.groups.filter((one) => isPinned(one) && sawn.has(one.group.name));
  // One that leaves the limits further behind is no cheaper way to keep them.
  const keepsLimits = (one: Pick<Way, "cash" | "hours">): boolean => beyondOf(one, found.limits).lte(beyond);
  const worth = ({ cash, hours }: Pick<Way, "cash" | "hours">): Decimal => cash.plus(hours.times(found.wage));
  const totalOf = (plan: RoutePlan): readonly Decimal[] => {
    const point = found.price(plan);
    return keepsLimits(point) ? [worth(point)] : [];
  };
  const within = ways.filter(keepsLimits);
  const freed = new Map(
    pinned.flatMap(({ group: { name } }) => {
      const without = new Set([...sawn].filter((other) => other !== name));
      const others = within.filter(({ breaks }) => breaks === name).map(({ total }) => total);
      return totalOf(found.plan(without, hired)).map((one) => [name, Decimal.min(one, ...others)] as const);
    }),
  );
  const open = [...within.map(({ total }) => total), ...freed.values()];
  const least = Decimal.min(worth(now), ...open, ...ends.flatMap(totalOf));
  // Without the only pin there is none.
  return {
    total: least,
    alone: new Map(within.flatMap(({ bought, total }) => (bought === undefined ? [] : [[bought, total]]))),
    freed: pins.length === 1 ? new Map([...freed.keys()].map((name) => [name, least])) : freed,
  };
}

/** The request with every pin left to the estimate, and nothing asked for beside the mix; undefined where none is pinned. */
function withoutPins(request: EstimateRequest): EstimateRequest | undefined {
  const pins = { found: 0 };
  const structure = freed(request.structure, pins) as EstimateRequest["structure"];
  const { coverings: _, ...options } = request.options ?? {};
  return pins.found === 0 ? undefined : { ...request, structure, options: { ...options, frontier: false } };
}

/** A part of a structure, its pins taken out and counted: `source` stands in the settings of groups alone. */
function freed(part: unknown, pins: { found: number }): unknown {
  if (Array.isArray(part)) return part.map((one) => freed(one, pins));
  if (typeof part !== "object" || part === null) return part;
  return Object.fromEntries(
    Object.entries(part).map(([key, value]) => {
      if (key !== "source" || value === "auto") return [key, freed(value, pins)];
      pins.found++;
      return [key, "auto"];
    }),
  );
}

/**
 * A plan found without the pins as a mix of the request with them.
 * @param free - The basis on which it was found.
 * @returns undefined where it breaks a pin, or the pins change the pieces themselves, as runs that can only be bought are.
 */
function keptToPins(basis: Basis, free: Basis, plan: RoutePlan, planners: Planners): RoutePlan | undefined {
  const { sawing, sawn, hired } = plan;
  if (!sawing || !samePieces(basis, free)) return undefined;
  if (!basis.groups.every((one) => keeps(one, plan))) return undefined;
  const buy = Object.fromEntries(Object.entries(sawing.plan.buy).filter(([name]) => sawn.has(name)));
  // Of a group that is bought a spare may be cut, which nobody asks for here.
  const logs = sawing.plan.logs.map((log) => ({ ...log, pieces: log.pieces.filter(({ group }) => sawn.has(group)) }));
  const known = { plan: { ...sawing.plan, logs, buy }, proof: sawing.proof };
  const by = { ...planners, sawing: () => known };
  return planRoute(basisOf(basis, { hired }), "mixed", mixLabel(hired), sawn, by, undefined);
}

/** Whether a plan does with a group what is asked for: buys it all, or, where it is pinned to the mill, none of it. */
function keeps({ group: { name, rules }, millable }: GroupBasis, { sawing, sawn }: RoutePlan): boolean {
  if (!millable) return !sawn.has(name);
  return rules.source !== "mill" || (sawn.has(name) && (sawing?.plan.buy[name] ?? 0) === 0);
}

function samePieces(basis: Basis, free: Basis): boolean {
  const sizes = ({ groups }: Basis) =>
    groups.map(({ group }) => [
      group.name,
      ...[group.count, group.length, group.thickness, group.width].map((cell) => aside(cell).toFixed()),
    ]);
  return JSON.stringify(sizes(basis)) === JSON.stringify(sizes(free));
}
