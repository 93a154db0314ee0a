import { afterAll, describe, expect, it, vi } from "vitest";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { here, type Job } from "../../src/api/computing.js";
import { demoRequest } from "../../src/api/demos.js";
import { Pool } from "../../src/api/pool.js";
import { Refusal } from "../../src/api/problem.js";
import { serve } from "../../src/api/serve.js";
import { warmUp } from "../../src/api/worker.js";
import { FaultError } from "../../src/estimate/faults.js";
import type { Progress } from "../../src/estimate/watch.js";
import { pathologicalRequest } from "../judges/pathological-sawing.js";

// Workers load and warm first, and the large question takes its time where others use the machine.
vi.setConfig({ testTimeout: 120_000 });

const pool = new Pool({ workers: 1, mostWaiting: 1 });
afterAll(() => pool.close());

const job = (request: unknown): Job => ({
  ...{ call: "makeEstimate", type: "application/json", path: {}, query: { include: [] } },
  body: JSON.stringify(request),
});
const shelf = {
  structure: {
    kind: "pieces",
    pieces: [{ name: "shelf", section: "1 x 8 in", length: "6 ft", count: 3, role: "other" }],
  },
};
const long = demoRequest("orchard-shelter");
const nobody = { signal: new AbortController().signal, report: () => {} };
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** Resolves when the job has been begun by a worker. */
function begun(request: unknown, signal: AbortSignal) {
  let result: Promise<unknown> = Promise.resolve();
  const started = new Promise<void>((resolve) => {
    const report = ({ step }: Progress) => step > 0 && resolve();
    result = pool.compute(job(request), { signal, report }).then(text, (error: unknown) => error);
  });
  return { started, result };
}

describe("a pool of workers", () => {
  it("answers with the same bytes as the thread itself", async () => {
    const [there, own] = await Promise.all([pool.compute(job(shelf), nobody), here(calls).compute(job(shelf), nobody)]);
    expect(text(there)).toBe(text(own));
    expect(JSON.parse(text(there)).cutList.pieces.value).toBe("3");
  });

  it("is warm once every worker has computed a small job, before any is asked for", async () => {
    const fresh = new Pool({ workers: 2, mostWaiting: 1 });
    try {
      expect(fresh.isWarm()).toBe(false);
      await vi.waitFor(() => expect(fresh.isWarm()).toBe(true), { timeout: 60_000, interval: 50 });
      expect(fresh.queue()).toMatchObject({ answered: 0, underWay: 0 });
    } finally {
      await fresh.close();
    }
  });

  it("computes the job that warms a worker without a fault", async () => {
    await expect(warmUp()).resolves.toBeUndefined();
  });

  it("answers 200 logs and 50 groups within its work, with what is left and what is short", async () => {
    const asked = { ...job(pathologicalRequest()), call: "makeSawingPlan" };
    const { plan } = JSON.parse(text(await pool.compute(asked, nobody)));
    expect(plan.logs.length).toBeGreaterThan(100);
    expect(plan.short.length).toBeGreaterThan(0);
    expect(plan.extras.length).toBeGreaterThan(0);
    expect(plan.covers).toMatch(/sums of few piece lengths/);
  });

  it("hands back every fault as it was found", async () => {
    const unbuildable = { ...shelf, overrides: { "pieces.shelf.girth": "3 ft" } };
    const outcome = await pool.compute(job(unbuildable), nobody).catch((error) => error);
    expect(outcome).toBeInstanceOf(FaultError);
    expect(outcome.faults).toMatchObject([{ code: "unknown-name", at: "/overrides/pieces.shelf.girth" }]);
  });

  it("tells the stages of a job in their order, each with how much of it is done", async () => {
    const told: Progress[] = [];
    await pool.compute(job(long), { ...nobody, report: (progress) => told.push(progress) });
    expect([...new Set(told.map(({ step }) => step))]).toEqual([1, 2, 3, 4, 5, 6]);
    expect(told.map(({ step }) => step)).toEqual(told.map(({ step }) => step).toSorted((a, b) => a - b));
    expect(told.every(({ done, of, steps }) => done <= of && steps === 6)).toBe(true);
    expect(told.filter(({ step }) => step === 4).length).toBeGreaterThan(5); // one for each mix tried
  });

  it("stops a job that nobody waits for any more, and takes the next", async () => {
    const leaving = new AbortController();
    const { started, result } = begun(long, leaving.signal);
    await started;
    expect(pool.queue()).toMatchObject({ underWay: 1, waiting: 0 });
    leaving.abort();
    expect(await result).toMatchObject({ name: "AbortError" });
    expect(pool.queue()).toMatchObject({ underWay: 0, waiting: 0, calledOff: 1 });
    expect(JSON.parse(text(await pool.compute(job(shelf), nobody))).cutList.pieces.value).toBe("3");
  });

  it("takes a job out of the queue when its caller goes, without ending the one under way", async () => {
    const leaving = new AbortController();
    const { started, result } = begun(long, nobody.signal);
    await started;
    const waits = pool.compute(job(shelf), { signal: leaving.signal, report: () => {} }).catch((error) => error);
    expect(pool.queue()).toMatchObject({ underWay: 1, waiting: 1 });
    leaving.abort();
    expect(await waits).toMatchObject({ name: "AbortError" });
    expect(pool.queue()).toMatchObject({ underWay: 1, waiting: 0 });
    expect(JSON.parse(String(await result)).decision).toBeDefined();
  });

  it("refuses the one too many at once, and says when to come again", async () => {
    const leaving = new AbortController();
    const { started, result } = begun(long, leaving.signal);
    await started;
    const told: Progress[] = [];
    const waits = pool.compute(job(shelf), { ...nobody, report: (progress) => told.push(progress) });
    const refused = await pool.compute(job(shelf), nobody).catch((error) => error);
    expect(refused).toBeInstanceOf(Refusal);
    expect(refused).toMatchObject({ kind: "overloaded", extras: { retryAfter: expect.any(Number) } });
    leaving.abort();
    await Promise.all([result, waits]);
    expect(told[0]).toMatchObject({ stage: "waiting for a worker", step: 0 });
  });
});

