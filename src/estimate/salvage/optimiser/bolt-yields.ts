/**
 * Every yield of a bolt, and of a log, that may still be part of a plan cheaper than some bound allows: label
 * correcting along the faces of a stack and the places of a log (resource-constrained shortest paths: Irnich &
 * Desaulniers 2005), cut off by what could be added at most.
 */
import { beyondWaste } from "../bolt.js";
import type { BoltPattern, SlabPattern } from "../sawing-pattern.js";
import type { BoltTable } from "./bolt-table.js";
import type { Arc, LogTable } from "./bucking.js";
import type { Budget } from "./counted-work.js";
import type { Job } from "./job.js";
import { completions, cutAt } from "./label-walk.js";
import type { LogPricing } from "./log-pricing.js";
import { Onward, toward } from "./paths.js";
import type { SlabKind } from "./slab-kinds.js";
import type { SlabSource, SlabYield, SlabYields } from "./slab-yields.js";
import { NOTHING, type Yield, type YieldCode } from "./yield-code.js";

/** Slabs so far, the last one first; worth at the prices less all cuts. */
interface Stacked extends Yield {
  readonly value: number;
  readonly slab: {
    readonly s: number;
    readonly y0: number;
    readonly source: SlabSource;
    readonly yielded: SlabYield;
  } | null;
  readonly before: Stacked | null;
}

/** Bolts of a log so far, the last one first; worth at the prices less all work, getting the log ready included. */
export interface LogYield extends Yield {
  readonly value: number;
  readonly arc: Arc | null;
  readonly stack: Stacked | null;
  readonly before: LogYield | null;
}

/** Steps that take about as long as one stack of the dynamic program. Measured. */
const STEPS_A_STACK = 400;

/** Yields of logs at one set of prices. */
export class BoltYields {
  readonly #pricing: LogPricing;

  constructor(
    readonly job: Job,
    pricing: LogPricing,
    readonly slabs: SlabYields,
    readonly code: YieldCode,
    readonly budget: Budget,
  ) {
    this.#pricing = pricing;
  }

  /**
   * All yields of a log that are worth `least` or more, each once, best first; null when the work ran out.
   *
   * @param values - What each of its bolts is worth at most.
   */
  ofLog(log: LogTable, values: Float64Array, least: number): LogYield[] | null {
    const { after } = new Onward(log, log.arcs, values);
    const before = toward(log, log.arcs, values);
    const { prices } = this.job;
    const places: Map<number, LogYield>[] = Array.from({ length: log.places }, () => new Map());
    const root = { ...NOTHING, value: -log.price, arc: null, stack: null, before: null };
    places[0]?.set(0, root);
    const ends = new Map<number, LogYield>();
    let [a, k] = [0, 0];
    for (let place = 0; place < log.places; place++) {
      const here = places[place] as Map<number, LogYield>;
      for (; log.skips[k]?.from === place; k++) {
        const onto = places[log.skips[k]?.to as number] as Map<number, LogYield>;
        for (const plan of here.values()) put(onto, plan);
      }
      for (; log.arcs[a]?.from === place; a++) {
        const arc = log.arcs[a] as Arc;
        const rest = arc.to >= 0 ? (after[arc.to] as number) : 0;
        const lead = (before[place] as number) - log.price - prices.bolt + rest;
        if (here.size === 0 || lead + (values[a] as number) + prices.bolt < least - NOISE) continue;
        const stacks = this.#stacks(arc.table, least - lead);
        if (stacks === null) return null;
        for (const plan of here.values()) {
          const need = least - (plan.value - prices.bolt + rest);
          for (const stack of stacks) {
            if (stack.value < need - NOISE) break;
            const [lo, hi] = [plan.lo + stack.lo, plan.hi + stack.hi];
            if (!this.code.fits(lo, hi)) continue;
            const key = plan.key + stack.key;
            const value = plan.value - prices.bolt + stack.value;
            const next = { lo, hi, key, value, arc, stack, before: plan };
            if (value >= least - NOISE) put(ends, next);
            if (arc.to >= 0) put(places[arc.to] as Map<number, LogYield>, next);
          }
          if (!this.budget.spend(Math.ceil(stacks.length / STEPS_A_STACK))) return null;
        }
      }
    }
    return [...ends.values()].sort((x, y) => y.value - x.value || x.key - y.key);
  }

