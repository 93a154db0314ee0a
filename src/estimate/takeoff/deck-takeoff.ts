/**
 * The deck below a covering, where no piece group stands for it: sheets always, purlins and boards of a covering that is only
 * compared. Rows on straight slopes are taken off piece by piece, as the frame joins them over its rafters; on hipped ones,
 * where rows shorten, by their length.
 */
import type { CutToLength, Need } from "../need.js";
import { boardSpaces, DECK_BOARD, riseOn12, rowsOf, usualBoardSpacing } from "../pieces/deck.js";
import { ROLE_DEFAULTS } from "../pieces/roles.js";
import { parseSection, TextFault } from "../quantity/text.js";
import type { InEither } from "../request/given.js";
import type { DeckKind } from "../request/structure-deck.js";
import { type Cell, count, number, type Operand, over, plus, roundUp, sum, times } from "../sheet/expression.js";
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

/** The deck of a covering that is compared with others. */
export function layComparedDeck(work: CoveringWork, kind: DeckKind): DeckCells {
  if (kind === "sheets") return laySheetDeck(work);
  const { sheet, name, assumed, units } = work;
  const [thickness, width] = laySection(work, kind);
  const { length, cuts, crossings } = layDeckRows(work, kind, width);
  const volume = sheet.lay(`${name}.deckVolume`, times(length, thickness, width), {
    label: "wood of the deck",
    display: units.lumber,
  });
  const weight = sheet.lay(`${name}.deckWeight`, over(times(length, width, thickness, PER_INCH), INCH), {
    label: "weight of the deck",
    display: units.mass,
  });
  const screws = roundUp(times(crossings, assumed.cell("fastener.crossing")));
  const label = kind === "purlins" ? "Purlins" : "Deck boards";
  const need = partNeed(work, "deck", length, { label, ...(cuts && { cuts }) });
  return {
    kind,
    weight,
    volume,
    sheeted: undefined,
    needs: [
      { ...need, item: { ...need.item, section: [thickness, width] as const } as typeof need.item },
      fastenerNeed(work, {
        fastener: kind === "purlins" ? "structural-screw" : "deck-screw",
        as: "deck-screws",
        label: "Screws for the deck",
        driven: screws,
        length: kind === "purlins" ? PURLIN_SCREW : BOARD_SCREW,
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

function layDeckRows(work: CoveringWork, kind: Exclude<DeckKind, "sheets">, width: Cell): DeckRows {
  const { sheet, name, surface, roof, assumed, units } = work;
  const words = kind.replace("-", " ");
  const display = units.long;
  const counts = surface.faces.map((face) => times(count(face.alike), layRows(work, kind, face, width)));
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
  const rows = sheet.lay(`${name}.allDeckRows`, sum(counts), { label: `rows of ${words}, all slopes` });
  const cuts = run.kinds.map((piece, i) => ({
    length: sheet.lay(`${name}.deckPiece${i + 1}`, run.lengthOf(piece), { label: "one piece of a row", display }),
    count: sheet.lay(`${name}.deckPieces${i + 1}`, times(rows, count(piece.pieces)), { label: "such pieces" }),
  }));
  const label = `${words}, all pieces`;
  const length = sheet.lay(`${name}.deckLength`, sum(cuts.map((cut) => times(cut.length, cut.count))), {
    label,
    display,
  });
  const joints = run.kinds.reduce((all, { pieces }) => all + pieces, 0) - 1;
  return { length, cuts, crossings: times(rows, plus(rafters, count(joints))) };
}

function laySection(
  { sheet, name, defaults, units, deckBoards }: CoveringWork,
  kind: Exclude<DeckKind, "sheets">,
): readonly [Cell, Cell] {
  const usual = kind === "purlins" ? ROLE_DEFAULTS.purlin.section : DECK_BOARD[kind];
  // A section that the frame has already is the one to compare with.
  const group = kind === "purlins" ? ["purlins", "side-purlins"] : ["deck-boards"];
  const known = group.flatMap((base) => sheet.find(`sections.${base}.thickness`) ?? [])[0];
  const base = known?.name.split(".")[1];
  const knownWidth = base === undefined ? undefined : sheet.find(`sections.${base}.width`);
  if (known && knownWidth) return [known, knownWidth];
  if (deckBoards && kind !== "purlins") {
    const notes = { display: units.small, source: deckBoards.label };
    const { thickness, width } = deckBoards.actual;
    return [
      sheet.catalog(`${name}.deckThickness`, thickness, { ...notes, label: "thickness of a deck board" }),
      sheet.catalog(`${name}.deckWidth`, width, { ...notes, label: "width of a deck board" }),
    ];
  }
  const section = parseSection(usual[defaults.system]);
  if (section instanceof TextFault) throw new Error(section.wrong);
  const label = kind === "purlins" ? "of a purlin" : "of a deck board";
  return [
    sheet.input(`${name}.deckThickness`, section.thickness, { label: `thickness ${label}`, display: units.small }),
    sheet.input(`${name}.deckWidth`, section.width, { label: `width ${label}`, display: units.small }),
  ];
}

function layRows(
  work: CoveringWork,
  kind: Exclude<DeckKind, "sheets">,
  face: CoveringWork["surface"]["faces"][number],
  width: Cell,
): Cell {
  const { sheet, name, roof, units } = work;
  const { prefix, slopeLength, purlinRows } = face;
  if (kind === "purlins") return purlinRows;
  const label = "rows of deck boards, one slope";
  if (kind === "solid-boards") return sheet.lay(`${prefix}.deckRows`, roundUp(over(slopeLength, width)), { label });
  const spacing =
    sheet.find(`${name}.deckSpacing`) ??
    sheet.input(`${name}.deckSpacing`, usualBoardSpacing(work.kind, riseOn12(sheet, roof.unitRise, roof.unitRun)), {
      label: "deck boards apart, at most",
      display: units.small,
    });
  const spaces = boardSpaces(sheet, { slopeLength, width, spacing, closerRows: 1 });
  return sheet.lay(`${prefix}.deckRows`, rowsOf(spaces, 1), { label });
}
