/** Needs of the takeoffs to lines of the shopping list, by what the catalog sells. */

import { FASTENERS, type FastenerKind } from "../../catalog/fasteners.js";
import type { FinishKind } from "../../catalog/finishes.js";
import { consumablePrice, finishOffers, servicePrice } from "../../catalog/look-up.js";
import type { FastenerOffer } from "../../catalog/offers/fastener.js";
import type { FinishOffer } from "../../catalog/offers/finish.js";
import type { ConsumableItem, ServiceItem } from "../../catalog/offers/supplies.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { ItemOf, Need } from "../need.js";
import { inUnit } from "../quantity/quantity.js";
import { type MeasureSystem, markedSmall } from "../quantity/text.js";
import { aside } from "../sheet/aside.js";
import { type Cell, type Operand, sum } from "../sheet/expression.js";
import { layCoveringPart } from "./covering-lines.js";
import { type Article, articlesFor, type FastenerNeed, packsOf, rank } from "./fastener-articles.js";
import { layLine, type Pricing, type ShoppingLine } from "./line.js";
import { costInPacks, layPackLine, packLabel, type SizedPack } from "./pack-lines.js";

/** A line of the shopping list, and the needs that it serves. */
export interface ServedLine {
  readonly line: ShoppingLine;
  readonly needs: readonly Need[];
}

/**
 * Lays one line an article, in the order of the needs that first ask for it. Fasteners that come out of the same packs
 * are one need: packs are bought for the sum.
 * @param under - What the names of its cells begin with: nothing, or a route's key and a dot.
 */
export function layShoppingList(
  pricing: Pricing,
  catalog: PriceCatalog,
  needs: readonly Need[],
  system: MeasureSystem,
  under = "",
): ServedLine[] {
  if (under === "") pricing.sheet.title("order", "Shopping list, whichever route");
  const articles = articlesFor(pricing, catalog, needs);
  return [...new Set(needs.map((need) => articles.get(need) ?? need))].map((one) =>
    "item" in one
      ? { line: layNeed(pricing, catalog, one, system), needs: [one] }
      : { line: layFastener(pricing, one, system, under), needs: one.needs },
  );
}

function layNeed(pricing: Pricing, catalog: PriceCatalog, need: Need, system: MeasureSystem): ShoppingLine {
  const { item } = need;
  switch (item.kind) {
    case "fastener":
      throw new Error(`${need.name} is a fastener, which is bought by the article`);
    case "finish":
      return layFinishLine(pricing, catalog, need, item);
    case "covering":
      return layCoveringPart(pricing, catalog, need, item, system);
    case "consumable":
      return layLine(
        pricing,
        lineOf(need, "consumables"),
        need.quantity,
        consumablePrice(catalog, item.item as ConsumableItem),
        item.item,
      );
    case "service":
      return layLine(
        pricing,
        lineOf(need, "services"),
        need.quantity,
        servicePrice(catalog, item.item as ServiceItem),
        item.item,
      );
  }
}

const lineOf = (need: Need, department: ShoppingLine["department"]) => ({
  // A fastener is ordered once for all its joints: `order.` says it already.
  name: `order.${need.name.replace(/^fasteners\.order\./, "")}`,
  department,
  label: need.label,
});

function layFastener(
  pricing: Pricing,
  { offer, each, needs }: Article,
  system: MeasureSystem,
  under: string,
): ShoppingLine {
  const strictest = needs.reduce((a, b) => (rank(b.item.corrosion) > rank(a.item.corrosion) ? b : a));
  const own = lineOf(needs[0] as FastenerNeed, "fasteners");
  const line = { ...own, name: `${under}${own.name}` };
  const words = fastenerWords(strictest.item, system);
  const add = `Add ${words}, ${strictest.item.corrosion.replaceAll("-", " ")} or better, to the catalog's fasteners.`;
  const label = offer ? `${labelOf(needs, strictest)} (${offer.label})` : strictest.label;
  const { sheet } = pricing;
  const quantity =
    needs.length === 1
      ? strictest.quantity
      : sheet.lay(`${line.name}.need`, sum(needs.map((need) => need.quantity)), { label: "for all its joints" });
  const differences = offer ? needs.flatMap((need) => differencesOf(need, offer, { each, system, strictest })) : [];
  const laid = layPackLine(pricing, { ...line, label }, quantity, offer ? packsOf(offer, each) : [], add);
  return differences.length > 0 ? { ...laid, differences: [...new Set(differences)] } : laid;
}

