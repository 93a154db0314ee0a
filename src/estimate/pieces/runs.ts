/**
 * A run along the building (plate beam, ridge, purlin, fascia) made of pieces joined only over supports.
 *
 * Every piece spans whole bays; the first and the last piece reach past their outer support by an end. Which
 * pieces there are is decided here; how long they are is laid as cells.
 */
import type { Decimal } from "../quantity/decimal.js";
import { ZERO } from "../quantity/decimal.js";
import type { Quantity } from "../quantity/quantity.js";
import { type Cell, count, minus, number, type Operand, plus, sum, times } from "../sheet/expression.js";

/** Equal pieces of one run. */
export interface RunPieces {
  /** How many of them in one run. */
  readonly pieces: number;
  readonly bays: number;
  /** Ends that such a piece reaches past: the first piece one, the last one, a single piece both. */
  readonly first: boolean;
  readonly last: boolean;
  /** Bays before each of them, in the order of the run. */
  readonly before: readonly number[];
  /** Rafters or joists that such a piece lies on, a fly rafter at either end included; only of runs over those. */
  readonly crossings?: number;
}

/** What a run lies on, in order. */
export interface RunSupports {
  /** One for all bays alike, or each. */
  readonly bays: Cell | readonly Cell[];
  /** Effective length of each bay, from one support to the next. */
  readonly sizes: readonly Decimal[];
  /** From the outer supports to the ends of the run: formulas, and their values. */
  readonly ends: { readonly first: Operand; readonly last: Operand };
  readonly endSizes: { readonly first: Decimal; readonly last: Decimal };
  /** No piece is longer, but where a single bay is. */
  readonly longest: Decimal;
}

/** Kinds of a run over rafters, with what each piece lies on. @param fly - Whether a fly rafter is past either end. */
export function onRafters(kinds: readonly RunPieces[], fly: boolean): readonly RunPieces[] {
  return kinds.map((kind) => {
    return { ...kind, crossings: kind.bays + 1 + (fly ? endsOf(kind) : 0) };
  });
}

/** At how many ends of the run a piece lies. */
const endsOf = ({ first, last }: Pick<RunPieces, "first" | "last">): number => (first ? 1 : 0) + (last ? 1 : 0);

/** What the yard has for a run. */
export interface SoldFor {
  /** Longest pieces that can be had from its lengths; empty where it sells none. */
  readonly lengths: readonly Decimal[];
  /** What it measures across, and the name of the offer; absent where the yard sells none. */
  readonly board?: { readonly width: Quantity; readonly of: string };
  /** Logs may serve, too: then no piece is longer than an even share makes it. */
  readonly mayMill: boolean;
}

/**
 * Cuts a run over its supports: into as few pieces as can be, as even as can be.
 * @param yard - Then into what takes least of the lengths sold, where that is less than an even share takes.
 */
export const cutRun = (run: RunSupports, yard?: SoldFor, even = cutBays(run)): readonly RunPieces[] =>
  kindsOf(run, cutBays(run, yard, even));

/** What a run is cut by: how long its bays and its ends are, and how long a piece may be. */
type Measured = Pick<RunSupports, "sizes" | "endSizes" | "longest">;

/** The same, as how many bays each piece spans, from the left. */
export function cutBays(run: Measured, yard?: SoldFor, even = leastOf(run, [])): readonly number[] {
  if (!yard || yard.lengths.length === 0) return even;
  const sold = [...yard.lengths].sort((a, b) => a.cmp(b));
  const longest = sizesOf(run, even).reduce((a, b) => (a.gte(b) ? a : b));
  const least = leastOf(yard.mayMill ? { ...run, longest } : run, sold);
  const stock = (spans: readonly number[]) =>
    sizesOf(run, spans).reduce<Head>((head, size) => headWith(head, size, sold), NOTHING);
  return compareStock(stock(least), stock(even)) < 0 ? least : even;
}

