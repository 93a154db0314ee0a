/**
 * What milling one group adds to the others of a route: leave it out of the same sawing plan, and the cuts that served it
 * alone fall away; buy it, and it pays its share of its offer's stock lengths in the all-bought route.
 *
 * Groups of the best mix are counted in its plan. For those that it buys, the all-milled plan says what milling them would be.
 */
import { BLADES } from "../../catalog/blades.js";
import type { LumberOffer } from "../../catalog/offers/lumber.js";
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
import { type CutCells, dirtyLogs, layWork } from "../salvage/cut-cells.js";
import { exclusiveWork } from "../salvage/exclusive-work.js";
import { aside } from "../sheet/aside.js";
import { type Cell, minus, number, type Operand, over, plus, sum, sumOr, times, when } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { milledPieces, type RouteCells } from "./route.js";
import { hasPrice } from "./unpriced.js";

/** Cash is without rounding: shares of lines, not lines. */
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
 * Lays one line for each group that some route saws and that has a price to be bought at.
 * @param routes - That mill; each group is counted in the first of them that saws any of it.
 */
export function layGroupSavings(basis: Basis, routes: readonly RouteCells[], buy: RouteCells): GroupSaving[] {
  const terms = { dirty: dirtyLogs(basis.logs), feeding: basis.feeding };
  const works = routes.flatMap((route) => {
    const { sawing } = route.plan;
    return sawing ? [{ route, sawing, work: exclusiveWork(sawing.problem, sawing.plan, terms) }] : [];
  });
  return basis.groups.flatMap((one) => {
    if (!one.millable || !hasPrice(basis, one)) return [];
    const first = works.find(({ work }) => (work.get(one.group.name)?.pieces ?? 0) > 0);
    const own = first?.work.get(one.group.name);
    if (!first || !own) return [];
    const on = basisOf(basis, first.route.plan);
    const { sawing, route } = first;
    const cuts = layWork(on, `decision.group.${one.group.name}`, own, {
      gridMm: sawing.problem.gridMm,
      proof: sawing.proof,
    });
    return [layGroupSaving(on, one, cuts, { route, buy })];
  });
}

/** Groups by what milling each brings for an hour, the best first; what saves money at no extra hours comes before all. */
export function rankedByHour(groups: readonly GroupSaving[]): readonly GroupSaving[] {
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
  { route, buy }: { readonly route: RouteCells; readonly buy: RouteCells },
): GroupSaving {
  const { sheet, assumed, mill: saw } = basis;
  const { name, label } = one.group;
  const line = `decision.group.${name}`;
  sheet.title(line, label);
  const sharpenings = sheet.lay(`${line}.sharpenings`, sharpeningsOf(cuts, saw, assumed), {
    label: "sharpenings that it takes",
  });
  const pieces = milledPieces(basis, route.plan, one) ?? number("0");
  const formulas = groupMilling(basis, one, cuts, { sharpenings, pieces });
  const pace = assumed.cell("pace");
  const sawingHours = times(sum(Object.values(formulas.stages)), pace);
  const finishing = finishingHours(basis, one, pieces);
  const share = buyingShare(basis, one, buy, pieces);
  const extraHours = sheet.lay(
    `${line}.extraHours`,
    minus(
      plus(sawingHours, finishing),
      times(share.sticks, plus(assumed.cell("buy.sort"), assumed.cell("buy.unload")), pace),
      cuttingToLength([{ pieces, turn: one.turn }], assumed),
      ...(one.ripDown ? [times(pieces, one.ripDown.each)] : []),
    ),
    {
      label: "extra hours",
      display: "person-h",
    },
  );
  const used = usedUp(basis, cuts, formulas);
  const cost = sheet.lay(`${line}.buyCost`, withTax(basis, share.cost), {
    label: "bought, its share of the stock lengths",
  });
  const cashSaved = sheet.lay(`${line}.cashSaved`, minus(cost, sumOr(used, basis.pricing.currency)), {
    label: "cash saved",
  });
  const payPerHour = layPay(sheet, line, cashSaved, extraHours);
  return { name, label, route, cashSaved, extraHours, payPerHour };
}

