/** Generates bodies from the document's schemas (the subset of JSON Schema that our schemas use), and damages them. */
import fc, { type Arbitrary } from "fast-check";
import type { OpenAPIObject, SchemaObject } from "openapi3-ts/oas31";

/** Valid values of a named schema. */
export function validBodies(document: OpenAPIObject, component: string): Arbitrary<unknown> {
  const from = (schema: SchemaObject): Arbitrary<unknown> => {
    if (schema.$ref) return named(String(schema.$ref).replace(/.*\//, ""));
    if (schema.const !== undefined) return fc.constant(schema.const);
    if (schema.enum) return fc.constantFrom(...schema.enum);
    const branches = (schema.oneOf ?? schema.anyOf) as SchemaObject[] | undefined;
    if (branches) return fc.oneof(...branches.map(from));
    switch (schema.type) {
      case "integer":
        return fc.integer({ min: schema.minimum ?? -1000, max: schema.maximum ?? 1000 });
      case "boolean":
        return fc.boolean();
      case "null":
        return fc.constant(null);
      case "string":
        return fc.stringMatching(new RegExp(schema.pattern ?? "^[ -~]{1,20}$"));
      case "array":
        return fc.array(from(schema.items as SchemaObject), { maxLength: Math.min(schema.maxItems ?? 5, 5) });
      case "object":
        return objects(schema);
      default:
        throw new Error(`no generator for ${JSON.stringify(schema)}`);
    }
  };
  const objects = (schema: SchemaObject): Arbitrary<unknown> => {
    if (!schema.properties) {
      const names = from((schema as { propertyNames?: SchemaObject }).propertyNames ?? { type: "string" });
      return fc.dictionary(names as Arbitrary<string>, from(schema.additionalProperties as SchemaObject), {
        maxKeys: 3,
      });
    }
    const fields = Object.entries(schema.properties).map(([name, field]) => [name, from(field as SchemaObject)]);
    const arbitraries: Record<string, Arbitrary<unknown>> = Object.fromEntries(fields);
    return fc.record(arbitraries, { requiredKeys: schema.required ?? [], noNullPrototype: true });
  };
  const named = (name: string): Arbitrary<unknown> => from(document.components?.schemas?.[name] as SchemaObject);
  return named(component);
}

type Path = readonly (string | number)[];

/** One change somewhere in a body, as JSON text: a value replaced, a member dropped, or one added. */
export function damaged(bodies: Arbitrary<unknown>): Arbitrary<string> {
  const junk = fc.oneof(fc.jsonValue({ maxDepth: 1 }), fc.constantFrom(-1, 1e21, 0.5, "", "14 ft", [], {}, null));
  const name = fc.constantFrom("extra", "kind", "__proto__", "constructor", "Name", "");
  const how = fc.constantFrom("replace", "drop", "add");
  return fc.tuple(bodies, fc.nat(), how, junk, name).map(([body, where, change, value, added]) => {
    const paths = pathsIn(body);
    const path = paths[where % paths.length] as Path;
    if (change === "add") return JSON.stringify(replaced(body, path, (node) => withMember(node, added, value)));
    if (change === "drop" && path.length > 0) return JSON.stringify(replaced(body, path, () => undefined));
    return JSON.stringify(replaced(body, path, () => value));
  });
}

function pathsIn(node: unknown, at: Path = []): Path[] {
  if (typeof node !== "object" || node === null) return [at];
  const keys: (string | number)[] = Array.isArray(node) ? [...node.keys()] : Object.keys(node);
  return [at, ...keys.flatMap((key) => pathsIn((node as Record<string | number, unknown>)[key], [...at, key]))];
}

/** A copy with one node changed; undefined drops a member, or leaves null in a list. */
function replaced(node: unknown, [step, ...rest]: Path, change: (node: unknown) => unknown): unknown {
  if (step === undefined) return change(node);
  const copy = (Array.isArray(node) ? [...node] : { ...(node as object) }) as Record<string | number, unknown>;
  copy[step] = replaced(copy[step], rest, change);
  return copy;
}

/** Defined, not assigned: assigning `__proto__` would set the prototype and add nothing. */
function withMember(node: unknown, name: string, value: unknown): unknown {
  if (typeof node !== "object" || node === null || Array.isArray(node)) return { [name]: value };
  return Object.defineProperty({ ...node }, name, { value, enumerable: true, configurable: true });
}

/** Numbers that a person, a script or an attacker may write in the place of a sensible one. */
const NUMBERS = ["0", "0.000000001", "1", "2", "13", "100", "12345", "999999999999", "-1", "1/16", "99.999999999"];
const TEXTS = ["", "  ", "\u0000", "a".repeat(300), "__proto__", "14 ft", "3 kg", "𝟙 ft", "1e9 ft", "NaN", "Infinity"];

/** One to three values of a body changed for others of their kind: other numbers in its texts, lists emptied or doubled. */
export function disturbed(bodies: readonly unknown[]): Arbitrary<unknown> {
  const change = fc.record({ where: fc.nat(), how: fc.nat() });
  return fc.tuple(fc.constantFrom(...bodies), fc.array(change, { minLength: 1, maxLength: 3 })).map(([body, changes]) =>
    changes.reduce<unknown>((changed, { where, how }) => {
      const paths = [...nodesIn(changed)].filter((path) => path.length > 0);
      const path = paths[where % paths.length];
      return path ? replaced(changed, path, (node) => another(node, how)) : changed;
    }, body),
  );
}

function* nodesIn(node: unknown, at: Path = []): Generator<Path> {
  yield at;
  if (typeof node !== "object" || node === null) return;
  const keys: (string | number)[] = Array.isArray(node) ? [...node.keys()] : Object.keys(node);
  for (const key of keys) yield* nodesIn((node as Record<string | number, unknown>)[key], [...at, key]);
}

function another(node: unknown, how: number): unknown {
  const pick = <T>(from: readonly T[]): T => from[how % from.length] as T;
  if (typeof node === "string") {
    const parts = /^(.*?)(\d[\d.,/ ]*)(.*)$/s.exec(node);
    return parts && how % 5 > 0 ? `${parts[1]}${pick(NUMBERS)} ${parts[3]}`.trim() : pick(TEXTS);
  }
  if (typeof node === "number") return pick([0, 1, 2, -1, 3, 17, 1000, 1_000_000, 2 ** 53, 0.5]);
  if (typeof node === "boolean") return !node;
  if (Array.isArray(node)) return pick([[], [...node, ...node], node.slice(0, 1), undefined, Array(100).fill(node[0])]);
  return pick([undefined, {}, null, "", 0]);
}
