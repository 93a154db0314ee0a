/** Joints whose hardware nobody can count. */
import { type Fault, pointer } from "../faults.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import { ROLE_DEFAULTS } from "../pieces/roles.js";
import type { ExplicitPieces } from "../request/structure.js";

/**
 * Faults of joints of pieces of the user's own that lack what their hardware is counted by.
 * @param at - JSON Pointer of the list.
 * @param framed - Whether there are rafters to count crossings over.
 */
export function jointFaults(own: readonly ExplicitPieces[], at: string, framed: boolean): Fault[] {
  return own.flatMap((pieces, i) => [
    ...unknownCounts(pieces, framed).map(([wrong, cure]) => ({
      code: "missing-field" as const,
      at: pointer(at, i, "joint"),
      wrong: `${pieces.label ?? pieces.name}: ${wrong}`,
      cure,
    })),
    ...tooManyRuns(pieces, pointer(at, i, "runs")),
  ]);
}

function unknownCounts({ joint, crossings, runs }: ExplicitPieces, framed: boolean): (readonly [string, string])[] {
  if (joint === "crossing" && crossings === undefined && !framed) {
    return [
      ["nobody can count what fixes them where they cross something.", 'Give "crossings": how many each crosses.'],
    ];
  }
  if (joint === "splice" && runs === undefined) {
    return [["nobody can count their splices.", 'Give "runs": how many runs they are joined into.']];
  }
  return [];
}

/** Bearers, of a floor or not, of which nobody says how many posts they are bolted to. */
export function bearerFaults(groups: readonly PieceGroup[]): Fault[] {
  const counted = new Set(groups.flatMap((group) => (group.atPosts ? [group.thickness] : [])));
  return groups.flatMap(({ rules, crossings, thickness, at, label, runs }) => {
    if (rules.joint !== "bearer" || crossings !== undefined || counted.has(thickness)) return [];
    const wrong = `${label}: nobody can count the bolts of these bearers.`;
    const cure = runs ? 'Give "crossings": how many posts each is bolted to.' : "Choose another joint for them.";
    return [{ code: "missing-field" as const, at: `${at}/joint`, wrong, cure }];
  });
}

function tooManyRuns({ label, name, runs, count }: ExplicitPieces, at: string): Fault[] {
  if (runs === undefined || runs <= count) return [];
  const wrong = `${label ?? name}: ${count} pieces make no ${runs} runs.`;
  return [{ code: "cannot-build", at, wrong, cure: "Give as many runs as there are pieces, or fewer." }];
}

const RUN_JOINTS: ReadonlySet<string> = new Set(["splice", "bearer"]);

/** Counts that the joints of these pieces do not ask for: JSON Pointers. */
export function unusedCounts(own: readonly ExplicitPieces[], at: string): string[] {
  return own.flatMap(({ role = "other", joint = ROLE_DEFAULTS[role].joint, crossings, runs }, i) => [
    ...(crossings !== undefined && joint !== "crossing" && joint !== "bearer" ? [pointer(at, i, "crossings")] : []),
    ...(runs !== undefined && !RUN_JOINTS.has(joint) ? [pointer(at, i, "runs")] : []),
  ]);
}
