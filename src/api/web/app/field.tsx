/** One question of the form: label, input, hint, and what is wrong with it beside its cure. */
import { isFields, type Json, valueAt } from "./json.js";
import { type Fault, faultsAt, type Model } from "./model.js";
import type { FieldSpec } from "./specs.js";
import { plain, typed } from "./words.js";

/** What a single input needs. */
export interface FieldProps {
  readonly m: Model;
  readonly spec: FieldSpec;
  readonly pointer: string;
  /** In a table the column's head is the label; then it is only spoken. */
  readonly tight?: boolean;
  /** In narrow columns faults stand below the row; whoever draws the row draws them. */
  readonly faultsBelow?: boolean;
  readonly label?: string;
  /** Said to who listens, where the label needs its surroundings to be understood. */
  readonly spoken?: string;
}

/** Names an input's elements by its place in the request. */
export const idOf = (pointer: string): string => `at${pointer.replaceAll(/[^A-Za-z0-9]+/g, "-")}`;

/** One input. */
export function Field({ m, spec, pointer, tight, label, spoken, faultsBelow }: FieldProps) {
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
      <Input m={m} spec={spec} pointer={pointer} id={id} spoken={spoken} notes={notes} invalid={faults.length > 0} />
      {spec.hint && !tight && (
        <p class="hint" id={`${id}-hint`}>
          {spec.hint}
        </p>
      )}
      {!faultsBelow && <Faults faults={faults} id={`${id}-fault`} />}
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

interface InputProps extends Omit<FieldProps, "spoken"> {
  readonly spoken: string | undefined;
  readonly id: string;
  readonly notes: string;
  readonly invalid: boolean;
}

function Input({ m, spec, pointer, id, spoken, notes, invalid }: InputProps) {
  const value = valueAt(m.request, pointer);
  const common = {
    id,
    name: pointer,
    "aria-label": spoken,
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
    return (
      text
        .split(/[,;]/)
        .map((part) => part.trim())
        // Names of woods are written with hyphens; lengths begin with a figure.
        .map((part) => (/^\d/.test(part) ? part : part.replaceAll(" ", "-")))
        .filter(Boolean)
    );
  return text;
}

function written(value: Json): string {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map(written).join(", ");
  if (isFields(value) && typeof value.value === "string" && typeof value.unit === "string") {
    return typed({ value: value.value, unit: value.unit });
  }
  return String(value);
}
