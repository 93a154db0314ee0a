import { describe, expect, it } from "vitest";
import { assumptionOf } from "../../../src/catalog/assumptions.js";
import { inUnit } from "../../../src/estimate/quantity/quantity.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { estimated } from "../../helpers/estimating.js";
import { bandOf } from "./band.js";

/** 144 in³, in held mm³. */
const BOARD_FOOT = 144 * 25.4 ** 3;

/** Ten 13 ft logs of 14 in, sawn into boards of 12 ft; 1 × 6 in of pine where nothing is said. */
function boards(mill: string, { section = "1 x 6 in", count = 90, species = "eastern-white-pine" } = {}) {
  const piece = { name: "boards", role: "other", count, section, length: "12 ft", surface: "rough" };
  return estimated({
    structure: { kind: "pieces", pieces: [{ ...piece, source: "mill", species: [species] }] },
    logs: [{ name: "log", count: 10, species, length: "13 ft", smallDiameter: "14 in", sweep: "straight" }],
    shop: { mill },
  }).basis.sheet;
}

/** Lumber an hour at the mill: set-up, sawing, edging and sharpening by all who are there. One pace, sizes as they are. */
function output(mill: string, crew: number, sawn: Parameters<typeof boards>[1] = {}) {
  const stages = ["setUp", "saw", "edge", "sharpen"].map((stage) => `milled.hours.${stage}`);
  const moved = (name: string) => name !== "pace" && !name.startsWith("allowance.");
  const hours = (value: (name: string) => number) => stages.reduce((sum, name) => sum + value(name), 0) / crew;
  return bandOf(
    boards(mill, sawn),
    (value) => value("milled.cuts.volume-eastern-white-pine") / BOARD_FOOT / hours(value),
    moved,
  );
}

const within = (printed: number, { low, high }: { low: number; high: number }) => {
  expect(printed).toBeGreaterThanOrEqual(low);
  expect(printed).toBeLessThanOrEqual(high);
};

describe("what is common practice of milling, all in, and no rate of the model", () => {
  it.each([
    // All in, board feet an hour: one person with a slabbing frame, two at a band mill.
    ["chainsaw-mill", 1, 25],
    ["manual-band-mill", 2, 125],
    ["hydraulic-band-mill", 2, 300],
  ])("%s, %i at it: %i board feet an hour", (mill, crew, usual) => {
    within(usual, output(mill, crew));
  });

  it.each([
    // The ranges of the same practice hold the likely outputs, in boards and in planks.
    ["chainsaw-mill", 1, 10, 60],
    ["manual-band-mill", 2, 60, 250],
    ["hydraulic-band-mill", 2, 150, 500],
  ])("%s, %i at it: likely outputs from %i to %i board feet an hour", (mill, crew, low, high) => {
    within(output(mill, crew).likely, { low, high });
    within(output(mill, crew, { section: "2 x 6 in", count: 45 }).likely, { low, high });
  });

  it("of the hydraulic mill the practised 300 lies between the likely outputs in boards and in planks", () => {
    const [inch, two] = [{}, { section: "2 x 6 in", count: 45 }].map((sawn) => output("hydraulic-band-mill", 2, sawn));
    within(300, { low: inch?.likely ?? Number.NaN, high: two?.likely ?? Number.NaN });
  });

  it("rate.finishRough: 75 ft2/person-h", () => {
    // Brushing stain on rafters, brackets and other small sections.
    withinRange("rate.finishRough", "75 ft2/person-h");
  });
});

/** Pieces that are bought, of one kind each, without a frame: their work on either route. */
function framed(pieces: readonly object[]) {
  const bought = pieces.map((piece) => ({ source: "buy", surface: "rough", ...piece }));
  return estimated({ structure: { kind: "pieces", pieces: bought } }).basis.sheet;
}

const building = (stages: readonly string[], over: number) => (value: (name: string) => number) =>
  stages.reduce((sum, stage) => sum + value(`${stage === "join" ? "bought" : "common"}.hours.${stage}`), 0) / over;

