/** The decision, the hours by stage and the shopping list for a terminal of 100 columns. */

import { rankedByHour } from "../../estimate/compare/group-savings.js";
import type { RouteCells } from "../../estimate/compare/route.js";
import type { Estimate } from "../../estimate/estimate.js";
import { pieceMarks } from "../../estimate/pieces/cut-list.js";
import type { ShoppingLine } from "../../estimate/purchase/line.js";
import { LOOSE } from "../../estimate/purchase/pack-lines.js";
import { productOf } from "../../estimate/purchase/product.js";
import {
  type MeasureSystem,
  marked,
  markedSection,
  moneyText,
  placesInFull,
  pretty,
} from "../../estimate/quantity/text.js";
import { capital, lowered } from "../../estimate/quantity/words.js";
import { aside, asideIn } from "../../estimate/sheet/aside.js";
import type { Cell } from "../../estimate/sheet/expression.js";
import type { CoveringTakeoff } from "../../estimate/takeoff/covering.js";
import { extras } from "./terminal-extras.js";
import { bare, columns, hours, money, wrap } from "./terminal-lines.js";
import { mixesTable } from "./terminal-mixes.js";
import { sticksDiagram } from "./terminal-sticks.js";
import { countedTable, heavyLifts, machines, routesOf, stagesTable, timeline } from "./terminal-work.js";

/** Below it, in person-hours, pay for an hour is the pay of a minute and says nothing. Assumption. */
const LEAST_HOURS = "0.25";

/** First column, then one a route: four at most. */
const ROUTE_WIDTHS = [34, 16, 16, 16, 16];

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
    mixesTable(estimate),
    stagesTable(estimate),
    countedTable(estimate),
    timeline(estimate),
    machines(estimate),
    heavyLifts(estimate),
    logsTable(estimate),
    extras(estimate),
    roof(estimate),
    shopping(estimate),
    sticksDiagram(estimate),
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

/** Money of a route; where lines have no price it is a floor, and nothing at all is no floor. */
function known(route: RouteCells, cell: Cell): string {
  if (route.unpriced === 0) return money(cell);
  return aside(route.cash).isZero() ? "not known" : `over ${money(cell)}`;
}

function routesTable(estimate: Estimate): string[] {
  const routes = routesOf(estimate);
  const row = (label: string, cell: (route: RouteCells) => string) =>
    columns([label, ...routes.map(({ route }) => cell(route))], ROUTE_WIDTHS);
  const { labor } = estimate.basis;
  return [
    columns(["MILL OR BUY (* the verdict)", ...routes.map(({ heading }) => heading)], ROUTE_WIDTHS),
    row("Cash", (route) => known(route, route.cash)),
    row("Person-hours", (route) => hours(route.hours)),
    row("Hours with the crew", (route) => hours(route.elapsed)),
    row(`Cash + hours at ${money(labor.valueOfHour)} an hour`, (route) => known(route, route.total)),
    row("Lines without a price", (route) => String(route.unpriced)),
  ];
}

function groupsTable({ basis, decision, routes, verdict }: Estimate): string[] {
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
        saving && asideIn(saving.extraHours, "person-h").gte(LEAST_HOURS) ? money(saving.payPerHour) : "",
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
    "  saves, hours: with that one group bought in the place of milled, its cuts left out and the lumber order planned anew, the verdict's mix would cost so much more and take so much less; of a group that it buys, the same of all milled. No figure: no plan saws any. An hour: of the hours before they are rounded. What groups share (opening cuts, logs, deliveries) stands in the last line.";
  const ranked = (route: RouteCells | undefined) =>
    rankedByHour(decision.groups, route)
      .map(({ label }) => lowered(label))
      .join(", ");
  const counted = decision.shared?.route;
  const [own, others] = [ranked(counted), counted === routes.mill ? "" : ranked(routes.mill)];
  return [
    ...[head, ...rows, ...shared],
    ...(decision.groups.length > 0 ? wrap(note, 2) : []),
    ...(own ? wrap(`  best paid for an hour first: ${own}.`, 2) : []),
    ...(others ? wrap(`  of those bought, milled with everything else: ${others}.`, 2) : []),
  ];
}

