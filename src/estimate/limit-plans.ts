/**
 * Plans for limits that bind: mixes just beyond them planned better, plans that go piece by piece where the limits cross the frontier,
 * and, before a limit is called out of reach, all that the frontier and estimates at other values of an hour would look at.
 */
import type { MixFound } from "./best-mix.js";
import { supported } from "./compare/envelope.js";
import { beyondOf, type MixPoint } from "./compare/mix-point.js";
import { frontierPlans } from "./frontier-plans.js";
import type { BestMix } from "./mix-choice.js";
import { Decimal, decimal, ONE, ZERO } from "./quantity/decimal.js";

/** Sets of groups that are planned anew, and how far their sketches may be beyond the best so far and its limits, as a share. */
const MOST_PLANNED = 4;
const NEAR = 0.1;
/** How often a plan that goes piece by piece is made for the value of an hour at which a limit would be chosen anyway. */
const MOST_TURNS = 3;
/** Beyond the last value of an hour at which anything changes: hours alone count. */
const ABOVE_ALL = 2;

/**
 * The best mix within the user's limits; the first one where they do not bind.
 *
 * A limit on hours works like a dearer hour, one on cash like a cheaper one: where the envelope of all that was priced crosses the
 * limit, its two neighbours tie at that value of an hour, and a plan is made for it.
 */
export function withinLimits(found: MixFound, first: BestMix): BestMix {
  const { limits, wage } = found;
  if (!limits.cash && !limits.hours) return first;
  const total = ({ cash, hours }: MixPoint): Decimal => cash.plus(wage.times(hours));
  const all = first.priced;
  const cheaper = all
    .filter((point) => total(point).lt(total(first.point)) && beyondOf(point, limits).gt(0))
    .toSorted((a, b) => total(a).cmp(total(b)));
  const beyond = beyondOf(first.point, limits);
  if (cheaper.length === 0 && beyond.isZero()) return first;
  // However far out of reach a limit is, what comes as near is looked at.
  const near = cheaper.filter((point) => beyondOf(point, limits).lte(beyond.plus(ONE.plus(beyond).times(NEAR))));
  const made = near
    .slice(0, MOST_PLANNED)
    .map(({ milled, plan }) => found.price(found.plan(milled, plan?.hired ?? false)));
  const points = () => [...all, ...made];
  const jointAt = found.jointChain();
  const asked = new Set<string>();
  const cross = (): void => {
    const wages = crossings(points(), found).filter((one) => !asked.has(one.toFixed(2)));
    for (const one of wages) {
      asked.add(one.toFixed(2));
      made.push(...jointAt(one));
    }
  };
  for (let turn = 0; turn < MOST_TURNS; turn++) cross();
  const outOfReach = (): boolean => beyondOf(first.among(made).point, limits).gt(0);
  const further = [
    () => frontierPlans(found),
    ...otherWages(points(), limits).map((one) => () => found.jointChain()(one)),
  ];
  for (const look of further) {
    if (!outOfReach()) break;
    made.push(...look());
    cross();
  }
  return first.among(made);
}

/** Steps of a decade in which people say what an hour is worth to them. */
const ROUND = [1, 2, 5] as const;
/** Up to which share of where buying takes over little cash counts for much. Assumption. */
const LOW = 0.5;
/** How far above it few hours do. Assumption: nothing changes further up. */
const HIGH = [5, 20, 100] as const;

/**
 * Values of an hour at which an estimate of the same request is not to keep what is called out of reach here: from 0 on round ones for
 * a limit on cash, very high ones for one on hours.
 */
function otherWages(points: readonly MixPoint[], { cash, hours }: MixFound["limits"]): readonly Decimal[] {
  const last = supported(points).at(-1)?.fromWage ?? ZERO;
  if (last.lte(0)) return [];
  const ten = decimal(10).pow(last.log(10).floor());
  const round = [ten.dividedBy(10), ten].flatMap((unit) => ROUND.map((step) => unit.times(step)));
  return [
    ...(cash ? [ZERO, ...round.filter((wage) => wage.lt(last.times(LOW)))] : []),
    ...(hours ? HIGH.map((times) => last.times(times)) : []),
  ];
}

/** Values of an hour at which the envelope crosses the limits; the end of it that comes nearest where it does not reach one. */
function crossings(points: readonly MixPoint[], { limits: { cash, hours } }: MixFound): readonly Decimal[] {
  const envelope = supported(points);
  const last = envelope.at(-1)?.fromWage ?? ZERO;
  // From the least cash to the fewest hours: the first point within the hours, and the first beyond the cash.
  const quick = hours && envelope.find(({ point }) => point.hours.lte(hours));
  const dear = cash && envelope.find(({ point }) => point.cash.gt(cash));
  return [...(hours ? [quick ? quick.fromWage : last.times(ABOVE_ALL)] : []), ...(dear ? [dear.fromWage] : [])].filter(
    (wage, i, all) => Decimal.max(wage, ZERO).eq(wage) && all.indexOf(wage) === i,
  );
}
