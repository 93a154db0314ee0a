/** The sawing problem of a route, in whole grid steps, from the effective values of cells. */

import { type Fault, FaultError, pointer } from "../faults.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { type Decimal, ONE, ZERO } from "../quantity/decimal.js";
import { inUnit, type Quantity } from "../quantity/quantity.js";
import { wholeNumber } from "../quantity/whole.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { MillCells } from "./mill.js";
import type { RoughCells } from "./rough-size.js";
import type { SawGroup, SawingProblem, SawLog, SawRates } from "./sawing-problem.js";
import type { SoundLog } from "./sound-wood.js";

/** A group to be milled, with its rough sizes and what a bought piece would cost. */
export interface MilledGroup {
  readonly group: PieceGroup;
  readonly rough: RoughCells;
  /** Sawn beyond the count, against rejects; absent where rejects are bought instead. */
  readonly spares: Cell | undefined;
  /** Rough guess for the optimiser only: cash for one bought piece, hours that buying it saves. */
  readonly buy: { readonly cash: Decimal; readonly hours: Decimal };
  /** Sawn before all that is not. */
  readonly pinned?: boolean;
}

/** What sawing problems are made from. */
export interface SawingBasis {
  readonly sheet: Sheet;
  readonly gridMm: Decimal;
  readonly logs: readonly SoundLog[];
  readonly mill: MillCells;
  readonly wage: Cell;
  /** Hours to get each of the logs to the mill, and to prepare it; in the order of the logs. */
  readonly getOut: readonly Cell[];
  readonly prepare: readonly Cell[];
  readonly ripHandling: Cell;
  readonly ripFeed: Cell;
  readonly crosscut: Cell;
  /** What a hired sawyer takes for the mill's running, or for the wood sawn; absent where the mill is one's own. */
  readonly charge?: { readonly perHour?: Quantity; readonly perVolume?: Quantity };
}

/** Steps of the grid that hold a size: the next whole number. */
export const stepsUp = (steps: Decimal): number => wholeNumber(steps.toDecimalPlaces(9).ceil());
const down = (steps: Decimal): number => wholeNumber(steps.toDecimalPlaces(9).floor());

/** What does not depend on the groups: the same for every route of an estimate. */
type Yard = Omit<SawingProblem, "groups">;
const yards = new WeakMap<SawingBasis, Yard>();

/** Builds the problem; every size read becomes structural. */
export function sawingProblem(basis: SawingBasis, milled: readonly MilledGroup[]): SawingProblem {
  const steps = stepsOf(basis);
  const yard = yards.get(basis) ?? yardOf(basis);
  yards.set(basis, yard);
  return { ...yard, groups: milled.map((one) => sawGroup(basis, one, steps)) };
}

const stepsOf =
  ({ sheet, gridMm }: SawingBasis) =>
  (cell: Cell): Decimal =>
    sheet.decide(cell).dividedBy(gridMm);

function yardOf(basis: SawingBasis): Yard {
  const { gridMm, mill } = basis;
  const steps = stepsOf(basis);
  return {
    gridMm: gridMm.toFixed(),
    logs: basis.logs.map((log, i) => ({ ...sawLog(log, steps), ready: inFloats(readyOf(basis, log, i)) })),
    shop: {
      millKerf: stepsUp(steps(mill.kerf)),
      ripKerf: stepsUp(steps(mill.ripKerf)),
      crossKerf: stepsUp(steps(mill.crossKerf)),
      buckKerf: stepsUp(steps(mill.buckKerf)),
      deepestRip: down(steps(mill.deepestRip)),
      longestBolt: down(steps(mill.longestBolt)),
      throat: down(steps(mill.throat)),
      pith: stepsUp(steps(mill.pith)),
      thinnestSlab: stepsUp(steps(mill.thinnestSlab)),
    },
    rates: sawRates(basis),
  };
}

function sawLog(log: SoundLog, steps: (cell: Cell) => Decimal): SawLog {
  return {
    name: log.name,
    species: log.species,
    length: down(steps(log.length)),
    smallDiameter: down(steps(log.smallDiameter)),
    largeDiameter: down(steps(log.largeDiameter)),
    sweep: stepsUp(steps(log.sweep)),
    rot: { smallEnd: stepsUp(steps(log.rotSmall)), largeEnd: stepsUp(steps(log.rotLarge)) },
    bark: stepsUp(steps(log.bark)),
  };
}

