/**
 * Worker threads that compute heavy calls, so that the service goes on answering. The only file that imports piscina.
 *
 * The queue is bounded: who comes when it is full is told at once when to come again. A job that nobody waits for any
 * more is taken out of the queue, or asked to stop; a thread that does not heed is ended and another one started.
 */
import { MessageChannel, type MessagePort } from "node:worker_threads";
import { Piscina } from "piscina";
import { type Fault, FaultError } from "../estimate/faults.js";
import { CalledOff, type Progress } from "../estimate/watch.js";
import { type Computing, type Job, WARM, type Waiting } from "./computing.js";
import type { Queue } from "./operations.js";
import { RETRY_AFTER, Refusal } from "./problem.js";

/** What a worker is given. */
export interface Order {
  readonly job: Job;
  /** 1 from the moment that nobody waits any more; shared by both threads. */
  readonly stop: Int32Array;
  /** Progress goes out here, "begun" first. */
  readonly port: MessagePort;
}

/** What comes of it; a class would not cross. A bug is thrown instead. */
export type Outcome =
  | { readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly faults: readonly Fault[] }
  | { readonly refused: Pick<Refusal, "kind" | "detail" | "extras"> }
  | { readonly calledOff: true };

export interface PoolSize {
  readonly workers: number;
  /** Jobs that may wait while all workers are busy. */
  readonly mostWaiting: number;
}

/** Milliseconds that a worker has to heed a stop before it is ended. Assumption: searches ask every few milliseconds. */
const GRACE = 1000;

export class Pool implements Computing {
  private readonly threads: Piscina<Order, Outcome>;
  /** Jobs taken and not ended, and those of them that a thread has begun. The threads' own queue has no bound. */
  private open = 0;
  private underWay = 0;
  private answered = 0;
  private refused = 0;
  private calledOff = 0;
  /** Threads that have told that they are warm since the start, those ended since among them. */
  private warmed = 0;

  constructor(private readonly size: PoolSize) {
    this.threads = new Piscina({
      filename: new URL("worker.mjs", import.meta.url).href,
      minThreads: size.workers,
      maxThreads: size.workers,
    });
    this.threads.on("message", (told) => {
      if (told === WARM) this.warmed++;
    });
  }

  async compute(job: Job, { signal, report }: Waiting): Promise<Uint8Array<ArrayBuffer>> {
    signal.throwIfAborted();
    this.refuseWhenFull();
    if (this.open >= this.size.workers) report(WAITS);
    const outcome = await this.run(job, { signal, report });
    if ("calledOff" in outcome) {
      this.calledOff++;
      signal.throwIfAborted();
      throw new CalledOff();
    }
    this.answered++;
    if ("faults" in outcome) throw new FaultError(outcome.faults);
    if ("refused" in outcome) throw new Refusal(outcome.refused.kind, outcome.refused.detail, outcome.refused.extras);
    return outcome.bytes;
  }

  /** Whether every worker has been warmed: it has computed a job (`warmUp`) and takes others. */
  isWarm(): boolean {
    return this.warmed >= this.size.workers;
  }

  queue(): Queue {
    const { workers, mostWaiting } = this.size;
    const { answered, refused, calledOff } = this;
    const waiting = this.open - this.underWay;
    return { workers, underWay: this.underWay, waiting, mostWaiting, answered, refused, calledOff };
  }

  /** Ends the threads; jobs under way end in an error. */
  async close(): Promise<void> {
    await this.threads.destroy();
  }

  private refuseWhenFull(): void {
    const { workers, mostWaiting } = this.size;
    if (this.open < workers + mostWaiting) return;
    this.refused++;
    const detail = `All workers are busy (${workers}), and ${mostWaiting} calls wait already.`;
    throw new Refusal("overloaded", detail, { retryAfter: RETRY_AFTER });
  }

  private async run(job: Job, { signal, report }: Waiting): Promise<Outcome> {
    const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
    const end = new AbortController();
    const { port1: mine, port2: theirs } = new MessageChannel();
    let begun = false;
    let patience: NodeJS.Timeout | undefined;
    mine.on("message", (told: "begun" | Progress) => {
      if (told !== "begun") return report(told);
      begun = true;
      this.underWay++;
    });
    const leave = () => {
      Atomics.store(stop, 0, 1);
      if (begun) patience = setTimeout(() => end.abort(), GRACE);
      else end.abort();
    };
    signal.addEventListener("abort", leave, { once: true });
    this.open++;
    try {
      return await this.threads.run({ job, stop, port: theirs }, { transferList: [theirs], signal: end.signal });
    } catch (error) {
      if (signal.aborted) return { calledOff: true };
      throw error;
    } finally {
      this.open--;
      if (begun) this.underWay--;
      clearTimeout(patience);
      signal.removeEventListener("abort", leave);
      mine.close();
    }
  }
}

/** Told while all workers are busy. */
const WAITS: Progress = { stage: "waiting for a worker", step: 0, steps: 1, done: 0, of: 1 };
