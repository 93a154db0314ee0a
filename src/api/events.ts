/**
 * An answer as server-sent events: `progress` while it is worked out, then one `answer`, or one `problem`. The
 * request has been read and found sound before the stream begins, so that most problems still have their status.
 */
import type { Progress } from "./call.js";
import type { Problem } from "./problem.js";

export const EVENTS_TYPE = "text/event-stream";

/** What is streamed. */
export interface Work {
  /** Works the answer out and gives it as a JSON value. Never called twice. */
  readonly answer: (report: (progress: Progress) => void) => Promise<unknown>;
  readonly problemOf: (error: unknown) => Problem;
  /** Called once, when the work has ended, whether or not someone still listens. */
  readonly ended: () => void;
}

/** The response; work begins when it is read. */
export function eventStream(work: Work): Response {
  const encoder = new TextEncoder();
  let listening = true;
  const stream = new ReadableStream<Uint8Array>({
    async start(controller) {
      const send = (event: string, data: unknown) => {
        if (listening) controller.enqueue(encoder.encode(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`));
      };
      try {
        send("answer", await work.answer((progress) => send("progress", progress)));
      } catch (error) {
        send("problem", work.problemOf(error));
      } finally {
        work.ended();
        if (listening) controller.close();
      }
    },
    cancel() {
      listening = false;
    },
  });
  return new Response(stream, { headers: { "Content-Type": EVENTS_TYPE, "Cache-Control": "no-store" } });
}
