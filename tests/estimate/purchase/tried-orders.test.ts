/** How many orders are planned to tell which of equal offers cost least. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { substitutions } from "../../../src/estimate/purchase/equal-offers.js";
import { substitute } from "../../../src/estimate/purchase/substitution.js";
import { TriedOrders, triedPlanner } from "../../../src/estimate/purchase/tried-orders.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { demoBody, request } from "../../helpers/estimating.js";

describe("orders that are only tried", () => {
  it("are not planned where their length alone, or the order without spares, costs more than the best that is found", () => {
    const sheet = new Sheet(new Map());
    const {
      cutting,
      cutList,
      catalog,
      request: asked,
      mill,
      assumed,
    } = layBasis(sheet, request(demoBody("ferry-bike-shed")));
    const planned = new Set<string>();
    const plan = triedPlanner();
    const tried: typeof plan = (problem) => {
      planned.add(JSON.stringify(problem));
      return plan(problem);
    };
    const loss = { kerf: mill.ripKerf, planed: () => assumed.cell("rip.planed") };
    const sold = substitutions({ ...cutting, tried }, cutList.groups, catalog.lumber, (group, lumber) =>
      substitute(sheet, group, { lumber, endTrim: cutting.endTrim }, { system: asked.system, loss }),
    );
    // Fourteen ways to share out boards among two offers, each order with spares and without, were 28 plans.
    expect(planned.size).toBeLessThanOrEqual(18);
    expect(planned.size).toBeGreaterThan(3);
    // Stopped early or planned to the end, the same orders beat the same bills.
    const bought = sold.flatMap(({ substitution }) => ("offer" in substitution ? [substitution] : []));
    const orders = [...bought.map((one) => [one]), ...bought.slice(1).map((one, i) => [bought[i] as typeof one, one])];
    const bills = orders.map((order) => new TriedOrders(cutting).billOf(order));
    const wins = bills.map(({ short, cost }) =>
      bills.map((other) => (short === other.short ? cost.lt(other.cost) : short < other.short)),
    );
    const told = orders.map((order) => bills.map((other) => new TriedOrders(cutting).beats(order, other)));
    expect(told).toEqual(wins);
    expect(new Set(wins.flat())).toEqual(new Set([true, false]));
  });
});
