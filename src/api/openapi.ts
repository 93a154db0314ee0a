/**
 * The table of calls as an OpenAPI 3.1 document, made from the very schemas that validate.
 *
 * Every named schema is converted twice, as what may be sent and as what is answered, since defaults make the two
 * differ; a name that would have to stand for both at once is a bug, found when the document is built.
 */
import { isDeepStrictEqual } from "node:util";
import {
  type HeadersObject,
  type OpenAPIObject,
  OpenApiBuilder,
  type OperationObject,
  type ParameterObject,
  type ReferenceObject,
  type ResponseObject,
  type ResponsesObject,
  type SchemaObject,
} from "openapi3-ts/oas31";
import { z } from "zod";
import about from "../../package.json" with { type: "json" };
import { JSON_TYPE } from "./body.js";
import { type AnyCall, type Face, type RequestForm, TAGS } from "./call.js";
import { EVENTS_TYPE } from "./events.js";
import { PROBLEMS, type ProblemKind, ProblemSchema, RETRY_AFTER } from "./problem.js";
import { isList } from "./query.js";

type Direction = "input" | "output";
type Json = Record<string, unknown>;

/** The document; components in the order of their names. */
export function describeCalls(calls: readonly AnyCall[]): OpenAPIObject {
  const builder = OpenApiBuilder.create({
    openapi: "3.1.0",
    info: {
      title: "Boleworth",
      version: about.version,
      description: `${about.description}\n\n${INTRODUCTION}`,
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: "/", description: "This service." }],
    security: [],
    paths: {},
  });
  const components = new Components();
  for (const row of calls.filter((call) => !call.hidden)) {
    builder.addPath(row.path, { [row.method]: operation(row, components) });
  }
  addProblems(builder, calls, components);
  for (const [name, schema] of components.sorted()) builder.addSchema(name, schema);
  for (const [name, description] of Object.entries(TAGS)) {
    if (calls.some((call) => call.tag === name)) builder.addTag({ name, description });
  }
  return builder.getSpec();
}

const INTRODUCTION = [
  "Tells an owner-builder with fallen logs whether to mill each group of pieces of an outdoor timber structure, or to",
  "buy it. Nothing is stored between calls; the same request gives the same answer to the byte. Decimals travel as",
  "text beside their unit. Every error is a problem after RFC 9457. No answer says that a structure is strong enough.",
].join(" ");

/** The named schemas that the document refers to. */
class Components {
  private readonly converted: Record<Direction, Record<string, SchemaObject>> = {
    input: convertAll("input"),
    output: convertAll("output"),
  };
  private readonly used = new Map<string, SchemaObject>();

  /** A reference to a named schema; it and all it refers to become components. */
  refer(schema: z.ZodType, direction: Direction): ReferenceObject {
    const id = z.globalRegistry.get(schema)?.id;
    if (!id) throw new Error("a body or an answer needs a name: .meta({ id })");
    this.take(id, direction);
    return { $ref: refTo(id) };
  }

  sorted(): [string, SchemaObject][] {
    return [...this.used].sort(([a], [b]) => (a < b ? -1 : 1));
  }

  private take(id: string, direction: Direction): void {
    const schema = this.converted[direction][id];
    if (!schema) throw new Error(`no schema is named ${id}`);
    const known = this.used.get(id);
    if (known === schema) return;
    if (known && !isDeepStrictEqual(known, schema)) throw new Error(`${id} differs as request and as answer`);
    this.used.set(id, schema);
    for (const inner of referencesIn(schema)) this.take(inner, direction);
  }
}

const refTo = (id: string) => `#/components/schemas/${id}`;

function convertAll(io: Direction): Record<string, SchemaObject> {
  const { schemas } = z.toJSONSchema(z.globalRegistry, { io, uri: refTo, override: addDiscriminator });
  return Object.fromEntries(Object.entries(schemas).map(([id, schema]) => [id, withoutNames(schema as Json)]));
}

/** zod writes its own names beside the key that already is one. */
function withoutNames({ $schema, $id, id, ...rest }: Json): SchemaObject {
  return rest;
}

/** Tells a reader which field picks the branch; with the mapping, for a branch's name is not the field's value. */
function addDiscriminator(at: { zodSchema: z.core.$ZodTypes; jsonSchema: z.core.JSONSchema.BaseSchema }): void {
  const { discriminator, options } = at.zodSchema._zod.def as { discriminator?: string; options?: z.core.$ZodType[] };
  if (!discriminator || !options) return;
  const mapping: Record<string, string> = {};
  for (const option of options) {
    const id = z.globalRegistry.get(option)?.id;
    if (!id) return; // only named branches can be mapped
    for (const value of option._zod.propValues?.[discriminator] ?? []) mapping[String(value)] = refTo(id);
  }
  (at.jsonSchema as Json).discriminator = { propertyName: discriminator, mapping };
}

