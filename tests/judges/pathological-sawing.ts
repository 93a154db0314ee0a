/** The largest sawing question that anyone should ask: 200 logs no two alike, 50 sections and lengths, on a grid of 1/16 in. */
import type { SawingProblem } from "../../src/estimate/salvage/sawing-problem.js";
import { randomSawingProblem } from "./sawing-problems.js";

/** As steps of the grid, for the optimiser. */
export function pathologicalProblem(): SawingProblem {
  const { shop, rates } = randomSawingProblem(0, { size: "medium", switches: false, gridMm: "1.5875" });
  return {
    gridMm: "1.5875",
    rates,
    shop: { ...shop, longestBolt: 3072, deepestRip: 40 },
    logs: Array.from({ length: 200 }, (_, i) => ({
      ...{ name: `log ${i}`, species: "pine", length: 1536 + 37 * i, sweep: (i * 7) % 48, bark: 8 },
      ...{ smallDiameter: 112 + ((i * 61) % 400), largeDiameter: 140 + ((i * 61) % 400) + (i % 40) },
      rot: { smallEnd: i % 5 === 0 ? 20 + (i % 13) : 0, largeEnd: i % 7 === 0 ? 31 : 0 },
    })),
    groups: Array.from({ length: 50 }, (_, i) => ({
      ...{ name: `group ${i}`, thickness: 16 + 3 * (i % 17), width: 67 + 5 * (i % 19), length: 331 + 47 * i },
      ...{ count: 40 + i, species: [], heart: "any", wane: i % 3, buy: { cash: 3 + 0.7 * i, hours: 0.02 } },
    })),
  };
}

/** As a request for a sawing plan: the same in kind. */
export function pathologicalRequest() {
  return {
    pieces: Array.from({ length: 50 }, (_, i) => ({
      ...{ name: `group-${i}`, role: "board", count: 40 + i, length: `${21 + (47 * i) / 16} in` },
      section: `${1 + (3 * (i % 17)) / 16} x ${4 + (5 * (i % 19)) / 16} in`,
    })),
    logs: Array.from({ length: 200 }, (_, i) => ({
      ...{ name: `log-${i}`, species: "eastern-white-pine", length: `${96 + 2 * (i % 60)} in` },
      ...{ smallDiameter: `${7 + ((i * 61) % 400) / 16} in`, sweep: `${((i * 7) % 48) / 16} in` },
      ...(i % 5 === 0 && { rot: { largeEnd: `${1 + (i % 3)} in` } }),
    })),
  };
}
