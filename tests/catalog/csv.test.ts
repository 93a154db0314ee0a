import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { csvInput, parseCsvCatalog } from "../../src/catalog/csv.js";
import { CSV_COLUMNS, LAYOUTS } from "../../src/catalog/csv-columns.js";
import { parsePriceCatalog } from "../../src/catalog/price-catalog.js";
import type { Quantity } from "../../src/estimate/quantity/quantity.js";

const file = (name: string) => readFileSync(new URL(`../../demo-data/${name}`, import.meta.url), "utf8");
const CATALOG = "catalog,,Yard,USD,,,,,";
const HEADER = "department,name,label,currency,species,section,sold_by,length,price";
const table = (...lines: readonly string[]) => [HEADER, CATALOG, ...lines].join("\n");

function faults(text: string) {
  const reading = parseCsvCatalog(text);
  return "faults" in reading ? reading.faults : [];
}

describe("a catalog as CSV", () => {
  it("of the orchard yard is the same catalog as its JSON", () => {
    const fromJson = parsePriceCatalog(JSON.parse(file("orchard-yard.json")));
    expect(parseCsvCatalog(file("orchard-yard.csv"))).toEqual(fromJson);
    expect("catalog" in fromJson && fromJson.catalog.lumber.length).toBeGreaterThan(25);
  });

  it("takes a price from a number on beside the price of one", () => {
    const rows = [
      "department,name,label,currency,kind,diameter,finish,count,from,price",
      "catalog,,Yard,USD,,,,,,",
      "fasteners,nuts,,,nut,1/2 in,coated,1,,$0.26",
      "fasteners,nuts,,,,,,1,100,$0.20",
    ];
    const reading = parseCsvCatalog(rows.join("\n"));
    const packs = "catalog" in reading ? reading.catalog.fasteners[0]?.packs : undefined;
    expect(packs?.map(({ pieces, from }) => [pieces, from])).toEqual([
      [1, undefined],
      [1, 100],
    ]);
  });

  it("takes bulk prices of lengths, rates, bundles and rolls from rows beside that of the price of one", () => {
    const rows = [
      "department,name,part,label,currency,species,section,sold_by,covering,form,length,width,covers,exposure,from,price",
      "catalog,,,Yard,USD,,,,,,,,,,,",
      "lumber,spf,,,,spruce-pine-fir,2 x 4 in,piece,,,8 ft,,,,,$5.00",
      "lumber,spf,,,,,,,,,8 ft,,,,10,$4.00",
      "lumber,spf,,,,,,,,,10 ft,,,,,$6.00",
      "lumber,fir,,,,spruce-pine-fir,2 x 6 in,length,,,8 ft;10 ft,,,,,$0.90/ft",
      "lumber,fir,,,,,,length,,,,,,,20,$0.80/ft",
      "coverings,strips,,,,,,,asphalt-shingles,courses,,,33.3 ft2,5 in,,$38.50",
      "coverings,strips,,,,,,,,courses,,,,,12,$33.00",
      "coverings,strips,underlay,,,,,,,,72 ft,3 ft,,,,$24.00",
      "coverings,strips,underlay,,,,,,,,,,,,4,$20.00",
    ];
    const reading = parseCsvCatalog(rows.join("\n"));
    const catalog = "catalog" in reading ? reading.catalog : undefined;
    const told = (
      bulk: readonly { readonly from: number; readonly price: { readonly amount: Quantity } }[] | undefined,
    ) => bulk?.map(({ from, price }) => `${from}: ${price.amount.value.toFixed()}`);
    const [spf, fir] = catalog?.lumber.map(({ sold }) => sold) ?? [];
    expect(spf?.by === "piece" && spf.lengths.map(({ bulk }) => told(bulk))).toEqual([["10: 4"], []]);
    expect(fir?.by === "length" && told(fir.bulk)).toEqual(["20: 0.8"]);
    const [strips] = catalog?.coverings ?? [];
    expect(strips?.sheets.form === "courses" && told(strips.sheets.bulk)).toEqual(["12: 33"]);
    expect(told(strips?.underlay?.bulk)).toEqual(["4: 20"]);
  });

  it("refuses a bulk price of a length that no row above gives", () => {
    const rows = [
      "department,name,label,currency,species,section,length,from,price",
      "catalog,,Yard,USD,,,,,",
      "lumber,spf,,,spruce-pine-fir,2 x 4 in,8 ft,,$5.00",
      "lumber,spf,,,,,10 ft,10,$4.00",
    ];
    expect(parseCsvCatalog(rows.join("\n"))).toMatchObject({ faults: [{ code: "missing-field", at: "/4/length" }] });
  });

  it("takes rows of one name as one entry, an empty price as unpriced, and lists by semicolon", () => {
    const { input } = csvInput(
      table(
        "lumber,spf,,,spruce-pine-fir,2 x 4 in,,8 ft,$3.98",
        "lumber,spf,,,,,,10 ft,",
        "lumber,fir,,,hem-fir,4 x 4 in,length,8 ft; 10 ft,$2.35/ft",
      ),
    );
    expect(input).toEqual({
      name: "Yard",
      currency: "USD",
      lumber: [
        {
          name: "spf",
          species: "spruce-pine-fir",
          section: "2 x 4 in",
          sold: { by: "piece", lengths: [{ length: "8 ft", price: "$3.98" }, { length: "10 ft" }] },
        },
        {
          name: "fir",
          species: "hem-fir",
          section: "4 x 4 in",
          sold: { by: "length", lengths: ["8 ft", "10 ft"], price: "$2.35/ft" },
        },
      ],
    });
  });

  it("takes a byte-order mark, Windows line ends, quoted commas and blank lines", () => {
    const text = `\ufeff${table('lumber,a,"Fir, green",,hem-fir,4 x 4 in,,8 ft,$1', "", ",,,,,,,,")}`.replaceAll(
      "\n",
      "\r\n",
    );
    expect(csvInput(text).input).toMatchObject({ lumber: [{ label: "Fir, green" }] });
    expect(faults(text)).toEqual([]);
  });

  it.each([
    [
      "an unknown species",
      "lumber,a,,,hem-fur,2 x 4 in,,8 ft,$1",
      "unknown-name",
      "/3/species",
      "Line 3, column species",
    ],
    ["a bare number", "lumber,a,,,hem-fir,2 x 4 in,,8,$1", "not-a-quantity", "/3/length", "Line 3, column length"],
    ["foreign money", "lumber,a,,,hem-fir,2 x 4 in,,8 ft,€1", "currency-mix", "/3/price", "Line 3, column price"],
    ["an absent section", "lumber,a,,,hem-fir,,,8 ft,$1", "missing-field", "/3", "Line 3: “section” is absent"],
    ["an unknown department", "lumbr,a,,,,,,,", "unknown-name", "/3/department", "“lumbr”"],
    ["no department", ",a,,,hem-fir,,,,", "missing-field", "/3/department", "no department"],
    ["an unknown way of selling", "lumber,a,,,hem-fir,2 x 4 in,pound,8 ft,$1", "unknown-name", "/3/sold_by", "“pound”"],
    ["a cell that means nothing there", "services,a,,,hem-fir,,,,", "unknown-field", "/3/species", "means nothing"],
    ["a formula", "lumber,a,=1+1,,hem-fir,2 x 4 in,,8 ft,$1", "wrong-shape", "/3/label", "spreadsheet formula"],
    ["a formula by at-sign", "lumber,a,@SUM(A1),,hem-fir,2 x 4 in,,8 ft,$1", "wrong-shape", "/3/label", "formula"],
    ["a formula by minus", "lumber,a,-A1,,hem-fir,2 x 4 in,,8 ft,$1", "wrong-shape", "/3/label", "formula"],
    ["too few cells", "lumber,a", "wrong-shape", "/3", "There are 2 cells under 9 headers"],
    ["an open quote", 'lumber,"a,,,,,,,', "wrong-shape", "/3", "quotes do not close"],
    ["a stray quote", 'lumber,a"b,,,,,,,', "wrong-shape", "/3", "quotes do not close"],
  ])("names line and column of %s", (_, row, code, at, wrong) => {
    const [first] = faults(table(row));
    expect(first).toMatchObject({ code, at });
    expect(first?.wrong).toContain(wrong);
  });

  it("takes a negative number for what it is, not for a formula", () => {
    expect(faults(table("lumber,a,,,hem-fir,2 x 4 in,,-8 ft,$1"))).toMatchObject([
      { code: "out-of-range", at: "/3/length" },
    ]);
  });

  it("refuses a row that contradicts the first of its entry, or lists lengths in two forms", () => {
    const [first] = faults(table("lumber,a,,,hem-fir,2 x 4 in,,8 ft,$1", "lumber,a,,,hem-fir,2 x 6 in,,10 ft,$2"));
    expect(first).toMatchObject({ code: "duplicate-name", at: "/4/section" });
    expect(first?.wrong).toContain("differs from line 3");
    const header = "department,name,label,currency,species,section,sold_by,length,shortest,longest,step,price";
    const text = [header, "catalog,,Yard,USD,,,,,,,,", "lumber,a,,,hem-fir,2 x 4 in,length,8 ft,8 ft,,,$1/ft"].join(
      "\n",
    );
    expect(faults(text)[0]).toMatchObject({ code: "cannot-build", at: "/3/shortest" });
    const mixed = [
      header,
      "catalog,,Yard,USD,,,,,,,,",
      "lumber,a,,,hem-fir,2 x 4 in,length,,8 ft,9 ft,1 ft,$1/ft",
      "lumber,a,,,,,piece,8 ft,,,,$1",
    ];
    expect(faults(mixed.join("\n"))[0]).toMatchObject({ code: "duplicate-name", at: "/4/sold_by" });
  });

  it.each([
    ["department,name,name", "duplicate-name", "stands twice"],
    ["department,nmae", "unknown-field", "“nmae”"],
    ["name,label", "missing-field", "“department”"],
    ["department,__proto__", "unknown-field", "“__proto__”"],
    ["department,constructor", "unknown-field", "“constructor”"],
    ["", "wrong-shape", "empty"],
  ])("refuses the headers %s", (header, code, wrong) => {
    const [first] = faults(header);
    expect(first).toMatchObject({ code });
    expect(first?.wrong).toContain(wrong);
  });

  it("does not let a name or department reach for built-in properties", () => {
    expect(faults(table("lumber,__proto__,,,hem-fir,2 x 4 in,,8 ft,$1"))).toMatchObject([
      { code: "wrong-shape", at: "/3/name" },
    ]);
    expect(faults(table("constructor,a,,,,,,,"))).toMatchObject([{ code: "unknown-name", at: "/3/department" }]);
  });

  it("is refused unread when it is larger than any price list", () => {
    expect(faults("x".repeat(1_000_001))).toMatchObject([{ code: "too-large" }]);
    expect(faults([HEADER, ...Array.from({ length: 4001 }, () => ",,,,,,,,x")].join("\n"))).toMatchObject([
      { code: "too-large" },
    ]);
  });

  it("uses no column that is not documented, and documents none that is not used", () => {
    const used = Object.values(LAYOUTS).flatMap(({ own, each }) =>
      [...own, ...(each?.puts ?? [])].map(([column]) => column),
    );
    expect(new Set([...used, "department", "part"])).toEqual(new Set(Object.keys(CSV_COLUMNS)));
  });
});
