/**
 * Weight of each piece, green and dry, and how many people it takes to lift it.
 * @see NIOSH 94-110, Applications Manual for the Revised Lifting Equation: 51 lb (23 kg) is the most for one person, and
 * only close to the body, at a good height, now and then.
 */
import type { PieceGroup } from "../pieces/piece-group.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import { aside } from "../sheet/aside.js";
import { type Cell, greatest, over, roundUp, times } from "../sheet/expression.js";
import { layColumnSum, layLines } from "../sheet/rows.js";
import type { Sheet } from "../sheet/sheet.js";

/** Weight of a wood that nobody named: heavier than most softwoods. Assumption. */
export const UNKNOWN_WOOD = { green: "50 lb/ft3", dry: "35 lb/ft3" } as const;

/** Densities of a group's wood, as cells: the caller knows the species. */
export interface Densities {
  readonly green: Cell;
  readonly dry: Cell;
}

/** One group's weights; `green`, `dry` and `lifted` are those of one piece. */
export interface WeightLine {
  readonly group: string;
  readonly green: Cell;
  readonly dry: Cell;
  /** As it is raised: green or dried, as the group is built. */
  readonly lifted: Cell;
  readonly people: Cell;
  readonly allGreen: Cell;
  readonly allDry: Cell;
}

/** Weights of all groups. */
export interface WeightTakeoff {
  readonly lines: readonly WeightLine[];
  readonly load: Cell;
  readonly totalGreen: Cell;
  readonly totalDry: Cell;
  /** Heaviest piece as it is raised; absent where there are no pieces. */
  readonly heaviest: Cell | undefined;
  /** Groups whose pieces are over the load of one person. */
  readonly heavyLifts: readonly WeightLine[];
}

/** Pieces, and the density of their wood. */
export interface WeightInput {
  readonly groups: readonly PieceGroup[];
  readonly densitiesOf: (group: PieceGroup) => Densities;
  readonly assumed: Assumed;
}

/** Lays the weights of all groups. */
export function layWeights(
  sheet: Sheet,
  { groups, densitiesOf, assumed }: WeightInput,
  units: DisplayUnits,
): WeightTakeoff {
  sheet.title("weight", "Weight");
  const load = assumed.cell("carry.load");
  const lines = layLines(
    "weight",
    groups,
    (group) => group.name,
    (group, line) => layWeight(sheet, line, group, densitiesOf(group), load, units),
  );
  const total = (of: "allGreen" | "allDry", name: string, label: string) =>
    layColumnSum(sheet, `weight.${name}`, lines, (line) => line[of], "kg", { label, display: units.mass });
  const lifted = lines.map((line) => line.lifted);
  return {
    lines,
    load,
    totalGreen: total("allGreen", "totalGreen", "all pieces, green"),
    totalDry: total("allDry", "totalDry", "all pieces, dry"),
    heaviest:
      lifted.length === 0
        ? undefined
        : sheet.lay("weight.heaviest", greatest(...lifted), { label: "heaviest piece to raise", display: units.mass }),
    // A list to show: no formula hangs on it, so load and density stay live.
    heavyLifts: lines.filter((line) => aside(line.people).gt(1)),
  };
}

function layWeight(
  sheet: Sheet,
  line: string,
  group: PieceGroup,
  { green, dry }: Densities,
  load: Cell,
  units: DisplayUnits,
): WeightLine {
  sheet.title(line, group.label);
  const { thickness, width, length, count, rules } = group;
  const lay = (column: string, label: string, operand: Parameters<Sheet["lay"]>[1]) =>
    sheet.lay(`${line}.${column}`, operand, { label, display: units.mass });
  const one = (density: Cell) => times(thickness, width, length, density);
  const greenOne = lay("green", "one piece, green", one(green));
  const dryOne = lay("dry", "one piece, dry", one(dry));
  const lifted = lay("lifted", "one piece, as raised", rules.seasoning === "green" ? greenOne : dryOne);
  return {
    group: group.name,
    green: greenOne,
    dry: dryOne,
    lifted,
    people: sheet.lay(`${line}.people`, roundUp(over(lifted, load)), { label: "people to lift it" }),
    allGreen: lay("allGreen", "all pieces, green", times(count, greenOne)),
    allDry: lay("allDry", "all pieces, dry", times(count, dryOne)),
  };
}
