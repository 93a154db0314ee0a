/** The geometry of a frame as JSON: what to set out and how to cut a rafter. */
import { z } from "zod";
import type { Basis } from "../../../estimate/basis.js";
import type { RafterCells } from "../../../estimate/pieces/common-rafter.js";
import type { RoofCells } from "../../../estimate/pieces/frame.js";
import type { GableCells } from "../../../estimate/pieces/gable.js";
import type { HipCells } from "../../../estimate/pieces/hip.js";
import type { LeanToCells } from "../../../estimate/pieces/lean-to.js";
import type { PergolaCells } from "../../../estimate/pieces/pergola.js";
import type { MeasureSystem } from "../../../estimate/quantity/text.js";
import type { Cell } from "../../../estimate/sheet/expression.js";
import { drawingsOf } from "../svg/drawings.js";
import { FigureSchema, figure, LengthSchema, lengthFigure, smallFigure } from "./figures.js";

const FrameSchema = z
  .strictObject({
    span: LengthSchema.describe("Level, between the outer faces of the plate beams."),
    length: LengthSchema.describe("Level, between the outer faces of the end posts."),
    eaveHeight: LengthSchema.describe("From the post base to the top of the plate beam."),
    rise: LengthSchema.describe("Rise of the roof over `run`."),
    run: LengthSchema.describe("Level length over which it rises."),
    eaveOverhang: LengthSchema.describe("Level, plate face to rafter tail."),
    farOverhang: LengthSchema.describe("The same of the far side."),
    gableOverhang: LengthSchema.describe("Outer face of the end posts to the roof's end."),
    bays: FigureSchema.describe("Bays between posts."),
    postPairs: FigureSchema.describe("Pairs of posts."),
    rafterSpacing: LengthSchema.describe("Rafters apart, at most."),
    purlinSpacing: LengthSchema.describe("Purlins apart, at most."),
    braceLeg: LengthSchema.describe("Leg of a brace."),
    longestPiece: LengthSchema.describe("Longest piece of a run."),
  })
  .meta({ id: "Frame", description: "The size of a gable." });

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
    ridge: z
      .enum(["board", "beam", "none"])
      .describe("A ridge board carries nothing; a beam does; a single slope has neither."),
  })
  .meta({ id: "RoofFrame", description: "The roof above the frame." });

const LeanToFrameSchema = z
  .strictObject({
    span: LengthSchema.describe("Level, outer face of the low plate beam to that of the high one, or to the wall."),
    length: LengthSchema.describe("Level, between the outer faces of the end posts."),
    lowHeight: LengthSchema.describe("From the post base to the top of the low plate beam."),
    highHeight: LengthSchema.describe(
      "From the post base to the top of the high beam, or the heel line at the ledger.",
    ),
    rise: LengthSchema.describe("Rise of the roof over `run`."),
    run: LengthSchema.describe("Level length over which it rises."),
    lowOverhang: LengthSchema.describe("Level, low plate face to rafter tail."),
    highOverhang: LengthSchema.nullable().describe("Level, high plate face to upper end; null at a wall."),
    endOverhang: LengthSchema.describe("Outer face of the end posts to the roof's end."),
    bays: FigureSchema.describe("Bays between posts."),
  })
  .meta({ id: "LeanToFrame", description: "The size of a lean-to." });

const HipFrameSchema = z
  .strictObject({
    span: LengthSchema.describe("Level, across, between the outer faces of the beams."),
    length: LengthSchema.describe("Level, along the ridge, between the outer faces of the end beams."),
    eaveHeight: LengthSchema.describe("From the post base to the top of the beams."),
    rise: LengthSchema.describe("Rise of the roof over `run`."),
    run: LengthSchema.describe("Level length over which it rises."),
    eaveOverhang: LengthSchema.describe("Level, beam face to rafter tail, all round."),
    ridgeLine: LengthSchema.describe("Ridge between the points where the hips' centres meet it."),
    bays: FigureSchema.describe("Bays between posts along each side."),
    endBays: FigureSchema.describe("Bays between posts across each end."),
    commonsApart: LengthSchema.describe("Common rafters apart, centres, along the ridge."),
    jacksApart: LengthSchema.describe("Jack rafters apart, centres."),
  })
  .meta({ id: "HipFrame", description: "The size of a hip roof." });

const HipRafterSchema = z
  .strictObject({
    unitLength: LengthSchema.describe("Hip for one run of the commons: the figure on a framing square at 12 in."),
    lineLength: LengthSchema.describe("Corner of the plates to the ridge's end, along the hip."),
    edgeLength: LengthSchema.describe("Between the points of its upper and lower cheeks."),
    plumbCut: LengthSchema.describe("What a plumb cut takes."),
    stockLength: LengthSchema.describe("Shortest straight piece from which it can be cut."),
    slopeAngle: FigureSchema.describe("Between level and hip; its plumb cut lies this far off square."),
    backingAngle: FigureSchema.describe("Bevel of either half of a backed upper edge."),
    drop: LengthSchema.describe("Plumb; how much lower a hip sits that is not backed."),
    seat: LengthSchema.describe("Level depth of its seat, along the hip."),
    notchDepth: LengthSchema.describe("Depth of its birdsmouth, square to the hip."),
    notchPlumb: LengthSchema.describe("Depth of its birdsmouth, plumb."),
    sideCut: LengthSchema.describe("Side cut across its upper edge, on the square beside one run."),
  })
  .meta({ id: "HipCuts", description: "The hip rafter." });

