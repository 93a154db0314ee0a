/**
 * Which groups to mill and which to buy. Joint costs (set-ups, logs, deliveries, stock boards, packs, hire with minimum
 * days) make groups depend on one another, so every mix that is tried is planned and priced as a whole route.
 *
 * A local search over sets of groups, bounded by the number of mixes priced: groups, the parts of one run together, change
 * sides while that helps. Deterministic: ties by the order of the groups.
 */

import { type Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { type FrontierPoint, supported } from "./envelope.js";
import { beyondOf, EQUAL, type MixLimits, type MixPoint, unpinnedOf } from "./mix-point.js";

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
  private readonly given: MixPoint[] = [];

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
    this.given.push(point);
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
    const known = this.bestKnown(wage, limits);
    return this.exhausted ? known : this.searched(known, wage, limits);
  }

  private tryAll(): void {
    const moves = this.moves();
    for (let set = 0; set < this.possible; set++) {
      const chosen = moves.filter((_, i) => (set >> i) % 2 === 1).flat();
      this.try(new Set([...this.question.pinned, ...chosen]));
    }
  }

  /**
   * The best mix found, searched from every mix that was given where no move away from the best of them helps: what a mill costs
   * before its first board may hide a mix that mills much from one that mills nothing.
   */
  bestFromAll(wage: Decimal): MixPoint {
    const best = this.best(wage);
    if (this.exhausted || !this.given.includes(best)) return best;
    for (const start of this.given) if (start !== best) this.searched(start, wage, this.question.limits);
    return this.bestKnown(wage, this.question.limits);
  }

  private searched(start: MixPoint, wage: Decimal, limits: MixLimits): MixPoint {
    let best = start;
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
