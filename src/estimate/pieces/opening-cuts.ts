/**
 * What openings cut of the rails and studs behind a wall's boards. A rail that is cut leaves a stub at either side, a stud
 * what is above the header and below the sill: two out of one piece, or one.
 *
 * Asked only of openings that have a bay, and in it one piece end to end, to themselves; whatever else is cut counts whole.
 */
import type { Decimal } from "../quantity/decimal.js";
import { type Cell, count, minus, number, type Operand, times } from "../sheet/expression.js";
import type { WallSide } from "./frame.js";
import type { PlacedOpening } from "./opening-places.js";
import type { PieceGroup } from "./piece-group.js";
import type { AlongSide } from "./wall-bays.js";
import { type Walling, wallGroup } from "./walling.js";

/** Openings as they cut one kind of piece. */
interface Cut {
  readonly placed: PlacedOpening;
  /** Which kind of pieces along the side; see `alongSide`. */
  readonly kind: number;
  readonly pieces: number;
}

const TWO = number("2");

/** The piece in an opening's bay, where there is just one: its kind, where it begins and how long it is. */
function pieceAt(
  { sheet, post }: Walling,
  { name, firstBays }: WallSide,
  row: readonly Pick<AlongSide, "length">[],
  bay: number,
): { readonly kind: number; readonly from: Decimal; readonly length: Decimal } | undefined {
  const value = (cell: string): Decimal | undefined => {
    const found = sheet.find(cell);
    return found && sheet.decide(found);
  };
  const lengths = row.map(({ length }, i) => sheet.decideOf(`walls.${name}.kind${i + 1}`, length));
  if (!firstBays) {
    const [length] = lengths;
    return length && value(`walls.${name}.inBay`)?.eq(1) ? { kind: 0, from: length.times(bay), length } : undefined;
  }
  const own = value(`walls.${name}.bay${bay + 1}.length`);
  if (!own || !value(`walls.${name}.bay${bay + 1}.pieces`)?.eq(1)) return undefined;
  const kind = lengths.findIndex((length) => length.toDecimalPlaces(9).eq(own.toDecimalPlaces(9)));
  const half = sheet.decide(post).dividedBy(2);
  const centre = firstBays.slice(0, bay).reduce((at, one) => at.plus(sheet.decide(one)), half);
  return kind < 0 ? undefined : { kind, from: bay === 0 ? half.minus(half) : centre, length: own };
}

/** Along the wall and up it, jambs, header and sill included. */
function roughOf({ sheet, laying, clearance }: Walling, { opening, from }: PlacedOpening) {
  const { width, height, sill } = opening;
  const jamb = sheet.decide(laying.sections["opening-jambs"].thickness);
  const head = sheet.decide(laying.sections["opening-headers"].thickness);
  const low = sheet.decide(clearance).plus(sill ? sheet.decide(sill) : 0);
  return {
    along: [sheet.decide(from).minus(jamb), sheet.decide(from).plus(sheet.decide(width)).plus(jamb)] as const,
    up: [sill ? low.minus(head) : low, low.plus(sheet.decide(height)).plus(head)] as const,
  };
}

type Range = readonly [from: Decimal, to: Decimal];
const meet = (a: Range, b: Range): boolean => a[0].lt(b[1]) && b[0].lt(a[1]);
const inside = (a: Range, from: Decimal, length: Decimal): boolean => a[0].gte(from) && a[1].lte(from.plus(length));

/**
 * Rails that openings cut.
 * @param rows - Lower edges of the rows, and how wide a rail is.
 */
export function cutRails(
  walling: Walling,
  side: WallSide,
  row: readonly AlongSide[],
  { placed, rows }: { readonly placed: readonly PlacedOpening[]; readonly rows: readonly Range[] },
): Cut[] {
  return placed.flatMap((one): Cut[] => {
    const piece = one.alone ? pieceAt(walling, side, row, one.bay) : undefined;
    const { along, up } = roughOf(walling, one);
    if (!piece || !inside(along, piece.from, piece.length)) return [];
    const pieces = rows.filter((band) => meet(band, up)).length;
    return pieces === 0 ? [] : [{ placed: one, kind: piece.kind, pieces }];
  });
}

