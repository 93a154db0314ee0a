/** A stock plan by itself: from an order of pieces to the sticks to buy, priced on a sheet of its own. */
import { assumptionOf } from "../../catalog/assumptions.js";
import { type Charged, rateTimes, volumeTimes } from "../../catalog/offers/price.js";
import { type QuantityText, toQuantity, toSection } from "../../catalog/reading.js";
import { type Fault, FaultError, pointer } from "../faults.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem, marked } from "../quantity/text.js";
import { minorDigits } from "../quantity/unit.js";
import { MOST_PIECES, type StockOrder } from "../request/stock-order.js";
import { type WholeMoney, wholeMoney } from "./money.js";
import {
  type CutPiece,
  countingIn,
  type Part,
  type Steps,
  type Takers,
  type WantedPiece,
  wantedPiece,
} from "./order-pieces.js";
import { hadAlike, wholeFirst } from "./stock/joint-choice.js";
import { type Had, joinedOf, type Parts } from "./stock/joints.js";
import type { StockLength, StockProblem } from "./stock/problem.js";

/** A stick that is sold or lies at hand, beside its row in the problem. */
export interface Stick {
  readonly length: Quantity;
  /** Of one, exact; undefined where no price is known, and for what lies at hand. */
  readonly price: Quantity | Charged | undefined;
  /** What the price of one falls to where so many and more are bought, the least number first. */
  readonly bulk: readonly { readonly from: number; readonly price: Quantity | Charged }[];
  readonly owned: boolean;
  /** Where the order says so. */
  readonly at: string;
}

/** Equal pieces that are joined. */
export interface JoinedPieces {
  readonly forWant: boolean;
  /** So many in such parts, in the order they lie; lengths in the problem's steps. */
  readonly ways: readonly { readonly count: number; readonly parts: Parts }[];
}

/** An order in the form that the optimiser takes, and the way back. */
export interface OrderQuestion {
  readonly problem: StockProblem;
  readonly system: MeasureSystem;
  readonly currency: string;
  /** Of minor units, so many more digits hold every price exactly: the problem's money is whole in them. */
  readonly moneyDigits: number;
  readonly sticks: ReadonlyMap<string, Stick>;
  readonly pieces: ReadonlyMap<string, CutPiece>;
  /** Pieces that are left out from the start, for want of sticks, joined ones with all of their parts: how many, by name. */
  readonly leftOutWhole: ReadonlyMap<string, { readonly count: number; readonly mayBeJoined: boolean }>;
  /** How the pieces of each row are had. */
  readonly had: readonly Had[];
  /** Pieces that are joined, by name: for want of sticks that take them whole, where there are some. */
  readonly joined: ReadonlyMap<string, JoinedPieces>;
  /** Pieces that could be joined, were their parts allowed to be shorter or their joints more. */
  readonly withheld: ReadonlySet<string>;
  readonly kerf: Quantity;
  readonly endTrim: Quantity;
  readonly defects: Quantity;
  /** False when no length has a price: then the plan buys the least length. */
  readonly priced: boolean;
  /** Lengths on offer that are left out for want of a price. */
  readonly leftOut: readonly Stick[];
}

const likely = (name: string): Quantity => exactly(assumptionOf(name)?.likely ?? "0");
/** A 1/8 in blade. Common practice. */
const KERF = { "inch-pound": "1/8 in", metric: "3 mm" } as const;

/** Metric where the text of a length is. */
export function systemOfLength(text: QuantityText): MeasureSystem {
  return /(?:mm|cm|\dm|\bm|metres?|meters?)\s*$/.test(typeof text === "string" ? text : text.unit)
    ? "metric"
    : "inch-pound";
}

/** An order with the ways in which its pieces may be had. */
export interface JoinedOrder {
  readonly pieces: readonly WantedPiece[];
  /** The order with its pieces had so, by their place. */
  readonly question: (had: readonly Had[]) => OrderQuestion;
}

