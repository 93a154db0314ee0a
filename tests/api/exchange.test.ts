import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { call } from "../../src/api/call.js";
import { describeCalls } from "../../src/api/openapi.js";
import type { Problem } from "../../src/api/problem.js";
import { judgeBy } from "./helpers/conformance.js";
import { goodPile, pileCall, shelfCall } from "./helpers/woodpile.js";

const rows = [pileCall, shelfCall];
const app = createApp(rows);
const judge = judgeBy(describeCalls(rows));

const post = (body: BodyInit | null, headers: Record<string, string> = {}, path = "/v1/piles") =>
  app.request(path, { method: "POST", body, headers: { "Content-Type": "application/json", ...headers } });

/** The problem, after it was found to be what the document says. */
async function problemIn(response: Response): Promise<Problem> {
  expect(response.headers.get("Content-Type")).toBe("application/problem+json");
  expect(await judge.responseFaults("post", "/v1/piles", response.clone())).toEqual([]);
  const problem = (await response.json()) as Problem;
  expect(problem.status).toBe(response.status);
  return problem;
}

describe("a good request", () => {
  it("is answered as JSON unless something else is asked for", async () => {
    const response = await post(JSON.stringify(goodPile));
    expect(response.status).toBe(200);
    expect(response.headers.get("Content-Type")).toBe("application/json");
    expect(await judge.responseFaults("post", "/v1/piles", response.clone())).toEqual([]);
    expect(await response.json()).toEqual({ name: "shed", feet: 10, shown: [] });
  });

  it("is answered as CSV, with the name to save it under", async () => {
    const response = await post(JSON.stringify(goodPile), { Accept: "text/csv" });
    expect(response.headers.get("Content-Type")).toBe("text/csv; charset=utf-8");
    expect(response.headers.get("Content-Disposition")).toBe('attachment; filename="pile.csv"');
    expect(await response.text()).toBe("shed,10\r\n");
  });

  it("is answered as bytes", async () => {
    const response = await post(JSON.stringify(goodPile), { Accept: "application/octet-stream" });
    expect([...new Uint8Array(await response.arrayBuffer())]).toEqual([10]);
  });

  it("may come as CSV, and gives the same answer", async () => {
    const response = await post("shed,10", { "Content-Type": "text/csv; charset=UTF-8" });
    expect(await response.json()).toEqual({ name: "shed", feet: 10, shown: [] });
  });

  it("may begin with a byte order mark", async () => {
    expect((await post(`\ufeff${JSON.stringify(goodPile)}`)).status).toBe(200);
  });

  it("gives the same bytes each time, and nothing that a cache would keep", async () => {
    const [first, second] = [await post(JSON.stringify(goodPile)), await post(JSON.stringify(goodPile))];
    expect(await first.text()).toBe(await second.text());
    for (const name of ["ETag", "Cache-Control", "Last-Modified", "Expires"])
      expect(first.headers.get(name)).toBeNull();
    expect(first.headers.get("Vary")).toBe("Accept");
  });
});

describe("query parameters", () => {
  const ask = (query: string) => post(JSON.stringify(goodPile), {}, `/v1/piles${query}`);

  it.each(["?include=boards,labels", "?include=boards&include=labels"])("takes a list: %s", async (query) => {
    expect(await (await ask(query)).json()).toMatchObject({ shown: ["boards", "labels"] });
  });

  it.each([
    { query: "?inclde=boards", code: "unknown-field", parameter: "inclde", cure: "Did you mean “include”?" },
    { query: "?include=labls", code: "unknown-name", parameter: "include", cure: expect.stringContaining("“labels”") },
    { query: "?title=a&title=b", code: "duplicate-name", parameter: "title", cure: "Give it once." },
    { query: "?title=UP", code: "wrong-shape", parameter: "title", cure: expect.any(String) },
    { query: "?__proto__=1", code: "unknown-field", parameter: "__proto__", cure: expect.any(String) },
  ])("refuses $query", async ({ query, code, parameter, cure }) => {
    const problem = await problemIn(await ask(query));
    expect(problem.status).toBe(422);
    expect(problem.faults).toEqual([expect.objectContaining({ code, parameter, cure })]);
  });

  it("refuses any parameter where none is taken", async () => {
    const response = await app.request("/v1/shelves/top?pretty=1");
    expect(response.status).toBe(422);
    expect(((await response.json()) as Problem).faults).toEqual([
      expect.objectContaining({ code: "unknown-field", parameter: "pretty" }),
    ]);
  });
});

