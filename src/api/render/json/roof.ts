/** The roof covering that is taken off, as JSON: a full system with the verdict of the code on its slope. */
import { z } from "zod";
import { coveringOf } from "../../../catalog/coverings.js";
import type { MeasureSystem } from "../../../estimate/quantity/text.js";
import type { CoveringTakeoff, SlopeVerdict } from "../../../estimate/takeoff/covering.js";
import type { PanelCells } from "../../../estimate/takeoff/panels.js";
import { FigureSchema, figure, figureOrNull, LengthSchema, lengthFigure } from "./figures.js";

const SlopeSchema = z
  .strictObject({
    allowed: z.boolean().describe("Whether the code allows the covering at this slope."),
    lapsSealed: z.boolean().describe("Whether it is allowed only because the laps are sealed."),
    reason: z.string().describe("Why."),
    reference: z.string().describe("The clause."),
  })
  .meta({ id: "SlopeVerdict", description: "Whether a covering is allowed at the roof's slope." });

const TrimSchema = z
  .strictObject({
    kind: z.enum(["ridge-cap", "eave-trim", "rake-trim"]).describe("Which trim."),
    length: LengthSchema.describe("All edges, laps not counted."),
    pieces: FigureSchema.describe("Pieces to buy."),
    pieceLength: LengthSchema.describe("Length of one piece."),
  })
  .meta({ id: "RoofTrim", description: "Metal trim of one kind." });

const PanelsSchema = z
  .strictObject({
    across: FigureSchema.describe("Panels side by side on one slope."),
    up: FigureSchema.describe("Panels one after the other up the slope."),
    length: LengthSchema.describe("Length of one panel."),
    count: FigureSchema.describe("Panels in all."),
    trims: z.array(TrimSchema).describe("Ridge, eaves and rakes."),
    eaveClosures: FigureSchema.nullable().describe("Closure strips at the eaves; null where none are used."),
    ridgeClosures: FigureSchema.nullable().describe("Closure strips at the ridge; null where none are used."),
    sealant: FigureSchema.nullable().describe("Length of sealed laps; null where none are sealed."),
    roofScrews: FigureSchema.describe("Screws into wood, as driven."),
    stitchScrews: FigureSchema.describe("Screws sheet to sheet, as driven."),
  })
  .meta({ id: "Panels", description: "Panels with their fixing and trim." });

export const RoofCoveringSchema = z
  .strictObject({
    kind: z.string().describe("The name to use in requests."),
    name: z.string().describe("In words."),
    slope: SlopeSchema.describe("Shown even where it is not allowed."),
    width: LengthSchema.describe("Along the eave, sheet edge to sheet edge."),
    slopeLength: LengthSchema.describe("Along one slope, sheet edge to sheet edge."),
    area: FigureSchema.describe("Sheet edge to sheet edge, all slopes."),
    squares: FigureSchema.describe("The same in squares of 100 ft²."),
    weight: FigureSchema.describe("Weight of the covering."),
    trimLength: LengthSchema.describe("Trim to fit."),
    panels: PanelsSchema.describe("Panels, fixing and trim."),
  })
  .meta({ id: "RoofCovering", description: "One roof covering as a full system." });

/** A list, for a roof may be compared under several coverings; empty where nothing is covered. */
export function shownRoof(
  covering: CoveringTakeoff | undefined,
  system: MeasureSystem,
): z.output<typeof RoofCoveringSchema>[] {
  return covering ? [shownCovering(covering, system)] : [];
}

function shownCovering(covering: CoveringTakeoff, system: MeasureSystem): z.output<typeof RoofCoveringSchema> {
  return {
    kind: covering.kind,
    name: coveringOf(covering.kind).name,
    slope: shownSlope(covering.slope),
    width: lengthFigure(covering.width, system),
    slopeLength: lengthFigure(covering.slopeLength, system),
    area: figure(covering.area),
    squares: figure(covering.squares),
    weight: figure(covering.weight),
    trimLength: lengthFigure(covering.trimLength, system),
    panels: shownPanels(covering.panels, system),
  };
}

const shownSlope = ({ allowed, lapsSealed, reason, reference }: SlopeVerdict) => ({
  ...{ allowed, lapsSealed },
  ...{ reason, reference },
});

function shownPanels(panels: PanelCells, system: MeasureSystem): z.output<typeof PanelsSchema> {
  const trim = (kind: "ridge-cap" | "eave-trim" | "rake-trim") => {
    const { length, pieces, pieceLength } = panels.trims[kind];
    return {
      kind,
      length: lengthFigure(length, system),
      pieces: figure(pieces),
      pieceLength: lengthFigure(pieceLength, system),
    };
  };
  return {
    across: figure(panels.across),
    up: figure(panels.up),
    length: lengthFigure(panels.length, system),
    count: figure(panels.panels),
    trims: [trim("ridge-cap"), trim("eave-trim"), trim("rake-trim")],
    eaveClosures: figureOrNull(panels.closures?.["eave-closure"]),
    ridgeClosures: figureOrNull(panels.closures?.["ridge-closure"]),
    sealant: figureOrNull(panels.sealant),
    roofScrews: figure(panels.roofScrews),
    stitchScrews: figure(panels.stitchScrews),
  };
}
