import { describe, expect, it } from "vitest";
import { demo, estimated } from "./helpers/posting.js";

describe("the work of a route", () => {
  const request = demo("orchard-shelter");

  it("is told of the best route, and of all of them on request", async () => {
    const lean = (await estimated(request)).effort.routes;
    const best = (await estimated(request)).decision.best;
    expect(lean.filter(({ work }) => work).map(({ route }) => route)).toEqual([best]);
    const all = (await estimated(request, "?include=work")).effort.routes;
    expect(all.every(({ work }) => work)).toBe(true);
    expect(all.find(({ route }) => route === best)?.work).toEqual(lean.find(({ work }) => work)?.work);
  });

  it("has a bar for each stage of hours, and people times clock hours are person-hours", async () => {
    const { effort } = await estimated(request, "?include=work");
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
    const { effort, sawing } = await estimated(request);
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
    const choices = effort.routes.flatMap(({ work }) => work?.dressing ?? []);
    const groups = new Set(cutList.groups.map(({ name }) => name));
    expect(choices.length).toBeGreaterThan(3);
    expect(
      choices.every(
        ({ by, because, group }) => by === "hand" && because.join() === "there is no planer" && groups.has(group),
      ),
    ).toBe(true);
  });
});
