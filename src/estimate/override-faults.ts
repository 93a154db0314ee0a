/** Faults that follow from an override: they name it, wherever the field or the offer stands that it took the place of. */
import { layBasis } from "./basis.js";
import { type Fault, FaultError, pointer } from "./faults.js";
import type { EstimateRequest } from "./request/request.js";
import { Sheet } from "./sheet/sheet.js";
import { layTakeoffs } from "./takeoffs.js";

/** So many overrides are tried one by one; of more all are named together. */
const MOST_TRIED = 24;

/**
 * Does some work on a request, and where it is refused, looks whether that is for the sake of an override: whether it can be
 * laid without.
 * @throws FaultError with the faults of the work, placed at the override that they follow from.
 */
export function blamingOverrides<T>(request: EstimateRequest, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof FaultError)) throw error;
    throw new FaultError(blamed(request, error.faults));
  }
}

function blamed(request: EstimateRequest, faults: readonly Fault[]): readonly Fault[] {
  const names = Object.keys(request.overrides ?? {});
  const named = faults.some(({ at }) => at.startsWith("/overrides"));
  if (names.length === 0 || named || canBeLaid(request, names) || !canBeLaid(request, [])) return faults;
  const tried = names.length > MOST_TRIED ? [] : names;
  const guilty = tried.find((name) =>
    canBeLaid(
      request,
      names.filter((other) => other !== name),
    ),
  );
  const all = `${names.length === 1 ? "the override" : "overrides"} of ${names.slice(0, 3).join(", ")}${names.length > 3 ? " and others" : ""}`;
  const which = guilty === undefined ? all : `the override of ${guilty}`;
  const at = guilty === undefined ? "/overrides" : pointer("/overrides", guilty);
  return faults.map(({ code, wrong }) => ({
    code,
    at,
    wrong: `${wrong} It follows from ${which}.`,
    cure: "Leave the override out, or give another value.",
  }));
}

/** Whether the request can be laid with these of its overrides alone. */
function canBeLaid(request: EstimateRequest, names: readonly string[]): boolean {
  const kept = Object.entries(request.overrides ?? {}).filter(([name]) => names.includes(name));
  try {
    layTakeoffs(layBasis(new Sheet(new Map(kept)), request));
    return true;
  } catch (error) {
    if (error instanceof FaultError) return false;
    throw error;
  }
}
