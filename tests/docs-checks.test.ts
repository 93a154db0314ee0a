/** docs/checks.md counts its published values: every row of its register is counted again among the tests. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const root = fileURLToPath(new URL("../", import.meta.url));
const page = readFileSync(`${root}docs/checks.md`, "utf8");

/** Rows of the register: formula, source, test file, how its tests' names begin, values a test, pairs. */
const register = page.split("\n").flatMap((line) => {
  const [, formula, , file, begins, each, pairs] = line.split("|").map((part) => part.trim());
  return file?.startsWith("`tests/") && begins && each && pairs
    ? [{ formula, file: file.slice(1, -1), begins: begins.slice(1, -1), each: Number(each), pairs: Number(pairs) }]
    : [];
});

it("counts each formula with each published value that a test holds it to", () => {
  const files = [...new Set(register.map(({ file }) => file))];
  const folder = mkdtempSync(join(tmpdir(), "register-"));
  const out = join(folder, "tests.json");
  // Through a file: what is written to a pipe is cut off where the process ends.
  execFileSync(process.execPath, ["node_modules/vitest/vitest.mjs", "list", `--json=${out}`, ...files], { cwd: root });
  const tests = JSON.parse(readFileSync(out, "utf8")) as { name: string; file: string }[];
  rmSync(folder, { recursive: true });
  const counted = register.map(({ file, begins, each, ...row }) => {
    const found = tests.filter((test) => test.file.endsWith(`/${file}`) && new RegExp(`^${begins}`).test(test.name));
    return { ...row, pairs: found.length * each };
  });
  expect(counted).toEqual(register.map(({ formula, pairs }) => ({ formula, pairs })));
  const total = register.reduce((sum, { pairs }) => sum + pairs, 0);
  expect(total).toBeGreaterThanOrEqual(200);
  expect(page).toContain(`**${total} pairs**`);
  expect(page).toContain(`${new Set(register.map(({ formula }) => formula)).size} formulas`);
}, 120_000);

it("rests on values that nothing under src imports", () => {
  const sources = readdirSync(`${root}src`, { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.tsx?$/.test(name),
  );
  const importing = sources.filter((name) => /from "[^"]*\/tests\//.test(readFileSync(`${root}src/${name}`, "utf8")));
  expect(importing).toEqual([]);
});
