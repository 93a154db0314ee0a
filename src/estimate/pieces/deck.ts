/**
 * The roof deck: purlins, boards with gaps, boards edge to edge, or sheets. Which one follows from the covering, unless the
 * request says otherwise; how many rows of it there are follows from the slope.
 */
import { type CarriedBy, type CoveringKind, coveringName, coveringOf, usualExposure } from "../../catalog/coverings.js";
import { toQuantity } from "../../catalog/reading.js";
import { FaultError } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { exactly } from "../quantity/text.js";
import type { Defaults, InEither } from "../request/given.js";
import type { DeckKind, DeckShape } from "../request/structure-deck.js";
import {
  type Cell,
  count,
  type Expression,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  times,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type BoardWidths, layRows } from "./board-width.js";
import { AT, type GroupKind } from "./laying.js";
import type { SectionCells } from "./piece-group.js";

/** Sections of boards where nobody gives one: common practice; 1 x 4 as in R905.7.1. */
export const DECK_BOARD: Readonly<Record<"spaced-boards" | "solid-boards", InEither>> = {
  "spaced-boards": { "inch-pound": "1 x 4 in", metric: "25 x 100 mm" },
  "solid-boards": { "inch-pound": "1 x 6 in", metric: "25 x 150 mm" },
};

/** What a roof carries its covering on. */
export interface Deck {
  readonly kind: DeckKind;
  /** Centres of spaced boards, at most. */
  readonly spacing: Quantity | undefined;
  /** Spaces next to eave and ridge that are halved. */
  readonly closerRows: number;
}

/** A roof, as far as it decides on the deck. */
interface DeckedShape {
  readonly covering?: CoveringKind | "none" | undefined;
  readonly deck?: DeckShape;
}

const SERVES: Readonly<Record<CarriedBy, readonly DeckKind[]>> = {
  purlins: ["purlins", "spaced-boards", "solid-boards", "sheets"],
  "spaced-boards": ["spaced-boards", "solid-boards", "sheets"],
  "closed-deck": ["solid-boards", "sheets"],
};

/** Covering where the request names none. */
export const USUAL_COVERING: CoveringKind = "ribbed-steel";

/**
 * The deck that a covering has where the request does not choose. Boards under wood shingles lie at the exposure (R905.7.1);
 * below 4 in 12 that leaves no gap between them. A membrane wants a smooth deck.
 * @param rise - On 12 in of run.
 */
export function usualDeck(kind: CoveringKind, rise: Quantity): DeckKind {
  const { deck } = coveringOf(kind);
  if (deck === "purlins") return "purlins";
  if (deck === "spaced-boards" && rise.value.gte(exactly("4 in").value)) return "spaced-boards";
  return kind === "membrane" ? "sheets" : "solid-boards";
}

/** Centres of spaced boards: at the exposure; where that is 10 in, with one between (R905.8.1). */
function usualBoardSpacing(kind: CoveringKind, rise: Quantity): Quantity {
  const exposure = usualExposure(kind, rise);
  if (!exposure) return exactly("24 in");
  return exposure.value.gte(exactly("10 in").value) ? exactly("5 in") : exposure;
}

/** A slope as the rise on 12 in of run. */
export function riseOn12(sheet: Sheet, unitRise: Cell, unitRun: Cell): Quantity {
  const twelve = exactly("12 in").value;
  return quantity(sheet.decide(unitRise).times(twelve).dividedBy(sheet.decide(unitRun)), "mm");
}

/** The deck of a covering that is compared: the one that is asked for where it serves, else the usual one. */
export function deckFor(kind: CoveringKind, rise: Quantity, asked: DeckKind | undefined): DeckKind {
  return asked && SERVES[coveringOf(kind).deck].includes(asked) ? asked : usualDeck(kind, rise);
}

/** The deck of a roof. @throws FaultError when it can't carry the covering. */
export function deckOf(shape: DeckedShape, rise: Quantity, defaults: Defaults): Deck {
  const { covering = USUAL_COVERING, deck } = shape;
  const usual = covering === "none" ? "purlins" : usualDeck(covering, rise);
  const at = `${AT}/deck/kind`;
  const why =
    covering === "none" ? "nothing covers the roof" : `usual under ${coveringName(covering, defaults.system)}`;
  const kind = usual === "purlins" ? (deck?.kind ?? usual) : defaults.choice(deck?.kind, at, usual, why);
  const serving = covering === "none" ? SERVES.purlins : SERVES[coveringOf(covering).deck];
  if (!serving.includes(kind) && covering !== "none") {
    const wrong = `${coveringName(covering, defaults.system)} can't be laid on ${kind.replace("-", " ")}.`;
    throw new FaultError([
      { code: "cannot-build", at, wrong, cure: `Choose ${serving.join(" or ")}, or leave it out.` },
    ]);
  }
  // Boards edge to edge, and sheets, have no rows to lay closer.
  const closerRows = kind === "purlins" || kind === "spaced-boards" ? deck?.closerRows : undefined;
  if (kind !== "spaced-boards") return { kind, spacing: undefined, closerRows: closerRows ?? 0 };
  const spacing = deck?.spacing
    ? toQuantity(deck.spacing, "mm")
    : usualBoardSpacing(covering === "none" ? "wood-shingles" : covering, rise);
  return { kind, spacing, closerRows: closerRows ?? 1 };
}

/** Deck boards as a group of pieces: rough on top, out of sight there. */
export const DECK_BOARDS: GroupKind = {
  role: "board",
  mark: "DK",
  rules: { surface: "rough", hiddenFaces: "one-wide" },
};

