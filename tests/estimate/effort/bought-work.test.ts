import { describe, expect, it } from "vitest";
import { workOf } from "../../../src/estimate/compare/work.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

/** Lumber of one size at the yard, actual, 8 ft long, and what the shop uses up. */
function yard(section: string, surface: "rough" | "dressed") {
  const sold = { by: "length", price: "$2/ft", lengths: ["8 ft"] };
  return {
    name: "one size",
    currency: "USD",
    lumber: [{ species: "spruce-pine-fir", section, sizing: "actual", surface, sold }],
    consumables: [
      { item: "planer-knives", price: "$60.00" },
      { item: "planer-knife-sharpening", price: "$30.00" },
      { item: "sanding-discs", price: "$1.00" },
    ],
    equipment: [
      { item: "planer", hirePerDay: "$40/day" },
      { item: "sander", hirePerDay: "$10/day" },
      { item: "table-saw", hirePerDay: "$30/day" },
      { item: "track-saw", hirePerDay: "$20/day" },
    ],
  };
}

/** Ten rails of 4 ft, all bought. */
function bought(section: string, sold: string, { surface = "dressed", comes = "dressed", ...more }: BoughtCase = {}) {
  const piece = { name: "rails", role: "other", count: 10, section, length: "4 ft", surface };
  const made = estimated({
    structure: { kind: "pieces", pieces: [piece] },
    catalog: yard(sold, comes),
    assumptions: { "dress.boughtShare": "100 %", ...more.assumptions },
    shop: more.shop,
  });
  const { sheet } = made.basis;
  const shown = (name: string, unit: string) => sheet.in(sheet.find(name) as never, unit).toNumber();
  const line = (name: string) => made.routes.buy.lines.find((one) => one.name === `bought.${name}`);
  const { dressing } = workOf(made.basis, made.common, made.takeoffs.weights, made.routes.buy);
  return { made, shown, line, choice: dressing[0] };
}

interface BoughtCase {
  readonly surface?: "rough" | "dressed";
  readonly comes?: "rough" | "dressed";
  readonly assumptions?: Readonly<Record<string, string>>;
  readonly shop?: object;
}

describe("ripping down what the yard sells larger", () => {
  it("is two rips from both faces of a 6 × 6: 6 in deep to width, 5 in deep to thickness, a saw of 3 1/8 in", () => {
    // 3 × 5 in wanted: 2 + 2 cuts of 4 ft at 12 ft/min, a pass of the planer on each sawn face at 22, 4 min of handling a side.
    const { shown, choice, made } = bought("3 x 5 in", "6 x 6 in");
    expect(shown("work.rails.ripDown", "person-min")).toBeCloseTo((4 * 4) / 12 + (2 * 4) / 22 + 2 * 4, 6);
    expect(shown("bought.hours.dress", "person-min")).toBeCloseTo(10 * shown("work.rails.ripDown", "person-min"), 6);
    expect(shown("bought.hours.dressByHand", "person-min")).toBe(0);
    expect(choice).toMatchObject({ by: "machine", rip: "both-faces" });
    expect(made.notices.some(({ text }) => text.includes("6 × 6 in and is ripped down"))).toBe(true);
  });

  it.each([
    ["dress.heaviest", "20 lb", "too heavy to feed: 35 lb, at most 20 lb"],
    ["dress.longest", "3 ft", "too long for the room at the machines: 4', at most 3'"],
    ["dress.deepestRip", "2 in", "too deep to rip, even from both faces: 6 in, at most 4 in"],
  ])("goes along a guide by hand past the machines' %s of %s", (name, limit, because) => {
    const { shown, choice } = bought("3 x 5 in", "6 x 6 in", { assumptions: { [name]: limit } });
    expect(choice).toMatchObject({ by: "hand" });
    expect(choice?.because).toContain(because);
    // A saw of 2 1/2 in: 3 cuts 6 in deep and 2 cuts 5 in deep, 4 ft at 4 ft a minute, and the handling.
    const hand = shown("bought.hours.dressByHand", "person-min") / 10;
    expect(hand).toBeGreaterThanOrEqual(5 + 8 - 1e-9);
    expect(hand).toBeGreaterThan(shown("bought.hours.dress", "person-min") / 10);
  });

  it("without a planer has its sawn faces dressed by hand: 4 ft × 11 in at 15 ft² an hour", () => {
    const { shown, choice, line } = bought("3 x 5 in", "6 x 6 in", { shop: { planer: "none" } });
    expect(shown("bought.hours.dress", "person-min") / 10).toBeCloseTo((4 * 4) / 12 + 2 * 4, 6);
    expect(shown("bought.hours.dressByHand", "person-min") / 10).toBeCloseTo((((4 * 11) / 12) * 60) / 15, 6);
    expect(choice?.because).toContain("the sawn faces are planed by hand: there is no planer");
    expect(line("use.planer-knives")).toBeUndefined();
  });

  it("plans no face of what is wanted rough", () => {
    const { shown, line } = bought("3 x 5 in", "6 x 6 in", { surface: "rough" });
    expect(shown("work.rails.ripDown", "person-min")).toBeCloseTo((4 * 4) / 12 + 2 * 4, 6);
    expect(line("use.planer-knives")).toBeUndefined();
  });
});

