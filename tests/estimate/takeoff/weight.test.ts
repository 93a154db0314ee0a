import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { ExplicitPieces } from "../../../src/estimate/request/structure.js";
import { layWeights } from "../../../src/estimate/takeoff/weight.js";
import { type Given, laidPieces } from "./shelter.js";

function weighed(pieces: ExplicitPieces[], green: string, dry: string, given: Given = {}) {
  const laid = laidPieces({ kind: "pieces", pieces }, given);
  const { sheet, groups, assumed, units } = laid;
  const densities = { green: sheet.input("wood.green", exactly(green)), dry: sheet.input("wood.dry", exactly(dry)) };
  return { ...laid, ...layWeights(sheet, { groups, densitiesOf: () => densities, assumed }, units) };
}

const timber = (more: Partial<ExplicitPieces> = {}): ExplicitPieces => ({
  name: "beams",
  count: 3,
  section: "12 x 12 in",
  length: "1 ft",
  seasoning: "green",
  ...more,
});

describe("the weight of a piece", () => {
  // National Design Specification Supplement, table 1B: weight of a foot of dressed lumber in lb, from memory.
  it.each([
    ["1 1/2 x 5 1/2 in", "25 lb/ft3", 1.432],
    ["1 1/2 x 5 1/2 in", "50 lb/ft3", 2.865],
    ["3 1/2 x 3 1/2 in", "35 lb/ft3", 2.977],
    ["5 1/2 x 5 1/2 in", "40 lb/ft3", 8.403],
  ])("a foot long of %s at %s is that of the printed table: %s lb", (section, density, pounds) => {
    const { sheet, lines } = weighed([timber({ section })], density, "20 lb/ft3");
    expect(sheet.in(lines[0]?.green as never, "lb").toNumber()).toBeCloseTo(pounds, 3);
  });

  it("is green and dry, of one and of all", () => {
    const { sheet, lines, totalGreen, totalDry } = weighed([timber()], "50 lb/ft3", "30 lb/ft3");
    const shown = [lines[0]?.green, lines[0]?.dry, totalGreen, totalDry].map((cell) => sheet.shown(cell as never));
    expect(shown).toEqual(["50 lb", "30 lb", "150 lb", "90 lb"]);
  });

  it("is the same from kg/m³: 62.4 lb/ft³ is 999.55 kg/m³, a litre of water near a kilogram", () => {
    const { sheet, lines } = weighed(
      [timber({ section: "100 x 100 mm", length: "100 mm" })],
      "1000 kg/m3",
      "500 kg/m3",
    );
    expect(sheet.in(lines[0]?.green as never, "kg").toString()).toBe("1");
  });
});

describe("lifting", () => {
  // NIOSH 94-110: 51 lb is the most for one person under the best conditions.
  it("takes one person up to 51 lb, and more beyond", () => {
    const people = (density: string) => weighed([timber()], density, "1 lb/ft3").lines[0]?.people.value.toString();
    expect([people("51 lb/ft3"), people("51.01 lb/ft3"), people("102.1 lb/ft3")]).toEqual(["1", "2", "3"]);
  });

  it("weighs a piece as it is raised: dried pieces dry", () => {
    const pieces = [timber(), timber({ name: "boards", seasoning: "dried" })];
    const { heavyLifts, heaviest, sheet } = weighed(pieces, "60 lb/ft3", "40 lb/ft3");
    expect(heavyLifts.map((line) => line.group)).toEqual(["beams"]);
    expect(sheet.shown(heaviest as never)).toBe("60 lb");
  });

  it("asks more people where each carries less", () => {
    const { lines } = weighed([timber()], "60 lb/ft3", "40 lb/ft3", { assumptions: { "carry.load": "30 lb" } });
    expect(lines[0]?.people.value.toString()).toBe("2");
  });
});
