/**
 * Which finish and which covering to buy where several on offer would serve: the one that costs least for what this job
 * needs of it, its own coverage, widths and pack sizes in the reckoning. The choice is made before the estimate is laid, by
 * putting the cheapest first in the catalog, which is where takeoffs and shopping list look.
 */
import type { CoveringKind } from "../catalog/coverings.js";
import type { FinishKind } from "../catalog/finishes.js";
import type { CoveringOffer } from "../catalog/offers/covering.js";
import type { FinishOffer } from "../catalog/offers/finish.js";
import type { PriceCatalog } from "../catalog/price-catalog.js";
import { layBasis } from "./basis.js";
import { FaultError } from "./faults.js";
import type { Need } from "./need.js";
import { USUAL_COVERING } from "./pieces/deck.js";
import { layShoppingList } from "./purchase/shopping-list.js";
import { type Decimal, ZERO } from "./quantity/decimal.js";
import type { EstimateRequest } from "./request/request.js";
import { aside } from "./sheet/aside.js";
import { Sheet } from "./sheet/sheet.js";
import { layTakeoffs, type Takeoffs } from "./takeoffs.js";

/** The request with the cheapest of each kind of finish and covering that it may use first in its catalog. */
export function withCheapestFirst(
  request: EstimateRequest,
  compared: readonly CoveringKind[] = request.options?.coverings ?? [],
): EstimateRequest {
  const { structure, options } = request;
  const built = "covering" in structure ? (structure.covering ?? USUAL_COVERING) : USUAL_COVERING;
  const coverings = new Set([built, ...compared]);
  const finishes = new Set<FinishKind | "none">([options?.finish ?? "oil-stain", "primer"]);
  const ranked = [...finishes].reduce((at, kind) => (kind === "none" ? at : rankFinishes(at, kind)), request);
  return [...coverings].reduce((at, kind) => (kind === "none" ? at : rankCoverings(at, kind)), ranked);
}

function rankFinishes(request: EstimateRequest, kind: FinishKind): EstimateRequest {
  const { finishes } = request.catalog;
  const rivals = finishes.filter((offer) => offer.kind === kind);
  const others = finishes.filter((offer) => offer.kind !== kind);
  const only = (offer: FinishOffer) => withCatalog(request, { finishes: [offer, ...others] });
  const needs = ({ finish }: Takeoffs) =>
    finish.needs.filter(({ item }) => item.kind === "finish" && item.finish === kind);
  const ranked = rank(rivals, (offer) => costOf(only(offer), needs));
  return ranked ? withCatalog(request, { finishes: [...ranked, ...others] }) : request;
}

function rankCoverings(request: EstimateRequest, kind: CoveringKind): EstimateRequest {
  const { coverings } = request.catalog;
  const rivals = coverings.filter((offer) => offer.covering === kind);
  const others = coverings.filter((offer) => offer.covering !== kind);
  const structure = { ...request.structure, covering: kind } as EstimateRequest["structure"];
  const only = (offer: CoveringOffer): EstimateRequest => ({
    ...withCatalog(request, { coverings: [offer, ...others] }),
    structure,
  });
  const ranked = rank(rivals, (offer) => costOf(only(offer), ({ covering }) => covering?.needs ?? []));
  return ranked ? withCatalog(request, { coverings: [...ranked, ...others] }) : request;
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
function costOf(request: EstimateRequest, needsOf: (takeoffs: Takeoffs) => readonly Need[]): Cost | undefined {
  try {
    const basis = layBasis(new Sheet(new Map(Object.entries(request.overrides ?? {}))), request);
    const needs = needsOf(layTakeoffs(basis));
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
