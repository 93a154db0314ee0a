/**
 * The sawing plan of least cost that a bounded search finds, and a proven bound under what any plan of the same
 * family costs.
 *
 * Bounded by counted work, so that the same question gives the same plan on every machine. Starts from the careful
 * sawyer's plan and is never worse.
 */

import { type CarefulPlan, carefulPlan } from "./careful-sawyer.js";
import { planCost } from "./cut-measures.js";
import { type LogTable, sizedJob } from "./optimiser/bucking.js";
import { planOneFirst } from "./optimiser/by-worth.js";
import { relax, Yard } from "./optimiser/column-generation.js";
import { CountedWork, type WorkOptions } from "./optimiser/counted-work.js";
import { dive, diveEnds } from "./optimiser/dive.js";
import { everyYield } from "./optimiser/every-yield.js";
import type { Job } from "./optimiser/job.js";
import { type Learnt, learntFrom, learntPlans, learntWorths } from "./optimiser/learnt.js";
import { LogPlanner } from "./optimiser/log-planner.js";
import { STACKS_A_UNIT } from "./optimiser/log-pricing.js";
import { type LogPattern, logPattern, trimmed } from "./optimiser/pattern-cost.js";
import { Remembered } from "./optimiser/remembered.js";
import { ruinAndRecreate } from "./optimiser/ruin-recreate.js";
import { seededChance } from "./optimiser/seeded-chance.js";
import { WholePlan } from "./optimiser/whole-plan.js";
import { layLogPlan } from "./sawing-pattern.js";
import type { SawingPlan, SawingProblem } from "./sawing-problem.js";

/** What bounds, stops, watches and steers the search. */
export interface SawingOptions extends WorkOptions {
  /** Steers the random choices. */
  readonly seed: number;
  /** From a search on the same logs, for other groups or at other prices. */
  readonly learnt?: Learnt | undefined;
}

/** The plan and what is known about it. */
export interface SawingOutcome {
  readonly plan: SawingPlan;
  /** Cash + wage × hours, in float. */
  readonly cost: number;
  /** No plan of the family that `boundCovers` tells costs less. */
  readonly bound: number;
  /** (cost − bound) ÷ cost; 0 when the cost is 0 or less. */
  readonly gap: number;
  readonly boundCovers: string;
  readonly workUsed: number;
  /** For a next search on the same logs. */
  readonly learnt: Learnt;
  /** False when `shouldStop` ended the search. */
  readonly complete: boolean;
}

/** Looks at all logs that a relaxation takes at the least to come near its end. Assumption, measured on the demos. */
const LEAST_LOOKS = 5;
/** Most rounds of full pricing, and the gap at which the relaxation is called solved. */
const ROUNDS = 60;
const RELAXATION_GAP = 0.001;
/** Most of the work that the relaxation, then the dive, then plans that begin with one log, then the listing of every yield may take. */
const RELAXATION_SHARE = 0.4;
const DIVE_SHARE = 0.15;
/** Of so many logs the relaxation has more to find out, and what follows it less. Assumption, measured on the frozen problems. */
const VERY_MANY = 100;
const VERY_MANY_SHARE = 0.6;
/** Dives plan so many logs better than any other way, and get more of the work. Assumption, measured on the frozen problems. */
const MANY = 30;
const DIVES_SHARE = 0.4;
const ONE_FIRST_SHARE = 0.2;
const LISTING_SHARE = 0.05;
/** The same where so few yields can be told apart that the listing nearly always ends; with more, too little is left where it does not. */
const SMALL_LISTING_SHARE = 0.25;
const SMALL = 30_000;

/** Plans all logs of a problem. */
export function planSawing(problem: SawingProblem, options: SawingOptions): SawingOutcome {
  return planBy(search, problem, options);
}

/**
 * The same in little work, and without a bound: the better of the careful sawyer's plan and of what was learnt, improved.
 * With so little work a relaxation does not come to its end, and what it says of the pieces leads astray.
 */
export function improveSawing(problem: SawingProblem, options: SawingOptions): SawingOutcome {
  return planBy(improve, problem, options);
}

