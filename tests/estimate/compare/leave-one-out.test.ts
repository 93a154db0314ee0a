/** What a group saves, against the whole route laid anew without it. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import type { GroupSaving } from "../../../src/estimate/compare/group-savings.js";
import { layRoute, type RoutePlan } from "../../../src/estimate/compare/route.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { heldLeftOut, planLeftOut } from "../../../src/estimate/left-out.js";
import { stockQuestions } from "../../../src/estimate/purchase/lumber.js";
import { measurePlan } from "../../../src/estimate/salvage/cut-cells.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { DEMOS, demoBody, estimated, quickPlanners } from "../../helpers/estimating.js";
import { withoutGroup } from "../../judges/without-group.js";

/** The route with the group's pieces taken out of its sawing plan, and all lumber planned anew with them. */
function routeWithout({ basis, common }: Estimate, { name, route: { plan } }: GroupSaving) {
  const { sawing } = plan;
  const one = basis.groups.find(({ group }) => group.name === name);
  if (!sawing || !one || !("offer" in one.substitution)) throw new Error(`${name} is not sawn, or not sold`);
  const wanted = sawing.problem.groups.find((group) => group.name === name)?.count ?? 0;
  const left = withoutGroup(sawing.plan, name, wanted);
  expect(judgeSawingPlan(sawing.problem, left)).toEqual([]);
  const own = { substitution: one.substitution, count: one.group.count.value.toNumber() };
  const others = plan.bought.filter(({ substitution }) => substitution.group.name !== name);
  const bought = basis.groups.flatMap(
    ({ group }) => [...others, own].find(({ substitution }) => substitution.group.name === group.name) ?? [],
  );
  const stock = stockQuestions(basis.cutting, bought).map((question) => ({
    question,
    plan: quickPlanners.stock(question.problem).plan,
    proof: { covers: "planned anew" },
  }));
  const milled = new Set([...plan.milled].filter((other) => other !== name));
  const without: RoutePlan = {
    ...plan,
    key: `without-${name}`,
    milled,
    sawn: milled,
    sawing: left.logs.length > 0 ? { ...measurePlan(sawing.problem, left), proof: sawing.proof } : undefined,
    bought,
    stock,
  };
  return layRoute(basis, without, common);
}

/** Lines are rounded to the cent one by one, and stickers to whole ones; a share of them is not. */
const CENTS = 0.05;
const HOURS = 0.03;

function compared(estimate: Estimate) {
  return estimate.decision.groups.map((saving) => {
    const without = routeWithout(estimate, saving);
    const { route } = saving;
    return {
      name: saving.name,
      cash: saving.cashSaved.value.toNumber(),
      anew: without.cash.value.minus(route.cash.value).toNumber(),
      hours: saving.extraHours.value.toNumber(),
      hoursAnew: route.hours.value.minus(without.hours.value).toNumber(),
    };
  });
}

function expectAlike(list: ReturnType<typeof compared>): void {
  expect(list.length).toBeGreaterThan(2);
  for (const { name, cash, anew, hours, hoursAnew } of list) {
    expect(Math.abs(cash - anew), `${name}: ${cash} beside ${anew}`).toBeLessThanOrEqual(CENTS);
    expect(Math.abs(hours - hoursAnew), `${name}: ${hours} h beside ${hoursAnew} h`).toBeLessThanOrEqual(HOURS);
  }
}

describe("what a group saves", () => {
  it.each(DEMOS)("is in %s what the route costs more without it, and takes less", (name) => {
    expectAlike(compared(estimated(demoBody(name))));
  });

  it("is not told of a group that no stick on offer is long enough for", () => {
    const species = "eastern-white-pine";
    const piece = (name: string, length: string) => ({ name, role: "other", count: 2, section: "2 x 6 in", length });
    const of = (length: string) =>
      estimated({
        structure: { kind: "pieces", pieces: [piece("long", length), piece("short", "6 ft")] },
        logs: [{ name: "log", count: 2, species, length: "25 ft", smallDiameter: "14 in" }],
        catalog: { demo: "orchard-yard" },
      }).decision.groups.map(({ name }) => name);
    expect(of("9 ft")).toEqual(["long", "short"]);
    expect(of("24 ft")).toEqual(["short"]);
  });

  it("counts the days for which a hired mill is kept less, and what logs that hold nothing else would fetch", () => {
    const body = demoBody("orchard-shelter") as { shop: object; logs: object[] };
    const equipment = [{ item: "chainsaw-mill", terms: "hired" }];
    const estimate = estimated({
      ...body,
      shop: { ...body.shop, equipment },
      logs: body.logs.map((log) => ({ ...log, value: "$12.00" })),
    });
    expect(estimate.basis.sheet.find("milled.hire.chainsaw-mill.days")).toBeDefined();
    expectAlike(compared(estimate));
  });

  it.each(DEMOS)("is reckoned in %s beside all else that the route buys, on whatever sheet it was planned", (name) => {
    const { basis, routes } = estimated(demoBody(name));
    const { mill } = routes;
    if (!mill) throw new Error("nothing is milled");
    const planned = (on: typeof basis) => heldLeftOut(planLeftOut(on, [mill.plan], quickPlanners, undefined));
    const again = layBasis(new Sheet(), basis.request);
    expect(planned(again)).toEqual(planned(basis));
    expect(Object.keys(planned(again)).length).toBeGreaterThan(2);
  });
});
