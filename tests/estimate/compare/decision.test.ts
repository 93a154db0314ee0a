import { describe, expect, it } from "vitest";
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
  return keys.map((key) => values.get(cellOf(found, `${key}.total`)) ?? decimal(0));
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
    if (!mill || !found.decision.breakEvenPrice) throw new Error("nothing to compare");
    const replaced = buy.lumber.value.minus(mill.lumber.value);
    const times = found.decision.breakEvenPrice.value.times(cellOf(found, "decision.wood").value).dividedBy(replaced);
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
  it("adds up, with what they share, to what all of them save", () => {
    const { decision } = shelter;
    const sum = (cells: readonly Cell[]) => cells.reduce((total, { value }) => total.plus(value), decimal(0));
    const cash = sum(decision.groups.map((group) => group.cashSaved)).plus(decision.shared?.cash.value ?? 0);
    const hours = sum(decision.groups.map((group) => group.extraHours)).plus(decision.shared?.hours.value ?? 0);
    expect(
      cash
        .minus(decision.mill?.cashSaved.value ?? 0)
        .abs()
        .lt("1e-20"),
    ).toBe(true);
    expect(
      hours
        .minus(decision.mill?.extraHours.value ?? 0)
        .abs()
        .lt("1e-20"),
    ).toBe(true);
  });

  it("counts buying a group as the share of its offer's stock lengths that its length is", () => {
    // 26 common and 4 fly rafters of one length share the 2 × 6s: 26 thirtieths and 4 thirtieths.
    const cost = (name: string) => cellOf(shelter, `decision.group.${name}.buyCost`).value;
    expect(cost("rafters").dividedBy(cost("fly-rafters")).toFixed(12)).toBe("6.500000000000");
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
