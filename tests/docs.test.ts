/** The pages say what is so: commands exist, examples work, links lead somewhere, the reference is up to date. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { calls } from "../src/api/calls.js";
import { demoCatalogs, demoRequest } from "../src/api/demos.js";
import { planners } from "../src/api/planners.js";
import { ASSUMPTIONS } from "../src/catalog/assumptions.js";
import { estimate } from "../src/estimate/estimate.js";
import { FAULT_CODES } from "../src/estimate/faults.js";
import { readEstimateRequest } from "../src/estimate/request/request.js";

const root = new URL("../", import.meta.url);
const page = (name: string): string => readFileSync(new URL(name, root), "utf8");
const PAGES = [
  "README.md",
  "DEVELOPERS.md",
  ...readdirSync(new URL("docs/", root))
    .filter((f) => f.endsWith(".md"))
    .map((f) => `docs/${f}`),
];

function estimated(json: unknown) {
  const read = readEstimateRequest(json, demoCatalogs());
  if ("faults" in read) throw new Error(JSON.stringify(read.faults));
  return estimate(read.value, planners());
}

describe("the pages", () => {
  it("names every call, assumption and fault in the reference, which is what the records say", () => {
    const reference = page("docs/reference.md");
    for (const { name } of ASSUMPTIONS) expect(reference).toContain(`\`${name}\``);
    for (const code of Object.keys(FAULT_CODES)) expect(reference).toContain(`\`${code}\``);
    for (const { method, path, hidden } of calls)
      if (!hidden) expect(reference).toContain(`\`${method.toUpperCase()} ${path}\``);
    const tsx = fileURLToPath(new URL("node_modules/.bin/tsx", root));
    expect(() => execFileSync(tsx, ["docs/write.ts", "--check"], { cwd: fileURLToPath(root) })).not.toThrow();
  });

  it.each(PAGES)("links from %s to files that exist", (name) => {
    const links = [...page(name).matchAll(/\]\((?!https?:|#)([^)#]+)[^)]*\)/g)].map(([, to]) => to as string);
    for (const to of links) expect(existsSync(new URL(to, new URL(name, root))), to).toBe(true);
  });

  it.each(PAGES)("names in %s only scripts that package.json has", (name) => {
    const { scripts } = JSON.parse(page("package.json")) as { scripts: Record<string, string> };
    const named = [...page(name).matchAll(/npm run (?:-s )?([a-z:]+)/g)].map(([, script]) => script as string);
    for (const script of named) expect(Object.keys(scripts)).toContain(script);
  });

  it("starts the README with the job, and its first command before line 25", () => {
    const lines = page("README.md").split("\n");
    expect(lines.findIndex((line) => line.startsWith("```sh"))).toBeLessThan(25);
    expect(lines[2]).toMatch(/^Boleworth/);
  });

  it("gives an example of a small request that is answered, every default listed", () => {
    const example = /```json\n([\s\S]*?)```/.exec(page("README.md"))?.[1] ?? "";
    const { notices, routes } = estimated(JSON.parse(example));
    expect(notices.filter(({ code }) => code === "default").length).toBeGreaterThan(10);
    expect(routes.buy.cash.value.gt(0)).toBe(true);
  });

  it("works in the worked example with cells that the demo has, at the values that it has", () => {
    const { basis } = estimated(demoRequest("orchard-shelter"));
    const text = page("docs/worked-example.md");
    const names = [...text.matchAll(/`([a-zA-Z-]+(?:\.[a-zA-Z-]+)+)`/g)].map(([, cell]) => cell as string);
    expect(names.length).toBeGreaterThan(6);
    for (const cell of names) expect(basis.sheet.find(cell), cell).toBeDefined();
    const shown = (cell: string, unit: string, places: number) => {
      const found = basis.sheet.find(cell);
      return found && basis.sheet.in(found, unit).toDecimalPlaces(places).toFixed();
    };
    expect(text).toContain(`${shown("rafter.edgeLength", "in", 4)} in`);
    expect(text).toContain(`${shown("rafter.stockLength", "in", 4)} in`);
    expect(text).toContain(`**${shown("covering.panels", "", 0)}** in all`);
    expect(text).toContain(`**${shown("covering.roof-screw.order", "", 0)}** to buy`);
    for (const way of ["bought", "mixed"]) expect(text).toContain(`**${shown(`${way}.finish.volume`, "gal", 2)} gal**`);
    expect(text).toContain(`**${shown("mixed.hours.finishFirst", "person-h", 1)}`);
    expect(text).toContain(`${shown("mixed.cuts.millArea-eastern-white-pine", "ft2", 1)} ft² of face in pine`);
    expect(text).toContain(`${shown("mixed.cuts.millCuts", "", 0)} cuts, 1 1/2 min each`);
    expect(text).toContain(`**${Number(shown("mixed.hours.saw", "person-h", 1)).toFixed(1)} person-hours**`);
  });

  it.each([
    ["ferry-bike-shed", "## Two stages of the ferry", ["common.hours.dig", "common.hours.pour"]],
    ["market-stall", "## Two stages of the market", ["common.hours.deck", "bought.hours.finishFirst"]],
  ])("works two stages of %s by hand, at the hours that it has", (name, heading, stages) => {
    const { sheet } = estimated(demoRequest(name)).basis;
    const [, text = ""] = page("docs/worked-example.md").split(heading);
    for (const stage of stages) {
      const cell = sheet.find(stage);
      expect(text.split("\n## ")[0]).toContain(`**${cell && sheet.shown(cell).split(" ")[0]} person-hours**`);
    }
  });
});
