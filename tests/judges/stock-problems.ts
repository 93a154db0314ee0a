/** Random stock problems of every kind: scarce, owned, bundled, too short, unfair prices. Seeded. */
import type { StockProblem } from "../../src/estimate/purchase/stock/problem.js";

export interface Size {
  readonly lengths: number;
  readonly pieces: number;
  readonly stocks: number;
}

export function randomStockProblem(random: () => number, size: Size): StockProblem {
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const longest = whole(30, 200);
  const lengths = Array.from({ length: whole(1, size.lengths) }, () => whole(3, longest));
  let left = whole(1, size.pieces);
  const pieces = lengths.map((length, i) => {
    const count = i === lengths.length - 1 ? left : whole(0, left);
    left -= count;
    return { name: `p${i}`, length: random() < 0.1 ? (lengths[0] as number) : length, count };
  });
  const stocks = Array.from({ length: whole(1, size.stocks) }, (_, i) => {
    const length = whole(Math.floor(longest / 2), Math.floor(longest * 2));
    const owned = random() < 0.15;
    const priceMinor = owned ? 0 : Math.max(1, Math.round(length * 7 * (0.7 + 0.6 * random())));
    const available = owned || random() < 0.25 ? whole(0, 5) : null;
    return { name: `s${i}`, length, priceMinor, available, ...(owned ? { owned } : {}) };
  });
  const bundle = random() < 0.2 ? { bundle: whole(2, 4) } : {};
  return { pieces, stocks, kerf: whole(0, 3), endTrim: random() < 0.5 ? 0 : whole(1, 6), ...bundle };
}
