/** The client's calls as they leave the browser. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { fetchJson, send } from "../../../src/api/web/app/client.js";

const asked = () => vi.mocked(fetch).mock.calls[0];
const answering = (response: Response) => vi.stubGlobal("fetch", vi.fn().mockResolvedValue(response));

afterEach(() => vi.unstubAllGlobals());

describe("a call of the client", () => {
  it("puts parts of the path, the query and the body where the document has them", async () => {
    answering(Response.json({}));
    const body = { structure: { kind: "pieces", pieces: [] } } as const;
    await send("makeEstimate", { query: { include: ["sheet", "plans"] }, body }, { headers: { Accept: "a/b" } });
    expect(asked()).toEqual([
      "/v1/estimates?include=sheet,plans",
      {
        method: "POST",
        body: JSON.stringify(body),
        headers: { "Content-Type": "application/json", Accept: "a/b" },
      },
    ]);
  });

  it("lets no name in a path leave its place", async () => {
    answering(Response.json({ name: "x" }));
    expect(await fetchJson("getDemo", { path: { name: "../a b" } })).toEqual({ name: "x" });
    expect(asked()).toEqual(["/v1/demos/..%2Fa%20b", { method: "GET" }]);
  });

  it("gives nothing where the service refuses", async () => {
    answering(Response.json({}, { status: 404 }));
    expect(await fetchJson("getDemo", { path: { name: "x" } })).toBeUndefined();
  });
});
