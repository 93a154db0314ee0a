import { describe, expect, it, vi } from "vitest";
import { planners } from "../../../src/api/planners.js";
import { moneyText } from "../../../src/estimate/quantity/text.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import { shownCell } from "../../../src/estimate/sheet/working.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

vi.setConfig({ testTimeout: 120_000 });

const demo = demoBody("orchard-shelter");
const made = estimated(demo, planners());
const searched = estimated({ ...demo, options: { ...(demo.options as object), frontier: true } }, planners());

describe("the sentence on each group", () => {
  it("names a side that the plan bears out, piece by piece", () => {
    const { plan } = made.routes.mix;
    for (const { name, side, ...pieces } of made.verdict.groups) {
      const count = made.basis.groups.find(({ group }) => group.name === name)?.group.count.value.toNumber() ?? 0;
      const bought = plan.bought.find(({ substitution }) => substitution.group.name === name)?.count ?? 0;
      expect([name, side]).toEqual([name, bought === 0 ? "mill" : bought === count ? "buy" : "both"]);
      expect([pieces.milled.toNumber(), pieces.bought.toNumber()]).toEqual([count - bought, bought]);
    }
    expect(made.verdict.groups.map(({ name }) => name)).toEqual(made.basis.groups.map(({ group }) => group.name));
  });

  it("says the saving, the hours and what they pay, above what an hour is worth or below it: $15 here", () => {
    for (const { name, why } of made.verdict.groups) {
      const pay = /\$([\d.]+) an hour, (above|below) your \$15\.00/.exec(why);
      if (!pay) continue;
      const saving = made.decision.groups.find((one) => one.name === name);
      expect(why).toContain(moneyText(saving?.cashSaved.value as never, "USD"));
      expect(Number(pay[1])).toBeCloseTo(saving?.payPerHour.value.toNumber() ?? 0, 2);
      expect(pay[2]).toBe(Number(pay[1]) >= 15 ? "above" : "below");
    }
    const told = made.verdict.groups.filter(({ why }) => why.includes("an hour, above your $15.00"));
    expect(told.length).toBeGreaterThan(3);
  });

  it("says about of hours that were rounded, where cash over the hours shown is not what an hour brings", () => {
    const { groups, reasons } = made.verdict;
    const told = [...groups.map(({ why }) => why), ...reasons].flatMap((text) => [
      ...text.matchAll(/\$([\d.]+) for (about )?([\d.]+) (?:person-)?hours? more: \$([\d.]+)/g),
    ]);
    expect(told.length).toBeGreaterThan(3);
    for (const [, cash, rounded, hours, each] of told) {
      if (!rounded) expect((Number(cash) / Number(hours)).toFixed(2)).toBe(each);
    }
    expect(told.some(([, , rounded]) => rounded)).toBe(true);
  });

  it("never speaks of saving less than nothing", () => {
    const atHand = [{ section: "2 x 6 in", length: "10 ft", count: 20 }];
    for (const request of [{ ...demo, atHand }, demoBody("ferry-bike-shed")]) {
      const { verdict } = estimated(request, planners());
      expect(verdict.groups.map(({ why }) => why).join(" ")).not.toMatch(/save −|saves −/);
    }
  });

  it("says of a group that the user buys or cannot mill why that is", () => {
    const pieces = [
      { name: "posts", role: "post", count: 2, section: "4 x 4 in", length: "7 ft", source: "buy" },
      { name: "rails", role: "other", count: 2, section: "2 x 4 in", length: "7 ft", species: ["black-locust"] },
    ];
    const logs = [{ name: "log", species: "eastern-white-pine", length: "8 ft", smallDiameter: "12 in" }];
    const { verdict } = estimated({
      structure: { kind: "pieces", pieces },
      logs,
      catalog: { demo: "orchard-yard" },
    });
    expect(verdict.groups.map(({ side, why }) => [side, why])).toEqual([
      ["buy", "Bought, because you chose to buy it."],
      ["buy", "Bought, because no log is black locust."],
    ]);
  });
});

