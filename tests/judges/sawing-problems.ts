/**
 * Random sawing questions from a seed: inch, metric and coarse grids, tiny to medium, every switch now and then.
 */
import type {
  HeartRule,
  SawGroup,
  SawingProblem,
  SawLog,
  SawRates,
  SawShop,
} from "../../src/estimate/salvage/sawing-problem.js";

/** Evenly spread numbers in [0, 1): mulberry32 by Tommy Ettinger, public domain. */
export function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let word = Math.imul(state ^ (state >>> 15), state | 1);
    word ^= word + Math.imul(word ^ (word >>> 7), word | 61);
    return ((word ^ (word >>> 14)) >>> 0) / 4294967296;
  };
}

/** How large, and whether the switches beside the plain family (heart rules, wane, species, throat) are used. */
export interface Kind {
  readonly size: "tiny" | "small" | "medium";
  readonly switches: boolean;
  /** Millimetres a step; chosen by the seed when absent. */
  readonly gridMm?: string;
}

const SIZES = {
  tiny: { logs: 2, groups: 3, count: 3, feet: 7, inches: 12 },
  small: { logs: 3, groups: 4, count: 6, feet: 10, inches: 18 },
  medium: { logs: 10, groups: 10, count: 25, feet: 16, inches: 26 },
};

/** Rough sections in inches. */
const SECTIONS = [
  [1, 3],
  [1, 4],
  [1, 6],
  [2, 4],
  [2, 6],
  [2, 2],
  [3, 5],
  [4, 4],
  [6, 6],
] as const;

class Dice {
  readonly #next: () => number;
  constructor(
    seed: number,
    readonly stepMm: number,
  ) {
    this.#next = mulberry32(seed);
  }
  real(from: number, to: number): number {
    return from + (to - from) * this.#next();
  }
  whole(from: number, to: number): number {
    return Math.floor(this.real(from, to + 1));
  }
  chance(share: number): boolean {
    return this.#next() < share;
  }
  pick<T>(list: readonly T[]): T {
    return list[this.whole(0, list.length - 1)] as T;
  }
  /** Inches as whole steps: pieces up, wood down. */
  up(inches: number): number {
    return Math.ceil((inches * 25.4) / this.stepMm - 1e-9);
  }
  down(inches: number): number {
    return Math.floor((inches * 25.4) / this.stepMm + 1e-9);
  }
  /** A rate as a person writes it: at most four decimals. */
  rate(from: number, to: number): number {
    return Math.round(this.real(from, to) * 1e4) / 1e4;
  }
}

/** The question of a seed; the same one on every machine. */
export function randomSawingProblem(seed: number, kind: Kind): SawingProblem {
  const gridMm = kind.gridMm ?? (["1.5875", "1", "12.7"] as const)[seed % 3] ?? "1";
  const dice = new Dice(seed, Number(gridMm));
  const size = SIZES[kind.size];
  const rates = randomRates(dice);
  return {
    gridMm,
    rates,
    shop: { ...randomShop(dice, kind.switches), ...(seed % 7 === 3 && thinnest(dice, seed)) },
    groups: Array.from({ length: dice.whole(1, size.groups) }, (_, index) =>
      randomGroup(dice, `g${index}`, size, kind.switches, rates.wage),
    ),
    logs: Array.from({ length: dice.whole(1, size.logs) }, (_, index) =>
      randomLog(dice, `L${index}`, size, kind.switches),
    ),
  };
}

function randomLog(dice: Dice, name: string, size: { feet: number; inches: number }, switches: boolean): SawLog {
  const feet = dice.real(size.feet / 2, size.feet);
  const small = dice.real(4, size.inches);
  const rotten = dice.chance(0.2);
  const rot = () => (rotten && dice.chance(0.7) ? dice.up(dice.real(0.1, small / 2)) : 0);
  return {
    name,
    species: switches ? dice.pick(["white pine", "black locust"]) : "white pine",
    length: dice.down(feet * 12),
    smallDiameter: dice.down(small),
    largeDiameter: dice.down(small + feet * (dice.chance(0.2) ? 0 : dice.real(0.05, 0.5))),
    sweep: dice.chance(0.5) ? dice.up(dice.real(0.2, 3)) : 0,
    rot: { smallEnd: rot(), largeEnd: rot() },
    bark: dice.up(dice.real(0, 0.8)),
    ...(dice.chance(0.3) && { ready: { cash: dice.rate(0, 1), hours: dice.rate(0, 0.05) } }),
  };
}

function randomGroup(
  dice: Dice,
  name: string,
  size: { feet: number; count: number },
  switches: boolean,
  wage: number,
): SawGroup {
  const [thickness, width] = dice.pick(SECTIONS);
  const feet = dice.real(1, size.feet * 0.6);
  const boardFeet = (thickness * width * feet) / 12;
  const perBoardFoot = dice.chance(0.05) ? -0.1 : dice.real(0.5, 7);
  const heart: HeartRule = dice.chance(0.7) ? "any" : thickness >= 3 ? "boxed" : "free";
  const hours = dice.rate(-0.05, 0.1);
  return {
    name,
    thickness: dice.up(thickness + (dice.chance(0.5) ? 0.1 : 0)),
    width: dice.up(width + (dice.chance(0.5) ? 0.15 : 0.1)),
    length: dice.up(feet * 12),
    count: dice.whole(1, size.count),
    species: switches && dice.chance(0.3) ? [dice.pick(["white pine", "black locust"])] : [],
    heart: switches ? heart : "any",
    wane: switches && dice.chance(0.3) ? dice.up(dice.real(0.1, 0.6)) : 0,
    buy: { cash: Math.round((boardFeet * perBoardFoot - wage * hours) * 100) / 100, hours },
  };
}

function randomShop(dice: Dice, switches: boolean): SawShop {
  const mill = dice.pick([0.05, 0.125, 0.25, 0.375]);
  return {
    millKerf: dice.up(mill),
    ripKerf: dice.up(0.125),
    crossKerf: dice.up(0.125),
    buckKerf: dice.up(0.375),
    deepestRip: dice.down(dice.pick([0, 1.5, 3.5])),
    longestBolt: dice.up(dice.real(4, 14) * 12),
    throat: switches && dice.chance(0.3) ? dice.up(dice.real(8, 24)) : 0,
    pith: dice.up(dice.pick([0, 0.1, 1, 2])), // also narrower than a kerf
  };
}

/** Between and above the sections: the seed's, so that the other draws stay what they were. */
const thinnest = (dice: Dice, seed: number) => ({ thinnestSlab: dice.up([0.8, 1.05, 2.2][(seed >> 2) % 3] as number) });

function randomRates(dice: Dice): SawRates {
  const some = (to: number) => (dice.chance(0.1) ? 0 : dice.rate(0, to));
  return {
    wage: dice.chance(0.1) ? 0 : dice.rate(5, 40),
    logHours: some(0.15),
    logCash: some(3),
    boltHours: some(0.1),
    millCutHours: some(0.02),
    millHoursPerFt2: some(0.02),
    millCashPerFt2: some(0.15),
    ripCutHours: some(0.01),
    ripHoursPerFt: some(0.003),
    ripCashPerFt: some(0.02),
    crosscutHours: some(0.01),
  };
}
