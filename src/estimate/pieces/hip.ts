/**
 * A hip roof to its piece groups: posts and beams all round, ties, braces, ridge, common, hip and jack rafters, rows of
 * purlins and fascia that end at the hips.
 *
 * All four sides are equally steep, so the hips run at 45° in plan and the ridge line is shorter than the building by its
 * span. Commons stand along the ridge and at both its ends; one more at each end runs on in line with it. Between those and
 * the corners stand the jacks, alike on all eight sides of the hips.
 */
import { FaultError } from "../faults.js";
import { onTape } from "../quantity/text.js";
import type { Defaults } from "../request/given.js";
import type { HipGroup, HipShape } from "../request/structure-hip.js";
import {
  type Cell,
  count,
  greatest,
  minus,
  number,
  type Operand,
  over,
  plus,
  root,
  roundUp,
  square,
  sum,
  times,
} from "../sheet/expression.js";
import { boardWidths } from "./board-width.js";
import {
  birdsmouthFaults,
  commonRafterFaults,
  layCommonRafter,
  narrower,
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
  type RoofCells,
  type RoofFace,
  type WallSide,
} from "./frame.js";
import { FrameChecks } from "./frame-checks.js";
import { type HipFrame, type HipFraming, type HipLayout, widerPurlin } from "./hip-frame.js";
import { type HipPlan, type HipRafterCells, type JackCells, jackStock, layHipRafter, layJacks } from "./hip-rafters.js";
import { hipRows } from "./hip-rows.js";
import { AT, type GroupKind, type Laying, laid, laySections, one, runGroups, type Site, wholes } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { reachFaults } from "./rafter-reach.js";
import { squareTailFaults } from "./tail-bearing.js";

/** A hip frame as laid. */
export interface HipCells extends LaidFrame {
  readonly kind: "hip";
  readonly frame: HipFrame;
  readonly layout: HipLayout;
  readonly rafter: RafterCells;
  /** In line with the ridge, against its end. */
  readonly endRafter: RafterCells;
  readonly hip: HipRafterCells;
  readonly jacks: JackCells;
  readonly roof: RoofCells;
}

const PLANK = { "inch-pound": "2 x 8 in", metric: "50 x 200 mm" };

const KINDS: Readonly<Record<HipGroup, GroupKind>> = {
  posts: { role: "post" },
  beams: { role: "beam" },
  "end-beams": { role: "beam", like: "beams" },
  ties: { role: "tie" },
  braces: { role: "brace" },
  ridge: { role: "ridge" },
  rafters: { role: "rafter" },
  "end-rafters": { role: "rafter", like: "rafters" },
  // Deeper than the jacks, whose plumb cuts should find wood along all their height.
  hips: { role: "rafter", section: PLANK, mark: "H" },
  jacks: { role: "rafter", like: "rafters", mark: "J" },
  "side-purlins": { role: "purlin" },
  "deck-boards": DECK_BOARDS,
  "end-purlins": { role: "purlin", like: "side-purlins" },
  "side-fascia": { role: "fascia" },
  "end-fascia": { role: "fascia", like: "side-fascia" },
};

/** More lengths of jacks than a cut list can show; closer spacings want another tool. Assumption. */
const MOST_JACKS = 40;

/**
 * Lays frame, rafters, roof and piece groups.
 * @throws FaultError when it cannot be built: all reasons found, each with its cure.
 */
