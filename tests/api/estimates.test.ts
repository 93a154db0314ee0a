import { beforeAll, describe, expect, it } from "vitest";
import { demoNames } from "../../src/api/demos.js";
import { INCLUDES } from "../../src/api/render/json/estimate.js";
import { Decimal } from "../../src/estimate/quantity/decimal.js";
import { type Answer, type Asking, type Cell, cellsOf, demo, estimated, post } from "./helpers/posting.js";

/** A catalog that prices one length of one lumber, so that nearly everything else has no price. */
const POOR_CATALOG: Asking["catalog"] = {
  name: "Half a price list",
  currency: "USD",
  lumber: [
    {
      name: "spf-2x6",
      species: "spruce-pine-fir",
      section: "2 x 6 in",
      sold: { by: "piece", lengths: [{ length: "10 ft", price: "$8.24" }, { length: "12 ft" }] },
    },
    {
      name: "spf-2x4",
      species: "spruce-pine-fir",
      section: "2 x 4 in",
      sold: { by: "piece", lengths: [{ length: "10 ft", price: null }] },
    },
  ],
};

const shelter = demo("orchard-shelter");
let answer: Answer;
beforeAll(async () => {
  answer = await estimated(shelter, "?include=plans,work");
});

const linesOf = (departments: Answer["purchasing"]["shared"]) => departments.flatMap(({ lines }) => lines);
const sum = (values: readonly string[]) =>
  values.reduce((total, value) => total.plus(value), new Decimal(0)).toFixed(2);

describe("the answer to a demo", () => {
  it("is the same to the byte when it is asked for twice", async () => {
    const [first, second] = [await post("/v1/estimates", shelter), await post("/v1/estimates", shelter)];
    expect(await first.text()).toBe(await second.text());
  });

  it("has the same digest however its keys are ordered, and another when a value differs", async () => {
    const { structure, ...rest } = shelter;
    const turned = await estimated({ ...rest, structure });
    expect(turned.about).toEqual(answer.about);
    const other = await estimated({ ...shelter, title: "Another" });
    expect(other.about.requestDigest).not.toBe(answer.about.requestDigest);
    expect(other.about.dataVersion).toBe(answer.about.dataVersion);
  });

  // The limit is our own: what a telephone on a hill loads in a second or two.
  it("has at most 200 kB when nothing is asked for beside it", async () => {
    const lean = await (await post("/v1/estimates", shelter)).text();
    expect(Buffer.byteLength(lean)).toBeLessThanOrEqual(200_000);
    expect(JSON.parse(lean)).not.toHaveProperty("heldPlans");
  });

  it("tells what boards the plans leave only when asked", async () => {
    expect(answer.sawing.plans.every((plan) => plan.extras === undefined)).toBe(true);
    const { sawing } = await estimated(shelter, "?include=extras");
    expect(sawing.plans.length).toBeGreaterThan(0);
    for (const { extras } of sawing.plans) expect(extras?.length).toBeGreaterThan(0);
  });

  it("says first what to mill and what to buy, and what no estimate says", () => {
    const { verdict, best } = answer.decision;
    expect(verdict.headline).toMatch(/^Mill |^Buy /);
    expect(answer.decision.routes.map(({ route }) => route)).toContain(best);
    expect(answer.cautions[0]?.text).toMatch(/^Nothing here says that a member, a joint or a footing is strong enough/);
    expect(answer.about.catalogNote).toMatch(/Invented/);
  });

  it("calls the best route the one that costs least, hours included", () => {
    const { best, routes } = answer.decision;
    const totals = routes.map(({ total }) => Number(total.value));
    expect(Number(routes.find(({ route }) => route === best)?.total.value)).toBe(Math.min(...totals));
  });
});