function referencesIn(node: unknown): string[] {
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    key === "$ref" && typeof value === "string" ? [value.slice(refTo("").length)] : referencesIn(value),
  );
}

function operation(row: AnyCall, components: Components): OperationObject {
  return {
    operationId: row.id,
    tags: [row.tag],
    summary: row.summary,
    description: row.description,
    ...(hasParameters(row) && { parameters: [...pathParameters(row), ...queryParameters(row)] }),
    ...(row.request && { requestBody: requestBody(row.request, components) }),
    responses: { "200": answer(row, components), ...problemResponses(row) },
  };
}

function hasParameters(row: AnyCall): boolean {
  return row.parameters !== undefined || row.query !== undefined;
}

function pathParameters(row: AnyCall): ParameterObject[] {
  return Object.entries(row.parameters ?? {}).map(([name, { description, example }]) => ({
    name,
    in: "path",
    required: true,
    description,
    schema: { type: "string" },
    example,
  }));
}

function queryParameters(row: AnyCall): ParameterObject[] {
  return Object.entries(row.query?.shape ?? {}).map(([name, field]) => {
    const { description, ...schema } = withoutNames(z.toJSONSchema(field, { io: "input" }) as Json);
    return {
      name,
      in: "query",
      required: !field.safeParse(undefined).success,
      description: String(description ?? ""),
      ...(isList(field) && { style: "form" as const, explode: false }),
      schema,
    };
  });
}

function requestBody(form: RequestForm<unknown>, components: Components) {
  const others = Object.entries(form.alsoReads ?? {}).map(([type, reader]) => [
    type,
    { schema: { type: "string", description: reader.description }, example: reader.example },
  ]);
  const schema = components.refer(form.schema, "input");
  return {
    required: true,
    content: { [JSON_TYPE]: { schema, examples: form.examples }, ...Object.fromEntries(others) },
  };
}

function answer(row: AnyCall, components: Components): ResponseObject {
  const faces = Object.entries(row.faces).map(([type, face]) => [type, media(type, face, components)]);
  const events = { schema: { type: "string", description: "Events `progress`, then one `answer` or one `problem`." } };
  return {
    description: Object.values(row.faces)
      .map((face) => face.description)
      .join(" "),
    content: { ...Object.fromEntries(faces), ...(row.streams && { [EVENTS_TYPE]: events }) },
  };
}

function media(type: string, face: Face<unknown, unknown>, components: Components) {
  if (face.schema) return { schema: components.refer(face.schema, "output"), example: face.example };
  const text = type.startsWith("text/");
  const schema = { type: "string", description: face.description, ...(!text && { contentMediaType: type }) };
  return { schema, ...(face.example !== undefined && { example: face.example }) };
}

/** Which problems a call can end in. */
function problemsOf(row: AnyCall): ProblemKind[] {
  return [
    ...(row.request ? (["not-json"] as const) : []),
    ...(row.parameters ? (["not-found"] as const) : []),
    "not-acceptable",
    ...(row.request ? (["body-too-large", "unsupported-media-type"] as const) : []),
    "invalid-request",
    ...(row.method === "post" ? (["too-many-calls"] as const) : []),
    "internal-error",
    "overloaded",
  ];
}

function problemResponses(row: AnyCall): ResponsesObject {
  return Object.fromEntries(
    problemsOf(row).map((kind) => [PROBLEMS[kind].status, { $ref: `#/components/responses/${responseName(kind)}` }]),
  );
}

const responseName = (kind: ProblemKind) => `Problem${PROBLEMS[kind].status}`;

const RETRY_HEADER: HeadersObject = {
  "Retry-After": { description: "Seconds to wait.", schema: { type: "integer", examples: [RETRY_AFTER] } },
};

function addProblems(builder: OpenApiBuilder, calls: readonly AnyCall[], components: Components): void {
  const schema = components.refer(ProblemSchema, "output");
  const used = new Set(calls.filter((call) => !call.hidden).flatMap(problemsOf));
  for (const kind of (Object.keys(PROBLEMS) as ProblemKind[]).filter((candidate) => used.has(candidate))) {
    const { status } = PROBLEMS[kind];
    const titles = Object.values(PROBLEMS).filter((problem) => problem.status === status);
    builder.addResponse(responseName(kind), {
      description: titles.map((problem) => problem.title).join(" Or: "),
      ...((status === 429 || status === 503) && { headers: RETRY_HEADER }),
      content: { "application/problem+json": { schema } },
    });
  }
}
