/**
 * Hardware that is made for a piece of just one size: the base of a post with its bolts, the hanger of a joist. What is bought
 * measures less than what is milled, so each route needs its own.
 */
import type { Need } from "../need.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { type Cell, minus, type Operand, over, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type Driven, layFastenerNeeds } from "./fastener-needs.js";
import type { ScheduleItem, ScheduleLine } from "./schedule.js";

/** A connection whose pieces may be milled or bought, and then want hardware of another size. */
export interface FittedLine extends ScheduleLine {
  readonly fitted: NonNullable<ScheduleLine["fitted"]>;
}

/** Hardware of the kinds of which some is made for pieces of one size: of all connections, so that equal ones are bought together. */
export interface FittedHardware {
  readonly lines: readonly FittedLine[];
  /** What no route changes. */
  readonly others: readonly ScheduledDriven[];
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** Of the schedule. */
type ScheduledDriven = ScheduleItem & Pick<Driven, "joins">;

/** How many pieces of a group a route mills, of how many. */
export interface MilledOf {
  /** Undefined, or none, where all are bought. */
  readonly milled: Cell | undefined;
  readonly count: Cell;
}

/** Of a schedule, what each route needs for itself, and what all of them have alike. */
export function splitByRoute(
  lines: readonly ScheduleLine[],
  terms: Pick<FittedHardware, "assumed" | "defaults">,
): { readonly fitted: FittedHardware | undefined; readonly common: readonly ScheduledDriven[] } {
  const fittedLines = lines.filter((line): line is FittedLine => line.fitted !== undefined);
  const kinds = new Set(
    fittedLines.flatMap(({ fitted }) => [...fitted.milled, ...fitted.bought].map(({ fastener }) => fastener)),
  );
  const fixed = lines.flatMap(({ items, fitted, groups }) =>
    items.filter((item) => !fitted?.milled.includes(item)).map((item) => ({ ...item, joins: groups })),
  );
  const others = fixed.filter(({ fastener }) => kinds.has(fastener));
  return {
    fitted:
      fittedLines.length > 0
        ? { lines: fittedLines, others, assumed: terms.assumed, defaults: terms.defaults }
        : undefined,
    common: fixed.filter(({ fastener }) => !kinds.has(fastener)),
  };
}

/**
 * Lays what a route needs of it.
 * @param of - Each group, by its name.
 * @param under - What the names of its cells begin with: nothing, or a route's key and a dot.
 */
export function layFittedNeeds(
  sheet: Sheet,
  hardware: FittedHardware,
  of: (group: string) => MilledOf,
  under: string,
): Need[] {
  const driven = hardware.lines.flatMap(({ fitted, groups }): Driven[] => {
    const parts = groups.map(of);
    const all = total(parts.map(({ count }) => count));
    const milled = parts.flatMap((one) => (one.milled && !sheet.decide(one.milled).isZero() ? [one.milled] : []));
    const as = (items: readonly ScheduleItem[], share: (count: Cell) => Operand) =>
      items.map((item): Driven => ({ ...item, count: share(item.count), joins: groups }));
    if (milled.length === 0) return as(fitted.bought, (count) => count);
    if (parts.every((one) => one.milled === one.count)) return as(fitted.milled, (count) => count);
    const own = total(milled);
    return [
      ...as(fitted.milled, (count) => over(times(count, own), all)),
      ...as(fitted.bought, (count) => over(times(count, minus(all, own)), all)),
    ];
  });
  return layFastenerNeeds(sheet, [...driven, ...hardware.others], hardware, under);
}

const total = (cells: readonly Cell[]): Operand => (cells.length === 1 ? (cells[0] as Cell) : sum(cells));
