/**
 * Which groups to mill and which to buy. Joint costs (set-ups, logs, deliveries, stock boards, packs, hire with minimum
 * days) make groups depend on one another, so every mix that is tried is planned and priced as a whole route.
 *
 * A local search over sets of groups, bounded by the number of mixes priced: groups, the parts of one run together, change
 * sides while that helps. Deterministic: ties by the order of the groups.
 */

import { Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import type { RoutePlan } from "./route.js";

/** Cash and person-hours of one priced mix, as its cells have them. */
export interface MixPoint {
  readonly milled: ReadonlySet<string>;
  readonly cash: Decimal;
  readonly hours: Decimal;
  /** What it buys of groups that are pinned to the mill, in money as the plan was told; absent: nothing. */
  readonly unpinned?: Decimal;
  /** The plans behind it, where they are kept: with a frontier, whose points are shown. */
  readonly plan?: RoutePlan;
}

/** Limits that the user sets; a mix within them is preferred to any mix beyond them. */
export interface MixLimits {
  readonly cash?: Decimal;
  readonly hours?: Decimal;
}

/** Which groups may go either way, what bounds the mix, and how a mix is priced. */
export interface MixQuestion {
  /** Groups that may change sides, in order. */
  readonly free: readonly string[];
  /** Groups that are milled in every mix. */
  readonly pinned: readonly string[];
  readonly limits: MixLimits;
  /** Most mixes to price, those given at the start included. */
  readonly budget: number;
  /** Plans and prices a mix. */
  price(milled: ReadonlySet<string>): MixPoint;
}

/** Parts of one run share the name up to this ending. */
const PART = /-(?:end|middle|last|whole)(?:-\d+)?$/;

/** Name of the run that a group is a part of; its own where it is none. */
export const runOf = (group: string): string => group.replace(PART, "");

/** Groups by the runs that they are parts of, in the order of their first parts. */
export function runsOf(groups: readonly string[]): readonly (readonly string[])[] {
  const runs = new Map<string, string[]>();
  for (const name of groups) runs.set(runOf(name), [...(runs.get(runOf(name)) ?? []), name]);
  return [...runs.values()];
}

/** Remembers what it has priced, and stops at its budget of mixes. */
export class MixSearch {
  private readonly known = new Map<string, MixPoint>();

  constructor(private readonly question: MixQuestion) {}

  /** All mixes priced, in the order they were tried. */
  get tried(): readonly MixPoint[] {
    return [...this.known.values()];
  }

  /** True when no further mix may be priced. */
  get spent(): boolean {
    return this.known.size >= this.question.budget;
  }

  /** A mix that is priced already, such as all milled. */
  add(point: MixPoint): void {
    this.known.set(keyOf(point.milled), point);
  }

  /** How many mixes there are; what is pinned is in all of them. */
  get possible(): number {
    return 2 ** this.moves().length;
  }

  /** True when every mix was priced, so that no other can be better. */
  get exhausted(): boolean {
    return this.known.size >= this.possible;
  }

  /** The best mix found at a value of an hour: all are tried where the budget allows, else a search from the best known. */
  best(wage: Decimal, limits = this.question.limits): MixPoint {
    if (this.possible <= this.question.budget) this.tryAll();
    return this.exhausted ? this.bestKnown(wage, limits) : this.searched(wage, limits);
  }

  private tryAll(): void {
    const moves = this.moves();
    for (let set = 0; set < this.possible; set++) {
      const chosen = moves.filter((_, i) => (set >> i) % 2 === 1).flat();
      this.try(new Set([...this.question.pinned, ...chosen]));
    }
  }

  private searched(wage: Decimal, limits: MixLimits): MixPoint {
    let best = this.bestKnown(wage, limits);
    for (let improved = true; improved && !this.spent; ) {
      improved = false;
      for (const move of this.moves()) {
        const found = this.try(flipped(best.milled, move));
        if (found && this.better(found, best, wage, limits)) {
          best = found;
          improved = true;
        }
      }
    }
    return this.bestKnown(wage, limits);
  }

  private bestKnown(wage: Decimal, limits: MixLimits): MixPoint {
    return this.tried.reduce((best, point) => (this.better(point, best, wage, limits) ? point : best));
  }

  private try(milled: ReadonlySet<string>): MixPoint | undefined {
    const key = keyOf(milled);
    const known = this.known.get(key);
    if (known || this.spent) return known;
    const point = this.question.price(milled);
    this.known.set(key, point);
    return point;
  }

  /** The parts of one run change sides together: nobody mills half a fascia. */
  private moves(): readonly (readonly string[])[] {
    return runsOf(this.question.free);
  }

  /** Whether a mix is better than another: by what is pinned first, then within the limits, then by cash and hours. */
  better(a: MixPoint, b: MixPoint, wage: Decimal, limits = this.question.limits): boolean {
    const broken = unpinnedOf(a).minus(unpinnedOf(b));
    if (broken.abs().gt(EQUAL)) return broken.isNegative();
    const beyond = beyondOf(a, limits).minus(beyondOf(b, limits));
    if (beyond.abs().gt(EQUAL)) return beyond.isNegative();
    const total = ({ cash, hours }: MixPoint): Decimal => cash.plus(wage.times(hours));
    return total(a).lt(total(b).minus(EQUAL));
  }
}

const unpinnedOf = ({ unpinned }: MixPoint): Decimal => unpinned ?? ZERO;

/** How far a mix is past the limits, in shares of them. */
function beyondOf({ cash, hours }: MixPoint, limits: MixLimits): Decimal {
  const past = (value: Decimal, limit: Decimal | undefined): Decimal =>
    limit ? Decimal.max(ZERO, value.dividedBy(Decimal.max(limit, EQUAL)).minus(ONE)) : ZERO;
  return past(cash, limits.cash).plus(past(hours, limits.hours));
}

/** Below a thousandth of a cent or of an hour, two mixes cost the same. */
const EQUAL = decimal("0.00001");

const keyOf = (milled: ReadonlySet<string>): string => [...milled].sort().join(" ");

/** The whole move to one side: to the mill when any of it is bought. */
function flipped(milled: ReadonlySet<string>, move: readonly string[]): ReadonlySet<string> {
  const toMill = move.some((name) => !milled.has(name));
  const next = new Set(milled);
  for (const name of move) {
    if (toMill) next.add(name);
    else next.delete(name);
  }
  return next;
}

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
}