const JackSchema = z
  .strictObject({
    difference: LengthSchema.describe("Each jack is so much shorter than its longer neighbour."),
    sideCut: LengthSchema.describe("Side cut across their upper edge, on the square beside one run."),
    sideAngle: FigureSchema.describe("The same, between the cut and the rafter's edge."),
  })
  .meta({ id: "JackCuts", description: "What all jack rafters share." });

const PergolaFrameSchema = z
  .strictObject({
    span: LengthSchema.describe("Level, across, between the outer faces of the beams."),
    length: LengthSchema.describe("Level, along the beams, between the outer faces of the end posts."),
    height: LengthSchema.describe("From the post base to the top of the beams."),
    topWidth: LengthSchema.describe("Along the rafters, end to end."),
    topLength: LengthSchema.describe("Along the beams, end to end."),
    bays: FigureSchema.describe("Bays between posts."),
    raftersApart: LengthSchema.describe("Rafters apart, centres, as they stand."),
  })
  .meta({ id: "PergolaFrame", description: "The size of a pergola." });

export const DrawingSchema = z
  .strictObject({
    name: z
      .string()
      .describe(
        "Name of the drawing: plan, elevation, section, rafter, footings, floor, wall-near and others of some kinds; with -card behind it the same for a narrow screen, not to scale.",
      ),
    title: z.string().describe("In words."),
    svg: z
      .string()
      .describe(
        "An SVG, black on white; a page of 259 × 190 mm, to scale when it is printed at full size. A card has no scale: it is the view for small screens.",
      ),
  })
  .meta({ id: "Drawing", description: "A drawing to scale, with dimensions." });

const drawings = z
  .array(DrawingSchema)
  .optional()
  .describe(
    "With include=drawings: plan, elevation, section, rafters, footings, floor and walls, and pieces that the request lists itself. The covering is drawn in coverings.",
  );

const common = { rafter: RafterSchema.describe("How to cut a common rafter."), roof: RoofSchema.describe("The roof.") };

const GableGeometrySchema = z
  .strictObject({
    kind: z.literal("gable").describe("Kind of structure."),
    frame: FrameSchema.describe("The size of the whole."),
    ...common,
    farRafter: RafterSchema.nullable().describe("The far side's common rafter; null where both sides are alike."),
    drawings,
  })
  .meta({ id: "GableGeometry", description: "A gable." });

const LeanToGeometrySchema = z
  .strictObject({
    kind: z.literal("lean-to").describe("Kind of structure."),
    highSide: z.enum(["posts", "ledger"]).describe("What carries the upper ends of the rafters."),
    frame: LeanToFrameSchema.describe("The size of the whole."),
    ...common,
    drawings,
  })
  .meta({ id: "LeanToGeometry", description: "A single slope." });

const HipGeometrySchema = z
  .strictObject({
    kind: z.literal("hip").describe("Kind of structure."),
    frame: HipFrameSchema.describe("The size of the whole."),
    ...common,
    endRafter: RafterSchema.describe("How to cut the rafter against the ridge's end."),
    hip: HipRafterSchema.describe("How to cut a hip."),
    jacks: JackSchema.describe("How to cut the jacks."),
    drawings,
  })
  .meta({ id: "HipGeometry", description: "A hip roof." });

const PergolaGeometrySchema = z
  .strictObject({
    kind: z.literal("pergola").describe("Kind of structure."),
    frame: PergolaFrameSchema.describe("The size of the whole."),
    drawings,
  })
  .meta({ id: "PergolaGeometry", description: "A pergola." });

const ListGeometrySchema = z
  .strictObject({ kind: z.literal("pieces").describe("Kind of structure."), drawings })
  .meta({ id: "ListGeometry", description: "A list of pieces: where they go is not said." });

export const GeometrySchema = z
  .discriminatedUnion("kind", [
    GableGeometrySchema,
    LeanToGeometrySchema,
    HipGeometrySchema,
    PergolaGeometrySchema,
    ListGeometrySchema,
  ])
  .meta({ id: "Geometry", description: "What to set out." });
export type Geometry = z.output<typeof GeometrySchema>;

/** @param drawn - With its drawings. */
export function shownGeometry(basis: Basis, drawn: boolean): Geometry {
  return { ...shownFrame(basis), ...(drawn && { drawings: drawingsOf(basis) }) };
}

function shownFrame({ cutList: { frame }, request: { system } }: Basis): Geometry {
  switch (frame?.kind) {
    case "gable":
      return shownGable(frame, system);
    case "lean-to":
      return shownLeanTo(frame, system);
    case "hip":
      return shownHip(frame, system);
    case "pergola":
      return shownPergola(frame, system);
    default:
      return { kind: "pieces" };
  }
}

