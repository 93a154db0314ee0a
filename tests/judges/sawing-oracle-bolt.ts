/** Everything that can be made from one bolt, for the oracle: a stack of slabs, strips in them, pieces in those. */
import type { SawGroup, SawingProblem, SawLog } from "../../src/estimate/salvage/sawing-problem.js";
import { built, type Demand, dearer, merge, nothing, some, type Way, type Ways } from "./sawing-vectors.js";
import type { BoltBox, SlabBox, StripBox } from "./sawing-writer.js";

/** A strip not yet laid anywhere. */
interface Strip {
  readonly width: number;
  readonly groups: readonly SawGroup[];
}

/** A bolt of one log from `start` to `end`. */
export class Stack {
  /** Squares of distances from the axis are whole: at most `wood` is inside, at least `rot` is clear. */
  readonly wood: number;
  readonly rot: number;
  readonly midDiameter: number;
  readonly length: number;
  readonly #fillings = new Map<string, Ways<Strip>>();
  readonly #strips = new Map<string, Ways<Strip>>();

  constructor(
    readonly problem: SawingProblem,
    readonly demand: Demand,
    readonly log: SawLog,
    readonly start: number,
    readonly end: number,
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

  /** All vectors, set-up included. */
  ways(): Ways<BoltBox> {
    const { rates } = this.problem;
    const slabs = dearer(this.#stacks(), rates.wage * rates.boltHours);
    return built(slabs, (boxes) => [{ z0: this.start, z1: this.end, slabs: boxes }]);
  }

  #stacks(): Ways<SlabBox> {
    const { demand, problem } = this;
    const kerf = problem.shop.millKerf;
    const top = Math.floor(Math.sqrt(this.wood));
    const thicknesses = new Set(demand.groups.flatMap((group) => [group.thickness, group.width]));
    const arrivals = new Map<number, Map<number, Way<SlabBox>>>();
    /** Best up to and with each face; a waste slab may begin at any of them. */
    const upTo = new Map<number, Ways<SlabBox>>();
    let all = nothing<SlabBox>();
    for (let face = -top; face <= top + kerf; face += 1) {
      const here = arrivals.get(face) ?? new Map<number, Way<SlabBox>>();
      // A saw without a kerf still has to leave the face it starts from.
      const beyond = Math.max(1, kerf + (problem.shop.thinnestSlab ?? 0));
      merge(here, dearer(upTo.get(face - beyond) ?? nothing<SlabBox>(), this.#cut(face - kerf)));
      all = new Map(all);
      merge(all, here);
      upTo.set(face, all);
      for (const thickness of thicknesses) {
        const filling = this.#slab(face, thickness);
        if (filling.size === 0) continue;
        const above = face + thickness + kerf;
        const there = arrivals.get(above) ?? new Map<number, Way<SlabBox>>();
        merge(there, demand.join(here, filling, this.#cut(above - kerf)));
        arrivals.set(above, there);
      }
      arrivals.delete(face);
    }
    for (const late of arrivals.values()) merge(all, late);
    return all;
  }

  /** A cut of the stack, its kerf from `from` up. */
  #cut(from: number): number {
    const middle = from + this.problem.shop.millKerf / 2;
    return this.#milling(2 * Math.sqrt(Math.max(0, (this.midDiameter / 2) ** 2 - middle ** 2)));
  }

  #milling(width: number): number {
    const { rates, gridMm } = this.problem;
    const area = width * this.length * (Number(gridMm) / 304.8) ** 2;
    return rates.wage * (rates.millCutHours + rates.millHoursPerFt2 * area) + rates.millCashPerFt2 * area;
  }

  #ripping(thickness: number): number {
    const { rates, gridMm, shop } = this.problem;
    if (thickness > shop.deepestRip) return this.#milling(thickness);
    const feet = (this.length * Number(gridMm)) / 304.8;
    return rates.wage * (rates.ripCutHours + rates.ripHoursPerFt * feet) + rates.ripCashPerFt * feet;
  }

  #ripKerf(thickness: number): number {
    const { deepestRip, millKerf, ripKerf } = this.problem.shop;
    return thickness > deepestRip ? millKerf : ripKerf;
  }

  /** A slab [face, face + thickness] with at least one strip. */
  #slab(face: number, thickness: number): Ways<SlabBox> {
    const far = Math.max(Math.abs(face), Math.abs(face + thickness));
    const near = Math.max(0, face, -face - thickness);
    if (far * far > this.wood || thickness < (this.problem.shop.thinnestSlab ?? 0)) return new Map();
    const half = Math.floor(Math.sqrt(this.wood - far * far));
    const strips =
      near * near < this.rot
        ? this.#sides(thickness, half, Math.ceil(Math.sqrt(this.rot - near * near)))
        : this.#side(thickness, -half, half);
    return built(strips, (boxes) => [{ y0: face, y1: face + thickness, strips: boxes }]);
  }

