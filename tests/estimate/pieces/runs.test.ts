import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutRun, type RunSupports, runPieceBegins, runPieceLength } from "../../../src/estimate/pieces/runs.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

/** A run over bays in inches, with the same end on either side. */
function run(bays: readonly number[], longest: number, end = 6, last = end) {
  const sheet = new Sheet();
  const input = (name: string, inches: number) => sheet.input(name, exactly(`${inches} in`));
  const alike = bays.every((bay) => bay === bays[0]);
  const [first, other] = [input("first", end), input("last", last)];
  const cells = bays.map((bay, i) => input(`bay${i + 1}`, bay));
  const supports: RunSupports = {
    bays: alike ? (cells[0] as (typeof cells)[number]) : cells,
    sizes: cells.map(({ value }) => value),
    ends: { first, last: other },
    endSizes: { first: first.value, last: other.value },
    longest: exactly(`${longest} in`).value,
  };
  return { sheet, supports };
}

/** Pieces from the left, in inches, and where each begins. */
function pieces({ sheet, supports }: ReturnType<typeof run>, sold: readonly number[] = [], mayMill = false) {
  const lengths = sold.map((inches) => exactly(`${inches} in`).value);
  const kinds = cutRun(supports, { lengths, mayMill });
  return kinds
    .flatMap((kind, k) => {
      const length = sheet.in(sheet.lay(`length${k}`, runPieceLength(supports, kind)), "in").toNumber();
      return runPieceBegins(supports, kind).map((begin, i) => {
        return { begins: sheet.in(sheet.lay(`begins${k}.${i}`, begin), "in").toNumber(), length, ofKind: kind.pieces };
      });
    })
    .sort((a, b) => a.begins - b.begins);
}
const lengths = (...of: Parameters<typeof pieces>) => pieces(...of).map(({ length }) => length);

