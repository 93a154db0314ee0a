/**
 * From the cuts of a sawing plan to hours, wear and fuel. Person-hours and elapsed hours are told apart by their units:
 * the mill runs in hours, people at it make person-hours of them.
 */
import { BLADES } from "../../catalog/blades.js";
import type { Assumed } from "../request/assumed.js";
import type { CutCells } from "../salvage/cut-cells.js";
import type { MillCells } from "../salvage/mill.js";
import type { FaceCells } from "../salvage/species-cuts.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sumOr,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type Carrying, layCarrying } from "./hauling.js";

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

/** Key of a stage of milling. */
export type MillingStage = keyof typeof MILLING_STAGES;

/** Hours by stage, wear and fuel of a route's milling. */
export interface MillingCells {
  readonly stages: Readonly<Record<MillingStage, Cell>>;
  /** Elapsed, of the mill: set-up, sawing, and the sharpening for which it stands. */
  readonly millHours: Cell;
  readonly sharpenings: Cell;
  readonly fuel: Cell;
  readonly barOil: Cell | undefined;
  /** Oil in the fuel of a chainsaw. */
  readonly twoStroke: Cell | undefined;
  /** Chains, bands or sets of teeth worn out, in parts of one. */
  readonly blades: Cell;
  /** Loads from the mill to the stack. */
  readonly loads: Cell;
}

/** What a plan's work follows from, beside its cuts. */
export interface MillingRates {
  readonly mill: MillCells;
  readonly assumed: Assumed;
  readonly carrying: Carrying;
}

/** Formulas that a plan's cuts lead to; laid one by one for a route, added up for a group. */
export interface MillingFormulas {
  /** Person-hours, pace not yet applied. */
  readonly stages: Readonly<Record<MillingStage, Operand>>;
  /** Elapsed, pace not yet applied. */
  readonly elapsed: Operand;
  readonly fuel: Operand;
  readonly blades: Operand;
}

/** Amounts that a route lays as cells, and a group takes as they come. */
export interface MillingAmounts {
  /** Engine hours of sawing. */
  readonly cutting: Operand;
  /** How often the edge is renewed. */
  readonly sharpenings: Operand;
  readonly loads: Operand;
  readonly stickers: Operand;
}

const ONE_PERSON = number("1 people");

/** The means of carrying sawn pieces, as everybody finds it. */
export function layYardCarrying(sheet: Sheet, assumed: Assumed, mill: MillCells): Carrying {
  return layCarrying({ sheet, assumed }, "work.carry", mill.carry, assumed.cell("carry.distance"));
}

/** Engine hours: by the face; where the mill is fed, by the slower of face and feed, and the way back. */
export function cuttingOf(cuts: CutCells, mill: MillCells): Operand {
  return sumOr(
    cuts.faces.map((faces) => sawingOf(faces, mill)),
    "h",
  );
}

function sawingOf({ hardness, area, narrow, wide }: FaceCells, { rate, feed, back }: MillCells): Operand {
  if (!feed || !back) return times(over(area, rate), hardness);
  const slower = (of: FaceCells["wide"]) => greatest(over(of.area, rate), over(of.length, feed));
  return plus(times(plus(slower(narrow), slower(wide)), hardness), over(plus(narrow.length, wide.length), back));
}

/** Stickers a foot or two apart in every layer. @param area - Wide faces of the pieces that are stacked on them. */
export function stickersOf(area: Operand, assumed: Assumed): Operand {
  return over(area, times(assumed.cell("stack.stickersApart"), assumed.cell("stack.width")));
}

/** Work of a plan, or of one group's share of it. */
export function millingFormulas(cuts: CutCells, amounts: MillingAmounts, rates: MillingRates): MillingFormulas {
  const { mill, assumed, carrying } = rates;
  const rate = (name: string): Cell => assumed.cell(name);
  const setUp = plus(times(cuts.bolts, mill.setUp), times(cuts.turns, mill.turn));
  const lift = over(times(cuts.logWeight, rate("saw.lift")), mill.hands);
  const saw = plus(amounts.cutting, times(cuts.millCuts, mill.cutHandling), lift);
  const sharpen = times(amounts.sharpenings, mill.sharpen);
  const waste = greatest(minus(cuts.logVolume, cuts.pieceVolume), number("0 m3"));
  return {
    stages: {
      getOut: cuts.getOut,
      prepare: cuts.prepare,
      setUp: times(setUp, mill.crew),
      saw: times(saw, mill.crew),
      edge: plus(rippingOf(cuts, assumed), times(cuts.crosscuts, rate("rate.crosscut"))),
      sharpen,
      carry: times(amounts.loads, carrying.each),
      stack: plus(times(cuts.pieces, rate("rate.stack")), times(amounts.stickers, rate("rate.sticker"))),
      slabs: times(waste, rate("rate.slabs")),
    },
    elapsed: plus(setUp, saw, ...(mill.stopsToSharpen ? [over(sharpen, ONE_PERSON)] : [])),
    fuel: times(amounts.cutting, mill.fuel),
    blades: plus(over(amounts.sharpenings, mill.bladeLife), times(cuts.logsUsed, rate("saw.bladesLost"))),
  };
}