  /** All yields of a bolt's stack that are worth `least` or more, best first. */
  #stacks(table: BoltTable, least: number): Stacked[] | null {
    const { job, code } = this;
    const kerf = job.problem.shop.millKerf;
    const waste = beyondWaste(job.problem.shop);
    const { top } = table;
    this.#pricing.gains.fill(table);
    const { above, fresh } = completions(job, table, this.#pricing.gains);
    const faces: (Map<number, Stacked> | undefined)[] = new Array(2 * top + 1);
    const root: Stacked = { ...NOTHING, value: 0, slab: null, before: null };
    const wasted = new Map<number, Stacked>([[0, root]]);
    const ends = new Map<number, Stacked>();
    let work = 2 * top * job.slabs.length;
    for (let f = -top; f <= top; f++) {
      const i = f + top;
      for (const label of faces[i - waste]?.values() ?? [])
        if (label.value + (fresh[i] as number) >= least - NOISE) put(wasted, label);
      const here = faces[i] ?? new Map<number, Stacked>();
      const cut = cutAt(table, kerf, f - kerf);
      for (const label of wasted.values()) {
        work++;
        const value = label.value - cut;
        if (value + (above[i] as number) >= least - NOISE) put(here, { ...label, value });
      }
      faces[i] = here;
      if (here.size === 0) continue;
      const most = Math.max(...Array.from(here.values(), ({ value }) => value));
      for (let s = 0; s < job.slabs.length; s++) {
        const end = f + (job.slabs[s] as SlabKind).thickness;
        if (end > top) break;
        const rest = (above[end + kerf + top] as number) - cutAt(table, kerf, end);
        for (const source of this.slabs.of(table, s, f)) {
          const { yields } = source;
          if (most + (yields[0]?.value ?? Number.NEGATIVE_INFINITY) + rest < least - NOISE) continue;
          const onto = end + kerf <= top ? (faces[end + kerf + top] ?? new Map<number, Stacked>()) : null;
          if (onto !== null) faces[end + kerf + top] = onto;
          for (const label of here.values()) {
            const need = least - rest - label.value - NOISE;
            for (const yielded of yields) {
              work++;
              if (yielded.value < need) break;
              const [lo, hi] = [label.lo + yielded.lo, label.hi + yielded.hi];
              if (!code.fits(lo, hi)) continue;
              const key = label.key + yielded.key;
              const value = label.value + yielded.value - cutAt(table, kerf, end);
              const next = { lo, hi, key, value, slab: { s, y0: f, source, yielded }, before: label };
              if (value >= least - NOISE) put(ends, next);
              if (onto !== null) put(onto, next);
            }
          }
        }
      }
      if (!this.budget.spend(Math.floor((work + this.slabs.work) / STEPS_A_STACK))) return null;
      work %= STEPS_A_STACK;
      this.slabs.work = 0;
    }
    return [...ends.values()].sort((x, y) => y.value - x.value || x.key - y.key);
  }

  /** Bolts of a log's yield. */
  draw(yielded: LogYield): BoltPattern[] {
    const bolts: BoltPattern[] = [];
    for (let plan: LogYield | null = yielded; plan !== null; plan = plan.before) {
      if (plan.arc === null) continue;
      const { z0, shape } = plan.arc;
      bolts.push({ z0, z1: z0 + shape.length, slabs: this.#drawStack(plan.stack) });
    }
    return bolts.reverse();
  }

  #drawStack(stack: Stacked | null): SlabPattern[] {
    const slabs: SlabPattern[] = [];
    for (let label = stack; label !== null; label = label.before) {
      if (label.slab === null) continue;
      const { s, y0, source, yielded } = label.slab;
      const { thickness } = this.job.slabs[s] as SlabKind;
      slabs.unshift({ y0, thickness, strips: this.slabs.draw(s, source.use, yielded) });
    }
    return slabs;
  }
}

/** Noise of money in float. */
const NOISE = 1e-7;

function put<T extends { readonly key: number; readonly value: number }>(labels: Map<number, T>, label: T): void {
  const known = labels.get(label.key);
  if (known === undefined || label.value > known.value) labels.set(label.key, label);
}
