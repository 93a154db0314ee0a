/** Where a run is cut: into as few pieces as can be, as even as can be, or into what takes least of the lengths sold. */
import { type Decimal, decimal } from "../quantity/decimal.js";
import type { Quantity } from "../quantity/quantity.js";

/** What the yard has for a run. */
export interface SoldFor {
  /** Longest pieces that can be had from its lengths; empty where it sells none. */
  readonly lengths: readonly Decimal[];
  /** What it measures across, and the name of the offer; absent where the yard sells none. */
  readonly board?: { readonly width: Quantity; readonly of: string };
  /** Logs may serve, too: then no piece is longer than an even share makes it. */
  readonly mayMill: boolean;
}

/** What a run is cut by: how long its bays and its ends are, and how long a piece may be. */
export interface Measured {
  /** Effective length of each bay, from one support to the next. */
  readonly sizes: readonly Decimal[];
  /** From the outer supports to the ends of the run. */
  readonly endSizes: { readonly first: Decimal; readonly last: Decimal };
  /** No piece is longer, but where a single bay is. */
  readonly longest: Decimal;
}

/**
 * The same in whole ticks of a billionth of a millimetre: adding them is exact whatever the order, so that a run and its
 * mirror image are cut alike, and fast. A sum is off by a tick a bay at most, which is `slack`.
 */
interface Ticks {
  readonly sizes: readonly bigint[];
  readonly first: bigint;
  readonly last: bigint;
  readonly longest: bigint;
  readonly slack: bigint;
}

const TICKS_A_MM = decimal("1e9");

const ticks = (size: Decimal): bigint => BigInt(size.times(TICKS_A_MM).toFixed(0));

function inTicks({ sizes, endSizes, longest }: Measured): Ticks {
  // Bays alike are one value.
  const known = new Map<Decimal, bigint>();
  const bays = sizes.map((size) => {
    const found = known.get(size) ?? ticks(size);
    known.set(size, found);
    return found;
  });
  return {
    sizes: bays,
    first: ticks(endSizes.first),
    last: ticks(endSizes.last),
    longest: ticks(longest),
    slack: BigInt(sizes.length + 2),
  };
}

/**
 * How many bays each piece of a run spans, from the left.
 * @param yard - What it sells.
 * @param given - Into as few pieces as can be, as even as can be, where that is known already.
 */
export function cutBays(run: Measured, yard?: SoldFor, given?: readonly number[]): readonly number[] {
  if (given && (!yard || yard.lengths.length === 0)) return given;
  const measured = inTicks(run);
  const even = given ?? leastOf(measured, []);
  if (!yard || yard.lengths.length === 0) return even;
  const sold = yard.lengths.map(ticks).sort(order);
  const longest = pieceTicks(measured, even).sort(order).at(-1) as bigint;
  const least = leastOf(yard.mayMill ? { ...measured, longest } : measured, sold);
  const stock = (spans: readonly number[]) =>
    pieceTicks(measured, spans).reduce<Head>((head, size) => headWith(head, size, sold, measured.slack), NOTHING);
  const [less, more] = [stock(least), stock(even)];
  const saves = more.over === less.over ? more.stock > less.stock + measured.slack : more.over > less.over;
  return saves ? least : even;
}

/** A way to cut so many bays from the left: the less of the first figure that differs the better. Lengths in ticks. */
interface Way {
  /** Pieces that are too long for any stock. */
  readonly over: number;
  /** Stock, each piece from a length of its own; nothing where no lengths are known. */
  readonly stock: bigint;
  readonly pieces: number;
  /** Lengths of the pieces, the longest first. */
  readonly sizes: readonly bigint[];
  /** Bays before the last piece, and the way that those are cut. */
  readonly from: number;
  readonly before: Way | undefined;
}

const NOTHING: Way = { over: 0, stock: 0n, pieces: 0, sizes: [], from: 0, before: undefined };

type Head = Pick<Way, "over" | "stock" | "pieces">;

