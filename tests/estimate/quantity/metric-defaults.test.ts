import { describe, expect, it } from "vitest";
import { metricDefault } from "../../../src/estimate/quantity/display.js";
import { inUnit } from "../../../src/estimate/quantity/quantity.js";
import { exactly, shown } from "../../../src/estimate/quantity/text.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const metric = (text: string): string => {
  const { value, unit, written = unit } = metricDefault(exactly(text));
  return shown({ value: inUnit({ value, unit }, written), unit: written });
};

describe("a default in a metric project", () => {
  // Worked from 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 bf = 144 in³ (NIST Handbook 44, appendix C), to three figures.
  it.each([
    ["1/4 in", "6.4 mm"],
    ["0.125 in/ft", "10.4 mm/m"],
    ["20 ft2/min", "1.86 m²/min"],
    ["32 lb/ft3", "513 kg/m³"],
    ["30 person-h/mbf", "12.7 person-h/m³"],
    ["2 person-h/square", "0.215 person-h/m²"],
    ["400 bf", "0.944 m³"],
    ["0.005 person-min/lb", "0.011 person-min/kg"],
    ["100 ft", "30.5 m"],
  ])("has %s as %s", (text, expected) => {
    expect(metric(text)).toBe(expected);
  });

  it("is as it stands where it has no measure, or a metric one", () => {
    for (const text of ["1.6", "12 %", "0.5 person-h", "2.5 L/h", "60 day", "11 L"]) {
      expect(metricDefault(exactly(text))).toEqual(exactly(text));
    }
  });

  it("leaves no inch, foot, pound or gallon on the sheet, but in the board feet of the log rules", () => {
    const { sheet } = estimated(demoBody("ferry-bike-shed")).basis;
    const imperial = sheet.cells.filter(({ display: { parts } }) =>
      ["in", "ft", "yd", "lb", "oz", "gal", "qt", "square", "bf", "mbf"].some((name) => parts.has(name)),
    );
    expect(
      imperial.filter(({ name }) => !/\.(?:international|scribner|doyle)$/.test(name)).map(({ name }) => name),
    ).toEqual([]);
  });
});
