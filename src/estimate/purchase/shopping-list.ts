/** Needs of the takeoffs to lines of the shopping list, by what the catalog sells. */

import { type CorrosionClassId, corrosionClassIds, FASTENERS, type FastenerKind } from "../../catalog/fasteners.js";
import type { FinishKind } from "../../catalog/finishes.js";
import { consumablePrice, finishOffers, servicePrice } from "../../catalog/look-up.js";
import type { FastenerOffer } from "../../catalog/offers/fastener.js";
import type { ConsumableItem, ServiceItem } from "../../catalog/offers/supplies.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { Section } from "../../catalog/reading.js";
import type { Need, NeedItem } from "../need.js";
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { inUnit, quantity } from "../quantity/quantity.js";
import { type MeasureSystem, markedSmall } from "../quantity/text.js";
import { aside } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import { layCoveringPart } from "./covering-lines.js";
import { layLine, type Pricing, type ShoppingLine } from "./line.js";
import { layPackLine, packLabel } from "./pack-lines.js";
import { cheapest, dearer } from "./price-order.js";

type ItemOf<Kind extends NeedItem["kind"]> = Extract<NeedItem, { kind: Kind }>;

/** Lays one line a need, in the order of the needs. */
export function layShoppingList(
  pricing: Pricing,
  catalog: PriceCatalog,
  needs: readonly Need[],
  system: MeasureSystem,
): ShoppingLine[] {
  pricing.sheet.title("order", "Shopping list, whichever route");
  return needs.map((need) => layNeed(pricing, catalog, need, system));
}

function layNeed(pricing: Pricing, catalog: PriceCatalog, need: Need, system: MeasureSystem): ShoppingLine {
  const { item } = need;
  switch (item.kind) {
    case "fastener":
      return layFastener(pricing, catalog, need, item, system);
    case "finish":
      return layFinish(pricing, catalog, need, item);
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

/** Boxes of the offer that is cheapest to the piece among those long and lasting enough. */
function layFastener(
  pricing: Pricing,
  catalog: PriceCatalog,
  need: Need,
  item: ItemOf<"fastener">,
  system: MeasureSystem,
): ShoppingLine {
  const { sheet } = pricing;
  const value = (cell: Cell | undefined) => cell && sheet.decide(cell);
  const [diameter, length] = [value(item.diameter), value(item.length)];
  const fits = item.fits?.map((cell) => sheet.decide(cell));
  const rank = (id: string) => corrosionClassIds.indexOf(id as CorrosionClassId);
  const serving = catalog.fasteners.filter(
    (offer) =>
      offer.kind === (item.fastener as FastenerKind) &&
      rank(offer.finish) >= rank(item.corrosion) &&
      (!diameter || !offer.diameter || offer.diameter.value.eq(diameter)) &&
      (!length || !offer.length || offer.length.value.gte(length)) &&
      (!offer.fits || fitsPost(offer.fits, fits)),
  );
  // A longer bolt than asked for is waste and sticks out: the shortest that serves, then the cheapest.
  const best = [...serving].sort(
    (a, b) =>
      (a.length?.value ?? ZERO).cmp(b.length?.value ?? ZERO) ||
      dearer(perPiece(a), perPiece(b)) ||
      (a.name < b.name ? -1 : 1),
  )[0];
  const add = `Add ${fastenerWords(item, system)}, ${item.corrosion.replaceAll("-", " ")} or better, to the catalog's fasteners.`;
  const perPieceBought = best ? cutFrom(best, length) : 1;
  const packs = (best?.packs ?? []).map(({ pieces, price }) => {
    const label = packLabel(quantity(pieces, ""));
    return { label, holds: quantity(pieces * perPieceBought, ""), price };
  });
  const line = lineOf(need, "fasteners");
  return layPackLine(
    pricing,
    best ? { ...line, label: `${need.label} (${best.label})` } : line,
    need.quantity,
    packs,
    add,
  );
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

/** Threaded rod is bought long and cut to length; everything else is used as it comes. */
function cutFrom(offer: FastenerOffer, length: Decimal | undefined): number {
  if (offer.kind !== "threaded-rod" || !length || !offer.length) return 1;
  return Math.max(1, offer.length.value.dividedToIntegerBy(length).toNumber());
}

/** A base takes a post of just its size, either way round. */
function fitsPost(offered: Section, wanted: readonly Decimal[] | undefined): boolean {
  const sides = [offered.thickness.value, offered.width.value].sort((a, b) => a.cmp(b));
  const post = [...(wanted ?? [])].sort((a, b) => a.cmp(b));
  return post.length === 2 && sides.every((side, i) => side.eq(post[i] as Decimal));
}

/** Cheapest piece over the packs on offer; undefined where none has a price. */
const perPiece = ({ packs }: FastenerOffer): Decimal | undefined =>
  cheapest(
    packs.flatMap(({ pieces, price }) => (price.kind === "priced" ? [price.amount.value.dividedBy(pieces)] : [])),
  );

function layFinish(pricing: Pricing, catalog: PriceCatalog, need: Need, item: ItemOf<"finish">): ShoppingLine {
  const found = finishOffers(catalog, item.finish as FinishKind);
  const cans = found.kind === "offered" ? (found.offers[0]?.cans ?? []) : [];
  const packs = cans.map(({ size, price }) => ({ label: packLabel(size), holds: size, price }));
  const add = found.kind === "offered" ? `Add a can of ${item.finish} with a price.` : found.add;
  return layPackLine(pricing, lineOf(need, "finishes"), need.quantity, packs, add);
}
