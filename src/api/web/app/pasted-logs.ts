/** Logs read from rows that were copied out of a spreadsheet. */
import type { Json } from "./json.js";
import type { FieldSpec } from "./specs.js";

/** Columns of a pasted table when its first row has no heads. */
export const PASTED = ["name", "species", "length", "smallDiameter", "largeDiameter", "sweep", "count"];

/**
 * Logs from tab- or semicolon-separated rows, or comma-separated ones. What can't be read stays as it is, and the
 * service says at its field what is wrong with it.
 */
export function pastedLogs(text: string, spec: readonly FieldSpec[]): Json[] {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const separator = lines.some((line) => line.includes("\t"))
    ? "\t"
    : lines.some((line) => line.includes(";"))
      ? ";"
      : ",";
  const rows = lines.map((line) =>
    line.split(separator).map((cell) =>
      cell
        .trim()
        .replace(/^"(.*)"$/, "$1")
        .replaceAll('""', '"'),
    ),
  );
  const known = new Map(spec.map(({ key, label }) => [key.toLowerCase(), { key, label }]));
  const heads = rows[0]?.map((cell) => known.get(cell.toLowerCase().replaceAll(/[^a-z]/g, ""))?.key);
  const hasHeads = heads?.includes("name") || heads?.includes("length");
  const keys = hasHeads ? (heads ?? []) : PASTED;
  return (hasHeads ? rows.slice(1) : rows).map((cells) =>
    Object.fromEntries(
      cells.flatMap((cell, index) => {
        const key = keys[index];
        return key === undefined || cell === "" ? [] : [[key, pastedCell(key, cell)]];
      }),
    ),
  );
}

function pastedCell(key: string, cell: string): Json {
  if (key === "count") return /^\d+$/.test(cell) ? Number(cell) : cell;
  if (key === "species") return cell.toLowerCase().replaceAll(/\s+/g, "-");
  if (key === "dirty") return /^(yes|true|1)$/i.test(cell);
  return cell;
}
