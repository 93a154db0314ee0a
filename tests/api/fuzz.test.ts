import fc from "fast-check";
import type { SchemaObject } from "openapi3-ts/oas31";
import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { describeCalls } from "../../src/api/openapi.js";
import { damaged, validBodies } from "./helpers/bodies.js";
import { judgeBy } from "./helpers/conformance.js";
import { pileCall } from "./helpers/woodpile.js";

const document = describeCalls([pileCall]);
const shape = (name: string) => document.components?.schemas?.[name] as SchemaObject;
const judge = judgeBy(document);
const app = createApp([pileCall]);
const bodies = validBodies(document, "TestPile");

const post = (text: string) =>
  app.request("/v1/piles", { method: "POST", body: text, headers: { "Content-Type": "application/json" } });
/** The one thing that validates and yet cannot be built. */
const fallsOver = (body: unknown) => (body as { stack?: { rows?: number } } | null)?.stack?.rows === 13;

describe("generated requests", () => {
  it("are answered when they are valid by the document, and the answer is valid too", async () => {
    await fc.assert(
      fc.asyncProperty(bodies, async (body) => {
        expect(judge.accepts("TestPile", body)).toBe(true);
        const response = await post(JSON.stringify(body));
        expect(response.status).toBe(fallsOver(body) ? 422 : 200);
        expect(await judge.responseFaults("post", "/v1/piles", response)).toEqual([]);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it("are refused, when damaged, exactly where the document refuses them, and never with a 500", async () => {
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(damaged(bodies), async (text) => {
        const body: unknown = JSON.parse(text);
        const sound = judge.accepts("TestPile", body) && !fallsOver(body);
        const response = await post(text);
        expect([text, response.status]).toEqual([text, sound ? 200 : 422]);
        expect(await judge.responseFaults("post", "/v1/piles", response)).toEqual([]);
        if (!sound) refused++;
      }),
      { seed: 5, numRuns: 1500 },
    );
    expect(refused).toBeGreaterThan(500);
  });

  it("are never a 500 when they are no JSON at all, or of another type", async () => {
    const types = fc.constantFrom("application/json", "text/csv", "text/plain", "application/json; charset=x", ";");
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 60 }), types, fc.string(), async (bytes, type, accept) => {
        const headers = { "Content-Type": type, Accept: accept.replace(/[^ -~]/g, "*") };
        const response = await app.request("/v1/piles", { method: "POST", body: new Uint8Array(bytes), headers });
        expect([200, 400, 406, 415, 422]).toContain(response.status);
      }),
      { seed: 9, numRuns: 500 },
    );
  });
});

describe("the generator", () => {
  it("reaches every branch of the schema", () => {
    const found = fc.sample(bodies, { seed: 1, numRuns: 200 }) as { stack: { kind: string }; labels?: object }[];
    const kinds = new Set(found.map(({ stack }) => stack.kind));
    const stack = shape("TestPile").properties?.stack as SchemaObject;
    expect([...kinds].sort()).toEqual(Object.keys(stack.discriminator?.mapping ?? {}).sort());
    expect(found.some(({ labels }) => labels && Object.keys(labels).length > 0)).toBe(true);
  });
});
