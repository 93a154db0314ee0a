/**
 * The linear relaxation: fractions of whole-log patterns, found by column generation (Gilmore & Gomory 1961, 1963),
 * and the bound that every full pricing proves (Lagrange).
 */
import { type Arc, type LogTable, logTables } from "./bucking.js";
import type { Budget } from "./counted-work.js";
import type { Job } from "./job.js";
import { type LogPricing, Pricings, SharedBolts } from "./log-pricing.js";
import { type LogPattern, logPattern } from "./pattern-cost.js";
import { Master, type MasterColumn, type MasterSolution } from "./simplex.js";

/** A column with the pattern that it stands for. */
export interface Column extends MasterColumn {
  readonly pattern: LogPattern;
}

/** How far the relaxation was taken. */
export interface Relaxation {
  /** Optimum over the columns found. */
  readonly master: MasterSolution;
  /** No plan of the family costs less, with these logs and this demand. */
  readonly bound: number;
  /** Worth of a piece at the best bound, by group. */
  readonly prices: Float64Array;
  /** Whether the bound is as near as was asked. */
  readonly closed: boolean;
}

/** Bolts kept for a log between full pricings. */
const KEPT_ARCS = 12;
/** A log with fewer bolts is priced directly, without shared ones. Assumption, measured on the frozen problems. */
const FEW_ARCS = 60;

/** Logs, columns and kept bolts of a job: what one solve leaves to the next. */
export class Yard {
  readonly logs: readonly LogTable[];
  readonly columns: Column[] = [];
  readonly shared: SharedBolts;
  readonly pricings: Pricings;
  readonly #kept: Arc[][];
  readonly #tables: LogTable[];
  readonly #seen = new Set<string>();

  constructor(readonly job: Job) {
    this.logs = logTables(job);
    this.shared = new SharedBolts(job);
    this.pricings = new Pricings(job);
    this.#kept = this.logs.map(() => []);
    this.#tables = [];
    for (const table of this.logs) for (const log of table.alike) this.#tables[log] = table;
  }

  /** The table of a log, by its number in the problem. */
  tableOf(log: number): LogTable {
    return this.#tables[log] as LogTable;
  }

  /** Bolts that a look at all logs reckons at the least, those shared by several counted once. */
  get look(): number {
    const shared = new Set<number>();
    let own = 0;
    for (const { arcs } of this.logs) {
      if (arcs.length <= FEW_ARCS) own += arcs.length;
      else for (const arc of arcs) shared.add(this.shared.key(arc));
    }
    return own + shared.size;
  }

