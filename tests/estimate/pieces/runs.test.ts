import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeEnds, runPieceLength, runPieces, shortened } from "../../../src/estimate/pieces/runs.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

describe("a run of pieces joined over supports", () => {
  it("is one piece where that is long enough", () => {
    expect(runPieces(3, 4)).toEqual([{ pieces: 1, bays: 3, first: true, last: true }]);
  });

  it("is as few pieces as can be, as even as can be, the longer ones first", () => {
    // 12 rafter bays, 5 at most in a piece: three pieces of four.
    expect(runPieces(12, 5)).toEqual([
      { pieces: 1, bays: 4, first: true, last: false },
      { pieces: 1, bays: 4, first: false, last: false },
      { pieces: 1, bays: 4, first: false, last: true },
    ]);
    expect(runPieces(7, 3).map(({ bays }) => bays)).toEqual([3, 2, 2]);
  });

  it("has its two end pieces in one kind where both ends reach equally far", () => {
    const kinds = mergeEnds(runPieces(12, 4), true);
    expect(kinds.map(({ pieces, bays }) => [pieces, bays])).toEqual([
      [2, 4],
      [1, 4],
    ]);
    expect(mergeEnds(runPieces(12, 4), false)).toHaveLength(3);
  });

  it("adds up to its bays and both its ends, whatever they are", () => {
    const seed = 20240711;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 12 }),
        fc.boolean(),
        (bays, most, alike) => {
          const sheet = new Sheet();
          const bay = sheet.input("bay", exactly("23 7/8 in"));
          const first = sheet.input("first", exactly("13 in"));
          const lack = sheet.input("lack", exactly("5 in"));
          const last = alike ? first : sheet.lay("last", shortened(first, lack));
          const kinds = mergeEnds(runPieces(bays, most), alike);
          const lengths = kinds.map((kind, i) => sheet.lay(`piece${i}`, runPieceLength(kind, bay, { first, last })));
          const whole = kinds.reduce(
            (sum, { pieces }, i) => sum.plus((lengths[i]?.value ?? decimal(0)).times(pieces)),
            decimal(0),
          );
          expect(whole.eq(bay.value.times(bays).plus(first.value).plus(last.value))).toBe(true);
          expect(kinds.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(Math.ceil(bays / most));
          for (const kind of kinds) expect(kind.bays).toBeLessThanOrEqual(most);
        },
      ),
      { seed, numRuns: 200 },
    );
  });
});