/** A way to cut so many bays from the left: the less of the first figure that differs the better. */
interface Way {
  /** Pieces that are too long for any stock. */
  readonly over: number;
  /** Stock, each piece from a length of its own; nothing where no lengths are known. */
  readonly stock: Decimal;
  readonly pieces: number;
  /** Lengths of the pieces, the longest first. */
  readonly sizes: readonly Decimal[];
  /** Bays before the last piece, and the way that those are cut. */
  readonly from: number;
  readonly before: Way | undefined;
}

const NOTHING: Way = { over: 0, stock: ZERO, pieces: 0, sizes: [], from: 0, before: undefined };

type Head = Pick<Way, "over" | "stock" | "pieces">;

const compareStock = (a: Head, b: Head): number => a.over - b.over || a.stock.cmp(b.stock);
const compareHeads = (a: Head, b: Head): number => compareStock(a, b) || a.pieces - b.pieces;

/** Adding the same piece to both turns no verdict, so that best parts make a best whole. */
function compare(a: Way, b: Way): number {
  const head = compareHeads(a, b);
  if (head !== 0) return head;
  const at = a.sizes.findIndex((size, i) => !size.eq(b.sizes[i] as Decimal));
  return at < 0 ? 0 : (a.sizes[at] as Decimal).cmp(b.sizes[at] as Decimal);
}

/** Best of all ways of cutting, bay by bay from the left. @param sold - Shortest first; none where nothing is known of a yard. */
function leastOf(run: Measured, sold: readonly Decimal[]): readonly number[] {
  const { sizes, endSizes, longest } = run;
  const best: Way[] = [NOTHING];
  for (let to = 1; to <= sizes.length; to++) {
    // Lengths are sorted only of the ways that no count tells apart.
    let ties: { readonly head: Head; readonly from: number; readonly piece: Decimal }[] = [];
    let size = to === sizes.length ? endSizes.last : ZERO;
    for (let from = to - 1; from >= 0; from--) {
      size = size.plus(sizes[from] as Decimal);
      const piece = (from === 0 ? size.plus(endSizes.first) : size).toDecimalPlaces(SAME);
      if (to - from > 1 && piece.gt(longest)) break;
      const head = headWith(best[from] as Way, piece, sold);
      const order = ties[0] ? compareHeads(head, ties[0].head) : -1;
      if (order < 0) ties = [{ head, from, piece }];
      else if (order === 0) ties.push({ head, from, piece });
    }
    const ways = ties.map(({ head, from, piece }): Way => {
      const before = best[from] as Way;
      return { ...head, sizes: sizesWith(before, piece), from, before };
    });
    best.push(ways.reduce((least, way) => (compare(way, least) < 0 ? way : least)));
  }
  const spans: number[] = [];
  let at = sizes.length;
  for (let way = best[at]; way?.before; way = way.before) {
    spans.unshift(at - way.from);
    at = way.from;
  }
  return spans;
}

function headWith({ over, stock, pieces }: Head, size: Decimal, sold: readonly Decimal[]): Head {
  if (sold.length === 0) return { over, stock, pieces: pieces + 1 };
  const taken = sold.find((length) => length.gte(size));
  return { over: taken ? over : over + 1, stock: stock.plus(taken ?? size), pieces: pieces + 1 };
}

function sizesWith({ sizes }: Way, size: Decimal): readonly Decimal[] {
  const at = sizes.findIndex((other) => other.lt(size));
  return at < 0 ? [...sizes, size] : sizes.toSpliced(at, 0, size);
}

/** Ninth decimal of a millimetre: what differs by less is the same length. */
const SAME = 9;

/** Effective lengths of all pieces, from the left. */
function sizesOf(run: Measured, spans: readonly number[]): Decimal[] {
  let from = 0;
  return spans.map((bays) => {
    const size = pieceSize(run, from, bays);
    from += bays;
    return size;
  });
}

