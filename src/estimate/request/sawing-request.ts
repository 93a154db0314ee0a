/** A request of logs and pieces alone: an estimate's request whose structure is a list of pieces, said more shortly. */
import { z } from "zod";
import { CURRENCIES, type Currency, readShape } from "../../catalog/reading.js";
import { isRecord } from "../../catalog/shape-faults.js";
import type { Fault } from "../faults.js";
import { namedCatalog } from "./catalog-forms.js";
import { sawingPlanShape } from "./held-plans.js";
import { logShape } from "./logs.js";
import { estimateRequest, optionsShape, type RequestReading, readEstimateRequest } from "./request.js";
import { shopShape } from "./shop.js";
import { explicitPieces } from "./structure.js";

const { title, catalog, currency, labor, assumptions, calibration, overrides } = estimateRequest.shape;

/** The request as JSON. */
export const sawingRequest = z
  .strictObject({
    title,
    pieces: z.array(explicitPieces).min(1).max(60).meta({ description: "Piece groups wanted, in finished sizes." }),
    logs: z.array(logShape).min(1).max(200).meta({ description: "Logs at hand." }),
    shop: shopShape
      .omit({ sawyer: true })
      .optional()
      .meta({
        id: "SawingShop",
        description: "Mill and machines; who plans for a hired sawyer gives the sawyer's.",
        examples: [{ mill: "manual-band-mill" }],
      }),
    ...{ labor, assumptions, calibration, overrides, currency },
    catalog: catalog.meta({
      description:
        "Local prices. A piece that they sell for less than it costs to saw is left to be bought; may be left out.",
    }),
    options: optionsShape
      .pick({ measure: true, fallDown: true })
      .optional()
      .meta({ id: "SawingOptions", description: "How the plan is made.", examples: [{ fallDown: "spares" }] }),
    heldPlan: sawingPlanShape
      .optional()
      .meta({ description: "The plan of an earlier answer: measured, not made anew." }),
  })
  .meta({ id: "SawingRequest", description: "Logs at hand, pieces wanted, and the mill." });

/** Where things stand in an estimate's request, and where in this one. */
const PLACES = [
  ["/structure/pieces", "/pieces"],
  ["/heldPlans/sawing/sawing", "/heldPlan"],
] as const;

/** A place of an estimate's request as one of this request. */
export function placeInSawing(at: string): string {
  const found = PLACES.find(([there]) => at === there || at.startsWith(`${there}/`));
  return found ? found[1] + at.slice(found[0].length) : at;
}

/** Faults of an estimate's request, placed in this one. */
export const faultsInSawing = (faults: readonly Fault[]): Fault[] =>
  faults.map((fault) => ({ ...fault, at: placeInSawing(fault.at) }));

/**
 * Reads it as the estimate's request that it stands for.
 * @param demoCatalogs - Price catalogs that a request may name, as JSON.
 */
export function readSawingRequest(json: unknown, demoCatalogs: ReadonlyMap<string, unknown>): RequestReading {
  const read = readShape(sawingRequest, json, { currency: currencyOf(json, demoCatalogs) });
  if ("faults" in read) return read;
  const { pieces, heldPlan, ...rest } = json as Record<string, unknown>;
  const held = heldPlan === undefined ? {} : { heldPlans: { sawing: { milled: heldPlan } } };
  const whole = readEstimateRequest({ ...rest, ...held, structure: { kind: "pieces", pieces } }, demoCatalogs);
  return "faults" in whole ? { faults: faultsInSawing(whole.faults) } : whole;
}

/** The catalog's own, else that of the request. */
function currencyOf(json: unknown, demoCatalogs: ReadonlyMap<string, unknown>): Currency {
  const named = namedCatalog(json, demoCatalogs);
  if (named && "catalog" in named) return named.catalog.currency;
  const of = (value: unknown) => (isRecord(value) ? CURRENCIES.find((code) => code === value.currency) : undefined);
  return (isRecord(json) ? (of(json.catalog) ?? of(json)) : undefined) ?? "USD";
}
