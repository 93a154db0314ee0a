/**
 * From the cuts of a sawing plan to hours, wear and fuel. Person-hours and elapsed hours are told apart by their units:
 * the mill runs in hours, people at it make person-hours of them.
 */
import type { Assumed } from "../request/assumed.js";
import type { CutCells } from "../salvage/cut-cells.js";
import type { MillCells } from "../salvage/mill.js";
import { type Cell, greatest, minus, number, type Operand, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Stages of milling, in the order of the work. */
export const MILLING_STAGES = {
  getOut: "get the logs out",
  prepare: "prepare the logs",
  setUp: "set up the first straight cuts, turn",
  saw: "saw",
  edge: "rip and crosscut",
  sharpen: "sharpen",
  carry: "carry",
  stack: "stack to dry",
  slabs: "clear slabs and sawdust",
} as const;
export type MillingStage = keyof typeof MILLING_STAGES;

export interface MillingCells {
  readonly stages: Readonly<Record<MillingStage, Cell>>;
  /** Elapsed, of the mill: set-up and sawing. */
  readonly millHours: Cell;
  readonly sharpenings: Cell;
  readonly fuel: Cell;
  readonly barOil: Cell | undefined;
  /** Chains, bands or sets of teeth worn out, in parts of one. */
  readonly blades: Cell;
}

/** Formulas that a plan's cuts lead to; laid one by one for a route, added up for a group. */
export interface MillingFormulas {
  /** Person-hours, pace not yet applied. */
  readonly stages: Readonly<Record<MillingStage, Operand>>;
  /** Elapsed, pace not yet applied. */
  readonly elapsed: Operand;
  readonly fuel: Operand;
}

const ONE_PERSON = number("1 people");

/** @param cutting - Engine hours of sawing. @param sharpenings - How often the edge is renewed. */
export function millingFormulas(
  sheet: Sheet,
  cuts: CutCells,
  cutting: Operand,
  sharpenings: Operand,
  mill: MillCells,
  assumed: Assumed,
): MillingFormulas {
  const rate = (name: string): Cell => assumed.cell(name);
  const setUp = plus(times(cuts.bolts, mill.setUp), times(cuts.turns, mill.turn));
  const saw = plus(cutting, times(cuts.millCuts, mill.cutHandling));
  const { carry } = layHandRates(sheet, assumed);
  const waste = greatest(minus(cuts.logVolume, cuts.pieceVolume), number("0 m3"));
  return {
    stages: {
      getOut: times(cuts.logsUsed, rate("rate.getOut")),
      prepare: times(cuts.logsUsed, rate("rate.prepareLog")),
      setUp: times(setUp, mill.crew),
      saw: times(saw, mill.crew),
      edge: plus(
        times(cuts.ripCuts, rate("rate.ripHandling")),
        times(over(cuts.ripLength, rate("rate.ripFeed")), ONE_PERSON),
        times(cuts.crosscuts, rate("rate.crosscut")),
      ),
      sharpen: times(sharpenings, mill.sharpen),
      carry: times(cuts.pieceWeight, carry),
      stack: times(cuts.pieces, rate("rate.stack")),
      slabs: times(waste, rate("rate.slabs")),
    },
    elapsed: plus(setUp, saw),
    fuel: times(cutting, mill.fuel),
  };
}

/** Rates that several assumptions make together, laid once. */
function layHandRates(sheet: Sheet, assumed: Assumed): { readonly carry: Cell } {
  const known = sheet.find("work.carry");
  if (known) return { carry: known };
  const walk = over(times(number("2"), assumed.cell("carry.distance")), assumed.cell("carry.pace"));
  const load = plus(times(walk, ONE_PERSON), assumed.cell("carry.handling"));
  return {
    carry: sheet.lay("work.carry", over(load, assumed.cell("carry.load")), { label: "carrying, there and back" }),
  };
}

/** A chain dulls by the face it cuts, sooner in dirty bark; a band by the lumber it makes. */
export function sharpeningsOf(cuts: CutCells, mill: MillCells, assumed: Assumed): Operand {
  if (mill.sharpenEvery.unit.dimension !== "length2") return over(cuts.pieceVolume, mill.sharpenEvery);
  const more = minus(assumed.cell("saw.dirtDulling"), number("1"));
  return over(plus(cuts.millArea, times(cuts.dirtyArea, more)), mill.sharpenEvery);
}

/** Lays hours and consumption of a route under `key`. All hand work is multiplied by one pace. */
export function layMilling(
  sheet: Sheet,
  key: string,
  cuts: CutCells,
  mill: MillCells,
  assumed: Assumed,
  units: { readonly liquid: string },
): MillingCells {
  const pace = assumed.cell("pace");
  const cutting = sheet.lay(`${key}.cutting`, over(cuts.millArea, mill.rate), {
    label: "engine hours of sawing",
    display: "h",
  });
  const sharpenings = sheet.lay(`${key}.sharpenings`, sharpeningsOf(cuts, mill, assumed), { label: "sharpenings" });
  const formulas = millingFormulas(sheet, cuts, cutting, sharpenings, mill, assumed);
  const names = Object.keys(MILLING_STAGES) as MillingStage[];
  const stages = names.map((name) => {
    const label = MILLING_STAGES[name];
    return [
      name,
      sheet.lay(`${key}.hours.${name}`, times(formulas.stages[name], pace), { label, display: "person-h" }),
    ] as const;
  });
  const fuel = sheet.lay(`${key}.fuel`, formulas.fuel, { label: "fuel", display: units.liquid });
  const millHours = sheet.lay(`${key}.millHours`, times(formulas.elapsed, pace), {
    label: "mill hours, elapsed",
    display: "h",
  });
  return {
    stages: Object.fromEntries(stages) as MillingCells["stages"],
    millHours,
    sharpenings,
    fuel,
    barOil:
      mill.barOil && sheet.lay(`${key}.barOil`, times(fuel, mill.barOil), { label: "bar oil", display: units.liquid }),
    blades: sheet.lay(`${key}.blades`, over(sharpenings, mill.bladeLife), { label: `${mill.blade}s worn out` }),
  };
}
