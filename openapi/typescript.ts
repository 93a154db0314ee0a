/** The document as TypeScript: a type for each schema, and a row for each call that takes or gives JSON. */

/** A JSON Schema, as far as the document uses it. */
interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Schema | boolean;
}

type Content = Readonly<Record<string, { readonly schema?: Schema }>>;

interface Operation {
  readonly operationId: string;
  readonly parameters?: readonly { readonly name: string; readonly in: string; readonly schema: Schema }[];
  readonly requestBody?: { readonly content: Content };
  readonly responses: Readonly<Record<string, { readonly content?: Content }>>;
}

/** What is read of the document. */
export interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

const JSON_TYPE = "application/json";
const HEAD = "/** Written from openapi.json by `npm run openapi`: change the calls, not this file. */\n";

/** The whole file. */
export function clientTypes(document: Described): string {
  const schemas = Object.entries(document.components.schemas) as [string, Schema][];
  const rows = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).flatMap(([method, operation]) => callRow(path, method, operation as Operation)),
  );
  const types = schemas.map(([name, schema]) => `${comment(schema)}export type ${name} = ${typeOf(schema, "")};\n`);
  return [
    HEAD,
    ...types,
    `/** What each call takes and gives. */\nexport interface Calls {\n${rows.map(({ type }) => type).join("")}}\n`,
    `/** Where each call is. */\nexport const CALLS = {\n${rows.map(({ place }) => place).join("")}} as const;\n`,
  ].join("\n");
}

/** A call without a JSON answer is no call for a client of this kind. */
function callRow(path: string, method: string, operation: Operation): { type: string; place: string }[] {
  const answer = operation.responses["200"]?.content?.[JSON_TYPE]?.schema;
  if (!answer) return [];
  const { operationId: id, parameters = [], requestBody } = operation;
  const given = (place: string) => {
    const fields = parameters.filter((one) => one.in === place);
    if (fields.length === 0) return "    readonly ".concat(place, ": undefined;\n");
    const lines = fields.map(({ name, schema }) => {
      return `      readonly ${field(name, typeOf(schema, "      "), place === "path")};\n`;
    });
    return `    readonly ${place}: {\n${lines.join("")}    };\n`;
  };
  const body = requestBody?.content[JSON_TYPE]?.schema;
  const type = [
    `  readonly ${id}: {\n`,
    given("path"),
    given("query"),
    `    readonly body: ${body ? typeOf(body, "    ") : "undefined"};\n`,
    `    readonly answer: ${typeOf(answer, "    ")};\n  };\n`,
  ];
  return [{ type: type.join(""), place: `  ${id}: { method: "${method.toUpperCase()}", path: "${path}" },\n` }];
}

/** One type; everything in it is read-only. */
function typeOf(schema: Schema, indent: string): string {
  if (schema.$ref) return schema.$ref.split("/").at(-1) as string;
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.enum) return schema.enum.map((one) => JSON.stringify(one)).join(" | ");
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices) return [...new Set(choices.map((one) => typeOf(one, indent)))].join(" | ");
  if (Array.isArray(schema.type)) return schema.type.map((type) => typeOf({ ...schema, type }, indent)).join(" | ");
  switch (schema.type) {
    case "string":
    case "boolean":
    case "null":
      return schema.type;
    case "number":
    case "integer":
      return "number";
    case "array":
      return `readonly ${arm(schema.items ? typeOf(schema.items, indent) : "unknown")}[]`;
    case "object":
      return objectType(schema, indent);
    default:
      return "unknown";
  }
}

function objectType({ properties = {}, required = [], additionalProperties }: Schema, indent: string): string {
  const inner = `${indent}  `;
  const lines = Object.entries(properties).map(
    ([key, one]) => `${inner}readonly ${field(key, typeOf(one, inner), required.includes(key))};\n`,
  );
  const others = typeof additionalProperties === "object" ? typeOf(additionalProperties, inner) : "unknown";
  if (lines.length === 0) return additionalProperties === false ? "{}" : `{ readonly [key: string]: ${others} }`;
  if (additionalProperties !== false) lines.push(`${inner}readonly [key: string]: unknown;\n`);
  return `{\n${lines.join("")}${indent}}`;
}

const arm = (type: string): string => (type.includes(" | ") || type.startsWith("readonly") ? `(${type})` : type);

function field(key: string, type: string, required: boolean): string {
  const name = /^[A-Za-z_]\w*$/.test(key) ? key : JSON.stringify(key);
  return required ? `${name}: ${type}` : `${name}?: ${type} | undefined`;
}

const comment = ({ description }: Schema): string =>
  description ? `/** ${description.replaceAll("*/", "*\\/").replaceAll(/\s+/g, " ")} */\n` : "";
