import { readFileSync } from "node:fs";
import * as ajvModule from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { pieceCost } from "../../src/catalog/offers/lumber.js";
import type { Price } from "../../src/catalog/offers/price.js";
import { type PriceCatalog, parsePriceCatalog, priceCatalogSchema } from "../../src/catalog/price-catalog.js";
import type { Fault } from "../../src/estimate/faults.js";
import { inUnit } from "../../src/estimate/quantity/quantity.js";
import { exactly, markedSection } from "../../src/estimate/quantity/text.js";

const demo = (name: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), "utf8"));

const yard = (parts: object) => ({ name: "Yard", currency: "USD", ...parts });
const spf = (parts: object = {}) => ({
  species: "spruce-pine-fir",
  section: "2 x 6 in",
  sold: { by: "piece", lengths: [{ length: "8 ft", price: "$6.38" }] },
  ...parts,
});

function read(input: unknown): PriceCatalog {
  const reading = parsePriceCatalog(input);
  if ("faults" in reading) throw new Error(JSON.stringify(reading.faults));
  return reading.catalog;
}

function faults(input: unknown): readonly Fault[] {
  const reading = parsePriceCatalog(input, "/catalog");
  return "faults" in reading ? reading.faults : [];
}

const dollars = (price: Price) => (price.kind === "priced" ? price.amount.value.toFixed() : price.add);
const firstLumber = (catalog: PriceCatalog) => catalog.lumber[0] as PriceCatalog["lumber"][number];

