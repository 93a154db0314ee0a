/**
 * Tries every plan for one small log on a coarse grid: each is written down as cuts, judged and priced. Slow, and so
 * plain that it can check the oracle, the judge and the price against one another.
 */
import { judgeSawingPlan } from "../../src/estimate/salvage/sawing-judge.js";
import type { SawGroup, SawingPlan, SawingProblem, SawLog } from "../../src/estimate/salvage/sawing-problem.js";
import { priceSawingPlan } from "./sawing-price.js";
import { type BoltBox, type SlabBox, type StripBox, writeLog } from "./sawing-writer.js";

/** The cheapest plan found, and how many were tried. */
export interface Tried {
  readonly cost: number;
  readonly plan: SawingPlan;
  readonly plans: number;
}

/**
 * Every plan with one log: any bolts from the butt end, any slabs at any height, strips from the left of each stretch of wood.
 *
 * @param problem - One log, no heart rules, no wane, no species.
 * @throws Error when the judge refuses one of the plans, or beyond `most` plans.
 */
export function tryEverything(problem: SawingProblem, most: number): Tried | "too many" {
  const log = problem.logs[0];
  if (log === undefined) throw new Error("one log is needed");
  let best: { cost: number; plan: SawingPlan } | undefined;
  let plans = 0;
  for (const bolts of allBuckings(problem, log, log.length)) {
    plans += 1;
    if (plans > most) return "too many";
    const plan = writePlan(problem, log, bolts);
    const wrong = judgeSawingPlan(problem, plan);
    if (wrong.length > 0) throw new Error(`${wrong.join(" ")} ${JSON.stringify({ problem, plan })}`);
    const cost = priceSawingPlan(problem, plan).cost.toNumber();
    if (best === undefined || cost < best.cost) best = { cost, plan };
  }
  if (best === undefined) throw new Error("not even the plan that buys everything");
  return { ...best, plans };
}

function writePlan(problem: SawingProblem, log: SawLog, bolts: readonly BoltBox[]): SawingPlan {
  const logs = bolts.length > 0 ? [writeLog(problem, log.name, bolts)] : [];
  const made = (group: string) => logs.flatMap((one) => one.pieces).filter((piece) => piece.group === group).length;
  const short = problem.groups.map(({ name, count }) => [name, Math.max(0, count - made(name))] as const);
  return { gridMm: problem.gridMm, logs, buy: Object.fromEntries(short.filter(([, count]) => count > 0)) };
}

/** Wood left from 0 to `end`. A bolt without slabs lies there unsawn. */
function* allBuckings(problem: SawingProblem, log: SawLog, end: number): Generator<BoltBox[]> {
  yield [];
  for (const length of sumsOfLengths(problem, end)) {
    const z0 = end - length;
    for (const after of allBuckings(problem, log, z0 - problem.shop.buckKerf)) {
      if (after.length > 0) yield after; // thrown away: the next one is bucked where this one would end
      for (const slabs of allStacks(problem, log, z0, end)) {
        if (slabs.length > 0) yield [{ z0, z1: end, slabs }, ...after];
      }
    }
  }
}

function sumsOfLengths({ groups, shop }: SawingProblem, most: number): number[] {
  const limit = Math.min(most, shop.longestBolt);
  const sums = new Set<number>();
  const extend = (from: number): void => {
    for (const { length } of groups) {
      const sum = from + length;
      if (sum > limit) continue;
      sums.add(sum);
      extend(sum + shop.crossKerf);
    }
  };
  extend(0);
  return [...sums];
}

/** Slabs from the lowest possible face up. */
function* allStacks(
  problem: SawingProblem,
  log: SawLog,
  z0: number,
  z1: number,
  from = Number.NEGATIVE_INFINITY,
): Generator<SlabBox[]> {
  yield [];
  const radius = Math.ceil(log.largeDiameter / 2);
  const { groups, shop } = problem;
  const thicknesses = new Set(groups.flatMap((group) => [group.thickness, group.width]));
  for (const y0 of range(-radius, radius)) {
    // Against the slab below, or a second kerf away from it with waste, or nothing, between the kerfs.
    if (y0 !== from && y0 < from + shop.millKerf + (shop.thinnestSlab ?? 0)) continue;
    for (const thickness of thicknesses) {
      if (thickness < (shop.thinnestSlab ?? 0)) continue;
      const y1 = y0 + thickness;
      for (const strips of allStrips(problem, log, { y0, y1, z0, z1 })) {
        for (const above of allStacks(problem, log, z0, z1, y1 + shop.millKerf)) yield [{ y0, y1, strips }, ...above];
      }
    }
  }
}

