/** Where pieces may be joined: over their supports, and nowhere else. */

/** A piece that is to be joined: lengths in the problem's steps. */
interface LongPiece {
  readonly length: number;
  /** From one support to the next, the first at its end. */
  readonly apart: number;
  /** The longest part that a stick gives. */
  readonly most: number;
}

/** Ways that are weighed for one piece, and joints more than the fewest. Assumptions: the evenest come first. */
const MOST_WAYS = 24;
const MORE_JOINTS = 1;

/**
 * Lengths of the parts in the order they lie, way by way: the fewest joints first, then the evenest. Parts in another order
 * are the same way, but for which of them ends the piece.
 * @returns none where it has no support between its ends, or a part would be longer than every stick.
 */
export function waysToJoin({ length, apart, most }: LongPiece): readonly (readonly number[])[] {
  const reach = apart > 0 ? Math.floor(most / apart) : 0;
  const spaces = apart > 0 ? Math.ceil(length / apart) : 1;
  if (reach < 1 || spaces < 2) return [];
  const fewest = Math.max(2, Math.ceil(spaces / reach));
  const off = spaces * apart - length;
  const counts = Array.from({ length: MORE_JOINTS + 1 }, (_, more) => fewest + more).filter((n) => n <= spaces);
  const spread = (parts: readonly number[]): number => (parts[0] ?? 0) - (parts.at(-1) ?? 0);
  const ways = counts.flatMap((n) =>
    sharesOf(spaces, n, reach)
      .toSorted((a, b) => spread(a) - spread(b))
      .flatMap((shares) => endings(shares, off))
      .map((shares) => shares.map((share, i) => share * apart - (i === n - 1 ? off : 0))),
  );
  return ways.slice(0, MOST_WAYS);
}

/** Shares that are listed before the evenest are taken: a long piece over close supports has millions. Assumption. */
const MOST_SHARES = 400;

/** Whole numbers from 1 to `most`, `n` of them, that come to a sum; none larger than the one before, the evenest first. */
function sharesOf(sum: number, n: number, most: number): number[][] {
  if (n === 1) return [[sum]];
  const found: number[][] = [];
  // From the even share on upwards: the others then hold the rest, none of them more than this one.
  for (let first = Math.ceil(sum / n); first <= Math.min(most, sum - n + 1) && found.length < MOST_SHARES; first++)
    for (const rest of sharesOf(sum - first, n - 1, first)) found.push([first, ...rest]);
  return found;
}

/** The same with each of unlike shares at the end, the smallest first; where nothing is off the last one they are all alike. */
function endings(shares: readonly number[], off: number): (readonly number[])[] {
  if (off === 0) return [shares];
  return [...new Set(shares)].reverse().map((last) => {
    const at = shares.lastIndexOf(last);
    return [...shares.filter((_, i) => i !== at), last];
  });
}
