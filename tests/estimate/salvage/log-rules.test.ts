import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import {
  doyle,
  huber,
  internationalQuarter,
  layLogScale,
  newton,
  scribner,
  smalian,
} from "../../../src/estimate/salvage/log-rules.js";
import { number, type Operand } from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

const LENGTHS = [8, 10, 12, 14, 16] as const;
type Row = readonly [diameter: number, ...atLength: readonly number[]];
/** Every cell of a printed table. */
const cellsOf = (rows: readonly Row[]) =>
  rows.flatMap(([diameter, ...printed]) =>
    LENGTHS.map((length, i) => [diameter, length, printed[i] as number] as const),
  );

function worth(formula: Operand, unit: string): number {
  const sheet = new Sheet();
  return sheet.in(sheet.lay("answer", formula), unit).toNumber();
}

/** A log by its diameter in inches and its length in feet, through the cells that an estimate lays. */
function scaled(diameter: number, length: number) {
  const sheet = new Sheet();
  const input = (name: string, text: string) => sheet.input(name, exactly(text));
  const d = input("d", `${diameter} in`);
  const log = { smallDiameter: d, largeDiameter: d, length: input("length", `${length} ft`) };
  const scale = layLogScale(sheet, "log", log, { log: "ft3" });
  const bf = (cell: (typeof scale)["doyle"]) => sheet.in(cell, "bf").toNumber();
  return { international: bf(scale.international), scribner: bf(scale.scribner), doyle: bf(scale.doyle) };
}

/** USDA Forest Service and state extension, International 1/4-inch log rule, to the nearest 5 (Purdue, FNR-191, table 3). */
const INTERNATIONAL: readonly Row[] = [
  [6, 10, 10, 15, 15, 20],
  [8, 15, 20, 25, 35, 40],
  [9, 20, 30, 35, 45, 50],
  [11, 35, 45, 55, 70, 80],
  [12, 45, 55, 70, 85, 95],
  [14, 65, 80, 100, 115, 135],
  [15, 75, 95, 115, 135, 160],
  [17, 95, 125, 150, 180, 205],
  [18, 110, 140, 170, 200, 230],
  [20, 135, 175, 210, 250, 290],
  [21, 155, 195, 235, 280, 320],
  [23, 185, 235, 285, 335, 390],
  [24, 205, 255, 310, 370, 425],
  [26, 240, 305, 370, 435, 500],
  [27, 260, 330, 400, 470, 540],
  [29, 305, 385, 465, 545, 630],
  [30, 325, 410, 495, 585, 675],
  [32, 375, 470, 570, 670, 770],
  [33, 400, 500, 605, 715, 820],
  [35, 450, 565, 685, 805, 925],
  [36, 475, 600, 725, 855, 980],
  [38, 535, 670, 810, 955, 1095],
  [39, 565, 710, 855, 1005, 1155],
];

/** Four cells in which the printed table is one step above the statute's formula: the older formula was rounded earlier. */
const ONE_STEP_ABOVE = new Set(["15 × 16", "17 × 14", "21 × 8", "33 × 8"]);

describe("International 1/4-inch", () => {
  it.each(cellsOf(INTERNATIONAL))("%i in × %i ft scales the printed %i", (diameter, length, printed) => {
    const { international } = scaled(diameter, length);
    const step = ONE_STEP_ABOVE.has(`${diameter} × ${length}`) ? 5 : 0;
    expect(5 * Math.round(international / 5) + step).toBe(printed);
  });

  // University of Missouri, forestry functions: the 1/8-inch form by length. The 1/4-inch rule is 0.904762 of it.
  it.each([
    [8, 0.44, -1.2, -0.3],
    [12, 0.66, -1.47, -0.79],
    [16, 0.88, -1.52, -1.36],
    [20, 1.1, -1.35, -1.9],
  ])("over %i ft is 0.904762 × (%f D² + %f D + %f)", (length, a, b, c) => {
    for (const diameter of [10, 20, 30]) {
      const published = 0.904762 * (a * diameter ** 2 + b * diameter + c);
      expect(Math.abs(scaled(diameter, length).international - published)).toBeLessThan(0.01);
    }
  });

  it("takes a last section under 4 ft by its share of the next", () => {
    const [twelve, fourteen, sixteen] = [12, 14, 16].map((length) => scaled(20, length).international);
    expect(fourteen).toBeCloseTo(((twelve ?? 0) + (sixteen ?? 0)) / 2, 9);
  });

  it("is never less than nothing", () => {
    expect(worth(internationalQuarter(number("1 in"), number("4 ft"), 1), "bf")).toBe(0);
  });
});

/** USDA Forest Service, FSH 2409.11, Scribner Decimal C: tens of board feet. 30 in × 16 ft: also Farm and Garden Rule-Book. */
const SCRIBNER: readonly Row[] = [
  [12, 4, 5, 6, 7, 8],
  [14, 6, 7, 9, 10, 11],
  [15, 7, 9, 11, 12, 14],
  [17, 9, 12, 14, 16, 18],
  [18, 11, 13, 16, 19, 21],
  [20, 14, 17, 21, 24, 28],
  [21, 15, 19, 23, 27, 30],
  [23, 19, 23, 28, 33, 38],
  [24, 21, 25, 30, 35, 40],
  [26, 25, 31, 37, 44, 50],
  [27, 27, 34, 41, 48, 55],
  [29, 31, 38, 46, 53, 61],
  [30, 33, 41, 49, 57, 66],
  [32, 37, 46, 55, 64, 74],
  [33, 39, 49, 59, 69, 78],
  [35, 44, 55, 66, 77, 88],
  [36, 46, 58, 69, 81, 92],
  [38, 54, 67, 80, 93, 107],
  [39, 56, 70, 84, 98, 112],
];