describe("a bad request", () => {
  it.each([
    { what: "an empty body", body: "", detail: "The body is empty." },
    { what: "white space", body: " \n ", detail: "Line 2, column 2: expected a value." },
    { what: "half an object", body: '{"name": "shed"', detail: 'Line 1, column 16: expected a comma or "}".' },
    { what: "invalid UTF-8", body: new Uint8Array([0x22, 0xc3, 0x28, 0x22]), detail: "The body is not valid UTF-8." },
    {
      what: "an overlong encoding",
      body: new Uint8Array([0x22, 0xc0, 0xaf, 0x22]),
      detail: "The body is not valid UTF-8.",
    },
    { what: "UTF-16", body: new Uint8Array([0xff, 0xfe, 0x7b, 0x00]), detail: "The body is not valid UTF-8." },
  ])("answers 400 to $what", async ({ body, detail }) => {
    const problem = await problemIn(await post(body));
    expect(problem).toMatchObject({ status: 400, type: "/docs#problem-not-json", detail });
  });

  it.each([
    { headers: { "Content-Type": "text/plain" }, detail: "The Content-Type is text/plain." },
    { headers: { "Content-Type": "application/x-www-form-urlencoded" }, detail: expect.stringContaining("urlencoded") },
    { headers: { "Content-Type": " " }, detail: "The Content-Type header is absent." },
    { headers: { "Content-Type": "application/json; charset=latin1" }, detail: expect.stringContaining("latin1") },
    { headers: { "Content-Encoding": "gzip" }, detail: expect.stringContaining("compressed") },
  ])("answers 415 to $headers", async ({ headers, detail }) => {
    const problem = await problemIn(await post(JSON.stringify(goodPile), headers));
    expect(problem).toMatchObject({ status: 415, detail, choices: ["application/json", "text/csv"] });
  });

  it("answers 406 with what there is, before it looks at the body", async () => {
    const problem = await problemIn(await post("not JSON at all", { Accept: "image/png" }));
    expect(problem).toMatchObject({
      status: 406,
      choices: ["application/json", "text/csv", "application/octet-stream", "text/event-stream"],
    });
  });

  it.each([
    { what: "the length says so", headers: { "Content-Length": "2097153" }, body: "{}" },
    { what: "the length is a lie", headers: { "Content-Length": "2" }, body: " ".repeat(2_097_153) },
    { what: "it comes in pieces", headers: { "Transfer-Encoding": "chunked" }, body: " ".repeat(2_097_153) },
  ])("answers 413 past 2 MiB when $what", async ({ headers, body }) => {
    const problem = await problemIn(await post(body, headers));
    expect(problem).toMatchObject({ status: 413, detail: "A body may have 2097152 bytes." });
  });

  it("does not read on past 2 MiB", async () => {
    let sent = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 65_536;
        controller.enqueue(new Uint8Array(65_536));
      },
    });
    const init = { method: "POST", body: endless, duplex: "half", headers: { "Content-Type": "application/json" } };
    expect((await app.request(new Request("http://test/v1/piles", init as RequestInit))).status).toBe(413);
    expect(sent).toBeLessThan(3 * 1024 * 1024);
  });

  it("answers 400 when the body breaks off", async () => {
    const broken = new ReadableStream({ start: (controller) => controller.error(new Error("connection reset")) });
    const init = { method: "POST", body: broken, duplex: "half", headers: { "Content-Type": "application/json" } };
    const response = await app.request(new Request("http://test/v1/piles", init as RequestInit));
    expect(await problemIn(response)).toMatchObject({ status: 400, detail: "The body ended before it was complete." });
  });

  it.each([
    { what: "an unknown key", body: { ...goodPile, bords: [] }, fault: { code: "unknown-field", pointer: "/bords" } },
    { what: "a missing key", body: { stack: goodPile.stack }, fault: { code: "missing-field", pointer: "/name" } },
    { what: "a number for a text", body: { ...goodPile, name: 7 }, fault: { code: "wrong-shape", pointer: "/name" } },
    { what: "null", body: null, fault: { pointer: "" } },
    { what: "a list", body: [goodPile], fault: { pointer: "" } },
    { what: "an unknown kind", body: { ...goodPile, stack: { kind: "flt" } }, fault: { pointer: "/stack/kind" } },
    {
      what: "a huge list",
      body: { ...goodPile, boards: Array.from({ length: 20_000 }, () => ({ length: 1 })) },
      fault: { code: "too-large", pointer: "/boards" },
    },
  ])("answers 422 to $what, with its place", async ({ body, fault }) => {
    const problem = await problemIn(await post(JSON.stringify(body)));
    expect(problem.status).toBe(422);
    expect(problem.faults).toContainEqual(expect.objectContaining(fault));
  });

  it("suggests the nearest known key", async () => {
    const problem = await problemIn(await post(JSON.stringify({ ...goodPile, bords: [] })));
    expect(problem.faults[0]?.cure).toBe("Did you mean “boards”?");
  });

  it.each([
    { what: "a name given twice", body: '{"name":"shed","name":"barn"}', code: "duplicate-name", pointer: "/name" },
    {
      what: "__proto__",
      body: '{"name":"shed","__proto__":{"stack":1}}',
      code: "unknown-field",
      pointer: "/__proto__",
    },
    { what: "constructor", body: '{"constructor":{"prototype":{}}}', code: "unknown-field", pointer: "/constructor" },
    {
      what: "a number of a million digits",
      body: `{"name":${"1".repeat(1e6)}}`,
      code: "out-of-range",
      pointer: "/name",
    },
    {
      what: "a hundred thousand levels",
      body: `{"name":${"[".repeat(1e5)}`,
      code: "too-large",
      pointer: `/name${"/0".repeat(31)}`,
    },
  ])("answers 422 to $what", async ({ body, code, pointer }) => {
    const problem = await problemIn(await post(body));
    expect(problem.status).toBe(422);
    expect(problem.faults).toContainEqual(expect.objectContaining({ code, pointer }));
  });

  it("gets an answer of sane size, however many faults it has", async () => {
    const keys = Array.from({ length: 20_000 }, (_, index) => [`key-${index}-${"x".repeat(60)}`, index]);
    const response = await post(JSON.stringify(Object.fromEntries(keys)));
    const text = await response.clone().text();
    expect((await problemIn(response)).faults).toHaveLength(50);
    expect(text.length).toBeLessThan(50_000);
  });

  it("gets short texts back, even for a key of a megabyte", async () => {
    const response = await post(JSON.stringify({ ["k".repeat(1e6)]: 1 }));
    expect((await response.text()).length).toBeLessThan(3000);
  });

  it("is told apart from one that cannot be built", async () => {
    const problem = await problemIn(await post(JSON.stringify({ ...goodPile, stack: { kind: "flat", rows: 13 } })));
    expect(problem).toMatchObject({ status: 422, type: "/docs#problem-cannot-build", detail: "There is one fault." });
    expect(problem.faults).toEqual([
      { code: "cannot-build", pointer: "/stack/rows", wrong: "Thirteen rows fall over.", cure: "Give 12." },
    ]);
  });

  it("in CSV is refused by the reader of CSV", async () => {
    const problem = await problemIn(await post("shed", { "Content-Type": "text/csv" }));
    expect(problem.faults).toEqual([expect.objectContaining({ code: "wrong-shape", wrong: "The line has one part." })]);
  });
});

