/** One question of the form: label, input, hint, and what is wrong with it beside its cure. */
import { below, isFields, type Json, listAt, valueAt } from "./json.js";
import { type Fault, faultsAt, type Model } from "./model.js";
import type { FieldSpec } from "./specs.js";
import { capital, plain, typed } from "./words.js";

/** What a single input needs. */
export interface FieldProps {
  readonly m: Model;
  readonly spec: FieldSpec;
  readonly pointer: string;
  /** In a table the column's head is the label; then it is only spoken. */
  readonly tight?: boolean;
  readonly label?: string;
}

/** Names an input's elements by its place in the request. */
export const idOf = (pointer: string): string => `at${pointer.replaceAll(/[^A-Za-z0-9]+/g, "-")}`;

/** Any question, with those below it. */
export function Question({ m, spec, pointer }: FieldProps) {
  switch (spec.kind) {
    case "group":
      return (
        <>
          {spec.fields.map((field) => (
            <Question
              m={m}
              spec={{ ...field, label: `${spec.label}: ${field.label.toLowerCase()}` } as FieldSpec}
              pointer={below(pointer, field.key)}
            />
          ))}
        </>
      );
    case "rows":
      return <Rows m={m} spec={spec} pointer={pointer} />;
    case "table":
      return <Table m={m} spec={spec} pointer={pointer} />;
    default:
      return <Field m={m} spec={spec} pointer={pointer} />;
  }
}

/** One input. */
export function Field({ m, spec, pointer, tight, label }: FieldProps) {
  const id = idOf(pointer);
  const faults = faultsAt(m, pointer);
  const words = label ?? spec.label;
  const notes = [spec.hint && !tight ? `${id}-hint` : "", faults.length > 0 ? `${id}-fault` : ""]
    .filter(Boolean)
    .join(" ");
  return (
    <div class={`field${faults.length > 0 ? " wrong" : ""}${spec.kind === "flag" ? " flag" : ""}`}>
      <label for={id} class={tight ? "spoken" : undefined}>
        {words}
      </label>
      <Input m={m} spec={spec} pointer={pointer} id={id} notes={notes} invalid={faults.length > 0} />
      {spec.hint && !tight && (
        <p class="hint" id={`${id}-hint`}>
          {spec.hint}
        </p>
      )}
      <Faults faults={faults} id={`${id}-fault`} />
    </div>
  );
}

/** What is wrong, and what would be right. */
export function Faults({ faults, id }: { readonly faults: readonly Fault[]; readonly id: string }) {
  if (faults.length === 0) return null;
  return (
    <p class="fault" id={id}>
      {faults.map(({ wrong, cure }) => (
        <>
          <strong>{wrong}</strong> {cure}{" "}
        </>
      ))}
    </p>
  );
}

interface InputProps extends FieldProps {
  readonly id: string;
  readonly notes: string;
  readonly invalid: boolean;
}

function Input({ m, spec, pointer, id, notes, invalid }: InputProps) {
  const value = valueAt(m.request, pointer);
  const common = {
    id,
    name: pointer,
    "aria-describedby": notes || undefined,
    "aria-invalid": invalid ? ("true" as const) : undefined,
  };
  const put = (event: Event) => m.acts.edit(pointer, read(spec, event.target as HTMLInputElement));
  if (spec.kind === "flag") return <input {...common} type="checkbox" checked={value === true} onInput={put} />;
  if (spec.kind === "choice") return <Choice common={common} spec={spec} value={value} put={put} />;
  const list = spec.kind === "text" && spec.suggested.length > 0 ? `${id}-list` : undefined;
  return (
    <>
      <input
        {...common}
        type="text"
        inputmode={spec.kind === "count" ? "numeric" : undefined}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        placeholder={spec.example ? `such as ${spec.example}` : ""}
        list={list}
        value={written(value)}
        onInput={put}
      />
      {list && spec.kind === "text" && (
        <datalist id={list}>
          {spec.suggested.map((one) => (
            <option value={one} />
          ))}
        </datalist>
      )}
    </>
  );
}

interface ChoiceProps {
  readonly common: Record<string, unknown>;
  readonly spec: Extract<FieldSpec, { kind: "choice" }>;
  readonly value: Json;
  readonly put: (event: Event) => void;
}

function Choice({ common, spec, value, put }: ChoiceProps) {
  return (
    <select {...common} onInput={put}>
      <option value="" selected={value === undefined}>
        {spec.required ? "choose" : "as usual"}
      </option>
      {spec.choices.map((choice) => (
        <option value={choice} selected={value === choice}>
          {plain(choice)}
        </option>
      ))}
    </select>
  );
}

/** What was typed, as JSON; what can't be read as a count stays text, and the service says what is wrong with it. */
function read(spec: FieldSpec, input: HTMLInputElement): Json {
  if (spec.kind === "flag") return input.checked ? true : undefined;
  const text = input.value;
  if (text.trim() === "") return undefined;
  if (spec.kind === "count") return /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : text;
  if (spec.kind === "list")
    return text
      .split(/[,;]/)
      .map((part) => part.trim().replaceAll(" ", "-"))
      .filter(Boolean);
  return text;
}

