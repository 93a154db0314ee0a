/**
 * What milling one group adds to the others of a route, by leaving it out: the cuts of the same sawing plan that served it alone fall
 * away, with the bolts and logs that hold nothing else, and the yard's lumber is planned anew with it.
 *
 * Groups of the best mix are counted in its plan. For those that it buys, the all-milled plan says what milling them would be.
 */
import { type Basis, basisOf } from "../basis.js";
import { cuttingToLength } from "../effort/buying.js";
import {
  cuttingOf,
  layYardCarrying,
  type MillingFormulas,
  millingFormulas,
  sharpeningsOf,
  stickersOf,
} from "../effort/milling.js";
import type { GroupBasis } from "../group-basis.js";
import { amountsOf, type ShoppingLine, withTax } from "../purchase/line.js";
import { type CutCells, dirtyLogs, layWork } from "../salvage/cut-cells.js";
import { exclusiveWork } from "../salvage/exclusive-work.js";
import { aside } from "../sheet/aside.js";
import {
  type Cell,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundMoney,
  roundUp,
  sum,
  sumOr,
  times,
  when,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { layLumber, type StockPlans } from "./lumber-lines.js";
import { milledPieces, type RouteCells, type RoutePlan } from "./route.js";
import { finishBeyondBought } from "./route-finish.js";
import { hardwareBeyondBought } from "./route-hardware.js";
import { type OwnWork, usedUp } from "./used-up.js";

/** A group that is bought in the place of milled, all else of a route as it is. */
export interface LeftOut {
  readonly group: string;
  readonly route: RoutePlan;
  /** How its offer's sticks are then bought and cut, what else the route buys of it included. */
  readonly stock: StockPlans["stock"];
}

/** What buying the group costs more than milling it, and what milling it takes more hours. Its money is rounded to the minor unit as a whole. */
export interface GroupSaving {
  readonly name: string;
  readonly label: string;
  /** The route in whose plan it is counted. */
  readonly route: RouteCells;
  /** What buying it would cost, less what milling it uses up. */
  readonly cashSaved: Cell;
  readonly extraHours: Cell;
  readonly payPerHour: Cell;
}

/**
 * Lays one line for each group that is left out of a route.
 * @param routes - That mill.
 */
export function layGroupSavings(basis: Basis, routes: readonly RouteCells[], plans: readonly LeftOut[]): GroupSaving[] {
  const terms = { dirty: dirtyLogs(basis.logs), feeding: basis.feeding };
  const works = new Map(
    routes.flatMap(({ plan: { key, sawing } }) =>
      sawing ? [[key, exclusiveWork(sawing.problem, sawing.plan, terms)] as const] : [],
    ),
  );
  return plans.flatMap((leftOut) => {
    const { group: name } = leftOut;
    const route = routes.find(({ plan }) => plan === leftOut.route);
    const one = basis.groups.find(({ group }) => group.name === name);
    const sawing = route?.plan.sawing;
    const own = works.get(leftOut.route.key)?.get(name);
    if (!route || !one || !sawing || !own) return [];
    const on = basisOf(basis, route.plan);
    const cuts = layWork(on, `decision.group.${name}`, own, { gridMm: sawing.problem.gridMm, proof: sawing.proof });
    return [layGroupSaving(on, one, cuts, { route, leftOut, logs: own.logs })];
  });
}

/**
 * Groups by what milling each brings for an hour, the best first; what saves money at no extra hours comes before all.
 * @param route - Those that are counted in its plan: savings in unlike plans are not compared.
 */
export function rankedByHour(all: readonly GroupSaving[], route: RouteCells | undefined): readonly GroupSaving[] {
  const groups = all.filter((one) => one.route === route);
  const free = ({ cashSaved, extraHours }: GroupSaving): boolean => aside(extraHours).lte(0) && aside(cashSaved).gt(0);
  return groups.toSorted((a, b) => {
    if (free(a) !== free(b)) return free(a) ? -1 : 1;
    return free(a) ? aside(b.cashSaved).cmp(aside(a.cashSaved)) : aside(b.payPerHour).cmp(aside(a.payPerHour));
  });
}

function layGroupSaving(
  basis: Basis,
  one: GroupBasis,
  cuts: CutCells,
  { route, leftOut, logs }: { readonly route: RouteCells; readonly leftOut: LeftOut; readonly logs: OwnWork["logs"] },
): GroupSaving {
  const { sheet, assumed, mill: saw } = basis;
  const { name, label } = one.group;
  const line = `decision.group.${name}`;
  sheet.title(line, label);
  const sharpenings = sheet.lay(`${line}.sharpenings`, sharpeningsOf(cuts, saw, assumed), {
    label: "sharpenings that it takes",
  });
  const pieces = milledPieces(basis, route.plan, one) ?? number("0");
  const formulas = groupMilling(basis, one, cuts, { sharpenings, pieces, route });
  const pace = assumed.cell("pace");
  const sawingHours = times(sum(Object.values(formulas.stages)), pace);
  const finishing = finishingHours(basis, one, pieces);
  const coats = finishBeyondBought(basis, one, pieces, route.finish);
  const joints = route.joints.get(name);
  const slower = joints && joints.milled !== joints.bought ? [minus(joints.milled, joints.bought)] : [];
  const share = boughtInstead(basis, line, route, leftOut);
  const extraHours = sheet.lay(
    `${line}.extraHours`,
    minus(
      plus(
        sawingHours,
        finishing,
        ...slower.map((hours) => over(times(hours, pieces), one.group.count)),
        ...(coats ? [coats.hours] : []),
      ),
      times(share.sticks, plus(assumed.cell("buy.sort"), assumed.cell("buy.unload")), pace),
      cuttingToLength([{ pieces, turn: one.sold.turn }], assumed),
      ...(one.ripDown ? [times(pieces, one.ripDown.each)] : []),
    ),
    {
      label: "extra hours",
      display: "person-h",
    },
  );
  const hardware = hardwareBeyondBought(basis, one, route);
  const used = usedUp(basis, route, { cuts, formulas, sharpenings, logs, ...shopWork(basis, one, pieces, finishing) });
  const cost = sheet.lay(`${line}.buyCost`, withTax(basis, "lumber", share.cost), {
    label: "what buying it adds to the lumber order",
  });
  const cashSaved = sheet.lay(
    `${line}.cashSaved`,
    roundMoney(
      minus(cost, sumOr([...used, ...hardware, ...(coats ? [coats.cash] : [])], basis.pricing.currency)),
      basis.pricing.minorDigits,
    ),
    {
      label: "cash saved",
    },
  );
  const payPerHour = layPay(sheet, line, cashSaved, extraHours);
  return { name, label, route, cashSaved, extraHours, payPerHour };
}

/** Its own cuts, the loads that would then be fewer, and its stickers, which are not rounded up. */
function groupMilling(
  { sheet, assumed, mill }: Basis,
  { group, millable }: GroupBasis,
  cuts: CutCells,
  { sharpenings, pieces, route }: { readonly sharpenings: Cell; readonly pieces: Operand; readonly route: RouteCells },
): MillingFormulas {
  const carrying = layYardCarrying(sheet, assumed, mill);
  const { width, length } = millable?.rough ?? group;
  const stickered = group.rules.seasoning === "dried" ? times(pieces, width, length) : number("0 m2");
  const amounts = {
    cutting: cuttingOf(cuts, mill),
    sharpenings,
    loads: fewerLoads(route, cuts, carrying.load),
    stickers: stickersOf(stickered, assumed),
  };
  const formulas = millingFormulas(cuts, amounts, { mill, assumed, carrying });
  // Wood of a log that holds others too would go to the slabs without it.
  const slabs = times(minus(cuts.logVolume, cuts.pieceVolume), assumed.cell("rate.slabs"));
  return { ...formulas, stages: { ...formulas.stages, slabs } };
}

function fewerLoads({ milling, cuts: all }: RouteCells, { pieceWeight }: CutCells, load: Operand): Operand {
  if (!milling || !all) return over(pieceWeight, load);
  return minus(milling.loads, roundUp(over(minus(all.pieceWeight, pieceWeight), load)));
}

/** Work in the shop beyond that which bought pieces take. */
function shopWork(
  { assumed }: Basis,
  { group, millable, soldRough, ripDown }: GroupBasis,
  pieces: Operand,
  finishing: Operand,
): Pick<OwnWork, "atMachines" | "sanded" | "planed"> {
  const atMachines = minus(finishing, ...(ripDown ? [times(pieces, ripDown.each)] : []));
  if (!millable || group.rules.surface === "rough")
    return { atMachines, sanded: number("0 m2"), planed: number("0 m2") };
  const smooth = times(over(group.surface, group.count), assumed.cell("sand.boughtShare"));
  const boughtSanded = soldRough ? soldRough.surfaceEach : smooth;
  const boughtPlaned = [soldRough, ripDown].flatMap((one) => (one ? [one.planedEach] : []));
  return {
    atMachines,
    sanded: times(pieces, minus(millable.dressing.surfaceEach, boughtSanded)),
    planed: times(pieces, minus(millable.dressing.planedEach, ...boughtPlaned)),
  };
}

/** Dressing and easing of its milled pieces, and the dressing and sanding that bought ones would not need. */
function finishingHours({ assumed }: Basis, one: GroupBasis, pieces: Operand): Operand {
  const { millable, group, soldRough } = one;
  if (!millable || group.rules.surface === "rough") return number("0 person-h");
  const milled = over(pieces, group.count);
  // What is bought rough is sanded, and its edges eased, like what is milled.
  if (soldRough) return times(pieces, millable.dressing.each, minus(number("1"), assumed.cell("dress.boughtShare")));
  const lighter = minus(number("1"), assumed.cell("sand.boughtShare"));
  const { sand, ease } = millable.sanding;
  return plus(times(pieces, millable.dressing.each), times(plus(times(sand, lighter), ease), milled));
}

/** What is bought where the group is left out, less what the route buys now: of the offers of which it would buy otherwise. */
function boughtInstead(
  basis: Basis,
  key: string,
  route: RouteCells,
  { stock }: LeftOut,
): { readonly cost: Operand; readonly sticks: Operand } {
  const offers = new Set(stock.map(({ question }) => question.offer.name));
  const now = route.lines.filter(({ offer }) => offer !== undefined && offers.has(offer));
  const instead = layLumber(basis, { key, stock, unsold: [] });
  const amounts = (lines: readonly ShoppingLine[]) => amountsOf(basis.pricing, lines);
  const sticks = (lines: readonly ShoppingLine[]) =>
    sumOr(
      lines.flatMap(({ atHand, quantity }) => (atHand ? [] : [quantity])),
      "",
    );
  return { cost: minus(amounts(instead), amounts(now)), sticks: minus(sticks(instead), sticks(now)) };
}

/** Cash for each extra hour. A comparison, not a branch in code: the sheet stays live, and no hours divide nothing. */
export function layPay(sheet: Sheet, key: string, cashSaved: Cell, extraHours: Cell): Cell {
  const each = over(cashSaved, extraHours);
  const none = number(`0 ${each.unit.symbol}`);
  return sheet.lay(`${key}.payPerHour`, when(extraHours, "above", number("0 person-h"), each, none), {
    label: "cash saved an extra hour; zero where there are none",
  });
}
