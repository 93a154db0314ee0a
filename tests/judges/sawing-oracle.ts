/**
 * The exact optimum of tiny sawing questions, found in another way than the planner finds its plans: one dynamic
 * program over vectors of pieces made (capped at what is wanted), along the strips of a slab, the faces of a stack, the
 * bolts of a log, and the logs. No prices of the pieces steer it; what is bought is settled last.
 *
 * Plans considered: bolts laid from the butt end, each as long as some pieces with crosscuts between; parallel slabs
 * as thick as some group's thickness or width; strips of a group's other dimension, side by side (on either side of the rot);
 * pieces of the strip's own section end to end; everything on whole grid steps. Heart rules and wane are not known here.
 */
import type { SawGroup, SawingProblem, SawLog } from "../../src/estimate/salvage/sawing-problem.js";

/** The least cost at the wage, and what is bought then. */
export interface ExactSawing {
  readonly cost: number;
  readonly buy: Readonly<Record<string, number>>;
}

/** Most vectors of pieces made, and most sums of two of them, before the question is called too large. */
const MOST_VECTORS = 50_000;
const MOST_SUMS = 150_000_000;
/** Most lengths of bolts. */
const MOST_LENGTHS = 200;

class TooLarge extends Error {}

/** Cost of each vector that can be made; vectors are numbered with one mixed-radix digit a group. */
type Costs = ReadonlyMap<number, number>;
const NOTHING: Costs = new Map([[0, 0]]);

/** Adds vectors, each digit capped at the count wanted. */
class Demand {
  readonly size: number;
  readonly #radix: readonly number[];
  #sums = 0;

  constructor(readonly groups: readonly SawGroup[]) {
    this.#radix = groups.map((group) => group.count + 1);
    this.size = this.#radix.reduce((product, base) => product * base, 1);
    if (this.size > MOST_VECTORS) throw new TooLarge();
  }

  digits(vector: number): number[] {
    let rest = vector;
    return this.#radix.map((base) => {
      const digit = rest % base;
      rest = (rest - digit) / base;
      return digit;
    });
  }

  number(digits: readonly number[]): number {
    return this.#radix.reduceRight((sum, base, index) => sum * base + Math.min(base - 1, digits[index] ?? 0), 0);
  }

  /** Every vector of one with every vector of the other. */
  join(some: Costs, others: Costs, extra = 0): Map<number, number> {
    this.#sums += some.size * others.size;
    if (this.#sums > MOST_SUMS) throw new TooLarge();
    const joined = new Map<number, number>();
    for (const [vector, cost] of others) {
      for (const [other, more] of some) keep(joined, this.#add(other, vector), cost + more + extra);
    }
    return joined;
  }

  #add(a: number, b: number): number {
    let sum = 0;
    let unit = 1;
    let [restA, restB] = [a, b];
    for (const base of this.#radix) {
      const [digitA, digitB] = [restA % base, restB % base];
      sum += Math.min(base - 1, digitA + digitB) * unit;
      unit *= base;
      restA = (restA - digitA) / base;
      restB = (restB - digitB) / base;
    }
    return sum;
  }
}

function keep(costs: Map<number, number>, vector: number, cost: number): void {
  const known = costs.get(vector);
  if (known === undefined || cost < known) costs.set(vector, cost);
}

function merge(costs: Map<number, number>, more: Costs): void {
  for (const [vector, cost] of more) keep(costs, vector, cost);
}

/** Cost with the price `part` on top, for all vectors. */
function dearer(costs: Costs, part: number): Costs {
  return new Map([...costs].map(([vector, cost]) => [vector, cost + part]));
}

/**
 * The optimum over all plans of the family above.
 *
 * @returns "too large" beyond some tens of thousands of vectors; "outside" with heart rules or wane.
 */
