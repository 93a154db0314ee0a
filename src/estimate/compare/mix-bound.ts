/**
 * A bound under what every mix of milling and buying costs, piece by piece, and the plan that comes with it.
 *
 * A relaxation that one sawing plan answers: every piece is sawn or bought. What all mixes have alike is counted in full.
 * A bought piece counts what it adds at the least to any order of sticks and their spares, as the cheapest of equal offers (`boughtWorth`), its tax, its
 * handling and its cutting; a sawn one its dressing, sanding and stacking; either its joints in its own wood, the hardware made for its size, and its finish, by the volume of the cheapest can;
 * the cuts count their hours, fuel and edge, in the wood that saws
 * quickest and from the log that is nearest. What is left out only adds: bundles, hire, packs, turning, carrying,
 * slabs, whole loads. So the bound of that sawing plan, on its family of plans, holds for every mix that mills all of what the
 * user pins to the mill; for every mix where the plan found lacks logs for that.
 */
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
import { type Basis, basisOf } from "../basis.js";
import { isPinned, pinnedPrice, roughPrice } from "../piece-price.js";
import { taxRatesOn } from "../purchase/line.js";
import { Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import type { Learnt } from "../salvage/optimiser/learnt.js";
import type { SawingPlan, SawingProblem } from "../salvage/sawing-problem.js";
import { inFloats, type MilledGroup, sawingProblem } from "../salvage/sawing-question.js";
import { aside } from "../sheet/aside.js";
import type { PlanProof } from "../sheet/expression.js";
import { textureOf } from "../takeoff/finish.js";
import { boughtWorth } from "./bought-worth.js";
import { bringsRoofing } from "./consumables.js";
import { isMill } from "./hire.js";
import {
  boughtHours,
  evaluator,
  finishCost,
  type Ground,
  jointsBought,
  jointsMilled,
  priceOf,
  readyLogs,
  sawnCost,
  sawnRates,
} from "./least-costs.js";
import type { CommonCells, RouteCells } from "./route.js";
import { boughtTextures } from "./route-finish.js";
import { leastForAll, leastHardware } from "./route-hardware.js";

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
  /** For plans of other groups from the same logs. */
  readonly learnt?: Learnt;
}

/** A planner of logs, at one's own mill or a hired sawyer's, that may prove what no plan undercuts. */
export type Prover = (
  problem: SawingProblem,
  hired: boolean,
) => {
  readonly plan: SawingPlan;
  readonly proof: PlanProof;
  readonly bound?: number;
  readonly learnt?: Learnt;
};

/** Half a minor unit a line is the most that rounding takes off; no route has so many lines of its own. */
const MOST_OWN_LINES = 100;
/** Share of the whole by which the floats of both optimisers may err. */
const FLOATS = decimal("0.000001");

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
  const wage = aside(basis.labor.valueOfHour);
  const { finish, joints, fitted } = common;
  const ground = { basis, wage, value: evaluator(basis), worth: boughtWorth(basis, wage), finish, joints, fitted };
  const bounds = milled.flatMap(
    (route) => boundOf({ ...ground, basis: basisOf(basis, route.plan) }, route, prove) ?? [],
  );
  if (bounds.length < milled.length) return undefined;
  const found = bounds.reduce((a, b) => (b.bound.lt(a.bound) ? b : a));
  const places = basis.pricing.minorDigits;
  const hardware = leastForAll(basis, fitted?.others ?? []);
  const shared = sharedCash(basis, common).plus(deliveryOf(ground, common)).plus(hardware);
  const whole = aside(common.hours).times(wage).plus(shared).plus(found.bound);
  const rounding = halfMinor(places).times(common.lines.length + MOST_OWN_LINES);
  const least = whole.minus(rounding).minus(whole.abs().times(FLOATS)).toDecimalPlaces(places, Decimal.ROUND_FLOOR);
  return { least, proof: found.proof, plans: bounds };
}

/** Half of the currency's minor unit. */
const halfMinor = (places: number): Decimal => decimal("0.5").dividedBy(decimal(10).pow(places));

/** Lines that every mix has, with their taxes, and the money lines of the user's own. */
function sharedCash({ pricing, catalog }: Basis, { lines, own }: CommonCells): Decimal {
  const amounts = lines.flatMap(({ department, amount }) =>
    amount
      ? [
          taxRatesOn(pricing, catalog.taxes, department)
            .reduce((sum, rate) => sum.plus(aside(rate)), ONE)
            .times(aside(amount)),
        ]
      : [],
  );
  return [...amounts, ...own.map(aside)].reduce((sum, amount) => sum.plus(amount), ZERO);
}

type WayBound = JointPlan & { readonly bound: Decimal };

