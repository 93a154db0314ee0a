import { describe, expect, it } from "vitest";
import type { HipShape } from "../../../src/estimate/request/structure-hip.js";
import { laidStructure, listed, refused } from "./structures.js";

const HIP: HipShape = {
  kind: "hip",
  span: "16 ft",
  length: "24 ft",
  eaveHeight: "8 ft",
  slope: { rise: "9 in", run: "12 in" },
  overhang: { eave: "12 in" },
  bays: 3,
  endBays: 2,
};

// 16 × 24 ft at 9 in 12: 15 in of rafter a foot of run. Worked by hand beside each figure.
describe("the pieces of a 16 × 24 ft hip roof", () => {
  const all = listed(HIP);

  it("has posts all round, each place once", () => {
    expect(all.posts).toEqual([10, "88.000"]); // 2 × (3 + 2); 96 − 8
  });

  it("has beams on all four sides, halved over one another at the corners", () => {
    expect(all["beams-end"]?.[0]).toBe(4);
    expect(all["end-beams"]).toEqual([4, "96.000"]); // (192 − 6) ÷ 2 + 3
  });

  it("has a ridge shorter than the roof by its span, and on to the outer faces of its last commons", () => {
    expect(all.ridge).toEqual([1, "98.000"]); // 288 − 192 + 2
  });

  it("has commons along the ridge and one more against either end", () => {
    // 96 ÷ 24 = 4 spaces, 5 lines on both sides. (96 + 12 − 1) × 1.25 + 6 × 0.75.
    expect(all.rafters).toEqual([10, "138.250"]);
    expect(all["end-rafters"]).toEqual([2, "138.250"]); // half a 2 in common comes off as half a 2 in ridge does
  });

  it("has four hips, and eight jacks of each length", () => {
    // (96 + 12 − 1) × √(9² + 2 × 12²) ÷ 12 + 8 × 9 ÷ (12 √2).
    const hip = (107 * Math.sqrt(81 + 288)) / 12 + 72 / (12 * Math.SQRT2);
    expect(all.hips).toEqual([4, hip.toFixed(3)]);
    const jack = (n: number) => ((96 + 12 - 24 * n - 2 / Math.SQRT2 + 1) * 1.25 + 4.5).toFixed(3);
    for (const n of [1, 2, 3]) expect(all[`jacks-${n}`]).toEqual([8, jack(n)]);
    expect(all["jacks-4"]).toBeUndefined();
  });

  it("lays rows of unlike purlins at one height, as far up as the wider ones go", () => {
    const rows = (end: string) =>
      listed({
        ...HIP,
        groups: { "side-purlins": { section: "2 x 4 in" }, "end-purlins": { section: `2 x ${end} in` } },
      });
    // 107 in of level run × 1.25 less 8 in of purlin, in spaces of 24 in: rows begin 125.75 ÷ 6 ÷ 1.25 further in, each.
    const step = (133.75 - 8) / 6 / 1.25;
    const ends = rows("8");
    const whole = (all: ReturnType<typeof listed>, base: string) =>
      Object.entries(all)
        .filter(([name]) => name.startsWith(base))
        .reduce((sum, [, found]) => sum + Number(found?.[0]) * Number(found?.[1]), 0);
    const all = Array.from({ length: 7 }, (_, i) => 216 - 2 * i * step).filter((length) => length > 24);
    expect(whole(ends, "end-purlins")).toBeCloseTo(2 * all.reduce((a, b) => a + b, 0), 1);
    expect(whole(ends, "side-purlins")).toBeCloseTo(
      2 * Array.from({ length: 7 }, (_, i) => 312 - 2 * i * step).reduce((a, b) => a + b, 0),
      1,
    );
    expect(whole(rows("4"), "end-purlins")).not.toBeCloseTo(whole(ends, "end-purlins"), 1);
  });

  it("mitres its fascia round the corners", () => {
    const { sheet, groups } = laidStructure(HIP);
    const whole = groups
      .filter(({ name }) => name.startsWith("side-fascia"))
      .reduce((sum, { totalLength }) => sum + sheet.in(totalLength, "in").toNumber(), 0);
    expect(whole).toBeCloseTo(2 * (288 + 24 + 2), 9);
  });

  it("has a wide roof's plan, times the slope, as its area", () => {
    const { frame } = laidStructure(HIP);
    const area = (frame?.faces ?? []).reduce((sum, { alike, eave, top, slopeLength }) => {
      const [a, b, h] = [eave, top, slopeLength].map((cell) => cell.value.toNumber() / 25.4) as [
        number,
        number,
        number,
      ];
      return sum + (alike * (a + b) * h) / 2;
    }, 0);
    expect(area).toBeCloseTo((288 + 24) * (192 + 24) * 1.25, 6);
  });
});

describe("a pyramid", () => {
  it("is a hip roof as long as it is wide: its ridge is a block between two pairs of commons", () => {
    const all = listed({ ...HIP, length: "16 ft", braceLeg: "24 in" });
    expect([all.ridge, all.rafters?.[0], all["end-rafters"]?.[0]]).toEqual([[1, "2.000"], 2, 2]);
  });
});

describe("a hip roof that can't be built", () => {
  it.each<[string, Partial<HipShape>, string]>([
    ["one that is level", { slope: { rise: "0 in", run: "12 in" } }, "/structure/slope/rise"],
    ["one that is wider than long", { length: "12 ft" }, "/structure/length"],
    [
      "jacks in the hips' place",
      { rafterSpacing: "2 1/2 in", groups: { hips: { section: "3 x 8 in" } } },
      "/structure/rafterSpacing",
    ],
    [
      "hips that do not come down to the plate",
      { groups: { hips: { section: "2 x 3 in" } } },
      "/structure/groups/hips/section",
    ],
    ["hips that are cut through", { seat: "9.9 in" }, "/structure/groups/hips/section"],
    ["seats through the rafters", { seat: "12 in" }, "/structure/seat"],
  ])("is refused at its field: %s", (_, part, at) => {
    expect(refused({ ...HIP, ...part }).map(([, place]) => place)).toContain(at);
  });

  it("is refused before thousands of jacks are laid", () => {
    const found = refused({ ...HIP, span: "60 ft", length: "400 ft", rafterSpacing: "2 1/8 in" });
    expect(found.map(([code, at]) => [code, at])).toEqual([["too-large", "/structure/rafterSpacing"]]);
  });
});
