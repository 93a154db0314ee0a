/** The work of an estimate for a terminal: hours by stage, and the timeline of the best route. */

import type { RouteCells } from "../../estimate/compare/route.js";
import { workOf } from "../../estimate/compare/work.js";
import type { CalendarStage } from "../../estimate/effort/calendar.js";
import { dateAfter } from "../../estimate/effort/dates.js";
import type { Lift } from "../../estimate/effort/lifts.js";
import type { Estimate } from "../../estimate/estimate.js";
import { Decimal, fixed } from "../../estimate/quantity/decimal.js";
import { inUnit, type Quantity } from "../../estimate/quantity/quantity.js";
import { capital, listed, lowered } from "../../estimate/quantity/words.js";
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
    "  on every way:",
    ...common,
    columns(["All", ...routes.map(({ route }) => hours(route.hours))], widths),
  ];
}

const stageName = (route: RouteCells, cell: Cell): string => cell.name.slice(route.plan.key.length);
const isNothing = (cell: Cell | undefined): boolean => !cell || cell.value.isZero();
const cellHours = (cell: Cell | undefined): string => (cell && !isNothing(cell) ? hours(cell) : "–");

const PARTS = { green: ", green and bought", dried: ", dried" } as const;

/** When each stage of the best route begins and ends: by days from the start, or by dates where the start has one. */
export function timeline({ basis, common, routes: { mix }, takeoffs }: Estimate): string[] {
  const { calendar, waitsFor } = workOf(basis, common, takeoffs.weights, mix);
  const { stages, drying, totalDays, crewDays, aloneDays } = calendar;
  const start = basis.request.labor?.startDate;
  const when = (of: Quantity): string => (start ? dateAfter(start, of.value) : inUnit(of, "day").ceil().toFixed());
  // Work that begins after four days begins on the fifth.
  const begins = (of: Quantity): string =>
    start ? dateAfter(start, of.value) : inUnit(of, "day").floor().plus(1).toFixed();
  const fromTo = ({ startDay, endDay }: CalendarStage): [string, string] => {
    const [from, to] = [begins(startDay), when(endDay)];
    return [from, from === to ? "same day" : to];
  };
  const widths = [36, 7, 8, 8, 9, 8, 12, 12];
  const { hoursPerDay, hoursPerWeek } = basis.labor;
  const bar = (one: CalendarStage, i: number): string =>
    columns(
      [
        `${String(i + 1).padStart(2)} ${capital(one.label)}${one.part ? PARTS[one.part] : ""}${one.whileDrying ? " *" : ""}`,
        one.people.value.toFixed(),
        fixed(one.personHours.value, 1),
        fixed(one.crewHours.value, 1),
        fixed(one.aloneDays.value, 1),
        fixed(one.crewDays.value, 1),
        ...fromTo(one),
      ],
      widths,
    );
  const days = (of: Quantity): string => inUnit(of, "day").ceil().toFixed();
  const [on, at] = start ? ["on ", ""] : ["on day ", "day "];
  const weeks = mix.drying ? `, after ${fixed(inUnit(mix.drying.likely, "week"), 0)} weeks` : "";
  const stack = drying
    ? ` The last board is stacked ${on}${when(drying.startDay)} and dry ${on}${when(drying.likelyDay)}${weeks} (${at}${when(drying.soonestDay)} at best, ${at}${when(drying.latestDay)} at worst); * goes on while it dries.`
    : "";
  const sum = `At ${bare(hoursPerWeek)} hours a week, ${bare(hoursPerDay)} a day, all is done ${on}${when(totalDays)}: ${days(crewDays)} working days with the crew, ${days(aloneDays)} alone.${stack}`;
  const head = ["TIMELINE", "people", "hours, alone", "hours, crew", "days, alone", "days, crew"];
  const dates = start ? ["from", "to"] : ["from day", "to day"];
  return [
    columns([...head, ...dates], widths),
    ...stages.map(bar),
    ...wrap(`  ${sum}`, 2),
    ...(waitsFor ? wrap(`  ${waiting(waitsFor.groups, basis, `${on}${when(waitsFor.totalDays)}`)}`, 2) : []),
    ...wrap(`  ${spans(stages)}`, 2),
  ];
}

