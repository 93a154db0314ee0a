/**
 * Screws and nails: long enough to go through the piece that they hold and, by the NDS, eight diameters beyond (lag and
 * structural screws, 12.1.4) or ten (wood screws and nails, 12.1.5 and 12.1.6), where they reach their full published value.
 */
import { nailShank } from "../../catalog/fasteners.js";
import { wholesIn } from "../pieces/spacing.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem } from "../quantity/text.js";
import { type Cell, type Expression, greatest, number, type Operand, over, plus, times } from "../sheet/expression.js";
import { layStocked, SCREW_STEPS } from "./bolts.js";
import type { Connection } from "./connections.js";
import type { Hardware, HardwareItem } from "./hardware.js";

const EIGHT = number("8");
const TEN = number("10");
/** Thinner pieces are boards, which a structural screw would split. Assumption. */
const BOARD = exactly("1 1/4 in").value;

/** Screws or nails, as chosen, through a light piece; a screw where no nail is long enough. */
export function lightFixing(hardware: Hardware, connection: Connection, each: Cell): HardwareItem {
  const nail = hardware.light === "nails" ? nailed(hardware, connection, each) : undefined;
  if (nail) return nail;
  const isBoard = hardware.sheet.decide(connection.thickness).lt(BOARD);
  return isBoard ? boardScrew(hardware, connection, each) : structuralScrew(hardware, connection, each, hardware.screw);
}

/** A structural screw in timbers, such as at the foot of a brace. */
export const timberScrew = (hardware: Hardware, connection: Connection, each: Cell): HardwareItem =>
  structuralScrew(hardware, connection, each, hardware.timberScrew);

/** From above through the upper half of a piece that is halved over another, and as far into the lower one as it must. */
export function halvedScrew(hardware: Hardware, { name, width }: Connection, each: Cell): HardwareItem {
  const { sheet, units, defaults, timberScrew: diameter } = hardware;
  const stock = { steps: SCREW_STEPS[defaults.system], small: units.small };
  const deep = plus(over(width, number("2")), times(EIGHT, diameter));
  const length = layStocked(sheet, `fasteners.${name}`, "screw", deep, stock);
  return { fastener: "structural-screw", each, diameter, length };
}

/** Driven aslant through the end of a rafter. */
export function toeFixing({ toe, screw, light, defaults }: Hardware, each: Cell): HardwareItem {
  if (light === "screws") {
    return { fastener: "structural-screw", as: "toeScrews", each, diameter: screw, length: toe.length };
  }
  return { fastener: nailKind(defaults.system), as: "toenails", each, ...toe };
}

function structuralScrew(hardware: Hardware, connection: Connection, each: Cell, diameter: Cell): HardwareItem {
  return { fastener: "structural-screw", each, diameter, length: screwLength(hardware, connection, diameter, EIGHT) };
}

/** Asked for by length alone: gauges differ from maker to maker. */
function boardScrew(hardware: Hardware, connection: Connection, each: Cell): HardwareItem {
  return { fastener: "deck-screw", each, length: screwLength(hardware, connection, hardware.boardScrew, TEN) };
}

function screwLength(
  { sheet, units, defaults }: Hardware,
  connection: Connection,
  diameter: Cell,
  deep: Expression,
): Cell {
  const stock = { steps: SCREW_STEPS[defaults.system], small: units.small };
  const least = plus(through(connection), times(deep, diameter));
  return layStocked(sheet, `fasteners.${connection.name}`, "screw", least, stock);
}

/** What a point goes through before it bites in what carries the piece. */
const through = ({ thickness, over }: Connection): Operand => (over ? plus(thickness, over) : thickness);

/**
 * Through both halves of a plank that is halved end to end, and not out at the back: the longest in stock that is no longer
 * than the plank is thick, less a sixth for planks that are sold thinner than their name.
 */
export function halvedPlank(
  { sheet, units, defaults }: Hardware,
  { name, thickness }: Connection,
  each: Cell,
): HardwareItem {
  const { step } = SCREW_STEPS[defaults.system].fine;
  const most = times(over(number("5"), number("6")), thickness);
  const length = sheet.lay(
    `fasteners.${name}.screwLength`,
    times(greatest(wholesIn(most, number(step)), number("1")), number(step)),
    {
      label: "screw, the longest that does not come through",
      display: units.small,
    },
  );
  return { fastener: "deck-screw", each, length };
}

/** Inch nails go by the penny; metric ones by diameter and length, as ring-shank nails do. */
const nailKind = (system: MeasureSystem) => (system === "metric" ? "ring-shank-nail" : "common-nail");

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

/** Pennies that yards keep; odd ones are in the tables but seldom on the shelf. Common practice. */
const PENNIES = ["4d", "6d", "8d", "10d", "16d", "20d", "30d", "40d", "60d"];

/** A nail as it is bought. */
export interface NailSize {
  readonly diameter: Quantity;
  readonly length: Quantity;
}

const NAIL_SIZES: Readonly<Record<MeasureSystem, readonly NailSize[]>> = {
  "inch-pound": PENNIES.flatMap((penny) => nailShank("common-nail", penny) ?? []),
  metric: METRIC_NAILS.map(([diameter, length]) => ({
    diameter: quantity(diameter, "mm"),
    length: quantity(length, "mm"),
  })),
};

/** The shortest nail that goes through the piece and ten of its diameters beyond, if one is made. */
export function nailFor(thickness: Quantity, system: MeasureSystem): NailSize | undefined {
  return NAIL_SIZES[system].find(({ diameter, length }) =>
    length.value.gte(thickness.value.plus(diameter.value.times(10))),
  );
}

function nailed({ sheet, defaults, units }: Hardware, connection: Connection, each: Cell): HardwareItem | undefined {
  const { system } = defaults;
  const { name, thickness } = connection;
  const value = sheet.decideOf(`fasteners.${name}.through`, through(connection));
  const nail = nailFor({ value, unit: thickness.unit }, system);
  if (!nail) return undefined;
  const source = system === "metric" ? "DIN 1151" : "table of nails, TM 5-460";
  const lay = (side: "diameter" | "length") =>
    sheet.input(`fasteners.${name}.nail.${side}`, nail[side], { label: `nail, ${side}`, display: units.small, source });
  return { fastener: nailKind(system), each, diameter: lay("diameter"), length: lay("length") };
}
