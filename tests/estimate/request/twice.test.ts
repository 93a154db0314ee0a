import { describe, expect, it } from "vitest";
import { FaultError } from "../../../src/estimate/faults.js";
import { demoCatalog, estimated, request } from "../../helpers/estimating.js";

const structure = {
  kind: "pieces",
  pieces: [{ name: "rails", section: "2 x 6 in", length: "9 ft", count: 4 }],
};
const body = { structure, catalog: { demo: "orchard-yard" } };

describe("what a request may say once", () => {
  const mill = { item: "chainsaw-mill", terms: "hired" };
  const yard = demoCatalog("orchard-yard") as { taxes: { name: string }[] };
  it.each<[string, object]>([
    ["duplicate-name at /shop/equipment/1/item", { shop: { equipment: [mill, { ...mill, terms: "bought" }] } }],
    ["duplicate-name at /options/coverings/1", { options: { coverings: ["ribbed-steel", "ribbed-steel"] } }],
    ["duplicate-name at /catalog/taxes/1/name", { catalog: { ...yard, taxes: [yard.taxes[0], yard.taxes[0]] } }],
    ["currency-mix at /currency", { catalog: yard, currency: "EUR" }],
  ])("is refused as %s", (said, more) => {
    expect(() => request({ ...body, ...more })).toThrow(said);
  });
});

describe("a line of one's own that counts for nothing", () => {
  const faults = (...formulas: string[]) => {
    const lines = formulas.map((formula, i) => ({ name: `l${i}`, label: "a line", formula }));
    try {
      estimated({ ...body, lines });
      return [];
    } catch (error) {
      if (error instanceof FaultError) return error.faults.map(({ at, cure }) => `${at}: ${cure}`);
      throw error;
    }
  };

  it("is refused, with person-h as the cure for hours on the clock", () => {
    expect(faults("6 h")).toEqual([expect.stringMatching(/^\/lines\/0\/formula: Write person-h/)]);
    expect(faults("5")).toEqual([expect.stringMatching(/^\/lines\/0\/formula: Let it come to money/)]);
  });

  it("is taken where another line names it, as are money and person-hours", () => {
    expect(faults("5", "own.l0 * 3 USD", "6 person-h")).toEqual([]);
  });
});
