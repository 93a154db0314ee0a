import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  consumablePrice,
  coveringOffers,
  equipmentOffer,
  type Found,
  finishOffers,
  sameSection,
  servicePrice,
} from "../../src/catalog/look-up.js";
import { type PriceCatalog, parsePriceCatalog } from "../../src/catalog/price-catalog.js";
import { toSection } from "../../src/catalog/reading.js";

function catalogOf(input: unknown): PriceCatalog {
  const reading = parsePriceCatalog(input);
  if ("faults" in reading) throw new Error(JSON.stringify(reading.faults));
  return reading.catalog;
}

const yard = catalogOf(JSON.parse(readFileSync(new URL("../../demo-data/orchard-yard.json", import.meta.url), "utf8")));
const bare = catalogOf({ name: "Bare", currency: "EUR" });
const names = (found: Found<{ readonly name: string }>) =>
  found.kind === "offered" ? found.offers.map(({ name }) => name) : found.add;

describe("look-ups in a catalog", () => {
  it("answer a missing price with what to add, in the catalog's currency and the item's unit", () => {
    expect(consumablePrice(bare, "fuel")).toEqual({
      kind: "unpriced",
      at: "",
      add: "Add “fuel” to consumables, with a price in EUR/L.",
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

  it("take a section either way round", () => {
    expect(sameSection(toSection("2 x 6 in"), toSection("6 x 2 in"))).toBe(true);
    expect(sameSection(toSection("2 x 6 in"), toSection("2 x 5 in"))).toBe(false);
  });
});
