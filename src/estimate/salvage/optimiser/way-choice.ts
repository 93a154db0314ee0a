/**
 * The best of some ways, one a log or a bolt, for what is open: branch and bound. Several together are worth no more than
 * the sum of what each is worth alone, for a piece counts as long as it is open only.
 */

/** A way to saw something: what it makes, by group, and what it costs. */
export interface Way {
  readonly made: Int32Array;
  readonly cost: number;
}

/** Most ways remembered, and how many stay when there are more. Assumption, measured. */
const MOST_WAYS = 800;
const KEPT_WAYS = 400;
/** Noise of money in float. */
const NOISE = 1e-7;

/** Ways to saw one log or bolt, no two of which make the same. */
export class Ways<T extends Way> {
  ways: T[] = [];
  readonly #numbers = new Map<string, number>();

  /**
   * @param gain - Says which ways to keep.
   * @param none - The way that leaves it lying.
   */
  constructor(
    readonly gain: (way: T) => number,
    readonly none: T,
  ) {
    this.add(none);
  }

  /** Remembers a way unless one that makes the same costs no more. */
  add(way: T): void {
    const key = way.made.join(" ");
    const known = this.#numbers.get(key);
    if (known !== undefined) {
      if (way.cost < (this.ways[known] as T).cost - NOISE) this.ways[known] = way;
      return;
    }
    if (this.ways.length >= MOST_WAYS) this.#forget();
    this.#numbers.set(key, this.ways.length);
    this.ways.push(way);
  }

  #forget(): void {
    const kept = this.ways
      .map((way) => ({ way, gain: this.gain(way) }))
      .sort((a, b) => b.gain - a.gain)
      .slice(0, KEPT_WAYS);
    this.ways = [];
    this.#numbers.clear();
    this.add(this.none);
    for (const { way } of kept) this.add(way);
  }
}

/** Some logs or bolts whose ways are to be chosen. */
interface Choosing {
  readonly ways: readonly (readonly Way[])[];
  readonly chosen: number[];
  best: number;
  found: number[] | null;
}

/** Room for one depth of the search: worth of each way by log, the most of each log, what is left open. */
interface Level {
  readonly values: Float64Array[];
  readonly most: number[];
  readonly left: Int32Array;
}

/** Chooses ways. */
export class WayChoice {
  readonly #levels: Level[] = [];
  /** Counts looked at so far: the measure of work. */
  looked = 0;

  /** @param buy - What a piece costs when bought, by group. */
  constructor(readonly buy: readonly number[]) {}

  /** The ways that are worth most together, one of each; null where none are worth more than those of `now`. */
  best<T extends Way>(ways: readonly Ways<T>[], now: readonly T[], open: Int32Array): T[] | null {
    if (ways.length === 0) return null;
    let worth = now.reduce((sum, { cost }) => sum - cost, 0);
    for (let j = 0; j < open.length; j++) {
      const made = now.reduce((sum, way) => sum + (way.made[j] as number), 0);
      worth += Math.min(open[j] as number, made) * (this.buy[j] as number);
    }
    const lists = ways.map((one) => one.ways);
    const ask: Choosing = { ways: lists, chosen: [], best: worth + NOISE, found: null };
    this.#choose(ask, open, 0, 0);
    return ask.found?.map((number, w) => lists[w]?.[number] as T) ?? null;
  }

  #choose(ask: Choosing, open: Int32Array, depth: number, base: number): void {
    const { ways, chosen } = ask;
    const level = this.#level(depth, open.length);
    for (let w = depth; w < ways.length; w++) this.#reckon(ask, open, { depth, w, base });
    let rest = 0;
    for (let w = depth + 1; w < ways.length; w++) rest += level.most[w] as number;
    const values = level.values[depth] as Float64Array;
    const mine = ways[depth] as readonly Way[];
    for (let p = 0; p < mine.length; p++) {
      const value = base + (values[p] as number);
      if (value + rest <= ask.best) continue;
      chosen[depth] = p;
      if (depth === ways.length - 1) {
        ask.best = value;
        ask.found = chosen.slice();
        continue;
      }
      const { left } = level;
      const { made } = mine[p] as Way;
      for (let j = 0; j < left.length; j++) left[j] = Math.max(0, (open[j] as number) - (made[j] as number));
      this.#choose(ask, left, depth + 1, value);
    }
  }

  #level(depth: number, groups: number): Level {
    this.#levels[depth] ??= { values: [], most: [], left: new Int32Array(groups) };
    return this.#levels[depth] as Level;
  }

  /** Worth of each way of log `w` for what is open. What was worth too little when more was open stays so. */
  #reckon(
    { ways, best }: Choosing,
    open: Int32Array,
    { depth, w, base }: { readonly depth: number; readonly w: number; readonly base: number },
  ): void {
    const mine = ways[w] as readonly Way[];
    const level = this.#level(depth, open.length);
    level.values[w] ??= new Float64Array(MOST_WAYS + 1);
    const values = level.values[w] as Float64Array;
    const above = depth > 0 ? this.#levels[depth - 1] : undefined;
    const known = above?.values[w];
    let least = Number.NEGATIVE_INFINITY;
    if (above !== undefined) {
      least = best - base;
      for (let other = depth; other < ways.length; other++) if (other !== w) least -= above.most[other] as number;
    }
    const { buy } = this;
    let most = Number.NEGATIVE_INFINITY;
    for (let p = 0; p < mine.length; p++) {
      if (known !== undefined && (known[p] as number) <= least) {
        values[p] = Number.NEGATIVE_INFINITY;
        continue;
      }
      const { made, cost } = mine[p] as Way;
      let value = -cost;
      for (let j = 0; j < made.length; j++) {
        const count = made[j] as number;
        if (count !== 0) value += Math.min(count, open[j] as number) * (buy[j] as number);
      }
      this.looked += made.length;
      values[p] = value;
      if (value > most) most = value;
    }
    level.most[w] = most;
  }
}
