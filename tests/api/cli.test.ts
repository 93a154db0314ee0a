/** The command line reads a file as strictly as the service reads a body. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, it } from "vitest";
import { LIMITS } from "../../src/api/limits.js";

const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "request-"));
const file = join(folder, "request.json");
afterAll(() => rmSync(folder, { recursive: true }));

function told(content: string | Uint8Array): readonly [number | null, string] {
  writeFileSync(file, content);
  const command = `${root}node_modules/.bin/tsx`;
  const { status, stderr } = spawnSync(command, ["src/api/cli.ts", "estimate", file], { cwd: root, encoding: "utf8" });
  return [status, stderr.replaceAll(file, "FILE").trim()];
}

it.each([
  [
    "a name twice",
    '{"structure": {"kind": "gable", "kind": "hip"}}',
    1,
    "/structure/kind: The name “kind” is given twice",
  ],
  ["arrays without end", "[".repeat(LIMITS.jsonDepth + 1), 1, `Give at most ${LIMITS.jsonDepth} levels.`],
  ["no JSON", '{"structure": gable}', 2, "FILE cannot be used. Line 1, column 15: expected a value."],
  ["broken UTF-8", Uint8Array.of(0x22, 0xff, 0x22), 2, "FILE cannot be used. The file is not valid UTF-8."],
  ["nothing", "", 2, "FILE cannot be used. The file is empty."],
  ["too much", " ".repeat(LIMITS.bodyBytes + 1), 2, `FILE cannot be used. A file may have ${LIMITS.bodyBytes} bytes.`],
] as const)(
  "refuses a file with %s",
  (_, content, status, words) => {
    expect(told(content)).toEqual([status, expect.stringContaining(words)]);
  },
  30_000,
);
