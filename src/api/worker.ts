/** A worker thread of the pool: computes one job after another. Errors go back as plain values, since a class does not cross. */
import { parentPort } from "node:worker_threads";
import { FaultError } from "../estimate/faults.js";
import { CalledOff } from "../estimate/watch.js";
import { calls } from "./calls.js";
import { answerJob, type Job, WARM } from "./computing.js";
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

/** A small estimate with a log and a plan: runs through all that a first caller would otherwise wait for. */
const WARMING: Job = {
  ...{ call: "makeEstimate", type: "application/json", path: {}, query: { include: [] } },
  body: JSON.stringify({
    structure: {
      kind: "pieces",
      pieces: [{ name: "shelf", section: "1 x 8 in", length: "4 ft", count: 3, role: "other" }],
    },
    logs: [{ name: "pine", species: "eastern-white-pine", length: "9 ft", smallDiameter: "12 in" }],
  }),
};

/**
 * Computes a small job, so that code is loaded and compiled before the worker takes any, and tells the pool.
 * @throws What the job throws: a bug.
 */
export async function warmUp(): Promise<void> {
  await answerJob(calls, WARMING, { report: () => {}, stopped: () => false });
  parentPort?.postMessage(WARM);
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
