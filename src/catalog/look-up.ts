/**
 * Look-ups in a price catalog. What is not sold, or sold without a price, is an answer of its own that says what to
 * add; it is never a zero and never an exception.
 */
import { inUnit, type Quantity } from "../estimate/quantity/quantity.js";
import type { CoveringKind } from "./coverings.js";
import { type CorrosionClassId, type Exposure, type FastenerKind, lasts } from "./fasteners.js";
import type { FinishKind } from "./finishes.js";
import type { CoveringOffer } from "./offers/covering.js";
import type { FastenerOffer } from "./offers/fastener.js";
import type { FinishOffer } from "./offers/finish.js";
import type { LumberOffer } from "./offers/lumber.js";
import type { Department, Price } from "./offers/price.js";
import {
  type ConsumableItem,
  type EquipmentItem,
  type EquipmentOffer,
  pricedPer,
  type ServiceItem,
} from "./offers/supplies.js";
import type { PriceCatalog } from "./price-catalog.js";
import type { Section } from "./reading.js";
import { servesAs } from "./species.js";

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
  const per = pricedPer(item);
  const unit = per ? `${catalog.currency}/${per}` : catalog.currency;
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

/** What a fastener must be. */
export interface FastenerWanted {
  readonly kind: FastenerKind;
  readonly penny?: string;
  readonly diameter?: Quantity;
  /** Exactly this long, unless `atLeast` says that longer serves too. */
  readonly length?: Quantity;
  readonly atLeast?: boolean;
  readonly fits?: Section;
  readonly exposure: Exposure;
}

/**
 * Fasteners of the kind and size that last under the exposure; of several lengths that serve, only the shortest.
 */
export function fastenerOffers(catalog: PriceCatalog, wanted: FastenerWanted): Found<FastenerOffer> {
  const alike = catalog.fasteners.filter((offer) => offer.kind === wanted.kind && sameSize(offer, wanted));
  const lasting = alike.filter((offer) => lasts(offer.finish, wanted.exposure));
  const shortest = lasting.reduce<Quantity | undefined>(
    (least, { length }) => (length && (!least || length.value.lt(least.value)) ? length : least),
    undefined,
  );
  const offers = lasting.filter(({ length }) => !length || !shortest || length.value.eq(shortest.value));
  const finishes = alike.map((offer) => offer.finish);
  return found(offers, "fasteners", fastenerToAdd(wanted, finishes));
}

function sameSize(offer: FastenerOffer, wanted: FastenerWanted): boolean {
  if (wanted.penny !== undefined && offer.penny !== wanted.penny) return false;
  if (wanted.diameter && !offer.diameter?.value.eq(wanted.diameter.value)) return false;
  if (wanted.fits && !(offer.fits && sameSection(offer.fits, wanted.fits))) return false;
  if (!wanted.length) return true;
  if (!offer.length) return false;
  return wanted.atLeast ? offer.length.value.gte(wanted.length.value) : offer.length.value.eq(wanted.length.value);
}

/** True when both sides measure the same, thickness and width either way round. */
export function sameSection(a: Section, b: Section): boolean {
  const equal = (x: Quantity, y: Quantity) => x.value.eq(y.value);
  return (
    (equal(a.thickness, b.thickness) && equal(a.width, b.width)) ||
    (equal(a.thickness, b.width) && equal(a.width, b.thickness))
  );
}

function fastenerToAdd(wanted: FastenerWanted, refused: readonly CorrosionClassId[]): string {
  const inches = (of: Quantity) =>
    of.written?.symbol === "mm" ? `${inUnit(of, "mm").toFixed()} mm` : `${inUnit(of, "in").toFixed()} in`;
  const size = [
    wanted.penny,
    wanted.diameter && `${inches(wanted.diameter)} diameter`,
    wanted.length && `${wanted.atLeast ? "at least " : ""}${inches(wanted.length)} long`,
    wanted.fits && `for a ${inches(wanted.fits.thickness)} × ${inches(wanted.fits.width)} post`,
  ].filter(Boolean);
  const words = [`Add “${wanted.kind}” to fasteners`, ...size].join(", ");
  const only =
    refused.length > 0 ? `; on offer only as ${[...new Set(refused)].join(", ")}, which does not last there` : "";
  return `${words}${only}.`;
}

/** What a piece of lumber must be. */
export interface LumberWanted {
  /** Species or trade groups that serve; any when absent. */
  readonly woods?: readonly string[];
  /** The real section must be exactly this, either way round. */
  readonly actual?: Section;
  /** The real section must be at least this, either way round. */
  readonly atLeast?: Section;
  readonly treatment?: LumberOffer["treatment"];
  readonly surface?: LumberOffer["surface"];
  readonly gradeMarked?: boolean;
}

/** Lumber that serves, in the order of the catalog. Which of it to buy is for the estimate to decide. */
export function lumberOffers(catalog: PriceCatalog, wanted: LumberWanted): Found<LumberOffer> {
  const { woods, actual, atLeast, treatment, surface, gradeMarked } = wanted;
  const offers = catalog.lumber.filter(
    (offer) =>
      (!woods || woods.some((wood) => servesAs(offer.species, wood))) &&
      (!actual || sameSection(offer.actual, actual)) &&
      (!atLeast || covers(offer.actual, atLeast)) &&
      (treatment === undefined || offer.treatment === treatment) &&
      (surface === undefined || offer.surface === surface) &&
      (!gradeMarked || offer.gradeMarked),
  );
  return found(offers, "lumber", "Add lumber of this wood and section to lumber.");
}

function covers(offered: Section, wanted: Section): boolean {
  const [a, b] = sorted(offered);
  const [c, d] = sorted(wanted);
  return a.gte(c) && b.gte(d);
}

function sorted({ thickness, width }: Section) {
  return thickness.value.lte(width.value)
    ? ([thickness.value, width.value] as const)
    : ([width.value, thickness.value] as const);
}
