import { describe, expect, it } from "vitest";
import { milledPieces } from "../../../src/estimate/compare/route.js";
import { workOf } from "../../../src/estimate/compare/work.js";
import { calendarOf } from "../../../src/estimate/effort/calendar.js";
import { dateAfter } from "../../../src/estimate/effort/dates.js";
import type { StageWork } from "../../../src/estimate/effort/timeline.js";
import type { Estimate } from "../../../src/estimate/estimate.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { mulberry32 } from "../../bench/mulberry32.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const ORDER =
  "getOut prepare setUp saw edge sharpen carry stack slabs fetch sort cut dress sand dig pour join finishFirst finishLater move raise roof cleanUp".split(
    " ",
  );

const stage = (name: string, hours: number, more: Partial<StageWork> = {}): StageWork => ({
  stage: name,
  label: name,
  personHours: decimal(hours),
  people: decimal(2),
  atMill: false,
  needsDry: false,
  sets: decimal(0),
  ...more,
});

/** Two people, 14 h a week: a day of the calendar is two hours. */
function planned(stages: readonly StageWork[], dryingDays?: number, crew = 2) {
  const [soonest, likely, latest] = [1, 2, 3].map((times) => decimal(times * (dryingDays ?? 0) * 0.5));
  const drying = dryingDays === undefined ? undefined : { soonest, likely, latest };
  return calendarOf({
    stages,
    drying: drying as Parameters<typeof calendarOf>[0]["drying"],
    crew: decimal(crew),
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
    const calendar = planned([stage("dress", 8), stage("trialAssemble", 4)]);
    expect(bars(calendar)).toEqual([
      ["dress", 0, 2, false],
      ["trialAssemble", 2, 3, false],
    ]);
    const [dress] = calendar.stages;
    expect(dress?.crewHours.value.toNumber()).toBe(4);
    expect(dress?.crewDays.value.toDecimalPlaces(6).toNumber()).toBe(0.571429); // 4 h of 7
    expect(dress?.aloneDays.value.toDecimalPlaces(6).toNumber()).toBe(1.142857);
  });

  it("has the stages of sawing by turns: one at the mill for 8 h, while the other carries and stacks, then both", () => {
    // 12 person-hours of two people are 6 h; the mill alone needs 8 h, or 4 days.
    const saw = stage("saw", 8, { people: decimal(1), atMill: true });
    const calendar = planned([saw, stage("carry", 2), stage("stack", 2)]);
    expect(bars(calendar)).toEqual([
      ["saw", 0, 4, false],
      ["carry", 0, 4, false],
      ["stack", 0, 4, false],
    ]);
    // With 12 h of carrying it is the hands that are short: 20 person-hours of two are 10 h.
    expect(bars(planned([saw, stage("carry", 12)])).map(([, , end]) => end)).toEqual([5, 5]);
  });

  it("has no stage of sawing go quicker than the people who have room at it: 6 h of one at the chain are 3 days", () => {
    const sharpen = stage("sharpen", 6, { people: decimal(1) });
    const turns = [stage("saw", 2, { people: decimal(1), atMill: true }), sharpen, stage("carry", 2)];
    expect(bars(planned(turns)).map(([, , end]) => end)).toEqual([3, 3, 3]);
    // On the mill itself it is the mill's clock as well: 2 + 6 h.
    const stopped = [turns[0] as StageWork, { ...sharpen, atMill: true }, stage("carry", 2)];
    expect(bars(planned(stopped)).map(([, , end]) => end)).toEqual([4, 4, 4]);
  });

  it("lets the one who is not at the mill dig the holes: 8 h of sawing leave 4 for them", () => {
    const calendar = planned([
      stage("saw", 8, { people: decimal(1), atMill: true }),
      stage("carry", 4),
      stage("dig", 6),
    ]);
    // 4 of the 6 person-hours beside the saw; the last 2 by both, half a day.
    expect(bars(calendar)).toEqual([
      ["saw", 0, 4, false],
      ["carry", 0, 4, false],
      ["dig", 0, 4.5, false],
    ]);
  });

  it("takes people to a mill that needs more than the crew", () => {
    const calendar = planned([stage("saw", 8, { atMill: true }), stage("carry", 2)], undefined, 1);
    // 4 h at the mill with a second pair of hands, then 2 h alone.
    expect(calendar.totalDays.value.toNumber()).toBe(3);
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

  it("waits until concrete has set and until a coat has dried, and ends when the last one has", () => {
    const calendar = planned([
      stage("pour", 4, { sets: decimal(3) }),
      stage("finishFirst", 4, { sets: decimal("0.5") }),
      stage("finishLater", 4, { sets: decimal("0.5") }),
      stage("raise", 4),
    ]);
    expect(bars(calendar).map(([name, start, end]) => [name, start, end])).toEqual([
      ["pour", 0, 1],
      ["finishFirst", 1, 2],
      ["finishLater", 2.5, 3.5],
      ["raise", 4, 5],
    ]);
    expect(calendar.stages.map(({ setDay }) => setDay.value.toNumber())).toEqual([4, 2.5, 4, 5]);
    const last = planned([stage("finishFirst", 4, { sets: decimal(2) })]);
    expect(last.totalDays.value.toNumber()).toBe(3);
  });

  it("waits for nothing where nothing dries, and leaves out what takes no hours", () => {
    expect(bars(planned([stage("stack", 0), stage("dress", 8, { needsDry: true })]))).toEqual([["dress", 0, 2, false]]);
    expect(bars(planned([stage("dress", 8, { needsDry: true })], 20))).toEqual([["dress", 0, 2, false]]);
  });

  it("brings helpers along with the crew", () => {
    expect(planned([stage("raise", 8, { people: decimal(4), helpers: decimal(2) })]).totalDays.value.toNumber()).toBe(
      1,
    );
  });

  it("is never longer with more people, whatever the stages, and never shorter than all hands at all hours", () => {
    const chance = mulberry32(7);
    for (let round = 0; round < 60; round++) {
      const stages = ORDER.map((name) => ({
        name,
        hours: chance() < 0.25 ? 0 : Math.round(chance() * 400) / 10,
        room: name === "sharpen" ? 1 : 1 + Math.floor(chance() * 6),
      }));
      const [mill, helpers, dried] = [1 + Math.floor(chance() * 3), Math.floor(chance() * 3), chance() < 0.5];
      const daysWith = (crew: number, more: number) =>
        planned(
          stages.map(({ name, hours, room }) => {
            const atMill = name === "setUp" || name === "saw";
            const people = decimal(atMill ? mill : Math.min(room, name === "raise" ? crew + more : crew));
            const helpers = decimal(name === "raise" ? more : 0);
            const sets = decimal(name === "pour" ? 3 : name.startsWith("finish") ? 1 : 0);
            return stage(name, hours, {
              people,
              helpers,
              atMill,
              sets,
              needsDry: ORDER.indexOf(name) >= ORDER.indexOf("dress"),
            });
          }),
          dried ? 30 : undefined,
          crew,
        ).totalDays.value.toNumber();
      const told = [1, 2, 3, 4, 7].map((crew) => daysWith(crew, helpers));
      for (const [i, days] of told.slice(1).entries())
        expect([round, days <= (told[i] as number) + 1e-9]).toEqual([round, true]);
      expect(daysWith(2, helpers + 1)).toBeLessThanOrEqual((told[1] as number) + 1e-9);
      const all = stages.reduce((sum, { hours }) => sum + hours, 0);
      expect(told[0]).toBeGreaterThanOrEqual(all / (Math.max(mill, 1) + helpers) / 2 - 1e-9);
    }
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

describe("dates", () => {
  it("are those of the Gregorian calendar, leap years and all", () => {
    for (const start of ["2027-03-01", "2028-02-28", "2000-02-29", "2100-02-28", "1999-12-31"])
      for (const days of [0, 0.9, 1, 2, 30, 365, 366, 1461, 36524]) {
        const other = new Date(Date.parse(`${start}T00:00:00Z`) + Math.floor(days) * 86_400_000);
        expect(dateAfter(start, decimal(days))).toBe(other.toISOString().slice(0, 10));
      }
  });
});

describe("the calendar of the demo", () => {
  const demo = estimated(demoBody("orchard-shelter"));
  /** Everything milled: of the verdict's mix fascia alone dries. */
  const mill = demo.routes.mill as NonNullable<typeof demo.routes.mill>;
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
      const bars = calendar.stages.map((bar) => `${bar.stage} ${bar.part ?? ""}`);
      expect(new Set(bars).size).toBe(bars.length);
    }
  });

  it("dries only what is milled and dried, and dresses it after", () => {
    const [bought, , milled] = work(demo);
    expect(bought?.calendar.drying).toBeUndefined();
    const dress = milled?.calendar.stages.find((bar) => bar.stage === "dress");
    const dry = milled?.calendar.drying?.likelyDay.value;
    expect(dry && dress?.startDay.value.gte(dry)).toBe(true);
  });

  it("tells which groups it waits for, and when all would be done were they used green", () => {
    const { basis, common, takeoffs } = demo;
    const { waitsFor, calendar } = workOf(basis, common, takeoffs.weights, mill);
    const dried = basis.groups.filter(
      ({ group }) => group.rules.seasoning === "dried" && mill.plan.sawn.has(group.name),
    );
    expect(waitsFor?.groups).toEqual(dried.map(({ group }) => group.name));
    expect(dried.length).toBeGreaterThan(0);
    const green = workOf(basis, common, takeoffs.weights, {
      ...mill,
      plan: { ...mill.plan, sawn: new Set() },
    });
    expect(green.waitsFor).toBeUndefined();
    expect(waitsFor?.totalDays.value.lt(calendar.totalDays.value)).toBe(true);
  });

  it("has the joints of green timbers cut, tried and taken apart while the others dry", () => {
    const { calendar } = workOf(demo.basis, demo.common, demo.takeoffs.weights, mill);
    const { sheet } = demo.basis;
    const dry = calendar.drying?.likelyDay.value as NonNullable<typeof calendar.drying>["likelyDay"]["value"];
    const bar = (stage: string, part?: string) =>
      calendar.stages.find((one) => one.stage === stage && one.part === part);
    const driedGroups = demo.basis.groups.filter(
      ({ group }) => group.rules.seasoning === "dried" && mill.plan.sawn.has(group.name),
    );
    expect(driedGroups.length).toBeGreaterThan(0);
    const joints = driedGroups.reduce((sum, one) => {
      const all = sheet.in(sheet.find(`work.${one.group.name}.join`) as never, "person-h").toNumber();
      const milled = milledPieces(demo.basis, mill.plan, one)?.value.toNumber() ?? 0;
      return sum + (all * milled) / one.group.count.value.toNumber();
    }, 0);
    expect(bar("join", "dried")?.personHours.value.toNumber()).toBeCloseTo(joints, 9);
    expect(bar("join", "dried")?.startDay.value.gte(dry)).toBe(true);
    for (const early of [bar("join", "green"), bar("trialAssemble"), bar("dismantle")])
      expect(early?.endDay.value.lt(dry)).toBe(true);
    // Fascia alone holds up nothing that stands below it.
    const holdsFrame = driedGroups.some(({ group }) => group.role !== "fascia");
    expect(bar("raise")?.startDay.value.gte(dry)).toBe(holdsFrame);
  });

  it("brushes fascia after it is dressed, and covers the roof after eave trim is on it, rake trim and caps last", () => {
    const body = demoBody("orchard-shelter");
    const structure = body.structure as Record<string, unknown>;
    const bought = Object.fromEntries(
      ["ridge", "rafters", "fly-rafters", "purlins"].map((name) => [name, { source: "buy" }]),
    );
    const { basis, common, takeoffs, routes, notices } = estimated({
      ...body,
      structure: { ...structure, groups: { ...(structure.groups as object), ...bought } },
    });
    const { calendar, waitsFor } = workOf(basis, common, takeoffs.weights, routes.mix);
    const dried = basis.groups.filter(({ group }) => waitsFor?.groups.includes(group.name));
    expect(new Set(dried.map(({ group }) => group.role))).toEqual(new Set(["fascia"]));
    const bar = (stage: string, part?: string) =>
      calendar.stages.find((one) => one.stage === stage && one.part === part) as (typeof calendar.stages)[number];
    const late = [bar("dress"), bar("join", "dried"), bar("finishFirst", "dried"), bar("move", "dried")];
    const order = [...late, bar("eaves"), bar("roof"), bar("trim")];
    for (const [i, next] of order.slice(1).entries())
      expect(next.startDay.value.gte(order[i]?.endDay.value ?? 0), next.label).toBe(true);
    // Fascia is smooth: its faces over the rate, as many pieces as are milled.
    const { sheet, assumed } = basis;
    const faces = dried.reduce((all, { group }) => {
      const each = sheet.in(sheet.find(`finish.${group.name}.area`) as never, "ft2").dividedBy(group.count.value);
      return all + each.times(sheet.find(`mixed.sawn.${group.name}`)?.value ?? group.count.value).toNumber();
    }, 0);
    const rate = sheet.in(assumed.cell("rate.finishSmooth"), "ft2/person-h").toNumber();
    expect(bar("finishFirst", "dried").personHours.value.toNumber()).toBeCloseTo(faces / rate, 6);
    expect(notices.map(({ code }) => code)).toEqual(expect.arrayContaining(["green-finish", "open-frame"]));
  });

  it("keeps the trial for dry lumber where timbers of the frame are to dry", () => {
    const body = demoBody("orchard-shelter");
    const structure = body.structure as Record<string, unknown>;
    const groups = { ...(structure.groups as object), ties: { seasoning: "dried", source: "mill" } };
    const made = estimated({ ...body, structure: { ...structure, groups } });
    const route = made.routes.mill as NonNullable<typeof made.routes.mill>;
    const { calendar } = workOf(made.basis, made.common, made.takeoffs.weights, route);
    const dry = calendar.drying?.likelyDay.value;
    const start = (stage: string, part?: string) =>
      calendar.stages.find((one) => one.stage === stage && one.part === part)?.startDay.value;
    expect(dry && start("trialAssemble")?.gte(dry)).toBe(true);
    expect(dry && start("join", "green")?.lt(dry)).toBe(true);
  });

  it("tells which lifts are too much for one, and names an aid for logs", () => {
    const lifts = work(demo).at(-1)?.lifts ?? [];
    const limit = 51 * 0.45359237;
    expect(lifts.every(({ lifted, people = 5 }) => lifted.value.gt(limit) && people >= 2)).toBe(true);
    expect(lifts[0]).toMatchObject({ kind: "log", aid: "winch, tractor or lift" });
    expect(lifts.some(({ kind }) => kind === "slab")).toBe(true);
  });
});
