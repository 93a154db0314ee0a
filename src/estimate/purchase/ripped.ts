/**
 * Slim pieces out of one stick: how many are ripped out of it side by side, and what each measures. What bears is never ripped
 * out of another: its grade is that of the whole stick (common practice).
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import { Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** What is lost where one bought piece is ripped into several. */
export interface RipLoss {
  readonly kerf: Cell;
  /** Planed off each sawn face of what is wanted dressed. */
  readonly planed: () => Cell;
}

/** A stick as it is sold, and what is wanted of it; smaller sides first, in millimetres. */
export interface Stick {
  readonly wanted: readonly [Decimal, Decimal];
  readonly measured: readonly [Decimal, Decimal];
  /** Width of what the yard would sell by the name that is wanted; undefined where that is no name. */
  readonly named: Decimal | undefined;
  /** Whether it is as large as wanted both ways. */
  readonly alike: boolean;
}

/** What comes of a stick. */
export interface Ripped {
  /** Pieces side by side, both ways; at least 1. */
  readonly abreast: number;
  /** Sides of each; of one by itself what is wanted as far as the stick has it. */
  readonly each: readonly [Decimal, Decimal];
}

/**
 * Square pieces stay square where the stick is thinner than they are by name; others are then as wide as the yard would sell
 * them by that name, if more come out of a stick so: but for boards in rows, which are counted by the width that is wanted. Two that
 * lie side by side lose a kerf, and a face each.
 */
export function rippedFrom(sheet: Sheet, group: PieceGroup, stick: Stick, loss: RipLoss): Ripped {
  const { rules } = group;
  const { wanted, measured, alike, named } = stick;
  const [thin, wide] = measured;
  const thickness = Decimal.min(wanted[0], thin);
  const full = !alike && wanted[0].eq(wanted[1]) ? thickness : Decimal.min(wanted[1], wide);
  if (rules.structural) return { abreast: 1, each: [thickness, full] };
  const between = (): Decimal => {
    const planed = rules.surface === "dressed" ? sheet.decide(loss.planed()).times(2) : ZERO;
    return sheet.decide(loss.kerf).plus(planed);
  };
  const along = (has: Decimal, side: Decimal): number => {
    if (has.lt(side.times(2))) return 1;
    const lost = between();
    return wholeNumber(has.plus(lost).dividedBy(side.plus(lost)).floor());
  };
  const byName = !alike && !inRows(group, wanted[1]) && named ? Decimal.min(named, full) : full;
  const width = along(wide, byName) > along(wide, full) ? byName : full;
  return { abreast: along(thin, thickness) * along(wide, width), each: [thickness, width] };
}

/** The widest that is called a batten: 3 in, or 75 mm. Common practice, no source. */
const BATTEN = decimal("76.2");

/**
 * Boards of a floor, a wall or a deck lie in rows. What lies on boards, as battens and corner boards do, does not; nor does of a list what
 * is no wider than a batten: nobody knows of others.
 */
const inRows = ({ role, over, encloses }: PieceGroup, wide: Decimal): boolean =>
  role === "board" && !over && (encloses === true || wide.gt(BATTEN));
