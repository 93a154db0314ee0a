/**
 * An open gable shelter to its piece groups: bays, posts, plate beams, gable-end beams, ties, ridge, rafters, fly rafters,
 * braces, purlins, fascia. A ridge board is joined over rafters; a ridge beam over king posts, one on every tie.
 *
 * The frame stands between the outer faces of its end posts (`length`) and of its plate beams (`span`); the roof reaches
 * past both by its overhangs. The plate beams, the ridge, the purlins and the eave fascia run the whole roof length.
 */
import { FaultError } from "../faults.js";
import type { GableGroup, GableShape } from "../request/structure-gable.js";
import { type Cell, minus, number, over, plus, root, square, times } from "../sheet/expression.js";
import { boardWidths } from "./board-width.js";
import {
  birdsmouthFaults,
  commonRafterFaults,
  layCommonRafter,
  type RafterCells,
  type RafterPlan,
  seatFaults,
} from "./common-rafter.js";
import {
  DECK_BOARDS,
  type Deck,
  deckKinds,
  deckOf,
  deckWithout,
  isBoarded,
  layBoardRows,
  purlinWidthOf,
  riseOn12,
} from "./deck.js";
import {
  braceLegOf,
  FrameInputs,
  type LaidFrame,
  layPostRun,
  layPurlinRows,
  layRafterRun,
  type PostBays,
  type RoofCells,
  type RoofFace,
  roomForFly,
  type WallSide,
} from "./frame.js";
import { FrameChecks } from "./frame-checks.js";
import { AT, type GroupKind, type Laying, laid, laySections, one, runGroups, type Site, wholes } from "./laying.js";
import { LOOKOUT, layLookoutSpacing, lookouts } from "./lookouts.js";
import type { PieceGroup } from "./piece-group.js";
import { reachFaults } from "./rafter-reach.js";
import { KING_POST, kingPosts, RIDGE_BEAM } from "./ridge-beam.js";
import type { LaidRun } from "./runs.js";
import { laySpacing, refuseTight, type SpacedCells } from "./spacing.js";
import { squareTailFaults } from "./tail-bearing.js";

/** The size of the whole, as input cells. */
export interface GableFrame {
  readonly span: Cell;
  readonly length: Cell;
  readonly eaveHeight: Cell;
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  readonly eaveOverhang: Cell;
  /** Of the far side; the same cell where both are alike. */
  readonly farOverhang: Cell;
  readonly gableOverhang: Cell;
  readonly bays: Cell;
  /** See `PostBays`. */
  readonly firstBays: PostBays["firstBays"];
  /** Absent where only the corners have posts. */
  readonly endBays: Cell | undefined;
  readonly rafterSpacing: Cell;
  readonly purlinSpacing: Cell;
  readonly braceLeg: Cell;
  readonly longestPiece: Cell;
  readonly seat: Cell | undefined;
  /** Absent where no lookouts are wanted. */
  readonly lookoutSpacing: Cell | undefined;
}

/** A gable frame as laid. */
export interface GableCells extends LaidFrame {
  readonly kind: "gable";
  readonly frame: GableFrame;
  readonly rafter: RafterCells;
  /** Of the far side; the same where both overhangs are alike. */
  readonly farRafter: RafterCells;
  readonly farPurlinRows: Cell;
  readonly roof: RoofCells & { readonly ridgeKind: "board" | "beam" };
  readonly groups: readonly PieceGroup[];
  /** Posts that stand, and cross-frames (pairs of posts). */
  readonly postPairs: Cell;
}

const KINDS: Readonly<Record<GableGroup, GroupKind>> = {
  posts: { role: "post" },
  "end-posts": { role: "post", like: "posts" },
  beams: { role: "beam" },
  "gable-beams": { role: "tie" },
  ties: { role: "tie" },
  "king-posts": KING_POST,
  ridge: { role: "ridge" },
  rafters: { role: "rafter" },
  "fly-rafters": { role: "rafter", like: "rafters" },
  lookouts: LOOKOUT,
  braces: { role: "brace" },
  purlins: { role: "purlin" },
  "deck-boards": DECK_BOARDS,
  "eave-fascia": { role: "fascia" },
  "rake-fascia": { role: "fascia" },
};

