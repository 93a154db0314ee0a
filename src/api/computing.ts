/**
 * How heavy calls are computed: a job goes to wherever there is time for it, and comes back as the bytes of its answer,
 * so that neither the request nor the answer is copied as objects on the way.
 */
import { setImmediate } from "node:timers/promises";
import { FaultError } from "../estimate/faults.js";
import { CalledOff, type Progress } from "../estimate/watch.js";
import type { AnyCall, Context } from "./call.js";
import type { Queue, Service } from "./operations.js";

/** One call to be computed. */
export interface Job {
  /** `id` of the call's row. */
  readonly call: string;
  /** Media type of the answer. */
  readonly type: string;
  readonly path: Readonly<Record<string, string>>;
  /** Query parameters as the row's schema lets them through. */
  readonly query: unknown;
  /** The body as JSON text, read once already and found sound. */
  readonly body: string | undefined;
}

/** What a worker tells its pool once it has warmed up. */
export const WARM = "warm";

/** Who waits for a job. */
export interface Waiting {
  /** Fires when the caller has gone or the time is up. */
  readonly signal: AbortSignal;
  readonly report: (progress: Progress) => void;
}

/** Where heavy calls are computed. */
export interface Computing {
  /** @throws FaultError, Refusal, or the reason of the signal. */
  compute(job: Job, waiting: Waiting): Promise<Uint8Array<ArrayBuffer>>;
  /** Undefined where nothing waits for anything. */
  queue(): Queue | undefined;
}

/** Computes on the thread of whoever asks, who can do nothing else meanwhile: for tests and scripts. */
export function here(calls: readonly AnyCall[]): Computing {
  return {
    queue: () => undefined,
    compute: async (job, { signal, report }) => {
      // A turn of the event loop, so that who listens is heard before the work begins, and who has gone ends it.
      await setImmediate();
      signal.throwIfAborted();
      return answerJob(calls, job, { report, stopped: () => signal.aborted });
    },
  };
}

/**
 * Computes one job and writes its answer.
 * @throws What the call throws; CalledOff when it was stopped.
 */
export async function answerJob(
  calls: readonly AnyCall[],
  job: Job,
  watch: Omit<Context, "service">,
): Promise<Uint8Array<ArrayBuffer>> {
  const row = calls.find(({ id }) => id === job.call);
  if (!row) throw new Error(`no call is named ${job.call}`);
  const read = row.request?.read(job.body === undefined ? undefined : JSON.parse(job.body)) ?? { value: undefined };
  if ("faults" in read) throw new FaultError(read.faults);
  const input = { path: job.path, query: job.query, body: read.value };
  const answer = await row.run(input, { ...watch, service: NO_SERVICE });
  if (watch.stopped()) throw new CalledOff();
  const written = render(row, job.type, answer, job.query);
  return typeof written === "string" ? new TextEncoder().encode(written) : written;
}

/** An answer in one of the forms that its call offers. */
export function render(row: AnyCall, type: string, answer: unknown, query: unknown): string | Uint8Array<ArrayBuffer> {
  const face = row.faces[type];
  if (!face) throw new Error(`${row.id} offers ${type} and has no face for it`);
  const rendered = face.render(answer, query);
  return face.schema ? JSON.stringify(rendered) : (rendered as string | Uint8Array<ArrayBuffer>);
}

/** A worker knows nothing of the service around it. */
const NO_SERVICE = new Proxy({} as Service, {
  get: (_, name) => {
    throw new Error(`a heavy call asks the service for ${String(name)}`);
  },
});
