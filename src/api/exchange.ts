/**
 * One call over HTTP: picks the form of the answer before anything is computed, reads query and body, runs the
 * call, and writes the answer. Everything that goes wrong is thrown, and made a problem in one place.
 */
import { createHash } from "node:crypto";
import type { Context as HonoContext } from "hono";
import { chooseType } from "./accept.js";
import { JSON_TYPE, readBody } from "./body.js";
import { type AnyCall, isHeavy } from "./call.js";
import { type Computing, type Job, render, type Waiting } from "./computing.js";
import { EVENTS_TYPE, eventStream } from "./events.js";
import { LIMITS, type Turnstile } from "./limits.js";
import type { Service } from "./operations.js";
import { type Problem, Refusal } from "./problem.js";
import { readQuery } from "./query.js";

/** What all exchanges share. */
export interface Surroundings {
  readonly service: Service;
  readonly turnstile: Turnstile;
  /** Where calls that are heavy are computed. */
  readonly computing: Computing;
  /** Also writes the log's line when the error is a bug. */
  readonly problemOf: (error: unknown, c: HonoContext) => Problem;
}

/** The handler of one call. */
export function exchange(call: AnyCall, around: Surroundings): (c: HonoContext) => Promise<Response> {
  const offered = typesOffered(call);
  return async (c) => {
    const type = chooseType(c.req.header("Accept"), offered);
    if (type === undefined) throw notAcceptable(call, offered);
    const query = readQuery(new URL(c.req.url).searchParams, call.query);
    // Only calls that compute take a place: health must be answered under load.
    const leave = call.method === "post" ? around.turnstile.enter(clientOf(c)) : () => {};
    let streaming = false;
    try {
      const body = call.request && (await readBody(c.req.raw, call.request));
      const path = c.req.param();
      const job = { call: call.id, type, path, query, body: body?.text };
      if (type === EVENTS_TYPE) {
        streaming = true;
        return eventStream({
          answer: (report, gone) =>
            computed(call, { ...job, type: JSON_TYPE }, body?.value, around, waiting(c, report, gone)),
          problemOf: (error) => around.problemOf(error, c),
          ended: leave,
          packs: /\bgzip\b(?!\s*;\s*q=0(?:\.0*)?(?:,|$))/i.test(c.req.header("Accept-Encoding") ?? ""),
        });
      }
      return written(call, type, await computed(call, job, body?.value, around, waiting(c)), c);
    } finally {
      if (!streaming) leave();
    }
  };
}

/** Whoever has called: gone when the connection is, out of patience when the time is up. */
function waiting(c: HonoContext, report: Waiting["report"] = () => {}, gone?: AbortSignal): Waiting {
  const signals = [c.req.raw.signal, AbortSignal.timeout(LIMITS.callSeconds * 1000), ...(gone ? [gone] : [])];
  return { report, signal: AbortSignal.any(signals) };
}

/** Media types of the answer, the preferred one first. */
function typesOffered(call: AnyCall): string[] {
  return [...Object.keys(call.faces), ...(call.streams ? [EVENTS_TYPE] : [])];
}

function notAcceptable(call: AnyCall, choices: readonly string[]): Refusal {
  const detail = `${call.method.toUpperCase()} ${call.path} answers as ${choices.join(", ")}.`;
  return new Refusal("not-acceptable", detail, { choices });
}

/** The address at the other end of the connection; forwarded headers are not trusted, since anyone can write them. */
function clientOf(c: HonoContext): string | undefined {
  const env = c.env as { incoming?: { socket?: { remoteAddress?: string } } } | undefined;
  return env?.incoming?.socket?.remoteAddress;
}

/** The answer, written: here, or by a worker where it takes long. */
async function computed(
  call: AnyCall,
  job: Job,
  body: unknown,
  { computing, service }: Surroundings,
  { signal, report }: Waiting,
): Promise<Written> {
  if (isHeavy(call, job.query)) return computing.compute(job, { signal, report });
  const context = { report, stopped: () => signal.aborted, service };
  return render(call, job.type, await call.run({ path: job.path, query: job.query, body }, context), job.query);
}

type Written = string | Uint8Array<ArrayBuffer>;

function written(call: AnyCall, type: string, bytes: Written, c: HonoContext): Response {
  const face = call.faces[type];
  const headers = new Headers({ "Content-Type": type.startsWith("text/") ? `${type}; charset=utf-8` : type });
  if (typesOffered(call).length > 1) headers.set("Vary", "Accept");
  if (face?.fileName) headers.set("Content-Disposition", `attachment; filename="${face.fileName}"`);
  if (call.method === "get" && !keep(call, bytes, headers, c)) return new Response(null, { status: 304, headers });
  return new Response(bytes, { headers });
}

/** Sets what a cache needs. @returns false when the caller has these very bytes already. */
function keep(call: AnyCall, bytes: string | Uint8Array, headers: Headers, c: HonoContext): boolean {
  if (call.freshness !== "data") {
    headers.set("Cache-Control", "no-store");
    return true;
  }
  const tag = `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 22)}"`;
  headers.set("ETag", tag);
  headers.set("Cache-Control", "no-cache"); // may be kept, but must be asked for again: the data may have changed
  const known = (c.req.header("If-None-Match") ?? "").split(",").map((text) => text.trim().replace(/^W\//, ""));
  return !known.includes(tag) && !known.includes("*");
}
