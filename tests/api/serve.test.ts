import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { call } from "../../src/api/call.js";
import { serve } from "../../src/api/serve.js";
import { goodPile, pileCall } from "./helpers/woodpile.js";

describe("a service that listens", () => {
  it("finishes the call under way when it is stopped, and takes no new one", async () => {
    let release = () => {};
    let begun = () => {};
    const open = new Promise<void>((resolve) => {
      release = resolve;
    });
    const started = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const run = async () => {
      begun();
      await open;
      return { name: "late", feet: 1, shown: [] };
    };
    let stopping = false;
    const app = createApp([call({ ...pileCall, run })], { notReady: () => (stopping ? "Stopping." : undefined) });
    const service = await serve({ fetch: app.fetch, port: 0, host: "127.0.0.1" });
    const address = `http://127.0.0.1:${service.port}/v1/piles`;
    const headers = { "Content-Type": "application/json" };

    const underWay = fetch(address, { method: "POST", headers, body: JSON.stringify(goodPile) });
    await started;
    stopping = true;
    const stopped = service.stop();
    await expect(fetch(address)).rejects.toThrow();
    release();
    const response = await underWay;
    expect(response.status).toBe(200);
    expect(response.headers.get("Connection")).toBe("close");
    expect(await response.json()).toMatchObject({ name: "late" });
    expect(await stopped).toBe(true);
  });

  it("answers 413 to a body sent in pieces over a real connection, and goes on", async () => {
    const service = await serve({ fetch: createApp([pileCall]).fetch, port: 0, host: "127.0.0.1" });
    const address = `http://127.0.0.1:${service.port}/v1/piles`;
    const headers = { "Content-Type": "application/json" };
    const pieces = (count: number) =>
      new ReadableStream<Uint8Array>({
        pull(controller) {
          if (count-- > 0) controller.enqueue(new TextEncoder().encode(" ".repeat(100_000)));
          else controller.close();
        },
      });
    const send = (body: BodyInit) =>
      fetch(address, { method: "POST", headers, body, duplex: "half" } as RequestInit & { duplex: "half" });

    expect((await send(pieces(22))).status).toBe(413);
    expect((await send(JSON.stringify(goodPile))).status).toBe(200);
    expect(await service.stop()).toBe(true);
  });

  it("answers 429 to the address that has its share of places", async () => {
    let release = () => {};
    const open = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slow = call({ ...pileCall, run: () => open.then(() => ({ name: "a", feet: 1, shown: [] })) });
    const { fetch: app } = createApp([slow], { places: { inAll: 5, perClient: 1 } });
    const service = await serve({ fetch: app, port: 0, host: "127.0.0.1" });
    const ask = () =>
      fetch(`http://127.0.0.1:${service.port}/v1/piles`, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(goodPile),
      });
    const both = [ask(), ask()];
    const refused = await Promise.race(both);
    expect(refused.status).toBe(429);
    expect(refused.headers.get("Retry-After")).toBe("2");
    release();
    expect((await Promise.all(both)).map(({ status }) => status).sort()).toEqual([200, 429]);
    await service.stop();
  });

  it("says so when the port is taken", async () => {
    const { fetch } = createApp([]);
    const service = await serve({ fetch, port: 0, host: "127.0.0.1" });
    await expect(serve({ fetch, port: service.port, host: "127.0.0.1" })).rejects.toMatchObject({ code: "EADDRINUSE" });
    await service.stop();
  });
});
