import { describe, expect, it } from "vitest";
import { demo, estimated, refused } from "./helpers/posting.js";

function raise(what: string): never {
  throw new Error(what);
}

describe("the work of a route", () => {
  // At that value of an hour the best mix dries some of what it mills.
  const request = { ...demo("orchard-shelter"), labor: { valueOfHour: "$8/h", crew: 2, hoursPerWeek: "14 h/week" } };
  const lean = estimated(request);
  const full = estimated(request, "?include=work");

  it("is told of the best route, and of all of them on request", async () => {
    const { effort, decision } = await lean;
    expect(effort.routes.filter(({ work }) => work).map(({ route }) => route)).toEqual([decision.best]);
    const all = (await full).effort.routes;
    expect(all.every(({ work }) => work)).toBe(true);
    const [some, whole] = [effort.routes, all].map((of) => of.find(({ route }) => route === decision.best)?.work);
    const bars = whole?.calendar.stages.map(({ alongside, aloneHours, aloneDays, crewDays, ...bar }) => bar);
    expect({ ...whole?.calendar, stages: bars }).toEqual(some?.calendar);
    expect(whole?.calendar.stages.some(({ alongside = [] }) => alongside.length > 0)).toBe(true);
    expect(whole?.loads.length).toBeGreaterThan(some?.loads.length ?? 0);
    // In short the slabs of a log are told together, by the heaviest.
    const heavy = whole?.loads.filter(({ aid }) => aid !== null) ?? [];
    for (const { kind, name, count, green } of some?.loads ?? []) {
      const own = heavy.filter((load) => load.kind === kind && load.name === name);
      expect(count).toBe(own.reduce((sum, load) => sum + load.count, 0));
      expect(green).toEqual(own[0]?.green);
    }
    expect(new Set(some?.loads.map(({ kind, name }) => `${kind} ${name}`)).size).toBe(some?.loads.length);
  });

  it("names what a calendar must tell: dry dates, hours and days alone and with the crew, weeks in the stack, overlaps", async () => {
    const { effort, decision } = await full;
    const best = effort.routes.find(({ route }) => route === decision.best);
    const { stages, drying, crewDays, aloneDays, totalDays } = best?.work?.calendar ?? raise("no calendar");
    expect(effort.hoursPerWeek.unit).toBe("h/week");
    expect(best?.drying?.likely.unit).toBe("week");
    const days = (["startDay", "soonestDay", "likelyDay", "latestDay"] as const).map((of) =>
      Number(drying?.[of].value),
    );
    expect(days.toSorted((a, b) => a - b)).toEqual(days);
    const weeks = Number(best?.drying?.soonest.value);
    expect(Math.abs((days[1] as number) - (days[0] as number) - 7 * weeks)).toBeLessThan(0.5);
    const daily = Number(effort.hoursPerDay.value);
    const sum = (of: "aloneHours" | "aloneDays" | "crewDays" | "crewHours") =>
      stages.reduce((all, bar) => all + Number(bar[of]?.value), 0);
    expect(sum("aloneHours")).toBeCloseTo(Number(best?.hours.value), 0);
    expect(Math.abs(sum("aloneDays") - sum("aloneHours") / daily)).toBeLessThan(0.05 * stages.length);
    expect(Math.abs(sum("crewDays") - sum("crewHours") / daily)).toBeLessThan(0.05 * stages.length);
    expect(Math.abs(Number(aloneDays.value) - sum("aloneHours") / daily)).toBeLessThan(0.1);
    expect(Number(crewDays.value)).toBeLessThan(Number(aloneDays.value));
    expect(Number(totalDays.value)).toBeGreaterThan(Number(drying?.likelyDay.value));
    const beside = new Map(stages.map(({ stage, alongside = [] }) => [stage, alongside]));
    for (const [stage, others] of beside) for (const other of others) expect(beside.get(other)).toContain(stage);
    expect(beside.get("saw")).toContain("carry");
  });

  it("has a bar for each stage of hours, and people times clock hours are person-hours", async () => {
    const { effort } = await full;
    for (const { work, stages } of effort.routes) {
      for (const { stage, hours } of [...effort.common, ...stages]) {
        // Two bars where the dried pieces come later.
        const bars = work?.calendar.stages.filter((bar) => bar.stage === stage) ?? [];
        const product = bars.reduce((sum, bar) => sum + Number(bar.people.value) * Number(bar.crewHours.value), 0);
        // Both are rounded to the hundredth; four people make four times the error.
        expect(Math.abs(product - Number(hours.value))).toBeLessThan(0.04);
      }
    }
  });

  it("weighs every log that is sawn as the log list does, and tells who lifts it", async () => {
    const { effort, sawing } = await lean;
    const loads = effort.routes.find(({ work }) => work)?.work?.loads ?? [];
    const logs = loads.filter(({ kind }) => kind === "log");
    expect(logs.length).toBeGreaterThan(5);
    for (const { name, green, dry, people } of logs) {
      const weight = Number(sawing.logs.find((log) => log.name === name)?.weight.value);
      expect(Math.abs(Number(green.value) - weight)).toBeLessThan(0.51);
      expect(Number(dry.value)).toBeLessThan(Number(green.value));
      const hands = Math.ceil(weight / 51);
      expect(people).toBe(hands > 4 ? null : hands);
    }
    expect(new Set(loads.map(({ kind }) => kind))).toEqual(new Set(["log", "slab", "piece"]));
    expect(loads.every(({ people, aid }) => aid !== null && (people === null) === (aid !== "helpers"))).toBe(true);
  });

  it("says which machine dresses what, and why", async () => {
    const { effort, cutList } = await estimated({ ...request, shop: { planer: "none" } }, "?include=work");
    const groups = cutList.groups.map(({ name }) => name);
    const milled = effort.routes.find(({ route }) => route === "milled")?.work?.dressing ?? [];
    expect(milled.map(({ group }) => group)).toEqual(groups);
    const dressed = milled.filter(({ by }) => by === "hand");
    expect(dressed.length).toBeGreaterThan(3);
    expect(dressed.every(({ because }) => because[0] === "there is no planer")).toBe(true);
    const posts = milled.find(({ group }) => group === "posts");
    expect(posts).toMatchObject({ by: "nobody", crosscutFaces: 4 });
    expect(posts?.because).toEqual([
      "they stay rough",
      "sawn to size on the mill alone",
      "crosscut from all 4 faces: 6 in is deeper than twice the saw's 2 1/2 in, and a handsaw takes the core",
    ]);
  });

  it("follows the limits of the shop's own machines, and refuses one that is given twice", async () => {
    const shop = { mill: "chainsaw-mill", planerWidth: "6 in", crosscutDepth: "6 in", heaviestFed: "5 lb" };
    const { effort } = await estimated({ ...request, shop }, "?include=work");
    const milled = effort.routes.find(({ route }) => route === "milled")?.work?.dressing ?? [];
    const rafters = milled.find(({ group }) => group === "rafters");
    expect(rafters?.by).toBe("hand");
    expect(rafters?.because[0]).toMatch(/^too heavy to feed: \d+(\.\d)? lb, at most 5 lb$/);
    expect(rafters?.because[1]).toBe("too wide for the planer: 6 9/16 in, at most 6 in");
    expect(milled.find(({ group }) => group === "posts")?.crosscutFaces).toBe(1);
    const byHand = effort.routes.find(({ route }) => route === "milled")?.stages;
    expect(Number(byHand?.find(({ stage }) => stage === "dressByHand")?.hours.value)).toBeGreaterThan(5);
    const twice = await refused({ ...request, shop, assumptions: { "cut.depth": "3 in" } });
    expect(twice.faults.map(({ pointer }) => pointer)).toEqual(["/shop/crosscutDepth"]);
  });

  it("has dates from the day of the start", async () => {
    const { effort } = await estimated({ ...request, labor: { ...request.labor, startDate: "2027-03-01" } });
    const calendar = effort.routes.find(({ work }) => work)?.work?.calendar;
    expect(calendar?.stages[0]).toMatchObject({ stage: "getOut", dates: { start: "2027-03-01" } });
    const days = Math.floor(Number(calendar?.drying?.likelyDay.value));
    const dry = new Date(Date.parse("2027-03-01T00:00:00Z") + days * 86_400_000).toISOString().slice(0, 10);
    expect(calendar?.drying?.dates?.likely).toBe(dry);
    expect(calendar?.finishDate).toMatch(/^202\d-\d\d-\d\d$/);
    expect((await refused({ ...request, labor: { startDate: "2027-02-30" } })).status).toBe(422);
  });
});
