/**
 * A price catalog from one CSV text. The rows become the JSON form of the same catalog and go through the same
 * checks; faults then name line and column instead of a place in JSON.
 */
import { type Fault, nearest, pointer } from "../estimate/faults.js";
import { quote } from "../estimate/quantity/text.js";
import { type CellForm, type CsvColumn, LAYOUT_CELLS, LAYOUTS, type Layout, type Put } from "./csv-columns.js";
import { lineFault, type Row, readTable } from "./csv-table.js";
import { type CatalogReading, parsePriceCatalog } from "./price-catalog.js";
import type { Currency } from "./reading.js";
import { isRecord, MOST_FAULTS } from "./shape-faults.js";

/** Where a value of the JSON form was read. */
interface Place {
  readonly line: number;
  readonly column?: CsvColumn;
}

/** The JSON form of a CSV catalog, with the faults of the CSV itself. */
export interface CsvInput {
  readonly input: Readonly<Record<string, unknown>> | undefined;
  readonly faults: readonly Fault[];
  /** A fault of the JSON form, said of the line and column it came from. */
  readonly locate: (of: Fault) => Fault;
}

type Json = Record<string, unknown>;

/** What is said beside a table that has no row of department `catalog`. */
export interface BesideTable {
  readonly currency?: Currency | undefined;
  readonly name?: string | undefined;
}

/**
 * Reads a catalog from CSV.
 * @returns the typed catalog, or every fault with its line and column; pointers are `/line/column`.
 */
export function parseCsvCatalog(text: string, beside: BesideTable = {}): CatalogReading {
  const { input, faults, locate } = csvInput(text);
  if (input === undefined) return { faults };
  const reading = parsePriceCatalog({ ...named(beside), ...input });
  if (!("faults" in reading)) return faults.length > 0 ? { faults } : reading;
  return { faults: [...faults, ...reading.faults.map((fault) => locate(ofTable(fault)))].slice(0, MOST_FAULTS) };
}

/** What is missing of the whole list stands in no row yet. */
function ofTable(fault: Fault): Fault {
  if (fault.at !== "/currency" || fault.code !== "missing-field") return fault;
  const wrong = "Nothing says in which currency the prices are.";
  const cure =
    "Add a row of department catalog with USD, EUR or another in its column currency, or say it beside the table.";
  return { ...fault, wrong, cure };
}

/** The JSON form of a CSV catalog. `input` is undefined when the text is no table with known headers. */
export function csvInput(text: string): CsvInput {
  const table = readTable(text);
  if ("faults" in table) return { input: undefined, faults: table.faults, locate: (of) => of };
  const build = new Building();
  for (const row of table.rows) build.add(row);
  return { input: build.root, faults: build.faults, locate: (of) => build.locate(of) };
}

/** A table without a name of its own needs none: nobody reads it off but who sent it. */
const named = ({ currency, name = "Price list" }: BesideTable) => ({ name, ...(currency && { currency }) });

/** Rows to the JSON form, remembering where each value came from. */
class Building {
  readonly root: Json = {};
  readonly faults: Fault[] = [];
  private readonly places = new Map<string, Place>();
  private readonly entries = new Map<string, string>();

  add(row: Row): void {
    if (row.cells.size === 0) return;
    const department = row.cells.get("department");
    if (department === undefined) {
      this.fault("missing-field", row.line, "department", "The row belongs to no department.", DEPARTMENT_CURE);
      return;
    }
    const layout = this.layoutOf(department, row);
    if (!layout || this.hasFormulas(row)) return;
    this.refuseOthers(row, department, layout);
    const at = this.entryOf(department, row);
    if (!this.places.has(at)) this.places.set(at, { line: row.line });
    const bulk = row.cells.has("from") ? layout.bulk : undefined;
    const aside = bulk?.puts.map(([column]) => column) ?? [];
    for (const put of layout.own) if (!aside.includes(put[0])) this.put(row, at, put);
    if (bulk) this.addTo(row, at, bulk);
    if (layout.each) this.addEach(row, at, layout.each);
  }

