/**
 * The best bolts of each log at one set of prices.
 *
 * Where many bolts of many logs are asked for, each is first given a worth that is too high: that of a bolt as long,
 * a little thicker, straight and sound, which the logs share. Only the bolts that this puts on a best path are reckoned
 * exactly, until a best path has no other.
 */
import type { BoltPattern } from "../sawing-pattern.js";
import { type BoltTable, boltTable } from "./bolt-table.js";
import type { Arc, LogTable } from "./bucking.js";
import type { Job } from "./job.js";
import { Onward } from "./paths.js";
import { SlabGains } from "./slab-gains.js";
import type { SlabKind } from "./slab-kinds.js";
import { SlabWorth } from "./slab-worth.js";
import { StackProgram } from "./stack.js";
import { StripValues } from "./strip-values.js";

/** Steps of diameter between two shared bolts. Assumption: measured best among 2, 4 and 8. */
const SHARED_STEP = 8;

/** Stacks reckoned in one unit of work, so that a unit takes as long here as in a walk. Measured. */
export const STACKS_A_UNIT = 4;

/** Tables of shared bolts, made once for a job: they do not hang on prices. */
export class SharedBolts {
  readonly #tables = new Map<number, BoltTable>();

  constructor(readonly job: Job) {}

  /** Names the shared bolt that is worth no less than an arc's. */
  key({ rules, length, shape }: Arc): number {
    const size = Math.ceil((2 * shape.radius) / SHARED_STEP);
    return (size * this.job.lengths.length + length) * 256 + rules.id;
  }

  /** Straight and sound, at most a step thicker; its cuts are as short as the thinnest that it stands for can have. */
  table(key: number, { rules, length, shape }: Arc): BoltTable {
    let table = this.#tables.get(key);
    if (table === undefined) {
      const size = Math.ceil((2 * shape.radius) / SHARED_STEP);
      const pithRadius = this.job.problem.shop.pith / 2;
      const bolt = {
        length: shape.length,
        radius: (size * SHARED_STEP) / 2,
        rotRadius: 0,
        pithRadius,
        midDiameter: (size - 1) * SHARED_STEP,
      };
      table = boltTable(this.job, rules, bolt, length);
      this.#tables.set(key, table);
    }
    return table;
  }
}

/** A log's best bolts. */
export interface BestBolts {
  /** Worth of the pieces less the work, getting the log ready included; may be below 0. */
  readonly value: number;
  readonly arcs: readonly Arc[];
}

/** The best path among some bolts, by their numbers, and its worth. */
export interface Lowered {
  readonly value: number;
  readonly path: readonly number[];
}

/** Prices logs at one set of prices of the pieces, then perhaps at another: its room is worth keeping. */
export class LogPricing {
  readonly worth: SlabWorth;
  readonly gains: SlabGains;
  readonly #program: StackProgram;
  readonly #shared = new Map<number, number>();

  constructor(
    readonly job: Job,
    price: ArrayLike<number>,
  ) {
    this.worth = new SlabWorth(job, new StripValues(job));
    this.gains = new SlabGains(job, this.worth);
    this.#program = new StackProgram(job, this.gains);
    this.reprice(price);
  }

  /** Begins anew at other prices: nothing that was asked of it before holds. */
  reprice(price: ArrayLike<number>): void {
    this.gains.reprice(price);
    this.#shared.clear();
    this.#program.reprice();
  }

  /** Units of work so far. */
  get work(): number {
    return this.#program.work / STACKS_A_UNIT;
  }

