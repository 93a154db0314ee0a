/**
 * Closes the gap between a plan and its bound, mix by mix: the cheapest mix of sticks not yet proven too small is packed, or
 * proven too small, or left open. While none is left open, the cost of the next mix is a bound.
 */
import { piecesOf } from "./dive.js";
import { cheapestMix, type MixCut } from "./mix.js";
import { cheaper, costOf, type Draft, type NormalForm, paidSticks } from "./normal-form.js";
import { packMix, type Yard } from "./packing.js";
import type { Prices, Relaxation } from "./relaxation.js";
import type { Work } from "./work.js";

/** A plan and what is proven of its cost. */
export interface Closed {
  readonly draft: Draft;
  /** In units of money. */
  readonly bound: number;
}

/** Work of one look for a mix, and mixes left open before the rest is left alone. Assumptions. */
const LOOK = 400_000;
const MOST_OPEN = 8;

/** Part of the work spent on fewer sticks once the cost is proven. Assumption. */
const FOR_STICKS = 0.1;

/**
 * @param relaxation - Of the whole job; only its knapsack is used.
 * @param known - A plan that leaves nothing out; one that does is handed back as it is.
 */
export function closedGap(yard: Yard, relaxation: Relaxation, known: Closed, work: Work): Closed {
  const { form } = yard;
  const state = { ...known, open: 0 };
  const cuts = [cutBy(relaxation, yard.prices, form), cutBy(relaxation, byLength(form, yard.prices), form)];
  const excluded = new Set<string>();
  let proofs = work;
  while (!proofs.over && piecesOf(state.draft.missing) === 0 && state.open <= MOST_OPEN) {
    const cost = costOf(form, state.draft);
    // Cost first; what is left of the work for fewer sticks is little.
    if (state.bound >= cost && proofs === work) proofs = work.share(work.budget * FOR_STICKS);
    const look = proofs.share(LOOK);
    const below = { cost, paid: paidSticks(form, state.draft) };
    const mix = cheapestMix(form.bars, cuts, excluded, state.bound, below, look);
    proofs.spend(look.used);
    if (mix === undefined) break;
    if (state.open === 0) state.bound = Math.max(state.bound, mix ? mix.cost : cost);
    if (mix === null) break;
    const packing = packMix(yard, mix, proofs);
    if (packing.kind === "packed") state.draft = cheaper(form, state.draft, packing.draft);
    else if (packing.kind === "impossible" && packing.cut) cuts.push(packing.cut);
    else excluded.add(mix.sticks.join());
    if (packing.kind === "unknown") state.open++;
  }
  if (proofs !== work) work.spend(proofs.used);
  return state;
}

function byLength(form: NormalForm, prices: Prices): Prices {
  return { ...prices, piece: form.weights };
}

/** The inequality that these prices give. */
function cutBy({ knapsack }: Relaxation, prices: Prices, form: NormalForm): MixCut {
  knapsack.fill(prices.piece, form.counts);
  return {
    holds: form.bars.map((bar) => knapsack.value(bar.capacity)),
    need: prices.piece.reduce((sum, price, item) => sum + price * (form.counts[item] as number), 0),
  };
}