export function layHip(site: Site, shape: HipShape): HipCells {
  const { sheet, defaults, units } = site;
  const frame = layFrame(new FrameInputs(sheet, defaults, units), shape);
  const settings = shape.groups;
  const deck = deckOf(shape, riseOn12(sheet, frame.unitRise, frame.unitRun), defaults);
  const kinds = deckKinds(KINDS, deck);
  const sections = laySections(sheet, kinds, settings, defaults, units, new Set(deckWithout(KINDS, deck)));
  const laying: Laying<HipGroup> = { sheet, units, kinds, settings, sections, sold: site.sold };
  const half = over(frame.span, number("2"));
  const run = sheet.lay("roof.run", half, { label: "run, plate face to ridge centre", display: units.long });
  const plan = rafterPlan(laying, frame, shape, run);
  refuse(laying, frame, plan, shape);
  const layout = layLayout(laying, frame, shape, run);
  refuseJacks(laying, layout, plan);
  refuseShortRidge(laying, layout);
  const rafter = layCommonRafter(sheet, "rafter", plan, units);
  const endPlan = { ...plan, ridgeThickness: sections.rafters.thickness };
  const endRafter = layCommonRafter(sheet, "endRafter", endPlan, units);
  const hipPlan: HipPlan = {
    run,
    overhang: frame.eaveOverhang,
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    commonThickness: sections.rafters.thickness,
    hipThickness: sections.hips.thickness,
    hipDepth: sections.hips.width,
    jackThickness: sections.jacks.thickness,
    common: rafter,
    tail: shape.rafterTail ?? "plumb",
  };
  const hip = layHipRafter(sheet, hipPlan, units);
  refuseCuts(laying, plan, rafter, hip);
  const jacks = layJacks(sheet, hipPlan, layout.jackSpace, units);
  const roof = layRoof(laying, frame, rafter, { layout, deck });
  const framing: HipFraming = { laying, frame, layout, rafter, purlinRows: roof.purlinRows, deck };
  const faces = layFaces(framing, roof);
  return {
    kind: "hip",
    frame,
    layout,
    rafter,
    rafterDepth: plan.depth,
    endRafter,
    hip,
    jacks,
    roof,
    groups: [
      ...frameGroups(framing),
      ...rafterGroups(framing, { rafter, endRafter, hip, hipPlan }),
      ...hipRows(framing),
      ...deckBoards(framing, faces, defaults),
    ],
    faces,
    walls: wallsOf(frame),
    runs: { beams: 2, "end-beams": 2, ridge: 1 },
    rafterSpace: layout.jackSpace,
    span: frame.span,
    length: frame.length,
    longestPiece: frame.longestPiece,
  };
}

function layFrame(inputs: FrameInputs, shape: HipShape): HipFrame {
  const { slope } = shape;
  const small = (name: string, label: string) => [name, label, "small"] as const;
  const long = (name: string, label: string) => [name, label, "long"] as const;
  const span = inputs.fixed("span", "span, outer faces of the plate beams", shape.span);
  const length = inputs.fixed("length", "length, outer faces of the end beams", shape.length);
  const { bays, firstBays } = inputs.postBays(shape, length);
  const eaveHeight = inputs.given(long("eaveHeight", "post base to top of plate"), shape.eaveHeight, "/eaveHeight", [
    "8 ft",
    "2.4 m",
  ]);
  const endBays = inputs.bays(shape.endBays, span, "endBays", "bays across each end");
  const across = over(span, greatest(endBays, number("1")));
  return {
    span,
    length,
    bays,
    firstBays,
    endBays,
    eaveHeight,
    unitRise: inputs.given(small("unitRise", "rise"), slope?.rise, "/slope/rise", ["4 in", "100 mm"]),
    unitRun: inputs.given(small("unitRun", "over a run of"), slope?.run, "/slope/run", ["12 in", "300 mm"]),
    eaveOverhang: inputs.given(small("eaveOverhang", "eave overhang, level"), shape.overhang?.eave, "/overhang/eave", [
      "12 in",
      "300 mm",
    ]),
    rafterSpacing: inputs.given(
      small("rafterSpacing", "rafters apart, at most"),
      shape.rafterSpacing,
      "/rafterSpacing",
      ["24 in", "600 mm"],
    ),
    purlinSpacing: inputs.given(
      small("purlinSpacing", "purlins apart, at most"),
      shape.purlinSpacing,
      "/purlinSpacing",
      ["24 in", "600 mm"],
    ),
    braceLeg: inputs.braceLeg(braceLegOf(shape), { length, bays, firstBays, height: eaveHeight, across }, [
      "30 in",
      "750 mm",
    ]),
    longestPiece: inputs.given(long("longestPiece", "longest piece in a run"), shape.longestPiece, "/longestPiece", [
      "12 ft",
      "3.6 m",
    ]),
    seat: inputs.maybe("seat", "seat of the birdsmouth", shape.seat),
  };
}

function rafterPlan({ sheet, sections }: Laying<HipGroup>, frame: HipFrame, shape: HipShape, run: Cell): RafterPlan {
  return {
    run,
    overhang: frame.eaveOverhang,
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    ridgeThickness: sections.ridge.thickness,
    tail: shape.rafterTail,
    depth: sections.rafters.width,
    plateWidth: narrower(sheet, sections.beams.thickness, sections["end-beams"].thickness),
    seat: frame.seat,
  };
}

