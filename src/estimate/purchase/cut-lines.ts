/** Lines of panels and boards that are cut from what is sold in lengths, of a roof's deck among them. */
import { lumberOffers, sameSection } from "../../catalog/look-up.js";
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import { type LumberOffer, lengthsOf, type PricedLength, pieceCost } from "../../catalog/offers/lumber.js";
import type { Price } from "../../catalog/offers/price.js";
import type { PriceCatalog } from "../../catalog/price-catalog.js";
import type { Section } from "../../catalog/reading.js";
import type { CutToLength, Need, NeedItem } from "../need.js";
import { decimal } from "../quantity/decimal.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem, marked } from "../quantity/text.js";
import { type Cell, over, type PlanProof, roundUp, sum, times } from "../sheet/expression.js";
import { plain } from "../sheet/sheet.js";
import { amountOf, layLine, type Pricing, priceCell, type ShoppingLine } from "./line.js";
import { stepsOf } from "./lumber.js";
import { wholeMoney } from "./money.js";
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
  /** Name of the offer, for its prices. */
  readonly from: string;
  readonly kerf?: Quantity;
}

/** Counted work of the plan of one covering's panels. */
const WORK = 80_000;

/** The cheapest stock lengths that panels or boards are cut from; sheet steel loses nothing to a kerf. */
export function layFromStock(shop: StockShop, line: Line, { need, cuts, stocks, from, kerf }: FromStock): ShoppingLine {
  const { pricing, system, offer } = shop;
  const { sheet, minorDigits } = pricing;
  sheet.title(line.name, line.label);
  const priced = stocks.flatMap(({ length, price, available = null }) =>
    price.kind === "priced" ? [{ length, price, available, name: marked(length, system) }] : [],
  );
  const add = `Add stock lengths with prices to ${offer.label} at ${offer.at}.`;
  if (priced.length === 0) return { ...line, quantity: need.quantity, add };
  const money = wholeMoney(
    priced.map(({ price }) => price.amount.value),
    minorDigits,
  );
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
        priceMinor: money.whole(price.amount.value),
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

/** Where deck boards are bought; the offer of the covering, where there is one, may name them. */
interface DeckShop extends Omit<StockShop, "offer"> {
  readonly catalog: PriceCatalog;
  readonly offer: CoveringOffer | undefined;
}

/** Deck boards, planned piece by piece on straight slopes and by their length on hipped ones: from the offer that the covering names where its size is wanted, else the cheapest that serves. */
export function layDeckBoards(
  { pricing, catalog, system, offer }: DeckShop,
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
