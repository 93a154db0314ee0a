/**
 * Writes the frozen problems and what the careful sawyer's rule costs on them. Run once, before any tuning:
 * `npx tsx tests/bench/sawing/freeze.ts`. It refuses to write over what is there.
 */
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { carefulSawyer } from "../../../src/estimate/salvage/careful-sawyer.js";
import { planCost } from "../../../src/estimate/salvage/cut-measures.js";
import type { SawingProblem } from "../../../src/estimate/salvage/sawing-problem.js";
import { generate, type Kind } from "./generate.js";

const folder = new URL("./frozen/", import.meta.url);

function tinyKind(i: number): Kind {
  const demand = [1, 0.7, 1.4][i % 3] as number;
  return {
    logs: 1 + (i % 3),
    groups: 2 + (i % 5),
    pieces: 8 + ((i * 7) % 20),
    demand,
    switches: i >= 24,
    thickest: 18,
  };
}

const S: Kind = { logs: 3, groups: 8, pieces: 60, demand: 1, switches: false };
const M: Kind = { logs: 10, groups: 12, pieces: 200, demand: 1, switches: false };
const L: Kind = { logs: 50, groups: 20, pieces: 1000, demand: 1, switches: false };
const XL: Kind = { logs: 200, groups: 20, pieces: 5000, demand: 1, switches: false };

/** Six of a size: two have much spare wood, two have heart rules, wane, bark, throat and species. */
const six = (kind: Kind): Kind[] => [
  kind,
  kind,
  kind,
  { ...kind, demand: 0.4 },
  { ...kind, switches: true },
  { ...kind, switches: true, demand: 0.4 },
];

const sizes: Record<string, Kind[]> = {
  tiny: Array.from({ length: 36 }, (_, i) => tinyKind(i)),
  S: six(S),
  M: six(M),
  L: [L, L, { ...L, switches: true }],
  XL: [XL, { ...XL, switches: true }],
};

/** A problem whose logs are worth the saw: where buying everything is no dearer than the rule, another seed is taken. */
function worthSawing(seed: number, kind: Kind): SawingProblem {
  for (let next = seed; ; next += 100) {
    const problem = generate(next, kind);
    const buy = Object.fromEntries(problem.groups.map(({ name, count }) => [name, count]));
    const bought = planCost(problem, { gridMm: problem.gridMm, logs: [], buy }).total;
    if (planCost(problem, carefulSawyer(problem)).total < 0.95 * bought) return problem;
  }
}

if (existsSync(folder)) throw new Error("Frozen already.");
mkdirSync(folder);
const careful: Record<string, number> = {};
for (const [size, kinds] of Object.entries(sizes)) {
  kinds.forEach((kind, i) => {
    const name = `${size}-${String(i + 1).padStart(2, "0")}`;
    const problem = worthSawing(5001 + 7 * i, kind);
    writeFileSync(new URL(`${name}.json`, folder), `${JSON.stringify(problem)}\n`);
    careful[name] = planCost(problem, carefulSawyer(problem)).total;
  });
}
writeFileSync(new URL("careful.json", folder), `${JSON.stringify(careful, null, 1)}\n`);
writeFileSync(new URL("best-known.json", folder), `${JSON.stringify(careful, null, 1)}\n`);
