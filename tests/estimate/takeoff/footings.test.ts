import { describe, expect, it } from "vitest";
import type { FootingsShape } from "../../../src/estimate/request/structure-footings.js";
import { type FootingsTakeoff, layFootings } from "../../../src/estimate/takeoff/footings.js";
import { laidGable } from "./shelter.js";

function laid(shape: FootingsShape, overrides: Readonly<Record<string, string>> = {}) {
  const { sheet, groups, assumed, defaults, units } = laidGable({}, { overrides });
  const posts = groups.filter(({ role }) => role === "post");
  const takeoff: FootingsTakeoff = layFootings(sheet, { shape, posts, assumed, defaults }, units);
  const needed = Object.fromEntries(
    takeoff.needs.map(({ name, quantity }) => [name.replace("footings.", ""), quantity]),
  );
  return { ...takeoff, sheet, needed };
}

// Eight posts. A hole of 12 in holds π ÷ 4 = 0.7854 ft³ a foot.
describe("footings of a gable", () => {
  it("are dug below the frost, one a post, with gravel under the concrete", () => {
    const { sheet, holes, holeDepth, dug } = laid({ frostDepth: "36 in" });
    expect([holes.value.toNumber(), sheet.in(holeDepth, "in").toNumber()]).toEqual([8, 40]);
    expect(sheet.in(dug, "ft3").toNumber()).toBeCloseTo((8 * (Math.PI / 4) * 40) / 12, 9);
  });

  it("are never shallower than a foot: IRC R403.1.4", () => {
    const { sheet, holeDepth } = laid({ frostDepth: "0 in", gravel: "0 in" });
    expect(sheet.in(holeDepth, "in").toNumber()).toBe(12);
  });

  it("fill as a published example does: 12 in by 2 ft 9 in takes 3.6 bags of 0.6 ft³", () => {
    // constructionwork.com, columns and posts: 3.14 × 0.25 × 2.75 = 2.15 ft³ (2.16), 3.6 bags of 80 lb, nothing for waste.
    const { sheet, concrete, needed } = laid({ frostDepth: "29 in", aboveGround: "4 in" }, { "footing.waste": "0 %" });
    if (!concrete) throw new Error("no concrete");
    expect(sheet.in(concrete, "ft3").toNumber() / 8).toBeCloseTo(2.16, 2);
    expect(needed["concrete-bag"]?.value.toNumber()).toBe(Math.ceil(8 * 3.6));
  });

  it("take a block and a hole full of gravel where they are precast", () => {
    const { needed, concrete, sheet } = laid({ kind: "precast", frostDepth: "24 in" }, { "footing.waste": "0 %" });
    expect(concrete).toBeUndefined();
    expect(needed["pier-block"]?.value.toNumber()).toBe(8);
    const { gravel } = needed;
    expect(gravel && sheet.in(gravel, "ft3").toNumber()).toBeCloseTo(8 * (Math.PI / 4) * 2, 9);
  });

  it("hold the concrete above the ground in tubes, cut from what is sold", () => {
    const tubes = (shape: Partial<FootingsShape>) => {
      const { sheet, tube, needed } = laid({ frostDepth: "36 in", ...shape });
      const length = tube && sheet.in(tube.length, "in").toNumber();
      return [length, needed["form-tube"]?.value.toNumber()];
    };
    // 4 in above the ground and 12 in into it: three out of 4 ft, so eight take three.
    expect(tubes({})).toEqual([16, 3]);
    // 9 in above and all 36 in below: one out of 4 ft each.
    expect(tubes({ aboveGround: "9 in", tubeBelow: "4 ft" })).toEqual([45, 8]);
    // 20 in and 36 in are more than 4 ft: two joined, each.
    expect(tubes({ aboveGround: "20 in", tubeBelow: "36 in" })).toEqual([56, 16]);
    expect(tubes({ form: "none" })).toEqual([undefined, undefined]);
    expect(tubes({ aboveGround: "0 in" })).toEqual([undefined, undefined]);
    expect(tubes({ kind: "precast" })).toEqual([undefined, undefined]);
  });

  it("are bored for hire by the hole, in no time of one's own", () => {
    const { needed, dig } = laid({ frostDepth: "36 in", digging: "hired" });
    expect([needed["post-hole-auger"]?.value.toNumber(), dig.value.toNumber()]).toEqual([8, 0]);
  });

  it("are bored faster than they are dug", () => {
    const by = (digging: "hand" | "auger") => laid({ frostDepth: "36 in", digging }).dig.value.toNumber();
    expect(by("auger")).toBeLessThan(by("hand"));
  });

  it("want concrete by volume where it comes mixed", () => {
    const { needed } = laid({ frostDepth: "36 in", concrete: "ready-mixed" });
    expect(needed["concrete-bag"]).toBeUndefined();
    expect(needed.concrete?.unit.dimension).toBe("length3");
  });
});
