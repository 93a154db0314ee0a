import { describe, expect, it } from "vitest";
import { layDrying } from "../../../src/estimate/effort/drying.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Assumed, type AssumptionText } from "../../../src/estimate/request/assumed.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

function days(thickness: string, species: readonly string[], given: Record<string, AssumptionText> = {}) {
  const sheet = new Sheet();
  const piece = { thickness: sheet.input("thickness", exactly(thickness)), species };
  const cells = layDrying(sheet, "mixed", [piece], new Assumed(sheet, given));
  if (!cells) throw new Error("nothing dries");
  return [cells.soonest, cells.likely, cells.latest].map((cell) => sheet.in(cell, "day").toDecimalPlaces(6).toNumber());
}

describe("drying in the stack", () => {
  // USDA FPL, Air Drying of Lumber (FPL-GTR-117; Technical Note 233): days for 1 in lumber to about 20 %.
  it.each([
    ["eastern-white-pine", 60, 200],
    ["western-larch", 60, 120],
    ["northern-red-oak", 70, 200],
    ["ponderosa-pine", 15, 150],
  ])("of 1 in %s takes the published days", (species, short, long) => {
    expect(days("1 in", [species])).toEqual([short, (short + long) / 2, long]);
  });

  it("of 2 in takes two to four times as long", () => {
    expect(days("2 in", ["eastern-white-pine"])).toEqual([120, 325, 800]);
  });

  it("of thicker stock keeps between time as thickness and as its square", () => {
    const [soonest, , latest] = days("3 in", ["eastern-white-pine"]);
    expect([soonest, latest]).toEqual([3 * 60, 9 * 200]);
  });

  it("holds the cautious rule of the trade, a year an inch, between soonest and latest", () => {
    const [soonest, , latest] = days("2 in", ["eastern-white-pine"]) as [number, number, number];
    expect(soonest).toBeLessThan(2 * 365);
    expect(latest).toBeGreaterThan(2 * 365);
  });

  it("is that of the slowest wood and of the thickest piece, and rises with thickness", () => {
    expect(days("1 in", ["ponderosa-pine", "eastern-white-pine"])).toEqual([60, 130, 200]);
    const sizes = ["1/2 in", "3/4 in", "1 in", "5/4 in", "2 in", "2 1/2 in"];
    const dried = sizes.map((size) => days(size, ["eastern-white-pine"]));
    for (const [i, times] of dried.slice(1).entries())
      for (const [side, day] of times.entries()) expect(day).toBeGreaterThan(dried[i]?.[side] ?? Number.NaN);
  });

  it("is the user's where the user knows", () => {
    expect(days("1 in", ["eastern-white-pine"], { "drying.eastern-white-pine": "90 day" })).toEqual([90, 90, 90]);
  });

  it("is nothing where nothing dries", () => {
    const sheet = new Sheet();
    expect(layDrying(sheet, "bought", [], new Assumed(sheet))).toBeUndefined();
  });
});
