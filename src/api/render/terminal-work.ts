/** The work of an estimate for a terminal: hours by stage, and the timeline of the best route. */

import type { RouteCells } from "../../estimate/compare/route.js";
import { workOf } from "../../estimate/compare/work.js";
import type { CalendarStage } from "../../estimate/effort/calendar.js";
import { dateAfter } from "../../estimate/effort/dates.js";
import type { Lift } from "../../estimate/effort/lifts.js";
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

const PARTS = { green: ", green and bought", dried: ", dried" } as const;

/** When each stage of the best route begins and ends: by days from the start, or by dates where the start has one. */
export function timeline({ basis, common, routes: { mix }, takeoffs }: Estimate): string[] {
  const { stages, drying, totalDays, crewDays, aloneDays } = workOf(basis, common, takeoffs.weights, mix).calendar;
  const start = basis.request.labor?.startDate;
  const when = (of: Quantity): string => (start ? dateAfter(start, of.value) : inUnit(of, "day").ceil().toFixed());
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
        when(one.startDay),
        when(one.endDay),
      ],
      widths,
    );
  const days = (of: Quantity): string => inUnit(of, "day").ceil().toFixed();
  const [on, at] = start ? ["on ", ""] : ["on day ", "day "];
  const weeks = mix.drying ? `, after ${bare(mix.drying.likely)} weeks` : "";
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
    ...wrap(`  ${overlaps(stages)}`, 2),
  ];
}

/** Which stages may go on at once, by their numbers, each pair once. */
function overlaps(bars: readonly CalendarStage[]): string {
  const pairs = bars.flatMap(({ stage, alongside }, i) => {
    const later = bars.flatMap((other, k) =>
      k > i && (other.stage === stage || alongside.includes(other.stage)) ? [k + 1] : [],
    );
    return later.length > 0 ? [`${i + 1} beside ${runs(later)}`] : [];
  });
  return pairs.length > 0
    ? `Stages that may overlap where hands are free: ${pairs.join("; ")}.`
    : "No two stages may overlap.";
}

/** `3–5, 9`. @param numbers - Rising. */
function runs(numbers: readonly number[]): string {
  const found: [from: number, to: number][] = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
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