/** One slope as it is laid. */
interface Slope {
  readonly place: "near" | "far";
  readonly rafter: RafterCells;
  readonly purlinRows: Cell;
}

/** What all groups of the roof are laid from. */
interface Roofing {
  readonly laying: Laying<GableGroup>;
  readonly shape: GableShape;
  readonly frame: GableFrame;
  /** One where both overhangs are alike, else near and far. */
  readonly slopes: readonly Slope[];
  readonly lines: SpacedCells;
  readonly deck: Deck;
  readonly beams: LaidRun;
  readonly rows: LaidRun;
}

/**
 * Lays frame, rafters, roof and piece groups.
 * @throws FaultError when it cannot be built: all reasons found, each with its cure.
 */
export function layGable(site: Site, shape: GableShape): GableCells {
  const { sheet, defaults, units } = site;
  const frame = layFrame(new FrameInputs(sheet, defaults, units), shape);
  const settings = shape.groups;
  const deck = deckOf(shape, riseOn12(sheet, frame.unitRise, frame.unitRun), defaults);
  const ridgeKind = shape.ridge ?? "board";
  const onPosts = ridgeKind === "beam";
  const without = new Set<GableGroup>([
    ...(frame.endBays ? [] : (["end-posts"] as const)),
    ...(frame.lookoutSpacing ? [] : (["lookouts"] as const)),
    ...(onPosts ? [] : (["king-posts"] as const)),
    ...deckWithout(KINDS, deck),
  ]);
  const kinds = deckKinds(onPosts ? { ...KINDS, ridge: RIDGE_BEAM } : KINDS, deck);
  const sections = laySections(sheet, kinds, settings, defaults, units, without);
  const laying: Laying<GableGroup> = { sheet, units, kinds, settings, sections, sold: site.sold };
  const run = sheet.lay("roof.run", over(frame.span, number("2")), {
    label: "run, plate face to ridge centre",
    display: units.long,
  });
  const plan: RafterPlan = {
    run,
    overhang: frame.eaveOverhang,
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    ridgeThickness: sections.ridge.thickness,
    tail: shape.rafterTail,
    depth: sections.rafters.width,
    plateWidth: sections.beams.thickness,
    seat: frame.seat,
  };
  refuse(laying, frame, plan, shape);
  const rafter = layRafter(laying, "rafter", plan, "/overhang/eave");
  const equal = frame.farOverhang === frame.eaveOverhang;
  const farPlan = { ...plan, overhang: frame.farOverhang };
  const farRafter = equal ? rafter : layRafter(laying, "farRafter", farPlan, "/overhang/farEave");
  const lines = laySpacing(
    sheet,
    "roof.rafters",
    { length: frame.length, width: sections.rafters.thickness, most: frame.rafterSpacing },
    units.long,
  );
  refuseTight(sheet, lines, {
    width: sections.rafters.thickness,
    at: `${AT}/rafterSpacing`,
    what: "Rafters",
    shortLast: shape.rafterBays === "short-last" ? frame.rafterSpacing : undefined,
  });
  const roof = layRoof(laying, frame, rafter, lines, { ridgeKind, deck });
  const near: Slope = { place: "near", rafter, purlinRows: roof.purlinRows };
  const slopes = equal ? [near] : [near, layFarSlope(laying, frame, farRafter, deck)];
  const postPairs = sheet.lay("frame.postPairs", plus(frame.bays, number("1")), { label: "pairs of posts" });
  const beams = layBeamRun(laying, frame);
  const rows = layRows(laying, frame, lines, shape);
  const roofing = { laying, shape, frame, slopes, lines, deck, beams, rows };
  const kings = onPosts ? kingPosts(laying, plan, rafter, postPairs) : [];
  const groups = [...frameGroups(laying, frame, beams, postPairs), ...kings, ...roofGroups(roofing)];
  return {
    kind: "gable",
    frame,
    rafter,
    farRafter,
    farPurlinRows: (slopes.at(-1) ?? near).purlinRows,
    rafterDepth: sections.rafters.width,
    roof,
    groups,
    postPairs,
    faces: layFaces(roofing, roof, run),
    walls: wallsOf(laying, frame, run, rafter),
    runs: { beams: 2, ridge: 1 },
    rows,
    rafterSpace: lines.equalSpace,
    span: frame.span,
    length: frame.length,
    longestPiece: frame.longestPiece,
  };
}