describe("the verdict", () => {
  it("states the value of an hour at which it turns, and the slow end, as the cells have them", () => {
    for (const one of [made, searched]) {
      const { mix, buy } = one.routes;
      const [cash, hours] = [buy.cash.value.minus(mix.cash.value), mix.hours.value.minus(buy.hours.value)];
      const even = moneyText(cash.dividedBy(hours), "USD");
      const stop = moneyText(one.searched?.standing.buying?.from as never, "USD");
      expect(one.verdict.changes.join("\n")).toContain(
        stop === even
          ? `If an hour is worth more than ${even} to you, buying everything costs less`
          : `Milling stops paying where an hour is worth between ${even} and ${stop} to you`,
      );
      // The pace ranges up to 1.6 times the likely one: as many more hours, and as much less for each.
      const slow = hours.times("1.6");
      expect(one.verdict.doubt).toContain(`${slow.toFixed(0)} instead of ${hours.toFixed(0)}`);
      expect(one.verdict.doubt).toContain(`${moneyText(cash.dividedBy(slow), "USD")} for each of them`);
    }
  });

  it("calls it the best for a range of values of an hour only where mixes were searched for all of them", () => {
    const { hour } = searched.searched?.standing ?? {};
    const [from, to] = [hour?.from, hour?.to].map((one) => moneyText(one as never, "USD"));
    const words = searched.verdict.changes.join("\n");
    expect(words).toContain(
      `Of all mixes tried this is the best as long as an hour is worth more than ${from} and less than ${to} to you`,
    );
    expect(words).toContain("at another value than yours, a new estimate tries other mixes");
    for (const one of [...made.verdict.changes, ...made.verdict.reasons]) expect(one).not.toContain("best as long as");
  });

  it("says without that search where milling all costs less than this mix, as the two come to beside each other", () => {
    const { mix, mill } = made.routes;
    const said = made.verdict.changes.find((one) =>
      one.includes("milling all that the logs serve costs less than this"),
    );
    const below = Number(/less than \$([\d.]+) to you/.exec(said ?? "")?.[1]);
    const at = (route: typeof mix, wage: number) => route.cash.value.plus(route.hours.value.times(wage)).toNumber();
    expect(below).toBeGreaterThan(0);
    expect(at(mill as typeof mix, below - 0.02)).toBeLessThan(at(mix, below - 0.02));
    expect(at(mill as typeof mix, below + 0.02)).toBeGreaterThan(at(mix, below + 0.02));
  });

  it("doubts most, of all ranges, the end that costs milling most against buying: what every end was tried for", () => {
    // A pace that was timed has no range, so something else is least sure.
    const paced = estimated({ ...demo, assumptions: { pace: "1" }, heldPlans: structuredClone(made.plans) as object });
    const { cells } = paced.basis.sheet;
    const { mix, buy } = paced.routes;
    const ends = cells.flatMap((cell) =>
      [cell.range?.low, cell.range?.high].flatMap((end) => {
        if (!end || end.eq(cell.value)) return [];
        const again = evaluateAgain(cells, new Map([[cell.name, end]]));
        return [{ cell, end, saves: again(buy.total).minus(again(mix.total)) }];
      }),
    );
    expect(ends.length).toBeGreaterThan(200);
    const worst = ends.reduce((a, b) => (b.saves.lt(a.saves) ? b : a));
    expect(paced.verdict.doubt).toContain(worst.cell.label.slice(1));
    expect(paced.verdict.doubt).toContain(`At ${shownCell(worst.cell, worst.end)} instead of`);
    expect(paced.verdict.doubt).toContain(moneyText(worst.saves.abs(), "USD"));
  });

  it("says how far from the best it may be, rounded against itself", () => {
    const { bound } = made.searched ?? {};
    const words = made.verdict.reasons.find((reason) => reason.startsWith("No mix")) ?? "";
    expect(words).toContain(moneyText(bound?.least as never, "USD"));
    const share = Number(/at most ([\d.]+) %/.exec(words)?.[1]);
    const least = bound?.least.toNumber() ?? 0;
    const above = (made.routes.mix.total.value.toNumber() - least) / least;
    expect(share / 100).toBeGreaterThanOrEqual(above);
    expect(share / 100).toBeLessThan(above + 0.0011);
  });
});

