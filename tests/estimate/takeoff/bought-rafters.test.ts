import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { boughtRafterNotices } from "../../../src/estimate/structure-notices.js";
import { layTakeoffs } from "../../../src/estimate/takeoffs.js";
import { request } from "../../helpers/estimating.js";

function taken(structure: object, catalog: object = { demo: "orchard-yard" }) {
  const basis = layBasis(new Sheet(new Map()), request({ structure, catalog }));
  const takeoffs = layTakeoffs(basis);
  const { boughtRafter } = takeoffs;
  const inches = boughtRafter && {
    height: basis.sheet.in(boughtRafter.heightAbovePlate, "in").toNumber(),
    lower: basis.sheet.in(boughtRafter.lower, "in").toNumber(),
    share: boughtRafter.notchShare.value.toNumber(),
  };
  return { inches, notices: boughtRafterNotices(basis, takeoffs) };
}

describe("rafters laid out full and sold dressed", () => {
  const roof = { kind: "gable", span: "16 ft", length: "24 ft", slope: { rise: "5 in", run: "12 in" } };

  // By hand, 5 in 12: a full 6 in rafter is 6 × 13 ÷ 12 = 6.5 in plumb; its seat of 3.9 in takes 3.9 × 5 ÷ 12 = 1.625 in of
  // that. A dressed 2 × 6 is 5 1/2 in (PS 20): 5.9583 in plumb, so 4.3333 in above the plate, 1/2 × 13 ÷ 12 lower; the notch of
  // 1 1/2 in square to it is 27.27 % of 5 1/2 in.
  it("stand lower by the plumb measure of what dressing takes, and are notched deeper than a quarter", () => {
    const { inches, notices } = taken(roof);
    expect(inches?.height).toBeCloseTo(5.5 * (13 / 12) - 1.625, 9);
    expect(inches?.lower).toBeCloseTo(0.5 * (13 / 12), 9);
    expect(inches?.share).toBeCloseTo(1.5 / 5.5, 9);
    expect(notices).toEqual([expect.objectContaining({ code: "bought-size", at: "/structure/groups/rafters" })]);
    expect(notices[0]?.text).toContain("4 5/16 in above the plate, 9/16 in lower");
    expect(notices[0]?.text).toContain("past the quarter that is advised");
  });

  it("need no word where the yard sells them full, or nothing at all", () => {
    const full = { name: "full", species: "eastern-white-pine", section: "2 x 6 in", sizing: "actual" };
    const sold = { by: "piece", lengths: [{ length: "12 ft", price: "$12" }] };
    expect(taken(roof, { name: "y", currency: "USD", lumber: [{ ...full, sold }] }).notices).toEqual([]);
    expect(taken(roof, { name: "y", currency: "USD" }).notices).toEqual([]);
    expect(taken({ kind: "pergola", span: "10 ft", length: "12 ft" }).notices).toEqual([]);
  });
});
