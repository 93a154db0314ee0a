/**
 * What every way of covering a roof works with: the surface, the offer that sizes are read from, and how a size, a part or a
 * fastener is laid. Sizes are those of the price catalog where it has an offer, else the table of coverings and common
 * practice, which is put on record as a default.
 */
import type { Covering, CoveringKind } from "../../catalog/coverings.js";
import type { CorrosionClassId, Exposure, FastenerKind } from "../../catalog/fasteners.js";
import type { Spread } from "../../catalog/finishes.js";
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import type { Citation } from "../../catalog/sources.js";
import { FaultError } from "../faults.js";
import type { CoveringPart, CutToLength, Fitted, Need } from "../need.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Quantity } from "../quantity/quantity.js";
import { type Assumed, citation } from "../request/assumed.js";
import type { Defaults, InEither } from "../request/given.js";
import { aside } from "../sheet/aside.js";
import { type Cell, number, type Operand, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { leastClass } from "./corrosion.js";
import type { CoveredRoof } from "./covered-roof.js";
import type { CoveredFace, CoveredSurface } from "./covering-faces.js";
import type { SlopeVerdict } from "./slope-verdict.js";

/** What a covering is laid from, and where its cells and lines are put. */
export interface CoveringWork {
  readonly sheet: Sheet;
  readonly units: DisplayUnits;
  /** Prefix of all cells: `covering` for the one that is built, `coverings.<kind>` for one that is compared. */
  readonly name: string;
  readonly kind: CoveringKind;
  readonly row: Covering;
  readonly offer: CoveringOffer | undefined;
  readonly roof: CoveredRoof;
  readonly surface: CoveredSurface;
  readonly slope: SlopeVerdict;
  /** Where the fasteners are to last: the wood of the deck. */
  readonly exposure: Exposure;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** How one plane is filled, for lists and drawings. */
export interface FaceLayout {
  readonly face: CoveredFace;
  /** Panels, boards or strips side by side; absent for courses and rolls. */
  readonly across?: Cell;
  /** Panels, courses or rolls one above the other. */
  readonly up: Cell;
  /** What one of them adds: cover width of a panel or board, height of a course or roll to the weather. */
  readonly module: Cell;
  /** Of one panel or board, where all are equally long. */
  readonly pieceLength?: Cell;
  /** On a hipped plane, from one corner to the other: how far up the slope each panel or board reaches, and in how many pieces. */
  readonly strips?: readonly { readonly reach: Cell; readonly up: Cell; readonly length: Cell }[];
}

/** What a way of covering lays. */
export interface LaidCovering {
  readonly faces: readonly FaceLayout[];
  readonly needs: readonly Need[];
  /** Trims along all edges, laps not counted: what is fitted. */
  readonly trimLength: Cell;
  /** Those of them that lie below the covering: eave trim and drip edge; absent where there are none. */
  readonly trimBelow?: Cell | undefined;
}

/** The same text in both measure systems. */
export const both = (text: string): InEither => ({ "inch-pound": text, metric: text });

/** Width that a piece of a covering covers, where its row says it. */
export const coverWidthOf = ({ coverWidth, metric }: Covering, otherwise: InEither): InEither => ({
  "inch-pound": coverWidth ?? otherwise["inch-pound"],
  metric: metric?.coverWidth ?? otherwise.metric,
});

/** Lays a size: the catalog's, or a default put on record. @param otherwise - A cited table's where `from` is given. */
export function laySize(
  { sheet, name, row, offer, defaults, units }: CoveringWork,
  size: string,
  label: string,
  offered: Quantity | undefined,
  otherwise: InEither,
): Cell {
  const cell = `${name}.${size}`;
  // Lengths in the small unit; an area as it was written.
  const notes = ({ unit }: Quantity) => (unit.symbol === "mm" ? { label, display: units.small } : { label });
  if (offered) return sheet.catalog(cell, offered, { ...notes(offered), source: offer?.label ?? "price catalog" });
  const value = defaults.quantity(undefined, `/overrides/${cell}`, otherwise, "common practice");
  return sheet.input(cell, value, { ...notes(value), source: citation(row.from) });
}

/** Lays a range that belongs to this covering alone. */
export const laySpread = (
  { assumed, name }: CoveringWork,
  of: string,
  label: string,
  spread: Spread,
  from: Citation,
): Cell => assumed.spread(`${name}.${of}`, label, spread, from);

const WORDS: Readonly<Record<CoveringPart, string>> = {
  panel: "Roof panels",
  course: "Shingles",
  roll: "Roofing in rolls",
  board: "Roof boards",
  "ridge-cap": "Ridge cap",
  "hip-cap": "Hip cap",
  "eave-trim": "Eave trim",
  "rake-trim": "Rake trim",
  "drip-edge": "Drip edge",
  "starter-strip": "Starter strip",
  "eave-closure": "Closure strips, eave",
  "ridge-closure": "Closure strips, ridge",
  batten: "Battens",
  "lap-sealant": "Lap sealant",
  adhesive: "Bonding adhesive, area glued",
  underlay: "Underlay",
  sheathing: "Deck sheets",
  deck: "Deck boards",
};

/** What caps the upper edge of a single slope is a flashing: along its free high side, or against the wall. */
const UPPER_EDGE: Readonly<Record<"edge" | "wall", Partial<Readonly<Record<CoveringPart, string>>>>> = {
  edge: { "ridge-cap": "High-side flashing", "ridge-closure": "Closure strips, high side" },
  wall: { "ridge-cap": "Headwall flashing", "ridge-closure": "Closure strips, headwall" },
};

/** A part of the covering in the trade's words. */
export function partWords({ roof: { upper }, kind }: Pick<CoveringWork, "roof" | "kind">, part: CoveringPart): string {
  if (part === "course" && kind === "wood-shakes") return "Shakes";
  return (upper === "ridge" ? undefined : UPPER_EDGE[upper][part]) ?? WORDS[part];
}

/** A part as a need. */
export function partNeed(
  work: CoveringWork,
  part: CoveringPart,
  quantity: Cell,
  more: {
    readonly pieceLength?: Cell;
    readonly cuts?: readonly CutToLength[];
    readonly fitted?: Fitted;
    readonly label?: string;
  } = {},
): Need {
  const { name, kind } = work;
  const { label = partWords(work, part), ...item } = more;
  return { name: `${name}.${part}`, label, item: { kind: "covering", covering: kind, part, ...item }, quantity };
}

/** A fastener to be driven. */
export interface Driven {
  readonly fastener: FastenerKind;
  /** Last part of its cells' names; the fastener's own where absent. */
  readonly as?: string;
  readonly label: string;
  readonly driven: Operand;
  /** Usual length; absent where length tells nothing. */
  readonly length?: InEither;
  /** Lies dry below the covering. */
  readonly dry?: boolean;
}

/** A fastener as a need, spares included. Asked for by length alone: gauges differ from maker to maker. */
export function fastenerNeed(
  work: CoveringWork,
  { fastener, as = fastener, label, driven, length, dry }: Driven,
): Need {
  const { sheet, units, assumed, defaults, exposure } = work;
  const name = `${work.name}.${as}`;
  const cell =
    length &&
    sheet.input(
      `${name}.length`,
      defaults.quantity(undefined, `/overrides/${name}.length`, length, "common practice"),
      {
        label: `length of ${label.toLowerCase()}`,
        display: units.small,
      },
    );
  const order = roundUp(times(driven, plus(number("1"), assumed.cell("fastener.spare"))));
  const quantity = sheet.lay(`${name}.order`, order, { label: `${label.toLowerCase()}, spares included` });
  // Below the covering no rain comes, but salt air does.
  const corrosion = leastClass(dry && exposure.climate !== "salt" ? { ...exposure, climate: "dry" } : exposure);
  const item = { kind: "fastener", fastener, ...(cell && { length: cell }), corrosion } as const;
  return { name, label: `${label}${askedFor(corrosion)}`, item, quantity };
}

/** Screws and nails for roofs are sold for the weather; what more they must be is said. */
function askedFor(corrosion: CorrosionClassId): string {
  if (corrosion === "stainless") return ", stainless";
  return corrosion === "hot-dip-galvanized" ? ", hot-dip galvanized or better" : "";
}

/**
 * A lap must leave most of the piece to cover with.
 * @throws FaultError when it takes half of it or more.
 */
export function refuseLongLap(sheet: Sheet, lap: Cell, piece: Cell): void {
  if (aside(lap).times(2).lt(aside(piece))) return;
  const wrong = `The ${lap.label} of ${sheet.onTape(lap)} takes half of ${sheet.onTape(piece)} or more.`;
  const cure = "Give a shorter lap or longer pieces.";
  throw new FaultError([{ code: "cannot-build", at: `/assumptions/${lap.name}`, wrong, cure }]);
}

/** Refuses sizes that something is divided by, where they are nothing. @throws FaultError */
export function refuseNothing({ sheet, offer }: CoveringWork, sizes: readonly Cell[]): void {
  const at = offer?.at ?? "/catalog/coverings";
  const faults = sizes
    .filter((cell) => aside(cell).lte(0))
    .map((cell) => ({
      code: "cannot-build" as const,
      at,
      wrong: `${cell.label} is ${sheet.onTape(cell)}.`,
      cure: "Give more than zero.",
    }));
  if (faults.length > 0) throw new FaultError(faults);
}
