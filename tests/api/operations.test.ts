import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { here } from "../../src/api/computing.js";
import { shelfCall } from "./helpers/woodpile.js";

describe("health and readiness", () => {
  it("stays alive but takes no more work once it is being stopped", async () => {
    let stopping = false;
    const app = createApp(calls, {
      computing: here(calls),
      notReady: () => (stopping ? "The service is being stopped." : undefined),
    });
    expect((await app.request("/readyz")).status).toBe(200);
    stopping = true;
    expect((await app.request("/healthz")).status).toBe(200);
    const response = await app.request("/readyz");
    expect(response.status).toBe(503);
    expect(await response.json()).toMatchObject({ detail: "The service is being stopped." });
  });

  it("is never kept by a cache", async () => {
    const app = createApp(calls, { computing: here(calls) });
    for (const path of ["/healthz", "/readyz", "/metrics"]) {
      expect((await app.request(path)).headers.get("Cache-Control")).toBe("no-store");
    }
  });
});

describe("metrics", () => {
  // Prometheus text exposition format 0.0.4: buckets are cumulative, the last is +Inf and equals the count.
  it("count calls by row and status, and never by what the caller wrote", async () => {
    const app = createApp([...calls, shelfCall], { computing: here(calls) });
    for (const path of ["/v1/shelves/a", "/v1/shelves/b", "/v1/shelves/broken", "/x1", "/x2"]) await app.request(path);
    await app.request("/v1/shelves/a", { method: "BREW" });
    const text = await (await app.request("/metrics")).text();
    const value = (series: string) =>
      text
        .split("\n")
        .find((line) => line.startsWith(`${series} `))
        ?.split(" ")[1];

    expect(value('boleworth_calls_total{method="GET",path="/v1/shelves/{name}",status="200"}')).toBe("2");
    expect(value('boleworth_calls_total{method="GET",path="/v1/shelves/{name}",status="500"}')).toBe("1");
    expect(value('boleworth_calls_total{method="GET",path="none",status="404"}')).toBe("2");
    expect(value('boleworth_calls_total{method="other",path="/v1/shelves/{name}",status="405"}')).toBe("1");
    expect(value('boleworth_call_seconds_bucket{method="GET",path="/v1/shelves/{name}",le="+Inf"}')).toBe("3");
    expect(value('boleworth_call_seconds_count{method="GET",path="/v1/shelves/{name}"}')).toBe("3");
    expect(value("boleworth_calls_under_way")).toBe("1"); // the call for the metrics itself
    expect(text).not.toContain("/x1");
  });

  it("have buckets that only grow", async () => {
    const app = createApp([...calls, shelfCall], { computing: here(calls) });
    await app.request("/v1/shelves/a");
    const text = await (await app.request("/metrics")).text();
    const counts = [...text.matchAll(/call_seconds_bucket\{.*\/v1\/shelves.*\} (\d+)/g)].map((match) =>
      Number(match[1]),
    );
    expect(counts).toHaveLength(8);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts.at(-1)).toBe(1);
  });
});
