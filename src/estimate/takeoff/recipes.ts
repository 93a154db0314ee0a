/**
 * What holds each kind of connection: a recipe of bolts, screws or nails and connectors for one connection.
 * How many there are in one connection is an assumption and no statement of strength.
 */
import { exactly } from "../quantity/text.js";
import { type Cell, number, type Operand, plus, times } from "../sheet/expression.js";
import { BOLT_STEPS, LONGEST_BOLT, layStocked, leastLength } from "./bolts.js";
import type { Connection } from "./connections.js";
import type { Hardware, HardwareItem } from "./hardware.js";
import { lightFixing, timberScrew, toeFixing } from "./light-fixing.js";

/** Thicker pieces are timbers, which are bolted; thinner ones planks. Assumption. */
const TIMBER = exactly("3 in").value;

/** The recipe of one connection. */
export function hardwareOf(hardware: Hardware, connection: Connection): HardwareItem[] {
  const { assumed, sheet, tieNail } = hardware;
  const { kind, thickness, width } = connection;
  const isTimber = sheet.decide(thickness).gte(TIMBER);
  switch (kind) {
    case "post-base":
      return postBase(hardware, connection);
    case "post-top":
      return bolted(hardware, connection, assumed.cell("fastener.postTopBolts"), thickness);
    case "splice":
      return isTimber
        ? bolted(hardware, connection, assumed.cell("fastener.spliceBolts"), thickness)
        : [lightFixing(hardware, connection, assumed.cell("fastener.lightSplice"))];
    case "lap": {
      // Timbers are halved over the plate and bolted down; planks are bolted flat against their neighbour.
      const grip = isTimber ? width : times(number("2"), thickness);
      return bolted(hardware, connection, assumed.cell("fastener.lapBolts"), grip);
    }
    case "brace":
      return [timberScrew(hardware, connection, assumed.cell("fastener.braceScrews"))];
    case "rafter-plate":
      return [
        { fastener: "rafter-tie", each: number("1") },
        { fastener: "ring-shank-nail", as: "tieNails", each: assumed.cell("fastener.tieNails"), ...tieNail },
        toeFixing(hardware, assumed.cell("fastener.rafterPlate")),
      ];
    case "rafter-ridge":
      return [toeFixing(hardware, assumed.cell("fastener.rafterRidge"))];
    case "crossing":
      return [lightFixing(hardware, connection, assumed.cell("fastener.crossing"))];
    case "face":
      return [lightFixing(hardware, connection, assumed.cell("fastener.face"))];
  }
}

/** The base, its bolts through the post, and a rod set in the concrete. */
function postBase(hardware: Hardware, connection: Connection): HardwareItem[] {
  const { assumed, bolt, units, sheet, defaults } = hardware;
  const { thickness, width, name } = connection;
  const one = number("1");
  const sides = times(number("2"), assumed.cell("fastener.plate"));
  const bolts = bolted(hardware, connection, assumed.cell("fastener.baseBolts"), plus(thickness, sides));
  const deep = leastLength(assumed.cell("fastener.anchorDepth"), bolt, 1);
  const stock = { steps: BOLT_STEPS[defaults.system], small: units.small };
  const length = layStocked(sheet, `fasteners.${name}`, "anchor", deep, stock);
  const { diameter } = bolt;
  return [
    // A base is told apart by the post that it takes; the two sides stand in the places of diameter and length.
    { fastener: "post-base", each: one, diameter: thickness, length: width },
    ...bolts,
    { fastener: "threaded-rod", as: "anchor", each: one, diameter, length },
    { fastener: "nut", as: "anchorNut", each: one, diameter },
    { fastener: "washer", as: "anchorWasher", each: one, diameter },
  ];
}

/** Bolts with a nut and two washers each; past the longest bolt a threaded rod with two nuts. */
function bolted(
  { sheet, bolt, defaults, units }: Hardware,
  { name }: Connection,
  each: Cell,
  grip: Operand,
): HardwareItem[] {
  const stock = { steps: BOLT_STEPS[defaults.system], small: units.small };
  const length = layStocked(sheet, `fasteners.${name}`, "bolt", leastLength(grip, bolt, 2), stock);
  const isLong = sheet.decide(length).gt(exactly(LONGEST_BOLT[defaults.system]).value);
  const { diameter } = bolt;
  const twice = times(number("2"), each);
  return [
    { fastener: isLong ? "threaded-rod" : "hex-bolt", each, diameter, length },
    { fastener: "nut", each: isLong ? twice : each, diameter },
    { fastener: "washer", each: twice, diameter },
  ];
}
