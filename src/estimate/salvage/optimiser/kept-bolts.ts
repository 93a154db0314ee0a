/** Which bolts of a log are looked at again and again: those that were on or near a best path when it was last looked over. */
import { bestFew } from "./best-few.js";
import type { Arc, LogTable } from "./bucking.js";
import { KEPT_ARCS } from "./effort.js";
import type { LogPricing, SharedBolts } from "./log-pricing.js";
import { Onward, toward } from "./paths.js";

/** Bolts that are reckoned exactly when a log is looked over: those that shared bolts make most of. */
const LOOKED_AT = 48;
/** A log with fewer bolts is looked over without shared ones. */
const FEW_ARCS = 500;
/** So many of them change when a log is looked over again. */
const FRESH_ARCS = 10;

/** Bolts kept of each log. */
export class KeptBolts {
  readonly #arcs = new Map<LogTable, readonly Arc[]>();
  /** The same bolts, latest look first. */
  readonly #looks = new Map<LogTable, readonly Arc[]>();

  constructor(readonly shared: SharedBolts) {}

  /** All bolts of a log with few; of one with many, those that came near a best path when last looked over. */
  of(log: LogTable, pricing: LogPricing): readonly Arc[] {
    return this.#arcs.get(log) ?? this.lookOver(log, pricing);
  }

  /** Looks over all bolts of a log at some prices, and keeps the best beside the best of earlier looks. */
  lookOver(log: LogTable, pricing: LogPricing): readonly Arc[] {
    if (log.arcs.length <= KEPT_ARCS) {
      this.#arcs.set(log, log.arcs);
      return log.arcs;
    }
    const values =
      log.arcs.length <= FEW_ARCS ? pricing.arcValues(log.arcs) : pricing.optimistic(log.arcs, this.shared);
    const { after } = new Onward(log, log.arcs, values);
    const before = toward(log, log.arcs, values);
    const along = (arc: Arc) => (before[arc.from] as number) + (arc.to >= 0 ? (after[arc.to] as number) : 0);
    for (const [i, arc] of log.arcs.entries()) values[i] = along(arc) + (values[i] as number);
    const through = bestFew(values, LOOKED_AT)
      .map((i) => log.arcs[i] as Arc)
      .map((arc) => ({ arc, worth: along(arc) + pricing.arcValue(arc) }))
      .sort((a, b) => b.worth - a.worth);
    const old = this.#looks.get(log) ?? [];
    const fresh = through.slice(0, old.length === 0 ? KEPT_ARCS : FRESH_ARCS).map(({ arc }) => arc);
    const looks = [...new Set([...fresh, ...old])].slice(0, KEPT_ARCS);
    this.#looks.set(log, looks);
    const kept = [...looks].sort((a, b) => a.from - b.from || a.length - b.length);
    this.#arcs.set(log, kept);
    return kept;
  }
}