/** Lengths of buildings, and of details. */
const lengths = (system: MeasureSystem) => ({
  long: (cell: Cell) => lengthFigure(cell, system),
  small: (cell: Cell) => smallFigure(cell, system),
});

function shownGable(gable: GableCells, system: MeasureSystem): z.output<typeof GableGeometrySchema> {
  const { frame, rafter, farRafter, roof } = gable;
  const { long, small } = lengths(system);
  return {
    kind: "gable",
    frame: {
      span: long(frame.span),
      length: long(frame.length),
      eaveHeight: long(frame.eaveHeight),
      rise: small(frame.unitRise),
      run: small(frame.unitRun),
      eaveOverhang: small(frame.eaveOverhang),
      farOverhang: small(frame.farOverhang),
      gableOverhang: small(frame.gableOverhang),
      bays: figure(frame.bays),
      postPairs: figure(gable.postPairs),
      rafterSpacing: small(frame.rafterSpacing),
      purlinSpacing: small(frame.purlinSpacing),
      braceLeg: small(frame.braceLeg),
      longestPiece: long(frame.longestPiece),
    },
    rafter: shownRafter(rafter, system),
    farRafter: farRafter === rafter ? null : shownRafter(farRafter, system),
    roof: shownRoof(roof, system),
  };
}

function shownLeanTo(leanTo: LeanToCells, system: MeasureSystem): z.output<typeof LeanToGeometrySchema> {
  const { frame, highSide, highHeight, rafter, roof } = leanTo;
  const { long, small } = lengths(system);
  return {
    kind: "lean-to",
    highSide,
    frame: {
      span: long(frame.span),
      length: long(frame.length),
      lowHeight: long(frame.eaveHeight),
      highHeight: long(highHeight),
      rise: small(frame.unitRise),
      run: small(frame.unitRun),
      lowOverhang: small(frame.lowOverhang),
      highOverhang: frame.highOverhang ? small(frame.highOverhang) : null,
      endOverhang: small(frame.endOverhang),
      bays: figure(frame.bays),
    },
    rafter: shownRafter(rafter, system),
    roof: shownRoof(roof, system),
  };
}

function shownHip(cells: HipCells, system: MeasureSystem): z.output<typeof HipGeometrySchema> {
  const { frame, layout, rafter, endRafter, hip, jacks, roof } = cells;
  const { long, small } = lengths(system);
  return {
    kind: "hip",
    frame: {
      span: long(frame.span),
      length: long(frame.length),
      eaveHeight: long(frame.eaveHeight),
      rise: small(frame.unitRise),
      run: small(frame.unitRun),
      eaveOverhang: small(frame.eaveOverhang),
      ridgeLine: long(layout.ridgeLine),
      bays: figure(frame.bays),
      endBays: figure(frame.endBays),
      commonsApart: small(layout.commonSpace),
      jacksApart: small(layout.jackSpace),
    },
    rafter: shownRafter(rafter, system),
    endRafter: shownRafter(endRafter, system),
    hip: {
      unitLength: small(hip.unitLength),
      lineLength: long(hip.lineLength),
      edgeLength: long(hip.edgeLength),
      plumbCut: small(hip.plumbCut),
      stockLength: long(hip.stockLength),
      slopeAngle: figure(hip.slopeAngle),
      backingAngle: figure(hip.backingAngle),
      drop: small(hip.drop),
      seat: small(hip.seat),
      notchDepth: small(hip.notchDepth),
      notchPlumb: small(hip.notchPlumb),
      sideCut: small(hip.sideCut),
    },
    jacks: {
      difference: small(jacks.difference),
      sideCut: small(jacks.sideCut),
      sideAngle: figure(jacks.sideAngle),
    },
    roof: shownRoof(roof, system),
  };
}

function shownPergola(pergola: PergolaCells, system: MeasureSystem): z.output<typeof PergolaGeometrySchema> {
  const { frame, topWidth, topLength, rafterSpace } = pergola;
  const { long, small } = lengths(system);
  return {
    kind: "pergola",
    frame: {
      span: long(frame.span),
      length: long(frame.length),
      height: long(frame.height),
      topWidth: long(topWidth),
      topLength: long(topLength),
      bays: figure(frame.bays),
      raftersApart: small(rafterSpace),
    },
  };
}

function shownRafter(rafter: RafterCells, system: MeasureSystem): z.output<typeof RafterSchema> {
  const { long, small } = lengths(system);
  return {
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
  };
}

function shownRoof(roof: RoofCells, system: MeasureSystem): z.output<typeof RoofSchema> {
  const { long } = lengths(system);
  return {
    length: long(roof.length),
    slopeLength: long(roof.slopeLength),
    rafterLines: figure(roof.rafterLines),
    purlinRows: figure(roof.purlinRows),
    ridge: roof.ridgeKind,
  };
}
