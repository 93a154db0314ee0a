import { describe, expect, it } from "vitest";
import { explainStock } from "../../../src/estimate/purchase/explain-stock.js";
import type { StockProblem } from "../../../src/estimate/purchase/stock/problem.js";

const problem: StockProblem = {
  pieces: [
    { name: "rail", length: 40, count: 4 },
    { name: "leg", length: 27, count: 8 },
  ],
  stocks: [{ name: "10'", length: 120, priceMinor: 100, available: null }],
  kerf: 1,
  endTrim: 2,
};

describe("a stock plan explained", () => {
  it("puts equal pieces together and says what is left of the stick", () => {
    const [stick] = explainStock(problem, [{ stock: "10'", pieces: ["rail", "leg", "leg"], times: 4 }]);
    expect(stick).toEqual({
      stock: "10'",
      times: 4,
      pieces: [
        { group: "rail", length: 40, count: 1 },
        { group: "leg", length: 27, count: 2 },
      ],
      offcut: 21, // 120 − 2 trimmed − 40 − 27 − 27 − three kerfs of 1
    });
  });

  it("leaves nothing where the last kerf would end past the stick", () => {
    const tight = { ...problem, pieces: [{ name: "long", length: 118, count: 1 }] };
    expect(explainStock(tight, [{ stock: "10'", pieces: ["long"], times: 1 }])[0]?.offcut).toBe(0);
  });

  it("knows no stock that is not on offer", () => {
    expect(() => explainStock(problem, [{ stock: "12'", pieces: [], times: 1 }])).toThrow("12'");
  });
});
