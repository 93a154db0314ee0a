/** The readable page of the calls, made from the OpenAPI document alone, so that the two cannot disagree. */
import type { OpenAPIObject, OperationObject, ReferenceObject, SchemaObject } from "openapi3-ts/oas31";
import { FAULT_CODES } from "../estimate/faults.js";
import { TAGS } from "./call.js";
import { PROBLEMS } from "./problem.js";

type Node = SchemaObject | ReferenceObject;

/** The page at /docs: calls by heading, then the shapes they use, then what can go wrong. */
export function docsPage(document: OpenAPIObject): string {
  return `<!doctype html>${(<Page document={document} />).toString()}`;
}

function Page({ document }: { document: OpenAPIObject }) {
  const schemas = Object.entries(document.components?.schemas ?? {});
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${document.info.title}: the calls`}</title>
        <link rel="stylesheet" href="/assets/docs.css" />
      </head>
      <body>
        <header>
          <h1>{`${document.info.title} ${document.info.version}`}</h1>
          {(document.info.description ?? "").split("\n\n").map((paragraph) => (
            <p>{paragraph}</p>
          ))}
          <p>
            The same as a file for programs: <a href="/openapi.json">openapi.json</a>.
          </p>
        </header>
        <Contents document={document} schemas={schemas.map(([name]) => name)} />
        <main>
          {Object.entries(TAGS).map(([tag, words]) => (
            <Heading tag={tag} words={words} document={document} />
          ))}
          <section>
            <h2 id="shapes">Shapes</h2>
            {schemas.map(([name, schema]) => (
              <Shape name={name} schema={schema} />
            ))}
          </section>
          <Problems />
        </main>
      </body>
    </html>
  );
}

interface Row {
  readonly method: string;
  readonly path: string;
  readonly operation: OperationObject;
}

function rowsOf(document: OpenAPIObject, tag: string): Row[] {
  const all = Object.entries(document.paths ?? {}).flatMap(([path, item]) =>
    (["get", "post"] as const).flatMap((method) => {
      const operation = item[method];
      return operation ? [{ method: method.toUpperCase(), path, operation }] : [];
    }),
  );
  return all.filter((row) => row.operation.tags?.includes(tag));
}

function Contents({ document, schemas }: { document: OpenAPIObject; schemas: readonly string[] }) {
  const rows = Object.keys(TAGS).flatMap((tag) => rowsOf(document, tag));
  return (
    <nav aria-label="Contents">
      <ul>
        {rows.map(({ method, path, operation }) => (
          <li>
            <a href={`#${operation.operationId}`}>
              <code>{`${method} ${path}`}</code>
            </a>
          </li>
        ))}
      </ul>
      <p>
        {"Shapes: "}
        {schemas.map((name, index) => [index > 0 && ", ", <a href={`#shape-${name}`}>{name}</a>])}
        {". "}
        <a href="#problems">Problems and faults</a>.
      </p>
    </nav>
  );
}

function Heading({ tag, words, document }: { tag: string; words: string; document: OpenAPIObject }) {
  const rows = rowsOf(document, tag);
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>{tag}</h2>
      <p>{words}</p>
      {rows.map((row) => (
        <Operation {...row} />
      ))}
    </section>
  );
}

function Operation({ method, path, operation }: Row) {
  const request = operation.requestBody as { content?: Content } | undefined;
  const response = operation.responses?.["200"] as { content?: Content } | undefined;
  const problems = Object.keys(operation.responses ?? {}).filter((status) => status !== "200");
  return (
    <article>
      <h3 id={operation.operationId}>
        <code>{`${method} ${path}`}</code> {operation.summary}
      </h3>
      <p>{operation.description}</p>
      <Parameters parameters={operation.parameters as unknown as readonly Parameter[] | undefined} />
      {request && <Bodies title="Takes" content={request.content ?? {}} />}
      <Bodies title="Answers" content={response?.content ?? {}} />
      <p>
        {"Else a "}
        <a href="#problems">problem</a>
        {` with status ${problems.join(", ")}.`}
      </p>
    </article>
  );
}

interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly description: string;
  readonly schema: Node;
}

function Parameters({ parameters }: { parameters: readonly Parameter[] | undefined }) {
  if (!parameters) return null;
  return (
    <dl>
      {parameters.map(({ name, in: place, description, schema }) => (
        <>
          <dt>
            <code>{name}</code> {`(${place}): `}
            <Type of={schema} />
          </dt>
          <dd>{description}</dd>
        </>
      ))}
    </dl>
  );
}

type Content = Readonly<Record<string, Body>>;
interface Body {
  readonly schema: Node & { description?: string };
  readonly example?: unknown;
  readonly examples?: Readonly<Record<string, { readonly summary: string; readonly value: unknown }>>;
}

function Bodies({ title, content }: { title: string; content: Content }) {
  return (
    <>
      {Object.entries(content).map(([type, body]) => {
        const examples = Object.values(body.examples ?? {});
        if (body.example !== undefined) examples.push({ summary: "Example", value: body.example });
        return (
          <>
            <p>
              {`${title} `}
              <code>{type}</code>
              {": "}
              {"$ref" in body.schema ? <Type of={body.schema} /> : body.schema.description}
            </p>
            {examples.map(({ summary, value }) => (
              <details>
                <summary>{summary}</summary>
                <pre>{typeof value === "string" ? value : JSON.stringify(value, null, 2)}</pre>
              </details>
            ))}
          </>
        );
      })}
    </>
  );
}

function Shape({ name, schema }: { name: string; schema: Node }) {
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
function Type({ of }: { of: Node }) {
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

function Problems() {
  return (
    <section>
      <h2 id="problems">Problems and faults</h2>
      <p>
        {"Every error is a "}
        <a href="#shape-Problem">Problem</a>
        {" of one of these types. What is wrong with a request's content is listed fault by fault."}
      </p>
      <dl>
        {Object.entries(PROBLEMS).map(([kind, { status, title }]) => (
          <>
            <dt id={`problem-${kind}`}>
              <code>{`${status} ${kind}`}</code>
            </dt>
            <dd>{title}</dd>
          </>
        ))}
      </dl>
      <h3>Codes of faults</h3>
      <dl>
        {Object.entries(FAULT_CODES).map(([code, meaning]) => (
          <>
            <dt>
              <code>{code}</code>
            </dt>
            <dd>{meaning}</dd>
          </>
        ))}
      </dl>
    </section>
  );
}

/** The style of the page: served from its own address, since nothing inline is allowed. */
export const DOCS_STYLE = `
:root { color-scheme: light dark; --line: #8886; --link: #14549c; }
@media (prefers-color-scheme: dark) { :root { --link: #9cc4f5; } }
body { font: 1rem/1.5 system-ui, sans-serif; max-width: 60rem; margin: 0 auto; padding: 1rem; }
a { color: var(--link); }
h2 { margin-top: 2.5rem; border-bottom: 1px solid var(--line); }
article { margin: 1.5rem 0; }
code, pre { font-family: ui-monospace, monospace; font-size: 0.9em; }
pre { overflow-x: auto; padding: 0.75rem; border: 1px solid var(--line); }
nav ul { list-style: none; padding: 0; columns: 22rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.5rem; border-bottom: 1px solid var(--line); }
th[scope="row"] { font-weight: normal; }
dt { margin-top: 0.5rem; }
`;
