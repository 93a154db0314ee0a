import { describe, expect, it } from "vitest";
import { laySpacing } from "../../../src/estimate/pieces/spacing.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

function spaced(length: string, width: string, most: string) {
  const sheet = new Sheet();
  const input = (name: string, text: string) => sheet.input(name, exactly(text));
  const cells = laySpacing(
    sheet,
    "joists",
    { length: input("length", length), width: input("width", width), most: input("most", most) },
    "ft",
  );
  return { sheet, cells, pieces: cells.pieces.value.toNumber() };
}

describe("pieces from a spacing", () => {
  // Public-domain carpentry texts: at 16 in, three quarters of the length in feet, plus one. 24 ft is worked there: 19.
  it.each([
    [4, 4],
    [8, 7],
    [12, 10],
    [16, 13],
    [20, 16],
    [24, 19],
    [28, 22],
    [32, 25],
    [36, 28],
    [40, 31],
  ])("over %i ft at 16 in are %i, as the three-quarters rule says", (feet, pieces) => {
    expect(spaced(`${feet} ft`, "1.5 in", "16 in").pieces).toBe(pieces);
  });

  it("are one more than the spaces, and the spaces are alike", () => {
    const { sheet, cells } = spaced("24 ft", "2 in", "24 in");
    expect(cells.spaces.value.toNumber()).toBe(12); // (288 − 2) ÷ 24 = 11.9
    expect(sheet.in(cells.equalSpace, "in").times(12).toFixed(6)).toBe("286.000000");
  });

  it("don't get one more from a last digit: 20 ft between centres at 20 in are 12 spaces", () => {
    expect(spaced("20 ft 2 in", "2 in", "20 in").pieces).toBe(13);
    expect(spaced("6002 mm", "2 mm", "600 mm").pieces).toBe(11);
  });

  it("get one more when a hair is missing", () => {
    expect(spaced("20 ft 2 1/64 in", "2 in", "20 in").pieces).toBe(14);
  });
});
