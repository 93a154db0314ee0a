/**
 * The deck below a covering, where no piece group stands for it: sheets always, purlins and boards where coverings are compared.
 * Its rows are those that a frame with this deck would have. On straight slopes they are taken off piece by piece, as the frame
 * joins them over its rafters; on hipped ones, where rows shorten, by their length.
 */
import { type Section, toSection } from "../../catalog/reading.js";
import type { CutToLength, Need } from "../need.js";
import { widthsAsSold } from "../pieces/board-width.js";
import { DECK_BOARD, DECK_BOARDS, type Deck, layBoardRows } from "../pieces/deck.js";
import type { WantedGroup } from "../pieces/laying.js";
import { rulesOf, type SectionCells } from "../pieces/piece-group.js";
import { ROLE_DEFAULTS } from "../pieces/roles.js";
import type { SoldFor } from "../pieces/run-cutting.js";
import type { InEither } from "../request/given.js";
import type { GroupSettings } from "../request/structure.js";
import type { DeckKind } from "../request/structure-deck.js";
import { type Cell, count, number, type Operand, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type CoveringWork, fastenerNeed, laySize, partNeed, refuseNothing } from "./covering-work.js";

/** What a deck takes. */
export interface DeckCells {
  readonly kind: DeckKind;
  readonly needs: readonly Need[];
  readonly weight: Cell;
  /** Roof area under sheets; absent under boards. */
  readonly sheeted: Cell | undefined;
  /** Wood of purlins or boards; absent under sheets. */
  readonly volume: Cell | undefined;
}

/** Wood deck by its thickness: ASCE 7, commentary table C3.1-1, 3 lb/ft² to the inch. */
const PER_INCH = number("3 lb/ft2");
const INCH = number("1 in");
const SHEET_NAIL: InEither = { "inch-pound": "2 1/2 in", metric: "65 mm" };
const BOARD_SCREW: InEither = { "inch-pound": "2 1/2 in", metric: "60 mm" };
const PURLIN_SCREW: InEither = { "inch-pound": "4 in", metric: "100 mm" };

/** Sheets of plywood or the like over all planes. */
export function laySheetDeck(work: CoveringWork): DeckCells {
  const { sheet, name, surface, offer, assumed, units, defaults } = work;
  const sold = offer?.sheathing;
  const width = laySize(work, "sheetWidth", "width of a deck sheet", sold?.width, {
    "inch-pound": "4 ft",
    metric: "1.25 m",
  });
  const length = laySize(work, "sheetLength", "length of a deck sheet", sold?.length, {
    "inch-pound": "8 ft",
    metric: "2.5 m",
  });
  const thick = laySize(work, "sheetThickness", "thickness of a deck sheet", undefined, {
    "inch-pound": "5/8 in",
    metric: "18 mm",
  });
  refuseNothing(work, [width, length]);
  const waste = plus(number("1"), assumed.cell("deck.waste"));
  const sheets = sheet.lay(`${name}.deckSheets`, roundUp(over(times(surface.area, waste), times(width, length))), {
    label: "deck sheets, waste included",
  });
  const perArea = over(assumed.cell("deck.sheetNails"), number("32 ft2"));
  const nails = sheet.lay(`${name}.sheetNails`, roundUp(times(surface.area, perArea)), {
    label: "nails in deck sheets",
  });
  const weight = sheet.lay(`${name}.deckWeight`, over(times(surface.area, thick, PER_INCH), INCH), {
    label: "weight of the deck",
    display: units.mass,
  });
  const fastener = defaults.system === "metric" ? "ring-shank-nail" : "common-nail";
  return {
    kind: "sheets",
    weight,
    sheeted: surface.area,
    volume: undefined,
    needs: [
      partNeed(work, "sheathing", sheets),
      fastenerNeed(work, {
        fastener,
        as: "sheet-nail",
        label: "Nails for deck sheets",
        driven: nails,
        length: SHEET_NAIL,
      }),
    ],
  };
}

/** What the yard has for a deck's boards or purlins. */
export interface DeckLumber {
  /** Name of the offer; undefined where nothing that is sold serves. */
  readonly offer: string | undefined;
  readonly sold: SoldFor;
}

/** Boards or purlins of a deck that is compared. */
export interface ComparedDeck {
  readonly deck: Deck;
  readonly section: SectionCells;
  readonly lumber: DeckLumber;
}

/** Where a compared deck's section comes from, and what the yard is asked for. */
export interface DeckPlan {
  /** Prefix of its cells. */
  readonly name: string;
  readonly deck: Deck;
  /** What the request says of the group that a frame with this deck has. */
  readonly settings: GroupSettings | undefined;
  /** Section where the request gives none. */
  readonly usual: Section;
  readonly lumberFor: (wanted: WantedGroup) => DeckLumber;
}

/** Section of a deck's boards or purlins where nobody gives one. */
export const usualDeckSection = (kind: Exclude<DeckKind, "sheets">): InEither =>
  kind === "purlins" ? ROLE_DEFAULTS.purlin.section : DECK_BOARD[kind];

