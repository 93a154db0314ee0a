/** Why a piece comes out of no log, in words. */
import { decimal } from "../quantity/decimal.js";
import { type MeasureSystem, markedSmall } from "../quantity/text.js";
import { unit } from "../quantity/unit.js";
import { nearMiss } from "./near-miss.js";
import type { SawGroup, SawingProblem } from "./sawing-problem.js";

/** The nearest log and what it lacks, in a sentence. */
export function missInWords(problem: SawingProblem, group: SawGroup): string {
  const miss = nearMiss(problem, group);
  const system: MeasureSystem = problem.gridMm === "1" ? "metric" : "inch-pound";
  const by = (steps: number) => markedSmall({ value: decimal(problem.gridMm).times(steps), unit: unit("mm") }, system);
  switch (miss.lacks) {
    case "nothing":
      return `A log such as ${miss.log} holds one, but out of all logs together the best plan found saws no more of them.`;
    case "length":
      return `The nearest log, ${miss.log}, is ${by(miss.by)} too short.`;
    case "diameter":
      return `The nearest log, ${miss.log}, is ${by(miss.by)} too thin.`;
    case "bolt-length":
      return `The piece is ${by(miss.by)} longer than the longest bolt handled (log ${miss.log}).`;
    case "throat":
      return `The nearest log, ${miss.log}, is ${by(miss.by)} too thick for the mill.`;
    case "mill-slab":
      return `The piece is ${by(miss.by)} thinner than the thinnest slab that the mill saws.`;
    case "sound-heart":
      return `The heart of ${miss.log} is rotten where the piece must box it in.`;
    case "species":
      return "No log is of a species that serves.";
  }
}
