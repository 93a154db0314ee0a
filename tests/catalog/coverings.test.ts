import { describe, expect, it } from "vitest";
import {
  COVERINGS,
  coveringKinds,
  coveringOf,
  fourBundlesCover,
  GALVANIZED_SHEET,
  leastSlope,
  rollCovers,
  SHINGLE_EXPOSURES,
  shingleExposure,
  stripsPerSquare,
  UNDERLAY_LAPS,
  UNDERLAYS,
  underlayLayers,
} from "../../src/catalog/coverings.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { exactly } from "../../src/estimate/quantity/text.js";

describe("roof area that shingles and strips cover", () => {
  // Trade association of cedar shake and shingle makers, coverage of four bundles, ft²; from memory. Printed to half a
  // square foot.
  it.each([
    ["16 in", "3.5 in", 70],
    ["16 in", "4 in", 80],
    ["16 in", "5 in", 100],
    ["16 in", "6 in", 120],
    ["16 in", "7 in", 140],
    ["18 in", "4 in", 72.5],
    ["18 in", "5 in", 90.5],
    ["18 in", "5.5 in", 100],
    ["18 in", "6.5 in", 118],
    ["24 in", "6 in", 80],
    ["24 in", "6.5 in", 86.5],
    ["24 in", "7.5 in", 100],
  ])("is printed: %s shingles at %s cover %d ft²", (length, exposure, printed) => {
    const found = fourBundlesCover(exactly(length), exactly(exposure));
    expect(Math.abs(inUnit(found as never, "ft2").toNumber() - printed)).toBeLessThanOrEqual(0.5);
  });

  // Widely printed for 36 in strips: 80 to a square at 5 in; 100 at 4 in and 90 (88.9) at 4 1/2 in in older texts.
  it.each([
    ["5 in", "80"],
    ["4 in", "100"],
    ["4 1/2 in", "89"],
  ])("is a square for strips 36 in long: at %s, %s strips", (exposure, strips) => {
    expect(stripsPerSquare(exactly("36 in"), exactly(exposure)).value.toFixed(0)).toBe(strips);
  });

  // Trade-journal field guide: squares that a roll of felt covers, single and half lapped. A mineral-surfaced roll of
  // 108 ft² is sold as one square.
  it.each([
    ["felt-15", "single", 4],
    ["felt-15", "double", 2],
    ["felt-30", "single", 2],
    ["felt-30", "double", 1],
  ] as const)("of a roll of %s, laid %s, is %i squares", (roll, laid, squares) => {
    const { width, length } = UNDERLAYS[roll];
    const area = rollCovers(exactly(width), exactly(length), exactly(UNDERLAY_LAPS[laid]));
    expect(inUnit(area, "square").floor().toNumber()).toBe(squares);
  });

  it("of a mineral-surfaced roll is one square after its 2 in lap", () => {
    const area = rollCovers(exactly("36 in"), exactly("36 ft"), exactly("2 in"));
    expect(inUnit(area, "square").floor().toNumber()).toBe(1);
  });

  it("is not made up for shingle lengths that nobody cuts", () => {
    expect(fourBundlesCover(exactly("20 in"), exactly("5 in"))).toBeUndefined();
  });
});

describe("shingle exposure", () => {
  // Three thicknesses of shingle everywhere at 4 in 12 and up: the exposure is under a third of the length.
  it.each(SHINGLE_EXPOSURES.map((row) => [row.length, row.grade] as const))(
    "keeps three layers: %s %s",
    (length, grade) => {
      const steep = shingleExposure(exactly(length), grade, exactly("4 in"));
      const low = shingleExposure(exactly(length), grade, exactly("3 in"));
      expect(
        inUnit(steep as never, "in")
          .times(3)
          .lt(inUnit(exactly(length), "in")),
      ).toBe(true);
      expect(
        (low as never as { value: { lt: (x: unknown) => boolean } }).value.lt(
          (steep as never as { value: unknown }).value,
        ),
      ).toBe(true);
    },
  );

  it("is none below 3 in 12", () => {
    expect(shingleExposure(exactly("18 in"), "No. 1", exactly("2.9 in"))).toBeUndefined();
  });
});

describe("least slopes", () => {
  // International Building Code, chapter 15, the sister code of the residential one that the table cites:
  // 1507.2.2, 1507.4.2, 1507.6.2, 1507.8.2, 1507.9.2, 1507.13.1; rise on 12.
  it.each([
    ["asphalt-shingles", false, "2 in"],
    ["ribbed-steel", false, "3 in"],
    ["ribbed-steel", true, "1/2 in"],
    ["corrugated-steel", false, "3 in"],
    ["standing-seam-steel", false, "1/4 in"],
    ["mineral-roll", false, "1 in"],
    ["wood-shingles", false, "3 in"],
    ["wood-shakes", false, "3 in"],
    ["membrane", false, "1/4 in"],
  ] as const)("agree with the building code: %s, laps sealed %s, %s on 12", (kind, sealed, rise) => {
    expect(exactly(leastSlope(kind, sealed).rise).value.eq(exactly(rise).value)).toBe(true);
  });

  // IRC R905.1.1: two layers below 4 in 12, one from there.
  it("ask asphalt for two layers of underlay from 2 to 4 in 12", () => {
    const layers = (rise: string) => underlayLayers("asphalt-shingles", exactly(rise));
    expect([layers("2 in"), layers("3.99 in"), layers("4 in"), layers("9 in")]).toEqual([2, 2, 1, 1]);
    expect(underlayLayers("ribbed-steel", exactly("3 in"))).toBe(0);
  });
});

describe("weights and spreads", () => {
  // Standard Gauge Act of 1893: ounces of a square foot of plain sheet, 20 for 22 gauge, 16, 12, 10 and 9; zinc adds 2.5.
  it.each([
    ["22", 20],
    ["24", 16],
    ["26", 12],
    ["28", 10],
    ["29", 9],
  ])("of galvanized sheet are the plain sheet's with its zinc: %s gauge", (gauge, ounces) => {
    const printed = inUnit(exactly(GALVANIZED_SHEET[gauge] as string), "lb/ft2");
    expect(
      printed
        .minus((ounces + 2.5) / 16)
        .abs()
        .toNumber(),
    ).toBeLessThanOrEqual(0.0005);
  });

  it("run from low to high in every row, in the unit of their kind", () => {
    for (const kind of coveringKinds) {
      const { weight, drip, supportEvery, exposure, endLap, fixing } = coveringOf(kind);
      for (const [low, likely, high] of [weight, drip, supportEvery, exposure, endLap, fixing.each].filter(
        (x) => x !== undefined,
      )) {
        const [a, b, c] = [low, likely, high].map((text) => exactly(text).value);
        expect(a?.lte(b as never) && b?.lte(c as never)).toBe(true);
      }
    }
  });

  it("know for panels how wide they are and what carries them", () => {
    for (const kind of coveringKinds.filter((each) => COVERINGS[each].form === "panels")) {
      const row = coveringOf(kind);
      expect(row.coverWidth).toBeDefined();
      expect(row.deck === "closed-deck" || row.supportEvery !== undefined).toBe(true);
    }
  });
});
