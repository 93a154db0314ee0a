/**
 * Which finish and which covering to buy where several on offer would serve: the one that the user insists on, or costs least
 * for what this job needs of it, its own coverage, widths and pack sizes in the reckoning. The choice is made before the
 * estimate is laid, by putting what is bought first in the catalog, which is where takeoffs and shopping list look.
 */
import type { CoveringKind } from "../catalog/coverings.js";
import type { FinishKind } from "../catalog/finishes.js";
import type { CoveringOffer } from "../catalog/offers/covering.js";
import type { FinishOffer } from "../catalog/offers/finish.js";
import type { PriceCatalog } from "../catalog/price-catalog.js";
import { type Basis, layBasis } from "./basis.js";
import { type Fault, FaultError, nearest, pointer } from "./faults.js";
import type { Need } from "./need.js";
import { USUAL_COVERING } from "./pieces/deck.js";
import { layShoppingList } from "./purchase/shopping-list.js";
import { type Decimal, ZERO } from "./quantity/decimal.js";
import type { EstimateRequest } from "./request/request.js";
import { aside } from "./sheet/aside.js";
import { Sheet } from "./sheet/sheet.js";
import { layFinishAsAsked, layTakeoffs, type Takeoffs } from "./takeoffs.js";

/** Kinds of finish and covering that a job buys, or compares. */
interface Kinds {
  readonly coverings: ReadonlySet<CoveringKind | "none">;
  readonly finishes: ReadonlySet<FinishKind | "none">;
}

function kindsOf({ structure, options }: EstimateRequest, compared: readonly CoveringKind[]): Kinds {
  const built = "covering" in structure ? (structure.covering ?? USUAL_COVERING) : USUAL_COVERING;
  return {
    coverings: new Set([built, ...compared]),
    finishes: new Set([options?.finish ?? "oil-stain", "primer"]),
  };
}

/**
 * The request with what it buys of each kind of finish and covering first in its catalog: what `options.buyAs` names, else
 * what its held plans chose, else the cheapest.
 *
 * @throws FaultError when `buyAs` or the held plans name what the catalog has not.
 */
export function withChosenFirst(
  request: EstimateRequest,
  compared: readonly CoveringKind[] = request.options?.coverings ?? [],
): EstimateRequest {
  const named = namedOffers(request);
  const { coverings, finishes } = kindsOf(request, compared);
  const ranked = [...finishes].reduce((at, kind) => (kind === "none" ? at : rankFinishes(at, kind, named)), request);
  return [...coverings].reduce((at, kind) => (kind === "none" ? at : rankCoverings(at, kind, named)), ranked);
}

/** Names of what was put first where there was a choice, for held plans. @param request - From `withChosenFirst`. */
export function chosenOffers(request: EstimateRequest): readonly string[] {
  const { catalog, options } = request;
  const { coverings, finishes } = kindsOf(request, options?.coverings ?? []);
  const firstOf = (rivals: readonly { readonly name: string }[]) => (rivals.length > 1 ? rivals.slice(0, 1) : []);
  return [
    ...[...finishes].flatMap((kind) => firstOf(catalog.finishes.filter((offer) => offer.kind === kind))),
    ...[...coverings].flatMap((kind) => firstOf(catalog.coverings.filter((offer) => offer.covering === kind))),
  ].map(({ name }) => name);
}

/** Names that rule the choice, those that the user insists on first. */
function namedOffers({ catalog, options, heldPlans }: EstimateRequest): readonly string[] {
  const known = [...catalog.coverings, ...catalog.finishes].map(({ name }) => name);
  const unknown = (names: readonly string[], at: string, fault: Pick<Fault, "code" | "cure">): Fault[] =>
    names.flatMap((name, i) => {
      const near = nearest(name, known);
      const cure = near ? `Did you mean ${near}?` : fault.cure;
      const wrong = `The catalog has no covering or finish called ${name.slice(0, 80)}.`;
      return known.includes(name) ? [] : [{ ...fault, at: pointer(at, i), wrong, cure }];
    });
  const insisted = options?.buyAs ?? [];
  const held = heldPlans?.offers ?? [];
  const faults = [
    ...unknown(insisted, "/options/buyAs", {
      code: "unknown-name",
      cure: "Give the name of an entry of coverings or finishes.",
    }),
    ...unknown(held, "/heldPlans/offers", {
      code: "held-plan-misfit",
      cure: "Leave the held plans out, or send the request that they were made for.",
    }),
  ];
  if (faults.length > 0) throw new FaultError(faults);
  return [...insisted, ...held];
}

