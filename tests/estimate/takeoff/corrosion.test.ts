import { describe, expect, it } from "vitest";
import type { Climate } from "../../../src/catalog/fasteners.js";
import { exposureIn, leastClass, together } from "../../../src/estimate/takeoff/corrosion.js";

const classIn = (woods: string[], treated = false, climate: Climate = "outdoors") =>
  leastClass(exposureIn({ woods, treated, climate }));

describe("protection against corrosion", () => {
  // Wood Handbook, chapter 16: redwood, the cedars and oak stain with iron; hot-dip galvanized, stainless or aluminium.
  it.each([["western-redcedar"], ["white-oak"], ["redwood"]])("is hot-dip galvanizing at least in %s", (wood) => {
    expect(classIn([wood])).toBe("hot-dip-galvanized");
  });

  it("is never plain or electroplated steel outdoors", () => {
    expect(classIn(["eastern-white-pine"])).toBe("coated");
  });

  // IRC R317.3.1: in preservative-treated wood hot-dip galvanized or stainless; what a coating is rated for its maker says.
  it("is hot-dip galvanizing at least in treated posts", () => {
    expect(classIn(["southern-pine"], true)).toBe("hot-dip-galvanized");
  });

  it("is that of the worst of the woods that may be used, and of the pieces that meet", () => {
    expect(classIn(["eastern-white-pine", "white-oak"])).toBe("hot-dip-galvanized");
    const meeting = together([
      exposureIn({ woods: [], treated: false, climate: "outdoors" }),
      exposureIn({ woods: ["white-oak"], treated: true, climate: "sheltered" }),
    ]);
    expect(meeting).toEqual({ climate: "outdoors", treated: true, tannin: true });
  });

  // EN 1995-1-1, table 4.1, nails and screws to 4 mm: nothing in service class 1, Fe/Zn 12c in 2, Fe/Zn 25c (hot-dip: Z350)
  // in 3. IRC table R507.2.3: stainless within 300 ft of a salt-water shore. All from memory.
  it.each([
    ["dry", "plain"],
    ["sheltered", "electroplated"],
    ["outdoors", "coated"],
    ["salt", "stainless"],
  ] as const)("rises with what surrounds it: %s, %s", (climate, least) => {
    expect(classIn(["eastern-white-pine"], false, climate)).toBe(least);
  });

  it("asks nothing of tannin where wood stays dry, and as much of treatment as anywhere", () => {
    expect(classIn(["white-oak"], false, "dry")).toBe("plain");
    expect(classIn(["white-oak"], false, "sheltered")).toBe("hot-dip-galvanized");
    expect(classIn(["southern-pine"], true, "dry")).toBe("hot-dip-galvanized");
    expect(classIn(["white-oak"], true, "salt")).toBe("stainless");
  });
});