describe("money", () => {
  it.each(demoNames())(
    "%s adds up to the cent: lines, taxes, logs and lines of one's own are the cash",
    async (name) => {
      const { purchasing, decision } = await estimated(demo(name));
      expect(purchasing.routes.length).toBe(decision.routes.length);
      for (const route of purchasing.routes) {
        const lines = [...linesOf(purchasing.shared), ...linesOf(route.departments)];
        const amounts = lines.flatMap(({ amount }) => amount?.value ?? []);
        const more = [...route.taxes, ...purchasing.own].map(({ value }) => value);
        const cash = sum([...amounts, ...more, ...(route.logValue ? [route.logValue.value] : [])]);
        expect([route.route, cash]).toEqual([route.route, route.cash.value]);
      }
    },
  );

  it("is quantity times price to the cent, half away from zero, on lines with one price", () => {
    const lines = answer.purchasing.routes
      .flatMap(({ departments }) => departments)
      .filter(({ department }) => department === "lumber")
      .flatMap((department) => department.lines);
    expect(lines.length).toBeGreaterThan(10);
    for (const { quantity, price, amount } of lines) {
      const exact = new Decimal(quantity.value).times(price?.value ?? Number.NaN);
      expect(amount?.value).toBe(exact.toDecimalPlaces(2).toFixed(2));
    }
  });

  it("is saved by a route as the difference of the two cashes", () => {
    const cash = (key: string) => answer.decision.routes.find(({ route }) => route === key)?.cash.value as string;
    expect(answer.decision.mill?.cashSaved.value).toBe(sum([cash("bought"), `-${cash("milled")}`]));
  });

  it("is null with a cure, never zero, where no price is known", async () => {
    const { purchasing, decision } = await estimated({ ...shelter, catalog: POOR_CATALOG });
    for (const route of purchasing.routes) {
      const lines = [...linesOf(purchasing.shared), ...linesOf(route.departments)];
      const unpriced = lines.filter(({ amount }) => amount === null);
      expect(unpriced.length).toBe(route.unpriced);
      expect(unpriced.filter(({ add }) => !add?.trim())).toEqual([]);
      expect(lines.filter(({ amount }) => amount && Number(amount.value) === 0)).toEqual([]);
    }
    const bought = purchasing.routes.find(({ route }) => route === "bought");
    expect(linesOf(bought?.departments ?? []).filter(({ amount }) => amount)).not.toEqual([]);
    expect(decision.verdict.doubt).toMatch(/no price yet/);
  });

  it("of a line of one's own is in the cash of every route, untaxed", async () => {
    const line = { name: "crane", label: "Crane for a day", formula: "2 * $180.25" };
    const dearer = await estimated({ ...shelter, lines: [line], heldPlans: answer.heldPlans });
    for (const [i, { cash }] of dearer.decision.routes.entries()) {
      expect(cash.value).toBe(sum([answer.decision.routes[i]?.cash.value as string, "360.50"]));
    }
    expect(dearer.purchasing.own).toEqual([
      { label: "Crane for a day", cell: "own.crane", value: "360.50", unit: "USD" },
    ]);
  });
});

describe("hours", () => {
  // Each stage is shown to a hundredth, so n stages may differ from their sum by n × 0.005.
  it("of the stages, common and own, make up the hours of each route", () => {
    const { common, routes } = answer.effort;
    expect(new Set(common.map(({ stage }) => stage)).size).toBe(common.length);
    for (const { stages, hours } of routes) {
      const all = [...common, ...stages].map((stage) => stage.hours.value);
      const off = new Decimal(sum(all)).minus(hours.value).abs();
      expect(off.lte(new Decimal("0.005").times(all.length + 1))).toBe(true);
    }
  });
});

describe("what comes out goes in", () => {
  it("leaves the decision as it was when every given value comes back as an override, with the plans held", async () => {
    const whole = await estimated({ ...shelter, heldPlans: answer.heldPlans }, "?include=sheet");
    const cells = [...cellsOf(whole).values()].filter(({ kind }) => kind === "input" || kind === "catalog");
    expect(cells.length).toBeGreaterThan(150);
    const overrides = Object.fromEntries(cells.map(({ name, value, unit }) => [name, { value, unit }]));
    const again = await estimated({ ...shelter, overrides, heldPlans: answer.heldPlans }, "?include=plans");
    expect(again.decision.routes).toEqual(answer.decision.routes);
    // Held plans are not searched, so nothing is proven of the mixes beside them.
    const told = answer.decision.verdict.reasons.filter((reason) => !reason.startsWith("No mix of"));
    expect(told.length).toBe(answer.decision.verdict.reasons.length - 1);
    const { reasons, changes, ...rest } = again.decision.verdict;
    expect(rest).toEqual(expect.objectContaining({ headline: answer.decision.verdict.headline }));
    expect({ ...answer.decision.verdict, reasons, changes }).toEqual(again.decision.verdict);
    expect(reasons).toEqual(told);
    // Nor is anything known of other values of an hour but where this mix and buying everything change places.
    const known = answer.decision.verdict.changes.filter((one) => !/mix tried|mixes tried|unlike measures/.test(one));
    const even = /^If an hour is worth more .* buying everything costs less\.$/;
    expect(changes.filter((one) => !even.test(one))).toEqual(known);
    expect(again.heldPlans).toEqual(answer.heldPlans);
    expect([...cellsOf(again).values()].filter(({ kind }) => kind === "override").length).toBe(cells.length);
  });

  it("leaves the decision as it was when every assumption comes back as it is", async () => {
    const cells = [...cellsOf(answer).values()].filter(({ kind }) => kind === "assumption");
    const assumptions = Object.fromEntries(cells.map(({ name, value, unit }) => [name, { value, unit }]));
    const again = await estimated({ ...shelter, assumptions, heldPlans: answer.heldPlans });
    expect(again.decision.routes).toEqual(answer.decision.routes);
  });

  it("has plans that are the same when they are held, and said to be", async () => {
    const again = await estimated({ ...shelter, heldPlans: answer.heldPlans }, "?include=work");
    expect(again.decision.routes).toEqual(answer.decision.routes);
    expect(again.sawing.plans.map(({ logs }) => logs)).toEqual(answer.sawing.plans.map(({ logs }) => logs));
    expect(new Set(again.sawing.plans.map(({ covers }) => covers))).toEqual(new Set(["held from an earlier answer"]));
  });
});