function sawGroup(
  basis: SawingBasis,
  { group, rough, spares, buy, pinned }: MilledGroup,
  steps: (cell: Cell) => Decimal,
): SawGroup {
  const { sheet, gridMm, charge } = basis;
  const sides = [stepsUp(steps(rough.thickness)), stepsUp(steps(rough.width))].sort((a, b) => a - b) as [
    number,
    number,
  ];
  const { rules } = group;
  return {
    name: group.name,
    thickness: sides[0],
    width: sides[1],
    length: stepsUp(steps(rough.length)),
    count: sheet.decideWhole(group.count) + (spares ? sheet.decideWhole(spares) : 0),
    species: rules.species,
    heart: rules.heart,
    wane: down(inUnit(rules.wane, "mm").dividedBy(gridMm)),
    buy: inFloats(
      charge
        ? { cash: buy.cash.plus(aside(basis.wage).times(buy.hours)).minus(chargeOf(basis, rough)), hours: ZERO }
        : buy,
    ),
    ...(pinned ? { pinned } : {}),
  };
}

const currencyOf = (rate: Quantity): string => rate.unit.symbol.split("/")[0] as string;

/** What the sawyer takes for the wood of one piece, which a bought one saves. */
function chargeOf({ charge }: SawingBasis, { thickness, width, length }: RoughCells): Decimal {
  if (!charge?.perVolume) return ZERO;
  const cubes = aside(thickness).times(aside(width)).times(aside(length));
  return cubes.times(inUnit(charge.perVolume, `${currencyOf(charge.perVolume)}/mm3`));
}

/** What work costs, exact, before it goes to the optimiser. */
export type ExactRates = Readonly<Record<keyof SawRates, Decimal>>;

/** Through this door exact figures go to the optimiser, which reckons in floats; none comes back but through the judge. */
export function inFloats<Name extends string>(exact: Readonly<Record<Name, Decimal>>): Record<Name, number> {
  const floats = Object.entries<Decimal>(exact).map(([name, value]) => [name, value.toNumber()] as const);
  return Object.fromEntries(floats) as Record<Name, number>;
}

/** What a log costs before the first cut: its way to the mill, its bark, and what it would fetch. In money where a sawyer is paid. */
function readyOf({ getOut, prepare, wage, charge }: SawingBasis, { value }: SoundLog, i: number) {
  const hours = [getOut[i], prepare[i]].reduce((sum, cell) => sum.plus(cell ? asideIn(cell, "person-h") : ZERO), ZERO);
  return { cash: value ? aside(value) : ZERO, hours: charge ? aside(wage).times(hours) : hours };
}

/** For the optimiser; the estimate's own hours are formulas over the plan's measures. */
function sawRates(basis: SawingBasis): SawRates {
  const { mill } = basis;
  refuseStandstill([mill.rate, basis.ripFeed]);
  // Read aside: a plan made at other rates is still a valid plan, only perhaps no longer the best one.
  const crew = asideIn(mill.crew, "people");
  const rates = {
    wage: aside(basis.wage),
    logHours: ZERO,
    logCash: ZERO,
    boltHours: asideIn(mill.setUp, "h").times(crew),
    millCutHours: asideIn(mill.cutHandling, "h").times(crew),
    millHoursPerFt2: crew.dividedBy(asideIn(mill.rate, "ft2/h")),
    millCashPerFt2: ZERO,
    ripCutHours: asideIn(basis.ripHandling, "person-h"),
    ripHoursPerFt: ONE.dividedBy(asideIn(basis.ripFeed, "ft/h")),
    ripCashPerFt: ZERO,
    crosscutHours: asideIn(basis.crosscut, "person-h"),
  };
  return inFloats(basis.charge ? inMoney(rates, basis) : rates);
}

/** Every rate in money, at a wage of one: what the mill runs for costs the sawyer's charge as well. */
function inMoney(rates: ExactRates, { mill, charge }: SawingBasis): ExactRates {
  const paid = (hours: Decimal): Decimal => rates.wage.times(hours);
  const perHour = charge?.perHour ? inUnit(charge.perHour, `${currencyOf(charge.perHour)}/h`) : ZERO;
  return {
    ...rates,
    wage: ONE,
    boltHours: paid(rates.boltHours).plus(perHour.times(asideIn(mill.setUp, "h"))),
    millCutHours: paid(rates.millCutHours).plus(perHour.times(asideIn(mill.cutHandling, "h"))),
    millHoursPerFt2: paid(rates.millHoursPerFt2).plus(perHour.dividedBy(asideIn(mill.rate, "ft2/h"))),
    ripCutHours: paid(rates.ripCutHours),
    ripHoursPerFt: paid(rates.ripHoursPerFt),
    crosscutHours: paid(rates.crosscutHours),
  };
}

/** A saw that cuts nothing in an hour would take for ever. */
function refuseStandstill(rates: readonly Cell[]): void {
  const faults = rates
    .filter((rate) => aside(rate).lte(0))
    .map(({ name, label, kind }): Fault => {
      const at = pointer(kind === "override" ? "/overrides" : "/assumptions", name);
      return { code: "out-of-range", at, wrong: `${label} is zero.`, cure: "Give more than zero." };
    });
  if (faults.length > 0) throw new FaultError(faults);
}