describe("a run of pieces joined over supports", () => {
  it("is one piece where that is long enough", () => {
    expect(lengths(run([96, 96, 96], 300))).toEqual([300]);
  });

  it("is as few pieces as can be, as even as can be by their lengths: the middle ones span more bays", () => {
    // 12 rafter bays, 5 at most in a piece: three pieces of four. 13 bays: the odd one in the middle, where no end is past it.
    expect(lengths(run(Array(12).fill(24), 126))).toEqual([102, 96, 102]);
    expect(lengths(run(Array(13).fill(24), 126))).toEqual([102, 120, 102]);
  });

  it("has its two end pieces in one kind where both ends reach equally far", () => {
    const kinds = (last: number) => cutRun(run(Array(12).fill(24), 110, 6, last).supports).map((kind) => kind.pieces);
    expect(kinds(6)).toEqual([2, 1]);
    expect(kinds(5)).toEqual([1, 1, 1]);
  });

  it("joins pieces of unlike bays over posts, and says where", () => {
    // Bays of 8, 12 and 8 ft, the plate 6 in past either end post's centre: no two bays in 14 ft.
    expect(pieces(run([96, 144, 96], 168))).toEqual([
      { begins: 0, length: 102, ofKind: 2 },
      { begins: 102, length: 144, ofKind: 1 },
      { begins: 246, length: 102, ofKind: 2 },
    ]);
    // 6, 6, 12, 6 ft with 13 ft at most: the two short bays together.
    expect(lengths(run([72, 72, 144, 72], 156))).toEqual([150, 144, 78]);
  });

  it("spans a bay that is longer than any piece may be by itself", () => {
    expect(lengths(run([60, 200, 60], 144))).toEqual([66, 200, 66]);
  });

  it("takes the lengths that the yard sells where they need less of it, and not otherwise", () => {
    // 10 bays of 2 ft, 6 in past both: 21 ft. Even: two of 10.5 ft, from 12 ft each. In 8, 12 and 14 ft: 8.5 + 12.5 wants 26, 6.5 + 14.5 no.
    const bays = Array(10).fill(24);
    expect(lengths(run(bays, 168))).toEqual([126, 126]);
    expect(lengths(run(bays, 168), [96, 144, 168])).toEqual([126, 126]);
    // With 10 ft and 12 ft stock, 8.5 + 12.5 is out; 10.5 twice takes 24 ft: three of 6.5, 8 and 6.5 ft take 8 ft each.
    expect(lengths(run(bays, 168), [96, 192])).toEqual([78, 96, 78]);
  });

  it("makes no piece longer than an even share does where logs may serve", () => {
    // 13 bays: 9.75, 10.5 and 9.75 ft from three of 12 ft, or 14.5 and 13.5 from two of 16 ft.
    const bays = Array(13).fill(24);
    expect(lengths(run(bays, 180), [144, 192])).toEqual([174, 150]);
    expect(lengths(run(bays, 126), [144, 192])).toEqual([102, 120, 102]);
    expect(lengths(run([24, 24, 24, 24, 24], 100), [80, 60], true)).toEqual([78, 54]);
  });

  it("takes no more stock than an even share, and joins over supports, whatever is sold", () => {
    const seed = 20261126;
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 12, max: 120 }), { minLength: 1, maxLength: 9 }),
        fc.boolean(),
        fc.integer({ min: 72, max: 240 }),
        fc.uniqueArray(fc.constantFrom(72, 96, 120, 144, 168, 192, 240), { minLength: 1, maxLength: 4 }),
        (draw, alike, longest, sold) => {
          const bays = alike ? draw.map(() => draw[0] as number) : draw;
          const stock = (found: readonly number[]) =>
            found.reduce((sum, length) => {
              const fits = sold.filter((one) => one >= length);
              return sum + (fits.length > 0 ? Math.min(...fits) : 10_000 + length);
            }, 0);
          const [even, chosen] = [pieces(run(bays, longest)), pieces(run(bays, longest), sold)];
          expect(stock(chosen.map(({ length }) => length))).toBeLessThanOrEqual(
            stock(even.map(({ length }) => length)),
          );
          const posts = [6];
          for (const bay of bays) posts.push((posts.at(-1) as number) + bay);
          for (const found of [even, chosen]) {
            expect(found.reduce((sum, { length }) => sum + length, 0)).toBe((posts.at(-1) as number) + 6);
            for (const [i, { begins, length }] of found.entries()) {
              if (i > 0) expect(posts).toContain(begins);
              const next = found[i + 1]?.begins ?? begins + length;
              expect(begins + length).toBe(next);
              const single =
                posts.filter((at) => at > begins && at < begins + length).length <
                (i === 0 || i === found.length - 1 ? 2 : 1);
              if (!single && bays.length > 1) expect(length).toBeLessThanOrEqual(longest);
            }
          }
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  it("is the best of all ways to cut it, by trying them all", () => {
    const all = (bays: number): number[][] =>
      bays === 0
        ? [[]]
        : Array.from({ length: bays }, (_, i) => i + 1).flatMap((n) => all(bays - n).map((rest) => [n, ...rest]));
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 12, max: 90 }), { minLength: 2, maxLength: 7 }),
        fc.uniqueArray(fc.constantFrom(72, 96, 120, 144, 168), { minLength: 1, maxLength: 3 }),
        (bays, sold) => {
          const longest = 170;
          const measure = (spans: readonly number[]) => {
            let at = 0;
            return spans.map((n) => {
              const size =
                bays.slice(at, at + n).reduce((a, b) => a + b, 0) +
                (at === 0 ? 6 : 0) +
                (at + n === bays.length ? 6 : 0);
              at += n;
              return { n, size };
            });
          };
          const stock = (size: number) => Math.min(...sold.filter((one) => one >= size), 10_000 + size);
          const allowed = all(bays.length)
            .map(measure)
            .filter((way) => way.every(({ n, size }) => n === 1 || size <= longest));
          const best = Math.min(...allowed.map((way) => way.reduce((sum, { size }) => sum + stock(size), 0)));
          const mine = lengths(run(bays, longest), sold).reduce((sum, size) => sum + stock(size), 0);
          expect(mine).toBe(best);
        },
      ),
      { seed: 20261127, numRuns: 300 },
    );
  });

  it("adds up to its bays and both its ends, whatever they are", () => {
    const seed = 20240711;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 24, max: 300 }),
        fc.boolean(),
        (bays, longest, alike) => {
          const { sheet, supports } = run(Array(bays).fill(23.875), longest, 13, alike ? 13 : 8);
          const kinds = cutRun(supports);
          const whole = kinds.reduce(
            (sum, kind, i) => sum.plus(sheet.lay(`piece${i}`, runPieceLength(supports, kind)).value.times(kind.pieces)),
            decimal(0),
          );
          expect(whole.eq(exactly(`${23.875 * bays + 13 + (alike ? 13 : 8)} in`).value)).toBe(true);
        },
      ),
      { seed, numRuns: 200 },
    );
  });
});
