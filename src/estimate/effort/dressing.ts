/**
 * Dressing one piece of a group: straightened, ripped to width, jointed and planed by machine, or by hand-held tools
 * where it is too heavy, too wide or too thick for the machines.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { Assumed } from "../request/assumed.js";
import type { RoughCells } from "../salvage/rough-size.js";
import { type Cell, number, type Operand, over, plus, roundUp, times, when } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

export interface DressingCells {
  /** Person-hours for one piece; zero where it stays rough. */
  readonly each: Cell;
  /** Faces of one piece, finished. */
  readonly surfaceEach: Cell;
}

const ONE_PERSON = number("1 people");

/** @param weight - Of one piece as it is dressed. */
export function layDressing(
  sheet: Sheet,
  group: PieceGroup,
  rough: RoughCells,
  weight: Cell,
  assumed: Assumed,
  units: { readonly area: string },
): DressingCells {
  const line = `work.${group.name}`;
  const surfaceEach = sheet.lay(`${line}.surfaceEach`, over(group.surface, group.count), {
    label: "faces of one piece",
    display: units.area,
  });
  const formula =
    group.rules.surface === "dressed" ? dressingOf(rough, weight, surfaceEach, assumed) : number("0 person-h");
  const each = sheet.lay(`${line}.dressEach`, formula, { label: "dress one piece", display: "person-min" });
  return { each, surfaceEach };
}

function dressingOf(rough: RoughCells, weight: Cell, surface: Cell, assumed: Assumed): Operand {
  const a = (name: string) => assumed.cell(name);
  // People who lift it, for every handling; one is enough up to the load that one carries.
  const lifters = roundUp(over(weight, a("carry.load")));
  const perLength = plus(
    over(a("dress.jointPasses"), a("dress.jointFeed")),
    over(number("1"), a("dress.ripFeed")),
    over(a("dress.planePasses"), a("dress.planeFeed")),
  );
  const machine = plus(times(rough.length, perLength, ONE_PERSON), times(a("dress.handling"), lifters));
  const hand = over(surface, a("dress.handRate"));
  const byWidth = when(rough.width, "above", a("dress.widest"), hand, machine);
  const byThickness = when(rough.thickness, "above", a("dress.thickest"), hand, byWidth);
  return times(when(weight, "above", a("dress.heaviest"), hand, byThickness), a("pace"));
}
