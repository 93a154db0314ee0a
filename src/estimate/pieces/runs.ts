/**
 * A run along the building (plate beam, ridge, purlin, fascia) made of pieces joined only over supports.
 *
 * Every piece spans whole bays; the first and the last piece reach past their outer support by an end. Which
 * pieces there are is decided here; how long they are is laid as cells.
 */
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { type Cell, count, minus, number, type Operand, plus, sum, times } from "../sheet/expression.js";
import { cutBays, type Measured, type SoldFor } from "./run-cutting.js";

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
export interface RunSupports extends Measured {
  /** One for all bays alike, or each. */
  readonly bays: Cell | readonly Cell[];
  /** From the outer supports to the ends of the run, as formulas. */
  readonly ends: { readonly first: Operand; readonly last: Operand };
}

/** Kinds of a run over rafters, with what each piece lies on. @param fly - Whether a fly rafter is past either end. */
export function onRafters(kinds: readonly RunPieces[], fly: boolean): readonly RunPieces[] {
  return kinds.map((kind) => {
    return { ...kind, crossings: kind.bays + 1 + (fly ? endsOf(kind) : 0) };
  });
}

/** At how many ends of the run a piece lies. */
const endsOf = ({ first, last }: Pick<RunPieces, "first" | "last">): number => (first ? 1 : 0) + (last ? 1 : 0);

/**
 * Cuts a run over its supports: into as few pieces as can be, as even as can be.
 * @param yard - Then into what takes least of the lengths sold, where that is less than an even share takes.
 */
export const cutRun = (run: RunSupports, yard?: SoldFor, even = cutBays(run)): readonly RunPieces[] =>
  kindsOf(run, cutBays(run, yard, even));

/** Ninth decimal of a millimetre: what differs by less is the same length. */
const SAME = 9;

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
