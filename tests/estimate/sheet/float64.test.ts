import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import {
  greatest,
  minus,
  number,
  over,
  plus,
  roundUp,
  steps,
  times,
  when,
} from "../../../src/estimate/sheet/expression.js";
import { evaluateDraws } from "../../../src/estimate/sheet/float64.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { CANS } from "./kinds.js";

function paintJob(overrides: [string, string][] = []) {
  const sheet = new Sheet(new Map(overrides));
  const area = sheet.input("area", exactly("1000 ft2"));
  const coverage = sheet.assumption("coverage", {
    low: exactly("100 ft2/gal"),
    likely: exactly("150 ft2/gal"),
    high: exactly("200 ft2/gal"),
  });
  const hourly = sheet.input("wage", exactly("$20/person-h"));
  const need = sheet.lay("need", over(area, coverage), { display: "gal" });
  const cans = sheet.lay("cans", steps(need, CANS, 0));
  const spray = sheet.lay("spray", when(need, "above", number("7 gal"), number("1"), number("0")));
  const untouched = sheet.lay("untouched", times(hourly, number("3 person-h")));
  const total = sheet.lay("total", plus(cans, untouched));
  return { sheet, area, coverage, need, cans, spray, untouched, total };
}
const COVERAGE = Float64Array.of(100, 125, 150, 200); // in ft2/gal, the unit of the rate: 10, 8, 6.67, 5 gal

describe("a sheet over draws", () => {
  it("follows each draw through divisions, step tables and choices", () => {
    const { sheet, need, cans, spray, total } = paintJob();
    const draws = evaluateDraws(sheet.cells, new Map([["coverage", COVERAGE]]));
    const gallons = [...(draws.get(need) as Float64Array)].map((mm3) => mm3 / 3_785_411.784); // HB 44: 1 gal = 3.785411784 L
    for (const [i, expected] of [10, 8, 1000 / 150, 5].entries()) expect(gallons[i]).toBeCloseTo(expected, 9);
    expect([...(draws.get(cans) as Float64Array)]).toEqual([80, 70, 60, 40]); // 5+5; 5+3; 5+2; 5
    expect([...(draws.get(spray) as Float64Array)]).toEqual([1, 1, 0, 0]);
    expect([...(draws.get(total) as Float64Array)]).toEqual([140, 130, 120, 100]);
  });

  it("keeps one number where no sampled cell reaches", () => {
    const { sheet, area, untouched } = paintJob();
    const draws = evaluateDraws(sheet.cells, new Map([["coverage", COVERAGE]]));
    expect(draws.get(untouched)).toBe(60);
    expect(draws.get(area)).toBe(1000 * 92_903.04);
  });

  it("leaves an override alone, and what only it reaches", () => {
    const { sheet, need, cans } = paintJob([["need", "3 gal"]]);
    const draws = evaluateDraws(sheet.cells, new Map([["coverage", COVERAGE]]));
    expect(draws.get(cans)).toBe(30);
    expect(typeof draws.get(need)).toBe("number");
  });

  it("does not write into the draws that it is given", () => {
    const sheet = new Sheet();
    const a = sheet.input("a", exactly("2"));
    sheet.lay("b", minus(greatest(a, number("3")), roundUp(a)));
    const given = Float64Array.of(1.5, 2.5, 3.5);
    const draws = evaluateDraws(sheet.cells, new Map([["a", given]]));
    expect([...given]).toEqual([1.5, 2.5, 3.5]);
    expect([...(draws.get(sheet.find("b") as never) as Float64Array)]).toEqual([1, 0, -0.5]); // 3 − 2, 3 − 3, 3.5 − 4
  });
});
