/** A price that the catalog has not: what kind of thing it is, then the cells that such a row of the CSV has. */
import { useState } from "hono/jsx";
import { CSV_COLUMNS, type CsvColumn, LAYOUT_CELLS, LAYOUTS } from "../../../catalog/csv-columns.js";
import { faultsOf } from "./asking.js";
import { Fold } from "./figure.js";
import { isFields, type Json, withValue } from "./json.js";
import type { Model } from "./model.js";
import { withoutPending } from "./pending.js";
import { capital } from "./words.js";

/** What an empty catalog begins with; the currency can be changed in the file. */
const EMPTY: Json = { name: "My prices", currency: "USD" };

/** Kinds of rows in words. */
const kindWords = (key: string): string =>
  capital(key.replace("lumber piece", "lumber by the piece").replace("lumber length", "lumber by length"))
    .replace("Lumber volume", "Lumber by volume")
    .replace("coverings sheets", "covering:");

/** The whole question. */
export function AddPrice({ m, catalog }: { readonly m: Model; readonly catalog: Json }) {
  return (
    <Fold m={m} name="add-price" title="Add a price">
      <Adding m={m} catalog={catalog} />
    </Fold>
  );
}

function Adding({ m, catalog }: { readonly m: Model; readonly catalog: Json }) {
  const [kind, setKind] = useState("lumber piece");
  const [faults, setFaults] = useState<readonly string[]>([]);
  const submit = async (event: Event) => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const typed = Object.fromEntries([...new FormData(form)].filter(([, text]) => text !== "")) as Record<
      string,
      string
    >;
    const { withRow } = await import("./prices-csv.js");
    const found = withRow(isFields(catalog) ? catalog : EMPTY, { ...decided(kind), ...typed });
    const wrong = "faults" in found ? found.faults : await refusals(m, found.catalog);
    setFaults(wrong);
    if (wrong.length > 0 || !("catalog" in found)) return;
    m.acts.edit("/catalog", found.catalog);
    m.acts.say(`The price of ${typed.label ?? typed.name ?? "it"} is added.`);
    form.reset();
  };
  return (
    <form onSubmit={submit} class="adding">
      <div class="field">
        <label for="add-kind">What it is</label>
        <select id="add-kind" onInput={(event: Event) => setKind((event.target as HTMLSelectElement).value)}>
          {Object.keys(LAYOUTS)
            .filter((key) => key !== "catalog")
            .map((key) => (
              <option value={key} selected={key === kind}>
                {kindWords(key)}
              </option>
            ))}
        </select>
      </div>
      <div class="grid">
        {columnsOf(kind).map((column) => (
          <div class="field">
            <label for={`add-${column}`}>{capital(column.replaceAll("_", " "))}</label>
            <input
              id={`add-${column}`}
              name={column}
              type="text"
              autocomplete="off"
              aria-describedby={`add-${column}-hint`}
            />
            <p class="hint" id={`add-${column}-hint`}>
              {hintOf(column)}
            </p>
          </div>
        ))}
      </div>
      {faults.length > 0 && (
        <p class="fault" role="alert">
          {faults.join(" ")}
        </p>
      )}
      <p class="tools">
        <button type="submit" class="main">
          Add this price
        </button>
      </p>
    </form>
  );
}

/** What the service says against a catalog that it did not say before: a row is taken only when it can be read. */
async function refusals(m: Model, catalog: Json): Promise<readonly string[]> {
  const before = new Set(m.problem?.faults.map(({ pointer }) => pointer));
  const faults = await faultsOf(withValue(withoutPending(m.request), "/catalog", catalog));
  return faults
    .filter(({ pointer = "" }) => pointer.startsWith("/catalog") && !before.has(pointer))
    .map(({ wrong, cure }) => `${wrong} ${cure}`);
}

/** The sentence of the column, without the department that it begins with. */
const hintOf = (column: CsvColumn): string => capital(CSV_COLUMNS[column].replace(/^[a-z ]+(, part [a-z]+)?: /, ""));

/** What the kind of row says by itself: department, and the cells that decide its layout. */
function decided(kind: string): Readonly<Record<string, string>> {
  const [department = "", ...words] = kind.split(" ");
  const deciding = LAYOUT_CELLS.get(department) ?? [];
  return {
    department,
    ...Object.fromEntries(deciding.flatMap(([column], i) => (words[i] ? [[column, words[i]]] : []))),
  };
}

function columnsOf(kind: string): CsvColumn[] {
  const layout = LAYOUTS[kind];
  const given = decided(kind);
  return [...(layout?.own ?? []), ...(layout?.each?.puts ?? [])]
    .map(([column]) => column as CsvColumn)
    .filter((column) => !(column in given));
}
