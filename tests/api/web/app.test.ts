/** The form's own parts that need no browser. */
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { csv } from "../../../src/api/web/app/csv.js";
import { valueAt, withValue } from "../../../src/api/web/app/json.js";
import { pastedLogs, pastedWords } from "../../../src/api/web/app/pasted-logs.js";
import { withoutPending } from "../../../src/api/web/app/pending.js";
import { placesOf } from "../../../src/api/web/app/plot-names.js";
import { pricesOf } from "../../../src/api/web/app/price-list.js";
import { emptyPricesCsv, pricesCsv, readPricesCsv } from "../../../src/api/web/app/prices-csv.js";
import { amountUnit } from "../../../src/api/web/app/timed.js";
import { inRuns, said } from "../../../src/api/web/app/words.js";
import { scripts } from "../../../src/api/web/bundle.js";
import { formSpec } from "../../../src/api/web/fields.js";
import { parseCsvCatalog } from "../../../src/catalog/csv.js";
import { CSV_COLUMNS } from "../../../src/catalog/csv-columns.js";
import { gable } from "../../../src/estimate/request/structure-gable.js";

const catalogs = ["orchard-yard", "ferry-yard"].map((name) =>
  JSON.parse(readFileSync(new URL(`../../../demo-data/${name}.json`, import.meta.url), "utf8")),
);

/** null and nothing both say that there is no price. */
const withoutNull = (json: unknown) => JSON.parse(JSON.stringify(json, (_, value) => value ?? undefined));

describe("a request by pointer", () => {
  it("is changed at one place only, and keeps what it does not know", () => {
    const before = { a: { "b/c": [1, 2] }, other: { keep: true } };
    const after = withValue(before, "/a/b~1c/1", 3);
    expect(after).toEqual({ a: { "b/c": [1, 3] }, other: { keep: true } });
    expect(before.a["b/c"]).toEqual([1, 2]);
    expect(valueAt(after, "/a/b~1c/1")).toBe(3);
    expect(valueAt(after, "/a/toString")).toBeUndefined();
  });

  it("loses what is taken out, and the object that it leaves empty", () => {
    expect(withValue({ a: { b: { c: 1 } }, d: 1 }, "/a/b/c", undefined)).toEqual({ d: 1 });
    expect(withValue({ list: [1, 2, 3] }, "/list/1", undefined)).toEqual({ list: [1, 3] });
    expect(withValue({}, "/list", [1])).toEqual({ list: [1] });
  });

  it("begins a list with its first row", () => {
    expect(withValue({}, "/lines/0", { name: "row-1" })).toEqual({ lines: [{ name: "row-1" }] });
    expect(withValue({}, "/logs/-", { name: "log-1" })).toEqual({ logs: [{ name: "log-1" }] });
    expect(withValue({}, "/calibration/0/jobs/0/time", "1 h")).toEqual({ calibration: [{ jobs: [{ time: "1 h" }] }] });
    expect(withValue({}, "/lines/0", undefined)).toEqual({});
  });
});

describe("rows that wait", () => {
  it("are not sent before they are whole, and keep the places of all before them", () => {
    const whole = { amount: "41 ft2", time: "33 min" };
    const of = (...jobs: readonly object[]) => ({ rate: "mill.rate", jobs });
    expect(withoutPending({ calibration: [of({ amount: "41 ft2" })] })).toEqual({});
    expect(withoutPending({ calibration: [of(whole, {}), of({})] })).toEqual({ calibration: [of(whole)] });
    expect(withoutPending({ logs: [{ name: "a", length: "9 ft", smallGirth: "40 in" }, { name: "b" }] })).toEqual({
      logs: [{ name: "a", length: "9 ft", smallGirth: "40 in" }],
    });
  });

  it.each([
    { unit: "ft2/min", of: "ft2" },
    { unit: "person-min/ft3", of: "ft3" },
    { unit: "ft/person-h", of: "ft" },
    { unit: "person-h", of: "" },
  ])("ask for the amount in the rate's own measure: $unit by “$of”", ({ unit, of }) => {
    expect(amountUnit(unit)).toBe(of);
  });
});

