import { beforeAll, describe, expect, it } from "vitest";
import { loadHighs } from "../../../src/api/highs.js";
import type { StockOutcome, StockProblem } from "../../../src/estimate/purchase/stock/problem.js";
import { seeded } from "../../../src/estimate/purchase/stock/work.js";
import { judgeStockPlan } from "../../../src/estimate/purchase/stock-judge.js";
import { planStock } from "../../../src/estimate/purchase/stock-plan.js";
import type { LinearSolver } from "../../../src/estimate/solver.js";
import { CalledOff } from "../../../src/estimate/watch.js";
import { mulberry32 } from "../../bench/mulberry32.js";
import { randomStockProblem } from "../../judges/stock-problems.js";
import { bestByProgram } from "../../judges/stock-program.js";
import { bestByTrial, cheapestPurchase } from "../../judges/stock-trial.js";

const WORK = 1_000_000;
const stock = (name: string, length: number, priceMinor: number, available: number | null = null) => ({
  name,
  length,
  priceMinor,
  available,
});
const pieces = (...list: [number, number][]) => list.map(([length, count]) => ({ name: `${length}`, length, count }));
const bare = { kerf: 0, endTrim: 0 };

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadHighs();
});

/** Everything that must hold of any outcome, recomputed from the problem alone. */
function checkOutcome(problem: StockProblem, outcome: StockOutcome): string[] {
  const wrong = judgeStockPlan(problem, outcome.plan);
  const used = new Map<string, number>();
  const cut = new Map<string, number>();
  for (const row of outcome.plan) {
    used.set(row.stock, (used.get(row.stock) ?? 0) + row.times);
    for (const name of row.pieces) cut.set(name, (cut.get(name) ?? 0) + row.times);
  }
  let cost = 0;
  for (const each of problem.stocks) {
    const { name } = each;
    const bought = cheapestPurchase(each, used.get(name) ?? 0, each.owned ? 1 : (problem.bundle ?? 1));
    const paid = bought?.count ?? Number.NaN;
    cost += bought?.costMinor ?? Number.NaN;
    if ((outcome.sticks.find((each) => each.stock === name)?.count ?? 0) !== paid) wrong.push(`sticks of ${name}`);
  }
  if (cost !== outcome.costMinor) wrong.push(`cost ${outcome.costMinor} is ${cost}`);
  if (outcome.boundMinor > cost) wrong.push(`bound ${outcome.boundMinor} over cost ${cost}`);
  if (outcome.proven !== (outcome.boundMinor === cost)) wrong.push("proven and bound disagree");
  for (const { name, count } of problem.pieces) {
    const short = outcome.short.filter((each) => each.name === name).reduce((sum, each) => sum + each.count, 0);
    if ((cut.get(name) ?? 0) + short !== count) wrong.push(`${name} cut and short do not add up`);
  }
  return wrong;
}

describe("published cutting-stock problems", () => {
  // Chvátal, Linear Programming (1983), ch. 13: rolls of 100; the LP takes 452.25, whole rolls 453.
  it("cuts Chvátal's finals from 453 rolls", () => {
    const problem = {
      ...bare,
      pieces: pieces([45, 97], [36, 610], [31, 395], [14, 211]),
      stocks: [stock("roll", 100, 1)],
    };
    expect(planStock(problem, { work: WORK })).toMatchObject({ costMinor: 453, boundMinor: 453, proven: true });
  });

  // The paper-roll example of the encyclopedia article "Cutting stock problem": 5,600 mm, 13 widths; 73 rolls.
  it("cuts thirteen widths from 73 rolls of 5,600 mm", () => {
    const widths: [number, number][] = [
      [1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20],
      [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20],
    ]; // biome-ignore format: a table
    const problem = { ...bare, pieces: pieces(...widths), stocks: [stock("roll", 5600, 1)] };
    expect(planStock(problem, { work: WORK })).toMatchObject({ costMinor: 73, proven: true });
  });

  // J. E. Beasley, OR-Library, binpack1, first problem (Falkenauer's u120_00): bins of 150, 48 is optimal.
  it("packs u120_00 into 48 bins", () => {
    const items = [
      42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82, 73, 49, 70, 59, 23, 57, 72,
      74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32, 25, 38, 82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36,
      20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87,
      43, 84, 60, 55, 49, 78, 73, 62, 36, 44, 94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
    ]; // biome-ignore format: a table
    const counts = new Map<number, number>();
    for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
    const problem = { ...bare, pieces: pieces(...counts), stocks: [stock("bin", 150, 1)] };
    expect(planStock(problem, { work: 3 * WORK })).toMatchObject({ costMinor: 48, proven: true });
  });
});

