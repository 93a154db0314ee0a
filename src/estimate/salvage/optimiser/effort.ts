/** How hard to look at one log, and how hard the work that is left lets one look. */
import { STACKS_A_UNIT } from "./log-pricing.js";

/** How hard to look. */
export interface Effort {
  /** Steps on the worth of the limits. */
  readonly steps: number;
  /** Partial stacks kept a face; 0 leaves the walk out. */
  readonly labels: number;
  /** Partial plans of the log kept a place. */
  readonly plans: number;
  /** Bolts tried from each partial plan, most promising first. */
  readonly bolts: number;
  /** The walk ranks partial plans with so much of what the limits are worth; once a share. 0 ranks them as they stand. */
  readonly shares: readonly number[];
  /** Faces that a stack is started from. */
  readonly starts: number;
  /** Whether equal yields are carried on from every face. */
  readonly patient: boolean;
  /** Whether all bolts are looked over again at the prices asked. */
  readonly fresh: boolean;
  /** Work after which no further stack is walked. */
  readonly most: number;
}

/** Bolts of a log that are looked at again and again. */
export const KEPT_ARCS = 24;
/** Work of one step on the worth of the limits, all those bolts reckoned. */
const STEP = KEPT_ARCS / STACKS_A_UNIT;
/** Fewest steps that say anything, and least work that a walk is worth starting with. Assumption, measured. */
const FEWEST_STEPS = 4;
const LEAST_WALK = 30;

/** The same effort, cut down to about so many units of work: first the walk, then the steps. */
export function within(effort: Effort, units: number): Effort {
  const steps = Math.max(FEWEST_STEPS, Math.min(effort.steps, Math.floor((units * 0.7) / STEP)));
  const most = Math.min(effort.most, Math.floor(units - steps * STEP));
  return most < Math.min(effort.most, LEAST_WALK)
    ? { ...effort, steps, labels: 0, most: 0 }
    : { ...effort, steps, most };
}
