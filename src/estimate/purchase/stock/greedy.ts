/** First plans, quickly: fill the sticks one after another. */
import type { Bar, Cut, Draft, NormalForm } from "./normal-form.js";
import { addTake, gathered, loadOf } from "./normal-form.js";
import type { Demand } from "./relaxation.js";
import type { Work } from "./work.js";

/**
 * The longest piece left opens a stick; the longest that still fit fill it. Of all sticks that could be opened the one that
 * is cheapest for what it holds is taken (first fit decreasing, where there is one length of stick).
 *
 * @param value - What a piece of each weight counts for; the weights themselves, or prices.
 */
export function greedyPlan(form: NormalForm, demand: Demand, value: readonly number[], work: Work): Draft {
  const left = demand.counts.slice();
  const available = demand.available.slice();
  const missing = form.weights.map(() => 0);
  const patterns: { bar: number; take: number[] }[] = [];
  for (let first = nextPiece(left); first >= 0; first = nextPiece(left)) {
    const pattern = cheapestFilling(form, left, available, first, value, work);
    if (pattern) {
      addTake(left, pattern.take, -1);
      available[pattern.bar] = (available[pattern.bar] as number) - 1;
      patterns.push(pattern);
    } else {
      left[first] = (left[first] as number) - 1;
      missing[first] = (missing[first] as number) + 1;
    }
  }
  return { cuts: gathered(patterns), missing };
}

const nextPiece = (left: readonly number[]) => left.findIndex((count) => count > 0);

function cheapestFilling(
  form: NormalForm,
  left: readonly number[],
  available: readonly number[],
  first: number,
  value: readonly number[],
  work: Work,
) {
  let best: { bar: number; take: number[] } | undefined;
  let least = Number.POSITIVE_INFINITY;
  form.bars.forEach((bar, index) => {
    if ((available[index] as number) <= 0 || bar.capacity < (form.weights[first] as number)) return;
    const take = firstFit(form.weights, left, first, bar.capacity);
    const worth = take.reduce((sum, count, item) => sum + count * (value[item] as number), 0);
    if (bar.price / worth >= least) return;
    least = bar.price / worth;
    best = { bar: index, take };
  });
  work.spend((form.bars.length * form.weights.length) / 100);
  return best;
}

function firstFit(weights: readonly number[], left: readonly number[], first: number, capacity: number): number[] {
  const take = weights.map(() => 0);
  let room = capacity;
  for (let item = first; item < weights.length; item++) {
    const count = Math.min(left[item] as number, Math.floor(room / (weights[item] as number)));
    take[item] = count;
    room -= count * (weights[item] as number);
  }
  return take;
}

/**
 * Makes a plan exact and no dearer: pieces beyond the demand are dropped, and a stick becomes a cheaper one that still
 * holds what is left on it. Sticks beyond those that can be had are dropped too; their pieces are missing then.
 */
export function tidied(form: NormalForm, cuts: readonly Cut[], demand: Demand): Draft {
  const left = demand.counts.slice();
  const available = demand.available.slice();
  const sticks: { bar: number; take: number[] }[] = [];
  for (const { bar, take, times } of cuts) {
    for (let time = 0; time < times && (available[bar] as number) > 0; time++) {
      const useful = take.map((count, item) => Math.min(count, left[item] as number));
      if (useful.every((count) => count === 0)) break;
      addTake(left, useful, -1);
      available[bar] = (available[bar] as number) - 1;
      sticks.push({ bar, take: useful });
    }
  }
  // Only when every stick has its own bar is it known which scarce bars are to spare.
  for (const stick of sticks) {
    const cheaper = cheaperBar(form.bars, stick.bar, loadOf(form.weights, stick.take), available);
    available[stick.bar] = (available[stick.bar] as number) + 1;
    available[cheaper] = (available[cheaper] as number) - 1;
    stick.bar = cheaper;
  }
  return { cuts: gathered(sticks), missing: left };
}

/** The cheapest that holds the load, of equals the one at hand, then the shortest. Bars are in order of capacity. */
function cheaperBar(bars: readonly Bar[], own: number, load: number, available: readonly number[]): number {
  let best = own;
  bars.forEach((bar, index) => {
    if (bar.capacity < load || (available[index] as number) <= 0) return;
    if (bar.price < (bars[best] as Bar).price) best = index;
  });
  return best;
}
