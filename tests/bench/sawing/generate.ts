/**
 * Invented sawing problems from a seed: logs as a storm leaves them, cut lists of a timber shelter, a chain mill.
 * Sizes, prices and rates are plausible and belong to nobody. Used for the frozen set and for random tests.
 */
import type {
  HeartRule,
  SawGroup,
  SawingProblem,
  SawLog,
  SawRates,
  SawShop,
} from "../../../src/estimate/salvage/sawing-problem.js";

/** Small seeded generator of numbers in [0, 1) (mulberry32, public domain, by T. Ettinger). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** What to generate. */
export interface Kind {
  readonly logs: number;
  readonly groups: number;
  readonly pieces: number;
  /** Volume of pieces over half the volume of logs: about 1 is as much as can be sawn; 0.35 leaves much wood. */
  readonly demand: number;
  /** Heart rules, wane, throat, bark and species as well. */
  readonly switches: boolean;
  /** Thinnest small end in inches. */
  readonly thinnest?: number;
  readonly thickest?: number;
}

const INCH = 16;
const FOOT = 12 * INCH;

/** Rough sections in inches: boards, dimension stuff, timbers. */
const SECTIONS = [
  [1, 3],
  [1, 4],
  [1, 6],
  [1, 8],
  [2, 3],
  [2, 4],
  [2, 6],
  [2, 8],
  [2, 10],
  [3, 6],
  [4, 4],
  [4, 6],
  [6, 6],
  [6, 8],
  [8, 8],
] as const;

type Chance = () => number;
const between = (chance: Chance, low: number, high: number) => low + (high - low) * chance();
const whole = (chance: Chance, low: number, high: number) => Math.floor(between(chance, low, high + 1));

function makeLog(chance: Chance, kind: Kind, index: number): SawLog {
  const length = Math.round(between(chance, 8, 20) * 2) * (FOOT / 2);
  const small = Math.round(between(chance, kind.thinnest ?? 7, kind.thickest ?? 26) * INCH);
  const taper = between(chance, 0.06, 0.25);
  const crooked = chance() < 0.5;
  const rotten = chance() < 0.15;
  const large = Math.min(34 * INCH, small + Math.round((taper * INCH * length) / FOOT));
  return {
    name: `log-${String(index + 1).padStart(3, "0")}`,
    species: kind.switches && chance() < 0.3 ? "oak" : "pine",
    length,
    smallDiameter: small,
    largeDiameter: Math.max(small, large),
    sweep: crooked ? Math.round(between(chance, 0.5, 4) * INCH) : 0,
    rot: rotten
      ? { smallEnd: chance() < 0.5 ? 0 : INCH, largeEnd: whole(chance, 2, 5) * INCH }
      : { smallEnd: 0, largeEnd: 0 },
    bark: kind.switches ? whole(chance, 4, 16) : 0,
  };
}

function heartRule(chance: Chance, thickness: number): HeartRule {
  if (thickness >= 6 && chance() < 0.6) return "boxed";
  return thickness <= 2 && chance() < 0.3 ? "free" : "any";
}

function makeGroup(chance: Chance, kind: Kind, index: number, count: number): SawGroup {
  const [thickness, width] = SECTIONS[Math.floor(chance() * SECTIONS.length)] as readonly [number, number];
  const feet = whole(chance, 4, 16) / (chance() < 0.3 ? 2 : 1);
  const boardFeet = (thickness * width * feet) / 12;
  // Dearer by the board foot when the section is heavy or the piece long, as in a lumber yard.
  const price = between(chance, 0.7, 1.6) * (1 + 0.06 * thickness) * (feet > 12 ? 1.2 : 1);
  const pine = kind.switches && chance() < 0.4;
  return {
    name: `${String.fromCharCode(97 + index)}-${thickness}x${width}x${feet}`,
    thickness: thickness * INCH + 1,
    width: width * INCH + (width > 4 ? 2 : 1),
    length: Math.round(feet * FOOT),
    count,
    species: pine ? ["pine"] : [],
    heart: kind.switches ? heartRule(chance, thickness) : "any",
    wane: kind.switches && chance() < 0.4 ? whole(chance, 2, 12) : 0,
    buy: { cash: round(price * boardFeet, 100), hours: round(between(chance, -0.04, 0.03), 1000) },
  };
}

const round = (value: number, parts: number) => Math.round(value * parts) / parts;

/** Pieces shared out over the groups: small sections get more. */
function makeGroups(chance: Chance, kind: Kind): SawGroup[] {
  const groups = Array.from({ length: kind.groups }, (_, i) => makeGroup(chance, kind, i, 1));
  const share = groups.map((g) => between(chance, 0.3, 1.7) / Math.sqrt(g.thickness * g.width));
  const total = share.reduce((a, b) => a + b, 0);
  return groups.map((g, i) => ({ ...g, count: Math.max(1, Math.round((kind.pieces * (share[i] as number)) / total)) }));
}

function chainMill(chance: Chance, kind: Kind): SawShop {
  return {
    millKerf: chance() < 0.7 ? 5 : 4,
    ripKerf: 2,
    crossKerf: 4,
    buckKerf: 6,
    deepestRip: 3 * INCH + 2,
    longestBolt: chance() < 0.5 ? 20 * FOOT : 16 * FOOT,
    throat: kind.switches && chance() < 0.4 ? whole(chance, 24, 34) * INCH : 0,
    pith: 2 * INCH,
  };
}

function makeRates(chance: Chance): SawRates {
  return {
    wage: whole(chance, 10, 25),
    logHours: round(between(chance, 0.2, 0.6), 100),
    logCash: round(between(chance, 0, 3), 100),
    boltHours: round(between(chance, 0.2, 0.5), 100),
    millCutHours: round(between(chance, 0.02, 0.05), 1000),
    millHoursPerFt2: round(between(chance, 0.006, 0.015), 10000),
    millCashPerFt2: round(between(chance, 0.03, 0.08), 1000),
    ripCutHours: round(between(chance, 0.008, 0.02), 1000),
    ripHoursPerFt: round(between(chance, 0.001, 0.003), 10000),
    ripCashPerFt: 0.004,
    crosscutHours: round(between(chance, 0.01, 0.02), 1000),
  };
}

const volumeOf = (log: SawLog) => (Math.PI / 4) * ((log.smallDiameter + log.largeDiameter) / 2) ** 2 * log.length;

/** The problem of a seed; drawn again until the pieces' volume is near what the kind asks: within a tenth, then wider. */
export function generate(seed: number, kind: Kind): SawingProblem {
  const chance = seeded(seed);
  for (let within = 0.1; ; within += 0.01) {
    const logs = Array.from({ length: kind.logs }, (_, i) => makeLog(chance, kind, i));
    const groups = makeGroups(chance, kind);
    const wood = logs.reduce((sum, log) => sum + volumeOf(log), 0) / 2;
    const wanted = groups.reduce((sum, g) => sum + g.count * g.thickness * g.width * g.length, 0);
    if (Math.abs(wanted / wood / kind.demand - 1) > within) continue;
    return { gridMm: "1.5875", logs, groups, shop: chainMill(chance, kind), rates: makeRates(chance) };
  }
}
