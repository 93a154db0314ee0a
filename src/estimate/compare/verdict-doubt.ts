/** What is least sure of all that the verdict rests on: the assumption whose unlucky end costs the mix most against buying. */
import { measureOf } from "../../catalog/measures.js";
import type { Basis } from "../basis.js";
import { type Decimal, ONE } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { capital } from "../quantity/words.js";
import { aside } from "../sheet/aside.js";
import { evaluateAgain } from "../sheet/evaluate.js";
import type { Cell } from "../sheet/expression.js";
import { slopesOf } from "../sheet/slopes.js";
import { shownCell } from "../sheet/working.js";
import type { ComparedRoutes, Decision } from "./decision.js";

/** Assumptions that are worked out exactly, of those that the slopes put first. */
const MOST_TRIED = 4;

/** An assumption at the end of its range that speaks against the mix. */
interface Doubt {
  readonly cell: Cell;
  readonly end: Decimal;
  /** What the mix then saves against buying everything, hours counted; below zero where it costs more. */
  readonly saves: Decimal;
}

/** In a sentence or two. The plans stay as they are; figures are exact. */
export function doubt(basis: Basis, routes: ComparedRoutes, decision: Decision): string {
  if (!decision.mix && basis.logs.length === 0) return "Prices: with no logs to saw, they alone decide the cash.";
  if (!decision.mix) return "What an hour of your own work is worth to you.";
  const worst = worstOf(basis, routes);
  return !worst || worst.cell.name === "pace" ? paceWords(basis, routes, decision) : words(basis, routes, worst);
}

function worstOf({ sheet }: Basis, { mix, buy }: ComparedRoutes): Doubt | undefined {
  const weights = new Map([
    [mix.total, 1],
    [buy.total, -1],
  ]);
  const slopes = slopesOf(sheet.cells, weights);
  const ranged = sheet.cells.flatMap((cell) => {
    const slope = slopes.get(cell) ?? 0;
    const { range } = cell;
    if (!range || slope === 0 || range.low.eq(range.high)) return [];
    const end = slope > 0 ? range.high : range.low;
    return end.eq(aside(cell)) ? [] : [{ cell, end, swing: swing(aside(cell), end).times(slope.toString()).abs() }];
  });
  const tried = ranged.sort((a, b) => b.swing.cmp(a.swing)).slice(0, MOST_TRIED);
  const doubts = tried.map(({ cell, end }): Doubt => {
    const again = evaluateAgain(sheet.cells, new Map([[cell.name, end]]));
    const total = (of: Cell) => again.get(of) ?? aside(of);
    return { cell, end, saves: total(buy.total).minus(total(mix.total)) };
  });
  return doubts.reduce<Doubt | undefined>(
    (worst, one) => (!worst || one.saves.lt(worst.saves) ? one : worst),
    undefined,
  );
}

/** How far a value moves, or how far its reciprocal does in its own scale: rates stand below the line. */
function swing(value: Decimal, end: Decimal): Decimal {
  const off = end.minus(value).abs();
  const inverse = end.gt(0) && value.gt(0) ? off.times(value).dividedBy(end) : off;
  return inverse.gt(off) ? inverse : off;
}

function words({ sheet, pricing }: Basis, { mix, buy }: ComparedRoutes, { cell, end, saves }: Doubt): string {
  const money = (value: Decimal) => moneyText(value, pricing.currency);
  const now = aside(buy.total).minus(aside(mix.total));
  const than = `${shownCell(cell, end)} instead of ${sheet.shown(cell)}`;
  const comes = saves.gte(0)
    ? `milling saves ${money(saves)} instead of ${money(now)}, your hours counted`
    : `milling costs ${money(saves.negated())} more than buying everything, your hours counted`;
  const how = measureOf(cell.name);
  return `${capital(cell.label)}. At ${than}, ${comes}.${how ? ` ${how}` : ""}`;
}

function paceWords(basis: Basis, { mix, buy }: ComparedRoutes, { mix: against }: Decision): string {
  const pace = basis.assumed.cell("pace");
  const extra = aside(mix.hours).minus(aside(buy.hours));
  const slower = pace.range && aside(pace).gt(0) ? pace.range.high.dividedBy(aside(pace)) : ONE;
  const slow = extra.times(slower);
  const told = `Your pace. At the slow end the extra hours are ${slow.toDecimalPlaces(0).toFixed()} instead of ${extra.toDecimalPlaces(0).toFixed()}`;
  if (slow.lte(0) || !against) return `${told}.`;
  const each = aside(against.cashSaved).dividedBy(slow);
  const still = each.gte(aside(basis.labor.valueOfHour));
  const ends = still ? "which still pays" : "and milling no longer pays: time a first log before you go on";
  return `${told}: ${moneyText(each, basis.pricing.currency)} for each of them, ${ends}.`;
}
