/** Which pieces of a stock order are joined, against every way to have each of them whole, joined or left out. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { orderPlanner } from "../../src/api/planners.js";
import { planStockOrder } from "../../src/estimate/purchase/stock-order-plan.js";
import type { StockOrder } from "../../src/estimate/request/stock-order.js";
import { aside } from "../../src/estimate/sheet/aside.js";

interface Sticks {
  readonly feet: number;
  readonly price: number;
  readonly available: number | undefined;
  /** Price of each where two or more are bought. */
  readonly two: number | undefined;
}

interface Piece {
  readonly feet: number;
  readonly count: number;
  readonly apart: number | undefined;
  /** Of a part, where it is joined. */
  readonly least?: number | undefined;
  readonly mostJoints?: number | undefined;
}

/** In feet and dollars; no trim. */
interface Order {
  readonly pieces: readonly Piece[];
  readonly sticks: readonly Sticks[];
  /** At hand, for nothing. */
  readonly leftovers: readonly { readonly feet: number; readonly count: number }[];
  readonly kerf: number;
  readonly bundle: number;
}

/** All that may be cut, what is at hand first. */
const allSticks = ({ sticks, leftovers }: Order): readonly (Sticks & { readonly owned: boolean })[] => [
  ...leftovers.map(({ feet, count }) => ({ feet, price: 0, available: count, two: undefined, owned: true })),
  ...sticks.map((stick) => ({ ...stick, owned: false })),
];

/** What so many sticks come to, more of them where they are cheaper so; Infinity where there are not so many. */
function paidFor(
  { price, two, available = 99, owned }: ReturnType<typeof allSticks>[number],
  count: number,
  bundle: number,
): number {
  if (owned) return count <= available ? 0 : Number.POSITIVE_INFINITY;
  const bought = (least: number): number => Math.ceil(least / bundle) * bundle;
  const ways = [count, Math.max(2, count)].map(bought).filter((all) => all <= available);
  return count === 0 ? 0 : Math.min(...ways.map((all) => all * (all >= 2 ? (two ?? price) : price)));
}

interface Best {
  readonly left: number;
  readonly joined: number;
  readonly cost: number;
}

const asAsked = ({ pieces, sticks, leftovers, kerf, bundle }: Order): StockOrder => ({
  pieces: pieces.map(({ feet, count, apart, least, mostJoints }, i) => ({
    ...{ name: `p${i}`, length: `${feet} ft`, count },
    ...(apart !== undefined && { supports: `${apart} ft` }),
    ...(apart !== undefined && least !== undefined && { leastPart: `${least} ft` }),
    ...(apart !== undefined && mostJoints !== undefined && { mostJoints }),
  })),
  stocks: sticks.map(({ feet, price, available, two }) => ({
    ...{ length: `${feet} ft`, price: `$${price}` },
    ...(available !== undefined && { available }),
    ...(two !== undefined && { bulk: [{ from: 2, price: `$${two}` }] }),
  })),
  ...(leftovers.length > 0 && { leftovers: leftovers.map(({ feet, count }) => ({ length: `${feet} ft`, count })) }),
  bundle,
  kerf: `${kerf * 12} in`,
  endTrim: "0 in",
});

/** Least cost of pieces out of sticks, each piece put on a stick begun or on a new one; `below` where none is less or sticks lack. */
function leastCost(pieces: readonly number[], order: Order, below: number): number {
  const { kerf, bundle } = order;
  const sticks = allSticks(order);
  const sorted = pieces.toSorted((a, b) => b - a);
  const used = sticks.map(() => 0);
  let best = below;
  const put = (i: number, begun: readonly number[]): void => {
    const cost = sticks.reduce((sum, stick, k) => sum + paidFor(stick, used[k] as number, bundle), 0);
    if (cost >= best) return;
    const piece = sorted[i];
    if (piece === undefined) {
      best = cost;
      return;
    }
    // The last cut may fall on the stick's end: as if stick and piece were a kerf longer.
    const takes = piece + kerf;
    for (const room of new Set(begun))
      if (room >= takes) put(i + 1, begun.toSpliced(begun.indexOf(room), 1, room - takes));
    for (const [k, { feet }] of sticks.entries()) {
      if (feet < piece) continue;
      used[k] = (used[k] as number) + 1;
      put(i + 1, [...begun, feet - piece]);
      used[k] = (used[k] as number) - 1;
    }
  };
  put(0, []);
  return best;
}

/** Parts of a joined piece, each up to the longest stick, every joint on a support; those of another order are the same. */
function joinings({ feet, apart, least = 0, mostJoints = 99 }: Piece, longest: number): readonly (readonly number[])[] {
  if (apart === undefined) return [];
  const found: number[][] = [];
  const cut = (from: number, parts: readonly number[]): void => {
    if (feet - from <= longest && parts.length > 0) found.push([...parts, feet - from]);
    for (let to = from + apart; to < feet && to - from <= longest; to += apart) cut(to, [...parts, to - from]);
  };
  cut(0, []);
  const wanted = found.filter((parts) => parts.length <= mostJoints + 1 && parts.every((part) => part >= least));
  return [...new Map(wanted.map((parts) => [parts.toSorted((a, b) => a - b).join(), parts])).values()];
}

/** So many pieces, each joined some way or other. */
const several = (ways: readonly (readonly number[])[], many: number): readonly (readonly number[])[] =>
  many === 0 ? [[]] : ways.flatMap((way, i) => several(ways.slice(i), many - 1).map((others) => [...way, ...others]));

