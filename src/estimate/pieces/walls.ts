/**
 * Boarded walls to their piece groups: boards, battens, and the rails or studs behind them, openings taken off.
 *
 * A side is boarded between the outer faces of its corner posts, from above the ground to the top of the beam. Boards that
 * an opening takes out whole, over its height, are not wanted; the others are cut round it.
 */
import { toQuantity } from "../../catalog/reading.js";
import { type Fault, FaultError, pointer } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Defaults } from "../request/given.js";
import type { OpeningShape, WallGroup, WallsShape } from "../request/structure-walls.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
} from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { type BoardWidths, boardWidths, layRows } from "./board-width.js";
import { FrameInputs, type LaidFrame, type WallSide } from "./frame.js";
import { AT, type GroupKind, type Laying, laid, laySections, type SettingsByGroup, type Site } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { alongSide } from "./wall-bays.js";

const WALL_BOARD = { "inch-pound": "1 x 8 in", metric: "25 x 200 mm" };

/** Nobody planes the outside of a shed. */
const ROUGH = { surface: "rough", seasoning: "green" } as const;

/** Boards and battens are coated outside and on their edges; their backs lie on rails, studs or boards. */
const CLAD = { ...ROUGH, hiddenFaces: "one-wide" } as const;
const STICK = { "inch-pound": "2 x 4 in", metric: "50 x 100 mm" };

const KINDS: Readonly<Record<WallGroup, GroupKind>> = {
  "wall-boards": { role: "board", section: WALL_BOARD, mark: "WB", rules: CLAD, encloses: true },
  "wall-battens": {
    role: "board",
    section: { "inch-pound": "1 x 2 in", metric: "25 x 50 mm" },
    mark: "WT",
    rules: CLAD,
    encloses: true,
  },
  "wall-rails": { role: "other", section: STICK, joint: "ends", mark: "WR", rules: ROUGH, encloses: true },
  "wall-studs": { role: "other", section: STICK, joint: "ends", mark: "WS", rules: ROUGH, encloses: true },
};

const DRY: typeof KINDS = {
  ...KINDS,
  "wall-boards": { ...KINDS["wall-boards"], rules: { ...CLAD, seasoning: "dried" } },
};

/** Groups that each way of boarding has none of. */
const WITHOUT: Readonly<Record<NonNullable<WallsShape["boards"]>, ReadonlySet<WallGroup>>> = {
  vertical: new Set(["wall-battens", "wall-studs"]),
  "board-and-batten": new Set(["wall-studs"]),
  horizontal: new Set(["wall-battens", "wall-rails"]),
};

/** Lap, or gap below a batten, where the request is silent: common practice. */
const USUAL_LAP = {
  vertical: ["1/2 in", "12 mm"],
  "board-and-batten": ["1/2 in", "12 mm"],
  horizontal: ["1 in", "25 mm"],
} as const;

/** What all walls share. */
interface Walling {
  readonly sheet: Sheet;
  readonly units: DisplayUnits;
  readonly laying: Laying<WallGroup>;
  readonly boards: NonNullable<WallsShape["boards"]>;
  readonly clearance: Cell;
  readonly backing: Cell;
  readonly longestPiece: Cell;
  /** Width of a post, over which boards and rails along a side meet. */
  readonly post: Cell;
  /** Width that a board adds to the wall. */
  readonly cover: Cell;
  /** The same, and that of the yard's boards where they add less. */
  readonly covers: BoardWidths;
  readonly lap: Cell;
}

/**
 * Lays all boarded sides.
 * @throws FaultError when an opening is larger than its wall, a lap than its board, or a side is named twice or is none.
 */
