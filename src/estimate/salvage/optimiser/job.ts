/**
 * A sawing problem made ready for the search: groups worth sawing, thicknesses of slabs, widths of strips, lengths of
 * bolts, and every rate collapsed to money at the problem's wage.
 */
import { ripTool, waneOf } from "../bolt.js";
import type { SawGroup, SawingProblem, SawLog } from "../sawing-problem.js";

/** A section (thickness × width) that some groups share. */
export interface Section {
  readonly thickness: number;
  readonly width: number;
  /** Indices of its groups. */
  readonly groups: readonly number[];
}

/** One way to rip a slab: strips of a width, which are of a section. */
export interface StripKind {
  readonly width: number;
  readonly section: number;
}

/** Slabs of one thickness, and what a width of them can hold. */
export interface SlabKind {
  readonly thickness: number;
  /** Kerf of the saw that rips it. */
  readonly kerf: number;
  readonly strips: readonly StripKind[];
  /** All sums of (strip + kerf), ascending from 0: nothing changes between two of them. */
  readonly points: readonly number[];
  /** For point i and strip k at [i × strips + k]: the point before that strip, or -1. */
  readonly before: Int32Array;
  /** For a width of wood: the number of the largest point that fits. */
  readonly pointOf: Uint16Array;
  /** The same for half a width of wood. */
  readonly pointOfHalf: Uint16Array;
  /** Groups that come out of it. */
  readonly groups: readonly number[];
}

/** Which groups a strip may hold, as flags by group. */
export type Mask = readonly boolean[];

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

/** What may lie where in a log of some species. */
export interface SpeciesRules {
  /** By kind of slab: one row a wane that makes a difference there; none when nothing of the kind is served. */
  readonly rows: readonly (readonly WaneRow[])[];
  /** All wanes that occur in the rows, ascending. */
  readonly wanes: readonly number[];
  /** Whether any served group has a heart rule. */
  readonly heart: boolean;
  /** Tells the rules of one species from another's. */
  readonly id: number;
}