describe("a price that comes of a rate", () => {
  it("is among the prices of the lean sheet, rounded as money is, and may be overridden", async () => {
    // 2 × 3 in, 8 ft 4 in, are 4 1/6 bf: 8.33 at 2.00 a board foot; four with the spare one are 33.33.
    const sold = { by: "volume", measure: "nominal", price: "$2.00/bf", lengths: ["100 in"] };
    const lumber = [{ name: "spf-2x3", species: "spruce-pine-fir", section: "2 x 3 in", sold }];
    const asked = {
      structure: {
        kind: "pieces",
        pieces: [{ name: "rails", role: "other", count: 3, section: "2 x 3 in", length: "7 ft" }],
      },
      catalog: { name: "By volume", currency: "USD", lumber },
    } as Asking;
    const amountOf = (of: Answer) =>
      of.purchasing.routes
        .flatMap(({ departments }) => departments.flatMap(({ lines }) => lines))
        .find(({ name }) => name.includes("spf-2x3"))?.amount?.value;
    const lean = await estimated(asked);
    expect(cellsOf(lean).get("price.spf-2x3-8_4")).toMatchObject({ value: "8.33", unit: "USD" });
    expect(amountOf(lean)).toBe("33.33");
    const changed = await estimated({ ...asked, overrides: { "price.spf-2x3-8_4": "$8.125" } });
    expect(cellsOf(changed).get("price.spf-2x3-8_4")).toMatchObject({ kind: "override", value: "8.125" });
    expect(amountOf(changed)).toBe("32.50");
  });
});

describe("an override", () => {
  it("is marked, and everything worked out from it follows", async () => {
    const overrides = { "price.delivery": "$195", "labor.valueOfHour": { value: "16", unit: "USD/person-h" } };
    const changed = await estimated({ ...shelter, overrides, heldPlans: answer.heldPlans });
    const cells = cellsOf(changed);
    expect(cells.get("price.delivery")).toMatchObject({ kind: "override", value: "195.00", unit: "USD" });
    expect(cells.get("labor.valueOfHour")).toMatchObject({ kind: "override", value: "16" });
    expect(cellsOf(answer).get("price.delivery")).toMatchObject({ kind: "catalog", value: "95.00" });
    // The demo's yard taxes no services: $100 more for delivery is $100 more cash.
    const cash = (of: Answer) => of.decision.routes.find(({ route }) => route === "bought")?.cash.value as string;
    expect(sum([cash(changed), `-${cash(answer)}`])).toBe("100.00");
  });

  it("of a formula is marked as well, and shows no working of its own", async () => {
    const overrides = { "rafter.seat": "3 in" };
    const changed = await estimated({ ...shelter, overrides }, "?include=sheet,workings");
    const cell = cellsOf(changed).get("rafter.seat");
    expect(cell).toMatchObject({ kind: "override", value: "3", unit: "in" });
    expect(cell).not.toHaveProperty("working");
    if (changed.geometry?.kind !== "gable") throw new Error("no gable");
    expect(changed.geometry.rafter.seat.marked).toBe("3 in");
  });
});

