/**
 * A pergola to its piece groups: posts, two beams, level rafters that reach past them, slats across.
 *
 * Rafters stand along the whole beams, the outer ones flush with the beams' ends; slats lie along the whole rafters.
 */
import { toQuantity } from "../../catalog/reading.js";
import { FaultError } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { GroupSettings } from "../request/structure.js";
import type { PergolaGroup, PergolaShape } from "../request/structure-pergola.js";
import { type Cell, minus, number, plus, root, square, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import {
  braceLegOf,
  FrameInputs,
  type LaidFrame,
  layPostRun,
  layRafterRun,
  type PostBays,
  type WallSide,
} from "./frame.js";
import { FrameChecks } from "./frame-checks.js";
import { AT, type GroupKind, type Laying, laySections, one, runGroups, type Site, wholes } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { laySpacing, refuseTight, type SpacedCells } from "./spacing.js";

/** The size of the whole, as input cells. */
export interface PergolaFrame {
  readonly span: Cell;
  readonly length: Cell;
  /** To the top of the beams. */
  readonly height: Cell;
  readonly sideOverhang: Cell;
  readonly endOverhang: Cell;
  readonly bays: Cell;
  /** See `PostBays`. */
  readonly firstBays: PostBays["firstBays"];
  readonly rafterSpacing: Cell;
  /** Absent where there are no slats. */
  readonly slatSpacing: Cell | undefined;
  readonly braceLeg: Cell;
  readonly longestPiece: Cell;
}

/** A pergola frame as laid. */
export interface PergolaCells extends LaidFrame {
  readonly kind: "pergola";
  readonly frame: PergolaFrame;
  /** Along the beams, and along the rafters: what they shade. */
  readonly topLength: Cell;
  readonly topWidth: Cell;
}

const KINDS: Readonly<Record<PergolaGroup, GroupKind>> = {
  posts: { role: "post" },
  beams: { role: "beam" },
  braces: { role: "brace" },
  rafters: { role: "rafter", joint: "level-seats" },
  slats: { role: "board", section: { "inch-pound": "2 x 2 in", metric: "50 x 50 mm" }, mark: "S" },
};

/**
 * Lays frame and piece groups.
 * @throws FaultError when it cannot be built: all reasons found, each with its cure.
 */
export function layPergola(site: Site, shape: PergolaShape): PergolaCells {
  const { sheet, defaults, units } = site;
  const frame = layFrame(new FrameInputs(sheet, defaults, units), shape);
  const settings = shape.groups;
  const without = new Set<PergolaGroup>(frame.slatSpacing ? [] : ["slats"]);
  const sections = laySections(sheet, KINDS, settings, defaults, units, without);
  const laying: Laying<PergolaGroup> = { sheet, units, kinds: KINDS, settings, sections, sold: site.sold };
  refuse(laying, frame, shape);
  const whole = (name: string, label: string, of: Cell, past: Cell) =>
    sheet.lay(`roof.${name}`, plus(of, times(number("2"), past)), { label, display: units.long });
  const topLength = whole("length", "along the beams, end to end", frame.length, frame.endOverhang);
  const topWidth = whole("width", "along the rafters, end to end", frame.span, frame.sideOverhang);
  const lines = laySpacing(
    sheet,
    "roof.rafters",
    { length: topLength, width: sections.rafters.thickness, most: frame.rafterSpacing },
    units.long,
  );
  refuseTight(sheet, lines, { width: sections.rafters.thickness, at: `${AT}/rafterSpacing`, what: "Rafters" });
  return {
    kind: "pergola",
    frame,
    topLength,
    topWidth,
    rafter: undefined,
    rafterDepth: sections.rafters.width,
    roof: undefined,
    groups: [...frameGroups(laying, frame), ...topGroups(laying, frame, topWidth, lines)],
    faces: [],
    walls: shape.walls ? wallsOf(laying, frame) : [],
    runs: { beams: 2 },
    rafterSpace: lines.equalSpace,
    span: frame.span,
    length: frame.length,
    longestPiece: frame.longestPiece,
  };
}

function layFrame(inputs: FrameInputs, shape: PergolaShape): PergolaFrame {
  const { overhang } = shape;
  const small = (name: string, label: string) => [name, label, "small"] as const;
  const long = (name: string, label: string) => [name, label, "long"] as const;
  const length = inputs.fixed("length", "length, outer faces of the end posts", shape.length);
  const { bays, firstBays } = inputs.postBays(shape, length);
  const height = inputs.given(long("height", "post base to top of beam"), shape.height, "/height", ["8 ft", "2.4 m"]);
  const past = ["18 in", "450 mm"] as const;
  return {
    span: inputs.fixed("span", "span, outer faces of the beams", shape.span),
    length,
    height,
    sideOverhang: inputs.given(small("sideOverhang", "rafters past the beams"), overhang?.side, "/overhang/side", past),
    endOverhang: inputs.given(small("endOverhang", "beams past the end posts"), overhang?.end, "/overhang/end", past),
    bays,
    firstBays,
    rafterSpacing: inputs.given(
      small("rafterSpacing", "rafters apart, at most"),
      shape.rafterSpacing,
      "/rafterSpacing",
      ["16 in", "400 mm"],
    ),
    slatSpacing: inputs.maybe("slatSpacing", "slats apart, at most", shape.slatSpacing),
    braceLeg: inputs.braceLeg(braceLegOf(shape), { length, bays, firstBays, height }, ["24 in", "600 mm"]),
    longestPiece: inputs.given(long("longestPiece", "longest piece in a run"), shape.longestPiece, "/longestPiece", [
      "16 ft",
      "4.8 m",
    ]),
  };
}

/** Limits of the frame as a whole, asked of effective values. */
function refuse({ sheet, sections }: Laying<PergolaGroup>, frame: PergolaFrame, shape: PergolaShape): void {
  const checks = new FrameChecks(sheet);
  const { posts, beams, rafters } = sections;
  checks.divisors(frame);
  checks.above(frame.length, posts.width, "/length", "The length", "Give more length than a post is wide.");
  checks.above(frame.span, beams.thickness, "/span", "The span", "Give more span than a beam is thick.");
  checks.above(
    frame.height,
    beams.width,
    "/height",
    "The height to the beam's top",
    "Give more than the beam's depth.",
  );
  const post = { height: frame.height, width: posts.width, beamDepth: beams.width };
  checks.bracing(frame, post, braceLegOf(shape) !== undefined);
  checks.rowsOfPosts(frame.span, posts.width);
  checks.rafterRoom(frame.rafterSpacing, rafters.thickness);
  if (frame.slatSpacing) {
    const cure = "Give more than a slat is wide.";
    checks.above(frame.slatSpacing, sections.slats.width, "/slatSpacing", "The slat spacing", cure);
  }
  checks.tipping(frame.sideOverhang, "/overhang/side", frame.span);
  checks.endTipping(frame.endOverhang, "/overhang/end", frame, posts.width);
  refuseShort(checks, sheet, frame, shape.groups?.rafters);
  if (checks.faults.length > 0) throw new FaultError(checks.faults);
}

/** Rafters of a given length that do not reach over both beams and past them. */
function refuseShort(checks: FrameChecks, sheet: Sheet, frame: PergolaFrame, rafters: GroupSettings | undefined): void {
  if (rafters?.length === undefined || rafters.remove) return;
  const { span, sideOverhang: past } = frame;
  const length = toQuantity(rafters.length, "mm").value;
  const least = sheet.decide(span).plus(sheet.decide(past).times(2));
  if (length.gte(least)) return;
  const say = (value: Decimal): string => onTape({ value, unit: span.unit }, span.display);
  const wrong = `Rafters of ${say(length)} do not reach over both beams and ${sheet.onTape(past)} past each, ${say(least)}.`;
  checks.refuse("/groups/rafters/length", wrong, "Leave the length out, or give one that reaches.");
}

/** Along the beams up to their tops; across the ends, where nothing lies on the corner posts but the beams, up to their undersides. */
function wallsOf({ sheet, sections, units }: Laying<PergolaGroup>, frame: PergolaFrame): WallSide[] {
  const { span, length, height, bays, firstBays } = frame;
  const under = sheet.lay("frame.underBeams", minus(height, sections.beams.width), {
    label: "post base to the underside of the beams",
    display: units.long,
  });
  const along = { width: length, heights: [height, height] as const, bays, ...(firstBays && { firstBays }) };
  const side = { ...along, posts: { posts: plus(bays, number("1")) }, beam: "beams" };
  const end = { width: span, heights: [under, under] as const, bays: undefined, posts: { posts: number("2") } };
  return [
    { name: "near", label: "near side", ...side },
    { name: "far", label: "far side", ...side },
    { name: "left", label: "left end", ...end },
    { name: "right", label: "right end", ...end },
  ];
}

function frameGroups(laying: Laying<PergolaGroup>, frame: PergolaFrame): PieceGroup[] {
  const { sheet, sections, units } = laying;
  const { length, bays, firstBays, longestPiece, endOverhang: overhang, braceLeg: leg } = frame;
  const run = { length, bays, firstBays, longestPiece, postWidth: sections.posts.width, overhang };
  const beams = layPostRun(sheet, "frame", run, units);
  const postPairs = sheet.lay("frame.postPairs", plus(bays, number("1")), { label: "pairs of posts" });
  return [
    ...one(laying, "posts", "Posts", minus(frame.height, sections.beams.width), times(number("2"), postPairs)),
    ...runGroups(laying, "beams", "Beams", beams, 2),
    // Along the beams only: nothing across to brace against but the rafters.
    ...one(laying, "braces", "Braces", root(times(number("2"), square(leg))), times(number("4"), bays)),
  ];
}

function topGroups(laying: Laying<PergolaGroup>, frame: PergolaFrame, width: Cell, lines: SpacedCells): PieceGroup[] {
  const { sheet, sections, units } = laying;
  const rafters = one(laying, "rafters", "Rafters", width, lines.pieces);
  if (!frame.slatSpacing) return rafters;
  const slat = { length: width, width: sections.slats.width, most: frame.slatSpacing };
  const rows = laySpacing(sheet, "roof.slats", slat, units.long);
  refuseTight(sheet, rows, { width: sections.slats.width, at: `${AT}/slatSpacing`, what: "Slats" });
  const run = layRafterRun(
    sheet,
    "roof",
    {
      lines,
      rafterSpacing: frame.rafterSpacing,
      rafterThickness: sections.rafters.thickness,
      overhang: sheet.lay("roof.slatEnd", number("0 in"), { label: "slats past the outer rafters" }),
      longestPiece: frame.longestPiece,
      short: false,
    },
    units,
  );
  return [...rafters, ...runGroups(laying, "slats", "Slats", run, wholes(sheet, rows.pieces))];
}
