/**
 * Costs of one piece and of one cut that no mix of milling and buying undercuts, for the bound on all mixes.
 * What differs from log to log or from wood to wood counts as where it is least.
 */
import { BLADES } from "../../catalog/blades.js";
import type { FinishKind, Texture } from "../../catalog/finishes.js";
import { finishOffers, sameSection } from "../../catalog/look-up.js";
import type { Basis } from "../basis.js";
import { brushingTime } from "../effort/brushing.js";
import { easing } from "../effort/building.js";
import { cuttingToLength } from "../effort/buying.js";
import { laySoldWood } from "../effort/hardness.js";
import { jointTime } from "../effort/joints.js";
import { layYardCarrying } from "../effort/milling.js";
import type { GroupBasis, MillableGroup } from "../group-basis.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { taxRatesOn } from "../purchase/line.js";
import type { Substitution } from "../purchase/substitution.js";
import { Decimal, ONE, ZERO } from "../quantity/decimal.js";
import { inUnit } from "../quantity/quantity.js";
import type { MillCells } from "../salvage/mill.js";
import type { ExactRates } from "../salvage/sawing-question.js";
import type { WoodCells } from "../salvage/wood.js";
import { aside, asideIn } from "../sheet/aside.js";
import { type Cell, least, number, type Operand, over, plus, sum, times } from "../sheet/expression.js";
import { type FacesToFinish, takenBy } from "../takeoff/finish.js";
import type { CommonCells } from "./route.js";

/** One's own mill or the hired sawyer's, and what is the same for both. */
export interface Ground {
  readonly basis: Basis;
  readonly wage: Decimal;
  /** Value of an expression, in a unit. */
  readonly value: (formula: Operand, unit: string) => Decimal;
  /** What a piece adds to the lumber order at the least, by its group, in money. */
  readonly worth: ReadonlyMap<string, Decimal>;
  readonly finish: FacesToFinish;
  readonly joints: CommonCells["joints"];
  readonly fitted: CommonCells["fitted"];
}

/** Lays what is asked on the scratch sheet, under names of its own. */
export function evaluator({ sheet }: Basis): Ground["value"] {
  return (formula, unit) => asideIn(sheet.lay(`bound.${sheet.size}`, formula, { label: "part of a bound" }), unit);
}

/** Cutting to length, and the dressing, sanding and ripping of one bought piece; of ripping none where what serves as well is of another size. */
export function boughtHours({ basis: { assumed }, value }: Ground, one: GroupBasis): Decimal {
  const { group, soldRough, ripDown, sold, rivals } = one;
  const oneSize = rivals.every(({ offer }) => sameSection(offer.actual, (rivals[0] as Substitution).offer.actual));
  const sanding = times(over(group.surface, group.count), assumed.cell("sand.boughtShare"));
  const parts: Operand[] = [
    cuttingToLength([{ pieces: number("1"), turn: sold.turn }], assumed),
    ...(soldRough ? [times(soldRough.each, assumed.cell("dress.boughtShare"))] : []),
    ...(ripDown && oneSize ? [ripDown.each] : []),
    ...(group.rules.surface === "dressed"
      ? [times(over(sanding, assumed.cell("rate.sand")), assumed.cell("pace"))]
      : []),
  ];
  return value(sum(parts), "person-h");
}

/** Person-hours of the joints of one piece, in the wood that it is milled of. */
export const jointsMilled = ({ joints }: Ground, { group }: GroupBasis): Decimal =>
  ofOne(group, joints.get(group.name)?.milled);

/** The same of one that is bought, in the softest of what serves as well, which need not be turned. */
export function jointsBought({ basis, joints, value }: Ground, { group, rivals, sold }: GroupBasis): Decimal {
  const { sheet, assumed, units } = basis;
  if (aside(group.count).isZero()) return ZERO;
  const laying = { sheet, assumed, units, moisture: assumed.cell("moisture.target") };
  const turn = number("0 person-min");
  const others = [...new Set(rivals.map(({ offer }) => laySoldWood(laying, offer.species).hardness))]
    .filter((hardness) => hardness !== sold.hardness)
    .map((hardness) => value(over(jointTime(group, { hardness, turn }, assumed), group.count), "person-h"));
  return Decimal.min(ofOne(group, joints.get(group.name)?.bought), ...others);
}

