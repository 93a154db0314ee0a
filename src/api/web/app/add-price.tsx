/** A price that the catalog has not: what kind of thing it is, then the cells that such a row of the CSV has. */
import { useState } from "hono/jsx";
import { CSV_COLUMNS, type CsvColumn, LAYOUT_CELLS, LAYOUTS } from "../../../catalog/csv-columns.js";
import { faultsOf } from "./asking.js";
import { Fold } from "./figure.js";
import { isFields, type Json, withValue } from "./json.js";
import type { Model } from "./model.js";
import { withoutPending } from "./pending.js";
import type { PriceCell } from "./specs.js";
import { capital, plain } from "./words.js";

/** Kinds of rows whose keys say too little. */
const KINDS: Readonly<Record<string, string>> = {
  "lumber piece": "Lumber by the piece",
  "lumber length": "Lumber by its length",
  "lumber volume": "Lumber by volume",
  "coverings sheets panels piece": "Covering: panels by the piece",
  "coverings sheets panels cut-length": "Covering: panels cut to length",
  "coverings sheets courses": "Covering: shingles or strips in courses",
};

const kindWords = (key: string): string =>
  KINDS[key] ?? capital(key.replace("coverings sheets", "covering:").replace("coverings", "covering:"));

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
    const { currency = "USD", ...cells } = typed;
    const { withRow } = await import("./prices-csv.js");
    const found = withRow(isFields(catalog) ? catalog : { name: "My prices", currency }, {
      ...decided(kind),
      ...cells,
    });
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
      <Money m={m} catalog={catalog} />
      <div class="grid">
        {cellsOf(m, kind).map((cell) => (
          <Cell cell={cell} />
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

/** Which money is meant: the catalog's own; the first price of all decides it. */
function Money({ m, catalog }: { readonly m: Model; readonly catalog: Json }) {
  if (isFields(catalog)) return <p class="hint">{`Prices are in ${catalog.currency}.`}</p>;
  return (
    <div class="field">
      <label for="add-currency">Currency of your prices</label>
      <select id="add-currency" name="currency">
        {m.spec.currencies.map((code) => (
          <option value={code} selected={code === "USD"}>
            {code}
          </option>
        ))}
      </select>
    </div>
  );
}

function Cell({ cell: { column, required, choices, example } }: { readonly cell: PriceCell }) {
  const id = `add-${column}`;
  const common = { id, name: column, "aria-describedby": `${id}-hint`, "aria-required": required };
  return (
    <div class="field">
      <label for={id}>{capital(column.replaceAll("_", " ")) + (required ? " (needed)" : "")}</label>
      {choices.length > 0 ? (
        <select {...common}>
          <option value="">{required ? "choose" : "not said"}</option>
          {choices.map((choice) => (
            <option value={choice}>{plain(choice)}</option>
          ))}
        </select>
      ) : (
        <input {...common} type="text" autocomplete="off" />
      )}
      <p class="hint" id={`${id}-hint`}>
        {hintOf(column)}
        {choices.length === 0 && example !== "" && `, such as ${example}`}
      </p>
    </div>
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

function cellsOf(m: Model, kind: string): readonly PriceCell[] {
  const given = decided(kind);
  return (m.spec.prices[kind] ?? []).filter(({ column }) => !(column in given));
}
