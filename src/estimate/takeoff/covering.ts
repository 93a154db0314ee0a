/**
 * A roof covering as a full system: area from sheet edge to sheet edge, sheets or courses, underlay, trim, closures, fixing,
 * weight, life, and whether the code allows it at this slope.
 *
 * What is the same for every covering is laid here; how the surface is filled is a strategy for each form of covering.
 */
import { type CoveringForm, type CoveringKind, coveringName, coveringOf } from "../../catalog/coverings.js";
import type { Exposure } from "../../catalog/fasteners.js";
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import type { LumberOffer } from "../../catalog/offers/lumber.js";
import type { Need } from "../need.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { Defaults } from "../request/given.js";
import { refuseTooMany } from "../sheet/counted.js";
import { type Cell, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type BoardCells, layBoardRoof } from "./board-roof.js";
import { type CourseCells, layCourses } from "./courses.js";
import type { CoveredRoof } from "./covered-roof.js";
import { laySurface } from "./covering-faces.js";
import { type CoveringWork, type FaceLayout, type LaidCovering, laySpread } from "./covering-work.js";
import { type DeckCells, laySheetDeck } from "./deck-takeoff.js";
import { layPanels, type PanelCells } from "./panels.js";
import { layRolls, type RollCells } from "./rolls.js";
import { type SlopeVerdict, slopeVerdict } from "./slope-verdict.js";
import { layUnderlay, type UnderlayCells } from "./underlay.js";

/** A covering, the roof below it, and where its sizes come from. */
export interface CoveringInput {
  readonly kind: CoveringKind;
  /** Prefix of its cells: `covering` where absent. */
  readonly name?: string;
  readonly roof: CoveredRoof;
  /** Offer whose sizes and weight are taken; usual ones where there is none. */
  readonly offer?: CoveringOffer | undefined;
  /** Boards that a roof of boards is made of. */
  readonly lumber?: LumberOffer | undefined;
  /** Where the screws are to last: the wood of the deck. */
  readonly exposure: Exposure;
  readonly assumed: Assumed;
  readonly defaults: Defaults;
}

/** What a covering takes and weighs. Needs include waste and spares; areas and lengths do not. */
export interface CoveringTakeoff {
  readonly kind: CoveringKind;
  readonly form: CoveringForm;
  /** Prefix of its cells. */
  readonly name: string;
  /** What it was laid from. */
  readonly work: CoveringWork;
  readonly slope: SlopeVerdict;
  readonly needs: readonly Need[];
  readonly faces: readonly FaceLayout[];
  readonly area: Cell;
  /** The same area, in squares of 100 ft². */
  readonly squares: Cell;
  /** Covering and underlay, and the sheets of a deck. */
  readonly weight: Cell;
  /** Ridge, hips, eaves and rakes, laps not counted: what is fitted. */
  readonly trimLength: Cell;
  /** Eave trim and drip edge of them, which are fitted before the covering is laid; absent where there are none. */
  readonly trimBelow?: Cell | undefined;
  /** Years until it is laid anew. */
  readonly life: Cell;
  readonly underlay: UnderlayCells | undefined;
  /** Sheets; purlins and boards are piece groups, or stand beside it. */
  readonly deck: DeckCells | undefined;
  readonly panels?: PanelCells;
  readonly courses?: CourseCells;
  readonly rolls?: RollCells;
  readonly boards?: BoardCells;
}

/** Lays a covering: surface, covering, underlay, deck, weight and life. */
export function layCovering(sheet: Sheet, input: CoveringInput, units: DisplayUnits): CoveringTakeoff {
  const { kind, roof, assumed, defaults, offer, exposure, name = "covering" } = input;
  const row = coveringOf(kind);
  sheet.title(name, `Covering: ${coveringName(kind, defaults.system)}`);
  const slope = slopeVerdict(sheet, kind, roof);
  const surface = laySurface(sheet, { name, row, roof, assumed }, units);
  const work: CoveringWork = {
    sheet,
    units,
    name,
    kind,
    row,
    offer,
    roof,
    surface,
    slope,
    exposure,
    assumed,
    defaults,
  };
  const laid = layForm(work, input.lumber);
  refuseTooMany(sheet, laid.needs.flatMap(cutsOf), {
    what: "panels or boards of the covering",
    at: offer?.at ?? "/structure",
    cure: "Give wider or longer ones, or estimate a part of the roof.",
  });
  const underlay = layUnderlay(work, laid.faces);
  // Piece groups stand for purlins and boards; sheets are bought with the covering.
  const deck = roof.deck.kind === "sheets" ? laySheetDeck(work) : undefined;
  const life = laySpread(work, "life", "years until it is laid anew", row.life, row.lifeFrom);
  return {
    kind,
    form: row.form,
    name,
    work,
    slope,
    ...laid,
    needs: [...laid.needs, ...(underlay?.needs ?? []), ...(deck?.needs ?? [])],
    area: surface.area,
    squares: surface.squares,
    weight: layWeight(work, [underlay?.weight, deck?.weight]),
    life,
    underlay,
    deck,
  };
}

const cutsOf = ({ item }: Need): Cell[] =>
  item.kind === "covering" ? (item.cuts ?? []).map(({ count }) => count) : [];

function layForm(work: CoveringWork, lumber: LumberOffer | undefined): LaidCovering {
  switch (work.row.form) {
    case "panels":
      return layPanels(work);
    case "courses":
      return layCourses(work);
    case "rolls":
      return layRolls(work);
    case "boards":
      return layBoardRoof(work, lumber);
  }
}

function layWeight(work: CoveringWork, more: readonly (Cell | undefined)[]): Cell {
  const { sheet, name, offer, row, surface, units } = work;
  const each = offer?.weight
    ? sheet.catalog(`${name}.weightPerArea`, offer.weight, { label: "weight as laid", source: offer.label })
    : laySpread(work, "weightPerArea", "weight as laid", row.weight, row.weightFrom);
  const others = more.filter((cell) => cell !== undefined);
  const own = times(surface.area, each);
  return sheet.lay(`${name}.weight`, others.length === 0 ? own : plus(own, ...others), {
    label: others.length === 0 ? "weight of the covering" : "weight of all that lies on the rafters here",
    display: units.mass,
  });
}
