import { describe, expect, it } from "vitest";
import { Knapsack } from "../../../../src/estimate/purchase/stock/knapsack.js";
import { Work } from "../../../../src/estimate/purchase/stock/work.js";
import { mulberry32 } from "../../../bench/mulberry32.js";

/** Best value by trying every choice of counts. */
function byTrial(weights: number[], values: number[], counts: number[], room: number, item = 0): number {
  if (item === weights.length) return 0;
  let best = 0;
  for (let count = 0; count <= (counts[item] ?? 0) && count * (weights[item] ?? 0) <= room; count++) {
    const rest = byTrial(weights, values, counts, room - count * (weights[item] ?? 0), item + 1);
    best = Math.max(best, count * (values[item] ?? 0) + rest);
  }
  return best;
}

describe("the bounded knapsack", () => {
  it("gives for every capacity at once what trying every choice gives, and the pieces that make it", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const random = mulberry32(seed);
      const whole = (most: number) => Math.floor(random() * (most + 1));
      const weights = Array.from({ length: 4 }, () => 1 + whole(14));
      const values = weights.map(() => whole(20));
      const counts = weights.map(() => whole(5));
      const knapsack = new Knapsack(weights, 40, new Work(1e9));
      knapsack.fill(values, counts);
      for (let room = 0; room <= 40; room += 3) {
        const take = knapsack.pattern(room);
        expect(knapsack.value(room)).toBe(byTrial(weights, values, counts, room));
        expect(take.reduce((sum, count, i) => sum + count * (values[i] ?? 0), 0)).toBe(knapsack.value(room));
        expect(take.reduce((sum, count, i) => sum + count * (weights[i] ?? 0), 0)).toBeLessThanOrEqual(room);
        expect(take.every((count, i) => count <= (counts[i] ?? 0))).toBe(true);
      }
    }
  });
});
