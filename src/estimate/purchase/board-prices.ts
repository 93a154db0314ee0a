/** Prices of the lengths that an offer of lumber comes in: the names of their cells, and which offer is the cheapest by length. */
import { type LumberOffer, type PricedLength, pricedLengthsOf } from "../../catalog/offers/lumber.js";
import type { Decimal } from "../quantity/decimal.js";
import { type MeasureSystem, marked } from "../quantity/text.js";
import { type LevelPrice, priceInForce } from "./bulk.js";
import { type Pricing, priceCell } from "./line.js";
import type { WholeMoney } from "./money.js";
import type { StockLength } from "./stock/problem.js";

/**
 * Each length of a question as a part of the names of cells: `10' 6"` is `10_6`. Where two lengths come to the same, as
 * `1' 1/2"` and `1 1/2"` do, the later ones get a number.
 */
export function lengthSlugs({
  lengths,
}: {
  readonly lengths: ReadonlyMap<string, Decimal>;
}): ReadonlyMap<string, string> {
  const taken = new Map<string, number>();
  return new Map(
    [...lengths.keys()].map((length) => {
      const slug = length.replaceAll(/[^0-9A-Za-z]+/g, "_").replaceAll(/^_|_$/g, "");
      const before = taken.get(slug) ?? 0;
      taken.set(slug, before + 1);
      return [length, before === 0 ? slug : `${slug}_no${before + 1}`];
    }),
  );
}

/** Boards of an offer of lumber, at the prices by which lumber of it is bought elsewhere. */
export function boardStocks(
  offer: LumberOffer,
  system: MeasureSystem,
): {
  readonly stocks: readonly PricedLength[];
  readonly priceName: (length: string) => string;
  readonly bundle: number;
} {
  const stocks = pricedLengthsOf(offer);
  const lengths = new Map(stocks.map(({ length }) => [marked(length, system), length.value]));
  const slugs = lengthSlugs({ lengths });
  return { stocks, priceName: (length) => `${offer.name}-${slugs.get(length) ?? length}`, bundle: offer.bundle };
}

/** Prices in force as the optimiser takes them. */
export function stockPrices(
  [first, ...lower]: readonly LevelPrice[],
  whole: WholeMoney["whole"],
): Pick<StockLength, "priceMinor" | "from" | "bulk"> {
  if (!first) throw new Error("what has no price is not planned by its price");
  return {
    priceMinor: whole(first.price),
    ...(first.from > 1 ? { from: first.from } : {}),
    ...(lower.length > 0 && {
      bulk: lower.map(({ from, price }) => ({ from, priceMinor: whole(price) })),
    }),
  };
}

/** A length of an offer, and what a millimetre of it costs in force. */
interface BoardPrice extends PricedLength {
  readonly offer: LumberOffer;
  /** Of the cell of its price, without `price.` before it. */
  readonly priceName: string;
  readonly rate: Decimal;
}

/**
 * The length that costs least by the millimetre, what the user puts in the place of its price in the reckoning; of equals the first.
 * Only the prices that decide are laid: the cheapest one's, and those that the user has changed.
 */
export function cheapestBoard(
  pricing: Pick<Pricing, "sheet">,
  offers: readonly LumberOffer[],
  system: MeasureSystem,
): BoardPrice | undefined {
  const { sheet } = pricing;
  const rated = offers.flatMap((offer) => {
    const { stocks, priceName } = boardStocks(offer, system);
    return stocks.flatMap((one): BoardPrice[] => {
      const name = marked(one.length, system);
      const each = priceInForce(pricing, priceName(name), one.price, `${offer.label}, ${name}`);
      const board = { ...one, offer, priceName: priceName(name) };
      return each ? [{ ...board, rate: each.dividedBy(one.length.value) }] : [];
    });
  });
  const [first, ...others] = rated;
  const best = others.reduce((low, one) => (low && one.rate.lt(low.rate) ? one : low), first);
  if (!best || offers.length < 2) return best;
  const label = `${best.offer.label}, ${marked(best.length, system)}`;
  const cell = priceCell({ sheet }, best.priceName, best.price, label);
  if (cell) sheet.decide(cell);
  return best;
}