describe("a service with a pool", () => {
  const post = (port: number, body: unknown, signal?: AbortSignal) =>
    fetch(`http://127.0.0.1:${port}/v1/estimates`, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      ...(signal && { signal }),
    });

  it("answers health while an estimate is computed, shows its queue, and gives up what is abandoned", async () => {
    const { fetch: app } = createApp(calls, { computing: pool });
    const service = await serve({ fetch: app, port: 0, host: "127.0.0.1" });
    const health = async () => (await fetch(`http://127.0.0.1:${service.port}/healthz`)).json();
    const before = pool.queue().calledOff;
    const leaving = new AbortController();
    const estimate = post(service.port, long, leaving.signal).catch((error) => error);
    let seen: { queue?: { underWay: number } } = {};
    while (seen.queue?.underWay !== 1) seen = (await health()) as typeof seen;
    const metrics = await (await fetch(`http://127.0.0.1:${service.port}/metrics`)).text();
    expect(metrics).toMatch(/^boleworth_jobs_under_way 1$/m);
    leaving.abort();
    expect(await estimate).toMatchObject({ name: "AbortError" });
    while (pool.queue().underWay > 0) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(pool.queue().calledOff).toBe(before + 1);
    expect((await post(service.port, shelf)).status).toBe(200);
    await service.stop();
  });

  it("answers 503 with Retry-After when the queue is full", async () => {
    const { fetch: app } = createApp(calls, { computing: pool });
    const leaving = new AbortController();
    const { started, result } = begun(long, leaving.signal);
    await started;
    const waits = pool.compute(job(shelf), nobody);
    const response = await app(
      new Request("http://localhost/v1/estimates", {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(shelf),
      }),
    );
    expect(response.status).toBe(503);
    expect(Number(response.headers.get("Retry-After"))).toBeGreaterThan(0);
    leaving.abort();
    await Promise.all([result, waits]);
  });

  it("is not made without a place for what is heavy", () => {
    expect(() => createApp(calls)).toThrow("makeEstimate is heavy");
  });
});
