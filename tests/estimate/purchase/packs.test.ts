import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  leastCostPacks,
  MOST_ROWS,
  type Pack,
  type PackTable,
  packTable,
} from "../../../src/estimate/purchase/packs.js";
import { coverByTrial } from "../../judges/pack-trial.js";

const pack = (name: string, size: number, priceMinor: number | null): Pack => ({ name, size, priceMinor });
const table = (packs: Pack[], upTo = 1_000): PackTable => {
  const made = packTable(packs, upTo);
  if (!made) throw new Error("no pack has a price");
  return made;
};
const buys = (packs: Pack[], need: number) => leastCostPacks(table(packs), need);

const screws = [pack("box of 25", 25, 499), pack("box of 100", 100, 1_499)];

describe("packs of least cost", () => {
  // Prices invented; each answer is worked by hand in the line.
  it("overshoots where that is cheapest: 180 screws are two hundreds, 29.98, not one and four 25s, 34.95", () => {
    expect(buys(screws, 180)).toEqual({ costMinor: 2_998, counts: [0, 2], holds: 200, surplus: 20 });
  });

  it("takes one hundred for 90 screws, 14.99, rather than four 25s, 19.96", () => {
    expect(buys(screws, 90)).toEqual({ costMinor: 1_499, counts: [0, 1], holds: 100, surplus: 10 });
  });

  it("does not think a bigger pack cheaper: 1,000 at 210.00 loses to ten hundreds at 149.90", () => {
    expect(buys([...screws, pack("case", 1_000, 21_000)], 1_000).counts).toEqual([0, 10, 0]);
  });

  it("buys nothing for a need of nothing", () => {
    expect(buys(screws, 0)).toEqual({ costMinor: 0, counts: [0, 0], holds: 0, surplus: 0 });
  });

  it("pools: one need of 120 costs less than three of 40", () => {
    const pooled = buys(screws, 120).costMinor; // 100 + 25: 19.98
    expect([pooled, 3 * buys(screws, 40).costMinor]).toEqual([1_998, 2_994]); // 40: two 25s, 9.98
  });

  it("counts cans in fifths of a gallon: 8 fifths of stain are one gallon, 45.00, and three fifths, 36.00, or two gallons, 90.00", () => {
    const cans = [pack("fifth", 1, 1_200), pack("gallon", 5, 4_500), pack("five gallons", 25, 19_900)];
    expect(buys(cans, 8)).toMatchObject({ costMinor: 8_100, counts: [3, 1, 0] });
    expect(buys(cans, 23)).toMatchObject({ costMinor: 19_900, counts: [0, 0, 1], surplus: 2 });
  });

  it("never buys a pack without a price, and has no answer when none has one", () => {
    expect(buys([pack("unpriced", 500, null), ...screws], 180).counts).toEqual([0, 0, 2]);
    expect(packTable([pack("unpriced", 500, null)], 10)).toBeNull();
    expect(packTable([], 10)).toBeNull();
  });

  it("takes a pack that is free for what it is", () => {
    expect(buys([pack("left over", 30, 0), ...screws], 70)).toMatchObject({ costMinor: 0, counts: [3, 0, 0] });
  });

  it("breaks ties by packs, then by surplus, then by name", () => {
    const evens = [pack("b", 10, 100), pack("a", 20, 200), pack("c", 30, 300)];
    expect(buys(evens, 30).counts).toEqual([0, 0, 1]); // one pack before two
    expect(buys([pack("big", 12, 100), pack("small", 10, 100)], 9).counts).toEqual([0, 1]); // less over
    expect(buys([pack("zinc", 10, 100), pack("brass", 10, 100)], 15).counts).toEqual([0, 2]); // brass before zinc
    expect(buys([pack("p", 10, 100), pack("q", 30, 300), pack("r", 20, 200)], 40)).toMatchObject({ counts: [1, 1, 0] });
  });

  it("refuses sizes and prices that are not whole", () => {
    expect(() => packTable([pack("x", 2.5, 100)], 10)).toThrow(RangeError);
    expect(() => packTable([pack("x", 0, 100)], 10)).toThrow(RangeError);
    expect(() => packTable([pack("x", 2, -1)], 10)).toThrow(RangeError);
    expect(() => leastCostPacks(table(screws), 1.5)).toThrow(RangeError);
    expect(() => leastCostPacks(table(screws), -1)).toThrow(RangeError);
  });
});

