import { describe, expect, it } from "vitest";
import { nearMisses } from "../../../src/estimate/sweep/near-misses.js";
import { quickPlanners, request } from "../../helpers/estimating.js";

/** Rafters of 2 × 6 alone are priced, in 8, 10 and 12 ft lengths. */
const yard = {
  name: "three lengths",
  currency: "USD",
  lumber: [
    {
      name: "pine-2x6",
      species: "eastern-white-pine",
      section: "2 x 6 in",
      sizing: "actual",
      seasoning: "dry",
      sold: {
        by: "piece",
        lengths: [
          { length: "8 ft", price: "$8.00" },
          { length: "10 ft", price: "$10.00" },
          { length: "12 ft", price: "$12.00" },
        ],
      },
    },
  ],
};

const found = (structure: object) =>
  nearMisses(request({ structure, catalog: yard, options: { finish: "none" } }), quickPlanners);

describe("near misses", () => {
  // 5 in 12, 8 ft of run: (96 − 1 + overhang) × 13 ÷ 12 + 2.5 in of plumb cut. At 14 in 120.58 in, at 13 in 119.5 in.
  const gable = {
    kind: "gable",
    span: "16 ft",
    length: "24 ft",
    slope: { rise: "5 in", run: "12 in" },
    overhang: { eave: "14 in", gable: "12 in" },
    bays: 3,
    covering: "none",
  };

  it("find the inch of overhang that lets rafters come out of 10 ft", () => {
    const miss = found(gable).find(({ at }) => at === "/structure/overhang/eave");
    expect(miss).toMatchObject({ from: "14 in", to: "13 in" });
    expect(miss?.drops).toContainEqual({ what: "stock of rafters", from: "12'", to: "10'" });
    // 26 rafters and 4 fly rafters at two dollars less each, and 7 % set aside: at least sixty dollars.
    expect(miss?.cash.gte(60)).toBe(true);
    expect(miss?.text).toContain("13 in instead of 14 in");
  });

  it("say nothing of an overhang that no step is near", () => {
    const plain = { ...gable, overhang: { eave: "12 in", gable: "12 in" } };
    expect(found(plain).filter(({ at }) => at === "/structure/overhang/eave")).toEqual([]);
  });

  it("find the row that a wider spacing drops", () => {
    // (96 − 1 + 14) × 13 ÷ 12 − 6 = 112.1 in between outer rows: 22 in apart 6 spaces, 23 in apart 5.
    const rows = found({ ...gable, purlinSpacing: "22 in", groups: { purlins: { section: "2 x 6 in" } } });
    const miss = rows.find(({ at }) => at === "/structure/purlinSpacing");
    expect(miss?.drops).toContainEqual({ what: "purlin rows", from: "7", to: "6" });
  });

  it("leave alone what an override holds, and what is no frame", () => {
    const held = nearMisses(
      request({ structure: gable, catalog: yard, overrides: { "frame.eaveOverhang": "14 in" } }),
      quickPlanners,
    );
    expect(held.map(({ at }) => at)).not.toContain("/structure/overhang/eave");
    const pieces = { kind: "pieces", pieces: [{ name: "legs", count: 4, section: "2 x 6 in", length: "3 ft" }] };
    expect(found(pieces)).toEqual([]);
  });
});
