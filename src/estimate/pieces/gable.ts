/**
 * An open gable shelter to its piece groups: bays, posts, plate beams, gable-end beams, ties, ridge, rafters, fly rafters,
 * braces, purlins, fascia.
 *
 * The frame stands between the outer faces of its end posts (`length`) and of its plate beams (`span`); the roof reaches
 * past both by its overhangs. The plate beams, the ridge, the purlins and the eave fascia run the whole roof length.
 */
import { toQuantity } from "../../catalog/reading.js";
import { type Fault, FaultError } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Defaults } from "../request/given.js";
import type { GableGroup, GableShape, GroupSettings, Role } from "../request/structure.js";
import {
  type Cell,
  count,
  minus,
  number,
  type Operand,
  over,
  plus,
  root,
  roundUp,
  square,
  times,
} from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { commonRafterFaults, layCommonRafter, type RafterCells } from "./common-rafter.js";
import { type GroupPlan, layGroup, laySection, type PieceGroup, type SectionCells } from "./piece-group.js";
import { mergeEnds, type RunPieces, runPieceLength, runPieces, shortened } from "./runs.js";
import { laySpacing, type SpacedCells } from "./spacing.js";

/** The size of the whole, as input cells. */
export interface GableFrame {
  readonly span: Cell;
  readonly length: Cell;
  readonly eaveHeight: Cell;
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  readonly eaveOverhang: Cell;
  readonly gableOverhang: Cell;
  readonly bays: Cell;
  readonly rafterSpacing: Cell;
  readonly purlinSpacing: Cell;
  readonly braceLeg: Cell;
  readonly longestPiece: Cell;
  readonly seat: Cell | undefined;
}

/** What the takeoffs need of the roof. Lengths along the slope are along the upper edge of the rafters. */
export interface RoofCells {
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  /** Along the eave, from outer face to outer face of the fly rafters. */
  readonly length: Cell;
  /** Ridge to tail, one slope, along the rafter. */
  readonly slopeLength: Cell;
  readonly purlinRows: Cell;
  readonly rafterLines: Cell;
  readonly ridgeKind: "board" | "beam";
}

export interface GableCells {
  readonly frame: GableFrame;
  readonly rafter: RafterCells;
  readonly roof: RoofCells;
  readonly groups: readonly PieceGroup[];
  /** Posts that stand, and cross-frames (pairs of posts). */
  readonly postPairs: Cell;
}

const AT = "/structure";

const ROLE_OF: Readonly<Record<GableGroup, Role>> = {
  posts: "post",
  beams: "beam",
  "gable-beams": "tie",
  ties: "tie",
  ridge: "ridge",
  rafters: "rafter",
  "fly-rafters": "rafter",
  braces: "brace",
  purlins: "purlin",
  "eave-fascia": "fascia",
  "rake-fascia": "fascia",
};

/** Everything that laying one group needs beside its own plan. */
interface Laying {
  readonly sheet: Sheet;
  readonly shape: GableShape;
  readonly units: DisplayUnits;
  readonly sections: Readonly<Record<GableGroup, SectionCells>>;
}

/**
 * Lays frame, rafter, roof and piece groups.
 * @throws FaultError when it cannot be built: all reasons found, each with its cure.
 */
export function layGable(sheet: Sheet, shape: GableShape, defaults: Defaults, units: DisplayUnits): GableCells {
  const frame = layFrame(sheet, shape, defaults, units);
  const sections = layGableSections(sheet, shape, defaults, units);
  const run = sheet.lay("roof.run", over(frame.span, number("2")), {
    label: "run, plate face to ridge centre",
    display: units.long,
  });
  const plan = {
    run,
    overhang: frame.eaveOverhang,
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    ridgeThickness: sections.ridge.thickness,
    depth: sections.rafters.width,
    plateWidth: sections.beams.thickness,
    seat: frame.seat,
  };
  const faults = [...frameFaults(sheet, frame, sections), ...commonRafterFaults(sheet, plan, AT)];
  if (faults.length > 0) throw new FaultError(faults);
  const rafter = layCommonRafter(sheet, "rafter", plan, units);
  const laying: Laying = { sheet, shape, units, sections };
  const lines = laySpacing(
    sheet,
    "roof.rafters",
    { length: frame.length, width: sections.rafters.thickness, most: frame.rafterSpacing },
    units.long,
  );
  const roof = layRoof(laying, frame, rafter, lines);
  const postPairs = sheet.lay("frame.postPairs", plus(frame.bays, number("1")), { label: "pairs of posts" });
  const groups = [...frameGroups(laying, frame, postPairs), ...roofGroups(laying, frame, rafter, roof, lines)];
  return { frame, rafter, roof, groups, postPairs };
}

