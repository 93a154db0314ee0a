import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Exposure } from "../../src/catalog/fasteners.js";
import {
  consumablePrice,
  coveringOffers,
  equipmentOffer,
  type Found,
  fastenerOffers,
  finishOffers,
  lumberOffers,
  sameSection,
  servicePrice,
} from "../../src/catalog/look-up.js";
import { type PriceCatalog, parsePriceCatalog } from "../../src/catalog/price-catalog.js";
import { toSection } from "../../src/catalog/reading.js";
import { exactly } from "../../src/estimate/quantity/text.js";

function catalogOf(input: unknown): PriceCatalog {
  const reading = parsePriceCatalog(input);
  if ("faults" in reading) throw new Error(JSON.stringify(reading.faults));
  return reading.catalog;
}

const yard = catalogOf(JSON.parse(readFileSync(new URL("../../demo-data/orchard-yard.json", import.meta.url), "utf8")));
const bare = catalogOf({ name: "Bare", currency: "EUR" });
const outdoors: Exposure = { climate: "outdoors", treated: false, tannin: false };
const names = (found: Found<{ readonly name: string }>) =>
  found.kind === "offered" ? found.offers.map(({ name }) => name) : found.add;

describe("look-ups in a catalog", () => {
  it("answer a missing price with what to add, in the catalog's currency and the item's unit", () => {
    expect(consumablePrice(bare, "fuel")).toEqual({
      kind: "unpriced",
      at: "",
      add: "Add “fuel” to consumables, with a price in EUR/gal.",
    });
    expect(servicePrice(bare, "delivery")).toMatchObject({ add: "Add “delivery” to services, with a price in EUR." });
    expect(equipmentOffer(bare, "planer")).toMatchObject({ kind: "not-offered", add: "Add “planer” to equipment." });
    expect(names(finishOffers(bare, "paint"))).toBe("Add a finish of kind “paint” to finishes.");
    expect(names(coveringOffers(bare, "membrane"))).toBe("Add a covering of kind “membrane” to coverings.");
  });

  it("find what is there", () => {
    expect(consumablePrice(yard, "fuel")).toMatchObject({ kind: "priced" });
    expect(servicePrice(yard, "milling-per-board-foot")).toMatchObject({ kind: "priced" });
    expect(equipmentOffer(yard, "scaffold")).toMatchObject({ item: "scaffold" });
    expect(names(finishOffers(yard, "oil-stain"))).toEqual(["oil-stain"]);
    expect(names(coveringOffers(yard, "ribbed-steel"))).toEqual(["ribbed-painted", "ribbed-galvalume"]);
  });

  it("give of bolts that are long enough only the shortest, and only what lasts there", () => {
    const bolt = { kind: "hex-bolt", diameter: exactly("1/2 in"), length: exactly("7.2 in"), atLeast: true } as const;
    expect(names(fastenerOffers(yard, { ...bolt, exposure: outdoors }))).toEqual([
      "bolt-1-2x8",
      "bolt-1-2x8-stainless",
    ]);
    expect(names(fastenerOffers(yard, { ...bolt, length: exactly("13 in"), exposure: outdoors }))).toBe(
      "Add “hex-bolt” to fasteners, 0.5 in diameter, at least 13 in long.",
    );
    const screw = { kind: "deck-screw", length: exactly("2 1/2 in") } as const;
    expect(names(fastenerOffers(yard, { ...screw, exposure: { ...outdoors, tannin: true } }))).toBe(
      "Add “deck-screw” to fasteners, 2.5 in long; on offer only as coated, which does not last there.",
    );
  });

  it("find nails by penny and post bases by the post", () => {
    expect(names(fastenerOffers(yard, { kind: "common-nail", penny: "16d", exposure: outdoors }))).toEqual([
      "nail-16d",
    ]);
    const base = { kind: "post-base", fits: toSection("6 x 6 in"), exposure: outdoors } as const;
    expect(names(fastenerOffers(yard, base))).toEqual(["post-base-6x6-rough"]);
  });

  it("find lumber by wood, real section, treatment and mark", () => {
    const actual = toSection("5 1/2 x 1 1/2 in");
    expect(names(lumberOffers(yard, { actual, treatment: "none" }))).toEqual(["spf-2x6"]);
    expect(names(lumberOffers(yard, { woods: ["black-locust"] }))).toEqual(["locust-4x4", "locust-6x6"]);
    expect(names(lumberOffers(yard, { atLeast: toSection("6 x 6 in") }))).toEqual([
      "pine-rough-6x6",
      "pine-rough-6x8",
      "locust-6x6",
    ]);
    expect(names(lumberOffers(yard, { woods: ["eastern-white-pine"], gradeMarked: true }))).toContain("Add lumber");
  });

  it("take a section either way round", () => {
    expect(sameSection(toSection("2 x 6 in"), toSection("6 x 2 in"))).toBe(true);
    expect(sameSection(toSection("2 x 6 in"), toSection("2 x 5 in"))).toBe(false);
  });
});
