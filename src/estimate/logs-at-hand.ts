/** The logs as they lie and the woods that they, and the groups, are of. */
import { type Fault, FaultError, pointer } from "./faults.js";
import type { CutList } from "./pieces/cut-list.js";
import type { DisplayUnits } from "./quantity/display.js";
import type { Assumed } from "./request/assumed.js";
import type { Defaults } from "./request/given.js";
import type { EstimateRequest } from "./request/request.js";
import { laySoundLog, type SoundLog } from "./salvage/sound-wood.js";
import { layWood, type WoodCells } from "./salvage/wood.js";
import type { Cell } from "./sheet/expression.js";
import type { Sheet } from "./sheet/sheet.js";

/** What logs and woods are laid with. */
interface GivenLaying {
  readonly sheet: Sheet;
  readonly request: EstimateRequest;
  readonly defaults: Defaults;
  readonly units: DisplayUnits;
}

/** Woods of logs and of groups that name one, each once, in the order they come up. */
export function layWoods(
  { sheet, request, defaults, units }: GivenLaying,
  cutList: CutList,
  moisture: Cell,
): ReadonlyMap<string, WoodCells> {
  const ids = [
    ...(request.logs ?? []).map((log) => log.species),
    ...cutList.groups.flatMap((group) => group.rules.species),
  ];
  const at = { value: sheet.decide(moisture), unit: moisture.unit };
  return new Map([...new Set(ids)].map((id) => [id, layWood(sheet, id, at, defaults, units)]));
}

/** The sound wood of every log, one by one. @throws FaultError where a log is no log, or there are too many. */
export function layLogs(
  { sheet, request, defaults, units, assumed }: GivenLaying & { readonly assumed: Assumed },
  woods: ReadonlyMap<string, WoodCells>,
): SoundLog[] {
  const assumptions = {
    taper: assumed.cell("logs.taper"),
    someSweep: assumed.cell("logs.someSweep"),
    badSweep: assumed.cell("logs.badSweep"),
  };
  refuseManyLogs(request);
  const faults: Fault[] = [];
  const logs: SoundLog[] = [];
  for (const [i, log] of (request.logs ?? []).entries()) {
    const wood = woods.get(log.species) as WoodCells;
    const laying = { sheet, wood, assumed: assumptions, defaults, units, currency: request.catalog.currency };
    for (let copy = 1; copy <= (log.count ?? 1); copy++) {
      const name = log.count === undefined ? log.name : `${log.name}-${copy}`;
      const found = laySoundLog(laying, log, name, pointer("/logs", i));
      if ("length" in found && "name" in found) logs.push(found);
      else faults.push(...(found as readonly Fault[]));
    }
  }
  if (faults.length > 0) throw new FaultError(faults);
  return logs;
}

/** As many as the sawing model was measured with. */
const MOST_LOGS = 200;

/** Asked before any is laid: the counts of a short request may come to thousands. */
function refuseManyLogs({ logs = [] }: EstimateRequest): void {
  const count = logs.reduce((sum, log) => sum + (log.count ?? 1), 0);
  if (count <= MOST_LOGS) return;
  const wrong = `There are ${count} logs; the limit is ${MOST_LOGS}.`;
  const cure = "Leave out logs that are too small or too far.";
  throw new FaultError([{ code: "too-large", at: "/logs", wrong, cure }]);
}
