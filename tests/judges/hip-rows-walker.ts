/**
 * Rows of a hip roof laid out again from the pieces that were cut for them: which piece lies where is found by trying, so that
 * every row is filled from hip to hip and pieces meet over rafters only. Inches and floats.
 */
import { centres, jackPlaces, rowCount, type Sizes } from "./frame-walker.js";

/** One row along an eave, from hip to hip; places from the corner of the eaves. */
export interface Row {
  readonly from: number;
  readonly to: number;
}

/** Equal pieces of one slope. */
export interface Stock {
  readonly length: number;
  readonly count: number;
}

const SIXTY_FOURTH = 1 / 64;
const MOST_TRIES = 200_000;

/** The rows of purlins on a side or an end slope that are longer than jacks are apart, and the rafters below them. */
export function hipRowsOf(
  s: Sizes,
  side: "side" | "end",
  middles?: readonly number[],
): { rows: Row[]; rafters: number[] } {
  const [slope, run, places] = [Math.hypot(12, s.rise) / 12, s.span / 2, jackPlaces(s)];
  const width = Math.max(s.purlin, s.endPurlin);
  const edge = (run + s.near - s.ridge / 2) * slope;
  const ups = middles ?? evenly(edge - width, rowCount(edge, width, s.purlinSpacing));
  const eave = (side === "side" ? s.length : s.span) + 2 * s.near;
  const apart = s.short ? s.rafterSpacing : run / (places.length + 1);
  const rows = ups
    .map((up) => ({ from: up / slope, to: eave - up / slope }))
    .filter(({ from, to }) => to - from > apart + 1e-7);
  const peak = s.near + run;
  const ridgeLine = s.length - s.span;
  const commons = side === "end" || ridgeLine === 0 ? [0] : centres(ridgeLine, 0, s.rafterSpacing);
  const last = side === "end" ? peak : peak + ridgeLine;
  const rafters = [
    ...places.map((place) => peak - place).reverse(),
    ...commons.map((y) => peak + y),
    ...places.map((place) => last + place),
  ];
  return { rows, rafters };
}

const evenly = (reach: number, rows: number): number[] =>
  Array.from({ length: rows }, (_, i) => (rows === 1 ? 0 : (i * reach) / (rows - 1)));

/** Ends of the pieces of every row, the row's own included; undefined where the pieces do not fill the rows. */
export function tileRows(
  rows: readonly Row[],
  rafters: readonly number[],
  stock: readonly Stock[],
): number[][] | undefined {
  const left = stock.map(({ count }) => count);
  const found: number[][] = [];
  let tries = 0;
  // What is left at a place leads to the same end, in whatever order the pieces before it lie.
  const hopeless = new Set<string>();
  const lay = (index: number, ends: readonly number[]): boolean => {
    const row = rows[index];
    if (!row) return left.every((count) => count === 0);
    const at = ends.at(-1) as number;
    const state = `${index} ${at.toFixed(3)} ${left.join(" ")}`;
    if (hopeless.has(state)) return false;
    for (const [i, { length }] of stock.entries()) {
      if ((left[i] as number) === 0) continue;
      if (++tries > MOST_TRIES) throw new Error("rows that cannot be told apart");
      const next = at + length;
      const whole = Math.abs(next - row.to) <= SIXTY_FOURTH;
      if (!whole && (next > row.to || !rafters.some((rafter) => Math.abs(rafter - next) <= SIXTY_FOURTH))) continue;
      left[i] = (left[i] as number) - 1;
      if (whole) {
        found[index] = [...ends, next];
        if (lay(index + 1, [rows[index + 1]?.from ?? 0])) return true;
      } else if (lay(index, [...ends, next])) return true;
      left[i] = (left[i] as number) + 1;
    }
    hopeless.add(state);
    return false;
  };
  return lay(0, [rows[0]?.from ?? 0]) ? found : undefined;
}

/** Supports that the pieces of tiled rows lie on: a rafter where two meet carries both, a hip the end of its row. */
export function crossedBy(tiled: readonly (readonly number[])[], rafters: readonly number[]): number {
  let count = 0;
  for (const ends of tiled) {
    for (const [i, to] of ends.slice(1).entries()) {
      const from = ends[i] as number;
      count += 2 + rafters.filter((rafter) => rafter > from + SIXTY_FOURTH && rafter < to - SIXTY_FOURTH).length;
    }
  }
  return count;
}
