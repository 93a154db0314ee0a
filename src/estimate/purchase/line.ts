/** One line of a shopping list: a quantity, a price where one is known, and the amount. No price is never zero. */
import type { Charged, Department, Price } from "../../catalog/offers/price.js";
import type { PriceCatalog, Tax } from "../../catalog/price-catalog.js";
import type { Quantity } from "../quantity/quantity.js";
import { type Cell, given, number, type Operand, plus, roundMoney, sumOr, times } from "../sheet/expression.js";
import type { CellNotes, Sheet } from "../sheet/sheet.js";
import type { Paid } from "./product.js";

/** A line of the shopping list. Without a price it has no amount, and says what to add. */
export interface ShoppingLine {
  /** Prefix of the line's cells. */
  readonly name: string;
  readonly department: Department;
  readonly label: string;
  /** What is paid for: packs, sticks, feet, gallons. */
  readonly quantity: Cell;
  /** Lumber only: name of the offer that it is a stock length of. */
  readonly offer?: string;
  /** Price of one, where there is one price. */
  readonly price?: Cell;
  /** Rounded once to the minor unit; absent where no price is known. */
  readonly amount?: Cell;
  /** What the amount is the product of; absent where several prices add up, and where there is none. */
  readonly paid?: Paid;
  /** What to add to the catalog; absent on priced lines. */
  readonly add?: string;
  /** How many of each pack. */
  readonly packs?: readonly { readonly label: string; readonly count: Cell }[];
  /** What the packs hold beyond the need, in its unit. */
  readonly leftOver?: Cell;
  /** Lumber only: sticks of it that the plan does not cut, for defects. */
  readonly spares?: Cell;
  /** Length of each piece, where pieces are cut to order. */
  readonly each?: Cell;
  /** In words: which packs, how cut. */
  readonly note?: string;
  /** How what is bought differs from what is wanted, in words; absent where it does not. */
  readonly differences?: readonly string[];
  /** Wear, current, a machine's loss of value: a share that this work uses up, nothing to order. */
  readonly share?: boolean;
  /** Lies at hand already: it is used, and costs nothing. */
  readonly atHand?: boolean;
  /** Stage of work that uses it up, by the last part of its cell's name; absent where several do. */
  readonly stage?: string | undefined;
}

/** What pricing needs beside the line. */
export interface Pricing {
  readonly sheet: Sheet;
  readonly currency: string;
  readonly minorDigits: number;
  /** One factor on all prices. */
  readonly level: Cell;
}

/** The cell of a catalog price, laid when first asked for; undefined where there is no price. */
export function priceCell(
  { sheet }: Pick<Pricing, "sheet">,
  name: string,
  price: Price,
  label: string,
): Cell | undefined {
  if (price.kind === "unpriced") return undefined;
  return sheet.find(`price.${name}`) ?? layPrice(sheet, name, price.amount, { label, source: `catalog, ${price.at}` });
}

/** Lays a price as it was given; what comes of a rate as its formula, so that it is shown as money is and exact beneath. */
export function layPrice(sheet: Sheet, name: string, amount: Quantity | Charged, notes: CellNotes): Cell {
  if (!("rate" in amount)) return sheet.catalog(`price.${name}`, amount, notes);
  const formula = times(given(amount.rate), ...amount.on.map(given));
  return sheet.lay(`price.${name}`, formula, { ...notes, display: amount.unit });
}

/** Rounds a cost to the minor unit, at the price level. */
export function amountOf(pricing: Pricing, cost: Operand): Operand {
  return roundMoney(times(cost, pricing.level), pricing.minorDigits);
}

/** Lays quantity × price. */
export function layLine(
  pricing: Pricing,
  line: {
    readonly name: string;
    readonly department: Department;
    readonly label: string;
    readonly note?: string;
    readonly offer?: string;
    readonly stage?: string | undefined;
    readonly share?: boolean;
  },
  quantity: Cell,
  price: Price,
  priceName: string,
): ShoppingLine {
  const { sheet } = pricing;
  sheet.title(line.name, line.label);
  const cell = priceCell(pricing, priceName, price, line.label);
  if (!cell) return { ...line, quantity, add: price.kind === "unpriced" ? price.add : "" };
  const amount = sheet.lay(`${line.name}.amount`, amountOf(pricing, times(quantity, cell)), { label: "amount" });
  const paid = { measure: quantity, price: cell, level: pricing.level };
  return { ...line, quantity, price: cell, amount, paid };
}

/** Sum of the priced amounts, in the currency; lines without a price are not in it. */
export function amountsOf(pricing: Pricing, lines: readonly ShoppingLine[]): Operand {
  return sumOr(
    lines.flatMap(({ amount }) => amount ?? []),
    pricing.currency,
  );
}

/** Rates already laid of the taxes on a department. */
export function taxRatesOn({ sheet }: Pricing, taxes: readonly Tax[], department: Department): Cell[] {
  return taxes.flatMap((tax, i) => (tax.appliesTo.includes(department) ? (sheet.find(`tax.${i + 1}.rate`) ?? []) : []));
}

/** A cost with the taxes on its department. */
export function withTax(
  { pricing, catalog }: { readonly pricing: Pricing; readonly catalog: PriceCatalog },
  department: Department,
  cost: Operand,
): Operand {
  const rates = taxRatesOn(pricing, catalog.taxes, department);
  return rates.length === 0 ? cost : times(cost, plus(number("1"), ...rates));
}

/** Lays each tax once, on the taxable sum of all lines; an empty sum bears no tax line. */
export function layTaxes(pricing: Pricing, key: string, taxes: readonly Tax[], lines: readonly ShoppingLine[]): Cell[] {
  const { sheet } = pricing;
  return taxes.flatMap((tax, i) => {
    const taxable = lines.filter(({ department, amount }) => amount && tax.appliesTo.includes(department));
    if (taxable.length === 0) return [];
    const rate =
      sheet.find(`tax.${i + 1}.rate`) ??
      sheet.catalog(`tax.${i + 1}.rate`, tax.rate, { label: tax.name, source: `catalog, ${tax.at}` });
    const name = `${key}.tax.${i + 1}`;
    sheet.title(name, tax.name);
    return [
      sheet.lay(name, roundMoney(times(amountsOf(pricing, taxable), rate), pricing.minorDigits), { label: tax.name }),
    ];
  });
}
