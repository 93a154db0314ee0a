/** Plans of the optimiser for many random questions, each tried by everything that does not come from it. */
import { carefulSawyer } from "../../src/estimate/salvage/careful-sawyer.js";
import { planSawing } from "../../src/estimate/salvage/plan-sawing.js";
import { judgeSawingPlan } from "../../src/estimate/salvage/sawing-judge.js";
import { priceSawingPlan } from "./sawing-price.js";
import { type Kind, randomSawingProblem } from "./sawing-problems.js";

/** Money of a float search against exact decimals. */
const NOISE = 1e-6;
/** From hardly begun, where the search stops in the midst of any stage, to far enough for all of them. */
const WORKS = [20, 60, 150, 400] as const;

/** What a run of seeds came to. */
export interface Trial {
  /** What is wrong, by seed. */
  readonly wrong: readonly string[];
  /** Plans that saw anything at all: the others prove little. */
  readonly sawn: number;
}

/** Tries the seeds [from, to); every fifth question is of the plain family. */
export function tryOptimiser(size: Kind["size"], from: number, to: number): Trial {
  const wrong: string[] = [];
  let sawn = 0;
  for (let seed = from; seed < to; seed += 1) {
    const problem = randomSawingProblem(seed, { size, switches: seed % 5 !== 0 });
    const work = WORKS[seed % WORKS.length] as number;
    const { plan, cost, bound } = planSawing(problem, { work, seed });
    const price = priceSawingPlan(problem, plan).cost.toNumber();
    const rule = priceSawingPlan(problem, carefulSawyer(problem)).cost.toNumber();
    const faults = [
      ...judgeSawingPlan(problem, plan),
      ...(Math.abs(price - cost) > NOISE ? [`costs ${price}, not ${cost}`] : []),
      ...(bound > price + NOISE ? [`costs ${price}, below its bound ${bound}`] : []),
      ...(price > rule + NOISE ? [`costs ${price}, above the rule's ${rule}`] : []),
    ];
    for (const fault of faults) wrong.push(`seed ${seed}: ${fault}`);
    if (plan.logs.length > 0) sawn += 1;
  }
  return { wrong, sawn };
}
