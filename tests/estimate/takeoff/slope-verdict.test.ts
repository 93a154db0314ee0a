import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { slopeVerdict } from "../../../src/estimate/takeoff/slope-verdict.js";

function verdict(rise: string, run: string, display: "in" | "mm") {
  const sheet = new Sheet();
  const unitRise = sheet.input("rise", exactly(rise), { display });
  const unitRun = sheet.input("run", exactly(run), { display });
  return slopeVerdict(sheet, "ribbed-steel", { unitRise, unitRun });
}

describe("the least slope of a covering", () => {
  // IRC R905.10.2: lapped, nonsoldered-seam metal roofs without sealant, 3 in over 12 in: a quarter.
  it("is said in the measures of the roof", () => {
    expect(verdict("5 in", "12 in", "in").reason).toBe(
      "A slope of 5 in over 12 in reaches the least slope, 3 in over 12 in.",
    );
    expect(verdict("75 mm", "300 mm", "mm").reason).toBe(
      "A slope of 75 mm over 300 mm reaches the least slope, 75 mm over 300 mm.",
    );
  });
});
