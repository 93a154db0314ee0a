/**
 * What the best mix would be without the user's pins. Where it keeps to them all the same it is one more mix to choose from,
 * so that pinning what is best anyway makes nothing dearer.
 */
import { type Basis, basisOf } from "./basis.js";
import type { Decision } from "./compare/decision.js";
import type { RouteCells, RoutePlan } from "./compare/route.js";
import { type LeftOpen, netOf } from "./compare/verdict-pins.js";
import { FaultError } from "./faults.js";
import { mixLabel } from "./joint-route.js";
import { type Planners, planRoute } from "./plan.js";
import type { EstimateRequest } from "./request/request.js";
import { aside } from "./sheet/aside.js";

/** An estimate as far as it is looked at here. */
interface Made {
  readonly basis: Basis;
  readonly routes: { readonly mix: RouteCells };
  readonly decision: Pick<Decision, "groups">;
}

/**
 * The best mix of the request without the user's pins: what it comes to, and its plan where it keeps to them.
 * @returns undefined where nothing is pinned, or nothing can be built without the pins.
 */
export function leftOpen(
  basis: Basis,
  planners: Planners,
  estimate: (open: EstimateRequest) => Made,
): { readonly kept: RoutePlan | undefined; readonly open: LeftOpen } | undefined {
  const free = withoutPins(basis.request);
  if (!free || basis.request.heldPlans) return undefined;
  try {
    const made = estimate(free);
    const { mix } = made.routes;
    const saves = made.decision.groups.filter(({ route }) => route === mix);
    return {
      kept: keptToPins(basis, made.basis, mix.plan, planners),
      open: { total: aside(mix.total), saves: new Map(saves.map((one) => [one.name, netOf(made.basis, one)])) },
    };
  } catch (error) {
    // What cannot be built without the pins tells nothing of what can be with them.
    if (error instanceof FaultError) return undefined;
    throw error;
  }
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
function keptToPins(
  basis: Basis,
  free: Basis,
  { sawing, sawn, hired }: RoutePlan,
  planners: Planners,
): RoutePlan | undefined {
  if (!sawing || !samePieces(basis, free)) return undefined;
  const kept = basis.groups.every(({ group: { name, rules }, millable }) => {
    if (!millable) return !sawn.has(name);
    return rules.source !== "mill" || (sawn.has(name) && (sawing.plan.buy[name] ?? 0) === 0);
  });
  if (!kept) return undefined;
  const buy = Object.fromEntries(Object.entries(sawing.plan.buy).filter(([name]) => sawn.has(name)));
  const known = { plan: { ...sawing.plan, buy }, proof: sawing.proof };
  const by = { ...planners, sawing: () => known };
  return planRoute(basisOf(basis, { hired }), "mixed", mixLabel(hired), sawn, by, undefined);
}

function samePieces(basis: Basis, free: Basis): boolean {
  const sizes = ({ groups }: Basis) =>
    groups.map(({ group }) => [
      group.name,
      ...[group.count, group.length, group.thickness, group.width].map((cell) => aside(cell).toFixed()),
    ]);
  return JSON.stringify(sizes(basis)) === JSON.stringify(sizes(free));
}
