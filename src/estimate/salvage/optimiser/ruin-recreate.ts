/**
 * Ruin and recreate (Shaw 1998; Ropke & Pisinger 2006): one to three logs are dropped from the plan and planned again
 * one after another for what is then wanted, all but the last at prices lowered at random; slightly worse plans are
 * taken now and then.
 */

import type { BoltPattern } from "../sawing-pattern.js";
import { inOrder, planLogs, type Worths } from "./by-worth.js";
import type { Yard } from "./column-generation.js";
import type { Budget } from "./counted-work.js";
import type { Effort } from "./effort.js";
import type { LogPlanner } from "./log-planner.js";
import { Looks } from "./looks.js";
import { type LogPattern, leftLying, logPattern } from "./pattern-cost.js";
import type { Remembered } from "./remembered.js";
import type { WholePlan } from "./whole-plan.js";

/** Highest factor of a lowered price; above 1 a group may be overrated for once. Small noise gets stuck. */
const HIGHEST_FACTOR = 1.3;
/** Share of the cost by which a plan may be worse and still be taken, at the start; falls to 0 with the budget. */
const WARMTH = 0.02;

/** Chance that a dropped log is left lying this time: where there is much wood, the question is which logs to leave. */
const LEFT_OUT = 0.2;

/** Chance that many logs are planned again at once; most of them; how much their prices vary; how late those rise. */
const REBUILT = 0.15;
const MOST_REBUILT = 12;
const SPREAD = 0.4;
const LATEST = 4;

/** Sets of logs that are tried in ways met before, after each trial. Assumption, measured. */
const RECOMBINED = 24;

/** What the search runs on. */
export interface Search {
  readonly yard: Yard;
  readonly planner: LogPlanner;
  readonly remembered: Remembered;
  readonly budget: Budget;
  /** Work that the budget holds. */
  readonly room: number;
  /** Share of the budget that is used up, 0 to 1. */
  readonly used: () => number;
  readonly chance: () => number;
  /** What pieces and logs are worth by the relaxation. */
  readonly worths: Worths;
  /** No plan costs less: reached, the search ends. */
  readonly bound: number;
}

/** Chance that single bolts are dropped rather than logs. */
const BOLTS = 0.5;

/** @returns the best plan found, never worse than the one given. */
export function ruinAndRecreate(start: WholePlan, search: Search): WholePlan {
  const { budget, chance } = search;
  let now = start.copy();
  let best = start.copy();
  const looks = new Looks(chance, search.room);
  while (!budget.out && best.cost > search.bound + 1e-6 * Math.max(1, Math.abs(search.bound))) {
    const { kind, effort } = looks.next();
    const before = budget.used;
    const most = now.cost + WARMTH * now.cost * (1 - search.used()) * chance() ** 3;
    let trial = now.copy();
    if (chance() < REBUILT) rebuild(trial, search, effort);
    else if (chance() < BOLTS) bolts(trial, search, effort, most);
    else logs(trial, search, effort, most);
    budget.spend(1);
    // Taken only where it is the best so far: else every trial would be led back to where it came from.
    const together = recombined(trial, search);
    if (together.cost < best.cost - 1e-9) trial = together;
    looks.spent(kind, budget.used - before);
    if (trial.cost < most) now = trial;
    if (trial.cost < best.cost - 1e-9) best = trial.copy();
    if (now.cost > best.cost * (1 + WARMTH)) now = best.copy();
  }
  return best;
}

/** A plan with two or three logs at a time in the best of the ways that were met so far. */
function recombined(trial: WholePlan, { yard, remembered, chance, budget }: Search): WholePlan {
  const count = yard.job.problem.logs.length;
  remembered.addAll(trial);
  const together = trial.copy();
  for (let i = 0; i < RECOMBINED && !budget.out; i++) {
    if (i % 2 === 0 && count > 1) remembered.improveLogs(together, draw(count, 2 + (i % 4) / 2, chance), budget);
    else {
      const all = boltsOf(together);
      remembered.improveBolts(
        together,
        draw(all.length, 2 + (i % 3), chance).map((b) => all[b] as PlacedBolt),
        budget,
      );
    }
  }
  return together;
}

