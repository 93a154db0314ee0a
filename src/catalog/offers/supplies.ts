/** Consumables, equipment and services: one entry an item, each item priced in its own unit. */
import { z } from "zod";
import { pointer } from "../../estimate/faults.js";
import type { Quantity } from "../../estimate/quantity/quantity.js";
import { moneyField, priceField, quantityField, toQuantity } from "../reading.js";
import { commonFields, type Named, type OfferReading, type Price } from "./price.js";

/** What is priced, and the unit below the line; empty is the price of one. */
interface Item {
  readonly name: string;
  readonly per: string;
}

const item = (name: string, per = ""): Item => ({ name, per });

/** What is used up at the mill and in the shop, and the unit of its price. */
export const CONSUMABLES = {
  fuel: item("fuel for saw, mill, winch, tractor and car", "gal"),
  "bar-oil": item("bar oil", "gal"),
  "two-stroke-oil": item("two-stroke oil", "gal"),
  "end-sealer": item("end sealer for logs and fresh sawn ends", "gal"),
  chain: item("ripping chain"),
  files: item("file for chains"),
  "chain-sharpening": item("sharpening of a chain"),
  band: item("band blade"),
  "band-sharpening": item("sharpening of a band"),
  "circular-blade": item("circular blade of a swing-blade mill, or new tips for it"),
  "circular-sharpening": item("sharpening of a circular blade"),
  "grinding-wheel": item("grinding wheel for bands and circular blades"),
  "planer-knives": item("set of planer knives"),
  "planer-knife-sharpening": item("sharpening of a set of planer knives"),
  "sanding-discs": item("sanding disc"),
  stickers: item("sticker"),
  electricity: item("electricity", "kWh"),
  "concrete-bag": item("bag of concrete mix, 80 lb or 25 kg"),
  concrete: item("ready-mixed concrete", "yd3"),
  gravel: item("gravel", "yd3"),
  "pier-block": item("precast pier block"),
  "form-tube": item("form tube for round footings, of the length in footing.tube"),
} as const;

/** Key of a consumable. */
export type ConsumableItem = keyof typeof CONSUMABLES;

/** Machines and gear that may be hired, bought or at hand. */
export const EQUIPMENT = {
  "chainsaw-mill": "chainsaw mill on a slabbing frame",
  "manual-band-mill": "manual band mill",
  "hydraulic-band-mill": "hydraulic band mill",
  "swing-blade-mill": "swing-blade mill",
  chainsaw: "chainsaw",
  planer: "thickness planer",
  jointer: "jointer",
  "table-saw": "table saw",
  "track-saw": "circular saw with guide rail",
  sander: "orbital sander",
  winch: "winch or log arch",
  tractor: "tractor",
  trailer: "trailer",
  scaffold: "scaffold",
  lift: "lift or small crane",
  auger: "post-hole auger",
} as const;

/** Key of a machine or of gear. */
export type EquipmentItem = keyof typeof EQUIPMENT;

/** Services that may be paid for, and the unit of their price. */
export const SERVICES = {
  delivery: item("delivery"),
  "grading-visit": item("visit of a lumber grader"),
  "log-hauling": item("haul of a load of logs"),
  "milling-set-up": item("set-up of a hired sawyer"),
  "milling-per-board-foot": item("hired sawyer, by the board foot sawn", "bf"),
  "milling-per-hour": item("hired sawyer, by the hour", "h"),
  "post-hole-auger": item("boring of a post hole"),
  disposal: item("disposal of a load of slabs and sawdust"),
} as const;

/** Key of a service. */
export type ServiceItem = keyof typeof SERVICES;

/** The unit that an item is priced in, below the line; empty is the price of one. */
export const pricedPer = (of: ConsumableItem | ServiceItem): string => ({ ...CONSUMABLES, ...SERVICES })[of].per;

