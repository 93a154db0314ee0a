/**
 * Look-ups in a price catalog. What is not sold, or sold without a price, is an answer of its own that says what to
 * add; it is never a zero and never an exception.
 */
import type { Quantity } from "../estimate/quantity/quantity.js";
import type { CoveringKind } from "./coverings.js";
import type { FinishKind } from "./finishes.js";
import type { CoveringOffer } from "./offers/covering.js";
import type { FinishOffer } from "./offers/finish.js";
import type { LumberOffer } from "./offers/lumber.js";
import { type Department, type Price, priceUnit } from "./offers/price.js";
import {
  type ConsumableItem,
  type EquipmentItem,
  type EquipmentOffer,
  pricedPer,
  type ServiceItem,
} from "./offers/supplies.js";
import type { PriceCatalog } from "./price-catalog.js";
import type { Section } from "./reading.js";

/** Nothing in the catalog serves. */
export interface NotOffered {
  readonly kind: "not-offered";
  readonly department: Department;
  /** What to add, in a sentence. */
  readonly add: string;
}

/** Offers that serve, in the order of the catalog, or what to add. */
export type Found<Offer> = { readonly kind: "offered"; readonly offers: readonly Offer[] } | NotOffered;

function found<Offer>(offers: readonly Offer[], department: Department, add: string): Found<Offer> {
  return offers.length > 0 ? { kind: "offered", offers } : { kind: "not-offered", department, add };
}

/** The price of a consumable, in the item's own unit. */
export function consumablePrice(catalog: PriceCatalog, item: ConsumableItem): Price {
  return itemPrice(catalog, "consumables", item);
}

/** The price of a service, in the item's own unit. */
export function servicePrice(catalog: PriceCatalog, item: ServiceItem): Price {
  return itemPrice(catalog, "services", item);
}

function itemPrice(
  catalog: PriceCatalog,
  department: "consumables" | "services",
  item: ConsumableItem | ServiceItem,
): Price {
  const entries: readonly { readonly item: string; readonly price: Price }[] = catalog[department];
  const entry = entries.find((each) => each.item === item);
  if (entry) return entry.price;
  const unit = priceUnit(catalog.currency, pricedPer(item));
  return { kind: "unpriced", at: "", add: `Add “${item}” to ${department}, with a price in ${unit}.` };
}

/** The hire and purchase prices of a machine. */
export function equipmentOffer(catalog: PriceCatalog, item: EquipmentItem): EquipmentOffer | NotOffered {
  const entry = catalog.equipment.find((each) => each.item === item);
  return entry ?? { kind: "not-offered", department: "equipment", add: `Add “${item}” to equipment.` };
}

/** Cans of a kind of finish. */
export function finishOffers(catalog: PriceCatalog, kind: FinishKind): Found<FinishOffer> {
  const offers = catalog.finishes.filter((offer) => offer.kind === kind);
  return found(offers, "finishes", `Add a finish of kind “${kind}” to finishes.`);
}

/** Offers of a kind of covering. */
export function coveringOffers(catalog: PriceCatalog, kind: CoveringKind): Found<CoveringOffer> {
  const offers = catalog.coverings.filter((offer) => offer.covering === kind);
  return found(offers, "coverings", `Add a covering of kind “${kind}” to coverings.`);
}

/** The lumber that a roof of boards is made of, where its offer names any. */
export function boardsOf(catalog: PriceCatalog, offer: CoveringOffer | undefined): LumberOffer | undefined {
  const { sheets } = offer ?? {};
  return sheets?.form === "boards" ? catalog.lumber.find(({ name }) => name === sheets.lumber) : undefined;
}

/** True when both sides measure the same, thickness and width either way round. */
export function sameSection(a: Section, b: Section): boolean {
  const equal = (x: Quantity, y: Quantity) => x.value.eq(y.value);
  return (
    (equal(a.thickness, b.thickness) && equal(a.width, b.width)) ||
    (equal(a.thickness, b.width) && equal(a.width, b.thickness))
  );
}
