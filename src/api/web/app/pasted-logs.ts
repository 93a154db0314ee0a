/** Logs read from rows that were copied out of a spreadsheet. */
import { LOG_HEADS } from "./above.js";
import type { Json } from "./json.js";
import type { FieldSpec } from "./specs.js";

/** Columns of a pasted table when its first row has no heads. */
export const PASTED = ["name", "species", "length", "smallDiameter", "largeDiameter", "sweep", "count"];

/** Other words for a column, as people head their own tables. A bare diameter is the one that logs are sold by. */
const OTHER_HEADS: Readonly<Record<string, string>> = {
  log: "name",
  diameter: "smallDiameter",
  wood: "species",
  qty: "count",
  quantity: "count",
  ...Object.fromEntries(Object.entries(LOG_HEADS).map(([key, words]) => [lettersOf(words), key])),
};

/** Rows read, and the heads of columns that hold something and were left out. */
export interface PastedLogs {
  readonly logs: readonly Json[];
  readonly unknown: readonly string[];
}

/**
 * Logs from tab- or semicolon-separated rows, or comma-separated ones. What can't be read stays as it is, and the
 * service says at its field what is wrong with it. Columns that are not understood are named.
 */
export function pastedLogs(text: string, spec: readonly FieldSpec[]): PastedLogs {
  const rows = cellsOf(text);
  const known = new Map(Object.entries(OTHER_HEADS));
  for (const { key } of spec) known.set(key.toLowerCase(), key);
  const heads = rows[0] ?? [];
  const found = heads.map((head) => known.get(lettersOf(head)));
  // A row of a log has a figure in it, a row of heads begins none of its cells with one.
  const hasHeads = found.some((key) => key !== undefined) && !heads.some((head) => /^\d/.test(head));
  const keys = hasHeads ? found.map((key, index) => (found.indexOf(key) === index ? key : undefined)) : PASTED;
  const body = hasHeads ? rows.slice(1) : rows;
  const left = new Set<string>();
  const logs = body.map((cells) =>
    Object.fromEntries(
      cells.flatMap((cell, index) => {
        const key = keys[index];
        if (cell === "") return [];
        if (key === undefined) left.add((hasHeads && heads[index]) || `column ${index + 1}`);
        return key === undefined ? [] : [[key, pastedCell(key, cell)]];
      }),
    ),
  );
  return { logs, unknown: [...left] };
}

/** What became of pasted rows, in words. */
export function pastedWords({ logs, unknown }: PastedLogs): string {
  if (logs.length === 0) return "Nothing was pasted.";
  const added = logs.length === 1 ? "1 log added." : `${logs.length} logs added.`;
  if (unknown.length === 0) return added;
  const [what, it] = unknown.length === 1 ? ["This column is", "it"] : ["These columns are", "them"];
  return `${added} ${what} not understood and left out: “${unknown.join("”, “")}”. Undo, rename ${it}, and paste again.`;
}

function cellsOf(text: string): string[][] {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const separator = ["\t", ";"].find((one) => lines.some((line) => line.includes(one))) ?? ",";
  return lines.map((line) =>
    line.split(separator).map((cell) =>
      cell
        .trim()
        .replace(/^"(.*)"$/, "$1")
        .replaceAll('""', '"'),
    ),
  );
}

function lettersOf(head: string): string {
  return head.toLowerCase().replaceAll(/[^a-z]/g, "");
}

function pastedCell(key: string, cell: string): Json {
  if (key === "count") return /^\d+$/.test(cell) ? Number(cell) : cell;
  if (key === "species") return cell.toLowerCase().replaceAll(/\s+/g, "-");
  if (key === "dirty") return /^(yes|true|1)$/i.test(cell);
  return cell;
}
