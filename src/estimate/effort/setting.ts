/** What has to set or to dry before the next hand may touch it: concrete round the posts, a coat of finish. */
import { type Decimal, decimal, ONE, ZERO } from "../quantity/decimal.js";
import { aside, asideIn } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { FinishTakeoff } from "../takeoff/finish.js";

/** Times that pass with nobody at work. */
export interface SettingCells {
  /** Of concrete; absent where none is poured. */
  readonly concrete: Cell | undefined;
  /** Of one coat, and the coats on the faces that take most; absent without a finish. */
  readonly coat: { readonly dries: Cell; readonly coats: Decimal } | undefined;
}

const HOURS_A_DAY = decimal(24);

/** Days from the last hour of a stage until the next may go on; those of all coats after the second wait in the same stage. */
export function setsFor({ concrete, coat }: SettingCells, stage: string): Decimal {
  if (stage === "pour" && concrete) return asideIn(concrete, "day");
  if (!coat || (stage !== "finishFirst" && stage !== "finishLater")) return ZERO;
  const waits = stage === "finishFirst" ? ONE : coat.coats.minus(1);
  return asideIn(coat.dries, "h").dividedBy(HOURS_A_DAY).times(waits);
}

/** Primer included; none where no face takes any. */
export function coatsOf({ area, brushed }: Pick<FinishTakeoff, "area" | "brushed">): Decimal {
  const coats = (["rough", "smooth"] as const).flatMap((texture) =>
    aside(area[texture]).gt(0) ? [aside(brushed[texture]).dividedBy(aside(area[texture]))] : [],
  );
  return coats.reduce((most, one) => (one.gt(most) ? one : most), ZERO);
}
