/** The finish of each route: what is bought dressed is smooth, what is milled as it was asked for. */
import { describe, expect, it } from "vitest";
import type { RouteCells } from "../../../src/estimate/compare/route.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { DEMOS, demoBody, estimated } from "../../helpers/estimating.js";

const post = {
  name: "posts",
  role: "post",
  count: 10,
  section: "6 x 6 in",
  length: "8 ft",
  species: ["eastern-white-pine"],
};
const asked = (more: object = {}) =>
  estimated({
    structure: { kind: "pieces", pieces: [post] },
    catalog: {
      name: "A yard",
      currency: "USD",
      lumber: [
        {
          name: "fir-6x6",
          species: "douglas-fir-larch",
          section: "6 x 6 in",
          sold: { by: "piece", lengths: [{ length: "10 ft", price: "$60" }] },
        },
      ],
      finishes: [{ name: "stain", kind: "oil-stain", cans: [{ size: "1 gal", price: "$50" }] }],
    },
    ...more,
  });
const log = { name: "log", species: "eastern-white-pine", length: "8 ft 6 in", smallDiameter: "12 in" };
const gallons = ({ basis }: ReturnType<typeof asked>, { finish }: RouteCells) =>
  basis.sheet.in(finish.takeoff.volume as never, "gal");

describe("the finish of a route", () => {
  // Faces of one 6 × 6 in post of 8 ft: 4 × 0.5 × 8 + 2 × 0.25 = 16.5 ft², 3 % of it in joints: 16.005.
  // Wood Handbook, chapter 16: smooth 300 ft²/gal in one coat; rough 150, and 1.35 times that for the second. 8 % stays in the can.
  const smooth = decimal("16.005").dividedBy(300).times("1.08");
  const rough = decimal("16.005")
    .dividedBy(150)
    .times(decimal(1).plus(decimal(1).dividedBy("1.35")))
    .times("1.08");

  it("is that of dressed posts where all are bought, of rough ones where they are milled, and of both where some are", () => {
    const made = asked({ logs: [{ ...log, count: 4 }] });
    const { buy, mill } = made.routes;
    expect(gallons(made, buy).toFixed(6)).toBe(smooth.times(10).toFixed(6));
    const bought = mill?.plan.bought.reduce((sum, { count }) => sum + count, 0) ?? 0;
    expect(bought > 0 && bought < 10).toBe(true);
    const both = rough.times(10 - bought).plus(smooth.times(bought));
    expect(gallons(made, mill as RouteCells).toFixed(6)).toBe(both.toFixed(6));
  });

  it("is the same for everything bought whatever logs lie there, and rough where rough lumber is sold", () => {
    const [none, some] = [asked(), asked({ logs: [{ ...log, count: 20 }] })];
    expect(gallons(none, none.routes.buy)).toEqual(gallons(some, some.routes.buy));
    const catalog = {
      name: "A sawmill",
      currency: "USD",
      lumber: [
        {
          name: "rough-6x6",
          species: "douglas-fir-larch",
          surface: "rough",
          sizing: "actual",
          section: "6 x 6 in",
          sold: { by: "piece", lengths: [{ length: "10 ft", price: "$60" }] },
        },
      ],
    };
    const sawn = asked({ catalog });
    expect(gallons(sawn, sawn.routes.buy).toFixed(6)).toBe(rough.times(10).toFixed(6));
  });

  it.each(DEMOS)(
    "covers in %s every face that shows on every way, rough where rough pieces are milled alone",
    (name) => {
      const { basis, routes, takeoffs } = estimated(demoBody(name));
      const shown = new Map(takeoffs.finish.lines.map(({ group, area }) => [group, area.value]));
      for (const route of [routes.buy, routes.mill, routes.mix]) {
        if (!route) continue;
        const { rough, smooth } = route.finish.takeoff.area;
        const all = [...shown.values()].reduce((sum, area) => sum.plus(area), decimal(0));
        expect(rough.value.plus(smooth.value).toDecimalPlaces(20)).toEqual(all.toDecimalPlaces(20));
        const expected = basis.groups.reduce((sum, { group, substitution }) => {
          const area = shown.get(group.name) ?? decimal(0);
          const bought = [
            ...route.plan.bought,
            ...route.plan.unsold.map((one) => ({ ...one, substitution: { group: one.group.group } })),
          ]
            .filter((one) => one.substitution.group.name === group.name)
            .reduce((count, one) => count + one.count, 0);
          const count = route.plan.milled.has(group.name) ? group.count.value.minus(bought) : decimal(0);
          const dressed = "offer" in substitution && substitution.offer.surface === "dressed";
          if (group.rules.surface !== "rough") return sum;
          return sum.plus(dressed ? area.times(count).dividedBy(group.count.value) : area);
        }, decimal(0));
        expect(rough.value.toDecimalPlaces(20)).toEqual(expected.toDecimalPlaces(20));
      }
      if (name === "orchard-shelter") expect(routes.buy.finish.takeoff.area.rough.value.isZero()).toBe(true);
    },
  );
});
