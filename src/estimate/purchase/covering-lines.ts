/** Parts of a roof covering to lines of the shopping list: by the piece, by the roll, or cut from what is sold in lengths. */
import type { CoveringKind } from "../../catalog/coverings.js";
import { coveringOffers, type Found } from "../../catalog/look-up.js";
import type { CoveringOffer, CutLength, LongPiece } from "../../catalog/offers/covering.js";
import type { Price } from "../../catalog/offers/price.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { CoveringPart, CutToLength, Need, NeedItem } from "../need.js";
import { quantity } from "../quantity/quantity.js";
import type { MeasureSystem } from "../quantity/text.js";
import { greatest, type Operand, over, roundUp, sum, times } from "../sheet/expression.js";
import { boardStocks } from "./board-prices.js";
import { layBulkLine, type Prices } from "./bulk.js";
import { layDeckBoards, layFromStock } from "./cut-lines.js";
import { amountOf, layLine, type Pricing, priceCell, type ShoppingLine } from "./line.js";
import { layLongPieces } from "./trim-lines.js";

type Item = Extract<NeedItem, { kind: "covering" }>;
type Line = Pick<ShoppingLine, "name" | "department" | "label">;

/** What a line is priced with. */
interface Shop {
  readonly pricing: Pricing;
  readonly catalog: PriceCatalog;
  readonly system: MeasureSystem;
  readonly offer: CoveringOffer;
}

/** Lays the line of one part. */
export function layCoveringPart(
  pricing: Pricing,
  catalog: PriceCatalog,
  need: Need,
  item: Item,
  system: MeasureSystem,
): ShoppingLine {
  const found: Found<CoveringOffer> = coveringOffers(catalog, item.covering as CoveringKind);
  const offers = found.kind === "offered" ? found.offers : [];
  // The cheapest stands first; which it is is said where there was a choice.
  const offer = offers[0];
  const name = `order.${need.name}`;
  if (item.part === "deck") {
    return layDeckBoards({ pricing, catalog, system }, { name, department: "lumber", label: need.label }, need, item);
  }
  const label = offer && offers.length > 1 ? `${need.label} (${offer.label})` : need.label;
  const line: Line = { name, department: "coverings", label };
  if (!offer) return { ...line, quantity: need.quantity, add: found.kind === "offered" ? "" : found.add };
  const shop: Shop = { pricing, catalog, system, offer };
  switch (item.part) {
    case "panel":
      return layPanels(shop, line, need, item);
    case "board":
      return layBoards(shop, line, need, item);
    case "lap-sealant":
    case "underlay":
    case "adhesive":
      return layRolls(shop, line, need, item.part);
    default: {
      const rows = longPieces(offer, item.part);
      if (rows.length > 1) return layLongPieces(shop, line, need, rows);
      return layBulkLine(pricing, line, need.quantity, partPrice(offer, item.part), {
        priceName: `${offer.name}.${item.part}`,
      });
    }
  }
}

/** What the offer has of a trim or closure; what caps the ridge caps hips where no hip cap is sold. */
function longPieces({ trims, closures }: CoveringOffer, part: CoveringPart): readonly LongPiece<string>[] {
  if (part === "eave-closure" || part === "ridge-closure") {
    const side = part === "eave-closure" ? "inside" : "outside";
    return closures.filter(({ kind }) => kind === side);
  }
  const found = trims.filter(({ kind }) => kind === part);
  return found.length === 0 && part === "hip-cap" ? trims.filter(({ kind }) => kind === "ridge-cap") : found;
}

function partPrice(offer: CoveringOffer, part: CoveringPart): Prices {
  const { sheets, sheathing } = offer;
  const unpriced = (what: string): Prices => ({
    price: { kind: "unpriced", at: offer.at, add: `Add ${what} to ${offer.label} at ${offer.at}.` },
    bulk: [],
  });
  if (part === "course") return sheets.form === "courses" ? sheets : unpriced("bundles");
  if (part === "roll") return sheets.form === "rolls" ? sheets : unpriced("rolls");
  if (part === "sheathing") return sheathing ?? unpriced("sheathing");
  const asked = {
    "eave-closure": "inside closures",
    "ridge-closure": "outside closures",
    "eave-trim": "an eave-trim",
  }[part as string];
  const [piece] = longPieces(offer, part);
  return piece ? { price: piece.price, bulk: [] } : unpriced(asked ?? `a ${part}`);
}

