/** What the estimate comes to, in plain words with its reasons. It reads the sheet; nothing on the sheet depends on it. */

import { type Basis, mayBear } from "../basis.js";
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { about, lowered } from "../quantity/words.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { ComparedRoutes, Decision } from "./decision.js";
import { type GroupReason, groupReasons } from "./group-reasons.js";
import type { CommonCells, RouteCells } from "./route.js";
import { boughtUnpriced, forWantOfPrice } from "./unpriced.js";
import { changes } from "./verdict-changes.js";
import { doubt } from "./verdict-doubt.js";
import { isLong, slowestDried } from "./verdict-drying.js";
import { headline, uncompared } from "./verdict-headline.js";
import { type Judged, limits, proof } from "./verdict-limits.js";
import { pins } from "./verdict-pins.js";

/** First on every screen. */
export interface Verdict {
  /** What to mill and what to buy, in one sentence. */
  readonly headline: string;
  /** What that saves, for how many hours, against buying everything; whether the logs hold it; when it is dry; … */
  readonly reasons: readonly string[];
  /** What would turn it round: an hour worth more or less, dearer lumber, the building office. */
  readonly changes: readonly string[];
  /** What is least sure of all that it rests on. */
  readonly doubt: string;
  /** Before the first cut. */
  readonly first: string;
  /** Labels of the groups on each side. */
  readonly mill: readonly string[];
  readonly buy: readonly string[];
  /** Why each group is on its side. */
  readonly groups: readonly GroupReason[];
}

/** Weighs the routes. */
export function verdictOf(basis: Basis, common: CommonCells, routes: ComparedRoutes, decision: Judged): Verdict {
  const { mix, buy } = routes;
  const labels = (milled: boolean) =>
    basis.groups.filter(({ group }) => mix.plan.sawn.has(group.name) === milled).map(({ group }) => group.label);
  const [mill, bought] = [labels(true), labels(false)];
  const priceless = forWantOfPrice(basis).map(({ group }) => group.label);
  return {
    headline: headline(basis, mix.plan),
    reasons: [
      ...(priceless.length > 0 ? [uncompared(priceless)] : []),
      ...limits(basis, mix, decision),
      ...pins(basis, routes, decision),
      ...savings(basis, mix, buy, decision),
      ...hiredBeside(basis, routes),
      ...holding(basis, routes),
      ...atHand(mix),
      ...drying(basis, mix),
      ...proof(basis, decision),
    ],
    changes: changes(basis, routes, decision),
    doubt: unpriced(common, routes.mix) ?? doubt(basis, routes, decision),
    first: [...forbidden(decision), first(basis, mix)].join(" "),
    mill,
    buy: bought,
    groups: groupReasons(basis, routes, decision),
  };
}

const FIRST = {
  yes: "You say the building office takes ungraded lumber: get that in writing for each structural group before the first cut.",
  no: "The building office does not take ungraded lumber, so structural groups are bought; a grading visit could change that.",
  unknown:
    "Before the first cut, ask the building office whether it accepts ungraded, locally sawn lumber for structural pieces.",
} as const;

/** A roof that the code does not allow comes before all else. */
function forbidden({ slope }: Judged): string[] {
  if (!slope || slope.allowed) return [];
  return [
    `The code does not allow this covering at this slope. ${slope.reason} Take another covering or a steeper roof.`,
  ];
}

/** What to do before anything is cut or ordered: the building office has a say where load-bearing pieces are sawn. */
function first(basis: Basis, { plan }: RouteCells): string {
  const ungraded = basis.request.site?.ungradedAccepted ?? "unknown";
  if (ungraded === "no") return FIRST.no;
  if (plan.sawn.size === 0) return "Before you order, hold the shopping list against your plan, piece by piece.";
  const structural = mayBear(basis).some(({ group }) => plan.sawn.has(group.name));
  return structural
    ? FIRST[ungraded]
    : "Before the first cut, measure the logs again where they lie: the plan rests on them.";
}

/** Saves so much cash for so many extra hours; where there are no extra hours, that alone decides. */
function savings(basis: Basis, mix: RouteCells, buy: RouteCells, { mix: against }: Decision): string[] {
  const { labor, request } = basis;
  const given = request.labor?.valueOfHour !== undefined || labor.valueOfHour.kind === "override";
  const money = moneyIn(basis);
  const cost = (route: RouteCells): string => {
    if (aside(route.cash).isZero() && route.unpriced > 0) return "costs nobody knows what";
    return route.unpriced === 0 ? `costs ${money(route.cash)}` : `costs more than ${money(route.cash)}`;
  };
  if (!against) return [`Buying everything ${cost(buy)} and takes ${hours(buy.hours)}.`];
  const { cashSaved, extraHours, payPerHour } = against;
  const costs = `It ${cost(mix)} and takes ${hours(mix.hours)}; buying everything ${cost(buy)} and takes ${hours(buy.hours)}.`;
  if (boughtUnpriced(basis, buy).some(({ group }) => mix.plan.sawn.has(group.name))) return [costs];
  const bound = boundOf(mix, buy);
  const saves = aside(cashSaved).gte(0)
    ? `saves ${bound.saving}${money(cashSaved)}`
    : `costs ${bound.costing}${money(cashSaved).replace("−", "")} more`;
  if (asideIn(extraHours, "person-h").lt(TOLD)) return [costs, `Milling ${saves} and takes no more hours.`];
  const more = `${aboutHours(extraHours)} more`;
  // Where milling costs more and takes longer, nothing is left to pay an hour with.
  if (aside(cashSaved).lt(0)) return [costs, `Milling ${saves} and takes ${more}.`];
  const whose = given ? "that an hour is worth to you" : "taken for an hour, for you gave no value";
  const pay = `${bound.saving}${money(payPerHour)} for each of them, against the ${money(labor.valueOfHour)} ${whose}`;
  return [costs, `Milling ${saves} for ${more}: ${pay}.`];
}