/** @throws FaultError when names or lengths stand twice, or there are too many pieces. */
export function joinedOrder(order: StockOrder): JoinedOrder {
  const system = order.measure ?? systemOfLength((order.pieces[0] as StockOrder["pieces"][number]).length);
  const currency = order.currency ?? "USD";
  const kerf = toQuantity(order.kerf ?? KERF[system], "in");
  const endTrim = order.endTrim === undefined ? likely("buy.endTrim") : toQuantity(order.endTrim, "in");
  const defects = order.defects === undefined ? exactly("0 %") : toQuantity(order.defects, "%");
  const all = offered(order, currency);
  const priced = all.some(({ price }) => price);
  const shelf = priced ? all.filter(({ price }) => price) : all;
  const steps = countingIn(system);
  const trim = steps.up(endTrim);
  const owned = leftoversOf(order, system, steps);
  const longest =
    Math.max(...[...shelf.map((one) => steps.down(one.length)), ...owned.map((one) => one.length)]) - trim;
  const takers = takersOf(order, shelf, { steps, trim });
  const pieces = order.pieces.map((piece) => wantedPiece(piece, { steps, most: longest, takers, system }));
  const rowsOf = (had: readonly Had[]) => pieces.flatMap(({ rows }, i) => rows(had[i] as Had));
  const first = wholeFirst(pieces).map((way, i) => hadAlike(pieces[i] as WantedPiece, way));
  refuse([...doubled(order, system), ...unsupported(order), ...tooSmall(shelf, steps), ...tooMany(rowsOf(first))]);
  const money = wholeMoney(
    shelf.flatMap(({ price, bulk }) => [...(price ? [price.value] : []), ...bulk.map((one) => one.price.value)]),
    minorDigits(currency) ?? 2,
  );
  refuse(tooDear(shelf, money.whole));
  const stocks = [
    ...shelf.map(({ length, price, bulk, available }): StockLength => {
      const row = { name: marked(length, system), length: steps.down(length), available };
      if (!price) return { ...row, priceMinor: steps.down(length) };
      const lower = bulk.map((one) => ({ from: one.from, priceMinor: money.whole(one.price.value) }));
      return { ...row, priceMinor: money.whole(price.value), ...(lower.length > 0 && { bulk: lower }) };
    }),
    ...owned,
  ];
  const bundle = order.bundle ?? 1;
  const sticks = new Map<string, Stick>([
    ...shelf.map((stick) => [marked(stick.length, system), stick] as const),
    ...atHand(order, system),
  ]);
  const question = (had: readonly Had[], rows = rowsOf(had)): OrderQuestion => ({
    problem: {
      pieces: rows.map(({ row }) => row),
      stocks,
      kerf: steps.up(kerf),
      endTrim: trim,
      ...(bundle > 1 ? { bundle } : {}),
    },
    system,
    currency,
    moneyDigits: money.digits,
    sticks,
    pieces: new Map(rows.map(({ row, of }) => [row.name, of])),
    had,
    leftOutWhole: new Map(
      pieces.flatMap(({ name, count: all, join }, i) => {
        const one = had[i] as Had;
        const count = all - one.whole - joinedOf(one);
        return count > 0 ? [[name, { count, mayBeJoined: join.ways.length > 0 }]] : [];
      }),
    ),
    joined: new Map(
      pieces.flatMap(({ name, mostWhole, join }, i) => {
        const ways = (had[i] as Had).joined.map(({ way, count }) => ({ count, parts: join.ways[way] as Parts }));
        return ways.length > 0 ? [[name, { forWant: mostWhole > 0, ways }]] : [];
      }),
    ),
    withheld: new Set(pieces.filter((piece) => piece.withheld).map(({ name }) => name)),
    kerf,
    endTrim,
    defects,
    priced,
    leftOut: all.filter((stick) => !shelf.includes(stick)),
  });
  return { pieces, question };
}

/** Whether sticks that can be had take a length whole, and whether they are sold without end. */
function takersOf(
  { leftovers = [] }: StockOrder,
  shelf: readonly (Stick & { readonly available: number | null })[],
  { steps, trim }: { readonly steps: Steps; readonly trim: number },
): (length: number) => Takers {
  const sticks = [
    ...shelf.map(({ length, available }) => ({ length: steps.down(length), count: available })),
    ...leftovers.map(({ length, count }) => ({ length: steps.down(toQuantity(length, "ft")), count })),
  ];
  return (long) => {
    const takers = sticks.filter(({ length, count }) => count !== 0 && length - trim >= long);
    if (takers.length === 0) return "none";
    return takers.some(({ count }) => count === null) ? "endless" : "some";
  };
}

/** What is sold, each with its own price or that of the rate. */
function offered(order: StockOrder, currency: string): (Stick & { readonly available: number | null })[] {
  return order.stocks.map(({ length: text, price, bulk, available }, i) => {
    const length = toQuantity(text, "ft");
    const own = price === undefined || price === null ? undefined : toQuantity(price, currency);
    const lower = bulk?.map((one) => ({ from: one.from, price: toQuantity(one.price, currency) }));
    return {
      length,
      price: own ?? rated(order, order.rate?.price, length, currency),
      bulk: (lower ?? (own ? [] : ratedBulk(order, length, currency))).sort((a, b) => a.from - b.from),
      owned: false,
      available: available ?? null,
      at: pointer("/stocks", i),
    };
  });
}

