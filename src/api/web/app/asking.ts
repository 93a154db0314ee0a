/** Asks the service for an estimate and listens to how far it has come. */
import type { Calls } from "../../../../openapi/client-types.js";
import { type Answer, send } from "./client.js";
import type { Json } from "./json.js";
import type { Fault, Include, Problem, Progress } from "./model.js";

/** What came of it. */
export type Outcome =
  | { readonly answer: Answer<"makeEstimate"> }
  | { readonly problem: Problem }
  /** Seconds after which to ask again. */
  | { readonly busy: number }
  | { readonly offline: true };

/** What goes with a call. */
export interface Listening {
  readonly signal: AbortSignal;
  readonly report: (progress: Progress) => void;
}

/** Seconds to wait when the service does not say. */
const WAIT = 2;

/** One call of `POST /v1/estimates`. Never throws: a call given up ends as offline, and nobody listens any more. */
export async function askForEstimate(
  request: Json,
  include: readonly Include[],
  listening: Listening,
): Promise<Outcome> {
  try {
    // What was typed may be wrong: the service says so, field by field.
    const body = request as Calls["makeEstimate"]["body"];
    const headers = { Accept: "text/event-stream" };
    const response = await send("makeEstimate", { query: { include }, body }, { headers, signal: listening.signal });
    if (response.status === 503 || response.status === 429)
      return { busy: Number(response.headers.get("Retry-After")) || WAIT };
    if (!response.ok) return { problem: (await response.json()) as Problem };
    return await lastEvent(response, listening);
  } catch {
    return { offline: true };
  }
}

/**
 * What the service finds wrong with a request before it works it out. The work itself is called off; empty also where
 * the service can't be asked.
 */
export async function faultsOf(request: Json): Promise<readonly Fault[]> {
  const call = new AbortController();
  try {
    const body = request as Calls["makeEstimate"]["body"];
    const headers = { Accept: "text/event-stream" };
    const response = await send("makeEstimate", { query: {}, body }, { headers, signal: call.signal });
    const { faults } = response.status === 422 ? ((await response.json()) as Problem) : { faults: [] };
    return faults;
  } catch {
    return [];
  } finally {
    call.abort();
  }
}

/** Reads events until one settles the call. */
async function lastEvent(response: Response, { report }: Listening): Promise<Outcome> {
  const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
  if (!reader) return { offline: true };
  let text = "";
  for (;;) {
    const { done, value = "" } = await reader.read();
    text += value;
    const events = text.split("\n\n");
    text = events.pop() ?? "";
    for (const event of events) {
      const [, kind, data = "null"] = /^event: (\w+)\ndata: (.*)$/s.exec(event) ?? [];
      if (kind === "progress") report(JSON.parse(data));
      if (kind === "answer") return { answer: JSON.parse(data) };
      if (kind === "problem") return settled(JSON.parse(data));
    }
    if (done) return { offline: true };
  }
}

const settled = (problem: Problem): Outcome => (problem.status === 503 ? { busy: WAIT } : { problem });
