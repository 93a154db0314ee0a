/** A route's work beside its hours, as JSON: when, by which machine, and what is heavy. Read off cells; none of it is one. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import { type WorkReport, workOf } from "../../../estimate/compare/work.js";
import type { Calendar, CalendarStage } from "../../../estimate/effort/calendar.js";
import { dateAfter } from "../../../estimate/effort/dates.js";
import type { DressingChoice } from "../../../estimate/effort/dressing-choice.js";
import { type Lift, type Load, together } from "../../../estimate/effort/lifts.js";
import type { Estimate } from "../../../estimate/estimate.js";
import { trimmed } from "../../../estimate/quantity/decimal.js";
import { inUnit, type Quantity } from "../../../estimate/quantity/quantity.js";
import { unit } from "../../../estimate/quantity/unit.js";

const measured = (describe: string) => measuredValue.describe(describe);

const BarSchema = z
  .strictObject({
    stage: z.string().describe("Name of the stage."),
    part: z
      .enum(["green", "dried"])
      .optional()
      .describe("Where pieces that need not dry go ahead: which part of the stage it is. Such a stage has two bars."),
    people: measured("At work at once, at most: beside another stage there are fewer."),
    crewHours: measured("Hours by the clock with all of them; its person-hours are this times the people."),
    startDay: measured("Calendar days from the start of the work, at the hours a week."),
    endDay: measured("When it is done."),
    setDay: measured("A day.")
      .nullable()
      .describe("When what it leaves has dried or set, as concrete and finish have to; null where nothing has to."),
    dates: z
      .strictObject({ start: z.string().describe("Of startDay."), end: z.string().describe("Of endDay.") })
      .nullable()
      .describe("Null where labor.startDate says no day of the start."),
    whileDrying: z.boolean().describe("Goes on while lumber lies in the stack."),
    aloneHours: measured("With include=work: hours of one person alone.").optional(),
    aloneDays: measured("With include=work: working days of one person alone.").optional(),
    crewDays: measured("With include=work: working days of the crew.").optional(),
    alongside: z
      .array(z.string())
      .optional()
      .describe(
        "With include=work: stages of this route that need not wait for this one, nor it for them; they overlap where hands are free.",
      ),
  })
  .meta({ id: "CalendarStage", description: "One bar of the timeline." });

const DryDaysSchema = z
  .strictObject({
    startDay: measured("When the last board is stacked."),
    soonestDay: measured("Dry at the soonest: piled in good weather."),
    likelyDay: measured("Dry as it mostly goes; the timeline waits for this."),
    latestDay: measured("Dry at the latest: piled in autumn."),
    dates: z
      .strictObject({
        start: z.string().describe("Of startDay."),
        soonest: z.string().describe("Of soonestDay."),
        likely: z.string().describe("Of likelyDay."),
        latest: z.string().describe("Of latestDay."),
      })
      .nullable()
      .describe("Null where labor.startDate says no day of the start."),
  })
  .meta({ id: "DryDays", description: "Days from the start on which lumber is stacked and dry." });

const CalendarSchema = z
  .strictObject({
    stages: z
      .array(BarSchema)
      .describe(
        "By the day on which they begin. The stages of sawing go by turns, bolt by bolt; other stages overlap where they may and the crew has hands left; what needs no dry lumber goes first.",
      ),
    drying: DryDaysSchema.nullable().describe("Null where nothing that is milled needs to dry."),
    waitsFor: z
      .strictObject({
        groups: z.array(z.string()).describe("Piece groups that are sawn on this route and have to dry."),
        totalDays: measured(
          "Calendar days from the start to the broom, were none of them to dry: bought, or used green, as `seasoning` in the group's rules says.",
        ),
        finishDate: z
          .string()
          .nullable()
          .describe("Of totalDays; null where labor.startDate says no day of the start."),
      })
      .nullable()
      .describe("What the calendar waits for; null where nothing that is milled needs to dry."),
    totalDays: measured("Calendar days from the start of the work to the broom."),
    finishDate: z
      .string()
      .nullable()
      .describe("Date on which all is done; null where labor.startDate says no day of the start."),
    crewDays: measured("Working days of the crew, without the waiting, one stage after the other."),
    aloneDays: measured("Working days of one person alone."),
  })
  .meta({
    id: "Calendar",
    description: "A plain timeline in days from the start, and in dates where the start has one.",
  });

const DressingSchema = z
  .strictObject({
    group: z.string().describe("Piece group."),
    by: z.enum(["machine", "hand", "nobody"]).describe("What dresses it; nobody: they stay rough."),
    order: z
      .enum(["slab-first", "piece-by-piece"])
      .nullable()
      .describe("slab-first: several in one slab, planed before they are ripped; null where no machine does it."),
    rip: z
      .enum(["one-face", "both-faces"])
      .nullable()
      .describe("Whether one cut of the rip saw goes through; null where no machine does it."),
    crosscutFaces: z
      .int()
      .describe("Faces from which each crosscut is made: more than one where the piece is deeper than the saw."),
    because: z.array(z.string()).describe("Why, with the measures and the limits."),
  })
  .meta({ id: "DressingChoice", description: "Which machine dresses a group, and why." });

const LoadSchema = z
  .strictObject({
    kind: z.enum(["log", "slab", "piece"]).describe("What it is."),
    name: z.string().describe("Name of the log, also for its slabs; of the group for a piece."),
    count: z.int().describe("Logs and pieces: 1, a piece stands for its group. Slabs: how many of this log."),
    green: measured("Weight as sawn; of several slabs, of the heaviest."),
    dry: measured("Weight when dry, of the same."),
    people: z
      .int()
      .nullable()
      .describe(
        "People who lift it as it comes: logs and slabs green, pieces as they are built in. Null past four, who would stand in one another's way: take the aid.",
      ),
    aid: z
      .enum(["helpers", "cart, rollers or levers", "winch, tractor or lift"])
      .nullable()
      .describe("What helps over one person's load; null below it."),
  })
  .meta({ id: "HeavyLoad", description: "What a log, a slab or a piece weighs, and who lifts it." });

const CountedSchema = z
  .strictObject({
    stage: z.string().describe("Name of the stage."),
    label: z.string().describe("What is counted, in words."),
    amount: measured("Hours, or how many."),
  })
  .meta({ id: "CountedWork", description: "Engine hours, sharpenings, loads, stickers or trips of a stage." });

export const WorkSchema = z
  .strictObject({
    calendar: CalendarSchema.describe("When."),
    counted: z
      .array(CountedSchema)
      .describe("What the stages of this route come to beside their hours; only what there is any of."),
    dressing: z
      .array(DressingSchema)
      .describe(
        "How each group is dressed on this route, and from how many faces it is crosscut; without include=work only those that are dressed, or crosscut from several faces.",
      ),
    loads: z
      .array(LoadSchema)
      .describe(
        "Logs that are sawn, their slabs, and one piece of each group, heaviest first; without include=work only what is more than one person's load, the slabs of a log together.",
      ),
  })
  .meta({ id: "Work", description: "A route's work beside its hours: when, by which machine, and what is heavy." });

/** The work of one route. @param all - Light loads as well, and groups that nobody dresses. */
export function shownWork(
  { basis, common, takeoffs }: Estimate,
  route: RouteCells,
  all: boolean,
): z.output<typeof WorkSchema> {
  const report = workOf(basis, common, takeoffs.weights, route);
  const { dressing, loads, lifts, counted } = report;
  const told = dressing.filter(({ by, crosscutFaces }) => all || by !== "nobody" || crosscutFaces > 1);
  return {
    calendar: shownCalendar(report, basis.request.labor?.startDate, all),
    counted: counted.map(({ stage, amount: cell }) => ({
      stage,
      label: cell.label,
      amount: amount({ value: cell.value, unit: cell.unit }, 1, cell.display.symbol),
    })),
    dressing: told.map(shownChoice),
    loads: all
      ? everyLoad(loads, lifts, basis.units.mass)
      : together(lifts).map((lift) => ({ ...shownLoad(lift, lift, basis.units.mass), count: lift.count })),
  };
}

