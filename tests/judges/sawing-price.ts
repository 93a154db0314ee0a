/**
 * What a sawing plan costs, worked out again from its cuts in exact decimals and with no help from its maker.
 *
 * Lengths and areas are summed in grid steps and turned into feet at the end, so the division comes last.
 */
import { Decimal, decimal, ZERO } from "../../src/estimate/quantity/decimal.js";
import { across, isFlat, type Part, split, wholeLog } from "../../src/estimate/salvage/sawing-parts.js";
import type { LogPlan, SawCut, SawingPlan, SawingProblem, SawLog } from "../../src/estimate/salvage/sawing-problem.js";

/** Person-hours and money. */
export interface Outlay {
  readonly hours: Decimal;
  readonly cash: Decimal;
}

/** Outlay by the kind of work, and in all. */
export interface SawingPrice {
  /** Getting ready each log that is cut at all. */
  readonly logs: Outlay;
  /** Setting up each bolt that is sawn lengthwise. */
  readonly bolts: Outlay;
  readonly millCuts: Outlay;
  readonly ripCuts: Outlay;
  /** Crosscutting, once for each piece sawn, spare ones included. */
  readonly crosscuts: Outlay;
  /** Net of the dressing that the pieces would take if they were sawn. */
  readonly bought: Outlay;
  readonly total: Outlay;
  /** Total cash, and the hours at the wage. */
  readonly cost: Decimal;
}

/** International foot, exact by definition. */
const MM_PER_FOOT = decimal("304.8");

interface Tally {
  logs: number;
  /** Beside what each log costs. */
  ready: Outlay;
  bolts: number;
  millCuts: number;
  ripCuts: number;
  pieces: number;
  /** Square steps. */
  milled: Decimal;
  /** Steps. */
  ripped: number;
}

/**
 * Price of a plan.
 *
 * A cut by the mill through round wood counts the chord, at the middle of its kerf, of the circle half way along the
 * bolt (inside bark, sweep not taken off); through stock with two sawn faces, their distance; times the length.
 *
 * @param plan - Passed by `judgeSawingPlan`; otherwise the price means nothing, and cuts of unknown parts cost nothing.
 */
export function priceSawingPlan(problem: SawingProblem, plan: SawingPlan): SawingPrice {
  const { rates } = problem;
  const tally: Tally = {
    logs: 0,
    ready: outlay(ZERO, ZERO),
    bolts: 0,
    millCuts: 0,
    ripCuts: 0,
    pieces: 0,
    milled: ZERO,
    ripped: 0,
  };
  for (const logPlan of plan.logs) {
    const log = problem.logs.find((one) => one.name === logPlan.log);
    if (log !== undefined && logPlan.cuts.length > 0) countCuts(log, logPlan, problem, tally);
  }
  const step = decimal(problem.gridMm);
  const feet = decimal(tally.ripped).times(step).div(MM_PER_FOOT);
  const squareFeet = tally.milled.times(step).times(step).div(MM_PER_FOOT.times(MM_PER_FOOT));

  const logs = add(tally.ready, outlay(each(rates.logHours, tally.logs), each(rates.logCash, tally.logs)));
  const bolts = outlay(each(rates.boltHours, tally.bolts), ZERO);
  const millCuts = outlay(
    each(rates.millCutHours, tally.millCuts).plus(squareFeet.times(decimal(rates.millHoursPerFt2))),
    squareFeet.times(decimal(rates.millCashPerFt2)),
  );
  const ripCuts = outlay(
    each(rates.ripCutHours, tally.ripCuts).plus(feet.times(decimal(rates.ripHoursPerFt))),
    feet.times(decimal(rates.ripCashPerFt)),
  );
  const crosscuts = outlay(each(rates.crosscutHours, tally.pieces), ZERO);
  const bought = priceBought(problem, plan);
  const total = [logs, bolts, millCuts, ripCuts, crosscuts, bought].reduce(add);
  const cost = total.cash.plus(total.hours.times(decimal(rates.wage)));
  return { logs, bolts, millCuts, ripCuts, crosscuts, bought, total, cost };
}