/** Below 0, 0 or above it, as the first is less than the second, the same or more. */
const order = (a: bigint, b: bigint): number => (a < b ? -1 : a > b ? 1 : 0);

const compareHeads = (a: Head, b: Head): number => a.over - b.over || order(a.stock, b.stock) || a.pieces - b.pieces;

/** Adding the same piece to both turns no verdict, so that best parts make a best whole. */
function compare(a: Way, b: Way): number {
  const head = compareHeads(a, b);
  if (head !== 0) return head;
  const at = a.sizes.findIndex((size, i) => size !== b.sizes[i]);
  return at < 0 ? 0 : order(a.sizes[at] as bigint, b.sizes[at] as bigint);
}

/** The last piece of a way, and the bays before it. */
interface LastPiece {
  readonly from: number;
  readonly piece: bigint;
}

/** Best of all ways of cutting, bay by bay from the left. @param sold - Shortest first; none where nothing is known of a yard. */
function leastOf(run: Ticks, sold: readonly bigint[]): readonly number[] {
  const best: Way[] = [NOTHING];
  for (let to = 1; to <= run.sizes.length; to++) {
    const { head, ties } = bestHeads(run, to, best, sold);
    const ways = ties.map(({ from, piece }): Way => {
      const before = best[from] as Way;
      return { ...head, sizes: sizesWith(before, piece), from, before };
    });
    best.push(ways.reduce((least, way) => (compare(way, least) < 0 ? way : least)));
  }
  const spans: number[] = [];
  let at = run.sizes.length;
  for (let way = best[at]; way?.before; way = way.before) {
    spans.unshift(at - way.from);
    at = way.from;
  }
  return spans;
}

/** Last pieces of the ways that no count tells apart: lengths are sorted only of those. */
function bestHeads(
  { sizes, first, last, longest, slack }: Ticks,
  to: number,
  best: readonly Way[],
  sold: readonly bigint[],
): { readonly head: Head; readonly ties: readonly LastPiece[] } {
  let head: Head | undefined;
  let ties: LastPiece[] = [];
  let size = to === sizes.length ? last : 0n;
  let shelf = 0;
  for (let from = to - 1; from >= 0; from--) {
    size += sizes[from] as bigint;
    const piece = from === 0 ? size + first : size;
    if (to - from > 1 && piece > longest + slack) break;
    // Pieces get longer and longer: what was too short for the last is too short for this one.
    while (shelf < sold.length && (sold[shelf] as bigint) + slack < piece) shelf++;
    const { over, stock, pieces } = best[from] as Way;
    const none = sold.length > 0 && shelf === sold.length ? 1 : 0;
    const taken = sold.length === 0 ? 0n : (sold[shelf] ?? piece);
    const made = { over: over + none, stock: stock + taken, pieces: pieces + 1 };
    const better = head === undefined ? -1 : compareHeads(made, head);
    if (better > 0) continue;
    if (better < 0) [head, ties] = [made, []];
    ties.push({ from, piece });
  }
  return { head: head ?? NOTHING, ties };
}

function headWith({ over, stock, pieces }: Head, size: bigint, sold: readonly bigint[], slack: bigint): Head {
  if (sold.length === 0) return { over, stock, pieces: pieces + 1 };
  const taken = sold.find((length) => length + slack >= size);
  return { over: taken === undefined ? over + 1 : over, stock: stock + (taken ?? size), pieces: pieces + 1 };
}

function sizesWith({ sizes }: Way, size: bigint): readonly bigint[] {
  const at = sizes.findIndex((other) => other < size);
  return at < 0 ? [...sizes, size] : sizes.toSpliced(at, 0, size);
}

/** Lengths of all pieces, from the left. */
function pieceTicks({ sizes, first, last }: Ticks, spans: readonly number[]): bigint[] {
  let from = 0;
  return spans.map((bays) => {
    const inside = sizes.slice(from, from + bays).reduce((a, b) => a + b, 0n);
    const size = inside + (from === 0 ? first : 0n) + (from + bays === sizes.length ? last : 0n);
    from += bays;
    return size;
  });
}
