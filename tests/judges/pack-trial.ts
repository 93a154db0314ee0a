/** A second method for packs: every purchase is tried. Shares nothing with the table but the form of a pack. */
import type { Pack } from "../../src/estimate/purchase/packs.js";

interface Trial {
  readonly costMinor: number;
  readonly counts: number[];
  readonly surplus: number;
}

/** Least cost, then fewest packs, then least surplus, then most of the packs that come first by name. All packs are priced. */
export function coverByTrial(packs: readonly Pack[], need: number): Trial {
  const order = packs.map((_, i) => i).sort((a, b) => compareText(name(packs, a), name(packs, b)) || a - b);
  let best: Trial | undefined;
  const counts = packs.map(() => 0);
  const visit = (place: number, left: number, cost: number): void => {
    const pack = packs[order[place] ?? -1];
    if (!pack || left <= 0) {
      if (left > 0) return;
      const trial = { costMinor: cost, counts: counts.slice(), surplus: Math.abs(left) };
      if (!best || isBetter(trial, best, order)) best = trial;
      return;
    }
    // Counts run downwards, though the comparison does not rely on it.
    for (let count = Math.ceil(left / pack.size); count >= 0; count--) {
      counts[order[place] as number] = count;
      visit(place + 1, left - count * pack.size, cost + count * (pack.priceMinor ?? Number.NaN));
    }
    counts[order[place] as number] = 0;
  };
  visit(0, need, 0);
  if (!best) throw new Error("nothing covers the need");
  return best;
}

function isBetter(a: Trial, b: Trial, order: readonly number[]): boolean {
  const total = (trial: Trial) => trial.counts.reduce((sum, count) => sum + count, 0);
  if (a.costMinor !== b.costMinor) return a.costMinor < b.costMinor;
  if (total(a) !== total(b)) return total(a) < total(b);
  if (a.surplus !== b.surplus) return a.surplus < b.surplus;
  const differs = order.find((i) => a.counts[i] !== b.counts[i]);
  return differs !== undefined && (a.counts[differs] ?? 0) > (b.counts[differs] ?? 0);
}

const name = (packs: readonly Pack[], index: number) => packs[index]?.name ?? "";
const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