/** Masks, by number, of the strips of a slab that keeps to a wane. */
export interface WaneRow {
  /** Tells rows apart within the job. */
  readonly id: number;
  /** Number of its wane among the rules' wanes. */
  readonly wane: number;
  /** Clear of the pith: everything but boxed. */
  readonly clear: number;
  /** Touching the pith: neither free nor boxed. */
  readonly touching: number;
  /** Boxing the pith in: everything but free. */
  readonly boxing: number;
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

function makeSections(groups: readonly SawGroup[]): Section[] {
  const sections = new Map<string, { thickness: number; width: number; groups: number[] }>();
  groups.forEach(({ thickness, width }, j) => {
    const key = `${thickness} ${width}`;
    const section = sections.get(key) ?? { thickness, width, groups: [] };
    section.groups.push(j);
    sections.set(key, section);
  });
  return [...sections.values()].sort((a, b) => a.thickness - b.thickness || a.width - b.width);
}

function makeSlabs(problem: SawingProblem, sections: readonly Section[]): SlabKind[] {
  const widest = Math.ceil(Math.max(0, ...problem.logs.map((log) => Math.max(log.largeDiameter, log.smallDiameter))));
  const thicknesses = new Set(sections.flatMap(({ thickness, width }) => [thickness, width]));
  return [...thicknesses]
    .filter((thickness) => thickness <= widest)
    .sort((a, b) => a - b)
    .map((thickness) => makeSlab(problem, sections, thickness, widest));
}

function makeSlab(problem: SawingProblem, sections: readonly Section[], thickness: number, widest: number): SlabKind {
  const { kerf } = ripTool(problem.shop, thickness);
  const strips = sections.flatMap((section, index): StripKind[] => {
    if (section.thickness === thickness) return [{ width: section.width, section: index }];
    return section.width === thickness ? [{ width: section.thickness, section: index }] : [];
  });
  const reached = new Uint8Array(widest + kerf + 1);
  reached[0] = 1;
  for (let p = 0; p < reached.length; p++) {
    if (reached[p] === 1)
      for (const { width } of strips) if (p + width + kerf < reached.length) reached[p + width + kerf] = 1;
  }
  const points = [...reached.keys()].filter((p) => reached[p] === 1);
  const numberOf = new Map(points.map((p, i) => [p, i]));
  const before = Int32Array.from(
    points.flatMap((p) => strips.map(({ width }) => numberOf.get(p - width - kerf) ?? -1)),
  );
  const pointOf = new Uint16Array(widest + 1);
  for (let w = 0, i = 0; w <= widest; w++) {
    while (i + 1 < points.length && (points[i + 1] as number) <= w + kerf) i++;
    pointOf[w] = i;
  }
  const pointOfHalf = pointOf.filter((_, width) => width % 2 === 0);
  const groups = strips.flatMap(({ section }) => sections[section]?.groups ?? []);
  return { thickness, kerf, strips, points, before, pointOf, pointOfHalf, groups };
}

/**
 * All sums of piece lengths with crosscuts between, up to the mill's longest bolt and the longest log. Where they are
 * too many, sums of fewer pieces go first, so that single lengths are always there, and of the sums of most pieces some
 * spread evenly from short to long.
 */
function boltLengths({ shop, logs }: SawingProblem, groups: readonly SawGroup[], most: number) {
  const longest = Math.min(shop.longestBolt, Math.max(0, ...logs.map((log) => Math.floor(log.length))));
  const singles = [...new Set(groups.map((group) => group.length))].sort((a, b) => a - b);
  const reached = new Set<number>();
  let layer = new Set([-shop.crossKerf]);
  let all = true;
  while (layer.size > 0 && all) {
    const next = new Set<number>();
    for (const from of layer) {
      for (const length of singles) {
        const sum = from + shop.crossKerf + length;
        if (sum <= longest && !reached.has(sum)) next.add(sum);
      }
    }
    const room = reached.size > 0 ? most - reached.size : next.size;
    all = next.size <= room;
    for (const sum of spread([...next], room)) reached.add(sum);
    layer = next;
  }
  return { lengths: [...reached].sort((a, b) => a - b), all };
}

/** No more than `room` of some sums, evenly from the shortest to the longest. */
function spread(sums: readonly number[], room: number): number[] {
  if (sums.length <= room) return [...sums];
  const sorted = [...sums].sort((a, b) => a - b);
  return Array.from(
    { length: Math.max(0, room) },
    (_, i) => sorted[Math.floor(((i + 1) * sorted.length) / room) - 1] as number,
  );
}

function lengthsBefore({ shop }: SawingProblem, groups: readonly SawGroup[], lengths: readonly number[]): Int32Array {
  const before = lengths.flatMap((length) =>
    groups.map((group) => {
      if (group.length > length) return -2;
      const rest = length - group.length - shop.crossKerf;
      let i = -1;
      while (i + 1 < lengths.length && (lengths[i + 1] as number) <= rest) i++;
      return i;
    }),
  );
  return Int32Array.from(before);
}

function speciesRules(job: Rulings, species: string, id: number): SpeciesRules {
  const { groups, sections, slabs } = job;
  const serves = groups.map((group) => group.species.length === 0 || group.species.includes(species));
  const wanes = [...new Set(groups.filter((_, j) => serves[j]).map(waneOf))].sort((a, b) => a - b);
  const rows = slabs.map(({ strips }) => {
    const here = new Set(strips.flatMap(({ section }) => sections[section]?.groups ?? []).filter((j) => serves[j]));
    const differ = new Set([...here].map((j) => waneOf(groups[j] as SawGroup)));
    return [...differ]
      .sort((a, b) => a - b)
      .map((wane) => {
        const mask = (...refused: string[]) =>
          maskNumber(
            job,
            groups.map((g, j) => here.has(j) && waneOf(g) >= wane && !refused.includes(g.heart)),
          );
        return {
          id: job.rows++,
          wane: wanes.indexOf(wane),
          clear: mask("boxed"),
          touching: mask("free", "boxed"),
          boxing: mask("free"),
        };
      });
  });
  return { id, rows, wanes, heart: groups.some((group, j) => serves[j] && group.heart !== "any") };
}

interface Rulings {
  readonly groups: readonly SawGroup[];
  readonly sections: readonly Section[];
  readonly slabs: readonly SlabKind[];
  readonly masks: Mask[];
  rows: number;
}

function maskNumber({ masks }: Rulings, flags: Mask): number {
  const known = masks.findIndex((other) => other.every((flag, j) => flag === flags[j]));
  return known >= 0 ? known : masks.push(flags) - 1;
}

/** Rules for a log. */
export function rulesFor(job: Job, log: SawLog): SpeciesRules {
  return job.species.get(log.species) as SpeciesRules;
}
