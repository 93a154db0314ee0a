/** Hours by stage as JSON. Person-hours and hours with the crew are two figures. */
import { z } from "zod";
import type { RouteCells } from "../../../estimate/compare/route.js";
import type { Estimate } from "../../../estimate/estimate.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { routeField, routeKey } from "./decision.js";
import { FigureSchema, figure, figureOrNull, LabeledSchema, labeled } from "./figures.js";
import { shownWork, WorkSchema } from "./work.js";

const StageSchema = z
  .strictObject({
    stage: z.string().describe("Name of the stage."),
    label: z.string().describe("In words."),
    hours: FigureSchema.describe("Person-hours."),
  })
  .meta({ id: "Stage", description: "A block of work." });

const stages = (describe: string) => z.array(StageSchema).describe(describe);

const DryingSchema = z
  .strictObject({
    soonest: FigureSchema.describe("Piled in good weather."),
    likely: FigureSchema.describe("As it mostly goes."),
    latest: FigureSchema.describe("Piled in autumn."),
  })
  .meta({ id: "DryingWeeks", description: "Calendar time in the stack, to about 20 % moisture." });

const RouteSchema = z
  .strictObject({
    route: routeField(),
    stages: stages("Stages of this route alone, in the order of the work."),
    hours: FigureSchema.describe("Person-hours in all, those of `common` and your own lines included."),
    elapsed: FigureSchema.describe("Hours with the crew, all stages."),
    millHours: FigureSchema.nullable().describe("Of them at the mill; null where nothing is milled."),
    drying: DryingSchema.nullable().describe("Of what is milled; null where none of it needs to dry."),
    work: WorkSchema.nullable().describe(
      "When, by which machine, and what is heavy; null on routes other than the best, unless include=work asks for all.",
    ),
  })
  .meta({ id: "RouteEffort", description: "Hours of one route." });

export const EffortSchema = z
  .strictObject({
    valueOfHour: FigureSchema.describe("What an hour of one's own work is worth."),
    crew: FigureSchema.describe(
      "People at work together. Two people for an hour are two person-hours and one hour with the crew.",
    ),
    helpers: FigureSchema.describe("People who come in addition on the days of raising."),
    hoursPerWeek: FigureSchema.describe("Hours a week that the crew works on this."),
    hoursPerDay: FigureSchema.describe("Hours of a working day."),
    order: z
      .array(z.string())
      .describe("Names of all stages, common ones and the routes' own, in the order of the work."),
    common: stages("Stages that every route has, once."),
    own: z.array(LabeledSchema).describe("Lines of your own that are hours."),
    commonHours: FigureSchema.describe("Person-hours of the common stages and of your own lines."),
    routes: z.array(RouteSchema).describe("Routes, each once."),
  })
  .meta({ id: "Effort", description: "Hours by stage." });

/** Common stages once, then each route's own. @param all - Shows the work of every route, not of the best alone. */
export function shownEffort(
  estimate: Estimate,
  routes: readonly RouteCells[],
  all: boolean,
): z.output<typeof EffortSchema> {
  const { basis, takeoffs, common } = estimate;
  const { labor } = basis;
  return {
    valueOfHour: figure(labor.valueOfHour),
    crew: figure(labor.crew),
    helpers: figure(labor.helpers),
    hoursPerWeek: figure(labor.hoursPerWeek),
    hoursPerDay: figure(labor.hoursPerDay),
    order: orderOf(routes.map(({ inOrder }) => inOrder.filter((cell) => !common.ownHours.includes(cell)).map(nameOf))),
    common: takeoffs.stages.map(shownStage),
    own: common.ownHours.map(labeled),
    commonHours: figure(common.hours),
    routes: routes.map((route) => ({
      route: routeKey(route),
      stages: route.stages.map(shownStage),
      hours: figure(route.hours),
      elapsed: figure(route.elapsed),
      millHours: figureOrNull(route.milling?.millHours),
      drying: route.drying ? shownDrying(route.drying) : null,
      work: all || route === estimate.routes.mix ? shownWork(estimate, route, all) : null,
    })),
  };
}

/** A stage is named by the last part of its cell's name. */
const nameOf = (cell: Cell): string => cell.name.split(".").at(-1) as string;

const shownStage = (cell: Cell): z.output<typeof StageSchema> => ({
  stage: nameOf(cell),
  label: cell.label,
  hours: figure(cell),
});

/** One order out of several that agree: what only some have comes after what stands before it there. */
function orderOf(orders: readonly (readonly string[])[]): string[] {
  const all: string[] = [];
  for (const order of orders) {
    let at = 0;
    for (const name of order) {
      const known = all.indexOf(name);
      if (known < 0) all.splice(at, 0, name);
      at = (known < 0 ? at : known) + 1;
    }
  }
  return all;
}

const shownDrying = ({ soonest, likely, latest }: NonNullable<RouteCells["drying"]>) => ({
  soonest: figure(soonest),
  likely: figure(likely),
  latest: figure(latest),
});
