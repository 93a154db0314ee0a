import { describe, expect, it } from "vitest";
import { eachFilling } from "../../../../src/estimate/purchase/stock/fillings.js";
import { type NormalForm, normalForm } from "../../../../src/estimate/purchase/stock/normal-form.js";
import type { StockProblem } from "../../../../src/estimate/purchase/stock/problem.js";
import { type Prices, Relaxation, sharpened, worthOf } from "../../../../src/estimate/purchase/stock/relaxation.js";
import { Work } from "../../../../src/estimate/purchase/stock/work.js";
import { mulberry32 } from "../../../bench/mulberry32.js";
import { randomStockProblem } from "../../../judges/stock-problems.js";
import { bestByTrial } from "../../../judges/stock-trial.js";

function formOf(problem: StockProblem): NormalForm {
  const lengths = new Map<number, number>();
  for (const { length, count } of problem.pieces) lengths.set(length, (lengths.get(length) ?? 0) + count);
  return normalForm(problem, lengths);
}

const demandOf = (form: NormalForm) => ({ counts: form.counts, available: form.bars.map((bar) => bar.available) });

/** The dearest filling of a bar at these prices, every count tried. */
function dearest({ weights, counts }: NormalForm, prices: Prices, room: number, item = 0): number {
  if (item === weights.length) return 0;
  let best = 0;
  for (let count = 0; count <= (counts[item] ?? 0) && count * (weights[item] ?? 0) <= room; count++) {
    const rest = dearest({ weights, counts } as NormalForm, prices, room - count * (weights[item] ?? 0), item + 1);
    best = Math.max(best, count * (prices.piece[item] ?? 0) + rest);
  }
  return best;
}

describe("the relaxation of a stock problem", () => {
  it("has whole prices at which no filling is worth more than its bar and rent, however little work there was", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const form = formOf(randomStockProblem(mulberry32(seed), { lengths: 5, pieces: 12, stocks: 4 }));
      if (form.weights.length === 0) continue;
      const relaxation = new Relaxation(form, new Work([5, 40, 1e9][seed % 3] as number));
      const { prices } = relaxation.solve(demandOf(form));
      for (const each of [prices, sharpened(form, prices, demandOf(form))]) {
        expect([...each.piece, ...each.rent].every((price) => Number.isSafeInteger(price) && price >= 0)).toBe(true);
        form.bars.forEach((bar, i) => {
          const worth = bar.price * each.scale + (each.rent[i] ?? 0);
          expect(dearest(form, each, bar.capacity)).toBeLessThanOrEqual(worth);
        });
      }
    }
  });

  it("has a bound that no plan beats", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const problem = randomStockProblem(mulberry32(seed), { lengths: 4, pieces: 6, stocks: 3 });
      const best = bestByTrial(problem);
      if (best.short > 0) continue;
      const form = formOf(problem);
      if (form.weights.length === 0) continue;
      const { bound } = new Relaxation(form, new Work(1e9)).solve(demandOf(form));
      expect(bound * form.moneyGrid).toBeLessThanOrEqual(best.costMinor);
    }
  });

  it("wastes on each filling what its bar costs over its worth, and hands over only tight ones", () => {
    const form = formOf({
      pieces: [61, 47, 38, 22, 9].map((length) => ({ name: `${length}`, length, count: 3 })),
      stocks: [70, 101, 128].map((length) => ({ name: `${length}`, length, priceMinor: 10 * length, available: null })),
      kerf: 1,
      endTrim: 0,
    });
    const demand = demandOf(form);
    const work = new Work(1e9);
    const relaxation = new Relaxation(form, work);
    const { prices, bound } = relaxation.solve(demand);
    relaxation.knapsack.fill(prices.piece, form.counts);
    const slack = prices.scale * 30;
    let seen = 0;
    form.bars.forEach((bar, index) => {
      const quest = { form, prices, knapsack: relaxation.knapsack, counts: form.counts, slack };
      eachFilling(quest, index, work, ({ take, waste }) => {
        const value = take.reduce((sum, count, i) => sum + count * (prices.piece[i] ?? 0), 0);
        const room = bar.capacity - take.reduce((sum, count, i) => sum + count * (form.weights[i] ?? 0), 0);
        expect(waste).toBe(bar.price * prices.scale + (prices.rent[index] ?? 0) - value);
        expect(take.every((count, i) => count === form.counts[i] || (form.weights[i] ?? 0) > room)).toBe(true);
        return ++seen > 0;
      });
    });
    expect(seen).toBeGreaterThan(3);
    expect(Math.ceil(worthOf(prices, demand) / prices.scale)).toBe(bound);
  });
});