describe("stock plans", () => {
  it("loses a kerf at each cut, not at each piece: three of 39 7/8 in and two kerfs of 3/16 in make 10 ft exactly", () => {
    // In sixteenths: 3 × 638 + 2 × 3 = 1,920.
    const problem = { pieces: pieces([638, 3]), stocks: [stock("10 ft", 1920, 900)], kerf: 3, endTrim: 0 };
    expect(planStock(problem, { work: WORK })).toMatchObject({ costMinor: 900, proven: true });
    expect(planStock({ ...problem, endTrim: 1 }, { work: WORK }).costMinor).toBe(1_800);
  });

  it("takes a longer stick where it costs less than a shorter one", () => {
    const problem = { ...bare, pieces: pieces([90, 1]), stocks: [stock("8 ft", 96, 800), stock("10 ft", 120, 750)] };
    expect(planStock(problem, { work: WORK }).plan).toEqual([{ stock: "10 ft", pieces: ["90"], times: 1 }]);
  });

  it("keeps names apart where lengths are equal", () => {
    const wanted = [
      { name: "post", length: 50, count: 2 },
      { name: "brace", length: 50, count: 2 },
    ];
    const { plan } = planStock({ ...bare, pieces: wanted, stocks: [stock("100", 100, 5)] }, { work: WORK });
    expect(plan).toEqual([
      { stock: "100", pieces: ["brace", "brace"], times: 1 },
      { stock: "100", pieces: ["post", "post"], times: 1 },
    ]);
  });

  it("says which pieces are too long, and which sticks lack for", () => {
    const problem = {
      ...bare,
      pieces: pieces([300, 1], [90, 3], [40, 2]),
      stocks: [stock("100", 100, 5, 2), stock("50", 50, 3)],
    };
    const outcome = planStock(problem, { work: WORK });
    expect(outcome.short).toEqual([
      { name: "300", count: 1, why: "too-long" },
      { name: "90", count: 1, why: "stock-lacks" },
    ]);
    expect(outcome).toMatchObject({ costMinor: 2 * 5 + 2 * 3, proven: true });
  });

  it("uses what is owned first, and buys bundles whole", () => {
    const owned = { ...stock("at hand", 70, 0, 1), owned: true };
    const problem = { ...bare, bundle: 3, pieces: pieces([60, 3]), stocks: [owned, stock("60", 60, 4)] };
    const outcome = planStock(problem, { work: WORK });
    expect(outcome.sticks).toEqual([
      { stock: "60", count: 3 },
      { stock: "at hand", count: 1 },
    ]);
    expect(outcome).toMatchObject({ costMinor: 12, proven: true });
  });

  it("buys more than are cut where a bulk price makes the greater number cheaper, and no more than can be had", () => {
    // Eight at 10 are 80, ten at 7 are 70; seven at 10 cost 70 as well, and are fewer.
    const bulk = { ...stock("60", 60, 10), bulk: [{ from: 10, priceMinor: 7 }] };
    const bought = (count: number, more: object = {}) => {
      const { sticks, costMinor, proven } = planStock(
        { ...bare, pieces: pieces([60, count]), stocks: [{ ...bulk, ...more }] },
        { work: WORK },
      );
      return { count: sticks[0]?.count, costMinor, proven };
    };
    expect(bought(8)).toEqual({ count: 10, costMinor: 70, proven: true });
    expect(bought(7)).toEqual({ count: 7, costMinor: 70, proven: true });
    expect(bought(12)).toEqual({ count: 12, costMinor: 84, proven: true });
    expect(bought(8, { available: 9 })).toEqual({ count: 8, costMinor: 80, proven: true });
    expect(bought(3, { from: 5 })).toEqual({ count: 5, costMinor: 50, proven: true });
  });

  it("cuts all from one length where that reaches its bulk price, though two lengths waste less", () => {
    // 5 of 40 and 5 of 60: at the prices of one, each its own length: 5 × 8 + 5 × 12 = 100. Ten of 60 at 8 are 80.
    const stocks = [stock("40", 40, 8), { ...stock("60", 60, 12), bulk: [{ from: 10, priceMinor: 8 }] }];
    const outcome = planStock({ ...bare, pieces: pieces([40, 5], [60, 5]), stocks }, { work: WORK });
    expect(outcome).toMatchObject({ costMinor: 80, proven: true, sticks: [{ stock: "60", count: 10 }] });
  });

  it("takes fewer sticks at the same cost", () => {
    const problem = {
      ...bare,
      pieces: pieces([50, 4]),
      stocks: [stock("50", 50, 10), stock("200", 200, 40), stock("100", 100, 20)],
    };
    expect(planStock(problem, { work: WORK }).sticks).toEqual([{ stock: "200", count: 1 }]);
  });

  it("leaves one long offcut rather than two short ones", () => {
    // Two sticks either way: 40 + 40 and 30, or 40 + 30 and 40: 70 left on one, or 60 and 30.
    const { plan } = planStock(
      { ...bare, pieces: pieces([40, 2], [30, 1]), stocks: [stock("100", 100, 9)] },
      { work: WORK },
    );
    expect(plan.map((row) => row.pieces)).toContainEqual(["30"]);
  });

  it("needs nothing where nothing is wanted, and nothing can be bought of nothing", () => {
    const nothing = { costMinor: 0, boundMinor: 0, proven: true, plan: [], short: [] };
    expect(planStock({ ...bare, pieces: [], stocks: [stock("a", 9, 1)] }, { work: WORK })).toMatchObject(nothing);
    const short = [{ name: "5", count: 2, why: "too-long" }];
    expect(planStock({ ...bare, pieces: pieces([5, 2]), stocks: [] }, { work: WORK })).toMatchObject({
      ...nothing,
      short,
    });
  });

  it("refuses numbers that are not whole, and names used twice", () => {
    const good = { ...bare, pieces: pieces([5, 2]), stocks: [stock("a", 9, 1)] };
    expect(() => planStock({ ...good, kerf: 0.5 }, { work: WORK })).toThrow(RangeError);
    expect(() => planStock({ ...good, pieces: pieces([0, 1]) }, { work: WORK })).toThrow(RangeError);
    expect(() => planStock({ ...good, stocks: [stock("a", 9, -1)] }, { work: WORK })).toThrow(RangeError);
    expect(() => planStock({ ...good, stocks: [stock("a", 9, 1), stock("a", 8, 1)] }, { work: WORK })).toThrow(
      RangeError,
    );
  });
});