export function layWalls(
  sheet: Sheet,
  {
    walls: shape,
    groups: settings,
    sold,
  }: { readonly walls: WallsShape; readonly groups: SettingsByGroup; readonly sold: Site["sold"] },
  { walls: sides, longestPiece, post }: Pick<LaidFrame, "walls" | "longestPiece"> & { readonly post: Cell },
  defaults: Defaults,
  units: DisplayUnits,
): PieceGroup[] {
  sheet.title("walls", "Walls");
  const walling = {
    ...layWalling({ sheet, defaults, units, ...(sold && { sold }) }, shape, settings),
    longestPiece,
    post,
  };
  const faults: Fault[] = [];
  const found = shape.sides.map((wanted, i) => {
    const at = pointer(`${AT}/walls/sides`, i);
    const side = sides.find(({ name }) => name === wanted.side);
    const twice = shape.sides.findIndex((other) => other.side === wanted.side) < i;
    if (!side || twice) {
      const wrong = twice
        ? `The ${wanted.side} side is named twice.`
        : `There are no posts on the ${wanted.side} side.`;
      const code = twice ? "duplicate-name" : "cannot-build";
      faults.push({ code, at: pointer(at, "side"), wrong, cure: "Leave it out." });
      return undefined;
    }
    return { side, openings: layOpenings(walling, side, wanted.openings ?? [], at, faults) };
  });
  if (faults.length > 0) throw new FaultError(faults);
  return found.flatMap((wall) => (wall ? layWall(walling, wall.side, wall.openings) : []));
}

function layWalling(
  { sheet, defaults, units, sold }: Site,
  shape: WallsShape,
  settings: SettingsByGroup,
): Omit<Walling, "longestPiece" | "post"> {
  const inputs = new FrameInputs(sheet, defaults, units);
  const boards = defaults.choice(shape.boards, `${AT}/walls/boards`, "vertical", "sheds rain without a batten");
  // Battens cover what green boards shrink; laps do not.
  const kinds = boards === "board-and-batten" ? KINDS : DRY;
  const sections = laySections(sheet, kinds, settings, defaults, units, WITHOUT[boards]);
  const laying: Laying<WallGroup> = { sheet, units, kinds, settings, sections, sold };
  const lapped = boards === "board-and-batten" ? "gap between boards" : "lap of boards";
  const lap = inputs.given(["wallLap", lapped, "small"], shape.lap, "/walls/lap", USUAL_LAP[boards]);
  const clearance = inputs.given(
    ["wallClearance", "post base to lower end of the boards", "small"],
    shape.clearance,
    "/walls/clearance",
    ["4 in", "100 mm"],
  );
  const behind = boards === "horizontal" ? "studs apart, at most" : "rails apart, at most";
  const usual = boards === "horizontal" ? (["24 in", "600 mm"] as const) : (["36 in", "900 mm"] as const);
  const backing = inputs.given(["wallBacking", behind, "small"], shape.backing, "/walls/backing", usual);
  const { width, bought } = boardWidths(laying, "wall-boards", "Wall boards");
  const layCover = (name: string, label: string, of: Cell): Cell =>
    sheet.lay(name, boards === "board-and-batten" ? plus(of, lap) : minus(of, lap), { label, display: units.small });
  const cover = layCover("walls.cover", "width that a board adds", width);
  const covers = {
    width: cover,
    ...(bought && { bought: layCover("walls.coverBought", "width that a board adds as sold", bought) }),
  };
  const faults: Fault[] = [];
  const refuse = (at: string, wrong: string, cure: string) =>
    faults.push({ code: "cannot-build", at: `${AT}/walls/${at}`, wrong, cure });
  // Past half its width a board would lie under the next but one.
  if (sheet.decide(lap).times(2).gte(sheet.decide(width))) {
    refuse("lap", `${sheet.shown(lap)} is half of a board (${sheet.shown(width)}) or more.`, "Give less.");
  }
  if (sheet.decide(backing).lte(0)) refuse("backing", "Rails or studs need a spacing.", "Give more than zero.");
  if (faults.length > 0) throw new FaultError(faults);
  return { sheet, units, laying, boards, clearance, backing, cover, covers, lap };
}

/** Openings of equal size in one wall. */
interface Opening {
  readonly width: Cell;
  readonly height: Cell;
  readonly count: Cell;
}

