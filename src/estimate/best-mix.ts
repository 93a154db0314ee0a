/** The best mix of milling and buying at the user's value of an hour, and on request the whole frontier. */
import { toQuantity } from "../catalog/reading.js";
import { type Basis, layBasis } from "./basis.js";
import { type FrontierPoint, type MixLimits, type MixPoint, MixSearch, searchFrontier } from "./compare/mix-search.js";
import { layRoute } from "./compare/route.js";
import type { Planners } from "./plan.js";
import { millable, planRoute } from "./plan.js";
import type { EstimateRequest } from "./request/request.js";
import { aside } from "./sheet/aside.js";
import { layOwnLines } from "./sheet/own-lines.js";
import { Sheet } from "./sheet/sheet.js";
import { layCommon, layTakeoffs } from "./takeoffs.js";

/** Mixes priced before the search ends; a mix takes some milliseconds. */
const BUDGET = { mix: 60, frontier: 160 } as const;

/** The best mix, the frontier where it was asked for, and how many mixes were tried. */
export interface MixFound {
  readonly best: MixPoint;
  /** Cheapest first; empty where nobody asked. */
  readonly frontier: readonly FrontierPoint[];
  readonly tried: number;
}

/**
 * Searches on a scratch sheet of its own.
 * @param tell - Told before each mix how many have been tried, of at most how many; what it throws ends the search.
 * @returns undefined when nothing may be milled.
 */
export function findBestMix(
  request: EstimateRequest,
  planners: Planners,
  tell: (tried: number, most: number) => void = () => {},
): MixFound | undefined {
  const sheet = new Sheet(new Map(Object.entries(request.overrides ?? {})));
  const basis = layBasis(sheet, request);
  const names = millable(basis);
  if (names.length === 0) return undefined;
  const pinned = basis.groups
    .filter(({ group }) => group.rules.source === "mill" && names.includes(group.name))
    .map(({ group }) => group.name);
  const wantsFrontier = request.options?.frontier === true;
  const budget = wantsFrontier ? BUDGET.frontier : BUDGET.mix;
  const tried = pricer(basis, planners);
  const search: MixSearch = new MixSearch({
    free: names.filter((name) => !pinned.includes(name)),
    pinned,
    limits: limitsOf(request),
    budget,
    price: (milled) => {
      tell(search.tried.length, budget);
      return tried(milled);
    },
  });
  const price = pricer(basis, planners, "start");
  search.add(price(new Set(names)));
  search.add(price(new Set(pinned)));
  const best = search.best(aside(basis.labor.valueOfHour).toNumber());
  const frontier = wantsFrontier ? searchFrontier(search) : [];
  return { best, frontier, tried: search.tried.length };
}

/** Plans and prices mixes as whole routes, each under a key of its own. */
function pricer(basis: Basis, planners: Planners, prefix = "try"): (milled: ReadonlySet<string>) => MixPoint {
  const common = commonOf(basis);
  let tries = 0;
  return (milled) => {
    const route = layRoute(
      basis,
      planRoute(basis, `${prefix}${++tries}`, "A mix", milled, planners, undefined),
      common,
    );
    return { milled, cash: aside(route.cash).toNumber(), hours: aside(route.hours).toNumber() };
  };
}

const commons = new WeakMap<Basis, ReturnType<typeof layCommon>>();

function commonOf(basis: Basis): ReturnType<typeof layCommon> {
  const known = commons.get(basis);
  if (known) return known;
  const own = layOwnLines(basis.sheet, basis.request.lines ?? [], { at: "/lines", currency: basis.catalog.currency });
  const common = layCommon(basis, layTakeoffs(basis), own.cells);
  commons.set(basis, common);
  return common;
}

/** The user's limits on cash and hours, as floats. */
function limitsOf(request: EstimateRequest): MixLimits {
  const { mostCash, mostHours } = request.options ?? {};
  return {
    ...(mostCash === undefined ? {} : { cash: toQuantity(mostCash, request.catalog.currency).value.toNumber() }),
    ...(mostHours === undefined ? {} : { hours: toQuantity(mostHours, "person-h").value.toNumber() }),
  };
}
