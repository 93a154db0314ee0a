/** Rails behind upright boards: row upon row, end to end, openings cut out. */
import { type Cell, times } from "../sheet/expression.js";
import type { WallSide } from "./frame.js";
import { cutRails, railStubs, withoutCut } from "./opening-cuts.js";
import type { PlacedOpening } from "./opening-places.js";
import type { PieceGroup } from "./piece-group.js";
import { alongSide } from "./wall-bays.js";
import { nth, type Walling, wallGroup } from "./walling.js";

/** Rows of rails, end to end; where an opening cuts them, its stubs. */
export function layRails(
  walling: Walling,
  side: WallSide,
  rails: Cell,
  placed: readonly PlacedOpening[],
): PieceGroup[] {
  const row = alongSide(walling, side);
  const cuts =
    placed.length === 0 ? [] : cutRails(walling, side, row, { placed, rows: railRows(walling, side, rails) });
  return [
    ...row.flatMap(({ length, each }, i) =>
      wallGroup(walling.laying, "wall-rails", side, nth("Wall rails", i), {
        length,
        count: withoutCut(times(rails, each), cuts, i),
        meetsOver: walling.post,
        index: i,
      }),
    ),
    ...railStubs(walling, side, row, cuts),
  ];
}

/** From its lower edge to its upper one: evenly up a level wall, flush below and above; below a slope as far apart as asked. */
function railRows({ sheet, laying, clearance, backing }: Walling, { heights }: WallSide, rails: Cell) {
  const [from, to] = heights;
  const rows = sheet.decideWhole(rails);
  const wide = sheet.decide(laying.sections["wall-rails"].width);
  const [low, high] = [sheet.decide(clearance), sheet.decide(from)];
  const apart = from === to && rows > 1 ? high.minus(low).dividedBy(rows - 1) : sheet.decide(backing);
  return Array.from({ length: rows }, (_, i) => {
    const at = low.plus(apart.times(i));
    return from === to && i > 0 && i === rows - 1 ? ([at.minus(wide), at] as const) : ([at, at.plus(wide)] as const);
  });
}
