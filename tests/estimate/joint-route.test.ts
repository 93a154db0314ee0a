import { describe, expect, it, vi } from "vitest";
import { bestFor } from "../../src/estimate/compare/envelope.js";
import type { MixPoint } from "../../src/estimate/compare/mix-point.js";
import type { Estimate } from "../../src/estimate/estimate.js";
import { keptWhole } from "../../src/estimate/plan.js";
import { decimal } from "../../src/estimate/quantity/decimal.js";
import { planSawing } from "../../src/estimate/salvage/plan-sawing.js";
import { DEMOS, demoBody, estimated, quickPlanners } from "../helpers/estimating.js";

vi.setConfig({ testTimeout: 120_000 });

const planners = {
  ...quickPlanners,
  sawing: (problem: Parameters<typeof planSawing>[0]) => {
    const { plan, bound, boundCovers } = planSawing(problem, { work: 3000, seed: 1 });
    return { plan, bound, proof: { covers: boundCovers } };
  },
  sketch: quickPlanners,
};

const total = ({ routes }: Estimate) => routes.mix.total.value;
const withOptions = (body: Record<string, unknown>, options: object) => ({
  ...body,
  options: { ...(body.options as object), ...options },
});

/** Pieces that the mix buys of each group of which it mills some. */
function boughtOfMilled({ routes: { mix } }: Estimate): Map<string, number> {
  const bought = mix.plan.bought.map(({ substitution, count }) => [substitution.group.name, count] as const);
  return new Map(bought.filter(([name]) => mix.plan.sawn.has(name)));
}

/** Pieces that all milled buys, for the logs hold no more of them. */
const lacking = ({ routes: { mill } }: Estimate, name: string): number =>
  mill?.plan.bought.find(({ substitution }) => substitution.group.name === name)?.count ?? 0;

/** Rails, logs to saw them from, and the offer that the user insists on. */
const rails = (buyAs: string) => ({
  structure: {
    kind: "pieces",
    pieces: [{ name: "rails", role: "other", count: 9, section: "2 x 6 in", length: "7 ft 6 in", buyAs }],
  },
  logs: [
    { name: "good", species: "eastern-white-pine", length: "8 ft", smallDiameter: "15 in" },
    { name: "small", species: "eastern-white-pine", length: "8 ft", smallDiameter: "10 in" },
  ],
  catalog: { demo: "orchard-yard" },
  labor: { valueOfHour: "$12/h" },
});

describe("a run of which the yard sells a smaller measure", () => {
  it.each(DEMOS)("is mixed in %s only where the logs hold no more of it", (name) => {
    const made = estimated(demoBody(name), planners);
    const alike = new Map(
      made.basis.groups.flatMap(({ group, substitution }) =>
        "offer" in substitution ? [[group.name, substitution.alike] as const] : [],
      ),
    );
    for (const [group, count] of boughtOfMilled(made)) {
      if (alike.get(group) === false) expect([group, count]).toEqual([group, Math.min(count, lacking(made, group))]);
    }
  });

  it("may be mixed where the user says so, which costs no more, and as much less as was foretold", () => {
    const body = { ...demoBody("orchard-shelter"), labor: { valueOfHour: "$7/h" } };
    const whole = estimated(body, planners);
    const mixed = estimated(withOptions(body, { mixedSizes: true }), planners);
    const foretold = whole.searched?.standing.mixedSizes;
    expect(foretold?.gt(0)).toBe(true);
    expect(total(mixed).lte(total(whole).minus(foretold ?? 0))).toBe(true);
    expect(mixed.searched?.standing.mixedSizes).toBeUndefined();
    // Runs that are bought in another measure, more of them than the logs lack.
    const side = (made: Estimate) =>
      [...boughtOfMilled(made)].filter(([name, count]) => {
        const of = made.basis.groups.find(({ group }) => group.name === name)?.substitution;
        return of && "offer" in of && !of.alike && count > lacking(made, name);
      });
    expect(side(whole)).toEqual([]);
  });

  it("is told from one that is sold as it is wanted, or larger", () => {
    const kept = (buyAs: string, options = {}) => {
      const { basis } = estimated({ ...rails(buyAs), options });
      return basis.groups.map((one) => keptWhole(basis, one));
    };
    expect(kept("spf-2x6")).toEqual([true]);
    expect(kept("spf-2x6", { mixedSizes: true })).toEqual([false]);
    expect(kept("pine-rough-2x6")).toEqual([false]);
    expect(kept("pine-rough-4x8")).toEqual([false]);
  });
});

describe("the values of an hour for which a mix is the best", () => {
  const point = (cash: number, hours: number): MixPoint => ({
    milled: new Set(),
    cash: decimal(cash),
    hours: decimal(hours),
  });
  const [slow, middle, quick] = [point(100, 30), point(150, 20), point(400, 10)] as const;

  it("lie between the ties with its neighbours: 50 over 10 hours, 250 over 10", () => {
    const range = bestFor(middle, [slow, quick, point(300, 25)]);
    expect([range?.from.toFixed(), range?.to?.toFixed()]).toEqual(["5", "25"]);
    expect(bestFor(slow, [middle, quick])?.from.toFixed()).toBe("0");
    expect(bestFor(quick, [slow, middle])).toMatchObject({ to: undefined });
  });

  it("are none where others beat it everywhere", () => {
    expect(bestFor(point(300, 25), [slow, middle, quick])).toBeUndefined();
    expect(bestFor(point(280, 16), [slow, middle, quick])).toBeUndefined();
  });

  it("hold the value that the user gave", () => {
    for (const valueOfHour of ["$4/h", "$15/h", "$60/h"]) {
      const body = { ...demoBody("orchard-shelter"), labor: { valueOfHour } };
      const { hour } = estimated(body, planners).searched?.standing ?? {};
      const worth = decimal(valueOfHour.slice(1, -2));
      expect(hour?.from.lte(worth)).toBe(true);
      expect(hour?.to === undefined || hour.to.gte(worth)).toBe(true);
    }
  });
});
