import { describe, expect, it } from "vitest";
import { demo, estimated, refused } from "./helpers/posting.js";

describe("the work of a route", () => {
  const request = demo("orchard-shelter");
  const lean = estimated(request);
  const full = estimated(request, "?include=work");

  it("is told of the best route, and of all of them on request", async () => {
    const { effort, decision } = await lean;
    expect(effort.routes.filter(({ work }) => work).map(({ route }) => route)).toEqual([decision.best]);
    const all = (await full).effort.routes;
    expect(all.every(({ work }) => work)).toBe(true);
    const [some, whole] = [effort.routes, all].map((of) => of.find(({ route }) => route === decision.best)?.work);
    const bars = whole?.calendar.stages.map(({ alongside, ...bar }) => bar);
    expect({ ...whole?.calendar, stages: bars }).toEqual(some?.calendar);
    expect(whole?.calendar.stages.some(({ alongside = [] }) => alongside.length > 0)).toBe(true);
    expect(whole?.loads.filter(({ people }) => people > 1)).toEqual(some?.loads);
    expect(whole?.loads.length).toBeGreaterThan(some?.loads.length ?? 0);
  });

  it("has a bar for each stage of hours, and people times clock hours are person-hours", async () => {
    const { effort } = await full;
    for (const { work, stages } of effort.routes) {
      const bars = new Map(work?.calendar.stages.map((bar) => [bar.stage, bar]));
      for (const { stage, hours } of [...effort.common, ...stages]) {
        const bar = bars.get(stage);
        const product = Number(bar?.people.value ?? 0) * Number(bar?.crewHours.value ?? 0);
        // Both are rounded to the hundredth; four people make four times the error.
        expect(Math.abs(product - Number(hours.value))).toBeLessThan(0.03);
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
      expect(people).toBe(Math.ceil(weight / 51));
    }
    expect(new Set(loads.map(({ kind }) => kind))).toEqual(new Set(["log", "slab", "piece"]));
    expect(loads.every(({ people, aid }) => people > 1 === (aid !== null))).toBe(true);
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
      "it stays rough",
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