function layFrame(inputs: FrameInputs, shape: GableShape): GableFrame {
  const { overhang, slope } = shape;
  const span = inputs.fixed("span", "span, outer faces of the plate beams", shape.span);
  const length = inputs.fixed("length", "length, outer faces of the end posts", shape.length);
  const { bays, firstBays } = inputs.postBays(shape, length);
  const at = (name: string, label: string, display: "long" | "small") => [name, label, display] as const;
  const eaveHeight = inputs.given(
    at("eaveHeight", "post base to top of plate", "long"),
    shape.eaveHeight,
    "/eaveHeight",
    ["8 ft", "2.4 m"],
  );
  const unitRise = inputs.given(at("unitRise", "rise", "small"), slope?.rise, "/slope/rise", ["4 in", "100 mm"]);
  const unitRun = inputs.given(at("unitRun", "over a run of", "small"), slope?.run, "/slope/run", ["12 in", "300 mm"]);
  const eave = at("eaveOverhang", "eave overhang, level", "small");
  const eaveOverhang = inputs.given(eave, overhang?.eave, "/overhang/eave", ["12 in", "300 mm"]);
  const gableOverhang = inputs.given(
    at("gableOverhang", "gable overhang", "small"),
    overhang?.gable,
    "/overhang/gable",
    ["12 in", "300 mm"],
  );
  return {
    span,
    length,
    bays,
    firstBays,
    endBays: inputs.endBays(shape.endBays),
    eaveHeight,
    unitRise,
    unitRun,
    eaveOverhang,
    farOverhang: inputs.maybe("farOverhang", "eave overhang of the far side, level", overhang?.farEave) ?? eaveOverhang,
    gableOverhang,
    lookoutSpacing: layLookoutSpacing(inputs, shape.lookoutSpacing, gableOverhang),
    rafterSpacing: inputs.given(
      at("rafterSpacing", "rafters apart, at most", "small"),
      shape.rafterSpacing,
      "/rafterSpacing",
      ["24 in", "600 mm"],
    ),
    purlinSpacing: inputs.given(
      at("purlinSpacing", "purlins apart, at most", "small"),
      shape.purlinSpacing,
      "/purlinSpacing",
      ["24 in", "600 mm"],
    ),
    braceLeg: inputs.braceLeg(braceLegOf(shape), { length, bays, firstBays, height: eaveHeight, across: span }, [
      "30 in",
      "750 mm",
    ]),
    longestPiece: inputs.given(
      at("longestPiece", "longest piece in a run", "long"),
      shape.longestPiece,
      "/longestPiece",
      ["12 ft", "3.6 m"],
    ),
    seat: inputs.maybe("seat", "seat of the birdsmouth", shape.seat),
  };
}

