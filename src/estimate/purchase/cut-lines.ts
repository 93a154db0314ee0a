/** Lines of panels and boards that are cut from what is sold in lengths, of a roof's deck among them. */
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import type { LumberOffer, PricedLength } from "../../catalog/offers/lumber.js";
import type { Charged } from "../../catalog/offers/price.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { CutToLength, Need, NeedItem } from "../need.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem, marked } from "../quantity/text.js";
import { refuseTooMany } from "../sheet/counted.js";
import { type Cell, number, type Operand, over, type PlanProof, roundUp, sumOr, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import { boardStocks, cheapestBoard, stockPrices } from "./board-prices.js";
import { chargesOf, layBought, layBulkLine, levelCells, levelsInForce } from "./bulk.js";
import { amountOf, type Pricing, type ShoppingLine } from "./line.js";
import { stepsOf } from "./lumber.js";
import { gapOf, wholeMoney } from "./money.js";
import type { StockOutcome } from "./stock/problem.js";
import { planStock } from "./stock-plan.js";

type Item = Extract<NeedItem, { kind: "covering" }>;
type Line = Pick<ShoppingLine, "name" | "department" | "label">;

/** Comes off each stick of lumber and each cut, in the place of the saw's own: common practice, no source. */
const LUMBER_KERF = { "inch-pound": "1/8 in", metric: "3 mm" } as const;

/** Whose lengths are cut. */
interface StockShop {
  readonly pricing: Pricing;
  readonly system: MeasureSystem;
  readonly offer: Pick<CoveringOffer, "label" | "at">;
}

interface FromStock {
  readonly need: Need;
  readonly cuts: readonly CutToLength[];
  readonly stocks: readonly PricedLength[];
  /** Of the cells of a length's prices. */
  readonly priceName: (length: string) => string;
  readonly kerf?: Quantity;
  /** Sold in whole bundles of so many. */
  readonly bundle?: number;
}

/** Counted work of the plan of one covering's panels. */
const WORK = 80_000;

/** The cheapest stock lengths that panels or boards are cut from; sheet steel loses nothing to a kerf. */
export function layFromStock(shop: StockShop, line: Line, from: FromStock): ShoppingLine {
  const { pricing, system, offer } = shop;
  const { need, cuts, kerf, bundle = 1 } = from;
  const { sheet } = pricing;
  sheet.title(line.name, line.label);
  const { shelf, money } = shelfOf(shop, from);
  const add = `Add stock lengths with prices to ${offer.label} at ${offer.at}.`;
  if (shelf.length === 0) return { ...line, quantity: need.quantity, add };
  const counts = cuts.map(({ count }) => count);
  refuseTooMany(sheet, counts, { what: "pieces to cut", at: offer.at, cure: "Estimate a part of the roof." });
  const outcome = planStock(
    {
      pieces: cuts.map((cut, i) => ({
        name: `cut ${i + 1}`,
        length: stepsOf(system, sheet.decidePositive(cut.length), "up"),
        count: sheet.decideWhole(cut.count),
      })),
      stocks: shelf.map(({ name, length, levels, available }) => ({
        ...{ name, length: stepsOf(system, length.value, "down"), available, ...stockPrices(levels, money.whole) },
      })),
      kerf: kerf ? stepsOf(system, kerf.value, "up") : 0,
      endTrim: 0,
      ...(bundle > 1 ? { bundle } : {}),
    },
    { work: WORK },
  );
  if (outcome.short.length > 0)
    return {
      ...line,
      quantity: need.quantity,
      add: `Add longer lengths, or more of them, to ${offer.label} at ${offer.at}.`,
    };
  const bought = outcome.sticks.flatMap(({ stock, count }, i) => {
    const { cells, available, charged } = shelf.find(({ name }) => name === stock) as (typeof shelf)[number];
    const levels = cells();
    // Which lengths are bought hangs on their prices.
    for (const { price } of levels) sheet.decide(price);
    const name = `${line.name}.stock${i + 1}`;
    const cut = outcome.plan.reduce((sum, row) => (row.stock === stock ? sum + row.times : sum), 0);
    const planned = Math.ceil(cut / bundle) * bundle;
    const cell = sheet.planned(name, plain(planned), proofOf(outcome), { label: `lengths of ${stock}` });
    const found = layBought(pricing, name, cell, levels, { bundle, available });
    if (found && !sheet.decide(found.quantity).eq(count)) throw new Error(`${name} is not bought as planned`);
    return found ? [{ label: stock, charged, ...found }] : [];
  });
  return layStocks(pricing, line, need, bought);
}

/** Lengths with the cells of their prices, and the money that holds those in force. */
function shelfOf({ pricing, system, offer }: StockShop, { stocks, priceName }: FromStock) {
  const shelf = stocks.flatMap((one) => {
    const name = marked(one.length, system);
    const label = `${offer.label}, ${name}`;
    const levels = levelsInForce(pricing, priceName(name), one, label);
    const cells = () => levelCells(pricing, priceName(name), one, label);
    const charged = chargesOf(one);
    return levels.length > 0
      ? [{ name, length: one.length, levels, cells, charged, available: one.available ?? null }]
      : [];
  });
  const prices = shelf.flatMap(({ levels }) => levels.map(({ price }) => price));
  return { shelf, money: wholeMoney(prices, pricing.minorDigits) };
}

const proofOf = (outcome: StockOutcome): PlanProof => ({
  gap: gapOf(outcome),
  covers: outcome.proven ? "all ways to cut these lengths; proven least" : "all ways to cut these lengths",
});

/** One line for all lengths: of one length its number and price, of several as packs. */
function layStocks(
  pricing: Pricing,
  line: Line,
  need: Need,
  bought: readonly {
    readonly label: string;
    readonly quantity: Cell;
    readonly price: Cell;
    readonly charged: readonly Charged[];
    readonly leftOver?: Cell;
  }[],
): ShoppingLine {
  const { sheet } = pricing;
  const cost = bought.map(({ quantity: count, price }) => times(count, price));
  const amount = sheet.lay(
    `${line.name}.amount`,
    amountOf(pricing, cost.length === 1 ? (cost[0] as (typeof cost)[number]) : sumOr(cost, pricing.currency)),
    { label: "amount" },
  );
  const [first] = bought;
  if (first && bought.length === 1) {
    const { label, charged, ...only } = first;
    const paid = { measure: only.quantity, price: only.price, level: pricing.level, charged };
    return { ...line, ...only, amount, paid, note: `${label} each, for ${sheet.shown(need.quantity)} wanted` };
  }
  const packs = bought.map(({ label, quantity: count }) => ({ label, count }));
  return { ...line, quantity: need.quantity, amount, packs };
}

/** Where the boards or purlins of a deck are bought. */
interface DeckShop extends Omit<StockShop, "offer"> {
  readonly catalog: PriceCatalog;
}

/** Boards or purlins of a deck, planned piece by piece on straight slopes and by their length on hipped ones. */
export function layDeckBoards(
  { pricing, catalog, system }: DeckShop,
  line: Line,
  need: Need,
  { boards, cuts }: Item,
): ShoppingLine {
  const { sheet } = pricing;
  if (!boards) return { ...line, quantity: need.quantity, add: "Add deck boards to lumber." };
  const serving = catalog.lumber.filter(({ name }) => name === boards.offer);
  const best = cheapestBoard(pricing, serving, system);
  if (!best) {
    const [thickness, width] = boards.section;
    const size = `${sheet.shown(thickness)} × ${sheet.shown(width)}`;
    return { ...line, quantity: need.quantity, add: `Add lumber of ${size} with a price to lumber.` };
  }
  if (cuts) {
    const planned = { need, cuts, kerf: exactly(LUMBER_KERF[system]), ...boardStocks(best.offer, system) };
    const label = `${line.label} (${best.offer.label})`;
    return layFromStock({ pricing, system, offer: best.offer }, { ...line, label }, planned);
  }
  sheet.title(line.name, line.label);
  const name = `price.${best.priceName}.length`;
  const stock = sheet.find(name) ?? sheet.catalog(name, best.length, { label: `stock length of ${best.offer.label}` });
  const sticks = sheet.lay(`${line.name}.sticks`, inBundles(roundUp(over(need.quantity, stock)), best.offer), {
    label: "stock lengths",
  });
  const label = `${line.label} (${best.offer.label})`;
  const { priceName, available = null } = best;
  return layBulkLine(pricing, { ...line, label }, sticks, best, { priceName, bundle: best.offer.bundle, available });
}

const inBundles = (sticks: Operand, { bundle }: LumberOffer): Operand =>
  bundle === 1 ? sticks : times(roundUp(over(sticks, number(`${bundle}`))), number(`${bundle}`));
