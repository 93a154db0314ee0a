import { describe, expect, it } from "vitest";
import { BOLT_LENGTHS, boltRow } from "../../../src/catalog/fasteners.js";
import { FaultError } from "../../../src/estimate/faults.js";
import { displayUnits } from "../../../src/estimate/quantity/display.js";
import { quantity } from "../../../src/estimate/quantity/quantity.js";
import { exactly, type MeasureSystem } from "../../../src/estimate/quantity/text.js";
import { Defaults } from "../../../src/estimate/request/given.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import {
  BOLT_STEPS,
  LONGEST_BOLT,
  layBolt,
  layStocked,
  leastLength,
  SCREW_STEPS,
} from "../../../src/estimate/takeoff/bolts.js";

function bolts(system: MeasureSystem, overrides: Record<string, string> = {}) {
  const sheet = new Sheet(new Map(Object.entries(overrides)));
  const units = displayUnits(system);
  return { sheet, units, bolt: layBolt(sheet, new Defaults(system), units) };
}

function boltFor(grip: string, system: MeasureSystem = "inch-pound") {
  const { sheet, units, bolt } = bolts(system);
  const cell = sheet.input("grip", exactly(grip));
  return sheet.shown(
    layStocked(sheet, "test", "bolt", leastLength(cell, bolt, 2), { steps: BOLT_STEPS[system], small: units.small }),
  );
}

describe("a bolt", () => {
  // ASME B18.2.2 and B18.22.1, 1/2 in: nut 7/16 in, wide washer 0.109 in, 13 threads an inch.
  // Grip + 2 × 0.109 + 0.4375 + 2/13 = grip + 0.8093 in, up to the next length in stock.
  it.each([
    { grip: "4 in", bolt: "5 in" }, // 4.81
    { grip: "3 1/2 in", bolt: "4.5 in" }, // 4.31
    { grip: "5 1/2 in", bolt: "7 in" }, // 6.31: past 6 in by whole inches
    { grip: "6 in", bolt: "7 in" }, // 6.81
    { grip: "11 1/4 in", bolt: "14 in" }, // 12.06: past 12 in by two
  ])("through $grip of wood is $bolt long", ({ grip, bolt }) => {
    expect(boltFor(grip)).toBe(bolt);
  });

  it("of M12 through 150 mm is 180 mm: 150 + 2 × 4 + 10.8 + 2 × 1.75 = 172.3", () => {
    expect(boltFor("150 mm", "metric")).toBe("180 mm"); // ISO 4032, ISO 7094
  });

  it("has a diameter that is made, or the cure says which", () => {
    expect(() => bolts("inch-pound", { "fasteners.bolt.diameter": "0.53 in" })).toThrow(FaultError);
    expect(bolts("inch-pound", { "fasteners.bolt.diameter": "5/8 in" }).bolt.nut.value.toString()).toBe("13.890625"); // 35/64
  });
});

describe("the next stocked length", () => {
  // The catalog's own list of lengths is the other opinion.
  it.each(["inch-pound", "metric"] as const)("is the catalog's, to the longest, in %s", (system) => {
    const { sheet, units } = bolts(system);
    const row = boltRow(exactly(system === "metric" ? "12 mm" : "1/2 in"));
    if (!row) throw new Error("no such bolt");
    const longest = BOLT_LENGTHS[system].at(-1) as { readonly value: { toNumber(): number } };
    expect(exactly(LONGEST_BOLT[system]).value.toString()).toBe(String(longest.value));
    for (let mm = 31; mm < longest.value.toNumber() - 25; mm += 1.3) {
      const least = quantity(mm.toFixed(1), "mm");
      const cell = layStocked(
        sheet,
        `t${Math.round(mm * 10)}`,
        "bolt",
        sheet.input(`need${Math.round(mm * 10)}`, least),
        {
          steps: BOLT_STEPS[system],
          small: units.small,
        },
      );
      const stocked = BOLT_LENGTHS[system].find((length) => length.value.gte(least.value));
      expect([mm, cell.value.toString()]).toEqual([mm, stocked?.value.toString()]);
    }
  });

  it("stays where a length is just stocked, and steps past it", () => {
    const { sheet, units } = bolts("inch-pound");
    const stock = { steps: SCREW_STEPS["inch-pound"], small: units.small };
    const lengths = ["4 in", "4.0001 in", "2.4 in"].map((text, i) =>
      sheet.shown(layStocked(sheet, `s${i}`, "screw", sheet.input(`n${i}`, exactly(text)), stock)),
    );
    expect(lengths).toEqual(["4 in", "6 in", "2.5 in"]);
  });
});