describe("a bug", () => {
  it("gives a 500 that shows nothing of the inside, and a line in the log that shows all", async () => {
    const lines: Readonly<Record<string, unknown>>[] = [];
    const logged = createApp(rows, { log: (line) => lines.push(line) });
    const response = await logged.request("/v1/shelves/broken", { headers: { "X-Request-Id": "abc-1" } });
    const text = await response.clone().text();
    expect(response.status).toBe(500);
    expect(await judge.responseFaults("get", "/v1/shelves/{name}", response)).toEqual([]);
    expect(text).not.toContain("secret");
    expect(JSON.parse(text)).toMatchObject({ type: "/docs#problem-internal-error", instance: "/requests/abc-1" });
    expect(lines).toContainEqual(
      expect.objectContaining({ requestId: "abc-1", bug: expect.stringContaining("TypeError: secret inside") }),
    );
  });
});

describe("too many calls at once", () => {
  it("gives 503 with the time to wait, and places are given back", async () => {
    let release = () => {};
    const open = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slow = call({
      ...pileCall,
      path: "/v1/slow",
      id: "slow",
      run: () => open.then(() => ({ name: "a", feet: 1 })),
    });
    const small = createApp([slow], { places: { inAll: 1, perClient: 1 } });
    const ask = () =>
      small.request("/v1/slow", {
        method: "POST",
        body: JSON.stringify(goodPile),
        headers: { "Content-Type": "application/json" },
      });
    const first = ask();
    const second = await ask();
    expect(second.status).toBe(503);
    expect(second.headers.get("Retry-After")).toBe("2");
    release();
    expect((await first).status).toBe(200);
    expect((await ask()).status).toBe(200);
  });
});
