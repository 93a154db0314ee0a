/**
 * What holds each kind of connection: a recipe of bolts, screws or nails and connectors for one connection.
 *
 * Counts for one connection are assumptions and no statement of strength. Lengths follow penetration rules of the NDS:
 * ten diameters for nails and wood screws, eight for lag and structural screws give the full published value.
 */
import { type FastenerKind, nailShank, pennies } from "../../catalog/fasteners.js";
import type { DisplayUnits } from "../quantity/display.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { exactly } from "../quantity/text.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { type Cell, type Expression, number, type Operand, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { BOLT_STEPS, type BoltCells, LONGEST_BOLT, leastLength, SCREW_STEPS, stocked } from "./bolts.js";
import type { Connection } from "./connections.js";

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

const LAG = number("8");
const SHANK = number("10");
/** Thinner pieces are boards, which a structural screw would split; thicker ones are timbers, which are bolted. */
const BOARD = exactly("1 1/4 in").value;
const TIMBER = exactly("3 in").value;

/** Lays the sizes that connections share. */
export function layHardware(
  sheet: Sheet,
  base: Pick<Hardware, "assumed" | "defaults" | "light" | "bolt">,
  units: DisplayUnits,
): Hardware {
  const size = (name: string, label: string, inch: string, metric: string, source = "common practice") => {
    const at = `/overrides/fasteners.${name}`;
    const value = base.defaults.quantity(undefined, at, { "inch-pound": inch, metric }, "common practice");
    return sheet.input(`fasteners.${name}`, value, { label, display: units.small, source });
  };
  const nails = "table of nails, TM 5-460";
  return {
    ...base,
    sheet,
    units,
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

/** The recipe of one connection. */
export function hardwareOf(hardware: Hardware, connection: Connection): HardwareItem[] {
  const { assumed } = hardware;
  const { kind, thickness, width } = connection;
  const isTimber = hardware.sheet.decide(thickness).gte(TIMBER);
  switch (kind) {
    case "post-base":
      return postBase(hardware, connection);
    case "post-top":
      return bolted(hardware, connection, assumed.cell("fastener.postTopBolts"), thickness);
    case "splice":
      return isTimber
        ? bolted(hardware, connection, assumed.cell("fastener.spliceBolts"), thickness)
        : lightly(hardware, connection, assumed.cell("fastener.lightSplice"));
    case "lap": {
      // Timbers are halved over the plate and bolted down; planks are bolted flat against their neighbour.
      const grip = isTimber ? width : times(number("2"), thickness);
      return bolted(hardware, connection, assumed.cell("fastener.lapBolts"), grip);
    }
    case "brace":
      return [screwed(hardware, connection, assumed.cell("fastener.braceScrews"), hardware.timberScrew)];
    case "rafter-plate":
      return [
        { fastener: "rafter-tie", each: number("1") },
        { fastener: "ring-shank-nail", as: "tieNails", each: assumed.cell("fastener.tieNails"), ...hardware.tieNail },
        toe(hardware, assumed.cell("fastener.rafterPlate")),
      ];
    case "rafter-ridge":
      return [toe(hardware, assumed.cell("fastener.rafterRidge"))];
    case "crossing":
      return lightly(hardware, connection, assumed.cell("fastener.crossing"));
    case "face":
      return lightly(hardware, connection, assumed.cell("fastener.face"));
  }
}

/** The base, its bolts through the post, and a rod set in the concrete. */
function postBase(hardware: Hardware, connection: Connection): HardwareItem[] {
  const { assumed, bolt, units, sheet, defaults } = hardware;
  const { thickness, width, name } = connection;
  // A base is told apart by the post that it takes; its two sides stand for diameter and length.
  const base: HardwareItem = { fastener: "post-base", each: number("1"), diameter: thickness, length: width };
  const sides = times(number("2"), assumed.cell("fastener.plate"));
  const bolts = bolted(hardware, connection, assumed.cell("fastener.baseBolts"), plus(thickness, sides));
  const least = leastLength(assumed.cell("fastener.anchorDepth"), bolt, 1);
  const length = sheet.lay(`fasteners.${name}.anchorLength`, stocked(least, BOLT_STEPS[defaults.system]), {
    label: "anchor rod, next stock length",
    display: units.small,
  });
  const { diameter } = bolt;
  return [
    base,
    ...bolts,
    { fastener: "threaded-rod", as: "anchor", each: number("1"), diameter, length },
    { fastener: "nut", as: "anchorNut", each: number("1"), diameter },
    { fastener: "washer", as: "anchorWasher", each: number("1"), diameter },
  ];
}

/** Bolts with a nut and two washers each; past the longest bolt a threaded rod with two nuts. */
function bolted(
  { sheet, bolt, defaults, units }: Hardware,
  { name }: Connection,
  each: Cell,
  grip: Operand,
): HardwareItem[] {
  const { system } = defaults;
  const least = sheet.lay(`fasteners.${name}.leastBolt`, leastLength(grip, bolt, 2), {
    label: "grip, washers, nut and two threads",
    display: units.small,
  });
  const length = sheet.lay(`fasteners.${name}.boltLength`, stocked(least, BOLT_STEPS[system]), {
    label: "bolt, next stock length",
    display: units.small,
  });
  const isLong = sheet.decide(length).gt(exactly(LONGEST_BOLT[system]).value);
  const { diameter } = bolt;
  const twice = times(number("2"), each);
  return [
    { fastener: isLong ? "threaded-rod" : "hex-bolt", each, diameter, length },
    { fastener: "nut", each: isLong ? twice : each, diameter },
    { fastener: "washer", each: twice, diameter },
  ];
}

function lightly(hardware: Hardware, connection: Connection, each: Cell): HardwareItem[] {
  const isBoard = hardware.sheet.decide(connection.thickness).lt(BOARD);
  const nail = hardware.light === "nails" ? nailed(hardware, connection, each) : undefined;
  if (nail) return [nail];
  return isBoard ? [deckScrew(hardware, connection, each)] : [screwed(hardware, connection, each, hardware.screw)];
}

/** Through the piece and eight diameters beyond (NDS 12.1.4, lag screws). */
function screwed(hardware: Hardware, connection: Connection, each: Cell, diameter: Cell): HardwareItem {
  return { fastener: "structural-screw", each, diameter, length: screwLength(hardware, connection, diameter, LAG) };
}

/** Through the board and ten diameters beyond (NDS 12.1.5, wood screws). Asked for by length: gauges differ. */
function deckScrew(hardware: Hardware, connection: Connection, each: Cell): HardwareItem {
  return { fastener: "deck-screw", each, length: screwLength(hardware, connection, hardware.boardScrew, SHANK) };
}

function screwLength(
  { sheet, units, defaults }: Hardware,
  { name, thickness }: Connection,
  diameter: Cell,
  deep: Expression,
): Cell {
  const least = plus(thickness, times(deep, diameter));
  return sheet.lay(`fasteners.${name}.screwLength`, stocked(least, SCREW_STEPS[defaults.system]), {
    label: "screw, next stock length",
    display: units.small,
  });
}

function toe({ toe: { diameter, length }, screw, light, defaults }: Hardware, each: Cell): HardwareItem {
  if (light === "screws") return { fastener: "structural-screw", as: "toeScrews", each, diameter: screw, length };
  const fastener = defaults.system === "metric" ? "ring-shank-nail" : "common-nail";
  return { fastener, as: "toenails", each, diameter, length };
}

/** Metric wire nails, diameter × length in mm (DIN 1151, from memory). */
const METRIC_NAILS = [
  ["2.2", "50"],
  ["2.5", "60"],
  ["2.8", "65"],
  ["3.1", "80"],
  ["3.4", "90"],
  ["3.8", "100"],
  ["4.2", "120"],
  ["4.6", "130"],
  ["5.5", "160"],
] as const;

/** The shortest nail that goes through the piece and ten of its diameters beyond (NDS 12.1.6), if one is made. */
export function nailFor(
  thickness: Quantity,
  system: Defaults["system"],
): { readonly diameter: Quantity; readonly length: Quantity } | undefined {
  const made =
    system === "metric"
      ? METRIC_NAILS.map(([diameter, length]) => ({
          diameter: quantity(diameter, "mm"),
          length: quantity(length, "mm"),
        }))
      : pennies.map((penny) => nailShank("common-nail", penny)).filter((shank) => shank !== undefined);
  return made.find(({ diameter, length }) => length.value.gte(thickness.value.plus(diameter.value.times(10))));
}

function nailed({ sheet, defaults, units }: Hardware, { name, thickness }: Connection, each: Cell) {
  const { system } = defaults;
  const nail = nailFor({ value: sheet.decide(thickness), unit: thickness.unit }, system);
  if (!nail) return undefined;
  const source = system === "metric" ? "DIN 1151" : "table of nails, TM 5-460";
  const lay = (side: "diameter" | "length") =>
    sheet.input(`fasteners.${name}.nail.${side}`, nail[side], { label: side, display: units.small, source });
  const fastener: FastenerKind = system === "metric" ? "ring-shank-nail" : "common-nail";
  return { fastener, each, diameter: lay("diameter"), length: lay("length") } satisfies HardwareItem;
}