type Search = (job: Job, rule: CarefulPlan, work: CountedWork, options: SawingOptions) => Found;

function planBy(search: Search, problem: SawingProblem, options: SawingOptions): SawingOutcome {
  const work = new CountedWork(options);
  const rule = carefulPlan(problem);
  const job = sizedJob(problem, options.work);
  const nothing = job.groups.length === 0 || job.lengths.length === 0;
  const found = nothing ? nothingToSaw(job) : search(job, rule, work, options);
  const plans = [rule.plan, writePlan(found.plan)].map((plan) => ({ plan, cost: planCost(problem, plan).total }));
  const { plan, cost } = plans.reduce((best, other) => (other.cost <= best.cost ? other : best));
  const always = alwaysBought(problem, job);
  const bound = Math.min(cost, Math.max(0, found.bound) + always);
  const gap = cost > 0 ? (cost - bound) / cost : 0;
  const learnt = learntFrom(found.plan, found.worths, options.learnt);
  return { plan, cost, bound, gap, boundCovers: covers(job), workUsed: work.used, learnt, complete: !work.stopped };
}

interface Found {
  readonly plan: WholePlan;
  /** What pieces are worth, by group. */
  readonly worths: ArrayLike<number>;
  readonly bound: number;
}

function nothingToSaw(job: Job): Found {
  const plan = new WholePlan(job);
  return { plan, worths: job.buy, bound: plan.cost };
}

function search(job: Job, rule: CarefulPlan, work: CountedWork, options: SawingOptions): Found {
  const yard = new Yard(job);
  const { seed, learnt } = options;
  if (learnt && (LEAST_LOOKS * yard.look) / STACKS_A_UNIT > RELAXATION_SHARE * work.options.work)
    return improve(job, rule, work, options);
  work.enter("relaxation");
  const met: [LogTable, LogPattern][] = [];
  let remembered: Remembered | null = null;
  const planner = new LogPlanner(job, yard.shared, work, (table, pattern) => {
    if (remembered === null) met.push([table, pattern]);
    else remembered.add(table, pattern);
  });
  const start = fromRule(job, rule);
  const count = job.problem.logs.length;
  for (const [logClass, log] of yard.logs.entries())
    for (const i of log.alike) yard.add(logClass, start.patterns[i] ?? logPattern(job, log.log, []));
  const ask = {
    demand: job.count,
    logs: yard.logs.map((log) => log.alike.length),
    gap: RELAXATION_GAP,
    rounds: ROUNDS,
    quick: 0,
    haste: count < MANY,
  };
  const { master, bound, prices } = relax(
    yard,
    ask,
    work.part(count >= VERY_MANY ? VERY_MANY_SHARE : RELAXATION_SHARE),
  );
  work.enter("whole logs");
  const worths = { piece: prices, log: master.log };
  const ends = diveEnds(count);
  const share = (count >= MANY ? DIVES_SHARE : DIVE_SHARE) / ends.length;
  const made = ends.map((end) => dive({ yard, planner, budget: work.part(share) }, master.x, end));
  const few = job.count.reduce((product, count) => product * (count + 1), 1) <= SMALL;
  if (few) made.push(planOneFirst({ yard, planner, worths }, work.part(ONE_FIRST_SHARE)));
  made.push(...learntPlans(job, learnt));
  const first = [start, ...made].reduce<WholePlan>(cheapest, new WholePlan(job));
  const listing = work.part(few ? SMALL_LISTING_SHARE : LISTING_SHARE);
  const listed = everyYield({ yard, prices, most: first.cost, budget: listing });
  const proven = Math.max(bound, listed.bound);
  work.enter("improvement");
  const from = work.used;
  const used = () => (work.used - from) / Math.max(1, work.options.work - from);
  remembered = new Remembered(yard, prices);
  for (const [table, pattern] of met) remembered.add(table, pattern);
  for (const plan of [start, ...made]) remembered.addAll(plan);
  const improved = ruinAndRecreate(cheapest(first, listed.plan), {
    yard,
    planner,
    remembered,
    budget: work,
    room: work.options.work - from,
    used,
    chance: seededChance(seed),
    worths,
    bound: proven,
  });
  return { plan: improved, worths: prices, bound: proven };
}