function layOpenings(
  { sheet, units, clearance }: Walling,
  side: WallSide,
  shapes: readonly OpeningShape[],
  at: string,
  faults: Fault[],
): Opening[] {
  const lower = side.heights.reduce((a, b) => (sheet.decide(a).lte(sheet.decide(b)) ? a : b));
  const room = sheet.decide(lower).minus(sheet.decide(clearance));
  const refuse = (where: string, wrong: string, cure: string) =>
    faults.push({ code: "cannot-build", at: where, wrong, cure });
  if (room.lte(0)) {
    refuse(`${AT}/walls/clearance`, `The boards of the ${side.label} would begin above their upper end.`, "Give less.");
  }
  const wallHeight = sheet.shown({ ...lower, value: room });
  let free = sheet.decide(side.width);
  return shapes.map((shape, i) => {
    const here = pointer(at, "openings", i);
    const [width, height] = [toQuantity(shape.width, "mm"), toQuantity(shape.height, "mm")];
    free = free.minus(width.value.times(shape.count ?? 1));
    if (free.lt(0)) {
      const wrong = `The openings are wider than the ${side.label} (${sheet.shown(side.width)}).`;
      refuse(pointer(here, "width"), wrong, "Make them narrower, or fewer.");
    }
    if (height.value.gt(room)) {
      const wrong = `The opening is higher than the ${side.label}'s boards (${wallHeight}).`;
      refuse(pointer(here, "height"), wrong, "Make it lower.");
    }
    const lay = (name: string, label: string, value: typeof width) =>
      sheet.input(`walls.${side.name}.opening${i + 1}.${name}`, value, { label, display: units.long });
    return {
      width: lay("width", "width of the opening", width),
      height: lay("height", "height of the opening", height),
      count: sheet.input(`walls.${side.name}.opening${i + 1}.count`, plain(shape.count ?? 1), { label: "alike" }),
    };
  });
}

function layWall(walling: Walling, side: WallSide, openings: readonly Opening[]): PieceGroup[] {
  walling.sheet.title(`walls.${side.name}`, `Wall, ${side.label}`);
  return walling.boards === "horizontal"
    ? horizontal(walling, side, openings)
    : vertical(walling, side, openings, walling.boards === "board-and-batten");
}

/** Whole boards below a length: ⌊x⌋ is −⌈−x⌉. */
const wholesIn = (length: Operand, each: Operand): Operand =>
  times(number("-1"), roundUp(over(times(number("-1"), length), each)));

const deducted = (openings: readonly Opening[], each: (opening: Opening) => Operand, unit: string): Operand =>
  openings.length === 0 ? number(`0 ${unit}`) : sum(openings.map((opening) => times(opening.count, each(opening))));

/** Boards upright. Below a single slope two neighbours in turn are cut aslant from one piece as long as both ends together. */
function vertical(walling: Walling, side: WallSide, openings: readonly Opening[], battened: boolean): PieceGroup[] {
  const { sheet, units, clearance, cover, covers, backing, lap, laying } = walling;
  const [from, to] = side.heights;
  const slanted = from !== to;
  const lay = (name: string, label: string, formula: Operand, display?: string) =>
    sheet.lay(`walls.${side.name}.${name}`, formula, { label, ...(display && { display }) });
  const whole = slanted ? minus(plus(from, to), times(number("2"), clearance)) : minus(from, clearance);
  const length = lay("boardLength", slanted ? "two boards, cut aslant from one" : "board", whole, units.long);
  // The last board needs no lap; of board-and-batten no gap.
  const wide = battened ? plus(side.width, lap) : minus(side.width, lap);
  const named = [`walls.${side.name}.boardsAcross`, "boards across"] as const;
  const across = layRows(sheet, named, covers, (each) => roundUp(over(wide, each)));
  const perPiece = number(slanted ? "2" : "1");
  const saved = deducted(openings, (opening) => times(wholesIn(opening.width, cover), opening.height), "mm");
  const pieces = (rows: Operand) => roundUp(over(minus(over(times(rows, length), perPiece), saved), length));
  const boards = lay("boards", "boards, openings taken off", greatest(pieces(across), number("1")));
  const rails = lay(
    "rails",
    "rows of rails",
    plus(roundUp(over(minus(least(sheet, from, to), clearance), backing)), number("1")),
  );
  const shared = { length, supportsApart: backing };
  return [
    ...wallGroup(laying, "wall-boards", side, slanted ? "Paired wall boards" : "Wall boards", {
      ...shared,
      count: boards,
    }),
    ...(battened
      ? wallGroup(laying, "wall-battens", side, slanted ? "Paired wall battens" : "Wall battens", {
          ...shared,
          count: greatest(pieces(minus(across, number("1"))), number("1")),
        })
      : []),
    ...alongSide(walling, side).flatMap((piece, i) =>
      wallGroup(laying, "wall-rails", side, nth("Wall rails", i), {
        length: piece.length,
        count: times(rails, piece.each),
        meetsOver: walling.post,
        index: i,
      }),
    ),
  ];
}

