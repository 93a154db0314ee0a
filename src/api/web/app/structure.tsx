/** What is to be built: its kind, its sizes, its parts, and a picture that follows. */
import { STRUCTURE_FIRST as FIRST } from "./above.js";
import { SectionDrawing } from "./drawing.js";
import { Faults, idOf } from "./field.js";
import { Fold } from "./figure.js";
import { isFields, type Json, valueAt } from "./json.js";
import { faultsAt, type Model } from "./model.js";
import { Part } from "./part.js";
import { Grid, Question } from "./question.js";
import type { FieldSpec } from "./specs.js";

/** What a kind starts from when it is chosen; its other sizes have defaults. */
function starting(kind: string, before: Json): Json {
  const size = isFields(before) ? { span: before.span ?? "16 ft", length: before.length ?? "24 ft" } : {};
  if (kind !== "pieces") return { kind, ...size };
  return {
    kind,
    pieces: [{ name: "posts", label: "Posts", role: "post", count: 4, section: "6 x 6 in", length: "8 ft" }],
  };
}

/** Parts that are there or not. */
const PARTS: ReadonlySet<string> = new Set(["footings", "floor", "walls"]);

/** What a part begins with: walls with the first side that there is; no size is made up. */
export function beginning({ fields }: Extract<FieldSpec, { kind: "group" }>): Json {
  const sides = fields.find(({ key }) => key === "sides");
  const side = sides?.kind === "rows" ? sides.fields.find(({ key }) => key === "side") : undefined;
  return side?.kind === "choice" ? { sides: [{ side: side.choices[0] as string }] } : {};
}

/** Lists have folds or frames of their own. */
const isList = ({ kind }: FieldSpec): boolean => kind === "rows" || kind === "table";

/** The whole question. */
export function StructureForm({ m }: { readonly m: Model }) {
  const structure = valueAt(m.request, "/structure");
  const kind = isFields(structure) ? String(structure.kind) : "";
  const fields = m.spec.structures.find((one) => one.kind === kind)?.fields ?? [];
  const others = fields.filter(({ key }) => !FIRST.has(key) && !PARTS.has(key));
  const frame = others.filter((one) => !isList(one));
  return (
    <>
      <div class="field">
        <label for="at-structure-kind">Kind</label>
        <select
          id="at-structure-kind"
          onInput={(event: Event) =>
            m.acts.edit("/structure", starting((event.target as HTMLSelectElement).value, structure))
          }
        >
          {m.spec.structures.map((one) => (
            <option value={one.kind} selected={one.kind === kind}>
              {one.label}
            </option>
          ))}
        </select>
      </div>
      <Faults faults={faultsAt(m, "/structure")} id={`${idOf("/structure")}-fault`} />
      <SectionDrawing m={m} />
      <Grid m={m} fields={fields.filter(({ key }) => FIRST.has(key))} pointer="/structure" />
      {fields.flatMap((spec) =>
        spec.kind === "group" && PARTS.has(spec.key)
          ? [<Part m={m} spec={spec} pointer={`/structure/${spec.key}`} begin={beginning(spec)} />]
          : [],
      )}
      {frame.length > 0 && (
        <Fold m={m} name="more/structure" title="Spacings and joints">
          <Grid m={m} fields={frame} pointer="/structure" />
        </Fold>
      )}
      {others.filter(isList).map((spec) =>
        spec.kind === "rows" ? (
          <Fold m={m} name={`more/structure/${spec.key}`} title={spec.label}>
            <Question m={m} spec={spec} pointer={`/structure/${spec.key}`} />
          </Fold>
        ) : (
          <Question m={m} spec={spec} pointer={`/structure/${spec.key}`} />
        ),
      )}
    </>
  );
}
