import { describe, expect, it } from "vitest";
import {
  birdsmouthFaults,
  commonRafterFaults,
  layCommonRafter,
  type RafterPlan,
} from "../../../src/estimate/pieces/common-rafter.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

interface Roof {
  readonly run?: string;
  readonly rise: string;
  readonly unitRun?: string;
  readonly ridge?: string;
  readonly overhang?: string;
  readonly depth?: string;
  readonly plate?: string;
  readonly seat?: string;
  readonly tail?: "plumb" | "square";
}

function planOf(sheet: Sheet, roof: Roof): RafterPlan {
  const input = (name: string, text: string): Cell => sheet.input(name, exactly(text));
  return {
    run: input("run", roof.run ?? "8 ft"),
    overhang: input("overhang", roof.overhang ?? "0 in"),
    unitRise: input("unitRise", roof.rise),
    unitRun: input("unitRun", roof.unitRun ?? "12 in"),
    ridgeThickness: input("ridgeThickness", roof.ridge ?? "0 in"),
    tail: roof.tail,
    depth: input("depth", roof.depth ?? "6 in"),
    plateWidth: input("plateWidth", roof.plate ?? "4 in"),
    seat: roof.seat === undefined ? undefined : input("seat", roof.seat),
  };
}

function laid(roof: Roof) {
  const sheet = new Sheet();
  const rafter = layCommonRafter(sheet, "rafter", planOf(sheet, roof), { long: "ft", small: "in" });
  return { rafter, inches: (cell: Cell) => sheet.in(cell, "in"), degrees: (cell: Cell) => sheet.in(cell, "deg") };
}

/**
 * Unit length rafter table of the framing square: rise in 12, inches a foot of common run, difference of jacks at 16 and
 * 24 in (on an equal pitch that is a rafter over 16 and 24 in of run), slope factor, slope angle.
 * Parts of it: US Navy, NAVEDTRA 14044, ch. 2 (7 in); US Army, EN0069, lesson 2 (13 and 16 in).
 */
const SQUARE = [
  ["2", "12.16", "16.22", "24.33", "1.0138", "9.46"],
  ["4", "12.65", "16.87", "25.3", "1.0541", "18.43"],
  ["5", "13", "17.33", "26", "1.0833", "22.62"],
  ["7", "13.89", "18.52", "27.78", "1.1577", "30.26"],
  ["8", "14.42", "19.23", "28.84", "1.2019", "33.69"],
  ["10", "15.62", "20.83", "31.24", "1.3017", "39.81"],
  ["12", "16.97", "22.63", "33.94", "1.4142", "45"],
  ["13", "17.69", "23.59", "35.38", "1.4743", "47.29"],
  ["15", "19.21", "25.61", "38.42", "1.6008", "51.34"],
  ["16", "20", "26.67", "40", "1.6667", "53.13"],
  ["18", "21.63", "28.84", "43.27", "1.8028", "56.31"],
] as const;

/** The rises that these sources leave out, as the same table is printed on the square; from memory. */
const SQUARE_FROM_MEMORY = [
  ["3", "12.37", "16.49", "24.74", "1.0308", "14.04"],
  ["6", "13.42", "17.89", "26.83", "1.1180", "26.57"],
  ["9", "15", "20", "30", "1.2500", "36.87"],
  ["11", "16.28", "21.71", "32.56", "1.3566", "42.51"],
  ["14", "18.44", "24.59", "36.88", "1.5366", "49.40"],
  ["17", "20.81", "27.74", "41.62", "1.7341", "54.78"],
] as const;
const EVERY_RISE = [...SQUARE, ...SQUARE_FROM_MEMORY];

/** Printed to two places, so off by half of the last one; 2 in 12 is printed cut off (12.166) and gets the whole one. */
const printed = (rise: string) => (rise === "2" ? 0.01 : 0.005);

