/**
 * What zod found wrong, said as faults: each with its JSON Pointer, the value that was given, and a cure that is
 * taken from the description and the example of the field itself.
 */
import { z } from "zod";
import { type Fault, type FaultCode, likest, nearest, pointer } from "../estimate/faults.js";
import { quote } from "../estimate/quantity/text.js";

/** Faults are collected up to this many; nobody mends more in one go. Assumption. */
export const MOST_FAULTS = 50;

/** A name that cells and references can use. */
export const NAME = /^[a-z0-9][a-z0-9-]*$/;
/** Characters that no line of text may have: controls, what breaks the line, and what turns the order of what follows. */
export const HIDDEN = String.raw`\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069`;

type Schema = z.core.$ZodType;
type Path = readonly PropertyKey[];
type Issue = z.core.$ZodIssue;

/** The parts of a zod definition that are walked here; zod keeps one definition type for each kind of schema. */
interface Definition {
  readonly type: string;
  readonly innerType?: Schema;
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly element?: Schema;
  readonly valueType?: Schema;
  readonly options?: readonly Schema[];
  readonly discriminator?: string;
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
}

const definition = (schema: Schema) => schema._zod.def as unknown as Definition;

/** A JSON object; arrays and null are none. */
export function isRecord(input: unknown): input is Readonly<Record<string, unknown>> {
  return typeof input === "object" && input !== null && !Array.isArray(input);
}

/** The schema without the layers that only say that it may be absent or null. */
function bare(schema: Schema): Schema {
  const { innerType } = definition(schema);
  return innerType ? bare(innerType) : schema;
}

/** What people of the trade may call a field, by the schema that has it under another name. No registry of zod: the form reads this file, too. */
const synonyms = new WeakMap<Schema, Readonly<Record<string, string>>>();

/** Tells what else the fields of a schema are called. */
export function alsoCalled<S extends z.ZodObject>(
  schema: S,
  names: Readonly<Record<string, keyof S["shape"] & string>>,
): void {
  synonyms.set(schema, names);
}

/** The branch of a union that the input was most likely meant for, or undefined when none is of its kind. */
function branch(union: Definition, input: unknown): Schema | undefined {
  const options = union.options ?? [];
  if (union.discriminator) {
    const key = union.discriminator;
    const value = isRecord(input) && Object.hasOwn(input, key) ? input[key] : undefined;
    return options.find((option) => option._zod.propValues?.[key]?.has(value as string));
  }
  const alike = options.filter((option) => kindOf(option) === jsonKind(input));
  if (alike.length < 2) return alike[0];
  // Who names a key means the form that has it, however much else is wrong.
  const own = alike.map((option) => knownKeys(option, input));
  const meant = alike.filter((_, index) => own[index] === Math.max(...own));
  const issues = (option: Schema) => z.safeParse(option, input).error?.issues.length ?? 0;
  return meant.reduce((best, option) => (issues(option) < issues(best) ? option : best));
}

/** How many keys of the input an object's schema knows. */
function knownKeys(option: Schema, input: unknown): number {
  const { shape = {} } = definition(bare(option));
  return isRecord(input) ? Object.keys(input).filter((key) => Object.hasOwn(shape, key)).length : 0;
}

function kindOf(schema: Schema): string {
  const { type } = definition(bare(schema));
  return { record: "object", enum: "string", literal: "string", int: "number" }[type] ?? type;
}

function jsonKind(input: unknown): string {
  if (input === null) return "null";
  return Array.isArray(input) ? "array" : typeof input;
}

/** One step down: the parts of `input` that the schema knows, each with its key. */
export function* children(schema: Schema, input: unknown): Generator<readonly [string | number, Schema, unknown]> {
  const known = definition(schema);
  if (known.innerType) yield* children(known.innerType, input);
  else if (known.type === "union") {
    const chosen = branch(known, input);
    if (chosen) yield* children(chosen, input);
  } else if (known.element && Array.isArray(input)) {
    for (const [index, item] of input.entries()) yield [index, known.element, item];
  } else if (isRecord(input)) {
    for (const [key, value] of Object.entries(input)) {
      const part = known.shape && Object.hasOwn(known.shape, key) ? known.shape[key] : known.valueType;
      if (part) yield [key, part, value];
    }
  }
}