describe("the sheet", () => {
  it("holds, lean, exactly what a request may change", () => {
    expect(answer.sheet.whole).toBe(false);
    const cells = [...cellsOf(answer).values()];
    expect([...new Set(cells.map(({ kind }) => kind))].sort()).toEqual(["assumption", "catalog", "formula", "input"]);
    // Prices that come of a rate.
    const reckoned = cells.filter(({ kind }) => kind === "formula");
    expect(reckoned.filter(({ name }) => !name.startsWith("price."))).toEqual([]);
  });

  it("holds every cell that a figure of the answer names, when it is asked for whole", async () => {
    const whole = await estimated(shelter, "?include=sheet");
    const cells = cellsOf(whole);
    const { sheet, ...parts } = whole;
    const named = namedCells(parts);
    expect(named.length).toBeGreaterThan(500);
    const wrong = named.filter(({ cell, value, unit }) => {
      const found = cells.get(cell);
      return found?.value !== value || found.unit !== unit;
    });
    expect(wrong).toEqual([]);
    expect(sheet.whole).toBe(true);
  });

  it("shows workings, sources and ranges when they are asked for", async () => {
    const cells = cellsOf(await estimated(shelter, "?include=sheet,workings"));
    expect(cells.get("rafter.lineLength")?.working).toBe(
      "roof.run × rafter.unitLength ÷ frame.unitRun = 8 ft × 13 in ÷ 12 in = 8.667 ft",
    );
    expect(cells.get("pace")).toMatchObject({ low: "0.8", value: "1", high: "1.6" });
    const silent = [...cells.values()].filter((cell: Cell) => cell.kind === "formula" && !cell.working);
    expect(silent).toEqual([]);
    const planned = [...cells.values()].filter(({ kind }) => kind === "planned");
    expect(planned.filter(({ covers }) => !covers)).toEqual([]);
  });

  it("tells with the workings which cells use a cell, as their workings say", async () => {
    const cells = cellsOf(await estimated(shelter, "?include=sheet,workings"));
    expect(cells.get("roof.run")?.usedBy).toContain("rafter.lineLength");
    const uses = [...cells.values()].flatMap(({ name, usedBy = [] }) => usedBy.map((user) => [name, user] as const));
    expect(uses.length).toBeGreaterThan(3000);
    expect(uses.filter(([name, user]) => !cells.get(user)?.working?.includes(name))).toEqual([]);
    const users = new Set(uses.map(([, user]) => user));
    const named = [...cells.values()].filter(
      ({ working }) => working?.includes("pace × ") || working?.includes(" × pace"),
    );
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter(({ name }) => !users.has(name))).toEqual([]);
  });

  it("refuses to include what there is not", async () => {
    const response = await post("/v1/estimates?include=everything", shelter);
    expect(response.status).toBe(422);
    const { faults } = (await response.json()) as { faults: { parameter: string; cure: string }[] };
    expect(faults[0]?.parameter).toBe("include");
    expect(INCLUDES.every((name) => faults[0]?.cure.includes(name))).toBe(true);
  });
});

describe("piece marks", () => {
  it("are given once each, to the pieces of their group, in every route", () => {
    const wanted = new Map(answer.cutList.groups.map(({ name, marks }) => [name, marks]));
    for (const { route, stock } of answer.purchasing.routes) {
      const plan = answer.sawing.plans.find((one) => one.route === route);
      const strips = (plan?.logs ?? []).flatMap(({ bolts }) =>
        bolts.flatMap(({ slabs }) => slabs.flatMap((s) => s.strips)),
      );
      expect(stock).not.toBeNull();
      const cuts = [...strips, ...(stock ?? []).flatMap((one) => one.cuts)];
      const given = new Map<string, string[]>();
      for (const { times, pieces, marks } of cuts) {
        expect(marks.length).toBe(times);
        const groups = pieces.flatMap(({ group, count }) => new Array<string>(count).fill(group));
        for (const list of marks) {
          expect(list.length).toBe(groups.length);
          for (const [i, mark] of list.entries()) {
            if (mark !== null) given.set(groups[i] as string, [...(given.get(groups[i] as string) ?? []), mark]);
          }
        }
      }
      for (const [group, marks] of wanted)
        expect([route, group, given.get(group)?.sort()]).toEqual([route, group, marks]);
    }
  });
});

interface Named {
  readonly cell: string;
  readonly value: string;
  readonly unit: string;
}

function namedCells(node: unknown): Named[] {
  if (typeof node !== "object" || node === null) return [];
  const own = "cell" in node && "value" in node ? [node as Named] : [];
  return [...own, ...Object.values(node).flatMap(namedCells)];
}