/** Limits of the frame as a whole, asked of effective values. */
function refuse({ sheet, sections }: Laying<GableGroup>, frame: GableFrame, plan: RafterPlan, shape: GableShape): void {
  const checks = new FrameChecks(sheet);
  const { posts, beams, rafters } = sections;
  checks.divisors(frame);
  checks.above(frame.purlinSpacing, undefined, "/purlinSpacing", "The purlin spacing", "Give a spacing such as 24 in.");
  checks.above(frame.length, posts.width, "/length", "The length", "Give more length than a post is wide.");
  checks.above(frame.span, beams.thickness, "/span", "The span", "Give more span than a plate beam is thick.");
  const higher = "Give more height than the plate beam is deep.";
  checks.above(frame.eaveHeight, beams.width, "/eaveHeight", "The height to the plate's top", higher);
  const post = {
    height: frame.eaveHeight,
    width: posts.width,
    beamDepth: beams.width,
    across: { span: frame.span, endBays: frame.endBays, pairs: "ties" as const },
  };
  checks.bracing(frame, post, braceLegOf(shape) !== undefined);
  checks.rafterRoom(frame.rafterSpacing, rafters.thickness);
  checks.tails(frame.eaveOverhang, "/overhang/eave", frame);
  checks.tipping(frame.eaveOverhang, "/overhang/eave", plan.run);
  if (frame.farOverhang !== frame.eaveOverhang) {
    checks.tails(frame.farOverhang, "/overhang/farEave", frame);
    checks.tipping(frame.farOverhang, "/overhang/farEave", plan.run);
  }
  checks.endTipping(frame.gableOverhang, "/overhang/gable", frame, posts.width);
  const wider = sheet.decide(frame.farOverhang).gt(sheet.decide(frame.eaveOverhang));
  const reach = wider ? { ...plan, overhang: frame.farOverhang } : plan;
  const short = ["rafters", "fly-rafters"].flatMap((group) => reachFaults(sheet, group, shape.groups, reach));
  const faults = [...checks.faults, ...short, ...commonRafterFaults(sheet, plan, AT)];
  if (faults.length > 0) throw new FaultError(faults);
}

/** @param tail - Field of its overhang, below the structure. */
function layRafter({ sheet, units }: Laying<GableGroup>, name: string, plan: RafterPlan, tail: string): RafterCells {
  const rafter = layCommonRafter(sheet, name, plan, units);
  const faults = [
    ...birdsmouthFaults(sheet, { notch: rafter.notchDepth, depth: plan.depth, what: "rafter" }, `${AT}/seat`),
    ...seatFaults(sheet, rafter.seat, plan.plateWidth, `${AT}/seat`),
    ...squareTailFaults(sheet, plan, rafter, tail),
  ];
  if (faults.length > 0) throw new FaultError(faults);
  return rafter;
}

function layRoof(
  { sheet, units, sections }: Laying<GableGroup>,
  frame: GableFrame,
  rafter: RafterCells,
  lines: SpacedCells,
  { ridgeKind, deck }: Pick<GableCells["roof"], "ridgeKind" | "deck">,
): GableCells["roof"] {
  const length = sheet.lay("roof.length", plus(frame.length, times(number("2"), frame.gableOverhang)), {
    label: "along the eave, outer faces of the fly rafters",
    display: units.long,
  });
  const slope = {
    slopeLength: rafter.edgeLength,
    purlinWidth: purlinWidthOf(sections, deck),
    spacing: frame.purlinSpacing,
    deck,
  };
  return {
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    length,
    slopeLength: rafter.edgeLength,
    purlinRows: layPurlinRows(sheet, slope, units),
    purlinSpacing: frame.purlinSpacing,
    deck,
    rafterLines: lines.pieces,
    ridgeKind,
  };
}

function layFarSlope(
  { sheet, sections, units }: Laying<GableGroup>,
  frame: GableFrame,
  rafter: RafterCells,
  deck: Deck,
): Slope {
  const purlinWidth = purlinWidthOf(sections, deck);
  const slope = { slopeLength: rafter.edgeLength, purlinWidth, spacing: frame.purlinSpacing, deck };
  return { place: "far", rafter, purlinRows: layPurlinRows(sheet, slope, units, "roof.far") };
}