/** One sentence a group, the parts of a run that are told alike together. */
function why({ verdict: { groups } }: Estimate): string[] {
  const alike = new Map<string, string[]>();
  for (const { label, why } of groups) alike.set(why, [...(alike.get(why) ?? []), label]);
  return ["WHY, group by group", ...[...alike].flatMap(([why, labels]) => wrap(`  ${labels.join(", ")}: ${why}`, 4))];
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
    `RAFTERS  edge ${size(rafter.edgeLength)}, stock ${size(rafter.stockLength)}, plumb cut ${bare(rafter.slopeAngle)}° off square, birdsmouth ${size(rafter.seat)} level and ${size(rafter.notchPlumb)} plumb, height above plate ${size(rafter.heightAbovePlate)}; one degree off opens ${size(rafter.gapAtOneDegree)}.`,
  ];
  if (covering) {
    const allowed = covering.slope.allowed ? "" : "NOT ALLOWED at this slope: ";
    lines.push(
      `ROOF  ${allowed}${bare(covering.area)} ${pretty(covering.area.display)} edge to edge, ${laidAs(covering, size)}, ${bare(covering.weight)} ${covering.weight.display.symbol}. ${covering.slope.reason}`,
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
  const { system } = estimate.basis.request;
  const lines = [...estimate.common.lines, ...mix.lines];
  const widths = [47, 39, 13];
  const departments = DEPARTMENT_ORDER.flatMap((department) => {
    const own = lines.filter((line) => line.department === department);
    return own.length === 0
      ? []
      : [
          `  ${department}`,
          ...own.map((line) =>
            columns(
              [`    ${line.label}`, amountWords(line, system), line.amount ? money(line.amount) : "no price"],
              widths,
            ),
          ),
        ];
  });
  const taxes = mix.taxes.map((tax) => columns([`  ${capital(tax.label)}`, "", money(tax)], widths));
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
        known(mix, mix.cash),
      ],
      widths,
    ),
  ];
}

/** Packs, else the quantity in its unit, with what it is paid for and the price of that. */
function amountWords(line: ShoppingLine, system: MeasureSystem): string {
  const { packs, quantity, each, leftOver, spares } = line;
  const bought = packs?.filter(({ count }) => !count.value.isZero()) ?? [];
  if (bought.length > 0) {
    const taken = bought.map(({ label, count }) =>
      label === LOOSE ? `${count.value.toFixed()} loose` : `${count.value.toFixed()} × ${label}`,
    );
    const over = leftOver && !aside(leftOver).isZero() ? `, left over ${withUnit(leftOver)}` : "";
    return `${taken.join(" + ")}${over}`;
  }
  const words = withUnit(quantity);
  const counted = each ? `${words} × ${marked({ value: aside(each), unit: each.unit }, system)}` : words;
  const spare = spares && !aside(spares).isZero() ? `, ${bare(spares)} spare` : "";
  return `${priced(line, counted)}${spare}`;
}

/** `7 at $5.28`, `2, 0.0338 m³ at €760.00 per m³`: what multiplied gives the amount. */
function priced(line: ShoppingLine, counted: string): string {
  const product = productOf(line);
  if (!product) return counted;
  const { measure, price } = product;
  const [currency = "", per] = pretty(price.unit).split("/");
  const money = moneyText(price.value, currency, placesInFull(price.value, currency));
  const own = `${measure.value.toFixed()} ${pretty(measure.unit)}`.trim();
  const of = measure.unit.symbol === line.quantity.display.symbol ? own : `${counted}, ${own}`;
  return `${of} at ${money}${per ? ` per ${per}` : ""}`;
}

const withUnit = (cell: Cell): string => bare(cell) + (cell.display.symbol ? ` ${cell.display.symbol}` : "");

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
