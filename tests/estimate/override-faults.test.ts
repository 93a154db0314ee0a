/** What an override brings about is told of the override, not of the field or the offer in whose place it stands. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../src/estimate/basis.js";
import { FaultError } from "../../src/estimate/faults.js";
import { blamingOverrides } from "../../src/estimate/override-faults.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";
import { layTakeoffs } from "../../src/estimate/takeoffs.js";
import { request } from "../helpers/estimating.js";

const gable = { kind: "gable", span: "16 ft", length: "24 ft", bays: 3 };

function faultsOf(overrides: Readonly<Record<string, string>>, structure: object = gable) {
  const asked = request({ structure, overrides });
  try {
    blamingOverrides(asked, () => layTakeoffs(layBasis(new Sheet(new Map(Object.entries(overrides))), asked)));
  } catch (error) {
    if (error instanceof FaultError) return error.faults;
    throw error;
  }
  throw new Error("nothing was refused");
}

describe("a fault that follows from an override", () => {
  it("stands at the override, and says what it is", () => {
    const [fault, ...more] = faultsOf({ "frame.bays": "60", "frame.eaveHeight": "9 ft" });
    expect(fault?.at).toBe("/overrides/frame.bays");
    expect(fault?.wrong).toMatch(/leave no room between posts .* It follows from the override of frame\.bays\.$/);
    for (const { at } of more) expect(at).toBe("/overrides/frame.bays");
    expect(faultsOf({ "frame.rafterSpacing": "0 in" }).map(({ at }) => at)).toContain("/overrides/frame.rafterSpacing");
  });

  it("names all where no single one is to blame", () => {
    const both = faultsOf({ "frame.span": "10 in", "frame.length": "10 in" });
    expect(both[0]?.at).toBe("/overrides");
    expect(both[0]?.wrong).toContain("overrides of frame.span, frame.length");
  });

  it("is left where it stands where the request is at fault without it", () => {
    const tight = { ...gable, rafterSpacing: "1 in" };
    expect(faultsOf({ "frame.eaveHeight": "9 ft" }, tight).map(({ at }) => at)).toEqual(["/structure/rafterSpacing"]);
  });
});
