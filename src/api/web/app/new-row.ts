/** Rows that are added to a list: empty, or like another; each under a name of its own. */
import { isFields, type Json } from "./json.js";
import type { FieldSpec } from "./specs.js";

/** A new row with a name of its own, where rows have names. */
export function blank(fields: readonly FieldSpec[], rows: readonly Json[]): Json {
  return fields.some(({ key }) => key === "name") ? { name: freeName("row", rows) } : {};
}

/** A row like another, under a name of its own. */
export function copyOf(row: Json, rows: readonly Json[]): Json {
  if (!isFields(row) || typeof row.name !== "string") return row;
  return { ...row, name: freeName(row.name.replace(/-\d+$/, ""), rows) };
}

/** The first name of a stem, `log-1` and on, that no row has. */
export function freeName(stem: string, rows: readonly Json[]): string {
  const taken = new Set(rows.map((row) => (isFields(row) ? row.name : undefined)));
  let number = 1;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}
