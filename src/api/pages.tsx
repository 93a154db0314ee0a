/** The readable page of the calls, made from the OpenAPI document alone, so that the two cannot disagree. */
import type { OpenAPIObject, OperationObject } from "openapi3-ts/oas31";
import { FAULT_CODES } from "../estimate/faults.js";
import { TAGS } from "./call.js";
import { type Node, Shape, Type } from "./docs-shapes.js";
import { PROBLEMS } from "./problem.js";

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
