/** The value of an hour at which buying takes over: told nearly alike whether or not the mixes between were searched. */
import { expect, it, vi } from "vitest";
import { planners } from "../../../src/api/planners.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

vi.setConfig({ testTimeout: 120_000 });

const service = planners();

it.each([
  ["orchard-shelter", "15 USD/person-h"],
  ["orchard-shelter", "4 USD/person-h"],
  ["market-stall", "4 GBP/person-h"],
])("of %s at %s is found within a fifth without the frontier", (demo, valueOfHour) => {
  const body = demoBody(demo) as { labor?: object; options?: object };
  const from = (frontier: boolean): number => {
    const asked = { ...body, labor: { ...body.labor, valueOfHour }, options: { ...body.options, frontier } };
    return estimated(asked, service).searched?.standing.buying?.from.toNumber() ?? 0;
  };
  expect(from(false) / from(true)).toBeGreaterThan(0.8);
  expect(from(false) / from(true)).toBeLessThan(1.25);
});
