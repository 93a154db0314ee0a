import { createAdaptorServer } from "@hono/node-server";
import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { goodPile, pileCall, shelfCall } from "./helpers/woodpile.js";

const app = createApp([pileCall, shelfCall]);
const http = supertest(createAdaptorServer({ fetch: app.fetch }));

describe("addresses and methods, over a real connection", () => {
  it("answers 404 with the nearest address", async () => {
    const response = await http.get("/v1/pils").expect(404).expect("Content-Type", "application/problem+json");
    expect(response.body).toMatchObject({
      detail: "No call is at /v1/pils. Did you mean /v1/piles?",
      choices: ["/v1/piles"],
    });
  });

  it("answers 404 without a guess where none is near", async () => {
    const response = await http.get("/wp-login.php").expect(404);
    expect(response.body.choices).toBeUndefined();
  });

  it.each(["get", "put", "delete", "patch", "head"] as const)(
    "answers 405 with Allow to %s where only POST is",
    async (method) => {
      await http[method]("/v1/piles").expect(405).expect("Allow", "POST, OPTIONS");
    },
  );

  it("answers OPTIONS with Allow", async () => {
    await http.options("/v1/shelves/top").expect(204).expect("Allow", "GET, HEAD, OPTIONS");
  });

  it("answers HEAD like GET, without a body", async () => {
    const get = await http.get("/v1/shelves/top").expect(200);
    const head = await http
      .head("/v1/shelves/top")
      .expect(200)
      .expect("ETag", get.headers.etag as string);
    expect(head.text ?? "").toBe("");
  });

  it("hands parts of the path to the call", async () => {
    const response = await http.get("/v1/shelves/left%20side").expect(200);
    expect(response.text).toBe("on left side");
  });

  it("answers 304 to who has the data already", async () => {
    const { headers } = await http.get("/v1/shelves/top").expect(200).expect("Cache-Control", "no-cache");
    await http
      .get("/v1/shelves/top")
      .set("If-None-Match", headers.etag as string)
      .expect(304);
    await http.get("/v1/shelves/top").set("If-None-Match", `"x", W/${headers.etag}`).expect(304);
    await http
      .get("/v1/shelves/low")
      .set("If-None-Match", headers.etag as string)
      .expect(200);
  });

  it("refuses a large body and stays usable", async () => {
    const big = `{"name":"${"x".repeat(3_000_000)}"}`;
    await http.post("/v1/piles").set("Content-Type", "application/json").send(big).expect(413);
    await http.post("/v1/piles").send(goodPile).expect(200);
  });

  it("sends headers that keep a browser from harm, and names the request", async () => {
    const { headers } = await http.get("/v1/shelves/top").expect(200);
    expect(headers["content-security-policy"]).toMatch(/^default-src 'none'; script-src 'self';/);
    expect(headers["content-security-policy"]).not.toContain("unsafe");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["x-frame-options"]).toBe("DENY");
    expect(headers["x-request-id"]).toMatch(/^[0-9a-f-]{36}$/);
    await http.get("/v1/shelves/top").set("X-Request-Id", "mine-1").expect("X-Request-Id", "mine-1");
  });
});

describe("the log", () => {
  it("has a line a call, with the row's path and not what the caller wrote", async () => {
    const lines: Readonly<Record<string, unknown>>[] = [];
    const logged = createApp([shelfCall], { log: (line) => lines.push(line) });
    await logged.request("/v1/shelves/private-name");
    await logged.request("/nowhere");
    expect(lines).toEqual([
      expect.objectContaining({ method: "GET", path: "/v1/shelves/{name}", status: 200 }),
      expect.objectContaining({ method: "GET", path: "none", status: 404 }),
    ]);
  });
});

describe("a service that is being stopped", () => {
  it("answers, and asks for the connection to be closed", async () => {
    const stopping = createApp([shelfCall], { notReady: () => "Stopping." });
    const response = await stopping.request("/v1/shelves/top");
    expect(response.status).toBe(200);
    expect(response.headers.get("Connection")).toBe("close");
  });
});