/** Share of what buying costs that pieces count as worth where nothing was learnt. Assumption, measured on the demos. */
const GUESSED_WORTH = 0.5;

function improve(job: Job, rule: CarefulPlan, work: CountedWork, { seed, learnt }: SawingOptions): Found {
  work.enter("improvement");
  const yard = new Yard(job);
  const start = learntPlans(job, learnt).reduce<WholePlan>(cheapest, fromRule(job, rule));
  const piece = learnt ? learntWorths(job, learnt) : job.buy.map((price) => price * GUESSED_WORTH);
  const remembered = new Remembered(yard, piece);
  remembered.addAll(start);
  const plan = ruinAndRecreate(start, {
    yard,
    planner: new LogPlanner(job, yard.shared, work, (table, pattern) => remembered.add(table, pattern)),
    remembered,
    budget: work,
    room: work.options.work,
    used: () => work.used / Math.max(1, work.options.work),
    chance: seededChance(seed),
    worths: { piece, log: yard.logs.map(woodOf) },
    bound: 0,
  });
  return { plan, worths: piece, bound: 0 };
}

/** Thick long logs first, where no relaxation says which is worth more. */
const woodOf = ({ log }: LogTable): number => log.length * Math.min(log.smallDiameter, log.largeDiameter) ** 2;

/** The cheaper plan; the first where they cost the same. */
function cheapest(one: WholePlan, other: WholePlan | null): WholePlan {
  return other !== null && other.cost < one.cost ? other : one;
}

/** The careful sawyer's plan for the groups worth sawing. @param rule - For all that are wanted. */
function fromRule(job: Job, rule: CarefulPlan): WholePlan {
  const plan = new WholePlan(job);
  const wanted = job.problem.groups.filter(({ count }) => count > 0);
  const all = wanted.length === job.groups.length;
  const { bolts } = all ? rule : carefulPlan({ ...job.problem, groups: job.groups });
  for (const [i, log] of job.problem.logs.entries()) {
    const drawn = bolts.get(log.name);
    if (drawn !== undefined) plan.set(i, trimmed(job, log, logPattern(job, log, drawn), plan.open()));
  }
  return plan;
}

function writePlan(plan: WholePlan): SawingPlan {
  const { job } = plan;
  const { problem } = job;
  const logs = plan.patterns.flatMap(({ bolts }, i) => {
    const log = problem.logs[i];
    return log === undefined || bolts.length === 0 ? [] : [layLogPlan(log, problem.shop, bolts)];
  });
  const sawn = new Map<string, number>();
  for (const { group } of logs.flatMap(({ pieces }) => pieces)) sawn.set(group, (sawn.get(group) ?? 0) + 1);
  const buy = problem.groups
    .map(({ name, count }) => [name, Math.max(0, count - (sawn.get(name) ?? 0))] as const)
    .filter(([, count]) => count > 0)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return { gridMm: problem.gridMm, logs, buy: Object.fromEntries(buy) };
}

/** What the groups cost that are bought whatever the plan: no more than nothing. */
function alwaysBought(problem: SawingProblem, job: Job): number {
  const names = new Set(job.groups.map(({ name }) => name));
  return problem.groups
    .filter(({ name }) => !names.has(name))
    .reduce((sum, { count, buy }) => sum + count * (buy.cash + problem.rates.wage * buy.hours), 0);
}

function covers(job: Job): string {
  const lengths = job.allLengths
    ? "all sums of piece lengths that log and mill take"
    : `${job.lengths.length} sums of few piece lengths`;
  const places = job.mostPlaces < Number.POSITIVE_INFINITY ? ` at the first ${job.mostPlaces} places of a log` : "";
  return (
    `Plans of family R1: bolts laid from the butt end, each as long as one of ${lengths}${places}; parallel slabs as thick as ` +
    "a wanted thickness or width, of one wane each; strips of the other dimension, beside rot or pith or around a " +
    "boxed heart; pieces of the strip's own section."
  );
}
