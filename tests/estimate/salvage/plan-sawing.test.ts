import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { SawingProgress } from "../../../src/estimate/salvage/optimiser/counted-work.js";
import { improveSawing, planSawing } from "../../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import type { SawingProblem } from "../../../src/estimate/salvage/sawing-problem.js";
import { pathologicalProblem } from "../../judges/pathological-sawing.js";
import { randomSawingProblem } from "../../judges/sawing-problems.js";

const frozen = new URL("../../bench/sawing/frozen/M-05.json", import.meta.url);
const problem = JSON.parse(readFileSync(frozen, "utf8")) as SawingProblem;
const limits = { work: 4000, seed: 1 };

/** Milliseconds of nothing, as a processor that others use has them. */
function idle(ms: number): void {
  const until = performance.now() + ms;
  while (performance.now() < until);
}

describe("the sawing search", () => {
  it("gives the same bytes however slow the processor", () => {
    let asked = 0;
    const slow = planSawing(problem, {
      ...limits,
      shouldStop: () => {
        idle(asked++ % 50 === 0 ? 5 : 0);
        return false;
      },
    });
    expect(asked).toBeGreaterThan(100);
    expect(JSON.stringify(slow)).toBe(JSON.stringify(planSawing(problem, limits)));
  });

  it("tells how far it has come: all stages in order, never back, never beyond the work", () => {
    const told: SawingProgress[] = [];
    const outcome = planSawing(problem, { ...limits, report: (progress) => told.push(progress) });
    expect([...new Set(told.map(({ stage }) => stage))]).toEqual(["relaxation", "whole logs", "improvement"]);
    expect(told.length).toBeGreaterThan(30);
    expect(told.map(({ done }) => done)).toEqual(told.map(({ done }) => done).sort((a, b) => a - b));
    expect(told.every(({ done, of }) => done <= of && of === limits.work)).toBe(true);
    expect(outcome).toEqual(planSawing(problem, limits));
  });

  it.each([0, 1, 20, 100, 200])("ends when asked to, at its %i. question, with a plan that can be sawn", (nth) => {
    let asked = 0;
    const { plan, complete, bound, cost } = planSawing(problem, { ...limits, shouldStop: () => asked++ >= nth });
    expect(complete).toBe(false);
    expect(asked).toBeLessThanOrEqual(nth + 1);
    expect(judgeSawingPlan(problem, plan)).toEqual([]);
    expect(bound).toBeLessThanOrEqual(cost);
  });

  it("spends no more than its work and one unit of it, and asks after every unit", () => {
    for (const work of [1, 50, 500, 4000]) {
      let most = 0;
      let last = 0;
      const { workUsed } = planSawing(problem, {
        ...limits,
        work,
        report: ({ done }) => {
          most = Math.max(most, done - last);
          last = done;
        },
      });
      // One look over the bolts of one log is the largest unit: some hundreds of stacks.
      expect(workUsed).toBeLessThan(work + 700);
      expect(most).toBeLessThan(700);
    }
  });

  it("keeps to its work on 200 logs and 50 groups, and returns a plan that can be sawn", { timeout: 120_000 }, () => {
    const large = pathologicalProblem();
    for (const work of [100, 1500]) {
      const { plan, workUsed, complete } = planSawing(large, { work, seed: 1 });
      expect(workUsed).toBeLessThan(work + 700);
      expect(complete).toBe(true);
      expect(plan.logs.length).toBeGreaterThan(50);
      expect(judgeSawingPlan(large, plan)).toEqual([]);
    }
  });

  // Question 2397 boxes a pith that is a point; the others have hearts, rot, and holes narrower than a kerf.
  it.each([2397, ...Array.from({ length: 20 }, (_, i) => 2000 + i)])(
    "proves nothing above what another search finds: question %i",
    (question) => {
      const asked = randomSawingProblem(question, { size: "tiny", switches: true });
      const { bound } = planSawing(asked, { work: 1500, seed: 1 });
      const { cost } = improveSawing(asked, { work: 800, seed: 2 });
      expect(bound).toBeLessThanOrEqual(cost + 1e-6 * Math.max(1, Math.abs(cost)));
    },
  );
});