function layFrame(sheet: Sheet, shape: GableShape, defaults: Defaults, units: DisplayUnits): GableFrame {
  const { long, small } = units;
  const input = (
    name: string,
    label: string,
    display: string,
    value: Parameters<Defaults["quantity"]>[0],
    at: string,
    inch: string,
    metric: string,
  ) =>
    sheet.input(
      `frame.${name}`,
      defaults.quantity(value, `${AT}${at}`, { "inch-pound": inch, metric }, "common practice"),
      { label, display },
    );
  const fixed = (name: string, label: string, value: GableShape["span"]) =>
    sheet.input(`frame.${name}`, toQuantity(value, "mm"), { label, display: long });
  const span = fixed("span", "span, outer faces of the plate beams", shape.span);
  const length = fixed("length", "length, outer faces of the end posts", shape.length);
  const longestBay =
    shape.bays === undefined
      ? input("longestBay", "longest bay", long, undefined, "/bays", "8 ft", "2.4 m")
      : undefined;
  const bays = longestBay
    ? sheet.lay("frame.bays", roundUp(over(length, longestBay)), { label: "bays between posts" })
    : sheet.input("frame.bays", plain(shape.bays ?? 1), { label: "bays between posts" });
  return {
    span,
    length,
    bays,
    eaveHeight: input(
      "eaveHeight",
      "post base to top of plate",
      long,
      shape.eaveHeight,
      "/eaveHeight",
      "8 ft",
      "2.4 m",
    ),
    unitRise: input("unitRise", "rise", small, shape.slope?.rise, "/slope/rise", "4 in", "100 mm"),
    unitRun: input("unitRun", "over a run of", small, shape.slope?.run, "/slope/run", "12 in", "300 mm"),
    eaveOverhang: input(
      "eaveOverhang",
      "eave overhang, level",
      small,
      shape.overhang?.eave,
      "/overhang/eave",
      "12 in",
      "300 mm",
    ),
    gableOverhang: input(
      "gableOverhang",
      "gable overhang",
      small,
      shape.overhang?.gable,
      "/overhang/gable",
      "12 in",
      "300 mm",
    ),
    rafterSpacing: input(
      "rafterSpacing",
      "rafters apart, at most",
      small,
      shape.rafterSpacing,
      "/rafterSpacing",
      "24 in",
      "600 mm",
    ),
    purlinSpacing: input(
      "purlinSpacing",
      "purlins apart, at most",
      small,
      shape.purlinSpacing,
      "/purlinSpacing",
      "24 in",
      "600 mm",
    ),
    braceLeg: input("braceLeg", "leg of a brace", small, shape.braceLeg, "/braceLeg", "30 in", "750 mm"),
    longestPiece: input(
      "longestPiece",
      "longest piece in a run",
      long,
      shape.longestPiece,
      "/longestPiece",
      "12 ft",
      "3.6 m",
    ),
    seat:
      shape.seat === undefined
        ? undefined
        : sheet.input("frame.seat", toQuantity(shape.seat, "mm"), { label: "seat of the birdsmouth", display: small }),
  };
}

function layGableSections(
  sheet: Sheet,
  shape: GableShape,
  defaults: Defaults,
  units: DisplayUnits,
): Laying["sections"] {
  const names = Object.keys(ROLE_OF) as GableGroup[];
  const lay = (name: GableGroup): SectionCells => {
    const given =
      shape.groups?.[name]?.section ?? (name === "fly-rafters" ? shape.groups?.rafters?.section : undefined);
    return laySection(sheet, name, ROLE_OF[name], `${AT}/groups/${name}`, defaults, given, units.small);
  };
  return Object.fromEntries(names.map((name) => [name, lay(name)])) as Laying["sections"];
}

