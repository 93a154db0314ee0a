/** Of offers that serve equally well, the one by which the whole order costs least; every order added up by hand. */
import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

const offer = (name: string, lengths: readonly object[], more: object = {}) => ({
  name,
  label: name,
  species: "spruce-pine-fir",
  section: "2 x 4 in",
  sold: { by: "piece", lengths },
  ...more,
});
const rails = (count: number, name = "rails") => ({ name, role: "other", count, section: "2 x 4 in", length: "7 ft" });

/** What lumber is bought and costs; nothing is lost at the ends and nothing is spoiled. */
const told = (lumber: readonly object[], pieces: readonly object[], overrides: object = {}, wastage = "0 %") => {
  const { routes } = estimated({
    structure: { kind: "pieces", pieces },
    catalog: { name: "A yard", currency: "USD", lumber },
    shop: { lumber: "fetched" },
    options: { finish: "none" },
    assumptions: { "buy.endTrim": "0 in", "buy.wastage": wastage },
    overrides,
  });
  const lines = routes.buy.lines.filter(({ department }) => department === "lumber");
  return lines.map(({ label, amount }) => `${label}: ${amount?.value.toFixed(2) ?? "no price"}`);
};

describe("of offers that serve equally well", () => {
  it("a bundle of 20 at $4.00 each is not bought for two pieces where one by one they cost $4.50", () => {
    const yard = [
      offer("bundled", [{ length: "8 ft", price: "$4.00" }], { bundle: 20 }),
      offer("single", [{ length: "8 ft", price: "$4.50" }]),
    ];
    expect(told(yard, [rails(2)])).toEqual(["single, 8': 9.00"]);
    // 18 singles are $81.00, the bundle $80.00.
    expect(told(yard, [rails(18)])).toEqual(["bundled, 8': 80.00"]);
  });

  it("spares count in whole bundles and bulk prices, as they are bought", () => {
    // Ten rails and a spare: two bundles of ten at $4.00 are $80.00, eleven singles $49.50.
    const bundles = [
      offer("bundled", [{ length: "8 ft", price: "$4.00" }], { bundle: 10 }),
      offer("single", [{ length: "8 ft", price: "$4.50" }]),
    ];
    expect(told(bundles, [rails(10)], {}, "7 %")).toEqual(["single, 8': 49.50"]);
    expect(told(bundles, [rails(10)])).toEqual(["bundled, 8': 40.00"]);
    // Eight and a spare: nine at $4.00 are $36.00, eleven at $3.00 from eleven on $33.00.
    const bulk = [
      offer("flat", [{ length: "8 ft", price: "$4.00" }]),
      offer("eleven", [{ length: "8 ft", price: "$5.00", bulk: [{ from: 11, price: "$3.00" }] }]),
    ];
    expect(told(bulk, [rails(8)], {}, "7 %")).toEqual(["eleven, 8': 33.00"]);
  });

  it("the bulk price decides where so many are wanted: 12 at $4.00 from ten on against $5.00", () => {
    const yard = [
      offer("flat", [{ length: "8 ft", price: "$5.00" }]),
      offer("by-ten", [{ length: "8 ft", price: "$5.50", bulk: [{ from: 10, price: "$4.00" }] }]),
    ];
    expect(told(yard, [rails(2)])).toEqual(["flat, 8': 10.00"]);
    expect(told(yard, [rails(12)])).toEqual(["by-ten, 8': 48.00"]);
  });

  it("one that is too short is none, however cheap by the foot", () => {
    const yard = [
      offer("short", [{ length: "6 ft", price: "$2.00" }]),
      offer("long", [{ length: "8 ft", price: "$5.00" }]),
    ];
    expect(told(yard, [rails(2)])).toEqual(["long, 8': 10.00"]);
  });

  it("a long stick that is half wasted counts in whole: 13 ft at $0.45 a foot against 8 ft at $0.50", () => {
    const yard = [
      offer("a-long", [{ length: "13 ft", price: "$5.85" }]),
      offer("b-short", [{ length: "8 ft", price: "$4.00" }]),
    ];
    expect(told(yard, [rails(3)])).toEqual(["b-short, 8': 12.00"]);
  });

  it("groups that have the same choice share a bundle: three and three alone would take singles at $7.00", () => {
    const yard = [
      offer("six", [{ length: "8 ft", price: "$4.00" }], { bundle: 6 }),
      offer("single", [{ length: "8 ft", price: "$7.00" }]),
    ];
    expect(told(yard, [rails(3)])).toEqual(["single, 8': 21.00"]);
    expect(told(yard, [rails(3), rails(3, "posts")])).toEqual(["six, 8': 24.00"]);
  });

  it("the user's own price is reckoned with, on either side", () => {
    const yard = [
      offer("cheap", [{ length: "8 ft", price: "$4.00" }]),
      offer("dear", [{ length: "8 ft", price: "$5.00" }]),
    ];
    const price = (value: string) => ({ value, unit: "USD" });
    expect(told(yard, [rails(2)])).toEqual(["cheap, 8': 8.00"]);
    expect(told(yard, [rails(2)], { "price.cheap-8": price("6") })).toEqual(["dear, 8': 10.00"]);
    expect(told(yard, [rails(2)], { "price.dear-8": price("3") })).toEqual(["dear, 8': 6.00"]);
  });
});
