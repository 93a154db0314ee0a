/** What the parts of a hip roof are laid from: its size, and where its rafters stand. */
import type { HipGroup } from "../request/structure-hip.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { RafterCells } from "./common-rafter.js";
import type { Deck } from "./deck.js";
import type { PostBays } from "./frame.js";
import type { Laying } from "./laying.js";

/** The size of the whole, as input cells. */
export interface HipFrame {
  readonly span: Cell;
  readonly length: Cell;
  readonly eaveHeight: Cell;
  readonly unitRise: Cell;
  readonly unitRun: Cell;
  readonly eaveOverhang: Cell;
  readonly bays: Cell;
  /** See `PostBays`. */
  readonly firstBays: PostBays["firstBays"];
  readonly endBays: Cell;
  readonly rafterSpacing: Cell;
  readonly purlinSpacing: Cell;
  readonly braceLeg: Cell;
  readonly longestPiece: Cell;
  readonly seat: Cell | undefined;
}

/** Rows of side and end slopes meet at the hips, so the wider purlins decide how far up they lie. */
export function widerPurlin(
  sheet: Sheet,
  sections: Pick<Laying<HipGroup>["sections"], "side-purlins" | "end-purlins">,
): Cell {
  const [side, end] = [sections["side-purlins"].width, sections["end-purlins"].width];
  return sheet.decide(end).gt(sheet.decide(side)) ? end : side;
}

/** Where rafters stand along the plates. */
export interface HipLayout {
  /** Level, plate face to ridge centre. */
  readonly run: Cell;
  /** Between the points where the hips' centres meet the ridge's. */
  readonly ridgeLine: Cell;
  /** Commons along one side of the ridge, their spaces, and how wide those are. */
  readonly commons: Cell;
  readonly commonSpaces: Cell;
  readonly commonSpace: Cell;
  /** Spaces between the end of the ridge and the corner; jacks are one fewer. */
  readonly jackSpaces: Cell;
  readonly jackSpace: Cell;
}

/** What all groups are laid from. */
export interface HipFraming {
  readonly laying: Laying<HipGroup>;
  readonly frame: HipFrame;
  readonly layout: HipLayout;
  readonly rafter: RafterCells;
  readonly purlinRows: Cell;
  readonly deck: Deck;
}
