/** Joints are cut in the wood that each route has: what logs lie there changes nothing of what is bought. */
import { describe, expect, it } from "vitest";
import { soldDensityAt } from "../../../src/catalog/species.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { quantity } from "../../../src/estimate/quantity/quantity.js";
import { DEMOS, demoBody, estimated } from "../../helpers/estimating.js";

const joining = ({ basis: { sheet } }: Estimate, key: string): number => {
  const cell = sheet.find(`${key}.hours.join`);
  return cell ? sheet.in(cell, "person-h").toNumber() : Number.NaN;
};

/** Hours of what a route buys that go by its wood: cutting to length, and joints. */
const byWood = ({ basis: { sheet } }: Estimate): string[] =>
  ["cut", "join"].map((stage) => sheet.find(`bought.hours.${stage}`)?.value.toFixed(9) ?? "none");

describe("joints and cutting of what is bought", () => {
  it.each(DEMOS)("take as long in %s with logs as without", (name) => {
    const { logs, ...without } = demoBody(name);
    expect(byWood(estimated({ ...without, logs }))).toEqual(byWood(estimated(without)));
  });

  it.each(["gable", "lean-to", "hip", "pergola"])("take as long in a %s whatever wood lies there", (kind) => {
    const body = { structure: { kind, span: "16 ft", length: "24 ft" }, catalog: { demo: "orchard-yard" } };
    const without = byWood(estimated(body));
    for (const species of ["eastern-white-pine", "white-oak", "black-locust"]) {
      const logs = [{ name: "one", species, length: "17 ft", smallDiameter: "14 in", count: 3 }];
      expect([species, ...byWood(estimated({ ...body, logs }))]).toEqual([species, ...without]);
    }
  });

  it("by hand: ten beams halved at both ends, in locust at 48 lb and in fir at 34 lb where the rates hold to 32", () => {
    const pieces = [{ name: "ties", role: "tie", joint: "lap", count: 10, section: "4 x 8 in", length: "8 ft" }];
    const made = estimated({
      structure: { kind: "pieces", pieces: pieces.map((one) => ({ ...one, species: ["black-locust"] })) },
      logs: [{ name: "one", species: "black-locust", length: "17 ft", smallDiameter: "14 in" }],
      catalog: { demo: "orchard-yard" },
      overrides: { "wood.black-locust.dryDensity": "48 lb/ft3", "wood.douglas-fir-larch.dryDensity": "34 lb/ft3" },
    });
    // 0.8 h for both ends; half of it goes by hardness: 1.5 times in locust, 34/32 in fir. Two crosscuts are turned.
    const turned = (name: string) => {
      const cell = made.basis.sheet.find(`work.ties.${name}`);
      return cell ? made.basis.sheet.in(cell, "person-h").toNumber() : Number.NaN;
    };
    expect(joining(made, "bought")).toBeCloseTo(10 * (0.8 * (1 + 0.5 * (34 / 32 - 1)) + 2 * turned("turnBought")), 6);
    const milled = made.basis.sheet.find("milled.sawn.ties")?.value.toNumber() ?? 0;
    expect(milled).toBeGreaterThan(0);
    expect(milled).toBeLessThan(10);
    const each = 0.8 * (1 + 0.5 * (1.5 - 1)) + 2 * turned("turn");
    expect(joining(made, "milled")).toBeCloseTo(milled * each + ((10 - milled) / 10) * joining(made, "bought"), 6);
  });
});

describe("the weight of woods that are sold under one name", () => {
  // EN 338: mean densities of C24 and C16 at 12 %, 420 and 370 kg/m3.
  it.each([
    ["european-whitewood", 420],
    ["european-redwood", 370],
  ])("of %s is that of its class", (id, mean) => {
    const found = soldDensityAt(id, quantity("12", "%"))?.value;
    expect(found?.value.times("16.018463").toNumber()).toBeCloseTo(mean, -1);
  });

  it("is that of the species where it is one, and nothing where nobody knows it", () => {
    expect(soldDensityAt("robinia", quantity("12", "%"))).toBeDefined();
    expect(soldDensityAt("moon-wood", quantity("12", "%"))).toBeUndefined();
  });
});
