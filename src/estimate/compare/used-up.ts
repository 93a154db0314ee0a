/** What milling one group uses up that leaving it out would spare: fuel, oils, edges, current, hired days, a sawyer's charge, logs. */
import { BLADES } from "../../catalog/blades.js";
import type { Basis } from "../basis.js";
import { fuelAt } from "../effort/hauling.js";
import type { MillingFormulas } from "../effort/milling.js";
import { withTax } from "../purchase/line.js";
import type { CutCells } from "../salvage/cut-cells.js";
import {
  type Cell,
  greatest,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  sum,
  times,
  when,
} from "../sheet/expression.js";
import { isMill } from "./hire.js";
import type { RouteCells } from "./route.js";

/** Work of one group in a route that mills it. */
export interface OwnWork {
  readonly cuts: CutCells;
  readonly formulas: MillingFormulas;
  readonly sharpenings: Cell;
  /** Person-hours at the machines of the shop beyond those that bought pieces take. */
  readonly atMachines: Operand;
  /** Faces sanded, and faces planed, beyond those of bought pieces. */
  readonly sanded: Operand;
  readonly planed: Operand;
  /** Names of the logs that hold nothing else. */
  readonly logs: readonly string[];
}

/** Money, tax included, of what has a price. Shares of lines: they are not rounded to the cent. */
export function usedUp(basis: Basis, route: RouteCells, work: OwnWork): Operand[] {
  const { sheet, pricing } = basis;
  const used = [...shopUse(basis, work), ...(basis.sawyer ? [] : millUse(basis, work))];
  const consumed = used.flatMap(([item, amount]) => {
    const price = sheet.find(`price.${item}`);
    return price && amount ? [times(amount, price, pricing.level)] : [];
  });
  const values = basis.logs.flatMap(({ name, value }) => (value && work.logs.includes(name) ? [value] : []));
  return [
    ...consumed.map((cost) => withTax(basis, "consumables", cost)),
    ...sawyerCharge(basis, route, work).map((cost) => withTax(basis, "services", cost)),
    ...hireOf(basis, route, work).map((cost) => withTax(basis, "equipment", cost)),
    ...values,
  ];
}

type Use = readonly [item: string, amount: Operand | undefined];

function millUse({ mill, assumed }: Basis, { formulas: { fuel, blades }, sharpenings }: OwnWork): Use[] {
  const { item, service, tool } = BLADES[mill.blade];
  return [
    ["fuel", fuel],
    ["bar-oil", mill.barOil && times(fuel, mill.barOil)],
    ["two-stroke-oil", mill.blade === "chain" ? times(fuel, assumed.cell("saw.twoStroke")) : undefined],
    [item, blades],
    mill.sharpening === "service" ? [service, sharpenings] : [tool.item, over(sharpenings, assumed.cell(tool.each))],
  ];
}

function shopUse(basis: Basis, { formulas: { stages }, atMachines, sanded, planed }: OwnWork): Use[] {
  const { assumed, mill, request } = basis;
  const pace = assumed.cell("pace");
  const people = assumed.cell(`getOut.${mill.getOut}.people`);
  const knives = request.shop?.planer === "none" ? undefined : over(planed, assumed.cell("dress.perKnives"));
  return [
    ["sanding-discs", over(sanded, assumed.cell("sand.perDisc"))],
    [
      "electricity",
      times(over(plus(atMachines, times(stages.edge, pace)), number("1 people")), assumed.cell("shop.power")),
    ],
    ["planer-knife-sharpening", knives],
    ["planer-knives", knives && over(knives, assumed.cell("dress.knifeLife"))],
    ["fuel", fuelAt(basis, mill.getOut, times(stages.getOut, pace), people)],
    ["fuel", fuelAt(basis, mill.carry, times(stages.carry, pace))],
  ];
}

/** By the hour or the board foot, and what is then missing to the least charge. */
function sawyerCharge(basis: Basis, { plan: { key } }: RouteCells, { cuts, formulas }: OwnWork): Operand[] {
  const { sheet, sawyer, pricing, assumed } = basis;
  if (!sawyer) return [];
  const byHour = sawyer.charge === "hour";
  const item = byHour ? "milling-per-hour" : "milling-per-board-foot";
  const price = sheet.find(`price.${item}`);
  if (!price) return [];
  const own = times(byHour ? times(formulas.elapsed, assumed.cell("pace")) : cuts.pieceVolume, price, pricing.level);
  const missing = sheet.find(`${key}.use.milling-minimum.amount`);
  if (!missing || !sawyer.minimum) return [own];
  const charged = [`${key}.use.milling-set-up.amount`, `${key}.use.${item}.amount`].flatMap(
    (name) => sheet.find(name) ?? [],
  );
  const then = greatest(minus(sawyer.minimum, minus(sum(charged), own)), number(`0 ${pricing.currency}`));
  return [minus(plus(own, missing), then)];
}

/** Days for which a hired mill would be kept less, its shortest hire in the reckoning. */
function hireOf(basis: Basis, { plan: { key } }: RouteCells, { formulas }: OwnWork): Operand[] {
  const { sheet, request, labor, pricing, assumed } = basis;
  if (basis.sawyer) return [];
  return (request.shop?.equipment ?? []).flatMap(({ item, terms }): Operand[] => {
    const [hours, days] = [sheet.find(`${key}.hire.${item}.hours`), sheet.find(`${key}.hire.${item}.days`)];
    const price = sheet.find(`price.${item}.hire`);
    if (terms !== "hired" || !isMill(item) || !hours || !days || !price) return [];
    const left = minus(hours, times(formulas.elapsed, assumed.cell("pace")));
    const least = sheet.find(`price.${item}.minimumDays`) ?? number("1 day");
    const whole = greatest(roundUp(over(left, labor.hoursPerDay), "day"), least);
    const then = when(left, "above", number("0 h"), whole, number("0 day"));
    return [times(minus(days, then), price, pricing.level)];
  });
}
