/** Parts of a roof covering to lines of the shopping list: by the piece, by the roll, or cut from what is sold in lengths. */
import type { CoveringKind } from "../../catalog/coverings.js";
import { coveringOffers, type Found, lumberOffers, sameSection } from "../../catalog/look-up.js";
import type { CoveringOffer, CutLength, LongPiece } from "../../catalog/offers/covering.js";
import { type LumberOffer, lengthsOf, type PricedLength, pieceCost } from "../../catalog/offers/lumber.js";
import type { Price } from "../../catalog/offers/price.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { Section } from "../../catalog/reading.js";
import type { CoveringPart, CutToLength, Need, NeedItem } from "../need.js";
import { decimal } from "../quantity/decimal.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem, marked } from "../quantity/text.js";
import { wholeNumber } from "../quantity/whole.js";
import { type Cell, greatest, type Operand, over, type PlanProof, roundUp, sum, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import { amountOf, layLine, type Pricing, priceCell, type ShoppingLine } from "./line.js";
import { stepsOf } from "./lumber.js";
import { planStock } from "./stock-plan.js";
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

/** Comes off each stick of lumber and each cut, in the place of the saw's own: common practice, no source. */
const LUMBER_KERF = { "inch-pound": "1/8 in", metric: "3 mm" } as const;

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
  const label = offer && offers.length > 1 ? `${need.label} (${offer.label})` : need.label;
  const line: Line = { name: `order.${need.name}`, department: "coverings", label };
  if (item.part === "deck")
    return layDeckBoards({ pricing, catalog, system, offer }, { ...line, department: "lumber" }, need, item);
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
      return layLine(pricing, line, need.quantity, partPrice(offer, item.part), `${offer.name}.${item.part}`);
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

function partPrice(offer: CoveringOffer, part: CoveringPart): Price {
  const { sheets, sheathing } = offer;
  const unpriced = (what: string): Price => ({
    kind: "unpriced",
    at: offer.at,
    add: `Add ${what} to ${offer.label} at ${offer.at}.`,
  });
  if (part === "course") return sheets.form === "courses" ? sheets.price : unpriced("bundles");
  if (part === "roll") return sheets.form === "rolls" ? sheets.price : unpriced("rolls");
  if (part === "sheathing") return sheathing?.price ?? unpriced("sheathing");
  const asked = {
    "eave-closure": "inside closures",
    "ridge-closure": "outside closures",
    "eave-trim": "an eave-trim",
  }[part as string];
  return longPieces(offer, part)[0]?.price ?? unpriced(asked ?? `a ${part}`);
}

/** Panels cut to order cost by their length; stock panels are cut from the cheapest lengths, their square offcuts used. */
function layPanels(shop: Shop, line: Line, need: Need, item: Item): ShoppingLine {
  const { pricing, offer } = shop;
  const { sheets } = offer;
  const none: Price = { kind: "unpriced", at: offer.at, add: `Add panels to ${offer.label} at ${offer.at}.` };
  const cuts = item.cuts ?? [];
  if (sheets.form !== "panels" || cuts.length === 0) return layLine(pricing, line, need.quantity, none, offer.name);
  if (sheets.sold.by === "piece")
    return layFromStock(shop, line, { need, cuts, stocks: sheets.sold.lengths, from: offer.name });
  const { sheet } = pricing;
  sheet.title(line.name, line.label);
  const { price } = sheets.sold;
  const cell = priceCell(pricing, `${offer.name}.panel`, price, line.label);
  if (!cell) return { ...line, quantity: need.quantity, add: price.kind === "unpriced" ? price.add : "" };
  const ordered = cuts.map((cut) => times(cut.count, orderedLength(shop, cut, sheets.sold as CutLength)));
  const length = ordered.length === 1 ? (ordered[0] as (typeof ordered)[number]) : sum(ordered);
  const amount = sheet.lay(`${line.name}.amount`, amountOf(pricing, times(length, cell)), { label: "amount" });
  return { ...line, quantity: need.quantity, price: cell, amount, ...(item.pieceLength && { each: item.pieceLength }) };
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
  const stocks = lengthsOf(lumber).map((length) => ({ length, price: pieceCost(lumber, length) }));
  return layFromStock(shop, line, { need, cuts: item.cuts ?? [], stocks, from: lumber.name });
}

/** Whose lengths are cut. */
interface StockShop extends Pick<Shop, "pricing" | "system"> {
  readonly offer: Pick<CoveringOffer, "label" | "at">;
}

interface FromStock {
  readonly need: Need;
  readonly cuts: readonly CutToLength[];
  readonly stocks: readonly PricedLength[];
  /** Name of the offer, for its prices. */
  readonly from: string;
  readonly kerf?: Quantity;
}

/** Counted work of the plan of one covering's panels. */
const WORK = 80_000;

/** The cheapest stock lengths that panels or boards are cut from; sheet steel loses nothing to a kerf. */
function layFromStock(shop: StockShop, line: Line, { need, cuts, stocks, from, kerf }: FromStock): ShoppingLine {
  const { pricing, system, offer } = shop;
  const { sheet, minorDigits } = pricing;
  sheet.title(line.name, line.label);
  const priced = stocks.flatMap(({ length, price, available = null }) =>
    price.kind === "priced" ? [{ length, price, available, name: marked(length, system) }] : [],
  );
  const add = `Add stock lengths with prices to ${offer.label} at ${offer.at}.`;
  if (priced.length === 0) return { ...line, quantity: need.quantity, add };
  const outcome = planStock(
    {
      pieces: cuts.map((cut, i) => ({
        name: `cut ${i + 1}`,
        length: stepsOf(system, sheet.decide(cut.length), "up"),
        count: sheet.decideWhole(cut.count),
      })),
      stocks: priced.map(({ name, length, price, available }) => ({
        name,
        length: stepsOf(system, length.value, "down"),
        priceMinor: wholeNumber(price.amount.value.times(decimal(10).pow(minorDigits)).toDecimalPlaces(0)),
        available,
      })),
      kerf: kerf ? stepsOf(system, kerf.value, "up") : 0,
      endTrim: 0,
    },
    { work: WORK },
  );
  if (outcome.short.length > 0)
    return {
      ...line,
      quantity: need.quantity,
      add: `Add longer lengths, or more of them, to ${offer.label} at ${offer.at}.`,
    };
  const proof: PlanProof = {
    gap: decimal(outcome.gap.toFixed(6)),
    covers: outcome.proven ? "all ways to cut these lengths; proven least" : "all ways to cut these lengths",
  };
  const bought = outcome.sticks.map(({ stock, count }, i) => {
    const cell = sheet.planned(`${line.name}.stock${i + 1}`, plain(count), proof, { label: `lengths of ${stock}` });
    const price = priced.find(({ name }) => name === stock)?.price as Extract<Price, { kind: "priced" }>;
    const label = `${offer.label}, ${stock}`;
    return {
      label: stock,
      count: cell,
      price: priceCell(
        pricing,
        `${from}.${stock.replaceAll(/[^0-9A-Za-z]+/g, "-").replace(/-$/, "")}.piece`,
        price,
        label,
      ) as Cell,
    };
  });
  const first = bought[0];
  if (!first) return { ...line, quantity: need.quantity, add };
  const cost = bought.map(({ count, price }) => times(count, price));
  const amount = sheet.lay(
    `${line.name}.amount`,
    amountOf(pricing, cost.length === 1 ? (cost[0] as (typeof cost)[number]) : sum(cost)),
    { label: "amount" },
  );
  if (bought.length === 1)
    return {
      ...line,
      quantity: first.count,
      price: first.price,
      amount,
      note: `${first.label} each, for ${sheet.shown(need.quantity)} wanted`,
    };
  return { ...line, quantity: need.quantity, amount, packs: bought.map(({ label, count }) => ({ label, count })) };
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
      price: underlay.price,
      content: quantity(underlay.width.value.times(underlay.length.value), "mm2"),
    },
    "lap-sealant": sealant && { price: sealant.price, content: sealant.length },
    adhesive: adhesive && { price: adhesive.price, content: adhesive.covers },
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
  return layLine(pricing, line, count, roll.price, `${offer.name}.${part}`);
}

