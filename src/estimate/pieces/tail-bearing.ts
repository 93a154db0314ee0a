/** Square tails so short that their cut would take wood off the bearing on the plate. */
import type { Fault } from "../faults.js";
import { decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import type { Sheet } from "../sheet/sheet.js";
import type { RafterCells, RafterPlan } from "./common-rafter.js";
import { AT } from "./laying.js";

/** What a least overhang is rounded up to, so that the one that is said passes: 1 mm, or 1/8 in. */
const STEPS = { mm: decimal("1"), in: decimal("3.175") } as const;

/**
 * Refuses a square cut that comes up to the plate's top inside its outer face, where the seat is.
 *
 * Drawn in the rafter's own plane from the plate's outer face, inwards and up: the upper edge ends an overhang `o` outside,
 * at `h − o × rise ÷ run` over the plate, `h` being the height above plate. From there the cut falls square to the rafter and
 * moves inwards by rise ÷ run of what it falls, so at the plate's top it is `h × rise ÷ run − o × (rise² + run²) ÷ run²`
 * inside the face: nothing at all from an overhang of `h × rise × run ÷ (rise² + run²)` on.
 * @param at - Of the overhang, below the structure.
 */
export function squareTailFaults(
  sheet: Sheet,
  plan: RafterPlan,
  { heightAbovePlate, seat }: Pick<RafterCells, "heightAbovePlate" | "seat">,
  at: string,
): Fault[] {
  if (plan.tail !== "square") return [];
  const [rise, run] = [sheet.decide(plan.unitRise), sheet.decide(plan.unitRun)];
  const [height, overhang] = [sheet.decide(heightAbovePlate), sheet.decide(plan.overhang)];
  const squares = rise.times(rise).plus(run.times(run));
  const least = height.times(rise).times(run).dividedBy(squares);
  if (overhang.gte(least)) return [];
  const step = plan.overhang.display.symbol === "in" ? STEPS.in : STEPS.mm;
  const say = (value: typeof least): string => onTape({ value, unit: plan.overhang.unit }, plan.overhang.display);
  const taken = least.minus(overhang).times(squares).dividedBy(run.times(run));
  const wrong = `At an overhang of ${sheet.onTape(plan.overhang)} a square tail is cut back to ${say(taken)} inside the plate's face, where the rafter has its seat of ${sheet.onTape(seat)}.`;
  const cure = `Give an overhang of ${say(least.dividedBy(step).ceil().times(step))} or more, or a plumb tail.`;
  return [{ code: "cannot-build", at: `${AT}${at}`, wrong, cure }];
}
