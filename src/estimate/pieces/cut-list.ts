/** The cut list: all piece groups of a structure, own ones included, with the piece marks to paint on their ends. */
import { FaultError, pointer } from "../faults.js";
import { decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Defaults } from "../request/given.js";
import type { ExplicitPieces, Role } from "../request/structure.js";
import { GABLE_GROUPS } from "../request/structure-gable.js";
import { HIP_GROUPS } from "../request/structure-hip.js";
import type { FrameShape, StructureShape } from "../request/structure-kinds.js";
import { LEAN_TO_GROUPS } from "../request/structure-lean-to.js";
import { PERGOLA_GROUPS } from "../request/structure-pergola.js";
import { type Cell, sumOr } from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { behindBoards } from "./behind-boards.js";
import { layFloor } from "./floor.js";
import { type GableCells, layGable } from "./gable.js";
import { layHip } from "./hip.js";
import { type Site, wholes } from "./laying.js";
import { layLeanTo } from "./lean-to.js";
import { type FrameCells, layOutline, type OutlineCells } from "./outline.js";
import { layPergola } from "./pergola.js";
import { layGroup, laySection, type PieceGroup, type SectionCells } from "./piece-group.js";
import { shortFaults, shortRafterFaults } from "./piece-reach.js";
import { ROLE_DEFAULTS } from "./roles.js";
import { layWalls } from "./walls.js";

/** All piece groups, and the frame that they were derived from where there is one. */
export interface CutList {
  readonly groups: readonly PieceGroup[];
  /** The geometry, where the structure stands on posts. */
  readonly frame: FrameCells | undefined;
  /** The size of the whole, where there is a frame. */
  readonly outline: OutlineCells | undefined;
  /** The same, of a gable. */
  readonly gable: GableCells | undefined;
  readonly pieceCount: Cell;
  /** Actual wood of all pieces. */
  readonly volume: Cell;
}

/** More pieces than anyone marks by hand; an estimate of a larger job wants another tool. Assumption. */
const MOST_PIECES = 5000;

/**
 * Lays the pieces of any structure.
 * @throws FaultError when it can't be built, names collide, or there are too many pieces.
 */
export function layCutList(site: Site, structure: StructureShape): CutList {
  const { sheet, defaults, units } = site;
  sheet.title("frame", "Frame");
  sheet.title("sections", "Finished sections");
  sheet.title("roof", "Roof");
  sheet.title("rafter", "Common rafter");
  sheet.title("pieces", "Cut list");
  const bare = structure.kind === "pieces" ? undefined : layFrame(site, structure);
  const outline = bare && layOutline(sheet, bare, units);
  const added = bare && structure.kind !== "pieces" ? layAdditions(site, structure, bare) : [];
  const walls = structure.kind === "pieces" ? undefined : structure.walls;
  const frame = bare && walls ? { ...bare, groups: behindBoards(sheet, bare, walls, units.area) } : bare;
  const derived = [...(frame?.groups ?? []), ...added];
  const own = structure.kind === "pieces" ? structure.pieces : (structure.extraPieces ?? []);
  const at = structure.kind === "pieces" ? "/structure/pieces" : "/structure/extraPieces";
  refuseSameNames(own, derived, structure.kind === "pieces" ? [] : GROUP_NAMES[structure.kind], at);
  const groups = [...derived, ...own.map((pieces, i) => layOwn(sheet, pieces, pointer(at, i), defaults, units))];
  const pieceCount = sheet.lay(
    "pieces.count",
    sumOr(
      groups.map((group) => group.count),
      "",
    ),
    { label: "pieces in all" },
  );
  const volume = sheet.lay(
    "pieces.volume",
    sumOr(
      groups.map((group) => group.volume),
      "m3",
    ),
    {
      label: "wood in all, actual",
      display: units.lumber,
    },
  );
  if (sheet.decide(pieceCount).gt(MOST_PIECES)) {
    const wrong = `The structure has ${sheet.onTape(pieceCount)} pieces; the limit is ${MOST_PIECES}.`;
    throw new FaultError([
      {
        code: "too-large",
        at: sheet.blame(pieceCount) || "/structure",
        wrong,
        cure: "Widen the spacings or estimate a part of it.",
      },
    ]);
  }
  refuseParts(sheet, groups);
  return { groups, frame, outline, gable: frame?.kind === "gable" ? frame : undefined, pieceCount, volume };
}

/** Names that runs share: they fall into end and middle pieces, but their common name is taken as well. */
const GROUP_NAMES: Readonly<Record<FrameCells["kind"], readonly string[]>> = {
  gable: GABLE_GROUPS,
  "lean-to": LEAN_TO_GROUPS,
  hip: HIP_GROUPS,
  pergola: PERGOLA_GROUPS,
};

function layFrame(site: Site, structure: FrameShape): FrameCells {
  switch (structure.kind) {
    case "gable":
      return layGable(site, structure);
    case "lean-to":
      return layLeanTo(site, structure);
    case "hip":
      return layHip(site, structure);
    case "pergola":
      return layPergola(site, structure);
  }
}

/** Whether a wall carries the upper ends of the rafters, in place of posts. */
export const hangsOnWall = (frame: FrameCells): boolean => frame.kind === "lean-to" && frame.highSide === "ledger";

