import { describe, expect, it } from "vitest";
import { judgeSawingPlan } from "../../src/estimate/salvage/sawing-judge.js";
import type { SawGroup, SawingProblem } from "../../src/estimate/salvage/sawing-problem.js";
import { tryEverything } from "./sawing-enumeration.js";
import { exactSawing } from "./sawing-oracle.js";
import { priceSawingPlan } from "./sawing-price.js";
import { mulberry32, randomSawingProblem } from "./sawing-problems.js";

/** One short log and one or two groups on a grid of an inch. */
function coarseProblem(seed: number): SawingProblem {
  const next = mulberry32(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const rate = (to: number) => Math.round(next() * to * 1e3) / 1e3;
  const groups = Array.from({ length: whole(1, 2) }, (_, index): SawGroup => {
    const thickness = whole(1, 3);
    return {
      name: `g${index}`,
      thickness,
      width: thickness + whole(0, 2),
      length: whole(6, 16),
      count: whole(1, 3),
      species: [],
      heart: "any",
      wane: 0,
      buy: { cash: rate(6), hours: 0 },
    };
  });
  const small = whole(4, 8);
  const rotten = next() < 0.3;
  return {
    gridMm: "25.4",
    groups,
    logs: [
      {
        name: "L",
        species: "white pine",
        length: whole(12, 30),
        smallDiameter: small,
        largeDiameter: small + whole(0, 2),
        sweep: next() < 0.5 ? whole(0, 2) : 0,
        rot: { smallEnd: rotten ? whole(0, 2) : 0, largeEnd: rotten ? whole(0, 3) : 0 },
        bark: 0,
        ready: { cash: rate(1), hours: rate(0.02) },
      },
    ],
    shop: {
      millKerf: whole(0, 3),
      ripKerf: whole(0, 3),
      crossKerf: whole(0, 1),
      buckKerf: 1,
      deepestRip: whole(0, 3),
      longestBolt: whole(16, 30),
      throat: 0,
      pith: 0,
      thinnestSlab: seed % 3 === 0 ? 1 + (seed % 2) : 0,
    },
    rates: {
      wage: rate(20),
      logHours: rate(0.02),
      logCash: rate(1),
      boltHours: rate(0.02),
      millCutHours: rate(0.02),
      millHoursPerFt2: rate(0.02),
      millCashPerFt2: rate(0.2),
      ripCutHours: rate(0.01),
      ripHoursPerFt: rate(0.01),
      ripCashPerFt: rate(0.02),
      crosscutHours: rate(0.01),
    },
  };
}

const costOf = (problem: SawingProblem): number => {
  const exact = exactSawing(problem);
  if (typeof exact === "string") throw new Error(exact);
  return exact.cost;
};

describe("exact optimum of tiny sawing questions", () => {
  it("is what trying every plan finds, each of them written as cuts, passed by the judge and priced", () => {
    let sawn = 0;
    let tried = 0;
    for (let seed = 0; seed < 250; seed += 1) {
      const problem = coarseProblem(seed);
      const found = tryEverything(problem, 250);
      if (found === "too many") continue;
      expect(costOf(problem), `seed ${seed}`).toBeCloseTo(found.cost, 9);
      sawn += found.plan.logs.length;
      tried += found.plans;
    }
    expect(sawn).toBeGreaterThan(60); // the rest is cheaper to buy
    expect(tried).toBeGreaterThan(4000);
  });

  it("comes with a plan that the judge passes and that has this price", () => {
    let pieces = 0;
    for (let seed = 0; seed < 300; seed += 1) {
      const problem = randomSawingProblem(seed, { size: "tiny", switches: false });
      const exact = exactSawing(problem);
      if (typeof exact === "string") continue;
      expect(judgeSawingPlan(problem, exact.plan), `seed ${seed}`).toEqual([]);
      expect(priceSawingPlan(problem, exact.plan).cost.toNumber(), `seed ${seed}`).toBeCloseTo(exact.cost, 9);
      pieces += exact.plan.logs.reduce((sum, log) => sum + log.pieces.length, 0);
    }
    expect(pieces).toBeGreaterThan(400);
  });

  it("needs a circle of 11.79 in for two 3 × 10 with a kerf of 1/4 in", () => {
    // √(10² + 6.25²) = 11.7925 in = 188.68 sixteenths.
    const log = (diameter: number) => twoOf({ thickness: 48, width: 160 }, diameter);
    expect(exactSawing(log(189))).toMatchObject({ plan: { buy: {} } });
    expect(exactSawing(log(188))).toMatchObject({ plan: { buy: { g: 1 } } });
  });

  it("needs a circle of √2 times the side for a square", () => {
    // 4 in: 5.657 in = 90.5 sixteenths.
    const log = (diameter: number) => twoOf({ thickness: 64, width: 64 }, diameter);
    expect(exactSawing(log(91))).toMatchObject({ plan: { buy: { g: 1 } } });
    expect(exactSawing(log(90))).toMatchObject({ plan: { buy: { g: 2 } } });
  });

  // Each change can only open more plans, or make the same ones cheaper.
  it.each<[string, (problem: SawingProblem) => SawingProblem]>([
    [
      "another log",
      (p) => ({ ...p, logs: [...p.logs, ...p.logs.slice(0, 1).map((log) => ({ ...log, name: "more" }))] }),
    ],
    ["a longer mill", (p) => ({ ...p, shop: { ...p.shop, longestBolt: p.shop.longestBolt * 2 } })],
    ["less sweep", (p) => ({ ...p, logs: p.logs.map((log) => ({ ...log, sweep: Math.floor(log.sweep / 2) })) })],
    ["no rot", (p) => ({ ...p, logs: p.logs.map((log) => ({ ...log, rot: { smallEnd: 0, largeEnd: 0 } })) })],
    ["fewer pieces wanted", (p) => ({ ...p, groups: p.groups.map((group) => ({ ...group, count: group.count - 1 })) })],
    ["a lower wage", (p) => ({ ...p, rates: { ...p.rates, wage: p.rates.wage / 2 } })],
  ])("never rises with %s", (_, change) => {
    for (let seed = 0; seed < 30; seed += 1) {
      const problem = randomSawingProblem(seed, { size: "tiny", switches: false, gridMm: "12.7" });
      // Buying takes hours here: a lower wage must not make it cheaper to the seller.
      const groups = problem.groups.map((group) => ({ ...group, buy: { cash: Math.abs(group.buy.cash), hours: 0.1 } }));
      const before = { ...problem, groups };
      expect(costOf(change(before)), `seed ${seed}`).toBeLessThanOrEqual(costOf(before) + 1e-9);
    }
  });

  it("says so when a question is too large or has switches that it does not know", () => {
    const problem = randomSawingProblem(3, { size: "tiny", switches: false });
    const many = Array.from({ length: 8 }, (_, index) => ({ ...wood({}), name: `g${index}`, count: 9 }));
    expect(exactSawing({ ...problem, groups: many })).toBe("too large");
    expect(exactSawing({ ...problem, groups: [wood({ wane: 1 })] })).toBe("outside");
  });
});

function wood(change: Partial<SawGroup>): SawGroup {
  const plain = { thickness: 16, width: 32, length: 100, count: 2, species: [], heart: "any", wane: 0 } as const;
  return { name: "g", ...plain, buy: { cash: 100, hours: 0 }, ...change };
}

/** Two pieces wanted from one cylinder just long enough; work costs nothing. Grid 1/16 in, kerf 1/4 in. */
function twoOf(section: { thickness: number; width: number }, diameter: number): SawingProblem {
  const rates = {
    ...{ wage: 0, logHours: 0, logCash: 0, boltHours: 0, millCutHours: 0, millHoursPerFt2: 0, millCashPerFt2: 0 },
    ...{ ripCutHours: 0, ripHoursPerFt: 0, ripCashPerFt: 0, crosscutHours: 0 },
  };
  const sound = { species: "white pine", sweep: 0, rot: { smallEnd: 0, largeEnd: 0 }, bark: 0 };
  return {
    gridMm: "1.5875",
    groups: [wood(section)],
    logs: [{ name: "L", length: 100, smallDiameter: diameter, largeDiameter: diameter, ...sound }],
    shop: {
      ...{ millKerf: 4, ripKerf: 4, crossKerf: 4, buckKerf: 4 },
      deepestRip: 0,
      longestBolt: 200,
      throat: 0,
      pith: 0,
    },
    rates,
  };
}
