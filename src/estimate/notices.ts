/** Notices: how the estimate was made, what was taken, swapped or left out, and where the request may say otherwise. */

import { permittedDeviation } from "../catalog/sections.js";
import { lasts, woodName } from "../catalog/species.js";
import type { Basis } from "./basis.js";
import { named } from "./cautions.js";
import type { ComparedRoutes } from "./compare/decision.js";
import type { CommonCells } from "./compare/route.js";
import { defaultsInWords } from "./default-notices.js";
import { dryingNotices } from "./drying-notices.js";
import { pointer } from "./faults.js";
import type { Notice } from "./notice.js";
import { isPinned } from "./piece-price.js";
import { purchaseNotices } from "./purchase-notices.js";
import { decimal } from "./quantity/decimal.js";
import { exactly, markedSmall, shown } from "./quantity/text.js";
import { capital, listed, lowered } from "./quantity/words.js";
import { missInWords } from "./salvage/miss-words.js";
import { aside } from "./sheet/aside.js";
import type { Cell } from "./sheet/expression.js";
import { structureNotices } from "./structure-notices.js";
import type { Takeoffs } from "./takeoffs.js";

/** What was taken where the request is silent. */
export function defaultNotices(basis: Basis): Notice[] {
  return defaultsInWords(basis).map((one): Notice => ({ code: "default", ...one }));
}

/** Groups that the logs may not serve, and why; without logs nobody asks, but of those that are to be milled. */
export function notMilledNotices({ groups, logs }: Basis): Notice[] {
  const alike = new Map<string, { readonly labels: string[]; readonly at: string }>();
  for (const { group, millable, notMilled = "" } of groups) {
    if (millable || (logs.length === 0 && group.rules.source !== "mill")) continue;
    const entry = alike.get(notMilled) ?? { labels: [], at: group.at };
    alike.set(notMilled, entry);
    entry.labels.push(entry.labels.length === 0 ? group.label : lowered(group.label));
  }
  return [...alike].map(([why, { labels, at }]): Notice => {
    const of = labels.length > 1 && labels.length === groups.length ? "Everything" : labels.join(", ");
    return { code: "not-milled", text: `${capital(of)}: not milled, ${why}.`, at };
  });
}

/** A mill that takes more people than the crew has: its hours count them all, and the days take it that they come. */
function millCrewNotices({ mill, labor, sheet, request }: Basis, { mix, mill: milled }: ComparedRoutes): Notice[] {
  const route = mix.plan.sawing ? mix : milled;
  if (!route?.milling || route.plan.hired || request.shop?.mill === "none") return [];
  const more = aside(mill.crew).minus(aside(labor.crew));
  if (more.lte(0)) return [];
  const who = more.eq(1) ? "one more person" : `${more.toFixed()} more people`;
  const takes = `The mill takes ${aside(mill.crew).toFixed()} people and the crew has ${aside(labor.crew).toFixed()}`;
  const text = `${takes}: the days count on ${who} for the ${sheet.shown(route.milling.millHours)} that it runs. Where fewer run yours, override the cell ${mill.crew.name}.`;
  return [{ code: "mill-crew", text, at: "/labor/crew" }];
}

/** In what bought pieces differ from those wanted; groups that are bought as one thing and differ alike share a notice. */
function substitutionNotices({ groups }: Basis): Notice[] {
  const alike = new Map<string, { readonly labels: string[]; readonly at: string; readonly rest: string }>();
  for (const { group, substitution } of groups) {
    if (!("offer" in substitution) || substitution.differences.length === 0) continue;
    const rest = `bought as ${substitution.offer.label}: ${substitution.differences.join("; ")}.`;
    const entry = alike.get(rest) ?? { labels: [], at: group.at, rest };
    alike.set(rest, entry);
    entry.labels.push(entry.labels.length === 0 ? group.label : lowered(group.label));
  }
  return [...alike.values()].map(
    ({ labels, at, rest }): Notice => ({ code: "substitution", text: `${labels.join(", ")}, ${rest}`, at }),
  );
}