/** What is not alike in all mixes, of one way to mill; a mix that mills nothing pays nothing for the mill. */
function boundOf(ground: Ground, milledAll: RouteCells, prove: Prover): WayBound | undefined {
  const { basis, wage, fitted } = ground;
  const hired = basis.sawyer !== undefined;
  let fixed = ZERO;
  let allBought = ZERO;
  const milled = basis.groups.flatMap((one): MilledGroup[] => {
    const { group, millable } = one;
    const count = aside(group.count);
    const coming = Decimal.min(...boughtTextures(one).map((texture) => finishCost(ground, one, texture)));
    const bought = wage
      .times(boughtHours(ground, one).plus(jointsBought(ground, one)))
      .plus(ground.worth.get(group.name) ?? ZERO)
      .plus(leastHardware(basis, one, "bought", fitted))
      .plus(coming);
    const sawn = millable
      ? sawnCost(ground, one, millable)
          .plus(wage.times(jointsMilled(ground, one)))
          .plus(leastHardware(basis, one, "milled", fitted))
          .plus(finishCost(ground, one, textureOf(group)))
      : bought;
    allBought = allBought.plus(count.times(bought));
    fixed = fixed.plus(count.times(sawn));
    if (!millable) return [];
    const spares = basis.request.options?.fallDown === "buy" ? undefined : millable.spares;
    const demand = spares ? count.plus(aside(spares)) : count;
    // Of a group that is short of a share of its rough pieces, that share of the pieces is bought.
    const more = demand.isZero() ? ZERO : bought.minus(sawn).times(count).dividedBy(demand);
    return [{ group, rough: millable.rough, spares, buy: { cash: more, hours: ZERO } }];
  });
  const ready = readyLogs(ground).map(inFloats);
  const rates = inFloats(sawnRates(ground));
  const proveFor = (groups: readonly MilledGroup[]): ReturnType<Prover> => {
    const asked = sawingProblem(basis.sawing, groups);
    const logs = asked.logs.map((log, i) => ({ ...log, ready: ready[i] as (typeof ready)[number] }));
    return prove({ ...asked, logs, rates }, hired);
  };
  const pins = new Map(
    basis.groups.filter(isPinned).map((one) => [one.group.name, pinnedPrice(roughPrice(basis, one))]),
  );
  const found = proveFor(milled.map((one) => atPin(one, pins.get(one.group.name))));
  const keeps = [...pins.keys()].every((name) => (found.plan.buy[name] ?? 0) === 0);
  // Where the logs lack some of what is pinned, the price that brings it out of them is none that anyone pays.
  const { bound } = keeps ? found : proveFor(milled);
  if (bound === undefined) return undefined;
  const milling = fixed.plus(decimal(bound)).plus(comingOf(ground, milledAll));
  const { plan, proof, learnt } = found;
  const least = keeps && pins.size > 0 ? milling : Decimal.min(milling, allBought);
  return { plan, proof, hired, bound: least, ...(learnt ? { learnt } : {}) };
}

/** With the price of what is pinned to the mill: in a bound on all mixes that keep to the pins it is never paid. */
function atPin(one: MilledGroup, price: Decimal | undefined): MilledGroup {
  return price ? { ...one, buy: { cash: price, hours: ZERO }, pinned: true } : one;
}

/**
 * What every mix that mills takes before the first cut: the sawyer's coming, and the mill and its saw for their shortest hire or the
 * share bought. Other machines a mix may do without.
 */
function comingOf(ground: Ground, milled: RouteCells): Decimal {
  const { basis, value } = ground;
  const { sheet, pricing, sawyer } = basis;
  const setUp = sawyer && priceOf(ground, "milling-set-up");
  const machines = milled.lines.flatMap(({ department, name, amount }) => {
    const item = name.split(".").at(-1) as EquipmentItem;
    if (department !== "equipment" || !amount || !isMill(item)) return [];
    const days = sheet.find(`${name}.days`);
    if (!days) return [aside(amount)];
    if (aside(days).isZero()) return [];
    const least = sheet.find(`price.${item}.minimumDays`);
    return [
      aside(amount)
        .times(least ? aside(least) : ONE)
        .dividedBy(aside(days)),
    ];
  });
  return machines.reduce((sum, cost) => sum.plus(cost), setUp ? value(setUp, pricing.currency) : ZERO);
}

/** The lorry that comes anyway: with the roofing, whichever way the lumber is had. */
function deliveryOf(ground: Ground, { lines }: CommonCells): Decimal {
  const { request, pricing } = ground.basis;
  const comes = bringsRoofing(lines) && request.shop?.lumber !== "fetched";
  const price = comes ? priceOf(ground, "delivery") : undefined;
  return price ? ground.value(price, pricing.currency) : ZERO;
}
