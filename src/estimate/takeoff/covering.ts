/**
 * A roof covering as a full system: area from sheet edge to sheet edge, sheets, trim, closures, fixing, weight, and
 * whether the code allows it at this slope.
 *
 * What is the same for every covering is laid here; how the surface is filled is a strategy for each form of covering.
 * Panels are one; courses, rolls and boards would be others.
 */
import { type CoveringKind, coveringOf, leastSlope } from "../../catalog/coverings.js";
import type { Exposure } from "../../catalog/fasteners.js";
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import type { Need } from "../need.js";
import type { GableCells } from "../pieces/gable.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { DisplayUnits } from "../quantity/display.js";
import { exactly } from "../quantity/text.js";
import { type Assumed, citation } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { type Cell, count, minus, number, over, plus, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { coveringNeeds } from "./covering-needs.js";
import { layPanelSizes } from "./covering-sizes.js";
import { layPanels, type PanelCells, type SheetedRoof } from "./panels.js";

/** Coverings that are laid as panels screwed to purlins. */
export const PANEL_COVERINGS = [
  "ribbed-steel",
  "corrugated-steel",
  "polycarbonate",
] as const satisfies readonly CoveringKind[];
/** One of them. */
export type PanelCovering = (typeof PANEL_COVERINGS)[number];

/** What a covering must know of the roof below it. */
export interface CoveredRoof {
  readonly slopes: 1 | 2;
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** Along the slope, for one `unitRun` of level length. */
  readonly unitLength: Cell;
  /** Along the slope, ridge centre to outer plate face. */
  readonly lineLength: Cell;
  /** Level, outer plate face to rafter tail. */
  readonly eaveOverhang: Cell;
  /** Along the eave, outer faces of the fly rafters. */
  readonly length: Cell;
  readonly purlinRows: Cell;
  /** Thickness of the fascia outside tails and fly rafters; absent where there is none. */
  readonly eaveFascia: Cell | undefined;
  readonly rakeFascia: Cell | undefined;
}

/** A covering, the roof below it, and where its sizes come from. */
export interface CoveringInput {
  readonly kind: PanelCovering;
  readonly roof: CoveredRoof;
  /** Offer whose sizes and weight are taken; usual ones where there is none. */
  readonly offer?: CoveringOffer | undefined;
  /** Where the screws are to last: the wood of the purlins. */
  readonly exposure: Exposure;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** Whether the code allows a covering at a slope. A covering that it does not allow is shown, never dropped. */
export interface SlopeVerdict {
  readonly allowed: boolean;
  /** The slope is allowed only because the laps are sealed. */
  readonly lapsSealed: boolean;
  readonly reason: string;
  /** The clause. */
  readonly reference: string;
}

/** What a covering takes and weighs. Needs include waste and spares; areas and lengths do not. */
export interface CoveringTakeoff {
  readonly kind: PanelCovering;
  readonly slope: SlopeVerdict;
  readonly needs: readonly Need[];
  /** Sheet edge to sheet edge, along the eave and along one slope. */
  readonly width: Cell;
  readonly slopeLength: Cell;
  readonly area: Cell;
  /** The same area, in squares of 100 ft². */
  readonly squares: Cell;
  readonly weight: Cell;
  /** Ridge, eaves and rakes, laps not counted: what is fitted. */
  readonly trimLength: Cell;
  readonly panels: PanelCells;
}

/** The roof of a gable, as its covering sees it. */
export function coveredGable({ frame, rafter, roof, groups }: GableCells): CoveredRoof {
  return {
    slopes: 2,
    unitRise: roof.unitRise,
    unitRun: roof.unitRun,
    unitLength: rafter.unitLength,
    lineLength: rafter.lineLength,
    eaveOverhang: frame.eaveOverhang,
    length: roof.length,
    purlinRows: roof.purlinRows,
    eaveFascia: fasciaOf(groups, "eave-fascia"),
    rakeFascia: fasciaOf(groups, "rake-fascia"),
  };
}

/** Runs fall into end and middle pieces, which share their section: `eave-fascia-end`. */
const fasciaOf = (groups: readonly PieceGroup[], base: string): Cell | undefined =>
  groups.find(({ name }) => name === base || name.startsWith(`${base}-`))?.thickness;

/**
 * Lays a roof covering.
 * @throws FaultError when its panels or trims are too short to lap.
 */
export function layCovering(sheet: Sheet, input: CoveringInput, units: DisplayUnits): CoveringTakeoff {
  const { kind, roof, assumed, defaults, offer } = input;
  const covering = coveringOf(kind);
  sheet.title("covering", `Roof covering: ${covering.name}`);
  const slope = slopeVerdict(sheet, kind, roof);
  const sizes = layPanelSizes(sheet, { covering, offer, assumed, defaults }, units);
  const surface = laySurface(sheet, input, units);
  const panels = layPanels(sheet, { ...surface, lapsSealed: slope.lapsSealed }, { covering, sizes, assumed }, units);
  const trimLength = sheet.lay("covering.trimLength", sum(Object.values(panels.trims).map((trim) => trim.length)), {
    label: "trim to fit",
    display: units.long,
  });
  const weight = sheet.lay("covering.weight", times(surface.area, sizes.weight), {
    label: "weight of the covering",
    display: units.mass,
  });
  const needs = coveringNeeds(sheet, { kind, panels, sizes, exposure: input.exposure, assumed, defaults }, units);
  const { width, slopeLength, area, squares } = surface;
  return { kind, slope, needs, width, slopeLength, area, squares, weight, trimLength, panels };
}

type Surface = Omit<SheetedRoof, "lapsSealed"> & Pick<CoveringTakeoff, "area" | "squares">;

/** Sheets reach over both fascias and drip past the eave; at the ridge they stop short of its centre. */
function laySurface(sheet: Sheet, { kind, roof, assumed }: CoveringInput, units: DisplayUnits): Surface {
  const row = coveringOf(kind);
  const drip = assumed.spread("covering.drip", "sheets past the eave, level", row.drip, row.from);
  const ridgeGap = assumed.cell("covering.ridgeGap");
  const none = number("0 in");
  const width = sheet.lay("covering.width", plus(roof.length, times(number("2"), roof.rakeFascia ?? none)), {
    label: "along the eave, sheet edge to sheet edge",
    display: units.long,
  });
  const level = sheet.lay(
    "covering.pastPlate",
    minus(plus(roof.eaveOverhang, roof.eaveFascia ?? none, drip), ridgeGap),
    { label: "sheets past the plate face, less the gap at the ridge, level", display: units.small },
  );
  const slopeLength = sheet.lay(
    "covering.slopeLength",
    plus(roof.lineLength, over(times(level, roof.unitLength), roof.unitRun)),
    { label: "along the slope, sheet edge to sheet edge", display: units.long },
  );
  const area = sheet.lay("covering.area", times(count(roof.slopes), width, slopeLength), {
    label: "roof area, sheet edge to sheet edge",
    display: units.area,
  });
  const squares = sheet.lay("covering.squares", area, { label: "roof area, in squares", display: "square" });
  return { slopes: roof.slopes, purlinRows: roof.purlinRows, width, slopeLength, area, squares };
}

/** Compared as rise × 12 in against least rise × run: 4 in 12 has no finite decimal. */
function slopeVerdict(sheet: Sheet, kind: CoveringKind, roof: Pick<CoveredRoof, "unitRise" | "unitRun">): SlopeVerdict {
  const rise = sheet.decide(roof.unitRise).times(exactly("12 in").value);
  const reaches = (least: string): boolean => rise.gte(exactly(least).value.times(sheet.decide(roof.unitRun)));
  const [plain, sealed] = [leastSlope(kind, false), leastSlope(kind, true)];
  const given = `A slope of ${sheet.shown(roof.unitRise)} over ${sheet.shown(roof.unitRun)}`;
  const lapsSealed = !reaches(plain.rise) && reaches(sealed.rise);
  const rule = lapsSealed || !reaches(plain.rise) ? sealed : plain;
  const only = rule.when ? `, where ${rule.when}` : "";
  const allowed = reaches(rule.rise);
  const verb = allowed ? "reaches" : "is below";
  return {
    allowed,
    lapsSealed,
    reason: `${given} ${verb} the least slope, ${rule.rise} over 12 in${only}.`,
    reference: citation(rule.from),
  };
}
