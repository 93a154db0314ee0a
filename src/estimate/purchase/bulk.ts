/**
 * Bulk prices on the sheet. Of what costs p each, and p′ each from F on, n cost the lesser of n × p and the greater of n and F times
 * p′: where the greater number costs less than the one that is needed, it is bought. All of it stays live to the prices.
 */
import { type BulkPrice, type Charged, chargedAmong, type Price } from "../../catalog/offers/price.js";
import type { Decimal } from "../quantity/decimal.js";
import { type Cell, count, greatest, least, minus, type Operand, times, when } from "../sheet/expression.js";
import { amountOf, type Pricing, priceCell, type ShoppingLine } from "./line.js";
import { wholeBundles } from "./stock/paid.js";

/** The prices of one thing, by the number that is bought. */
export interface Prices {
  readonly price: Price;
  readonly bulk: readonly BulkPrice[];
}

/** What bounds the number that may be bought. */
interface Lots {
  /** Sold in whole bundles of so many; one by one when absent. */
  readonly bundle?: number;
  /** How many can be had; null or absent = any number. */
  readonly available?: number | null;
}

/** A price of one that holds for so many and more. */
export interface LevelCell {
  readonly from: number;
  readonly price: Cell;
}

/** The cells of all prices, least number first, laid when first asked for; empty where there is none. */
export function levelCells(
  pricing: Pick<Pricing, "sheet">,
  name: string,
  { price, bulk }: Prices,
  label: string,
): LevelCell[] {
  const one = priceCell(pricing, name, price, label);
  return [
    ...(one ? [{ from: 1, price: one }] : []),
    ...bulk.flatMap(({ from, price: lower }) => {
      const cell = priceCell(pricing, `${name}-from${from}`, lower, `${label}, from ${from} on`);
      return cell ? [{ from, price: cell }] : [];
    }),
  ];
}

/** A price of one in force, that holds for so many and more. */
export interface LevelPrice {
  readonly from: number;
  readonly price: Decimal;
}

/** The same prices in force, without a cell for each: only those that the user has changed are laid, and decided. */
export function levelsInForce(
  pricing: Pick<Pricing, "sheet">,
  name: string,
  { price, bulk }: Prices,
  label: string,
): LevelPrice[] {
  const all = [{ from: 1, price, name }, ...bulk.map((one) => ({ ...one, name: `${name}-from${one.from}` }))];
  return all.flatMap(({ from, price: each, name: cellName }) => {
    const known = priceInForce(pricing, cellName, each, from === 1 ? label : `${label}, from ${from} on`);
    return known ? [{ from, price: known }] : [];
  });
}

/** A price as the user has put it, its cell laid and decided, else as the catalog has it; undefined where there is none. */
export function priceInForce(
  pricing: Pick<Pricing, "sheet">,
  name: string,
  price: Price,
  label: string,
): Decimal | undefined {
  if (price.kind === "unpriced") return undefined;
  if (!pricing.sheet.isOverridden(`price.${name}`)) return price.amount.value;
  const cell = priceCell(pricing, name, price, label);
  return cell && pricing.sheet.decide(cell);
}

/** What is bought of a thing, and the price that holds for so many. */
interface Bought {
  readonly quantity: Cell;
  readonly price: Cell;
  /** Absent where no number is cheaper by buying more. */
  readonly leftOver?: Cell;
}

/**
 * The number that is bought for a need, and its price; undefined where there is no price.
 * @param need - A whole number, in whole bundles where it is sold so.
 */
export function layBought(
  { sheet }: Pick<Pricing, "sheet">,
  name: string,
  need: Cell,
  all: readonly LevelCell[],
  { bundle = 1, available = null }: Lots,
): Bought | undefined {
  const levels = all.filter(({ from }) => available === null || wholeBundles(from, bundle) <= available);
  const [first, ...lower] = levels;
  if (!first) return undefined;
  if (lower.length === 0 && first.from === 1) return { quantity: need, price: first.price };
  const asked = levels.map(({ from, price }, i): Choice => {
    const many = from === 1 ? need : greatest(need, count(wholeBundles(from, bundle)));
    // What is sold from a number on only is not bought where none is needed.
    const bought = from > 1 && i === 0 ? when(need, "above", count(0), many, count(0)) : many;
    return { number: bought, price, cost: times(bought, price) };
  });
  const quantity = sheet.lay(`${name}.bought`, cheapest(asked, "number"), {
    label: "bought, a greater number where its bulk price makes it cheaper",
  });
  const price = sheet.lay(`${name}.price`, cheapest(asked, "price"), { label: "price of one, for so many" });
  const leftOver = sheet.lay(`${name}.leftOver`, minus(quantity, need), {
    label: "left over",
    display: need.display,
    fixed: { why: "What is left over follows from what is bought.", instead: `Override ${name}.bought.` },
  });
  return { quantity, price, leftOver };
}

interface Choice {
  readonly number: Operand;
  readonly price: Cell;
  readonly cost: Operand;
}

/** Of the cheapest choice, of equals the first: the smaller number. */
function cheapest([first, ...others]: readonly Choice[], which: "number" | "price"): Operand {
  let { cost, [which]: chosen } = first as { cost: Operand; number: Operand; price: Operand };
  for (const other of others) {
    chosen = when(cost, "above", other.cost, other[which], chosen);
    cost = least(cost, other.cost);
  }
  return chosen;
}

/** Lays the line of what has one price, or less from a number on. Without a price it says what to add. */
export function layBulkLine(
  pricing: Pricing,
  line: Omit<ShoppingLine, "quantity">,
  need: Cell,
  prices: Prices,
  { priceName, ...lots }: Lots & { readonly priceName: string },
): ShoppingLine {
  const { sheet } = pricing;
  sheet.title(line.name, line.label);
  const bought = layBought(pricing, line.name, need, levelCells(pricing, priceName, prices, line.label), lots);
  if (!bought) return { ...line, quantity: need, add: prices.price.kind === "unpriced" ? prices.price.add : "" };
  const cost = times(bought.quantity, bought.price);
  const amount = sheet.lay(`${line.name}.amount`, amountOf(pricing, cost), { label: "amount" });
  const paid = { measure: bought.quantity, price: bought.price, level: pricing.level, charged: chargesOf(prices) };
  return { ...line, ...bought, amount, paid };
}

/** Which of a thing's prices come of a rate, by the number that they hold from. */
export const chargesOf = ({ price, bulk }: Prices): Charged[] =>
  chargedAmong(
    [price, ...bulk.map((lower) => lower.price)].flatMap((one) => (one.kind === "priced" ? one.amount : [])),
  );
