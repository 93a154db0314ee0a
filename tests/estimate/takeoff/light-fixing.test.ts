import { describe, expect, it } from "vitest";
import { inUnit } from "../../../src/estimate/quantity/quantity.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { nailFor } from "../../../src/estimate/takeoff/light-fixing.js";

const inches = (text: string) => {
  const nail = nailFor(exactly(text), "inch-pound");
  return nail && inUnit(nail.length, "in").toString();
};

describe("the nail for a thickness", () => {
  // US Army FM 5-426 and EN0069, lesson 4: sheathing of 1 in boards is nailed with 8d, which is 2 1/2 in.
  it("is 8d through a board of 1 in, as the Army's manuals have it", () => {
    expect(inches("1 in")).toBe("2.5");
  });

  // By NDS, ten diameters beyond: 1 1/2 + 1.48 = 2.98 in for 10d (3 in); 2 + 1.92 = 3.92 in for 20d (4 in).
  it.each([
    ["3/4 in", "2"],
    ["1 1/2 in", "3"],
    ["2 in", "4"],
  ])("through %s is %s in long", (thickness, length) => {
    expect(inches(thickness)).toBe(length);
  });

  it("is none where none is long enough", () => {
    expect(nailFor(exactly("4 in"), "inch-pound")).toBeUndefined();
    expect(nailFor(exactly("120 mm"), "metric")).toBeUndefined();
  });

  it("is 3.4 × 90 mm through 50 mm: 50 + 34 = 84", () => {
    const nail = nailFor(exactly("50 mm"), "metric");
    expect([nail?.diameter.value.toString(), nail?.length.value.toString()]).toEqual(["3.4", "90"]);
  });
});