/** How far metric lumber that is bought may be off its size: joints are set out from the piece, not from the list. */
function toleranceNotices({ request }: Basis, { mix }: ComparedRoutes): Notice[] {
  if (request.system !== "metric") return [];
  const bought = mix.plan.bought.flatMap(({ substitution, count }) => (count > 0 ? [substitution] : []));
  const classes = (["T1", "T2"] as const).flatMap((tolerance) => {
    const sides = bought
      .filter(({ offer }) => (offer.surface === "rough") === (tolerance === "T1"))
      .flatMap(({ offer: { actual } }) => [actual.thickness, actual.width]);
    const ranges = sides.map((side) => {
      const { under, over } = permittedDeviation(side, tolerance);
      return `${shown(under)} under to ${shown(over)} over`;
    });
    const said = [...new Set(ranges)].sort().join(", on larger sides ");
    return said === "" ? [] : [`${tolerance === "T1" ? "as sawn" : "planed"} by ${said}`];
  });
  if (classes.length === 0) return [];
  const text = `At 20 % moisture bought lumber may be off its size, ${classes.join("; ")} (EN 336, tolerance classes 1 and 2): set out seats, notches and hangers from the piece in hand.`;
  return [{ code: "tolerance", text }];
}

/** Posts, and what hangs in hangers, that the best mix buys in another size than their hardware is for: of one of the two nobody knows the price. */
function hardwareNotices({ groups }: Basis, { fasteners }: Takeoffs, { mix }: ComparedRoutes): Notice[] {
  const unlike = new Set(
    fasteners?.lines.flatMap(({ ifBought, fitted, groups: held }) => (ifBought && !fitted ? held : [])),
  );
  return groups.flatMap(({ group, substitution }): Notice[] => {
    if (!unlike.has(group.name) || !("offer" in substitution)) return [];
    const count = mix.plan.bought.find((one) => one.substitution.group.name === group.name)?.count ?? 0;
    const size = substitution.differences.find((one) => one.includes("measures"));
    if (count === 0 || !size) return [];
    const text = `${group.label}: ${count} ${count === 1 ? "is" : "are"} bought in another size than laid out (${size}). The post bases and hangers listed fit them as laid out on every way, for of those of one of the two sizes nobody knows the price: add it to the catalog's fasteners, or order for each what fits it.`;
    return [{ code: "bought-size", text, at: group.at }];
  });
}

/** Posts that the verdict mills out of wood that rots, where rain reaches them. */
function decayNotices({ groups, logs, request: { structure } }: Basis, { mix }: ComparedRoutes): Notice[] {
  const speciesOf = new Map(logs.map((log) => [log.name, log.species]));
  const woodsOf = (group: string): string[] => {
    const sawn = mix.plan.sawing?.plan.logs.filter(({ pieces }) => pieces.some((piece) => piece.group === group)) ?? [];
    return [...new Set(sawn.flatMap(({ log }) => speciesOf.get(log) ?? []))];
  };
  return groups.flatMap(({ group: { name, role, rules, label, at } }): Notice[] => {
    const around = rules.exposure ?? structure.exposure ?? "outdoors";
    if (role !== "post" || !mix.plan.sawn.has(name) || around === "dry" || around === "sheltered") return [];
    const rot = woodsOf(name).filter((wood) => !lasts(wood));
    if (rot.length === 0) return [];
    const text = `${capital(label)}: milled out of ${listed(rot.map(woodName))}, whose heartwood resists decay little or not at all (sapwood never does). Out of doors keep their feet on bases clear of the ground and their end grain covered; else give a "species" that lasts, or buy them treated.`;
    return [{ code: "decay", text, at }];
  });
}

/** Where rows of boards are counted twice: as laid out, and under `Bought` as they are sold. */
const BOARD_ROWS: Readonly<Record<string, RegExp>> = {
  "deck-boards": /^roof\.(?:far\.)?deckRowsBought$/,
  "floor-boards": /^floor\.rowsBought$/,
  "wall-boards": /^walls\.([\w-]+)\.(?:boardsAcross|courses)Bought$/,
};

/** Boards that logs might have given, counted at their finished width, and bought narrower: how many rows that leaves short. */
function narrowBoardNotices({ sheet, groups, request }: Basis, { mix }: ComparedRoutes): Notice[] {
  return Object.entries(BOARD_ROWS).flatMap(([base, rows]): Notice[] => {
    const width = sheet.find(`sections.${base}.width`);
    const sold = sheet.find(`sections.${base}.boughtWidth`);
    const at = groups.find(({ group }) => group.width === width)?.group.at;
    const isBought = mix.plan.bought.some(
      ({ substitution, count }) => substitution.group.width.name === width?.name && count > 0,
    );
    if (!width || !sold || !at || !isBought) return [];
    const short = sheet.cells.flatMap((cell) => {
      const found = rows.exec(cell.name);
      const laid = found && sheet.find(cell.name.replace(/Bought$/, ""));
      if (!laid || aside(laid).gte(aside(cell))) return [];
      const side = found[1];
      return [`${sheet.shown(cell)} ${laid.label}${side ? `, ${side} side,` : ""} in place of ${sheet.shown(laid)}`];
    });
    if (short.length === 0) return [];
    const wide = (cell: Cell): string => markedSmall({ value: aside(cell), unit: cell.unit }, request.system);
    const text = `${capital(base.replace("-", " "))} are counted ${wide(width)} wide, and those bought measure ${wide(sold)}: of these alone it takes ${short.join("; ")}. Order the rest, too; with "source": "buy" for them they are counted as they are sold.`;
    return [{ code: "bought-size", text, at }];
  });
}

