/** Over HTTP on this machine's loopback: the service against a bare hello on the same server, in one run. */
import { readFileSync } from "node:fs";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { here } from "../../src/api/computing.js";
import { serve } from "../../src/api/serve.js";
import type { Measured } from "./run.js";

const DEMO = new URL("../../demo-data/orchard-shelter.json", import.meta.url);

/** Median milliseconds of calls made one after another. */
async function median(times: number, ask: () => Promise<Response>): Promise<number> {
  const taken: number[] = [];
  for (let i = 0; i < times + 5; i++) {
    const begin = performance.now();
    const answer = await ask();
    await answer.arrayBuffer();
    if (!answer.ok) throw new Error(`answered ${answer.status}`);
    if (i >= 5) taken.push(performance.now() - begin);
  }
  return taken.sort((a, b) => a - b)[Math.floor(taken.length / 2)] as number;
}

export async function bench(): Promise<Measured[]> {
  const hello = await serve({ fetch: () => Response.json({ hello: "world" }), port: 0, host: "127.0.0.1" });
  const app = createApp(calls, { computing: here(calls) });
  const service = await serve({ fetch: (request) => app.fetch(request), port: 0, host: "127.0.0.1" });
  try {
    return await compared(`http://127.0.0.1:${hello.port}/`, `http://127.0.0.1:${service.port}`);
  } finally {
    await Promise.all([hello.stop(), service.stop()]);
  }
}

async function compared(bare: string, service: string): Promise<Measured[]> {
  const demo: object = JSON.parse(readFileSync(DEMO, "utf8"));
  const post = (body: string, query = "") =>
    fetch(`${service}/v1/estimates${query}`, { method: "POST", headers: { "content-type": "application/json" }, body });
  const planned = (await (await post(JSON.stringify(demo), "?include=plans")).json()) as { heldPlans: unknown };
  const held = JSON.stringify({ ...demo, heldPlans: planned.heldPlans });
  const helloTime = await median(100, () => fetch(bare));
  const healthTime = await median(100, () => fetch(`${service}/healthz`));
  const heldTime = await median(30, () => post(held));
  const again = await median(100, () => fetch(bare));
  const floor = Math.min(helloTime, again);
  const row = (name: string, value: number): Measured => ({
    name,
    value: Number(value.toPrecision(3)),
    unit: "ms",
    target: `none; hello takes ${floor.toPrecision(3)} ms`,
    holds: null,
  });
  return [
    row("GET hello, bare server", floor),
    row("GET /healthz", healthTime),
    row("POST /v1/estimates, demo with plans held", heldTime),
    { ...row("the same, in hellos", heldTime / floor), unit: "times" },
  ];
}