/**
 * Rips beside the mill: each is handled, the more the heavier its stock, and fed through, the slower the harder the wood.
 * Where a guide is needed it is laid for each cut, and the saw on it is never the quicker.
 */
function rippingOf({ ripCuts, guideCuts, rips }: CutCells, assumed: Assumed): Operand {
  const [feed, guideFeed] = [assumed.cell("rate.ripFeed"), assumed.cell("dress.handRipFeed")];
  const cutting = rips.map(({ hardness, length, guided }) =>
    times(plus(over(length, feed), greatest(over(guided, guideFeed), over(guided, feed))), hardness, ONE_PERSON),
  );
  const lifting = rips.map(({ weight }) => times(weight, assumed.cell("saw.lift")));
  return plus(
    times(ripCuts, assumed.cell("rate.ripHandling")),
    times(guideCuts, assumed.cell("rate.guide")),
    sumOr([...cutting, ...lifting], "person-h"),
  );
}

/** A chain dulls by the face it cuts, sooner in dirty bark; a band by the lumber it makes; both sooner in hard wood. */
export function sharpeningsOf(cuts: CutCells, mill: MillCells, assumed: Assumed): Operand {
  if (mill.sharpenEvery.unit.dimension !== "length2") return over(cuts.hardVolume, mill.sharpenEvery);
  const more = minus(assumed.cell("saw.dirtDulling"), number("1"));
  const dulling = cuts.faces.map(({ hardness, area, dirtyArea }) =>
    times(plus(area, times(dirtyArea, more)), hardness),
  );
  return over(sumOr(dulling, "m2"), mill.sharpenEvery);
}

/** What milling is laid on and with. */
export interface MillingLaying {
  readonly sheet: Sheet;
  readonly mill: MillCells;
  readonly assumed: Assumed;
  readonly units: { readonly liquid: string };
}

/**
 * Lays hours and consumption of a route under `key`. All hand work is multiplied by one pace.
 * @param stickered - Wide faces of the pieces that are stacked on stickers.
 */
export function layMilling(
  { sheet, mill, assumed, units }: MillingLaying,
  key: string,
  cuts: CutCells,
  stickered: Operand,
): MillingCells {
  const pace = assumed.cell("pace");
  const rates = { mill, assumed, carrying: layYardCarrying(sheet, assumed, mill) };
  const lay = (name: string, label: string, formula: Operand, display = "") =>
    sheet.lay(`${key}.${name}`, formula, { label, display });
  const amounts = {
    cutting: lay("cutting", "engine hours of sawing", cuttingOf(cuts, mill), "h"),
    sharpenings: lay("sharpenings", "sharpenings", sharpeningsOf(cuts, mill, assumed)),
    loads: lay("loads", "loads from mill to stack", roundUp(over(cuts.pieceWeight, rates.carrying.load))),
    stickers: lay("stickers", "stickers", roundUp(stickersOf(stickered, assumed))),
  };
  const formulas = millingFormulas(cuts, amounts, rates);
  const stages = (Object.keys(MILLING_STAGES) as MillingStage[]).map((name) => {
    const hours = lay(`hours.${name}`, MILLING_STAGES[name], times(formulas.stages[name], pace), "person-h");
    return [name, hours] as const;
  });
  const fuel = lay("fuel", "fuel", formulas.fuel, units.liquid);
  const oil = mill.blade === "chain" ? times(fuel, assumed.cell("saw.twoStroke")) : undefined;
  return {
    stages: Object.fromEntries(stages) as MillingCells["stages"],
    millHours: lay("millHours", "mill hours, elapsed", times(formulas.elapsed, pace), "h"),
    sharpenings: amounts.sharpenings,
    fuel,
    barOil: mill.barOil && lay("barOil", "bar oil", times(fuel, mill.barOil), units.liquid),
    twoStroke: oil && lay("twoStroke", "two-stroke oil", oil, units.liquid),
    blades: lay("blades", `${BLADES[mill.blade].plural} worn out or lost, in parts of one`, formulas.blades),
    loads: amounts.loads,
  };
}
