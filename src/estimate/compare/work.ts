/** What the hours of a route say beside their sum: when, by which machine, and what is heavy. For showing; no cell hangs on it. */
import type { Basis } from "../basis.js";
import type { Calendar } from "../effort/calendar.js";
import { type DressingChoice, dressingChoice } from "../effort/dressing-choice.js";
import { type Lift, type Load, liftsOf, logLoads, pieceLoads, slabLoads } from "../effort/lifts.js";
import type { WeightTakeoff } from "../takeoff/weight.js";
import type { CommonCells, RouteCells } from "./route.js";
import { scheduleOf } from "./schedule.js";

/** The work of one route. */
export interface WorkReport {
  readonly calendar: Calendar;
  /** How each group is dressed on this route, and from how many faces it is crosscut. */
  readonly dressing: readonly DressingChoice[];
  /** Logs that are sawn, their slabs, and one piece of each group. */
  readonly loads: readonly Load[];
  /** Those of them that are over one person's load, the heaviest first. */
  readonly lifts: readonly Lift[];
}

/** Reads a route's work off its cells and plan. */
export function workOf(basis: Basis, common: CommonCells, weights: WeightTakeoff, route: RouteCells): WorkReport {
  const loads = [...sawnLoads(basis, route), ...pieceLoads(weights.lines)];
  return {
    calendar: scheduleOf(basis, common, route),
    dressing: dressingOf(basis, route),
    loads,
    lifts: liftsOf(loads, weights.load),
  };
}

function sawnLoads({ logs, woods }: Basis, { plan: { sawing } }: RouteCells): Load[] {
  if (!sawing) return [];
  const sawn = new Set(sawing.measures.logs.filter(({ boltsSawn }) => boltsSawn > 0).map(({ log }) => log));
  const used = logs.filter(({ name }) => sawn.has(name));
  return [...logLoads(used, woods), ...slabLoads(sawing.problem, sawing.plan, woods)];
}

function dressingOf({ groups, request, assumed }: Basis, { plan }: RouteCells): DressingChoice[] {
  const shop = { planer: request.shop?.planer, assumed, system: request.system };
  return groups.map(({ group, raw, soldRough, ripDown }) => {
    const comesDressed = !plan.sawn.has(group.name) && !soldRough;
    return dressingChoice({ group, raw, comesDressed, ripDown }, shop);
  });
}
