/** Shapes of the OpenAPI document in words and tables, for the page at /docs. */
import type { ReferenceObject, SchemaObject } from "openapi3-ts/oas31";

/** A schema, or a reference to a named one. */
export type Node = SchemaObject | ReferenceObject;

/** One named shape, with its fields. */
export function Shape({ name, schema }: { name: string; schema: Node }) {
  const { description, properties, required = [] } = schema as SchemaObject;
  return (
    <article>
      <h3 id={`shape-${name}`}>{name}</h3>
      <p>{description}</p>
      {properties ? <Fields of={properties} required={required} /> : <Type of={schema} />}
    </article>
  );
}

function Fields({ of, required }: { of: Readonly<Record<string, Node>>; required: readonly string[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Field</th>
          <th scope="col">Is</th>
          <th scope="col">Means</th>
        </tr>
      </thead>
      <tbody>
        {Object.entries(of).map(([field, schema]) => (
          <tr>
            <th scope="row">
              <code>{field}</code>
            </th>
            <td>
              <Type of={schema} />
              {!required.includes(field) && absent(schema as SchemaObject)}
            </td>
            <td>{(schema as SchemaObject).description}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function absent({ default: fallback }: SchemaObject): string {
  return fallback === undefined ? "; may be absent" : `; ${JSON.stringify(fallback)} when absent`;
}

/** What a value is, in a few words; named shapes are links. */
export function Type({ of }: { of: Node }) {
  if ("$ref" in of) {
    const name = (of.$ref as string).replace(/.*\//, "");
    return <a href={`#shape-${name}`}>{name}</a>;
  }
  const schema = of as SchemaObject;
  const branches = schema.oneOf ?? schema.anyOf;
  if (branches) return <>{branches.map((branch, index) => [index > 0 && " or ", <Type of={branch} />])}</>;
  if (schema.type === "array" && schema.items) {
    return (
      <>
        {"list of "}
        <Type of={schema.items} />
      </>
    );
  }
  if (schema.const !== undefined) return <code>{JSON.stringify(schema.const)}</code>;
  if (schema.enum) return <>{`one of ${schema.enum.map(String).join(", ")}`}</>;
  if (schema.properties) return <Fields of={schema.properties} required={schema.required ?? []} />;
  if (typeof schema.additionalProperties === "object") {
    return (
      <>
        {"by name: "}
        <Type of={schema.additionalProperties} />
      </>
    );
  }
  return <>{`${WORDS[String(schema.type)] ?? String(schema.type ?? "anything")}${bounds(schema)}`}</>;
}

const WORDS: Readonly<Record<string, string>> = {
  string: "text",
  integer: "whole number",
  boolean: "true or false",
};

function bounds({ minimum, maximum }: SchemaObject): string {
  const safe = (bound: number | undefined) => bound !== undefined && Math.abs(bound) < Number.MAX_SAFE_INTEGER;
  if (safe(minimum) && safe(maximum)) return ` from ${minimum} to ${maximum}`;
  if (safe(minimum)) return ` from ${minimum}`;
  return safe(maximum) ? ` up to ${maximum}` : "";
}
