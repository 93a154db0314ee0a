/**
 * Rafters that are bought dressed: they are shallower than the finished section that the frame is laid out for. Cut with the
 * same seat, their upper edges stand lower and the notch takes more of their depth.
 */
import type { RafterCells } from "../pieces/common-rafter.js";
import type { RoofCells } from "../pieces/frame.js";
import type { Quantity } from "../quantity/quantity.js";
import { type Cell, minus, over, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** The rafter as laid out, and the depth that the yard sells in its place. */
export interface BoughtRafterInput {
  readonly rafter: RafterCells;
  readonly roof: Pick<RoofCells, "unitRun">;
  readonly depth: Quantity;
  /** What is sold, in words. */
  readonly offer: string;
}

/** Lengths of the bought rafter with the seat of the one laid out; the share is of its depth. */
export interface BoughtRafter {
  readonly depth: Cell;
  readonly heightAbovePlate: Cell;
  /** How much lower its upper edge stands. */
  readonly lower: Cell;
  readonly notchShare: Cell;
}

/** Lays the bought rafter's height above the plate and the share of its depth that the notch takes. */
export function layBoughtRafter(
  sheet: Sheet,
  { rafter, roof, depth: sold, offer }: BoughtRafterInput,
  { small }: { readonly small: string },
): BoughtRafter {
  sheet.title("boughtRafter", "Rafters as bought");
  const depth = sheet.catalog("boughtRafter.depth", sold, { label: `depth of ${offer} as sold`, display: small });
  const plumb = over(times(depth, rafter.unitLength), roof.unitRun);
  const heightAbovePlate = sheet.lay("boughtRafter.heightAbovePlate", minus(plumb, rafter.notchPlumb), {
    label: "height above plate, as bought",
    display: small,
  });
  const lower = sheet.lay("boughtRafter.lower", minus(rafter.heightAbovePlate, heightAbovePlate), {
    label: "upper edge lower than laid out by",
    display: small,
  });
  const notchShare = sheet.lay("boughtRafter.notchShare", over(rafter.notchDepth, depth), {
    label: "share of the bought depth that the birdsmouth takes",
    display: "%",
  });
  return { depth, heightAbovePlate, lower, notchShare };
}
