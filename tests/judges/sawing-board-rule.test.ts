/**
 * One-inch boards out of a log, against the board rule that was reckoned for just that: International 1/4-inch (J. F. Clark,
 * 1906). Boards shrink by 1/16 in, the kerf is 1/4 in, widths are whole inches from 3 in; a log of 16 ft is taken as the
 * cylinder of its small end, the rule as four sections of 4 ft, each half an inch thicker than the one above.
 */
import { describe, expect, it } from "vitest";
import { planSawing } from "../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../src/estimate/salvage/sawing-judge.js";
import type { SawingProblem } from "../../src/estimate/salvage/sawing-problem.js";

/** Steps of 1/16 in to an inch. */
const INCH = 16;
const FEET = 16;

/** Boards are worth their board feet, and sawing costs nothing: what is not bought is the board feet sawn. */
function boards(inches: number): SawingProblem {
  const length = FEET * 12 * INCH;
  return {
    gridMm: "1.5875",
    rates: {
      ...{ wage: 0, logHours: 0, logCash: 0, boltHours: 0, millCutHours: 0, millHoursPerFt2: 0, millCashPerFt2: 0 },
      ...{ ripCutHours: 0, ripHoursPerFt: 0, ripCashPerFt: 0, crosscutHours: 0 },
    },
    shop: {
      ...{ millKerf: 4, ripKerf: 4, crossKerf: 4, buckKerf: 4, deepestRip: 0, longestBolt: length, throat: 0, pith: 0 },
    },
    logs: [
      {
        ...{ name: "log", species: "pine", length, smallDiameter: INCH * inches, largeDiameter: INCH * inches },
        ...{ sweep: 0, bark: 0, rot: { smallEnd: 0, largeEnd: 0 } },
      },
    ],
    groups: Array.from({ length: inches - 2 }, (_, i) => ({
      ...{ name: `width ${String(i + 3).padStart(2, "0")}`, thickness: INCH + 1, width: INCH * (i + 3), length },
      ...{ count: 40, species: [], heart: "any", wane: 0, buy: { cash: ((i + 3) * FEET) / 12, hours: 0 } },
    })),
  };
}

const international = (inches: number): number =>
  [0, 0.5, 1, 1.5].reduce((sum, more) => sum + 0.905 * (0.22 * (inches + more) ** 2 - 0.71 * (inches + more)), 0);

describe("one-inch boards of a 16 ft log", () => {
  // The best offset of the first cut, found by trying every sixteenth of an inch in a program of its own.
  it.each([
    [8, "38.7", 0.03],
    [9, "52.0", 0.03],
    [10, "66.7", 0.032],
    [12, "96.0", 0.01],
    [16, "181.3", 0.009],
    [20, "289.3", 0.009],
    [24, "424.0", 0.009],
    [30, "673.3", 0.009],
  ])("of %i in are %s board feet, as by the rule", (inches, feet, near) => {
    const problem = boards(inches);
    const { plan, cost, bound } = planSawing(problem, { work: 3000, seed: 1 });
    expect(judgeSawingPlan(problem, plan)).toEqual([]);
    const all = problem.groups.reduce((sum, { count, buy }) => sum + count * buy.cash, 0);
    expect((all - cost).toFixed(1)).toBe(feet);
    // The bound says that no way of sawing gives more.
    expect((all - bound).toFixed(1)).toBe(feet);
    expect(Math.abs((all - cost) / international(inches) - 1)).toBeLessThanOrEqual(near);
  });
});