describe("the headline", () => {
  it("names the shorter side where nearly all is milled: nobody reads twenty names", () => {
    const { verdict, basis } = estimated(demoBody("ferry-bike-shed"), planners());
    expect(verdict.mill.length).toBeGreaterThan(verdict.buy.length);
    expect(verdict.headline).toMatch(/^Mill all but .*; buy those/);
    expect(verdict.headline.split(",").length).toBeLessThan(basis.groups.length / 2);
    for (const { name, label } of verdict.groups.map((one) => ({
      ...one,
      label: basis.groups.find(({ group }) => group.name === one.name)?.group.label ?? "",
    })))
      if (verdict.groups.find((one) => one.name === name)?.side === "buy")
        expect(verdict.headline.toLowerCase()).toContain(label.toLowerCase().replace(/ \(.*/, ""));
  });
});

describe("a machine on hire that has no price", () => {
  it("makes the cost more than what is told, and the saving at most that", () => {
    const equipment = [{ item: "chainsaw-mill", terms: "hired" }];
    const { verdict } = estimated({ ...demo, shop: { ...(demo.shop as object), equipment } }, planners());
    expect(verdict.reasons[0]).toMatch(/^It costs more than .* buying everything costs \$/);
    expect(verdict.reasons[1]).toMatch(/^Milling saves at most .*: at most \$.* for each of them/);
    expect(verdict.doubt).toContain("no price yet");
  });
});

describe("where buying everything is best", () => {
  it("says below which value of an hour a mix is, and below which even milling all", () => {
    const { verdict, routes } = estimated(
      { ...demo, labor: { ...(demo.labor as object), valueOfHour: "$200/h" } },
      planners(),
    );
    expect(routes.mix).toBe(routes.buy);
    const worth = verdict.changes.map((one) => Number(/less than \$([\d.]+) to you/.exec(one)?.[1] ?? 0));
    expect(verdict.changes[0]).toContain("milling some of it costs less");
    expect(worth[0]).toBeGreaterThan(worth[1] ?? 0);
  });
});

describe("a limit on cash or hours", () => {
  const { buy, mill } = made.routes;
  const within = (options: object) => estimated({ ...demo, options: { ...(demo.options as object), ...options } });

  it.each(["$4260", "$4300", "$4600", "$5300", "$6000"])(
    "of %s in cash is kept where some way keeps it",
    (mostCash) => {
      const { routes, verdict } = within({ mostCash });
      const limit = Number(mostCash.slice(1));
      expect(Math.min(...[buy, mill].map((route) => route?.cash.value.toNumber() ?? 1e9))).toBeLessThan(limit);
      expect(routes.mix.cash.value.toNumber()).toBeLessThanOrEqual(limit);
      expect(verdict.reasons[0]).toBe(`It keeps within your limit of $${limit}.00.`);
    },
  );

  it.each([2, 15, 40])("of %s person-hours above buying everything is kept, for that takes fewer", (more) => {
    const hours = buy.hours.value.ceil().toNumber() + more;
    const { routes, verdict } = within({ mostHours: `${hours} h` });
    expect(routes.mix.hours.value.toNumber()).toBeLessThanOrEqual(hours);
    // Whoever is told that another way is better at their $15 concludes that the choice is wrong.
    for (const one of verdict.changes.filter((words) => /^If an hour .*less than this mix;/.test(words))) {
      const [, side, worth] = /worth (less|more) than \$([\d.]+) to you/.exec(one) ?? [];
      expect(side === "less" ? 15 - Number(worth) : Number(worth) - 15).toBeGreaterThanOrEqual(0);
    }
  });

  it("that no way keeps is said to be broken", () => {
    expect(within({ mostCash: "$100" }).verdict.reasons[0]).toContain("does not keep within your limit of $100.00");
  });
});

describe("a limit at its edge", () => {
  // Quick planners: what is cheapest, and what is quickest, is one of the plans that were tried.
  const quick = (options: object) => estimated({ ...demo, options: { ...(demo.options as object), ...options } });
  const kept = ({ verdict }: ReturnType<typeof quick>) => verdict.reasons[0] ?? "";
  const cent = "0.01";

  it("in cash is kept where it is just met, and said to be broken, by the nearest mix, a cent below", () => {
    const least = quick({ mostCash: "$1" }).routes.mix.cash.value;
    const met = quick({ mostCash: `$${least.toFixed(2)}` });
    expect(met.routes.mix.cash.value.toFixed(2)).toBe(least.toFixed(2));
    expect(kept(met)).toContain("It keeps within your limit");
    const missed = quick({ mostCash: `$${least.minus(cent).toFixed(2)}` });
    expect(kept(missed)).toContain("does not keep within your limit");
    expect(missed.routes.mix.cash.value.toFixed(2)).toBe(least.toFixed(2));
  });

  it("in hours is kept where buying everything just meets it, and broken by it where nothing does", () => {
    const hours = made.routes.buy.hours.value;
    const met = quick({ mostHours: `${hours.toDecimalPlaces(6, 0).toFixed()} h` });
    expect(met.routes.mix.hours.value.toFixed(6)).toBe(hours.toFixed(6));
    expect(kept(met)).toContain("It keeps within your limit");
    const missed = quick({ mostHours: "1 h" });
    expect(kept(missed)).toMatch(
      /does not keep within your limit of 1 person-hours: no mix found does\. Of the mixes tried this one comes nearest, at [\d.]+ person/,
    );
    expect(missed.routes.mix.hours.value.toFixed(6)).toBe(hours.toFixed(6));
  });

  it("in hours is kept where they are copied as an answer shows them", () => {
    const shown = made.routes.buy.hours.value.toDecimalPlaces(2);
    expect(made.routes.buy.hours.value.eq(shown)).toBe(false);
    for (const copied of [shown, shown.plus("0.0001")])
      expect(kept(quick({ mostHours: `${copied.toFixed()} h` }))).toContain("It keeps within your limit");
    expect(kept(quick({ mostHours: `${shown.minus(cent).toFixed()} h` }))).toContain("does not keep within your limit");
  });

  it("in both binds in both: it may cost cash to save hours, and the other way round", () => {
    const free = quick({});
    const { cash, hours } = free.routes.mix;
    const fewer = quick({ mostHours: `${hours.value.minus(10).toFixed(3)} h` });
    expect(fewer.routes.mix.hours.value.lte(hours.value.minus(10))).toBe(true);
    expect(fewer.routes.mix.total.value.gte(free.routes.mix.total.value)).toBe(true);
    const cheaper = quick({ mostCash: `$${cash.value.minus(20).toFixed(2)}` });
    expect(cheaper.routes.mix.cash.value.lte(cash.value.minus(20))).toBe(true);
    const both = quick({
      mostCash: `$${cash.value.plus(5).toFixed(2)}`,
      mostHours: `${hours.value.plus(1).toFixed(3)} h`,
    });
    expect(both.routes.mix.cash.value.lte(cash.value.plus(5))).toBe(true);
    expect(both.routes.mix.hours.value.lte(hours.value.plus(1))).toBe(true);
  });
});

describe("timbers that lie in the stack for more than a year", () => {
  const logs = [{ name: "log", species: "eastern-white-pine", length: "16 ft 6 in", smallDiameter: "16 in", count: 6 }];
  const told = (more: object) =>
    estimated({
      structure: {
        kind: "pieces",
        pieces: [
          { name: "sleepers", count: 8, section: "6 x 6 in", length: "8 ft", source: "mill", ...more },
          { name: "slats", count: 8, section: "1 x 4 in", length: "8 ft", source: "mill" },
        ],
      },
      logs,
      catalog: { demo: "orchard-yard" },
    });

  it("are named first of all that would change it, with the years and what spares them", () => {
    const { verdict, routes } = told({ seasoning: "dried" });
    const days = routes.mix.drying?.likely.value.toNumber() ?? 0;
    const [first = ""] = verdict.changes;
    expect(first).toContain("until the thickest pieces are dry: sleepers. ");
    expect(first).toContain("use them green");
    expect(days).toBeGreaterThan(364);
    expect(Number(/waits ([\d.]+) years/.exec(first)?.[1])).toBeCloseTo(days / 364, 1);
    expect(verdict.reasons.join(" ")).toContain("none is dressed before that");
  });

  it("are green where nobody asks for them dry, which is put on record, and nothing waits for them", () => {
    const { verdict, notices } = told({});
    expect(verdict.changes.join(" ")).not.toContain("The work waits");
    expect(verdict.reasons.join(" ")).toContain("pieces up to 1 in thick dry");
    const record = notices.find(({ at }) => at === "/structure/pieces/0/seasoning");
    expect(record?.text).toMatch(/^Seasoning of sleepers: green \(/);
  });
});

describe("bought sticks that hold far more wood than is wanted", () => {
  const stick = (name: string, section: string) => ({
    ...{ name, label: name, section, species: "norway-spruce", surface: "rough" },
    sold: { by: "piece", lengths: [{ length: "3 m", price: "20 EUR" }] },
  });
  const changes = (lumber: readonly object[], more: object = {}) =>
    estimated({
      structure: {
        kind: "pieces",
        pieces: [
          { name: "rails", role: "beam", count: 4, section: "50 x 120 mm", length: "2.9 m", surface: "rough", ...more },
        ],
      },
      catalog: { name: "A yard", currency: "EUR", lumber },
      shop: { lumber: "fetched" },
      options: { finish: "none" },
      assumptions: { "buy.wastage": "0 %" },
    }).verdict.changes.filter((one) => one.includes("ripped off"));

  it("are named with the money: of 4 at 20 EUR, 100 × 200 mm for 50 × 120, seven tenths", () => {
    const [told, ...others] = changes([stick("beam", "100 x 200 mm")]);
    expect(others).toEqual([]);
    expect(told).toBe(
      "Rails: bought as beam, which holds 3.3 times the wood that is wanted. Of what buying everything costs, about €56.00 is for wood that is ripped off; a yard that sells a nearer size may turn this round.",
    );
  });

  it("are not where they are a fifth larger, or what the user insists on", () => {
    expect(changes([stick("beam", "50 x 144 mm")])).toEqual([]);
    expect(changes([stick("beam", "100 x 200 mm")], { buyAs: "beam" })).toEqual([]);
  });
});
