/**
 * From the cuts of a sawing plan to hours, wear and fuel. Person-hours and elapsed hours are told apart by their units:
 * the mill runs in hours, people at it make person-hours of them.
 */
import type { Assumed } from "../request/assumed.js";
import type { CutCells } from "../salvage/cut-cells.js";
import type { MillCells } from "../salvage/mill.js";
import { type Cell, minus, number, type Operand, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

export interface MillingCells {
  readonly getOut: Cell;
  readonly prepare: Cell;
  readonly setUp: Cell;
  readonly saw: Cell;
  readonly edge: Cell;
  readonly sharpen: Cell;
  readonly carry: Cell;
  readonly stack: Cell;
  readonly slabs: Cell;
  /** Elapsed, of the mill: set-up and sawing. */
  readonly millHours: Cell;
  readonly sharpenings: Cell;
  readonly fuel: Cell;
  readonly barOil: Cell | undefined;
  /** Chains, bands or sets of teeth worn out, in parts of one. */
  readonly blades: Cell;
}

const ONE_PERSON = number("1 people");

/** Lays hours and consumption under `key`. All hand work is multiplied by one pace. */
export function layMilling(
  sheet: Sheet,
  key: string,
  cuts: CutCells,
  mill: MillCells,
  assumed: Assumed,
  units: { readonly liquid: string },
): MillingCells {
  const pace = assumed.cell("pace");
  const rate = (name: string) => assumed.cell(name);
  const work = (name: string, label: string, amount: Operand) =>
    sheet.lay(`${key}.hours.${name}`, times(amount, pace), { label, display: "person-h" });

  const setUpElapsed = plus(times(cuts.bolts, mill.setUp), times(cuts.turns, mill.turn));
  const cutting = sheet.lay(`${key}.cutting`, over(cuts.millArea, mill.rate), {
    label: "engine hours of sawing",
    display: "h",
  });
  const sawElapsed = plus(cutting, times(cuts.millCuts, mill.cutHandling));
  const millHours = sheet.lay(`${key}.millHours`, times(plus(setUpElapsed, sawElapsed), pace), {
    label: "mill hours, elapsed",
    display: "h",
  });
  const sharpenings = sheet.lay(`${key}.sharpenings`, sharpeningsOf(cuts, mill, assumed), { label: "sharpenings" });
  const fuel = sheet.lay(`${key}.fuel`, times(cutting, mill.fuel), { label: "fuel", display: units.liquid });
  const walk = over(times(number("2"), rate("carry.distance")), rate("carry.pace"));
  const loads = sheet.lay(`${key}.loads`, over(cuts.pieceWeight, rate("carry.load")), { label: "loads carried" });
  const edging = plus(
    times(cuts.ripCuts, rate("rate.ripHandling")),
    times(over(cuts.ripLength, rate("rate.ripFeed")), ONE_PERSON),
    times(cuts.crosscuts, rate("rate.crosscut")),
  );
  return {
    getOut: work("getOut", "get the logs out", times(cuts.logsUsed, rate("rate.getOut"))),
    prepare: work("prepare", "prepare the logs", times(cuts.logsUsed, rate("rate.prepareLog"))),
    setUp: work("setUp", "set up the first straight cuts, turn", times(setUpElapsed, mill.crew)),
    saw: work("saw", "saw", times(sawElapsed, mill.crew)),
    edge: work("edge", "rip and crosscut", edging),
    sharpen: work("sharpen", "sharpen", times(sharpenings, mill.sharpen)),
    carry: work("carry", "carry", times(loads, plus(times(walk, ONE_PERSON), rate("carry.handling")))),
    stack: work("stack", "stack to dry", times(cuts.pieces, rate("rate.stack"))),
    slabs: work("slabs", "clear slabs and sawdust", times(minus(cuts.logVolume, cuts.pieceVolume), rate("rate.slabs"))),
    millHours,
    sharpenings,
    fuel,
    barOil:
      mill.barOil && sheet.lay(`${key}.barOil`, times(fuel, mill.barOil), { label: "bar oil", display: units.liquid }),
    blades: sheet.lay(`${key}.blades`, over(sharpenings, mill.bladeLife), { label: `${mill.blade}s worn out` }),
  };
}

/** A chain dulls by the face it cuts, sooner in dirty bark; a band by the lumber it makes. */
function sharpeningsOf(cuts: CutCells, mill: MillCells, assumed: Assumed): Operand {
  if (mill.sharpenEvery.unit.dimension !== "length2") return over(cuts.pieceVolume, mill.sharpenEvery);
  const more = minus(assumed.cell("saw.dirtDulling"), number("1"));
  return over(plus(cuts.millArea, times(cuts.dirtyArea, more)), mill.sharpenEvery);
}