/** What has no price on one side alone makes a difference an end of what it may be. */
function boundOf(mix: RouteCells, buy: RouteCells): Record<"saving" | "costing", string> {
  const [more, less] = [mix, buy].map(({ lines }) => lines.some(({ amount }) => !amount));
  if (more === less) return { saving: "", costing: "" };
  return more ? { saving: "at most ", costing: "at least " } : { saving: "at least ", costing: "at most " };
}

/** Fewer person-hours than that are told as none. */
const TOLD = "0.05";

/** Whole hours, tenths below ten. */
const placesOf = (hours: Decimal): number => (hours.abs().lt(10) ? 1 : 0);

function hours(cell: Cell): string {
  const value = asideIn(cell, "person-h");
  return `${value.toDecimalPlaces(placesOf(value)).toFixed()} person-hours`;
}

/** The same where what each of them brings stands beside it, reckoned before they were rounded. */
function aboutHours(cell: Cell): string {
  const value = asideIn(cell, "person-h");
  return `${about(value, placesOf(value))} person-hours`;
}

/** Money as people write it; of a rate the money alone. */
const moneyIn =
  ({ pricing }: Basis) =>
  (cell: Cell): string =>
    moneyText(aside(cell), pricing.currency);

/** The hired sawyer's way, where the best mix is another. */
function hiredBeside(basis: Basis, { hired, mix }: ComparedRoutes): string[] {
  if (!hired || mix.plan.hired) return [];
  const dearer = moneyText(aside(hired.total).minus(aside(mix.total)), basis.pricing.currency);
  return [
    `A hired sawyer milling all that the logs serve would come to ${moneyIn(basis)(hired.cash)} and ${hours(hired.hours)}: ${dearer} more than this, your hours counted.`,
  ];
}

function holding(basis: Basis, { mill, mix }: ComparedRoutes): string[] {
  const plan = mix.plan.sawing ? mix.plan : mill?.plan;
  if (!plan?.sawing) return [];
  const sides = mix.plan.sawing ? plan.sawn : plan.milled;
  const groups = basis.groups.map(({ group }) => group).filter(({ name }) => sides.has(name));
  const wanted = groups.reduce((sum, { count }) => sum.plus(aside(count)), ZERO);
  const bought = [
    ...plan.bought.map(({ substitution, count }) => ({ group: substitution.group, count })),
    ...plan.unsold.map(({ group, count }) => ({ group: group.group, count })),
  ].filter(({ group }) => sides.has(group.name));
  const missing = bought.reduce((sum, { count }) => sum + count, 0);
  const given = wanted.minus(missing).toFixed();
  const whole = mix.plan.sawing
    ? `The logs give ${given} of the ${wanted.toFixed()} pieces of these groups, rejects made up for`
    : `If everything were milled that can be, the logs would give ${given} of ${wanted.toFixed()} pieces`;
  if (missing === 0) return [`${whole}.`];
  const rest = bought.map(({ group, count }) => `${lowered(group.label)} (${count})`);
  return [`${whole}; the rest is bought: ${rest.join(", ")}.`];
}

/** Boards that lie at hand and are cut: they cost nothing, and the cash rests on them. */
function atHand({ lines }: RouteCells): string[] {
  const used = lines.filter((line) => line.atHand);
  if (used.length === 0) return [];
  const all = used.reduce((sum, { quantity }) => sum.plus(aside(quantity)), ZERO);
  const each = used.map(({ label, quantity }) => `${label.replace(", at hand,", ",")} (${aside(quantity).toFixed()})`);
  const more = each.length > MOST_NAMED ? [`${each.length - MOST_NAMED} more lengths`] : [];
  const which = [...each.slice(0, MOST_NAMED), ...more].join("; ");
  return [`It cuts ${all.toFixed()} ${all.eq(1) ? "board" : "boards"} that you have, at no cost: ${which}.`];
}

/** How long the sawn pieces lie in the stack, in whole weeks, never promising the shortest. */
function drying(basis: Basis, mix: RouteCells): string[] {
  const { drying: time } = mix;
  if (!time) return [];
  const weeks = (cell: Cell): string => asideIn(cell, "week").ceil().toFixed();
  const [thickest] = slowestDried(basis, mix);
  const whose = thickest ? `pieces up to ${basis.sheet.shown(thickest.group.thickness)} thick` : "sawn pieces";
  const then = isLong(time) ? "none is dressed before that" : "saw and stack before the warm season";
  return [
    `In the stack ${whose} dry for about ${weeks(time.likely)} weeks (${weeks(time.soonest)} at best, ${weeks(time.latest)} at worst): ${then}.`,
  ];
}

/** Lines that are named before the rest of them are counted. */
const MOST_NAMED = 3;

/** Cash that leaves something out is doubtful before all else. */
function unpriced(common: CommonCells, { lines, unpriced: count }: RouteCells): string | undefined {
  if (count === 0) return undefined;
  const names = [...common.lines, ...lines].flatMap(({ amount, label }) => (amount ? [] : [label]));
  const more = names.length > MOST_NAMED ? [`${names.length - MOST_NAMED} more`] : [];
  const which = [...names.slice(0, MOST_NAMED), ...more].join("; ");
  return `${count} line${count === 1 ? " has" : "s have"} no price yet (${which}): the cash is too low by what they cost.`;
}
