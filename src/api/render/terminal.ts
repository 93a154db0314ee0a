/** The decision, the hours by stage and the shopping list for a terminal of 100 columns. */

import type { RouteCells } from "../../estimate/compare/route.js";
import { workOf } from "../../estimate/compare/work.js";
import type { Estimate } from "../../estimate/estimate.js";
import { pieceMarks } from "../../estimate/pieces/cut-list.js";
import type { ShoppingLine } from "../../estimate/purchase/line.js";
import { fixed } from "../../estimate/quantity/decimal.js";
import { inUnit, type Quantity } from "../../estimate/quantity/quantity.js";
import { marked, markedSection, moneyText, shownValue } from "../../estimate/quantity/text.js";
import type { Cell } from "../../estimate/sheet/expression.js";
import type { CoveringTakeoff } from "../../estimate/takeoff/covering.js";

export const COLUMNS = 100;

/** First column, then one a route: four at most. */
const ROUTE_WIDTHS = [34, 16, 16, 16, 16];
const STAGE_WIDTHS = [42, 14, 14, 14, 15];

/** Renders an estimate as plain lines, none longer than `COLUMNS`. */
export function terminalPage(estimate: Estimate): string {
  const { catalog, request } = estimate.basis;
  const title = request.title ?? "Estimate";
  const parts = [
    [title.toUpperCase(), ...(catalog.note ? wrap(`Prices: ${catalog.name}. ${catalog.note}`, 2) : [])],
    verdict(estimate),
    routesTable(estimate),
    groupsTable(estimate),
    why(estimate),
    stagesTable(estimate),
    calendar(estimate),
    logsTable(estimate),
    roof(estimate),
    shopping(estimate),
    cautions(estimate),
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function verdict({ verdict: { headline, reasons, changes, doubt, first } }: Estimate): string[] {
  return [
    ...wrap(`VERDICT  ${headline}`, 9),
    ...reasons.flatMap((reason) => wrap(`  - ${reason}`, 4)),
    ...(changes.length > 0 ? ["  What would change it:"] : []),
    ...changes.flatMap((change) => wrap(`  - ${change}`, 4)),
    ...wrap(`  Biggest doubt: ${doubt}`, 4),
    ...wrap(`  First: ${first}`, 4),
  ];
}

/** Routes that differ, each once. */
function routesOf({
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

function routesTable(estimate: Estimate): string[] {
  const routes = routesOf(estimate);
  const row = (label: string, cell: (route: RouteCells) => string) =>
    columns([label, ...routes.map(({ route }) => cell(route))], ROUTE_WIDTHS);
  const { labor } = estimate.basis;
  return [
    columns(["MILL OR BUY (* the verdict)", ...routes.map(({ heading }) => heading)], ROUTE_WIDTHS),
    row("Cash", (route) => money(route.cash)),
    row("Person-hours", (route) => hours(route.hours)),
    row("Hours with the crew", (route) => hours(route.elapsed)),
    row(`Cash + hours at ${money(labor.valueOfHour)} an hour`, (route) => money(route.total)),
    row("Lines without a price", (route) => String(route.unpriced)),
  ];
}

function groupsTable({ basis, decision, verdict }: Estimate): string[] {
  const { system } = basis.request;
  const widths = [29, 4, 13, 14, 6, 13, 8, 13];
  const savings = new Map(decision.groups.map((saving) => [saving.name, saving]));
  const sides = new Map(verdict.groups.map(({ name, side }) => [name, side]));
  const marks = pieceMarks(basis.sheet, basis.cutList.groups);
  const rows = basis.groups.map(({ group }) => {
    const saving = savings.get(group.name);
    const length = marked({ value: group.length.value, unit: group.length.unit }, system);
    const section = markedSection(group.thickness, group.width, system);
    const [first, last] = [marks.get(group.name)?.[0], marks.get(group.name)?.at(-1)];
    const label = `${group.label} ${first === last ? first : `${first}–${last?.split("-")[1]}`}`;
    return columns(
      [
        label,
        group.count.value.toFixed(),
        section,
        length,
        sides.get(group.name) ?? "",
        saving ? money(saving.cashSaved) : "",
        saving ? hours(saving.extraHours) : "",
        saving?.extraHours.value.gt(0) ? rate(saving.payPerHour) : "",
      ],
      widths,
    );
  });
  const shared = decision.shared
    ? [
        columns(
          ["Shared by groups", "", "", "", "", money(decision.shared.cash), hours(decision.shared.hours), ""],
          widths,
        ),
      ]
    : [];
  const head = columns(["PIECES, by group", "n", "finished", "length", "", "saves", "hours", "an hour"], widths);
  const note =
    "  saves, hours: what milling that one group adds to the others that the verdict mills; of a group that it buys, what milling it would add if all were milled. No figure: no plan saws any. What groups share (opening cuts, logs, deliveries) stands in the last line.";
  return [head, ...rows, ...shared, ...(decision.groups.length > 0 ? wrap(note, 2) : [])];
}

/** One sentence a group, the parts of a run that are told alike together. */
function why({ verdict: { groups } }: Estimate): string[] {
  const alike = new Map<string, string[]>();
  for (const { label, why } of groups) alike.set(why, [...(alike.get(why) ?? []), label]);
  return ["WHY, group by group", ...[...alike].flatMap(([why, labels]) => wrap(`  ${labels.join(", ")}: ${why}`, 4))];
}

function stagesTable(estimate: Estimate): string[] {
  const routes = routesOf(estimate);
  const widths = STAGE_WIDTHS;
  const names = new Map(
    routes.flatMap(({ route }) => route.stages.map((cell) => [stageName(route, cell), cell.label] as const)),
  );
  const own = [...names].map(([name, label]) =>
    columns(
      [
        sentence(label),
        ...routes.map(({ route }) => cellHours(route.stages.find((cell) => stageName(route, cell) === name))),
      ],
      widths,
    ),
  );
  const common = [...estimate.takeoffs.stages, ...estimate.common.ownHours].map((cell) =>
    columns([sentence(cell.label), ...routes.map(() => hours(cell))], widths),
  );
  return [
    columns(["PERSON-HOURS, by stage", ...routes.map(({ heading }) => heading)], widths),
    ...own,
    "  on either route:",
    ...common,
    columns(["All", ...routes.map(({ route }) => hours(route.hours))], widths),
  ];
}

const stageName = (route: RouteCells, cell: Cell): string => cell.name.slice(route.plan.key.length);
const cellHours = (cell: Cell | undefined): string => (cell && !cell.value.isZero() ? hours(cell) : "–");

/** Weeks from the first log, as a plain line; never a date, for nobody knows yet when it begins. */
function calendar({ basis, common, takeoffs, routes: { mix } }: Estimate): string[] {
  const { stages, drying, totalDays, crewDays, aloneDays } = workOf(basis, common, takeoffs.weights, mix).calendar;
  const week = (of: Quantity): string => inUnit(of, "week").ceil().toFixed();
  const days = (of: Quantity): string => inUnit(of, "day").ceil().toFixed();
  const { hoursPerDay, hoursPerWeek } = basis.labor;
  const pace = `${bare(hoursPerWeek)} hours a week, ${bare(hoursPerDay)} a day`;
  const meanwhile = stages.filter(({ whileDrying }) => whileDrying).map(({ label }) => label);
  const stack = drying
    ? ` The last board is stacked in week ${week(drying.startDay)} and dry in week ${week(drying.likelyDay)} (${week(drying.soonestDay)} to ${week(drying.latestDay)}).`
    : "";
  const rest = meanwhile.length > 0 ? ` While it dries: ${meanwhile.join(", ")}.` : "";
  return wrap(
    `CALENDAR  At ${pace}, the last stage ends in week ${week(totalDays)}: ${days(crewDays)} working days with the crew, ${days(aloneDays)} alone.${stack}${rest}`,
    10,
  );
}

function logsTable({ basis, routes }: Estimate): string[] {
  const sawing = (routes.mix.plan.sawing ? routes.mix : routes.mill)?.plan.sawing;
  if (!sawing) return [];
  const widths = [18, 22, 10, 15, 14, 12, 8];
  const { system } = basis.request;
  const size = (cell: Cell) => marked({ value: cell.value, unit: cell.unit }, system);
  const rows = basis.logs.map((log) => {
    const own = sawing.measures.logs.find((one) => one.log === log.name);
    return columns(
      [
        log.name,
        log.species,
        size(log.length),
        size(log.smallDiameter),
        bare(system === "metric" ? log.scale.smalian : log.scale.international),
        String(own?.boltsSawn ?? 0),
        String(own?.pieces ?? 0),
      ],
      widths,
    );
  });
  const scale = system === "metric" ? "wood, m³" : "Int. 1/4, bf";
  return [columns(["LOGS", "species", "sound", "small end", scale, "bolts sawn", "pieces"], widths), ...rows];
}

function roof({ basis, takeoffs: { covering } }: Estimate): string[] {
  const rafter = basis.cutList.frame?.rafter;
  if (!rafter) return [];
  const { system } = basis.request;
  const size = (cell: Cell) => marked({ value: cell.value, unit: cell.unit }, system);
  const lines = [
    `RAFTERS  edge ${size(rafter.edgeLength)}, stock ${size(rafter.stockLength)}, plumb cut ${bare(rafter.slopeAngle)}° off square, birdsmouth seat ${size(rafter.seat)} × ${size(rafter.notchDepth)} deep, height above plate ${size(rafter.heightAbovePlate)}; one degree off opens ${size(rafter.gapAtOneDegree)}.`,
  ];
  if (covering) {
    const allowed = covering.slope.allowed ? "" : "NOT ALLOWED at this slope: ";
    lines.push(
      `ROOF  ${allowed}${bare(covering.area)} ${covering.area.display.symbol} edge to edge, ${laidAs(covering, size)}, ${bare(covering.weight)} ${covering.weight.display.symbol}. ${covering.slope.reason}`,
    );
  }
  return lines.flatMap((line) => wrap(line, 9));
}

/** In a few words: panels with their length, or courses with their exposure. */
function laidAs({ panels, courses, faces }: CoveringTakeoff, size: (cell: Cell) => string): string {
  if (panels) {
    const lengths = [...new Set(faces.flatMap(({ pieceLength }) => (pieceLength ? [size(pieceLength)] : [])))];
    return `${panels.panels.value.toFixed()} panels${lengths.length > 0 ? ` of ${lengths.join(" and ")}` : ", cut at the hips"}`;
  }
  if (courses) return `${faces[0]?.up.value.toFixed() ?? ""} courses of ${size(courses.exposure)} up a slope`;
  return `${faces[0]?.up.value.toFixed() ?? ""} up a slope`;
}

const DEPARTMENT_ORDER = [
  "lumber",
  "coverings",
  "fasteners",
  "finishes",
  "consumables",
  "equipment",
  "services",
] as const;

function shopping(estimate: Estimate): string[] {
  const { mix } = estimate.routes;
  const lines = [...estimate.common.lines, ...mix.lines];
  const widths = [58, 27, 14];
  const departments = DEPARTMENT_ORDER.flatMap((department) => {
    const own = lines.filter((line) => line.department === department);
    return own.length === 0
      ? []
      : [
          `  ${department}`,
          ...own.map((line) =>
            columns([`    ${line.label}`, amountWords(line), line.amount ? money(line.amount) : "no price"], widths),
          ),
        ];
  });
  const taxes = mix.taxes.map((tax) => columns([`  ${sentence(tax.label)}`, "", money(tax)], widths));
  const own = estimate.common.own.map((cell) => columns([`  ${cell.label}`, "", money(cell)], widths));
  const unpriced = lines.filter(({ amount }) => !amount).length;
  return [
    columns([`SHOPPING LIST, ${mix.plan.label.toLowerCase()}`, "buy", "amount"], widths),
    ...departments,
    ...own,
    ...taxes,
    columns(
      [
        unpriced > 0 ? `  Cash, ${unpriced} line${unpriced > 1 ? "s" : ""} without a price not counted` : "  Cash",
        "",
        money(mix.cash),
      ],
      widths,
    ),
  ];
}

/** Packs, else the quantity in its unit. */
function amountWords({ packs, quantity, each }: ShoppingLine): string {
  const bought = packs?.filter(({ count }) => !count.value.isZero()) ?? [];
  if (bought.length > 0)
    return bought
      .map(({ label, count }) =>
        label === "box of 1" ? `${count.value.toFixed()} loose` : `${count.value.toFixed()} × ${label}`,
      )
      .join(" + ");
  const words = bare(quantity) + (quantity.display.symbol ? ` ${quantity.display.symbol}` : "");
  return each ? `${words} × ${bare(each)} ${each.display.symbol}` : words;
}

function cautions({ cautions: list, notices }: Estimate): string[] {
  const taken = notices.filter(({ code }) => code === "default").length;
  const others = notices.filter(({ code }) => code !== "default");
  return [
    "CAUTIONS",
    ...list.flatMap(({ text }) => wrap(`  - ${text}`, 4)),
    "",
    "NOTICES",
    ...others.flatMap(({ text }) => wrap(`  - ${text}`, 4)),
    ...wrap(
      `  - ${taken} values were not given and were taken by default; the JSON answer lists each under "notices".`,
      4,
    ),
  ];
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Value in its display unit, without the unit. */
const bare = (cell: Cell): string => shownValue(inUnit(cell, cell.display), cell.display).split(" ")[0] as string;
const hours = (cell: Cell): string => fixed(inUnit(cell, cell.unit.dimension === "time1" ? "h" : "person-h"), 1);

function money(cell: Cell): string {
  const [currency = ""] = cell.display.symbol.split("/");
  return moneyText(cell.value, currency);
}

const rate = (cell: Cell): string => money(cell);

/** The first column to the left, the others to the right; what is too long goes on in the next line. */
function columns(texts: readonly string[], widths: readonly number[]): string {
  const lead = /^ */.exec(texts[0] ?? "")?.[0].length ?? 0;
  const cells = texts.map((text, i) => {
    const width = (widths[i] ?? 12) - 1;
    return i === 0 ? wrap(text, lead + 2, width) : wrap(text, 0, width);
  });
  const tall = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: tall }, (_, row) =>
    cells
      .map((lines, i) => {
        const [text, width] = [lines[row] ?? "", widths[i] ?? 12];
        return i === 0 ? text.padEnd(width) : text.padStart(width);
      })
      .join("")
      .trimEnd(),
  ).join("\n");
}

/** Breaks at spaces; the first line keeps its own indent, the others get `indent`. */
function wrap(text: string, indent: number, width = COLUMNS): string[] {
  const lead = /^ */.exec(text)?.[0] ?? "";
  const lines: string[] = [];
  let line = lead;
  for (const word of text.trim().split(" ")) {
    const joined = line.trim() === "" ? line + word : `${line} ${word}`;
    if (joined.length <= width || line.trim() === "") line = joined;
    else {
      lines.push(line);
      line = " ".repeat(indent) + word;
    }
  }
  return [...lines, line];
}
