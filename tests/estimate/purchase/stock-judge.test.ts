import { describe, expect, it } from "vitest";
import type { StockProblem } from "../../../src/estimate/purchase/stock/problem.js";
import { judgeStockPlan } from "../../../src/estimate/purchase/stock-judge.js";

const problem: StockProblem = {
  pieces: [
    { name: "rafter", length: 95, count: 2 },
    { name: "block", length: 20, count: 3 },
    { name: "mast", length: 400, count: 1 },
  ],
  stocks: [
    { name: "10 ft", length: 120, priceMinor: 900, available: null },
    { name: "8 ft", length: 96, priceMinor: 700, available: 1 },
  ],
  kerf: 1,
  endTrim: 1,
};
const cut = (stock: unknown, pieces: unknown, times: unknown = 1) => ({ stock, pieces, times });
const sound = [cut("10 ft", ["rafter", "block"]), cut("8 ft", ["rafter"]), cut("10 ft", ["block", "block"])];

describe("the judge of stock plans", () => {
  it("passes a sound plan, a piece that fits nowhere left out", () => {
    expect(judgeStockPlan(problem, sound)).toEqual([]);
  });

  // 95 + 20 + one kerf of 1 is 116 of 119; a third piece of 3 would need 120.
  it("counts a kerf between pieces only, and the trim of the ends once", () => {
    const tight = { ...problem, pieces: [{ name: "a", length: 59, count: 2 }] };
    expect(judgeStockPlan(tight, [cut("10 ft", ["a", "a"])])).toEqual([]); // 59 + 1 + 59 = 119
    const over = { ...problem, pieces: [{ name: "a", length: 60, count: 2 }] };
    expect(judgeStockPlan(over, [cut("10 ft", ["a", "a"])])).toEqual([
      'Row 1: the pieces and their kerfs take 121 steps, and "10 ft" has 119 steps.',
    ]);
  });

  it.each([
    ["a stock that is not sold", [cut("12 ft", ["block"])], 'no stock is called "12 ft"'],
    ["a piece that is not wanted", [cut("10 ft", ["beam"])], 'no piece is called "beam"'],
    ["more sticks than there are", [cut("8 ft", ["rafter"], 2)], '2 of "8 ft" used, 1 to be had'],
    ["more pieces than are wanted", [cut("10 ft", ["block", "block"], 2)], '4 of "block" cut, 3 wanted'],
    ["a piece left out that a stick would hold", sound.slice(0, 2), '1 of 3 "block" cut; "10 ft" would hold one more'],
    ["an empty stick", [cut("10 ft", [])], "a stick needs a list of pieces"],
    ["half a stick", [cut("10 ft", ["block"], 0.5)], "0.5 is not a number of sticks"],
  ])("refuses %s", (_, plan, message) => {
    expect(judgeStockPlan(problem, plan).join()).toContain(message);
  });

  it("buys bundles whole: two of three cannot be had in pairs with a third", () => {
    const pairs = { ...problem, bundle: 2, stocks: [{ name: "10 ft", length: 120, priceMinor: 900, available: 3 }] };
    const three = [cut("10 ft", ["rafter", "block"], 2), cut("10 ft", ["block"])];
    expect(judgeStockPlan(pairs, three)).toEqual(['3 of "10 ft" used, 2 to be had.']);
  });

  it("believes nothing of what comes back in a request", () => {
    const hostile: unknown[] = [
      null,
      undefined,
      42,
      "plan",
      {},
      [null],
      [[]],
      [cut("10 ft", "rafter")],
      [cut("__proto__", ["rafter"])],
      [cut("10 ft", ["__proto__"])],
      [cut("10 ft", [{ toString: "x" }])],
      [cut("10 ft", ["block"], Number.NaN)],
      [cut("10 ft", ["block"], Number.POSITIVE_INFINITY)],
      [cut("10 ft", ["block"], 1e300)],
      [cut("10 ft", ["block"], -1)],
      [cut("10 ft", ["block"], "1")],
      [cut("10 ft", new Array(200_000).fill("block"))],
      new Array(200_000).fill(cut("10 ft", ["block"])),
      [cut("x".repeat(1e6), ["block"])],
    ];
    for (const plan of hostile) {
      const wrong = judgeStockPlan(problem, plan);
      expect(wrong.length).toBeGreaterThan(0);
      expect(wrong.length).toBeLessThanOrEqual(20);
      expect(Math.max(...wrong.map((sentence) => sentence.length))).toBeLessThan(200);
    }
  });
});