  /** Adds a pattern unless it is known or makes nothing. */
  add(logClass: number, pattern: LogPattern): boolean {
    if (pattern.bolts.length === 0) return false;
    const key = `${logClass} ${pattern.made.join(" ")} ${pattern.cost.toFixed(6)}`;
    if (this.#seen.has(key)) return false;
    this.#seen.add(key);
    const groups = Int32Array.from(pattern.made.keys()).filter((j) => (pattern.made[j] as number) > 0);
    const made = groups.map((j) => pattern.made[j] as number);
    this.columns.push({ logClass, pattern, cost: pattern.cost, groups, made });
    return true;
  }

  /** Best bolts of a log at some prices: out of all, or out of the kept ones. */
  price(pricing: LogPricing, logClass: number, full: boolean) {
    const log = this.logs[logClass] as LogTable;
    const kept = this.#kept[logClass] as Arc[];
    if (!full) return pricing.bestOf(log, kept);
    if (log.arcs.length <= FEW_ARCS) {
      const best = pricing.bestOf(log, log.arcs);
      this.#keep(logClass, best.arcs);
      return best;
    }
    const best = pricing.best(log, this.shared);
    this.#keep(logClass, best.seen.slice(0, KEPT_ARCS));
    this.#keep(logClass, best.arcs);
    return best;
  }

  #keep(logClass: number, arcs: readonly Arc[]): void {
    const kept = [...new Set([...arcs, ...(this.#kept[logClass] as Arc[])])].slice(0, KEPT_ARCS);
    this.#kept[logClass] = kept.sort((a, b) => a.from - b.from || a.length - b.length);
  }
}

/** What is asked of one relaxation. */
export interface Ask {
  readonly demand: readonly number[];
  /** Logs left of each class. */
  readonly logs: readonly number[];
  /** Stop when the bound is within this share of the master's value. */
  readonly gap: number;
  /** Most full pricings. Without any there is no bound. */
  readonly rounds: number;
  /** Most pricings of kept bolts before the first full one. */
  readonly quick: number;
  /**
   * Whether full looks are taken at the master's own prices: the end comes in half to two thirds of the work. Smoothed
   * prices meet more patterns, which the dives for many logs live on.
   */
  readonly haste: boolean;
}

/** Solves the relaxation with all columns of the yard, adding new ones to it. */
export function relax(yard: Yard, ask: Ask, budget: Budget): Relaxation {
  return new Relaxing(yard, ask, budget).run();
}

/** Prices of the first full look of a haste, as a share of those of buying, at which all pieces look alike. */
const FIRST_PRICES = 0.7;
/** The same where prices are smoothed. */
const FIRST_CENTRE = 0.4;
/** A haste leaves the kept bolts once they promise less than this share of what is open. Assumption, measured on the frozen problems. */
const LITTLE = 0.1;

/** A relaxation under way. */
class Relaxing {
  readonly #master: Master;
  #taken = 0;
  #solution: MasterSolution;
  // Until logs are priced nothing is known but that neither sawing nor buying costs less than nothing.
  #bound = 0;
  /** Prices of the best bound, those to begin with until there is one. */
  #centre: Float64Array;

  constructor(
    readonly yard: Yard,
    readonly ask: Ask,
    readonly budget: Budget,
  ) {
    this.#master = new Master(yard.job.buy, ask.demand, ask.logs);
    this.#solution = this.#solved();
    const share = ask.haste ? FIRST_PRICES : FIRST_CENTRE;
    this.#centre = this.#solution.piece.map((price) => price * share);
  }

  run(): Relaxation {
    const { ask, budget } = this;
    for (let i = 0; i < ask.quick && !budget.out && this.#look(this.#solution.piece, false).added > 0; i++) {
      this.#solution = this.#solved();
    }
    for (let round = 0; round < ask.rounds && !budget.out; round++) {
      if (round > 0) this.#lookAtKept();
      const found = ask.haste ? this.#hasteRound(round) : this.#smoothedRound();
      if (!found && !budget.out) return this.#outcome(true);
      this.#solution = this.#solved();
      const { value } = this.#solution;
      if (value - this.#bound <= ask.gap * Math.abs(value)) return this.#outcome(true);
    }
    return this.#outcome(false);
  }

  #outcome(closed: boolean): Relaxation {
    const master = this.#solution;
    return { master, bound: Math.min(this.#bound, master.value), prices: this.#centre, closed };
  }

  /** Kept bolts only, until they give nothing new; in haste, until they promise little beside what is open. */
  #lookAtKept(): void {
    while (!this.budget.out) {
      const { added, bound } = this.#look(this.#solution.piece, false);
      if (added === 0) return;
      const promised = this.#solution.value - bound;
      this.#solution = this.#solved();
      if (this.ask.haste && promised < LITTLE * (this.#solution.value - this.#bound)) return;
    }
  }

  /** A full look at the master's own prices. @returns whether the relaxation may go on. */
  #hasteRound(round: number): boolean {
    return this.#lookAtAll(round === 0 ? this.#centre : this.#solution.piece) || round === 0;
  }

  /** A full look at smoothed prices first (Wentges 1997); where they find nothing, at the master's own. */
  #smoothedRound(): boolean {
    const { piece } = this.#solution;
    return (
      this.#lookAtAll(piece.map((price, j) => (price + (this.#centre[j] as number)) / 2)) || this.#lookAtAll(piece)
    );
  }

  /** @returns whether all bolts gave a column that the master takes. */
  #lookAtAll(prices: Float64Array): boolean {
    const { added, bound } = this.#look(prices, true);
    if (bound > this.#bound) [this.#bound, this.#centre] = [bound, prices];
    return added > 0;
  }

  #look(prices: Float64Array, full: boolean): Look {
    return priceLogs(this.yard, this.ask, prices, this.#solution, full, this.budget);
  }

  #solved(): MasterSolution {
    const master = this.#master;
    const { columns, job } = this.yard;
    for (; this.#taken < columns.length; this.#taken++) master.add(columns[this.#taken] as Column);
    const before = master.pivots;
    const solved = master.solve();
    const size = this.ask.logs.length + job.buy.length;
    this.budget.spend(Math.ceil(((master.pivots - before) * size ** 2) / 20_000));
    return solved;
  }
}

/** What a look at the logs gave. */
interface Look {
  /** Columns that the master takes. */
  readonly added: number;
  /** By Lagrange, of all that were looked at. */
  readonly bound: number;
}

/** Prices every class that has logs left; adds the columns that the master would take. */
function priceLogs(
  yard: Yard,
  ask: Ask,
  prices: Float64Array,
  solution: MasterSolution,
  full: boolean,
  budget: Budget,
): Look {
  const pricing = yard.pricings.at(prices);
  let added = 0;
  let bound = ask.demand.reduce((sum, count, j) => sum + count * (prices[j] as number), 0);
  for (const [logClass, left] of ask.logs.entries()) {
    if (left <= 0) continue;
    // A bound holds only where every log was priced.
    if (budget.out) return { added, bound: Number.NEGATIVE_INFINITY };
    const before = pricing.work;
    const { value, arcs } = yard.price(pricing, logClass, full);
    budget.spend(pricing.work - before);
    bound -= left * Math.max(0, value);
    const known = solution.log[logClass] as number;
    // At the master's own prices the value is the pattern's worth, or a little more.
    if (arcs.length === 0 || (prices === solution.piece && value <= known + 1e-7)) continue;
    const pattern = logPattern(yard.job, (yard.logs[logClass] as LogTable).log, pricing.patterns(arcs));
    const worth = pattern.made.reduce((sum, made, j) => sum + made * (solution.piece[j] as number), -pattern.cost);
    if (worth > known + 1e-7 && yard.add(logClass, pattern)) added++;
  }
  yard.pricings.free(pricing);
  return { added, bound };
}
