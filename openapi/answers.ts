/**
 * Writes what the service answers to the first example of each call that computes, every list of objects cut to its
 * first entry, for the document to show. With --check nothing is written: fails when an answer is another.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { createApp } from "../src/api/app.js";
import { calls } from "../src/api/calls.js";
import { here } from "../src/api/computing.js";
import { ANSWERS } from "../src/api/examples.js";

const app = createApp(calls, { computing: here(calls) });

for (const { id, path, request } of calls.filter(({ method }) => method === "post")) {
  const [asked] = Object.values(request?.examples ?? {});
  const headers = { "Content-Type": "application/json" };
  const response = await app.request(path, { method: "POST", headers, body: JSON.stringify(asked?.value) });
  const answer: unknown = await response.json();
  if (response.status !== 200) throw new Error(`${path} refuses its own example: ${JSON.stringify(answer)}`);
  const text = `${JSON.stringify(cut(answer), null, 2)}\n`;
  const file = new URL(`${id}.json`, ANSWERS);
  if (!process.argv.includes("--check")) writeFileSync(file, text);
  else if (readFileSync(file, "utf8") !== text) {
    process.stderr.write(`${id} answers its example in another way. Run: npm run openapi\n`);
    process.exitCode = 1;
  }
}

/** Lists of objects to their first entry, so that the document stays short; lists of words as they are. */
function cut(value: unknown): unknown {
  if (Array.isArray(value)) return value.some((one) => typeof one === "object") ? value.slice(0, 1).map(cut) : value;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, cut(part)]));
}
