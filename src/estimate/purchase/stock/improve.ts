/**
 * Improves a plan by taking a few sticks out and planning their pieces anew, exactly (large neighbourhood search;
 * P. Shaw, CP 1998). What is left over decides which sticks are likely to go together.
 */
import { completed } from "./dive.js";
import type { Knapsack } from "./knapsack.js";
import { addTake, type Cut, costOf, type Draft, type NormalForm } from "./normal-form.js";
import type { Demand, Prices } from "./relaxation.js";
import { searchCheaper } from "./search.js";
import type { Work } from "./work.js";

/** Work of one try, and the most pieces taken out at once. Assumptions, measured on the frozen instances. */
const TRY = 1_500;
const PIECES = 16;

/** A job with its prices: what a search for a cheaper plan needs. */
export interface Neighbourhood {
  readonly form: NormalForm;
  readonly demand: Demand;
  readonly prices: Prices;
  /** Filled with those prices. */
  readonly knapsack: Knapsack;
  /** Stop at this cost: it is proven to be least. */
  readonly bound: number;
}

/** @param tries - Counted, on top of the work. */
export function improved(place: Neighbourhood, draft: Draft, work: Work, random: () => number, tries: number): Draft {
  const { form } = place;
  let best = draft;
  let cost = costOf(form, draft);
  for (let turn = 0; turn < tries && cost > place.bound && !work.over; turn++) {
    const next = retried(place, best, work, random);
    if (!next) continue;
    const nextCost = costOf(form, next);
    if (nextCost >= cost) continue;
    best = next;
    cost = nextCost;
  }
  return best;
}

function retried(place: Neighbourhood, draft: Draft, work: Work, random: () => number): Draft | null {
  const { form, demand, prices, knapsack } = place;
  const sticks = draft.cuts.flatMap((cut) => new Array<Cut>(cut.times).fill({ ...cut, times: 1 }));
  const chosen = chooseSticks(place, sticks, random);
  const counts = draft.missing.slice();
  for (const index of chosen) addTake(counts, (sticks[index] as Cut).take, 1);
  const kept = sticks.filter((_, index) => !chosen.has(index));
  const available = demand.available.map((count, bar) => count - kept.filter((cut) => cut.bar === bar).length);
  const spent = [...chosen].reduce((sum, index) => sum + (form.bars[(sticks[index] as Cut).bar]?.price as number), 0);
  const left = draft.missing.reduce((sum, count) => sum + count, 0);
  const share = work.share(TRY);
  const below = spent + (left > 0 ? left * form.missing : 0);
  const result = searchCheaper(form, prices, knapsack, { counts, available }, below, share);
  work.spend(share.used + sticks.length / 20);
  return result.draft && completed(form, demand, [...kept, ...result.draft.cuts], work);
}

/** Sticks drawn one after another, the wasteful more often, until they hold as many pieces as can be searched well. */
function chooseSticks({ form, prices }: Neighbourhood, sticks: readonly Cut[], random: () => number): Set<number> {
  const waste = sticks.map(({ bar, take }) => {
    const price = (form.bars[bar]?.price as number) * prices.scale + (prices.rent[bar] as number);
    return (price - take.reduce((sum, count, item) => sum + count * (prices.piece[item] as number), 0)) / prices.scale;
  });
  const mean = waste.reduce((sum, each) => sum + each, 0) / Math.max(1, sticks.length);
  const chosen = new Set<number>();
  let pieces = 0;
  for (let draw = 0; draw < 4 * sticks.length && chosen.size < sticks.length; draw++) {
    const index = Math.floor(random() * sticks.length);
    if (chosen.has(index) || (waste[index] as number) + mean < random() * 3 * mean) continue;
    pieces += (sticks[index] as Cut).take.reduce((sum, count) => sum + count, 0);
    if (pieces > PIECES && chosen.size >= 2) break;
    chosen.add(index);
  }
  return chosen;
}