/** How a fastener that is sold differs from one that is wanted: longer, cut from a longer one, or better protected. */
function differencesOf(
  { item }: FastenerNeed,
  offer: FastenerOffer,
  {
    each,
    system,
    strictest,
  }: { readonly each: number; readonly system: MeasureSystem; readonly strictest: FastenerNeed },
): string[] {
  const wanted = fastenerWords(item, system).replace(/ or longer$/, "");
  const long = item.length && { value: aside(item.length), unit: item.length.unit };
  const sold = offer.length;
  const words = (id: string): string => id.replaceAll("-", " ");
  const better =
    offer.finish === strictest.item.corrosion
      ? []
      : [`${words(strictest.item.corrosion)} would do, ${words(offer.finish)} is sold`];
  if (!long || !sold?.value.gt(long.value)) return better;
  if (each > 1) return [`${wanted} wanted, ${each} are cut from one of ${markedSmall(sold, system)}`, ...better];
  // Less than a tape shows is no difference to anyone.
  if (markedSmall(long, system) === markedSmall(sold, system)) return better;
  const by = markedSmall({ value: sold.value.minus(long.value), unit: long.unit }, system);
  return [
    `${wanted} wanted, ${markedSmall(sold, system)} is the next length sold: ${by} more, ${item.fastener.endsWith("bolt") ? "which stands out beyond the nut" : "so see that it does not come through"}`,
    ...better,
  ];
}

/** `Hexagon-head bolt 1/2 × 5 in and hexagon-head bolt 1/2 × 5 1/2 in, coated or better`: sizes once, the strictest class. */
function labelOf(needs: readonly FastenerNeed[], strictest: FastenerNeed): string {
  const split = (label: string): [string, string] => {
    const at = label.lastIndexOf(", ");
    return at < 0 ? [label, ""] : [label.slice(0, at), label.slice(at)];
  };
  const whats = [...new Set(needs.map(({ label }) => split(label)[0]))];
  const rest = whats.slice(1).map((what) => what.charAt(0).toLowerCase() + what.slice(1));
  return `${[whats[0], ...rest].join(" and ")}${split(strictest.label)[1]}`;
}

/** `ring-shank nail 0.148 in × 1 1/2 in or longer`, `joist hanger for 2 in × 6 in`: as they are sold, gauges in decimals. */
function fastenerWords({ fastener, diameter, length, fits }: ItemOf<"fastener">, system: MeasureSystem): string {
  const { name } = FASTENERS[fastener as FastenerKind];
  const size = (cell: Cell): string => {
    const of = { value: aside(cell), unit: cell.unit };
    if (system === "metric" || inUnit(of, "in").times(16).isInteger()) return markedSmall(of, system);
    return `${inUnit(of, "in").toDecimalPlaces(3).toFixed()} in`;
  };
  if (fits) return `${name} for ${fits.map(size).join(" × ")}`;
  const sizes = [diameter, length].flatMap((cell) => (cell ? [size(cell)] : [])).join(" × ");
  return [name, sizes, length && "or longer"].filter(Boolean).join(" ");
}

/** In cans of the first on offer: the cheapest stands first. @param under - What the names of its cells begin with. */
export function layFinishLine(
  pricing: Pricing,
  catalog: PriceCatalog,
  need: Need,
  item: ItemOf<"finish">,
  under = "",
): ShoppingLine {
  const { cans, called, add } = cansOf(catalog, item);
  const line = lineOf(need, "finishes");
  const label = called === undefined ? need.label : `${need.label} (${called})`;
  return layPackLine(pricing, { ...line, name: `${under}${line.name}`, label }, need.quantity, cans, add);
}

/** What another volume would cost in the cans of a line. */
export const costInCans = (
  pricing: Pricing,
  catalog: PriceCatalog,
  { name }: ShoppingLine,
  { item, volume }: { readonly item: ItemOf<"finish">; readonly volume: Operand },
): Operand | undefined => costInPacks(pricing, name, volume, cansOf(catalog, item).cans);

/** Cans of the first finish of a kind on offer, and what to add where none has a price. */
function cansOf(
  catalog: PriceCatalog,
  { finish }: ItemOf<"finish">,
): { readonly cans: readonly SizedPack[]; readonly called: string | undefined; readonly add: string } {
  const found = finishOffers(catalog, finish as FinishKind);
  const offer = found.kind === "offered" ? found.offers[0] : undefined;
  const add = found.kind === "offered" ? `Add a can of ${finish} with a price.` : found.add;
  return { cans: offer ? packedCans(offer) : [], called: offer?.label, add };
}

/** By their offer, so that the same cans are always the same array. */
const packed = new WeakMap<FinishOffer, readonly SizedPack[]>();

function packedCans(offer: FinishOffer): readonly SizedPack[] {
  const cans =
    packed.get(offer) ??
    offer.cans.map(({ size, from, price }) => ({
      label: packLabel(size),
      holds: size,
      price,
      ...(from === undefined ? {} : { from }),
    }));
  packed.set(offer, cans);
  return cans;
}
