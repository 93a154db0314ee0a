/** Price catalogs that a request does not write out as JSON: one of a demo by its name, or the text of a CSV table. */
import { z } from "zod";
import { type BesideTable, parseCsvCatalog } from "../../catalog/csv.js";
import { type CatalogReading, type PriceCatalog, parsePriceCatalog } from "../../catalog/price-catalog.js";
import { CURRENCIES, lineField, nameField } from "../../catalog/reading.js";
import { isRecord } from "../../catalog/shape-faults.js";
import { type Fault, nearest } from "../faults.js";

/** A demo's catalog by its name. */
export const demoCatalog = z
  .strictObject({ demo: nameField("A catalog that the service ships; see GET /v1/demos.", "orchard-yard") })
  .meta({
    id: "DemoCatalog",
    description: "Prices that the service ships, invented for its demos.",
    examples: [{ demo: "orchard-yard" }],
  });

const LUMBER = [
  "department,name,species,section,length,price",
  "lumber,spf-2x6,spruce-pine-fir,2 x 6 in,10 ft,$8.24",
].join("\n");

/** A table with one row a price. */
export const csvCatalog = z
  .strictObject({
    csv: z
      .string()
      .min(1)
      .max(1_000_000)
      .meta({
        description:
          "The table: a line of headers, then one row a price. demo-data/orchard-yard.csv shows every kind of row. Faults name line and column.",
        examples: [LUMBER],
      }),
    currency: z
      .enum(CURRENCIES)
      .optional()
      .meta({ description: "Currency of every price, where no row of department catalog says it.", examples: ["USD"] }),
    name: lineField(
      "Name of the price list, where no row of department catalog says it.",
      "Orchard Road Yard",
    ).optional(),
  })
  .meta({
    id: "CsvCatalog",
    description: "Prices as the text of a CSV table.",
    examples: [{ csv: LUMBER, currency: "USD" }],
  });

/** The catalog that a request names or gives as a table; undefined where it is JSON, absent or of no known form. */
export function namedCatalog(json: unknown, demoCatalogs: ReadonlyMap<string, unknown>): CatalogReading | undefined {
  if (!isRecord(json) || !isRecord(json.catalog)) return undefined;
  const { demo, csv, currency, name } = json.catalog;
  if (typeof demo === "string") return demoNamed(demo, demoCatalogs);
  if (typeof csv !== "string") return undefined;
  return fromTable(csv, {
    currency: CURRENCIES.find((code) => code === currency),
    name: typeof name === "string" ? name : undefined,
  });
}

/** A fault of a line stands at the table's text: its words name line and column. */
function fromTable(csv: string, beside: BesideTable): CatalogReading {
  const read = parseCsvCatalog(csv, beside);
  if ("faults" in read) return { faults: read.faults.map((one): Fault => ({ ...one, at: "/catalog/csv" })) };
  const { currency } = read.catalog;
  if (!beside.currency || beside.currency === currency) return read;
  const wrong = `The table says that its prices are in ${currency}, and beside it stands ${beside.currency}.`;
  return { faults: [{ code: "currency-mix", at: "/catalog/currency", wrong, cure: "Keep one of the two." }] };
}

const typedDemos = new WeakMap<object, PriceCatalog>();

/** The demo catalog of that name, read once. */
function demoNamed(name: string, demoCatalogs: ReadonlyMap<string, unknown>): CatalogReading {
  const found = demoCatalogs.get(name);
  if (isRecord(found)) return { catalog: typedDemo(name, found) };
  const near = nearest(name, demoCatalogs.keys());
  const cure = near ? `Did you mean ${near}?` : `Name one of ${[...demoCatalogs.keys()].join(", ")}.`;
  const wrong = `No demo catalog is called ${name.slice(0, 60)}.`;
  return { faults: [{ code: "unknown-name", at: "/catalog/demo", wrong, cure }] };
}

/** @throws Error when a catalog that ships with the service has faults: a bug. */
function typedDemo(name: string, json: object): PriceCatalog {
  const known = typedDemos.get(json);
  if (known) return known;
  const read = parsePriceCatalog(json);
  if ("faults" in read) throw new Error(`the demo catalog ${name} has faults`);
  typedDemos.set(json, read.catalog);
  return read.catalog;
}
