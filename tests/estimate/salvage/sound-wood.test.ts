import { describe, expect, it } from "vitest";
import { displayUnits } from "../../../src/estimate/quantity/display.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Defaults } from "../../../src/estimate/request/given.js";
import type { LogShape } from "../../../src/estimate/request/logs.js";
import { laySoundLog, type SoundLog } from "../../../src/estimate/salvage/sound-wood.js";
import type { WoodCells } from "../../../src/estimate/salvage/wood.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

interface Given extends Partial<LogShape> {
  /** Diameter over bark to that inside it. */
  readonly overBark?: string;
  readonly density?: string;
}

const MEASURED = { name: "log", species: "eastern-white-pine", length: "12 ft", smallDiameter: "12 in" } as const;

function laid({ overBark = "1", density = "50 lb/ft3", ...log }: Given = {}) {
  const sheet = new Sheet();
  const input = (name: string, text: string): Cell => sheet.input(name, exactly(text));
  const wood: WoodCells = {
    barkShare: input("wood.bark", "0 %"),
    overBark: input("wood.overBark", overBark),
    greenDensity: input("wood.green", density),
    dryDensity: input("wood.dry", "30 lb/ft3"),
    shrinkage: input("wood.shrinkage", "6 %"),
  };
  const assumed = {
    taper: input("taper", "0.125 in/ft"),
    someSweep: input("someSweep", "1 in"),
    badSweep: input("badSweep", "3 in"),
  };
  const defaults = new Defaults("inch-pound");
  const laying = { sheet, wood, assumed, defaults, units: displayUnits("inch-pound"), currency: "USD" };
  const found = laySoundLog(laying, { ...MEASURED, sweep: "straight", ...log } as LogShape, "log", "/logs/0");
  return { sheet, found, defaults, in: (cell: Cell, unit = "in") => sheet.in(cell, unit).toNumber() };
}

/** The log, where it is one. */
function sound(given: Given = {}): ReturnType<typeof laid> & { readonly log: SoundLog } {
  const all = laid(given);
  if (!("name" in all.found)) throw new Error("no log");
  return { ...all, log: all.found };
}

describe("weight of a log", () => {
  /** US National Park Service, Safety for Tree Workers: pounds in a 1-ft section by diameter, printed to the pound. */
  it.each([
    ["red maple", "50 lb/ft3", [27, 39, 53, 70, 88, 109]],
    ["northern red oak", "63 lb/ft3", [34, 49, 67, 88, 111, 137]],
    ["black walnut", "58 lb/ft3", [32, 46, 62, 81, 102, 126]],
    ["yellow-poplar", "38 lb/ft3", [21, 30, 41, 53, 67, 83]],
    ["tamarack", "47 lb/ft3", [26, 37, 50, 66, 83, 102]],
    ["ash", "48 lb/ft3", [26, 38, 51, 67, 85, 105]],
  ])("%s at %s: a foot of it, 10 to 20 in thick", (_, density, row) => {
    for (const [i, pounds] of row.entries()) {
      const across = `${10 + 2 * i} in`;
      const { log, in: inUnit } = sound({ density, length: "1 ft", smallDiameter: across, largeDiameter: across });
      expect(Math.abs(inUnit(log.weight, "lb") - pounds)).toBeLessThanOrEqual(1);
    }
  });

  it("is 10.647 ft³ times the green weight for ends of 10 and 12 in and 16 ft (University of Missouri, Smalian)", () => {
    const { log, in: inUnit } = sound({ length: "16 ft", smallDiameter: "10 in", largeDiameter: "12 in" });
    expect(Math.abs(inUnit(log.scale.smalian, "ft3") - 10.647)).toBeLessThan(0.001);
    expect(Math.abs(inUnit(log.weight, "lb") - 532.35)).toBeLessThan(0.05);
  });
});

describe("the scale of a log", () => {
  it("is that of the wood inside bark: 24 in × 18 ft by Doyle is 450 (student board-foot notes)", () => {
    const over = sound({ length: "18 ft", smallDiameter: "30 in", largeDiameter: "30 in", overBark: "1.25" });
    expect(over.in(over.log.smallDiameter)).toBe(24);
    expect(over.in(over.log.scale.doyle, "bf")).toBe(450);
  });

  it("is that of the sound length: bad ends and flare are not scaled", () => {
    const given = { length: "20 ft", smallDiameter: "20 in", largeDiameter: "20 in", flare: "1 ft" };
    const cut = sound({ ...given, badEnds: { smallEnd: "1 ft", largeEnd: "2 ft" } });
    expect(cut.in(cut.log.length, "ft")).toBe(16);
    expect(cut.in(cut.log.scale.doyle, "bf")).toBe(256); // standard table, 20 in × 16 ft
    expect(5 * Math.round(cut.in(cut.log.scale.international, "bf") / 5)).toBe(290);
  });
});

