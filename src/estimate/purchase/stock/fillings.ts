/** Fillings of a bar that a plan under a given cost could use. */
import type { Knapsack } from "./knapsack.js";
import type { Bar, NormalForm, Pattern } from "./normal-form.js";
import { isPlain } from "./paid.js";
import type { Prices } from "./relaxation.js";
import type { Work } from "./work.js";

/** Steps of the enumeration in about a microsecond. Assumption, measured. */
const STEPS = 10;

/** A filled bar and what it wastes. */
export interface Filling extends Pattern {
  /** Price and rent of the bar less the worth of its pieces, in 1/scale of a unit of money; ≥ 0. */
  readonly waste: number;
}

/** Which fillings are asked for. */
export interface FillingQuest {
  readonly form: NormalForm;
  readonly prices: Prices;
  /** Filled with those prices and at least these pieces. */
  readonly knapsack: Knapsack;
  /** Pieces to choose from. */
  readonly counts: readonly number[];
  /** An item of which there must be one; those before it are left alone. */
  readonly first?: number;
  /** Most waste. */
  readonly slack: number;
}

/**
 * Hands over every filling of a bar that wastes no more than the slack, leaves no room for another piece, and would not
 * fit a shorter bar that costs no more. An exchange of pieces or bars turns any plan into one of such fillings, at no cost.
 *
 * @param found - Returns false to stop.
 */
export function eachFilling(
  quest: FillingQuest,
  index: number,
  work: Work,
  found: (filling: Filling) => boolean,
): void {
  const { form, prices, knapsack, counts, first, slack } = quest;
  const { weights, bars } = form;
  const bar = bars[index] as Bar;
  const shorter = nextShorter(bars, index);
  const worth = bar.price * prices.scale + (prices.rent[index] as number);
  const take = weights.map(() => 0);
  let wanted = true;
  const fill = (item: number, room: number, value: number): void => {
    if (!wanted || work.over || value + knapsack.value(room) < worth - slack) return;
    work.spend(1 / STEPS);
    if (item === weights.length) {
      const tight = counts.every((count, k) => count === take[k] || (weights[k] as number) > room);
      if (!tight || bar.capacity - room <= shorter) return;
      wanted = found({ bar: index, take: take.slice(), waste: worth - value });
      return;
    }
    const weight = weights[item] as number;
    const most = Math.min(counts[item] as number, Math.floor(room / weight));
    for (let count = most; count >= (item === first ? 1 : 0); count--) {
      take[item] = count;
      fill(item + 1, room - count * weight, value + count * (prices.piece[item] as number));
    }
    take[item] = 0;
  };
  fill(first ?? 0, bar.capacity, 0);
}

/** The fillings of all bars, or null when there are more than `most` or work runs out. */
export function worthwhileFillings(quest: FillingQuest, most: number, work: Work): Pattern[] | null {
  const fillings: Pattern[] = [];
  for (const index of quest.form.bars.keys()) {
    eachFilling(quest, index, work, ({ bar, take }) => {
      fillings.push({ bar, take });
      return fillings.length <= most;
    });
  }
  return fillings.length > most || work.over ? null : fillings;
}

/**
 * Capacity of the longest shorter bar that never lacks and costs no more: what fits there is not put on this bar. Where
 * bars come in bundles, or for less from a number on, there is none, for a longer bar may be to spare.
 */
function nextShorter(bars: readonly Bar[], index: number): number {
  const bar = bars[index] as Bar;
  if (!isPlain(bar)) return 0;
  return bars.reduce((longest, other) => {
    const instead = other.available === Number.POSITIVE_INFINITY && other.price <= bar.price;
    return instead && isPlain(other) && other.capacity < bar.capacity ? Math.max(longest, other.capacity) : longest;
  }, 0);
}