export function exactSawing(problem: SawingProblem): ExactSawing | "too large" | "outside" {
  if (problem.groups.some((group) => group.heart !== "any" || group.wane > 0)) return "outside";
  const price = ({ buy }: SawGroup) => buy.cash + problem.rates.wage * buy.hours;
  const wanted = problem.groups.filter((group) => price(group) > 0);
  try {
    const demand = new Demand(wanted);
    const longest = Math.min(problem.shop.longestBolt, Math.max(0, ...problem.logs.map((log) => log.length)));
    const lengths = boltLengths(wanted, problem.shop.crossKerf, longest);
    let made: Costs = NOTHING;
    for (const log of problem.logs) made = demand.join(made, new Bucking(problem, demand, log, lengths).costs());
    return settle(problem, demand, made, price);
  } catch (thrown) {
    if (thrown instanceof TooLarge) return "too large";
    throw thrown;
  }
}

function settle(problem: SawingProblem, demand: Demand, made: Costs, price: (group: SawGroup) => number): ExactSawing {
  const plans = [...made].map(([vector, cost]) => {
    const digits = demand.digits(vector);
    const short = new Map(demand.groups.map((group, index) => [group.name, group.count - (digits[index] ?? 0)]));
    const buy = problem.groups.map((group) => [group, short.get(group.name) ?? group.count] as const);
    const bought = buy.reduce((sum, [group, count]) => sum + count * price(group), 0);
    const listed = buy.filter(([, count]) => count > 0).map(([group, count]) => [group.name, count] as const);
    return { cost: cost + bought, buy: Object.fromEntries(listed) };
  });
  return plans.reduce((best, plan) => (plan.cost < best.cost ? plan : best));
}

/** All lengths of some pieces end to end with crosscuts between them. */
function boltLengths(groups: readonly SawGroup[], kerf: number, longest: number): number[] {
  const reached = new Set<number>();
  const open = [-kerf];
  for (let from = open.pop(); from !== undefined; from = open.pop()) {
    for (const { length } of groups) {
      const to = from + kerf + length;
      if (to > longest || reached.has(to)) continue;
      reached.add(to);
      open.push(to);
      if (reached.size > MOST_LENGTHS) throw new TooLarge();
    }
  }
  return [...reached].sort((a, b) => a - b);
}

/** One log: bolts from the butt end. */
class Bucking {
  constructor(
    readonly problem: SawingProblem,
    readonly demand: Demand,
    readonly log: SawLog,
    readonly lengths: readonly number[],
  ) {}

  costs(): Costs {
    const { rates, shop } = this.problem;
    const ends = new Map<number, Map<number, number>>([[this.log.length, new Map(NOTHING)]]);
    const all = new Map(NOTHING);
    // From the butt down: every end is reached from a larger one.
    for (let end = this.log.length; end > 0; end -= 1) {
      const made = ends.get(end);
      if (made === undefined) continue;
      merge(all, made);
      for (const length of this.lengths) {
        const start = end - length;
        if (start < 0) break;
        const after = new Map(made); // the bolt may be thrown away
        merge(after, this.demand.join(made, this.bolt(start, end)));
        const next = ends.get(start - shop.buckKerf) ?? new Map();
        merge(next, after);
        ends.set(start - shop.buckKerf, next);
        merge(all, after);
      }
    }
    const preparing = rates.logCash + rates.wage * rates.logHours;
    return new Map([...dearer(all, preparing), [0, 0]]);
  }

  bolt(start: number, end: number): Costs {
    const { log, problem } = this;
    const diameter = (z: number) => log.smallDiameter * log.length + (log.largeDiameter - log.smallDiameter) * z;
    const { throat } = problem.shop;
    if (throat > 0 && Math.max(diameter(start), diameter(end)) + 2 * log.bark * log.length > throat * log.length) {
      return new Map();
    }
    return new Stack(problem, this.demand, log, start, end).costs();
  }
}

