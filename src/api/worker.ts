/** A worker thread of the pool: computes one job after another. Errors go back as plain values, since a class does not cross. */
import { FaultError } from "../estimate/faults.js";
import { CalledOff } from "../estimate/watch.js";
import { calls } from "./calls.js";
import { answerJob } from "./computing.js";
import type { Order, Outcome } from "./pool.js";
import { Refusal } from "./problem.js";

/** Computes one job. */
export default async function work({ job, stop, port }: Order): Promise<Outcome> {
  port.postMessage("begun");
  try {
    const watch = {
      report: (progress: unknown) => port.postMessage(progress),
      stopped: () => Atomics.load(stop, 0) === 1,
    };
    return { bytes: await answerJob(calls, job, watch) };
  } catch (error) {
    return outcomeOf(error);
  } finally {
    port.close();
  }
}

function outcomeOf(error: unknown): Outcome {
  if (error instanceof CalledOff) return { calledOff: true };
  if (error instanceof FaultError) return { faults: error.faults };
  if (error instanceof Refusal) {
    const { kind, detail, extras } = error;
    return { refused: { kind, detail, extras } };
  }
  throw error;
}
