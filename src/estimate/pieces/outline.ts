/** A frame of any kind, and its size as a whole, roof included: what is set out on the ground and asked by whoever lives next door. */
import type { DisplayUnits } from "../quantity/display.js";
import { type Cell, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { GableCells } from "./gable.js";
import type { HipCells } from "./hip.js";
import type { LeanToCells } from "./lean-to.js";
import type { PergolaCells } from "./pergola.js";

/** A frame of any kind; `kind` tells them apart. */
export type FrameCells = GableCells | LeanToCells | HipCells | PergolaCells;

/** Outer measures of a frame. */
export interface OutlineCells {
  /** Level, across the building, tail to tail. */
  readonly width: Cell;
  /** Level, along the building. */
  readonly length: Cell;
  /** From the post base to where the rafters are highest; what lies on them comes in addition. */
  readonly height: Cell;
}

/** Lays the outline of a frame of any kind. */
export function layOutline(sheet: Sheet, frame: FrameCells, units: DisplayUnits): OutlineCells {
  const display = units.long;
  const height = "post base to the highest point of the rafters";
  const lay = (name: string, label: string, formula: Parameters<Sheet["lay"]>[1]) =>
    sheet.lay(`roof.${name}`, formula, { label, display });
  if (frame.kind === "pergola") {
    const top = lay("height", height, plus(frame.frame.height, frame.rafterDepth));
    return { width: frame.topWidth, length: frame.topLength, height: top };
  }
  const { eaveHeight, unitRise, unitRun } = frame.frame;
  const run = sheet.find("roof.run");
  if (!run) throw new Error("a sloping roof has a run");
  const rise = over(times(run, unitRise), unitRun);
  return {
    width: lay("width", "across the roof, tail to tail", plus(frame.span, ...overhangs(frame))),
    length: frame.roof.length,
    height: lay("height", height, plus(eaveHeight, rise, frame.rafter.heightAbovePlate)),
  };
}

function overhangs(frame: Exclude<FrameCells, { readonly kind: "pergola" }>): Cell[] {
  switch (frame.kind) {
    case "gable":
      return [frame.frame.eaveOverhang, frame.frame.farOverhang];
    case "hip":
      return [frame.frame.eaveOverhang, frame.frame.eaveOverhang];
    case "lean-to":
      return [frame.frame.lowOverhang, ...(frame.frame.highOverhang ? [frame.frame.highOverhang] : [])];
  }
}
