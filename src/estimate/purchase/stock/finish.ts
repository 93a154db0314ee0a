/** From a draft to a plan that a person can follow: leftovers gathered, names dealt out, equal sticks put together. */
import { tidied } from "./greedy.js";
import { addTake, type Cut, costOf, type Draft, loadOf, type NormalForm, sticksOf } from "./normal-form.js";
import { paidFor } from "./paid.js";
import type { ShortPiece, StockCut, StockOutcome, StockProblem } from "./problem.js";
import type { Demand } from "./relaxation.js";

/**
 * Makes the longest leftover longer at no cost: pieces of the emptiest stick move to where they just fit.
 * Never makes a plan dearer.
 */
export function leftoversGathered(form: NormalForm, draft: Draft, demand: Demand): Draft {
  const sticks = draft.cuts.flatMap((cut) =>
    Array.from({ length: cut.times }, () => ({ bar: cut.bar, take: cut.take.slice() })),
  );
  const rooms = sticks.map(({ bar, take }) => (form.bars[bar]?.capacity as number) - loadOf(form.weights, take));
  // No spread: there are as many rooms as sticks.
  const target = rooms.reduce((most, room, i) => (room > (rooms[most] as number) ? i : most), 0);
  const source = sticks[target];
  if (!source) return draft;
  for (let item = form.weights.length - 1; item >= 0; item--) {
    while ((source.take[item] as number) > 0) {
      const weight = form.weights[item] as number;
      const place = tightest(rooms, weight, target);
      if (place < 0) break;
      addTake(sticks[place]?.take as number[], oneOf(form, item), 1);
      addTake(source.take, oneOf(form, item), -1);
      rooms[place] = (rooms[place] as number) - weight;
    }
  }
  const wanted = { ...demand, counts: demand.counts.map((count, item) => count - (draft.missing[item] as number)) };
  const tidy = tidied(
    form,
    sticks.map((stick) => ({ ...stick, times: 1 })),
    wanted,
  );
  const next = { ...tidy, missing: draft.missing };
  return costOf(form, next) <= costOf(form, draft) ? next : draft;
}

const oneOf = (form: NormalForm, item: number) => form.weights.map((_, i) => (i === item ? 1 : 0));

function tightest(rooms: readonly number[], weight: number, except: number): number {
  let best = -1;
  rooms.forEach((room, i) => {
    if (i === except || room < weight) return;
    if (best < 0 || room < (rooms[best] as number)) best = i;
  });
  return best;
}

/** Names are dealt in order of name to sticks in order of length, so that the same plan always reads the same. */
export function namedPlan(problem: StockProblem, form: NormalForm, draft: Draft): StockCut[] {
  const queues = new Map(form.lengths.map((length) => [length, namesOf(problem, length)]));
  const rows = new Map<string, StockCut>();
  for (const cut of inOrder(draft.cuts)) {
    const stock = problem.stocks[form.bars[cut.bar]?.stock as number]?.name as string;
    for (let time = 0; time < cut.times; time++) {
      const pieces = cut.take.flatMap(
        (count, item) => queues.get(form.lengths[item] as number)?.splice(0, count) ?? [],
      );
      const key = JSON.stringify([stock, pieces]);
      rows.set(key, { stock, pieces, times: (rows.get(key)?.times ?? 0) + 1 });
    }
  }
  return [...rows.values()];
}

function namesOf(problem: StockProblem, length: number): string[] {
  const pieces = problem.pieces.filter((piece) => piece.length === length);
  const sorted = pieces.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  return sorted.flatMap((piece) => new Array<string>(piece.count).fill(piece.name));
}

/** Longest sticks first, then those with the longest pieces. */
function inOrder(cuts: readonly Cut[]): Cut[] {
  return cuts.toSorted((a, b) => {
    const byBar = b.bar - a.bar;
    const item = a.take.findIndex((count, i) => count !== b.take[i]);
    return byBar || (item < 0 ? 0 : (b.take[item] as number) - (a.take[item] as number));
  });
}

/** Sticks to pay for, by stock, in order of length. */
export function sticksPaid(problem: StockProblem, form: NormalForm, draft: Draft): StockOutcome["sticks"] {
  const sticks = sticksOf(form, draft.cuts);
  return form.bars.flatMap((bar, i) => {
    const { count } = paidFor(bar, sticks[i] as number);
    return count > 0 ? [{ stock: problem.stocks[bar.stock]?.name as string, count }] : [];
  });
}

/** Pieces left out, by name: those too long, and those that sticks lack for, the last by name first. */
export function shortPieces(problem: StockProblem, form: NormalForm, draft: Draft): StockOutcome["short"] {
  const missing = new Map(form.lengths.map((length, item) => [length, draft.missing[item] as number]));
  return problem.pieces
    .toSorted((a, b) => (a.name < b.name ? 1 : -1))
    .map(({ name, length, count }): ShortPiece => {
      const left = missing.get(length);
      // A stick that holds it may be on offer, but none of it to be had.
      const held = problem.stocks.some((stock) => stock.length - problem.endTrim >= length);
      if (left === undefined) return { name, count, why: held ? "stock-lacks" : "too-long" };
      const short = Math.min(left, count);
      missing.set(length, left - short);
      return { name, count: short, why: "stock-lacks" };
    })
    .filter(({ count }) => count > 0)
    .reverse();
}