/** Limits of the frame as a whole, asked of effective values. */
function refuse({ sheet, sections }: Laying<HipGroup>, frame: HipFrame, plan: RafterPlan, shape: HipShape): void {
  const checks = new FrameChecks(sheet);
  const { posts, beams, rafters } = sections;
  checks.divisors(frame);
  checks.above(frame.purlinSpacing, undefined, "/purlinSpacing", "The purlin spacing", "Give a spacing such as 24 in.");
  checks.above(frame.endBays, undefined, "/endBays", "The number of bays across an end", "Give one bay or more.");
  checks.above(frame.unitRise, undefined, "/slope/rise", "The rise of a hip roof", "Give a rise such as 4 in.");
  checks.above(frame.span, beams.thickness, "/span", "The span", "Give more span than a plate beam is thick.");
  if (sheet.decide(frame.length).lt(sheet.decide(frame.span))) {
    const wrong = `The length (${sheet.onTape(frame.length)}) is less than the span (${sheet.onTape(frame.span)}).`;
    checks.refuse("/length", wrong, "Turn the roof round: the ridge runs along the longer side.");
  }
  const higher = "Give more height than the plate beam is deep.";
  checks.above(frame.eaveHeight, beams.width, "/eaveHeight", "The height to the plate's top", higher);
  const post = {
    height: frame.eaveHeight,
    width: posts.width,
    beamDepth: beams.width,
    across: { span: frame.span, endBays: frame.endBays, pairs: "every-bay" as const },
  };
  checks.bracing(frame, post, braceLegOf(shape) !== undefined);
  checks.rafterRoom(frame.rafterSpacing, rafters.thickness);
  checks.tails(frame.eaveOverhang, "/overhang/eave", frame);
  checks.tipping(frame.eaveOverhang, "/overhang/eave", plan.run);
  const toEnds = { ...plan, ridgeThickness: rafters.thickness };
  const short = [
    ...reachFaults(sheet, "rafters", shape.groups, plan),
    ...reachFaults(sheet, "end-rafters", shape.groups, toEnds),
    ...reachFaults(sheet, "hips", shape.groups, { ...toEnds, diagonal: true }),
  ];
  const faults = [...checks.faults, ...short, ...commonRafterFaults(sheet, plan, AT)];
  if (faults.length > 0) throw new FaultError(faults);
}

function layLayout(
  { sheet, units, sections }: Laying<HipGroup>,
  frame: HipFrame,
  shape: HipShape,
  run: Cell,
): HipLayout {
  const { long } = units;
  const ridgeLine = sheet.lay("roof.ridgeLine", minus(frame.length, frame.span), {
    label: "ridge between the hips' centres",
    display: long,
  });
  const commonSpaces = sheet.lay("roof.commonSpaces", roundUp(over(ridgeLine, frame.rafterSpacing)), {
    label: "spaces along the ridge",
  });
  const commons = sheet.lay("roof.commons", plus(commonSpaces, number("1")), { label: "commons, one side" });
  const commonSpace = sheet.lay("roof.commonSpace", over(ridgeLine, greatest(commonSpaces, number("1"))), {
    label: "commons apart, centres",
    display: long,
  });
  const short = shape.rafterBays === "short-last";
  // A last jack nearer to the corner than plate and hip are thick would span nothing.
  const shared = short ? minus(run, sections.beams.thickness, sections.hips.thickness) : run;
  const jackSpaces = sheet.lay("roof.jackSpaces", roundUp(over(shared, frame.rafterSpacing)), {
    label: "spaces from the ridge's end to a corner",
  });
  const space: Operand = short ? frame.rafterSpacing : over(run, jackSpaces);
  const jackSpace = sheet.lay("roof.jackSpace", space, { label: "jacks apart, centres", display: long });
  return { run, ridgeLine, commons, commonSpaces, commonSpace, jackSpaces, jackSpace };
}

function refuseJacks(
  { sheet, sections, settings }: Laying<HipGroup>,
  { jackSpaces, jackSpace }: HipLayout,
  { ridgeThickness: _, ...plan }: RafterPlan,
): void {
  const at = `${AT}/rafterSpacing`;
  const many = sheet.decide(jackSpaces);
  const [hip, jack] = [sheet.decide(sections.hips.thickness), sheet.decide(sections.jacks.thickness)];
  // The longest jack, to the point of its cheek, as `jackStock` has it.
  const before = sheet.decide(jackSpace).plus(hip.times(hip).dividedBy(2).sqrt()).minus(jack.dividedBy(2));
  const faults = many.gt(1) ? reachFaults(sheet, "jacks", settings, { ...plan, before }) : [];
  if (many.gt(MOST_JACKS)) {
    const wrong = `Each hip has ${sheet.onTape(jackSpaces)} jacks a side; the limit is ${MOST_JACKS}.`;
    faults.push({ code: "too-large", at, wrong, cure: "Widen the spacing." });
  }
  if (many.gt(1) && [hip, jack].some((side) => sheet.decide(jackSpace).lte(side))) {
    const wrong = `Jacks ${sheet.onTape(jackSpace)} apart leave no room for their own thickness or the hip's.`;
    faults.push({ code: "cannot-build", at, wrong, cure: "Widen the spacing, or use thinner rafters." });
  }
  if (faults.length > 0) throw new FaultError(faults);
}

