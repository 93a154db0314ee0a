/**
 * Which sticks to buy for a list of pieces, and how to cut them: one-dimensional cutting stock with several lengths.
 *
 * A quick plan first; then the linear relaxation with its bound, plans rounded from it, and the mixes of sticks one by one
 * until the plan is proven or the work is spent. Nothing is random but what a fixed seed gives, nothing is timed.
 */
import type { LinearSolver } from "../solver.js";
import { closedGap } from "./stock/close-gap.js";
import { divedPlan, piecesOf } from "./stock/dive.js";
import { planFromFillings } from "./stock/fillings-plan.js";
import { leftoversGathered, namedPlan, shortPieces, sticksPaid } from "./stock/finish.js";
import { greedyPlan } from "./stock/greedy.js";
import { improved } from "./stock/improve.js";
import { cellsOf, workOf } from "./stock/knapsack.js";
import { cheaper, costOf, type Draft, lengthBound, type NormalForm, normalForm } from "./stock/normal-form.js";
import type { Level } from "./stock/paid.js";
import type { StockOutcome, StockProblem } from "./stock/problem.js";
import { type Demand, Relaxation, sharpened } from "./stock/relaxation.js";
import { seeded, Work } from "./stock/work.js";

/** What the planner may use. */
export interface StockOptions {
  /** Helps where a mix of sticks is hard to fill; not needed for the bound. */
  readonly solver?: LinearSolver;
  /** Counted work, about a microsecond each; 1,000,000 proves nearly all jobs of up to 300 pieces. */
  readonly work: number;
  /** Asked now and then; true ends the planning. */
  readonly stopped?: () => boolean;
}

const SEED = 1;

/** Tries of improvement after the first dive. Assumption, measured. */
const TRIES = 40;

/** Work for mixes before an engine is asked: below it an engine costs more than it gains. Assumption, measured. */
const MIXES = 150_000;

/** Largest relaxation: its inverse is as many squared, its array as many bytes. Assumptions. */
const MOST_LENGTHS = 400;
const MOST_CELLS = 60_000_000;

/**
 * The cheapest plan found, with a bound that no plan for the same pieces beats.
 *
 * Fit: Σ (length + kerf) ≤ stock − trim + kerf. Pieces too long for every stock, or for which sticks lack, are listed as
 * short; as few as can be found are.
 *
 * @throws RangeError on numbers that are not whole or are out of range: a bug in the caller. CalledOff where `stopped` says so.
 */
export function planStock(problem: StockProblem, options: StockOptions): StockOutcome {
  checkProblem(problem);
  const work = new Work(options.work, options.stopped);
  const form = normalForm(problem, lengthsOf(problem));
  const { draft, bound } = form.weights.length === 0 ? NOTHING : solved(form, options.solver, work);
  return outcome(problem, form, draft, bound, work);
}

/** How many pieces of each length are wanted. */
function lengthsOf({ pieces }: StockProblem): ReadonlyMap<number, number> {
  const lengths = new Map<number, number>();
  for (const { length, count } of pieces) lengths.set(length, (lengths.get(length) ?? 0) + count);
  return lengths;
}

/** What the sheer length of the pieces costs at the best price by length, in minor units: no plan that leaves none out costs less. */
export function leastByLength(problem: StockProblem): number {
  const form = normalForm(problem, lengthsOf(problem));
  return lengthBound(form) * form.moneyGrid;
}

const NOTHING = { draft: { cuts: [], missing: [] }, bound: 0 };

/** Share of the work for a plan at the prices of a few sticks, where there are bulk prices. Assumption. */
const FOR_FEW = 0.25;

/** A plan that counts on no bulk price: it may come to one all the same. Undefined where there are none. */
function atFewPrices(form: NormalForm, solver: LinearSolver | undefined, work: Work): Draft | undefined {
  if (form.bars.every(({ levels }) => levels.length === 1)) return undefined;
  const bars = form.bars.map((bar) => ({
    ...bar,
    price: (bar.levels[0] as Level).price,
    levels: bar.levels.slice(0, 1),
  }));
  const share = work.share(work.left * FOR_FEW);
  const { draft } = planned({ ...form, bars }, solver, share);
  work.spend(share.used);
  return draft;
}

interface Solved {
  readonly draft: Draft;
  readonly bound: number;
}

