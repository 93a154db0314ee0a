/** Gables for the takeoff tests: laid on a sheet of their own, by the structure rules. */

import { type CutList, layCutList } from "../../../src/estimate/pieces/cut-list.js";
import type { GableCells } from "../../../src/estimate/pieces/gable.js";
import type { DisplayUnits } from "../../../src/estimate/quantity/display.js";
import { displayUnits } from "../../../src/estimate/quantity/display.js";
import type { MeasureSystem } from "../../../src/estimate/quantity/text.js";
import { Assumed, type AssumptionText } from "../../../src/estimate/request/assumed.js";
import { Defaults } from "../../../src/estimate/request/given.js";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import type { OverrideText } from "../../../src/estimate/sheet/overriding.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

export interface Laid extends CutList {
  readonly sheet: Sheet;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
  readonly units: DisplayUnits;
  readonly gable: GableCells;
}

export interface Given {
  readonly system?: MeasureSystem;
  readonly overrides?: Readonly<Record<string, OverrideText>>;
  readonly assumptions?: Readonly<Record<string, AssumptionText>>;
}

/** 16 × 24 ft at 5 in 12, where a rafter for one foot of run is 13 in long; all else by default. */
const SHELTER: GableShape = {
  kind: "gable",
  span: "16 ft",
  length: "24 ft",
  slope: { rise: "5 in", run: "12 in" },
};

/** Lays any structure; `gable` is there for gables only. */
export function laidPieces(structure: StructureShape, given: Given = {}): Omit<Laid, "gable"> & CutList {
  const system = given.system ?? "inch-pound";
  const sheet = new Sheet(new Map(Object.entries(given.overrides ?? {})));
  const [defaults, units] = [new Defaults(system), displayUnits(system)];
  const assumed = new Assumed(sheet, given.assumptions);
  return { sheet, assumed, defaults, units, ...layCutList({ sheet, defaults, units }, structure) };
}

/** Lays a gable. */
export function laidGable(shape: Partial<GableShape> = {}, given: Given = {}): Laid {
  const laid = laidPieces({ ...SHELTER, ...shape }, given);
  if (!laid.gable) throw new Error("no gable");
  return { ...laid, gable: laid.gable };
}