/** Commons at both ends of a ridge that is not as long as they are thick. */
function refuseShortRidge({ sheet, sections }: Laying<HipGroup>, { ridgeLine, commonSpace }: HipLayout): void {
  const { thickness } = sections.rafters;
  if (sheet.decide(ridgeLine).isZero() || sheet.decide(commonSpace).gt(sheet.decide(thickness))) return;
  const say = (cell: Cell): string => onTape({ value: sheet.decide(cell), unit: cell.unit }, thickness.display);
  const wrong = `Commons along a ridge of ${say(ridgeLine)} stand ${say(commonSpace)} apart, centres, and are ${say(thickness)} thick.`;
  const cure = "Make the length as long as the span, or longer; or widen the rafter spacing.";
  throw new FaultError([{ code: "cannot-build", at: `${AT}/length`, wrong, cure }]);
}

/** Birdsmouths and tails; those of hips are cut plumb, and jacks and end rafters are cut as the commons are. */
function refuseCuts(
  { sheet, sections }: Laying<HipGroup>,
  plan: RafterPlan,
  rafter: RafterCells,
  hip: HipRafterCells,
): void {
  const { rafters, hips } = sections;
  const at = `${AT}/groups/hips/section`;
  const faults = [
    ...birdsmouthFaults(sheet, { notch: rafter.notchDepth, depth: rafters.width, what: "rafter" }, `${AT}/seat`),
    ...seatFaults(sheet, rafter.seat, plan.plateWidth, `${AT}/seat`),
    ...birdsmouthFaults(sheet, { notch: hip.notchDepth, depth: hips.width, what: "hip rafter" }, at),
    ...squareTailFaults(sheet, plan, rafter, "/overhang/eave"),
  ];
  if (sheet.decide(hip.notchPlumb).lte(0)) {
    const wrong = `A hip of ${sheet.onTape(hips.width)} does not reach down to the plate where the commons do.`;
    faults.push({ code: "cannot-build", at, wrong, cure: "Give a deeper hip, or a deeper seat to the commons." });
  }
  if (faults.length > 0) throw new FaultError(faults);
}

function layRoof(
  { sheet, units, sections }: Laying<HipGroup>,
  frame: HipFrame,
  rafter: RafterCells,
  { layout, deck }: { readonly layout: HipLayout; readonly deck: Deck },
): RoofCells {
  const length = sheet.lay("roof.length", plus(frame.length, times(number("2"), frame.eaveOverhang)), {
    label: "along the longer eave, hip tail to hip tail",
    display: units.long,
  });
  const purlinWidth =
    deck.kind === "purlins"
      ? widerPurlin(sheet, sections)
      : purlinWidthOf({ ...sections, purlins: sections["side-purlins"] }, deck);
  const slope = { slopeLength: rafter.edgeLength, purlinWidth, spacing: frame.purlinSpacing, deck };
  return {
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    length,
    slopeLength: rafter.edgeLength,
    purlinRows: layPurlinRows(sheet, slope, units),
    purlinSpacing: frame.purlinSpacing,
    deck,
    rafterLines: layout.commons,
    ridgeKind: "board",
  };
}

/** Two trapezoids and two triangles: together the plan's area times the slope. */
function layFaces({ laying, frame, layout, rafter }: HipFraming, roof: RoofCells): RoofFace[] {
  const { sheet, units } = laying;
  const lay = (name: string, label: string, formula: Operand) =>
    sheet.lay(`roof.face.${name}`, formula, { label, display: units.long });
  const level = plus(layout.run, frame.eaveOverhang);
  const slopeLength = lay(
    "slope",
    "ridge line to tails, along the slope",
    over(times(level, rafter.unitLength), frame.unitRun),
  );
  const endEave = lay("end", "along the shorter eave", plus(frame.span, times(number("2"), frame.eaveOverhang)));
  const none = lay("point", "top of an end slope", number("0 in"));
  return [
    { name: "side", alike: 2, eave: roof.length, top: layout.ridgeLine, slopeLength },
    { name: "end", alike: 2, eave: endEave, top: none, slopeLength },
  ];
}