function layFaces({ laying, frame, slopes }: Roofing, roof: RoofCells, run: Cell): RoofFace[] {
  const { sheet, units } = laying;
  return slopes.map(({ place, rafter }) => {
    const level = plus(run, place === "far" ? frame.farOverhang : frame.eaveOverhang);
    const name = slopes.length === 1 ? "side" : place;
    const slopeLength = sheet.lay(`roof.face.${name}`, over(times(level, rafter.unitLength), frame.unitRun), {
      label: "ridge line to tails, along the slope",
      display: units.long,
    });
    return { name, alike: slopes.length === 1 ? 2 : 1, eave: roof.length, top: roof.length, slopeLength };
  });
}

function wallsOf(
  { sheet, units }: Laying<GableGroup>,
  { span, length, eaveHeight, bays, firstBays, endBays, unitRise, unitRun }: GableFrame,
  run: Cell,
  rafter: RafterCells,
): WallSide[] {
  const heights = [eaveHeight, eaveHeight] as const;
  const rise = sheet.lay("roof.rise", over(times(run, unitRise), unitRun), {
    label: "rise, plate to ridge line",
    display: units.long,
  });
  const gable = { abovePlate: rafter.heightAbovePlate, rise, unitRise, unitRun };
  const one = number("1");
  const posts = { posts: plus(bays, one) };
  const side = { width: length, heights, bays, ...(firstBays && { firstBays }), posts, beam: "beams" };
  const atEnds = { posts: number("2"), ...(endBays && { "end-posts": minus(endBays, one) }) };
  const end = { width: span, heights, bays: endBays, gable, posts: atEnds, beam: "gable-beams" };
  return [
    { name: "near", label: "near side", ...side },
    { name: "far", label: "far side", ...side },
    { name: "left", label: "left end", ...end },
    { name: "right", label: "right end", ...end },
  ];
}

/** Plate beams, and a ridge beam, which are joined over posts. */
function layBeamRun({ sheet, sections, units }: Laying<GableGroup>, frame: GableFrame): LaidRun {
  const { length, bays, firstBays, longestPiece, gableOverhang: overhang } = frame;
  const postWidth = sections.posts.width;
  return layPostRun(sheet, "frame", { length, bays, firstBays, longestPiece, postWidth, overhang }, units);
}

function frameGroups(laying: Laying<GableGroup>, frame: GableFrame, beams: LaidRun, postPairs: Cell): PieceGroup[] {
  const { sections } = laying;
  const { braceLeg: leg } = frame;
  return [
    ...one(laying, "posts", "Posts", minus(frame.eaveHeight, sections.beams.width), times(number("2"), postPairs)),
    ...endPosts(laying, frame),
    ...runGroups(laying, "beams", "Plate beams", beams, 2),
    ...one(laying, "gable-beams", "Gable-end beams", frame.span, number("2")),
    ...one(laying, "ties", "Ties", frame.span, minus(postPairs, number("2"))),
    // Overall length of a brace cut at both ends to 45°: between its long points.
    ...one(
      laying,
      "braces",
      "Braces",
      root(times(number("2"), square(leg))),
      plus(times(number("4"), frame.bays), times(number("2"), postPairs)),
    ),
  ];
}

/** Posts between the corners of both ends, up to the gable-end beams. */
function endPosts(laying: Laying<GableGroup>, { endBays, eaveHeight }: GableFrame): PieceGroup[] {
  if (!endBays) return [];
  const height = minus(eaveHeight, laying.sections["gable-beams"].width);
  return one(laying, "end-posts", "End posts", height, times(number("2"), minus(endBays, number("1"))));
}

/** Ridge board, purlins or boards, and fascia. */
function layRows(
  { sheet, sections, units }: Laying<GableGroup>,
  { rafterSpacing, gableOverhang: overhang, longestPiece }: GableFrame,
  lines: SpacedCells,
  shape: GableShape,
): LaidRun {
  const short = shape.rafterBays === "short-last";
  const rafterThickness = sections.rafters.thickness;
  return layRafterRun(sheet, "roof", { lines, rafterSpacing, rafterThickness, overhang, longestPiece, short }, units);
}

