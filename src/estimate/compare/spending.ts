/** Where a route's cash goes: its lines and the shared ones, summed up by department and by stage of work. */
import { DEPARTMENTS, type Department } from "../../catalog/offers/price.js";
import type { Basis } from "../basis.js";
import { amountsOf, type ShoppingLine } from "../purchase/line.js";
import type { Cell } from "../sheet/expression.js";
import type { CommonCells, RouteCells } from "./route.js";

/** What some lines come to, before tax. */
export interface SpentCells<Name extends string = Department> {
  /** The department, or the stage by the last part of its cell's name. */
  readonly name: Name;
  /** Sum of the priced lines; absent where none has a price. */
  readonly amount: Cell | undefined;
  /** Lines that have no price; their cost is not in the amount. */
  readonly unpriced: number;
}

/** The same lines told twice; either sum, with taxes, the logs' value and lines of one's own, is the cash. */
export interface Spending {
  /** In the order of a shopping list. */
  readonly departments: readonly SpentCells[];
  /** Stages that use something up, in the order of the work. */
  readonly stages: readonly SpentCells<string>[];
  /** By department, what serves several stages. */
  readonly ofNoStage: readonly SpentCells[];
}

/** Laid once for each route that is shown. */
export function laySpending(basis: Basis, { plan, lines, inOrder }: RouteCells, common: CommonCells): Spending {
  const all = [...common.lines, ...lines];
  const names = new Map(
    inOrder
      .filter((cell) => !common.ownHours.includes(cell))
      .map(({ name, label }) => [name.split(".").at(-1) ?? name, label]),
  );
  const staged = all.filter(({ stage }) => stage !== undefined && names.has(stage));
  const rest = all.filter((line) => !staged.includes(line));
  const byDepartment = (of: readonly ShoppingLine[], where: string, words: string) =>
    DEPARTMENTS.flatMap((name) => {
      const own = of.filter(({ department }) => department === name);
      return laySum(basis, own, name, { cell: `${plan.key}.${where}.${name}`, label: `${name}${words}, before tax` });
    });
  return {
    departments: byDepartment(all, "spent", ""),
    stages: [...names].flatMap(([name, label]) => {
      const own = staged.filter(({ stage }) => stage === name);
      return laySum(basis, own, name, {
        cell: `${plan.key}.cost.${name}`,
        label: `what it takes to ${label}, before tax`,
      });
    }),
    ofNoStage: byDepartment(rest, "cost.ofNoStage", " for several stages"),
  };
}

/** One sum, or none where there are no lines. */
function laySum<Name extends string>(
  { sheet, pricing }: Basis,
  lines: readonly ShoppingLine[],
  name: Name,
  { cell, label }: { readonly cell: string; readonly label: string },
): SpentCells<Name>[] {
  if (lines.length === 0) return [];
  const unpriced = lines.filter(({ amount }) => !amount).length;
  if (unpriced === lines.length) return [{ name, amount: undefined, unpriced }];
  return [{ name, amount: sheet.lay(cell, amountsOf(pricing, lines), { label }), unpriced }];
}