/** Boards end at the hips wherever they come to: their length is that of all rows, cut from pieces of one length. */
function deckBoards(
  { laying, frame, rafter, deck }: HipFraming,
  faces: readonly RoofFace[],
  defaults: Defaults,
): PieceGroup[] {
  if (!isBoarded(deck)) return [];
  const { sheet, units } = laying;
  const widths = boardWidths(laying, "deck-boards", "Deck boards");
  const rows = layBoardRows(sheet, { slopeLength: rafter.edgeLength, widths, deck, name: "roof" }, units);
  const all = faces.map(({ alike, eave, top }) => times(count(alike), rows, over(plus(eave, top), number("2"))));
  const usual = { "inch-pound": "8 %", metric: "8 %" };
  const share = defaults.quantity(undefined, "/overrides/roof.deckWaste", usual, "common practice");
  const waste = sheet.input("roof.deckWaste", share, { label: "deck boards cut off at the hips, added" });
  const length = sheet.lay("roof.deckLength", times(sum(all), plus(number("1"), waste)), {
    label: "deck boards, all rows, waste included",
    display: units.long,
  });
  return one(laying, "deck-boards", "Deck boards", frame.longestPiece, roundUp(over(length, frame.longestPiece)));
}

function wallsOf({ span, length, eaveHeight, bays, firstBays, endBays }: HipFrame): WallSide[] {
  const side = (name: string, label: string, width: Cell, of: Cell, beam: string): WallSide => {
    const heights = [eaveHeight, eaveHeight] as const;
    const posts = { posts: plus(of, number("1")) };
    return { name, label, width, heights, bays: of, ...(of === bays && { firstBays }), posts, beam };
  };
  return [
    side("near", "near side", length, bays, "beams"),
    side("far", "far side", length, bays, "beams"),
    side("left", "left end", span, endBays, "end-beams"),
    side("right", "right end", span, endBays, "end-beams"),
  ];
}

/** Beams are halved over one another at the corners, so both run their whole side. */
function frameGroups({ laying, frame }: HipFraming): PieceGroup[] {
  const { sheet, sections, units } = laying;
  const { length, span, bays, firstBays, endBays, longestPiece, braceLeg: leg } = frame;
  const postWidth = sections.posts.width;
  const sides = layPostRun(sheet, "frame", { length, bays, firstBays, longestPiece, postWidth }, units);
  const ends = layPostRun(sheet, "frame.ends", { length: span, bays: endBays, longestPiece, postWidth }, units);
  const posts = times(number("2"), plus(bays, endBays));
  // Two in each bay all round, and two below every tie.
  const braces = plus(
    times(number("4"), bays),
    times(number("4"), endBays),
    times(number("2"), minus(bays, number("1"))),
  );
  return [
    ...one(laying, "posts", "Posts", minus(frame.eaveHeight, sections.beams.width), posts),
    ...runGroups(laying, "beams", "Plate beams", sides, 2),
    ...runGroups(laying, "end-beams", "End beams", ends, 2),
    ...one(laying, "ties", "Ties", span, minus(bays, number("1"))),
    ...one(laying, "braces", "Braces", root(times(number("2"), square(leg))), braces),
  ];
}

function rafterGroups(
  { laying, layout }: HipFraming,
  cuts: {
    readonly rafter: RafterCells;
    readonly endRafter: RafterCells;
    readonly hip: HipRafterCells;
    readonly hipPlan: HipPlan;
  },
): PieceGroup[] {
  const { sheet, sections } = laying;
  const jacks = Array.from({ length: Math.max(0, wholes(sheet, layout.jackSpaces) - 1) }, (_, i) => i + 1);
  // At either end the ridge runs on to the outer faces of the last commons, and the end rafter meets it there.
  const ridge = plus(layout.ridgeLine, sections.rafters.thickness);
  return [
    ...one(laying, "ridge", "Ridge board", ridge, number("1")),
    ...one(laying, "rafters", "Common rafters", cuts.rafter.stockLength, times(number("2"), layout.commons)),
    ...one(laying, "end-rafters", "End common rafters", cuts.endRafter.stockLength, number("2")),
    ...one(laying, "hips", "Hip rafters", cuts.hip.stockLength, number("4")),
    ...jacks.flatMap((index) =>
      laid(laying, "jacks", {
        name: `jacks-${index}`,
        label: `Jack rafters ${index} (four of each hand)`,
        length: jackStock(cuts.hipPlan, layout.jackSpace, index),
        count: number("8"),
      }),
    ),
  ];
}
