/** What a set of priced mixes tells: the lower envelope of cash against hours, where one mix stands in it, and what can be had. */
import { Decimal, ZERO } from "../quantity/decimal.js";
import { EQUAL, type MixLimits, type MixPoint, unpinnedOf } from "./mix-point.js";

/** Those of the points that buy least of what is pinned. */
function keepingMost(points: readonly MixPoint[]): MixPoint[] {
  if (points.length === 0) return [];
  const least = Decimal.min(...points.map(unpinnedOf)).plus(EQUAL);
  return points.filter((point) => unpinnedOf(point).lte(least));
}

/** One stretch of the frontier. */
export interface FrontierPoint {
  readonly point: MixPoint;
  /** Value of an hour from which on, upwards, this mix is the best of those found; the last one's is 0. */
  readonly fromWage: Decimal;
}

/**
 * Supported points of cash against hours among priced mixes: the lower envelope of cash + wage × hours, from the
 * most hours (best at a wage of nothing) to the fewest. Of those alone that keep most to what is pinned.
 * @see Aneja and Nair, "Bicriteria transportation problem", Management Science 25 (1979).
 */
export function supported(points: readonly MixPoint[]): FrontierPoint[] {
  const sorted = keepingMost(points).sort((a, b) => a.cash.cmp(b.cash) || a.hours.cmp(b.hours));
  const hull: MixPoint[] = [];
  for (const point of sorted) {
    if (hull.length > 0 && point.hours.gte((hull.at(-1) as MixPoint).hours.minus(EQUAL))) continue;
    while (
      hull.length > 1 &&
      tieWage(hull.at(-2) as MixPoint, hull.at(-1) as MixPoint).gte(tieWage(hull.at(-1) as MixPoint, point))
    )
      hull.pop();
    hull.push(point);
  }
  return hull.map((point, i) => ({ point, fromWage: i === 0 ? ZERO : tieWage(hull[i - 1] as MixPoint, point) }));
}

/** At one value of an hour, no mix totals less. */
export interface ProvenLeast {
  readonly wage: Decimal;
  readonly least: Decimal;
}

/** How far any mix may lie below a frontier at most, as a share of its total, over values of an hour. */
export interface FrontierGap {
  readonly from: Decimal;
  readonly to: Decimal;
  readonly gap: Decimal;
}

/**
 * What is proven of a frontier between the values of an hour at which something is. The least total of all mixes is concave in the
 * value of an hour, being the least of straight lines: between two of them it lies above the chord of what is proven at both. So
 * does the frontier, and the share between the two is greatest where either turns.
 * @returns undefined where something is proven at fewer than two values.
 */
export function frontierGap(
  frontier: readonly FrontierPoint[],
  proven: readonly ProvenLeast[],
): FrontierGap | undefined {
  const known = proven
    .toSorted((a, b) => a.wage.cmp(b.wage))
    .filter(({ wage }, i, all) => i === 0 || !wage.eq((all[i - 1] as ProvenLeast).wage));
  const [first, last] = [known[0], known.at(-1)];
  if (!first || !last || first === last || frontier.length === 0) return undefined;
  const turns = frontier.map(({ fromWage }) => fromWage).filter((wage) => wage.gt(first.wage) && wage.lt(last.wage));
  const shares = [...known.map(({ wage }) => wage), ...turns].map((wage) => {
    const total = Decimal.min(...frontier.map(({ point }) => point.cash.plus(wage.times(point.hours))));
    return total.gt(0) ? total.minus(chordAt(known, wage)).dividedBy(total) : ZERO;
  });
  return { from: first.wage, to: last.wage, gap: Decimal.max(ZERO, ...shares) };
}

/** @param known - By the value of an hour, from one below to one above. */
function chordAt(known: readonly ProvenLeast[], wage: Decimal): Decimal {
  const at = Math.max(
    1,
    known.findIndex((one) => one.wage.gte(wage)),
  );
  const [a, b] = [known[at - 1] as ProvenLeast, known[at] as ProvenLeast];
  const share = wage.minus(a.wage).dividedBy(b.wage.minus(a.wage));
  return a.least.plus(share.times(b.least.minus(a.least)));
}

/** Values of an hour, from one up to another; without the other, any above. */
export interface HourRange {
  readonly from: Decimal;
  readonly to: Decimal | undefined;
}

/** How the best mix stands among all that were priced. */
export interface MixStanding {
  /** For which values of an hour it is the best of them; undefined where limits chose it. */
  readonly hour: HourRange | undefined;
  /** The same of buying everything. */
  readonly buying: HourRange | undefined;
  /** Whether the mixes between were searched for every value of an hour. */
  readonly frontier: boolean;
  /** By how much less the best plan totals that mixes two measures in a run; undefined where none does. */
  readonly mixedSizes: Decimal | undefined;
  /** What can be had of all that was priced. */
  readonly reach: Reach;
}

/** The least cash and the fewest hours of what was priced; and each of them within the limit on the other, where one is set and kept. */
export interface Reach {
  readonly cash: Decimal;
  readonly hours: Decimal;
  readonly cashWithinHours: Decimal | undefined;
  readonly hoursWithinCash: Decimal | undefined;
}

/** Of the mixes that keep most to what is pinned. */
export function reachOf(priced: readonly MixPoint[], limits: MixLimits): Reach {
  const points = keepingMost(priced);
  const least = (of: "cash" | "hours", among: readonly MixPoint[]) => Decimal.min(...among.map((point) => point[of]));
  const within = (of: "cash" | "hours") => points.filter((point) => limits[of] && point[of].lte(limits[of]));
  const [quick, cheap] = [within("hours"), within("cash")];
  return {
    cash: least("cash", points),
    hours: least("hours", points),
    cashWithinHours: quick.length > 0 ? least("cash", quick) : undefined,
    hoursWithinCash: cheap.length > 0 ? least("hours", cheap) : undefined,
  };
}

/** For which values of an hour a mix is the best of those priced; undefined where for none. */
export function bestFor(mix: MixPoint, priced: readonly MixPoint[]): HourRange | undefined {
  const envelope = supported([mix, ...priced]);
  const at = envelope.findIndex(({ point }) => alike(point.cash, mix.cash) && alike(point.hours, mix.hours));
  return envelope[at] && { from: envelope[at].fromWage, to: envelope[at + 1]?.fromWage };
}

const alike = (a: Decimal, b: Decimal): boolean => a.minus(b).abs().lte(EQUAL);

type Cost = Pick<MixPoint, "cash" | "hours">;

/** Value of an hour at which two mixes cost the same: cash between them over hours between them. */
export function tieWage(cheaper: Cost, quicker: Cost): Decimal {
  return quicker.cash.minus(cheaper.cash).dividedBy(cheaper.hours.minus(quicker.hours));
}
