/**
 * Writes the frozen stock instances. They were drawn once, before any tuning; run again only to see the same bytes:
 * `npx tsx tests/bench/stock/generate.ts`.
 *
 * Lumber is invented to look like timber frames: sticks of 8 to 20 ft, kerf 1/8 in, unit 1/16 in, prices in cents.
 * Uniform and triplet bins follow the recipe of E. Falkenauer, "A hybrid grouping genetic algorithm for bin packing",
 * Journal of Heuristics 2 (1996), section 5; the numbers are our own draws.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import type { StockLength, StockPiece, StockProblem } from "../../../src/estimate/purchase/stock/problem.js";

export interface Instance {
  readonly name: string;
  readonly problem: StockProblem;
}

type Random = () => number;

const INCH = 16;
const FEET = [8, 10, 12, 14, 16, 18, 20];

function lumber(name: string, seed: number, pieces: readonly [number, number]): Instance {
  const random = mulberry32(seed);
  const total = between(random, ...pieces);
  const lengths = Math.min(total, between(random, 5, total < 100 ? 16 : 40));
  const stocks = lumberStocks(random, random() < 0.25);
  return {
    name,
    problem: { pieces: lumberPieces(random, lengths, total), stocks, kerf: 2, endTrim: pick(random, [0, 8, 16]) },
  };
}

/** Longer sticks cost more a foot, with a scatter that now and then makes one cheaper than the next shorter. */
function lumberStocks(random: Random, withOwned: boolean): StockLength[] {
  const perFoot = 45 + random() * 90;
  const sold = FEET.slice(between(random, 0, 2));
  const stocks = sold.map((feet): StockLength => {
    const price = perFoot * feet * (1 + 0.015 * (feet - 8)) * (0.92 + 0.16 * random());
    const available = random() < 0.08 ? between(random, 2, 12) : null;
    return {
      name: `${feet} ft`,
      length: feet * 12 * INCH,
      priceMinor: Math.round(price / 10) * 10 - pick(random, [1, 2, 3, 5]),
      available,
    };
  });
  // The longest can always be had, so that no job is impossible.
  stocks.push({ ...(stocks.pop() as StockLength), available: null });
  if (!withOwned) return stocks;
  const owned = between(random, 70, 200) * INCH;
  return [...stocks, { name: "at hand", length: owned, priceMinor: 0, available: between(random, 1, 5), owned: true }];
}

/** Half the lengths are long members to the half inch, half are braces and blocks to the eighth; counts pair and repeat. */
function lumberPieces(random: Random, lengths: number, total: number): StockPiece[] {
  const seen = new Set<number>();
  while (seen.size < lengths) {
    const long = random() < 0.5;
    seen.add(long ? between(random, 96, 380) * 8 : between(random, 80, 480) * 2);
  }
  const counts = [...seen].map(() => 1);
  for (let left = total - lengths; left > 0; ) {
    const at = Math.floor(random() ** 2 * lengths);
    const add = Math.min(left, pick(random, [1, 2, 2, 4]));
    counts[at] = (counts[at] as number) + add;
    left -= add;
  }
  return [...seen].map((length, i) => ({ name: `p${i}`, length, count: counts[i] as number }));
}

function uniform(name: string, seed: number, items: number): Instance {
  const random = mulberry32(seed);
  return {
    name,
    problem: bins(
      150,
      Array.from({ length: items }, () => between(random, 20, 100)),
    ),
  };
}

/** Threes that fill a bar of 1,000 exactly, shuffled by their lengths alone. */
function triplets(name: string, seed: number, items: number): Instance {
  const random = mulberry32(seed);
  const lengths: number[] = [];
  for (let i = 0; i < items / 3; i++) {
    const first = between(random, 380, 490);
    const second = between(random, 250, Math.floor((1_000 - first) / 2));
    lengths.push(first, second, 1_000 - first - second);
  }
  return { name, problem: bins(1_000, lengths) };
}

function bins(capacity: number, lengths: readonly number[]): StockProblem {
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  const pieces = [...counts]
    .sort((a, b) => b[0] - a[0])
    .map(([length, count]) => ({ name: `${length}`, length, count }));
  return { pieces, stocks: [{ name: "bar", length: capacity, priceMinor: 1, available: null }], kerf: 0, endTrim: 0 };
}

const between = (random: Random, low: number, high: number) => low + Math.floor(random() * (high - low + 1));
const pick = <T>(random: Random, list: readonly T[]) => list[Math.floor(random() * list.length)] as T;

/** Mulberry32, public domain (T. Ettinger). */
function mulberry32(seed: number): Random {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const many = <T>(count: number, make: (i: number) => T) => Array.from({ length: count }, (_, i) => make(i));
const families: Record<string, Instance[]> = {
  "lumber-60": many(40, (i) => lumber(`lumber-60/${i}`, 1_000 + i, [10, 60])),
  "lumber-300": many(40, (i) => lumber(`lumber-300/${i}`, 2_000 + i, [80, 300])),
  uniform: [120, 250, 500].flatMap((n) => many(5, (i) => uniform(`uniform-${n}/${i}`, 3_000 + n + i, n))),
  triplets: [60, 120, 249].flatMap((n) => many(5, (i) => triplets(`triplets-${n}/${i}`, 4_000 + n + i, n))),
};

const folder = new URL("frozen/", import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [family, instances] of Object.entries(families)) {
  const lines = instances.map((instance) => `  ${JSON.stringify(instance)}`);
  writeFileSync(new URL(`${family}.json`, folder), `[\n${lines.join(",\n")}\n]\n`);
}