describe("lumber of a catalog", () => {
  it("is dressed as the standard says, named and sized when the entry does not say", () => {
    const offer = firstLumber(read(yard({ lumber: [spf()] })));
    expect(markedSection(offer.actual.thickness, offer.actual.width, "inch-pound")).toBe("1 1/2 × 5 1/2 in");
    expect(offer).toMatchObject({
      name: "spruce-pine-fir-2x6",
      sizing: "nominal",
      seasoning: "dry",
      surface: "dressed",
      treatment: "none",
      gradeMarked: false,
      bundle: 1,
      at: "/lumber/0",
    });
  });

  it("in millimetres measures what it says", () => {
    const lumber = [spf({ section: "45 x 145 mm", sold: { by: "length", price: "$3/m", lengths: ["3 m"] } })];
    const offer = firstLumber(read(yard({ lumber })));
    expect([offer.sizing, markedSection(offer.actual.thickness, offer.actual.width, "metric")]).toEqual([
      "actual",
      "45 × 145 mm",
    ]);
  });

  it("of timber size is green when nothing is said", () => {
    const offer = firstLumber(read(yard({ lumber: [spf({ section: "6 x 8 in" })] })));
    expect([offer.seasoning, markedSection(offer.actual.thickness, offer.actual.width, "inch-pound")]).toEqual([
      "green",
      "5 1/2 × 7 1/2 in",
    ]);
  });

  // By hand. 2 × 6 × 12 ft is 12 bf nominal; its real volume is 1.5 × 5.5 × 144 = 1188 in³, 8.25 bf. 0.5 m at $3/m.
  it.each([
    [{ by: "volume", measure: "nominal", price: "$2.40/bf", lengths: ["12 ft"] }, "12 ft", "28.8"],
    [{ by: "volume", measure: "actual", price: "$2.40/bf", lengths: ["12 ft"] }, "12 ft", "19.8"],
    [{ by: "volume", measure: "nominal", price: "$2400/mbf", lengths: ["12 ft"] }, "12 ft", "28.8"],
    [{ by: "length", price: "$1.85/ft", lengths: ["12 ft"] }, "12 ft", "22.2"],
    [{ by: "length", price: "$3/m", lengths: ["0.5 m"] }, "500 mm", "1.5"],
    [{ by: "piece", lengths: [{ length: "12 ft", price: "$9.92" }] }, "144 in", "9.92"],
  ])("costs for one piece what its sale says: %j", (sold, length, cost) => {
    const offer = firstLumber(read(yard({ lumber: [spf({ sold })] })));
    expect(dollars(pieceCost(offer, exactly(length)))).toBe(cost);
  });

  it("has no price, rather than none to pay, where a price is null, absent, or the length is not on offer", () => {
    const lengths = [{ length: "8 ft", price: null }, { length: "10 ft" }];
    const offer = firstLumber(read(yard({ lumber: [spf({ sold: { by: "piece", lengths } })] })));
    for (const length of ["8 ft", "10 ft"]) {
      expect(pieceCost(offer, exactly(length))).toMatchObject({
        kind: "unpriced",
        add: expect.stringContaining("USD"),
      });
    }
    expect(pieceCost(offer, exactly("9 ft")).kind).toBe("unpriced");
    const rate = firstLumber(read(yard({ lumber: [spf({ sold: { by: "length", price: null, lengths: ["8 ft"] } })] })));
    expect(pieceCost(rate, exactly("8 ft")).kind).toBe("unpriced");
  });

  it("takes a price of zero as given: free is a price", () => {
    const offer = firstLumber(
      read(yard({ lumber: [spf({ sold: { by: "piece", lengths: [{ length: "8 ft", price: "$0" }] } })] })),
    );
    expect(dollars(pieceCost(offer, exactly("8 ft")))).toBe("0");
  });

  it("lists lengths from shortest to longest by the step, sorted and once each", () => {
    const lengths = (given: unknown) => {
      const { sold } = firstLumber(
        read(yard({ lumber: [spf({ sold: { by: "length", price: "$1/ft", lengths: given } })] })),
      );
      return sold.by === "length" ? sold.lengths.map((length) => inUnit(length, "ft").toFixed()) : [];
    };
    expect(lengths({ shortest: "8 ft", longest: "13 ft", step: "2 ft" })).toEqual(["8", "10", "12"]);
    expect(lengths(["12 ft", "8 ft", "96 in"])).toEqual(["8", "12"]);
  });

  it("tells entries of one wood and section apart by number, and refuses one name given twice", () => {
    expect(read(yard({ lumber: [spf(), spf()] })).lumber.map(({ name }) => name)).toEqual([
      "spruce-pine-fir-2x6",
      "spruce-pine-fir-2x6-2",
    ]);
    expect(faults(yard({ lumber: [spf({ name: "a" }), spf({ name: "a" })] }))).toMatchObject([
      { code: "duplicate-name", at: "/catalog/lumber/1/name" },
    ]);
  });

  it.each([
    [spf({ section: "2 x 13 in" }), "unknown-name", "/section"],
    [spf({ surface: "rough" }), "missing-field", "/actual"],
    [spf({ actual: "2 1/2 x 5 in" }), "out-of-range", "/actual"],
    [
      spf({ sizing: "actual", sold: { by: "volume", measure: "nominal", price: "$1/bf", lengths: ["8 ft"] } }),
      "cannot-build",
      "/sold/measure",
    ],
    [
      spf({ sold: { by: "length", price: "$1/ft", lengths: { shortest: "9 ft", longest: "8 ft", step: "1 ft" } } }),
      "out-of-range",
      "/sold/lengths/longest",
    ],
    [
      spf({ sold: { by: "length", price: "$1/ft", lengths: { shortest: "1 ft", longest: "99 ft", step: "1 in" } } }),
      "too-large",
      "/sold/lengths/step",
    ],
    [
      spf({ sold: { by: "piece", lengths: [{ length: "8 ft" }, { length: "96 in" }] } }),
      "duplicate-name",
      "/sold/lengths/1/length",
    ],
    [spf({ sold: { by: "volume", price: "$1/bf", lengths: ["8 ft"] } }), "missing-field", "/sold/measure"],
    [spf({ sold: { by: "bundle" } }), "unknown-name", "/sold/by"],
    [spf({ grade: "" }), "out-of-range", "/grade"],
    [spf({ species: "balsa" }), "unknown-name", "/species"],
  ])("is refused with its place: %j", (entry, code, at) => {
    expect(faults(yard({ lumber: [entry] }))).toMatchObject([{ code, at: `/catalog/lumber/0${at}` }]);
  });
});

