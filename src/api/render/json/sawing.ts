/** Logs and the sawing plans of an estimate's routes, as JSON. */
import { z } from "zod";
import type { RouteCells } from "../../../estimate/compare/route.js";
import type { Estimate } from "../../../estimate/estimate.js";
import type { PlannedLogs } from "../../../estimate/plan.js";
import type { YieldCells } from "../../../estimate/salvage/overrun.js";
import { routeField, routeKey } from "./decision.js";
import type { MarkBook } from "./marks.js";
import { sawPlanFields, shownSawPlan } from "./saw-plan.js";
import { LogSchema, shownLogs } from "./sound-log.js";

const PlanSchema = z
  .strictObject({
    route: routeField(),
    ...sawPlanFields,
    logs: sawPlanFields.logs.describe(
      "Logs that are sawn, with their cut lists; empty on routes other than the best that mills, unless include=work asks for all.",
    ),
  })
  .meta({ id: "RouteSawing", description: "The sawing plan of one route." });

export const SawingSchema = z
  .strictObject({
    logs: z.array(LogSchema).describe("Every log: its sound wood and its scale."),
    plans: z.array(PlanSchema).describe("One plan for each route that mills."),
  })
  .meta({ id: "Sawing", description: "Logs and how to saw them." });

/** What is shown of the plans, and how. */
interface Showing {
  readonly marksOf: (route: RouteCells) => MarkBook;
  readonly drawings: boolean;
  /** The cut lists of every route, not of the best alone. */
  readonly all: boolean;
  /** Boards that could come out of what the plans leave. */
  readonly extras: boolean;
}

/** Logs, and the plan of each route that has one. */
export function shownSawing(
  { basis, yields, routes: { mix } }: Pick<Estimate, "basis" | "yields" | "routes">,
  routes: readonly RouteCells[],
  { marksOf, drawings, all, extras }: Showing,
): z.output<typeof SawingSchema> {
  const milling = routes.filter(({ plan }) => plan.sawing);
  const best = mix.plan.sawing ? mix : milling[0];
  const plans = milling.map((route) => {
    const { key, sawing } = route.plan;
    const whole = all || route === best;
    const plan = shownSawPlan({
      ...{ basis, key, drawings: drawings && whole, extras, marks: marksOf(route) },
      sawing: sawing as PlannedLogs,
      yields: yields.get(key) as YieldCells,
    });
    // Written all the same: what is sawn takes its marks before what is bought.
    return { route: routeKey(route), ...plan, logs: whole ? plan.logs : [] };
  });
  return { logs: shownLogs(basis), plans };
}
