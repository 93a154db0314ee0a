/** The roof of a frame as its covering sees it: planes up to a ridge, hips or an upper edge, and what lies outside them. */

import type { CutList } from "../pieces/cut-list.js";
import type { Deck } from "../pieces/deck.js";
import type { GableCells } from "../pieces/gable.js";
import type { HipCells } from "../pieces/hip.js";
import type { LeanToCells } from "../pieces/lean-to.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { LaidRun } from "../pieces/runs.js";
import type { DisplayUnits } from "../quantity/display.js";
import { type Cell, number, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** One plane, on the frame. */
export interface CoveredPlane {
  readonly name: string;
  /** How many planes are just so. */
  readonly alike: number;
  /** A hipped plane narrows from its eave to its top, which is a point at the ends of a roof. */
  readonly shape: "rectangle" | "hipped";
  /** Along the slope, ridge centre or upper edge to outer plate face. */
  readonly lineLength: Cell;
  /** Along the rafters' upper edge, where a deck lies: ridge or upper end to tail. */
  readonly edgeLength: Cell;
  /** Level, outer plate face to rafter tail. */
  readonly overhang: Cell;
  /** Level, along the tails: outer faces of the fly rafters, or hip to hip. */
  readonly eave: Cell;
  /** Level, along the ridge or upper edge. */
  readonly top: Cell;
  /** Rows of purlins, or of screws in their place. */
  readonly purlinRows: Cell;
}

/** What a covering must know of the roof below it. */
export interface CoveredRoof {
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** Along the slope, for one `unitRun` of level length. */
  readonly unitLength: Cell;
  readonly planes: readonly CoveredPlane[];
  /** A ridge between two slopes; of a single one its free upper edge, or the wall that it leans on. */
  readonly upper: "ridge" | "edge" | "wall";
  readonly purlinSpacing: Cell;
  /** Rafters apart. */
  readonly rafterSpace: Cell;
  /** Of straight slopes: the pieces of one row of purlins, boards or battens, and the rafters under it. */
  readonly rows: RoofRows | undefined;
  /** Thickness of the fascia outside tails and fly rafters; absent where there is none. */
  readonly eaveFascia: Cell | undefined;
  readonly rakeFascia: Cell | undefined;
  readonly deck: Deck;
}

/** A row along the whole roof. */
export interface RoofRows {
  readonly run: LaidRun;
  /** Rafters that it crosses, fly rafters included. */
  readonly rafters: Cell;
}

/** Undefined where there is no closed roof. */
export function coveredRoof(sheet: Sheet, { frame }: CutList, units: DisplayUnits): CoveredRoof | undefined {
  switch (frame?.kind) {
    case "gable":
      return coveredGable(sheet, frame);
    case "lean-to":
      return coveredLeanTo(sheet, frame, units);
    case "hip":
      return coveredHip(frame);
    default:
      return undefined;
  }
}

/** Each slope by itself where the eaves differ. */
export function coveredGable(sheet: Sheet, gable: GableCells): CoveredRoof {
  const { frame, roof, rafter, farRafter, groups } = gable;
  const near = {
    name: "side",
    alike: 2,
    shape: "rectangle",
    lineLength: rafter.lineLength,
    edgeLength: rafter.edgeLength,
    overhang: frame.eaveOverhang,
    eave: roof.length,
    top: roof.length,
    purlinRows: roof.purlinRows,
  } as const;
  const far = {
    ...near,
    name: "far",
    alike: 1,
    lineLength: farRafter.lineLength,
    edgeLength: farRafter.edgeLength,
    overhang: frame.farOverhang,
    purlinRows: gable.farPurlinRows,
  };
  const equal = frame.farOverhang === frame.eaveOverhang;
  return {
    ...shared(gable),
    rows: rowsOn(sheet, gable),
    unitLength: rafter.unitLength,
    planes: equal ? [near] : [{ ...near, name: "near", alike: 1 }, far],
    upper: "ridge",
    eaveFascia: thicknessOf(groups, "eave-fascia"),
    rakeFascia: thicknessOf(groups, "rake-fascia"),
  };
}

/** Up to the outer face of the high fascia: sheets stop short of it as they would of a ridge. */
function coveredLeanTo(sheet: Sheet, leanTo: LeanToCells, units: DisplayUnits): CoveredRoof {
  const { frame, rafter, roof, groups } = leanTo;
  const highFascia = thicknessOf(groups, "high-fascia");
  const past = highFascia && over(times(highFascia, rafter.unitLength), frame.unitRun);
  const lineLength = past
    ? sheet.lay("roof.toHighFascia", plus(rafter.lineLength, past), {
        label: "low plate face to outer face of the high fascia",
        display: units.long,
      })
    : rafter.lineLength;
  const plane = {
    name: "slope",
    alike: 1,
    shape: "rectangle",
    lineLength,
    edgeLength: rafter.edgeLength,
    overhang: frame.lowOverhang,
    eave: roof.length,
    top: roof.length,
    purlinRows: roof.purlinRows,
  } as const;
  return {
    ...shared(leanTo),
    rows: rowsOn(sheet, leanTo),
    unitLength: rafter.unitLength,
    planes: [plane],
    upper: leanTo.highSide === "posts" ? "edge" : "wall",
    eaveFascia: thicknessOf(groups, "low-fascia"),
    rakeFascia: thicknessOf(groups, "rake-fascia"),
  };
}

/** Two trapezoids and two triangles. */
function coveredHip(hip: HipCells): CoveredRoof {
  const { frame, rafter, roof, groups, faces } = hip;
  const planes = faces.map(({ name, alike, eave, top }): CoveredPlane => {
    const { lineLength, edgeLength } = rafter;
    return {
      ...{ name, alike, shape: "hipped", lineLength, edgeLength, overhang: frame.eaveOverhang },
      ...{ eave, top, purlinRows: roof.purlinRows },
    };
  });
  return {
    ...shared(hip),
    rows: undefined,
    unitLength: rafter.unitLength,
    planes,
    upper: "ridge",
    eaveFascia: thicknessOf(groups, "side-fascia"),
    rakeFascia: undefined,
  };
}

const shared = ({ roof, rafterSpace }: GableCells | LeanToCells | HipCells) => {
  const { unitRise, unitRun, purlinSpacing, deck } = roof;
  return { unitRise, unitRun, purlinSpacing, rafterSpace, deck };
};

function rowsOn(sheet: Sheet, { rows, roof, groups }: GableCells | LeanToCells): RoofRows | undefined {
  if (!rows) return undefined;
  const fly = groups.some(({ name }) => name.startsWith("fly-rafters")) ? "2" : "0";
  const known = sheet.find("roof.rowRafters");
  const rafters =
    known ?? sheet.lay("roof.rowRafters", plus(roof.rafterLines, number(fly)), { label: "rafters under one row" });
  return { run: rows, rafters };
}

/** Runs fall into end and middle pieces, which share their section. */
const thicknessOf = (groups: readonly PieceGroup[], base: string) =>
  groups.find(({ name }) => name === base || name.startsWith(`${base}-`))?.thickness;