/** Each by itself; slabs of one log that weigh the same, once. */
function everyLoad(loads: readonly Load[], lifts: readonly Lift[], mass: string): z.output<typeof LoadSchema>[] {
  const heavy = new Map(lifts.map((lift) => [keyOf(lift), lift]));
  const sorted = loads.toSorted((a, b) => b.lifted.value.cmp(a.lifted.value));
  const alike = new Map<string, [Load, ...Load[]]>();
  for (const load of sorted) alike.set(keyOf(load), [load, ...(alike.get(keyOf(load)) ?? [])]);
  return [...alike.values()].map((same) => ({
    ...shownLoad(same[0], heavy.get(keyOf(same[0])), mass),
    count: same.length,
  }));
}

/** Loads that weigh the same are lifted alike. */
const keyOf = ({ kind, name, lifted }: Load): string => `${kind} ${name} ${lifted.value.toFixed(12)}`;

/** @param places - Digits after the point. */
function amount(of: Quantity, places: number, symbol = of.unit.symbol): z.output<typeof measuredValue> {
  return { value: trimmed(inUnit(of, unit(symbol)), places), unit: symbol };
}

type Dated = ((of: Quantity) => string) | undefined;

/** The dates of some days, by the same names; null where the start has none. */
function shownDates<Name extends string>(of: Readonly<Record<Name, Quantity>>, dated: Dated) {
  if (!dated) return null;
  const dates = Object.entries<Quantity>(of).map(([name, day]) => [name, dated(day)] as const);
  return Object.fromEntries(dates) as Record<Name, string>;
}

