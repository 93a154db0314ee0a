/** The geometry of a frame as JSON: what to set out and how to cut a rafter. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";
import type { GableCells } from "../../../estimate/pieces/gable.js";
import type { MeasureSystem } from "../../../estimate/quantity/text.js";
import { FigureSchema, figure, LengthSchema, lengthFigure, smallFigure } from "./figures.js";

const FrameSchema = z
  .strictObject({
    span: LengthSchema.describe("Level, between the outer faces of the plate beams."),
    length: LengthSchema.describe("Level, between the outer faces of the end posts."),
    eaveHeight: LengthSchema.describe("From the post base to the top of the plate beam."),
    rise: LengthSchema.describe("Rise of the roof over `run`."),
    run: LengthSchema.describe("Level length over which it rises."),
    eaveOverhang: LengthSchema.describe("Level, plate face to rafter tail."),
    gableOverhang: LengthSchema.describe("Outer face of the end posts to the roof's end."),
    bays: FigureSchema.describe("Bays between posts."),
    postPairs: FigureSchema.describe("Pairs of posts."),
    rafterSpacing: LengthSchema.describe("Rafters apart, at most."),
    purlinSpacing: LengthSchema.describe("Purlins apart, at most."),
    braceLeg: LengthSchema.describe("Leg of a brace."),
    longestPiece: LengthSchema.describe("Longest piece of a run."),
  })
  .meta({ id: "Frame", description: "The size of the whole." });

const RafterSchema = z
  .strictObject({
    unitLength: LengthSchema.describe("Rafter for one run: the figure on a framing square, where the run is 12 in."),
    lineLength: LengthSchema.describe("Along the slope, plate face to ridge centre."),
    edgeLength: LengthSchema.describe("Along one edge, ridge face to tail, between the plumb cuts."),
    plumbCut: LengthSchema.describe("What the plumb cut takes beyond the edge length."),
    stockLength: LengthSchema.describe("Shortest straight piece from which it can be cut."),
    slopeAngle: FigureSchema.describe("Between level and rafter; a plumb cut lies this far off square."),
    seat: LengthSchema.describe("Level depth of the birdsmouth's seat."),
    notchDepth: LengthSchema.describe("Depth of the birdsmouth, square to the rafter."),
    notchPlumb: LengthSchema.describe("Depth of the birdsmouth, plumb."),
    heightAbovePlate: LengthSchema.describe("Plumb, from the plate's top to the rafter's upper edge."),
    gapAtOneDegree: LengthSchema.describe("How far a plumb cut gapes when the saw is one degree off."),
  })
  .meta({ id: "RafterCuts", description: "The common rafter." });

const RoofSchema = z
  .strictObject({
    length: LengthSchema.describe("Along the eave, outer faces of the fly rafters."),
    slopeLength: LengthSchema.describe("Ridge to tail along the rafter, one slope."),
    rafterLines: FigureSchema.describe("Pairs of common rafters."),
    purlinRows: FigureSchema.describe("Rows of purlins on one slope."),
    ridge: z.enum(["board", "beam"]).describe("A ridge board carries nothing; a beam does."),
  })
  .meta({ id: "RoofFrame", description: "The roof above the frame." });

export const GeometrySchema = z
  .strictObject({
    kind: z.literal("gable").describe("Kind of structure."),
    frame: FrameSchema.describe("The size of the whole."),
    rafter: RafterSchema.describe("How to cut a common rafter."),
    roof: RoofSchema.describe("The roof."),
  })
  .meta({ id: "Geometry", description: "What to set out." });

/** Null where the structure is a list of pieces. */
export function shownGeometry({ cutList, request }: Basis): z.output<typeof GeometrySchema> | null {
  return cutList.gable ? shownGable(cutList.gable, request.system) : null;
}

function shownGable(gable: GableCells, system: MeasureSystem): z.output<typeof GeometrySchema> {
  const { frame, rafter, roof } = gable;
  const long = (cell: GableCells["frame"]["span"]) => lengthFigure(cell, system);
  const small = (cell: GableCells["frame"]["span"]) => smallFigure(cell, system);
  return {
    kind: "gable",
    frame: {
      span: long(frame.span),
      length: long(frame.length),
      eaveHeight: long(frame.eaveHeight),
      rise: small(frame.unitRise),
      run: small(frame.unitRun),
      eaveOverhang: small(frame.eaveOverhang),
      gableOverhang: small(frame.gableOverhang),
      bays: figure(frame.bays),
      postPairs: figure(gable.postPairs),
      rafterSpacing: small(frame.rafterSpacing),
      purlinSpacing: small(frame.purlinSpacing),
      braceLeg: small(frame.braceLeg),
      longestPiece: long(frame.longestPiece),
    },
    rafter: {
      unitLength: small(rafter.unitLength),
      lineLength: long(rafter.lineLength),
      edgeLength: long(rafter.edgeLength),
      plumbCut: small(rafter.plumbCut),
      stockLength: long(rafter.stockLength),
      slopeAngle: figure(rafter.slopeAngle),
      seat: small(rafter.seat),
      notchDepth: small(rafter.notchDepth),
      notchPlumb: small(rafter.notchPlumb),
      heightAbovePlate: small(rafter.heightAbovePlate),
      gapAtOneDegree: small(rafter.gapAtOneDegree),
    },
    roof: {
      length: long(roof.length),
      slopeLength: long(roof.slopeLength),
      rafterLines: figure(roof.rafterLines),
      purlinRows: figure(roof.purlinRows),
      ridge: roof.ridgeKind,
    },
  };
}
