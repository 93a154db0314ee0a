import { describe, expect, it } from "vitest";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import { laidPieces } from "../takeoff/shelter.js";

/** Square feet that boards and sheets hide of a group, all its pieces together, to two places; nothing where they hide none. */
function hidden(structure: StructureShape, name: string): string | undefined {
  const { sheet, groups } = laidPieces(structure);
  const contacts = groups.find((group) => group.name === name)?.contacts;
  return contacts
    ?.reduce((all, cell) => all.plus(sheet.in(cell, "ft2")), sheet.in(contacts[0] as never, "ft2").times(0))
    .toFixed(2);
}

const SHELTER = { kind: "gable", span: "16 ft", length: "24 ft", eaveHeight: "8 ft", bays: 3 } as const;
const level = (sides: readonly { side: "near" | "far" | "left" | "right"; part?: "gable" | "below-plate" }[]) => ({
  ...SHELTER,
  walls: { boards: "horizontal" as const, sides: [...sides] },
});

// Worked by hand, in feet: posts 6 in wide and 8 ft − 8 in long, boarded from 4 in up, so 7 ft; beams 8 in deep.
describe("faces behind boards", () => {
  it("are the outer faces of the posts of a side with level boards, and of its beam over the wall's width", () => {
    expect(hidden(level([{ side: "near" }]), "posts")).toBe("14.00"); // 4 × 0.5 × 7
    expect(hidden(level([{ side: "near" }, { side: "left" }]), "posts")).toBe("21.00"); // and two corners: 6 × 0.5 × 7
    const [end, middle] = ["beams-end", "beams-middle"].map((name) => hidden(level([{ side: "near" }]), name));
    expect(Number(end) + Number(middle)).toBe(16); // 8 in × 24 ft
    expect(hidden(level([{ side: "left" }]), "gable-beams")).toBe("10.67"); // 8 in × 16 ft
  });

  it("are none of posts behind upright boards, which lie on rails: one wide face of those", () => {
    const upright = { ...SHELTER, walls: { sides: [{ side: "near" as const }] } };
    expect(hidden(upright, "posts")).toBeUndefined();
    const rails = laidPieces(upright).groups.find(({ name }) => name === "wall-rails-near");
    expect(rails?.rules.hiddenFaces).toBe("one-wide");
  });

  it("are an edge of studs, of joists below a floor, and of rafters below a closed deck, not below purlins", () => {
    expect(hidden(level([{ side: "near" }]), "wall-studs-near")).toBe("11.50"); // 9 × 2 in × 92 in
    const floored = { ...SHELTER, floor: { joistSpacing: "16 in" } };
    expect(hidden(floored, "joists")).toBe("50.67"); // 19 × 2 in × 16 ft
    // 4 in 12: a 3-4-5 like slope of √160; 26 rafters, each 2 in × its length.
    const { sheet, groups } = laidPieces({ ...SHELTER, deck: { kind: "sheets" } });
    const rafters = groups.find(({ name }) => name === "rafters");
    if (!rafters) throw new Error("no rafters");
    const edges = sheet.in(rafters.totalLength, "ft").dividedBy(6).toFixed(2);
    expect(hidden({ ...SHELTER, deck: { kind: "sheets" } }, "rafters")).toBe(edges);
    expect(hidden({ ...SHELTER, deck: { kind: "solid-boards" } }, "fly-rafters")).toBeDefined();
    expect(hidden(SHELTER, "rafters")).toBeUndefined();
  });

  it("are those of the end rafters behind the boards of a gable, one of either slope", () => {
    const gable = level([{ side: "left", part: "gable" }]);
    const length = laidPieces(gable).groups.find(({ name }) => name === "rafters")?.length;
    const feet = length && laidPieces(gable).sheet.in(length, "ft");
    expect(hidden(gable, "rafters")).toBe(feet?.toFixed(2)); // 2 × 6 in × the rafter
    expect(hidden(level([{ side: "left", part: "below-plate" }]), "rafters")).toBeUndefined();
  });

  it("are counted near and far where the overhangs differ, and on one corner each of a single slope", () => {
    const uneven = { ...level([{ side: "left" }]), overhang: { eave: "6 in", farEave: "2 ft" } };
    const one = laidPieces(uneven).groups.find(({ name }) => name === "rafters-far")?.length;
    expect(hidden(uneven, "rafters-far")).toBe(one && laidPieces(uneven).sheet.in(one, "ft").dividedBy(2).toFixed(2));
    const leanTo: StructureShape = {
      kind: "lean-to",
      span: "8 ft",
      length: "12 ft",
      eaveHeight: "7 ft",
      bays: 2,
      walls: { boards: "horizontal", sides: [{ side: "left" }] },
    };
    expect(hidden(leanTo, "low-posts")).toBe("3.00"); // 0.5 × (84 − 8 − 4) in
    expect(Number(hidden(leanTo, "high-posts"))).toBeGreaterThan(3);
  });

  it("are left to the user who says which faces lie hidden", () => {
    const own = { ...level([{ side: "near" }]), groups: { posts: { hiddenFaces: "none" as const } } };
    expect(hidden(own, "posts")).toBeUndefined();
    const joists = { ...SHELTER, floor: {}, groups: { joists: { hiddenFaces: "none" as const } } };
    expect(hidden(joists, "joists")).toBeUndefined();
  });
});
