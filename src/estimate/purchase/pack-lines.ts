/** Lines bought in packs, boxes or cans: the least-cost combination as a step table over the need. */
import type { Department, Price } from "../../catalog/offers/price.js";
import { type Decimal, decimal } from "../quantity/decimal.js";
import { inUnit, type Quantity, quantity } from "../quantity/quantity.js";
import { pretty } from "../quantity/text.js";
import { NUMBER, unit } from "../quantity/unit.js";
import { wholeNumber } from "../quantity/whole.js";
import {
  type Cell,
  count,
  least,
  minus,
  number,
  type Operand,
  over,
  type StepTable,
  steps,
  sum,
  times,
  when,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { amountOf, type Pricing, type ShoppingLine } from "./line.js";
import { type WholeMoney, wholeMoney } from "./money.js";
import { leastCostPacks, type PackTable, packTable } from "./packs.js";

/** One size on the shelf. */
export interface SizedPack {
  readonly label: string;
  /** What it holds, in the dimension of the need; a plain number where things are counted. */
  readonly holds: Quantity;
  readonly price: Price;
  /** A bulk break: the price holds for so many of it and more. */
  readonly from?: number;
}

/** Needs up to here are tabled exactly at least; past it the best pack repeats. */
const TABLED = 2000;
/** Can sizes are told apart to a thousandth of a gallon or litre. */
const PARTS = 1000;

/** A pack with a price. */
type PricedPack = SizedPack & { readonly amount: Quantity };

/** The packs on one shelf as a table from need to purchase. */
interface Shelf {
  readonly packs: readonly PricedPack[];
  readonly table: PackTable;
  /** Size of one step of the table, in the dimension of the need. */
  readonly step: Quantity;
  readonly money: WholeMoney;
  /** The table as rows of the sheet: cost, then how many of each pack; beyond the rows the best pack repeats. */
  readonly rows: () => Pick<StepTable, "rows" | "beyond">;
}

/** What packs must cover, where that is more than one quantity: in one of several ways, each need by packs of its own. */
export interface PackNeed {
  /** What people are told is needed. */
  readonly quantity: Cell;
  /** One or two; the cheaper is bought, the first of equals. */
  readonly ways: readonly (readonly { readonly count: number; readonly need: Operand }[])[];
}

/** Lays a need bought in packs; without any priced pack, a line without a price. */
export function layPackLine(
  pricing: Pricing,
  line: { readonly name: string; readonly department: Department; readonly label: string },
  wanted: Cell | PackNeed,
  packs: readonly SizedPack[],
  add: string,
): ShoppingLine {
  const { sheet, minorDigits, currency } = pricing;
  sheet.title(line.name, line.label);
  const need = "ways" in wanted ? wanted.quantity : wanted;
  const shelf = shelfOf(packs, minorDigits);
  if (!shelf) {
    const unpriced = packs.map(({ price }) => price).find((price) => price.kind === "unpriced");
    return { ...line, quantity: need, add: unpriced?.kind === "unpriced" ? unpriced.add : add };
  }
  const rows = stepTable(line.name, shelf, currency);
  const column = "ways" in wanted ? columnOf(sheet, line.name, wanted, { rows, shelf }) : columnFor(need, rows, shelf);
  const amount = sheet.lay(`${line.name}.amount`, amountOf(pricing, column(0)), { label: "amount" });
  const counts = shelf.packs.map(({ label, holds }, i) => ({
    label,
    holds,
    count: sheet.lay(`${line.name}.pack${i + 1}`, column(i + 1), {
      label: `packs of ${label}`,
      fixed: followsFrom(need),
    }),
  }));
  const bought = { ...line, quantity: need, amount, packs: counts.map(({ label, count }) => ({ label, count })) };
  // Of what laps, how much of a piece is left over is not told: it depends on where pieces meet.
  if ("ways" in wanted) return bought;
  const held = counts.map(({ holds, count }) => times(count, number(textOf(holds))));
  const leftOver = sheet.lay(
    `${line.name}.leftOver`,
    minus(held.length === 1 ? (held[0] as Operand) : sum(held), need),
    {
      label: "left over",
      display: need.display,
      fixed: followsFrom(need),
    },
  );
  return { ...bought, leftOver };
}

/** What a need would cost in packs, rounded as a line of that name is; undefined without any priced pack. */
export function costInPacks(
  pricing: Pricing,
  name: string,
  need: Operand,
  packs: readonly SizedPack[],
): Operand | undefined {
  const shelf = shelfOf(packs, pricing.minorDigits);
  return shelf && amountOf(pricing, columnFor(need, stepTable(name, shelf, pricing.currency), shelf)(0));
}

/** What is paid must be for the packs told, so they are changed together, by the need. */
const followsFrom = ({ name }: Cell) => ({
  why: "How many packs are bought, and what is left of them, follows from how much is needed.",
  instead: `Override ${name}, the need, or the amount of the line.`,
});

/** A column of the table of packs: 0 is the cost, 1 and on the count of each pack. */
type Column = (at: number) => Operand;

const columnFor =
  (need: Operand, rows: StepTable, { step }: Shelf): Column =>
  (at) =>
    steps(over(need, number(textOf(step))), rows, at);

/** The columns of the cheaper way; what the ways cost is laid, so that people see which it is. */
function columnOf(
  sheet: Sheet,
  name: string,
  { ways }: PackNeed,
  { rows, shelf }: { readonly rows: StepTable; readonly shelf: Shelf },
): Column {
  const [first, second] = ways.map((way): Column => {
    const parts = way.map(({ count: runs, need }) => ({ runs, column: columnFor(need, rows, shelf) }));
    return (at) => {
      const items = parts.map(({ runs, column }) => (runs === 1 ? column(at) : times(count(runs), column(at))));
      return items.length === 1 ? (items[0] as Operand) : sum(items);
    };
  });
  if (!first) throw new Error(`${name} is needed in no way`);
  if (!second) return first;
  const afresh = sheet.lay(`${name}.afresh`, first(0), { label: "every edge begun with a new piece" });
  const onward = sheet.lay(`${name}.onward`, second(0), { label: "offcuts used along the next edge" });
  return (at) => (at === 0 ? least(afresh, onward) : when(afresh, "above", onward, second(at), first(at)));
}

/** What a need costs at least in these packs, at their own prices; undefined where none has one. */
export function leastCost(packs: readonly SizedPack[], need: Quantity, minorDigits: number): Decimal | undefined {
  const shelf = shelfOf(packs, minorDigits);
  if (!shelf) return undefined;
  const wanted = wholeNumber(need.value.dividedBy(shelf.step.value).toDecimalPlaces(9).ceil());
  return decimal(leastCostPacks(shelf.table, wanted).costMinor).dividedBy(decimal(10).pow(shelf.money.digits));
}

/** By the packs on it: every mix that is tried buys its finish from the same shelf. */
const shelves = new WeakMap<readonly SizedPack[], Shelf | undefined>();

function shelfOf(packs: readonly SizedPack[], minorDigits: number): Shelf | undefined {
  if (!shelves.has(packs)) shelves.set(packs, filledShelf(packs, minorDigits));
  return shelves.get(packs);
}

function filledShelf(packs: readonly SizedPack[], minorDigits: number): Shelf | undefined {
  const priced = packs.flatMap((pack): PricedPack[] =>
    pack.price.kind === "priced" ? [{ ...pack, amount: pack.price.amount }] : [],
  );
  if (priced.length === 0) return undefined;
  const { sizes, step } = wholeSizes(priced);
  const money = wholeMoney(
    priced.map(({ amount }) => amount.value),
    minorDigits,
  );
  const lots = priced.flatMap(({ label, amount, from }, pack) =>
    lotsFrom(from).map((count) => ({
      lot: { pack, count },
      name: label,
      size: (sizes[pack] as number) * count,
      priceMinor: money.whole(amount.value) * count,
    })),
  );
  const table = packTable(lots, TABLED);
  if (!table) return undefined;
  const countsOf = (counts: readonly number[]) =>
    priced.map((_, at) =>
      decimal(counts.reduce((sum, times, i) => (lots[i]?.lot.pack === at ? sum + times * lots[i].lot.count : sum), 0)),
    );
  const columns = (whole: number, counts: readonly number[]) => [
    decimal(whole).dividedBy(decimal(10).pow(money.digits)),
    ...countsOf(counts),
  ];
  const { beyond } = table;
  const repeated = table.packs.map((_, i) => (i === beyond.pack ? 1 : 0));
  const laid = () => ({
    rows: table.rows
      .filter((row) => row.from > 0)
      .map((row) => ({ from: row.from, columns: columns(row.costMinor, row.counts) })),
    beyond: { upTo: table.reach, size: beyond.size, columns: columns(beyond.priceMinor, repeated) },
  });
  let once: ReturnType<typeof laid> | undefined;
  const rows = () => {
    once ??= laid();
    return once;
  };
  return { packs: priced, table, step, money, rows };
}

/**
 * Lots in which a pack is bought: one, or, where its price holds from a number on, that number to twice it less one. Any
 * greater number is a sum of those, and no smaller one is.
 */
const lotsFrom = (from: number | undefined): readonly number[] =>
  from === undefined ? [1] : Array.from({ length: from }, (_, i) => from + i);

/** A quantity as it was written, for a constant of a formula. */
function textOf(of: Quantity): string {
  const written = of.written ?? of.unit;
  return `${inUnit(of, written).toFixed()} ${written.symbol}`.trim();
}

/** Pack sizes as whole multiples of one step, and the step. */
function wholeSizes(packs: readonly { readonly holds: Quantity }[]): {
  readonly sizes: readonly number[];
  readonly step: Quantity;
} {
  const written = packs[0]?.holds.written ?? packs[0]?.holds.unit ?? NUMBER;
  const counted = written.symbol === "";
  const parts = packs.map(({ holds }) =>
    wholeNumber(
      inUnit(holds, written)
        .times(counted ? 1 : PARTS)
        .toDecimalPlaces(0),
    ),
  );
  const step = parts.reduce(gcd);
  const size = decimal(step).dividedBy(counted ? 1 : PARTS);
  return { sizes: parts.map((part) => part / step), step: quantity(size, written) };
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** The pack table as columns of the sheet. */
function stepTable(name: string, { packs, rows }: Shelf, currency: string): StepTable {
  return {
    name: `${name}.packs`,
    stepUnit: NUMBER,
    columns: [{ name: "cost", unit: unit(currency) }, ...packs.map(({ label }) => ({ name: label, unit: NUMBER }))],
    ...rows(),
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
