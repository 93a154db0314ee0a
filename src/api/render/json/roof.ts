/** A roof covering as JSON: a full system with the verdict of the code on its slope. */
import { z } from "zod";
import { coveringName } from "../../../catalog/coverings.js";
import type { ComparedCovering } from "../../../estimate/covering-comparison.js";
import type { MeasureSystem } from "../../../estimate/quantity/text.js";
import type { CoveringTakeoff } from "../../../estimate/takeoff/covering.js";
import type { FaceLayout } from "../../../estimate/takeoff/covering-work.js";
import type { PanelCells } from "../../../estimate/takeoff/panels.js";
import type { SlopeVerdict } from "../../../estimate/takeoff/slope-verdict.js";
import { roofLayouts } from "../svg/roof-layout.js";
import { ComparedSchema, shownCompared } from "./compared-coverings.js";
import { FigureSchema, figure, figureOrNull, LengthSchema, lengthFigure, smallFigure } from "./figures.js";
import { DrawingSchema } from "./geometry.js";

const SlopeSchema = z
  .strictObject({
    allowed: z.boolean().describe("Whether the code allows the covering at this slope."),
    lapsSealed: z.boolean().describe("Whether it is allowed only because the laps are sealed."),
    reason: z.string().describe("Why."),
    reference: z.string().describe("The clause."),
  })
  .meta({ id: "SlopeVerdict", description: "Whether a covering is allowed at the roof's slope." });

const StripSchema = z
  .strictObject({
    reach: LengthSchema.describe("Up the slope from the eave."),
    up: FigureSchema.describe("Panels or boards one after the other."),
    length: LengthSchema.describe("Of one of them."),
  })
  .meta({ id: "RoofStrip", description: "One strip of a hipped slope." });

const FaceSchema = z
  .strictObject({
    name: z.string().describe("Which slope."),
    alike: z.int().describe("How many slopes are just so."),
    shape: z.enum(["rectangle", "hipped"]).describe("hipped: narrows from its eave to its top."),
    eave: LengthSchema.describe("Along the eave, edge to edge."),
    top: LengthSchema.describe("Along the ridge; 0 where the slope comes to a point."),
    slopeLength: LengthSchema.describe("Along the slope, edge to edge."),
    area: FigureSchema.describe("Of all slopes that are alike."),
    across: FigureSchema.nullable().describe("Panels or boards side by side; null for courses and rolls."),
    up: FigureSchema.describe("Panels, courses or strips one above the other."),
    module: LengthSchema.describe("What one adds: cover width of a panel or board, height of a course to the weather."),
    pieceLength: LengthSchema.nullable().describe("Of one panel or board, where all are alike."),
    strips: z.array(StripSchema).describe("Of a hipped slope with panels or boards, from one corner to the other."),
  })
  .meta({ id: "CoveredSlope", description: "One slope, and how it is covered." });

const TrimSchema = z
  .strictObject({
    kind: z.string().describe("Which trim."),
    length: LengthSchema.describe("All edges, laps not counted."),
    pieces: FigureSchema.describe("Pieces to buy."),
    pieceLength: LengthSchema.describe("Length of one piece."),
  })
  .meta({ id: "RoofTrim", description: "Metal trim of one kind." });

const PanelsSchema = z
  .strictObject({
    count: FigureSchema.describe("Panels in all."),
    trims: z.array(TrimSchema).describe("Ridge, hips, eaves and rakes."),
    eaveClosures: FigureSchema.nullable().describe("Closure strips at the eaves; null where none are used."),
    ridgeClosures: FigureSchema.nullable().describe("Closure strips at ridge and hips; null where none are used."),
    sealant: FigureSchema.nullable().describe("Length of sealed laps; null where none are sealed."),
    roofScrews: FigureSchema.describe("Screws into wood, as driven."),
    stitchScrews: FigureSchema.describe("Screws sheet to sheet, as driven."),
    clips: FigureSchema.nullable().describe("Hidden clips; null where screws hold the panels."),
  })
  .meta({ id: "Panels", description: "Panels with their fixing and trim." });

const CoursesSchema = z
  .strictObject({
    exposure: LengthSchema.describe("Height of a course to the weather."),
    pieces: FigureSchema.describe("Strips, shingles or tiles as laid."),
    bundles: FigureSchema.describe("Bundles, or tiles, to buy."),
  })
  .meta({ id: "Courses", description: "Shingles, shakes or tiles." });

const PartSchema = z
  .strictObject({
    name: z.string().describe("Name of the need."),
    label: z.string().describe("In words."),
    quantity: FigureSchema.describe("How much, waste and spares included."),
  })
  .meta({ id: "RoofPart", description: "Something that the covering takes, whoever sells it." });

