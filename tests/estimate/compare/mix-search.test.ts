import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { provenance } from "../../../src/api/provenance.js";
import { shownEstimate } from "../../../src/api/render/json/estimate.js";
import { frontierGap, supported, tieWage } from "../../../src/estimate/compare/envelope.js";
import { MixSearch, searchFrontier } from "../../../src/estimate/compare/mix-search.js";
import { judgeStockPlan } from "../../../src/estimate/purchase/stock-judge.js";
import { decimal, fixed } from "../../../src/estimate/quantity/decimal.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import { DEMOS, demoBody, estimated } from "../../helpers/estimating.js";

describe("the best mix", () => {
  it("is found among all mixes that there are, whatever they cost, where the budget allows", () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 99 })), {
      minLength: 16,
      maxLength: 16,
    });
    fc.assert(
      fc.property(points, fc.integer({ min: 0, max: 40 }), (prices, wage) => {
        const free = ["a", "b", "c", "d"];
        const price = (milled: ReadonlySet<string>) => {
          const [cash, hours] = prices[free.reduce((sum, name, i) => sum + (milled.has(name) ? 2 ** i : 0), 0)] as [
            number,
            number,
          ];
          return { milled, cash: decimal(cash), hours: decimal(hours) };
        };
        const search = new MixSearch({ free, pinned: [], limits: {}, budget: 16, price });
        const { cash, hours } = search.best(decimal(wage));
        expect(cash.plus(hours.times(wage)).toNumber()).toBe(Math.min(...prices.map(([c, h]) => c + wage * h)));
      }),
    );
  });
});

describe("a search from all that was given", () => {
  // A mill costs $80 before its first board. It saves $10 on each of nine groups and loses $30 on the tenth, so that milling
  // nothing ($0) beats milling everything ($20) and any one group ($70 or more), and nine of ten beat both (−$10).
  const free = Array.from({ length: 10 }, (_, i) => `g${i}`);
  const price = (milled: ReadonlySet<string>) => {
    const saved = [...milled].reduce((sum, name) => sum + (name === "g9" ? -30 : 10), 0);
    return { milled, cash: decimal(milled.size === 0 ? 0 : 80 - saved), hours: decimal(0) };
  };
  const searched = (budget: number) => {
    const search = new MixSearch({ free, pinned: [], limits: {}, budget, price });
    search.add(price(new Set(free)));
    search.add(price(new Set()));
    return search;
  };

  it("finds what the cost of a mill before its first board hides from one that sets out at milling nothing", () => {
    const search = searched(64);
    expect(search.best(decimal(0)).milled.size).toBe(0);
    const best = search.bestFromAll(decimal(0));
    expect([best.cash.toNumber(), best.milled.has("g9"), best.milled.size]).toEqual([-10, false, 9]);
    expect(search.tried.length).toBeLessThan(64);
  });

  it("keeps within its budget", () => {
    const search = searched(16);
    expect(search.bestFromAll(decimal(0)).cash.toNumber()).toBe(0);
    expect(search.tried.length).toBe(16);
  });
});