/** Effective length of a piece over so many bays from one on. */
function pieceSize({ sizes, endSizes }: Measured, from: number, bays: number): Decimal {
  const spans = sizes.slice(from, from + bays).reduce((a, b) => a.plus(b), ZERO);
  const first = from === 0 ? endSizes.first : ZERO;
  return spans
    .plus(first)
    .plus(from + bays === sizes.length ? endSizes.last : ZERO)
    .toDecimalPlaces(SAME);
}

/** Equal pieces together, the two end pieces where both ends reach equally far. */
function kindsOf(run: RunSupports, spans: readonly number[]): readonly RunPieces[] {
  const kinds = new Map<string, RunPieces>();
  let from = 0;
  for (const bays of spans) {
    const [first, last] = [from === 0, from + bays === run.sizes.length];
    const size = pieceSize(run, from, bays).toFixed();
    const key = `${size} ${bays} ${endsOf({ first, last })}`;
    const known = kinds.get(key) ?? { pieces: 0, bays, first, last, before: [] };
    kinds.set(key, { ...known, pieces: known.pieces + 1, before: [...known.before, from] });
    from += bays;
  }
  return [...kinds.values()];
}

/** Bays from one on, end to end. */
function spanOf({ bays }: RunSupports, from: number, many: number): Operand {
  if ("kind" in bays) return many === 1 ? bays : times(count(many), bays);
  const cells = bays.slice(from, from + many);
  return cells.length === 1 ? (cells[0] as Cell) : sum(cells);
}

/** Length of one piece of a kind. */
export function runPieceLength(run: RunSupports, kind: RunPieces): Operand {
  const { first, last } = run.ends;
  const past: Operand[] = [...(kind.first ? [first] : []), ...(kind.last ? [last] : [])];
  return plus(spanOf(run, kind.before[0] ?? 0, kind.bays), ...past);
}

/** From the beginning of the run to where each piece of a kind begins: over the middle of its support. */
export const runPieceBegins = (run: RunSupports, kind: RunPieces): readonly Operand[] =>
  kind.before.map((bays) => (bays === 0 ? number("0 in") : plus(run.ends.first, spanOf(run, 0, bays))));

/** The last end of a run whose last bay is shorter than the others by `shortage`. */
export const shortened = (end: Operand, shortage: Operand) => minus(end, shortage);

/** A run that is laid: its supports as cells, how it is cut, and what its pieces measure. */
export interface LaidRun {
  /** As few as can be, as even as can be. */
  readonly kinds: readonly RunPieces[];
  /** Thickness, along the run, of the support over which two pieces meet. */
  readonly support: Cell;
  /** By what the yard sells, where that takes less stock. */
  readonly kindsFrom: (yard?: SoldFor) => readonly RunPieces[];
  readonly lengthOf: (kind: RunPieces) => Operand;
  /** Where each piece of a kind begins, from the beginning of the run. */
  readonly beginsOf: (kind: RunPieces) => readonly Operand[];
}

/** @param fly - Of a run over rafters: whether a fly rafter is past either end. */
export function laidRun(supports: RunSupports, support: Cell, fly?: boolean): LaidRun {
  const even = cutBays(supports);
  // Purlins, fascia and ridge of one roof are often sold in the same lengths.
  const known = new Map<string, readonly RunPieces[]>();
  const kindsFrom = (yard?: SoldFor) => {
    const key = yard ? `${yard.mayMill} ${yard.lengths.map((length) => length.toFixed()).join(" ")}` : "";
    const kinds = known.get(key) ?? cutRun(supports, yard, even);
    known.set(key, kinds);
    return fly === undefined ? kinds : onRafters(kinds, fly);
  };
  return {
    kinds: kindsFrom(),
    support,
    kindsFrom,
    lengthOf: (kind) => runPieceLength(supports, kind),
    beginsOf: (kind) => runPieceBegins(supports, kind),
  };
}
