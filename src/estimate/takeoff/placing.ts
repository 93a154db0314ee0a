/**
 * Where fasteners may stand in the wood: hole, and distances to edge, end and one another, as multiples of their diameter.
 *
 * Bolts: NDS 2018, 12.1.3.2 (hole) and tables 12.5.1A to D, for the full published value in softwood, l/D up to 6. Nails
 * and screws, without a bored hole and with one: NDS commentary, table C12.1.6.6; their holes 12.1.4 to 12.1.6, by the wood's
 * specific gravity. All from memory; a maker's own table goes first.
 */
import type { FastenerKind } from "../../catalog/fasteners.js";
import type { Decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import { aside } from "../sheet/aside.js";
import { type Cell, minus, number, type Operand, over, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { Connection, ConnectionKind } from "./connections.js";
import type { HardwareItem } from "./hardware.js";

/** Lengths; of the bolts of a connection, or of its screws or nails. */
export interface Placing {
  /** Bored through, where there is a bolt; for the shank of a lag screw. */
  readonly hole: Cell | undefined;
  /** Pilot hole of a nail, a screw, or the thread of a lag screw, at most. */
  readonly pilot: Cell | undefined;
  /** Middle of the fastener to the edge towards which it is pressed, and to the end of the piece. */
  readonly edge: Cell;
  readonly end: Cell;
  /** To the end where the pilot hole is bored; undefined where a bolt's hole always is. */
  readonly boredEnd: Cell | undefined;
  /** See `Connection`; undefined where no end is near. */
  readonly endRoom: Cell | undefined;
  readonly endFits: boolean;
  /** Middles, one from the next along the grain. */
  readonly apart: Cell;
  /** What a piece must measure across the grain to hold them. */
  readonly leastWidth: Cell;
  /** Whether the pieces that are held do. */
  readonly fits: boolean;
}

/** Multiples of the diameter. */
interface Rule {
  readonly edge: string;
  /** Away from which it is pressed. */
  readonly otherEdge: string;
  readonly end: string;
  readonly apart: string;
  /** Between rows side by side across the grain. */
  readonly rows: string;
  /** To the end in a bored pilot hole, and the widest such hole by the wood's specific gravity. */
  readonly boredEnd?: string;
  readonly pilot?: PilotRule;
  readonly source: string;
}

/** Widest pilot hole: in softwoods, above a specific gravity of 0.5, and above 0.6, where the hardest woods begin. */
type PilotRule = readonly [soft: string, middling: string, hard: string];

/** 12.1.6.1: 75 % of a nail's diameter, 90 % in the hardest woods. */
const NAIL_PILOT: PilotRule = ["0.75", "0.75", "0.9"];
/** 12.1.4.2: 40 to 70, 60 to 75, 65 to 85 % of the shank of a lag screw. */
const LAG_PILOT: PilotRule = ["0.7", "0.75", "0.85"];

/** Where no wood is known, a softwood's. */
function pilotIn([soft, middling, hard]: PilotRule, gravity: Decimal | undefined): string {
  if (!gravity || gravity.lte("0.5")) return soft;
  return gravity.lte("0.6") ? middling : hard;
}

const BOLTS = "NDS 2018, tables 12.5.1A to D";
const ALONG_GRAIN: Rule = { edge: "1.5", otherEdge: "1.5", end: "7", apart: "4", rows: "1.5", source: BOLTS };
const ACROSS_GRAIN: Rule = { ...ALONG_GRAIN, edge: "4" };
const DRIVEN: Rule = {
  edge: "2.5",
  otherEdge: "2.5",
  end: "15",
  apart: "15",
  rows: "5",
  boredEnd: "10",
  pilot: NAIL_PILOT,
  source: "NDS commentary, table C12.1.6.6",
};

/** Lag screws go by the rules of bolts (12.5). */
const LAGGED: Rule = { ...ACROSS_GRAIN, pilot: LAG_PILOT };

/** Uplift pulls a base and a splice along the grain; everything else is pressed across one of its pieces. */
const PULLED_ALONG: ReadonlySet<ConnectionKind> = new Set(["post-base", "splice"]);

/** Driven aslant, or through the holes of a connector. */
const ASLANT: ReadonlySet<ConnectionKind> = new Set([
  "post-top",
  "hanger",
  "joist-seat",
  "rafter-plate",
  "rafter-ridge",
]);

const BOLTED: ReadonlySet<FastenerKind> = new Set(["hex-bolt", "carriage-bolt", "threaded-rod"]);
const DRIVEN_KINDS: ReadonlySet<FastenerKind> = new Set([
  "structural-screw",
  "deck-screw",
  "common-nail",
  "ring-shank-nail",
]);

/** A hole is larger than its bolt by no more than this. */
const CLEARANCE = { inch: "1/16 in", metric: "1 mm" } as const;

/**
 * Lays the places of a connection's bolts, or else of its screws or nails; undefined where all are driven aslant or through
 * the holes of a connector.
 * @param boardScrew - Diameter of screws that are asked for by length alone.
 */
export function layPlacing(
  sheet: Sheet,
  connection: Connection,
  items: readonly HardwareItem[],
  { boardScrew, units }: { readonly boardScrew: Cell; readonly units: DisplayUnits },
): Placing | undefined {
  if (ASLANT.has(connection.kind)) return undefined;
  const bolt = items.find(({ fastener, as }) => BOLTED.has(fastener) && as === undefined);
  const lag = items.find(({ fastener }) => fastener === "lag-screw");
  const item = bolt ?? lag ?? items.find(({ fastener }) => DRIVEN_KINDS.has(fastener));
  const diameter = item?.diameter ?? (item?.fastener === "deck-screw" ? boardScrew : undefined);
  if (!item || !diameter) return undefined;
  const rule = bolt ? (PULLED_ALONG.has(connection.kind) ? ALONG_GRAIN : ACROSS_GRAIN) : lag ? LAGGED : DRIVEN;
  const lay = (name: string, label: string, formula: Operand) =>
    sheet.lay(`fasteners.${connection.name}.${name}`, formula, { label, display: units.small, source: rule.source });
  const diameters = (count: string) => times(number(count), diameter);
  const hole = lag
    ? lay("hole", "hole of the shank", diameters("1"))
    : bolt && lay("hole", "hole", plus(diameter, number(units.small === "mm" ? CLEARANCE.metric : CLEARANCE.inch)));
  const edge = lay("edge", "to the loaded edge, at least", diameters(rule.edge));
  const end = lay("end", "to the end of the piece, at least", diameters(rule.end));
  const pilot = rule.pilot
    ? lay("pilot", "pilot hole, at most", drill(diameters(pilotIn(rule.pilot, connection.gravity)), units))
    : undefined;
  const boredEnd = rule.boredEnd
    ? lay("boredEnd", "to the end of the piece where a pilot hole is bored", diameters(rule.boredEnd))
    : undefined;
  const apart = lay("apart", "one from the next along the grain, at least", diameters(rule.apart));
  const both = plus(edge, diameters(rule.otherEdge));
  const leastWidth = lay(
    "leastWidth",
    "width that holds them",
    plus(both, ...rowsOf(connection, item, bolt ?? lag, rule, diameter)),
  );
  // Screwed down from above, a halved tie offers its thickness.
  const across = connection.kind === "lap" && !bolt ? connection.thickness : connection.width;
  const { endRoom } = connection;
  const least = boredEnd ?? end;
  return {
    ...{ hole, pilot, edge, end, boredEnd, endRoom, apart, leastWidth },
    fits: aside(leastWidth).lte(aside(across)),
    endFits: endRoom === undefined || aside(least).lte(aside(endRoom)),
  };
}

/** The next smaller drill that is sold: by 1/64 in, or by half a millimetre. */
function drill(most: Operand, { small }: DisplayUnits): Operand {
  const step = number(small === "mm" ? "0.5 mm" : "1/64 in");
  return times(number("-1"), roundUp(over(times(number("-1"), most), step)), step);
}

/** Bolts, and the screws of a long splice, stand one behind the other; other screws and nails side by side. */
function rowsOf(
  { kind }: Connection,
  { each }: HardwareItem,
  bolt: HardwareItem | undefined,
  { rows }: Rule,
  diameter: Cell,
): Operand[] {
  if (bolt) return [];
  const between = times(number(rows), diameter);
  return [kind === "splice" ? between : times(between, minus(each, number("1")))];
}