describe("common practice of carpentry lies between low and high", () => {
  it("heavy timber with cut joints: 80 person-hours a thousand board feet, in posts of 6 × 6 in", () => {
    const sheet = framed([{ name: "posts", role: "post", count: 8, section: "6 x 6 in", length: "8 ft" }]);
    within(80, bandOf(sheet, building(["join", "trialAssemble", "dismantle", "brace", "raise"], (8 * 24) / 1000)));
  });

  // Figures that are not the rates' own: other outputs of the same work.
  it.each([
    ["rate.roof-asphalt-shingles", "1.8 person-h/square"],
    ["rate.roof-wood-shingles", "3.5 person-h/square"],
  ])("%s: %s", (name, usual) => {
    withinRange(name, usual);
  });
});

/** Figures of a publication, by its key in the list below. */
const COMPARED: string[] = [];
const compared = (key: string): string => {
  COMPARED.push(key);
  return key;
};

/** What was published of the output of people or machines, and cannot be put against the same work here. */
const NOT_COMPARED: Readonly<Record<string, string>> = {
  "small-scale forestry 8:367, upper end":
    "1,187 board feet an hour is a mill of another kind, with several workers: no mill here has more than two people",
  "beech on a small band saw, output":
    "2.45 m³ an hour is in planks of 40 and 50 mm with their wany edges on: every piece here has two sawn edges",
  "labor sheet, plywood": "15 sheets a day of two people; where they go, and how they are held, is not told",
  "labor sheet, concrete of columns": "0.50 m³ a day of two people, poured into forms: no footing here has any",
  "milling in Ghana, days a tree": "1.92 days hold felling, spotting and travel, of which nothing is estimated",
};

/** Every figure of output or time that was read in a publication. */
const PUBLISHED = [
  "small-scale forestry 8:367, lower end",
  "small-scale forestry 8:367, upper end",
  "small-scale forestry 8:367, share of time",
  "beech on a small band saw, output",
  "beech on a small band saw, share of time",
  "milling in Ghana, hours a tree",
  "milling in Ghana, days a tree",
  "labor sheet, planed by hand",
  "labor sheet, planed and straightened",
  "labor sheet, sheets of roofing",
  "labor sheet, longer sheets of roofing",
  "labor sheet, concrete of floors",
  "labor sheet, concrete of columns",
  "labor sheet, plywood",
  "labor sheet, posts",
  "estimating textbook, joists",
  "trade article, wall framing",
];

