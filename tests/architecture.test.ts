import { execFile } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, normalize } from "node:path";
import { promisify } from "node:util";
import ts from "typescript";
import { describe, expect, it } from "vitest";

const root = new URL("..", import.meta.url).pathname;

interface LadderRule {
  readonly name: string;
  readonly from: { readonly path: string };
  readonly to: { readonly path: readonly string[] };
}
const { forbidden } = createRequire(import.meta.url)("../.dependency-cruiser.cjs") as { forbidden: LadderRule[] };
const ladder = forbidden.filter((rule) => rule.name.startsWith("ladder: "));
type PathNotRule = { readonly name: string; readonly from: { readonly pathNot: string | readonly string[] } };
const placed = forbidden.find((rule) => rule.name === "every file has its rung") as unknown as PathNotRule;
/** Packages of the core, each with the files that may import it. */
const packages = (forbidden as unknown as PathNotRule[]).flatMap(({ name, from }) => {
  const found = /^(\S+) only where it belongs$/.exec(name)?.[1];
  return found ? [{ name: found, where: from.pathNot as string }] : [];
});

/** Where a decimal may become a number: whole ones, told apart from others, and at the door of the sawing optimiser. */
const DOORS = ["estimate/quantity/whole.ts", "estimate/salvage/sawing-question.ts"];

/** A source file: its path from the root, and its text. */
interface Source {
  readonly path: string;
  readonly text: string;
}

const sources: Source[] = readdirSync(join(root, "src"), { recursive: true, encoding: "utf8" })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => ({ path: `src/${name}`, text: readFileSync(join(root, "src", name), "utf8") }));

/** What a file imports: paths from the root for its own kind, names for packages. */
function importsOf({ path, text }: Source): string[] {
  return ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => {
    if (!fileName.startsWith(".")) return fileName;
    const bare = normalize(join(dirname(path), fileName)).replace(/\.js$/, "");
    return [`${bare}.ts`, `${bare}.tsx`].find((found) => existsSync(join(root, found))) ?? bare;
  });
}

const isCore = (path: string) => /^src\/(estimate|catalog)\//.test(path);
const matches = (path: string, patterns: readonly string[]) =>
  patterns.some((pattern) => new RegExp(pattern).test(path));

/** `csv-parse/sync` is of the package `csv-parse`. */
const packageOf = (imported: string) => imported.split("/", imported.startsWith("@") ? 2 : 1).join("/");

function importFaults(source: Source): string[] {
  const { path } = source;
  const allowed = packages.filter(({ where }) => matches(path, [where])).map(({ name }) => name);
  return importsOf(source).flatMap((imported) => {
    const own = imported.startsWith("src/");
    const faults: string[] = [];
    if (isCore(path) && !own && !allowed.includes(packageOf(imported))) faults.push(`${path} imports ${imported}`);
    if (path.startsWith("src/catalog/") && /^src\/estimate\/(?!quantity\/|faults\.ts$)/.test(imported)) {
      faults.push(`${path} imports ${imported}, and the catalog knows quantities and faults only`);
    }
    if (!path.startsWith("src/api/") && /^(@?hono\b|node:)/.test(imported)) faults.push(`${path} knows ${imported}`);
    for (const rule of ladder) {
      if (!matches(path, [rule.from.path]) || !matches(imported, rule.to.path)) continue;
      faults.push(`${path} imports ${imported}, which is not below it`);
    }
    return faults;
  });
}

/** What makes an answer depend on more than the request: clock, chance, environment, locale, network. */
const IMPURE = new Set([
  ...["Date", "performance", "setTimeout", "setInterval", "process", "globalThis", "fetch", "crypto", "Intl", "eval"],
  ...["parseFloat", "require", "console", "Buffer"],
]);
/** The same as members: `Math.random`, `(1234.5).toLocaleString()`, `a.localeCompare(b)`. */
const IMPURE_MEMBER = /^(random|toLocale\w*|localeCompare|parseFloat)$/;