export const RoofCoveringSchema = z
  .strictObject({
    kind: z.string().describe("The name to use in requests."),
    name: z.string().describe("In words."),
    form: z.enum(["panels", "courses", "rolls", "boards"]).describe("How it is laid."),
    slope: SlopeSchema.describe("Shown even where it is not allowed."),
    faces: z.array(FaceSchema).describe("Each slope by itself; slopes that are alike once."),
    area: FigureSchema.describe("Edge to edge, all slopes."),
    squares: FigureSchema.describe("The same in squares of 100 ft²."),
    weight: FigureSchema.describe("Weight of covering and underlay, and of the deck where it is sheets."),
    trimLength: LengthSchema.describe("Trim to fit."),
    life: FigureSchema.describe("Years until it is laid anew."),
    underlayLayers: z.int().describe("Layers of underlay; 0 where there is none."),
    panels: PanelsSchema.nullable().describe("Of panels; null for other coverings."),
    courses: CoursesSchema.nullable().describe("Of shingles, shakes and tile; null for other coverings."),
    parts: z.array(PartSchema).describe("All that it takes."),
    built: z.boolean().describe("Whether the request builds with it."),
    compared: ComparedSchema.nullable().describe("Beside the others; null where none are compared."),
    drawings: z
      .array(DrawingSchema)
      .optional()
      .describe("With include=drawings: each slope with its panels or courses; slopes that are alike once."),
  })
  .meta({ id: "RoofCovering", description: "One roof covering as a full system." });
type ShownCovering = z.output<typeof RoofCoveringSchema>;

/** What lies on a roof, or might. */
interface RoofCoverings {
  readonly built: CoveringTakeoff | undefined;
  /** Best first; the built one among them. */
  readonly compared: readonly ComparedCovering[];
}

/** The covering that is built, or all that are compared; empty where nothing is covered. @param drawn - With drawings. */
export function shownRoof({ built, compared }: RoofCoverings, system: MeasureSystem, drawn: boolean): ShownCovering[] {
  const drawings = (covering: CoveringTakeoff) => (drawn ? { drawings: roofLayouts(covering, system) } : {});
  if (compared.length === 0) {
    return built ? [{ ...shownCovering(built, system), built: true, compared: null, ...drawings(built) }] : [];
  }
  return compared.map((one, i) => ({
    ...shownCovering(one.takeoff, system),
    built: one.built,
    compared: shownCompared(one, i, system),
    ...drawings(one.takeoff),
  }));
}

/** One covering with all its slopes and parts. */
function shownCovering(
  covering: CoveringTakeoff,
  system: MeasureSystem,
): Omit<ShownCovering, "built" | "compared" | "drawings"> {
  const { courses, panels } = covering;
  return {
    kind: covering.kind,
    name: coveringName(covering.kind, system),
    form: covering.form,
    slope: shownSlope(covering.slope),
    faces: covering.faces.map((layout) => shownFace(layout, system)),
    area: figure(covering.area),
    squares: figure(covering.squares),
    weight: figure(covering.weight),
    trimLength: lengthFigure(covering.trimLength, system),
    life: figure(covering.life),
    underlayLayers: covering.underlay?.layers ?? 0,
    panels: panels ? shownPanels(panels, system) : null,
    courses: courses
      ? {
          exposure: smallFigure(courses.exposure, system),
          pieces: figure(courses.pieces),
          bundles: figure(courses.bundles),
        }
      : null,
    parts: covering.needs.map(({ name, label, quantity }) => ({ name, label, quantity: figure(quantity) })),
  };
}

const shownSlope = ({ allowed, lapsSealed, reason, reference }: SlopeVerdict) => ({
  ...{ allowed, lapsSealed },
  ...{ reason, reference },
});

function shownFace({ face, across, up, module, pieceLength, strips }: FaceLayout, system: MeasureSystem) {
  const { name, alike, shape } = face;
  return {
    ...{ name, alike, shape },
    eave: lengthFigure(face.eave, system),
    top: lengthFigure(face.top, system),
    slopeLength: lengthFigure(face.slopeLength, system),
    area: figure(face.area),
    across: figureOrNull(across),
    up: figure(up),
    module: smallFigure(module, system),
    pieceLength: pieceLength ? lengthFigure(pieceLength, system) : null,
    strips: (strips ?? []).map((strip) => ({
      reach: lengthFigure(strip.reach, system),
      up: figure(strip.up),
      length: lengthFigure(strip.length, system),
    })),
  };
}

function shownPanels(panels: PanelCells, system: MeasureSystem): z.output<typeof PanelsSchema> {
  const trims = [...panels.trims].map(([kind, { length, pieces, pieceLength }]) => ({
    kind,
    length: lengthFigure(length, system),
    pieces: figure(pieces),
    pieceLength: lengthFigure(pieceLength, system),
  }));
  return {
    count: figure(panels.panels),
    trims,
    eaveClosures: figureOrNull(panels.eaveClosures),
    ridgeClosures: figureOrNull(panels.ridgeClosures),
    sealant: figureOrNull(panels.sealant),
    roofScrews: figure(panels.roofScrews),
    stitchScrews: figure(panels.stitchScrews),
    clips: figureOrNull(panels.clips),
  };
}
