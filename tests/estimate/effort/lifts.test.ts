import { describe, expect, it } from "vitest";
import { type Load, liftsOf, slabLoads, together } from "../../../src/estimate/effort/lifts.js";
import { quantity } from "../../../src/estimate/quantity/quantity.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import type { WoodCells } from "../../../src/estimate/salvage/wood.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { estimated } from "../../helpers/estimating.js";

describe("weight of a log", () => {
  // US National Park Service, Safety for Tree Workers: pounds of a 1 ft section of green log, by diameter in inches.
  it.each([
    ["50 lb/ft3", [27, 39, 53, 70, 88, 109]], // red maple
    ["63 lb/ft3", [34, 49, 67, 88, 111, 137]], // northern red oak
  ] as const)("is the handbook's at %s, to a pound", (density, printed) => {
    const found = [10, 12, 14, 16, 18, 20].map((inches) => {
      const diameter = `${inches} in`;
      const { sheet } = estimated({
        structure: { kind: "pieces", pieces: [{ name: "stub", count: 1, section: "1 x 1 in", length: "6 in" }] },
        logs: [
          {
            name: "log",
            species: "red-maple",
            length: "1 ft",
            smallDiameter: diameter,
            largeDiameter: diameter,
            bark: "inside",
            sweep: "straight",
          },
        ],
        overrides: { "wood.red-maple.greenDensity": density },
      }).basis;
      return sheet.in(sheet.find("logs.log.weight") as never, "lb").toNumber();
    });
    for (const [i, pounds] of printed.entries()) expect(Math.abs((found[i] as number) - pounds)).toBeLessThanOrEqual(1);
  });
});

describe("weight of a slab", () => {
  it("is its thickness by the mean of its two faces: 2 in off the middle of a 12 in log, 10 ft long", () => {
    // Chord 1 in off the axis: 2 √(36 − 1) = 11.832 in; 11.832 × 2 × 120 in³ = 1.6434 ft³; at 50 lb/ft³ 82.17 lb.
    const log = {
      name: "log",
      species: "wood",
      length: 1920,
      smallDiameter: 192,
      largeDiameter: 192,
      sweep: 0,
      rot: { smallEnd: 0, largeEnd: 0 },
      bark: 0,
    };
    const problem = { gridMm: "1.5875", logs: [log] } as unknown as Parameters<typeof slabLoads>[0];
    const cuts = [
      { tool: "mill", axis: "y", part: 0, lo: 16, hi: 20 },
      { tool: "mill", axis: "y", part: 1, lo: -20, hi: -16 },
    ];
    const piece = { group: "g", part: 4, x0: -50, x1: 50, y0: -16, y1: 16, z0: 0, z1: 1920 };
    const plan = { gridMm: "1.5875", buy: {}, logs: [{ log: "log", cuts, pieces: [piece] }] } as unknown as Parameters<
      typeof slabLoads
    >[1];
    const sheet = new Sheet();
    const wood = {
      greenDensity: sheet.input("green", exactly("50 lb/ft3")),
      dryDensity: sheet.input("dry", exactly("25 lb/ft3")),
    } as unknown as WoodCells;
    const [slab, ...more] = slabLoads(problem, plan, new Map([["wood", wood]]));
    expect(more).toEqual([]);
    expect(slab?.green.value.toNumber()).toBeCloseTo(82.17 * 0.45359237, 1);
    expect(slab?.dry.value.times(2).minus(slab.green.value).abs().lt(1e-9)).toBe(true);
  });
});

describe("lifts", () => {
  const load = (name: string, pounds: string): Load => {
    const weight = quantity(pounds, "lb");
    return { kind: "piece", name, green: weight, dry: weight, lifted: weight };
  };
  const limit = new Sheet().input("load", exactly("51 lb"));

  it("are told from over 51 lb on (NIOSH 94-110), the heaviest first, with hands or an aid", () => {
    const told = liftsOf([load("light", "51"), load("two", "52"), load("five", "210"), load("log", "900")], limit);
    expect(told.map(({ name, people, aid }) => [name, people, aid])).toEqual([
      ["log", undefined, "winch, tractor or lift"],
      ["five", undefined, "cart, rollers or levers"],
      ["two", 2, "helpers"],
    ]);
  });

  it("of the slabs of one log are told together, by the heaviest, and light ones not at all", () => {
    const slabs = [
      ["pine-1", "80"],
      ["pine-2", "300"],
      ["pine-1", "160"],
      ["pine-1", "40"],
    ].map(([name = "", pounds = ""]): Load => ({ ...load(name, pounds), kind: "slab" }));
    const told = together(liftsOf([...slabs, load("pine-1", "90")], limit));
    expect(told.map(({ kind, name, count, people, aid }) => [kind, name, count, people, aid])).toEqual([
      ["slab", "pine-2", 1, undefined, "cart, rollers or levers"],
      ["slab", "pine-1", 2, 4, "helpers"],
      ["piece", "pine-1", 1, 2, "helpers"],
    ]);
  });
});