function ratedBulk(order: StockOrder, length: Quantity, currency: string) {
  return (order.rate?.bulk ?? []).flatMap(({ from, price }) => {
    const each = rated(order, price, length, currency);
    return each ? [{ from, price: each }] : [];
  });
}

function rated(
  { rate }: StockOrder,
  price: QuantityText | null | undefined,
  length: Quantity,
  currency: string,
): Charged | undefined {
  if (!rate || !price) return undefined;
  if (rate.by === "length") return rateTimes(toQuantity(price, `${currency}/ft`), length);
  return volumeTimes(toQuantity(price, `${currency}/bf`), rate.measure, toSection(rate.section), length);
}

const leftoverName = (length: Quantity, system: MeasureSystem): string => `at hand, ${marked(length, system)}`;

function leftoversOf({ leftovers = [] }: StockOrder, system: MeasureSystem, steps: Steps): StockLength[] {
  return leftovers.map(({ length: text, count }) => {
    const length = toQuantity(text, "ft");
    const name = leftoverName(length, system);
    return { name, length: steps.down(length), priceMinor: 0, available: count, owned: true };
  });
}

function atHand({ leftovers = [] }: StockOrder, system: MeasureSystem): [string, Stick][] {
  return leftovers.map(({ length: text }, i) => {
    const length = toQuantity(text, "ft");
    const stick = { length, price: undefined, bulk: [], owned: true, at: pointer("/leftovers", i) };
    return [leftoverName(length, system), stick];
  });
}

/** Lengths that are marked alike are the same length. */
function doubled({ pieces, stocks, leftovers = [] }: StockOrder, system: MeasureSystem): Fault[] {
  const again = <T>(list: readonly T[], at: string, field: string, key: (one: T) => string, what: string): Fault[] => {
    const keys = list.map(key);
    return keys.flatMap((name, i): Fault[] => {
      if (keys.indexOf(name) === i) return [];
      const wrong = `The same ${what} stands twice.`;
      return [{ code: "duplicate-name", at: pointer(at, i, field), wrong, cure: "Put the two into one row." }];
    });
  };
  const length = ({ length: text }: { readonly length: QuantityText }) => marked(toQuantity(text, "ft"), system);
  return [
    ...again(pieces, "/pieces", "name", ({ name }) => name, "name"),
    ...again(stocks, "/stocks", "length", length, "length"),
    ...again(leftovers, "/leftovers", "length", length, "length"),
  ];
}

/** What is wanted of parts and joints says nothing of a piece that is never joined. */
function unsupported({ pieces }: StockOrder): Fault[] {
  return pieces.flatMap(({ supports, leastPart, mostJoints }, i): Fault[] => {
    if (supports !== undefined || (leastPart === undefined && mostJoints === undefined)) return [];
    const wrong = "Without supports the piece is not joined: nothing is there to say of its parts and joints.";
    const cure = `Give the distance of its supports, or leave out ${leastPart === undefined ? "mostJoints" : "leastPart"}.`;
    return [{ code: "missing-field", at: pointer("/pieces", i, "supports"), wrong, cure }];
  });
}

function tooSmall(shelf: readonly Stick[], steps: Steps): Fault[] {
  const small = shelf.filter(({ length }) => steps.down(length) < 1);
  return small.map(({ at }) => {
    const wrong = "The length is less than a saw can set.";
    return { code: "out-of-range", at: pointer(at, "length"), wrong, cure: "Give the length of the stick." };
  });
}

/** So that the cost of all sticks stays a whole number without rounding. */
const MOST_MONEY = 1e12;

function tooDear(shelf: readonly Stick[], whole: WholeMoney["whole"]): Fault[] {
  return shelf.flatMap(({ price, bulk, at }): Fault[] => {
    if (!price || [price, ...bulk.map((one) => one.price)].every(({ value }) => whole(value) <= MOST_MONEY)) return [];
    const wrong = "The price is more than makes sense for a stick.";
    return [{ code: "out-of-range", at: pointer(at, "price"), wrong, cure: "Give the price of one stick." }];
  });
}

function tooMany(cut: readonly Part[]): Fault[] {
  const count = cut.reduce((sum, { row }) => sum + row.count, 0);
  if (count <= MOST_PIECES) return [];
  const wrong = `There are ${count} pieces to cut, joints counted; the limit is ${MOST_PIECES}.`;
  return [{ code: "too-large", at: "/pieces", wrong, cure: "Ask for fewer at a time." }];
}

function refuse(faults: readonly Fault[]): void {
  if (faults.length > 0) throw new FaultError(faults);
}
