/** A price catalog as CSV and back, in the columns that the service reads. Loaded when it is asked for. */
import { csvInput } from "../../../catalog/csv.js";
import { CSV_COLUMNS, LAYOUT_CELLS, LAYOUTS, type Layout, type Put } from "../../../catalog/csv-columns.js";
import { MOST_FAULTS } from "../../../catalog/shape-faults.js";
import type { Fault } from "../../../estimate/faults.js";
import { csv } from "./csv.js";
import { below, type Fields, isFields, type Json, valueAt } from "./json.js";

type Cells = Readonly<Record<string, string>>;

/** More faults of a table than this at once confuse. */
const MOST_TOLD = 3;

/** The catalog, or the first faults of the table in words. Prices themselves are checked with the next estimate. */
export function readPricesCsv(text: string): { readonly catalog: Json } | { readonly faults: readonly string[] } {
  const { input, faults } = csvInput(text);
  if (input === undefined || faults.length > 0) return { faults: told(faults) };
  return { catalog: input };
}

/** Each cure once, after all that it cures. */
function told(faults: readonly Fault[]): string[] {
  const byCure = new Map<string, string[]>();
  for (const { wrong, cure } of faults.slice(0, MOST_TOLD)) byCure.set(cure, [...(byCure.get(cure) ?? []), wrong]);
  const words = [...byCure].map(([cure, wrongs]) => `${wrongs.join(" ")} ${cure}`);
  const more = faults.length - MOST_TOLD;
  // The reader itself stops at so many.
  return more > 0 ? [...words, `And ${faults.length < MOST_FAULTS ? "" : "at least "}${more} more.`] : words;
}

/** The catalog as CSV: one row for each thing with a price. */
export const pricesCsv = (catalog: Json): string => tableOf(rowsOf(catalog));

/** A table to fill in: every head, and the row that names the catalog and its currency. */
export function emptyPricesCsv(): string {
  const columns = Object.keys(CSV_COLUMNS);
  const own: Cells = { department: "catalog", label: "My prices", currency: "USD" };
  return csv([columns, columns.map((column) => own[column])]);
}

/** A catalog with one row more: a new offer, or another length or pack of one that has the same name. */
export const withRow = (catalog: Json, cells: Cells): ReturnType<typeof readPricesCsv> =>
  readPricesCsv(tableOf([...rowsOf(catalog), cells]));

function tableOf(rows: readonly Cells[]): string {
  const columns = Object.keys(CSV_COLUMNS);
  const used = columns.filter((column) => rows.some((row) => row[column] !== undefined));
  return csv([used, ...rows.map((row) => used.map((column) => row[column]))]);
}

function rowsOf(catalog: Json): Cells[] {
  if (!isFields(catalog)) return [];
  const head = { department: "catalog", ...cellsOf(catalog, LAYOUTS.catalog?.own ?? []) };
  const lists = Object.entries(catalog).filter(([, list]) => Array.isArray(list)) as [string, Fields[]][];
  return [head, ...lists.flatMap(([department, list]) => list.flatMap((entry) => entryRows(department, entry)))];
}

function entryRows(department: string, entry: Fields): Cells[] {
  return layoutKeys(department, entry).flatMap((key) => {
    const layout = LAYOUTS[key];
    if (!layout) return [];
    const deciding = decidingCells(department, key);
    const name = typeof entry.name === "string" ? { name: entry.name } : {};
    const [first = {}, ...others] = layoutRows(layout, entry);
    return [
      { department, ...deciding, ...first },
      ...others.map((row) => ({ department, ...deciding, ...name, ...row })),
    ];
  });
}

/** Which kinds of row an entry needs: coverings have one for each part that they come with. */
function layoutKeys(department: string, entry: Fields): string[] {
  if (department === "lumber") return [`lumber ${valueAt(entry, "/sold/by") ?? "piece"}`];
  if (department !== "coverings") return [department];
  const sheets = ["coverings sheets", valueAt(entry, "/sheets/form"), valueAt(entry, "/sheets/sold/by")].filter(
    Boolean,
  );
  const parts = ["trim", "closure", "sealant", "underlay", "adhesive", "sheathing"].filter(
    (part) => entry[part] ?? entry[`${part}s`],
  );
  return [sheets.join(" "), ...parts.map((part) => `coverings ${part}`)];
}

function decidingCells(department: string, key: string): Cells {
  const words = key.split(" ").slice(1);
  const columns = LAYOUT_CELLS.get(department) ?? [];
  return Object.fromEntries(words.flatMap((word, index) => (columns[index] ? [[columns[index][0], word]] : [])));
}

function layoutRows(layout: Layout, entry: Fields): Cells[] {
  const own = cellsOf(entry, layout.own);
  if (!layout.each) return [own];
  const list = valueAt(entry, below("", ...layout.each.into.split(".")));
  const each = layout.each.puts;
  const items = Array.isArray(list) ? list.map((item) => cellsOf(item, each)) : [];
  return items.length === 0 ? [own] : items.map((item, index) => (index === 0 ? { ...own, ...item } : item));
}

function cellsOf(entry: Json, puts: readonly Put[]): Cells {
  return Object.fromEntries(
    puts.flatMap(([column, path, form]) => {
      const value = valueAt(entry, below("", ...path.split(".")));
      const text = cellText(value, form);
      return text === undefined ? [] : [[column, text]];
    }),
  );
}

function cellText(value: Json, form: Put[2]): string | undefined {
  if (value === undefined || value === null) return undefined;
  if (form === "list") return Array.isArray(value) ? value.join("; ") : undefined;
  if (form === "flag") return value === true ? "yes" : "no";
  if (isFields(value)) return typeof value.value === "string" ? `${value.value} ${value.unit}` : undefined;
  return Array.isArray(value) ? undefined : String(value);
}
