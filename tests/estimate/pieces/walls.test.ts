import { describe, expect, it } from "vitest";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import type { LeanToShape } from "../../../src/estimate/request/structure-lean-to.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { estimated } from "../../helpers/estimating.js";
import { listed, refused } from "./structures.js";

const walled = (walls: GableShape["walls"]): GableShape => ({
  kind: "gable",
  span: "16 ft",
  length: "24 ft",
  eaveHeight: "8 ft",
  bays: 3,
  ...(walls && { walls }),
});

// 24 ft by 8 ft less 4 in clearance, so 92 in of 1 × 8 boards. Worked by hand.
describe("a boarded side", () => {
  it("has upright boards that lap by half an inch", () => {
    const all = listed(walled({ sides: [{ side: "near" }] }));
    // (288 − 0.5) ÷ 7.5 = 38.3: 39 boards. Rails (96 − 4) ÷ 36 = 2.6: 4 rows in three bays.
    expect(all["wall-boards-near"]).toEqual([39, "92.000"]);
    expect(all["wall-rails-near"]).toEqual([12, "96.000"]);
  });

  it("has a batten over every gap, one fewer than boards", () => {
    const all = listed(walled({ boards: "board-and-batten", sides: [{ side: "near" }] }));
    // (288 + 0.5) ÷ 8.5 = 33.9: 34 boards.
    expect([all["wall-boards-near"]?.[0], all["wall-battens-near"]?.[0]]).toEqual([34, 33]);
  });

  it("has level boards a bay long, and studs behind them", () => {
    const all = listed(walled({ boards: "horizontal", sides: [{ side: "near" }] }));
    // (92 − 1) ÷ 7 = 13 courses of three boards; ⌈96 ÷ 24⌉ − 1 = 3 studs in each of three bays.
    expect(all["wall-boards-near"]).toEqual([39, "96.000"]);
    expect(all["wall-studs-near"]).toEqual([9, "92.000"]);
  });

  it("takes off what openings save: whole boards over their height", () => {
    const openings = [{ width: "3 ft", height: "6 ft 8 in" }];
    const all = listed(walled({ sides: [{ side: "near", openings }] }));
    // ⌊36 ÷ 7.5⌋ = 4 boards save 80 in each: (39 × 92 − 320) ÷ 92 = 35.5.
    expect(all["wall-boards-near"]?.[0]).toBe(36);
  });

  it("follows the roof across the ends of a lean-to: two boards in turn from one piece", () => {
    const shed: LeanToShape = {
      kind: "lean-to",
      span: "8 ft",
      length: "16 ft",
      eaveHeight: "7 ft",
      slope: { rise: "9 in", run: "12 in" },
      walls: { sides: [{ side: "left" }] },
    };
    // 84 − 4 = 80 low, 153 − 4 = 149 high: 229 in for a pair. (96 − 0.5) ÷ 7.5 = 12.7: 13 boards, 6.5 pairs.
    expect(listed(shed)["wall-boards-left"]).toEqual([7, "229.000"]);
  });
});

describe("the finish of a wall", () => {
  it("is brushed on one wide face of its boards, their edges and their ends", () => {
    const structure = walled({ sides: [{ side: "near" }] });
    const { sheet } = estimated({ structure, assumptions: { "finish.jointShare": "0 %" } }).basis;
    const area = sheet.find("finish.wall-boards-near.area") as Cell;
    // 39 boards of 1 × 8 in and 92 in: 39 × (92 × (8 + 2 × 1) + 2 × 8) = 36504 in².
    expect(sheet.in(area, "ft2").toFixed()).toBe("253.5");
  });
});

describe("a wall that can't be boarded", () => {
  const of = (openings: { width: string; height: string; count?: number }[]) =>
    refused(walled({ sides: [{ side: "near", openings }] }));

  it("names an opening that is higher or wider than its wall, and the limit", () => {
    const [tall] = of([{ width: "3 ft", height: "9 ft" }]);
    expect(tall?.[1]).toBe("/structure/walls/sides/0/openings/0/height");
    expect(tall?.[2]).toContain("7.667 ft");
    const [wide] = of([
      { width: "10 ft", height: "6 ft" },
      { width: "8 ft", height: "6 ft", count: 2 },
    ]);
    expect(wide?.[1]).toBe("/structure/walls/sides/0/openings/1/width");
    expect(wide?.[2]).toContain("24 ft");
  });

  it("names a lap that leaves nothing to cover, and a side that is named twice", () => {
    expect(refused(walled({ lap: "4 in", sides: [{ side: "near" }] })).map(([, at]) => at)).toEqual([
      "/structure/walls/lap",
    ]);
    expect(refused(walled({ sides: [{ side: "near" }, { side: "near" }] })).map(([code]) => code)).toEqual([
      "duplicate-name",
    ]);
  });
});

describe("a floor", () => {
  it("has bearers along, joists across and boards along", () => {
    const { bearers: _, ...all } = listed({ ...walled(undefined), floor: { joistSpacing: "16 in", gap: "1/4 in" } });
    // (288 − 2) ÷ 16 = 17.9: 18 spaces. (192 + 0.25) ÷ 6.25 = 30.8: 31 rows.
    expect(all.joists).toEqual([19, "192.000"]);
    const rows = Object.entries(all).filter(([name]) => name.startsWith("floor-boards"));
    const whole = rows.reduce((sum, [, row]) => sum + Number(row?.[0]) * Number(row?.[1]), 0);
    expect(whole).toBeCloseTo(31 * 288, 1);
  });

  it("refuses joists in one another's place", () => {
    expect(refused({ ...walled(undefined), floor: { joistSpacing: "2 in" } }).map(([, at]) => at)).toEqual([
      "/structure/floor/joistSpacing",
    ]);
  });
});
