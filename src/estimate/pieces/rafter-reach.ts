/** Rafters of a given length that would end between their tails and what their upper ends lean on. */
import { toQuantity } from "../../catalog/reading.js";
import type { Fault } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { onTape } from "../quantity/text.js";
import { capital } from "../quantity/words.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { RafterPlan } from "./common-rafter.js";
import { AT, type SettingsByGroup } from "./laying.js";

/** How far a rafter has to reach. */
interface Reach extends Pick<RafterPlan, "run" | "overhang" | "unitRise" | "unitRun" | "ridgeThickness"> {
  /** At 45° in plan, as hips run: its level lengths are √2 times those of a common rafter. */
  readonly diagonal?: true;
  /** Level, of common run: what a jack ends before the ridge. */
  readonly before?: Decimal;
}

/**
 * Refuses a length under the rafter's upper edge, measured along it.
 * @param group - Whose length was given, if any; the cure names its field.
 */
export function reachFaults(sheet: Sheet, group: string, settings: SettingsByGroup, reach: Reach): Fault[] {
  const own = settings?.[group];
  if (own?.length === undefined || own.remove) return [];
  const { value } = toQuantity(own.length, "mm");
  const of = (cell: Cell): Decimal => sheet.decide(cell);
  const [rise, run] = [of(reach.unitRise), of(reach.unitRun)];
  if (run.lte(0)) return []; // refused by itself
  const whole = of(reach.run).plus(of(reach.overhang));
  const halved = reach.ridgeThickness ? whole.minus(of(reach.ridgeThickness).dividedBy(2)) : whole;
  const level = reach.before ? halved.minus(reach.before) : halved;
  const inPlan = run.times(run).times(reach.diagonal ? 2 : 1);
  const least = level.times(rise.times(rise).plus(inPlan).sqrt()).dividedBy(run);
  if (value.gte(least)) return [];
  const say = (length: Decimal): string => onTape({ value: length, unit: reach.run.unit }, reach.run.display);
  const enough = onTape({ value: least, unit: reach.run.unit }, reach.run.display, "least");
  const wrong = `${capital(group.replace("-", " "))} of ${say(value)} do not reach from their tails (${sheet.onTape(reach.overhang)} of overhang, level) to their upper ends, ${enough} along the slope.`;
  const cure = "Leave the length out, or give one that reaches.";
  return [{ code: "cannot-build", at: `${AT}/groups/${group}/length`, wrong, cure }];
}