  /** A row of a list; one with `from`, where the list takes bulk prices, belongs to the item of its length. */
  private addEach(row: Row, at: string, each: NonNullable<Layout["each"]>): void {
    if (!each.bulk || !row.cells.has("from")) {
      this.addTo(row, at, each);
      return;
    }
    const [owner, key] = this.ownerOf(at, each.into.split("."));
    const list = (owner?.[key] ?? []) as Json[];
    const index = list.findIndex(({ length }) => length === row.cells.get("length"));
    if (index >= 0) {
      this.addTo(row, at, { into: `${each.into}.${index}.bulk`, puts: each.bulk });
      return;
    }
    const cure = "Put a row with the price of one of this length before it.";
    this.fault("missing-field", row.line, "length", "A bulk price of a length that no row above gives.", cure);
  }

  /** A fault of the JSON form, at the line and column of its nearest place. */
  locate(of: Fault): Fault {
    let at = of.at;
    while (at !== "" && !this.places.has(at)) at = at.slice(0, at.lastIndexOf("/"));
    const { line, column } = this.places.get(at) ?? { line: 1 };
    return lineFault(of.code, line, column, of.wrong, of.cure);
  }

  private fault(code: Fault["code"], line: number, column: string | undefined, wrong: string, cure: string): void {
    if (this.faults.length < MOST_FAULTS) this.faults.push(lineFault(code, line, column, wrong, cure));
  }

  private layoutOf(department: string, row: Row): Layout | undefined {
    let key = department;
    for (const [column, empty] of LAYOUT_CELLS.get(department) ?? []) {
      if (Object.hasOwn(LAYOUTS, key)) break;
      const options = [...new Set(stepsAfter(key))];
      const cell = row.cells.get(column) ?? empty;
      if (cell === undefined) {
        this.fault("missing-field", row.line, column, "The cell is empty.", `Give one of: ${options.join(", ")}.`);
        return undefined;
      }
      if (!options.includes(cell)) {
        const cure = `Give one of: ${options.join(", ")}.`;
        this.fault("unknown-name", row.line, column, `${quote(cell)} is not known here.`, cure);
        return undefined;
      }
      key = `${key} ${cell}`;
    }
    if (Object.hasOwn(LAYOUTS, key)) return LAYOUTS[key];
    const near = nearest(department, DEPARTMENTS);
    const cure = near ? `Did you mean “${near}”?` : DEPARTMENT_CURE;
    this.fault("unknown-name", row.line, "department", `There is no department ${quote(department)}.`, cure);
    return undefined;
  }

  /** Texts that a spreadsheet would run when the catalog is opened in it again. A negative number is none. */
  private hasFormulas(row: Row): boolean {
    let found = false;
    for (const [column, cell] of row.cells) {
      if (!/^[=+@\t\r]/.test(cell) && !/^-(?![\d.$€£])/.test(cell)) continue;
      found = true;
      const cure = "Start the cell with a letter, a digit or a currency sign.";
      this.fault("wrong-shape", row.line, column, `${quote(cell)} starts like a spreadsheet formula.`, cure);
    }
    return found;
  }

  private refuseOthers(row: Row, department: string, layout: Layout): void {
    const { own, each, bulk } = layout;
    const used = [...own, ...(each?.puts ?? []), ...(each?.bulk ?? []), ...(bulk?.puts ?? [])].map(
      ([column]) => column,
    );
    const deciding = (LAYOUT_CELLS.get(department) ?? []).map(([column]) => column);
    const meant = new Set<string>(["department", ...deciding, ...used]);
    for (const column of row.cells.keys()) {
      if (meant.has(column)) continue;
      const wrong = "This column means nothing for a row of this kind.";
      this.fault("unknown-field", row.line, column, wrong, `Leave it empty; here stand: ${[...meant].join(", ")}.`);
    }
  }

  /** Pointer to the entry of a row: the one of the same name, or a new one. */
  private entryOf(department: string, row: Row): string {
    if (department === "catalog") return "";
    const name = row.cells.get("name");
    const key = `${department} ${name ?? `line ${row.line}`}`;
    const list = listAt(this.root, department);
    const at = this.entries.get(key) ?? pointer("", department, list.length);
    if (!this.entries.has(key)) {
      list.push({});
      this.entries.set(key, at);
    }
    return at;
  }