/** Limits of the frame as a whole, asked of effective values. */
function frameFaults(sheet: Sheet, frame: GableFrame, sections: Laying["sections"]): Fault[] {
  const faults: Fault[] = [];
  const atLeast = (cell: Cell, least: Cell | undefined, at: string, what: string, cure: string): void => {
    if (sheet.decide(cell).gt(least ? sheet.decide(least) : 0)) return;
    const limit = least ? ` is not more than ${least.label} (${sheet.shown(least)})` : " is not more than zero";
    faults.push({ code: "cannot-build", at: `${AT}${at}`, wrong: `${what} (${sheet.shown(cell)})${limit}.`, cure });
  };
  atLeast(frame.rafterSpacing, undefined, "/rafterSpacing", "The rafter spacing", "Give a spacing such as 24 in.");
  atLeast(frame.purlinSpacing, undefined, "/purlinSpacing", "The purlin spacing", "Give a spacing such as 24 in.");
  atLeast(frame.bays, undefined, "/bays", "The number of bays", "Give one bay or more.");
  atLeast(frame.longestPiece, undefined, "/longestPiece", "The longest piece", "Give a length such as 12 ft.");
  atLeast(frame.length, sections.posts.width, "/length", "The length", "Give more length than a post is wide.");
  atLeast(frame.span, sections.beams.thickness, "/span", "The span", "Give more span than a plate beam is thick.");
  atLeast(
    frame.eaveHeight,
    sections.beams.width,
    "/eaveHeight",
    "The height to the plate's top",
    "Give more height than the plate beam is deep.",
  );
  const drop = sheet.decide(frame.eaveOverhang).times(sheet.decide(frame.unitRise));
  if (drop.gte(sheet.decide(frame.eaveHeight).times(sheet.decide(frame.unitRun)))) {
    const wrong = `At an overhang of ${sheet.shown(frame.eaveOverhang)} the rafter tails reach the ground.`;
    const cure = "Give a shorter overhang, a higher plate or a flatter roof.";
    faults.push({ code: "cannot-build", at: `${AT}/overhang/eave`, wrong, cure });
  }
  return faults;
}

function layRoof(
  { sheet, shape, units, sections }: Laying,
  frame: GableFrame,
  rafter: RafterCells,
  lines: SpacedCells,
): RoofCells {
  const length = sheet.lay("roof.length", plus(frame.length, times(number("2"), frame.gableOverhang)), {
    label: "along the eave, outer faces of the fly rafters",
    display: units.long,
  });
  const reach = sheet.lay("roof.purlinReach", minus(rafter.edgeLength, sections.purlins.width), {
    label: "eave purlin to ridge purlin, centres",
    display: units.long,
  });
  const spaces = sheet.lay("roof.purlinSpaces", roundUp(over(reach, frame.purlinSpacing)), { label: "purlin spaces" });
  const purlinRows = sheet.lay("roof.purlinRows", plus(spaces, number("1")), { label: "purlin rows, one slope" });
  return {
    unitRise: frame.unitRise,
    unitRun: frame.unitRun,
    length,
    slopeLength: rafter.edgeLength,
    purlinRows,
    rafterLines: lines.pieces,
    ridgeKind: shape.ridge ?? "board",
  };
}