describe("a common rafter against the framing square", () => {
  it.each(EVERY_RISE)("at %s in 12 has the table's inches a foot of run, %s", (rise, unit) => {
    const { rafter, inches } = laid({ rise: `${rise} in` });
    expect(Math.abs(inches(rafter.unitLength).minus(unit).toNumber())).toBeLessThanOrEqual(printed(rise));
  });

  it.each(EVERY_RISE)(
    "at %s in 12 over 16 and 24 in of run has the table's jack differences",
    (rise, _, at16, at24) => {
      for (const [run, printedLength] of [
        ["16 in", at16],
        ["24 in", at24],
      ] as const) {
        const { rafter, inches } = laid({ rise: `${rise} in`, run });
        expect(Math.abs(inches(rafter.lineLength).minus(printedLength).toNumber())).toBeLessThanOrEqual(0.0051);
      }
    },
  );

  it.each(EVERY_RISE)(
    "at %s in 12 has the table's slope factor and angle",
    (rise, _unit, _at16, _at24, factor, angle) => {
      const { rafter, inches, degrees } = laid({ rise: `${rise} in` });
      expect(inches(rafter.unitLength).dividedBy(12).toFixed(4)).toBe(Number(factor).toFixed(4));
      expect(degrees(rafter.slopeAngle).toFixed(2)).toBe(Number(angle).toFixed(2));
    },
  );

  it.each(EVERY_RISE)("at %s in 100 mm units gives the same angle: slope is a ratio", (rise, ...row) => {
    const metric = laid({ rise: `${Number(rise) * 100} mm`, unitRun: "1200 mm" });
    expect(metric.degrees(metric.rafter.slopeAngle).toFixed(2)).toBe(Number(row[4]).toFixed(2));
  });
});

describe("a common rafter against worked examples", () => {
  it("is 9 ft 3 1/8 in for 16 ft of span at 7 in 12 (NAVEDTRA 14044, fig. 2-17)", () => {
    const { rafter, inches } = laid({ rise: "7 in", run: "8 ft" });
    // The manual multiplies 13.89 and then goes to sixteenths.
    expect(inches(rafter.lineLength).minus("111.125").abs().toNumber()).toBeLessThanOrEqual(0.063);
    expect(inches(rafter.unitLength).toFixed(2)).toBe("13.89");
  });

  it("is 167.75 in for 12 1/2 ft of run at quarter pitch (Griffith, Carpentry, 1916, fig. 49)", () => {
    const { rafter, inches } = laid({ rise: "6 in", run: "12.5 ft" });
    expect(inches(rafter.unitLength).toFixed(2)).toBe("13.42");
    expect(inches(rafter.lineLength).minus("167.75").abs().toNumber()).toBeLessThanOrEqual(0.063);
  });

  it.each([
    ["16 in", "20.00"],
    ["13 in", "17.69"],
  ])("at %s in 12 is %s in a foot (US Army, EN0069, lesson 2)", (rise, unit) => {
    const { rafter, inches } = laid({ rise });
    expect(inches(rafter.unitLength).toFixed(2)).toBe(unit);
  });

  it.each([
    ["2 in", "1.0138"],
    ["5 in", "1.0833"],
  ])("at %s in 12 covers the plan area times %s (university estimating notes)", (rise, factor) => {
    const { rafter, inches } = laid({ rise });
    expect(inches(rafter.lineLength).dividedBy(96).toFixed(4)).toBe(factor);
  });
});

