/** Plans made soon from what another search learnt of the same logs, for other groups and at other prices. */
import { describe, expect, it } from "vitest";
import { carefulSawyer } from "../../../src/estimate/salvage/careful-sawyer.js";
import { improveSawing, planSawing } from "../../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import type { SawingProblem } from "../../../src/estimate/salvage/sawing-problem.js";
import { priceSawingPlan } from "../../judges/sawing-price.js";
import { randomSawingProblem } from "../../judges/sawing-problems.js";

const NOISE = 1e-6;
const SEEDS = Array.from({ length: 150 }, (_, seed) => seed);

const asked = (seed: number): SawingProblem =>
  randomSawingProblem(seed, { size: seed % 3 === 0 ? "small" : "tiny", switches: seed % 5 !== 0 });

/** Without every third group, with half as many pieces of the others, and those half as dear again. */
const changed = (problem: SawingProblem): SawingProblem => ({
  ...problem,
  groups: problem.groups
    .filter((_, i) => i % 3 !== 1)
    .map((group) => ({
      ...group,
      count: Math.ceil(group.count / 2),
      buy: { cash: group.buy.cash * 1.5, hours: group.buy.hours },
    })),
});

const priced = (problem: SawingProblem, plan: Parameters<typeof priceSawingPlan>[1]) =>
  priceSawingPlan(problem, plan).cost.toNumber();

describe("a sawing plan made soon from what was learnt of the logs", () => {
  it("passes the judge, keeps its price, and is never above the rule, whatever was learnt", () => {
    const wrong = SEEDS.flatMap((seed) => {
      const first = asked(seed);
      const problem = changed(first);
      const { learnt } = planSawing(first, { work: 150, seed });
      const { plan, cost, bound } = improveSawing(problem, { work: 60, seed, learnt });
      const price = priced(problem, plan);
      return [
        ...judgeSawingPlan(problem, plan),
        ...(Math.abs(price - cost) > NOISE ? [`costs ${price}, not ${cost}`] : []),
        ...(bound > price + NOISE ? [`costs ${price}, below its bound ${bound}`] : []),
        ...(price > priced(problem, carefulSawyer(problem)) + NOISE ? ["above the rule"] : []),
      ].map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  it("costs no more than the plan that was learnt, where the question is the same; without it, often more", () => {
    const costs = SEEDS.map((seed) => {
      const problem = asked(seed);
      const first = planSawing(problem, { work: 400, seed });
      const { cost } = improveSawing(problem, { work: 1, seed, learnt: first.learnt });
      return { seed, first: first.cost, cost, alone: improveSawing(problem, { work: 1, seed }).cost };
    });
    expect(costs.filter(({ cost, first }) => cost > first + NOISE)).toEqual([]);
    expect(costs.filter(({ alone, first }) => alone > first + NOISE).length).toBeGreaterThan(20);
  });

  it("costs no more than it in a search of its own, nor after one at other prices in between", () => {
    const costs = SEEDS.map((seed) => {
      const problem = asked(seed);
      const first = planSawing(problem, { work: 400, seed });
      const between = planSawing(changed(problem), { work: 40, seed, learnt: first.learnt });
      const again = [first, between].map(({ learnt }) => planSawing(problem, { work: 40, seed, learnt }).cost);
      return { seed, first: first.cost, again, alone: planSawing(problem, { work: 40, seed }).cost };
    });
    expect(costs.filter(({ again, first }) => again.some((cost) => cost > first + NOISE))).toEqual([]);
    expect(costs.filter(({ alone, first }) => alone > first + NOISE).length).toBeGreaterThan(5);
  });

  it("learns nothing from other logs", () => {
    const seeds = SEEDS.slice(0, 30);
    const learnt = seeds.map((seed) => planSawing(asked(seed), { work: 100, seed }).learnt);
    const differ = seeds.filter((seed) => {
      const problem = asked(seed);
      const others = { ...problem, logs: problem.logs.map((log) => ({ ...log, length: log.length - 1 })) };
      const known = learnt[seed] as (typeof learnt)[number];
      const [told, untold] = [known, { ...known, bolts: new Map() }].map((one) =>
        improveSawing(others, { work: 20, seed, learnt: one }),
      );
      return JSON.stringify(told?.plan) !== JSON.stringify(untold?.plan);
    });
    expect(learnt.filter(({ bolts }) => bolts.size > 0).length).toBeGreaterThan(10);
    expect(differ).toEqual([]);
  });
});