function shownCalendar(
  { calendar: { stages, drying, totalDays, crewDays, aloneDays }, waitsFor }: Pick<WorkReport, "calendar" | "waitsFor">,
  start: string | undefined,
  all: boolean,
): z.output<typeof CalendarSchema> {
  const dated: Dated = start === undefined ? undefined : (of) => dateAfter(start, of.value);
  return {
    stages: stages.map((bar) => ({ ...shownBar(bar, dated), ...(all && shownMore(bar)) })),
    drying: drying ? shownDryDays(drying, dated) : null,
    waitsFor: waitsFor
      ? {
          groups: [...waitsFor.groups],
          totalDays: day(waitsFor.totalDays),
          finishDate: dated ? dated(waitsFor.totalDays) : null,
        }
      : null,
    totalDays: day(totalDays),
    finishDate: dated ? dated(totalDays) : null,
    crewDays: day(crewDays),
    aloneDays: day(aloneDays),
  };
}

const day = (of: Quantity) => amount(of, 1);

function shownDryDays(drying: NonNullable<Calendar["drying"]>, dated: Dated): z.output<typeof DryDaysSchema> {
  const { startDay, soonestDay, likelyDay, latestDay } = drying;
  return {
    startDay: day(startDay),
    soonestDay: day(soonestDay),
    likelyDay: day(likelyDay),
    latestDay: day(latestDay),
    dates: shownDates({ start: startDay, soonest: soonestDay, likely: likelyDay, latest: latestDay }, dated),
  };
}

function shownBar(bar: CalendarStage, dated: Dated): z.output<typeof BarSchema> {
  const { stage, part, people, crewHours, startDay, endDay, setDay, whileDrying } = bar;
  return {
    stage,
    ...(part && { part }),
    people: amount(people, 0),
    crewHours: amount(crewHours, 2),
    startDay: day(startDay),
    endDay: day(endDay),
    setDay: setDay.value.eq(endDay.value) ? null : day(setDay),
    dates: shownDates({ start: startDay, end: endDay }, dated),
    whileDrying,
  };
}

const shownMore = ({ personHours, aloneDays, crewDays, alongside }: CalendarStage) => ({
  aloneHours: amount(personHours, 2, "person-h"),
  aloneDays: day(aloneDays),
  crewDays: day(crewDays),
  alongside: [...alongside],
});

function shownChoice({
  group,
  by,
  order,
  rip,
  crosscutFaces,
  because,
}: DressingChoice): z.output<typeof DressingSchema> {
  return { group, by, order: order ?? null, rip: rip ?? null, crosscutFaces, because: [...because] };
}

function shownLoad(
  { kind, name, green, dry }: Load,
  lift: Lift | undefined,
  mass: string,
): Omit<z.output<typeof LoadSchema>, "count"> {
  const weights = { green: amount(green, 0, mass), dry: amount(dry, 0, mass) };
  return { kind, name, ...weights, people: lift ? (lift.people ?? null) : 1, aid: lift?.aid ?? null };
}