/** Defaults taken, substitutions, what is not milled and why, what has no price. */
export function noticesOf(basis: Basis, takeoffs: Takeoffs, routes: ComparedRoutes, common: CommonCells): Notice[] {
  const lines = [...common.lines, ...routes.mix.lines, ...routes.buy.lines];
  const unpriced = new Map(
    lines.flatMap(({ add, amount, label }) =>
      amount ? [] : [[`${label}: ${add ?? ""}`, `${label} has no price. ${add ?? ""}`.trim()]],
    ),
  );
  return [
    ...[...unpriced.values()].map((text): Notice => ({ code: "unpriced", text })),
    ...notMilledNotices(basis),
    ...millCrewNotices(basis, routes),
    ...slimLogs(basis),
    ...shortOf(basis, routes),
    ...substitutionNotices(basis),
    ...purchaseNotices(basis, routes.mix, common),
    ...narrowBoardNotices(basis, routes),
    ...dryingNotices(basis, takeoffs, routes),
    ...structureNotices(basis, takeoffs),
    ...idleAssumptions(basis),
    ...hardwareNotices(basis, takeoffs, routes),
    ...decayNotices(basis, routes),
    ...toleranceNotices(basis, routes),
    ...defaultNotices(basis),
  ];
}

/** Assumptions and timed jobs of the request that no cell of the estimate was worked out from. */
function idleAssumptions({ assumed }: Basis): Notice[] {
  const why = "given, but nothing in this estimate asks for it.";
  return assumed.unused().map(({ label, at }): Notice => ({ code: "unused", text: `${capital(label)}: ${why}`, at }));
}

/** Thinner logs are not sawn: posts and firewood. Assumption. */
const SLIM = exactly("100 mm").value;

/** Logs so thin that their unit was likely mistaken; those of one row of the request once. */
function slimLogs({ sheet, logs, request }: Basis): Notice[] {
  return (request.logs ?? []).flatMap((row, i): Notice[] => {
    const first = row.count === undefined ? row.name : `${row.name}-1`;
    const size = logs.find(({ name }) => name === first)?.smallDiameter;
    if (!size || aside(size).gte(SLIM)) return [];
    const text = `Log ${row.name} is ${sheet.shown(size)} at its small end, bark taken off: few mills saw so thin a log. See that its unit is right.`;
    return [{ code: "slim-log", text, at: pointer("/logs", i) }];
  });
}

/** Which pieces that the verdict mills no log gives, the nearest log and what it lacks; of all milled where it mills none. */
function shortOf(basis: Basis, { mix, mill }: ComparedRoutes): Notice[] {
  const sawing = mix.plan.sawing ?? mill?.plan.sawing;
  if (!sawing) return [];
  // Where milling everything lacks none of a group, the mix leaves some out because it pays.
  const pinned = new Set(basis.groups.filter(isPinned).map(({ group }) => group.name));
  const chosen = (name: string) =>
    !pinned.has(name) && mill?.plan.sawing !== undefined && (mill.plan.sawing.plan.buy[name] ?? 0) === 0;
  return sawing.problem.groups.flatMap((group): Notice[] => {
    const short = sawing.plan.buy[group.name] ?? 0;
    if (short === 0) return [];
    const needed = basis.groups.find((one) => one.group.name === group.name)?.group.count;
    const spares = decimal(group.count).minus(needed ? aside(needed) : group.count);
    const wanted = `${group.count} wanted${spares.gt(0) ? `, ${spares.toFixed()} of them spare` : ""}`;
    const some = `${capital(named(basis, group.name))}: the logs give ${group.count - short} of ${wanted}.`;
    const text = chosen(group.name)
      ? `${some} With everything milled the logs give all, but their wood saves more as other pieces.`
      : `${some} ${missInWords(sawing.problem, group)}`;
    return [{ code: "short", text }];
  });
}
