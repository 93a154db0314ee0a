/** One possible bolt of a log, with its chords and the price of each cut through it at every whole height. */
import { type Bolt, clearOf, halfChord } from "../bolt.js";
import type { Job } from "./job.js";
import type { SpeciesRules } from "./species-rules.js";

/** What of a bolt's geometry the worth of its stack hangs on. */
export type BoltShape = Pick<Bolt, "length" | "radius" | "rotRadius" | "pithRadius" | "midDiameter">;

/** All heights are whole steps above the sawing axis; a stack is the same upside down. */
export interface BoltTable {
  /** Number of the bolt's length among the job's. */
  readonly length: number;
  /** Highest face that lies in the wood. */
  readonly top: number;
  /** Half of the usable width under an outer face at each height from 0 to `top`, by number of the wane. */
  readonly half: readonly Uint16Array[];
  /** Money for the cut whose kerf begins at height y, at [y + kerf]; from y = −kerf to `top`. */
  readonly cut: Float64Array;
  /** Below this height a slab may meet rot or pith. */
  readonly core: number;
  /** Half width that rot or pith takes of a slab, by the slab's height next to the axis, below `core`. */
  readonly rot: Uint16Array;
  readonly pith: Uint16Array;
  /** Steps from the axis that a boxed piece must reach on every side; Infinity in a rotten heart. */
  readonly box: number;
  readonly rules: SpeciesRules;
}

/** The table of a bolt of length number `length`. */
export function boltTable(job: Job, rules: SpeciesRules, bolt: BoltShape, length: number): BoltTable {
  const top = Math.floor(bolt.radius);
  // A pith that is a point still has to be boxed in.
  const core = Math.max(Math.ceil(Math.max(bolt.rotRadius, rules.heart ? bolt.pithRadius : 0)), rules.heart ? 1 : 0);
  return {
    length,
    top,
    half: rules.wanes.map((wane) => halfWidths(bolt.radius, top, wane)),
    cut: cutPrices(job, bolt, top),
    core,
    rot: heights(core, (y) => clearOf(bolt.rotRadius, y)),
    pith: heights(core, (y) => (rules.heart ? clearOf(bolt.pithRadius, y) : 0)),
    box: bolt.rotRadius > 0 ? Number.POSITIVE_INFINITY : Math.ceil(bolt.pithRadius),
    rules,
  };
}

function heights(size: number, at: (y: number) => number): Uint16Array {
  const made = new Uint16Array(size);
  for (let y = 0; y < size; y++) made[y] = at(y);
  return made;
}

/** As `usableHalf` of the bolt. */
function halfWidths(radius: number, top: number, wane: number): Uint16Array {
  const face = new Uint16Array(top + 1);
  for (let y = 0; y <= top; y++) face[y] = halfChord(radius, y);
  if (wane === 0) return face;
  return heights(top + 1, (y) => Math.min(face[Math.max(0, y - wane)] as number, (face[y] as number) + wane));
}

function cutPrices({ prices, problem }: Job, bolt: BoltShape, top: number): Float64Array {
  const kerf = problem.shop.millKerf;
  const square = (bolt.midDiameter / 2) ** 2;
  const cut = new Float64Array(top + kerf + 1);
  for (let i = 0; i < cut.length; i++) {
    const middle = i - kerf / 2;
    const chord = 2 * Math.sqrt(Math.max(0, square - middle * middle));
    cut[i] = prices.millCut + prices.millSquare * chord * bolt.length;
  }
  return cut;
}
