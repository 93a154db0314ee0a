import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pieceWorth } from "../../../../src/estimate/purchase/stock/piece-worth.js";
import { seeded } from "../../../../src/estimate/purchase/stock/work.js";
import { decimal } from "../../../../src/estimate/quantity/decimal.js";
import { randomStockProblem } from "../../../judges/stock-problems.js";
import { bestByTrial } from "../../../judges/stock-trial.js";

describe("what a piece is worth", () => {
  it("is half a stick where two fill it and nothing else is wanted", () => {
    const pieces = [{ name: "a", length: 60, count: 8 }];
    const stocks = [{ name: "s", length: 120, cost: decimal("800") }];
    expect(pieceWorth({ pieces, stocks, kerf: 0, endTrim: 0 }, 80_000).get(60)?.toNumber()).toBeCloseTo(400, 5);
    // With a kerf two no longer fit, and each pays for a stick.
    expect(pieceWorth({ pieces, stocks, kerf: 1, endTrim: 0 }, 80_000).get(60)?.toNumber()).toBeCloseTo(800, 5);
  });

  it("is never more than half of what the stick costs to the last fraction of a cent", () => {
    const pieces = [{ name: "a", length: 60, count: 8 }];
    const cost = decimal("800.987654321");
    const worth = pieceWorth({ pieces, stocks: [{ name: "s", length: 120, cost }], kerf: 0, endTrim: 0 }, 80_000).get(
      60,
    );
    expect(worth?.times(2).lte(cost)).toBe(true);
    expect(worth?.toNumber()).toBeCloseTo(400, 5); // whole minor units, rounded down
  });

  it("is nothing where no stick holds it", () => {
    const pieces = [{ name: "a", length: 130, count: 1 }];
    const stocks = [{ name: "s", length: 120, cost: decimal("800") }];
    expect(pieceWorth({ pieces, stocks, kerf: 0, endTrim: 0 }, 80_000).get(130)).toBeUndefined();
  });

  it("adds up, over any part of the pieces, to no more than the cheapest order of just these costs", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(0, 80_000), (seed, work) => {
        const random = seeded(seed);
        const drawn = randomStockProblem(random, { lengths: 4, pieces: 6, stocks: 3 });
        const stocks = drawn.stocks.map(({ name, length, priceMinor }) => ({
          name,
          length,
          priceMinor: priceMinor + 1,
          available: null,
        }));
        const whole = { ...drawn, stocks };
        const costed = stocks.map(({ name, length, priceMinor }) => ({ name, length, cost: decimal(priceMinor) }));
        const worth = pieceWorth({ ...whole, stocks: costed }, work);
        const part = whole.pieces.map((piece) => ({ ...piece, count: Math.floor(random() * (piece.count + 1)) }));
        const best = bestByTrial({ ...whole, pieces: part });
        const each = (length: number) => worth.get(length)?.toNumber() ?? 0;
        const sum = part.reduce((total, { length, count }) => total + count * each(length), 0);
        // Pieces too long for every stick are left out of both.
        expect(sum).toBeLessThanOrEqual(best.costMinor + 1e-6 * Math.max(1, best.costMinor));
      }),
      { numRuns: 300 },
    );
  });
});
