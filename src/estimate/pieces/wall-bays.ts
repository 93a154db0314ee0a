/**
 * Pieces that lie along a boarded side, end to end: one a bay, a bay longer than the longest piece in equal ones. So they meet
 * over posts, or within a bay over a stud of their own.
 */

import type { Decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import { type Cell, minus, number, type Operand, over, plus, roundUp, sum, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { WallSide } from "./frame.js";

/** Equal pieces of one row along a side. */
export interface AlongSide {
  readonly length: Operand;
  /** How many in one row. */
  readonly each: Operand;
  /** Joints of one row that lie over no post. */
  readonly joints: Operand;
}

/** What one row is laid from. */
interface Walled {
  readonly sheet: Sheet;
  readonly longestPiece: Cell;
  readonly units: DisplayUnits;
}

/** Between two neighbouring posts of a side, where they stand furthest apart; in the unit of its width. */
export function widestClear(sheet: Sheet, { bays, firstBays, width }: WallSide, post: Cell): Decimal {
  const wide = sheet.decide(post);
  const reach = sheet.decide(width).minus(wide);
  if (!firstBays) return (bays ? reach.dividedBy(sheet.decide(bays)) : reach).minus(wide);
  const first = firstBays.map((bay) => sheet.decide(bay));
  const last = first.reduce((left, bay) => left.minus(bay), reach);
  return [...first, last].reduce((a, b) => (a.gte(b) ? a : b)).minus(wide);
}

/** The pieces of one row; of unlike bays the longest first. */
export function alongSide(walled: Walled, side: WallSide): readonly AlongSide[] {
  const { sheet, longestPiece } = walled;
  const { bays, firstBays, width } = side;
  if (firstBays) return unlike(walled, side, firstBays);
  const one = number("1");
  const inBay = sheet.lay(`walls.${side.name}.inBay`, roundUp(over(width, times(bays ?? one, longestPiece))), {
    label: bays ? "pieces in a bay" : "pieces between the corners",
  });
  const each = sheet.lay(`walls.${side.name}.lengths`, bays ? times(bays, inBay) : inBay, {
    label: "pieces end to end",
  });
  return [{ length: over(width, each), each, joints: times(bays ?? one, minus(inBay, one)) }];
}

/** Bay by bay, the outer ones to the outer faces of the corner posts; a long one in equal pieces. */
function unlike({ sheet, longestPiece, units }: Walled, side: WallSide, firstBays: readonly Cell[]): AlongSide[] {
  const last = sheet.find("frame.lastBay");
  if (!last) throw new Error("unlike bays are laid with the beams");
  const all = [...firstBays, last];
  const past = over(minus(side.width, ...all), number("2"));
  const found = new Map<string, { readonly length: Cell; readonly each: readonly Cell[] }>();
  for (const [i, bay] of all.entries()) {
    const whole = i === 0 || i === all.length - 1 ? plus(bay, past) : bay;
    const name = `walls.${side.name}.bay${i + 1}`;
    const pieces = sheet.lay(`${name}.pieces`, roundUp(over(whole, longestPiece)), { label: "pieces end to end" });
    const length = sheet.lay(`${name}.length`, over(whole, pieces), { label: "one piece", display: units.long });
    const key = sheet.decide(length).toDecimalPlaces(9).toFixed();
    const known = found.get(key) ?? { length, each: [] };
    found.set(key, { ...known, each: [...known.each, pieces] });
  }
  return [...found.values()]
    .sort((a, b) => sheet.decide(b.length).cmp(sheet.decide(a.length)))
    .map(({ length, each }) => ({
      ...{ length, each: sum(each) },
      joints: minus(sum(each), number(`${each.length}`)),
    }));
}