/** One or two bulk prices for most lengths that are sold. */
function withBulk(problem: StockProblem, seed: number): StockProblem {
  const random = mulberry32(seed + 7_000);
  const from = () => 2 + Math.floor(random() * 4);
  const stocks = problem.stocks.map((one) => {
    if (one.owned || random() < 0.2) return one;
    const lower = () => Math.max(1, Math.round(one.priceMinor * (0.4 + 0.55 * random())));
    const bulk = Array.from({ length: random() < 0.5 ? 1 : 2 }, () => ({ from: from(), priceMinor: lower() }));
    return { ...one, bulk };
  });
  return { ...problem, stocks };
}

const withoutBulk = (problem: StockProblem): StockProblem => ({
  ...problem,
  stocks: problem.stocks.map(({ bulk: _, ...one }) => one),
});

describe("random stock problems", () => {
  it("pass the judge and add up, 2,000 of them, with and without an engine, and with next to no work", () => {
    for (let seed = 1; seed <= 2_000; seed++) {
      const problem = randomStockProblem(mulberry32(seed), { lengths: 8, pieces: 30, stocks: 5 });
      const work = [50, 5_000, 40_000][seed % 3] as number;
      const outcome = planStock(problem, { work, ...(seed % 2 ? { solver } : {}) });
      const wrong = checkOutcome(problem, outcome);
      if (wrong.length > 0) expect.fail(`seed ${seed}: ${wrong.join("; ")}\n${JSON.stringify(problem)}`);
    }
  }, 120_000);

  it("cost what trying every plan costs, where the pieces are few", () => {
    let proven = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const random = randomStockProblem(mulberry32(seed), { lengths: 6, pieces: 6, stocks: 3 });
      const problem = seed % 4 ? random : { ...random, bundle: 2 + (seed % 3) };
      const best = bestByTrial(problem);
      const outcome = planStock(problem, { work: 300_000, ...(seed % 2 ? { solver } : {}) });
      const short = outcome.short.reduce((sum, { count }) => sum + count, 0);
      const found = { seed, short, costMinor: outcome.costMinor };
      expect(found).toEqual({ seed, short: best.short, costMinor: best.costMinor });
      proven += outcome.proven ? 1 : 0;
    }
    expect(proven).toBeGreaterThanOrEqual(398);
  }, 120_000);

  it("cost what trying every plan and every number of sticks costs, where there are bulk prices", () => {
    let proven = 0;
    let bulky = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const problem = withBulk(randomStockProblem(mulberry32(seed), { lengths: 4, pieces: 6, stocks: 3 }), seed);
      const best = bestByTrial(problem);
      const outcome = planStock(problem, { work: 300_000, ...(seed % 2 ? { solver } : {}) });
      const wrong = checkOutcome(problem, outcome);
      if (wrong.length > 0) expect.fail(`seed ${seed}: ${wrong.join("; ")}\n${JSON.stringify(problem)}`);
      const short = outcome.short.reduce((sum, { count }) => sum + count, 0);
      expect({ seed, short, costMinor: outcome.costMinor }).toEqual({
        seed,
        short: best.short,
        costMinor: best.costMinor,
      });
      proven += outcome.proven ? 1 : 0;
      bulky += outcome.costMinor < planStock(withoutBulk(problem), { work: 300_000 }).costMinor ? 1 : 0;
    }
    expect(proven).toBeGreaterThanOrEqual(398);
    // Bulk prices that change nothing would test nothing.
    expect(bulky).toBeGreaterThan(100);
  }, 120_000);

  it("cost what the engine finds among all fillings, where those can be written out", () => {
    let compared = 0;
    for (let seed = 1; seed <= 120; seed++) {
      const { bundle: _, ...problem } = randomStockProblem(mulberry32(seed), { lengths: 6, pieces: 22, stocks: 4 });
      const fits = problem.pieces.filter(({ length }) =>
        problem.stocks.some((each) => each.length - problem.endTrim >= length),
      );
      const least = bestByProgram({ ...problem, pieces: fits }, solver);
      if (least === null) continue;
      const outcome = planStock(problem, { work: 500_000 });
      expect({ seed, cost: outcome.costMinor, proven: outcome.proven }).toEqual({ seed, cost: least, proven: true });
      compared++;
    }
    expect(compared).toBeGreaterThan(60);
  }, 120_000);

  it("give the same plan twice, and for the same lists in another order", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const problem = randomStockProblem(mulberry32(seed), { lengths: 8, pieces: 30, stocks: 5 });
      const turned = { ...problem, pieces: problem.pieces.toReversed(), stocks: problem.stocks.toReversed() };
      const once = planStock(problem, { work: 50_000, solver });
      expect(planStock(problem, { work: 50_000, solver })).toEqual(once);
      expect(planStock(turned, { work: 50_000, solver }).plan).toEqual(once.plan);
    }
  }, 60_000);

  it("never cost less for more pieces, nor more for another stock, where proven", () => {
    for (let seed = 1; seed <= 150; seed++) {
      const problem = randomStockProblem(mulberry32(seed), { lengths: 6, pieces: 16, stocks: 4 });
      const more = { ...problem, pieces: problem.pieces.map((piece) => ({ ...piece, count: piece.count + 1 })) };
      const wider = { ...problem, stocks: [...problem.stocks, stock("new", 150, 700)] };
      const [base, dearer, cheaper] = [problem, more, wider].map((each) => planStock(each, { work: 200_000 }));
      if (!base?.proven || base.short.length > 0) continue;
      if (dearer && dearer.short.length === 0) expect(dearer.costMinor).toBeGreaterThanOrEqual(base.costMinor);
      if (cheaper?.proven) expect(cheaper.costMinor).toBeLessThanOrEqual(base.costMinor);
    }
  }, 60_000);
});

describe("a plan that nobody waits for any more", () => {
  const random = seeded(7);
  const lengths = Array.from({ length: 40 }, (_, i) => ({
    name: `p${i}`,
    length: 97 + Math.floor(random() * 700),
    count: 5,
  }));
  const problem = {
    pieces: lengths,
    stocks: [stock("8", 1536, 398), stock("10", 1920, 528), stock("16", 3072, 962)],
    kerf: 8,
    endTrim: 0,
  };

  it("ends soon after it is told to, and is the same as ever where it is not", () => {
    let asked = 0;
    const stopped = () => ++asked > 2;
    expect(() => planStock(problem, { work: 1_000_000, stopped })).toThrow(CalledOff);
    expect(asked).toBe(3);
    expect(planStock(problem, { work: 50_000, stopped: () => false })).toEqual(planStock(problem, { work: 50_000 }));
  });
});