describe("knives wear by the faces that go through the planer", () => {
  // Ten of 2 × 4 in × 4 ft: 2 × (2 + 4) ÷ 12 × 4 ft² each, and two ends of 8 in².
  const faces = 10 * (4 + (2 * 8) / 144);

  it("of lumber bought rough, on the all-bought route: their share of a sharpening at $30 and of a set at $60", () => {
    const { shown, line } = bought("2 x 4 in", "2 x 4 in", { comes: "rough" });
    expect(shown("bought.planed", "ft2")).toBeCloseTo(faces, 9);
    expect(line("use.planer-knife-sharpening")?.amount?.value.toNumber()).toBe(0.41); // 41.1 ÷ 3000 × $30
    expect(line("use.planer-knives")?.amount?.value.toNumber()).toBe(0.1); // 41.1 ÷ 3000 ÷ 8 × $60
    // What comes rough is sanded all over, and its edges are eased.
    expect(shown("bought.sanded", "ft2")).toBeCloseTo(faces, 9);
    expect(shown("bought.hours.sand", "person-h")).toBeCloseTo(faces / 45 + (10 * 4 * 4) / 450, 9);
  });

  it("but not of what comes dressed, nor of what hands dress", () => {
    const smooth = bought("2 x 4 in", "2 x 4 in");
    expect(smooth.shown("bought.planed", "ft2")).toBe(0);
    expect(smooth.shown("bought.sanded", "ft2")).toBeCloseTo(0.4 * faces, 9);
    const hand = bought("2 x 4 in", "2 x 4 in", { comes: "rough", assumptions: { "dress.heaviest": "1 lb" } });
    expect(hand.shown("bought.planed", "ft2")).toBe(0);
    expect(hand.shown("bought.hours.dressByHand", "person-h")).toBeGreaterThan(2);
    expect(smooth.line("use.planer-knives")).toBeUndefined();
    expect(hand.line("use.planer-knives")?.amount?.value.toNumber()).toBe(0);
  });

  it("of milled pieces only where machines dress them", () => {
    const planed = (more: object) => {
      const { sheet } = estimated({ ...demoBody("orchard-shelter"), ...more }).basis;
      return sheet.in(sheet.find("milled.planed") as never, "ft2").toNumber();
    };
    expect(planed({})).toBeGreaterThan(300);
    expect(planed({ assumptions: { "dress.heaviest": "1 lb" } })).toBe(0);
    expect(planed({ shop: { planer: "none" } })).toBe(0);
  });
});

describe("machines of the shop on the all-bought route", () => {
  const shop = (...items: string[]) => ({ equipment: items.map((item) => ({ item, terms: "hired" })) });

  it("are hired while they are at work: the planer for the dressing, the sander for the sanding, two at it for 6 h a day", () => {
    const { shown, line } = bought("2 x 4 in", "2 x 4 in", { comes: "rough", shop: shop("planer", "sander") });
    for (const [item, stage] of [
      ["planer", "dress"],
      ["sander", "sand"],
    ] as const) {
      const hours = shown(`bought.hours.${stage}`, "person-h") / 2;
      expect(shown(`bought.hire.${item}.hours`, "h")).toBeCloseTo(hours, 9);
      expect(shown(`bought.hire.${item}.days`, "day")).toBe(Math.ceil(hours / 6));
    }
    expect(line("hire.planer")?.amount?.value.toNumber()).toBe(40);
    expect(line("hire.sander")?.amount?.value.toNumber()).toBe(10);
  });

  it("cost nothing where nothing is dressed", () => {
    const { line } = bought("2 x 4 in", "2 x 4 in", {
      surface: "rough",
      comes: "rough",
      shop: shop("planer", "sander"),
    });
    expect(line("hire.planer")).toBeUndefined();
    expect(line("hire.sander")?.amount?.value.toNumber()).toBe(0);
  });

  it("count what hands dress for the saw on its guide, and what is ripped at the mill for the table saw", () => {
    const hand = bought("2 x 4 in", "2 x 4 in", {
      comes: "rough",
      assumptions: { "dress.heaviest": "1 lb" },
      shop: shop("track-saw", "planer"),
    });
    const stages = ["cut", "dressByHand"].reduce(
      (sum, stage) => sum + hand.shown(`bought.hours.${stage}`, "person-h"),
      0,
    );
    expect(hand.shown("bought.hire.track-saw.hours", "h")).toBeCloseTo(stages / 2, 9);
    expect(hand.line("hire.planer")?.amount?.value.toNumber()).toBe(0);
    const equipment = [{ item: "table-saw", terms: "hired" }];
    const { sheet } = estimated({ ...demoBody("orchard-shelter"), shop: { mill: "chainsaw-mill", equipment } }).basis;
    const hours = (name: string) => sheet.in(sheet.find(name) as never, "person-h").toNumber();
    const atSaw = sheet.in(sheet.find("milled.hire.table-saw.hours") as never, "h").toNumber();
    expect(atSaw).toBeCloseTo((hours("milled.hours.edge") + hours("milled.hours.dress")) / 2, 9);
    expect(hours("milled.hours.edge")).toBeGreaterThan(1);
  });
});

