/** Vectors of pieces made, what each costs at least, and how it is made. */
import type { SawGroup } from "../../src/estimate/salvage/sawing-problem.js";

/** Most vectors, and most sums of two of them, before a question is called too large. */
const MOST_VECTORS = 50_000;
const MOST_SUMS = 150_000_000;

/** Thrown where the dynamic program would take too long. */
export class TooLarge extends Error {}

/** The cheapest way to make a vector; the parts are put together only when somebody asks. */
export interface Way<T> {
  readonly cost: number;
  readonly parts: () => T[];
}

/** Ways by vector; vectors are numbered with one mixed-radix digit a group. */
export type Ways<T> = ReadonlyMap<number, Way<T>>;

/** Nothing made, at no cost. */
export function nothing<T>(): Map<number, Way<T>> {
  return new Map([[0, { cost: 0, parts: () => [] }]]);
}

/** Adds vectors, each digit capped at the count wanted. */
export class Demand {
  readonly #radix: readonly number[];
  #sums = 0;

  /** @throws TooLarge when there are too many vectors. */
  constructor(readonly groups: readonly SawGroup[]) {
    this.#radix = groups.map((group) => group.count + 1);
    if (this.#radix.reduce((product, base) => product * base, 1) > MOST_VECTORS) throw new TooLarge();
  }

  digits(vector: number): number[] {
    let rest = vector;
    return this.#radix.map((base) => {
      const digit = rest % base;
      rest = (rest - digit) / base;
      return digit;
    });
  }

  number(digits: readonly number[]): number {
    return this.#radix.reduceRight((sum, base, index) => sum * base + Math.min(base - 1, digits[index] ?? 0), 0);
  }

  /** Every vector of one with every vector of the other, and `extra` to pay for each. */
  join<T>(some: Ways<T>, others: Ways<T>, extra = 0): Map<number, Way<T>> {
    this.#sums += some.size * others.size;
    if (this.#sums > MOST_SUMS) throw new TooLarge();
    const joined = new Map<number, Way<T>>();
    for (const [after, { cost, parts: later }] of others) {
      for (const [before, { cost: paid, parts: earlier }] of some) {
        const vector = this.#add(before, after);
        const total = cost + paid + extra;
        const known = joined.get(vector);
        if (known !== undefined && known.cost <= total) continue;
        joined.set(vector, { cost: total, parts: () => [...earlier(), ...later()] });
      }
    }
    return joined;
  }

  #add(a: number, b: number): number {
    let sum = 0;
    let unit = 1;
    let [restA, restB] = [a, b];
    for (const base of this.#radix) {
      const [digitA, digitB] = [restA % base, restB % base];
      sum += Math.min(base - 1, digitA + digitB) * unit;
      unit *= base;
      restA = (restA - digitA) / base;
      restB = (restB - digitB) / base;
    }
    return sum;
  }
}

/** Takes over each way that is cheaper than the one known. */
export function merge<T>(ways: Map<number, Way<T>>, more: Ways<T>): void {
  for (const [vector, way] of more) {
    const known = ways.get(vector);
    if (known === undefined || way.cost < known.cost) ways.set(vector, way);
  }
}

/** The same with `part` to pay on top. */
export function dearer<T>(ways: Ways<T>, part: number): Map<number, Way<T>> {
  return new Map([...ways].map(([vector, { cost, parts }]) => [vector, { cost: cost + part, parts }]));
}

/** The same with the parts put together to something larger. */
export function built<S, T>(ways: Ways<S>, build: (parts: S[]) => T[]): Map<number, Way<T>> {
  return new Map([...ways].map(([vector, { cost, parts }]) => [vector, { cost, parts: () => build(parts()) }]));
}

/** The ways that make something. */
export function some<T>(ways: Ways<T>): Ways<T> {
  return new Map([...ways].filter(([vector]) => vector !== 0));
}