function roofGroups(roofing: Roofing): PieceGroup[] {
  const { laying, frame, slopes, lines, shape, deck, rows: run } = roofing;
  const { sheet, sections, units } = laying;
  const fly = roomForFly(sheet, frame.gableOverhang, sections.rafters.thickness);
  const rowsOnBoth = (of: (slope: Slope) => Cell) =>
    slopes.reduce((sum, slope) => sum + (2 / slopes.length) * wholes(sheet, of(slope)), 0);
  const along = (name: GableGroup, label: string, runs: number) => runGroups(laying, name, label, run, runs);
  const boardRows = ({ place, rafter }: Slope) => {
    const name = place === "far" ? "roof.far" : "roof";
    const widths = boardWidths(laying, "deck-boards", "Deck boards");
    return layBoardRows(sheet, { slopeLength: rafter.edgeLength, widths, deck, name }, units);
  };
  return [
    ...(shape.ridge === "beam"
      ? runGroups(laying, "ridge", "Ridge beam", roofing.beams, 1)
      : along("ridge", "Ridge board", 1)),
    ...upTheSlope(roofing, "rafters", "Common rafters", times(number("2"), lines.pieces), lines.pieces),
    ...(fly ? upTheSlope(roofing, "fly-rafters", "Fly rafters", number("4"), number("2")) : []),
    ...rakeLookouts(roofing),
    ...(deck.kind === "purlins"
      ? along(
          "purlins",
          "Purlins",
          rowsOnBoth((slope) => slope.purlinRows),
        )
      : []),
    ...(isBoarded(deck) ? along("deck-boards", "Deck boards", rowsOnBoth(boardRows)) : []),
    ...along("eave-fascia", "Eave fascia", 2),
    ...rakes(roofing),
  ];
}

/** At both ends of either slope. */
function rakeLookouts({ laying, frame, slopes, lines, shape }: Roofing): PieceGroup[] {
  const { lookoutSpacing: spacing, gableOverhang: overhang } = frame;
  if (!spacing) return [];
  const alike = 4 / slopes.length;
  return lookouts(laying, "lookouts", {
    ...{ spacing, overhang, lines },
    rafterThickness: laying.sections.rafters.thickness,
    rakes: slopes.map(({ rafter }) => ({ slopeLength: rafter.edgeLength, alike })),
    shortLast: shape.rafterBays === "short-last" ? frame.rafterSpacing : undefined,
  });
}

/** Up to the peak, in front of the ridge's end; plumb cuts take the fascia's own depth × slope. */
function rakes({ laying, frame, slopes }: Roofing): PieceGroup[] {
  const { width } = laying.sections["rake-fascia"];
  return slopes.flatMap(({ place, rafter }) => {
    const overhang = place === "far" ? frame.farOverhang : frame.eaveOverhang;
    const pastPlate = over(times(overhang, rafter.unitLength), frame.unitRun);
    const length = plus(rafter.lineLength, pastPlate, over(times(width, frame.unitRise), frame.unitRun));
    if (slopes.length === 1) return one(laying, "rake-fascia", "Rake fascia", length, number("4"));
    const plan = { name: `rake-fascia-${place}`, label: `Rake fascia (${place} side)`, length, count: number("2") };
    return laid(laying, "rake-fascia", plan);
  });
}

/** Pieces from tail to ridge: one group, or near and far ones where the overhangs differ. */
function upTheSlope(
  { laying, slopes }: Roofing,
  base: GableGroup,
  label: string,
  both: Parameters<typeof one>[4],
  each: Parameters<typeof one>[4],
): PieceGroup[] {
  return slopes.flatMap(({ place, rafter }) => {
    const length = rafter.stockLength;
    if (slopes.length === 1) return laid(laying, base, { name: base, label, length, count: both });
    return laid(laying, base, { name: `${base}-${place}`, label: `${label} (${place} side)`, length, count: each });
  });
}
