import { describe, expect, it } from "vitest";
import { workOf } from "../../../src/estimate/compare/work.js";
import { calendarOf, type StageWork } from "../../../src/estimate/effort/calendar.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const stage = (name: string, hours: number, more: Partial<StageWork> = {}): StageWork => ({
  stage: name,
  label: name,
  personHours: decimal(hours),
  people: decimal(2),
  needsDry: false,
  ...more,
});

/** Two people, 14 h a week: a day of the calendar is two hours. */
function planned(stages: readonly StageWork[], dryingDays?: number) {
  const [soonest, likely, latest] = [1, 2, 3].map((times) => decimal(times * (dryingDays ?? 0) * 0.5));
  const drying = dryingDays === undefined ? undefined : { soonest, likely, latest };
  return calendarOf({
    stages,
    stacked: "stack",
    drying: drying as Parameters<typeof calendarOf>[0]["drying"],
    hoursPerDay: decimal(7),
    hoursPerWeek: decimal(14),
  });
}

const bars = (calendar: ReturnType<typeof planned>) =>
  calendar.stages.map((bar) => [
    bar.stage,
    bar.startDay.value.toNumber(),
    bar.endDay.value.toNumber(),
    bar.whileDrying,
  ]);

describe("the timeline", () => {
  it("is one stage after the other: 8 person-hours of two people are 4 h, 2 days at 14 h a week", () => {
    const calendar = planned([stage("saw", 8), stage("stack", 4)]);
    expect(bars(calendar)).toEqual([
      ["saw", 0, 2, false],
      ["stack", 2, 3, false],
    ]);
    const [saw] = calendar.stages;
    expect(saw?.crewHours.value.toNumber()).toBe(4);
    expect(saw?.crewDays.value.toDecimalPlaces(6).toNumber()).toBe(0.571429); // 4 h of 7
    expect(saw?.aloneDays.value.toDecimalPlaces(6).toNumber()).toBe(1.142857);
  });

  it("lets what needs no dry lumber pass what waits for it", () => {
    const calendar = planned([stage("stack", 4), stage("dress", 8, { needsDry: true }), stage("join", 12)], 20);
    expect(bars(calendar)).toEqual([
      ["stack", 0, 1, false],
      ["join", 1, 4, true],
      ["dress", 21, 23, false],
    ]);
    expect(calendar.drying?.soonestDay.value.toNumber()).toBe(11);
    expect(calendar.drying?.likelyDay.value.toNumber()).toBe(21);
    expect(calendar.drying?.latestDay.value.toNumber()).toBe(31);
    expect(calendar.totalDays.value.toNumber()).toBe(23);
  });

  it("waits for nothing where nothing dries, and leaves out what takes no hours", () => {
    expect(bars(planned([stage("stack", 0), stage("dress", 8, { needsDry: true })]))).toEqual([["dress", 0, 2, false]]);
  });

  it("is shorter with more people", () => {
    const alone = planned([stage("raise", 8, { people: decimal(1) })]);
    expect(alone.totalDays.value.gt(planned([stage("raise", 8)]).totalDays.value)).toBe(true);
  });
});

describe("stages that may go on at once", () => {
  it("are told both ways, and only those that the route has", () => {
    const calendar = planned([
      stage("dig", 4),
      stage("saw", 8),
      stage("carry", 2),
      stage("raise", 6),
      stage("stack", 0),
    ]);
    const beside = Object.fromEntries(calendar.stages.map((bar) => [bar.stage, bar.alongside]));
    expect(beside).toEqual({ dig: ["saw", "carry"], saw: ["dig", "carry"], carry: ["dig", "saw"], raise: [] });
  });
});

describe("the calendar of the demo", () => {
  const demo = estimated(demoBody("orchard-shelter"));
  const routesOf = ({ routes }: Estimate) => [routes.buy, routes.mix, routes.mill].flatMap((route) => route ?? []);
  const work = (made: Estimate) =>
    routesOf(made).map((route) => workOf(made.basis, made.common, made.takeoffs.weights, route));

  it("adds up: stages to person-hours, and crew hours to those elapsed", () => {
    for (const [i, { calendar }] of work(demo).entries()) {
      const route = routesOf(demo)[i];
      const sum = (of: "personHours" | "crewHours") =>
        calendar.stages.reduce((all, bar) => all + bar[of].value.toNumber(), 0);
      expect(sum("personHours")).toBeCloseTo(route?.hours.value.toNumber() ?? Number.NaN, 6);
      expect(sum("crewHours")).toBeCloseTo(route?.elapsed.value.toNumber() ?? Number.NaN, 6);
      expect(new Set(calendar.stages.map((bar) => bar.stage)).size).toBe(calendar.stages.length);
    }
  });

  it("dries only what is milled and dried, and dresses it after", () => {
    const [bought, mixed] = work(demo);
    expect(bought?.calendar.drying).toBeUndefined();
    const dress = mixed?.calendar.stages.find((bar) => bar.stage === "dress");
    const dry = mixed?.calendar.drying?.likelyDay.value;
    expect(dry && dress?.startDay.value.gte(dry)).toBe(true);
  });

  it("tells which lifts are too much for one, and names an aid for logs", () => {
    const lifts = work(demo).at(-1)?.lifts ?? [];
    const limit = 51 * 0.45359237;
    expect(lifts.every(({ lifted, people }) => lifted.value.gt(limit) && people >= 2)).toBe(true);
    expect(lifts[0]).toMatchObject({ kind: "log", aid: "winch, tractor or lift" });
    expect(lifts.some(({ kind }) => kind === "slab")).toBe(true);
  });
});
