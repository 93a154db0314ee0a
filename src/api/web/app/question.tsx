/** Questions made of others: groups, lists with a row each, tables with a row for each known key. */
import { ROW_FIRST as FIRST } from "./above.js";
import { Faults, Field, type FieldProps, idOf } from "./field.js";
import { Fold } from "./figure.js";
import { below, isFields, type Json, listAt } from "./json.js";
import { faultsAt, type Model } from "./model.js";
import { blank, copyOf } from "./new-row.js";
import type { FieldSpec } from "./specs.js";
import { capital, plain } from "./words.js";

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
        <Fold m={m} name={`more${pointer}`} title="More about it">
          <Grid m={m} fields={more} pointer={pointer} />
        </Fold>
      )}
    </>
  );
}

/** Questions side by side, as many as have room. */
export function Grid({ m, fields, pointer }: { m: Model; fields: readonly FieldSpec[]; pointer: string }) {
  return (
    <div class="grid">
      {fields.map((spec) => (
        <Question m={m} spec={spec} pointer={below(pointer, spec.key)} />
      ))}
    </div>
  );
}

function Table({ m, spec, pointer }: { m: Model; spec: Extract<FieldSpec, { kind: "table" }>; pointer: string }) {
  return (
    <Fold m={m} name={`table${pointer}`} title={`${spec.label}: sections, woods, mill or buy`}>
      {spec.keys.map(({ key, label }) => (
        <fieldset class="rows" id={idOf(below(pointer, key))} tabindex={-1}>
          <legend>{label}</legend>
          <Columns m={m} fields={spec.fields} pointer={below(pointer, key)} />
        </fieldset>
      ))}
    </Fold>
  );
}
