/** Improves and proves a plan with an engine: all fillings that a cheaper plan could use, as one program. */
import type { LinearSolver } from "../../solver.js";
import { completed } from "./dive.js";
import { worthwhileFillings } from "./fillings.js";
import type { Neighbourhood } from "./improve.js";
import { cheaper, costOf, type Draft, type Pattern } from "./normal-form.js";
import { worthOf } from "./relaxation.js";
import { wholePlan } from "./whole-program.js";
import type { Work } from "./work.js";

/** Fillings of the first program, and of the last: more take the engine too long. Assumptions, measured. */
const FIRST = 400;
const MOST = 6_000;

/** Growth of the slack from one program to the next, and the part of the work left that each may take. Assumptions. */
const WIDER = 2.5;
const PART = 0.5;

/**
 * A plan that uses a filling of more waste than `slack` costs more than the demand is worth plus that slack. So the best
 * plan out of the others is the best of all if it costs no more than that; if it costs more, the sum is a bound.
 *
 * @param place - The whole demand, its prices, and the knapsack filled with them.
 */
export function planFromFillings(
  place: Neighbourhood,
  known: { readonly draft: Draft; readonly bound: number },
  solver: LinearSolver,
  work: Work,
): { draft: Draft; bound: number } {
  const { form, demand, prices } = place;
  let { draft, bound } = known;
  const worth = worthOf(prices, demand);
  /** Waste that a plan cheaper than the one known may have. */
  const room = () => (costOf(form, draft) - 1) * prices.scale - worth;
  let found = fewFillings(place, room(), work);
  while (found && bound < costOf(form, draft) && !work.over) {
    const share = work.share(work.left * PART);
    const whole = wholePlan(form, withCuts(found.fillings, draft), demand, false, solver, share);
    work.spend(share.used);
    if (whole.draft) draft = cheaper(form, draft, completed(form, demand, whole.draft.cuts, work));
    const horizon = Math.floor((worth + found.slack) / prices.scale) + 1;
    bound = Math.max(bound, Math.min(whole.bound, horizon, costOf(form, draft)));
    if (room() <= found.slack) break;
    const slack = Math.min(room(), found.slack * WIDER);
    const fillings = worthwhileFillings({ ...place, counts: demand.counts, slack }, MOST, work);
    found = fillings && { fillings, slack };
  }
  return { draft, bound };
}

/** The widest slack, by halves, that leaves few fillings. */
function fewFillings(place: Neighbourhood, widest: number, work: Work) {
  for (let slack = widest; slack >= 1 && !work.over; slack /= 2) {
    const fillings = worthwhileFillings({ ...place, counts: place.demand.counts, slack }, FIRST, work);
    if (fillings) return { fillings, slack };
  }
  return null;
}

/** The known plan's own cuts always belong to the program, so that it has a plan. */
function withCuts(fillings: readonly Pattern[], draft: Draft): Pattern[] {
  const known = new Set(fillings.map(({ bar, take }) => `${bar}:${take.join()}`));
  return [...fillings, ...draft.cuts.filter(({ bar, take }) => !known.has(`${bar}:${take.join()}`))];
}
