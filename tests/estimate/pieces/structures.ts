/** Structures of any kind laid for tests, and what is refused. */
import { FaultError } from "../../../src/estimate/faults.js";
import { layCutList } from "../../../src/estimate/pieces/cut-list.js";
import { displayUnits } from "../../../src/estimate/quantity/display.js";
import type { MeasureSystem } from "../../../src/estimate/quantity/text.js";
import { Defaults } from "../../../src/estimate/request/given.js";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import type { OverrideText } from "../../../src/estimate/sheet/overriding.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

/** Lays a structure on a sheet of its own. */
export function laidStructure(
  shape: StructureShape,
  system: MeasureSystem = "inch-pound",
  overrides: Readonly<Record<string, OverrideText>> = {},
) {
  const sheet = new Sheet(new Map(Object.entries(overrides)));
  const defaults = new Defaults(system);
  return { sheet, defaults, ...layCutList({ sheet, defaults, units: displayUnits(system) }, shape) };
}

/** Count and length of every group, the length in a unit to three places. */
export function listed(shape: StructureShape, unit: "in" | "mm" = "in") {
  const { sheet, groups } = laidStructure(shape, unit === "mm" ? "metric" : "inch-pound");
  return Object.fromEntries(
    groups.map((group) => [group.name, [group.count.value.toNumber(), sheet.in(group.length, unit).toFixed(3)]]),
  );
}

/** Code and place of every fault, and what it says. */
export function refused(shape: StructureShape): readonly (readonly [code: string, at: string, wrong: string])[] {
  try {
    laidStructure(shape);
  } catch (error) {
    if (error instanceof FaultError) return error.faults.map(({ code, at, wrong }) => [code, at, wrong]);
    throw error;
  }
  return [];
}