/** Panels cut to order cost by their length; stock panels are cut from the cheapest lengths, their square offcuts used. */
function layPanels(shop: Shop, line: Line, need: Need, item: Item): ShoppingLine {
  const { pricing, offer, system } = shop;
  const { sheets } = offer;
  const none: Price = { kind: "unpriced", at: offer.at, add: `Add panels to ${offer.label} at ${offer.at}.` };
  const cuts = item.cuts ?? [];
  if (sheets.form !== "panels" || cuts.length === 0) return layLine(pricing, line, need.quantity, none, offer.name);
  if (sheets.sold.by === "piece")
    return layFromStock(shop, line, {
      need,
      cuts,
      stocks: sheets.sold.lengths,
      priceName: (length) => `${offer.name}.${length.replaceAll(/[^0-9A-Za-z]+/g, "-").replace(/-$/, "")}.piece`,
    });
  const { sheet } = pricing;
  sheet.title(line.name, line.label);
  const { price } = sheets.sold;
  const cell = priceCell(pricing, `${offer.name}.panel`, price, line.label);
  if (!cell) return { ...line, quantity: need.quantity, add: price.kind === "unpriced" ? price.add : "" };
  const ordered = cuts.map((cut) => times(cut.count, orderedLength(shop, cut, sheets.sold as CutLength)));
  const length = sheet.lay(
    `${line.name}.ordered`,
    ordered.length === 1 ? (ordered[0] as (typeof ordered)[number]) : sum(ordered),
    { label: "length ordered, all panels", display: system === "metric" ? "m" : "ft" },
  );
  const amount = sheet.lay(`${line.name}.amount`, amountOf(pricing, times(length, cell)), { label: "amount" });
  const paid = { measure: length, price: cell, level: pricing.level };
  return {
    ...line,
    quantity: need.quantity,
    price: cell,
    amount,
    paid,
    ...(item.pieceLength && { each: item.pieceLength }),
  };
}

/** What is shorter than the shortest panel that is cut is ordered as that. */
function orderedLength({ pricing: { sheet }, offer }: Shop, { length }: CutToLength, { shortest }: CutLength): Operand {
  if (sheet.decide(length).gte(shortest.value)) return length;
  const name = `price.${offer.name}.shortest`;
  const label = "shortest panel that is cut";
  return greatest(length, sheet.find(name) ?? sheet.catalog(name, shortest, { label, source: `catalog, ${offer.at}` }));
}

function layBoards(shop: Shop, line: Line, need: Need, item: Item): ShoppingLine {
  const { catalog, offer } = shop;
  const { sheets } = offer;
  const lumber = sheets.form === "boards" ? catalog.lumber.find(({ name }) => name === sheets.lumber) : undefined;
  if (!lumber) {
    return { ...line, quantity: need.quantity, add: `Name an entry of lumber as the boards of ${offer.label}.` };
  }
  return layFromStock(shop, line, { need, cuts: item.cuts ?? [], ...boardStocks(lumber, shop.system) });
}

function layRolls(
  { pricing, offer }: Shop,
  line: Line,
  need: Need,
  part: "lap-sealant" | "underlay" | "adhesive",
): ShoppingLine {
  const { sheet } = pricing;
  const words = { "lap-sealant": "sealant", underlay: "underlay", adhesive: "adhesive" }[part];
  const add = `Add ${words} to ${offer.label} at ${offer.at}.`;
  const { sealant, underlay, adhesive } = offer;
  const rolls = {
    underlay: underlay && {
      ...underlay,
      content: quantity(underlay.width.value.times(underlay.length.value), "mm2"),
    },
    "lap-sealant": sealant && { ...sealant, content: sealant.length },
    adhesive: adhesive && { ...adhesive, content: adhesive.covers },
  };
  const roll = rolls[part];
  if (!roll) return { ...line, quantity: need.quantity, add };
  const holds =
    sheet.find(`price.${offer.name}.${part}.holds`) ??
    sheet.catalog(`price.${offer.name}.${part}.holds`, roll.content, {
      label: part === "adhesive" ? "one can glues" : "one roll covers",
      source: `catalog, ${offer.at}`,
    });
  const count = sheet.lay(`${line.name}.rolls`, roundUp(over(need.quantity, holds)), {
    label: part === "adhesive" ? "cans" : "rolls",
  });
  return layBulkLine(pricing, line, count, roll, { priceName: `${offer.name}.${part}` });
}
