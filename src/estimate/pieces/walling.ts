/** What all boarded walls share: how boards lie, what is behind them, and how a group of a side is laid. */
import { type Fault, FaultError } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { WallGroup, WallsShape } from "../request/structure-walls.js";
import { type Cell, minus, number, type Operand, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type BoardWidths, boardWidths } from "./board-width.js";
import { FrameInputs, type WallSide } from "./frame.js";
import { AT, type GroupKind, type Laying, laid, laySections, type SettingsByGroup, type Site } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";

const WALL_BOARD = { "inch-pound": "1 x 8 in", metric: "25 x 200 mm" };

/** Nobody planes the outside of a shed. */
const ROUGH = { surface: "rough", seasoning: "green" } as const;

/** Boards and battens are coated outside and on their edges; their backs lie on rails, studs or boards. */
const CLAD = { ...ROUGH, hiddenFaces: "one-wide" } as const;
const STICK = { "inch-pound": "2 x 4 in", metric: "50 x 100 mm" };
const STUD = { role: "other", section: STICK, joint: "ends", rules: ROUGH, encloses: true } as const;

const KINDS: Readonly<Record<WallGroup, GroupKind>> = {
  "wall-boards": { role: "board", section: WALL_BOARD, mark: "WB", rules: CLAD, encloses: true },
  "wall-battens": {
    role: "board",
    section: { "inch-pound": "1 x 2 in", metric: "25 x 50 mm" },
    mark: "WT",
    rules: CLAD,
    encloses: true,
  },
  // Flat on the posts, boards all along their outer faces.
  "wall-rails": { ...STUD, mark: "WR", rules: CLAD },
  "wall-studs": { ...STUD, mark: "WS", edgeCovered: true },
  "opening-jambs": { ...STUD, mark: "OJ", edgeCovered: true },
  "opening-headers": { ...STUD, mark: "OH", edgeCovered: true },
  "corner-boards": {
    role: "board",
    section: { "inch-pound": "1 x 4 in", metric: "25 x 100 mm" },
    mark: "CB",
    rules: CLAD,
    encloses: true,
  },
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

const GABLE_LAP = ["gableLap", "boards of a gable below the plate's top", "small"] as const;

/** What all walls share. */
export interface Walling {
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
  /** How far the boards of a gable reach down over those below it. */
  readonly gableLap: Cell | undefined;
  /** Width of every board that its neighbours or battens cover, its hidden edges included. */
  readonly hidden: Operand;
}

/**
 * Lays what all boarded sides share.
 * @param asked - Groups that this structure has none of; whether a gable is boarded, and a side over which no beam lies.
 * @throws FaultError when a lap leaves nothing of its board, or rails have no spacing.
 */
export function layWalling(
  { sheet, defaults, units, sold }: Site,
  shape: WallsShape,
  settings: SettingsByGroup,
  {
    bare,
    gables,
    openTop,
  }: { readonly bare: ReadonlySet<WallGroup>; readonly gables: boolean; readonly openTop: boolean },
): Omit<Walling, "longestPiece" | "post"> {
  const inputs = new FrameInputs(sheet, defaults, units);
  const boards = defaults.choice(shape.boards, `${AT}/walls/boards`, "vertical", "sheds rain without a batten");
  // Battens cover what green boards shrink; laps do not.
  const kinds = boards === "board-and-batten" ? KINDS : DRY;
  const without = new Set([...WITHOUT[boards], ...bare]);
  if (openTop) without.delete("wall-rails");
  const sections = laySections(sheet, kinds, settings, defaults, units, without);
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
    refuse("lap", `${sheet.onTape(lap)} is half of a board (${sheet.onTape(width)}) or more.`, "Give less.");
  }
  const stick = boards === "horizontal" ? sections["wall-studs"].thickness : sections["wall-rails"].width;
  if (sheet.decide(backing).lte(0)) refuse("backing", "Rails or studs need a spacing.", "Give more than zero.");
  else if (sheet.decide(backing).lte(sheet.decide(stick))) {
    const what = boards === "horizontal" ? "Studs" : "Rails";
    const wrong = `${what} ${sheet.onTape(backing)} apart, centres, are ${sheet.onTape(stick)} wide: they would lie in one another.`;
    refuse("backing", wrong, `Give more than ${sheet.onTape(stick)}.`);
  }
  if (faults.length > 0) throw new FaultError(faults);
  const over = gables ? inputs.given(GABLE_LAP, shape.gableLap, "/walls/gableLap", ["2 in", "50 mm"]) : undefined;
  const hidden = hiddenOf(laying, boards, lap);
  return { sheet, units, laying, boards, clearance, backing, cover, covers, lap, gableLap: over, hidden };
}

/**
 * Of a lapped board its lap and the edge in it; below battens what they cover of two edges' strips, and the edges.
 */
function hiddenOf({ sections }: Laying<WallGroup>, boards: Walling["boards"], lap: Cell): Operand {
  const { thickness } = sections["wall-boards"];
  if (boards !== "board-and-batten") return plus(lap, thickness);
  return plus(minus(sections["wall-battens"].width, lap), times(number("2"), thickness));
}

/** Names a second and a later one of a kind. */
export const nth = (label: string, index: number): string => (index === 0 ? label : `${label} ${index + 1}`);

/** Groups that are fixed through the boards to what is behind them. */
const ON_BOARDS: ReadonlySet<WallGroup> = new Set(["wall-battens", "corner-boards"]);

/** Pieces of one side alike. */
export interface WallPieces {
  readonly length: Operand;
  readonly count: Operand;
  readonly members?: Operand;
  readonly supportsApart?: Cell;
  readonly meetsOver?: Cell;
  readonly crossings?: number;
  readonly covered?: Operand;
}

/** Lays a group of one side; of several the later ones are numbered, or named for the part that they are. */
export function wallGroup(
  laying: Laying<WallGroup>,
  base: WallGroup,
  side: WallSide,
  label: string,
  { index = 0, part, ...plan }: WallPieces & { readonly index?: number; readonly part?: string },
): PieceGroup[] {
  const which = part ?? (index === 0 ? undefined : `${index + 1}`);
  const name = [base, side.name, ...(which ? [which] : [])].join("-");
  const over = ON_BOARDS.has(base) ? laying.sections["wall-boards"].thickness : undefined;
  return laid(laying, base, { name, label: `${label} (${side.label})`, ...plan, ...(over && { over }) });
}
