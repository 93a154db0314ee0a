/**
 * Where a log can be bucked: places from the butt end, and the bolts that may lie between two of them.
 */
import { layBolt, passesMill } from "../bolt.js";
import type { SawingProblem, SawLog } from "../sawing-problem.js";
import { type BoltShape, type BoltTable, boltTable } from "./bolt-table.js";
import { type Job, logPrice, makeJob, rulesFor } from "./job.js";
import type { SpeciesRules } from "./species-rules.js";

/** A bolt that may be bucked where the wood ends at some place. */
export class Arc {
  #table: BoltTable | undefined;

  /**
   * @param to - The place after it; -1 when no wood is left.
   * @param same - The same bolt elsewhere in a path: its table is this one's.
   */
  constructor(
    readonly job: Job,
    readonly rules: SpeciesRules,
    readonly from: number,
    readonly to: number,
    readonly z0: number,
    readonly length: number,
    readonly shape: BoltShape,
    readonly same?: Arc,
  ) {}

  /** Its table, made when first asked for. */
  get table(): BoltTable {
    this.#table ??= this.same?.table ?? boltTable(this.job, this.rules, this.shape, this.length);
    return this.#table;
  }

  /** The same bolt as if there were no other in the log. */
  alone(): Arc {
    return new Arc(this.job, this.rules, 0, -1, this.z0, this.length, this.shape, this);
  }
}

/** A length thrown away. */
export interface Skip {
  readonly from: number;
  readonly to: number;
}

/** A log with every place that bucking from the butt can reach. */
export interface LogTable {
  readonly log: SawLog;
  /** Money for getting it ready. */
  readonly price: number;
  /** Numbers of the logs that differ from it in their names only, itself among them. */
  readonly alike: readonly number[];
  readonly places: number;
  /** By place, from the butt. */
  readonly arcs: readonly Arc[];
  readonly skips: readonly Skip[];
}

/** Most bolts of all logs together. Assumption, measured: with more, a look at all of them costs more than it gains. */
const MOST_ARCS = 10_000;
/** Most bolts of a log where there is so much work for each of many. Assumption, measured on the frozen problems. */
const ARCS_A_LOG = 800;
const WORK_A_LOG = 400;
/** Most lengths of bolts, tried in turn until the logs have not too many bolts. */
const MOST_LENGTHS = [400, 200, 100, 60, 40];

/**
 * Makes a problem ready, with as many lengths of bolts, and places where wood may end, as can be looked over.
 * @param work - Units that its search may take.
 */
export function sizedJob(problem: SawingProblem, work = 0): Job {
  const logs = problem.logs.length;
  const mostArcs = Math.max(MOST_ARCS, work >= WORK_A_LOG * logs ? ARCS_A_LOG * logs : 0);
  let job = makeJob(problem, MOST_LENGTHS[0]);
  for (const most of MOST_LENGTHS.slice(1)) {
    if (countArcs(job) <= mostArcs) return job;
    job = makeJob(problem, most);
  }
  const mostPlaces = Math.max(4, Math.floor(mostArcs / (problem.logs.length * job.lengths.length)));
  return countArcs(job) <= mostArcs ? job : { ...job, mostPlaces };
}

function countArcs(job: Job): number {
  const known = new Map<number, number>();
  return job.problem.logs.reduce((sum, log) => {
    const whole = Math.floor(log.length);
    const ends = () => reachable(job, whole).map((end) => job.lengths.findLastIndex((length) => length <= end) + 1);
    const count = known.get(whole) ?? ends().reduce((all, arcs) => all + arcs, 0);
    known.set(whole, count);
    return sum + count;
  }, 0);
}

/** Logs that differ in their names only share one table. */
export function logTables(job: Job): LogTable[] {
  const alike = new Map<string, number[]>();
  job.problem.logs.forEach((log, i) => {
    const key = JSON.stringify({ ...log, name: "" });
    alike.set(key, [...(alike.get(key) ?? []), i]);
  });
  return [...alike.values()].map((logs) => logTable(job, job.problem.logs[logs[0] as number] as SawLog, logs));
}

function logTable(job: Job, log: SawLog, alike: readonly number[]): LogTable {
  const { shop } = job.problem;
  const rules = rulesFor(job, log);
  const ends = reachable(job, Math.floor(log.length));
  const numbers = new Map(ends.map((end, i) => [end, i]));
  const arcs: Arc[] = [];
  const skips: Skip[] = [];
  for (const [from, end] of ends.entries()) {
    for (const [i, length] of job.lengths.entries()) {
      if (length > end) break;
      const to = numbers.get(end - length - shop.buckKerf) ?? -1;
      const bolt = layBolt(log, shop, end - length, end);
      if (passesMill(bolt, shop)) arcs.push(new Arc(job, rules, from, to, end - length, i, bolt));
      if (to >= 0) skips.push({ from, to });
    }
  }
  return {
    log,
    price: logPrice(job, log),
    alike,
    places: ends.length,
    arcs: arcs.filter((arc) => holdsAnything(job, arc)),
    skips,
  };
}

/** Whether a bolt is thick enough for the least section. */
function holdsAnything(job: Job, { shape }: Arc): boolean {
  return job.sections.some(
    ({ thickness, width }) => 4 * shape.radius ** 2 >= (thickness - 1) ** 2 + (width - 1) ** 2 / 4,
  );
}

/** Ends of the wood that is left after some lengths, descending; only where the shortest length still fits. */
function reachable(job: Job, whole: number): number[] {
  const shortest = job.lengths[0] ?? Number.POSITIVE_INFINITY;
  const ends = new Set<number>(whole >= shortest ? [whole] : []);
  for (const end of ends) {
    for (const length of job.lengths) {
      if (ends.size >= job.mostPlaces) break;
      const next = end - length - job.problem.shop.buckKerf;
      if (next < shortest) break;
      ends.add(next);
    }
  }
  return [...ends].sort((a, b) => b - a);
}
