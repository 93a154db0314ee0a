/**
 * How many pieces of each group some wood gives, packed into two whole numbers, so that yields are added and held
 * against what is wanted in one step each.
 */

/** A yield: packed counts, and one number that tells it from all others. */
export interface Yield {
  readonly lo: number;
  readonly hi: number;
  readonly key: number;
}

/** Bits that one number's integer operations keep to, with room for the guard bits. */
const WORD = 30;
/** Bits of both words, so that `key` is a whole number that a float holds exactly. */
const MOST_BITS = 52;

/** Nothing made. */
export const NOTHING: Yield = { lo: 0, hi: 0, key: 0 };

/** Packs yields of one job. Each count has a spare bit above it, which tells when it is more than wanted. */
export class YieldCode {
  readonly #ones: readonly Yield[];
  readonly #places: readonly { readonly high: boolean; readonly shift: number; readonly mask: number }[];
  readonly #mostLo: number;
  readonly #mostHi: number;
  readonly #guardLo: number;
  readonly #guardHi: number;

  private constructor(count: readonly number[]) {
    let [lo, hi] = [0, 0];
    let [mostLo, mostHi, guardLo, guardHi] = [0, 0, 0, 0];
    this.#places = count.map((n) => {
      const bits = bitsOf(n);
      const guard = 2 ** (bits - 1);
      const mask = 2 ** bits - 1;
      if (lo + bits <= WORD) {
        mostLo += (n + guard) * 2 ** lo;
        guardLo += guard * 2 ** lo;
        lo += bits;
        return { high: false, shift: lo - bits, mask };
      }
      mostHi += (n + guard) * 2 ** hi;
      guardHi += guard * 2 ** hi;
      hi += bits;
      return { high: true, shift: hi - bits, mask };
    });
    [this.#mostLo, this.#mostHi, this.#guardLo, this.#guardHi] = [mostLo, mostHi, guardLo, guardHi];
    this.#ones = this.#places.map(({ high, shift }) => {
      const one = 2 ** shift;
      return high ? { lo: 0, hi: one, key: one * 2 ** WORD } : { lo: one, hi: 0, key: one };
    });
  }

  /** The code of some counts wanted; null where they are too many to pack. */
  static of(count: readonly number[]): YieldCode | null {
    let [lo, hi] = [0, 0];
    for (const bits of count.map(bitsOf)) {
      if (lo + bits <= WORD) lo += bits;
      else hi += bits;
    }
    return hi > MOST_BITS - WORD ? null : new YieldCode(count);
  }

  /** One piece of a group. */
  one(j: number): Yield {
    return this.#ones[j] as Yield;
  }

  /** Whether the sum of two yields that fit is no more than wanted of any group. */
  fits(lo: number, hi: number): boolean {
    return (
      ((this.#mostLo - lo) & this.#guardLo) === this.#guardLo && ((this.#mostHi - hi) & this.#guardHi) === this.#guardHi
    );
  }

  /** Pieces of each group. */
  counts({ lo, hi }: Yield): number[] {
    return this.#places.map(({ high, shift, mask }) => ((high ? hi : lo) >>> shift) & mask);
  }
}

/** Bits of a count and of its spare bit. */
function bitsOf(n: number): number {
  return 1 + Math.ceil(Math.log2(n + 1));
}
