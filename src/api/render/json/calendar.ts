/** A route's timeline as JSON: its stages as bars, what dries, and when all is done. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { WorkReport } from "../../../estimate/compare/work.js";
import type { Calendar, CalendarStage } from "../../../estimate/effort/calendar.js";
import { dateAfter } from "../../../estimate/effort/dates.js";
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

/** The timeline of a route. */
export const CalendarSchema = z
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

/** A quantity to so many places. @param places - Digits after the point. */
export function amount(of: Quantity, places: number, symbol = of.unit.symbol): z.output<typeof measuredValue> {
  return { value: trimmed(inUnit(of, unit(symbol)), places), unit: symbol };
}

type Dated = ((of: Quantity) => string) | undefined;

/** The dates of some days, by the same names; null where the start has none. */
function shownDates<Name extends string>(of: Readonly<Record<Name, Quantity>>, dated: Dated) {
  if (!dated) return null;
  const dates = Object.entries<Quantity>(of).map(([name, day]) => [name, dated(day)] as const);
  return Object.fromEntries(dates) as Record<Name, string>;
}

/** A route's calendar. @param all - How each stage goes with one person alone, and what it may go on beside. */
export function shownCalendar(
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
