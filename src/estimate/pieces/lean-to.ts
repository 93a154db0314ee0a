/**
 * A single slope to its piece groups: low and high posts and beams, or a ledger on a wall, end beams, braces, rafters over
 * both beams, fly rafters, purlins and fascia.
 *
 * A rafter sits on the low beam from its outer face inwards and on the high beam from its inner face outwards: both heels
 * are on the side of the tail. So the high beam's top is higher by the slope over the span less one beam.
 */
import { FaultError } from "../faults.js";
import type { LeanToGroup, LeanToShape } from "../request/structure-lean-to.js";
import { type Cell, minus, number, type Operand, over, plus, root, square, times } from "../sheet/expression.js";
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
  layRafterRun,
  type PostBays,
  type RoofCells,
  roomForFly,
  type WallSide,
} from "./frame.js";
import { FrameChecks } from "./frame-checks.js";
import { AT, type GroupKind, type Laying, laySections, one, runGroups, type Site, wholes } from "./laying.js";
import { LOOKOUT, layLookoutSpacing, lookouts } from "./lookouts.js";
import type { PieceGroup } from "./piece-group.js";
import { reachFaults } from "./rafter-reach.js";
import type { LaidRun } from "./runs.js";
import { laySpacing, refuseTight, type SpacedCells } from "./spacing.js";
import { squareTailFaults } from "./tail-bearing.js";

