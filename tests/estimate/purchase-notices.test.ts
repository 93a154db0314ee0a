import { describe, expect, it } from "vitest";
import { demoBody, demoCatalog, estimated } from "../helpers/estimating.js";

const rails = (more: object = {}) => ({
  structure: {
    kind: "pieces",
    pieces: [{ name: "rails", role: "other", count: 10, section: "2 x 4 in", length: "7 ft 6 in" }],
  },
  catalog: { demo: "orchard-yard" },
  ...more,
});

/** The yard with so many sticks of 8 ft of its 2 × 4, and no other length. */
function fewSticks(available: number) {
  const catalog = demoCatalog("orchard-yard") as { lumber: { name: string; sold: { lengths: object[] } }[] };
  const lengths = [{ length: "8 ft", price: "$3.98", available }];
  const lumber = catalog.lumber.map((one) =>
    one.name === "spf-2x4" ? { ...one, sold: { ...one.sold, lengths } } : one,
  );
  return { ...catalog, lumber };
}

const notices = (body: unknown) => estimated(body).notices;

describe("spares for defects", () => {
  it("that the yard has not are told, and how many it has", () => {
    const share = { "buy.wastage": "30 %" };
    const said = (available: number) =>
      notices(rails({ catalog: fewSticks(available), assumptions: share })).filter(({ text }) => /spare/.test(text));
    // Ten are cut; three of ten are wanted to spare.
    expect(said(13)).toEqual([]);
    expect(said(11)).toMatchObject([
      { code: "short", text: expect.stringContaining("of 3 spare sticks for defects only 1 can be had") },
    ]);
    expect(said(10)).toMatchObject([
      { code: "short", text: expect.stringContaining("of 3 spare sticks for defects none can be had") },
    ]);
  });
});

describe("boards at hand", () => {
  const atHand = [
    { section: "2 x 4 in", length: "8 ft", count: 4 },
    { section: "2 x 12 in", length: "12 ft", count: 1 },
  ];

  it("are named in the verdict where they are cut, stand on the shopping list at no cost, and are told where they lie idle", () => {
    const { verdict, routes, notices: told } = estimated(rails({ atHand }));
    expect(verdict.reasons.filter((one) => one.includes("that you have"))).toEqual([
      "It cuts 4 boards that you have, at no cost: 2 x 4 in spruce-pine-fir No. 2, S-DRY, 8' (4).",
    ]);
    const lines = routes.mix.lines.filter((line) => line.atHand);
    expect(lines.map(({ quantity, amount }) => [quantity.value.toFixed(), amount?.value.toFixed()])).toEqual([
      ["4", "0"],
    ]);
    expect(told.filter(({ code }) => code === "unused")).toMatchObject([
      { at: "/atHand/1", text: expect.stringContaining("Nothing is cut from the 1 at hand of 2 × 12 in, 12'") },
    ]);
  });
});

describe("a fastener that is sold in another size", () => {
  it("is shown among the substitutions with what it is longer by, and one cut from a longer one as that", () => {
    const said = notices(demoBody("orchard-shelter")).filter(({ code }) => code === "substitution");
    const texts = said.map(({ text }) => text).join("\n");
    expect(texts).toMatch(/hexagon-head bolt 1\/2 in × 5 in wanted, 6 in is the next length sold: 1 in more/);
    expect(texts).toMatch(/threaded rod 1\/2 in × [\d /]+ in wanted, \d are cut from one of 36 in/);
  });

  it("is not where it is sold as wanted", () => {
    const { common } = estimated(demoBody("orchard-shelter"));
    const plain = common.lines.find(({ label }) => label.startsWith("Ring-shank nail"));
    expect([plain?.label !== undefined, plain?.differences]).toEqual([true, undefined]);
  });
});
