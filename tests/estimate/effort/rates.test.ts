import { describe, expect, it } from "vitest";
import { assumptionList } from "../../../src/api/render/json/assumptions.js";
import { measureOf } from "../../../src/catalog/measures.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

describe("every rate of the demo", () => {
  const band = estimated({
    ...demoBody("orchard-shelter"),
    shop: { mill: "manual-band-mill", carry: "cart", getOut: "tractor" },
  });
  const coverings = ["asphalt-shingles", "tile", "mineral-roll", "boards", "polycarbonate", "standing-seam-steel"];
  const compared = estimated({
    ...demoBody("orchard-shelter"),
    shop: { mill: "chainsaw-mill", lumber: "fetched", carry: "winch", sawyer: { charge: "hour" } },
    options: { coverings, sealEnds: true },
  });
  const cells = [estimated(demoBody("orchard-shelter")), band, compared].flatMap(({ basis }) => basis.sheet.cells);
  const rates = cells.filter(({ range }) => range);

  it("has a name, low to high, a unit and a source", () => {
    expect(new Set(rates.map(({ name }) => name)).size).toBeGreaterThan(200);
    for (const { name, label, range, value, source } of rates) {
      expect([name, range?.low.lte(value) && range.high.gte(value)]).toEqual([name, true]);
      expect(label.length).toBeGreaterThan(5);
      expect([name, source?.length ?? 0]).not.toEqual([name, 0]);
    }
  });

  it("says how one measures one's own", () => {
    const silent = rates.filter(({ name }) => (measureOf(name)?.length ?? 0) < 15);
    expect([...new Set(silent.map(({ name }) => name))]).toEqual([]);
    const listed = assumptionList();
    const all = [...listed.assumptions, ...listed.mills.flatMap(({ assumptions }) => assumptions)];
    expect(all.filter(({ measure }) => (measure?.length ?? 0) < 15).map(({ name }) => name)).toEqual([]);
    for (const name of ["drying.black-locust", "drying.scots-pine", "getOut.winch.people", "getOut.tractor.people"])
      expect(all.map((row) => row.name)).toContain(name);
  });

  it("reads in the project's own units: no inch, foot, pound, gallon or board foot in a metric one", () => {
    const { sheet } = estimated(demoBody("ferry-bike-shed")).basis;
    const told = sheet.cells.filter(({ range }) => range).map((cell) => `${cell.name} ${cell.display.symbol}`);
    expect(told.length).toBeGreaterThan(80);
    expect(told.filter((text) => /\b(in|ft|ft2|ft3|lb|gal|bf|mbf|square)\b/.test(text))).toEqual([]);
    expect(sheet.shown(sheet.find("mill.feed") as never)).toBe("6.1 m/min"); // 20 ft a minute
  });
});

describe("one pace", () => {
  it("slows all hand work alike: at twice the pace every stage takes twice the hours", () => {
    const [steady, slow] = ["1", "2"].map((pace) =>
      estimated({ ...demoBody("orchard-shelter"), assumptions: { pace } }),
    );
    const hours = (made: typeof steady) =>
      new Map(
        [...(made?.routes.buy.stages ?? []), ...(made?.common.stages ?? [])].map(({ name, value }) => [name, value]),
      );
    const twice = hours(slow);
    expect(hours(steady).size).toBeGreaterThan(12);
    for (const [name, value] of hours(steady))
      expect([name, twice.get(name)?.toDecimalPlaces(20).toFixed()]).toEqual([
        name,
        value.times(2).toDecimalPlaces(20).toFixed(),
      ]);
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

  it("of a swing-blade mill is a circular blade, in its own words, and the wheel that grinds it on the mill", () => {
    const shop = { mill: "swing-blade-mill", longestBolt: "18 ft" };
    const own = estimated({ ...demo, shop }).routes.mill;
    const sent = estimated({ ...demo, shop: { ...shop, sharpening: "service" } }).routes.mill;
    const told = (route: typeof own) => new Map(route?.lines.map((line) => [line.name.split(".").at(-1), line]));
    expect(told(own).get("circular-blade")?.label).toBe("Circular blade, wear");
    expect(told(own).get("grinding-wheel")?.label).toBe("Grinding wheels, wear");
    expect(told(sent).get("circular-sharpening")?.label).toBe("Sharpening of circular blades");
    for (const route of [own, sent])
      for (const item of ["band", "band-sharpening", "chain", "files"]) expect(told(route).has(item)).toBe(false);
    // The yard has no price for either: a line without an amount, never a zero.
    expect(told(own).get("circular-blade")).toMatchObject({ stage: "saw", add: expect.stringContaining("circular") });
    expect(told(own).get("circular-blade")?.amount).toBeUndefined();
  });

  it("of a band that one grinds oneself is wheels and the hours at them", () => {
    const shop = { mill: "manual-band-mill", sharpening: "self" };
    expect(used({ ...demo, shop })).toContain("grinding-wheel");
    expect(used({ ...demo, shop })).not.toContain("files");
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

  it("of a lift is needed on either route, while two and two helpers raise and two lay the roof", () => {
    const { days, hours } = hired("lift");
    const [four, two] = [
      ["brace", "raise", "rafters"],
      ["deck", "eaves", "roof", "trim"],
    ].map((stages) => stages.reduce((sum, stage) => sum + hours(`common.hours.${stage}`), 0)) as [number, number];
    expect(days("bought")).toBe(Math.ceil((four / 4 + two / 2) / 6));
    expect(days("milled")).toBe(days("bought"));
  });

  it("of an auger lasts while holes are dug, and nobody hires one without holes", () => {
    const equipment = [{ item: "auger", terms: "hired" }];
    const { footings: _none, ...unfounded } = demoBody("ferry-bike-shed").structure as Record<string, unknown>;
    const above = estimated({ ...demoBody("ferry-bike-shed"), structure: unfounded, shop: { equipment } });
    expect(above.basis.sheet.find("bought.hire.auger.days")).toBeUndefined();
    const { basis } = estimated({ ...demoBody("ferry-bike-shed"), shop: { mill: "manual-band-mill", equipment } });
    const shown = (name: string, unit: string) => basis.sheet.in(basis.sheet.find(name) as never, unit).toNumber();
    expect(shown("bought.hire.auger.days", "day")).toBe(
      Math.max(1, Math.ceil(shown("common.hours.dig", "person-h") / 2 / 6)),
    );
  });
});
