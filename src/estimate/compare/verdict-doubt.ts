/** What is least sure of all that the verdict rests on: the assumption whose unlucky end costs the mix most against buying. */
import { measureOf } from "../../catalog/measures.js";
import type { Basis } from "../basis.js";
import { type Decimal, ONE } from "../quantity/decimal.js";
import { moneyText } from "../quantity/text.js";
import { about, capital } from "../quantity/words.js";
import { aside } from "../sheet/aside.js";
import { evaluateAgain } from "../sheet/evaluate.js";
import { type Cell, leadingTo } from "../sheet/expression.js";
import { leastLeft } from "../sheet/float64.js";
import { shownCell } from "../sheet/working.js";
import type { ComparedRoutes, Decision } from "./decision.js";

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

/** Every range at either end, tried all at once as draws; the worst of them is then worked out in decimals. */
function worstOf({ sheet }: Basis, { mix, buy }: ComparedRoutes): Doubt | undefined {
  const cells = leadingTo(sheet.cells, [mix.total, buy.total]);
  const ends = cells.flatMap((cell) =>
    cell.range ? [cell.range.low, cell.range.high].map((end) => ({ cell, end })) : [],
  );
  const moved = ends.filter(({ cell, end }) => !end.eq(aside(cell)));
  const worst = leastLeft(cells, moved, { of: buy.total, less: mix.total });
  if (!worst) return undefined;
  const again = evaluateAgain(cells, new Map([[worst.cell.name, worst.end]]));
  return { ...worst, saves: again(buy.total).minus(again(mix.total)) };
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
  const told = `Your pace. At the slow end the extra hours are ${about(slow, 0)} instead of ${extra.toDecimalPlaces(0).toFixed()}`;
  if (slow.lte(0) || !against) return `${told}.`;
  const each = aside(against.cashSaved).dividedBy(slow);
  const own = aside(basis.labor.valueOfHour);
  const ends = each.gte(own)
    ? "which still pays"
    : aside(against.payPerHour).gte(own)
      ? "and milling no longer pays: time a first log before you go on"
      : "which pays still less";
  return `${told}: ${moneyText(each, basis.pricing.currency)} for each of them, ${ends}.`;
}
