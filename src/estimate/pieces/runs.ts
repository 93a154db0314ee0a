/**
 * A run along the building (plate beam, ridge, purlin, fascia) made of pieces joined only over supports.
 *
 * Every piece spans whole bays; the first and the last piece reach past their outer support by an end. Which
 * pieces there are is decided here; how long they are is laid as cells.
 */
import type { Decimal } from "../quantity/decimal.js";
import { ZERO } from "../quantity/decimal.js";
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
    const ends = Number(kind.first) + Number(kind.last);
    return { ...kind, crossings: kind.bays + 1 + (fly ? ends : 0) };
  });
}

/** What the yard has for a run. */
export interface SoldFor {
  /** Longest pieces that can be had from its lengths; empty where it sells none. */
  readonly lengths: readonly Decimal[];
  /** Logs may serve, too: then no piece is longer than an even share makes it. */
  readonly mayMill: boolean;
}

/**
 * Cuts a run over its supports: into as few pieces as can be, as even as can be.
 * @param yard - Then into what takes least of the lengths sold, where that is less than an even share takes.
 */
export function cutRun(run: RunSupports, yard?: SoldFor): readonly RunPieces[] {
  const even = leastOf(run, []);
  if (!yard || yard.lengths.length === 0) return kindsOf(run, even);
  const sold = yard.lengths;
  const least = leastOf(yard.mayMill ? { ...run, longest: longestOf(run, even) } : run, sold);
  const stock = (spans: readonly number[]) => costOf(run, spans, sold);
  const [better, known] = [stock(least), stock(even)];
  return kindsOf(run, compare(better.slice(0, 2), known.slice(0, 2)) < 0 ? least : even);
}

/** Pieces too long for any stock, stock, pieces, then how long they are, the longest first: the less the better. */
type Cost = readonly Decimal[];

/** Compared from the first figure on. Adding the same piece to both turns no verdict, so that best parts make a best whole. */
function compare(a: Cost, b: Cost): number {
  const at = a.findIndex((figure, i) => !figure.eq(b[i] ?? ZERO));
  return at < 0 ? 0 : (a[at] as Decimal).cmp(b[at] ?? ZERO);
}

/** Best of all ways of cutting, bay by bay from the left. The first pieces of a best way are a best way of their bays. */
function leastOf(run: RunSupports, sold: readonly Decimal[]): readonly number[] {
  const bays = run.sizes.length;
  const best: { readonly spans: readonly number[]; readonly cost: Cost }[] = [{ spans: [], cost: [ZERO, ZERO, ZERO] }];
  for (let to = 1; to <= bays; to++) {
    let found: (typeof best)[number] | undefined;
    for (let from = to - 1; from >= 0; from--) {
      const size = pieceSize(run, from, to - from);
      if (to - from > 1 && size.gt(run.longest)) break;
      const before = best[from] as (typeof best)[number];
      const cost = withPiece(before.cost, size, sold);
      if (!found || compare(cost, found.cost) < 0) found = { spans: [...before.spans, to - from], cost };
    }
    best.push(found as (typeof best)[number]);
  }
  return (best[bays] as (typeof best)[number]).spans;
}

const costOf = (run: RunSupports, spans: readonly number[], sold: readonly Decimal[]): Cost =>
  sizesOf(run, spans).reduce<Cost>((cost, size) => withPiece(cost, size, sold), [ZERO, ZERO, ZERO]);

function withPiece([over, stock, pieces, ...sizes]: Cost, size: Decimal, sold: readonly Decimal[]): Cost {
  const lengths = sold.filter((length) => length.gte(size));
  const taken = lengths.reduce<Decimal | undefined>((a, b) => (a?.lte(b) ? a : b), undefined);
  const missed = sold.length > 0 && taken === undefined ? 1 : 0;
  const sorted = [...sizes, size].sort((a, b) => b.cmp(a));
  const bought = sold.length === 0 ? ZERO : (taken ?? size);
  return [(over as Decimal).plus(missed), (stock as Decimal).plus(bought), (pieces as Decimal).plus(1), ...sorted];
}

/** Ninth decimal of a millimetre: what differs by less is the same length. */
const SAME = 9;

/** Effective lengths of all pieces, from the left. */
function sizesOf(run: RunSupports, spans: readonly number[]): Decimal[] {
  let from = 0;
  return spans.map((bays) => {
    const size = pieceSize(run, from, bays);
    from += bays;
    return size;
  });
}

const longestOf = (run: RunSupports, spans: readonly number[]): Decimal =>
  sizesOf(run, spans).reduce((a, b) => (a.gte(b) ? a : b));

/** Effective length of a piece over so many bays from one on. */
function pieceSize({ sizes, endSizes }: RunSupports, from: number, bays: number): Decimal {
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
    const key = `${size} ${bays} ${Number(first) + Number(last)}`;
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
  readonly kindsFrom: (yard: SoldFor) => readonly RunPieces[];
  readonly lengthOf: (kind: RunPieces) => Operand;
  /** Where each piece of a kind begins, from the beginning of the run. */
  readonly beginsOf: (kind: RunPieces) => readonly Operand[];
}

/** @param fly - Of a run over rafters: whether a fly rafter is past either end. */
export function laidRun(supports: RunSupports, support: Cell, fly?: boolean): LaidRun {
  const kindsFrom = (yard?: SoldFor) => {
    const kinds = cutRun(supports, yard);
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