/** Items in one unit share a schema, so that each price is asked for in the right one. */
function itemSchemas<Name extends string>(
  items: Readonly<Record<Name, Item>>,
  examples: Readonly<Record<string, string>>,
) {
  const names = Object.keys(items) as Name[];
  const units = [...new Set(names.map((name) => items[name].per))];
  const schemas = units.map((per) =>
    z.strictObject({
      ...commonFields,
      item: z
        .enum(names.filter((name) => items[name].per === per))
        .meta({ description: `An item that is priced ${per ? `by the ${per}` : "each"}.` }),
      price: priceField(per, {
        describe: `Price ${per ? `of a ${per}` : "of one"}.`,
        example: examples[per] as string,
      }),
    }),
  );
  return schemas as [(typeof schemas)[number], ...typeof schemas];
}

/** A consumable's entry in a price list. */
export const consumableSchema = z
  .discriminatedUnion("item", itemSchemas(CONSUMABLES, { gal: "3.60", "": "28.00", kWh: "0.17", yd3: "165.00" }))
  .meta({ id: "ConsumableOffer", description: "What milling, dressing, drying and footings use up." });

/** A service's entry in a price list. */
export const serviceSchema = z
  .discriminatedUnion("item", itemSchemas(SERVICES, { "": "95.00", bf: "0.55", h: "95.00" }))
  .meta({ id: "ServiceOffer", description: "Work or a journey that is paid for." });

/** A machine's entry in a price list: what it costs a day, to buy, and brings when sold. */
export const equipmentSchema = z
  .strictObject({
    ...commonFields,
    item: z
      .enum(Object.keys(EQUIPMENT) as EquipmentItem[])
      .meta({ description: "Which machine.", examples: ["manual-band-mill"] }),
    hirePerDay: priceField("day", { describe: "Hire for a day.", example: "180" }),
    minimumDays: quantityField("day", { describe: "Shortest hire.", example: "2 day", most: "365 day" }).optional(),
    purchase: priceField("", { describe: "Price to buy.", example: "3200" }),
    resale: moneyField("", { describe: "What it will sell for afterwards.", example: "2200" }).optional(),
  })
  .meta({ id: "EquipmentOffer", description: "A machine to hire or to buy." });

/** A consumable or service with its price. */
export interface ItemOffer<Item extends string> extends Named {
  readonly item: Item;
  readonly price: Price;
}

/** A machine with the prices of hire, purchase and resale. */
export interface EquipmentOffer extends Named {
  readonly item: EquipmentItem;
  readonly hirePerDay: Price;
  /** One day when the catalog does not say. */
  readonly minimumDays: Quantity;
  readonly purchase: Price;
  readonly resale?: Quantity;
}

/** Reads one consumable or service that the schema has let through. */
export function readItem<Item extends ConsumableItem | ServiceItem>(
  reading: OfferReading,
  department: "consumables" | "services",
  entry: { readonly item: Item } & z.infer<typeof serviceSchema | typeof consumableSchema>,
  at: string,
): ItemOffer<Item> {
  const named = reading.named(department, at, entry, entry.item);
  return {
    ...named,
    item: entry.item,
    price: reading.price(entry.price, pricedPer(entry.item), pointer(at, "price"), named.label),
  };
}

/** Reads one machine that the schema has let through. */
export function readEquipment(
  reading: OfferReading,
  entry: z.infer<typeof equipmentSchema>,
  at: string,
): EquipmentOffer {
  const named = reading.named("equipment", at, entry, entry.item);
  const purchase = reading.price(entry.purchase, "", pointer(at, "purchase"), `buying a ${named.label}`);
  const resale = entry.resale === undefined ? undefined : toQuantity(entry.resale, reading.currency);
  if (resale && purchase.kind === "priced" && resale.value.gt(purchase.amount.value)) {
    const cure = "Give at most the price to buy.";
    reading.fault("out-of-range", pointer(at, "resale"), "The machine is to sell for more than it costs.", cure);
  }
  return {
    ...named,
    item: entry.item,
    hirePerDay: reading.price(entry.hirePerDay, "day", pointer(at, "hirePerDay"), `hiring a ${named.label}`),
    minimumDays: toQuantity(entry.minimumDays ?? "1 day", "day"),
    purchase,
    ...(resale ? { resale } : {}),
  };
}
