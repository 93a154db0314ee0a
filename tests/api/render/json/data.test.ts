import { describe, expect, it } from "vitest";
import { coveringList } from "../../../../src/api/render/json/coverings.js";
import { measured } from "../../../../src/api/render/json/measured.js";
import { speciesList } from "../../../../src/api/render/json/species.js";
import { measuredValue, readShape, toQuantity } from "../../../../src/catalog/reading.js";
import { exactly } from "../../../../src/estimate/quantity/text.js";

describe("quantities in answers", () => {
  it.each(["4.35 m", "14 ft", "2.25 in", "12 %", "0.75 lb/ft2", "3", "30 day"])(
    "%s is taken back as it is put out",
    (text) => {
      const given = exactly(text);
      const out = measured(given);
      expect(readShape(measuredValue, out)).toHaveProperty("value");
      expect(toQuantity(out, given.unit).value.eq(given.value)).toBe(true);
    },
  );

  it("are in the unit that they were written in", () => {
    expect(measured(exactly("2 1/4 in"))).toEqual({ value: "2.25", unit: "in" });
    expect(measured(exactly("1/4 ft"))).toEqual({ value: "0.25", unit: "ft" });
  });
});

describe("the list of woods", () => {
  const list = speciesList();
  const wood = (id: string) => list.species.find((row) => row.id === id);

  // FIA reference species table: western redcedar 27.0 lb/ft3 green. Wood Handbook, table 4-3: 2.4 and 5.0 %.
  it("gives western redcedar as published", () => {
    expect(wood("western-redcedar")).toMatchObject({
      latin: "Thuja plicata",
      greenWeight: { value: { value: "27", unit: "lb/ft3" }, standIn: false },
      radialShrinkage: { value: { value: "0.024", unit: "" }, standIn: false },
      tangentialShrinkage: { value: { value: "0.05", unit: "" }, standIn: false },
      decay: "resistant",
    });
  });

  it("says of each value that nobody published that another stands in for it", () => {
    const guessed = list.species.filter((row) => row.drying.standIn);
    expect(guessed.length).toBeGreaterThan(0);
    expect(guessed.length).toBeLessThan(list.species.length);
  });

  it("has the members of its trade groups, and the sources that they cite", () => {
    for (const group of list.tradeGroups) {
      expect(group.members.filter((id) => !wood(id))).toEqual([]);
      expect(list.sources).toHaveProperty(group.source);
    }
  });
});

describe("the list of coverings", () => {
  const { coverings, sources } = coveringList();
  const row = (kind: string) => coverings.find((covering) => covering.kind === kind);

  // IRC R905.2.2: asphalt shingles from 2 in 12, doubled underlay below 4 in 12. R905.10.2: lapped metal 3 in 12.
  it("gives the code's least slopes", () => {
    expect(row("asphalt-shingles")?.slopes[0]).toMatchObject({
      rise: { value: "2", unit: "in" },
      from: { source: "irc" },
    });
    expect(row("asphalt-shingles")?.underlay).toEqual([
      { fromRise: { value: "2", unit: "in" }, layers: 2 },
      { fromRise: { value: "4", unit: "in" }, layers: 1 },
    ]);
    expect(row("ribbed-steel")?.slopes[0]).toMatchObject({
      rise: { value: "3", unit: "in" },
      from: { part: "R905.10.2" },
    });
  });

  it("has every source that it cites, and none that it does not", () => {
    const cited = coverings.flatMap((each) => [each.from, each.weightFrom, ...each.slopes.map(({ from }) => from)]);
    expect(Object.keys(sources)).toEqual([...new Set(cited.map(({ source }) => source))].sort());
  });
});