/** What the calendar waits for, and when all would be done without it. */
function waiting(names: readonly string[], { cutList }: Estimate["basis"], done: string): string {
  const labels = cutList.groups.filter(({ name }) => names.includes(name)).map(({ label }) => lowered(label));
  return `It waits for ${listed(labels)} alone: bought, or used green (seasoning in the group's rules), all would be done ${done}.`;
}

/** Which stages overlap, by their numbers: each run of them in which one begins before those ahead of it end. */
function spans(bars: readonly CalendarStage[]): string {
  const runs: { from: number; to: number; end: Decimal }[] = [];
  for (const [i, { startDay, endDay }] of bars.entries()) {
    const last = runs.at(-1);
    if (last && startDay.value.lt(last.end)) {
      last.to = i + 1;
      last.end = Decimal.max(last.end, endDay.value);
    } else runs.push({ from: i + 1, to: i + 1, end: endDay.value });
  }
  const several = runs.filter(({ from, to }) => to > from).map(({ from, to }) => `${from} to ${to}`);
  return several.length > 0 ? `Stages ${listed(several)} overlap.` : "No two stages overlap.";
}

/** Engine hours, sharpenings, loads and trips, beside the stages that they belong to. */
export function countedTable(estimate: Estimate): string[] {
  const { basis, common, takeoffs } = estimate;
  const routes = routesOf(estimate);
  const widths = [42, 14, 14, 14, 15];
  const counted = routes.map(({ route }) => workOf(basis, common, takeoffs.weights, route).counted);
  const inOrder = counted.toSorted((a, b) => b.length - a.length).flat();
  const labels = [...new Set(inOrder.map(({ amount }) => amount.label))];
  const shown = (cell: Cell | undefined): string =>
    !cell ? "–" : cell.unit.dimension === "" ? fixed(cell.value, 0) : `${hours(cell)} h`;
  const rows = labels.map((label) =>
    columns(
      [capital(label), ...counted.map((of) => shown(of.find(({ amount }) => amount.label === label)?.amount))],
      widths,
    ),
  );
  return [columns(["HOW MUCH OF IT", ...routes.map(({ heading }) => heading)], widths), ...rows];
}

/** By a key, in the order in which each key comes up. */
function grouped<T>(all: readonly T[], keyOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

/** What is more than one person's load on the best route: logs and slabs together, pieces by their group. */
export function heavyLifts({ basis, common, routes: { mix }, takeoffs }: Estimate): string[] {
  const { lifts } = workOf(basis, common, takeoffs.weights, mix);
  if (lifts.length === 0) return [];
  const labels = new Map(basis.cutList.groups.map(({ name, label }) => [name, label]));
  const weight = (of: Quantity) => `${fixed(inUnit(of, basis.units.mass), 0)} ${basis.units.mass}`;
  const by = ({ people, aid }: Lift) => (people === undefined ? aid : `${people} people`);
  const some = (kind: "log" | "slab", words: string): string[] => {
    const alike = grouped(
      lifts.filter((lift) => lift.kind === kind),
      by,
    );
    return [...alike].map(([means, same]) => {
      const [heaviest, lightest] = [same[0] as Lift, same.at(-1) as Lift];
      const range = same.length > 1 ? `${weight(lightest.green)} to ` : "";
      return `${same.length} ${words}${same.length > 1 ? "s" : ""}, ${range}${weight(heaviest.green)} green: ${means}`;
    });
  };
  const pieces = lifts
    .filter(({ kind }) => kind === "piece")
    .map((lift) => `${labels.get(lift.name)}, ${weight(lift.green)} green, ${weight(lift.dry)} dry: ${by(lift)}`);
  return [
    `HEAVY LIFTS, over ${weight(quantityOf(takeoffs.weights.load))}`,
    ...[...some("log", "log"), ...some("slab", "slab"), ...pieces].map((line) => `  - ${line}`),
  ];
}

const quantityOf = (cell: Cell): Quantity => ({ value: cell.value, unit: cell.unit });

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