/** Each piece's part of the person-hours of a group. */
function ofOne({ count }: PieceGroup, hours: Cell | undefined): Decimal {
  const pieces = aside(count);
  return hours && !pieces.isZero() ? asideIn(hours, "person-h").dividedBy(pieces) : ZERO;
}

/** Dressing, sanding and easing of one sawn piece, and what its wood takes: a sawyer's board feet, or a band's edge. */
export function sawnCost(ground: Ground, { group }: GroupBasis, { dressing, rough }: MillableGroup): Decimal {
  const { basis, wage, value } = ground;
  const { assumed, mill, sawyer } = basis;
  const sanding = plus(over(dressing.surfaceEach, assumed.cell("rate.sand")), easing(group.length, assumed));
  const hours =
    group.rules.surface === "dressed"
      ? value(plus(dressing.each, times(sanding, assumed.cell("pace"))), "person-h")
      : ZERO;
  const wood = times(rough.thickness, rough.width, rough.length);
  const charge = sawyer?.charge === "board-foot" ? priceOf(ground, "milling-per-board-foot") : undefined;
  const sawing = charge ? value(times(wood, charge), basis.pricing.currency) : ZERO;
  const dulled = byFace(mill) ? ZERO : value(over(times(wood, softest(basis)), mill.sharpenEvery), "");
  const carrying = layYardCarrying(basis.sheet, assumed, mill);
  const lightest = least(...basis.logs.map(({ species }) => (basis.woods.get(species) as WoodCells).greenDensity));
  const carried = times(over(times(wood, lightest), carrying.load), carrying.each, assumed.cell("pace"));
  return wage
    .times(hours.plus(value(carried, "person-h")))
    .plus(sawing)
    .plus(dulled.times(edgeCost(ground)));
}

/** Finish of one piece that comes so: its share of the faces, at the least that its volume costs by the can, and brushing it. */
export function finishCost(ground: Ground, { group }: GroupBasis, texture: Texture): Decimal {
  const { basis, wage, value, finish } = ground;
  const { sheet, assumed } = basis;
  const shown = finish.lines.find((line) => line.group === group.name)?.area;
  if (!shown || aside(group.count).isZero()) return ZERO;
  const faces = over(shown, group.count);
  const taken = takenBy(sheet, finish.terms, texture, faces);
  if (!taken) return ZERO;
  const hours = value(brushingTime(assumed, texture, faces, taken.brushed), "person-h");
  const cans = taken.volumes.map(({ kind, volume }) => value(volume, "L").times(leastByVolume(basis, kind)));
  return cans.reduce((sum, cost) => sum.plus(cost), wage.times(hours));
}

/** What a litre of a finish costs in the can that is cheapest by volume, tax included; nothing where none has a price. */
function leastByVolume(basis: Basis, kind: FinishKind): Decimal {
  const { catalog, pricing } = basis;
  const found = finishOffers(catalog, kind);
  const cans = found.kind === "offered" ? (found.offers[0]?.cans ?? []) : [];
  const rates = cans.flatMap(({ size, price }) =>
    price.kind === "priced" ? [inUnit(price.amount, pricing.currency).dividedBy(inUnit(size, "L"))] : [],
  );
  if (rates.length === 0) return ZERO;
  const taxes = taxRatesOn(pricing, catalog.taxes, "finishes").reduce((sum, rate) => sum.plus(aside(rate)), ONE);
  return Decimal.min(...rates)
    .times(aside(pricing.level))
    .times(taxes);
}

