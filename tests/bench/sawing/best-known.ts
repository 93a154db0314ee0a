/**
 * Lowers the best known of some frozen problems where a longer search finds better; nothing is ever raised.
 * `npx tsx tests/bench/sawing/best-known.ts 200000 L-01 L-02`: the work of each of three searches, then the problems.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { planSawing } from "../../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../../src/estimate/salvage/sawing-judge.js";
import type { SawingProblem } from "../../../src/estimate/salvage/sawing-problem.js";

const SEEDS = [1, 2, 3];
const fileOf = (name: string) => new URL(`frozen/${name}.json`, import.meta.url);
const read = <T>(name: string): T => JSON.parse(readFileSync(fileOf(name), "utf8")) as T;

const [work, ...names] = process.argv.slice(2);
for (const name of names) {
  const problem = read<SawingProblem>(name);
  const costs = SEEDS.map((seed) => {
    const { plan, cost } = planSawing(problem, { work: Number(work), seed });
    const wrong = judgeSawingPlan(problem, plan);
    if (wrong.length > 0) throw new Error(`${name}: ${wrong.join(" ")}`);
    return cost;
  });
  const known = read<Record<string, number>>("best-known");
  const best = Math.min(known[name] as number, ...costs);
  writeFileSync(fileOf("best-known"), `${JSON.stringify({ ...known, [name]: best }, null, 1)}\n`);
  process.stdout.write(`${name}: ${known[name]} before, ${best} now; found ${costs.join(", ")}\n`);
}
