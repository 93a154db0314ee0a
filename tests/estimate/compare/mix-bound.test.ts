import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { findBestMix } from "../../../src/estimate/best-mix.js";
import { withChosenFirst } from "../../../src/estimate/offer-choice.js";
import { judgeStockPlan } from "../../../src/estimate/purchase/stock-judge.js";
import { planSawing } from "../../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import { DEMOS, demoBody, demoCatalog, estimated, quickPlanners, request } from "../../helpers/estimating.js";
import { requestDraw, written } from "../../helpers/random-request.js";

vi.setConfig({ testTimeout: 120_000 });

/** Little work proves less, but what it proves holds. */
const proving = (work: number) => ({
  ...quickPlanners,
  sawing: (problem: Parameters<typeof planSawing>[0]) => {
    const { plan, bound, gap, boundCovers } = planSawing(problem, { work, seed: 1 });
    return { plan, bound, proof: { covers: `${boundCovers} ${gap}` } };
  },
  sketch: quickPlanners,
});

describe("the bound on all mixes", () => {
  it("is under every mix and every route that was ever priced, on requests drawn at random", () => {
    let proved = 0;
    fc.assert(
      fc.property(requestDraw, fc.constantFrom("$0/h", "$8/h", "$20/h", "$70/h"), (draw, valueOfHour) => {
        const body = { ...written(draw, "inches"), labor: { valueOfHour } };
        const asked = withChosenFirst(request(body));
        const planners = proving(300);
        const found = findBestMix(asked, planners);
        if (!found?.bound) return;
        proved++;
        const least = found.bound.least.toNumber();
        const wage = Number(/\d+/.exec(valueOfHour)?.[0]);
        for (const { cash, hours } of found.tried)
          expect(cash.plus(hours.times(wage)).toNumber()).toBeGreaterThanOrEqual(least);
        const { buy, mill, mix } = estimated(body, planners).routes;
        for (const route of [buy, mix, ...(mill ? [mill] : [])])
          expect(route.total.value.toNumber()).toBeGreaterThanOrEqual(least);
      }),
      { seed: 20251126, numRuns: 25 },
    );
    expect(proved).toBeGreaterThan(8);
  });

  it.each(["hired", "bought"])("charges no mix with a %s planer that only other mixes need", (terms) => {
    const catalog = demoCatalog("orchard-yard");
    const others = (catalog.equipment as { item: string }[]).filter(({ item }) => item !== "planer");
    const planer = { item: "planer", purchase: "$3000", resale: "$400", hirePerDay: "$2600/day" };
    const group = { role: "other", length: "8 ft" };
    const body = {
      structure: {
        kind: "pieces",
        pieces: [
          { ...group, name: "sleepers", count: 24, section: "6 x 6 in", surface: "rough" },
          { ...group, name: "battens", count: 4, section: "2 x 4 in", surface: "dressed" },
        ],
      },
      logs: [{ name: "log", count: 24, species: "eastern-white-pine", length: "10 ft 6 in", smallDiameter: "16 in" }],
      catalog: { ...catalog, equipment: [...others, planer] },
      labor: { valueOfHour: "$1/h" },
      shop: { mill: "chainsaw-mill", equipment: [{ item: "planer", terms }], lumber: "fetched" },
    };
    const { searched, routes } = estimated(body, proving(3000));
    const paid = (route: typeof routes.mix | undefined) =>
      route?.lines.find(({ name }) => name.endsWith(".hire.planer"))?.amount?.value.toNumber();
    expect([...routes.mix.plan.sawn.keys()]).toEqual(["sleepers"]);
    expect(paid(routes.mix) ?? 0).toBe(0);
    expect(paid(routes.mill)).toBeGreaterThan(2000);
    expect(routes.mix.total.value.toNumber()).toBeLessThan(500);
    expect(searched?.bound?.least.lte(routes.mix.total.value)).toBe(true);
  });

  it.each(DEMOS)("of %s leaves a gap that says something, and its plan is one that the judge passes", (name) => {
    const { searched, routes } = estimated(demoBody(name), proving(3000));
    const { least, plans = [] } = searched?.bound ?? { plans: [] };
    const total = routes.mix.total.value;
    expect(least?.lte(total)).toBe(true);
    // Half the cost unexplained would be no news to anyone.
    expect(least?.gt(total.times("0.75"))).toBe(true);
    expect(plans[0]?.plan.logs.length).toBeGreaterThan(0);
    const { sawing, stock } = routes.mix.plan;
    if (sawing) expect(judgeSawingPlan(sawing.problem, sawing.plan)).toEqual([]);
    for (const { question, plan: cuts } of stock) expect(judgeStockPlan(question.problem, cuts)).toEqual([]);
  });
});

describe("a hired sawyer", () => {
  it.each(DEMOS)("as one more way never makes the best mix of %s dearer", (name) => {
    const body = demoBody(name);
    const without = estimated(body, proving(1500)).routes.mix.total.value;
    for (const charge of ["hour", "board-foot"]) {
      const shop = { ...(body.shop as object), sawyer: { charge } };
      expect(estimated({ ...body, shop }, proving(1500)).routes.mix.total.value.lte(without)).toBe(true);
    }
  });
});

describe("a mix that goes piece by piece", () => {
  const asked = demoBody("orchard-shelter");
  const found = estimated(asked, proving(3000));

  it("is taken where it is cheaper than every mix of whole groups", () => {
    const groups = estimated(asked);
    expect(found.routes.mix.total.value.lt(groups.routes.mix.total.value)).toBe(true);
  });

  it("comes back the same when its plans are held", () => {
    const held = JSON.parse(JSON.stringify(found.plans)) as Record<string, unknown>;
    const again = estimated({ ...asked, heldPlans: held });
    expect(again.routes.mix.total.value.toFixed()).toBe(found.routes.mix.total.value.toFixed());
    expect([...again.routes.mix.plan.sawn]).toEqual([...found.routes.mix.plan.sawn]);
  });
});
