/**
 * A local price catalog: what a supplier sells, in which unit, pack and length, at which price.
 *
 * The schema holds no transforms, so that it also describes the API. `parsePriceCatalog` gives the typed form or all
 * faults. A price that is null or absent means "unpriced": look-ups answer with what to add, never with zero.
 */
import { z } from "zod";
import { type Fault, nearest, pointer } from "../estimate/faults.js";
import type { Quantity } from "../estimate/quantity/quantity.js";
import { type CoveringOffer, coveringSchema, readCovering } from "./offers/covering.js";
import { type FastenerOffer, fastenerSchema, readFastener } from "./offers/fastener.js";
import { type FinishOffer, finishSchema, readFinish } from "./offers/finish.js";
import { type LumberOffer, lumberSchema, readLumber } from "./offers/lumber.js";
import { DEPARTMENTS, type Department, MOST_OFFERS, OfferReading } from "./offers/price.js";
import {
  type ConsumableItem,
  consumableSchema,
  type EquipmentOffer,
  equipmentSchema,
  type ItemOffer,
  readEquipment,
  readItem,
  type ServiceItem,
  serviceSchema,
} from "./offers/supplies.js";
import { CURRENCIES, type Currency, lineField, quantityField, readShape, toQuantity } from "./reading.js";
import { isRecord } from "./shape-faults.js";

const offers = <S extends z.ZodType>(of: S, describe: string) =>
  z.array(of).max(MOST_OFFERS).optional().meta({ description: describe });

const taxSchema = z
  .strictObject({
    name: lineField("Name of the tax.", "state sales tax", 60),
    rate: quantityField("%", { describe: "Rate of the tax.", example: "6.5 %", sign: "not-negative", most: "100 %" }),
    appliesTo: z
      .array(z.enum(DEPARTMENTS))
      .min(1)
      .max(DEPARTMENTS.length)
      .meta({ description: "Departments that it is charged on.", examples: [["lumber", "fasteners"]] }),
  })
  .meta({ id: "Tax", description: "A tax that the prices do not yet hold." });

/** A price catalog as JSON carries it. */
export const priceCatalogSchema = z
  .strictObject({
    name: lineField("Name of the supplier or price list.", "Orchard Road Yard"),
    note: lineField("What to know about these prices.", "Prices are invented.", 400).optional(),
    currency: z.enum(CURRENCIES).meta({ description: "Currency of every price (ISO 4217).", examples: ["USD"] }),
    lumber: offers(lumberSchema, "Lumber on offer."),
    fasteners: offers(fastenerSchema, "Fasteners on offer."),
    finishes: offers(finishSchema, "Finishes on offer."),
    coverings: offers(coveringSchema, "Roof coverings on offer."),
    consumables: offers(consumableSchema, "What milling and dressing use up."),
    equipment: offers(equipmentSchema, "Machines to hire or buy."),
    services: offers(serviceSchema, "Deliveries, visits, hired sawyers."),
    taxes: z.array(taxSchema).max(20).optional().meta({ description: "Taxes on top of these prices." }),
  })
  .meta({ id: "PriceCatalog", description: "What a local supplier sells, and at which price." });

/** A price list as it is written, before its texts are read. */
export type PriceCatalogInput = z.infer<typeof priceCatalogSchema>;

/** A tax: its rate, and the departments on which it is raised. */
export interface Tax {
  readonly name: string;
  /** As a share: 6.5 % is 0.065. */
  readonly rate: Quantity;
  readonly appliesTo: readonly Department[];
  readonly at: string;
}

/** A price list that has been read: every text a quantity. */
export interface PriceCatalog {
  readonly name: string;
  readonly note?: string;
  readonly currency: Currency;
  readonly lumber: readonly LumberOffer[];
  readonly fasteners: readonly FastenerOffer[];
  readonly finishes: readonly FinishOffer[];
  readonly coverings: readonly CoveringOffer[];
  readonly consumables: readonly ItemOffer<ConsumableItem>[];
  readonly equipment: readonly EquipmentOffer[];
  readonly services: readonly ItemOffer<ServiceItem>[];
  readonly taxes: readonly Tax[];
}

/** A price list that could be read, or what is wrong with it. */
export type CatalogReading = { readonly catalog: PriceCatalog } | { readonly faults: readonly Fault[] };

