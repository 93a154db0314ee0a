/**
 * Where fasteners may stand in the wood: hole, and distances to edge, end and one another, as multiples of their diameter.
 *
 * Bolts: NDS 2018, 12.1.3.2 (hole) and tables 12.5.1A to D, for the full published value in softwood, l/D up to 6. Nails
 * and screws without a bored hole: NDS commentary, table C12.1.6.6. All from memory; a maker's own table goes first.
 */
import type { FastenerKind } from "../../catalog/fasteners.js";
import type { DisplayUnits } from "../quantity/display.js";
import { aside } from "../sheet/aside.js";
import { type Cell, minus, number, type Operand, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { Connection, ConnectionKind } from "./connections.js";
import type { HardwareItem } from "./hardware.js";

/** Lengths; of the bolts of a connection, or of its screws or nails. */
export interface Placing {
  /** Bored through, where there is a bolt. */
  readonly hole: Cell | undefined;
  /** Middle of the fastener to the edge towards which it is pressed, and to the end of the piece. */
  readonly edge: Cell;
  readonly end: Cell;
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
  readonly source: string;
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
  source: "NDS commentary, table C12.1.6.6",
};

/** Uplift pulls a base and a splice along the grain; everything else is pressed across one of its pieces. */
const PULLED_ALONG: ReadonlySet<ConnectionKind> = new Set(["post-base", "splice"]);

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
  if (connection.kind === "rafter-plate" || connection.kind === "rafter-ridge") return undefined;
  const bolt = items.find(({ fastener, as }) => BOLTED.has(fastener) && as === undefined);
  const item = bolt ?? items.find(({ fastener }) => DRIVEN_KINDS.has(fastener));
  const diameter = item?.diameter ?? (item?.fastener === "deck-screw" ? boardScrew : undefined);
  if (!item || !diameter) return undefined;
  const rule = bolt ? (PULLED_ALONG.has(connection.kind) ? ALONG_GRAIN : ACROSS_GRAIN) : DRIVEN;
  const lay = (name: string, label: string, formula: Operand) =>
    sheet.lay(`fasteners.${connection.name}.${name}`, formula, { label, display: units.small, source: rule.source });
  const diameters = (count: string) => times(number(count), diameter);
  const hole =
    bolt && lay("hole", "hole", plus(diameter, number(units.small === "mm" ? CLEARANCE.metric : CLEARANCE.inch)));
  const edge = lay("edge", "to the loaded edge, at least", diameters(rule.edge));
  const end = lay("end", "to the end of the piece, at least", diameters(rule.end));
  const apart = lay("apart", "one from the next along the grain, at least", diameters(rule.apart));
  const both = plus(edge, diameters(rule.otherEdge));
  const leastWidth = lay(
    "leastWidth",
    "width that holds them",
    plus(both, ...rowsOf(connection, item, bolt, rule, diameter)),
  );
  return { hole, edge, end, apart, leastWidth, fits: aside(leastWidth).lte(aside(connection.width)) };
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
