import { describe, expect, it } from "vitest";
import { rankedByHour } from "../../../src/estimate/compare/group-savings.js";
import { aside } from "../../../src/estimate/sheet/aside.js";
import { DEMOS, demoBody, estimated } from "../../helpers/estimating.js";

describe("groups ranked by what an hour of milling brings", () => {
  it.each(DEMOS)("stand in %s with what costs no hours first, then from the best paid hour down", (name) => {
    const { decision, routes } = estimated(demoBody(name));
    const { groups, shared } = decision;
    const counted = shared?.route;
    const ranked = rankedByHour(groups, counted);
    expect(new Set(ranked.map(({ route }) => route))).toEqual(new Set([counted]));
    const others = counted === routes.mill ? [] : rankedByHour(groups, routes.mill);
    expect([...ranked, ...others].map(({ name: one }) => one).sort()).toEqual(
      groups.map(({ name: one }) => one).sort(),
    );
    expect(ranked.length).toBeGreaterThan(1);
    // Worked again from saving and hours, in floats: ∞ where hours are saved as well as money.
    const rate = ({ cashSaved, extraHours }: (typeof ranked)[number]): number => {
      const [cash, hours] = [aside(cashSaved).toNumber(), aside(extraHours).toNumber()];
      return hours > 0 ? cash / hours : cash > 0 ? Number.POSITIVE_INFINITY : 0;
    };
    const rates = ranked.map(rate);
    for (const [i, next] of rates.slice(1).entries()) expect(rates[i]).toBeGreaterThanOrEqual(next * (1 - 1e-9) - 1e-9);
    const free = ranked
      .filter((one) => rate(one) === Number.POSITIVE_INFINITY)
      .map(({ cashSaved }) => aside(cashSaved));
    for (const [i, next] of free.slice(1).entries()) expect(free[i]?.gte(next)).toBe(true);
  });
});
