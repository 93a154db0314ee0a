/** Where pieces may be joined: over their supports, and nowhere else. */

/** A piece that is to be joined: lengths in the problem's steps. */
interface LongPiece {
  readonly length: number;
  /** From one support to the next, the first at its end. */
  readonly apart: number;
  /** The longest part that a stick gives. */
  readonly most: number;
  /** The shortest part that is wanted; any when absent. */
  readonly least?: number;
  /** Joints of one piece; any number when absent. */
  readonly mostJoints?: number;
}

/** Lengths of the parts of one piece, in the order they lie. */
export type Parts = readonly number[];

/** How a piece may be joined. */
export interface WaysToJoin {
  /** The fewest joints first, then the evenest. */
  readonly ways: readonly Parts[];
  /** False where there are more than are listed: a long piece over close supports has thousands. */
  readonly all: boolean;
}

/** How equal pieces are had: those that are neither whole nor joined are left out. */
export interface Had {
  readonly whole: number;
  /** Joined ones, by the place of their way in the list. */
  readonly joined: readonly { readonly way: number; readonly count: number }[];
}

/** Pieces that are joined. */
export const joinedOf = ({ joined }: Had): number => joined.reduce((sum, { count }) => sum + count, 0);

/** Ways that are listed for one piece: all of those over up to some fifteen spaces. Assumption. */
const MOST_WAYS = 600;

/**
 * Parts in another order are the same way, but for which of them ends the piece.
 * @returns none where it has no support between its ends, or a part would be longer than every stick or shorter than is wanted.
 */
export function waysToJoin({ length, apart, most, least = 0, mostJoints }: LongPiece): WaysToJoin {
  const reach = apart > 0 ? Math.floor(most / apart) : 0;
  const spaces = apart > 0 ? Math.ceil(length / apart) : 1;
  if (spaces < 2) return { ways: [], all: true };
  const off = spaces * apart - length;
  const spread = (parts: Parts): number => Math.max(...parts) - Math.min(...parts);
  const ways: Parts[] = [];
  const others: Span = { least: Math.max(1, Math.ceil(least / apart)), most: reach };
  // The last part ends short of a support, so that it may reach over one space more.
  const last: Span = { least: Math.max(1, Math.ceil((least + off) / apart)), most: Math.floor((most + off) / apart) };
  const mostParts = Math.min(spaces, (mostJoints ?? spaces) + 1);
  for (let n = 2; n <= mostParts; n++) {
    const shares = off === 0 ? sharesOf(spaces, n, others) : endedShares(spaces, n, others, last);
    const parts = firstOf(shares, MOST_WAYS - ways.length + 1).map((one) =>
      one.map((share, i) => share * apart - (i === n - 1 ? off : 0)),
    );
    ways.push(...parts.toSorted((a, b) => spread(a) - spread(b)));
    if (ways.length > MOST_WAYS) return { ways: ways.slice(0, MOST_WAYS), all: false };
  }
  return { ways, all: true };
}

/** Spaces that a part reaches over. */
interface Span {
  readonly least: number;
  readonly most: number;
}

/** Whole numbers, `n` of them, that come to a sum; none larger than the one before, the evenest first. */
function* sharesOf(sum: number, n: number, { least, most }: Span): Generator<number[]> {
  if (n === 1) {
    if (sum >= least && sum <= most) yield [sum];
    return;
  }
  // From the even share on upwards: the others then hold the rest, none of them more than this one.
  for (let first = Math.ceil(sum / n); first <= Math.min(most, sum - (n - 1) * least); first++)
    for (const rest of sharesOf(sum - first, n - 1, { least, most: first })) yield [first, ...rest];
}

/** The same with a last one of its own least and most, the smallest first. */
function* endedShares(sum: number, n: number, others: Span, last: Span): Generator<number[]> {
  for (let end = last.least; end <= Math.min(last.most, sum - (n - 1) * others.least); end++)
    for (const shares of sharesOf(sum - end, n - 1, others)) yield [...shares, end];
}

function firstOf<T>(all: Iterable<T>, most: number): T[] {
  const list: T[] = [];
  for (const one of all) {
    if (list.length >= most) break;
    list.push(one);
  }
  return list;
}
