/** What the hours of a route say beside their sum: when, by which machine, and what is heavy. For showing; no cell hangs on it. */
import type { Basis } from "../basis.js";
import type { Calendar } from "../effort/calendar.js";
import { machinesOf } from "../effort/dressing.js";
import { type DressingChoice, dressingChoice } from "../effort/dressing-choice.js";
import { type Lift, type Load, liftsOf, logLoads, pieceLoads, slabLoads } from "../effort/lifts.js";
import type { Quantity } from "../quantity/quantity.js";
import { aside } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { WeightTakeoff } from "../takeoff/weight.js";
import type { CommonCells, RouteCells } from "./route.js";
import { boughtTexture } from "./route-finish.js";
import { sawsOf } from "./sawn-by.js";
import { driedGroups, scheduleOf, scheduleWithoutDrying } from "./schedule.js";

/** The work of one route. */
export interface WorkReport {
  readonly calendar: Calendar;
  /** Groups that the calendar waits for until they are dry, and when all would be done were none of them to dry. */
  readonly waitsFor: { readonly groups: readonly string[]; readonly totalDays: Quantity } | undefined;
  /** What the stages come to beside their hours, in the order of the work; only what there is any of. */
  readonly counted: readonly Counted[];
  /** How each group is dressed on this route, and from how many faces it is crosscut. */
  readonly dressing: readonly DressingChoice[];
  /** Logs that are sawn, their slabs, and one piece of each group. */
  readonly loads: readonly Load[];
  /** Those of them that are over one person's load, the heaviest first. */
  readonly lifts: readonly Lift[];
}

/** Engine hours, sharpenings, loads or trips of one stage. */
export interface Counted {
  readonly stage: string;
  readonly amount: Cell;
}

/** Cells of a route that say how much of something its stages are, by the stage. */
const COUNTED: readonly (readonly [stage: string, cell: string])[] = [
  ["saw", "cuts.millCuts"],
  ["saw", "cutting"],
  ["sharpen", "sharpenings"],
  ["carry", "loads"],
  ["stack", "stickers"],
  ["fetch", "trips"],
];

/** Reads a route's work off its cells and plan. */
export function workOf(basis: Basis, common: CommonCells, weights: WeightTakeoff, route: RouteCells): WorkReport {
  const loads = [...sawnLoads(basis, route), ...pieceLoads(weights.lines)];
  return {
    calendar: scheduleOf(basis, common, route),
    waitsFor: waitsFor(basis, common, route),
    counted: countedOf(basis, route),
    dressing: dressingOf(basis, route),
    loads,
    lifts: liftsOf(loads, weights.load),
  };
}

function waitsFor(basis: Basis, common: CommonCells, route: RouteCells): WorkReport["waitsFor"] {
  const groups = driedGroups(basis, route).map(({ group }) => group.name);
  if (groups.length === 0) return undefined;
  return { groups, totalDays: scheduleWithoutDrying(basis, common, route).totalDays };
}

function countedOf({ sheet }: Basis, { plan: { key } }: RouteCells): Counted[] {
  const own = COUNTED.flatMap(([stage, name]) => {
    const amount = sheet.find(`${key}.${name}`);
    return amount ? [{ stage, amount }] : [];
  });
  const moved = sheet.find("common.loads");
  return [...own, ...(moved ? [{ stage: "move", amount: moved }] : [])].filter(({ amount }) => aside(amount).gt(0));
}

function sawnLoads({ logs, woods }: Basis, { plan: { sawing } }: RouteCells): Load[] {
  if (!sawing) return [];
  const sawn = new Set(sawing.measures.logs.filter(({ boltsSawn }) => boltsSawn > 0).map(({ log }) => log));
  const used = logs.filter(({ name }) => sawn.has(name));
  return [...logLoads(used, woods), ...slabLoads(sawing.problem, sawing.plan, woods)];
}

function dressingOf(basis: Basis, { plan }: RouteCells): DressingChoice[] {
  const { groups, request, assumed } = basis;
  const shop = { machines: machinesOf(request.shop), assumed, system: request.system };
  const saws = sawsOf(basis, plan);
  return groups.map((one) => {
    const { group, raw, soldRough, ripDown } = one;
    const bought = !plan.sawn.has(group.name);
    const comesDressed = bought && !soldRough;
    const comesSmooth = comesDressed && boughtTexture(one) === "smooth";
    return dressingChoice({ group, raw, comesDressed, comesSmooth, ripDown, sawn: saws.get(group.name) }, shop);
  });
}
