/**
 * Bounded knapsack over one array of capacities, which serves all stick lengths at once.
 *
 * Dynamic program over capacity, each count split into powers of two (Martello and Toth, Knapsack Problems, 1990, ch. 3).
 * Values are whole numbers below 2^53 in all, so every sum is exact.
 */
import type { Work } from "./work.js";

/** Cells of the array filled in about a microsecond. Assumption, measured. */
const CELLS = 1_000;

/** Cells that one filling of the array takes: what it costs in work and in bytes. */
export function cellsOf(weights: readonly number[], counts: readonly number[], capacity: number): number {
  const copies = weights.map((weight, item) => Math.min(counts[item] as number, Math.floor(capacity / weight)));
  return copies.reduce((sum, most) => sum + Math.ceil(Math.log2(most + 1)), 0) * capacity;
}

/** Work of one filling with so many cells. */
export const workOf = (cells: number): number => cells / CELLS;

/** Filled by `fill`, then read by `value` and `pattern` for any capacity. */
export class Knapsack {
  private readonly best: Float64Array;
  /** For each bundle of equal pieces, the capacities at which it was taken. */
  private taken: Uint8Array[] = [];
  private bundles: { item: number; copies: number; weight: number }[] = [];

  constructor(
    private readonly weights: readonly number[],
    private readonly capacity: number,
    private readonly work: Work,
  ) {
    this.best = new Float64Array(capacity + 1);
  }

  /** Solves for every capacity. An item of value 0 is not taken. */
  fill(values: readonly number[], counts: readonly number[]): void {
    this.best.fill(0);
    this.bundles = [];
    this.weights.forEach((weight, item) => {
      if ((values[item] ?? 0) <= 0) return;
      let left = Math.min(counts[item] ?? 0, Math.floor(this.capacity / weight));
      for (let copies = 1; left > 0; copies *= 2) {
        const now = Math.min(copies, left);
        this.add(item, now, now * weight, now * (values[item] ?? 0));
        left -= now;
      }
    });
  }

  private add(item: number, copies: number, weight: number, value: number): void {
    const layer = this.bundles.length;
    this.bundles.push({ item, copies, weight });
    this.taken[layer] ??= new Uint8Array(this.capacity + 1);
    fillLayer(this.best, this.taken[layer] as Uint8Array, weight, value);
    this.work.spend((this.capacity - weight + 1) / CELLS);
  }

  /** Largest value that fits in `capacity`. */
  value(capacity: number): number {
    return this.best[capacity] ?? 0;
  }

  /** Pieces of each item that make that value. */
  pattern(capacity: number): number[] {
    const take = this.weights.map(() => 0);
    let room = capacity;
    for (let layer = this.bundles.length - 1; layer >= 0; layer--) {
      const { item, copies, weight } = this.bundles[layer] as (typeof this.bundles)[number];
      if (this.taken[layer]?.[room] !== 1) continue;
      take[item] = (take[item] ?? 0) + copies;
      room -= weight;
    }
    return take;
  }
}

/** The inner loop on its own, where the engine compiles it best. */
function fillLayer(best: Float64Array, taken: Uint8Array, weight: number, value: number): void {
  taken.fill(0);
  for (let room = best.length - 1; room >= weight; room--) {
    const candidate = (best[room - weight] as number) + value;
    if (candidate > (best[room] as number)) {
      best[room] = candidate;
      taken[room] = 1;
    }
  }
}
