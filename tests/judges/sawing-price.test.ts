import { describe, expect, it } from "vitest";
import { judgeSawingPlan } from "../../src/estimate/salvage/sawing-judge.js";
import type { SawCut, SawingPlan, SawingProblem } from "../../src/estimate/salvage/sawing-problem.js";
import { priceSawingPlan } from "./sawing-price.js";

/** One step is one foot, so that areas and lengths can be read off the coordinates. */
const QUESTION: SawingProblem = {
  gridMm: "304.8",
  logs: [
    {
      name: "giant",
      species: "white pine",
      length: 30,
      smallDiameter: 20,
      largeDiameter: 20,
      sweep: 0,
      rot: { smallEnd: 0, largeEnd: 0 },
      bark: 0,
    },
  ],
  groups: [
    {
      name: "beam",
      thickness: 2,
      width: 4,
      length: 5,
      count: 4,
      species: [],
      heart: "any",
      wane: 0,
      buy: { cash: 11, hours: 0.25 },
    },
  ],
  shop: {
    millKerf: 2,
    ripKerf: 1,
    crossKerf: 1,
    buckKerf: 1,
    deepestRip: 3,
    longestBolt: 12,
    throat: 0,
    pith: 0,
  },
  rates: {
    wage: 10,
    logHours: 0.5,
    logCash: 3,
    boltHours: 0.25,
    millCutHours: 0.01,
    millHoursPerFt2: 0.001,
    millCashPerFt2: 0.1,
    ripCutHours: 0.02,
    ripHoursPerFt: 0.003,
    ripCashPerFt: 0.05,
    crosscutHours: 0.125,
  },
};

const CUTS: SawCut[] = [
  { tool: "buck", axis: "z", part: 0, lo: 18, hi: 19 }, // bolt of 11 ft
  { tool: "mill", axis: "y", part: 2, lo: 5, hi: 7 }, // middle at 6: half chord 8 (6-8-10), 16 × 11 = 176 ft²
  { tool: "mill", axis: "y", part: 4, lo: 9, hi: 11 }, // middle at 10: no chord left
  { tool: "rip", axis: "x", part: 5, lo: -3, hi: -2 }, // slab 2 thick: 11 ft
  { tool: "rip", axis: "x", part: 8, lo: 2, hi: 3 }, // 11 ft
  { tool: "cross", axis: "z", part: 9, lo: 24, hi: 25 }, // beam [19, 24], rest [25, 30] is another
];
const across = { x0: -2, x1: 2, y0: 7, y1: 9 };
const PIECES = [
  { group: "beam", part: 11, ...across, z0: 19, z1: 24 },
  { group: "beam", part: 12, ...across, z0: 25, z1: 30 },
];
const plan = (cuts: SawCut[], pieces: typeof PIECES, bought: number): SawingPlan => ({
  gridMm: "304.8",
  logs: [{ log: "giant", cuts, pieces }],
  buy: { beam: bought },
});

/** As text, for a decimal is not equal to a float. */
function shown(price: ReturnType<typeof priceSawingPlan>): Record<string, string> {
  const { cost, ...parts } = price;
  const texts = Object.entries(parts).map(([name, { hours, cash }]) => [
    name,
    `${hours.toString()} h, ${cash.toString()}`,
  ]);
  return { ...Object.fromEntries(texts), cost: cost.toString() };
}