describe("a log as it lies", () => {
  it("is measured by its girth where that is given: 44 in round is 14 in through, by 22 ÷ 7", () => {
    const { log, in: inUnit } = sound({ smallGirth: "44 in", smallDiameter: undefined });
    expect(Math.abs(inUnit(log.smallDiameter) - 14)).toBeLessThan(0.01);
    expect(inUnit(log.smallDiameter)).toBeCloseTo(44 / Math.PI, 12);
  });

  it("keeps its diameters when they were taken inside the bark", () => {
    const { log, in: inUnit } = sound({ bark: "inside", overBark: "1.25", largeDiameter: "14 in" });
    expect(inUnit(log.smallDiameter)).toBe(12);
    expect(inUnit(log.largeDiameter)).toBe(14);
    expect(inUnit(log.bark)).toBe(1.75); // 14 × 0.25 ÷ 2, what it measures over the bark again
  });

  it("tapers an eighth of an inch a foot where only the small end is known, and says so", () => {
    const { log, in: inUnit, defaults } = sound({ length: "16 ft" });
    expect(inUnit(log.largeDiameter)).toBe(14);
    expect(defaults.taken.map(({ at }) => at)).toEqual(["/logs/0/largeDiameter"]);
  });

  it("is thicker where a bad small end comes off, thinner where a bad large end does", () => {
    const { log, in: inUnit } = sound({
      length: "12 ft",
      largeDiameter: "18 in",
      badEnds: { smallEnd: "2 ft", largeEnd: "4 ft" },
    });
    expect(inUnit(log.smallDiameter)).toBe(13); // 12 + 6 × 2 ÷ 12
    expect(inUnit(log.largeDiameter)).toBe(16); // 18 − 6 × 4 ÷ 12
  });

  it("has a quarter of the sweep in half the length, as a parabola has", () => {
    const { log, in: inUnit } = sound({ length: "16 ft", sweep: "2 in", badEnds: { largeEnd: "8 ft" } });
    expect(inUnit(log.sweep)).toBe(0.5);
  });

  it.each([
    ["straight", 0],
    ["some", 1],
    ["bad", 3],
  ] as const)("has, called %s, %i in of sweep", (sweep, inches) => {
    const { log, in: inUnit } = sound({ sweep });
    expect(inUnit(log.sweep)).toBe(inches);
  });

  it("has its rot taper to nothing at the end where none was seen", () => {
    const { log, in: inUnit } = sound({ rot: { largeEnd: "6 in" }, badEnds: { largeEnd: "3 ft" } });
    expect(inUnit(log.rotSmall)).toBe(0);
    expect(inUnit(log.rotLarge)).toBe(4.5); // 6 × 9 ÷ 12
  });

  it("is refused where nothing sound is left, and where it thins towards its butt", () => {
    expect(laid({ badEnds: { smallEnd: "6 ft", largeEnd: "6 ft" } }).found).toEqual([
      expect.objectContaining({ code: "cannot-build", at: "/logs/0" }),
    ]);
    expect(laid({ largeDiameter: "11 in" }).found).toEqual([
      expect.objectContaining({ code: "cannot-build", at: "/logs/0/largeDiameter" }),
    ]);
  });

  it("is refused in the figures of its sound wood, and says that bark came off where it did", () => {
    const wrong = (bark: "over" | "inside" | undefined) =>
      laid({ largeDiameter: "11 in", overBark: "1.25", ...(bark ? { bark } : {}) }).found;
    const thins = "log has a small end of 9 5/8 in and a large end of 8 13/16 in, bark taken off.";
    expect(wrong(undefined)).toEqual([
      expect.objectContaining({ wrong: thins, cure: expect.stringContaining('say "bark": "inside"') }),
    ]);
    expect(wrong("inside")).toEqual([
      expect.objectContaining({
        wrong: "log has a small end of 12 in and a large end of 11 in.",
        cure: "The large end must be at least as thick as the small end.",
      }),
    ]);
  });
});
