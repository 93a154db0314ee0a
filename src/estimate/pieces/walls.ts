/**
 * Boarded walls to their piece groups: boards, battens, and the rails or studs behind them, openings taken off and framed,
 * corners covered.
 *
 * A side is boarded between the outer faces of its corner posts, from above the ground to the top of the beam; the gable
 * above it by itself. Boards that an opening takes out whole, over its height, are not wanted; the others are cut round it.
 */
import { type Fault, FaultError, pointer } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import { capital } from "../quantity/words.js";
import type { Defaults } from "../request/given.js";
import type { WallGroup, WallsShape } from "../request/structure-walls.js";
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
import type { Sheet } from "../sheet/sheet.js";
import { type AslantRow, aslant, halfLap, studGroup } from "./aslant.js";
import { layRows } from "./board-width.js";
import type { LaidFrame, WallSide } from "./frame.js";
import { layGableWall } from "./gable-walls.js";
import { AT, type SettingsByGroup, type Site } from "./laying.js";
import { crippleStuds, cutStuds, withoutCut } from "./opening-cuts.js";
import { type PlacedOpening, placeOpenings } from "./opening-places.js";
import type { PieceGroup } from "./piece-group.js";
import { type AlongSide, alongSide } from "./wall-bays.js";
import { layOpenings, type Opening, openingFrames, savedBattens, savedBoards, savedCourses } from "./wall-openings.js";
import { layRails } from "./wall-rails.js";
import { layWalling, nth, type Walling, wallGroup } from "./walling.js";

const ONE = number("1");
const TWO = number("2");

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
  const openTop = shape.sides.some((wanted) => sides.some(({ name, beam }) => name === wanted.side && !beam));
  const gables = shape.sides.some(
    ({ side, part }) => part !== "below-plate" && sides.some(({ name, gable }) => name === side && gable),
  );
  const asked = { bare: groupsWithout(shape), gables, openTop };
  const walling: Walling = {
    ...layWalling({ sheet, defaults, units, ...(sold && { sold }) }, shape, settings, asked),
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
    faults.push(...partFaults(wanted, side, at));
    const shapes = wanted.openings ?? [];
    const sound = faults.length;
    const openings = layOpenings(walling, side, shapes, at, faults);
    const placed = faults.length > sound ? [] : placeOpenings(walling, side, { openings, shapes, at }, faults);
    return { side, openings, placed, part: wanted.part ?? "whole" };
  });
  if (faults.length > 0) throw new FaultError(faults);
  return found.flatMap((wall) => {
    if (!wall) return [];
    const { side, openings, placed, part } = wall;
    return [
      ...(part === "gable" ? [] : layWall(walling, side, openings, placed)),
      ...(part === "below-plate" ? [] : layGableWall(walling, side)),
    ];
  });
}

type WantedSide = WallsShape["sides"][number];

/** Groups that nothing of these walls has. */
function groupsWithout({ sides }: WallsShape): ReadonlySet<WallGroup> {
  const open = sides.some(({ openings = [] }) => openings.length > 0);
  const below = sides.some(({ part }) => part !== "gable");
  return new Set<WallGroup>([
    ...(open ? [] : (["opening-jambs", "opening-headers"] as const)),
    ...(below ? [] : (["corner-boards"] as const)),
  ]);
}

function partFaults({ part, openings = [] }: WantedSide, side: WallSide, at: string): Fault[] {
  if (part && part !== "whole" && !side.gable) {
    const wrong = `There is no gable over the ${side.label}.`;
    return [{ code: "cannot-build", at: pointer(at, "part"), wrong, cure: "Leave it out." }];
  }
  if (part !== "gable" || openings.length === 0) return [];
  const wrong = "Openings stand below the plate, and here the gable alone is boarded.";
  const cure = "Leave the openings out, or board the whole end.";
  return [{ code: "cannot-build", at: pointer(at, "openings"), wrong, cure }];
}

function layWall(
  walling: Walling,
  side: WallSide,
  openings: readonly Opening[],
  placed: readonly PlacedOpening[],
): PieceGroup[] {
  walling.sheet.title(`walls.${side.name}`, `Wall, ${side.label}`);
  return [
    ...(walling.boards === "horizontal"
      ? horizontal(walling, side, openings, placed)
      : vertical(walling, side, openings, placed)),
    ...openingFrames(walling, side, openings),
    ...cornerBoards(walling, side),
  ];
}

/**
 * One over the ends of the boards at either corner post; below a single slope a short and a long one, both cut along it. The
 * short one rises over its own width to its inner edge.
 */
function cornerBoards({ laying, clearance, backing }: Walling, side: WallSide): PieceGroup[] {
  const heights = [...new Set(side.heights)];
  const [from, to] = side.heights;
  const risen = over(times(laying.sections["corner-boards"].width, minus(to, from)), side.width);
  return heights.flatMap((height, index) =>
    wallGroup(laying, "corner-boards", side, index === 0 ? "Corner boards" : "Long corner boards", {
      length: heights.length > 1 && index === 0 ? minus(plus(height, risen), clearance) : minus(height, clearance),
      count: number(heights.length === 1 ? "2" : "1"),
      supportsApart: backing,
      index,
    }),
  );
}

