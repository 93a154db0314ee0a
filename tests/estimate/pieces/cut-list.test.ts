import { describe, expect, it } from "vitest";
import { FaultError } from "../../../src/estimate/faults.js";
import { pieceMarks } from "../../../src/estimate/pieces/cut-list.js";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import { laidGable, laidPieces } from "../takeoff/shelter.js";

const legs = { name: "legs", role: "post" as const, count: 4, section: "4 x 4 in", length: "3 ft" };
const stall = (...pieces: (typeof legs)[]): StructureShape => ({ kind: "pieces", pieces });

function faultsOf(act: () => unknown) {
  try {
    act();
  } catch (error) {
    if (error instanceof FaultError) return error.faults;
    throw error;
  }
  return [];
}

describe("the cut list", () => {
  it("adds up pieces and wood over all groups", () => {
    const { sheet, pieceCount, volume, groups } = laidGable();
    expect(pieceCount.value.toNumber()).toBe(groups.reduce((sum, { count }) => sum + count.value.toNumber(), 0));
    const wood = groups.reduce((sum, { volume: own }) => sum + sheet.in(own, "bf").toNumber(), 0);
    expect(sheet.in(volume, "bf").toNumber()).toBeCloseTo(wood, 9);
  });

  it("numbers piece marks through all groups of a letter, so that no two pieces share one", () => {
    const { sheet, groups } = laidGable();
    const marks = pieceMarks(sheet, groups);
    expect(marks.get("rafters")?.[0]).toBe("R-01");
    expect(marks.get("rafters")?.at(-1)).toBe("R-26");
    expect(marks.get("fly-rafters")).toEqual(["R-27", "R-28", "R-29", "R-30"]);
    const all = [...marks.values()].flat();
    expect(new Set(all).size).toBe(all.length);
  });

  it("takes own groups beside a gable's", () => {
    const { groups } = laidGable({ extraPieces: [{ ...legs, name: "bench-legs" }] });
    expect(groups.at(-1)).toMatchObject({ name: "bench-legs", mark: "P", role: "post" });
  });

  it("has listed timbers green as those of a frame are, from 4 in or 100 mm each way, unless the user says otherwise", () => {
    const seasoned = (section: string, more: object = {}) => {
      const lot = { name: "lot", count: 4, section, length: "8 ft", ...more };
      return laidPieces({ kind: "pieces", pieces: [lot] }).groups[0]?.rules.seasoning;
    };
    expect(["6 x 6 in", "4 x 4 in", "10 x 4 in", "100 x 100 mm"].map((section) => seasoned(section))).toEqual(
      Array(4).fill("green"),
    );
    expect(["3 1/2 x 12 in", "2 x 4 in", "99 x 200 mm"].map((section) => seasoned(section))).toEqual(
      Array(3).fill("dried"),
    );
    expect(seasoned("6 x 6 in", { seasoning: "dried" })).toBe("dried");
    expect(seasoned("6 x 6 in", { role: "rafter" })).toBe("green");
  });

  it("refuses two groups of one name, also where the gable has it", () => {
    expect(faultsOf(() => laidPieces(stall(legs, legs)))).toEqual([
      expect.objectContaining({ code: "duplicate-name", at: "/structure/pieces/1/name" }),
    ]);
    const beside = faultsOf(() => laidGable({ extraPieces: [{ ...legs, name: "purlins" }] }));
    expect(beside).toEqual([expect.objectContaining({ code: "duplicate-name", at: "/structure/extraPieces/0/name" })]);
  });

  it("refuses more than 5000 pieces before it lists them", () => {
    const faults = faultsOf(() => laidPieces(stall({ ...legs, count: 5000 }, { ...legs, name: "more", count: 1 })));
    expect(faults).toEqual([expect.objectContaining({ code: "too-large" })]);
    expect(faults[0]?.wrong).toContain("5001");
  });

  it("refuses pieces that an override made of nothing", () => {
    const shape = stall(legs);
    expect(faultsOf(() => laidPieces(shape, { overrides: { "pieces.legs.length": "0 ft" } }))).toHaveLength(1);
    expect(faultsOf(() => laidPieces(shape, { overrides: { "pieces.legs.count": "0" } }))).toHaveLength(1);
  });
});
