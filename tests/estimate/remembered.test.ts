import { expect, it } from "vitest";
import { remembering } from "../../src/estimate/remembered.js";
import { demoBody, estimated, quickPlanners } from "../helpers/estimating.js";

it("plans an order of sticks once an estimate", () => {
  const body = demoBody("market-stall");
  const asked: string[] = [];
  const counting = {
    ...quickPlanners,
    stock: (problem: Parameters<typeof quickPlanners.stock>[0]) => {
      asked.push(JSON.stringify(problem));
      return quickPlanners.stock(problem);
    },
  };
  estimated(body, counting);
  expect(asked.length).toBeGreaterThan(3);
  expect(new Set(asked).size).toBe(asked.length);
});

it("keeps planners apart: a sketch of an order is not its plan", () => {
  const told: string[] = [];
  const planner = (name: string) => (problem: Parameters<typeof quickPlanners.stock>[0]) => {
    told.push(name);
    return quickPlanners.stock(problem);
  };
  const planners = remembering({
    ...quickPlanners,
    stock: planner("whole"),
    sketch: { ...quickPlanners, stock: planner("sketch") },
  });
  const problem = {
    pieces: [{ name: "rail", length: 40, count: 3 }],
    stocks: [{ name: "stick", length: 100, priceMinor: 500, available: null }],
    ...{ kerf: 1, endTrim: 0 },
  };
  for (const one of [planners, planners.sketch, planners, planners.sketch]) one?.stock(problem);
  expect(told).toEqual(["whole", "sketch"]);
});