describe("the other departments", () => {
  it.each([
    // By the nail table: 49 of 16d common to the pound; 5 lb are 245.
    [{ kind: "common-nail", penny: "16d", finish: "plain", packs: [{ weight: "5 lb" }] }, 245, "table"],
    [{ kind: "roofing-nail", length: "1 1/2 in", finish: "plain", packs: [{ weight: "1 lb" }] }, 180, "table"],
    // 2.5 kg of 3.1 × 80 mm shanks: 7.85 g/cm³ × π/4 × 0.31² × 8 = 4.74 g each, 527 whole ones.
    [
      { kind: "ring-shank-nail", diameter: "3.1 mm", length: "80 mm", finish: "plain", packs: [{ weight: "2.5 kg" }] },
      527,
      "shank",
    ],
    [
      {
        kind: "deck-screw",
        diameter: "5 mm",
        length: "80 mm",
        finish: "plain",
        packs: [{ weight: "1 kg", count: 90 }],
      },
      90,
      "label",
    ],
  ])("count the fasteners of a pack: %j", (entry, pieces, countedBy) => {
    const [offer] = read(yard({ fasteners: [entry] })).fasteners;
    expect(offer?.packs).toMatchObject([{ pieces, countedBy, price: { kind: "unpriced" } }]);
  });

  it.each([
    [{ kind: "common-nail", finish: "plain", packs: [{ count: 1 }] }, "missing-field", "/penny"],
    [{ kind: "hex-bolt", diameter: "1/2 in", finish: "plain", packs: [{ count: 1 }] }, "missing-field", "/length"],
    [{ kind: "post-base", finish: "plain", packs: [{ count: 1 }] }, "missing-field", "/fits"],
    [{ kind: "finish-nail", penny: "60d", finish: "plain", packs: [{ count: 1 }] }, "unknown-name", "/penny"],
    [{ kind: "rafter-tie", finish: "plain", packs: [{}] }, "missing-field", "/packs/0/count"],
    [
      { kind: "deck-screw", diameter: "5 mm", length: "80 mm", finish: "plain", packs: [{ weight: "1 kg" }] },
      "missing-field",
      "/packs/0/count",
    ],
    [{ kind: "rafter-tie", finish: "galvanised", packs: [{ count: 1 }] }, "unknown-name", "/finish"],
    [{ kind: "rafter-tie", finish: "plain", packs: [] }, "out-of-range", "/packs"],
  ])("refuse a fastener that cannot be told apart or counted: %j", (entry, code, at) => {
    expect(faults(yard({ fasteners: [entry] }))).toMatchObject([{ code, at: `/catalog/fasteners/0${at}` }]);
  });

  it("refuse a deck that no lumber entry is called, and suggest the near one", () => {
    const sheets = { form: "rolls", width: "3 ft", length: "36 ft" };
    const catalog = yard({
      lumber: [spf({ name: "deck-board" })],
      coverings: [{ covering: "mineral-roll", sheets, deck: "deck-bord" }],
    });
    expect(faults(catalog)).toMatchObject([
      { code: "unknown-name", at: "/catalog/coverings/0/deck", cure: "Did you mean “deck-board”?" },
    ]);
  });

  it("refuse an item that is priced twice, a machine that gains in value, and panels shorter than the shortest", () => {
    expect(faults(yard({ services: [{ item: "delivery" }, { item: "delivery" }] }))).toMatchObject([
      { code: "duplicate-name", at: "/catalog/services/1/item" },
    ]);
    expect(faults(yard({ equipment: [{ item: "planer", purchase: "$600", resale: "$700" }] }))).toMatchObject([
      { code: "out-of-range", at: "/catalog/equipment/0/resale" },
    ]);
    const sold = { by: "cut-length", price: "$4/ft", shortest: "9 ft", longest: "8 ft", step: "1 in" };
    const coverings = [{ covering: "ribbed-steel", sheets: { form: "panels", coverWidth: "36 in", sold } }];
    expect(faults(yard({ coverings }))).toMatchObject([
      { code: "out-of-range", at: "/catalog/coverings/0/sheets/sold/longest" },
    ]);
  });

  it("ask for each item's price in its own unit", () => {
    expect(faults(yard({ consumables: [{ item: "fuel", price: "$3.45" }] }))).toMatchObject([
      { code: "wrong-dimension", cure: "Give a rate, such as 3.60 USD/gal." },
    ]);
    const [fuel] = read({
      ...yard({ consumables: [{ item: "fuel", price: "1.78 EUR/L" }] }),
      currency: "EUR",
    }).consumables;
    expect(fuel?.price.kind === "priced" && inUnit(fuel.price.amount, "EUR/gal").toFixed(4)).toBe("6.7380"); // × 3.785411784
  });
});