// 9 in 12 is a 3-4-5 triangle: every figure can be worked by hand.
describe("a common rafter at 9 in 12, by hand", () => {
  const roof = { rise: "9 in", run: "8 ft", ridge: "1.5 in", overhang: "1 ft", depth: "8 in", plate: "4 in" };

  it("loses half the ridge measured level, before the tilt", () => {
    const { rafter, inches } = laid(roof);
    expect(inches(rafter.lineLength).toString()).toBe("120");
    expect(inches(rafter.edgeLength).toString()).toBe("134.0625"); // (96 + 12 − 0.75) × 15 ÷ 12
  });

  it("needs depth × slope more stock than its edge is long", () => {
    const { rafter, inches } = laid(roof);
    expect(inches(rafter.plumbCut).toString()).toBe("6"); // 8 × 9 ÷ 12
    expect(inches(rafter.stockLength).toString()).toBe("140.0625");
  });

  it("sits on a seat that notches away a quarter of its depth at most", () => {
    const { rafter, inches } = laid(roof);
    // A quarter of 8 in is 2 in square to the rafter: 2 ÷ sin = 2 × 15 ÷ 9 = 3.333 in of seat, less than the plate's 4.
    expect(inches(rafter.seat).toFixed(4)).toBe("3.3333");
    expect(inches(rafter.notchDepth).toFixed(10)).toBe("2.0000000000");
    expect(inches(rafter.notchPlumb).toFixed(4)).toBe("2.5000");
    expect(inches(rafter.heightAbovePlate).toFixed(4)).toBe("7.5000"); // 8 × 15 ÷ 12 − 2.5
  });

  it("takes the seat that is given, however deep", () => {
    const { rafter, inches } = laid({ ...roof, seat: "4 in" });
    expect(inches(rafter.notchDepth).toFixed(6)).toBe("2.400000"); // 4 × 9 ÷ 15
    expect(inches(rafter.notchPlumb).toString()).toBe("3");
  });

  it("opens 8 × 1.25 × tan 1° across the plumb cut when the saw is a degree off", () => {
    const { rafter, inches } = laid(roof);
    expect(inches(rafter.gapAtOneDegree).toFixed(5)).toBe("0.17455"); // tan 1° = 0.0174550649…
  });
});

describe("a common rafter without slope or without sense", () => {
  it("lies on its whole plate when level, and has no notch", () => {
    const { rafter, inches } = laid({ rise: "0 in", run: "10 ft" });
    expect(inches(rafter.lineLength).toString()).toBe("120");
    expect(inches(rafter.seat).toString()).toBe("4");
    expect(inches(rafter.notchDepth).toString()).toBe("0");
  });

  it("leaves no last digit where the slope has no finite decimal: 18 ft at 16 in 12 is 30 ft", () => {
    const { rafter, inches } = laid({ rise: "16 in", run: "18 ft" });
    expect(inches(rafter.lineLength).toString()).toBe("360");
  });

  it.each([
    [{ rise: "-3 in" }, "/structure/slope/rise"],
    [{ rise: "3 in", unitRun: "0 in" }, "/structure/slope/run"],
    [{ rise: "3 in", run: "1 in", ridge: "2 in" }, "/structure/span"],
  ])("is refused with its place and its cure: %j", (roof, at) => {
    const sheet = new Sheet();
    const faults = commonRafterFaults(sheet, planOf(sheet, roof), "/structure");
    expect(faults).toEqual([expect.objectContaining({ code: "cannot-build", at })]);
    expect(faults[0]?.cure).toMatch(/^Give /);
  });
});

describe("the tail of a rafter", () => {
  // 9 in 12: 8 ft of run and 1 ft of overhang are 135 in of edge; 6 in of depth lose 4.5 in to a plumb cut.
  it("cut plumb offsets both edges, so that the stock is longer than either", () => {
    const { rafter, inches } = laid({ rise: "9 in", overhang: "1 ft" });
    expect([inches(rafter.edgeLength).toString(), inches(rafter.stockLength).toString()]).toEqual(["135", "139.5"]);
  });

  it("cut square ends both edges alike, so that the stock is as long as the upper one", () => {
    const { rafter, inches } = laid({ rise: "9 in", overhang: "1 ft", tail: "square" });
    expect(inches(rafter.stockLength).toString()).toBe("135");
  });
});

describe("a birdsmouth", () => {
  const through = (seat: string) => {
    const sheet = new Sheet();
    const plan = planOf(sheet, { rise: "9 in", seat });
    const { notchDepth } = layCommonRafter(sheet, "rafter", plan, { long: "ft", small: "in" });
    return birdsmouthFaults(sheet, { notch: notchDepth, depth: plan.depth, what: "rafter" }, "/structure/seat");
  };

  it("is refused where it cuts the rafter through: 10 in of seat at 9 in 12 are 6 in deep", () => {
    expect(through("10 in")).toEqual([expect.objectContaining({ code: "cannot-build", at: "/structure/seat" })]);
    expect(through("9.9 in")).toEqual([]);
  });
});
