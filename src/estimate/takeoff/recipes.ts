/**
 * What holds each kind of connection: a recipe of bolts, screws or nails and connectors for one connection.
 * How many there are in one connection is an assumption and no statement of strength.
 */
import { exactly } from "../quantity/text.js";
import { type Cell, number, type Operand, plus, times } from "../sheet/expression.js";
import { BOLT_STEPS, LONGEST_BOLT, layStocked, leastLength } from "./bolts.js";
import type { Connection } from "./connections.js";
import type { Hardware, HardwareItem } from "./hardware.js";
import { halvedPlank, halvedScrew, lightFixing, timberScrew, toeFixing } from "./light-fixing.js";

/** Thicker pieces are timbers, which are bolted; thinner ones planks. Assumption. */
const TIMBER = exactly("3 in").value;

/** Narrower pieces, slats and battens, are held by one in the middle: two side by side would split them. Assumption. */
const NARROW = exactly("2 1/2 in").value;

/** The recipe of one connection. */
export function hardwareOf(hardware: Hardware, connection: Connection): HardwareItem[] {
  const { assumed, sheet, tieNail } = hardware;
  const { kind, thickness, width } = connection;
  const isTimber = sheet.decide(thickness).gte(TIMBER);
  switch (kind) {
    case "post-base":
      return postBase(hardware, connection);
    case "post-top":
      return bracketed(hardware);
    case "splice":
      return isTimber
        ? bolted(hardware, connection, assumed.cell("fastener.spliceBolts"), thickness)
        : [halvedPlank(hardware, connection, assumed.cell("fastener.lightSplice"))];
    case "lap":
      // Timbers are halved over the plate and screwed down from above: with a post right below, a bolt's nut has no room.
      return isTimber
        ? [halvedScrew(hardware, connection, assumed.cell("fastener.lapScrews"))]
        : bolted(hardware, connection, assumed.cell("fastener.lapBolts"), times(number("2"), thickness));
    case "ledger":
      return lagged(hardware, connection);
    case "hanger":
      return [
        { fastener: "joist-hanger", each: number("1"), diameter: thickness, length: width },
        { fastener: "ring-shank-nail", as: "hangerNails", each: assumed.cell("fastener.hangerNails"), ...tieNail },
      ];
    case "bearer-post": {
      const grip = connection.behind ? plus(thickness, connection.behind) : times(number("2"), thickness);
      return bolted(hardware, connection, assumed.cell("fastener.bearerBolts"), grip);
    }
    case "joist-seat":
      return [toeFixing(hardware, assumed.cell("fastener.joistSeat"))];
    case "bolt":
      // Flat against a neighbour that is taken to be as thick.
      return bolted(hardware, connection, assumed.cell("fastener.lapBolts"), times(number("2"), thickness));
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
    case "crossing": {
      const isNarrow = sheet.decide(width).lt(NARROW);
      return [lightFixing(hardware, connection, assumed.cell(`fastener.${isNarrow ? "narrowCrossing" : "crossing"}`))];
    }
    case "ends":
      return [lightFixing(hardware, connection, assumed.cell("fastener.crossing"))];
    case "face":
      return [lightFixing(hardware, connection, assumed.cell("fastener.face"))];
  }
}

/** Brackets in the corners between a post and what lies across it, nailed to both. */
function bracketed({ assumed, tieNail }: Hardware): HardwareItem[] {
  const brackets = assumed.cell("fastener.postTopBrackets");
  const nails = times(brackets, assumed.cell("fastener.bracketNails"));
  return [
    { fastener: "angle-bracket", each: brackets },
    { fastener: "ring-shank-nail", as: "bracketNails", each: nails, ...tieNail },
  ];
}

/** Lag screws through the ledger into the framing of the wall, each with a washer. */
function lagged({ sheet, bolt, defaults, units }: Hardware, { name, thickness }: Connection): HardwareItem[] {
  const stock = { steps: BOLT_STEPS[defaults.system], small: units.small };
  // Eight diameters into the wall: full published value (NDS 2018, 12.1.4.6, from memory).
  const deep = plus(thickness, times(number("8"), bolt.diameter));
  const length = layStocked(sheet, `fasteners.${name}`, "lag", deep, stock);
  const { diameter } = bolt;
  const one = number("1");
  return [
    { fastener: "lag-screw", each: one, diameter, length },
    { fastener: "washer", each: one, diameter },
  ];
}

/** The base, its bolts through the post, and a rod set in the concrete where that is poured. */
function postBase(hardware: Hardware, connection: Connection): HardwareItem[] {
  const { assumed, bolt, units, sheet, defaults } = hardware;
  const { thickness, width, name } = connection;
  const one = number("1");
  const sides = times(number("2"), assumed.cell("fastener.plate"));
  const bolts = bolted(hardware, connection, assumed.cell("fastener.baseBolts"), plus(thickness, sides));
  // A base is told apart by the post that it takes; the two sides stand in the places of diameter and length.
  const base: HardwareItem = { fastener: "post-base", each: one, diameter: thickness, length: width };
  if (!hardware.poured) return [base, ...bolts];
  const deep = leastLength(assumed.cell("fastener.anchorDepth"), bolt, 1);
  const stock = { steps: BOLT_STEPS[defaults.system], small: units.small };
  const length = layStocked(sheet, `fasteners.${name}`, "anchor", deep, stock);
  const { diameter } = bolt;
  return [
    base,
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
