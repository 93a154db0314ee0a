/**
 * Where pieces longer than every stick are joined: over their supports, and nowhere else. The ways to share one out are tried
 * beside the other pieces of the order, and the cheapest is kept.
 */
import type { StockCut, StockOutcome, StockPiece } from "./problem.js";

/** A long piece: lengths in the problem's steps. */
export interface LongPiece {
  readonly length: number;
  /** From one support to the next, the first at its end. */
  readonly apart: number;
  /** The longest part that a stick gives. */
  readonly most: number;
  /** Joined although a stick takes it whole, where of such sticks there are few. */
  readonly joined?: boolean;
}

/** Ways that are weighed for one piece, and joints more than the fewest. Assumptions: the evenest come first. */
const MOST_WAYS = 24;
const MORE_JOINTS = 1;

/**
 * Lengths of the parts in the order they lie, way by way: the fewest joints first, then the evenest. Parts in another order
 * are the same way, but for which of them ends the piece.
 * @returns one way, the piece itself, where it needs no joint or may have none.
 */
export function waysToJoin({ length, apart, most, joined = false }: LongPiece): readonly (readonly number[])[] {
  const reach = apart > 0 ? Math.floor(most / apart) : 0;
  const spaces = apart > 0 ? Math.ceil(length / apart) : 1;
  if ((length <= most && !joined) || reach < 1 || spaces < 2) return [[length]];
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

/** Counted work for weighing ways. */
const WORK = 400_000;
/** Of one plan that is only weighed. */
const SKETCH = 60_000;

/** An order with each piece had in one of its ways. */
export interface Joinery {
  /** How many ways each piece has. */
  readonly ways: readonly number[];
  /** A plan with one way chosen for each, within so much work. */
  readonly plan: (chosen: readonly number[], work: number) => StockOutcome;
}

/** Which way to take for each piece, and how many were weighed. */
export interface ChosenJoints {
  readonly chosen: readonly number[];
  readonly weighed: number;
}

/**
 * Piece by piece, the way that costs least beside the others as they are, until none is better or the work is spent.
 * @param plan - A plan of a problem within so much work.
 */
export function chooseJoints({ ways, plan }: Joinery): ChosenJoints {
  let chosen = ways.map(() => 0);
  if (ways.every((count) => count === 1)) return { chosen, weighed: 0 };
  let [spent, weighed] = [0, 0];
  const weigh = (these: readonly number[]): StockOutcome => {
    const outcome = plan(these, SKETCH);
    spent += outcome.work;
    weighed++;
    return outcome;
  };
  let best = weigh(chosen);
  for (let improved = true; improved; ) {
    improved = false;
    for (const [piece, count] of ways.entries())
      for (let way = 0; way < count && spent < WORK; way++) {
        if (way === chosen[piece]) continue;
        const other = chosen.map((before, i) => (i === piece ? way : before));
        const outcome = weigh(other);
        if (!cheaper(outcome, best)) continue;
        [chosen, best, improved] = [other, outcome, true];
      }
  }
  return { chosen, weighed };
}

/** Fewer pieces left out, then less cost. */
export function cheaper(a: StockOutcome, b: StockOutcome): boolean {
  const left = ({ short }: StockOutcome): number => short.reduce((sum, { count }) => sum + count, 0);
  return left(a) < left(b) || (left(a) === left(b) && a.costMinor < b.costMinor);
}

/** The way that a held plan was made for: it has every piece and part that the plan names, as often, and fewest beyond them. */
export function heldWay(ways: readonly (readonly StockPiece[])[], held: readonly StockCut[]): number {
  const cut = cutOf(held);
  const rows = new Set(ways.flat().map(({ name }) => name));
  const named = [...cut].filter(([name]) => rows.has(name));
  const beyond = ways.map((way) => {
    const counts = new Map(way.map(({ name, count }) => [name, count]));
    if (named.some(([name, times]) => (counts.get(name) ?? 0) < times)) return Number.POSITIVE_INFINITY;
    return way.reduce((sum, { name, count }) => sum + count - (cut.get(name) ?? 0), 0);
  });
  return beyond.indexOf(Math.min(...beyond));
}

/** How often a plan cuts each piece. */
export function cutOf(plan: readonly StockCut[]): ReadonlyMap<string, number> {
  const cut = new Map<string, number>();
  for (const { pieces, times } of plan) for (const name of pieces) cut.set(name, (cut.get(name) ?? 0) + times);
  return cut;
}