describe("the frontier", () => {
  it("is the lower envelope: cash rises, hours fall, the wages of the ties rise, and no plan lies under it", () => {
    const points = fc.array(
      fc.record({ cash: fc.integer({ min: 0, max: 500 }), hours: fc.integer({ min: 0, max: 200 }) }),
      { minLength: 1, maxLength: 30 },
    );
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 100, noNaN: true }), (drawn, wage) => {
        const all = drawn.map(({ cash, hours }) => ({
          milled: new Set<string>(),
          cash: decimal(cash),
          hours: decimal(hours),
        }));
        const hull = supported(all);
        for (const [i, { point, fromWage }] of hull.entries()) {
          const before = hull[i - 1];
          if (!before) continue;
          expect(point.cash.gt(before.point.cash)).toBe(true);
          expect(point.hours.lt(before.point.hours)).toBe(true);
          expect(fromWage.gte(before.fromWage)).toBe(true);
          expect(fromWage.eq(tieWage(before.point, point))).toBe(true);
        }
        const at = hull.filter(({ fromWage }) => fromWage.lte(wage)).at(-1)?.point;
        const least = Math.min(...drawn.map(({ cash, hours }) => cash + wage * hours));
        expect(at?.cash.plus(at.hours.times(wage)).toNumber()).toBeCloseTo(least, 6);
      }),
    );
  });

  it("has a gap that no mix of any kind undercuts, between the values of an hour at which something is proven", () => {
    // Mixes by hand; what is proven at two values of an hour is the least of all of them there, the frontier some of them.
    const number = fc.integer({ min: 1, max: 500 });
    const point = fc.record({ cash: number, hours: number });
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 12 }), fc.nat(3), number, number, (drawn, skip, a, b) => {
        fc.pre(a !== b);
        const all = drawn.map(({ cash, hours }) => ({
          ...{ milled: new Set<string>(), cash: decimal(cash), hours: decimal(hours) },
        }));
        const totals = (wage: number) => all.map(({ cash, hours }) => cash.plus(hours.times(wage)).toNumber());
        const proven = [a, b].map((wage) => ({ wage: decimal(wage), least: decimal(Math.min(...totals(wage))) }));
        const frontier = supported(all.slice(Math.min(skip, all.length - 1)));
        const { from, to, gap } = frontierGap(frontier, proven) ?? expect.fail("nothing is proven");
        expect([from.toNumber(), to.toNumber()]).toEqual([Math.min(a, b), Math.max(a, b)]);
        for (let i = 0; i <= 20; i++) {
          const wage = Math.min(a, b) + (Math.abs(a - b) * i) / 20;
          const best = Math.min(...frontier.map((one) => one.point.cash.plus(one.point.hours.times(wage)).toNumber()));
          expect(Math.min(...totals(wage))).toBeGreaterThanOrEqual(best * (1 - gap.toNumber()) - 1e-9);
        }
      }),
    );
    expect(frontierGap([], [])).toBeUndefined();
  });

  it("stops when the budget is spent", () => {
    const free = Array.from({ length: 20 }, (_, i) => `g${i}`);
    const price = (milled: ReadonlySet<string>) => ({
      milled,
      cash: decimal(100 - milled.size),
      hours: decimal(milled.size ** 1.5),
    });
    const search = new MixSearch({ free, pinned: [], limits: {}, budget: 50, price });
    search.add(price(new Set()));
    expect(searchFrontier(search).length).toBeGreaterThan(1);
    expect(search.tried.length).toBeLessThanOrEqual(50);
    expect(search.exhausted).toBe(false);
  });

  it.each(DEMOS)("of %s has a judged plan at each point, and none that another beats", (name) => {
    const body = demoBody(name);
    const made = estimated({ ...body, options: { ...(body.options as object), frontier: true } });
    const frontier = made.searched?.frontier ?? [];
    expect(frontier.length).toBeGreaterThan(1);
    for (const [i, { point, fromWage }] of frontier.entries()) {
      const { plan } = point;
      expect(plan && [...plan.milled].sort()).toEqual([...point.milled].sort());
      if (plan?.sawing) expect(judgeSawingPlan(plan.sawing.problem, plan.sawing.plan)).toEqual([]);
      for (const { question, plan: cuts } of plan?.stock ?? [])
        expect(judgeStockPlan(question.problem, cuts)).toEqual([]);
      const before = frontier[i - 1];
      if (!before) continue;
      expect(point.cash.gt(before.point.cash)).toBe(true);
      expect(point.hours.lt(before.point.hours)).toBe(true);
      expect(fromWage.gt(before.fromWage)).toBe(true);
    }
    const { buy, mill, mix } = made.routes;
    // At every tie, between ties, and beyond the last one.
    const ties = frontier.map(({ fromWage }) => fromWage);
    const between = ties.flatMap((tie, i) => [tie, tie.plus(ties[i + 1] ?? tie.plus(1000)).dividedBy(2)]);
    for (const wage of between) {
      const totals = frontier.map(({ point }) => point.cash.plus(point.hours.times(wage)));
      const least = totals.reduce((a, b) => (b.lt(a) ? b : a));
      for (const route of [buy, mill, mix]) {
        if (!route) continue;
        expect(least.lte(route.cash.value.plus(route.hours.value.times(wage)).plus("0.000001"))).toBe(true);
      }
    }
  });
});

describe("what is shown of a frontier", () => {
  it("names every group of which a mix mills more or fewer pieces than the one before, with both counts", () => {
    const body = demoBody("orchard-shelter");
    const made = estimated({ ...body, options: { ...(body.options as object), frontier: true } });
    const shown = shownEstimate(made, provenance("0".repeat(64)), []).decision.frontier;
    const counts = new Map(made.basis.groups.map(({ group }) => [group.name, group.count.value.toNumber()]));
    const known = new Map<string, number>();
    expect(shown[0]?.switches).toEqual([]);
    for (const [i, { mills, switches }] of shown.entries()) {
      for (const { group, milled, before } of switches) {
        const was = known.get(group);
        if (was !== undefined) expect([i, group, Number(before)]).toEqual([i, group, was]);
        expect(milled).not.toBe(before);
        expect(Number(milled)).toBeLessThanOrEqual(counts.get(group) as number);
        // Some of it is milled where the mix names it, and none where it does not.
        expect([group, Number(milled) > 0]).toEqual([group, mills.includes(group)]);
        expect([group, Number(before) > 0]).toEqual([group, shown[i - 1]?.mills.includes(group)]);
        known.set(group, Number(milled));
      }
    }
    expect(shown.flatMap(({ switches }) => switches).length).toBeGreaterThan(2);
    // Whatever changes sides altogether is among them.
    for (const [i, { mills, switches }] of shown.entries()) {
      const before = shown[i - 1]?.mills;
      const turned = [...mills, ...(before ?? mills)].filter(
        (name) => before && mills.includes(name) !== before.includes(name),
      );
      expect(switches.map(({ group }) => group)).toEqual(expect.arrayContaining([...new Set(turned)]));
    }
  });

  it("is exact: a tie between neighbours is cash over hours in decimals", () => {
    const point = (cash: string, hours: string) => ({
      milled: new Set<string>(),
      cash: decimal(cash),
      hours: decimal(hours),
    });
    // (1.005 − 0) ÷ 1 is 1.01 to the cent; as a float 1.005 is less, and rounds to 1.00.
    const wage = tieWage(point("0", "2"), point("1.005", "1"));
    expect([wage.toFixed(), fixed(wage, 2), (1.005).toFixed(2)]).toEqual(["1.005", "1.01", "1.00"]);
  });
});
