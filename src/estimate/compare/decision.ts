/**
 * Mill or buy, in cells: what each route saves against buying everything, for how many extra hours, and what each group
 * adds by itself.
 */
import type { Basis } from "../basis.js";
import type { GroupBasis } from "../group-basis.js";
import { taxRatesOn } from "../purchase/line.js";
import { type Cell, minus, number, type Operand, over, plus, sumOr, times } from "../sheet/expression.js";
import { type GroupSaving, type LeftOut, layGroupSavings, layPay } from "./group-savings.js";
import { milledPieces, type RouteCells } from "./route.js";

/** One route against buying everything. */
export interface Comparison {
  readonly cashSaved: Cell;
  readonly extraHours: Cell;
  /** Cash saved for each extra hour: for two routes this is the break-even value of an hour. Zero without extra hours. */
  readonly payPerHour: Cell;
}

/** What milling saves: all of it, the best mix, group by group, and what those of one route share. */
export interface Decision {
  readonly mill: Comparison | undefined;
  /** The hired sawyer; undefined where none is asked for. */
  readonly hired: Comparison | undefined;
  readonly mix: Comparison | undefined;
  readonly groups: readonly GroupSaving[];
  /** What no single group accounts for: set-up, hire, packs and delivery that groups share. */
  readonly shared: { readonly route: RouteCells; readonly cash: Cell; readonly hours: Cell } | undefined;
  readonly breakEven: BreakEven | undefined;
}

/** The routes that are compared. */
export interface ComparedRoutes {
  readonly buy: RouteCells;
  readonly mill: RouteCells | undefined;
  /** Milled by a hired sawyer wherever the logs serve; undefined where none is asked for. */
  readonly hired: RouteCells | undefined;
  readonly mix: RouteCells;
}

/** Lays the comparison; without milled groups there is nothing to compare. */
export function decide(basis: Basis, { buy, mill, hired, mix }: ComparedRoutes, leftOut: readonly LeftOut[]): Decision {
  const { sheet } = basis;
  if (!mill)
    return {
      mill: undefined,
      hired: undefined,
      mix: undefined,
      groups: [],
      shared: undefined,
      breakEven: undefined,
    };
  sheet.title("decision", "Mill or buy");
  const counted = mix.plan.sawing ? mix : mill;
  const groups = layGroupSavings(basis, [...new Set([counted, mill])], leftOut);
  const against = compare(basis, "decision.mill", mill, buy);
  const byHired = hired && compare(basis, "decision.hired", hired, buy);
  const known = mix === mill ? against : mix === hired ? byHired : undefined;
  const mixed = mix === buy ? undefined : (known ?? compare(basis, "decision.mix", mix, buy));
  const own = groups.filter(({ route }) => route === counted);
  return {
    mill: against,
    hired: byHired,
    mix: mixed,
    groups,
    shared: layShared(basis, (counted === mix && mixed) || against, own, counted),
    breakEven: layBreakEven(basis, mill, buy, against),
  };
}

/** What the groups of one route do not account for one by one. */
function layShared(
  { sheet, pricing }: Basis,
  whole: Comparison,
  own: readonly GroupSaving[],
  route: RouteCells,
): NonNullable<Decision["shared"]> {
  const cash = own.map(({ cashSaved }) => cashSaved);
  const hours = own.map(({ extraHours }) => extraHours);
  return {
    route,
    cash: sheet.lay("decision.shared.cash", minus(whole.cashSaved, sumOr(cash, pricing.currency)), {
      label: "cash that groups share",
    }),
    hours: sheet.lay("decision.shared.hours", minus(whole.extraHours, sumOr(hours, "person-h")), {
      label: "hours that groups share",
      display: "person-h",
    }),
  };
}

function compare({ sheet }: Basis, key: string, route: RouteCells, against: RouteCells): Comparison {
  const cashSaved = sheet.lay(`${key}.cashSaved`, minus(against.cash, route.cash), { label: "cash saved" });
  const extraHours = sheet.lay(`${key}.extraHours`, minus(route.hours, against.hours), {
    label: "extra hours",
    display: "person-h",
  });
  return { cashSaved, extraHours, payPerHour: layPay(sheet, key, cashSaved, extraHours) };
}

/** Prices of bought lumber by the volume of the sections that it is sold by. */
export interface BreakEven {
  /** Whether those sections are nominal, actual, or some of either. */
  readonly measure: "nominal" | "actual" | "both";
  /** At which milling all that the logs serve and buying everything cost the same. */
  readonly price: Cell;
  /** What the lumber that milling replaces costs as the catalog stands. */
  readonly now: Cell;
}

/**
 * Bought lumber's cost, less what milling saves at the value of an hour, over the wood that milling replaces. A dearer
 * board bears its tax as well, so that only 1 ÷ (1 + rate) of the saving can be taken off its price.
 */
function layBreakEven(basis: Basis, mill: RouteCells, buy: RouteCells, against: Comparison): BreakEven | undefined {
  const { sheet, labor, units } = basis;
  const measures = new Set<"nominal" | "actual">();
  const milled = basis.groups.flatMap((one) => {
    const pieces = milledPieces(basis, mill.plan, one);
    const section = soldSection(basis, one);
    if (pieces && "offer" in one.substitution) measures.add(one.substitution.offer.sizing);
    return pieces && section ? [times(section, one.group.length, pieces)] : [];
  });
  const [measure = "actual", other] = measures;
  const by = other ? "nominal and actual sections, as it is sold" : `${measure} sections`;
  const wood = sheet.lay("decision.wood", sumOr(milled, "m3"), {
    label: `wood milled in the place of bought, by ${by}`,
    display: units.lumber,
  });
  if (sheet.decide(wood).lte(0) || buy.lines.every(({ department, amount }) => department !== "lumber" || !amount))
    return undefined;
  const saved = minus(against.cashSaved, times(against.extraHours, labor.valueOfHour));
  const rates = taxRatesOn(basis.pricing, basis.catalog.taxes, "lumber");
  const untaxed = rates.length === 0 ? saved : over(saved, plus(number("1"), ...rates));
  const replaced = minus(buy.lumber, mill.lumber);
  const display = `${basis.pricing.currency}/${units.lumber}`;
  return {
    measure: other ? "both" : measure,
    price: sheet.lay("decision.breakEvenPrice", over(minus(replaced, untaxed), wood), {
      label: `price of bought wood at which both cost the same, by ${by}`,
      display,
    }),
    now: sheet.lay("decision.priceNow", over(replaced, wood), {
      label: `what the wood that milling replaces costs now, by ${by}`,
      display,
    }),
  };
}

/** Section by which what serves for a group is sold, laid once an offer; undefined where nothing serves. */
function soldSection({ sheet, units }: Basis, { substitution }: GroupBasis): Operand | undefined {
  if (!("offer" in substitution)) return undefined;
  const { name, label, section } = substitution.offer;
  const side = (which: "thickness" | "width"): Cell => {
    const cell = `decision.sold.${name}.${which}`;
    return (
      sheet.find(cell) ??
      sheet.catalog(cell, section[which], { label: `${which} of ${label}, by name`, display: units.small })
    );
  };
  return times(side("thickness"), side("width"));
}
