/**
 * Whole plans out of the relaxation: fix what it is sure of, solve again for what is left, repeat.
 *
 * Rounding with the columns kept (a "dive") is dealt with by Sadykov, Vanderbeck and others, "Primal heuristics for
 * branch and price", INFORMS Journal on Computing 31 (2019).
 */
import { greedyPlan, tidied } from "./greedy.js";
import { addTake, type Cut, costOf, type Draft, gathered, type NormalForm } from "./normal-form.js";
import type { Demand, Relaxation } from "./relaxation.js";
import { searchCheaper } from "./search.js";
import type { Work } from "./work.js";

/** Pieces left at which the rest is searched exactly, and the work that may take. Assumptions. */
const FEW = 14;
const REST = 3_000;

/** Rounds of new fillings between two fixings: a little is gained by the second, next to nothing by more. Assumption. */
const ROUNDS = 4;

/** @param random - Where given, the choice among fractions is disturbed, so that dives differ. */
export function divedPlan(relaxation: Relaxation, demand: Demand, work: Work, random?: () => number): Draft {
  const { form } = relaxation;
  const left = demand.counts.slice();
  const available = demand.available.slice();
  const fixed: Cut[] = [];
  while (piecesOf(left) > FEW && !work.over) {
    const { solution } = relaxation.solve({ counts: left, available }, ROUNDS);
    const cuts = fixings(relaxation, solution.values, random);
    if (cuts.length === 0) break;
    for (const cut of cuts) fix(cut, left, available, fixed);
  }
  const rest = restPlan(relaxation, { counts: left, available }, work);
  return completed(form, demand, [...fixed, ...rest.cuts], work);
}

/** Every whole part; where there is none, the greatest fraction once. */
function fixings(relaxation: Relaxation, values: Float64Array, random: (() => number) | undefined): Cut[] {
  const whole: Cut[] = [];
  let best: Cut | undefined;
  let most = 1e-6;
  relaxation.choices.forEach((choice, index) => {
    const value = values[index] as number;
    if (choice.bar < 0 || value <= 1e-6) return;
    if (value >= 1 - 1e-6) whole.push({ ...choice, times: Math.floor(value + 1e-6) });
    const score = value - Math.floor(value + 1e-6) + (random ? random() * 0.5 : 0);
    if (score <= most) return;
    most = score;
    best = { ...choice, times: 1 };
  });
  return whole.length > 0 ? whole : best ? [best] : [];
}

/** Cuts no more of a pattern than is of use. */
function fix(cut: Cut, left: number[], available: number[], fixed: Cut[]): void {
  for (let time = 0; time < cut.times; time++) {
    const take = cut.take.map((count, item) => Math.min(count, left[item] as number));
    if (piecesOf(take) === 0 || (available[cut.bar] as number) <= 0) return;
    addTake(left, take, -1);
    available[cut.bar] = (available[cut.bar] as number) - 1;
    fixed.push({ bar: cut.bar, take, times: 1 });
  }
}

/** The last pieces: exactly if the search gets through, else as they come. */
function restPlan(relaxation: Relaxation, demand: Demand, work: Work): Draft {
  const { form, knapsack } = relaxation;
  const greedy = greedyPlan(form, demand, form.weights, work);
  if (work.over) return greedy;
  const { prices } = relaxation.solve(demand, ROUNDS);
  knapsack.fill(prices.piece, demand.counts);
  const share = work.share(REST);
  const { draft } = searchCheaper(form, prices, knapsack, demand, costOf(form, greedy), share);
  work.spend(share.used);
  return draft ?? greedy;
}

/** Tidied, and with every piece on a stick that can be. */
export function completed(form: NormalForm, demand: Demand, cuts: readonly Cut[], work: Work): Draft {
  const draft = tidied(form, cuts, demand);
  if (piecesOf(draft.missing) === 0) return draft;
  const available = demand.available.map((count, bar) => {
    return count - draft.cuts.reduce((sum, cut) => (cut.bar === bar ? sum + cut.times : sum), 0);
  });
  const rest = greedyPlan(form, { counts: draft.missing, available }, form.weights, work);
  const patterns = [...draft.cuts, ...rest.cuts].flatMap((cut) => new Array<Cut>(cut.times).fill(cut));
  return { cuts: gathered(patterns), missing: rest.missing };
}

/** Pieces in a list by weight. */
export function piecesOf(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}
