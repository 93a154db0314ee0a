/** What the verdict says where sawn pieces lie in the stack for more than a year. */
import type { Basis } from "../basis.js";
import type { DryingCells } from "../effort/drying.js";
import type { GroupBasis } from "../group-basis.js";
import { Decimal } from "../quantity/decimal.js";
import { lowered } from "../quantity/words.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { RouteCells } from "./route.js";
import { driedGroups } from "./schedule.js";

/** Weeks after which nobody takes it for granted that a plan waits. Assumption. */
const YEAR = 52;

/** Whether most of the pieces' time goes by in the stack. */
export const isLong = ({ likely }: DryingCells): boolean => asideIn(likely, "week").gt(YEAR);

/** The thickest of the groups that a route saws and dries. */
export function slowestDried(basis: Basis, route: RouteCells): readonly GroupBasis[] {
  const dried = driedGroups(basis, route);
  const most = Decimal.max(0, ...dried.map(({ group }) => aside(group.thickness)));
  return dried.filter(({ group }) => aside(group.thickness).eq(most));
}

/** How the wait for the thickest pieces may be spared. */
export function dryingChange(basis: Basis, mix: RouteCells): string[] {
  const { drying } = mix;
  if (!drying || !isLong(drying)) return [];
  const labels = slowestDried(basis, mix).map(({ group }) => lowered(group.label));
  const years = asideIn(drying.likely, "week").dividedBy(YEAR).toDecimalPlaces(1).toFixed();
  return [
    `The work waits ${years} ${years === "1" ? "year" : "years"} until the thickest pieces are dry: ${labels.join(", ")}. Where their use allows it, use them green, as carpenters use heavy timbers ("seasoning": "green"), or buy them.`,
  ];
}