/** Every schema that a part of an input may be held against, whatever is given. */
export function partSchemas(schema: Schema): readonly Schema[] {
  const { innerType, options = [], element, shape = {}, valueType } = definition(schema);
  return [innerType, ...options, element, ...Object.values(shape), valueType].flatMap((part) => part ?? []);
}

/** The schema of the value at `path`, branches of unions chosen by what was given. */
function schemaAt(root: Schema, input: unknown, path: Path): Schema | undefined {
  let schema: Schema | undefined = root;
  let value = input;
  for (const step of path) {
    while (schema && (definition(schema).innerType || definition(schema).type === "union")) {
      schema = definition(schema).innerType ?? branch(definition(schema), value);
    }
    if (!schema) return undefined;
    const { shape, element, valueType }: Definition = definition(schema);
    schema = shape ? (Object.hasOwn(shape, step) ? shape[String(step)] : undefined) : (element ?? valueType);
    value = valueAt(value, [step]);
  }
  return schema;
}

function valueAt(input: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, step)
        ? (value as Record<PropertyKey, unknown>)[step]
        : undefined,
    input,
  );
}

/** What was given, in a few words. */
function given(input: unknown): string {
  if (typeof input === "string") return quote(input);
  if (Array.isArray(input)) return "A list";
  if (isRecord(input)) return "An object";
  return input === undefined ? "Nothing" : `The value ${String(input)}`;
}

/** The first description or example on the way from the outer layer to the bare schema. */
function meta(schema: Schema | undefined): { readonly examples?: readonly unknown[] } {
  if (!schema) return {};
  const { innerType } = definition(schema);
  return { ...(innerType ? meta(innerType) : {}), ...z.globalRegistry.get(schema) };
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "an object",
  record: "an object",
  null: "null",
};

/** "Give text, such as …", from the field's own example. */
function cureFor(schema: Schema | undefined): string {
  const inner = schema && definition(bare(schema));
  const ofOne = meta(inner?.element).examples?.[0];
  const example = meta(schema).examples?.[0] ?? (ofOne === undefined ? undefined : [ofOne]);
  const such = example === undefined ? "" : `, such as ${JSON.stringify(example)}`;
  if (inner?.entries) return `Give one of: ${list(Object.values(inner.entries))}.`;
  const kinds = kindsOf(schema);
  // Where text will do, the longer form of the same is not worth a word.
  const told = kinds.includes("string") ? kinds.filter((kind) => kind !== "object") : kinds;
  const words = [...new Set(told.map((kind) => EXPECTED[kind] ?? kind))].join(" or ");
  return `Give ${words || "what the description asks for"}${such}.`;
}

/** Kinds of values that a schema takes. */
const kindsOf = (schema: Schema | undefined): readonly string[] => simplestOf(schema).map(kindOf);

/** What a schema takes, unions within unions taken apart. */
function simplest(schema: Schema): readonly Schema[] {
  const { options } = definition(bare(schema));
  return options ? options.flatMap(simplest) : [bare(schema)];
}

/** True of a field whose text needs a unit: it takes text, or a value beside its unit. */
function wantsUnit(schema: Schema | undefined): boolean {
  return simplestOf(schema).some((one) => definition(one).shape?.unit !== undefined);
}

const simplestOf = (schema: Schema | undefined): readonly Schema[] => (schema ? simplest(schema) : []);

/** What was given in the wrong form; of a bare number, what it lacks. */
function wrongForm(schema: Schema | undefined, value: unknown, at: string): Fault {
  const example = meta(schema).examples?.find((one) => /\d/.test(String(one)));
  const such = example === undefined ? "" : `, such as ${JSON.stringify(example)}`;
  return typeof value === "number" && wantsUnit(schema)
    ? fault("wrong-shape", at, `The value ${value} has no unit.`, `Give text with its unit${such}.`)
    : fault("wrong-shape", at, `${given(value)} is not of the right form here.`, cureFor(schema));
}

