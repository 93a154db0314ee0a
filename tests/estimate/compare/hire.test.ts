import { describe, expect, it } from "vitest";
import { demoBody, demoCatalog, estimated } from "../../helpers/estimating.js";

/** The orchard shelter with one machine on other terms, and its prices set to what the case says. */
function withMachine(item: string, terms: string, price: object, more: object = {}) {
  const body = demoBody("orchard-shelter");
  const catalog = demoCatalog("orchard-yard");
  const equipment = (catalog.equipment as { item: string }[]).filter((one) => one.item !== item);
  const shop = { ...(body.shop as object), mill: "manual-band-mill", equipment: [{ item, terms, ...more }] };
  const { routes, basis } = estimated({
    ...body,
    shop,
    labor: { ...(body.labor as object), hoursPerDay: "6 h/day" },
    catalog: { ...catalog, equipment: [...equipment, { item, ...price }] },
    heldPlans: { milled: ["rafters"] },
  });
  const line = (route: typeof routes.buy | undefined) =>
    route?.lines.find(({ name }) => name.endsWith(`.hire.${item}`));
  return { routes, basis, line };
}

describe("a machine hired by the day", () => {
  it("is paid for whole days of six hours while the mill runs: at $100 a day", () => {
    const { routes, basis, line } = withMachine("manual-band-mill", "hired", { hirePerDay: "$100/day" });
    for (const route of [routes.mill, routes.mix]) {
      const hours = basis.sheet.in(route?.milling?.millHours as never, "h").toNumber();
      expect(hours > 6).toBe(route === routes.mill);
      expect(line(route)?.amount?.value.toNumber()).toBe(100 * Math.ceil(hours / 6));
    }
    // Nothing is milled, so no mill is hired.
    expect(line(routes.buy)).toBeUndefined();
  });

  it("is paid for its shortest hire where that is longer: thirty days", () => {
    const { routes, line } = withMachine("manual-band-mill", "hired", {
      hirePerDay: "$100/day",
      minimumDays: "30 day",
    });
    expect(line(routes.mix)?.amount?.value.toNumber()).toBe(3000);
  });

  it("without a price is a line without an amount", () => {
    const { routes, line } = withMachine("manual-band-mill", "hired", { purchase: "$4000" });
    expect(line(routes.mix)?.amount).toBeUndefined();
    expect(routes.mix.unpriced).toBeGreaterThan(0);
  });
});

describe("a machine bought", () => {
  it("costs what it loses, by the share of its use: a quarter of $4000 less $2400 is $400", () => {
    const price = { purchase: "$4000", resale: "$2400" };
    const { routes, line } = withMachine("manual-band-mill", "bought", price, { share: "25 %" });
    for (const route of [routes.mill, routes.mix]) expect(line(route)?.amount?.value.toNumber()).toBe(400);
    expect(line(routes.buy)).toBeUndefined();
  });
});
