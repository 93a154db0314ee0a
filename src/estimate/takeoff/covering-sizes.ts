/**
 * Sizes in which a covering is sold, as cells: those of the price catalog where it has an offer, else the table of
 * coverings and common practice, which is put on record as a default.
 */
import type { Covering } from "../../catalog/coverings.js";
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import { type Fault, FaultError } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly } from "../quantity/text.js";
import { type Assumed, citation } from "../request/assumed.js";
import type { Defaults, InEither } from "../request/given.js";
import { aside } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Trims of a panel roof. */
export type PanelTrim = "ridge-cap" | "eave-trim" | "rake-trim";
/** Strips that fill the profile below the sheets at the eave and above them at the ridge. */
export type PanelClosure = "eave-closure" | "ridge-closure";

/** Lengths of one piece, and the weight of an area. */
export interface PanelSizes {
  /** Width that one panel adds to the roof, side lap taken off. */
  readonly coverWidth: Cell;
  /** Panels are cut to whole steps. */
  readonly cutStep: Cell;
  /** Longest panel to be had; absent where nothing is known, and then there are no end laps. */
  readonly longestPanel: Cell | undefined;
  readonly trim: Readonly<Record<PanelTrim, Cell>>;
  readonly closure: Readonly<Record<PanelClosure, Cell>>;
  readonly weight: Cell;
}

/** Where sizes come from. */
export interface SizesInput {
  readonly covering: Covering;
  /** The offer that the sizes are read from. */
  readonly offer?: CoveringOffer | undefined;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** A panel or trim piece under this length laps more than it covers. Assumption. */
const SHORTEST = "24 in";
const USUAL_TRIM: InEither = { "inch-pound": "10 ft", metric: "2 m" };
const USUAL_STEP: InEither = { "inch-pound": "1 in", metric: "1 cm" };
const PRACTICE = "common practice";

/**
 * Lays the sizes of panels, trims and closures, and the weight.
 * @throws FaultError when panels or trims are too short to lap.
 */
export function layPanelSizes(sheet: Sheet, input: SizesInput, units: DisplayUnits): PanelSizes {
  const { covering, offer, assumed } = input;
  const size = sizesFrom(sheet, input, units);
  const panels = offer?.sheets.form === "panels" ? offer.sheets : undefined;
  const cut = panels?.sold.by === "cut-length" ? panels.sold : undefined;
  const longest = panels?.sold.by === "piece" ? panels.sold.lengths.at(-1)?.length : cut?.longest;
  const trim = (kind: PanelTrim) =>
    size(`trim.${kind}`, `length of a ${kind.replace("-", " ")} piece`, trimLength(offer, kind), USUAL_TRIM);
  const tableWidth = covering.coverWidth ?? "36 in";
  const coverWidth = size("coverWidth", "width that a panel covers", panels?.coverWidth, both(tableWidth));
  const closure = (kind: PanelClosure, side: "inside" | "outside") => {
    const offered = offer?.closures.find((each) => each.kind === side)?.length;
    return size(`closure.${kind}`, `width that a ${kind.replace("-", " ")} strip fills`, offered, both(tableWidth));
  };
  const sizes: PanelSizes = {
    coverWidth,
    cutStep: size("cutStep", "panels are cut to whole", cut?.step, USUAL_STEP),
    longestPanel: longest && size("longestPanel", "longest panel", longest, both("40 ft")),
    trim: { "ridge-cap": trim("ridge-cap"), "eave-trim": trim("eave-trim"), "rake-trim": trim("rake-trim") },
    closure: {
      "eave-closure": closure("eave-closure", "inside"),
      "ridge-closure": closure("ridge-closure", "outside"),
    },
    weight: offer?.weight
      ? sheet.catalog("covering.weightPerArea", offer.weight, { label: "weight as laid", source: offer.label })
      : assumed.spread("covering.weightPerArea", "weight as laid", covering.weight, covering.weightFrom),
  };
  refuseShort(sheet, sizes, offer?.at ?? "/catalog/coverings");
  return sizes;
}

const both = (text: string): InEither => ({ "inch-pound": text, metric: text });

const trimLength = (offer: CoveringOffer | undefined, kind: PanelTrim): Quantity | undefined =>
  offer?.trims.find((each) => each.kind === kind)?.length;

/** Lays a size: the catalog's, or a default put on record. */
function sizesFrom(sheet: Sheet, { covering, offer, defaults }: SizesInput, units: DisplayUnits) {
  return (name: string, label: string, offered: Quantity | undefined, otherwise: InEither): Cell => {
    const cell = `covering.${name}`;
    const notes = { label, display: units.small };
    if (offered) return sheet.catalog(cell, offered, { ...notes, source: offer?.label ?? "price catalog" });
    const value = defaults.quantity(undefined, `/overrides/${cell}`, otherwise, PRACTICE);
    return sheet.input(cell, value, { ...notes, source: citation(covering.from) });
  };
}

/** A refusal lays no formula, so it reads values without making their cells structural. */
function refuseShort(sheet: Sheet, sizes: PanelSizes, at: string): void {
  const shortest = exactly(SHORTEST).value;
  const lapped = [sizes.longestPanel, ...Object.values(sizes.trim)].filter((cell) => cell !== undefined);
  const short = lapped.filter((cell) => aside(cell).lt(shortest));
  const faults = short.map(
    (cell): Fault => ({
      code: "cannot-build",
      at,
      wrong: `The ${cell.label} is ${sheet.shown(cell)}: laps would eat it up.`,
      cure: `Give ${SHORTEST} or more.`,
    }),
  );
  const divisors = [sizes.coverWidth, sizes.cutStep, ...Object.values(sizes.closure)];
  for (const cell of divisors.filter((each) => aside(each).lte(0))) {
    const wrong = `${cell.label} is ${sheet.shown(cell)}.`;
    faults.push({ code: "cannot-build", at, wrong, cure: "Give more than zero." });
  }
  if (faults.length > 0) throw new FaultError(faults);
}

/**
 * A lap must leave most of the piece to cover with.
 * @throws FaultError when it takes half of it or more.
 */
export function refuseLongLap(sheet: Sheet, lap: Cell, piece: Cell): void {
  if (aside(lap).times(2).lt(aside(piece))) return;
  const wrong = `The ${lap.label} of ${sheet.shown(lap)} takes half of ${sheet.shown(piece)} or more.`;
  const cure = "Give a shorter lap or longer pieces.";
  throw new FaultError([{ code: "cannot-build", at: `/assumptions/${lap.name}`, wrong, cure }]);
}
