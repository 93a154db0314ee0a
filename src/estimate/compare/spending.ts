/** Where a route's cash goes: its lines and the shared ones, summed up by department. */
import { DEPARTMENTS, type Department } from "../../catalog/offers/price.js";
import type { Basis } from "../basis.js";
import { amountsOf } from "../purchase/line.js";
import type { Cell } from "../sheet/expression.js";
import type { CommonCells, RouteCells } from "./route.js";

/** What one department comes to, before tax. */
export interface SpentCells {
  readonly department: Department;
  /** Sum of its priced lines; absent where none has a price. */
  readonly amount: Cell | undefined;
  /** Lines that have no price; their cost is not in the amount. */
  readonly unpriced: number;
}

/** Departments that a route buys from, in the order of a shopping list. Laid once for each route that is shown. */
export function laySpending(
  { sheet, pricing }: Basis,
  { plan, lines }: RouteCells,
  common: CommonCells,
): readonly SpentCells[] {
  const all = [...common.lines, ...lines];
  return DEPARTMENTS.flatMap((department): SpentCells[] => {
    const own = all.filter((line) => line.department === department);
    if (own.length === 0) return [];
    const unpriced = own.filter(({ amount }) => !amount).length;
    if (unpriced === own.length) return [{ department, amount: undefined, unpriced }];
    const label = `${department}, before tax`;
    const amount = sheet.lay(`${plan.key}.spent.${department}`, amountsOf(pricing, own), { label });
    return [{ department, amount, unpriced }];
  });
}
