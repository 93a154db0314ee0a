/** What one search leaves to the next about the same logs: its plan, and what it found the pieces worth. */
import type { BoltPattern } from "../sawing-pattern.js";
import type { SawGroup } from "../sawing-problem.js";
import type { Job } from "./job.js";
import { logPattern, trimmed } from "./pattern-cost.js";
import { WholePlan } from "./whole-plan.js";

/** Holds no price: the next search may have other prices, and want other groups of the same pieces. */
export interface Learnt {
  /** Logs, saws and grid, as text: what was learnt holds for no others. */
  readonly yard: string;
  /** By name of the log; none of a log that is left lying. */
  readonly bolts: ReadonlyMap<string, readonly BoltPattern[]>;
  /** By name of the group: what the relaxation says that a piece is worth. */
  readonly worths: ReadonlyMap<string, number>;
  /** What that search had learnt itself from others before it. */
  readonly before?: Learnt | undefined;
}

const yardOf = ({ problem: { gridMm, shop, logs } }: Job): string =>
  JSON.stringify([gridMm, shop, logs.map(({ ready: _, ...wood }) => wood)]);

/** @param worths - By group of the job. */
export function learntFrom({ job, patterns }: WholePlan, worths: ArrayLike<number>, before?: Learnt): Learnt {
  const names = job.problem.logs.map(({ name }) => name);
  const sawn = patterns.flatMap(({ bolts }, i) => (bolts.length > 0 ? [[names[i] as string, bolts] as const] : []));
  const worth = job.groups.map(({ name }, j) => [name, worths[j] as number] as const);
  return { yard: yardOf(job), bolts: new Map(sawn), worths: new Map(worth), before };
}

/** The plan that was learnt, as far as this job wants its pieces; empty where logs or saws are others. */
export function learntPlan(job: Job, { yard, bolts }: Learnt): WholePlan {
  const plan = new WholePlan(job);
  if (yard !== yardOf(job)) return plan;
  const groups = new Map(job.groups.map((group) => [group.name, group]));
  for (const [i, log] of job.problem.logs.entries()) {
    const drawn = (bolts.get(log.name) ?? []).map((bolt) => wantedOf(bolt, groups));
    if (drawn.length > 0) plan.set(i, trimmed(job, log, logPattern(job, log, drawn), plan.open()));
  }
  return plan;
}

/** All plans that were learnt, one after another, the latest first. */
export const learntPlans = (job: Job, learnt: Learnt | undefined): WholePlan[] =>
  learnt ? [learntPlan(job, learnt), ...learntPlans(job, learnt.before)] : [];

/** The worths that were learnt, by group of the job: none above what buying costs, which it is where nothing was learnt. */
export function learntWorths({ groups, buy }: Job, { worths }: Learnt): number[] {
  return groups.map(({ name }, j) => Math.min(buy[j] as number, worths.get(name) ?? Number.POSITIVE_INFINITY));
}

/** A bolt with this job's pieces alone, where they are what they were. */
function wantedOf(bolt: BoltPattern, groups: ReadonlyMap<string, SawGroup>): BoltPattern {
  const own = (piece: SawGroup): SawGroup[] => {
    const group = groups.get(piece.name);
    return group && sameWood(group, piece) ? [group] : [];
  };
  const slabs = bolt.slabs.map((slab) => ({
    ...slab,
    strips: slab.strips
      .map((strip) => ({ ...strip, pieces: strip.pieces.flatMap(own) }))
      .filter(({ pieces }) => pieces.length > 0),
  }));
  return { ...bolt, slabs };
}

/** All but how many are wanted, and what buying costs. */
function sameWood(a: SawGroup, b: SawGroup): boolean {
  const wood = ({ count: _, buy: __, ...rest }: SawGroup): string => JSON.stringify(rest);
  return wood(a) === wood(b);
}