/** Studs that openings cut: of those behind one board, its ends apart, they are spread evenly. */
export function cutStuds(
  walling: Walling,
  side: WallSide,
  row: readonly (Pick<AlongSide, "length"> & { readonly studs: Cell })[],
  placed: readonly PlacedOpening[],
): Cut[] {
  const { sheet, laying } = walling;
  const half = sheet.decide(laying.sections["wall-studs"].thickness).dividedBy(2);
  return placed.flatMap((one): Cut[] => {
    const piece = one.alone ? pieceAt(walling, side, row, one.bay) : undefined;
    const kind = piece && row[piece.kind];
    const { along } = roughOf(walling, one);
    if (!piece || !kind || !inside(along, piece.from, piece.length)) return [];
    const studs = sheet.decideWhole(kind.studs);
    const pieces = Array.from({ length: studs }, (_, i) =>
      piece.from.plus(piece.length.times(i + 1).dividedBy(studs + 1)),
    ).filter((at) => meet([at.minus(half), at.plus(half)], along)).length;
    return pieces === 0 ? [] : [{ placed: one, kind: piece.kind, pieces }];
  });
}

/** How many of a kind are cut, less what a count is laid with. */
export const withoutCut = (all: Operand, cuts: readonly Cut[], kind?: number): Operand => {
  const off = cuts
    .filter((cut) => kind === undefined || cut.kind === kind)
    .reduce((sum, { pieces }) => sum + pieces, 0);
  return off === 0 ? all : minus(all, count(off));
};

/** Alike openings' cuts of one kind together. */
function together(cuts: readonly Cut[]): readonly Cut[] {
  const found = new Map<string, Cut>();
  for (const cut of cuts) {
    const key = `${cut.placed.nth} ${cut.kind}`;
    found.set(key, { ...cut, pieces: cut.pieces + (found.get(key)?.pieces ?? 0) });
  }
  return [...found.values()];
}

/** Stubs beside openings, both out of one piece. @param row - As laid; stubs are numbered on from there. */
export function railStubs(
  walling: Walling,
  side: WallSide,
  row: readonly AlongSide[],
  cuts: readonly Cut[],
): PieceGroup[] {
  if (cuts.length === 0) return [];
  const { sheet, laying } = walling;
  const jambs = times(TWO, laying.sections["opening-jambs"].thickness);
  return together(cuts).flatMap(({ placed, kind, pieces }, i): PieceGroup[] => {
    const length = minus(row[kind]?.length ?? number("0 mm"), placed.opening.width, jambs);
    if (sheet.decideOf(`walls.${side.name}.stub${i + 1}`, length).lte(0)) return [];
    const label = "Paired wall rails beside openings";
    const cut = { count: count(pieces), members: count(2 * pieces) };
    return wallGroup(laying, "wall-rails", side, label, { length, ...cut, index: row.length + i });
  });
}

/** Cripple studs: above a door; above and below a window out of one piece. @param whole - A stud that is not cut. */
export function crippleStuds(walling: Walling, side: WallSide, whole: Operand, cuts: readonly Cut[]): PieceGroup[] {
  if (cuts.length === 0) return [];
  const { sheet, laying } = walling;
  const head = laying.sections["opening-headers"].thickness;
  return together(cuts).flatMap(({ placed: { opening }, pieces }, i): PieceGroup[] => {
    const length = minus(whole, opening.height, opening.sill ? times(TWO, head) : head);
    if (sheet.decideOf(`walls.${side.name}.cripple${i + 1}`, length).lte(0)) return [];
    const label = opening.sill ? "Paired cripple studs" : "Cripple studs";
    const cut = { count: count(pieces), ...(opening.sill && { members: count(2 * pieces) }) };
    return wallGroup(laying, "wall-studs", side, label, { length, ...cut, index: i + 1 });
  });
}