describe("what was published lies between low and high for the same work", () => {
  // Small-scale Forestry 8:367-379 (2009): from 0.3 m³ of lumber an hour on a mobile mill, 127 board feet.
  compared("small-scale forestry 8:367, lower end");
  it.each([
    ["manual-band-mill", 2, 127],
    ["hydraulic-band-mill", 2, 127],
  ])("%s, %i at it: %i board feet an hour", (mill, crew, printed) => {
    within(printed, output(mill, crew));
  });

  it.each(["manual-band-mill", "hydraulic-band-mill"])(
    `${compared("small-scale forestry 8:367, share of time")}: the blade of a %s is in the wood for a quarter of it on small sites`,
    (mill) => {
      const all = ["getOut", "prepare", "setUp", "saw", "edge", "sharpen", "carry", "stack", "slabs"];
      const hours = (value: (name: string) => number) =>
        all.reduce((sum, stage) => sum + value(`milled.hours.${stage}`), 0) / 2;
      within(
        0.25,
        bandOf(boards(mill), (value) => value("milled.cutting") / hours(value)),
      );
    },
  );

  it(`${compared("beech on a small band saw, share of time")}: an operator and an assistant saw for 37 % of their time`, () => {
    // Forests 14(6), 1137 (2023), abstract: use of the working time 0.37. Here in planks of red oak, with their edging.
    const sawn = { section: "2 x 6 in", count: 45, species: "northern-red-oak" };
    const share = bandOf(
      boards("manual-band-mill", sawn),
      (value) => value("milled.cutting") / value("milled.millHours"),
    );
    within(0.37, share);
  });

  it(`${compared("milling in Ghana, hours a tree")}: a practised gang fells and mills one of 2.97 m³ of tropical hardwood in 7.4 h`, () => {
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

  compared("labor sheet, planed by hand");
  compared("labor sheet, planed and straightened");
  compared("labor sheet, sheets of roofing");
  compared("labor sheet, longer sheets of roofing");
  compared("labor sheet, concrete of floors");
  it.each([
    // Labor estimate sheet, Philippine practice: ten 2 × 4 × 18 ft planed by hand in a day, or four straightened too.
    ["dress.handRate", `${(10 * 2 * (2 + 4) * 18) / 12 / 8} ft2/person-h`],
    ["dress.handRate", `${(4 * 2 * (2 + 4) * 18) / 12 / 8} ft2/person-h`],
    // The same sheet: two people lay 20 sheets of 32 in × 8 ft in a day.
    ["rate.roof-ribbed-steel", `${16 / ((20 * 32 * 8) / 12 / 100)} person-h/square`],
    // Of 32 in × 12 ft they lay 15.
    ["rate.roof-ribbed-steel", `${16 / ((15 * 32 * 12) / 12 / 100)} person-h/square`],
    // They mix and pour 1.2 m³ of plain floor: bags of 0.6 ft³, of which a cubic metre takes 35.3147 ÷ 0.6.
    ["rate.mixBag", `${(16 * 60) / ((1.2 * 35.3147) / 0.6)} person-min`],
    // NIOSH 94-110: 51 lb.
    ["carry.load", "23 kg"],
  ])("%s: %s", (name, printed) => {
    withinRange(name, printed);
  });

  it(`${compared("labor sheet, posts")}: two people put up six of 4 × 4 in × 12 ft in a day of 8 h`, () => {
    const sheet = framed([{ name: "posts", role: "post", count: 6, section: "4 x 4 in", length: "12 ft" }]);
    const stages = ["join", "trialAssemble", "dismantle", "move", "brace", "raise"];
    within((2 * 8) / 6, bandOf(sheet, building(stages, 6)));
  });

  it.each([2, 3, 4])(
    `${compared("estimating textbook, joists")}: five of 2 × 10 in × 20 ft an hour (chapter 12, p. 225); a crew of %i, since none is given`,
    (crew) => {
      const piece = { role: "rafter", joint: "joist", count: 100, section: "2 x 10 in", length: "20 ft" };
      const sheet = framed([{ name: "joists", ...piece }]);
      within(crew / 5, bandOf(sheet, building(["join", "rafters"], 100)));
    },
  );

  it(`${compared("trade article, wall framing")}: three people frame 200 ft of 2 × 6 in, 8 ft high, in 8 h`, () => {
    // 100 ft: studs every 16 in, cut to length, and three plates.
    const stick = { role: "other", joint: "none", section: "2 x 6 in" };
    const sheet = framed([
      { ...stick, name: "studs", count: 75, length: "7 ft 7.5 in" },
      { ...stick, name: "plates", count: 15, length: "20 ft" },
    ]);
    within((3 * 8) / 200, bandOf(sheet, building(["join", "raise"], 100)));
  });
});

describe("the list of published figures", () => {
  it("has each of them compared, or the reason why it cannot be", () => {
    expect([...new Set([...COMPARED, ...Object.keys(NOT_COMPARED)])].sort()).toEqual([...PUBLISHED].sort());
    expect(Object.keys(NOT_COMPARED)).toHaveLength(5);
    expect(COMPARED.filter((key) => key in NOT_COMPARED)).toEqual([]);
  });

  it("leaves out the upper end of the mobile mill because it is beyond the quickest mill here, and says so while it is", () => {
    expect(output("hydraulic-band-mill", 2).high).toBeLessThan(1187);
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
