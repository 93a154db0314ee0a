/** Pieces of a length of the user's own that would end before what they meet. */
import { type Fault, pointer } from "../faults.js";
import type { Decimal } from "../quantity/decimal.js";
import { exactly, onTape } from "../quantity/text.js";
import type { Role } from "../request/structure.js";
import type { Sheet } from "../sheet/sheet.js";
import type { GroupPlan, PieceGroup } from "./piece-group.js";

/** Each piece meets something at both its ends; rafters are asked by their slope (`reachFaults`). */
const WHOLE: ReadonlySet<Role> = new Set(["post", "tie", "brace"]);
const WHOLE_JOINTS: ReadonlySet<GroupPlan["joint"]> = new Set(["king-post", "joist"]);
/** What may also be joined from more pieces, where the request gives their count as well. */
const JOINED: ReadonlySet<Role> = new Set(["beam", "ridge", "purlin", "fascia"]);

/** A length read off a tape may be short by half of a sixteenth; by less than one nobody sees a piece short. */
const MARK = exactly("0.0625 in").value;

/**
 * What each piece has to reach; undefined where its length is the one worked out, or where nothing depends on it.
 * A run of which the request gives the count as well has to reach in all.
 */
export function leastLength(sheet: Sheet, plan: GroupPlan): Decimal | undefined {
  const own = plan.settings?.length !== undefined;
  const cell = `pieces.${plan.name}.length`;
  if (!own && !sheet.isOverridden(cell)) return undefined;
  const joined = JOINED.has(plan.role) || plan.begins !== undefined;
  if (!joined && !WHOLE.has(plan.role) && !WHOLE_JOINTS.has(plan.joint)) return undefined;
  const length = sheet.decideOf(cell, plan.length);
  const count = plan.settings?.count;
  if (!joined || count === undefined || count === 0) return length;
  return length.times(sheet.decideOf(`pieces.${plan.name}.count`, plan.count)).dividedBy(count);
}

/** Refuses pieces shorter than that. Longer ones are cut. */
export function shortFaults(sheet: Sheet, groups: readonly PieceGroup[]): Fault[] {
  return groups.flatMap(({ least, length, label, at, role }) => {
    if (least === undefined || sheet.decide(length).plus(MARK).gte(least)) return [];
    const overridden = length.kind === "override";
    const worked = onTape({ value: least, unit: length.unit }, length.display);
    const wrong = `${label} of ${sheet.onTape(length)} do not reach what they meet at both ends: ${worked} is the least.`;
    const shorter = role === "brace" ? "; the leg of braces is given as braceLeg" : "";
    const cure = `Leave the length out, or give one that reaches${shorter}.`;
    return [
      {
        code: "cannot-build" as const,
        at: overridden ? pointer("/overrides", length.name) : `${at}/length`,
        wrong,
        cure,
      },
    ];
  });
}

/** Lengths of a rafter, from plate to ridge and whole, by the last part of their cells' names. */
const RAFTER_LENGTHS = ["lineLength", "bodyLength", "edgeLength", "stockLength"];

/** Refuses overrides that make rafters shorter than their roof has them. */
export function shortRafterFaults(sheet: Sheet): Fault[] {
  return ["rafter", "farRafter", "endRafter", "hip"].flatMap((rafter) =>
    RAFTER_LENGTHS.flatMap((part) => {
      const cell = sheet.find(`${rafter}.${part}`);
      if (!cell?.expression || cell.kind !== "override") return [];
      const least = sheet.decideOf(cell.name, cell.expression);
      if (sheet.decide(cell).plus(MARK).gte(least)) return [];
      const worked = onTape({ value: least, unit: cell.unit }, cell.display);
      const wrong = `${cell.name} (${cell.label}) of ${sheet.onTape(cell)} does not reach: the roof is ${worked} there.`;
      const cure = "Leave the override out, or give a length that reaches.";
      return [{ code: "cannot-build" as const, at: pointer("/overrides", cell.name), wrong, cure }];
    }),
  );
}
