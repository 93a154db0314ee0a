import { describe, expect, it } from "vitest";
import type { PergolaShape } from "../../../src/estimate/request/structure-pergola.js";
import { laidStructure, listed, refused } from "./structures.js";

const PERGOLA: PergolaShape = {
  kind: "pergola",
  span: "10 ft",
  length: "14 ft",
  height: "8 ft",
  overhang: { side: "18 in", end: "12 in" },
  bays: 2,
  rafterSpacing: "16 in",
  slatSpacing: "12 in",
};

// Worked by hand beside each figure; default sections, longest pieces 16 ft.
describe("the pieces of a 10 × 14 ft pergola", () => {
  const all = listed(PERGOLA);

  it("has posts below two beams that reach past them", () => {
    expect(all.posts).toEqual([6, "88.000"]); // 96 − 8
    expect(all.beams).toEqual([2, "192.000"]); // 168 + 2 × 12, in one piece
    expect(all.braces?.[0]).toBe(8);
  });

  it("has level rafters over the whole beams", () => {
    // (192 − 2) ÷ 16 = 11.9: 12 spaces; 120 + 2 × 18.
    expect(all.rafters).toEqual([13, "156.000"]);
  });

  it("has rafters that lie uncut on both beams, as they are drawn", () => {
    const rafters = laidStructure(PERGOLA).groups.find(({ name }) => name === "rafters");
    expect(rafters?.rules.joint).toBe("level-seats");
  });

  it("has slats over the whole rafters, and none without a spacing", () => {
    expect(all.slats).toEqual([14, "192.000"]); // (156 − 2) ÷ 12 = 12.8: 13 spaces
    const { slatSpacing: _, ...bare } = PERGOLA;
    expect(listed(bare).slats).toBeUndefined();
  });

  it("has no covering, no ridge and no fascia", () => {
    expect(laidStructure(PERGOLA).frame).toMatchObject({ kind: "pergola", roof: undefined, faces: [] });
  });
});

describe("a pergola that can't be built", () => {
  it.each<[string, Partial<PergolaShape>, string]>([
    ["slats closer than they are wide", { slatSpacing: "2 in" }, "/structure/slatSpacing"],
    ["beams higher than their posts", { height: "8 in" }, "/structure/height"],
    ["rafters closer than they are thick", { rafterSpacing: "2 in" }, "/structure/rafterSpacing"],
    ["no room for a post", { length: "6 in" }, "/structure/length"],
  ])("is refused at its field: %s", (_, part, at) => {
    expect(refused({ ...PERGOLA, ...part }).map(([code, place]) => [code, place])).toContainEqual(["cannot-build", at]);
  });
});
