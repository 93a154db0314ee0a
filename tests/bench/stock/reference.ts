/**
 * Writes the least cost of each frozen instance: `npx tsx tests/bench/stock/reference.ts`, a few minutes.
 *
 * Lumber and uniform bins: proven by the planner itself, whose proofs are tried by other methods in
 * tests/estimate/purchase/stock-plan.test.ts. Triplets: a third of the items, by how they were made.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { loadHighs } from "../../../src/api/highs.js";
import type { StockProblem } from "../../../src/estimate/purchase/stock/problem.js";
import { planStock } from "../../../src/estimate/purchase/stock-plan.js";

interface Instance {
  readonly name: string;
  readonly problem: StockProblem;
}

async function write(): Promise<void> {
  const solver = await loadHighs();
  const least: Record<string, number> = {};
  for (const family of ["lumber-60", "lumber-300", "uniform", "triplets"]) {
    const url = new URL(`frozen/${family}.json`, import.meta.url);
    for (const { name, problem } of JSON.parse(readFileSync(url, "utf8")) as Instance[]) {
      const items = problem.pieces.reduce((sum, { count }) => sum + count, 0);
      const outcome = family === "triplets" ? undefined : planStock(problem, { work: 20_000_000, solver });
      if (outcome && !outcome.proven) throw new Error(`${name} is not proven`);
      least[name] = outcome?.costMinor ?? items / 3;
    }
  }
  writeFileSync(new URL("frozen/reference.json", import.meta.url), `${JSON.stringify(least, null, 1)}\n`);
}

await write();