describe("price of a sawing plan", () => {
  it("counts each kind of work from the cuts", () => {
    const made = plan(CUTS, PIECES, 2);
    expect(judgeSawingPlan({ ...QUESTION, groups: [{ ...groupOf(), wane: 2 }] }, made)).toEqual([]);
    expect(shown(priceSawingPlan(QUESTION, made))).toEqual({
      logs: "0.5 h, 3",
      bolts: "0.25 h, 0",
      millCuts: "0.196 h, 17.6", // 2 × 0.01 + 176 × 0.001; 176 × 0.1
      ripCuts: "0.106 h, 1.1", // 2 × 0.02 + 22 × 0.003; 22 × 0.05
      crosscuts: "0.25 h, 0", // two pieces
      bought: "0.5 h, 22",
      total: "1.802 h, 43.7",
      cost: "61.72",
    });
  });

  it("counts the distance of two sawn faces where the mill rips a thick slab", () => {
    const shop = { ...QUESTION.shop, deepestRip: 1 };
    const cuts = CUTS.with(3, { tool: "mill", axis: "x", part: 5, lo: -4, hi: -2 }).with(4, {
      tool: "mill",
      axis: "x",
      part: 8,
      lo: 2,
      hi: 4,
    });
    const price = priceSawingPlan({ ...QUESTION, shop }, plan(cuts, PIECES, 2));
    // Besides 176: twice 2 ft × 11 ft.
    expect(shown(price)).toMatchObject({ millCuts: "0.26 h, 22", ripCuts: "0 h, 0" });
  });

  it("counts the chord in the circle half way along a tapered bolt", () => {
    // From 12 at z = 0 to 32 at z = 30: the bolt [19, 30] has 12 + 20 × 24.5 / 30 = 28 1/3 in the middle. Cut through
    // the axis: 28 1/3 × 11 = 311 2/3 ft².
    const log = { ...giant(), smallDiameter: 12, largeDiameter: 32 };
    const cuts: SawCut[] = [...CUTS.slice(0, 1), { tool: "mill", axis: "y", part: 2, lo: -1, hi: 1 }];
    const price = priceSawingPlan({ ...QUESTION, logs: [log] }, plan(cuts, [], 4));
    expect(price.millCuts.cash.toFixed(10)).toBe("31.1666666667");
  });

  it("counts the half chord from a sawn face", () => {
    // Quartered: a cut through the axis, then one square to it through the upper half: 10 ft from face to bark.
    const cuts: SawCut[] = [
      ...CUTS.slice(0, 1),
      { tool: "mill", axis: "y", part: 2, lo: -2, hi: 0 },
      { tool: "mill", axis: "x", part: 4, lo: -1, hi: 1 },
    ];
    const price = priceSawingPlan(QUESTION, plan(cuts, [], 4));
    const first = 2 * Math.sqrt(99) * 11;
    expect(price.millCuts.cash.toNumber()).toBeCloseTo((first + 110) / 10, 10);
  });

  it("counts a log that is only bucked, and not one that nobody touches", () => {
    expect(shown(priceSawingPlan(QUESTION, plan(CUTS.slice(0, 1), [], 4)))).toMatchObject({
      logs: "0.5 h, 3",
      bolts: "0 h, 0",
    });
    expect(shown(priceSawingPlan(QUESTION, plan([], [], 4)))).toMatchObject({ logs: "0 h, 0", cost: "54" });
  });

  it("counts a kerf as wide as three blades as three passes", () => {
    const wide = CUTS.slice(0, 1).concat({ tool: "mill", axis: "y", part: 2, lo: 3, hi: 9 });
    // Middle at 6 again: 3 × 176.
    expect(shown(priceSawingPlan(QUESTION, plan(wide, [], 4)))).toMatchObject({ millCuts: "0.558 h, 52.8" });
  });

  it("counts one pass of a saw without a kerf", () => {
    const shop = { ...QUESTION.shop, millKerf: 0 };
    const cuts: SawCut[] = [...CUTS.slice(0, 1), { tool: "mill", axis: "y", part: 2, lo: 6, hi: 6 }];
    expect(shown(priceSawingPlan({ ...QUESTION, shop }, plan(cuts, [], 4)))).toMatchObject({
      millCuts: "0.186 h, 17.6",
    });
  });

  it("buys none of a group that is not listed, whatever its name", () => {
    const groups = [{ ...groupOf(), name: "constructor", count: 0 }];
    const nothing = { gridMm: "304.8", logs: [], buy: {} };
    expect(judgeSawingPlan({ ...QUESTION, groups }, nothing)).toEqual([]);
    expect(priceSawingPlan({ ...QUESTION, groups }, nothing).cost.toString()).toBe("0");
  });

  it("leaves no last digit that a float would: a hundred beams at 0.1 are 10", () => {
    const groups = [{ ...groupOf(), count: 100, buy: { cash: 0.1, hours: 0 } }];
    expect(
      priceSawingPlan({ ...QUESTION, groups }, { gridMm: "304.8", logs: [], buy: { beam: 100 } }).cost.toString(),
    ).toBe("10");
  });
});

function groupOf() {
  const [group] = QUESTION.groups;
  if (group === undefined) throw new Error("a group is missing");
  return group;
}

function giant() {
  const [log] = QUESTION.logs;
  if (log === undefined) throw new Error("a log is missing");
  return log;
}
