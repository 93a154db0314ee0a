import { describe, expect, it } from "vitest";
import { createApp } from "../../src/api/app.js";
import { calls } from "../../src/api/calls.js";
import { here } from "../../src/api/computing.js";
import { describeCalls } from "../../src/api/openapi.js";
import { judgeBy } from "./helpers/conformance.js";
import { pileCall } from "./helpers/woodpile.js";

// The test's own call is judged along, so that the rules below are tried even where no other call takes a body.
const rows = [...calls, pileCall];
const app = createApp(rows, { computing: here(rows) });
const judge = judgeBy(describeCalls(rows));
const shown = rows.filter((row) => !row.hidden);

/** Each call with each of its examples; a call without a body once. */
const examples = shown.flatMap((row) => {
  const path = row.path.replaceAll(/\{(\w+)\}/g, (_, name: string) => row.parameters?.[name]?.example ?? "");
  const bodies = row.request ? Object.entries(row.request.examples) : [["no body", { value: undefined }] as const];
  return bodies.map(([example, { value }]) => ({ name: `${row.method} ${row.path}, ${example}`, row, path, value }));
});

describe("every call, with each of its examples", () => {
  it.each(examples)("$name: answers in every form as the document says", async ({ row, path, value }) => {
    for (const type of Object.keys(row.faces)) {
      const response = await app.request(path, {
        method: row.method.toUpperCase(),
        headers: { Accept: type, ...(row.request && { "Content-Type": "application/json" }) },
        ...(row.request && { body: JSON.stringify(value) }),
      });
      const size = (await response.clone().arrayBuffer()).byteLength;
      expect([type, response.status, size > 0]).toEqual([type, 200, true]);
      expect(await judge.responseFaults(row.method, row.path, response)).toEqual([]);
    }
  });
});

describe("every call that takes a body", () => {
  it.each(shown.filter((row) => row.request).map((row) => ({ name: row.path, row })))(
    "$name: answers a problem to what is no request",
    async ({ row }) => {
      for (const text of ["", "{}", "[]", "null", "7", '{"a":1,"a":2}', '{"__proto__":{}}', "{", "[".repeat(1000)]) {
        const response = await app.request(row.path, {
          method: "POST",
          headers: { "Content-Type": "application/json" },
          body: text,
        });
        expect([text, [400, 422].includes(response.status)]).toEqual([text, true]);
        expect(await judge.responseFaults("post", row.path, response)).toEqual([]);
      }
    },
  );
});