function solved(form: NormalForm, solver: LinearSolver | undefined, work: Work): Solved {
  const first = planned(form, solver, work, atFewPrices(form, solver, work));
  const left = piecesOf(first.draft.missing);
  if (left === 0) return first;
  // The bound is to speak of the pieces that the plan cuts, so the rest is taken out of the question.
  const counts = form.counts.map((count, item) => count - (first.draft.missing[item] as number));
  if (piecesOf(counts) === 0) return { draft: first.draft, bound: 0 };
  const again = planned({ ...form, counts }, solver, work, { ...first.draft, missing: counts.map(() => 0) });
  return { draft: { ...again.draft, missing: first.draft.missing }, bound: again.bound };
}

function planned(form: NormalForm, solver: LinearSolver | undefined, work: Work, known?: Draft): Solved {
  const demand: Demand = { counts: form.counts, available: form.bars.map((bar) => bar.available) };
  const random = seeded(SEED);
  let draft = greedyPlan(form, demand, form.weights, work);
  if (known) draft = cheaper(form, known, draft);
  if (tooLarge(form, work)) return { draft, bound: lengthBound(form) };
  const relaxation = new Relaxation(form, work);
  const { prices, bound } = relaxation.solve(demand);
  draft = cheaper(form, draft, divedPlan(relaxation, demand, work));
  relaxation.knapsack.fill(prices.piece, form.counts);
  const place = { form, demand, prices, knapsack: relaxation.knapsack, bound };
  draft = improved(place, draft, work, random, TRIES);
  const pool = relaxation.choices.filter((choice) => choice.bar >= 0);
  const share = work.share(Math.max(MIXES, work.left * 0.1));
  const yard = { form, prices: sharpened(form, prices, demand), pool, random, solver };
  let best: Solved = closedGap(yard, relaxation, { draft, bound }, share);
  work.spend(share.used);
  if (solver && piecesOf(best.draft.missing) === 0) {
    relaxation.knapsack.fill(prices.piece, form.counts);
    best = planFromFillings(place, best, solver, work);
  }
  if (!work.over) best = closedGap(yard, relaxation, best, work);
  return { ...best, draft: leftoversGathered(form, best.draft, demand) };
}

/** Too many lengths, too fine a grid or too little work for the relaxation: it must fill its array some ten times. */
function tooLarge({ weights, counts, bars }: NormalForm, work: Work): boolean {
  const cells = cellsOf(weights, counts, Math.max(...bars.map((bar) => bar.capacity)));
  return weights.length > MOST_LENGTHS || cells > MOST_CELLS || 10 * workOf(cells) > work.left;
}

function outcome(problem: StockProblem, form: NormalForm, draft: Draft, bound: number, work: Work): StockOutcome {
  const cost = costOf(form, { ...draft, missing: [] });
  const proven = bound >= cost;
  return {
    plan: namedPlan(problem, form, draft),
    sticks: sticksPaid(problem, form, draft),
    costMinor: cost * form.moneyGrid,
    boundMinor: Math.min(bound, cost) * form.moneyGrid,
    proven,
    short: shortPieces(problem, form, draft),
    work: Math.round(work.used),
  };
}

function checkProblem({ pieces, stocks, kerf, endTrim, bundle = 1 }: StockProblem): void {
  const whole = (value: number, least: number, what: string): void => {
    if (!Number.isSafeInteger(value) || value < least) throw new RangeError(`${what} ${value} is not a whole number`);
  };
  whole(kerf, 0, "kerf");
  whole(endTrim, 0, "end trim");
  whole(bundle, 1, "bundle");
  for (const { name, length, count } of pieces) {
    whole(length, 1, `length of ${name}`);
    whole(count, 0, `count of ${name}`);
  }
  for (const { name, length, priceMinor, available, from = 1, bulk = [] } of stocks) {
    whole(length, 1, `length of ${name}`);
    for (const level of [{ from, priceMinor }, ...bulk]) {
      whole(level.priceMinor, 0, `price of ${name}`);
      whole(level.from, 1, `least number of ${name}`);
    }
    if (available !== null) whole(available, 0, `available of ${name}`);
  }
  for (const list of [pieces, stocks]) {
    if (new Set(list.map(({ name }) => name)).size < list.length) throw new RangeError("a name is used twice");
  }
}