  /** Worth of a bolt, set-up paid; never below 0, for it may be thrown away. */
  arcValue(arc: Arc): number {
    return Math.max(0, this.#program.value(arc.table) - this.job.prices.bolt);
  }

  /** Worth of each of some bolts. */
  arcValues(arcs: readonly Arc[]): Float64Array {
    const values = new Float64Array(arcs.length);
    for (let i = 0; i < arcs.length; i++) values[i] = this.arcValue(arcs[i] as Arc);
    return values;
  }

  /** Best bolts out of some of a log's. */
  bestOf(log: LogTable, arcs: readonly Arc[], values = this.arcValues(arcs)): BestBolts {
    const steps = new Onward(log, arcs, values);
    return { value: steps.best - log.price, arcs: steps.path().map((i) => arcs[i] as Arc) };
  }

  /**
   * The same where some prices have fallen and none has risen: no bolt is worth more than it was, and only those are
   * reckoned that a best path might still hold.
   *
   * @param most - What each of the bolts was worth; the worths reckoned anew are put in its place.
   * @param exact - Which bolts need not be reckoned; those that are join them.
   */
  lowered(log: LogTable, arcs: readonly Arc[], most: Float64Array, exact: Uint8Array): Lowered {
    const steps = new Onward(log, arcs, most);
    for (;;) {
      const path = steps.path();
      const open = path.filter((i) => exact[i] === 0);
      if (open.length === 0) return { value: steps.best - log.price, path };
      for (const i of open) {
        exact[i] = 1;
        most[i] = this.arcValue(arcs[i] as Arc);
      }
      steps.settle(open);
    }
  }

  /** Best bolts out of all of a log's, by way of shared bolts. @returns as well every bolt that was reckoned exactly. */
  best(log: LogTable, shared: SharedBolts): BestBolts & { readonly seen: readonly Arc[] } {
    const { arcs } = log;
    const values = this.optimistic(arcs, shared);
    const exact = new Uint8Array(values.length);
    const seen = () => arcs.filter((_, i) => exact[i] === 1);
    const steps = new Onward(log, arcs, values);
    for (;;) {
      const path = steps.path();
      const open = path.filter((i) => exact[i] === 0);
      if (open.length === 0) {
        return { value: steps.best - log.price, arcs: path.map((i) => arcs[i] as Arc), seen: seen() };
      }
      for (const i of open) {
        exact[i] = 1;
        values[i] = this.arcValue(arcs[i] as Arc);
      }
      steps.settle(open);
      // No path is worth the log even so: the rest need not be known.
      if (steps.best <= log.price) return { value: 0, arcs: [], seen: seen() };
    }
  }

  /** Worth of each of some bolts, too high if anything. */
  optimistic(arcs: readonly Arc[], shared: SharedBolts): Float64Array {
    const values = new Float64Array(arcs.length);
    for (let i = 0; i < arcs.length; i++) values[i] = this.#optimistic(arcs[i] as Arc, shared);
    return values;
  }

  #optimistic(arc: Arc, shared: SharedBolts): number {
    const key = shared.key(arc);
    let value = this.#shared.get(key);
    if (value === undefined) {
      value = Math.max(0, this.#program.value(shared.table(key, arc)) - this.job.prices.bolt);
      this.#shared.set(key, value);
    }
    return value;
  }

  /** The slabs of the best stack of each bolt, with their strips and pieces. */
  patterns(arcs: readonly Arc[]): BoltPattern[] {
    return arcs.map(({ table, z0, shape }) => {
      const slabs = this.#program.slabs(table).flatMap(({ kind, y0 }) => {
        const use = this.worth.use(table, kind, y0);
        // Worth is reckoned a cut too kindly beside a narrow hole: such a slab may be waste after all.
        if (use === null) return [];
        const { thickness } = this.job.slabs[kind] as SlabKind;
        return [{ y0, thickness, strips: this.worth.strips(table, kind, use) }];
      });
      return { z0, z1: z0 + shape.length, slabs };
    });
  }
}

/** Pricings of a job that are used again: new arrays for each would cost more than what is written into them. */
export class Pricings {
  readonly #spare: LogPricing[] = [];

  constructor(readonly job: Job) {}

  /** One at some prices; `free` it when nothing more is asked of it. */
  at(price: ArrayLike<number>): LogPricing {
    const spare = this.#spare.pop();
    if (spare === undefined) return new LogPricing(this.job, price);
    spare.reprice(price);
    return spare;
  }

  free(pricing: LogPricing): void {
    this.#spare.push(pricing);
  }
}