  /**
   * Strips on both sides of a hole of half-width `hole`. Where it is narrower than a kerf the strips keep a kerf apart,
   * and where they are just a kerf apart they share the cut.
   */
  #sides(thickness: number, half: number, hole: number): Ways<StripBox> {
    const kerf = this.#ripKerf(thickness);
    const ways = new Map(this.#side(thickness, hole, half));
    for (let left = hole; left <= Math.max(hole, kerf - hole); left += 1) {
      const right = Math.max(hole, kerf - left);
      const shared = left + right === kerf ? this.#ripping(thickness) : 0;
      const lefts = built(this.#side(thickness, left, half), (boxes) =>
        boxes.map(({ x0, x1, pieces }) => ({ x0: -x1, x1: -x0, pieces })).reverse(),
      );
      merge(ways, this.demand.join(lefts, this.#side(thickness, right, half), -shared));
    }
    return ways;
  }

  /** At least one strip in [lo, hi], from `lo` up: as many rip cuts as strips, and one more. */
  #side(thickness: number, lo: number, hi: number): Ways<StripBox> {
    const row = dearer(some(this.#row(thickness, hi - lo)), this.#ripping(thickness));
    return built(row, (strips) => this.#lay(strips, thickness, lo));
  }

  #lay(strips: readonly Strip[], thickness: number, lo: number): StripBox[] {
    let x = lo;
    return strips.map(({ width, groups }) => {
      const x0 = x;
      x += width + this.#ripKerf(thickness);
      let z = this.start;
      const pieces = groups.map(({ name, length }) => {
        const z0 = z;
        z += length + this.problem.shop.crossKerf;
        return { group: name, z0, z1: z0 + length };
      });
      return { x0, x1: x0 + width, pieces };
    });
  }

  /** Strips side by side in a width of wood, a rip cut paid for each. */
  #row(thickness: number, width: number): Ways<Strip> {
    const key = `${thickness} ${width}`;
    const known = this.#fillings.get(key);
    if (known !== undefined) return known;
    const ways = nothing<Strip>();
    for (const other of this.#sections(thickness)) {
      if (other > width) continue;
      const rest = this.#row(thickness, width - other - this.#ripKerf(thickness));
      merge(ways, this.demand.join(rest, this.#strip(thickness, other), this.#ripping(thickness)));
    }
    this.#fillings.set(key, ways);
    return ways;
  }

  /** Widths of strips that a slab of this thickness can hold. */
  #sections(thickness: number): Set<number> {
    const others = this.demand.groups.flatMap((group) => [
      ...(group.thickness === thickness ? [group.width] : []),
      ...(group.width === thickness ? [group.thickness] : []),
    ]);
    const { deepestRip, thinnestSlab = 0 } = this.problem.shop;
    return new Set(others.filter((other) => thickness <= deepestRip || other >= thinnestSlab));
  }

  /** Pieces end to end in one strip, at least one. */
  #strip(thickness: number, width: number): Ways<Strip> {
    const key = `${thickness} ${width}`;
    const known = this.#strips.get(key);
    if (known !== undefined) return known;
    const { demand, problem, log, length } = this;
    const [thin, wide] = [Math.min(thickness, width), Math.max(thickness, width)];
    const serves = ({ species }: SawGroup) => species.length === 0 || species.includes(log.species);
    const fits = (group: SawGroup) => group.thickness === thin && group.width === wide && serves(group);
    const ways = new Map<number, Way<Strip>>();
    const digits = demand.groups.map(() => 0);
    const fill = (from: number, end: number, groups: readonly SawGroup[]): void => {
      const cost = groups.length * problem.rates.wage * problem.rates.crosscutHours;
      if (groups.length > 0) ways.set(demand.number(digits), { cost, parts: () => [{ width, groups }] });
      for (const [index, group] of demand.groups.entries()) {
        const after = end + (groups.length > 0 ? problem.shop.crossKerf : 0) + group.length;
        const made = digits[index] ?? 0;
        if (index < from || !fits(group) || made >= group.count || after > length) continue;
        digits[index] = made + 1;
        fill(index, after, [...groups, group]);
        digits[index] = made;
      }
    };
    fill(0, 0, []);
    this.#strips.set(key, ways);
    return ways;
  }
}
