/** Every filling of every bar that a plan under a given cost could use. */
import type { Knapsack } from "./knapsack.js";
import type { Bar, NormalForm, Pattern } from "./normal-form.js";
import type { Prices } from "./relaxation.js";
import type { Work } from "./work.js";

/**
 * Fillings that waste no more than `slack` and leave no room for another piece, or null when there are more than `most`.
 * A plan that uses any other filling costs more than bound + slack, so it is enough to look among these.
 *
 * @param knapsack - Filled with these prices and the whole demand.
 * @param slack - In 1/scale of a unit of money.
 */
export function worthwhileFillings(
  form: NormalForm,
  prices: Prices,
  knapsack: Knapsack,
  slack: number,
  most: number,
  work: Work,
): Pattern[] | null {
  const found: Pattern[] = [];
  for (const [index, bar] of form.bars.entries()) {
    if (!fillingsOf(form, prices, knapsack, index, bar, slack, most, work, found)) return null;
  }
  return found;
}

function fillingsOf(
  form: NormalForm,
  prices: Prices,
  knapsack: Knapsack,
  index: number,
  bar: Bar,
  slack: number,
  most: number,
  work: Work,
  found: Pattern[],
): boolean {
  const { weights, counts } = form;
  const shorter = nextShorter(form.bars, index);
  const least = bar.price * prices.scale + (prices.rent[index] as number) - slack;
  const take = weights.map(() => 0);
  let within = true;
  const fill = (item: number, room: number, value: number): void => {
    if (!within || value + knapsack.value(room) < least) return;
    work.spend(0.1);
    if (item === weights.length) {
      const tight = counts.every((count, k) => count === take[k] || (weights[k] as number) > room);
      if (!tight || bar.capacity - room <= shorter) return;
      found.push({ bar: index, take: take.slice() });
      within = found.length <= most && !work.over;
      return;
    }
    const weight = weights[item] as number;
    for (let count = Math.min(counts[item] as number, Math.floor(room / weight)); count >= 0; count--) {
      take[item] = count;
      fill(item + 1, room - count * weight, value + count * (prices.piece[item] as number));
    }
    take[item] = 0;
  };
  fill(0, bar.capacity, 0);
  return within;
}

/** Capacity of the longest shorter bar that never lacks and costs no more: what fits there is not put on this bar. */
export function nextShorter(bars: readonly Bar[], index: number): number {
  const bar = bars[index] as Bar;
  return bars.reduce((longest, other, j) => {
    const instead = j !== index && other.available === Number.POSITIVE_INFINITY && other.price <= bar.price;
    return instead && other.capacity < bar.capacity ? Math.max(longest, other.capacity) : longest;
  }, 0);
}