describe("Scribner by formula", () => {
  // The table was drawn board by board; the formula is a curve through it. It is within one and a half of the table's
  // steps of ten, or within 6 % where that is more; 27 in is the worst of the large ones.
  it.each(cellsOf(SCRIBNER))("%i in × %i ft is near the drawn table's %i tens", (diameter, length, tens) => {
    const off = Math.abs(scaled(diameter, length).scribner - 10 * tens);
    expect(off).toBeLessThanOrEqual(Math.max(15, 0.06 * 10 * tens));
  });

  it("strays to neither side: over all cells it is within one in a hundred of the table", () => {
    const cells = cellsOf(SCRIBNER);
    const table = cells.reduce((sum, [, , tens]) => sum + 10 * tens, 0);
    const formula = cells.reduce((sum, [d, length]) => sum + scaled(d, length).scribner, 0);
    expect(Math.abs(formula / table - 1)).toBeLessThan(0.01);
  });

  it("is never less than nothing", () => {
    expect(worth(scribner(number("2 in"), number("16 ft")), "bf")).toBe(0);
  });
});

/** Worked out by hand from the formula of Louisiana Revised Statutes 3:4641; exact, and no print of a table. */
const DOYLE: readonly Row[] = [
  [6, 2, 2.5, 3, 3.5, 4],
  [8, 8, 10, 12, 14, 16],
  [12, 32, 40, 48, 56, 64],
  [14, 50, 62.5, 75, 87.5, 100],
  [18, 98, 122.5, 147, 171.5, 196],
  [20, 128, 160, 192, 224, 256],
  [24, 200, 250, 300, 350, 400],
  [26, 242, 302.5, 363, 423.5, 484],
  [30, 338, 422.5, 507, 591.5, 676],
  [32, 392, 490, 588, 686, 784],
  [36, 512, 640, 768, 896, 1024],
  [38, 578, 722.5, 867, 1011.5, 1156],
];

describe("Doyle", () => {
  it.each(cellsOf(DOYLE))("%i in × %i ft is exactly %f", (diameter, length, printed) => {
    expect(scaled(diameter, length).doyle).toBe(printed);
  });

  it("is 450 for 24 in × 18 ft (student board-foot notes)", () => {
    expect(scaled(24, 18).doyle).toBe(450);
  });

  it("is nothing at 4 in and below, where the square would turn up again", () => {
    expect(worth(doyle(number("4 in"), number("16 ft")), "bf")).toBe(0);
    expect(worth(doyle(number("2 in"), number("16 ft")), "bf")).toBe(0);
  });
});

describe("the three rules side by side", () => {
  it("give 256, 28 tens and 290 for 20 in × 16 ft, as the tables do", () => {
    const log = scaled(20, 16);
    expect(log.doyle).toBe(256);
    expect(Math.round(log.scribner / 10)).toBe(27); // the formula's 272; the drawn table has 28
    expect(5 * Math.round(log.international / 5)).toBe(290);
  });

  it("underscale small logs by Doyle and come together at large ones", () => {
    const share = (diameter: number) => scaled(diameter, 16).doyle / scaled(diameter, 16).international;
    expect(share(8)).toBeLessThan(0.45);
    expect(share(36)).toBeGreaterThan(1);
  });
});

describe("cubic volume", () => {
  it("by Smalian is 10.647 ft³ for ends of 10 and 12 in and 16 ft (University of Missouri)", () => {
    const cubic = worth(smalian(number("10 in"), number("12 in"), number("16 ft")), "ft3");
    expect(Math.abs(cubic - 10.647)).toBeLessThan(0.001);
  });

  // Newton's is the prismoidal formula: exact for a cone's frustum, whose mid diameter is the mean of its ends. So the
  // frustums that the University of Missouri prints are Newton's too, and Huber's is below them, Smalian's above.
  it.each([
    ["10 in", "11 in", "12 in", "16 ft", "ft3", 10.588, 0.001],
    ["25 cm", "27 cm", "29 cm", "5 m", "m3", 0.286801, 0.000002],
  ])("by Newton is the frustum of %s and %s: %s … %s", (small, mid, large, length, unit, published, tolerance) => {
    const [d, m, D, L] = [small, mid, large, length].map(number) as [Operand, Operand, Operand, Operand];
    const byNewton = worth(newton(d, m, D, L), unit);
    expect(Math.abs(byNewton - published)).toBeLessThanOrEqual(tolerance);
    expect(worth(huber(m, L), unit)).toBeLessThan(byNewton);
    expect(worth(smalian(d, D, L), unit)).toBeGreaterThan(byNewton);
    // Newton = (2 Huber + Smalian) ÷ 3, whatever the log.
    expect((2 * worth(huber(m, L), unit) + worth(smalian(d, D, L), unit)) / 3).toBeCloseTo(byNewton, 12);
  });
});
