/**
 * A run along the building (plate beam, ridge, purlin, fascia) made of pieces joined only over supports.
 *
 * Every piece spans whole bays; the first and the last piece reach past their outer support by an end. Which
 * pieces there are is counted here; how long they are is laid as cells.
 */
import { count, minus, type Operand, plus, times } from "../sheet/expression.js";

/** Equal pieces of one run. */
export interface RunPieces {
  /** How many of them in one run. */
  readonly pieces: number;
  readonly bays: number;
  /** Ends that such a piece reaches past: the first piece one, the last one, a single piece both. */
  readonly first: boolean;
  readonly last: boolean;
  /** Rafters or joists that such a piece lies on, a fly rafter at either end included; only of runs over those. */
  readonly crossings?: number;
}

/** Kinds of a run over rafters, with what each piece lies on. @param fly - Whether a fly rafter is past either end. */
export function onRafters(kinds: readonly RunPieces[], fly: boolean): readonly RunPieces[] {
  return kinds.map((kind) => {
    const ends = Number(kind.first) + Number(kind.last);
    return { ...kind, crossings: kind.bays + 1 + (fly ? ends : 0) };
  });
}

/**
 * Cuts a run into as few pieces of at most `most` bays as can be, as even as can be; the longer ones come first.
 * @param bays - One or more.
 */
export function runPieces(bays: number, most: number): readonly RunPieces[] {
  const pieces = Math.ceil(bays / Math.max(1, most));
  const spans = Array.from({ length: pieces }, (_, i) => Math.floor(bays / pieces) + (i < bays % pieces ? 1 : 0));
  const kinds = new Map<string, RunPieces>();
  for (const [i, span] of spans.entries()) {
    const [first, last] = [i === 0, i === spans.length - 1];
    const key = `${span} ${first} ${last}`;
    const known = kinds.get(key);
    kinds.set(key, { pieces: (known?.pieces ?? 0) + 1, bays: span, first, last });
  }
  return [...kinds.values()];
}

/** Merges kinds that have the same length because both ends reach equally far. */
export function mergeEnds(kinds: readonly RunPieces[], endsAlike: boolean): readonly RunPieces[] {
  if (!endsAlike) return kinds;
  const merged = new Map<string, RunPieces>();
  for (const kind of kinds) {
    const ends = Number(kind.first) + Number(kind.last);
    const key = `${kind.bays} ${ends}`;
    const known = merged.get(key);
    merged.set(key, known ? { ...known, pieces: known.pieces + kind.pieces } : kind);
  }
  return [...merged.values()];
}

/** Length of one piece of a kind. */
export function runPieceLength(
  kind: RunPieces,
  bay: Operand,
  ends: { readonly first: Operand; readonly last: Operand },
) {
  const spans = kind.bays === 1 ? bay : times(count(kind.bays), bay);
  const past: Operand[] = [...(kind.first ? [ends.first] : []), ...(kind.last ? [ends.last] : [])];
  return plus(spans, ...past);
}

/** The last end of a run whose last bay is shorter than the others by `shortage`. */
export const shortened = (end: Operand, shortage: Operand) => minus(end, shortage);
