/**
 * The exact optimum of tiny sawing questions, found in another way than the planner finds its plans: one dynamic
 * program over vectors of pieces made (capped at what is wanted), along the strips of a slab, the faces of a stack, the
 * bolts of a log, and the logs. No prices of the pieces steer it; what is bought is settled last.
 *
 * Plans considered: bolts laid from the butt end, each as long as some pieces with crosscuts between; parallel slabs
 * as thick as some group's thickness or width; strips of a group's other dimension, side by side (on either side of the
 * rot); pieces of the strip's own section end to end; everything on whole grid steps. Heart rules and wane are not known.
 */
import type {
  LogPlan,
  SawGroup,
  SawingPlan,
  SawingProblem,
  SawLog,
} from "../../src/estimate/salvage/sawing-problem.js";
import { Stack } from "./sawing-oracle-bolt.js";
import { built, Demand, dearer, merge, nothing, some, TooLarge, type Way, type Ways } from "./sawing-vectors.js";
import { type BoltBox, writeLog } from "./sawing-writer.js";

/** The least cost at the wage, and a plan that has it. */
export interface ExactSawing {
  readonly cost: number;
  readonly plan: SawingPlan;
}

/** Most lengths of bolts before a question is called too large. */
const MOST_LENGTHS = 200;

/**
 * The optimum over all plans of the family above.
 *
 * @returns "too large" beyond some tens of thousands of vectors; "outside" with heart rules or wane.
 */
export function exactSawing(problem: SawingProblem): ExactSawing | "too large" | "outside" {
  if (problem.groups.some((group) => group.heart !== "any" || group.wane > 0)) return "outside";
  try {
    // What costs nothing to buy is bought; no bolt is as long as its pieces.
    const demand = new Demand(problem.groups.filter((group) => price(problem, group) > 0));
    const longest = Math.min(problem.shop.longestBolt, Math.max(0, ...problem.logs.map((log) => log.length)));
    const lengths = boltLengths(demand.groups, problem.shop.crossKerf, longest);
    let made: Ways<LogPlan> = nothing();
    for (const log of problem.logs) made = demand.join(made, new Bucking(problem, demand, log, lengths).ways());
    return settle(problem, demand, made);
  } catch (thrown) {
    if (thrown instanceof TooLarge) return "too large";
    throw thrown;
  }
}

function price({ rates }: SawingProblem, { buy }: SawGroup): number {
  return buy.cash + rates.wage * buy.hours;
}

function settle(problem: SawingProblem, demand: Demand, made: Ways<LogPlan>): ExactSawing {
  const plans = [...made].map(([vector, { cost, parts }]) => {
    const digits = demand.digits(vector);
    const short = new Map(demand.groups.map((group, index) => [group, group.count - (digits[index] ?? 0)]));
    const buy = problem.groups.map((group) => [group, short.get(group) ?? group.count] as const);
    const bought = buy.reduce((sum, [group, count]) => sum + count * price(problem, group), 0);
    return { cost: cost + bought, parts, buy };
  });
  const { cost, parts, buy } = plans.reduce((best, plan) => (plan.cost < best.cost ? plan : best));
  const listed = buy.filter(([, count]) => count > 0).map(([group, count]) => [group.name, count] as const);
  return { cost, plan: { gridMm: problem.gridMm, logs: parts(), buy: Object.fromEntries(listed) } };
}

/** All lengths of some pieces end to end with crosscuts between them. */
function boltLengths(groups: readonly SawGroup[], kerf: number, longest: number): number[] {
  const reached = new Set<number>();
  const open = [-kerf];
  for (let from = open.pop(); from !== undefined; from = open.pop()) {
    for (const { length } of groups) {
      const to = from + kerf + length;
      if (to > longest || reached.has(to)) continue;
      reached.add(to);
      open.push(to);
      if (reached.size > MOST_LENGTHS) throw new TooLarge();
    }
  }
  return [...reached].sort((a, b) => a - b);
}

/** One log: bolts from the butt end. */
class Bucking {
  constructor(
    readonly problem: SawingProblem,
    readonly demand: Demand,
    readonly log: SawLog,
    readonly lengths: readonly number[],
  ) {}

  ways(): Ways<LogPlan> {
    const { problem, log } = this;
    const { rates } = problem;
    const sawn = dearer(
      some(this.#bolts()),
      rates.logCash + (log.ready?.cash ?? 0) + rates.wage * (rates.logHours + (log.ready?.hours ?? 0)),
    );
    const ways = nothing<LogPlan>();
    merge(
      ways,
      built(sawn, (bolts) => [writeLog(problem, log.name, bolts)]),
    );
    return ways;
  }

  #bolts(): Ways<BoltBox> {
    const { buckKerf } = this.problem.shop;
    const ends = new Map<number, Map<number, Way<BoltBox>>>([[this.log.length, nothing()]]);
    const all = nothing<BoltBox>();
    // From the butt down: every end is reached from a larger one.
    for (let end = this.log.length; end > 0; end -= 1) {
      const made = ends.get(end);
      if (made === undefined) continue;
      for (const length of this.lengths) {
        const start = end - length;
        if (start < 0) break;
        const after = new Map(made); // the bolt may be thrown away
        merge(after, this.demand.join(made, this.#bolt(start, end)));
        const next = ends.get(start - buckKerf) ?? new Map<number, Way<BoltBox>>();
        merge(next, after);
        ends.set(start - buckKerf, next);
        merge(all, after);
      }
    }
    return all;
  }

  #bolt(start: number, end: number): Ways<BoltBox> {
    const { log, problem } = this;
    const diameter = (z: number) => log.smallDiameter * log.length + (log.largeDiameter - log.smallDiameter) * z;
    const { throat } = problem.shop;
    const thickest = Math.max(diameter(start), diameter(end)) + 2 * log.bark * log.length;
    if (throat > 0 && thickest > throat * log.length) return new Map();
    return new Stack(problem, this.demand, log, start, end).ways();
  }
}