describe("tables", () => {
  // RFC 4180, section 2, rules 1, 5, 6 and 7.
  it("are CSV after RFC 4180, in which no text runs as a formula", () => {
    expect(
      csv([
        ["a,b", 'say "x"', "two\nlines"],
        ["=1+1", "-3.5", "@cmd", "-x"],
      ]),
    ).toBe(`"a,b","say ""x""","two\nlines"\r\n'=1+1,-3.5,'@cmd,'-x\r\n`);
  });

  it.each(catalogs)("hold the whole catalog of $name and give it back", (catalog) => {
    const text = pricesCsv(catalog);
    expect(parseCsvCatalog(text)).not.toHaveProperty("faults");
    expect(readPricesCsv(text)).toEqual({ catalog: withoutNull(catalog) });
  });

  it("say line and column of what they can't read", () => {
    const found = readPricesCsv("department,name,colour\nlumber,a,b\n") as { faults: string[] };
    expect(found.faults.join(" ")).toContain("colour");
  });

  it("say a cure once for all that it cures, and at most three faults", () => {
    const faults = (text: string) => (readPricesCsv(text) as { faults: string[] }).faults;
    const heads = ["department", "colour of it", "shop’s own word", "remark by hand", "where it lies", "who said so"];
    const found = faults(`${heads.join(",")}\n`);
    expect(found).toHaveLength(2);
    for (const head of heads.slice(1, 4)) expect(found[0]).toContain(`“${head}”`);
    expect(found[0]?.match(/Known headers/g)).toHaveLength(1);
    expect(found[1]).toBe("And 2 more.");
    expect(faults(`department,name\n${"lumbre,x\n".repeat(400)}`).at(-1)).toMatch(/^And at least \d+ more\.$/);
    expect(faults("department,name,colour of it\n").join(" ")).not.toContain("more.");
  });

  it("of prices can be had empty, with every head, and read back", () => {
    const text = emptyPricesCsv();
    expect(text.split("\r\n")[0]).toBe(Object.keys(CSV_COLUMNS).join(","));
    expect(parseCsvCatalog(text)).not.toHaveProperty("faults");
    expect(readPricesCsv(text)).toEqual({ catalog: { name: "My prices", currency: "USD" } });
  });

  it("of prices name every price of the catalog once", () => {
    for (const catalog of catalogs) {
      const count = [...JSON.stringify(catalog).matchAll(/"(?:price|hirePerDay|purchase|resale|rate)":/g)].length;
      const rows = pricesOf(catalog).flatMap((one) => one.rows);
      expect(rows).toHaveLength(count);
      for (const { pointer } of rows) expect(valueAt(catalog, pointer)).not.toBeUndefined();
    }
  });
});

describe("pasted logs", () => {
  const { log } = formSpec();

  it("are read in the usual order, or by their heads", () => {
    const row = { name: "a", species: "white-oak", length: "10 ft", smallDiameter: "12 in" };
    expect(pastedLogs("a\tWhite Oak\t10 ft\t12 in\n", log).logs).toEqual([row]);
    expect(pastedLogs("Length;Small diameter;Name;Species\r\n10 ft;12 in;a;white oak\r\n", log).logs).toEqual([row]);
  });

  it("are read by the heads of the form's own table, and by other usual words", () => {
    const pasted = pastedLogs("Log\tLength\tSmall end\tHow many\npine-7\t10 ft\t12 in\t3\n", log);
    expect(pasted.logs).toEqual([{ name: "pine-7", length: "10 ft", smallDiameter: "12 in", count: 3 }]);
    expect(pastedWords(pasted)).toBe("1 log added.");
    const usual = pastedLogs("Wood,Length,Diameter,Qty\nWhite oak,10 ft,12 in,2\nWhite oak,9 ft,11 in,", log);
    expect(usual.logs).toEqual([
      { species: "white-oak", length: "10 ft", smallDiameter: "12 in", count: 2 },
      { species: "white-oak", length: "9 ft", smallDiameter: "11 in" },
    ]);
  });

  it("name every column that is left out, and only where it holds something", () => {
    const pasted = pastedLogs("Log\tLength\tColour\tDiameter\tSmall end\tBy\na\t10 ft\tred\t12 in\t13 in\t\tx", log);
    expect(pasted.logs).toEqual([{ name: "a", length: "10 ft", smallDiameter: "12 in" }]);
    expect(pasted.unknown).toEqual(["Colour", "Small end", "column 7"]);
    expect(pastedWords(pasted)).toContain("not understood and left out: “Colour”, “Small end”, “column 7”");
    expect(pastedLogs("a,pine,10 ft,12 in,,,2,near the gate", log).unknown).toEqual(["column 8"]);
    expect(pastedLogs("log\twhite oak\t10 ft\t12 in", log).logs).toHaveLength(1); // no heads: it has figures
  });

  it("keep what can't be read, for the service to say what is wrong", () => {
    expect(pastedLogs("a,pine,ten,,,,x", log).logs).toEqual([
      { name: "a", species: "pine", length: "ten", count: "x" },
    ]);
  });
});