/** Walls and floor, where the request wants them. */
function layAdditions(site: Site, structure: FrameShape, frame: FrameCells): PieceGroup[] {
  const { sheet, defaults, units } = site;
  const { span, length } = frame;
  const { bays, firstBays, longestPiece } = frame.frame;
  const eaveHeight = frame.kind === "pergola" ? frame.frame.height : frame.frame.eaveHeight;
  const beamDepth = frame.groups.find(({ role }) => role === "beam")?.width;
  const post = frame.groups.find(({ role }) => role === "post");
  const postWidth = post?.width ?? length;
  const { groups, floor, walls } = structure;
  return [
    ...(walls
      ? layWalls(sheet, { walls, groups, sold: site.sold }, { ...frame, post: postWidth }, defaults, units)
      : []),
    ...(floor
      ? layFloor(
          site,
          { floor, groups },
          {
            ...{ span, length, bays, firstBays, longestPiece, postWidth, eaveHeight, beamDepth },
            onWall: hangsOnWall(frame),
          },
        )
      : []),
  ];
}

function layOwn(sheet: Sheet, pieces: ExplicitPieces, at: string, defaults: Defaults, units: DisplayUnits): PieceGroup {
  const { name, role = "other", label = name, section, length, count, crossings, runs, ...settings } = pieces;
  const sides = laySection(sheet, name, role, at, defaults, section, units.small);
  const seasoning = settings.seasoning ?? heavyTimber(sheet, role, sides, at, defaults);
  const group = layGroup(
    sheet,
    {
      name,
      at,
      label,
      role,
      section: sides,
      settings: { ...settings, ...(seasoning && { seasoning }), length, count },
      // Replaced by the settings: every size of an own group is given.
      length: sides.width,
      count: { kind: "number", unit: plain(count).unit, value: plain(count).value, written: plain(count).unit },
    },
    units,
  );
  const own = (column: string, words: string, value: number): Cell =>
    sheet.input(`pieces.${name}.${column}`, plain(value), { label: words });
  return {
    ...group,
    runs: runs === undefined ? group.count : own("runs", "runs that they are joined into", runs),
    ...(crossings !== undefined && { crossings: own("crossings", "crossed by each", crossings) }),
    ...((settings.joint ?? crossings ?? runs) !== undefined && { jointGiven: true }),
  };
}

/** From so thick on, pieces take years to dry in the stack, and are used green. Common practice, no source. */
const HEAVY = decimal(100);

/** Pieces as thick as the timbers of a frame are used green as those are; undefined where the role decides. */
function heavyTimber(
  sheet: Sheet,
  role: Role,
  { thickness, width }: SectionCells,
  at: string,
  defaults: Defaults,
): "green" | undefined {
  const thin = [thickness, width].some((side) => sheet.decide(side).lt(HEAVY));
  if (thin || ROLE_DEFAULTS[role].seasoning === "green") return undefined;
  const why = "timbers of 4 in or 100 mm and more take years to dry, and season in place; common practice";
  return defaults.choice(undefined, `${at}/seasoning`, "green", why);
}

function refuseSameNames(
  own: readonly ExplicitPieces[],
  derived: readonly PieceGroup[],
  bases: readonly string[],
  at: string,
): void {
  const seen = new Set<string>([...derived.map((group) => group.name), ...bases]);
  const faults = own.flatMap((pieces, i) => {
    const twice = seen.has(pieces.name);
    seen.add(pieces.name);
    return twice
      ? [
          {
            code: "duplicate-name" as const,
            at: pointer(at, i, "name"),
            wrong: `There is already a group called ${pieces.name}.`,
            cure: "Give every group a name of its own.",
          },
        ]
      : [];
  });
  if (faults.length > 0) throw new FaultError(faults);
}

/** Lengths, sections and counts that an override or an odd frame made impossible. */
function refuseParts(sheet: Sheet, groups: readonly PieceGroup[]): void {
  const faults = groups.flatMap((group) => {
    const bad = [group.length, group.thickness, group.width, group.count].filter((cell) => sheet.decide(cell).lte(0));
    const broken = sheet.decide(group.count).isInteger() ? [] : [group.count];
    return [...bad, ...broken].map((cell) => ({
      code: "cannot-build" as const,
      at: sheet.blame(cell) || group.at,
      wrong: `${group.label}: ${cell.label} is ${sheet.onTape(cell)}.`,
      cure: "Every length and side must be more than zero, every count a whole number.",
    }));
  });
  const short = faults.length > 0 ? [] : [...shortFaults(sheet, groups), ...shortRafterFaults(sheet)];
  if (faults.length + short.length > 0) throw new FaultError([...faults, ...short]);
}

/** Piece marks of a group, numbered on through all groups that share a letter: `R-01` … `R-26`. */
export function pieceMarks(sheet: Sheet, groups: readonly PieceGroup[]): ReadonlyMap<string, readonly string[]> {
  const next = new Map<string, number>();
  return new Map(
    groups.map((group) => {
      const first = next.get(group.mark) ?? 1;
      const count = wholes(sheet, group.count);
      next.set(group.mark, first + count);
      const marks = Array.from({ length: count }, (_, i) => `${group.mark}-${String(first + i).padStart(2, "0")}`);
      return [group.name, marks] as const;
    }),
  );
}
