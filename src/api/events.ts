/**
 * An answer as server-sent events: `progress` while it is worked out, then one `answer`, or one `problem`. The
 * request has been read and found sound before the stream begins, so that most problems still have their status.
 */
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
        controller.enqueue(encoder.encode(`event: ${event}\ndata: `));
        controller.enqueue(typeof data === "string" ? encoder.encode(data) : data);
        controller.enqueue(encoder.encode("\n\n"));
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
  return new Response(stream, { headers: { "Content-Type": EVENTS_TYPE, "Cache-Control": "no-store" } });
}
