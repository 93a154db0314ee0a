/** Hours of the finish, by coat. */
import type { Assumed } from "../request/assumed.js";
import { type Cell, least, minus, type Operand, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { FinishTakeoff } from "../takeoff/finish.js";

/** Lays the first coat and the later ones as stages; none without a finish. */
export function layBrushing(sheet: Sheet, assumed: Assumed, { area, brushed, kind }: FinishTakeoff): Cell[] {
  if (kind === "none") return [];
  const rate = { rough: assumed.cell("rate.finishRough"), smooth: assumed.cell("rate.finishSmooth") };
  const brushing = (rough: Operand, smooth: Operand) => plus(over(rough, rate.rough), over(smooth, rate.smooth));
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`common.hours.${name}`, times(formula, assumed.cell("pace")), { label, display: "person-h" });
  // No coats at all are no first coat either.
  const first = { rough: least(area.rough, brushed.rough), smooth: least(area.smooth, brushed.smooth) };
  const later = brushing(minus(brushed.rough, first.rough), minus(brushed.smooth, first.smooth));
  return [
    hours("finishFirst", "brush on the first coat", brushing(first.rough, first.smooth)),
    hours("finishLater", "brush on later coats", times(later, assumed.cell("finish.laterCoat"))),
  ];
}
