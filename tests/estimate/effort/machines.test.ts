import { describe, expect, it } from "vitest";
import { workOf } from "../../../src/estimate/compare/work.js";
import { FaultError } from "../../../src/estimate/faults.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const pine = "eastern-white-pine";

/** Ten pine logs of 14 in, sawn into 2 × 6 in of 12 ft. */
function planks(shop: object = {}, more: object = {}) {
  const piece = { name: "planks", role: "other", count: 20, section: "2 x 6 in", length: "12 ft", surface: "rough" };
  const found = estimated({
    structure: { kind: "pieces", pieces: [{ ...piece, source: "mill", species: [pine] }] },
    logs: [{ name: "log", count: 10, species: pine, length: "13 ft", smallDiameter: "14 in", sweep: "straight" }],
    shop: { mill: "chainsaw-mill", ...shop },
    ...more,
  });
  const { sheet } = found.basis;
  const value = (name: string, unit: string) => {
    const cell = sheet.find(name);
    return cell ? sheet.in(cell, unit).toNumber() : 0;
  };
  const edge = value("milled.hours.edge", "person-h");
  const [guided, fed] = [`milled.cuts.guideLength-${pine}`, `milled.cuts.ripLength-${pine}`].map((name) =>
    value(name, "ft"),
  ) as [number, number];
  const { mill } = found.routes;
  const report = mill && workOf(found.basis, found.common, found.takeoffs.weights, mill);
  return { found, value, edge, guided, fed, because: report?.dressing[0]?.because ?? [] };
}

describe("slabs off the mill", () => {
  it("go along a guide where they are heavier than one feeds, and the answer says so", () => {
    const { guided, because, edge } = planks({ heaviestFed: "80 lb" });
    const strong = planks({ heaviestFed: "400 lb" });
    expect(guided).toBeGreaterThan(0);
    expect(because.join("; ")).toMatch(
      /by a circular saw along a guide: a slab of \d+ lb is too heavy to feed, at most 80 lb/,
    );
    expect([strong.guided, strong.fed > 0]).toEqual([0, true]);
    expect(strong.because).toContain("sawn on the mill, edges ripped on the table saw");
    expect(edge).toBeGreaterThan(strong.edge);
  });

  it("take for edging, by hand: each cut handled and lifted by its weight, fed at 12 ft a minute, or a guide laid and 4", () => {
    const { value, edge, guided, fed } = planks({ heaviestFed: "80 lb" });
    expect([guided > 0, fed > 0]).toEqual([true, true]);
    const cuts = value("milled.cuts.ripCuts", "");
    const weight = value(`milled.cuts.ripStock-${pine}`, "ft3") * value(`wood.${pine}.greenDensity`, "lb/ft3") * 0.005;
    const minutes =
      cuts * 0.7 +
      value("milled.cuts.guideCuts", "") * 2 +
      weight +
      fed / 12 +
      guided / 4 +
      value("milled.cuts.crosscuts", "") * 1;
    expect(edge * 60).toBeCloseTo(minutes, 6);
  });

  it.each([
    ["lighter machines", ["400 lb", "150 lb", "100 lb", "60 lb", "10 lb"].map((heaviestFed) => ({ heaviestFed }))],
    ["shorter rooms", ["30 ft", "14 ft", "12 ft"].map((longestFed) => ({ longestFed }))],
    ["no table saw", [{}, { tableSaw: "none", crosscutDepth: "3 in" }]],
  ])("never take less time with %s", (_, shops) => {
    const hours = shops.map((shop) => planks(shop).edge);
    for (const [i, edge] of hours.slice(1).entries()) expect(edge).toBeGreaterThanOrEqual(hours[i] as number);
    expect(hours.at(-1)).toBeGreaterThan(hours[0] as number);
  });

  it("never take less time in heavier or harder wood of the same logs", () => {
    const denser = ["20 lb/ft3", "38 lb/ft3", "45 lb/ft3", "60 lb/ft3"].map(
      (density) => planks({}, { overrides: { [`wood.${pine}.greenDensity`]: density } }).edge,
    );
    for (const [i, edge] of denser.slice(1).entries()) expect(edge).toBeGreaterThan(denser[i] as number);
    expect(planks({}, { overrides: { [`wood.${pine}.hardness`]: "2" } }).edge).toBeGreaterThan(planks().edge);
  });

  it("go along a guide where they are longer than the room, too", () => {
    expect(planks({ longestFed: "12 ft", heaviestFed: "400 lb" }).because[1]).toMatch(
      /along a guide: a slab of 12' 3" is too long to feed, at most 12'/,
    );
  });
});

