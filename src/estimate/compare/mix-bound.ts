/**
 * A bound under what every mix of milling and buying costs, piece by piece, and the plan that comes with it.
 *
 * A relaxation that one sawing plan answers: every piece is sawn or bought. What all mixes have alike is counted in full.
 * A bought piece counts what it adds at the least to any order of sticks (`pieceWorth`), its tax, its handling and its
 * cutting; a sawn one its dressing, sanding and stacking; the cuts count their hours, fuel and edge, in the wood that saws
 * quickest and from the log that is nearest. What is left out only adds: spare sticks, bundles, hire, packs, turning, carrying,
 * slabs, whole loads. So the bound of that sawing plan, on its family of plans, holds for every mix.
 */
import { type Basis, basisOf } from "../basis.js";
import { taxRatesOn } from "../purchase/line.js";
import { stockQuestions } from "../purchase/lumber.js";
import { pieceWorth } from "../purchase/stock/piece-worth.js";
import { Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import type { SawingPlan, SawingProblem } from "../salvage/sawing-problem.js";
import { type MilledGroup, sawingProblem } from "../salvage/sawing-question.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { PlanProof } from "../sheet/expression.js";
import { boughtHours, evaluator, type Ground, priceOf, sawnCost, sawnRates } from "./least-costs.js";
import type { CommonCells, RouteCells } from "./route.js";

/** What is proven of all mixes, and the plan found while proving it. */
export interface MixBound {
  /** No mix costs less: cash and hours at the value of an hour, down to the minor unit. */
  readonly least: Decimal;
  /** Of the plan: which plans the bound is on, and how far above it the plan is. */
  readonly proof: PlanProof;
  /** One for each way of milling. */
  readonly plans: readonly JointPlan[];
}

/** Best plan for pieces that may each be sawn or bought; whether a hired sawyer mills it. */
export interface JointPlan {
  readonly plan: SawingPlan;
  readonly proof: PlanProof;
  readonly hired: boolean;
}

/** A planner of logs that may prove what no plan undercuts. */
export type Prover = (problem: SawingProblem) => {
  readonly plan: SawingPlan;
  readonly proof: PlanProof;
  readonly bound?: number;
};

/** Counted work of the prices of one offer's pieces. Assumption, measured: it solves the relaxation of most orders. */
const WORTH_WORK = 80_000;
/** Half a minor unit a line is the most that rounding takes off; no route has so many lines of its own. */
const MOST_OWN_LINES = 100;
/** Share of the whole by which floats may err. */
const FLOATS = 1e-6;

/**
 * Bounds all mixes, those of a hired sawyer where one is asked for.
 * @param common - Laid on the same sheet as the basis.
 * @param milled - All milled, laid on it too: by oneself, and by the hired sawyer where one is asked for.
 * @returns undefined where the planner proves nothing.
 */
export function boundMixes(
  basis: Basis,
  common: CommonCells,
  milled: readonly RouteCells[],
  prove: Prover,
): MixBound | undefined {
  const wage = aside(basis.labor.valueOfHour).toNumber();
  const value = evaluator(basis);
  const ground = { basis, wage, value, worth: worthOf(basis, wage) };
  const bounds = milled.map((route) => boundOf({ ...ground, basis: basisOf(basis, route.plan) }, route, prove));
  const found = bounds.reduce((a, b) => (a && b && b.bound < a.bound ? b : a));
  if (!found || bounds.includes(undefined)) return undefined;
  const places = basis.pricing.minorDigits;
  const shared = sharedCash(basis, common) + deliveryOf(ground);
  const exact = aside(common.hours).toNumber() * wage + shared + found.bound;
  const rounding = ((common.lines.length + MOST_OWN_LINES) * 0.5) / 10 ** places;
  const least = decimal(exact - rounding - Math.abs(exact) * FLOATS).toDecimalPlaces(places, Decimal.ROUND_FLOOR);
  const plans = bounds.flatMap((one) => (one ? [{ plan: one.plan, proof: one.proof, hired: one.hired }] : []));
  return { least, proof: found.proof, plans };
}

/** Lines that every mix has, with their taxes, and the money lines of the user's own. */
function sharedCash({ pricing, catalog }: Basis, { lines, own }: CommonCells): number {
  const amounts = lines.flatMap(({ department, amount }) =>
    amount
      ? [
          taxRatesOn(pricing, catalog.taxes, department)
            .reduce((sum, rate) => sum.plus(aside(rate)), ONE)
            .times(aside(amount)),
        ]
      : [],
  );
  return [...amounts, ...own.map(aside)].reduce((sum, amount) => sum.plus(amount), ZERO).toNumber();
}

/** Lumber, tax and the handling of each stick, shared out over the pieces so that no order costs less than its pieces. */
function worthOf(basis: Basis, wage: number): ReadonlyMap<string, number> {
  const { groups, pricing, catalog, assumed, cutting } = basis;
  const minor = 10 ** cutting.minorDigits;
  const rates = taxRatesOn(pricing, catalog.taxes, "lumber").reduce((sum, rate) => sum + aside(rate).toNumber(), 1);
  const level = aside(pricing.level).toNumber() * rates;
  const hours = (name: string): number => asideIn(assumed.cell(name), "person-h").toNumber();
  const handling = wage * aside(assumed.cell("pace")).toNumber() * (hours("buy.sort") + hours("buy.unload")) * minor;
  const wanted = groups.flatMap(({ group, substitution }) =>
    "offer" in substitution ? [{ substitution, count: aside(group.count).toNumber() }] : [],
  );
  const shares = stockQuestions(cutting, wanted).flatMap(({ problem, priced }) => {
    const stocks = problem.stocks.map((stock) => ({
      ...stock,
      priceMinor: Math.floor((priced ? stock.priceMinor * level : 0) + handling),
    }));
    const worth = pieceWorth({ ...problem, stocks }, WORTH_WORK);
    return problem.pieces.map(({ name, length }) => [name, (worth.get(length) ?? 0) / minor] as const);
  });
  return new Map(shares);
}

type WayBound = JointPlan & { readonly bound: number };

/** What is not alike in all mixes, of one way to mill; a mix that mills nothing pays nothing for the mill. */
function boundOf(ground: Ground, milledAll: RouteCells, prove: Prover): WayBound | undefined {
  const { basis, wage } = ground;
  const hired = basis.sawyer !== undefined;
  let fixed = 0;
  let allBought = 0;
  const milled = basis.groups.flatMap((one): MilledGroup[] => {
    const { group, millable } = one;
    const count = aside(group.count).toNumber();
    const bought = (ground.worth.get(group.name) ?? 0) + wage * boughtHours(ground, one);
    const sawn = millable ? sawnCost(ground, one, millable) : bought;
    allBought += count * bought;
    fixed += count * sawn;
    if (!millable) return [];
    const spares = basis.request.options?.fallDown === "buy" ? undefined : millable.spares;
    const demand = count + (spares ? aside(spares).toNumber() : 0);
    // Of a group that is short of a share of its rough pieces, that share of the pieces is bought.
    const more = (bought - sawn) * (demand > 0 ? count / demand : 0);
    return [{ group, rough: millable.rough, spares, buy: { cash: more, hours: 0 } }];
  });
  const problem = { ...sawingProblem(basis.sawing, milled), rates: sawnRates(ground) };
  const { plan, proof, bound } = prove(problem);
  if (bound === undefined) return undefined;
  const milling = fixed + bound + comingOf(ground, milledAll);
  return { bound: Math.min(milling, allBought), proof, plan, hired };
}

/** What milling takes before the first cut: the sawyer's coming, machines for their shortest hire or the share bought. */
function comingOf(ground: Ground, milled: RouteCells): number {
  const { basis, value } = ground;
  const { sheet, pricing, sawyer } = basis;
  const setUp = sawyer && priceOf(ground, "milling-set-up");
  const machines = milled.lines.flatMap(({ department, name, amount }) => {
    if (department !== "equipment" || !amount) return [];
    const days = sheet.find(`${name}.days`);
    if (!days) return [aside(amount).toNumber()];
    const least = sheet.find(`price.${name.split(".").at(-1)}.minimumDays`);
    return [(aside(amount).toNumber() * (least ? aside(least).toNumber() : 1)) / aside(days).toNumber()];
  });
  return machines.reduce((sum, cost) => sum + cost, setUp ? value(setUp, pricing.currency) : 0);
}

/** The lorry that comes anyway: with the roofing, whichever way the lumber is had. */
function deliveryOf(ground: Ground): number {
  const { cutList, request, pricing } = ground.basis;
  const price = cutList.gable && request.shop?.lumber !== "fetched" ? priceOf(ground, "delivery") : undefined;
  return price ? ground.value(price, pricing.currency) : 0;
}