/** One bolt. */
class Stack {
  /** Squares of distances from the axis are whole: at most `wood` is inside, at least `rot` is clear. */
  readonly wood: number;
  readonly rot: number;
  readonly midDiameter: number;
  readonly length: number;
  readonly #fillings = new Map<string, Costs>();
  readonly #strips = new Map<string, Costs>();

  constructor(
    readonly problem: SawingProblem,
    readonly demand: Demand,
    readonly log: SawLog,
    start: number,
    end: number,
  ) {
    this.length = end - start;
    // Times L², to stay whole.
    const whole = BigInt(log.length) ** 2n;
    const line = (from: number, to: number, z: number) => BigInt(log.length * (from * log.length + (to - from) * z));
    const sweep = BigInt(log.sweep) * BigInt(this.length) ** 2n;
    const circle = line(log.smallDiameter, log.largeDiameter, start) - sweep;
    this.wood = circle <= 0n ? 0 : Number(circle ** 2n / (4n * whole ** 2n));
    const { smallEnd, largeEnd } = log.rot;
    const widest = line(smallEnd, largeEnd, largeEnd > smallEnd ? end : start);
    const hole = (widest + sweep) ** 2n;
    const over = 4n * whole ** 2n;
    this.rot = smallEnd === 0 && largeEnd === 0 ? 0 : Number((hole + over - 1n) / over);
    this.midDiameter = log.smallDiameter + ((log.largeDiameter - log.smallDiameter) * (start + end)) / (2 * log.length);
  }

  /** Everything that can be made from the bolt, set-up included. */
  costs(): Costs {
    const { demand, problem } = this;
    const kerf = problem.shop.millKerf;
    const top = Math.floor(Math.sqrt(this.wood));
    const thicknesses = new Set(demand.groups.flatMap((group) => [group.thickness, group.width]));
    const arrivals = new Map<number, Map<number, number>>();
    /** Best up to and with each face; a waste slab may begin at any of them. */
    const upTo = new Map<number, Costs>();
    let all: Map<number, number> = new Map(NOTHING);
    for (let face = -top; face <= top + kerf; face += 1) {
      const here = arrivals.get(face) ?? new Map<number, number>();
      // A saw without a kerf still has to leave the face it starts from.
      merge(here, dearer(upTo.get(face - Math.max(1, kerf)) ?? NOTHING, this.cut(face - kerf)));
      all = new Map(all);
      merge(all, here);
      upTo.set(face, all);
      for (const thickness of thicknesses) {
        const filling = this.slab(face, thickness);
        if (filling.size === 0) continue;
        const above = face + thickness + kerf;
        const there = arrivals.get(above) ?? new Map<number, number>();
        merge(there, demand.join(here, filling, this.cut(above - kerf)));
        arrivals.set(above, there);
      }
      arrivals.delete(face);
    }
    for (const late of arrivals.values()) merge(all, late);
    return dearer(all, problem.rates.wage * problem.rates.boltHours);
  }

  /** A cut of the stack, its kerf from `from` up. */
  cut(from: number): number {
    const middle = from + this.problem.shop.millKerf / 2;
    return this.milling(2 * Math.sqrt(Math.max(0, (this.midDiameter / 2) ** 2 - middle ** 2)));
  }

  milling(width: number): number {
    const { rates, gridMm } = this.problem;
    const area = width * this.length * (Number(gridMm) / 304.8) ** 2;
    return rates.wage * (rates.millCutHours + rates.millHoursPerFt2 * area) + rates.millCashPerFt2 * area;
  }

  ripping(thickness: number): number {
    const { rates, gridMm, shop } = this.problem;
    if (thickness > shop.deepestRip) return this.milling(thickness);
    const feet = (this.length * Number(gridMm)) / 304.8;
    return rates.wage * (rates.ripCutHours + rates.ripHoursPerFt * feet) + rates.ripCashPerFt * feet;
  }