function rankFinishes(request: EstimateRequest, kind: FinishKind, named: readonly string[]): EstimateRequest {
  const { finishes } = request.catalog;
  const rivals = finishes.filter((offer) => offer.kind === kind);
  const others = finishes.filter((offer) => offer.kind !== kind);
  const only = (offer: FinishOffer) => withCatalog(request, { finishes: [offer, ...others] });
  const needs = (basis: Basis, takeoffs: Takeoffs) =>
    layFinishAsAsked(basis, takeoffs).needs.filter(({ item }) => item.kind === "finish" && item.finish === kind);
  const ranked = namedFirst(rivals, named) ?? rank(rivals, (offer) => costOf(only(offer), needs));
  return ranked ? withCatalog(request, { finishes: [...ranked, ...others] }) : request;
}

function rankCoverings(request: EstimateRequest, kind: CoveringKind, named: readonly string[]): EstimateRequest {
  const { coverings } = request.catalog;
  const rivals = coverings.filter((offer) => offer.covering === kind);
  const others = coverings.filter((offer) => offer.covering !== kind);
  const structure = { ...request.structure, covering: kind } as EstimateRequest["structure"];
  const only = (offer: CoveringOffer): EstimateRequest => ({
    ...withCatalog(request, { coverings: [offer, ...others] }),
    structure,
  });
  const needs = (_: Basis, { covering }: Takeoffs) => covering?.needs ?? [];
  const ranked = namedFirst(rivals, named) ?? rank(rivals, (offer) => costOf(only(offer), needs));
  return ranked ? withCatalog(request, { coverings: [...ranked, ...others] }) : request;
}

/** With the one that is named earliest first; undefined where none is. */
function namedFirst<Offer extends { readonly name: string }>(
  rivals: readonly Offer[],
  named: readonly string[],
): readonly Offer[] | undefined {
  const name = named.find((one) => rivals.some((offer) => offer.name === one));
  const first = rivals.filter((offer) => offer.name === name);
  return first.length === 0 ? undefined : [...first, ...rivals.filter((offer) => offer.name !== name)];
}

const withCatalog = (request: EstimateRequest, part: Partial<PriceCatalog>): EstimateRequest => ({
  ...request,
  catalog: { ...request.catalog, ...part },
});

/** What an offer comes to before tax, and how many of its lines have no price. */
interface Cost {
  readonly unpriced: number;
  readonly cash: Decimal;
}

/** Cheapest first, ties by name, what lacks prices last; undefined where there is nothing to choose or nothing is needed. */
function rank<Offer extends { readonly name: string }>(
  rivals: readonly Offer[],
  costOf: (offer: Offer) => Cost | undefined,
): readonly Offer[] | undefined {
  if (rivals.length < 2) return undefined;
  const costs = rivals.map((offer) => ({ offer, cost: costOf(offer) }));
  if (costs.every(({ cost }) => !cost)) return undefined;
  const last: Cost = { unpriced: Number.MAX_SAFE_INTEGER, cash: ZERO };
  const order = ({ cost: a = last }: (typeof costs)[number], { cost: b = last }: (typeof costs)[number]) =>
    a.unpriced - b.unpriced || a.cash.cmp(b.cash);
  return costs.sort((a, b) => order(a, b) || (a.offer.name < b.offer.name ? -1 : 1)).map(({ offer }) => offer);
}

/** On a sheet of its own; undefined where the job can't be built so, or needs none of it. */
function costOf(
  request: EstimateRequest,
  needsOf: (basis: Basis, takeoffs: Takeoffs) => readonly Need[],
): Cost | undefined {
  try {
    const basis = layBasis(new Sheet(new Map(Object.entries(request.overrides ?? {}))), request);
    const needs = needsOf(basis, layTakeoffs(basis));
    if (needs.length === 0) return undefined;
    const lines = layShoppingList(basis.pricing, basis.catalog, needs, request.system);
    return {
      unpriced: lines.filter(({ line }) => !line.amount).length,
      cash: lines.reduce((sum, { line }) => (line.amount ? sum.plus(aside(line.amount)) : sum), ZERO),
    };
  } catch (error) {
    if (error instanceof FaultError) return undefined;
    throw error;
  }
}
