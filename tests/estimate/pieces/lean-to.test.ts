import { describe, expect, it } from "vitest";
import type { LeanToShape } from "../../../src/estimate/request/structure-lean-to.js";
import { laidStructure, listed, refused } from "./structures.js";

/** 9 in 12: on a 3-4-5 slope a foot of run is 15 in of rafter. Default sections: 4 × 8 beams, 6 × 6 posts, 2 × 6 rafters. */
const SHED: LeanToShape = {
  kind: "lean-to",
  span: "8 ft",
  length: "16 ft",
  eaveHeight: "7 ft",
  slope: { rise: "9 in", run: "12 in" },
  overhang: { low: "12 in", high: "12 in", end: "12 in" },
  bays: 2,
};

// Every figure is worked by hand in the comment beside it.
describe("the pieces of an 8 × 16 ft lean-to", () => {
  const all = listed(SHED);

  it("has posts of two heights: the high beam is up by the slope over the span less one beam", () => {
    expect(all["low-posts"]).toEqual([3, "76.000"]); // 84 − 8
    expect(all["high-posts"]).toEqual([3, "145.000"]); // 84 + (96 − 4) × 9 ÷ 12 = 153, less 8
  });

  it("has rafters from tail to upper end, with a plumb cut at either", () => {
    // (12 + 96 + 12) × 15 ÷ 12 = 150, and 6 × 9 ÷ 12 = 4.5; (192 − 2) ÷ 24 = 7.9: 8 spaces.
    expect(all.rafters).toEqual([9, "154.500"]);
    expect(all["fly-rafters"]).toEqual([2, "154.500"]);
    expect(all["rake-fascia"]).toEqual([2, "154.500"]); // 150 + 6 × 9 ÷ 12
  });

  it("has both beams in two pieces that meet over the middle post", () => {
    expect(all["low-beams"]).toEqual([2, "108.000"]); // (192 − 6) ÷ 2 = 93 to the middle post, + 3 + 12
    expect(all["high-beams"]).toEqual([2, "108.000"]);
  });

  it("has a beam across each end, and braces along both rows and below the end beams", () => {
    expect(all["end-beams"]).toEqual([2, "96.000"]);
    expect(all.braces?.[0]).toBe(2 * 2 * 2 + 2 * 2);
  });

  it("has purlins over all of the rafter's edge", () => {
    // (150 − 4) ÷ 24 = 6.08: 7 spaces, 8 rows of two pieces.
    expect(all.purlins).toEqual([16, "108.000"]);
  });

  it("cuts a square tail from shorter stock: nothing but the edge itself", () => {
    expect(listed({ ...SHED, rafterTail: "square" }).rafters).toEqual([9, "150.000"]);
  });
});

describe("a lean-to against a wall", () => {
  const shape: LeanToShape = { ...SHED, highSide: "ledger", overhang: { low: "12 in", end: "12 in" } };
  const all = listed(shape);

  it("has end beams up to the wall, or to the face of a ledger as low as they are", () => {
    expect(listed(shape)["end-beams"]?.[1]).toBe("96.000");
    // Level rafters of 6 in at the ledger's face, whose 8 in reach 2 in below the beams' tops.
    expect(listed({ ...shape, slope: { rise: "0 in", run: "12 in" } })["end-beams"]?.[1]).toBe("94.000");
  });

  it("has a ledger in the place of high posts and beam, and rafters up to its face", () => {
    expect(all["high-posts"]).toBeUndefined();
    expect(all.ledger).toEqual([2, "108.000"]);
    // (12 + 96 − 2) × 15 ÷ 12 = 132.5, and 4.5 for the plumb cut.
    expect(all.rafters).toEqual([9, "137.000"]);
    expect(all.braces?.[0]).toBe(2 * 2 + 2);
  });

  it("has one seat a rafter, where the free-standing one has two", () => {
    const joints = (of: LeanToShape) => laidStructure(of).groups.find(({ name }) => name === "rafters")?.rules.joint;
    expect([joints(SHED), joints(shape)]).toEqual(["two-seats", "hung"]);
  });

  it("refuses an overhang into the wall, and a boarded wall where the house stands", () => {
    expect(refused({ ...shape, overhang: { high: "6 in" } }).map(([, at]) => at)).toEqual(["/structure/overhang/high"]);
    const walled = refused({ ...shape, walls: { sides: [{ side: "high" }] } });
    expect(walled.map(([code, at]) => [code, at])).toEqual([["cannot-build", "/structure/walls/sides/0/side"]]);
  });
});

describe("a lean-to that can't be built", () => {
  it.each<[string, Partial<LeanToShape>, string, RegExp]>([
    ["posts nowhere", { length: "6 in" }, "/structure/length", /6".*6 in/],
    ["a plate below its beam", { eaveHeight: "6 in" }, "/structure/eaveHeight", /the width of the low beams \(8 in\)/],
    ["a span that the beams fill", { span: "8 in" }, "/structure/span", /8".*4 in.*4 in/],
    ["tails in the ground", { overhang: { low: "11 ft" } }, "/structure/overhang/low", /11 ft|132/],
    ["a seat through the rafter", { seat: "12 in" }, "/structure/seat", /7 3\/16 in.*6 in/],
    ["rafters in one another's place", { rafterSpacing: "1 in" }, "/structure/rafterSpacing", /1 in.*2 in/],
    [
      "a roof that falls to its high side",
      { slope: { rise: "-1 in", run: "12 in" } },
      "/structure/slope/rise",
      /-1 in/,
    ],
    [
      "given rafters that do not pass the overhang",
      { groups: { rafters: { length: "1 ft" } } },
      "/structure/groups/rafters/length",
      /12 in/,
    ],
  ])("is refused with the field and the limit: %s", (_, part, at, limit) => {
    const found = refused({ ...SHED, ...part });
    expect(found.map(([code, place]) => [code, place])).toContainEqual(["cannot-build", at]);
    expect(found.find(([, place]) => place === at)?.[2]).toMatch(limit);
  });
});

describe("a lean-to in metric", () => {
  it("has round millimetres by default: a 3 × 6 m shed at 75 in 300", () => {
    const all = listed({ kind: "lean-to", span: "3 m", length: "6 m", bays: 2 }, "mm");
    // 2100 − 200; 2100 + (3000 − 100) × 75 ÷ 300 = 2825, less 200.
    expect(all["low-posts"]).toEqual([3, "1900.000"]);
    expect(all["high-posts"]).toEqual([3, "2625.000"]);
    // (300 + 3000 + 300) × √(75² + 300²) ÷ 300 = 3710.795, and 150 × 75 ÷ 300 = 37.5.
    expect(all.rafters?.[1]).toBe((3600 * Math.hypot(1, 0.25) + 37.5).toFixed(3));
  });
});
