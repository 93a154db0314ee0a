/** A route's work beside its hours, as JSON: when, by which machine, and what is heavy. Read off cells; none of it is one. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import { workOf } from "../../../estimate/compare/work.js";
import type { Calendar, CalendarStage } from "../../../estimate/effort/calendar.js";
import type { DressingChoice } from "../../../estimate/effort/dressing-choice.js";
import type { Lift, Load } from "../../../estimate/effort/lifts.js";
import type { Estimate } from "../../../estimate/estimate.js";
import { trimmed } from "../../../estimate/quantity/decimal.js";
import { inUnit, type Quantity } from "../../../estimate/quantity/quantity.js";
import { unit } from "../../../estimate/quantity/unit.js";

const measured = (describe: string) => measuredValue.describe(describe);

const BarSchema = z
  .strictObject({
    stage: z.string().describe("Name of the stage."),
    people: measured("At work at once."),
    crewHours: measured("Hours by the clock with all of them; its person-hours are this times the people."),
    crewDays: measured("Working days of the crew, at the hours of a working day."),
    aloneDays: measured("Working days of one person who does it alone."),
    startDay: measured("Calendar days from the first log got out, at the hours a week."),
    endDay: measured("When it is done."),
    whileDrying: z.boolean().describe("Goes on while lumber lies in the stack."),
    alongside: z
      .array(z.string())
      .describe("Stages of this route that need not wait for this one, nor it for them, where hands are free."),
  })
  .meta({ id: "CalendarStage", description: "One bar of the timeline." });

const DryDaysSchema = z
  .strictObject({
    startDay: measured("When the last board is stacked."),
    soonestDay: measured("Dry at the soonest: piled in good weather."),
    likelyDay: measured("Dry as it mostly goes; the timeline waits for this."),
    latestDay: measured("Dry at the latest: piled in autumn."),
  })
  .meta({ id: "DryDays", description: "Days from the start on which lumber is stacked and dry." });

const CalendarSchema = z
  .strictObject({
    stages: z.array(BarSchema).describe("In working order, one after the other; what needs no dry lumber goes first."),
    drying: DryDaysSchema.nullable().describe("Null where nothing that is milled needs to dry."),
    totalDays: measured("Calendar days from the first log got out to the broom."),
    crewDays: measured("Working days of the crew, without the waiting."),
    aloneDays: measured("Working days of one person alone."),
  })
  .meta({ id: "Calendar", description: "A plain timeline in days from the start; nobody knows the date of that yet." });

const DressingSchema = z
  .strictObject({
    group: z.string().describe("Piece group."),
    by: z.enum(["machine", "hand", "nobody"]).describe("What dresses it; nobody: it stays rough."),
    order: z
      .enum(["slab-first", "piece-by-piece"])
      .nullable()
      .describe("slab-first: several in one slab, planed before they are ripped; null where no machine does it."),
    rip: z
      .enum(["one-face", "both-faces"])
      .nullable()
      .describe("Whether one cut of the rip saw goes through; null where no machine does it."),
    because: z.array(z.string()).describe("Why."),
  })
  .meta({ id: "DressingChoice", description: "Which machine dresses a group, and why." });

const LoadSchema = z
  .strictObject({
    kind: z.enum(["log", "slab", "piece"]).describe("What it is."),
    name: z.string().describe("Name of the log, also for its slabs; of the group for a piece."),
    count: z.int().describe("How many of the same weight; of pieces, one stands for its group."),
    green: measured("Weight as sawn."),
    dry: measured("Weight when dry."),
    people: z.int().describe("People who lift it as it comes: logs and slabs green, pieces as they are built in."),
    aid: z
      .enum(["helpers", "cart, rollers or levers", "winch, tractor or lift"])
      .nullable()
      .describe("What helps over one person's load; null below it."),
  })
  .meta({ id: "HeavyLoad", description: "What a log, a slab or a piece weighs, and who lifts it." });

export const WorkSchema = z
  .strictObject({
    calendar: CalendarSchema.describe("When."),
    dressing: z.array(DressingSchema).describe("How each group is dressed that this route dresses."),
    loads: z
      .array(LoadSchema)
      .describe("Logs that are sawn, their slabs, and one piece of each group, heaviest first."),
  })
  .meta({ id: "Work", description: "A route's work beside its hours: when, by which machine, and what is heavy." });

/** The work of one route. */
export function shownWork({ basis, common, takeoffs }: Estimate, route: RouteCells): z.output<typeof WorkSchema> {
  const { calendar, dressing, loads, lifts } = workOf(basis, common, takeoffs.weights, route);
  const heavy = new Map(lifts.map((lift) => [keyOf(lift), lift]));
  const sorted = loads.toSorted((a, b) => b.lifted.value.cmp(a.lifted.value));
  const alike = new Map<string, [Load, ...Load[]]>();
  for (const load of sorted) alike.set(keyOf(load), [load, ...(alike.get(keyOf(load)) ?? [])]);
  return {
    calendar: shownCalendar(calendar),
    dressing: dressing.map(shownChoice),
    loads: [...alike.values()].map((same) => ({
      ...shownLoad(same[0], heavy.get(keyOf(same[0])), basis.units.mass),
      count: same.length,
    })),
  };
}

/** Loads that weigh the same are lifted alike. */
const keyOf = ({ kind, name, lifted }: Load): string => `${kind} ${name} ${lifted.value.toFixed(12)}`;

/** @param places - Digits after the point. */
function amount(of: Quantity, places: number, symbol = of.unit.symbol): z.output<typeof measuredValue> {
  return { value: trimmed(inUnit(of, unit(symbol)), places), unit: symbol };
}

function shownCalendar({ stages, drying, totalDays, crewDays, aloneDays }: Calendar): z.output<typeof CalendarSchema> {
  const day = (of: Quantity) => amount(of, 1);
  return {
    stages: stages.map(shownBar),
    drying: drying
      ? {
          startDay: day(drying.startDay),
          soonestDay: day(drying.soonestDay),
          likelyDay: day(drying.likelyDay),
          latestDay: day(drying.latestDay),
        }
      : null,
    totalDays: day(totalDays),
    crewDays: day(crewDays),
    aloneDays: day(aloneDays),
  };
}

function shownBar(bar: CalendarStage): z.output<typeof BarSchema> {
  const { stage, people, crewHours, crewDays, aloneDays, startDay, endDay, whileDrying, alongside } = bar;
  return {
    stage,
    people: amount(people, 0),
    crewHours: amount(crewHours, 2),
    crewDays: amount(crewDays, 1),
    aloneDays: amount(aloneDays, 1),
    startDay: amount(startDay, 1),
    endDay: amount(endDay, 1),
    whileDrying,
    alongside: [...alongside],
  };
}

function shownChoice({ group, by, order, rip, because }: DressingChoice): z.output<typeof DressingSchema> {
  return { group, by, order: order ?? null, rip: rip ?? null, because: [...because] };
}

function shownLoad(
  { kind, name, green, dry }: Load,
  lift: Lift | undefined,
  mass: string,
): Omit<z.output<typeof LoadSchema>, "count"> {
  const weights = { green: amount(green, 0, mass), dry: amount(dry, 0, mass) };
  return { kind, name, ...weights, people: lift?.people ?? 1, aid: lift?.aid ?? null };
}
