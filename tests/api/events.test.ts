import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { type AnyCall, call } from "../../src/api/call.js";
import { FaultError } from "../../src/estimate/faults.js";
import { goodPile, pileCall } from "./helpers/woodpile.js";

const ask = (row: AnyCall, places = { inAll: 1, perClient: 1 }, log = (_: unknown) => {}, headers = {}) => {
  const app = createApp([row], { places, log });
  return (body: unknown = goodPile) =>
    app.request("/v1/piles", {
      method: "POST",
      body: JSON.stringify(body),
      headers: { "Content-Type": "application/json", Accept: "text/event-stream", ...headers },
    });
};

/** Event names with their data, after the grammar of server-sent events (HTML standard, section 9.2). */
const eventsIn = (text: string) =>
  text
    .split("\n\n")
    .filter(Boolean)
    .map((block) => {
      const [event, data] = block.split("\n");
      return { event: event?.replace("event: ", ""), data: JSON.parse(data?.replace("data: ", "") ?? "") };
    });

describe("an answer as events", () => {
  it("has the progress first, then the same answer as JSON", async () => {
    const response = await ask(pileCall)();
    expect(response.headers.get("Content-Type")).toBe("text/event-stream");
    expect(eventsIn(await response.text())).toEqual([
      { event: "progress", data: { stage: "adding", step: 1, steps: 1, done: 1, of: 1 } },
      { event: "answer", data: { name: "shed", feet: 10, shown: [] } },
    ]);
  });

  it("is packed for who takes it so, event by event", async () => {
    let release = () => {};
    const open = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slow = call({
      ...pileCall,
      run: async (input, watch) => {
        const found = await pileCall.run(input, watch);
        await open;
        return found;
      },
    });
    const response = await ask(slow, undefined, undefined, { "Accept-Encoding": "br, gzip" })();
    expect(response.headers.get("Content-Encoding")).toBe("gzip");
    const reader = response.body
      ?.pipeThrough(new DecompressionStream("gzip"))
      .pipeThrough(new TextDecoderStream())
      .getReader();
    const first = await reader?.read();
    expect(first?.value).toContain("event: progress"); // long before the answer
    release();
    expect((await reader?.read())?.value).toContain("event: answer");
    const plain = await ask(pileCall, undefined, undefined, { "Accept-Encoding": "br, gzip;q=0" })();
    expect(plain.headers.get("Content-Encoding")).toBeNull();
  });

  it("is not begun for a request that does not validate", async () => {
    const response = await ask(pileCall)({ name: 1 });
    expect(response.status).toBe(422);
    expect(response.headers.get("Content-Type")).toBe("application/problem+json");
  });

  it("ends in a problem when the call finds a fault, and in one without secrets when it has a bug", async () => {
    const lines: unknown[] = [];
    const failing = (error: Error) => call({ ...pileCall, run: () => Promise.reject(error) });
    const fault = { code: "cannot-build", at: "", wrong: "It leans.", cure: "Prop it." } as const;
    const refused = await (await ask(failing(new FaultError([fault])))()).text();
    const broken = await (await ask(failing(new Error("secret")), undefined, (line) => lines.push(line))()).text();
    expect(eventsIn(refused)).toMatchObject([
      { event: "problem", data: { status: 422, faults: [{ wrong: "It leans." }] } },
    ]);
    expect(eventsIn(broken)).toMatchObject([{ event: "problem", data: { status: 500 } }]);
    expect(broken).not.toContain("secret");
    expect(JSON.stringify(lines)).toContain("secret");
  });

  it("keeps its place until it ends, and then gives it back", async () => {
    let release = () => {};
    const open = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slow = call({ ...pileCall, run: () => open.then(() => ({ name: "a", feet: 1, shown: [] })) });
    const request = ask(slow);
    const first = await request();
    expect((await request()).status).toBe(503);
    release();
    await first.text();
    expect((await request()).status).toBe(200);
  });

  it("gives the place back when nobody listens any more", async () => {
    let release = () => {};
    const open = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slow = call({
      ...pileCall,
      run: async (_, { report }) => {
        await open;
        report({ stage: "late", step: 1, steps: 1, done: 1, of: 2 });
        return { name: "a", feet: 1, shown: [] };
      },
    });
    const request = ask(slow);
    await (await request()).body?.cancel();
    release();
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect((await request()).status).toBe(200);
  });
});