describe("a shop without", () => {
  it("a table saw rips everything along a guide, as deep as the circular saw cuts; the mill rips what is thicker", () => {
    const without = planks({ tableSaw: "none" });
    expect(without.fed).toBe(0);
    // Rough planks of 2 1/4 in and more: the saw of 2 1/2 in takes them from one face.
    expect(without.guided).toBeGreaterThan(0);
    expect(without.because.join("; ")).toContain("by a circular saw along a guide: there is no table saw");
    const shallow = planks({ tableSaw: "none", crosscutDepth: "1 in" });
    expect([shallow.guided, shallow.because[1]]).toEqual([0, "sawn to size on the mill alone"]);
  });

  it("table saw, jointer and planer says of each lack what is used in its place", () => {
    const board = { name: "boards", role: "board", count: 10, section: "1 x 6 in", length: "8 ft", source: "mill" };
    const because = (lack: object) => {
      const made = estimated({
        structure: { kind: "pieces", pieces: [{ ...board, surface: "dressed" }] },
        logs: [{ name: "log", count: 3, species: pine, length: "9 ft", smallDiameter: "12 in", sweep: "straight" }],
        shop: { mill: "chainsaw-mill", ...lack },
      });
      const mill = made.routes.mill as NonNullable<typeof made.routes.mill>;
      return workOf(made.basis, made.common, made.takeoffs.weights, mill).dressing[0];
    };
    expect(because({})?.because[0]).toMatch(/^jointer, rip saw and planer take them/);
    const bare = because({ tableSaw: "none", jointer: "none" });
    expect([bare?.by, ...(bare?.because.slice(1, 3) ?? [])]).toEqual([
      "machine",
      "ripped along a guide: there is no table saw",
      "straightened by a saw along a guide: there is no jointer",
    ]);
    const hand = because({ tableSaw: "none", jointer: "none", planer: "none" });
    expect([hand?.by, hand?.because]).toEqual([
      "hand",
      ["there is no planer", "ripped along a guide: there is no table saw"],
    ]);
  });

  it("a mill buys everything, each group with the reason", () => {
    const { basis, routes, verdict, notices } = estimated({ ...demoBody("orchard-shelter"), shop: { mill: "none" } });
    expect(verdict.headline).toBe("Buy everything: there is no mill.");
    expect(notices.filter(({ code }) => code === "not-milled").map(({ text }) => text)).toEqual([
      "Everything: not milled, there is no mill.",
    ]);
    expect(routes.mill).toBeUndefined();
    expect(new Set(basis.groups.map(({ notMilled }) => notMilled))).toEqual(new Set(["there is no mill"]));
  });

  it("a mill has what it mills sawn by the hired sawyer alone", () => {
    const body = demoBody("orchard-shelter") as { shop: { sawyer?: object } };
    const sawyer = { charge: "hour", mill: "hydraulic-band-mill" };
    const { routes, verdict, basis } = estimated({
      ...body,
      shop: { ...body.shop, mill: "none", equipment: [], sawyer },
    });
    expect([routes.mill?.plan.hired, routes.hired]).toEqual([true, undefined]);
    expect(basis.sheet.find("milled.millHours")?.value.gt(0)).toBe(true);
    expect(verdict.headline).not.toMatch(/^Mill /);
  });

  it.each([
    [{ tableSaw: "none", deepestRip: "3 in" }, "/shop/deepestRip", "The shop has no table saw."],
    [{ planer: "none", planerWidth: "12 in" }, "/shop/planerWidth", "The shop has no planer."],
    [
      { jointer: "none", equipment: [{ item: "jointer", terms: "hired" }] },
      "/shop/equipment/0/item",
      "The shop has no jointer.",
    ],
    [
      { mill: "none", equipment: [{ item: "chainsaw-mill", terms: "bought" }] },
      "/shop/equipment/0/item",
      "The shop has no mill.",
    ],
  ])("a machine cannot say what it takes or cost anything: %j", (shop, at, wrong) => {
    let faults: readonly object[] = [];
    try {
      planks(shop);
    } catch (error) {
      if (!(error instanceof FaultError)) throw error;
      faults = error.faults;
    }
    expect(faults).toContainEqual(expect.objectContaining({ code: "cannot-build", at, wrong }));
  });
});