/** Whether the deck is boards, and not purlins or sheets. */
export const isBoarded = ({ kind }: Deck): boolean => kind === "spaced-boards" || kind === "solid-boards";

/** The kinds of groups, deck boards with the section that their deck has, and rafters with an edge below a closed one. */
export function deckKinds<Group extends string>(
  kinds: Readonly<Record<Group, GroupKind>>,
  { kind }: Deck,
): Readonly<Record<Group, GroupKind>> {
  if (kind === "purlins") return kinds;
  if (kind === "spaced-boards") return { ...kinds, "deck-boards": { ...DECK_BOARDS, section: DECK_BOARD[kind] } };
  const names = Object.keys(kinds) as Group[];
  const below = names.filter((name) => kinds[name].role === "rafter").map((name) => [name, underBoards(kinds[name])]);
  const closed = { ...kinds, ...Object.fromEntries(below) };
  return kind === "sheets" ? closed : { ...closed, "deck-boards": { ...DECK_BOARDS, section: DECK_BOARD[kind] } };
}

const underBoards = (kind: GroupKind): GroupKind => ({ ...kind, edgeCovered: true });

/** Groups that a roof with this deck has not. */
export function deckWithout<Group extends string>(kinds: Readonly<Record<Group, GroupKind>>, deck: Deck): Group[] {
  const names = Object.keys(kinds) as Group[];
  const isDeck = (name: Group) => (name === "deck-boards" ? isBoarded(deck) : deck.kind === "purlins");
  return names.filter((name) => (name === "deck-boards" || kinds[name].role === "purlin") && !isDeck(name));
}

/** Width of what lies at eave and ridge: a purlin, a board, or nothing where sheets do. */
export function purlinWidthOf(
  sections: Readonly<Record<"purlins" | "deck-boards", SectionCells>>,
  deck: Deck,
): Cell | Expression {
  if (deck.kind === "purlins") return sections.purlins.width;
  return isBoarded(deck) ? sections["deck-boards"].width : number("0 in");
}

/** Places of rows up a slope, as so many of so many equal steps: spaces next to both ends may be halved. */
export function rowPlaces(rows: number, closerRows: number): { readonly half: number; readonly halves: number }[] {
  const spaces = rows - 1 >= 4 * closerRows ? rows - 1 - 2 * closerRows : (rows - 1) / 2;
  const halves = 2 * spaces;
  const all = Array.from({ length: halves + 1 }, (_, half) => half);
  const isRow = (half: number) => half % 2 === 0 || half < 2 * closerRows || half > halves - 2 * closerRows;
  return all.filter(isRow).map((half) => ({ half, halves }));
}

/** Rows between two ends: spaces and one more, and the closer rows at either end. */
export function rowsOf(spaces: Operand, closerRows: number): Operand {
  const rows = plus(spaces, number("1"));
  return closerRows === 0 ? rows : plus(rows, least(count(2 * closerRows), spaces));
}

/** The rows of boards on one slope. */
export interface BoardRows {
  /** Up the slope, upper end to tail. */
  readonly slopeLength: Cell;
  readonly widths: BoardWidths;
  readonly deck: Deck;
  /** Prefix of the cells. */
  readonly name: string;
}

/** Lays the rows of deck boards on one slope: edge to edge, or at their spacing with both ends covered. */
export function layBoardRows(sheet: Sheet, { slopeLength, widths, deck, name }: BoardRows, units: DisplayUnits): Cell {
  const label = "rows of deck boards, one slope";
  const cell = `${name}.deckRows`;
  const { width } = widths;
  if (!deck.spacing) return layRows(sheet, [cell, label], widths, (each) => roundUp(over(slopeLength, each)));
  const spacing = sheet.input(`${name}.deckSpacing`, deck.spacing, {
    label: "deck boards apart, at most",
    display: units.small,
  });
  if (sheet.decide(spacing).lte(sheet.decide(width))) {
    const wrong = `Boards ${sheet.onTape(width)} wide leave no gap at a spacing of ${sheet.onTape(spacing)}.`;
    const cure = "Give a wider spacing, or choose solid-boards.";
    throw new FaultError([{ code: "cannot-build", at: `${AT}/deck/spacing`, wrong, cure }]);
  }
  const { closerRows } = deck;
  const spaces = sheet.lay(`${name}.deckSpaces`, boardSpaces(sheet, { slopeLength, width, spacing, closerRows }), {
    label: "spaces of deck boards",
  });
  return sheet.lay(cell, rowsOf(spaces, closerRows), { label });
}

/**
 * Spaces between spaced boards up a slope, closer rows left out. Those halve a space next to eave and ridge; where that leaves no
 * room for a board they lie edge to edge there, and the spaces share what is left.
 */
function boardSpaces(
  sheet: Sheet,
  {
    slopeLength,
    width,
    spacing,
    closerRows,
  }: Readonly<Record<"slopeLength" | "width" | "spacing", Cell>> & { readonly closerRows: number },
): Operand {
  const whole = sheet.decide(slopeLength).minus(sheet.decide(width));
  const apart = whole.dividedBy(whole.dividedBy(sheet.decide(spacing)).ceil());
  if (closerRows === 0 || apart.dividedBy(2).gt(sheet.decide(width))) {
    return roundUp(over(minus(slopeLength, width), spacing));
  }
  return roundUp(over(greatest(minus(slopeLength, times(count(1 + 2 * closerRows), width)), number("0 in")), spacing));
}