  private put(row: Row, at: string, [column, path, form]: Put): void {
    const cell = row.cells.get(column as CsvColumn) ?? impliedCell(column, path);
    if (cell === undefined) return;
    const place = path.split(".");
    const [owner, key] = this.ownerOf(at, place);
    if (!owner) {
      const wrong = "The lengths of this row stand in another form already.";
      this.fault("cannot-build", row.line, column, wrong, "Give a list of lengths, or shortest, longest and step.");
      return;
    }
    const value = asJson(cell, form ?? "text");
    const before = Object.hasOwn(owner, key) ? owner[key] : undefined;
    if (before !== undefined && JSON.stringify(before) !== JSON.stringify(value)) {
      const first = this.places.get(pointer(at, ...place))?.line;
      const wrong = `${quote(cell)} differs from line ${first ?? "?"} of the same entry.`;
      this.fault("duplicate-name", row.line, column, wrong, "Leave it empty, or give this row a name of its own.");
      return;
    }
    owner[key] = value;
    this.places.set(pointer(at, ...place), { line: row.line, column: column as CsvColumn });
    if (Array.isArray(value)) {
      value.forEach((_, index) => {
        this.places.set(pointer(at, ...place, index), { line: row.line, column: column as CsvColumn });
      });
    }
  }

  /** The object that holds the last step of a path below an entry, made where it is absent. */
  private ownerOf(at: string, path: readonly string[]): readonly [Json | undefined, string] {
    let owner: Json = this.entryAt(at);
    for (const [index, step] of path.slice(0, -1).entries()) {
      if (owner[step] === undefined) owner[step] = {};
      const next = owner[step];
      const within = Array.isArray(next) && /^\d+$/.test(path[index + 1] as string);
      if (!isRecord(next) && !within) return [undefined, ""];
      owner = next as Json;
    }
    return [owner, path[path.length - 1] as string];
  }

  private entryAt(at: string): Json {
    const [, department, index] = at.split("/");
    if (department === undefined) return this.root;
    return listAt(this.root, department)[Number(index)] as Json;
  }

  private addTo(row: Row, at: string, each: NonNullable<Layout["each"]>): void {
    const path = each.into.split(".");
    const [owner, key] = this.ownerOf(at, path);
    // Where another form stands already, the row's `sold_by` differs from the first one's, which is a fault by now.
    if (!owner || (owner[key] !== undefined && !Array.isArray(owner[key]))) return;
    const list = listAt(owner, key);
    const item = pointer(at, ...path, list.length);
    const made: Json = {};
    list.push(made);
    this.places.set(item, { line: row.line });
    for (const [column, field, form] of each.puts) {
      const cell = row.cells.get(column as CsvColumn);
      if (cell === undefined) continue;
      made[field] = asJson(cell, form ?? "text");
      this.places.set(pointer(item, field), { line: row.line, column: column as CsvColumn });
    }
  }
}

const DEPARTMENTS = [...new Set(Object.keys(LAYOUTS).map((key) => key.split(" ")[0] as string))];
const DEPARTMENT_CURE = `Give one of: ${DEPARTMENTS.join(", ")}.`;

/** Words that may follow in the key of a layout. */
function stepsAfter(key: string): string[] {
  const begun = Object.keys(LAYOUTS).filter((layout) => layout.startsWith(`${key} `));
  return begun.map((layout) => layout.slice(key.length + 1).split(" ")[0] as string);
}

/** An empty `sold_by` of lumber means by the piece, as in `LAYOUT_CELLS`. */
function impliedCell(column: string, path: string): string | undefined {
  return column === "sold_by" && path === "sold.by" ? "piece" : undefined;
}

function listAt(owner: Json, key: string): unknown[] {
  if (owner[key] === undefined) owner[key] = [];
  return owner[key] as unknown[];
}

const FLAGS: ReadonlyMap<string, boolean> = new Map([
  ["yes", true],
  ["true", true],
  ["no", false],
  ["false", false],
]);

/** A cell's text as JSON; a count or flag that cannot be read stays text, and the schema says what is wrong. */
function asJson(cell: string, form: CellForm): unknown {
  switch (form) {
    case "text":
      return cell;
    case "count":
      return /^\d{1,6}$/.test(cell) ? Number(cell) : cell;
    case "flag":
      return FLAGS.get(cell.toLowerCase()) ?? cell;
    case "list":
      return cell.split(";").map((part) => part.trim());
  }
}
