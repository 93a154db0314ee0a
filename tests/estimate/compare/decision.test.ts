import { describe, expect, it } from "vitest";
import type { RouteCells } from "../../../src/estimate/compare/route.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { type Decimal, decimal } from "../../../src/estimate/quantity/decimal.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const demo = demoBody("orchard-shelter");
const shelter = estimated({ ...demo, heldPlans: { milled: ["posts", "rafters", "ties"] } });

const cellOf = (found: Estimate, name: string): Cell => {
  const cell = found.basis.sheet.find(name);
  if (!cell) throw new Error(`no ${name}`);
  return cell;
};

/** Totals of two routes after some cells have other values. */
function totals(found: Estimate, changes: ReadonlyMap<string, Decimal>, ...keys: readonly string[]): Decimal[] {
  const values = evaluateAgain(found.basis.sheet.cells, changes);
  return keys.map((key) => values(cellOf(found, `${key}.total`)));
}

describe("the value of an hour at which two routes cost the same", () => {
  it.each([
    ["all milled", "decision.mill.payPerHour", "milled"],
    ["the mix", "decision.mix.payPerHour", "mixed"],
  ])("is what %s pays for each extra hour", (_, name, key) => {
    const pay = cellOf(shelter, name).value;
    const at = (hour: Decimal) =>
      totals(shelter, new Map([["labor.valueOfHour", hour]]), "bought", key) as [Decimal, Decimal];
    const [bought, milled] = at(pay);
    expect(milled.minus(bought).abs().lt("1e-20")).toBe(true);
    // Below it milling wins, above it buying does.
    const [dear, cheap] = [at(pay.minus(1)), at(pay.plus(1))];
    expect(dear[1].lt(dear[0])).toBe(true);
    expect(cheap[1].gt(cheap[0])).toBe(true);
  });

  it("is no figure to go by where milling takes no extra hours: it stands at zero, and the verdict says why", () => {
    const overrides = { pace: "0" };
    const nothing = estimated({ ...demo, heldPlans: { milled: ["posts"] }, overrides });
    expect(nothing.decision.mill?.extraHours.value.isZero()).toBe(true);
    expect(nothing.decision.mill?.payPerHour?.value.isZero()).toBe(true);
    expect(nothing.verdict.reasons.join(" ")).toMatch(/no more hours/);
  });
});

describe("the price of bought wood at which both routes cost the same", () => {
  /** Scales the prices of all lumber so that what milling replaces costs the break-even price. */
  function atBreakEven(found: Estimate): [Decimal, Decimal] {
    const { buy, mill } = found.routes;
    if (!mill || !found.decision.breakEven) throw new Error("nothing to compare");
    const replaced = buy.lumber.value.minus(mill.lumber.value);
    const times = found.decision.breakEven.price.value.times(cellOf(found, "decision.wood").value).dividedBy(replaced);
    const prices = [...buy.lines, ...mill.lines].flatMap(({ department, price }) =>
      department === "lumber" && price ? [[price.name, price.value.times(times)] as const] : [],
    );
    return totals(found, new Map(prices), "bought", "milled") as [Decimal, Decimal];
  }

  it("is just that, taxes and the shortfall that is bought anyway included", () => {
    expect(shelter.basis.catalog.taxes.length).toBeGreaterThan(0);
    expect(shelter.routes.mill?.lumber.value.gt(0)).toBe(true);
    const [bought, milled] = atBreakEven(shelter);
    // Every line and tax is rounded to the cent.
    expect(bought.minus(milled).abs().lte("0.30")).toBe(true);
  });

  it("is just that without taxes", () => {
    const untaxed = estimated({ ...demo, heldPlans: { milled: [] }, overrides: { "tax.1.rate": "0 %" } });
    const [bought, milled] = atBreakEven(untaxed);
    expect(bought.minus(milled).abs().lte("0.30")).toBe(true);
  });
});

describe("what single groups save", () => {
  it.each([
    ["the mix", shelter, "mixed"],
    ["all milled, where the mix is to buy everything", estimated({ ...demo, heldPlans: { milled: [] } }), "milled"],
  ] as const)("adds up, with what they share, to what %s saves", (_, { decision }, key) => {
    const own = decision.groups.filter(({ route }) => route.plan.key === key);
    const whole = key === "mixed" ? decision.mix : decision.mill;
    expect(own.length).toBeGreaterThan(2);
    expect(decision.shared?.route.plan.key).toBe(key);
    const sum = (cells: readonly Cell[]) => cells.reduce((total, { value }) => total.plus(value), decimal(0));
    const left = (saved: Cell | undefined, shared: Cell | undefined, cells: readonly Cell[]) =>
      sum(cells)
        .plus(shared?.value ?? 0)
        .minus(saved?.value ?? 0)
        .abs();
    const cash = own.map(({ cashSaved }) => cashSaved);
    const hours = own.map(({ extraHours }) => extraHours);
    expect(left(whole?.cashSaved, decision.shared?.cash, cash).lt("1e-20")).toBe(true);
    expect(left(whole?.extraHours, decision.shared?.hours, hours).lt("1e-20")).toBe(true);
  });

  it("counts a group that the mix mills in the plan of the mix, and lists none that no plan saws", () => {
    const { decision, routes } = shelter;
    const sawn = (route: RouteCells | undefined, name: string) =>
      route?.plan.sawing?.measures.groups.find(({ group }) => group === name)?.sawn ?? 0;
    for (const { name, route, cashSaved, extraHours } of decision.groups) {
      expect(sawn(route, name)).toBeGreaterThan(0);
      expect(route).toBe(sawn(routes.mix, name) > 0 ? routes.mix : routes.mill);
      expect(cashSaved.value.isZero() && extraHours.value.isZero()).toBe(false);
    }
    const told = new Set(decision.groups.map(({ name }) => name));
    for (const { group } of shelter.basis.groups)
      if (sawn(routes.mix, group.name) > 0 || sawn(routes.mill, group.name) > 0) expect(told).toContain(group.name);
  });

  it("counts buying a group as the sticks that are bought more for it, spares and tax included", () => {
    // Four fly rafters are one 10 ft 2 × 6 each; 7 % of four more is no spare, or one.
    const cost = cellOf(shelter, "decision.group.fly-rafters.buyCost").value;
    const stick = cellOf(shelter, "price.spf-2x6-10").value.times(cellOf(shelter, "tax.1.rate").value.plus(1));
    expect(["4", "5"]).toContain(cost.dividedBy(stick).toFixed());
  });
});

describe("without logs", () => {
  it("there is nothing to compare and everything is bought", () => {
    const { logs: _, ...bare } = demo;
    const { routes, decision, verdict } = estimated(bare);
    expect(routes.mill).toBeUndefined();
    expect(routes.mix).toBe(routes.buy);
    expect(decision.groups).toEqual([]);
    expect(verdict.headline).toBe("Buy everything: no logs were named.");
  });
});

describe("where the building office wants a grade mark", () => {
  it("structural groups are bought whatever they would save, the others may be milled", () => {
    const graded = estimated({ ...demo, site: { ungradedAccepted: "no" } });
    const milled = [...(graded.routes.mill?.plan.milled ?? [])];
    expect(milled.length).toBeGreaterThan(0);
    for (const name of milled) expect(name).toMatch(/fascia/);
    expect(graded.notices.some(({ text }) => text.includes("does not accept ungraded"))).toBe(true);
  });
});
