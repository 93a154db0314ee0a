/** The work of an estimate for a terminal: hours by stage, and the timeline of the best route. */

import type { RouteCells } from "../../estimate/compare/route.js";
import { workOf } from "../../estimate/compare/work.js";
import type { CalendarStage } from "../../estimate/effort/calendar.js";
import { dateAfter } from "../../estimate/effort/dates.js";
import type { Estimate } from "../../estimate/estimate.js";
import { fixed } from "../../estimate/quantity/decimal.js";
import { inUnit, type Quantity } from "../../estimate/quantity/quantity.js";
import { capital } from "../../estimate/quantity/words.js";
import type { Cell } from "../../estimate/sheet/expression.js";
import { bare, columns, hours, wrap } from "./terminal-lines.js";

/** Routes that differ, each once. */
export function routesOf({
  routes: { buy, mill, hired, mix },
}: Estimate): { readonly heading: string; readonly route: RouteCells }[] {
  const all = [
    { heading: "all bought", route: buy },
    ...(mill ? [{ heading: "all milled", route: mill }] : []),
    ...(hired ? [{ heading: "hired sawyer", route: hired }] : []),
    ...([buy, mill, hired].includes(mix)
      ? []
      : [{ heading: mix.plan.hired ? "best mix, hired" : "best mix", route: mix }]),
  ];
  return all.map((one) => (one.route === mix ? { ...one, heading: `${one.heading} *` } : one));
}

/** Person-hours by stage, in the order of the work; what takes none on any route is left out. */
export function stagesTable(estimate: Estimate): string[] {
  const routes = routesOf(estimate);
  const widths = [42, 14, 14, 14, 15];
  const inOrder = routes.toSorted((a, b) => b.route.stages.length - a.route.stages.length);
  const names = new Map(
    inOrder.flatMap(({ route }) => route.stages.map((cell) => [stageName(route, cell), cell.label] as const)),
  );
  const own = [...names].flatMap(([name, label]) => {
    const cells = routes.map(({ route }) => route.stages.find((cell) => stageName(route, cell) === name));
    return cells.every(isNothing) ? [] : [columns([capital(label), ...cells.map(cellHours)], widths)];
  });
  const common = [...estimate.takeoffs.stages, ...estimate.common.ownHours]
    .filter((cell) => !isNothing(cell))
    .map((cell) => columns([capital(cell.label), ...routes.map(() => hours(cell))], widths));
  return [
    columns(["PERSON-HOURS, by stage", ...routes.map(({ heading }) => heading)], widths),
    ...own,
    "  on either route:",
    ...common,
    columns(["All", ...routes.map(({ route }) => hours(route.hours))], widths),
  ];
}

const stageName = (route: RouteCells, cell: Cell): string => cell.name.slice(route.plan.key.length);
const isNothing = (cell: Cell | undefined): boolean => !cell || cell.value.isZero();
const cellHours = (cell: Cell | undefined): string => (cell && !isNothing(cell) ? hours(cell) : "–");

/** When each stage of the best route begins and ends: by days from the start, or by dates where the start has one. */
export function timeline({ basis, common, routes: { mix }, takeoffs }: Estimate): string[] {
  const { stages, drying, totalDays, crewDays, aloneDays } = workOf(basis, common, takeoffs.weights, mix).calendar;
  const start = basis.request.labor?.startDate;
  const when = (of: Quantity): string => (start ? dateAfter(start, of.value) : inUnit(of, "day").ceil().toFixed());
  const widths = [42, 8, 14, 14, 12, 10];
  const { hoursPerDay, hoursPerWeek } = basis.labor;
  const bar = (one: CalendarStage): string =>
    columns(
      [
        `${capital(one.label)}${one.whileDrying ? ", while it dries" : ""}`,
        one.people.value.toFixed(),
        fixed(one.crewHours.value, 1),
        fixed(one.aloneDays.value, 1),
        when(one.startDay),
        when(one.endDay),
      ],
      widths,
    );
  const days = (of: Quantity): string => inUnit(of, "day").ceil().toFixed();
  const [on, at] = start ? ["on ", ""] : ["on day ", "day "];
  const stack = drying
    ? ` The last board is stacked ${on}${when(drying.startDay)} and dry ${on}${when(drying.likelyDay)} (${at}${when(drying.soonestDay)} at best, ${at}${when(drying.latestDay)} at worst).`
    : "";
  const sum = `At ${bare(hoursPerWeek)} hours a week, ${bare(hoursPerDay)} a day, all is done ${on}${when(totalDays)}: ${days(crewDays)} working days with the crew, ${days(aloneDays)} alone.${stack} Stages of sawing go by turns, bolt by bolt; what overlaps has hands enough.`;
  const head = [
    "TIMELINE",
    "people",
    "hours, crew",
    "days, alone",
    start ? "from" : "from day",
    start ? "to" : "to day",
  ];
  return [columns(head, widths), ...stages.map(bar), ...wrap(`  ${sum}`, 2)];
}

const BY = { machine: "by machine", hand: "by hand", nobody: "not dressed" } as const;

/** Which machine dresses each group on the best route, and why. */
export function machines({ basis, common, routes: { mix }, takeoffs }: Estimate): string[] {
  const { dressing } = workOf(basis, common, takeoffs.weights, mix);
  const labels = new Map(basis.cutList.groups.map(({ name, label }) => [name, label]));
  const rows = dressing.flatMap(({ group, by, because }) =>
    wrap(`  - ${labels.get(group)}: ${BY[by]}; ${because.join("; ")}.`, 4),
  );
  return ["DRESSING, by group", ...rows];
}
