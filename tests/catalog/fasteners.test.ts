import { describe, expect, it } from "vitest";
import {
  type BoltRow,
  boltRow,
  type Exposure,
  INCH_BOLTS,
  lasts,
  METRIC_BOLTS,
  NAILS,
  nailShank,
  nailsPerPound,
  shanksPerPound,
} from "../../src/catalog/fasteners.js";
import { decimal } from "../../src/estimate/quantity/decimal.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { exactly } from "../../src/estimate/quantity/text.js";

const inches = (text: string) => inUnit(exactly(text), "in");

describe("nails to the pound", () => {
  // Geometry alone: a steel cylinder of 0.2836 lb/in³ (490 lb/ft³) and the nail's size in ASTM F1667, worked out apart
  // from this code and rounded to whole nails.
  it.each([
    ["0.072 in", "1 in", 866],
    ["0.08 in", "1 1/4 in", 561],
    ["0.099 in", "1 1/2 in", 305],
    ["0.099 in", "1 3/4 in", 262],
    ["0.113 in", "2 in", 176],
    ["0.131 in", "2 1/2 in", 105],
    ["0.148 in", "3 in", 68],
    ["0.162 in", "3 1/2 in", 49],
    ["0.192 in", "4 in", 30],
    ["0.225 in", "5 in", 18],
    ["0.263 in", "6 in", 11],
  ])("of a bare shank %s × %s are %i", (diameter, length, printed) => {
    expect(Math.round(inUnit(shanksPerPound(exactly(diameter), exactly(length)), "1/lb").toNumber())).toBe(printed);
  });

  // TM 5-460: the printed counts of common nails lie 0 to 4 % above the cylinder; half a nail is the table's rounding.
  it.each(Object.keys(NAILS))("of common %s as printed agree with the cylinder", (penny) => {
    const shank = nailShank("common-nail", penny);
    if (!shank) throw new Error(`no common nail of ${penny}`);
    const printed = (nailsPerPound("common-nail", penny) as { value: ReturnType<typeof decimal> }).value;
    const cylinder = shanksPerPound(shank.diameter, shank.length).value;
    expect(printed.plus("0.5").div(cylinder).toNumber()).toBeGreaterThanOrEqual(1);
    expect(printed.minus("0.5").div(cylinder).toNumber()).toBeLessThanOrEqual(1.04);
  });

  it("are not made up for sizes that are not in the table", () => {
    expect(nailsPerPound("box-nail", "60d")).toBeUndefined();
    expect(nailsPerPound("finish-nail", "7d")).toBeUndefined();
    expect(nailsPerPound("deck-screw", "8d")).toBeUndefined();
    expect(nailsPerPound("common-nail", "toString")).toBeUndefined();
  });
});

describe("bolt hardware", () => {
  const stressArea = (row: BoltRow, constant: string) => {
    const pitch = exactly(row.pitch[0]).value.div(row.pitch[1]);
    const root = exactly(row.diameter).value.minus(decimal(constant).times(pitch));
    return root.times(root).times("0.7853981634");
  };

  // ASME B1.1, tensile stress areas of UNC threads, in²: 0.7854 (D − 0.9743 p)². They fix the pitch of each diameter.
  it.each([
    ["1/4 in", "0.0318"],
    ["5/16 in", "0.0524"],
    ["3/8 in", "0.0775"],
    ["7/16 in", "0.1063"],
    ["1/2 in", "0.1419"],
    ["5/8 in", "0.226"],
    ["3/4 in", "0.334"],
    ["7/8 in", "0.462"],
    ["1 in", "0.606"],
  ])("has the published stress area: %s, %s in²", (diameter, printed) => {
    const row = boltRow(exactly(diameter)) as BoltRow;
    const area = stressArea(row, "0.9743").div("645.16");
    expect(area.toDecimalPlaces(printed.length - 2).toFixed()).toBe(printed);
  });

  // ISO 898-1, stress areas of coarse threads, mm²: 0.7854 (d − 0.9382 P)².
  it.each([
    ["8 mm", "36.6"],
    ["10 mm", "58"],
    ["12 mm", "84.3"],
    ["16 mm", "157"],
    ["20 mm", "245"],
  ])("has the published stress area: M %s, %s mm²", (diameter, printed) => {
    const area = stressArea(boltRow(exactly(diameter)) as BoltRow, "0.9382");
    expect(area.toSignificantDigits(3).toFixed()).toBe(printed);
  });

  // ASME B18.2.1 and B18.2.2 build on the diameter: flats 1.5 D (7/16 for 1/4), nut 7/8 D, head 11/16 D before rounding.
  it.each(INCH_BOLTS.map((row) => [row.diameter, row] as const))("is in proportion: %s", (_, row) => {
    const d = inches(row.diameter);
    const off = (actual: string, share: string) => inches(actual).minus(d.times(share)).abs().toNumber();
    expect(off(row.acrossFlats, "1.5")).toBeLessThanOrEqual(1 / 16);
    expect(off(row.nutThickness, "0.875")).toBeLessThanOrEqual(1 / 64);
    expect(off(row.headHeight, "0.6875")).toBeLessThanOrEqual(1 / 32);
    expect(inches(row.washer.inside).gt(d)).toBe(true);
    expect(inches(row.washer.outside).gt(inches(row.acrossFlats))).toBe(true);
  });

  it("gives metric washers a hole for the bolt and a rim past the nut", () => {
    for (const row of METRIC_BOLTS) {
      expect(exactly(row.washer.inside).value.gt(exactly(row.diameter).value)).toBe(true);
      expect(exactly(row.washer.outside).value.gte(exactly(row.diameter).value.times(3))).toBe(true);
    }
  });
});

describe("corrosion classes", () => {
  const outdoors: Exposure = { climate: "outdoors", treated: false, tannin: false };

  // IRC R317.3.1 for treated wood; Wood Handbook chapter 16 for redwood, cedars and oak.
  it("let only hot-dip galvanized and stainless into wood rich in tannins", () => {
    const exposure = { ...outdoors, tannin: true };
    expect(
      (["plain", "electroplated", "coated", "hot-dip-galvanized", "stainless"] as const).filter((id) =>
        lasts(id, exposure),
      ),
    ).toEqual(["hot-dip-galvanized", "stainless"]);
  });

  it("do not take electroplated zinc outdoors, and take anything indoors", () => {
    expect(lasts("electroplated", outdoors)).toBe(false);
    expect(lasts("plain", { climate: "dry", treated: false, tannin: false })).toBe(true);
  });
});