/**
 * Reads a catalog.
 * @param base - JSON Pointer to the catalog within the whole request.
 * @param alsoNamed - Lumber names that may be referred to although they are not among the entries.
 * @returns the typed catalog, or every fault up to `MOST_FAULTS`.
 */
export function parsePriceCatalog(input: unknown, base = "", alsoNamed: readonly string[] = []): CatalogReading {
  const currency = isRecord(input) ? CURRENCIES.find((code) => code === input.currency) : undefined;
  const shape = readShape(priceCatalogSchema, input, { base, ...(currency ? { currency } : {}) });
  return "faults" in shape ? shape : typedCatalog(shape.value, base, alsoNamed);
}

/** The typed form of a catalog whose shape and texts are known to be right; arguments as for `parsePriceCatalog`. */
export function typedCatalog(input: PriceCatalogInput, base = "", alsoNamed: readonly string[] = []): CatalogReading {
  const reading = new OfferReading(input.currency, base);
  const each = <Entry, Offer>(
    department: Department,
    entries: readonly Entry[] | undefined,
    read: (entry: Entry, at: string) => Offer | undefined,
  ) =>
    (entries ?? [])
      .map((entry, index) => read(entry, reading.place(department, index)))
      .filter((offer): offer is Offer & {} => offer !== undefined);

  const catalog: PriceCatalog = {
    name: input.name,
    ...(input.note === undefined ? {} : { note: input.note }),
    currency: input.currency,
    lumber: each("lumber", input.lumber, (entry, at) => readLumber(reading, entry, at)),
    fasteners: each("fasteners", input.fasteners, (entry, at) => readFastener(reading, entry, at)),
    finishes: each("finishes", input.finishes, (entry, at) => readFinish(reading, entry, at)),
    coverings: each("coverings", input.coverings, (entry, at) => readCovering(reading, entry, at)),
    consumables: each("consumables", input.consumables, (entry, at) => readItem(reading, "consumables", entry, at)),
    equipment: each("equipment", input.equipment, (entry, at) => readEquipment(reading, entry, at)),
    services: each("services", input.services, (entry, at) => readItem(reading, "services", entry, at)),
    taxes: (input.taxes ?? []).map((tax, index) => ({
      name: tax.name,
      rate: toQuantity(tax.rate, "%"),
      appliesTo: tax.appliesTo,
      at: pointer(base, "taxes", index),
    })),
  };
  checkItemsOnce(reading, catalog);
  checkReferences(reading, catalog, input, alsoNamed);
  return reading.faults.length > 0 ? { faults: reading.faults } : { catalog };
}

/** One price an item: with two, nobody could say which is meant. */
function checkItemsOnce(reading: OfferReading, catalog: PriceCatalog): void {
  for (const department of ["consumables", "equipment", "services"] as const) {
    const entries: readonly { readonly item: string; readonly at: string }[] = catalog[department];
    entries.forEach(({ item, at }, index) => {
      if (entries.findIndex((other) => other.item === item) < index) {
        reading.fault("duplicate-name", pointer(at, "item"), `“${item}” is priced twice.`, "Keep one of the two.");
      }
    });
  }
}

/** Deck boards and board coverings name entries of the lumber department. */
function checkReferences(
  reading: OfferReading,
  catalog: PriceCatalog,
  input: PriceCatalogInput,
  alsoNamed: readonly string[],
): void {
  // Names of entries with faults of their own count too: one fault is enough for them.
  const given = (input.lumber ?? []).flatMap((entry) => entry.name ?? []);
  const known = new Set([...catalog.lumber.map((offer) => offer.name), ...given, ...alsoNamed]);
  input.coverings?.forEach((covering, index) => {
    const at = reading.place("coverings", index);
    const boards = covering.sheets.form === "boards" ? covering.sheets.lumber : undefined;
    const named: readonly (readonly [string | undefined, string])[] = [
      [boards, pointer(at, "sheets", "lumber")],
      [covering.deck, pointer(at, "deck")],
    ];
    for (const [name, place] of named) {
      if (name === undefined || known.has(name)) continue;
      const near = nearest(name, known);
      const cure = near ? `Did you mean “${near}”?` : "Give a lumber entry this name, or name one that exists.";
      reading.fault("unknown-name", place, `No lumber entry is called “${name}”.`, cure);
    }
  });
}
