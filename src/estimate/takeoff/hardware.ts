/** Hardware of the connections: what a sort of fastener is, and the sizes that all connections share. */
import type { FastenerKind } from "../../catalog/fasteners.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import type { Cell, Operand } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { BoltCells } from "./bolts.js";

/** Screws or nails where light pieces cross: purlins, fascia, rafter ends. */
export type LightFixing = "screws" | "nails";

/** One sort of fastener at a connection. */
export interface HardwareItem {
  readonly fastener: FastenerKind;
  /** For one connection. */
  readonly each: Operand;
  readonly diameter?: Cell;
  readonly length?: Cell;
  /** Told apart by more than the kind, where one connection has two of a kind. */
  readonly as?: string;
}

/** Sizes that all connections share, laid once. */
export interface Hardware {
  readonly sheet: Sheet;
  readonly units: DisplayUnits;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
  readonly light: LightFixing;
  readonly bolt: BoltCells;
  /** Whether post bases are held by a rod in poured concrete; a precast block has its own way. */
  readonly poured: boolean;
  /** Diameters of screws: for purlins and the like, for timbers, for boards. */
  readonly screw: Cell;
  readonly timberScrew: Cell;
  readonly boardScrew: Cell;
  /** Driven aslant through a rafter's end, and through the holes of a tie. */
  readonly toe: SizedCells;
  readonly tieNail: SizedCells;
}

interface SizedCells {
  readonly diameter: Cell;
  readonly length: Cell;
}

/** Lays the sizes that connections share. */
export function layHardware(
  sheet: Sheet,
  { assumed, defaults, light, bolt, poured }: Pick<Hardware, "assumed" | "defaults" | "light" | "bolt" | "poured">,
  units: DisplayUnits,
): Hardware {
  const size = (name: string, label: string, inch: string, metric: string, source = "common practice") => {
    const at = `/overrides/fasteners.${name}`;
    const value = defaults.quantity(undefined, at, { "inch-pound": inch, metric }, "common practice");
    return sheet.input(`fasteners.${name}`, value, { label, display: units.small, source });
  };
  const nails = "table of nails, TM 5-460";
  return {
    ...{ assumed, defaults, light, bolt, poured, sheet, units },
    screw: size("screw.diameter", "diameter of structural screws", "1/4 in", "6 mm"),
    timberScrew: size("timberScrew.diameter", "diameter of screws in timbers", "5/16 in", "8 mm"),
    boardScrew: size("boardScrew.diameter", "diameter of screws in boards", "0.19 in", "5 mm"),
    toe: {
      diameter: size("toe.diameter", "diameter of toenails; 10d", "0.148 in", "3.8 mm", nails),
      length: size("toe.length", "length of toenails or toe screws; 10d", "3 in", "80 mm", nails),
    },
    tieNail: {
      diameter: size("tieNail.diameter", "diameter of nails in rafter ties", "0.148 in", "4 mm"),
      length: size("tieNail.length", "length of nails in rafter ties", "1 1/2 in", "40 mm"),
    },
  };
}