describe("the step table of packs", () => {
  it("merges needs that buy alike and ends where the best pack merely repeats", () => {
    const { rows, beyond, reach, exactUpTo } = table(screws);
    // Three 25s, 14.97, still beat a hundred, 14.99; four, 19.96, do not.
    expect(rows.map(({ from, costMinor }) => [from, costMinor])).toEqual([
      [0, 0],
      [1, 499],
      [26, 998],
      [51, 1_497],
      [76, 1_499],
    ]);
    expect({ beyond, reach, exactUpTo }).toEqual({
      beyond: { pack: 1, size: 100, priceMinor: 1_499 },
      reach: 100,
      exactUpTo: null,
    });
  });

  it("agrees with trying every purchase, past its own end too, ties and all", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer({ min: 1, max: 13 }), fc.integer({ min: 0, max: 9 })), SOME), (list) => {
        const packs = list.map(([size, price], i) => pack(`p${(i * 7) % 4}`, size, price * 10));
        const made = table(packs, 10);
        expect(made.exactUpTo).toBeNull();
        for (let need = 0; need <= 45; need++) {
          const { costMinor, counts, surplus } = leastCostPacks(made, need);
          expect({ need, costMinor, counts, surplus }).toEqual({ need, ...coverByTrial(packs, need) });
        }
      }),
      { numRuns: 150, seed: 1 },
    );
  });

  it("never costs less for more, covers every need, and adds up, on awkward sizes", () => {
    const sizes = fc.array(fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 9_999 })), SOME);
    fc.assert(
      fc.property(sizes, (list) => {
        const packs = list.map(([size, price], i) => pack(`p${i}`, size, price));
        const made = table(packs, 500);
        let before = 0;
        for (let need = 0; need <= made.reach + 900; need += 1 + Math.floor(made.reach / 700)) {
          const { costMinor, counts, holds, surplus } = leastCostPacks(made, need);
          const sound =
            costMinor >= before &&
            surplus >= 0 &&
            holds - surplus === need &&
            sum(packs, counts, "size") === holds &&
            sum(packs, counts, "priceMinor") === costMinor;
          if (!sound) expect.fail(`need ${need}: ${JSON.stringify({ costMinor, counts, holds, surplus, before })}`);
          before = costMinor;
        }
      }),
      { numRuns: 150, seed: 2 },
    );
  });

  it("stays within its rows where the period is far off, says how far it is exact, and still never falls", () => {
    const awkward = [pack("a", 997, 9_971), pack("b", 991, 9_911), pack("c", 983, 9_832), pack("d", 4_099, 40_989)];
    const made = table(awkward, 20_000);
    expect(made.reach).toBe(20_000);
    expect(made.rows.length).toBeLessThanOrEqual(MOST_ROWS);
    expect(made.exactUpTo).toBe(made.reach);
    let before = 0;
    for (let need = made.reach - 5_000; need < made.reach + 9_000; need += 7) {
      const { costMinor, surplus } = leastCostPacks(made, need);
      expect(costMinor).toBeGreaterThanOrEqual(before);
      expect(surplus).toBeGreaterThanOrEqual(0);
      before = costMinor;
    }
  });

  it("answers 12,345 screws from a short table", () => {
    const made = table([pack("75", 75, 899), pack("350", 350, 2_999), pack("1,750", 1_750, 11_999)], 12_345);
    expect(made.rows.length).toBeLessThan(60);
    const { costMinor } = leastCostPacks(made, 12_345);
    // Seven of 1,750 leave 95: two 75s 17.98; 7 × 119.99 + 17.98 = 857.91.
    expect(costMinor).toBe(85_791);
  });
});

const SOME = { minLength: 1, maxLength: 4 };

function sum(packs: readonly Pack[], counts: readonly number[], field: "size" | "priceMinor"): number {
  return packs.reduce((total, each, i) => total + (each[field] ?? 0) * (counts[i] ?? 0), 0);
}
