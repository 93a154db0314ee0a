/** Hours on the roof: underlay, deck sheets, the covering itself, and what is fitted along its edges. */
import type { Assumed } from "../request/assumed.js";
import { type Operand, plus, times } from "../sheet/expression.js";
import type { CoveringTakeoff } from "../takeoff/covering.js";

/** Person-time to lay a covering with what lies below it, at the pace of a steady amateur. Trim is fitted with the fascia. */
export function layingTime({ kind, area, underlay, deck }: CoveringTakeoff, assumed: Assumed): Operand {
  const covering = times(area, assumed.cell(`rate.roof-${kind}`));
  const under = underlay ? [times(underlay.laid, assumed.cell("rate.underlay"))] : [];
  const sheets = deck?.sheeted ? [times(deck.sheeted, assumed.cell("rate.deckSheets"))] : [];
  const more = [...under, ...sheets];
  return more.length === 0 ? covering : plus(covering, ...more);
}
