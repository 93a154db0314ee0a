/** What may lie where in a log: pieces that its species serves, by the wane they take and their rule on the heart. */
import { waneOf } from "../bolt.js";
import type { SawGroup } from "../sawing-problem.js";
import type { Section, SlabKind } from "./slab-kinds.js";

/** Which groups a strip may hold, as flags by group. */
export type Mask = readonly boolean[];

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

/** Rules of a species; adds the masks that they need. */
export function speciesRules(job: Rulings, species: string, id: number): SpeciesRules {
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

/** What all rules of a job share; masks and numbers of rows grow. */
export interface Rulings {
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
