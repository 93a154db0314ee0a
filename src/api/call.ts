/**
 * The shape of one row of the table of calls. Everything that HTTP, the document and the page at /docs need to
 * know of a call is in its row, so that a new call is one row and nothing else.
 */
import type { z } from "zod";
import { readShape } from "../catalog/reading.js";
import type { Fault } from "../estimate/faults.js";
import type { Watch } from "../estimate/watch.js";
import type { Service } from "./operations.js";

/** What was read, or every fault found in it. */
export type Read<T> = { readonly value: T } | { readonly faults: readonly Fault[] };

/** An example for people; it must validate, and a test sees to it. */
export interface Example<Value = unknown> {
  readonly summary: string;
  readonly value: Value;
}

/** How a body becomes what the call works on. */
export interface RequestForm<Body> {
  /** Shape of the JSON body; has a name for the document (`.meta({ id })`). */
  readonly schema: z.ZodType;
  readonly examples: Readonly<Record<string, Example>>;
  /** From parsed JSON to what `run` takes. */
  read(json: unknown): Read<Body>;
  /** Other media types, each turned into the JSON that `read` takes. */
  readonly alsoReads?: Readonly<Record<string, TextReader>>;
}

/** Reads a body that is not JSON. */
export interface TextReader {
  readonly description: string;
  readonly example: string;
  toJson(text: string): Read<unknown>;
}

/** One form of the answer. */
export interface Face<Answer, Query> {
  /** What this form is for, in a sentence. */
  readonly description: string;
  /** Shape of a JSON answer, named for the document; absent for text and bytes. */
  readonly schema?: z.ZodType;
  readonly example?: unknown;
  /** Offered to the browser as the name to save under. */
  readonly fileName?: string;
  /** JSON value when there is a schema, else text or bytes. */
  render(answer: Answer, query: Query): unknown;
}

/** What a call is given. */
export interface Input<Query, Body> {
  /** Parts of the path, such as `name` in `/v1/demos/{name}`. */
  readonly path: Readonly<Record<string, string>>;
  readonly query: Query;
  readonly body: Body;
}

/** What surrounds a call. It is `stopped` when the caller has gone or the time is up. */
export interface Context extends Watch {
  /** Only for what runs where the service does: a call that is `heavy` must not ask for it. */
  readonly service: Service;
}

/** Headings under which calls are shown. */
export const TAGS = {
  Estimating: "Work out what a structure takes, and whether to mill or buy it.",
  Data: "What the service knows: each row with its source.",
  Operations: "For whoever runs the service.",
  Pages: "For people, and for programs that want to know the calls.",
} as const;

/** A strict object, whose fields are the parameters. */
export type QuerySchema<Query> = z.ZodType & {
  /** What it lets through, named so that the compiler can infer it; zod has it for types only. */
  readonly _output: Query;
  readonly shape: Readonly<Record<string, z.ZodType>>;
};

/** One row. Faults of the content are returned by `read` or thrown by `run` as `FaultError`. */
export interface Call<Query, Body, Answer> {
  /** GET answers HEAD too. */
  readonly method: "get" | "post";
  /** With `{name}` for a part that varies. */
  readonly path: `/${string}`;
  /** Unique, in camel case: the name of the call in generated clients. */
  readonly id: string;
  readonly tag: keyof typeof TAGS;
  readonly summary: string;
  readonly description: string;
  /** Each varying part of the path. */
  readonly parameters?: Readonly<Record<string, { readonly description: string; readonly example: string }>>;
  /** A strict object; a field that is a list is written with commas: `?include=workings,plans`. */
  readonly query?: QuerySchema<Query>;
  readonly request?: RequestForm<Body>;
  /** GET only. Data carry an ETag; what is live must not be kept. */
  readonly freshness?: "data" | "live";
  /** Left out of the document: styles and scripts of pages. */
  readonly hidden?: boolean;
  /** Computes for longer than others may wait: runs in a worker. What it takes and gives goes as text. */
  readonly heavy?: boolean;
  /** The same of what is asked for with such a query. */
  heavyWhen?(query: Query): boolean;
  /** Offers `text/event-stream` as well: progress, then the JSON answer. */
  readonly streams?: boolean;
  run(input: Input<Query, Body>, context: Context): Answer | Promise<Answer>;
  /** By media type, the preferred one first. */
  readonly faces: Readonly<Record<string, Face<NoInfer<Answer>, NoInfer<Query>>>>;
}

/** Whether a call computes too long for the thread that answers. */
export const isHeavy = (call: AnyCall, query: unknown): boolean =>
  call.heavy === true || call.heavyWhen?.(query) === true;

/** A row whose types no longer matter: its parts were checked against one another by `call`. */
export type AnyCall = Call<unknown, unknown, unknown>;

/** Checks that the parts of a row fit one another. */
export function call<Query, Body, Answer>(row: Call<Query, Body, Answer>): AnyCall {
  return row;
}

/**
 * A JSON body.
 * @param read - From parsed JSON to what `run` takes; without it, what the schema lets through.
 */
export function body<S extends z.ZodType, Body = z.output<S>>(form: {
  readonly schema: S;
  readonly examples: Readonly<Record<string, Example<z.input<S>>>>;
  readonly read?: (json: unknown) => Read<Body>;
  readonly alsoReads?: Readonly<Record<string, TextReader>>;
}): RequestForm<Body> {
  const { schema, read = (json: unknown) => readShape(schema, json) as Read<Body>, ...rest } = form;
  return { ...rest, schema, read };
}

/** A JSON answer, its example checked against its schema by the compiler. */
export function json<S extends z.ZodType, Answer = z.output<S>, Query = unknown>(face: {
  readonly description: string;
  readonly schema: S;
  readonly example: z.output<S>;
  render(answer: Answer, query: Query): z.output<S>;
}): Face<Answer, Query> {
  return face;
}