describe("names in a plot", () => {
  const paper = { width: 440, height: 228, size: 17 };
  const width = (name: string) => name.length * 17 * 0.56;
  const names = ["Mill all the logs serve", "Have a sawyer mill it", "Best mix", "Buy everything"];

  it("stand off one another wherever the points lie, or as near as there is room", () => {
    const clear = [
      [
        [318, 190],
        [318, 182],
        [318, 186],
        [110, 60],
      ],
      [
        [110, 60],
        [112, 62],
        [330, 180],
        [332, 182],
      ],
      [
        [318, 60],
        [250, 90],
        [180, 120],
        [110, 180],
      ],
    ];
    for (const points of clear) {
      const places = placesOf(
        points.map(([x = 0, y = 0], i) => ({ x, y, name: names[i] ?? "" })),
        paper,
      );
      const boxes = places.map(({ x, y, anchor }, i) => {
        const wide = width(names[i] ?? "");
        const from = anchor === "start" ? x : anchor === "end" ? x - wide : x - wide / 2;
        return { from, to: from + wide, top: y - 13, foot: y };
      });
      for (const [i, a] of boxes.entries()) {
        expect(a.from).toBeGreaterThanOrEqual(0);
        expect(a.to).toBeLessThanOrEqual(paper.width);
        for (const b of boxes.slice(i + 1)) {
          expect(a.from < b.to && b.from < a.to && a.top < b.foot && b.top < a.foot).toBe(false);
        }
      }
    }
  });
});

describe("figures in words", () => {
  it.each([
    { value: "-1154.42", unit: "USD", words: "−$1154.42" },
    { value: "28.9312", unit: "USD/person-h", words: "$28.93 per hour" },
    { value: "1.43", unit: "USD/bf", words: "$1.43 per board foot" },
    { value: "12", unit: "", words: "12" },
    { value: "22.62", unit: "deg", words: "22.62°" },
  ])("read $words", ({ value, unit, words }) => {
    expect(said({ value, unit })).toBe(words);
  });
});

describe("marks", () => {
  it("stand as runs where they follow one another", () => {
    expect(inRuns(["R-09", "R-10", "R-11", "R-13", "T-01"])).toEqual(["R-09–11", "R-13", "T-01"]);
    expect(inRuns([])).toEqual([]);
  });
});

describe("the script", () => {
  it("weighs at most 150 KB packed, the part for CSV included", async () => {
    const sizes = [...(await scripts()).values()].map((text) => gzipSync(text).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(150_000);
  });

  it("asks with every field of every structure, each with its hint", () => {
    const { structures } = formSpec();
    expect(structures.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["gable", "pieces"]));
    for (const { fields } of structures) for (const { label, hint } of fields) expect(label && hint).toBeTruthy();
    const keys = structures.find(({ kind }) => kind === "gable")?.fields.map(({ key }) => key);
    expect(keys).toEqual(Object.keys(gable.shape).filter((key) => key !== "kind"));
  });
});
