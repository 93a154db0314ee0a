/** The roof of a frame, as its covering sees it. */
import type { CutList } from "../pieces/cut-list.js";
import type { GableCells } from "../pieces/gable.js";
import type { LeanToCells } from "../pieces/lean-to.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { DisplayUnits } from "../quantity/display.js";
import { greatest, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type CoveredRoof, coveredGable } from "./covering.js";

/** Roofs of one rectangular slope, or of two that are alike; undefined for all others. */
export function coveredRoof(sheet: Sheet, { frame }: CutList, units: DisplayUnits): CoveredRoof | undefined {
  if (frame?.kind === "gable") return coveredByWider(sheet, frame, units);
  return frame?.kind === "lean-to" ? coveredLeanTo(sheet, frame, units) : undefined;
}

/** Where the eaves of a gable differ, both slopes are covered as the longer one is; one who orders has enough. */
function coveredByWider(sheet: Sheet, gable: GableCells, units: DisplayUnits): CoveredRoof {
  const { frame, roof } = gable;
  if (frame.farOverhang === frame.eaveOverhang) return coveredGable(gable);
  const eaveOverhang = sheet.lay("roof.widerOverhang", greatest(frame.eaveOverhang, frame.farOverhang), {
    label: "eave overhang of the longer slope, level",
    display: units.small,
  });
  const purlinRows = sheet.lay("roof.longerRows", greatest(roof.purlinRows, gable.farPurlinRows), {
    label: "purlin rows of the longer slope",
  });
  return { ...coveredGable(gable), eaveOverhang, purlinRows };
}

/** Up to the outer face of the high fascia: sheets stop short of it as they would of a ridge. */
function coveredLeanTo(sheet: Sheet, { frame, rafter, roof, groups }: LeanToCells, units: DisplayUnits): CoveredRoof {
  const highFascia = thicknessOf(groups, "high-fascia");
  const past = highFascia && over(times(highFascia, rafter.unitLength), frame.unitRun);
  const lineLength = past
    ? sheet.lay("roof.toHighFascia", plus(rafter.lineLength, past), {
        label: "low plate face to outer face of the high fascia",
        display: units.long,
      })
    : rafter.lineLength;
  return {
    slopes: 1,
    unitRise: roof.unitRise,
    unitRun: roof.unitRun,
    unitLength: rafter.unitLength,
    lineLength,
    eaveOverhang: frame.lowOverhang,
    length: roof.length,
    purlinRows: roof.purlinRows,
    eaveFascia: thicknessOf(groups, "low-fascia"),
    rakeFascia: thicknessOf(groups, "rake-fascia"),
  };
}

/** Runs fall into end and middle pieces, which share their section. */
const thicknessOf = (groups: readonly PieceGroup[], base: string) =>
  groups.find(({ name }) => name === base || name.startsWith(`${base}-`))?.thickness;
