/** A CSV text as lines of named cells: strict about quotes, headers and the number of cells. */
import { CsvError, parse } from "csv-parse/sync";
import { type Fault, nearest, pointer } from "../estimate/faults.js";
import { quote } from "../estimate/quantity/text.js";
import { CSV_COLUMNS, type CsvColumn } from "./csv-columns.js";
import { fault, MOST_FAULTS } from "./shape-faults.js";

/** Limits that keep one text from taking long; far above any yard's price list. Assumptions. */
const MOST_CHARACTERS = 1_000_000;
const MOST_LINES = 4_000;

/** One line: cells by column, empty ones left out. */
export interface Row {
  readonly line: number;
  readonly cells: ReadonlyMap<CsvColumn, string>;
}

/** A fault of one line and column. Its pointer is `/line/column`. */
export function lineFault(
  code: Fault["code"],
  line: number,
  column: string | undefined,
  wrong: string,
  cure: string,
): Fault {
  const where = column === undefined ? `Line ${line}` : `Line ${line}, column ${column}`;
  const at = column === undefined ? pointer("", line) : pointer("", line, column);
  return fault(code, at, `${where}: ${wrong}`, cure);
}

/** Lines with their filled cells, or what is wrong with quotes, headers and the number of cells. */
export function readTable(text: string): { readonly rows: readonly Row[] } | { readonly faults: readonly Fault[] } {
  if (text.length > MOST_CHARACTERS) {
    const wrong = `The text has ${text.length} characters.`;
    return { faults: [fault("too-large", "", wrong, `Give at most ${MOST_CHARACTERS}.`)] };
  }
  let records: readonly { readonly record: string[]; readonly info: { readonly lines: number } }[];
  try {
    records = parse(text, { bom: true, info: true, skip_empty_lines: true, relax_column_count: true }) as never;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = Number((error as { readonly lines?: unknown }).lines ?? 1);
    return { faults: [lineFault("wrong-shape", line, undefined, "The quotes do not close as they open.", QUOTES)] };
  }
  const [header, ...body] = records;
  if (!header) return { faults: [fault("wrong-shape", "", "The text is empty.", HEADER_CURE)] };
  const columns = header.record.map((cell) => cell.trim());
  const faults = headerFaults(columns);
  if (body.length > MOST_LINES) {
    faults.push(fault("too-large", "", `The table has ${body.length} lines.`, `Give at most ${MOST_LINES}.`));
  }
  for (const { record, info } of body.slice(0, MOST_LINES)) {
    if (record.length === columns.length || faults.length >= MOST_FAULTS) continue;
    const wrong = `There are ${record.length} cells under ${columns.length} headers.`;
    faults.push(lineFault("wrong-shape", info.lines, undefined, wrong, `Give ${columns.length} cells; quote commas.`));
  }
  if (faults.length > 0) return { faults };
  return {
    rows: body.map(({ record, info }) => ({ line: info.lines, cells: filled(columns as CsvColumn[], record) })),
  };
}

const QUOTES = 'Put a quotation mark at each end of the cell, and write one inside it as "".';
const HEADER_CURE = `Start with a line of headers, such as ${Object.keys(CSV_COLUMNS).slice(0, 3).join(",")}.`;

function headerFaults(columns: readonly string[]): Fault[] {
  const known = Object.keys(CSV_COLUMNS);
  const faults: Fault[] = [];
  columns.slice(0, 2 * known.length).forEach((column, index) => {
    if (!Object.hasOwn(CSV_COLUMNS, column)) {
      const near = nearest(column, known);
      const cure = near ? `Did you mean “${near}”?` : `Known headers: ${known.join(", ")}.`;
      faults.push(lineFault("unknown-field", 1, undefined, `There is no header ${quote(column)}.`, cure));
    } else if (columns.indexOf(column) < index) {
      faults.push(lineFault("duplicate-name", 1, column, "This header stands twice.", "Keep one of the two."));
    }
  });
  if (!columns.includes("department")) {
    faults.push(lineFault("missing-field", 1, undefined, "There is no header “department”.", HEADER_CURE));
  }
  return faults.slice(0, MOST_FAULTS);
}

function filled(columns: readonly CsvColumn[], record: readonly string[]): ReadonlyMap<CsvColumn, string> {
  const cells = columns.map((column, index) => [column, record[index]?.trim() ?? ""] as const);
  return new Map(cells.filter(([, cell]) => cell !== ""));
}
