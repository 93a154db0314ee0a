/** Every price of a catalog, with words for what it buys. */
import { below, type Fields, isFields, type Json } from "./json.js";

/** Keys of a catalog that hold a price or a rate. */
export const PRICE_KEYS: ReadonlySet<string> = new Set(["price", "hirePerDay", "purchase", "resale", "rate"]);

/** One price. */
export interface PriceRow {
  readonly label: string;
  /** Below the catalog. */
  readonly pointer: string;
}

const KEY_WORDS: Readonly<Record<string, string>> = {
  hirePerDay: "hire for a day",
  purchase: "to buy",
  resale: "resold",
  rate: "rate",
};

/** By department, in the catalog's own order. */
export function pricesOf(catalog: Json): { readonly department: string; readonly rows: readonly PriceRow[] }[] {
  if (!isFields(catalog)) return [];
  return Object.entries(catalog).flatMap(([department, list]) => {
    if (!Array.isArray(list)) return [];
    const rows = list.flatMap((offer, index) => rowsOf(offer, below("", department, index), wordsOf(offer)));
    return rows.length > 0 ? [{ department, rows }] : [];
  });
}

function wordsOf(offer: Json): string {
  if (!isFields(offer)) return "";
  return String(offer.label ?? offer.item ?? offer.name ?? "");
}

function rowsOf(node: Json, at: string, label: string): PriceRow[] {
  if (Array.isArray(node))
    return node.flatMap((one, index) => rowsOf(one, below(at, index), `${label}, ${sizeOf(one)}`));
  if (!isFields(node)) return [];
  return Object.entries(node).flatMap(([key, value]) => {
    if (PRICE_KEYS.has(key))
      return [{ label: KEY_WORDS[key] ? `${label}, ${KEY_WORDS[key]}` : label, pointer: below(at, key) }];
    return typeof value === "object" ? rowsOf(value, below(at, key), label) : [];
  });
}

/** What tells one size of an offer from the next. */
function sizeOf(node: Json): string {
  if (!isFields(node)) return String(node);
  const { kind, length, count, weight, size } = node as Fields;
  return [kind, length, count === undefined ? undefined : `${count} in a pack`, weight, size]
    .filter((part) => part !== undefined)
    .map(String)
    .join(" ")
    .replaceAll("-", " ");
}
