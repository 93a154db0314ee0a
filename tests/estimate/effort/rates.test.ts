import { describe, expect, it } from "vitest";
import { assumptionOf } from "../../../src/catalog/assumptions.js";
import { MILL_MEASURES } from "../../../src/catalog/mills.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

/** What is no rate of work: how much is bought, lapped or fixed, and levels. */
const NO_RATE =
  /^(covering|fastener|finish\.(waste|jointShare|endSealer|rough|smooth|second|later|recoat|between).*|buy\.(endTrim|wastage)|priceLevel|pace|moisture|drying\.)/;

describe("every rate of the demo", () => {
  const band = estimated({
    ...demoBody("orchard-shelter"),
    shop: { mill: "manual-band-mill", carry: "cart", getOut: "tractor" },
  });
  const cells = [estimated(demoBody("orchard-shelter")), band].flatMap(({ basis }) => basis.sheet.cells);
  const rates = cells.filter(({ range, name }) => range && !NO_RATE.test(name));

  it("has a name, low to high, a unit and a source", () => {
    expect(rates.length).toBeGreaterThan(80);
    for (const { name, label, range, value, source } of rates) {
      expect([name, range?.low.lte(value) && range.high.gte(value)]).toEqual([name, true]);
      expect(label.length).toBeGreaterThan(5);
      expect([name, source?.length ?? 0]).not.toEqual([name, 0]);
    }
  });

  it("says how one measures one's own", () => {
    const silent = rates.filter(({ name }) => !(assumptionOf(name)?.measure ?? MILL_MEASURES[name]));
    expect([...new Set(silent.map(({ name }) => name))]).toEqual([]);
  });
});

describe("consumption", () => {
  const used = (body: object) => {
    const { routes } = estimated(body);
    return (routes.mill ?? routes.buy).lines.map(({ name }) => name.split(".").at(-1));
  };
  const demo = demoBody("orchard-shelter");

  it("of a chain is fuel, two oils, chain, files, discs, knives and current", () => {
    expect(used(demo)).toEqual(
      expect.arrayContaining([
        "fuel",
        "two-stroke-oil",
        "bar-oil",
        "chain",
        "files",
        "sanding-discs",
        "planer-knives",
        "planer-knife-sharpening",
        "electricity",
      ]),
    );
  });

  it("of a band is fuel, bands and their sharpening: no bar oil, no files", () => {
    const lines = used({ ...demo, shop: { mill: "manual-band-mill" } });
    expect(lines).toEqual(expect.arrayContaining(["fuel", "band", "band-sharpening"]));
    expect(lines).not.toContain("bar-oil");
    expect(lines).not.toContain("files");
  });

  it("of a chain that a service sharpens is money instead of files and hours", () => {
    const self = estimated(demo).routes.mill;
    const service = estimated({
      ...demo,
      shop: { mill: "chainsaw-mill", longestBolt: "18 ft", sharpening: "service" },
    });
    expect(used({ ...demo, shop: { mill: "chainsaw-mill", sharpening: "service" } })).toContain("chain-sharpening");
    const hours = (made: typeof self) => made?.milling?.stages.sharpen.value.toNumber() ?? Number.NaN;
    expect(hours(service.routes.mill)).toBeLessThan(hours(self));
  });

  it("of fetched lumber is hours by the trailer load, and no delivery", () => {
    const fetched = estimated({ ...demo, shop: { lumber: "fetched" } }).routes.buy;
    expect(fetched.lines.map(({ name }) => name.split(".").at(-1))).not.toContain("delivery");
    const hours = fetched.stages.find(({ name }) => name.endsWith(".fetch"))?.value.toNumber() ?? 0;
    const sticks = fetched.lines.reduce(
      (sum, line) => sum + (line.department === "lumber" ? line.quantity.value.toNumber() : 0),
      0,
    );
    const trips = hours - (sticks * 0.75) / 60;
    expect(trips / 2).toBeCloseTo(Math.round(trips / 2), 9); // whole trips of two hours
    expect(trips).toBeGreaterThanOrEqual(2);
  });

  it("of received lumber is an hour for the order, and three quarters of a minute a stick", () => {
    const { buy, mix } = estimated(demo).routes;
    const received = [buy, mix].map((route) => {
      const sticks = route.lines.reduce(
        (sum, line) => sum + (line.department === "lumber" ? line.quantity.value.toNumber() : 0),
        0,
      );
      const hours = route.stages.find(({ name }) => name.endsWith(".fetch"))?.value.toNumber() ?? 0;
      expect(hours).toBeCloseTo(1 + (sticks * 0.75) / 60, 9);
      return hours;
    });
    expect(received[1]).toBeLessThan(received[0] as number);
  });

  it("of lumber that is sold larger than wanted is the ripping down, and the notice says so", () => {
    // 4 ft of 3 × 5 in, the yard has 6 × 6 actual: a rip on each of two sides, 4 ft ÷ 12 ft/min; a pass of the planer on
    // each, 4 ft ÷ 22 ft/min; 4 min of handling each.
    const piece = { name: "rails", role: "other", count: 1, section: "3 x 5 in", length: "4 ft" };
    const made = estimated({
      structure: { kind: "pieces", pieces: [piece] },
      catalog: {
        name: "one size",
        currency: "USD",
        lumber: [
          {
            species: "spruce-pine-fir",
            section: "6 x 6 in",
            sizing: "actual",
            sold: { by: "length", price: "$2/ft", lengths: ["8 ft"] },
          },
        ],
      },
    });
    const each = made.basis.sheet.find("work.rails.ripDown");
    expect(made.basis.sheet.in(each as never, "person-min").toNumber()).toBeCloseTo(2 * (4 / 12 + 4 / 22 + 4), 6);
    expect(made.routes.buy.stages.find(({ name }) => name.endsWith(".dress"))?.value.eq(each?.value ?? 0)).toBe(true);
    expect(made.notices.some(({ text }) => text.includes("6 × 6 in and is ripped down"))).toBe(true);
  });
});

describe("hire", () => {
  const hired = (item: string) => {
    const equipment = [{ item, terms: "hired" }];
    const { basis } = estimated({ ...demoBody("orchard-shelter"), shop: { mill: "chainsaw-mill", equipment } });
    const shown = (name: string) => {
      const cell = basis.sheet.find(name);
      return cell && basis.sheet.in(cell, cell.display.symbol).toNumber();
    };
    return { days: (route: string) => shown(`${route}.hire.${item}.days`), hours: (name: string) => shown(name) ?? 0 };
  };

  it("of a winch lasts while logs come out and lumber is carried, by two people at 6 h a day", () => {
    const { days, hours } = hired("winch");
    expect(days("milled")).toBe(Math.ceil((hours("milled.hours.getOut") + hours("milled.hours.carry")) / 2 / 6));
    expect(days("bought")).toBeUndefined();
  });

  it("of a mill lasts as long as the mill runs, whole days", () => {
    const { days, hours } = hired("chainsaw");
    expect(days("milled")).toBe(Math.ceil(hours("milled.millHours") / 6));
  });

  it("of a lift is needed on either route, while two and two helpers raise", () => {
    const { days, hours } = hired("lift");
    expect(days("bought")).toBe(Math.ceil((hours("common.hours.brace") + hours("common.hours.raise")) / 4 / 6));
    expect(days("milled")).toBe(days("bought"));
  });
});
