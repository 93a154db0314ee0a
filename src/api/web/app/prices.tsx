/** Local prices: every price of the catalog in one table, to be changed in place, saved as CSV and read again. */
import { useState } from "hono/jsx";
import { AddPrice } from "./add-price.js";
import { Faults, Field } from "./field.js";
import { Fold } from "./figure.js";
import { isFields, type Json, valueAt } from "./json.js";
import type { Fault, Model } from "./model.js";
import { INVENTED } from "./next.js";
import { PRICE_KEYS, pricesOf } from "./price-list.js";
import type { FieldSpec } from "./specs.js";
import { Heads } from "./table-head.js";
import { capital } from "./words.js";

/** The catalog as it can be edited: the one in the request, or the one that it names. */
export const catalogOf = (m: Model): Json => {
  const given = valueAt(m.request, "/catalog");
  return isFields(given) && "demo" in given ? m.prices : given;
};

/** The whole question. */
export function Prices({ m }: { readonly m: Model }) {
  const given = valueAt(m.request, "/catalog");
  const catalog = catalogOf(m);
  return (
    <>
      {given === undefined && (
        <p class="note">
          No prices yet: quantities are shown, and there is no verdict.{" "}
          <button type="button" onClick={() => m.acts.edit("/catalog", INVENTED)}>
            Start from invented prices
          </button>
        </p>
      )}
      <Faults faults={faultsOfCatalog(m)} id="at-catalog-fault" />
      {given !== undefined && catalog === undefined && <p>Bringing the prices…</p>}
      {isFields(catalog) && <PriceTable m={m} catalog={catalog} named={isFields(given) && "demo" in given} />}
      <AddPrice m={m} catalog={catalog} />
      <File m={m} catalog={catalog} />
    </>
  );
}

/** Those of the catalog that no price field shows. */
const faultsOfCatalog = (m: Model): readonly Fault[] =>
  (m.problem?.faults ?? []).filter(
    ({ pointer = "" }) =>
      /^\/catalog(\/|$)/.test(pointer) && !PRICE_KEYS.has(pointer.slice(pointer.lastIndexOf("/") + 1)),
  );

function PriceTable({ m, catalog, named }: { m: Model; catalog: Json; named: boolean }) {
  // A catalog that is only named becomes the user's own with the first change.
  const own = { ...m, request: { ...(m.request as object), catalog } };
  const acts = { ...m.acts, edit: (pointer: string, value: Json) => editPrice(m, catalog, named, pointer, value) };
  const table = { ...own, acts };
  const departments = pricesOf(catalog);
  const { name, note, currency } = catalog as Record<string, string | undefined>;
  return (
    <>
      <p>
        <strong>{name}</strong>, in {currency}. {note}
      </p>
      {departments.map(({ department, rows }) => (
        <Fold
          m={m}
          name={`more/catalog/${department}`}
          title={`${capital(department)}: ${rows.length} ${rows.length === 1 ? "price" : "prices"}`}
        >
          <table class="prices" aria-label={`Prices: ${department}`}>
            <Heads of={["What", "Price"]} />
            <tbody>
              {rows.map((row) => (
                <tr>
                  <th scope="row">{row.label}</th>
                  <td>
                    <Field
                      m={table}
                      tight
                      label={`Price of ${row.label}`}
                      spec={PRICE}
                      pointer={`/catalog${row.pointer}`}
                    />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Fold>
      ))}
    </>
  );
}

const PRICE: FieldSpec = {
  key: "price",
  kind: "text",
  label: "Price",
  hint: "",
  example: "$9.92",
  required: false,
  suggested: [],
};

function editPrice(m: Model, catalog: Json, named: boolean, pointer: string, value: Json): void {
  if (!named) m.acts.edit(pointer, value ?? null);
  else m.acts.edit("/catalog", replaced(catalog, pointer.replace(/^\/catalog/, ""), value ?? null));
}

function replaced(json: Json, pointer: string, value: Json): Json {
  const copy = structuredClone(json);
  const owner = valueAt(copy, pointer.slice(0, pointer.lastIndexOf("/"))) as Record<string, Json>;
  owner[pointer.slice(pointer.lastIndexOf("/") + 1)] = value;
  return copy;
}

function File({ m, catalog }: { m: Model; catalog: Json }) {
  const [faults, setFaults] = useState<readonly string[]>([]);
  const read = async (event: Event) => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    const { readPricesCsv } = await import("./prices-csv.js");
    const found = readPricesCsv(await file.text());
    input.value = "";
    setFaults("faults" in found ? [`Nothing was read from ${file.name}.`, ...found.faults] : []);
    if ("faults" in found) return;
    m.acts.edit("/catalog", found.catalog);
    m.acts.say(`Prices read from ${file.name}.`);
  };
  const save = async () => m.acts.download("prices.csv", (await import("./prices-csv.js")).pricesCsv(catalog));
  const saveEmpty = async () => m.acts.download("prices.csv", (await import("./prices-csv.js")).emptyPricesCsv());
  const none = valueAt(m.request, "/catalog") === undefined;
  return (
    <>
      <p class="tools">
        {isFields(catalog) && (
          <button type="button" onClick={save}>
            Save prices as CSV
          </button>
        )}
        {none && (
          <button type="button" onClick={saveEmpty}>
            Save an empty table as CSV
          </button>
        )}
        <label class="button" for="prices-file">
          Read prices from CSV
        </label>
        <input
          id="prices-file"
          class="spoken"
          type="file"
          accept=".csv,text/csv"
          aria-describedby={faults.length > 0 ? "prices-file-fault" : undefined}
          onChange={read}
        />
      </p>
      {faults.length > 0 && (
        <p class="fault" role="alert" id="prices-file-fault">
          {faults.join(" ")}
        </p>
      )}
      {none && (
        <p class="hint">
          The empty table has every column, and a row for its name and currency. To see how rows are filled, start from
          the invented prices and save those.
        </p>
      )}
    </>
  );
}