function frameGroups(laying: Laying, frame: GableFrame, postPairs: Cell): PieceGroup[] {
  const { sheet, sections, units } = laying;
  const bay = sheet.lay("frame.bay", over(minus(frame.length, sections.posts.width), frame.bays), {
    label: "posts apart, centres",
    display: units.long,
  });
  const beamEnd = sheet.lay("frame.beamEnd", plus(over(sections.posts.width, number("2")), frame.gableOverhang), {
    label: "end post's centre to the beam's end",
    display: units.small,
  });
  const wholeBays = bayLimit(sheet, frame, bay, beamEnd);
  const beamKinds = mergeEnds(runPieces(wholes(sheet, frame.bays), wholeBays), true);
  const leg = frame.braceLeg;
  return [
    ...one(laying, "posts", "Posts", minus(frame.eaveHeight, sections.beams.width), times(number("2"), postPairs)),
    ...runGroups(laying, "beams", "Plate beams", beamKinds, 2, (kind) =>
      runPieceLength(kind, bay, { first: beamEnd, last: beamEnd }),
    ),
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

/** Whole bays in the longest piece wanted, its end reach taken off; one bay at least, however long that is. */
function bayLimit(sheet: Sheet, frame: GableFrame, bay: Cell, end: Cell): number {
  const room = sheet.decide(frame.longestPiece).minus(sheet.decide(end));
  return Math.max(1, Math.floor(room.dividedBy(sheet.decide(bay)).toNumber()));
}

function roofGroups(
  laying: Laying,
  frame: GableFrame,
  rafter: RafterCells,
  roof: RoofCells,
  lines: SpacedCells,
): PieceGroup[] {
  const { sheet, sections, units, shape } = laying;
  const short = shape.rafterBays === "short-last";
  const bay = short ? frame.rafterSpacing : lines.equalSpace;
  const end = sheet.lay("roof.runEnd", plus(over(sections.rafters.thickness, number("2")), frame.gableOverhang), {
    label: "end rafter's centre to the roof's end",
    display: units.small,
  });
  const shortage = short
    ? sheet.lay("roof.shortage", minus(times(lines.spaces, frame.rafterSpacing), lines.reach), {
        label: "the last rafter bay is shorter by",
        display: units.small,
      })
    : undefined;
  const ends = {
    first: end,
    last: shortage
      ? sheet.lay("roof.lastEnd", shortened(end, shortage), { label: "last end", display: units.small })
      : end,
  };
  const kinds = mergeEnds(runPieces(wholes(sheet, lines.spaces), bayLimit(sheet, frame, bay, end)), !short);
  const along = (kind: RunPieces) => runPieceLength(kind, bay, ends);
  const fly = sheet.decide(frame.gableOverhang).gt(0);
  const rows = wholes(sheet, roof.purlinRows);
  return [
    ...runGroups(laying, "ridge", shape.ridge === "beam" ? "Ridge beam" : "Ridge board", kinds, 1, along),
    ...one(laying, "rafters", "Common rafters", rafter.stockLength, times(number("2"), lines.pieces)),
    ...(fly ? one(laying, "fly-rafters", "Fly rafters", rafter.stockLength, number("4")) : []),
    ...runGroups(laying, "purlins", "Purlins", kinds, 2 * rows, along),
    ...runGroups(laying, "eave-fascia", "Eave fascia", kinds, 2, along),
    ...one(laying, "rake-fascia", "Rake fascia", rakeLength(frame, rafter, sections["rake-fascia"]), number("4")),
  ];
}

/** Up to the peak, in front of the ridge's end; plumb cuts take the fascia's own depth × slope. */
function rakeLength(frame: GableFrame, rafter: RafterCells, fascia: SectionCells): Operand {
  const pastPlate = over(times(frame.eaveOverhang, rafter.unitLength), frame.unitRun);
  return plus(rafter.lineLength, pastPlate, over(times(fascia.width, frame.unitRise), frame.unitRun));
}

/** A count that code must branch on. */
const wholes = (sheet: Sheet, cell: Cell): number => sheet.decide(cell).toNumber();

function one(laying: Laying, name: GableGroup, label: string, length: Operand, pieces: Operand): PieceGroup[] {
  return laid(laying, name, { name, label, length, count: pieces });
}

/** One group for each kind of piece of a run; only where there are several does the name say which. */
function runGroups(
  laying: Laying,
  base: GableGroup,
  label: string,
  kinds: readonly RunPieces[],
  runs: number,
  length: (kind: RunPieces) => Operand,
): PieceGroup[] {
  return kinds.flatMap((kind, i) => {
    const place = kinds.length === 1 ? "" : placeOf(kind, i, kinds);
    const name = place ? `${base}-${place}` : base;
    const spoken = place ? `${label} (${place.replace("-", " ")})` : label;
    return laid(laying, base, { name, label: spoken, length: length(kind), count: count(kind.pieces * runs) });
  });
}

function placeOf(kind: RunPieces, index: number, kinds: readonly RunPieces[]): string {
  const place = kind.first && kind.last ? "whole" : kind.first ? "end" : kind.last ? "last" : "middle";
  const same = kinds.filter((other, i) => i < index && other.first === kind.first && other.last === kind.last).length;
  return same === 0 ? place : `${place}-${same + 1}`;
}

function laid(
  laying: Laying,
  base: GableGroup,
  plan: Pick<GroupPlan, "name" | "label" | "length" | "count">,
): PieceGroup[] {
  const { sheet, shape, sections, units } = laying;
  const settings: GroupSettings | undefined = shape.groups?.[base];
  if (settings?.remove) return [];
  const group: GroupPlan = {
    ...plan,
    at: `${AT}/groups/${base}`,
    role: ROLE_OF[base],
    section: sections[base],
    settings,
  };
  const found = layGroup(sheet, group, units);
  return sheet.decide(found.count).isZero() ? [] : [found]; // fewer than none is refused with the cut list
}
