import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkCatalog, checkCsvCatalog } from "../../src/catalog/check.js";

const file = (name: string) => readFileSync(new URL(`../../demo-data/${name}`, import.meta.url), "utf8");
const spf = (parts: object) => ({
  species: "spruce-pine-fir",
  section: "2 x 4 in",
  sold: { by: "piece", lengths: [{ length: "8 ft", price: null }] },
  ...parts,
});

describe("checking a catalog", () => {
  it("finds every entry of a demo usable and names its missing prices", () => {
    const { usable, malformed, unpriced } = checkCatalog(JSON.parse(file("orchard-yard.json")));
    expect(malformed).toEqual([]);
    expect(usable.filter((entry) => entry.unpriced > 0).map(({ name }) => name)).toEqual(["locust-6x6"]);
    expect(unpriced).toMatchObject([{ at: "/lumber/31/sold/lengths/3/price" }]);
  });

  it("keeps sound entries when others have faults, and keeps pointers to the catalog as given", () => {
    const report = checkCatalog({
      name: "Yard",
      currency: "USD",
      lumbr: [],
      lumber: [
        spf({ species: "balsa" }),
        spf({ name: "good" }),
        spf({ section: "2 x 13 in", name: "deck" }),
        spf({ name: "last" }),
      ],
      coverings: [
        {
          covering: "mineral-roll",
          deck: "deck",
          sheets: { form: "rolls", width: "3 ft", length: "36 ft", price: "$60" },
        },
      ],
      finishes: [{ kind: "paint", cans: [] }],
    });
    expect(report.usable.map(({ name }) => name)).toEqual(["good", "last", "mineral-roll"]);
    expect(report.malformed.map(({ at }) => at)).toEqual([
      "/lumbr",
      "/lumber/0/species",
      "/lumber/2/section",
      "/finishes/0/cans",
    ]);
    expect(report.unpriced.map(({ at }) => at)).toEqual([
      "/lumber/1/sold/lengths/0/price",
      "/lumber/3/sold/lengths/0/price",
    ]);
  });

  it("finds nothing usable without name or currency", () => {
    expect(checkCatalog({ currency: "USD", lumber: [spf({})] })).toMatchObject({
      usable: [],
      malformed: [{ code: "missing-field", at: "/name" }],
    });
    expect(checkCatalog("x").usable).toEqual([]);
  });

  it("asks no price of a machine that is only hired, but one of a machine with neither", () => {
    const equipment = [{ item: "auger", hirePerDay: "$98/day" }, { item: "planer" }];
    const { unpriced } = checkCatalog({ name: "Yard", currency: "USD", equipment });
    expect(unpriced.map(({ at }) => at)).toEqual(["/equipment/1/hirePerDay", "/equipment/1/purchase"]);
  });

  it("takes a deck by the name that its entry was given, and drops the second of two equal names", () => {
    const sheets = { form: "rolls", width: "3 ft", length: "36 ft", price: "$60" };
    const report = checkCatalog({
      name: "Yard",
      currency: "USD",
      lumber: [spf({}), spf({}), spf({ name: "a" }), spf({ name: "a" })],
      coverings: [{ covering: "mineral-roll", deck: "spruce-pine-fir-2x4-2", sheets }],
    });
    expect(report.usable.map(({ name }) => name)).toEqual([
      "spruce-pine-fir-2x4",
      "spruce-pine-fir-2x4-2",
      "a",
      "mineral-roll",
    ]);
    expect(report.malformed).toMatchObject([{ code: "duplicate-name", at: "/lumber/3/name" }]);
  });

  it("refuses more entries than one list may have, without reading each", () => {
    const report = checkCatalog({ name: "Yard", currency: "USD", lumber: Array.from({ length: 401 }, () => spf({})) });
    expect(report).toMatchObject({ usable: [], malformed: [{ code: "too-large", at: "/lumber" }] });
  });

  it("gets through more faulty entries than one answer can name", () => {
    const lumber = Array.from({ length: 300 }, (_, i) =>
      spf({ name: `n${i}`, species: i % 3 === 0 ? "hem-fir" : "balsa" }),
    );
    const { usable, malformed } = checkCatalog({ name: "Yard", currency: "USD", lumber });
    expect([usable.length, malformed.length]).toEqual([100, 50]);
  });

  it("names line and column in CSV", () => {
    const lines = file("orchard-yard.csv").split("\n");
    const spoilt = lines.map((line, i) => (i === 2 ? line.replace("spruce-pine-fir,", "spruce,") : line)).join("\n");
    const report = checkCsvCatalog(spoilt);
    expect(report.malformed).toMatchObject([{ code: "unknown-name", at: "/3/species" }]);
    expect(report.usable.length).toBe(checkCsvCatalog(file("orchard-yard.csv")).usable.length - 1);
  });
});