function written(value: Json): string {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.join(", ");
  if (isFields(value) && typeof value.value === "string" && typeof value.unit === "string") {
    return typed({ value: value.value, unit: value.unit });
  }
  return String(value);
}

/** Columns that most people fill come first; the rest unfold. */
const FIRST = new Set([
  "name",
  "label",
  "count",
  "section",
  "length",
  "species",
  "source",
  "item",
  "terms",
  "share",
  "formula",
  "remove",
]);

function Rows({ m, spec, pointer }: { m: Model; spec: Extract<FieldSpec, { kind: "rows" }>; pointer: string }) {
  const rows = listAt(m.request, pointer);
  const add = () => m.acts.edit(below(pointer, rows.length), blank(spec.fields, rows));
  return (
    <fieldset class="rows" id={idOf(pointer)} tabindex={-1}>
      <legend>{spec.label}</legend>
      <p class="hint">{spec.hint}</p>
      <Faults faults={faultsAt(m, pointer)} id={`${idOf(pointer)}-fault`} />
      {rows.map((row, index) => (
        <Row
          m={m}
          fields={spec.fields}
          pointer={below(pointer, index)}
          title={rowTitle(row, spec.label, index)}
          copy={() => m.acts.edit(below(pointer, "-"), copyOf(row, rows))}
        />
      ))}
      <button type="button" onClick={add}>{`Add to ${spec.label.toLowerCase()}`}</button>
    </fieldset>
  );
}

const rowTitle = (row: Json, label: string, index: number): string => {
  const named = isFields(row) ? (row.label ?? row.name ?? row.item) : undefined;
  return typeof named === "string" && named !== "" ? capital(plain(named)) : `${label} ${index + 1}`;
};

/** A new row with a name of its own, where rows have names. */
export function blank(fields: readonly FieldSpec[], rows: readonly Json[]): Json {
  return fields.some(({ key }) => key === "name") ? { name: freeName("row", rows) } : {};
}

/** A row like another, under a name of its own. */
export function copyOf(row: Json, rows: readonly Json[]): Json {
  if (!isFields(row) || typeof row.name !== "string") return row;
  return { ...row, name: freeName(row.name.replace(/-\d+$/, ""), rows) };
}

function freeName(stem: string, rows: readonly Json[]): string {
  const taken = new Set(rows.map((row) => (isFields(row) ? row.name : undefined)));
  let number = 1;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

interface RowProps {
  readonly m: Model;
  readonly fields: readonly FieldSpec[];
  readonly pointer: string;
  readonly title: string;
  readonly copy: () => void;
}

function Row({ m, fields, pointer, title, copy }: RowProps) {
  return (
    <fieldset class="row" aria-label={title} id={idOf(pointer)} tabindex={-1}>
      <Columns m={m} fields={fields} pointer={pointer} />
      <Faults faults={faultsAt(m, pointer)} id={`${idOf(pointer)}-fault`} />
      <p class="tools">
        <button type="button" onClick={copy} aria-label={`Duplicate ${title}`}>
          Duplicate
        </button>
        <button type="button" onClick={() => m.acts.edit(pointer, undefined)} aria-label={`Remove ${title}`}>
          Remove
        </button>
      </p>
    </fieldset>
  );
}

function Columns({ m, fields, pointer }: { m: Model; fields: readonly FieldSpec[]; pointer: string }) {
  const more = fields.filter(({ key }) => !FIRST.has(key));
  const panel = `more${pointer}`;
  const open = m.panels.has(panel);
  return (
    <>
      <div class="grid">
        {fields
          .filter(({ key }) => FIRST.has(key))
          .map((spec) => (
            <Question m={m} spec={{ ...spec, hint: "" } as FieldSpec} pointer={below(pointer, spec.key)} />
          ))}
      </div>
      {more.length > 0 && (
        <details
          open={open}
          onToggle={(event: Event) => m.acts.openPanel(panel, (event.target as HTMLDetailsElement).open)}
        >
          <summary>More about it</summary>
          {open && (
            <div class="grid">
              {more.map((spec) => (
                <Question m={m} spec={spec} pointer={below(pointer, spec.key)} />
              ))}
            </div>
          )}
        </details>
      )}
    </>
  );
}

function Table({ m, spec, pointer }: { m: Model; spec: Extract<FieldSpec, { kind: "table" }>; pointer: string }) {
  const panel = `table${pointer}`;
  const open = m.panels.has(panel);
  return (
    <details
      class="sub"
      open={open}
      onToggle={(event: Event) => m.acts.openPanel(panel, (event.target as HTMLDetailsElement).open)}
    >
      <summary>{spec.label}: sections, woods, mill or buy</summary>
      {open &&
        spec.keys.map(({ key, label }) => (
          <fieldset class="rows" id={idOf(below(pointer, key))} tabindex={-1}>
            <legend>{label}</legend>
            <Columns m={m} fields={spec.fields} pointer={below(pointer, key)} />
          </fieldset>
        ))}
    </details>
  );
}