interface SlabPlace {
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
}

/** At least one strip: in sound wood from the left edge, or on both sides of the rot from the inside out. */
function* allStrips(problem: SawingProblem, log: SawLog, place: SlabPlace): Generator<StripBox[]> {
  const wood = soundWood(log, place);
  if (wood === undefined) return;
  const { inner, outer } = wood;
  if (inner === undefined) {
    for (const row of rowsOfStrips(problem, place, -outer, outer)) if (row.length > 0) yield row;
    return;
  }
  const kerf = ripKerf(problem, place);
  for (const left of range(inner, Math.max(inner, kerf - inner))) {
    const lefts = [...rowsOfStrips(problem, place, left, outer)].map(mirrored);
    // The two innermost strips are a kerf apart at least, be the hole as narrow as it may.
    const rights = [...rowsOfStrips(problem, place, Math.max(inner, kerf - left), outer)];
    for (const one of lefts) {
      for (const other of rights) if (one.length + other.length > 0) yield [...one, ...other];
    }
  }
}

function mirrored(row: readonly StripBox[]): StripBox[] {
  return row.map(({ x0, x1, pieces }) => ({ x0: -x1, x1: -x0, pieces })).reverse();
}

function ripKerf({ shop }: SawingProblem, { y0, y1 }: SlabPlace): number {
  return y1 - y0 <= shop.deepestRip ? shop.ripKerf : shop.millKerf;
}

/** Largest whole x where the whole thickness of the slab is wood, and, if the rot comes so near, least x that is sound. */
function soundWood(
  log: SawLog,
  { y0, y1, z0, z1 }: SlabPlace,
): { outer: number; inner: number | undefined } | undefined {
  const at = (from: number, to: number, z: number) => from + ((to - from) * z) / log.length;
  const sweep = log.sweep * ((z1 - z0) / log.length) ** 2;
  const radius = (at(log.smallDiameter, log.largeDiameter, z0) - sweep) / 2;
  const { smallEnd, largeEnd } = log.rot;
  const rotten = smallEnd > 0 || largeEnd > 0;
  const hole = (Math.max(at(smallEnd, largeEnd, z0), at(smallEnd, largeEnd, z1)) + sweep) / 2;
  const far = Math.max(Math.abs(y0), Math.abs(y1));
  const near = y0 > 0 ? y0 : y1 < 0 ? -y1 : 0;
  const wood = range(0, log.largeDiameter).filter((x) => Math.hypot(x, far) <= radius + 1e-9);
  if (wood.length === 0) return undefined;
  const outer = Math.max(...wood);
  if (!rotten || near >= hole - 1e-9) return { outer, inner: undefined };
  const sound = wood.filter((x) => Math.hypot(x, near) >= hole - 1e-9);
  return sound.length === 0 ? undefined : { outer, inner: Math.min(...sound) };
}

function* rowsOfStrips(problem: SawingProblem, place: SlabPlace, lo: number, hi: number): Generator<StripBox[]> {
  yield [];
  const { groups, shop } = problem;
  const thickness = place.y1 - place.y0;
  const kerf = ripKerf(problem, place);
  const widths = groups.flatMap((group) => [
    ...(group.thickness === thickness ? [group.width] : []),
    ...(group.width === thickness ? [group.thickness] : []),
  ]);
  for (const width of new Set(widths)) {
    if (lo + width > hi || (thickness > shop.deepestRip && width < (shop.thinnestSlab ?? 0))) continue;
    const section = groups.filter(
      (group) => group.thickness === Math.min(thickness, width) && group.width === Math.max(thickness, width),
    );
    for (const pieces of rowsOfPieces(section, shop.crossKerf, place.z0, place.z1)) {
      if (pieces.length === 0) continue;
      for (const rest of rowsOfStrips(problem, place, lo + width + kerf, hi)) {
        yield [{ x0: lo, x1: lo + width, pieces }, ...rest];
      }
    }
  }
}

function* rowsOfPieces(
  groups: readonly SawGroup[],
  kerf: number,
  from: number,
  to: number,
): Generator<{ group: string; z0: number; z1: number }[]> {
  yield [];
  for (const { name, length } of groups) {
    const z1 = from + length;
    if (z1 > to) continue;
    for (const rest of rowsOfPieces(groups, kerf, z1 + kerf, to)) yield [{ group: name, z0: from, z1 }, ...rest];
  }
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}
