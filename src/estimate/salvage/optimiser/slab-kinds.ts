/** Sections that are wanted, and the thicknesses of slabs and widths of strips that give them. */
import { millSaws, ripTool } from "../bolt.js";
import type { SawGroup, SawingProblem } from "../sawing-problem.js";

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

/** Sections of some groups, thin to thick. */
export function makeSections(groups: readonly SawGroup[]): Section[] {
  const sections = new Map<string, { thickness: number; width: number; groups: number[] }>();
  groups.forEach(({ thickness, width }, j) => {
    const key = `${thickness} ${width}`;
    const section = sections.get(key) ?? { thickness, width, groups: [] };
    section.groups.push(j);
    sections.set(key, section);
  });
  return [...sections.values()].sort((a, b) => a.thickness - b.thickness || a.width - b.width);
}

/** Slabs as thick as a side of any of the sections, thin to thick. */
export function makeSlabs(problem: SawingProblem, sections: readonly Section[]): SlabKind[] {
  const widest = Math.ceil(Math.max(0, ...problem.logs.map((log) => Math.max(log.largeDiameter, log.smallDiameter))));
  const thicknesses = new Set(sections.flatMap(({ thickness, width }) => [thickness, width]));
  return [...thicknesses]
    .filter((thickness) => thickness <= widest)
    .sort((a, b) => a - b)
    .map((thickness) => makeSlab(problem, sections, thickness, widest))
    .filter(({ strips }) => strips.length > 0);
}

function makeSlab(problem: SawingProblem, sections: readonly Section[], thickness: number, widest: number): SlabKind {
  const { kerf } = ripTool(problem.shop, thickness);
  const either = sections.flatMap((section, index): StripKind[] => {
    if (section.thickness === thickness) return [{ width: section.width, section: index }];
    return section.width === thickness ? [{ width: section.thickness, section: index }] : [];
  });
  const strips = either.filter(({ width }) => millSaws(problem.shop, thickness, width));
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
