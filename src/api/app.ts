/** Builds the service from a table of calls. Never listens, so that tests call it directly. */
import { type Context, Hono } from "hono";
import { compress } from "hono/compress";
import { requestId } from "hono/request-id";
import { secureHeaders } from "hono/secure-headers";
import { nearest } from "../estimate/faults.js";
import type { AnyCall } from "./call.js";
import type { Computing } from "./computing.js";
import { exchange, type Surroundings } from "./exchange.js";
import { DEFAULT_PLACES, type Places, Turnstile } from "./limits.js";
import { describeCalls } from "./openapi.js";
import { type Log, Metrics, type Service } from "./operations.js";
import { problemHeaders, problemOf, problemResponse, Refusal } from "./problem.js";

/** What a caller of `createApp` may set. */
export interface AppOptions {
  /** Without it nothing is logged. */
  readonly log?: Log;
  /** Why no new work should be sent here; undefined when it may be. */
  readonly notReady?: () => string | undefined;
  readonly places?: Places;
  /** Where heavy calls are computed: a pool, or `here`. Needed as soon as a call is heavy. */
  readonly computing?: Computing;
}

type App = Hono<{ Variables: { requestId: string; row: string } }>;

/** What a page may load: its own style and script, nothing from elsewhere, nothing inline. */
const CONTENT_SECURITY_POLICY = {
  defaultSrc: ["'none'"],
  scriptSrc: ["'self'"],
  styleSrc: ["'self'"],
  imgSrc: ["'self'", "data:"],
  connectSrc: ["'self'"],
  formAction: ["'self'"],
  baseUri: ["'none'"],
  frameAncestors: ["'none'"],
};

/** Addresses whose answers are packed for the way. */
const PACKED = ["/", "/workings", "/assets/*", "/v1/takeoffs", "/v1/covering-comparisons"];

/** The service, ready to be served or called with `app.request`. */
export function createApp(calls: readonly AnyCall[], options: AppOptions = {}): App {
  const app: App = new Hono();
  const { log = () => {}, notReady = () => undefined, places = DEFAULT_PLACES, computing = nowhere(calls) } = options;
  const document = describeCalls(calls);
  const queue = () => computing.queue();
  const service: Service = { metrics: new Metrics(queue), document: () => document, notReady, queue };
  const around: Surroundings = {
    service,
    computing,
    turnstile: new Turnstile(places),
    problemOf: (error, c) => problemWithLog(error, c, log),
  };

  app.use(requestId());
  app.use(
    secureHeaders({
      contentSecurityPolicy: CONTENT_SECURITY_POLICY,
      xFrameOptions: "DENY",
      strictTransportSecurity: false, // for whoever ends the TLS connection to say
    }),
  );
  app.use(async (c, next) => {
    const end = service.metrics.begin(c.req.method);
    await next();
    if (notReady() !== undefined) c.header("Connection", "close");
    c.header("X-Request-Id", c.get("requestId"));
    const row = c.get("row") ?? "none";
    const seconds = end(row, c.res.status);
    log({ requestId: c.get("requestId"), method: c.req.method, path: row, status: c.res.status, seconds });
  });
  // Pages and drawings are large and mostly alike words; events pack themselves. Other answers are left alone, where
  // packing costs more than it saves.
  for (const path of PACKED) app.use(path, compress());
  for (const path of new Set(calls.map((call) => call.path))) {
    addPath(
      app,
      path,
      calls.filter((call) => call.path === path),
      around,
    );
  }
  const failed = (error: unknown, c: Context) => problemResponse(around.problemOf(error, c), problemHeaders(error));
  app.notFound((c) => failed(notFound(c.req.path, calls), c));
  app.onError(failed);
  return app;
}

/** Nobody blocks a service by forgetting the pool: what is heavy needs a place that was named. */
function nowhere(calls: readonly AnyCall[]): Computing {
  const heavy = calls.find((call) => call.heavy);
  const missing = () => {
    throw new Error(`${heavy?.id} is heavy: say where such calls are computed, by a pool or here`);
  };
  return heavy ? missing() : { compute: missing, queue: () => undefined };
}

function addPath(app: App, path: string, rows: readonly AnyCall[], around: Surroundings): void {
  const pattern = path.replaceAll(/\{(\w+)\}/g, ":$1");
  const methods = rows.flatMap((row) => (row.method === "get" ? ["GET", "HEAD"] : ["POST"]));
  const choices = [...methods, "OPTIONS"];
  app.use(pattern, async (c, next) => {
    c.set("row", path);
    await next();
  });
  for (const row of rows) app.on(row.method.toUpperCase(), pattern, exchange(row, around));
  app.options(pattern, () => new Response(null, { status: 204, headers: { Allow: choices.join(", ") } }));
  app.all(pattern, (c) => {
    throw new Refusal("method-not-allowed", `${path} takes ${choices.join(", ")}, not ${c.req.method}.`, { choices });
  });
}

function notFound(path: string, calls: readonly AnyCall[]): Refusal {
  const near = nearest(path, new Set(calls.map((call) => call.path)));
  const hint = near ? ` Did you mean ${near}?` : " All addresses are listed at /docs.";
  return new Refusal("not-found", `No call is at ${path.slice(0, 100)}.${hint}`, near ? { choices: [near] } : {});
}

function problemWithLog(error: unknown, c: Context, log: Log) {
  const id: string = c.get("requestId") ?? "unknown";
  const problem = problemOf(error, id);
  if (problem.status === 500) log({ level: "error", requestId: id, bug: error instanceof Error ? error.stack : error });
  return problem;
}