describe("a whole catalog", () => {
  it("in one currency refuses money of another, wherever it stands", () => {
    const input = { ...yard({ finishes: [{ kind: "paint", cans: [{ size: "1 gal", price: "€40" }] }] }) };
    expect(faults(input)).toMatchObject([{ code: "currency-mix", at: "/catalog/finishes/0/cans/0/price" }]);
    expect(faults({ ...input, currency: "EUR" })).toEqual([]);
  });

  it.each([null, 3, "x", [], { name: "Yard" }, { name: "Yard", currency: "XYZ" }])(
    "that is none is refused: %j",
    (input) => {
      expect(faults(input).length).toBeGreaterThan(0);
    },
  );

  it.each(["orchard-yard", "ferry-yard"])(
    "of the demos reads without a fault and says that it is invented: %s",
    (name) => {
      expect(read(demo(name)).note).toContain("Invented");
    },
  );

  // An independent validator of JSON Schema must take and refuse what the description says.
  it("is described by a JSON Schema that takes the demos and refuses an unknown field", () => {
    const ajv = new ajvModule.Ajv2020({ strict: false });
    const valid = ajv.compile(z.toJSONSchema(priceCatalogSchema, { io: "input" }));
    expect(valid(demo("orchard-yard"))).toBe(true);
    expect(valid(demo("ferry-yard"))).toBe(true);
    expect(valid({ ...demo("ferry-yard"), lumbr: [] })).toBe(false);
  });

  it("never throws on a spoilt demo: it reads, or names faults with place and cure (seed 20)", () => {
    const spoiltBy = fc.oneof(
      fc.constantFrom<unknown>(
        null,
        "",
        "x",
        "-1 ft",
        "$1e9",
        "1/3 in",
        "€5",
        0,
        1.5,
        true,
        [],
        {},
        { value: "1", unit: "kg" },
      ),
      fc.string({ maxLength: 70 }),
    );
    const source = JSON.stringify(demo("ferry-yard"));
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 2, maxLength: 7 }), spoiltBy, (walk, value) => {
        const input = JSON.parse(source);
        spoil(input, walk, value);
        const reading = parsePriceCatalog(input);
        if (!("faults" in reading)) return;
        for (const fault of reading.faults) {
          expect(fault.at === "" || fault.at.startsWith("/")).toBe(true);
          expect(fault.wrong && fault.cure).toBeTruthy();
          expect(fault.wrong.length + fault.cure.length).toBeLessThan(1000);
        }
      }),
      { seed: 20, numRuns: 150 },
    );
  });
});

/** Replaces one value below `input`, found by walking down by the numbers. */
function spoil(input: Record<string, unknown> | unknown[], walk: readonly number[], value: unknown): void {
  let owner = input as Record<string, unknown>;
  for (const [depth, step] of walk.entries()) {
    const keys = Object.keys(owner);
    const key = keys[step % keys.length];
    if (key === undefined) return;
    const next = owner[key];
    if (depth === walk.length - 1 || typeof next !== "object" || next === null) {
      owner[key] = value;
      return;
    }
    owner = next as Record<string, unknown>;
  }
}
