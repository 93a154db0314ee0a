/** Hours on the roof: deck sheets, underlay, the covering itself, and what is fitted along its edges. */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import { type Cell, minus, type Operand, plus, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { CoveringTakeoff } from "../takeoff/covering.js";

/** Person-time to lay a covering with its underlay, at the pace of a steady amateur. Trim is fitted by itself. */
export function layingTime({ kind, area, underlay }: CoveringTakeoff, assumed: Assumed): Operand {
  const covering = times(area, assumed.cell(`rate.roof-${kind}`));
  return underlay ? plus(covering, times(underlay.laid, assumed.cell("rate.underlay"))) : covering;
}

/** Person-time to lay the sheets of a deck; absent where it has none. */
export function deckSheetsTime({ deck }: CoveringTakeoff, assumed: Assumed): Operand | undefined {
  return deck?.sheeted && times(deck.sheeted, assumed.cell("rate.deckSheets"));
}

/** Person-hours on the roof, in the order of the work; each absent where there is nothing of it. */
export interface RoofHours {
  /** Fascia, and the trim that the covering laps over. */
  readonly eaves: Cell | undefined;
  readonly roof: Cell | undefined;
  /** Rake trim and caps, over the covering. */
  readonly trim: Cell | undefined;
}

/** Lays the stages of the covering and of what is fitted along its edges below and over it, fascia included. */
export function layRoofHours(
  sheet: Sheet,
  assumed: Assumed,
  groups: readonly PieceGroup[],
  covering: CoveringTakeoff | undefined,
): RoofHours {
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`common.hours.${name}`, times(formula, assumed.cell("pace")), { label, display: "person-h" });
  const fascia = groups.filter(({ role }) => role === "fascia").map(({ totalLength }) => totalLength);
  const fitted = (name: string, label: string, lengths: readonly Operand[]) =>
    lengths.length > 0 ? hours(name, label, times(sumOr(lengths, "m"), assumed.cell("rate.trim"))) : undefined;
  const below = covering?.trimBelow;
  return {
    eaves: fitted("eaves", below ? "fit fascia and eave trim" : "fit fascia", [...fascia, ...(below ? [below] : [])]),
    roof: covering && hours("roof", "lay the covering", layingTime(covering, assumed)),
    trim: fitted("trim", "fit rake trim and caps", covering ? trimOver(covering) : []),
  };
}

/** Length of the trims over the covering; nothing where all lie below it. */
function trimOver({ trimLength, trimBelow }: CoveringTakeoff): Operand[] {
  if (!trimBelow) return [trimLength];
  return trimBelow === trimLength ? [] : [minus(trimLength, trimBelow)];
}
