/** Hours on the roof: deck sheets, underlay, the covering itself, and what is fitted along its edges. */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import { type Cell, type Operand, plus, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { CoveringTakeoff } from "../takeoff/covering.js";

/** Person-time to lay a covering with its underlay, at the pace of a steady amateur. Trim is fitted with the fascia. */
export function layingTime({ kind, area, underlay }: CoveringTakeoff, assumed: Assumed): Operand {
  const covering = times(area, assumed.cell(`rate.roof-${kind}`));
  return underlay ? plus(covering, times(underlay.laid, assumed.cell("rate.underlay"))) : covering;
}

/** Person-time to lay the sheets of a deck; absent where it has none. */
export function deckSheetsTime({ deck }: CoveringTakeoff, assumed: Assumed): Operand | undefined {
  return deck?.sheeted && times(deck.sheeted, assumed.cell("rate.deckSheets"));
}

/** Person-hours on the roof; each absent where there is nothing of it. */
export interface RoofHours {
  readonly roof: Cell | undefined;
  readonly trim: Cell | undefined;
}

/** Lays the stages of the covering and of what is fitted along its edges, fascia included. */
export function layRoofHours(
  sheet: Sheet,
  assumed: Assumed,
  groups: readonly PieceGroup[],
  covering: CoveringTakeoff | undefined,
): RoofHours {
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`common.hours.${name}`, times(formula, assumed.cell("pace")), { label, display: "person-h" });
  const fascia = groups.filter(({ role }) => role === "fascia").map(({ totalLength }) => totalLength);
  const trims = [...fascia, ...(covering ? [covering.trimLength] : [])];
  const trim = () => hours("trim", "fit fascia and metal trim", times(sumOr(trims, "m"), assumed.cell("rate.trim")));
  return {
    roof: covering && hours("roof", "lay the covering", layingTime(covering, assumed)),
    trim: trims.length > 0 ? trim() : undefined,
  };
}