describe("fuel of what hauls", () => {
  const demo = demoBody("orchard-shelter");
  const made = (shop: object, assumptions: object = {}) => {
    const { routes, basis, common } = estimated({ ...demo, shop: { mill: "chainsaw-mill", ...shop }, assumptions });
    const shown = (name: string, unit: string) => basis.sheet.in(basis.sheet.find(name) as never, unit).toNumber();
    const line = (route: typeof routes.buy | undefined, name: string) =>
      route?.lines.find((one) => one.name.endsWith(`.use.${name}`));
    return { routes, shown, line, common };
  };

  it("is 3 litres for each hour that a tractor is at the logs and the lumber, and moves it to the site on either route", () => {
    const { routes, shown, line, common } = made({ getOut: "tractor", carry: "tractor" });
    const hours = shown("milled.hours.getOut", "person-h") + shown("milled.hours.carry", "person-h");
    expect(shown("milled.use.hauling-fuel.quantity", "L")).toBeCloseTo(3 * hours, 9);
    expect(line(routes.mill, "hauling-fuel")?.amount?.value.gt(0)).toBe(true);
    expect(line(routes.buy, "hauling-fuel")).toBeUndefined();
    const moved = common.lines.find(({ label }) => label === "Fuel to move to the site");
    expect(moved?.amount?.value.gt(0)).toBe(true);
    expect(shown("common.moveFuel", "L")).toBeCloseTo(3 * shown("common.hours.move", "person-h"), 9);
  });

  it("is none of a winch wound by hand, and that of its engine where the rate says so: two people at each log", () => {
    expect(made({ getOut: "winch" }).routes.mill?.lines.some(({ name }) => name.endsWith("hauling-fuel"))).toBe(false);
    const { shown } = made({ getOut: "winch" }, { "winch.fuel": "0.6 L/h" });
    expect(shown("milled.use.hauling-fuel.quantity", "L")).toBeCloseTo(
      (0.6 * shown("milled.hours.getOut", "person-h")) / 2,
      9,
    );
  });

  it("is a gallon and a half for each load that is fetched", () => {
    const { routes, shown, line } = made({ lumber: "fetched" });
    expect(shown("bought.trips", "")).toBeGreaterThanOrEqual(1);
    expect(shown("bought.use.fetching-fuel.quantity", "gal")).toBeCloseTo(1.5 * shown("bought.trips", ""), 9);
    expect(line(routes.buy, "fetching-fuel")?.amount?.value.gt(0)).toBe(true);
    expect(made({}).routes.buy.lines.some(({ name }) => name.endsWith("fetching-fuel"))).toBe(false);
  });

  it("of a hired tractor and trailer comes on top of their days", () => {
    const equipment = ["tractor", "trailer"].map((item) => ({ item, terms: "hired" }));
    const { routes, shown, line } = made({ getOut: "tractor", lumber: "fetched", equipment });
    expect(shown("bought.hire.trailer.days", "day")).toBeGreaterThanOrEqual(1);
    expect(shown("milled.hire.tractor.days", "day")).toBeGreaterThanOrEqual(1);
    // No yard of the demo hires them out: a line without a price, and not a zero.
    const hire = routes.mill?.lines.find(({ name }) => name === "milled.hire.tractor");
    expect([hire?.amount, (hire?.add?.length ?? 0) > 10]).toEqual([undefined, true]);
    expect(line(routes.mill, "hauling-fuel")).toBeDefined();
  });
});
