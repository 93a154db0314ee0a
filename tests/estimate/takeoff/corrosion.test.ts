import { describe, expect, it } from "vitest";
import { exposureIn, leastClass, together } from "../../../src/estimate/takeoff/corrosion.js";

const classIn = (woods: string[], treated = false) => leastClass(exposureIn({ woods, treated }));

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
      exposureIn({ woods: [], treated: false }),
      exposureIn({ woods: ["white-oak"], treated: true }),
    ]);
    expect(meeting).toEqual({ outdoors: true, treated: true, tannin: true });
  });
});
