/**
 * A sawing problem made ready for the search: groups worth sawing, thicknesses of slabs, widths of strips, lengths of
 * bolts, and every rate collapsed to money at the problem's wage.
 */
import { ripTool, waneOf } from "../bolt.js";
import type { SawGroup, SawingProblem, SawLog } from "../sawing-problem.js";
import { boltLengths, lengthsBefore } from "./bolt-lengths.js";
import { makeSections, makeSlabs, type Section, type SlabKind } from "./slab-kinds.js";
import { type Mask, type Rulings, type SpeciesRules, speciesRules } from "./species-rules.js";

/** Money at the problem's wage. */
export interface Prices {
  readonly log: number;
  readonly bolt: number;
  readonly millCut: number;
  /** A grid square of a cut face. */
  readonly millSquare: number;
  readonly ripCut: number;
  readonly ripStep: number;
  readonly crosscut: number;
}

/** The job. Groups are those with a price above 0, by name. */
export interface Job {
  readonly problem: SawingProblem;
  readonly groups: readonly SawGroup[];
  /** Numbers of the groups among them. */
  readonly numberOf: ReadonlyMap<SawGroup, number>;
  /** What one piece costs when bought, by group. */
  readonly buy: readonly number[];
  readonly count: readonly number[];
  readonly wane: readonly number[];
  readonly sections: readonly Section[];
  readonly slabs: readonly SlabKind[];
  /** Lengths of bolts, ascending. */
  readonly lengths: readonly number[];
  /** For length i and group j at [i × groups + j]: the largest length left beside such a piece; -1 none, -2 too short. */
  readonly lengthBefore: Int32Array;
  /** Whether `lengths` are all sums of piece lengths that the mill takes. */
  readonly allLengths: boolean;
  /** Places of a log, from the butt, that its wood may be bucked back to. */
  readonly mostPlaces: number;
  readonly prices: Prices;
  /** Money for one rip cut through slab kind s over length number i, at [i × slabs + s]. */
  readonly rips: Float64Array;
  readonly masks: readonly Mask[];
  /** By species of log: what may lie where. */
  readonly species: ReadonlyMap<string, SpeciesRules>;
}

/** 1 ft = 304.8 mm, exact by definition. */
const MM_PER_FOOT = 304.8;

/** Makes a problem ready. Groups that cost nothing to buy, or are not wanted, leave it. */
export function makeJob(problem: SawingProblem, mostLengths = 400): Job {
  const price = ({ buy }: SawGroup) => buy.cash + problem.rates.wage * buy.hours;
  const groups = problem.groups
    .filter((group) => group.count > 0 && price(group) > 0)
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  const sections = makeSections(groups);
  const { lengths, all } = boltLengths(problem, groups, mostLengths);
  const slabs = makeSlabs(problem, sections);
  const rulings: Rulings = { groups, sections, slabs, masks: [], rows: 0 };
  const names = [...new Set(problem.logs.map((log) => log.species))].sort();
  const prices = makePrices(problem);
  return {
    problem,
    groups,
    numberOf: new Map(groups.map((group, j) => [group, j])),
    buy: groups.map(price),
    count: groups.map((group) => group.count),
    wane: groups.map(waneOf),
    sections,
    slabs,
    lengths,
    lengthBefore: lengthsBefore(problem, groups, lengths),
    allLengths: all,
    mostPlaces: Number.POSITIVE_INFINITY,
    prices,
    rips: Float64Array.from(
      lengths.flatMap((length) => slabs.map((s) => ripPrice({ prices, problem }, s.thickness, length))),
    ),
    species: new Map(names.map((name, id) => [name, speciesRules(rulings, name, id)])),
    masks: rulings.masks,
  };
}

function makePrices({ rates, gridMm }: SawingProblem): Prices {
  const foot = Number(gridMm) / MM_PER_FOOT;
  const { wage } = rates;
  return {
    log: rates.logCash + wage * rates.logHours,
    bolt: wage * rates.boltHours,
    millCut: wage * rates.millCutHours,
    millSquare: (rates.millCashPerFt2 + wage * rates.millHoursPerFt2) * foot * foot,
    ripCut: wage * rates.ripCutHours,
    ripStep: (rates.ripCashPerFt + wage * rates.ripHoursPerFt) * foot,
    crosscut: wage * rates.crosscutHours,
  };
}

/** Money for one rip cut through a slab of a thickness over a length. */
export function ripPrice(
  { prices, problem }: Pick<Job, "prices" | "problem">,
  thickness: number,
  length: number,
): number {
  return ripTool(problem.shop, thickness).tool === "rip"
    ? prices.ripCut + prices.ripStep * length
    : prices.millCut + prices.millSquare * thickness * length;
}

/** Money for getting a log ready, and what it would fetch. */
export function logPrice({ prices, problem }: Pick<Job, "prices" | "problem">, { ready }: SawLog): number {
  return ready === undefined ? prices.log : prices.log + ready.cash + problem.rates.wage * ready.hours;
}

/** Rules for a log. */
export function rulesFor(job: Job, log: SawLog): SpeciesRules {
  return job.species.get(log.species) as SpeciesRules;
}
