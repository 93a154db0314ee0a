/**
 * An answer as server-sent events: `progress` while it is worked out, then one `answer`, or one `problem`. The
 * request has been read and found sound before the stream begins, so that most problems still have their status.
 */
import { pipeline, Readable } from "node:stream";
import type { ReadableStream as NodeStream } from "node:stream/web";
import { constants, createGzip } from "node:zlib";
import type { Progress } from "../estimate/watch.js";
import type { Problem } from "./problem.js";

export const EVENTS_TYPE = "text/event-stream";

/** What is streamed. */
export interface Work {
  /** Works the answer out and gives it as JSON text without line breaks. Never called twice. */
  readonly answer: (report: (progress: Progress) => void, gone: AbortSignal) => Promise<string | Uint8Array>;
  readonly problemOf: (error: unknown) => Problem;
  /** Called once, when the work has ended, whether or not someone still listens. */
  readonly ended: () => void;
  /** Whether who asks takes packed answers: they are large, and on a phone the way is slow. */
  readonly packs: boolean;
}

/** Every event is let through as soon as it is written. */
function packed(stream: ReadableStream<Uint8Array>): ReadableStream<Uint8Array> {
  const gzip = createGzip({ flush: constants.Z_SYNC_FLUSH });
  // Whoever goes early is no error; the work learns of it by its own signal.
  pipeline(Readable.fromWeb(stream as NodeStream<Uint8Array>), gzip, () => {});
  return Readable.toWeb(gzip) as ReadableStream<Uint8Array>;
}

/** The response; work begins when it is read. */
export function eventStream(work: Work): Response {
  const encoder = new TextEncoder();
  const gone = new AbortController();
  const stream = new ReadableStream<Uint8Array>({
    async start(controller) {
      const listens = () => !gone.signal.aborted;
      const send = (event: string, data: string | Uint8Array) => {
        if (!listens()) return;
        const bytes = typeof data === "string" ? encoder.encode(data) : data;
        controller.enqueue(Buffer.concat([encoder.encode(`event: ${event}\ndata: `), bytes, encoder.encode("\n\n")]));
      };
      const tell = (event: string, data: unknown) => send(event, JSON.stringify(data));
      try {
        send("answer", await work.answer((progress) => tell("progress", progress), gone.signal));
      } catch (error) {
        tell("problem", work.problemOf(error));
      } finally {
        work.ended();
        if (listens()) controller.close();
      }
    },
    cancel: () => gone.abort(),
  });
  const headers = { "Content-Type": EVENTS_TYPE, "Cache-Control": "no-store", Vary: "Accept-Encoding" };
  if (!work.packs) return new Response(stream, { headers });
  return new Response(packed(stream), { headers: { ...headers, "Content-Encoding": "gzip" } });
}
