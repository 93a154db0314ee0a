/** A part that a project has or has not; its questions come with it. */
import { Faults, idOf } from "./field.js";
import { type Json, valueAt } from "./json.js";
import { faultsAt, type Model } from "./model.js";
import { Grid } from "./question.js";
import type { FieldSpec } from "./specs.js";

interface PartProps {
  readonly m: Model;
  readonly spec: Extract<FieldSpec, { kind: "group" }>;
  readonly pointer: string;
  /** What it is when it comes. */
  readonly begin: Json;
}

/** A box to tick, and below it what is asked once it is ticked. */
export function Part({ m, spec, pointer, begin }: PartProps) {
  const there = valueAt(m.request, pointer) !== undefined;
  const id = idOf(pointer);
  return (
    <fieldset class="part">
      <legend class="spoken">{spec.label}</legend>
      <div class="field flag">
        <input
          id={id}
          type="checkbox"
          checked={there}
          aria-describedby={`${id}-hint`}
          onInput={(event: Event) =>
            m.acts.edit(pointer, (event.target as HTMLInputElement).checked ? begin : undefined)
          }
        />
        <label for={id}>{spec.label}</label>
        <p class="hint" id={`${id}-hint`}>
          {spec.hint}
        </p>
      </div>
      <Faults faults={faultsAt(m, pointer)} id={`${id}-fault`} />
      {there && <Grid m={m} fields={spec.fields} pointer={pointer} />}
    </fieldset>
  );
}
