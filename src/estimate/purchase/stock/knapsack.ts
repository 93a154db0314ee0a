/**
 * Bounded knapsack over all capacities, which serves all stick lengths at once.
 *
 * Dynamic program over capacity, each count split into powers of two (Martello and Toth, Knapsack Problems, 1990, ch. 3).
 * Values are whole numbers below 2^53 in all, so every sum is exact. What fits changes only at capacities that some of the items come
 * to (ib., "reachable" ones), so one place in an array stands for all capacities from such a sum up to the next: a stick holds few of a
 * few lengths, which come to some hundreds of sums where its length is tens of thousands of steps.
 */
import type { Work } from "./work.js";

/** Capacities filled in about a microsecond, were each looked at. Assumption, measured. */
const CELLS = 1_000;

/** Cells that one filling of the array takes: what it costs in work and in bytes. */
export function cellsOf(weights: readonly number[], counts: readonly number[], capacity: number): number {
  const copies = weights.map((weight, item) => Math.min(counts[item] as number, Math.floor(capacity / weight)));
  return copies.reduce((sum, most) => sum + Math.ceil(Math.log2(most + 1)), 0) * capacity;
}

/** Work of one filling with so many cells. */
export const workOf = (cells: number): number => cells / CELLS;

/** The dynamic program's array, and what its places stand for. */
interface Table {
  /** Sums that items come to, ascending from 0; all capacities where these are too many. */
  readonly sums: Int32Array;
  /** By capacity, the place of the largest sum within it. */
  readonly places: Int32Array;
  /** By place, the largest value. */
  readonly best: Float64Array;
}

/** Filled by `fill`, then read by `value` and `pattern` for any capacity. */
export class Knapsack {
  private readonly table: Table;
  /** For each bundle of equal pieces, the places at which it was taken. */
  private taken: Uint8Array[] = [];
  private bundles: readonly Bundle[] = [];

  /** @param most - Of each item, more than which no filling asks for; where left out as many as there is room for. */
  constructor(
    private readonly weights: readonly number[],
    private readonly capacity: number,
    private readonly work: Work,
    most?: readonly number[],
  ) {
    const sums = sumsOf(
      bundlesOf(weights, capacity, (item) => most?.[item] ?? Number.POSITIVE_INFINITY),
      capacity,
    );
    this.table = { sums, places: placesOf(sums, capacity), best: new Float64Array(sums.length) };
  }

  /** Solves for every capacity. An item of value 0 is not taken. */
  fill(values: readonly number[], counts: readonly number[]): void {
    this.table.best.fill(0);
    this.bundles = bundlesOf(this.weights, this.capacity, (item) =>
      (values[item] ?? 0) > 0 ? (counts[item] ?? 0) : 0,
    );
    for (const [layer, { item, copies, weight }] of this.bundles.entries()) {
      this.taken[layer] ??= new Uint8Array(this.table.sums.length);
      fillLayer(this.table, this.taken[layer] as Uint8Array, weight, copies * (values[item] ?? 0));
      this.work.spend((this.capacity - weight + 1) / CELLS);
    }
  }

  /** Largest value that fits in `capacity`. */
  value(capacity: number): number {
    const { best, places } = this.table;
    return best[places[capacity] ?? -1] ?? 0;
  }

  /** Pieces of each item that make that value. */
  pattern(capacity: number): number[] {
    const take = this.weights.map(() => 0);
    let room = capacity;
    for (let layer = this.bundles.length - 1; layer >= 0; layer--) {
      const { item, copies, weight } = this.bundles[layer] as Bundle;
      if (this.taken[layer]?.[this.table.places[room] as number] !== 1) continue;
      take[item] = (take[item] ?? 0) + copies;
      room -= weight;
    }
    return take;
  }
}

/** So many of an item as one. */
interface Bundle {
  readonly item: number;
  readonly copies: number;
  readonly weight: number;
}

/** Equal pieces in powers of two, as many as fit and are wanted. */
function bundlesOf(weights: readonly number[], capacity: number, wanted: (item: number) => number): Bundle[] {
  const bundles: Bundle[] = [];
  for (const [item, weight] of weights.entries()) {
    let left = Math.min(wanted(item), Math.floor(capacity / weight));
    for (let copies = 1; left > 0; copies *= 2) {
      const now = Math.min(copies, left);
      bundles.push({ item, copies: now, weight: now * weight });
      left -= now;
    }
  }
  return bundles;
}

/** Sums up to the capacity, once each and in order; all whole numbers where there are more than a part of them. */
function sumsOf(bundles: readonly { readonly weight: number }[], capacity: number): Int32Array {
  let sums: readonly number[] = [0];
  for (const { weight } of bundles) {
    sums = withAdded(sums, weight, capacity);
    if (sums.length > capacity / WORTH_IT) return Int32Array.from({ length: capacity + 1 }, (_, sum) => sum);
  }
  return Int32Array.from(sums);
}

/** Capacities that a sum must stand for on the whole, to be worth being looked up. Assumption, measured. */
const WORTH_IT = 4;

/** Two ascending lists as one: the sums, and the sums with a weight more. */
function withAdded(sums: readonly number[], weight: number, capacity: number): readonly number[] {
  const all: number[] = [];
  let [own, other] = [0, 0];
  while (own < sums.length || other < sums.length) {
    const more = other < sums.length ? (sums[other] as number) + weight : Number.POSITIVE_INFINITY;
    const plain = own < sums.length ? (sums[own] as number) : Number.POSITIVE_INFINITY;
    const next = Math.min(plain, more);
    if (next > capacity) break;
    all.push(next);
    if (plain === next) own++;
    if (more === next) other++;
  }
  return all;
}

function placesOf(sums: Int32Array, capacity: number): Int32Array {
  const places = new Int32Array(capacity + 1);
  for (let place = 1; place < sums.length; place++) places.fill(place, sums[place], sums[place + 1] ?? capacity + 1);
  return places;
}

/** The inner loop on its own, where the engine compiles it best. */
function fillLayer({ best, sums, places }: Table, taken: Uint8Array, weight: number, value: number): void {
  taken.fill(0);
  for (let place = best.length - 1; place >= 0; place--) {
    const room = (sums[place] as number) - weight;
    if (room < 0) return;
    const candidate = (best[places[room] as number] as number) + value;
    if (candidate > (best[place] as number)) {
      best[place] = candidate;
      taken[place] = 1;
    }
  }
}
