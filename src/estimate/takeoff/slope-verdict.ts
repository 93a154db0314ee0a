/** Whether the code allows a covering at a slope. A covering that it does not allow is shown, never dropped. */
import { type CoveringKind, leastSlope } from "../../catalog/coverings.js";
import type { Decimal } from "../quantity/decimal.js";
import { exactly } from "../quantity/text.js";
import { citation } from "../request/assumed.js";
import type { Sheet } from "../sheet/sheet.js";
import type { CoveredRoof } from "./covered-roof.js";

/** Whether a covering may lie at this slope, and why. */
export interface SlopeVerdict {
  readonly allowed: boolean;
  /** The slope is allowed only because the laps are sealed. */
  readonly lapsSealed: boolean;
  /** Rise over run, to compare two verdicts by. */
  readonly slope: Decimal;
  readonly reason: string;
  /** The clause. */
  readonly reference: string;
}

/** Compared as rise × 12 in against least rise × run: 4 in 12 has no finite decimal. */
export function slopeVerdict(
  sheet: Sheet,
  kind: CoveringKind,
  roof: Pick<CoveredRoof, "unitRise" | "unitRun">,
): SlopeVerdict {
  const rise = sheet.decide(roof.unitRise).times(exactly("12 in").value);
  const reaches = (least: string): boolean => rise.gte(exactly(least).value.times(sheet.decide(roof.unitRun)));
  const [plain, sealed] = [leastSlope(kind, false), leastSlope(kind, true)];
  const given = `A slope of ${sheet.onTape(roof.unitRise)} over ${sheet.onTape(roof.unitRun)}`;
  const lapsSealed = !reaches(plain.rise) && reaches(sealed.rise);
  const rule = lapsSealed || !reaches(plain.rise) ? sealed : plain;
  const only = rule.when ? `, where ${rule.when}` : "";
  const allowed = reaches(rule.rise);
  const verb = allowed ? "reaches" : "is below";
  return {
    allowed,
    lapsSealed,
    slope: sheet.decide(roof.unitRise).dividedBy(sheet.decide(roof.unitRun)),
    reason: `${given} ${verb} the least slope, ${leastInWords(rule.rise, roof)}${only}.`,
    reference: citation(rule.from),
  };
}

/** Whether a covering is no longer allowed, needs its laps sealed anew, or falls further below its least slope. */
export function slopeWorsens(from: SlopeVerdict | undefined, to: SlopeVerdict | undefined): boolean {
  if (!from || !to) return false;
  if (!to.allowed) return from.allowed || to.slope.lt(from.slope);
  return to.lapsSealed && from.allowed && !from.lapsSealed;
}

/** The code says it over 12 in; where the roof is metric, the same slope is said over 300 mm. */
function leastInWords(rise: string, { unitRise }: Pick<CoveredRoof, "unitRise">): string {
  if (unitRise.display.symbol !== "mm") return `${rise} over 12 in`;
  return `${exactly(rise).value.times(300).dividedBy(exactly("12 in").value).toFixed()} mm over 300 mm`;
}
