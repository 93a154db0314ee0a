import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type Asking, estimated, refused } from "./helpers/posting.js";

const file = (name: string) => readFileSync(new URL(`../../demo-data/${name}`, import.meta.url), "utf8");
const root = fileURLToPath(new URL("../..", import.meta.url));

const rails = (catalog: Asking["catalog"]): Asking => ({
  structure: {
    kind: "pieces",
    pieces: [{ name: "rails", section: "2 x 6 in", length: "9 ft", count: 4 }],
  } as Asking["structure"],
  ...(catalog && { catalog }),
});

const HEADER = "department,name,species,section,length,price";
const PINE = "lumber,spf-2x6,spruce-pine-fir,2 x 6 in,10 ft,$8.24";
const table = (...lines: readonly string[]) => [HEADER, ...lines].join("\n");

describe("a price catalog given as the text of a table", () => {
  it("gives the same answer as its JSON", async () => {
    const [table, json] = [
      await estimated(rails({ csv: file("orchard-yard.csv") })),
      await estimated(rails(JSON.parse(file("orchard-yard.json")))),
    ];
    expect({ ...table, about: undefined }).toEqual({ ...json, about: undefined });
    expect(table.about.catalog).toBe("Orchard Road Yard");
  });

  it("takes its currency from beside the table where no row says it", async () => {
    const { decision, about } = await estimated(
      rails({ csv: table(PINE.replace("$8.24", "8.24 CAD")), currency: "CAD" }),
    );
    expect(about.currency).toBe("CAD");
    expect(decision.routes[0]?.cash).toMatchObject({ value: "41.20", unit: "CAD" }); // 4 and a spare, 8.24 each
  });

  it.each([
    ["a currency that nobody gave", { csv: table(PINE) }, "missing-field", /^Line 1: Nothing says in which currency/],
    [
      "a price that is none",
      { csv: table(PINE, PINE.replace("$8.24", "cheap")), currency: "USD" },
      "not-a-quantity",
      /^Line 3, column price: /,
    ],
    [
      "an unknown species",
      { csv: table(PINE.replace("spruce-pine-fir", "spruc")), currency: "USD" },
      "unknown-name",
      /^Line 2, column species: /,
    ],
    [
      "an unknown header",
      { csv: table(PINE).replace("species", "specie"), currency: "USD" },
      "unknown-field",
      /^Line 1: /,
    ],
    ["quotes that do not close", { csv: `${table(PINE)}\n"lumber`, currency: "USD" }, "wrong-shape", /^Line 3: /],
  ] as const)("refuses %s, naming line and column", async (_, catalog, code, says) => {
    const { faults } = await refused(rails(catalog));
    expect(faults).toContainEqual(
      expect.objectContaining({ code, pointer: "/catalog/csv", wrong: expect.stringMatching(says) }),
    );
  });

  it("refuses two currencies, and tells faults of the request beside those of the table", async () => {
    const own = file("orchard-yard.csv");
    expect((await refused(rails({ csv: own, currency: "EUR" }))).faults).toEqual([
      expect.objectContaining({ code: "currency-mix", pointer: "/catalog/currency" }),
    ]);
    const { faults: both } = await refused({ ...rails({ csv: table("lumber") }), colour: "red" } as Asking);
    expect(new Set(both.map(({ pointer }) => pointer))).toEqual(new Set(["/catalog/csv", "/colour"]));
  });

  it("is taken by the command line as a second file", () => {
    const folder = mkdtempSync(join(tmpdir(), "prices-"));
    const [request, prices] = [join(folder, "rails.json"), join(folder, "prices.csv")];
    writeFileSync(request, JSON.stringify(rails(undefined)));
    const run = [`${root}node_modules/.bin/tsx`, ["src/api/cli.ts", "estimate", request, prices, "USD"]] as const;
    writeFileSync(prices, table(PINE));
    expect(execFileSync(...run, { cwd: root, encoding: "utf8" })).toContain("$41.20");
    writeFileSync(prices, table(PINE.replace("$8.24", "cheap")));
    const { status, stderr } = spawnSync(...run, { cwd: root, encoding: "utf8" });
    expect([status, stderr]).toEqual([1, expect.stringContaining("Line 2, column price: ")]);
    rmSync(folder, { recursive: true });
  }, 30_000);
});
