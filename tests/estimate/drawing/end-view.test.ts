import { describe, expect, it } from "vitest";
import { endView } from "../../../src/estimate/drawing/end-view.js";
import { trimmed } from "../../../src/estimate/quantity/decimal.js";
import { explainSawing } from "../../../src/estimate/salvage/explain-sawing.js";
import { layLogPlan } from "../../../src/estimate/salvage/sawing-pattern.js";
import type { SawGroup, SawingProblem, SawLog } from "../../../src/estimate/salvage/sawing-problem.js";

/** Millimetre grid: a log 4 m long, 300 mm at one end and 340 mm at the other, that bows 40 mm. */
const log: SawLog = {
  ...{ name: "larch-1", species: "european-larch", length: 4000, smallDiameter: 300, largeDiameter: 340, sweep: 40 },
  ...{ rot: { smallEnd: 0, largeEnd: 80 }, bark: 10 },
};
const group: SawGroup = {
  ...{ name: "boards", thickness: 30, width: 150, length: 2000, count: 2, species: [], heart: "any", wane: 0 },
  buy: { cash: 1, hours: 0 },
};
const shop = {
  ...{ millKerf: 8, ripKerf: 3, crossKerf: 4, buckKerf: 8, deepestRip: 75, longestBolt: 5500, throat: 0, pith: 50 },
};
const problem: SawingProblem = { gridMm: "1", logs: [log], groups: [group], shop, rates: {} as SawingProblem["rates"] };

const strip = { x0: -75, width: 150, pieces: [group] };
const plan = {
  gridMm: "1",
  buy: {},
  logs: [
    layLogPlan(log, shop, [
      { z0: 0, z1: 2000, slabs: [70, 108].map((y0) => ({ y0, thickness: 30, strips: [strip] })) },
    ]),
  ],
};
const bolt = explainSawing(problem, plan)[0]?.bolts[0];
if (!bolt) throw new Error("the plan has no bolt");
const view = endView(problem, log, bolt);

describe("the end view of a bolt", () => {
  it("bows by the square of its share: half of 4 m with 40 mm has 10 mm, 5 of them below the axis at the end", () => {
    expect([view.wood.radius.toString(), view.wood.y.toString()]).toEqual(["150", "-5"]);
    // At the bolt's middle, 1 m along the log: 310 mm, half of the bow above the axis.
    expect([view.middle?.radius.toString(), view.middle?.y.toString()]).toEqual(["155", "5"]);
    expect(view.sure.radius.toString()).toBe("145"); // (300 − 10) ÷ 2
  });

  it("shows rot where it is widest in the bolt, and the bow with it: 40 mm halfway to 80, and 10", () => {
    expect(view.rot?.radius.toString()).toBe("25");
  });

  it("draws each cut through the wood at the end: 2 √(150² − (142 + 5)²) at 138…146 above the axis", () => {
    expect(view.cuts.map(({ order, y0, y1 }) => [order, y0.toString(), y1.toString()])).toEqual([
      [1, "138", "146"],
      [2, "100", "108"],
      [3, "62", "70"],
    ]);
    expect(trimmed(view.cuts[0]?.x1 ?? view.reach, 3)).toBe("29.85"); // √(22500 − 21609) = √891
  });

  it("has a box for every strip and for every kerf between them, none outside the wood that is sure", () => {
    expect(view.strips.map(({ slab, strip: place, y0 }) => [slab, place, y0.toString()])).toEqual([
      [0, 0, "108"],
      [1, 0, "70"],
    ]);
    expect(view.rips.map(({ x0, x1 }) => [x0.toString(), x1.toString()])).toEqual([
      ["75", "78"],
      ["-78", "-75"],
      ["75", "78"],
      ["-78", "-75"],
    ]);
  });

  it("is drawn on a page as wide as log, bark and bow", () => {
    expect(view.reach.toString()).toBe("165"); // 150 + 10 + 5
  });
});