/**
 * Prices lowered at random, each group's by its own factor: from the whole, or from the whole towards what the
 * relaxation says that a piece is worth.
 */
function lowered({ yard, worths, chance }: Search): number[] {
  const { buy } = yard.job;
  if (chance() < 0.5) return buy.map((price) => price * Math.min(HIGHEST_FACTOR, chance() * 1.6));
  return buy.map((price, j) => {
    const worth = worths.piece[j] as number;
    return worth + (price - worth) * (chance() * 1.4 - 0.4);
  });
}

/** Plans a third of the logs or more again, the one worth most first. */
function rebuild(trial: WholePlan, search: Search, effort: Effort): void {
  const { yard, chance } = search;
  const count = yard.job.problem.logs.length;
  const most = Math.min(count, MOST_REBUILT);
  const dropped = draw(count, Math.ceil(most * (0.3 + 0.7 * chance())), chance);
  // Worths a little off, each group's by its own factor, so that no two trials are alike.
  const piece = Array.from(search.worths.piece, (worth, j) =>
    Math.min(yard.job.buy[j] as number, worth * (1 + SPREAD * (chance() - 0.5))),
  );
  const ask = { ...search, worths: { ...search.worths, piece }, effort };
  planLogs(trial, inOrder(ask, dropped), LATEST * chance(), ask);
}

/** Drops some logs and plans them again. @param most - The plan is of no use unless it costs less. */
function logs(trial: WholePlan, search: Search, effort: Effort, most: number): void {
  const { yard, planner, chance } = search;
  const { job } = yard;
  const count = job.problem.logs.length;
  const dropped = draw(count, 1 + Math.floor(chance() * 3), chance);
  for (const log of dropped) trial.set(log, leftLying(job));
  for (const [i, log] of dropped.entries()) {
    const table = yard.tableOf(log);
    const last = i === dropped.length - 1;
    if (!last && chance() < LEFT_OUT) continue;
    const price = last ? job.buy : lowered(search);
    trial.set(log, planner.plan(table, trial.open(), price, effort, last ? Math.max(0, trial.cost - most) : 0));
  }
}

/** A bolt of a plan, by number of its log. */
interface PlacedBolt {
  readonly log: number;
  readonly bolt: BoltPattern;
}

function boltsOf(plan: WholePlan): PlacedBolt[] {
  return plan.patterns.flatMap(({ bolts }, log) => bolts.map((bolt) => ({ log, bolt })));
}

/** Drops some bolts, and plans each again where it lies. */
function bolts(trial: WholePlan, search: Search, effort: Effort, most: number): void {
  const { yard, planner, chance } = search;
  const { job } = yard;
  const all = boltsOf(trial);
  const dropped = draw(all.length, 1 + Math.floor(chance() * 3), chance).map((i) => all[i] as PlacedBolt);
  const pattern = (log: number, change: (bolts: readonly BoltPattern[]) => readonly BoltPattern[]) => {
    trial.set(log, logPattern(job, yard.tableOf(log).log, change((trial.patterns[log] as LogPattern).bolts)));
  };
  for (const { log, bolt } of dropped) pattern(log, (kept) => kept.filter(({ z0 }) => z0 !== bolt.z0));
  for (const [i, { log, bolt }] of dropped.entries()) {
    const table = planner.boltOf(yard.tableOf(log), bolt.z0, bolt.z1);
    if (table === null) continue;
    const last = i === dropped.length - 1;
    const spent = (trial.patterns[log] as LogPattern).bolts.length > 0 ? yard.tableOf(log).price : 0;
    const atLeast = last ? Math.max(0, trial.cost - most) - spent : -spent;
    const price = last ? job.buy : lowered(search);
    const planned = planner.plan(table, trial.open(), price, effort, atLeast);
    pattern(log, (kept) => [...kept, ...planned.bolts]);
  }
}

/** Different numbers below `most`, in random order; all of them where there are fewer than asked for. */
function draw(most: number, count: number, chance: () => number): number[] {
  const drawn = new Set<number>();
  while (drawn.size < Math.min(most, count)) drawn.add(Math.floor(chance() * most));
  return [...drawn];
}