/** Boards upright. Below a single slope two neighbours in turn are cut aslant from one piece as long as both ends together. */
function vertical(
  walling: Walling,
  side: WallSide,
  openings: readonly Opening[],
  placed: readonly PlacedOpening[],
): PieceGroup[] {
  const { sheet, units, clearance, covers, backing, lap, hidden } = walling;
  const battened = walling.boards === "board-and-batten";
  const [from, to] = side.heights;
  const slanted = from !== to;
  const lay = (name: string, label: string, formula: Operand, display?: string) =>
    sheet.lay(`walls.${side.name}.${name}`, formula, { label, ...(display && { display }) });
  const whole = slanted ? minus(plus(from, to), times(TWO, clearance)) : minus(from, clearance);
  const length = lay("boardLength", slanted ? "two boards, cut aslant from one" : "board", whole, units.long);
  // The last board needs no lap; of board-and-batten no gap.
  const wide = battened ? plus(side.width, lap) : minus(side.width, lap);
  const named = [`walls.${side.name}.boardsAcross`, "boards across"] as const;
  const across = layRows(sheet, named, covers, (each) => roundUp(over(wide, each)));
  // Below a slope the upper rows are shorter, and come to as much as whole ones up to the mean height.
  const mean = slanted ? over(plus(from, to), TWO) : from;
  const rails = lay("rails", "rows of rails", plus(roundUp(over(minus(mean, clearance), backing)), ONE));
  const row = { length, ...(!battened && slanted && { past: halfLap(walling, side) }) };
  const boards = { base: "wall-boards", label: "wall boards", across, covered: hidden } as const;
  const battens = { base: "wall-battens", label: "wall battens", across: minus(across, ONE) } as const;
  return [
    ...uprights(walling, side, { ...row, ...boards, off: savedBoards(walling, openings) }),
    ...(battened ? uprights(walling, side, { ...row, ...battens, off: savedBattens(walling, openings) }) : []),
    ...layRails(walling, side, rails, placed),
  ];
}

/** Upright boards or battens. */
interface Uprights extends Pick<AslantRow, "base" | "label" | "across"> {
  readonly past?: Operand;
  /** Of one, or of two below a slope. */
  readonly length: Cell;
  readonly off: Operand;
  readonly covered?: Operand;
}

/** From the ground to the plate, openings taken off. */
function uprights(walling: Walling, side: WallSide, { length, covered, ...row }: Uprights): PieceGroup[] {
  const { laying, clearance, backing } = walling;
  const [from, to] = side.heights;
  const plan = { supportsApart: backing, ...(covered && { covered }) };
  if (from === to) {
    const pieces = roundUp(over(minus(times(row.across, length), row.off), length));
    return wallGroup(laying, row.base, side, capital(row.label), { ...plan, length, count: greatest(pieces, ONE) });
  }
  const highest = minus(greatest(from, to), clearance);
  return aslant(walling, side, { ...row, slopes: 1, highest, pair: length, plan });
}

/** Boards along, joined over posts or studs; studs between the joints. */
function horizontal(
  walling: Walling,
  side: WallSide,
  openings: readonly Opening[],
  placed: readonly PlacedOpening[],
): PieceGroup[] {
  const { sheet, units, clearance, covers, backing, lap, laying } = walling;
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
  // Below a slope each course laps the next over a longer edge than its own mean: half a lap more than its height.
  const slanted = from !== to;
  const covered = slanted ? plus(height, over(lap, number("2"))) : minus(height, lap);
  const courses = layRows(sheet, named, covers, (each) => roundUp(over(covered, each)));
  const saved = savedCourses(walling, openings);
  const pieces = alongSide(walling, side).map(({ length, each, joints }, i) => ({
    length: lay(nth("boardLength", i).replace(" ", ""), "board", length, units.long),
    ...{ each, joints },
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
  const allStuds = lay(
    "allStuds",
    "studs, those below joints between posts included",
    sum(studs.flatMap((cell, i) => [times(cell, pieces[i]?.each ?? number("0")), pieces[i]?.joints ?? number("0")])),
  );
  const none = sheet.decide(allStuds).isZero();
  const row = pieces.map(({ length }, i) => ({ length, studs: studs[i] as Cell }));
  const cuts = none || placed.length === 0 ? [] : cutStuds(walling, side, row, placed);
  const higher = from === to || sheet.decide(from).gte(sheet.decide(to)) ? from : to;
  return [
    ...pieces.flatMap(({ length }, i) =>
      wallGroup(laying, "wall-boards", side, nth("Wall boards", i), {
        length,
        count: boards[i] as Cell,
        supportsApart: backing,
        meetsOver: walling.post,
        covered: walling.hidden,
        index: i,
      }),
    ),
    ...(none ? [] : studGroup(walling, side, withoutCut(allStuds, cuts))),
    ...crippleStuds(walling, side, minus(higher, clearance), cuts),
    ...(side.beam ? [] : headRail(walling, side, pieces)),
  ];
}

/** Where no beam lies over a wall, a rail from post to post at its top holds boards and studs. */
const headRail = (
  { laying }: Walling,
  side: WallSide,
  row: readonly Pick<AlongSide, "length" | "each">[],
): PieceGroup[] =>
  row.flatMap(({ length, each }, i) =>
    wallGroup(laying, "wall-rails", side, nth("Head rail", i), { length, count: each, index: i }),
  );
