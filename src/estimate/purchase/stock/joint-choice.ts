/**
 * Which pieces of an order are joined, and where, of orders too large for all ways to be searched at once (`joined-program.ts`): a piece
 * that a stick takes whole is joined only where there are too few such sticks. A few ways, equal pieces joined alike, are tried beside
 * the other pieces of the order, and the best is kept.
 */
import type { Had, Parts } from "./joints.js";
import type { StockCut, StockOutcome } from "./problem.js";

/** How equal pieces are had: so many whole, the others joined, all alike. */
export interface Way {
  readonly whole: number;
  /** Place in the list of ways to lay the joints. */
  readonly joints: number;
}

/** Equal pieces, and how they may be had. */
export interface Joinable {
  readonly count: number;
  /** All of them, or none where no stick takes one whole and they may be joined. */
  readonly mostWhole: number;
  /** How many ways to lay the joints of the others are weighed, the evenest with the fewest joints first; 0 where none may be joined. */
  readonly joints: number;
}

/** Ways that are weighed for one piece, and joints more than the fewest. Assumptions: the evenest come first. */
const MOST_WAYS = 24;
const MORE_JOINTS = 1;

/** How many of the ways are weighed. @param ways - The fewest joints first. */
export const waysAlike = (ways: readonly Parts[]): number =>
  ways.slice(0, MOST_WAYS).filter(({ length }) => length <= (ways[0]?.length ?? 0) + MORE_JOINTS).length;

/** Those that are not whole joined alike, where they may be. */
export const hadAlike = ({ count, joints: ways }: Joinable, { whole, joints }: Way): Had => ({
  whole,
  joined: ways > 0 && whole < count ? [{ way: joints, count: count - whole }] : [],
});

/** Whole wherever a stick takes one, the others joined as evenly as can be. */
export const wholeFirst = (pieces: readonly Joinable[]): readonly Way[] =>
  pieces.map(({ mostWhole }) => ({ whole: mostWhole, joints: 0 }));

/** A way for each piece of an order, and its plan. */
export interface Weighed {
  readonly chosen: readonly Way[];
  readonly outcome: StockOutcome;
}

/** Fewer pieces left out, then fewer joined, then less cost. */
export function better(pieces: readonly Joinable[], a: Weighed, b: Weighed): boolean {
  const joined = ({ chosen }: Weighed): number => total(pieces, ({ count }, i) => count - wayAt(chosen, i).whole);
  const worse = leftOut(a) - leftOut(b) || joined(a) - joined(b) || a.outcome.costMinor - b.outcome.costMinor;
  return worse < 0;
}

/** Pieces that a plan leaves out. */
export const leftOut = ({ outcome }: Pick<Weighed, "outcome">): number => total(outcome.short, ({ count }) => count);
const total = <T>(list: readonly T[], each: (one: T, i: number) => number): number =>
  list.reduce((sum, one, i) => sum + each(one, i), 0);
const wayAt = (chosen: readonly Way[], i: number): Way => chosen[i] as Way;

/** Counted work for weighing ways to lay the joints; and as much again where sticks run short, for other numbers of whole pieces. Assumption. */
const WORK = 400_000;
/** Of one plan that is only weighed. Assumption. */
const SKETCH = 60_000;

/**
 * From the way of `wholeFirst` on, one change at a time, until none is better or the work is spent.
 * @param first - That way with its plan: where it leaves no piece out, no more of them are joined.
 * @param plan - A plan with one way chosen for each piece, within so much work.
 * @returns what to choose, and how many ways were weighed; 0 where there is no choice.
 */
export function chooseJoints(
  pieces: readonly Joinable[],
  first: Weighed,
  plan: (chosen: readonly Way[], work: number) => StockOutcome,
): { readonly chosen: readonly Way[]; readonly weighed: number } {
  const changes = leftOut(first) > 0 ? [otherJoints, otherNumbers] : [otherJoints];
  if (changes.every((change) => change(pieces, first).next().done)) return { chosen: first.chosen, weighed: 0 };
  const seen = new Set<string>();
  let spent = 0;
  const weigh = (chosen: readonly Way[]): Weighed => {
    const outcome = plan(chosen, SKETCH);
    seen.add(JSON.stringify(chosen));
    spent += outcome.work;
    return { chosen, outcome };
  };
  let best = weigh(first.chosen);
  const improved = (tried: typeof changes): Weighed | undefined => {
    for (const change of tried)
      for (const other of change(pieces, best)) {
        if (spent >= WORK * tried.length) return undefined;
        if (seen.has(JSON.stringify(other))) continue;
        const weighed = weigh(other);
        if (better(pieces, weighed, best)) return weighed;
      }
    return undefined;
  };
  // Where the joints lie is settled first, as it may save every piece from being left out or joined.
  for (let i = 1; i <= changes.length; i++)
    for (let next = improved(changes.slice(0, i)); next; next = improved(changes.slice(0, i))) best = next;
  return { chosen: best.chosen, weighed: seen.size };
}

type Changes = Generator<readonly Way[]>;

const changed = (chosen: readonly Way[], ...changes: readonly (readonly [number, Way])[]): readonly Way[] =>
  chosen.map((way, i) => changes.find(([at]) => at === i)?.[1] ?? way);

/** The joints of one piece laid otherwise. */
function* otherJoints(pieces: readonly Joinable[], { chosen }: Weighed): Changes {
  for (const [i, { count, joints: all }] of pieces.entries()) {
    const { whole, joints: now } = wayAt(chosen, i);
    if (whole === count) continue;
    for (let joints = 0; joints < all; joints++) if (joints !== now) yield changed(chosen, [i, { whole, joints }]);
  }
}

/** Other numbers of one piece left whole, and one whole in the place of another. */
function* otherNumbers(pieces: readonly Joinable[], from: Weighed): Changes {
  const { chosen } = from;
  const most = Math.max(...pieces.map(({ joints }) => joints));
  // The evenest joints of all first: where they will do, the others need no work.
  for (let joints = 0; joints < most; joints++)
    for (const [i, piece] of pieces.entries())
      for (const whole of joints < piece.joints ? otherWholes(piece, wayAt(chosen, i).whole, leftOut(from)) : [])
        yield changed(chosen, [i, { whole, joints }]);
  for (const [i, { mostWhole, joints }] of pieces.entries())
    for (const [j, other] of pieces.entries()) {
      const [gains, gives] = [wayAt(chosen, i), wayAt(chosen, j)];
      if (i === j || joints === 0 || other.joints === 0 || gains.whole === mostWhole || gives.whole === 0) continue;
      yield changed(chosen, [i, { ...gains, whole: gains.whole + 1 }], [j, { ...gives, whole: gives.whole - 1 }]);
    }
}

/** Numbers of pieces left whole: fewer by as many as are left out, and others on the way to none and to all. */
function otherWholes({ mostWhole }: Joinable, now: number, left: number): readonly number[] {
  const all = [now - left, now - 1, Math.floor(now / 2), 0, now + 1, Math.ceil((now + mostWhole) / 2)];
  return [...new Set(all)].filter((whole) => whole !== now && whole >= 0 && whole <= mostWhole);
}

/** How often a plan cuts each piece. */
export function cutOf(plan: readonly StockCut[]): ReadonlyMap<string, number> {
  const cut = new Map<string, number>();
  for (const { pieces, times } of plan) for (const name of pieces) cut.set(name, (cut.get(name) ?? 0) + times);
  return cut;
}
