/**
 * From finished section to rough: what is left on for sawing, drying and dressing.
 *
 * rough = (finished + dressing allowance + sawing variation) ÷ (1 − shrinkage). A rough-sawn, green-built piece is sawn
 * to its finished size: nothing is left on and nothing shrinks before it is built in.
 * Shrinkage to the target moisture M is S × (30 − M) ÷ 30, S from green to oven-dry (Wood Handbook, chapter 4); tangential,
 * since nobody knows how the rings will lie.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import { type Cell, greatest, minus, number, type Operand, over, plus, roundUp, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Cells shared by all groups. */
export interface Allowances {
  readonly thickness: Cell;
  readonly width: Cell;
  readonly length: Cell;
  readonly variation: Cell;
  readonly targetMoisture: Cell;
  /** One step of the grid on which lengths are set: 1/16 in or 1 mm. */
  readonly grid: Operand;
  /** One step in which the mill is set, and with it thickness and width. */
  readonly setting: Operand;
}

/** Size to saw, so that the finished piece comes out of it. */
export interface RoughCells {
  readonly thickness: Cell;
  readonly width: Cell;
  readonly length: Cell;
  /** Wood of all pieces at rough size. */
  readonly volume: Cell;
}

/** @param shrinkage - Green to oven-dry, tangential, of the wood that is sawn. */
export function layRoughSize(
  sheet: Sheet,
  group: PieceGroup,
  allowances: Allowances,
  shrinkage: Cell,
  units: { readonly small: string; readonly long: string; readonly lumber: string },
): RoughCells {
  const line = `rough.${group.name}`;
  sheet.title(line, group.label);
  const side = (column: "thickness" | "width", finished: Cell, dressing: Cell) => {
    const sawn = group.rules.surface === "dressed" ? plus(finished, dressing, allowances.variation) : finished;
    const wet = group.rules.seasoning === "dried" ? over(sawn, left(shrinkage, allowances.targetMoisture)) : sawn;
    return sheet.lay(`${line}.${column}`, onGrid(wet, allowances.setting), {
      label: `rough ${column}`,
      display: units.small,
    });
  };
  const thickness = side("thickness", group.thickness, allowances.thickness);
  const width = side("width", group.width, allowances.width);
  const length = sheet.lay(`${line}.length`, onGrid(plus(group.length, allowances.length), allowances.grid), {
    label: "rough length",
    display: units.long,
  });
  const volume = sheet.lay(`${line}.volume`, times(group.count, thickness, width, length), {
    label: "rough wood",
    display: units.lumber,
  });
  return { thickness, width, length, volume };
}

/** What remains of a green size at the target moisture. */
function left(shrinkage: Operand, moisture: Operand): Operand {
  const saturation = number("30 %");
  return minus(number("1"), over(times(shrinkage, greatest(minus(saturation, moisture), number("0"))), saturation));
}

/** Up to the next step: a mill is set in whole steps. */
const onGrid = (size: Operand, grid: Operand) => times(roundUp(over(size, grid)), grid);
