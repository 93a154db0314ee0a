import { describe, expect, it } from "vitest";
import { assumptionOf } from "../../../src/catalog/assumptions.js";
import { inUnit } from "../../../src/estimate/quantity/quantity.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { estimated } from "../../helpers/estimating.js";
import { bandOf } from "./band.js";

/** 144 in³, in held mm³. */
const BOARD_FOOT = 144 * 25.4 ** 3;

/** Ten 13 ft pine logs of 14 in, sawn into 1 × 6 in boards. */
function boards(mill: string) {
  const species = "eastern-white-pine";
  const piece = { name: "boards", role: "other", count: 90, section: "1 x 6 in", length: "12 ft", surface: "rough" };
  return estimated({
    structure: { kind: "pieces", pieces: [{ ...piece, source: "mill", species: [species] }] },
    logs: [{ name: "log", count: 10, species, length: "13 ft", smallDiameter: "14 in", sweep: "straight" }],
    shop: { mill },
  }).basis.sheet;
}

/** Lumber an hour at the mill: set-up, sawing, edging and sharpening by all who are there. One pace, sizes as they are. */
function output(mill: string, crew: number) {
  const stages = ["setUp", "saw", "edge", "sharpen"].map((stage) => `milled.hours.${stage}`);
  const moved = (name: string) => name !== "pace" && !name.startsWith("allowance.");
  const hours = (value: (name: string) => number) => stages.reduce((sum, name) => sum + value(name), 0) / crew;
  return bandOf(
    boards(mill),
    (value) => value("milled.cuts.volume-eastern-white-pine") / BOARD_FOOT / hours(value),
    moved,
  );
}

const within = (printed: number, { low, high }: { low: number; high: number }) => {
  expect(printed).toBeGreaterThanOrEqual(low);
  expect(printed).toBeLessThanOrEqual(high);
};

describe("what is common practice, with no publication behind it, lies between low and high for the same work", () => {
  it.each([
    // All in, board feet an hour: one person with a slabbing frame, two at a band mill.
    ["chainsaw-mill", 1, 25],
    ["manual-band-mill", 2, 125],
    ["hydraulic-band-mill", 2, 300],
  ])("%s, %i at it: %i board feet an hour", (mill, crew, usual) => {
    within(usual, output(mill, crew));
  });

  it("rate.finishRough: 75 ft2/person-h", () => {
    // Brushing stain on rafters, brackets and other small sections.
    withinRange("rate.finishRough", "75 ft2/person-h");
  });
});

describe("what was published lies between low and high for the same work", () => {
  it.each([
    // Small-scale Forestry 8:367-379 (2009): from 0.3 m³ of lumber an hour on a mobile mill, 127 board feet.
    ["manual-band-mill", 2, 127],
    ["hydraulic-band-mill", 2, 127],
  ])("%s, %i at it: %i board feet an hour", (mill, crew, printed) => {
    within(printed, output(mill, crew));
  });

  it("a practised gang fells and mills a tree of 2.97 m³ of tropical hardwood in 7.4 h", () => {
    // Chainsaw milling in Ghana: context, drivers and impacts (2011), table 7. Here without the felling, in red oak.
    const piece = {
      name: "boards",
      role: "other",
      count: 200,
      section: "50 x 150 mm",
      length: "3 m",
      surface: "rough",
    };
    const log = { length: "6.7 m", smallDiameter: "72 cm", largeDiameter: "78 cm", bark: "inside", sweep: "straight" };
    const { sheet } = estimated({
      structure: { kind: "pieces", pieces: [{ ...piece, source: "mill", species: ["northern-red-oak"] }] },
      logs: [{ name: "tree", species: "northern-red-oak", ...log }],
      shop: { mill: "chainsaw-mill" },
    }).basis;
    expect(sheet.in(sheet.find("logs.tree.smalian") as never, "m3").toNumber()).toBeCloseTo(2.97, 1);
    within(
      7.4,
      bandOf(
        sheet,
        (value) => value("milled.millHours"),
        (name) => name !== "pace",
      ),
    );
  });

  it.each([
    // Labor estimate sheet, Philippine practice: ten 2 × 4 × 18 ft planed by hand in a day, or four straightened too.
    ["dress.handRate", `${(10 * 2 * (2 + 4) * 18) / 12 / 8} ft2/person-h`],
    ["dress.handRate", `${(4 * 2 * (2 + 4) * 18) / 12 / 8} ft2/person-h`],
    // The same sheet: two people lay 20 sheets of 32 in × 8 ft in a day.
    ["rate.roof-ribbed-steel", `${16 / ((20 * 32 * 8) / 12 / 100)} person-h/square`],
    // NIOSH 94-110: 51 lb.
    ["carry.load", "23 kg"],
  ])("%s: %s", (name, printed) => {
    withinRange(name, printed);
  });
});

/** A figure in words between low and high of an assumption. */
function withinRange(name: string, printed: string): void {
  const row = assumptionOf(name);
  const unit = exactly(row?.likely ?? "").unit;
  const [low, value, high] = [row?.low ?? "", digits(printed), row?.high ?? ""].map((text) =>
    inUnit(exactly(text), unit).toNumber(),
  ) as [number, number, number];
  within(value, { low, high: high * 1.0001 });
}

/** Six decimals, so that the text is one that people may write. */
function digits(text: string): string {
  const [value = "", ...unit] = text.split(" ");
  return `${Number(value).toFixed(6)} ${unit.join(" ")}`;
}
