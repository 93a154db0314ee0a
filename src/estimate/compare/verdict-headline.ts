/** The verdict's first sentence: what to mill and what to buy. */
import type { Basis } from "../basis.js";
import { ZERO } from "../quantity/decimal.js";
import { lowered } from "../quantity/words.js";
import { aside } from "../sheet/aside.js";
import { boughtOf } from "./group-reasons.js";
import type { RoutePlan } from "./route.js";
import { forWantOfPrice } from "./unpriced.js";

/** In one sentence; a group that is partly milled and partly bought stands on the side that most of it comes from. */
export function headline(basis: Basis, plan: RoutePlan): string {
  const free = basis.groups.filter(({ group, millable }) => millable && group.rules.source === "auto");
  if (free.length > 0 && forWantOfPrice(basis).length === free.length)
    return "No decision yet: nothing that your logs could give has a price to be bought at.";
  if (plan.sawn.size === 0) return `Buy everything: ${whyNothing(basis)}.`;
  const { mill, buy } = sidesOf(basis, plan);
  const verb = plan.hired ? "Have a hired sawyer mill" : "Mill";
  const untold = forWantOfPrice(basis).flatMap(({ group: { name, label } }) =>
    plan.sawn.has(name) ? [{ label, all: true }] : [],
  );
  const want = untold.length > 0 ? ` No price says whether to buy ${listed(untold, [])}.` : "";
  if (buy.length === 0 && mill.every(({ all }) => all)) return `${verb} everything from your logs.${want}`;
  if (buy.length === 0) return `${verb} ${listed(mill, [])}; buy the rest.${want}`;
  if (mill.length === 0) return `Buy ${listed(buy, mill)}; ${lowered(verb)} the rest.${want}`;
  const [milled, bought] = [namesOf(mill, buy).size, namesOf(buy, mill).size];
  if (milled > MANY && bought < milled)
    return `${verb} all but ${listed(buy, mill)}; buy those${rest(mill, buy)}.${want}`;
  return `${verb} ${listed(mill, buy)}; buy ${listed(buy, mill)}.${want}`;
}

/** More names than these nobody reads in one sentence: then the shorter side is told. Assumption. */
const MANY = 8;

/** Of groups that are milled for the most part, what is bought. */
function rest(mill: readonly Part[], buy: readonly Part[]): string {
  const partly = mill.filter(({ all }) => !all).map(({ label }) => ({ label, all: true }));
  return partly.length === 0 ? "" : `, and the rest of the ${listed(partly, buy)}`;
}

/** Why nothing is milled: that it does not pay is said only where something might have been. */
function whyNothing({ groups, logs }: Basis): string {
  if (logs.length === 0) return "no logs were named";
  if (groups.some(({ millable }) => millable)) return "milling does not pay here";
  const reasons = new Set(groups.map(({ notMilled }) => notMilled));
  const [only] = reasons;
  return reasons.size === 1 && only ? only : "none of it may be milled";
}

/** A group in a sentence: all of it, or most. */
interface Part {
  readonly label: string;
  readonly all: boolean;
}

/** Each group on the side that most of it comes from. */
function sidesOf({ groups }: Basis, plan: RoutePlan): Record<"mill" | "buy", Part[]> {
  const sides: Record<"mill" | "buy", Part[]> = { mill: [], buy: [] };
  for (const { group } of groups) {
    const count = aside(group.count);
    const bought = boughtOf(plan, group.name) ?? (plan.sawn.has(group.name) ? ZERO : count);
    const side = bought.times(2).gt(count) ? "buy" : "mill";
    sides[side].push({ label: group.label, all: bought.isZero() || bought.gte(count) });
  }
  return sides;
}

const RUN_PART = / \([^)]*\)$/;
const runLabel = (label: string): string => label.replace(RUN_PART, "");

/** Groups in a sentence. */
function listed(parts: readonly Part[], others: readonly Part[]): string {
  const names = [...namesOf(parts, others)].map(([label, all]) =>
    all ? lowered(label) : `most of the ${lowered(label)}`,
  );
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** The parts of one run stand under its name, unless some of them are on the other side; and whether all of it is on this one. */
function namesOf(parts: readonly Part[], others: readonly Part[]): Map<string, boolean> {
  const split = new Set(others.map(({ label }) => runLabel(label)));
  const runs = new Map<string, boolean>();
  for (const { label, all } of parts) {
    const name = split.has(runLabel(label)) ? label : runLabel(label);
    runs.set(name, all && (runs.get(name) ?? true));
  }
  return runs;
}

/** That a side was taken for want of a price, and is no comparison. */
export function uncompared(labels: readonly string[]): string {
  const priceless = labels.map((label) => ({ label, all: true }));
  return `No price is known for ${listed(priceless, [])}. So nothing says yet whether buying costs less: what the logs give of them is milled here for want of a price.`;
}
