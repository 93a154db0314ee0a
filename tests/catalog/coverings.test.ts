import { describe, expect, it } from "vitest";
import {
  COVERINGS,
  coveringKinds,
  coveringOf,
  leastSlope,
  SHINGLE_EXPOSURES,
  shingleExposure,
  underlayLayers,
} from "../../src/catalog/coverings.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { exactly } from "../../src/estimate/quantity/text.js";

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
