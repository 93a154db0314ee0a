/**
 * How good stock plans are, and how soon, on the frozen instances. Times are of the processor, in milliseconds, since the
 * machine may have other work; effort is limited by counted work, so that all but the times is the same on every machine.
 */
import { readFileSync } from "node:fs";
import { loadHighs } from "../../../src/api/highs.js";
import { orderPlanner, planners } from "../../../src/api/planners.js";
import type { StockOutcome, StockProblem } from "../../../src/estimate/purchase/stock/problem.js";
import { judgeStockPlan } from "../../../src/estimate/purchase/stock-judge.js";
import { planStock } from "../../../src/estimate/purchase/stock-plan.js";
import type { LinearSolver } from "../../../src/estimate/solver.js";

interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly target: string;
  readonly holds: boolean;
}

interface Instance {
  readonly name: string;
  readonly problem: StockProblem;
}

interface Run extends Instance {
  readonly outcome: StockOutcome;
  readonly ms: number;
}

const instances = (family: string): Instance[] =>
  JSON.parse(readFileSync(new URL(`frozen/${family}.json`, import.meta.url), "utf8")) as Instance[];

/** Least cost of each instance, by its name, from `reference.ts`. */
const reference = new Map(
  Object.entries(
    JSON.parse(readFileSync(new URL("frozen/reference.json", import.meta.url), "utf8")) as Record<string, number>,
  ),
);

export async function bench(): Promise<Figure[]> {
  const solver = await loadHighs();
  const small = instances("lumber-60");
  const large = instances("lumber-300");
  for (const { problem } of [...small, ...large].slice(30, 60)) planStock(problem, { solver, work: 300_000 }); // warm
  return [
    ...smallLumber(runs(small, (await orderPlanner()).stock)),
    ...largeLumber(
      runs(large, (await orderPlanner()).stock),
      runs(large, withWork(50_000, solver)),
      runs(large, withWork(4_000_000)),
    ),
    ...bins(instances("uniform"), instances("triplets"), solver),
    ...asServed([small, large]),
  ];
}

/** The lesser time of two runs: the compiler's and the collector's threads count too, and come when they like. */
function runs(list: readonly Instance[], planner: Planner): Run[] {
  return list.map((instance) => {
    const [first, second] = [measured(instance, planner), measured(instance, planner)];
    const wrong = judgeStockPlan(instance.problem, first.outcome.plan);
    if (wrong.length > 0) throw new Error(`${instance.name}: ${wrong.join(" ")}`);
    return { ...first, ms: Math.min(first.ms, second.ms) };
  });
}

type Planner = (problem: StockProblem) => StockOutcome;

const withWork =
  (work: number, solver?: LinearSolver): Planner =>
  (problem) =>
    planStock(problem, { work, ...(solver ? { solver } : {}) });

function measured(instance: Instance, planner: Planner): Run {
  const start = process.cpuUsage();
  const outcome = planner(instance.problem);
  const { user, system } = process.cpuUsage(start);
  return { ...instance, outcome, ms: (user + system) / 1_000 };
}

function smallLumber(all: readonly Run[]): Figure[] {
  const name = "lumber, 10 to 60 pieces";
  return [
    atLeast(
      `${name}: optimal`,
      share(all, (run) => over(run) === 0),
      100,
    ),
    atLeast(
      `${name}: proven within 0.5 s`,
      share(all, ({ outcome, ms }) => outcome.proven && ms <= 500),
      90,
    ),
    atLeast(
      `${name}: proven within 4 s`,
      share(all, ({ outcome, ms }) => outcome.proven && ms <= 4_000),
      100,
    ),
    figure(`${name}: longest`, longest(all), "ms", 4_000),
  ];
}

function largeLumber(all: readonly Run[], quick: readonly Run[], alone: readonly Run[]): Figure[] {
  const name = "lumber, 80 to 300 pieces";
  return [
    figure(`${name}: worst over the optimum, 50,000 of work`, Math.max(...quick.map(over)), "%", 0.3),
    figure(`${name}: longest, 50,000 of work`, longest(quick), "ms", 200),
    atLeast(
      `${name}: proven within 4 s`,
      share(all, ({ outcome, ms }) => outcome.proven && ms <= 4_000),
      90,
    ),
    figure(`${name}: median`, median(all), "ms", 200),
    atLeast(
      `${name}: proven without an engine`,
      share(alone, ({ outcome }) => outcome.proven),
      90,
    ),
  ];
}

/** By which every estimate buys: no engine, less work. The rows above are by the planner of POST /v1/stock-plans. */
function asServed([small, large]: readonly [readonly Instance[], readonly Instance[]]): Figure[] {
  const { stock } = planners();
  const [few, many] = [runs(small, stock), runs(large, stock)];
  const within = (all: readonly Run[], most: number) => share(all, ({ outcome, ms }) => outcome.proven && ms <= most);
  return [
    atLeast(
      "in estimates, lumber of 10 to 60 pieces: optimal",
      share(few, (run) => over(run) === 0),
      100,
    ),
    atLeast("in estimates, lumber of 10 to 60 pieces: proven within 0.5 s", within(few, 500), 90),
    figure("in estimates, lumber of 10 to 60 pieces: longest", longest(few), "ms", 4_000),
    figure("in estimates, lumber of 80 to 300 pieces: worst over the optimum", Math.max(...many.map(over)), "%", 0.3),
    atLeast("in estimates, lumber of 80 to 300 pieces: proven within 4 s", within(many, 4_000), 90),
  ];
}

function bins(uniform: readonly Instance[], triplets: readonly Instance[], solver: LinearSolver): Figure[] {
  const of = (list: readonly Instance[], family: string) => list.filter(({ name }) => name.startsWith(family));
  const all = runs(uniform, withWork(2_000_000, solver));
  const large = all.filter(({ name }) => name.startsWith("uniform-500"));
  const middling = runs(of(triplets, "triplets-120"), withWork(2_500_000, solver));
  const most = runs(of(triplets, "triplets-249"), withWork(700_000, solver));
  return [
    atLeast(
      "uniform bins, all: optimal",
      share(all, (run) => over(run) === 0),
      100,
    ),
    figure("uniform bins, 500 items: longest", longest(large), "ms", 2_000),
    atLeast(
      "triplets, 120 items: optimal",
      share(middling, (run) => over(run) === 0),
      100,
    ),
    figure("triplets, 120 items: longest", longest(middling), "ms", 3_000),
    figure("triplets, 249 items: most bars over the optimum", Math.max(...most.map(barsOver)), "bars", 1),
    figure("triplets, 249 items: longest", longest(most), "ms", 2_000),
  ];
}

const least = (run: Run) => reference.get(run.name) as number;
const barsOver = (run: Run) => run.outcome.costMinor - least(run);
const over = (run: Run) => (100 * barsOver(run)) / least(run);
const longest = (all: readonly Run[]) => Math.max(...all.map(({ ms }) => ms));
const median = (all: readonly Run[]) => all.map(({ ms }) => ms).sort((a, b) => a - b)[all.length >> 1] as number;
const share = (all: readonly Run[], test: (run: Run) => boolean) => (100 * all.filter(test).length) / all.length;

function figure(name: string, value: number, unit: string, most: number): Figure {
  return { name, value: Number(value.toPrecision(3)), unit, target: `≤ ${most} ${unit}`, holds: value <= most };
}

function atLeast(name: string, value: number, lowest: number): Figure {
  return { name, value: Number(value.toPrecision(3)), unit: "%", target: `≥ ${lowest} %`, holds: value >= lowest };
}
