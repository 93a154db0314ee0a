/** The work of buying: fetch or receive, sort, cut to length, dress what comes rough and is wanted dressed. */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import type { ShopShape } from "../request/shop.js";
import { type Cell, number, type Operand, over, plus, roundUp, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { DressingCells } from "./dressing.js";
import type { RipDownCells } from "./rip-down.js";

/** Pieces of one group that are bought. */
export interface BoughtWork {
  readonly group: PieceGroup;
  readonly pieces: Operand;
  /** Turning at a deep crosscut. */
  readonly turn: Cell;
  /** Of one piece. */
  readonly weight: Cell;
  /** Dressing of one as milled, where it is sold rough and wanted dressed. */
  readonly dressing: DressingCells | undefined;
  /** Ripping one down, where what is sold is larger than what is wanted. */
  readonly ripDown: RipDownCells | undefined;
}

/** Hours by stage, in the order of the work. */
export interface BuyingCells {
  readonly fetch: Cell;
  /** With a trailer of one's own; absent where lumber is delivered. */
  readonly trips: Cell | undefined;
  readonly sort: Cell;
  readonly cut: Cell;
  /** Absent where everything comes as it is wanted. */
  readonly dress: Operand | undefined;
  readonly dressByHand: Operand | undefined;
}

/** What a route buys, and how it comes. */
export interface Purchase {
  readonly bought: readonly BoughtWork[];
  /** Stock lengths bought. */
  readonly sticks: Operand;
  readonly lumber: ShopShape["lumber"];
}

/** Lays the stages of buying under a route's key. */
export function layBuying(
  { sheet, assumed }: { readonly sheet: Sheet; readonly assumed: Assumed },
  key: string,
  { bought, sticks, lumber }: Purchase,
): BuyingCells {
  const pace = assumed.cell("pace");
  const hours = (name: string, label: string, formula: Operand) =>
    sheet.lay(`${key}.hours.${name}`, formula, { label, display: "person-h" });
  const trips =
    lumber === "fetched"
      ? sheet.lay(`${key}.trips`, tripsOf(bought, assumed), { label: "trips to the yard" })
      : undefined;
  // Off the lorry or off the trailer, the more the longer.
  const unload = times(sticks, assumed.cell("buy.unload"));
  const dressed = (by: "byMachine" | "byHand") => dressingOf(bought, by, assumed);
  return {
    trips,
    fetch: trips
      ? hours("fetch", "fetch and unload lumber", times(plus(times(trips, assumed.cell("buy.fetch")), unload), pace))
      : hours("fetch", "receive and unload lumber", times(plus(assumed.cell("buy.receive"), unload), pace)),
    sort: hours("sort", "sort and stack lumber", times(sticks, assumed.cell("buy.sort"), pace)),
    cut: hours("cut", "cut lumber to length", cuttingToLength(bought, assumed)),
    dress: dressed("byMachine"),
    dressByHand: dressed("byHand"),
  };
}

/** What comes rough takes less than milled pieces do; what is sold larger is ripped down. */
function dressingOf(bought: readonly BoughtWork[], by: "byMachine" | "byHand", assumed: Assumed): Operand | undefined {
  const rough = bought.flatMap(({ pieces, dressing }) => (dressing ? [times(pieces, dressing[by])] : []));
  const larger = bought.flatMap(({ pieces, ripDown }) => (ripDown ? [times(pieces, ripDown[by])] : []));
  const lighter = rough.length > 0 ? [times(sumOr(rough, "person-h"), assumed.cell("dress.boughtShare"))] : [];
  const parts = [...lighter, ...larger];
  return parts.length > 0 ? sumOr(parts, "person-h") : undefined;
}

/** One crosscut a piece, and the turning where it is deeper than the saw. */
export function cuttingToLength(bought: readonly Pick<BoughtWork, "pieces" | "turn">[], assumed: Assumed): Operand {
  const crosscut = times(assumed.cell("rate.crosscut"), assumed.cell("pace"));
  return sumOr(
    bought.map(({ pieces, turn }) => times(pieces, plus(crosscut, turn))),
    "person-h",
  );
}

/** Trailer loads by weight. */
function tripsOf(bought: readonly BoughtWork[], assumed: Assumed): Operand {
  const weights = bought.map(({ pieces, weight }) => times(pieces, weight));
  return weights.length === 0 ? number("1") : roundUp(over(sumOr(weights, "kg"), assumed.cell("buy.trailer")));
}
