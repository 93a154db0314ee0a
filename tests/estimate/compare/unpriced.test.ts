import { describe, expect, it } from "vitest";
import { demoCatalog, estimated } from "../../helpers/estimating.js";

type Offer = { name: string; sold: { price?: unknown; lengths?: { price?: unknown }[] } };
type Yard = { lumber: Offer[]; [department: string]: unknown };

const yardWithout = (name: RegExp): Yard => {
  const yard = demoCatalog("orchard-yard") as unknown as Yard;
  const unpriced = (offer: Offer): Offer => ({
    ...offer,
    sold: { ...offer.sold, price: null },
  });
  return { ...yard, lumber: yard.lumber.map((offer) => (name.test(offer.name) ? unpriced(offer) : offer)) };
};

/** Shelves and a bench from two good pines: with all prices, milling both pays. */
const body = (catalog: unknown) => ({
  structure: {
    kind: "pieces",
    pieces: [
      { name: "benches", label: "Bench tops", role: "board", count: 4, section: "2 x 8 in", length: "6 ft" },
      { name: "shelves", label: "Shelf boards", role: "board", count: 10, section: "1 x 8 in", length: "5 ft" },
    ],
  },
  logs: [1, 2, 3].map((n) => ({
    name: `pine-${n}`,
    species: "eastern-white-pine",
    length: "12 ft 6 in",
    smallDiameter: "14 in",
  })),
  catalog,
  labor: { valueOfHour: "$5/h" },
});

describe("a group without a price to be bought at", () => {
  const all = estimated(body(demoCatalog("orchard-yard")));
  const some = estimated(body(yardWithout(/1x8/)));
  const none = estimated(body(undefined));

  it("is not bought because it seems to cost nothing: the verdict is not turned round", () => {
    expect(all.verdict.mill).toEqual(["Bench tops", "Shelf boards"]);
    expect(some.verdict.mill).toEqual(all.verdict.mill);
    expect(some.verdict.headline).toBe("Mill everything from your logs. No price says whether to buy shelf boards.");
    expect(some.verdict.reasons[0]).toMatch(/^No price is known for shelf boards\./);
  });

  it("leaves what buying everything costs a floor, and claims no saving against it", () => {
    expect(some.verdict.reasons.join(" ")).toMatch(/buying everything costs more than \$\d/);
    expect(some.verdict.reasons.join(" ")).not.toMatch(/Milling saves|No mix of milling and buying/);
  });

  it("has no saving of its own, and says why", () => {
    expect(some.decision.groups.map(({ name }) => name)).toEqual(["benches"]);
    expect(some.verdict.groups.find(({ name }) => name === "shelves")?.why).toBe(
      "No price says what buying it would cost.",
    );
  });

  it("leaves nothing decided where it is so with all of them", () => {
    expect(none.verdict.headline).toMatch(/^No decision yet: /);
    expect(none.verdict.reasons.join(" ")).not.toMatch(/\$0\.00/);
  });
});

describe("logs that give nothing", () => {
  it("leave everything bought, and nothing said of milling", () => {
    const thin = [{ name: "stick", species: "eastern-white-pine", length: "8 ft", smallDiameter: "3 in" }];
    const found = estimated({ ...body(demoCatalog("orchard-yard")), logs: thin });
    expect(found.routes.mix).toBe(found.routes.buy);
    expect(found.verdict.headline).toBe("Buy everything: milling does not pay here.");
    expect(found.verdict.reasons.join(" ")).not.toMatch(/Milling saves|dry for about/);
    expect(found.verdict.first).not.toMatch(/ungraded/);
  });
});

describe("fasteners without a price", () => {
  const adds = (body: object) =>
    estimated(body)
      .common.lines.map((line) => line.add ?? "")
      .join("\n");

  it("are asked for as they are sold: gauges in decimals, connectors by what they take, lengths alone or longer", () => {
    const bare = adds({ structure: { kind: "lean-to", span: "8 ft", length: "12 ft", highSide: "ledger" } });
    expect(bare).toContain("Add ring-shank nail 0.148 in × 1 1/2 in or longer, ");
    expect(bare).toContain("Add joist hanger for 2 in × 6 in, ");
    expect(bare).toMatch(/Add hexagon nut 1\/2 in, coated/);
    expect(bare).not.toMatch(/1\/8 in/);
  });
});