/** The size of the whole, as input cells. */
export interface LeanToFrame {
  readonly span: Cell;
  readonly length: Cell;
  /** To the top of the low plate beam. */
  readonly eaveHeight: Cell;
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  readonly lowOverhang: Cell;
  /** Absent against a wall. */
  readonly highOverhang: Cell | undefined;
  readonly endOverhang: Cell;
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

/** A lean-to frame as laid. */
export interface LeanToCells extends LaidFrame {
  readonly kind: "lean-to";
  readonly frame: LeanToFrame;
  readonly highSide: "posts" | "ledger";
  /** To the top of the high beam; to the heel line at a ledger's face. */
  readonly highHeight: Cell;
  readonly rafter: RafterCells;
  /** Along the slope, from one birdsmouth's plumb face to the other's; absent at a wall. */
  readonly seatToSeat: Cell | undefined;
  readonly roof: RoofCells;
}

const KINDS: Readonly<Record<LeanToGroup, GroupKind>> = {
  "low-posts": { role: "post" },
  "high-posts": { role: "post", like: "low-posts" },
  "end-posts": { role: "post", like: "low-posts" },
  "low-beams": { role: "beam" },
  "high-beams": { role: "beam", like: "low-beams" },
  ledger: {
    role: "beam",
    section: { "inch-pound": "2 x 8 in", metric: "50 x 200 mm" },
    joint: "ledger",
    mark: "L",
    rules: { hiddenFaces: "one-wide" },
  },
  "end-beams": { role: "tie" },
  braces: { role: "brace" },
  rafters: { role: "rafter", joint: "two-seats" },
  "fly-rafters": { role: "rafter", like: "rafters", joint: "two-seats" },
  lookouts: LOOKOUT,
  purlins: { role: "purlin" },
  "deck-boards": DECK_BOARDS,
  "low-fascia": { role: "fascia" },
  "high-fascia": { role: "fascia", like: "low-fascia" },
  "rake-fascia": { role: "fascia", like: "low-fascia" },
};

/** Against a wall the upper end is cut plumb and hung, so there is one seat. */
const AT_WALL: typeof KINDS = {
  ...KINDS,
  rafters: { role: "rafter", joint: "hung" },
  "fly-rafters": { role: "rafter", like: "rafters", joint: "hung" },
  "end-beams": { role: "tie", joint: "lap-and-hang" },
};

const WITHOUT: Readonly<Record<LeanToCells["highSide"], ReadonlySet<LeanToGroup>>> = {
  posts: new Set(["ledger"]),
  ledger: new Set(["high-posts", "high-beams", "high-fascia"]),
};

/** What all groups are laid from. */
interface Framing {
  readonly laying: Laying<LeanToGroup>;
  readonly shape: LeanToShape;
  readonly frame: LeanToFrame;
  readonly highSide: LeanToCells["highSide"];
  readonly highHeight: Cell;
  readonly rafter: RafterCells;
  readonly lines: SpacedCells;
  readonly rows: LaidRun;
}

/**
 * Lays frame, rafters, roof and piece groups.
 * @throws FaultError when it cannot be built: all reasons found, each with its cure.
 */
export function layLeanTo(site: Site, shape: LeanToShape): LeanToCells {
  const { sheet, defaults, units } = site;
  const highSide = defaults.choice(shape.highSide, `${AT}/highSide`, "posts", "stands by itself");
  const frame = layFrame(new FrameInputs(sheet, defaults, units), shape, highSide);
  const deck = deckOf(shape, riseOn12(sheet, frame.unitRise, frame.unitRun), defaults);
  const kinds = deckKinds(highSide === "posts" ? KINDS : AT_WALL, deck);
  const settings = shape.groups;
  const without = new Set<LeanToGroup>([
    ...WITHOUT[highSide],
    ...(frame.endBays ? [] : (["end-posts"] as const)),
    ...(frame.lookoutSpacing ? [] : (["lookouts"] as const)),
    ...deckWithout(kinds, deck),
  ]);
  const sections = laySections(sheet, kinds, settings, defaults, units, without);
  const laying: Laying<LeanToGroup> = { sheet, units, kinds, settings, sections, sold: site.sold };
  const plan = layPlan(laying, frame, shape, highSide);
  refuse(laying, frame, plan, shape, highSide);
  const rafter = layCommonRafter(sheet, "rafter", plan, units);
  const notch = { notch: rafter.notchDepth, depth: plan.depth, what: "rafter" };
  const cuts = [
    ...birdsmouthFaults(sheet, notch, `${AT}/seat`),
    ...seatFaults(sheet, rafter.seat, plan.plateWidth, `${AT}/seat`),
    ...squareTailFaults(sheet, plan, rafter, "/overhang/low"),
  ];
  if (cuts.length > 0) throw new FaultError(cuts);
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
  const highHeight = layHighHeight(laying, frame, highSide);
  const roof = layRoof(laying, frame, rafter, { lines, deck });
  const rows = layRows({ laying, frame, lines, shape });
  const framing: Framing = { laying, shape, frame, highSide, highHeight, rafter, lines, rows };
  return {
    kind: "lean-to",
    frame,
    highSide,
    highHeight,
    rafter,
    seatToSeat: highSide === "posts" ? laySeatToSeat(laying, frame, rafter) : undefined,
    rafterDepth: plan.depth,
    roof,
    groups: [...frameGroups(framing), ...roofGroups(framing, roof)],
    faces: [{ name: "slope", alike: 1, eave: roof.length, top: roof.length, slopeLength: roof.slopeLength }],
    walls: wallsOf(frame, highHeight, highSide),
    runs: { "low-beams": 1, "high-beams": 1 },
    rows,
    rafterSpace: lines.equalSpace,
    span: frame.span,
    length: frame.length,
    longestPiece: frame.longestPiece,
  };
}

function layFrame(inputs: FrameInputs, shape: LeanToShape, highSide: LeanToCells["highSide"]): LeanToFrame {
  const { overhang, slope } = shape;
  const small = (name: string, label: string) => [name, label, "small"] as const;
  const long = (name: string, label: string) => [name, label, "long"] as const;
  const span = inputs.fixed("span", "span, low plate face to high plate face or wall", shape.span);
  const length = inputs.fixed("length", "length, outer faces of the end posts", shape.length);
  const foot = ["12 in", "300 mm"] as const;
  const { bays, firstBays } = inputs.postBays(shape, length);
  const eaveHeight = inputs.given(
    long("eaveHeight", "post base to top of low plate"),
    shape.eaveHeight,
    "/eaveHeight",
    ["7 ft", "2.1 m"],
  );
  const endOverhang = inputs.given(small("endOverhang", "end overhang"), overhang?.end, "/overhang/end", foot);
  return {
    span,
    length,
    bays,
    firstBays,
    endBays: inputs.endBays(shape.endBays),
    eaveHeight,
    unitRise: inputs.given(small("unitRise", "rise"), slope?.rise, "/slope/rise", ["3 in", "75 mm"]),
    unitRun: inputs.given(small("unitRun", "over a run of"), slope?.run, "/slope/run", ["12 in", "300 mm"]),
    lowOverhang: inputs.given(small("lowOverhang", "low overhang, level"), overhang?.low, "/overhang/low", foot),
    highOverhang:
      highSide === "posts"
        ? inputs.given(small("highOverhang", "high overhang, level"), overhang?.high, "/overhang/high", foot)
        : undefined,
    endOverhang,
    lookoutSpacing: layLookoutSpacing(inputs, shape.lookoutSpacing, endOverhang),
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
    braceLeg: inputs.braceLeg(braceLegOf(shape), { length, bays, firstBays, height: eaveHeight, across: span }, [
      "24 in",
      "600 mm",
    ]),
    longestPiece: inputs.given(long("longestPiece", "longest piece in a run"), shape.longestPiece, "/longestPiece", [
      "12 ft",
      "3.6 m",
    ]),
    seat: inputs.maybe("seat", "seat of the birdsmouths", shape.seat),
  };
}

/** The rafter runs from the low plate's face past the high beam, or up to the ledger's face. */
function layPlan(
  { sheet, units, sections }: Laying<LeanToGroup>,
  frame: LeanToFrame,
  shape: LeanToShape,
  highSide: LeanToCells["highSide"],
): RafterPlan {
  const run =
    highSide === "posts" && frame.highOverhang
      ? plus(frame.span, frame.highOverhang)
      : minus(frame.span, sections.ledger.thickness);
  return {
    run: sheet.lay("roof.run", run, { label: "run, low plate face to upper end", display: units.long }),
    overhang: frame.lowOverhang,
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    tail: shape.rafterTail,
    depth: sections.rafters.width,
    plateWidth:
      highSide === "posts"
        ? narrower(sheet, sections["low-beams"].thickness, sections["high-beams"].thickness)
        : sections["low-beams"].thickness,
    seat: frame.seat,
  };
}

/** Limits of the frame as a whole, asked of effective values. */
function refuse(
  { sheet, sections }: Laying<LeanToGroup>,
  frame: LeanToFrame,
  plan: RafterPlan,
  shape: LeanToShape,
  highSide: LeanToCells["highSide"],
): void {
  const checks = new FrameChecks(sheet);
  checks.divisors(frame);
  checks.above(frame.purlinSpacing, undefined, "/purlinSpacing", "The purlin spacing", "Give a spacing such as 24 in.");
  checks.above(
    frame.length,
    sections["low-posts"].width,
    "/length",
    "The length",
    "Give more length than a post is wide.",
  );
  const upper = highSide === "posts" ? sections["high-beams"].thickness : sections.ledger.thickness;
  const both = sheet.decide(upper).plus(sheet.decide(sections["low-beams"].thickness));
  if (sheet.decide(frame.span).lte(both)) {
    const wrong = `The span (${sheet.onTape(frame.span)}) leaves no room between what the rafters rest on (${sheet.onTape(sections["low-beams"].thickness)} and ${sheet.onTape(upper)}).`;
    checks.refuse("/span", wrong, "Give more span than both beams are thick.");
  }
  const higher = "Give more height than the plate beam is deep.";
  checks.above(frame.eaveHeight, sections["low-beams"].width, "/eaveHeight", "The height to the plate's top", higher);
  const { "low-posts": posts, "low-beams": beams } = sections;
  const across = { span: frame.span, endBays: frame.endBays, pairs: highSide === "ledger" ? "one" : "ties" } as const;
  const post = { height: frame.eaveHeight, width: posts.width, beamDepth: beams.width, across };
  checks.bracing(frame, post, braceLegOf(shape) !== undefined);
  checks.rafterRoom(frame.rafterSpacing, sections.rafters.thickness);
  checks.tails(frame.lowOverhang, "/overhang/low", frame);
  checks.tipping(frame.lowOverhang, "/overhang/low", frame.span);
  checks.endTipping(frame.endOverhang, "/overhang/end", frame, posts.width);
  if (highSide === "posts" && frame.highOverhang) checks.tipping(frame.highOverhang, "/overhang/high", frame.span);
  if (highSide === "ledger" && shape.overhang?.high !== undefined) {
    checks.refuse("/overhang/high", "At a wall the roof has no high overhang.", "Leave it out.");
  }
  const short = ["rafters", "fly-rafters"].flatMap((group) => reachFaults(sheet, group, shape.groups, plan));
  const faults = [...checks.faults, ...short, ...commonRafterFaults(sheet, plan, AT)];
  if (faults.length > 0) throw new FaultError(faults);
}

function layHighHeight(
  { sheet, units, sections }: Laying<LeanToGroup>,
  frame: LeanToFrame,
  highSide: LeanToCells["highSide"],
): Cell {
  const upper = highSide === "posts" ? sections["high-beams"].thickness : sections.ledger.thickness;
  const rise = over(times(minus(frame.span, upper), frame.unitRise), frame.unitRun);
  return sheet.lay("frame.highHeight", plus(frame.eaveHeight, rise), {
    label: highSide === "posts" ? "post base to top of high beam" : "post base to the heel line at the ledger",
    display: units.long,
  });
}

/** Both seats begin on the side of the tail: at the low beam's outer face and the high beam's inner one. */
function laySeatToSeat({ sheet, units, sections }: Laying<LeanToGroup>, frame: LeanToFrame, rafter: RafterCells): Cell {
  const level = minus(frame.span, sections["high-beams"].thickness);
  return sheet.lay("rafter.seatToSeat", over(times(level, rafter.unitLength), frame.unitRun), {
    label: "from one birdsmouth to the other, along the slope",
    display: units.long,
  });
}

function layRoof(
  { sheet, units, sections }: Laying<LeanToGroup>,
  frame: LeanToFrame,
  rafter: RafterCells,
  { lines, deck }: { readonly lines: SpacedCells; readonly deck: Deck },
): RoofCells {
  const length = sheet.lay("roof.length", plus(frame.length, times(number("2"), frame.endOverhang)), {
    label: "along the eave, outer faces of the fly rafters",
    display: units.long,
  });
  const purlinWidth = purlinWidthOf(sections, deck);
  const slope = { slopeLength: rafter.edgeLength, purlinWidth, spacing: frame.purlinSpacing, deck };
  return {
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    length,
    slopeLength: rafter.edgeLength,
    purlinRows: layPurlinRows(sheet, slope, units),
    purlinSpacing: frame.purlinSpacing,
    deck,
    rafterLines: lines.pieces,
    ridgeKind: "none",
  };
}

function wallsOf(frame: LeanToFrame, high: Cell, highSide: LeanToCells["highSide"]): WallSide[] {
  const { span, length, eaveHeight: low, bays, firstBays, endBays } = frame;
  const one = number("1");
  const ends = (name: string, label: string): WallSide => ({
    name,
    label,
    width: span,
    heights: [low, high],
    bays: endBays,
    posts: {
      "low-posts": one,
      ...(highSide === "posts" && { "high-posts": one }),
      ...(endBays && { "end-posts": minus(endBays, one) }),
    },
    beam: "end-beams",
  });
  const along = (name: "low" | "high", height: Cell): WallSide => ({
    ...{ name, label: `${name} side`, width: length, heights: [height, height], bays, firstBays },
    posts: { [`${name}-posts`]: plus(bays, one) },
    beam: `${name}-beams`,
  });
  const sides = highSide === "posts" ? [along("low", low), along("high", high)] : [along("low", low)];
  return [...sides, ends("left", "left end"), ends("right", "right end")];
}

function frameGroups(framing: Framing): PieceGroup[] {
  const { laying, frame, highSide, highHeight } = framing;
  const { sheet, sections, units } = laying;
  const { length, bays, firstBays, longestPiece, endOverhang: overhang, braceLeg: leg } = frame;
  const inRow = sheet.lay("frame.postRow", plus(bays, number("1")), { label: "posts in a row" });
  const along = { length, bays, firstBays, longestPiece, postWidth: sections["low-posts"].width, overhang };
  const beams = layPostRun(sheet, "frame", along, units);
  const onPosts = highSide === "posts";
  const rows = onPosts ? "2" : "1";
  const upTo = (height: Cell, beam: "low-beams" | "high-beams") => minus(height, sections[beam].width);
  // Along every row two in each bay; across, one in each corner of end beam and post.
  const braces = plus(times(number("2"), number(rows), bays), times(number("2"), number(rows)));
  return [
    ...one(laying, "low-posts", "Low posts", upTo(frame.eaveHeight, "low-beams"), inRow),
    ...(onPosts ? one(laying, "high-posts", "High posts", upTo(highHeight, "high-beams"), inRow) : []),
    ...endPosts(laying, frame),
    ...runGroups(laying, "low-beams", "Low plate beams", beams, 1),
    ...(onPosts ? runGroups(laying, "high-beams", "High plate beams", beams, 1) : []),
    ...one(laying, "end-beams", "End beams", endBeamLength(framing), number("2")),
    ...one(laying, "braces", "Braces", root(times(number("2"), square(leg))), braces),
  ];
}

/** To the wall, below the ledger; to the ledger's face where a flat roof brings that down to them. */
function endBeamLength({ laying: { sheet, sections }, frame, highSide, highHeight, rafter }: Framing): Operand {
  if (highSide === "posts") return frame.span;
  const top = sheet.decide(highHeight).plus(sheet.decide(rafter.heightAbovePlate));
  const under = top.minus(sheet.decide(sections.ledger.width));
  return under.lt(sheet.decide(frame.eaveHeight)) ? minus(frame.span, sections.ledger.thickness) : frame.span;
}

/** Posts between the corners of both ends, up to the end beams. */
function endPosts(laying: Laying<LeanToGroup>, { endBays, eaveHeight }: LeanToFrame): PieceGroup[] {
  if (!endBays) return [];
  const height = minus(eaveHeight, laying.sections["end-beams"].width);
  return one(laying, "end-posts", "End posts", height, times(number("2"), minus(endBays, number("1"))));
}

/** Ledger, purlins or boards, and fascia. */
function layRows({ laying, frame, lines, shape }: Pick<Framing, "laying" | "frame" | "lines" | "shape">): LaidRun {
  const { sheet, sections, units } = laying;
  const { rafterSpacing, endOverhang: overhang, longestPiece } = frame;
  const short = shape.rafterBays === "short-last";
  const rafterThickness = sections.rafters.thickness;
  return layRafterRun(sheet, "roof", { lines, rafterSpacing, rafterThickness, overhang, longestPiece, short }, units);
}

function roofGroups(framing: Framing, roof: RoofCells): PieceGroup[] {
  const { laying, frame, highSide, rafter, lines, rows: run } = framing;
  const { sheet, sections, units } = laying;
  const along = (name: LeanToGroup, label: string, runs: number) => runGroups(laying, name, label, run, runs);
  const { deck } = roof;
  const boardRows = () => {
    const widths = boardWidths(laying, "deck-boards", "Deck boards");
    return layBoardRows(sheet, { slopeLength: rafter.edgeLength, widths, deck, name: "roof" }, units);
  };
  const fly = roomForFly(sheet, frame.endOverhang, sections.rafters.thickness);
  const length = rafter.stockLength;
  const rakeCut = over(times(sections["rake-fascia"].width, frame.unitRise), frame.unitRun);
  return [
    ...(highSide === "ledger" ? along("ledger", "Ledger", 1) : []),
    ...one(laying, "rafters", "Rafters", length, lines.pieces),
    ...(fly ? one(laying, "fly-rafters", "Fly rafters", length, number("2")) : []),
    ...rakeLookouts(framing),
    ...(deck.kind === "purlins" ? along("purlins", "Purlins", wholes(sheet, roof.purlinRows)) : []),
    ...(isBoarded(deck) ? along("deck-boards", "Deck boards", wholes(sheet, boardRows())) : []),
    ...along("low-fascia", "Low fascia", 1),
    ...(highSide === "posts" ? along("high-fascia", "High fascia", 1) : []),
    // As long as the rafters' edges; its plumb cuts take its own depth × slope.
    ...one(laying, "rake-fascia", "Rake fascia", plus(rafter.edgeLength, rakeCut), number("2")),
  ];
}

/** At both ends. */
function rakeLookouts({ laying, frame, rafter, lines, shape }: Framing): PieceGroup[] {
  const { lookoutSpacing: spacing, endOverhang: overhang } = frame;
  if (!spacing) return [];
  return lookouts(laying, "lookouts", {
    ...{ spacing, overhang, lines },
    rafterThickness: laying.sections.rafters.thickness,
    rakes: [{ slopeLength: rafter.edgeLength, alike: 2 }],
    shortLast: shape.rafterBays === "short-last" ? frame.rafterSpacing : undefined,
  });
}