function outlay(hours: Decimal, cash: Decimal): Outlay {
  return { hours, cash };
}

function add(a: Outlay, b: Outlay): Outlay {
  return { hours: a.hours.plus(b.hours), cash: a.cash.plus(b.cash) };
}

function each(rate: number, count: number): Decimal {
  return decimal(rate).times(count);
}

function priceBought(problem: SawingProblem, plan: SawingPlan): Outlay {
  return problem.groups
    .map(({ name, buy }) => {
      // Own entries only: a group may be named as something that every object has.
      const count = Object.hasOwn(plan.buy, name) ? (plan.buy[name] ?? 0) : 0;
      return outlay(each(buy.hours, count), each(buy.cash, count));
    })
    .reduce(add, outlay(ZERO, ZERO));
}

function countCuts(log: SawLog, plan: LogPlan, problem: SawingProblem, tally: Tally): void {
  tally.logs += 1;
  if (log.ready) tally.ready = add(tally.ready, outlay(decimal(log.ready.hours), decimal(log.ready.cash)));
  tally.pieces += plan.pieces.length;
  const parts = new Map<number, Part | undefined>([[0, wholeLog(log)]]);
  for (const [index, cut] of plan.cuts.entries()) {
    const part = parts.get(cut.part);
    if (part === undefined) continue;
    if (cut.axis !== "z" && part.bolt === undefined) tally.bolts += 1;
    if (cut.tool === "mill" && cut.axis !== "z") {
      const passes = passesOf(cut, problem.shop.millKerf);
      tally.millCuts += passes;
      tally.milled = tally.milled.plus(sawnArea(log, part, cut, cut.axis).times(passes));
    }
    if (cut.tool === "rip") {
      const passes = passesOf(cut, problem.shop.ripKerf);
      tally.ripCuts += passes;
      tally.ripped += passes * (part.z.hi - part.z.lo);
    }
    const [lower, upper] = split(part, cut);
    parts.set(2 * index + 1, lower).set(2 * index + 2, upper);
  }
}

/** A kerf wider than the blade takes several passes: wood turned to dust is not cheaper than a waste slab. */
function passesOf(cut: SawCut, kerf: number): number {
  return kerf > 0 ? Math.max(1, Math.ceil((cut.hi - cut.lo) / kerf)) : 1;
}

/** Area of one cut face, square steps. */
function sawnArea(log: SawLog, part: Part, cut: SawCut, axis: "x" | "y"): Decimal {
  const length = part.z.hi - part.z.lo;
  const face = part[across(axis)];
  if (isFlat(face)) return decimal(face.hi - face.lo).times(length);
  const half = halfChord(log, part, cut);
  // At most one side has been sawn, and the other one is round.
  const from = Decimal.max(half.negated(), Number.isFinite(face.lo) ? face.lo : half.negated());
  const to = Decimal.min(half, Number.isFinite(face.hi) ? face.hi : half);
  return Decimal.max(ZERO, to.minus(from)).times(length);
}

/** Half the chord at the middle of the kerf, in the circle half way along the bolt; 0 outside it. */
function halfChord(log: SawLog, part: Part, cut: SawCut): Decimal {
  const bolt = part.bolt ?? part.z;
  // Everything times 2 L: the diameter is (2 L d_s + (d_l − d_s)(z0 + z1)) / 2 L, twice the kerf's middle is lo + hi.
  const scale = 2 * log.length;
  const diameter = decimal(scale)
    .times(log.smallDiameter)
    .plus(decimal(log.largeDiameter - log.smallDiameter).times(bolt.lo + bolt.hi));
  const offset = decimal(cut.lo + cut.hi).times(scale);
  const square = diameter.times(diameter).minus(offset.times(offset));
  return square.lte(0) ? ZERO : square.sqrt().div(2 * scale);
}