/** For which values of an hour a mix is the best of those priced; undefined where for none. */
export function bestFor(mix: MixPoint, priced: readonly MixPoint[]): HourRange | undefined {
  const envelope = supported([mix, ...priced]);
  const at = envelope.findIndex(({ point }) => alike(point.cash, mix.cash) && alike(point.hours, mix.hours));
  return envelope[at] && { from: envelope[at].fromWage, to: envelope[at + 1]?.fromWage };
}

const alike = (a: Decimal, b: Decimal): boolean => a.minus(b).abs().lte(EQUAL);

/** Value of an hour at which two mixes cost the same: cash between them over hours between them. */
export function tieWage(cheaper: MixPoint, quicker: MixPoint): Decimal {
  return quicker.cash.minus(cheaper.cash).dividedBy(cheaper.hours.minus(quicker.hours));
}

/**
 * Searches at both ends and at the ties between neighbours until nothing new comes up or the budget is spent.
 * @returns the envelope, cheapest first.
 */
export function searchFrontier(search: MixSearch): FrontierPoint[] {
  search.best(ZERO, NO_LIMITS);
  search.best(HIGHEST_WAGE, NO_LIMITS);
  const asked = new Set<string>();
  for (;;) {
    const next = supported(search.tried).find(({ fromWage }, i) => i > 0 && !asked.has(fromWage.toFixed(6)));
    if (!next || search.spent) return supported(search.tried);
    asked.add(next.fromWage.toFixed(6));
    search.best(next.fromWage, NO_LIMITS);
  }
}

/** From one end to the other, whatever the user would spend. */
const NO_LIMITS: MixLimits = {};

/** Far above any value of an hour: only hours count. */
const HIGHEST_WAGE = decimal("1000000");
