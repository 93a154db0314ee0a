import { describe, expect, it } from "vitest";
import { nearMisses } from "../../../src/estimate/sweep/near-misses.js";
import { estimated, quickPlanners, request } from "../../helpers/estimating.js";

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

  it("tell of no purlin rows where shingles lie on boards", () => {
    // (95 + 14) in × 13 ÷ 12 − 6 = 112.1 in are 6 spaces of 22.3 in, (95 + 13) in 5: but nothing lies there.
    const deck = { covering: "asphalt-shingles", deck: { kind: "solid-boards" }, purlinSpacing: "22.3 in" };
    const miss = found({ ...gable, ...deck }).find(({ at }) => at === "/structure/overhang/eave");
    expect(miss).toMatchObject({ from: "14 in", to: "13 in" });
    expect(miss?.drops).toContainEqual({ what: "stock of rafters", from: "12'", to: "10'" });
    expect(miss?.drops.map(({ what }) => what)).not.toContain("purlin rows");
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

  it("shorten pieces of a list that are a little longer than a stick, and those beside a frame", () => {
    const long = { name: "rails", label: "Rails", count: 4, section: "2 x 6 in", length: "8 ft 1 in" };
    const [miss, ...more] = found({ kind: "pieces", pieces: [{ ...long, name: "legs", length: "3 ft" }, long] });
    expect(more).toEqual([]);
    expect(miss).toMatchObject({ at: "/structure/pieces/1/length", from: `8' 1"` });
    expect(miss?.drops).toEqual([{ what: "stock of rails", from: "10'", to: "8'" }]);
    expect(miss?.text).toMatch(/^Length of rails, 8' instead of 8' 1"/);
    const beside = found({ ...gable, extraPieces: [long] }).map(({ at }) => at);
    expect(beside).toContain("/structure/extraPieces/0/length");
  });

  // (98 + 18) in × 12.369 ÷ 12 and a plumb cut of 1 1/2 in are 121.1 in of rafter at 3 in 12; at 2 in 12 less than 10 ft.
  describe("of a slope", () => {
    const leanTo = (covering: string, rise: string) => ({
      kind: "lean-to",
      span: "8 ft 2 in",
      length: "16 ft",
      slope: { rise, run: "12 in" },
      overhang: { low: "9 in", high: "9 in", end: "9 in" },
      covering,
    });
    const flatter = (covering: string, rise: string, steps: readonly string[]) =>
      found(leanTo(covering, rise)).filter(({ at, to }) => at === "/structure/slope/rise" && steps.includes(to));

    it("are told where no covering minds it", () => {
      expect(flatter("none", "3 in", ["2 1/2 in", "2 in"])).not.toEqual([]);
    });

    it("are none below what the code allows of the covering, nor where its laps would have to be sealed", () => {
      expect(flatter("wood-shakes", "3 in", ["2 1/2 in", "2 in"])).toEqual([]);
      expect(flatter("corrugated-steel", "3 in", ["2 1/2 in", "2 in"])).toEqual([]);
    });

    it("are none further below what the code allows", () => {
      expect(flatter("wood-shakes", "2 in", ["1 1/2 in", "1 in"])).toEqual([]);
    });
  });

  // (96 + overhang) × 13 ÷ 12 and what the sheets pass the frame by: within 10 ft at 12 1/2 in, not at 13 1/2 in.
  describe("of panels", () => {
    const steel = (sheets: object) => ({
      name: "panels",
      currency: "USD",
      lumber: [],
      coverings: [{ name: "ribbed", covering: "ribbed-steel", sheets }],
    });
    const stocked = steel({
      form: "panels",
      coverWidth: "36 in",
      sold: {
        by: "piece",
        lengths: [8, 10, 12, 16].map((feet) => ({ length: `${feet} ft`, price: `$${feet * 3}.00` })),
      },
    });
    const missesOf = (structure: object) =>
      nearMisses(request({ structure, catalog: stocked, options: { finish: "none" } }), quickPlanners);
    const roofed = { ...gable, covering: "ribbed-steel", overhang: { eave: "13.5 in", gable: "12 in" } };

    it("find the inch of overhang that lets them come out of 10 ft", () => {
      const miss = missesOf(roofed).find(({ at }) => at === "/structure/overhang/eave");
      expect(miss).toMatchObject({ from: "13 1/2 in", to: "12 1/2 in" });
      expect(miss?.drops).toContainEqual({ what: "stock of panels", from: "12'", to: "10'" });
      expect(miss?.cash.toFixed(2)).toBe("108.00"); // 18 panels at 36 in place of 30 dollars
    });

    it("tell them of the far slope, too, where the slopes differ", () => {
      const far = { ...roofed, overhang: { eave: "12 in", farEave: "13.5 in", gable: "12 in" } };
      const miss = missesOf(far).find(({ at }) => at === "/structure/overhang/farEave");
      expect(miss?.drops).toContainEqual({ what: "stock of panels of the far slope", from: "12'", to: "10'" });
      expect(miss?.cash.toFixed(2)).toBe("54.00");
    });

    it("tell of a hip the stock of all its panels, and save what the changed roof costs less", () => {
      const hip = { ...roofed, kind: "hip", overhang: { eave: "12 in" } };
      const miss = missesOf(hip).find(({ at }) => at === "/structure/overhang/eave");
      // 32 panels up the four slopes; 3 in less all round leave 30, and 16 ft less of stock to cut them from.
      expect(miss).toMatchObject({ from: "12 in", to: "9 in" });
      expect(miss?.drops).toContainEqual({ what: "panels", from: "32", to: "30" });
      expect(miss?.drops).toContainEqual({ what: "stock of all panels together", from: "284'", to: "268'" });
      const costOf = (structure: object) =>
        estimated({ structure, catalog: stocked, options: { finish: "none" } }).routes.buy.cash.value;
      const saved = costOf(hip).minus(costOf({ ...hip, overhang: { eave: "9 in" } }));
      expect(miss?.cash.toFixed(2)).toBe(saved.toFixed(2));
      expect(saved.gt(0)).toBe(true);
    });
  });
});
