/** Lines bought in packs, boxes or cans: the least-cost combination as a step table over the need. */
import type { Department, Price } from "../../catalog/offers/price.js";
import { decimal } from "../quantity/decimal.js";
import { inUnit, type Quantity } from "../quantity/quantity.js";
import { pretty } from "../quantity/text.js";
import { NUMBER, unit } from "../quantity/unit.js";
import { type Cell, number, type Operand, over, type StepTable, steps } from "../sheet/expression.js";
import { amountOf, type Pricing, type ShoppingLine } from "./line.js";
import { type PackTable, packTable } from "./packs.js";

/** One size on the shelf. */
export interface SizedPack {
  readonly label: string;
  /** What it holds, in the dimension of the need; a plain number where things are counted. */
  readonly holds: Quantity;
  readonly price: Price;
}

/** Needs up to here are tabled exactly at least; past it the best pack repeats. */
const TABLED = 2000;
/** Can sizes are told apart to a thousandth of a gallon or litre. */
const PARTS = 1000;

/** Lays a need bought in packs; without any priced pack, a line without a price. */
export function layPackLine(
  pricing: Pricing,
  line: { readonly name: string; readonly department: Department; readonly label: string },
  need: Cell,
  packs: readonly SizedPack[],
  add: string,
): ShoppingLine {
  const { sheet, minorDigits, currency } = pricing;
  sheet.title(line.name, line.label);
  const priced = packs.flatMap((pack) =>
    pack.price.kind === "priced" ? [{ ...pack, amount: pack.price.amount }] : [],
  );
  const first = priced[0];
  if (!first) {
    const unpriced = packs.map(({ price }) => price).find((price) => price.kind === "unpriced");
    return { ...line, quantity: need, add: unpriced?.kind === "unpriced" ? unpriced.add : add };
  }
  const shelf = wholeSizes(priced);
  const table = packTable(
    priced.map(({ label, amount }, i) => ({
      name: label,
      size: shelf.sizes[i] as number,
      priceMinor: amount.value.times(decimal(10).pow(minorDigits)).toDecimalPlaces(0).toNumber(),
    })),
    TABLED,
  );
  if (!table) return { ...line, quantity: need, add };
  const rows = stepTable(line.name, table, currency, minorDigits);
  const amountOfSteps: Operand = over(need, shelf.step);
  const amount = sheet.lay(`${line.name}.amount`, amountOf(pricing, steps(amountOfSteps, rows, 0)), {
    label: "amount",
  });
  const counts = priced.map(({ label }, i) => ({
    label,
    count: sheet.lay(`${line.name}.pack${i + 1}`, steps(amountOfSteps, rows, i + 1), { label: `packs of ${label}` }),
  }));
  return { ...line, quantity: need, amount, packs: counts };
}

/** Pack sizes as whole multiples of one step, and the step as a constant of the need's dimension. */
function wholeSizes(packs: readonly { readonly holds: Quantity }[]): {
  readonly sizes: readonly number[];
  readonly step: Operand;
} {
  const written = packs[0]?.holds.written ?? packs[0]?.holds.unit ?? NUMBER;
  const counted = written.symbol === "";
  const parts = packs.map(({ holds }) =>
    inUnit(holds, written)
      .times(counted ? 1 : PARTS)
      .toDecimalPlaces(0)
      .toNumber(),
  );
  const step = parts.reduce(gcd);
  const size = decimal(step).dividedBy(counted ? 1 : PARTS);
  return { sizes: parts.map((part) => part / step), step: number(`${size.toFixed()} ${written.symbol}`.trim()) };
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** The pack table as columns of the sheet: cost, then how many of each pack. */
function stepTable(name: string, table: PackTable, currency: string, minorDigits: number): StepTable {
  const money = (minor: number) => decimal(minor).dividedBy(decimal(10).pow(minorDigits));
  const columns = (costMinor: number, counts: readonly number[]) => [
    money(costMinor),
    ...counts.map((count) => decimal(count)),
  ];
  const { beyond } = table;
  const repeated = table.packs.map((_, i) => (i === beyond.pack ? 1 : 0));
  return {
    name: `${name}.packs`,
    stepUnit: NUMBER,
    columns: [
      { name: "cost", unit: unit(currency) },
      ...table.packs.map((pack) => ({ name: pack.name, unit: NUMBER })),
    ],
    rows: table.rows
      .filter((row) => row.from > 0)
      .map((row) => ({ from: row.from, columns: columns(row.costMinor, row.counts) })),
    beyond: { upTo: table.reach, size: beyond.size, columns: columns(beyond.priceMinor, repeated) },
  };
}

/** Sold by the piece. */
export const LOOSE = "loose";

/** A pack's content in words: `1 gal`, `box of 100`; what is sold by the piece is loose. */
export function packLabel(holds: Quantity): string {
  const written = holds.written ?? holds.unit;
  const size = inUnit(holds, written).toDecimalPlaces(3).toFixed();
  if (written.symbol === "" && holds.value.eq(1)) return LOOSE;
  return written.symbol === "" ? `box of ${size}` : `${size} ${pretty(written)}`;
}
