import { describe, expect, it } from "vitest";
import { cheapestMix, type MixCut } from "../../../../src/estimate/purchase/stock/mix.js";
import type { Bar } from "../../../../src/estimate/purchase/stock/normal-form.js";
import { Work } from "../../../../src/estimate/purchase/stock/work.js";
import { mulberry32 } from "../../../bench/mulberry32.js";

const NONE: ReadonlySet<string> = new Set();
const LIMIT = { cost: 400, paid: 0 };

function randomBars(random: () => number): { bars: Bar[]; cuts: MixCut[] } {
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const bars = Array.from({ length: whole(1, 3) }, (_, stock) => {
    const bundle = random() < 0.2 ? 2 : 1;
    const available = random() < 0.3 ? bundle * whole(1, 3) : Number.POSITIVE_INFINITY;
    const price = whole(0, 9) + 5 * stock;
    const one = { from: 1, price: price + whole(1, 4) };
    const levels = random() < 0.4 ? [one, { from: bundle * whole(1, 3) + 1, price }] : [{ from: 1, price }];
    const reachable = levels.filter(({ from }) => Math.ceil(from / bundle) * bundle <= available);
    return {
      stock,
      capacity: 10 + 5 * stock,
      price: reachable.at(-1)?.price ?? 0,
      levels: reachable,
      available,
      bundle,
    };
  });
  const cuts = Array.from({ length: whole(1, 4) }, () => ({ holds: bars.map(() => whole(0, 9)), need: whole(0, 40) }));
  return { bars, cuts };
}

/** Cost and sticks of the best of all mixes of up to 45 sticks a bar, in that order. */
function byTrial(
  bars: readonly Bar[],
  cuts: readonly MixCut[],
  excluded: ReadonlySet<string>,
): [number, number] | null {
  let best: [number, number] | null = null;
  const sticks = bars.map(() => 0);
  const visit = (place: number, cost: number, paid: number): void => {
    const bar = bars[place];
    if (!bar) {
      const enough = cuts.every(
        ({ holds, need }) => sticks.reduce((sum, n, i) => sum + n * (holds[i] ?? 0), 0) >= need,
      );
      const sooner = !best || cost < best[0] || (cost === best[0] && paid < best[1]);
      if (enough && sooner && cost < LIMIT.cost && !excluded.has(sticks.join())) best = [cost, paid];
      return;
    }
    for (let count = 0; count <= Math.min(bar.available, 45); count += bar.bundle) {
      sticks[place] = count;
      let each = count === 0 ? 0 : Number.POSITIVE_INFINITY;
      for (const { from, price } of bar.levels) if (count >= from && price < each) each = price;
      visit(place + 1, cost + count * each, paid + count);
    }
    sticks[place] = 0;
  };
  visit(0, 0, 0);
  return best;
}

describe("the cheapest mix of sticks", () => {
  it("is what trying every mix gives, sticks included, and null where none will do", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { bars, cuts } = randomBars(mulberry32(seed));
      const best = byTrial(bars, cuts, NONE);
      const mix = cheapestMix(bars, cuts, NONE, -1, LIMIT, new Work(1e9));
      expect({ seed, mix: mix && [mix.cost, mix.paid] }).toEqual({ seed, mix: best });
    }
  });

  it("passes over the mixes that are excluded", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const { bars, cuts } = randomBars(mulberry32(seed));
      const first = cheapestMix(bars, cuts, NONE, -1, LIMIT, new Work(1e9));
      if (!first || first.cost === 0) continue;
      const excluded = new Set([first.sticks.join()]);
      const next = cheapestMix(bars, cuts, excluded, first.cost - 1, LIMIT, new Work(1e9));
      const best = byTrial(bars, cuts, excluded);
      expect({ seed, mix: next && [next.cost, next.paid] }).toEqual({ seed, mix: best });
    }
  });

  it("says so when the work runs out", () => {
    const { bars, cuts } = randomBars(mulberry32(3));
    expect(cheapestMix(bars, cuts, NONE, -1, LIMIT, new Work(0))).toBeUndefined();
  });
});