const nth = (label: string, index: number): string => (index === 0 ? label : `${label} ${index + 1}`);

const least = (sheet: Sheet, a: Cell, b: Cell): Cell => (sheet.decide(a).lte(sheet.decide(b)) ? a : b);

/** Boards along, joined over posts or studs; studs between the joints. */
function horizontal(walling: Walling, side: WallSide, openings: readonly Opening[]): PieceGroup[] {
  const { sheet, units, clearance, cover, covers, backing, lap, laying } = walling;
  const lay = (name: string, label: string, formula: Operand, display?: string) =>
    sheet.lay(`walls.${side.name}.${name}`, formula, { label, ...(display && { display }) });
  const [from, to] = side.heights;
  const mean = from === to ? from : over(plus(from, to), number("2"));
  const height = lay(
    "height",
    from === to ? "boarded height" : "boarded height, mean",
    minus(mean, clearance),
    units.long,
  );
  const named = [`walls.${side.name}.courses`, "courses"] as const;
  const courses = layRows(sheet, named, covers, (each) => roundUp(over(minus(height, lap), each)));
  const saved = deducted(openings, (opening) => times(wholesIn(opening.height, cover), opening.width), "mm");
  const pieces = alongSide(walling, side).map(({ length, each }, i) => ({
    length: lay(nth("boardLength", i).replace(" ", ""), "board", length, units.long),
    each,
  }));
  const boards = pieces.map(({ length, each }, i) => {
    // Openings shorten the longest boards, where they leave any.
    const needed =
      pieces.length === 1
        ? over(minus(times(courses, side.width), saved), length)
        : minus(times(courses, each), i === 0 ? over(saved, length) : number("0"));
    const label = "boards, openings taken off";
    return lay(nth("boards", i).replace(" ", ""), label, greatest(roundUp(needed), number("1")));
  });
  const studs = pieces.map(({ length }, i) =>
    lay(
      nth("studs", i).replace(" ", ""),
      "studs behind one board, its ends apart",
      minus(roundUp(over(length, backing)), number("1")),
    ),
  );
  const allStuds = sum(studs.map((cell, i) => times(cell, pieces[i]?.each ?? number("0"))));
  const none = studs.every((cell) => sheet.decide(cell).isZero());
  return [
    ...pieces.flatMap(({ length }, i) =>
      wallGroup(laying, "wall-boards", side, nth("Wall boards", i), {
        length,
        count: boards[i] as Cell,
        supportsApart: backing,
        meetsOver: walling.post,
        index: i,
      }),
    ),
    ...(none ? [] : wallGroup(laying, "wall-studs", side, "Wall studs", { length: height, count: allStuds })),
  ];
}

function wallGroup(
  laying: Laying<WallGroup>,
  base: WallGroup,
  side: WallSide,
  label: string,
  {
    index = 0,
    ...plan
  }: {
    readonly length: Operand;
    readonly count: Operand;
    readonly supportsApart?: Cell;
    readonly meetsOver?: Cell;
    readonly index?: number;
  },
): PieceGroup[] {
  const name = index === 0 ? `${base}-${side.name}` : `${base}-${side.name}-${index + 1}`;
  return laid(laying, base, { name, label: `${label} (${side.label})`, ...plan });
}
