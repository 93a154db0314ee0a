/**
 * Better plans for a frontier, that go piece by piece: where buying takes over, twice, and from there down to where an hour is worth
 * nothing. The user's value of an hour does not steer them, so that the frontier is nearly the same from wherever it is looked at: what was found
 * at that value is in it, too.
 */
import type { MixFound } from "./best-mix.js";
import { supported } from "./compare/envelope.js";
import type { MixPoint } from "./compare/mix-point.js";

/**
 * Values of an hour, as shares of the one where the envelope of all that is known by then last turns. Downwards, since a plan that
 * mills little leads on to one that mills more. Assumption, measured on the demos: each is a search of some tenths of a second.
 */
const LADDER = ["1", "1", "0.5", "0.2", "0"] as const;

const made = new WeakMap<MixFound, readonly MixPoint[]>();

/** Those plans, priced; made once. */
export function frontierPlans(found: MixFound): readonly MixPoint[] {
  const known = made.get(found) ?? climbedDown(found);
  made.set(found, known);
  return known;
}

function climbedDown({ tried, jointChain }: MixFound): readonly MixPoint[] {
  const jointAt = jointChain();
  const asked = new Set<string>();
  const better: MixPoint[] = [];
  for (const share of LADDER) {
    const last = supported([...tried, ...better]).at(-1)?.fromWage;
    const wage = last?.times(share);
    if (!wage || asked.has(wage.toFixed(2))) continue;
    asked.add(wage.toFixed(2));
    better.push(...jointAt(wage));
  }
  return better;
}