/** Rates of sawing in money. Crosscuts count for nothing, since an end may need none; each piece counts its stacking. */
export function sawnRates(ground: Ground): ExactRates {
  const { basis, wage, value } = ground;
  const { assumed, mill, sawing, sawyer } = basis;
  const charge = sawyer?.charge === "hour" ? priceOf(ground, "milling-per-hour") : undefined;
  const running = charge ? value(times(number("1 h"), charge), basis.pricing.currency) : ZERO;
  const pace = aside(assumed.cell("pace"));
  const paid = (hours: Decimal): Decimal => pace.times(wage).times(hours);
  const atMill = pace.times(wage.times(asideIn(mill.crew, "people")).plus(running));
  const foot = times(number("1 ft2"), softest(basis));
  const engine = value(over(foot, mill.rate), "h");
  const edge = byFace(mill) ? value(over(foot, mill.sharpenEvery), "").times(edgeCost(ground)) : ZERO;
  return {
    wage: ONE,
    logHours: ZERO,
    logCash: ZERO,
    boltHours: atMill.times(asideIn(mill.setUp, "h")),
    millCutHours: atMill.times(asideIn(mill.cutHandling, "h")),
    millHoursPerFt2: atMill.times(engine),
    millCashPerFt2: engine.times(fuelOf(ground)).plus(edge),
    ripCutHours: paid(asideIn(sawing.ripHandling, "person-h")),
    ripHoursPerFt: paid(value(over(number("1 ft"), sawing.ripFeed), "h")),
    ripCashPerFt: ZERO,
    crosscutHours: paid(asideIn(assumed.cell("rate.stack"), "person-h")),
  };
}

/** What each log costs before the first cut, in money: its way to the mill, its bark, what it would fetch. */
export function readyLogs({ basis, wage }: Ground): { readonly cash: Decimal; readonly hours: Decimal }[] {
  const { sawing, logs, assumed } = basis;
  const rate = aside(assumed.cell("pace")).times(wage);
  const hours = (cell: Cell | undefined): Decimal => (cell ? asideIn(cell, "person-h") : ZERO);
  return logs.map(({ value }, i) => ({
    cash: value ? aside(value) : ZERO,
    hours: rate.times(hours(sawing.getOut[i]).plus(hours(sawing.prepare[i]))),
  }));
}

const byFace = (mill: MillCells): boolean => mill.sharpenEvery.unit.dimension === "length2";

/** The wood of the logs that saws quickest. */
const softest = ({ hardness }: Basis): Operand => least(...hardness.values());

/** Renewing the edge once: one's own hours, and the wear of the blade where it is one's own. */
function edgeCost(ground: Ground): Decimal {
  const { basis, wage, value } = ground;
  const { mill, assumed, sawyer, pricing } = basis;
  const own = wage.times(aside(assumed.cell("pace"))).times(value(mill.sharpen, "person-h"));
  const blade = sawyer ? undefined : priceOf(ground, BLADES[mill.blade].item);
  return blade ? own.plus(value(over(blade, mill.bladeLife), pricing.currency)) : own;
}

/** Fuel of an hour of sawing, and the oils that go with it; a hired sawyer's is in the charge. */
function fuelOf(ground: Ground): Decimal {
  const { basis, value } = ground;
  const { mill, assumed, sawyer, pricing } = basis;
  if (sawyer) return ZERO;
  const burnt = times(mill.fuel, number("1 h"));
  const oil = mill.blade === "chain" ? assumed.cell("saw.twoStroke") : undefined;
  const used: readonly (readonly [string, Operand | undefined])[] = [
    ["fuel", burnt],
    ["bar-oil", mill.barOil && times(burnt, mill.barOil)],
    ["two-stroke-oil", oil && times(burnt, oil)],
  ];
  return used.reduce((sum, [item, amount]) => {
    const price = amount && priceOf(ground, item);
    return price ? sum.plus(value(times(amount, price), pricing.currency)) : sum;
  }, ZERO);
}

/** A price at its level; undefined where there is none. */
export function priceOf({ basis: { sheet, pricing } }: Ground, item: string): Operand | undefined {
  const cell = sheet.find(`price.${item}`);
  return cell && times(cell, pricing.level);
}
