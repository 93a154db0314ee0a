/**
 * A floor to its piece groups: a bearer along either side between the posts' outer faces, joists across, boards along. Where
 * a wall carries the rafters, no posts stand at it, and a ledger lagged to the wall takes the place of the bearer there.
 * Bearers and boards are joined only over posts and joists.
 */
import { type Fault, FaultError } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { FloorGroup, FloorShape } from "../request/structure-floor.js";
import { type Cell, number, over, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { boardWidths, layRows } from "./board-width.js";
import { FrameInputs, layPostRun, layRafterRun, type PostBays } from "./frame.js";
import {
  AT,
  type GroupKind,
  type Laying,
  laySections,
  one,
  runGroups,
  type SettingsByGroup,
  type Site,
  wholes,
} from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { laySpacing, refuseTight, type SpacedCells } from "./spacing.js";

const KINDS: Readonly<Record<FloorGroup, GroupKind>> = {
  bearers: {
    role: "beam",
    section: { "inch-pound": "4 x 6 in", metric: "100 x 150 mm" },
    joint: "bearer",
    mark: "BR",
    encloses: true,
  },
  "floor-ledger": {
    role: "beam",
    like: "bearers",
    section: { "inch-pound": "4 x 6 in", metric: "100 x 150 mm" },
    joint: "ledger",
    mark: "FL",
    rules: { hiddenFaces: "one-wide" },
    encloses: true,
  },
  joists: {
    role: "rafter",
    section: { "inch-pound": "2 x 6 in", metric: "50 x 150 mm" },
    joint: "joist",
    mark: "JS",
    encloses: true,
    edgeCovered: true,
  },
  "floor-boards": { role: "board", mark: "FB", encloses: true },
};

/** A bearer along either side; along one alone where a wall holds the other side. */
export const floorRuns = (onWall: boolean) => ({ bearers: onWall ? 1 : 2 });

/** The frame that a floor fills. */
export interface FlooredFrame extends PostBays {
  readonly span: Cell;
  readonly length: Cell;
  readonly longestPiece: Cell;
  readonly postWidth: Cell;
  /** A wall takes the place of one row of posts. */
  readonly onWall: boolean;
  /** Post base to the plate's top, and how deep the beam is there. */
  readonly eaveHeight: Cell;
  readonly beamDepth: Cell | undefined;
}

/**
 * Lays a floor.
 * @throws FaultError when the joists stand closer than they are thick.
 */
export function layFloor(
  site: Site,
  { floor: shape, groups: settings }: { readonly floor: FloorShape; readonly groups: SettingsByGroup },
  frame: FlooredFrame,
): PieceGroup[] {
  const { sheet, defaults, units } = site;
  sheet.title("floor", "Floor");
  const sections = laySections(
    sheet,
    KINDS,
    settings,
    defaults,
    units,
    new Set<FloorGroup>(frame.onWall ? [] : ["floor-ledger"]),
  );
  const laying: Laying<FloorGroup> = { sheet, units, kinds: KINDS, settings, sections, sold: site.sold };
  const inputs = new FrameInputs(sheet, defaults, units);
  const spacing = inputs.given(
    ["joistSpacing", "joists apart, at most", "small"],
    shape.joistSpacing,
    "/floor/joistSpacing",
    ["16 in", "400 mm"],
  );
  const gap = inputs.given(["floorGap", "between floor boards", "small"], shape.gap, "/floor/gap", ["1/4 in", "5 mm"]);
  refuseClose(sheet, spacing, sections.joists.thickness);
  refuseLow(sheet, sections, frame);
  const joists = layJoists(laying, frame, spacing);
  const { length, bays, firstBays, longestPiece, postWidth, onWall } = frame;
  const { bearers: rowsOfPosts } = floorRuns(onWall);
  const bearers = layPostRun(sheet, "floor", { length, bays, firstBays, longestPiece, postWidth }, units);
  const boards = layBoards(laying, frame, { joists, spacing, gap });
  const atPosts = sheet.lay("floor.bearerPosts", times(number(`${rowsOfPosts}`), plus(bays, number("1"))), {
    label: "posts that the bearers are bolted to",
  });
  const { equalSpace: supportsApart } = joists;
  return [
    ...runGroups(laying, "bearers", "Floor bearers", bearers, rowsOfPosts).map((group) => ({ ...group, atPosts })),
    ...(onWall ? runGroups(laying, "floor-ledger", "Floor ledger", bearers, 1) : []),
    ...one(laying, "joists", "Joists", frame.span, joists.pieces),
    ...boards.map((group) => ({ ...group, supportsApart })),
  ];
}

function layJoists({ sheet, units, sections }: Laying<FloorGroup>, { length }: FlooredFrame, most: Cell): SpacedCells {
  const { thickness: width } = sections.joists;
  const joists = laySpacing(sheet, "floor.joists", { length, width, most }, units.long);
  refuseTight(sheet, joists, { width, at: `${AT}/floor/joistSpacing`, what: "Joists" });
  return joists;
}

/** Rows of boards across the joists, cut over them. */
function layBoards(
  laying: Laying<FloorGroup>,
  { span, longestPiece }: FlooredFrame,
  { joists, spacing, gap }: { readonly joists: SpacedCells; readonly spacing: Cell; readonly gap: Cell },
): PieceGroup[] {
  const { sheet, units, sections } = laying;
  const widths = boardWidths(laying, "floor-boards", "Floor boards");
  // n boards with n − 1 gaps cover n × (width + gap) − gap; the last may be ripped.
  const named = ["floor.rows", "rows of boards"] as const;
  const rows = layRows(sheet, named, widths, (width) => roundUp(over(plus(span, gap), plus(width, gap))));
  const run = {
    ...{ lines: joists, rafterSpacing: spacing, rafterThickness: sections.joists.thickness, longestPiece },
    overhang: sheet.lay("floor.past", number("0 in"), { label: "boards past the outer joists" }),
    short: false,
  };
  const cut = layRafterRun(sheet, "floor", run, units);
  return runGroups(laying, "floor-boards", "Floor boards", cut, wholes(sheet, rows));
}

/** A floor that lies on its bearers at the foot of the posts needs room below the beams. */
function refuseLow(
  sheet: Sheet,
  { bearers, joists, "floor-boards": boards }: Laying<FloorGroup>["sections"],
  { eaveHeight, beamDepth }: FlooredFrame,
): void {
  const of = (cell: Cell) => sheet.decide(cell);
  const high = of(bearers.width).plus(of(joists.width)).plus(of(boards.thickness));
  const room = beamDepth ? of(eaveHeight).minus(of(beamDepth)) : of(eaveHeight);
  if (room.gt(high)) return;
  const say = (value: Decimal, as?: "least") => onTape({ value, unit: eaveHeight.unit }, eaveHeight.display, as);
  const least = say(of(eaveHeight).minus(room).plus(high), "least");
  const wrong = `Bearers, joists and boards of the floor reach ${say(high)} over the foot of the posts; the beams begin at ${say(room)}.`;
  const cure = `Give a plate higher than ${least}, or a thinner floor.`;
  throw new FaultError([{ code: "cannot-build", at: `${AT}/floor`, wrong, cure }]);
}

function refuseClose(sheet: Sheet, spacing: Cell, thickness: Cell): void {
  if (sheet.decide(spacing).gt(sheet.decide(thickness))) return;
  const fault: Fault = {
    code: "cannot-build",
    at: `${AT}/floor/joistSpacing`,
    wrong: `Joists ${sheet.onTape(spacing)} apart are ${sheet.onTape(thickness)} thick.`,
    cure: "Give a wider spacing or thinner joists.",
  };
  throw new FaultError([fault]);
}
