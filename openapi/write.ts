/**
 * Writes the OpenAPI document that is kept beside the code, so that a change of the calls shows in review, and the
 * types of the form's client from it. With --check nothing is written: fails when a file is not what the calls say.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { calls } from "../src/api/calls.js";
import { describeCalls } from "../src/api/openapi.js";
import { clientTypes, type Described } from "./typescript.js";

const document = describeCalls(calls);
const files: Readonly<Record<string, string>> = {
  "openapi.json": `${JSON.stringify(document, null, 2)}\n`,
  "client-types.ts": clientTypes(document as unknown as Described),
};

for (const [name, text] of Object.entries(files)) {
  const file = new URL(name, import.meta.url);
  if (!process.argv.includes("--check")) writeFileSync(file, text);
  else if (read(file) !== text) {
    process.stderr.write(`openapi/${name} is not what the calls say. Run: npm run openapi\n`);
    process.exitCode = 1;
  }
}

function read(file: URL): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}