/** Words of the code itself: comments and texts do not count. */
function impureWords({ path, text }: Source): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) {
      const member = ts.isPropertyAccessExpression(node.parent) && node.parent.name === node;
      const name = member || ts.isPropertyAssignment(node.parent) || ts.isPropertySignature(node.parent);
      if (member ? IMPURE_MEMBER.test(node.text) : !name && IMPURE.has(node.text)) {
        const { line } = file.getLineAndCharacterOfPosition(node.getStart());
        found.push(`${path}:${line + 1} says ${node.text}`);
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** Files that can be reached from themselves. */
function loops(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const reach = (start: string): boolean => {
    const seen = new Set<string>();
    const open = [...(graph.get(start) ?? [])];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (next === start) return true;
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(...(graph.get(next) ?? []));
    }
    return false;
  };
  return [...graph.keys()].filter(reach);
}

const onlyReExports = ({ path, text }: Source) =>
  ts
    .createSourceFile(path, text, ts.ScriptTarget.Latest)
    .statements.every((statement) => ts.isExportDeclaration(statement) && statement.moduleSpecifier !== undefined);

describe("the ladder of imports", () => {
  it("is kept by every file, types included", () => {
    expect(sources.length).toBeGreaterThan(30);
    expect(sources.flatMap(importFaults)).toEqual([]);
  });

  it("has a place for every file", () => {
    expect(sources.map(({ path }) => path).filter((path) => !matches(path, [placed.from.pathNot].flat()))).toEqual([]);
  });

  it("has no loops", () => {
    const graph = new Map(sources.map((source) => [source.path, importsOf(source)]));
    expect(loops(graph)).toEqual([]);
    expect(
      loops(
        new Map([
          ["a", ["b"]],
          ["b", ["c"]],
          ["c", ["a"]],
          ["d", ["a"]],
        ]),
      ),
    ).toEqual(["a", "b", "c"]);
  });

  it("leads to the file that owns a name: none only re-exports others", () => {
    expect(sources.filter(onlyReExports).map(({ path }) => path)).toEqual([]);
    expect(sources.filter(({ path }) => /\/index\.tsx?$/.test(path))).toEqual([]);
  });

  it.each([
    { path: "src/estimate/pieces/x.ts", text: 'import { a } from "../../api/app.js";' },
    { path: "src/estimate/pieces/x.ts", text: 'import type { a } from "../salvage/bolt.js";' },
    { path: "src/estimate/sheet/x.ts", text: 'export { a } from "../../catalog/reading.js";' },
    { path: "src/estimate/salvage/x.ts", text: 'const a = await import("../purchase/packs.js");' },
    { path: "src/estimate/sheet/x.ts", text: 'import { z } from "zod";' },
    { path: "src/estimate/quantity/x.ts", text: 'import { Decimal } from "decimal.js";' },
    { path: "src/estimate/request/x.ts", text: 'import { Hono } from "hono";' },
    { path: "src/catalog/x.ts", text: 'import { parse } from "csv-parse/sync";' },
    { path: "src/catalog/x.ts", text: 'import { readFileSync } from "node:fs";' },
    { path: "src/catalog/x.ts", text: 'import { Sheet } from "../estimate/sheet/sheet.js";' },
    { path: "src/api/render/x.ts", text: 'import { call } from "../call.js";' },
  ])("is seen to be broken by $path: $text", (planted) => {
    expect(importFaults(planted)).not.toEqual([]);
  });

  it("is seen whole by the second reader, which finds it kept too", async () => {
    const cruise = join(root, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
    const { stdout } = await promisify(execFile)(
      process.execPath,
      [cruise, "--config", ".dependency-cruiser.cjs", "--output-type", "json", "src"],
      { cwd: root, maxBuffer: 64 * 1024 * 1024 },
    );
    const { modules, summary } = JSON.parse(stdout) as {
      modules: { source: string }[];
      summary: { violations: { rule: { name: string }; from: string; to: string }[] };
    };
    expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([]);
    const cruised = modules.map(({ source }) => source);
    expect(cruised).toEqual(expect.arrayContaining(sources.map(({ path }) => path)));
  }, 60_000);
});

describe("the core", () => {
  it("depends on nothing but the request: no clock, chance, environment or locale", () => {
    expect(sources.filter(({ path }) => isCore(path)).flatMap(impureWords)).toEqual([]);
  });

  it.each([
    "const now = Date.now();",
    "const luck = Math.random();",
    "const home = process.env.HOME;",
    'const n = parseFloat("1.5");',
    'const n = Number.parseFloat("1.5");',
    "const s = (1234.5).toLocaleString();",
    "names.sort((a, b) => a.localeCompare(b));",
  ])("is seen to be impure in: %s", (text) => {
    expect(impureWords({ path: "src/estimate/x.ts", text })).toHaveLength(1);
  });

  it("turns a decimal into a number only where it is whole, or where floats have their place", () => {
    // Optimisers, draws and drawings reckon in floats.
    const floats =
      /^src\/estimate\/(?:salvage\/optimiser|purchase\/stock|drawing)\/|^src\/estimate\/sheet\/float64\.ts$/;
    const doors = sources
      .filter(
        ({ path, text }) =>
          /^src\/(?:estimate|catalog)\//.test(path) && !floats.test(path) && text.includes(".toNumber("),
      )
      .map(({ path }) => path.replace(/^src\//, ""));
    expect(doors.sort()).toEqual(DOORS);
  });

  it("may speak of dates and processes in comments, texts and names of fields", () => {
    const text =
      '// Date of felling\nconst a = { process: "Date", Date: 1 };\ninterface B { process: string }\na.process;';
    expect(impureWords({ path: "src/estimate/x.ts", text })).toEqual([]);
  });
});
