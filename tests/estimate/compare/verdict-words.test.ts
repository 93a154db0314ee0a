/** Sentences of the verdict that a carpenter would check by hand, on yards that sell just what the case is about. */
import { describe, expect, it } from "vitest";
import { headline } from "../../../src/estimate/compare/verdict-headline.js";
import { estimated } from "../../helpers/estimating.js";

const PINE = "eastern-white-pine";
const stick = (section: string, price: string) => ({
  ...{ name: "stick", label: `${section} pine`, species: PINE, section, surface: "dressed" },
  sold: { by: "piece", lengths: [{ length: "8 ft", price }] },
});
const job = (section: string, sold: string, log = "9 in") => ({
  structure: {
    kind: "pieces",
    pieces: [{ name: "boards", role: "other", count: 8, section, length: "6 ft" }],
  },
  catalog: { name: "A yard", currency: "USD", lumber: [stick(sold, "$20.00")] },
  options: { finish: "none" },
  assumptions: { "buy.wastage": "0 %", "buy.endTrim": "0 in" },
  logs: [{ name: "a", species: PINE, length: "8 ft", smallDiameter: log }],
});

describe("what is bought far too large", () => {
  it("is measured against what comes out of the stick, not against wood that it has not", () => {
    // 8 of 11 1/4 in wide, both 3/4 thick: 1.41 times. Eight sticks are $160, of which 3 1/4 in 11 1/4 are $46.22.
    const { changes } = estimated(job("1 x 8 in", "1 x 12 in")).verdict;
    const said = changes.find((text) => text.includes("ripped off"));
    expect(said).toMatch(/holds 1\.4 times the wood/);
    expect(said).toContain("about $46.22");
  });
});

describe("the headline", () => {
  it("names what is mostly bought first where nothing is mostly milled", () => {
    const { basis, routes } = estimated(job("2 x 6 in", "2 x 6 in", "11 in"));
    const { mill } = routes;
    if (!mill) throw new Error("nothing is milled");
    const bought = mill.plan.bought.reduce((sum, { count }) => sum + count, 0);
    expect([bought > 4, bought < 8]).toEqual([true, true]);
    expect(headline(basis, mill.plan)).toBe("Buy most of the boards; mill the rest.");
  });
});