  /** A slab [face, face + thickness]; no vectors at all where it is not worth a look. */
  slab(face: number, thickness: number): Costs {
    const far = Math.max(Math.abs(face), Math.abs(face + thickness));
    const near = Math.max(0, face, -face - thickness);
    if (far * far > this.wood) return new Map();
    const half = Math.floor(Math.sqrt(this.wood - far * far));
    const costs =
      near * near < this.rot
        ? this.sides(thickness, half, Math.ceil(Math.sqrt(this.rot - near * near)))
        : this.side(thickness, 2 * half);
    return costs.size === 1 ? new Map() : costs;
  }

  /**
   * Strips on both sides of a hole of half-width `hole`. Where it is narrower than a kerf the strips keep a kerf apart,
   * and where they are just a kerf apart they share the cut.
   */
  sides(thickness: number, half: number, hole: number): Costs {
    const kerf = this.ripKerf(thickness);
    const some = (width: number) => new Map([...this.side(thickness, width)].filter(([vector]) => vector !== 0));
    const costs = new Map(this.side(thickness, half - hole));
    for (let left = hole; left <= Math.max(hole, kerf - hole); left += 1) {
      const right = Math.max(hole, kerf - left);
      const shared = left + right === kerf ? this.ripping(thickness) : 0;
      merge(costs, this.demand.join(some(half - left), some(half - right), -shared));
    }
    return costs;
  }

  ripKerf(thickness: number): number {
    return thickness > this.problem.shop.deepestRip ? this.problem.shop.millKerf : this.problem.shop.ripKerf;
  }

  /** Strips side by side in a width of full-thick wood: as many rip cuts as strips, and one more if there are any. */
  side(thickness: number, width: number): Costs {
    const costs = new Map(dearer(this.row(thickness, width), this.ripping(thickness)));
    costs.set(0, 0);
    return costs;
  }

  row(thickness: number, width: number): Costs {
    const key = `${thickness} ${width}`;
    const known = this.#fillings.get(key);
    if (known !== undefined) return known;
    const kerf = this.ripKerf(thickness);
    const costs = new Map(NOTHING);
    for (const other of this.sections(thickness)) {
      if (other > width) continue;
      const strip = this.strip(thickness, other);
      merge(costs, this.demand.join(this.row(thickness, width - other - kerf), strip, this.ripping(thickness)));
    }
    this.#fillings.set(key, costs);
    return costs;
  }

  /** Widths of strips that a slab of this thickness can hold. */
  sections(thickness: number): Set<number> {
    const others = this.demand.groups.flatMap((group) => [
      ...(group.thickness === thickness ? [group.width] : []),
      ...(group.width === thickness ? [group.thickness] : []),
    ]);
    return new Set(others);
  }

  /** Pieces end to end in one strip; the empty strip is not listed. */
  strip(one: number, other: number): Costs {
    const key = `${one} ${other}`;
    const known = this.#strips.get(key);
    if (known !== undefined) return known;
    const { demand, problem, log, length } = this;
    const [thickness, width] = [Math.min(one, other), Math.max(one, other)];
    const fits = (group: SawGroup) =>
      group.thickness === thickness &&
      group.width === width &&
      (group.species.length === 0 || group.species.includes(log.species));
    const costs = new Map<number, number>();
    const digits = demand.groups.map(() => 0);
    const fill = (from: number, end: number): void => {
      const pieces = digits.reduce((sum, digit) => sum + digit, 0);
      if (pieces > 0) costs.set(demand.number(digits), pieces * problem.rates.wage * problem.rates.crosscutHours);
      for (const [index, group] of demand.groups.entries()) {
        const after = end + (pieces > 0 ? problem.shop.crossKerf : 0) + group.length;
        const made = digits[index] ?? 0;
        if (index < from || !fits(group) || made >= group.count || after > length) continue;
        digits[index] = made + 1;
        fill(index, after);
        digits[index] = made;
      }
    };
    fill(0, 0);
    this.#strips.set(key, costs);
    return costs;
  }
}