/** Deck boards, planned piece by piece on straight slopes and by their length on hipped ones: from the offer that the covering names where its size is wanted, else the cheapest that serves. */
function layDeckBoards(
  { pricing, catalog, system, offer }: Omit<Shop, "offer"> & { readonly offer: CoveringOffer | undefined },
  line: Line,
  need: Need,
  item: Item,
): ShoppingLine {
  const { sheet } = pricing;
  const [thickness, width] = item.section ?? [];
  if (!thickness || !width) return { ...line, quantity: need.quantity, add: "Add deck boards to lumber." };
  const sized = (cell: Cell): Quantity => quantity(sheet.decide(cell), cell.unit);
  const best = cheapest(boardsServing(catalog, { thickness: sized(thickness), width: sized(width) }, offer?.deck));
  if (!best) {
    const size = `${sheet.shown(thickness)} × ${sheet.shown(width)}`;
    return { ...line, quantity: need.quantity, add: `Add lumber of ${size} with a price to lumber.` };
  }
  if (item.cuts) {
    const stocks = lengthsOf(best.offer).map((length) => ({ length, price: pieceCost(best.offer, length) }));
    const planned = { need, cuts: item.cuts, stocks, from: best.offer.name, kerf: exactly(LUMBER_KERF[system]) };
    const label = `${line.label} (${best.offer.label})`;
    return layFromStock({ pricing, system, offer: best.offer }, { ...line, label }, planned);
  }
  sheet.title(line.name, line.label);
  const name = `price.${best.offer.name}.${best.name}`;
  const stock =
    sheet.find(`${name}.length`) ??
    sheet.catalog(`${name}.length`, best.length, { label: `stock length of ${best.offer.label}` });
  const sticks = sheet.lay(`${line.name}.sticks`, roundUp(over(need.quantity, stock)), { label: "stock lengths" });
  const label = `${line.label} (${best.offer.label})`;
  return layLine(pricing, { ...line, label }, sticks, best.price, `${best.offer.name}.${best.name}.deck`);
}

/** The named offer where it is of that size; else all at least as large; else those sold by that size as a nominal name. */
function boardsServing(catalog: PriceCatalog, wanted: Section, named: string | undefined): readonly LumberOffer[] {
  const same = catalog.lumber.filter(({ name, actual }) => name === named && sameSection(actual, wanted));
  if (same.length > 0) return same;
  const larger = lumberOffers(catalog, { atLeast: wanted, treatment: "none" });
  const byName = catalog.lumber.filter(
    ({ section, treatment }) => treatment === "none" && sameSection(section, wanted),
  );
  const least = larger.kind === "offered" ? larger.offers : [];
  return [...least, ...byName];
}

function cheapest(offers: readonly LumberOffer[]) {
  const all = offers.flatMap((offer) =>
    lengthsOf(offer).flatMap((length) => {
      const price = pieceCost(offer, length);
      return price.kind === "priced"
        ? [
            {
              offer,
              length,
              price,
              name: `stock-${length.value.toFixed(0)}`,
              rate: price.amount.value.dividedBy(length.value),
            },
          ]
        : [];
    }),
  );
  return all.reduce<(typeof all)[number] | undefined>(
    (best, one) => (!best || one.rate.lt(best.rate) ? one : best),
    undefined,
  );
}