/** Lays the section of a deck's boards or purlins, and asks for their lumber. */
export function planComparedDeck(
  sheet: Sheet,
  { name, deck, settings, usual, lumberFor }: DeckPlan,
  display: string,
): ComparedDeck {
  const purlins = deck.kind === "purlins";
  const section = settings?.section === undefined ? usual : toSection(settings.section);
  const label = purlins ? "of a purlin" : "of a deck board";
  const cells = {
    thickness: sheet.input(`${name}.deckThickness`, section.thickness, { label: `thickness ${label}`, display }),
    width: sheet.input(`${name}.deckWidth`, section.width, { label: `width ${label}`, display }),
  };
  const role = purlins ? "purlin" : "board";
  const rules = rulesOf({ role, settings, ...(!purlins && DECK_BOARDS.rules && { rules: DECK_BOARDS.rules }) });
  const wanted = { label: purlins ? "Purlins" : "Deck boards", role, rules, ...cells } as const;
  return { deck, section: cells, lumber: lumberFor(wanted) };
}

/** Takes off the boards or purlins of a covering that is compared. */
export function layComparedDeck(work: CoveringWork, compared: ComparedDeck): DeckCells {
  const { sheet, name, assumed, units } = work;
  const { deck, section, lumber } = compared;
  const { thickness, width } = section;
  const { length, cuts, crossings } = layDeckRows(work, compared);
  const volume = sheet.lay(`${name}.deckVolume`, times(length, thickness, width), {
    label: "wood of the deck",
    display: units.lumber,
  });
  const weight = sheet.lay(`${name}.deckWeight`, over(times(length, width, thickness, PER_INCH), INCH), {
    label: "weight of the deck",
    display: units.mass,
  });
  const screws = roundUp(times(crossings, assumed.cell("fastener.crossing")));
  const purlins = deck.kind === "purlins";
  const label = purlins ? "Purlins" : "Deck boards";
  const need = partNeed(work, "deck", length, { label, ...(cuts && { cuts }) });
  const { offer } = lumber;
  const boards = { section: [thickness, width] as const, ...(offer !== undefined && { offer }) };
  return {
    kind: deck.kind,
    weight,
    volume,
    sheeted: undefined,
    needs: [
      { ...need, item: { ...need.item, boards } as typeof need.item },
      fastenerNeed(work, {
        fastener: purlins ? "structural-screw" : "deck-screw",
        as: "deck-screws",
        label: "Screws for the deck",
        driven: screws,
        length: purlins ? PURLIN_SCREW : BOARD_SCREW,
      }),
    ],
  };
}

/** Rows of all planes. */
interface DeckRows {
  readonly length: Cell;
  /** Pieces of straight slopes; absent on hipped ones. */
  readonly cuts?: readonly CutToLength[];
  /** Where pieces lie on rafters, both ends of a joint counted. */
  readonly crossings: Operand;
}

function layDeckRows(work: CoveringWork, compared: ComparedDeck): DeckRows {
  const { sheet, name, surface, roof, assumed, units } = work;
  const words = compared.deck.kind.replace("-", " ");
  const display = units.long;
  const counts = surface.faces.map((face) => times(count(face.alike), layRows(work, compared, face)));
  if (!roof.rows) {
    const along = surface.faces.map((face, i) =>
      times(over(plus(face.eave, face.top), number("2")), counts[i] as Operand),
    );
    const label = `${words}, all rows, waste included`;
    const waste = plus(number("1"), assumed.cell("deck.waste"));
    const length = sheet.lay(`${name}.deckLength`, times(sum(along), waste), { label, display });
    return { length, crossings: over(length, roof.rafterSpace) };
  }
  const { run, rafters } = roof.rows;
  const kinds = run.kindsFrom(compared.lumber.sold);
  const rows = sheet.lay(`${name}.allDeckRows`, sum(counts), { label: `rows of ${words}, all slopes` });
  const cuts = kinds.map((piece, i) => ({
    length: sheet.lay(`${name}.deckPiece${i + 1}`, run.lengthOf(piece), { label: "one piece of a row", display }),
    count: sheet.lay(`${name}.deckPieces${i + 1}`, times(rows, count(piece.pieces)), { label: "such pieces" }),
  }));
  const label = `${words}, all pieces`;
  const length = sheet.lay(`${name}.deckLength`, sum(cuts.map((cut) => times(cut.length, cut.count))), {
    label,
    display,
  });
  const joints = kinds.reduce((all, { pieces }) => all + pieces, 0) - 1;
  return { length, cuts, crossings: times(rows, plus(rafters, count(joints))) };
}

/** Rows on one plane, by the frame's own reckoning. */
function layRows(work: CoveringWork, compared: ComparedDeck, face: CoveringWork["surface"]["faces"][number]): Cell {
  const { sheet, name: covering, units } = work;
  const { deck, section, lumber } = compared;
  const { prefix: name, edgeLength: slopeLength, purlinRows } = face;
  if (deck.kind === "purlins") return purlinRows;
  const widths = widthsAsSold(
    sheet,
    { name: `${covering}.deck`, width: section.width, yard: lumber.sold },
    units.small,
  );
  return layBoardRows(sheet, { slopeLength, widths, deck, name }, units);
}