/** A text that its pattern does not take: the character that nobody sees, or the name that it could be. */
function wrongText(
  schema: Schema | undefined,
  issue: z.core.$ZodIssueInvalidStringFormat,
  text: string,
  at: string,
): Fault {
  const hidden = new RegExp(`[${HIDDEN}]`, "u").exec(text);
  if (hidden) {
    const code = hidden[0].codePointAt(0)?.toString(16).toUpperCase().padStart(4, "0");
    const place = [...text.slice(0, hidden.index)].length + 1;
    const wrong = `Character ${place} of ${quote(text)} is U+${code}, which cannot stand in a line of text.`;
    return fault("wrong-shape", at, wrong, "Leave that character out.");
  }
  if (issue.pattern !== String(NAME)) return wrongForm(schema, text, at);
  const words = text.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  const cure = `Give lower-case letters, digits and hyphens, such as ${words.join("-") || "east-post"}.`;
  return fault("wrong-shape", at, `${quote(text)} is not a name here.`, cure);
}

/** Names that are all told; of more a handful. Assumptions: nobody reads on, and a fault has room for no more. */
const ALL_TOLD = 12;
const HANDFUL = 5;

/** Names for a sentence: all of a few, else the likest ones, whole, and how many more there are. */
function list(names: readonly string[], like = ""): string {
  if (names.length <= ALL_TOLD) return names.join(", ");
  const told = like === "" ? names.slice(0, HANDFUL) : likest(like, names, HANDFUL);
  return `${told.join(", ")} and ${names.length - HANDFUL} more`;
}

/** One fault, its place written as a JSON Pointer below `base`. */
export function fault(code: FaultCode, at: string, wrong: string, cure: string): Fault {
  return { code, at, wrong, cure };
}

/**
 * Every issue as a fault.
 * @param base - Pointer to `input` within the whole request.
 */
export function shapeFaults(root: Schema, input: unknown, issues: readonly Issue[], base = ""): Fault[] {
  const faults: Fault[] = [];
  for (const issue of issues) {
    if (faults.length >= MOST_FAULTS) break;
    faults.push(...faultsOf(root, input, issue, issue.path, base));
  }
  return faults.slice(0, MOST_FAULTS);
}

/** The faults of one issue. `path` is from the root, also where the issue comes from within a union. */
function faultsOf(root: Schema, input: unknown, issue: Issue, path: Path, base: string): Fault[] {
  const schema = schemaAt(root, input, path);
  const value = valueAt(input, path);
  const at = pointer(base, ...path.map(String));
  switch (issue.code) {
    case "unrecognized_keys":
      return unknownKeys(schema, value, issue.keys, at);
    case "invalid_union":
      return unionFaults(root, input, issue, path, base);
    case "invalid_value":
      return [value === undefined ? missing(schema, at) : unknownValue(value, issue.values.map(String), at)];
    case "too_big":
    case "too_small":
      // Text in the place of a list: that it is no list is told already, and its characters are no entries.
      return typeof value === "string" && kindsOf(schema).includes("array")
        ? []
        : [outOfBounds(schema, issue, value, at)];
    case "invalid_format":
      return [wrongText(schema, issue, String(value), at)];
    case "invalid_type":
      if (value === undefined) return [missing(schema, at)];
  }
  return [wrongForm(schema, value, at)];
}

function missing(schema: Schema | undefined, at: string): Fault {
  return fault("missing-field", at, `“${at.slice(at.lastIndexOf("/") + 1)}” is absent.`, cureFor(schema));
}

function unknownKeys(schema: Schema | undefined, value: unknown, keys: readonly string[], at: string): Fault[] {
  const inner = schema && definition(bare(schema));
  const owner = inner?.type === "union" ? branch(inner, value) : schema && bare(schema);
  const shape = (owner && definition(owner).shape) ?? {};
  const known = Object.keys(shape);
  const other = new Map(Object.entries((owner && synonyms.get(owner)) ?? {}));
  const cure = (key: string): string => {
    const meant = other.get(key);
    if (meant) return `It is called “${meant}” here. ${cureFor(shape[meant])}`;
    const among = containing(key, known);
    if (among.length > 1) return `Which one: ${list(among)}?`;
    const near = among[0] ?? nearest(key, known);
    return near ? `Did you mean “${near}”?` : `Known here: ${list(known, key)}.`;
  };
  return keys
    .slice(0, MOST_FAULTS)
    .map((key) =>
      fault("unknown-field", pointer(at, key.slice(0, 64)), `There is no field ${quote(key)} here.`, cure(key)),
    );
}