/** Its own cuts, loads and stickers; loads and stickers are not rounded up, for groups share them. */
function groupMilling(
  { sheet, assumed, mill }: Basis,
  { group, millable }: GroupBasis,
  cuts: CutCells,
  { sharpenings, pieces }: { readonly sharpenings: Cell; readonly pieces: Operand },
): MillingFormulas {
  const carrying = layYardCarrying(sheet, assumed, mill);
  const { width, length } = millable?.rough ?? group;
  const stickered = group.rules.seasoning === "dried" ? times(pieces, width, length) : number("0 m2");
  const amounts = {
    cutting: cuttingOf(cuts, mill),
    sharpenings,
    loads: over(cuts.pieceWeight, carrying.load),
    stickers: stickersOf(stickered, assumed),
  };
  return millingFormulas(cuts, amounts, { mill, assumed, carrying });
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

/** What is used up at one's own mill, or the hired sawyer's charge, of what has a price. */
function usedUp(basis: Basis, cuts: CutCells, { fuel, blades, elapsed }: MillingFormulas): Operand[] {
  const { sheet, pricing, sawyer, mill, assumed } = basis;
  const hour = times(elapsed, assumed.cell("pace"));
  const amounts: readonly (readonly [string, Operand | undefined])[] = sawyer
    ? [sawyer.charge === "hour" ? ["milling-per-hour", hour] : ["milling-per-board-foot", cuts.pieceVolume]]
    : [
        ["fuel", fuel],
        ["bar-oil", mill.barOil && times(fuel, mill.barOil)],
        [BLADES[mill.blade].item, blades],
      ];
  return amounts.flatMap(([item, amount]) => {
    const price = sheet.find(`price.${item}`);
    return price && amount ? [times(amount, price, pricing.level)] : [];
  });
}

/** What the pieces that are milled would cost, by length, of the lines that buy their offer when everything is bought. */
function buyingShare(
  basis: Basis,
  { group, substitution }: GroupBasis,
  buy: RouteCells,
  pieces: Operand,
): { readonly cost: Operand; readonly sticks: Operand } {
  const nothing = { cost: number(`0 ${basis.pricing.currency}`), sticks: number("0") };
  if (!("offer" in substitution)) return nothing;
  const lines = buy.lines.filter((line) => line.offer === substitution.offer.name);
  const priced = lines.flatMap(({ amount }) => amount ?? []);
  if (priced.length === 0) return nothing;
  const all = sum(sharing(basis, substitution.offer).map((other) => other.group.totalLength));
  const share = over(times(pieces, group.length), all);
  return { cost: times(sum(priced), share), sticks: times(sum(lines.map(({ quantity }) => quantity)), share) };
}

const sharing = (basis: Basis, offer: LumberOffer): readonly GroupBasis[] =>
  basis.groups.filter(({ substitution }) => "offer" in substitution && substitution.offer === offer);

function withTax(basis: Basis, cost: Operand): Operand {
  const rates = basis.catalog.taxes.flatMap((tax, i) =>
    tax.appliesTo.includes("lumber") ? (basis.sheet.find(`tax.${i + 1}.rate`) ?? []) : [],
  );
  return rates.length === 0 ? cost : times(cost, plus(number("1"), ...rates));
}

/** Cash for each extra hour. A comparison, not a branch in code: the sheet stays live, and no hours divide nothing. */
export function layPay(sheet: Sheet, key: string, cashSaved: Cell, extraHours: Cell): Cell {
  const each = over(cashSaved, extraHours);
  const none = number(`0 ${each.unit.symbol}`);
  return sheet.lay(`${key}.payPerHour`, when(extraHours, "above", number("0 person-h"), each, none), {
    label: "cash saved an extra hour; zero where there are none",
  });
}
