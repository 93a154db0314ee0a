/** A route's work beside its hours, as JSON: when, by which machine, and what is heavy. Read off cells; none of it is one. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { RouteCells } from "../../../estimate/compare/route.js";
import { workOf } from "../../../estimate/compare/work.js";
import type { DressingChoice } from "../../../estimate/effort/dressing-choice.js";
import { type Lift, type Load, together } from "../../../estimate/effort/lifts.js";
import type { Estimate } from "../../../estimate/estimate.js";
import { amount, CalendarSchema, shownCalendar } from "./calendar.js";

const measured = (describe: string) => measuredValue.describe(describe);

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