/** Known names that a text, or every word of it, is part of: `pine` among the species. */
function containing(value: unknown, known: readonly string[]): readonly string[] {
  if (typeof value !== "string" || value.length < 3) return [];
  const text = value
    .toLowerCase()
    .trim()
    .replaceAll(/[\s_]+/g, "-");
  const words = wordsOf(text);
  const hasWords = (name: string) => words.length > 0 && words.every((one) => name.includes(one));
  return text === "" ? [] : known.filter((name) => name.includes(text) || hasWords(name));
}

/** Numbers and single letters tell nothing: `pine 1` asks for a pine. */
const wordsOf = (name: string): readonly string[] => name.split("-").filter((one) => /[a-z]{2}/.test(one));

function unknownValue(value: unknown, known: readonly string[], at: string): Fault {
  const code = typeof value === "string" ? "unknown-name" : "wrong-shape";
  const wrong = `${given(value)} is not known here.`;
  const among = containing(value, known);
  if (among.length > 1 && known.length > ALL_TOLD) return fault(code, at, wrong, `Which one: ${list(among)}?`);
  const near = among[0] ?? (typeof value === "string" ? nearest(value, known) : undefined);
  const options = `Give one of: ${list(known, typeof value === "string" ? value : "")}.`;
  const close =
    near && known.length > ALL_TOLD ? `Did you mean “${near}”?` : near && `Did you mean “${near}”? ${options}`;
  return fault(code, at, wrong, close ?? options);
}

/** The branch that was meant tells what is wrong within it; a value of no branch's kind is wrong as a whole. */
function unionFaults(
  root: Schema,
  input: unknown,
  issue: z.core.$ZodIssueInvalidUnion,
  path: Path,
  base: string,
): Fault[] {
  const value = valueAt(input, path);
  const at = pointer(base, ...path.map(String));
  if (issue.discriminator) {
    const owner = schemaAt(root, input, path.slice(0, -1));
    const union = owner && definition(bare(owner));
    const values = (union?.options ?? []).flatMap((option) => [
      ...(option._zod.propValues?.[issue.discriminator as string] ?? []),
    ]);
    const known = values.map(String);
    if (value !== undefined) return [unknownValue(value, known, at)];
    const absent = `“${issue.discriminator}”, which says the kind, is absent.`;
    return [fault("missing-field", at, absent, `Give one of: ${list(known)}.`)];
  }
  const schema = schemaAt(root, input, path);
  if (value === undefined) return [missing(schema, at)];
  const union = schema && definition(bare(schema));
  const chosen = union && branch(union, value);
  const within = chosen && (issue.errors[union.options?.indexOf(chosen) ?? -1] ?? []);
  if (within?.length) {
    return within.flatMap((inner) => faultsOf(root, input, inner, [...path, ...inner.path], base));
  }
  return [wrongForm(schema, value, at)];
}

function outOfBounds(
  schema: Schema | undefined,
  issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall,
  value: unknown,
  at: string,
): Fault {
  const [bound, word] = issue.code === "too_big" ? [issue.maximum, "most"] : [issue.minimum, "least"];
  const limit = `at ${word} ${String(bound)}`;
  const example = meta(schema).examples?.[0];
  const such = example === undefined ? "" : `, such as ${JSON.stringify(example)}`;
  if (Array.isArray(value)) {
    const code = issue.code === "too_big" ? "too-large" : "out-of-range";
    return fault(code, at, `The list has ${value.length} entries.`, `Give ${limit}.`);
  }
  if (typeof value === "string") {
    return fault("out-of-range", at, `The text has ${value.length} characters.`, `Give ${limit}${such}.`);
  }
  return fault("out-of-range", at, `${given(value)} is outside the limit.`, `Give ${limit}${such}.`);
}
