import { describe, expect, it } from "vitest";
import { assumptionOf } from "../../../src/catalog/assumptions.js";
import { MILL_MEASURES } from "../../../src/catalog/mills.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

/** What is no rate of work: how much is bought, lapped or fixed, and levels. */
const NO_RATE =
  /^(covering|fastener|finish\.(waste|jointShare|endSealer|rough|smooth|second|later|recoat).*|buy\.(endTrim|wastage)|priceLevel|pace|moisture|drying\.)/;

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
    const hours = fetched.stages.find(({ name }) => name.endsWith(".fetch"))?.value.toNumber();
    expect(hours && hours % 2).toBe(0); // whole trips of two hours
    expect(hours).toBeGreaterThanOrEqual(2);
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
