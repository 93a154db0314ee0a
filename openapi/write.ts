/**
 * Writes the OpenAPI document that is kept beside the code, so that a change of the calls shows in review.
 * With --check nothing is written: fails when the file is not what the calls say.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { calls } from "../src/api/calls.js";
import { describeCalls } from "../src/api/openapi.js";

const file = new URL("openapi.json", import.meta.url);
const text = `${JSON.stringify(describeCalls(calls), null, 2)}\n`;

if (!process.argv.includes("--check")) {
  writeFileSync(file, text);
} else if (read() !== text) {
  process.stderr.write("openapi/openapi.json is not what the calls say. Run: npm run openapi\n");
  process.exitCode = 1;
}

function read(): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}
