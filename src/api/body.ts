/** Reads a request's body once: its type (415), its size (413), its encoding and its grammar (400). */
import { FaultError } from "../estimate/faults.js";
import { essence } from "./accept.js";
import type { Read, RequestForm } from "./call.js";
import { LIMITS } from "./limits.js";
import { Refusal } from "./problem.js";
import { NotJson, readJson } from "./strict-json.js";

export const JSON_TYPE = "application/json";

/** A body as the call takes it, and the JSON text that it was read from. */
export interface ReadBody<Body> {
  readonly value: Body;
  readonly text: string;
}

/**
 * Reads the body.
 * @throws Refusal 400, 413 or 415; FaultError when it is read but is not what is asked for.
 */
export async function readBody<Body>(request: Request, form: RequestForm<Body>): Promise<ReadBody<Body>> {
  const type = checkedType(request, form);
  const text = textOf(await readBytes(request));
  const reader = form.alsoReads?.[type];
  const json = reader ? sound(reader.toJson(text)) : parsed(text);
  return { value: sound(form.read(json)), text: reader ? JSON.stringify(json) : text };
}

/** The media types that a call reads, JSON first. */
function typesRead(form: RequestForm<unknown>): string[] {
  return [JSON_TYPE, ...Object.keys(form.alsoReads ?? {})];
}

function sound<T>(read: Read<T>): T {
  if ("faults" in read) throw new FaultError(read.faults);
  return read.value;
}

function checkedType(request: Request, form: RequestForm<unknown>): string {
  const choices = typesRead(form);
  const refuse = (detail: string): never => {
    throw new Refusal("unsupported-media-type", detail, { choices });
  };
  const coding = request.headers.get("Content-Encoding") ?? "identity";
  if (coding.toLowerCase() !== "identity") refuse("The body is compressed; send it as it is.");
  const given = request.headers.get("Content-Type");
  if (!given?.trim()) refuse("The Content-Type header is absent.");
  const type = essence(given as string);
  if (!choices.includes(type)) refuse(`The Content-Type is ${type}.`);
  const charset = /;\s*charset\s*=\s*"?([^\s;"]+)/i.exec(given as string)?.[1] ?? "utf-8";
  if (!/^utf-?8$/i.test(charset)) refuse(`The body is in ${charset}; send it in UTF-8.`);
  return type;
}

/**
 * At most `LIMITS.bodyBytes`. A body whose length is announced is read in one go, which costs half the time of
 * reading it piece by piece; Node cuts it at the length announced.
 */
async function readBytes(request: Request): Promise<Uint8Array> {
  const announced = request.headers.get("Content-Length");
  if (announced !== null && Number(announced) > LIMITS.bodyBytes) throw tooLarge();
  const whole = announced !== null && !request.headers.has("Transfer-Encoding");
  try {
    return whole ? new Uint8Array(await request.arrayBuffer()) : await readPieces(request);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal("not-json", "The body ended before it was complete.");
  }
}

async function readPieces(request: Request): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  // Leaving the loop by a throw cancels the stream: the rest is never held.
  for await (const piece of (request.body ?? []) as AsyncIterable<Uint8Array>) {
    length += piece.length;
    if (length > LIMITS.bodyBytes) throw tooLarge();
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}

function tooLarge(what: "body" | "file" = "body"): Refusal {
  return new Refusal("body-too-large", `A ${what} may have ${LIMITS.bodyBytes} bytes.`);
}

/**
 * The text of a body, or of a file that stands in its place.
 * @param what - As it is called where it is refused.
 * @throws Refusal where it is empty, too large or not UTF-8.
 */
export function textOf(bytes: Uint8Array, what: "body" | "file" = "body"): string {
  if (bytes.length > LIMITS.bodyBytes) throw tooLarge(what);
  if (bytes.length === 0) throw new Refusal("not-json", `The ${what} is empty.`);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal("not-json", `The ${what} is not valid UTF-8.`);
  }
}

/**
 * The JSON of a text, as strictly as `readJson` has it.
 * @throws Refusal where it is none; FaultError where it is, but has names twice or is too deep.
 */
export function parsed(text: string): unknown {
  try {
    return sound(strict(text));
  } catch (error) {
    if (error instanceof NotJson) throw new Refusal("not-json", error.message);
    throw error;
  }
}

function strict(text: string): Read<unknown> {
  const { value, faults } = readJson(text);
  return faults.length > 0 ? { faults } : { value };
}