const isTakenWhole = (order: Order, feet: number): boolean =>
  allSticks(order).some((stick) => stick.feet >= feet && stick.available !== 0);

/** Fewest pieces left out, then fewest joined that a stick would take whole, then least cost. */
function byTrial(order: Order): Best {
  const longest = Math.max(...allSticks(order).map(({ feet }) => feet));
  let best: Best = { left: 99, joined: 99, cost: 0 };
  const choose = (i: number, parts: readonly number[], left: number, joined: number): void => {
    if (left > best.left || (left === best.left && joined > best.joined)) return;
    const piece = order.pieces[i];
    if (!piece) {
      const tie = left === best.left && joined === best.joined;
      const below = tie ? best.cost : Number.POSITIVE_INFINITY;
      const cost = leastCost(parts, order, below);
      if (cost < below) best = { left, joined, cost };
      return;
    }
    const { feet, count } = piece;
    const ways = joinings(piece, longest);
    const vice = isTakenWhole(order, feet) ? 1 : 0;
    for (let whole = count; whole >= 0; whole--)
      for (let none = 0; whole + none <= count; none++) {
        const many = count - whole - none;
        const begun = [...parts, ...Array.from({ length: whole }, () => feet)];
        if (many === 0) choose(i + 1, begun, left + none, joined);
        else
          for (const each of several(ways, many)) choose(i + 1, [...begun, ...each], left + none, joined + vice * many);
      }
  };
  choose(0, [], 0, 0);
  return best;
}

function asPlanned(order: Order, planner: Awaited<ReturnType<typeof orderPlanner>>) {
  const { question, short, plan, total, proven } = planStockOrder(asAsked(order), planner);
  const joined = new Map<string, number>();
  for (const { pieces, times } of plan)
    for (const name of pieces) {
      const { piece, part } = question.pieces.get(name) ?? {};
      const feet = order.pieces[Number(piece?.slice(1))]?.feet ?? 0;
      if (piece && part?.startsWith("1 of") && isTakenWhole(order, feet))
        joined.set(piece, (joined.get(piece) ?? 0) + times);
    }
  return {
    left: short.reduce((sum, { count }) => sum + count, 0),
    joined: [...joined.values()].reduce((sum, count) => sum + count, 0),
    cost: total === undefined ? 0 : Number(aside(total).toFixed(2)),
    // Of nothing nothing is proven.
    proven: proven || plan.length === 0,
  };
}

const ordersOf = (limits: { readonly least: readonly number[]; readonly mostJoints: readonly number[] }) =>
  fc.record({
    pieces: fc.array(
      fc.record({
        feet: fc.constantFrom(6, 7, 8, 9, 10, 11, 12, 12.5, 13, 14, 14.25, 15, 16, 17),
        count: fc.integer({ min: 1, max: 2 }),
        apart: fc.constantFrom(undefined, 3, 4, 4),
        least: fc.constantFrom(undefined, ...limits.least),
        mostJoints: fc.constantFrom(undefined, ...limits.mostJoints),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    sticks: fc.uniqueArray(
      fc.record({
        feet: fc.constantFrom(8, 10, 12, 16, 20),
        price: fc.integer({ min: 4, max: 30 }),
        available: fc.constantFrom(undefined, 0, 1, 1, 2, 3, 9),
        two: fc.constantFrom(undefined, undefined, 3),
      }),
      { minLength: 1, maxLength: 4, selector: ({ feet }) => feet },
    ),
    leftovers: fc.constantFrom([], [], [{ feet: 9, count: 1 }], [{ feet: 18, count: 2 }]),
    kerf: fc.constantFrom(0, 0, 0.25),
    bundle: fc.constantFrom(1, 1, 2),
  });

describe("joined pieces of a stock order", () => {
  it("are as few as sticks that run short ask for, and cost least", async () => {
    const planner = await orderPlanner();
    let [scarce, joined] = [0, 0];
    fc.assert(
      fc.property(ordersOf({ least: [], mostJoints: [] }), (order) => {
        const best = byTrial(order);
        if (best.joined > 0) scarce++;
        if (order.pieces.some(({ apart }) => apart !== undefined)) joined++;
        expect(asPlanned(order, planner)).toEqual({ ...best, proven: true });
      }),
      { seed: 20261127, numRuns: 150 },
    );
    expect(scarce).toBeGreaterThan(4);
    expect(joined).toBeGreaterThan(50);
  });

  it("keep to the least part and the most joints that are wanted, and then cost least", async () => {
    const planner = await orderPlanner();
    let [dearer, fewer] = [0, 0];
    fc.assert(
      fc.property(ordersOf({ least: [4, 6, 7, 8], mostJoints: [1, 2] }), (order) => {
        const best = byTrial(order);
        const free = byTrial({
          ...order,
          pieces: order.pieces.map(({ feet, count, apart }) => ({ feet, count, apart })),
        });
        if (best.left > free.left) fewer++;
        else if (best.joined === free.joined && best.cost > free.cost) dearer++;
        expect(asPlanned(order, planner)).toEqual({ ...best, proven: true });
      }),
      { seed: 20261128, numRuns: 200 },
    );
    // The limits bind in enough of them.
    expect(dearer).toBeGreaterThan(3);
    expect(fewer).toBeGreaterThan(8);
  });
});
