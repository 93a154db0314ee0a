/** Logs and pieces alone: do the logs hold the pieces, and how are they sawn? No structure, no routes; prices where known. */
import { type Basis, layBasis } from "./basis.js";
import { type Caution, sawingCautions } from "./cautions.js";
import { layMilling, type MillingCells } from "./effort/milling.js";
import { FaultError } from "./faults.js";
import type { Notice } from "./notice.js";
import { defaultNotices, notMilledNotices } from "./notices.js";
import { millable, type PlannedLogs, type Planners, planLogs } from "./plan.js";
import type { EstimateRequest } from "./request/request.js";
import { layCuts } from "./salvage/cut-cells.js";
import { layYield, logsSawn, type YieldCells } from "./salvage/overrun.js";
import { type Cell, plus, sumOr, times } from "./sheet/expression.js";
import { plain, Sheet } from "./sheet/sheet.js";
import { Stages, UNWATCHED } from "./watch.js";

/** Logs planned by themselves: the plan, its hours, its yield, and what to know of it. */
export interface SawnLogs {
  readonly basis: Basis;
  readonly sawing: PlannedLogs;
  readonly milling: MillingCells;
  /** Person-hours of the milling, from getting the logs out to clearing the slabs away. */
  readonly hours: Cell;
  readonly yields: YieldCells;
  readonly cautions: readonly Caution[];
  readonly notices: readonly Notice[];
}

/** Begins the names of the plan's cells, and names it among held plans. */
export const SAWING_KEY = "sawing";

/** What is told of a sawing plan under way, in the order of the work. */
export const SAWING_STAGES = {
  lay: "laying out pieces and logs",
  plan: "planning the cuts",
  measure: "measuring the cuts",
} as const;
/** How far a sawing plan has come, told stage by stage. */
export type SawingStages = Stages<keyof typeof SAWING_STAGES>;

/**
 * Plans the logs of a request, whose structure is a list of pieces.
 * @throws FaultError when none of the pieces may be sawn, an override is wrong, or the held plan does not fit; CalledOff.
 */
export function sawLogs(
  request: EstimateRequest,
  planners: Planners,
  stages: SawingStages = new Stages(SAWING_STAGES, UNWATCHED),
): SawnLogs {
  stages.begin("lay");
  const sheet = new Sheet(new Map(Object.entries(request.overrides ?? {})));
  const basis = layBasis(sheet, request);
  refuseNothing(basis);
  stages.begin("plan");
  const sawing = planLogs(basis, SAWING_KEY, planners, request.heldPlans?.sawing?.milled);
  stages.begin("measure");
  sheet.title(SAWING_KEY, "Sawing");
  const cuts = layCuts(basis, SAWING_KEY, sawing, sawing.proof);
  const milling = layMilling(basis, SAWING_KEY, cuts, stickered(basis, sawing));
  const [first, ...rest] = Object.values(milling.stages);
  const hours = sheet.lay(`${SAWING_KEY}.hours.total`, first ? plus(first, ...rest) : sumOr([], "person-h"), {
    label: "hours of milling",
    display: "person-h",
  });
  const yields = layYield(sheet, SAWING_KEY, cuts.pieceVolume, logsSawn(basis.logs, sawing), basis.units);
  const { assumed } = basis;
  const faults = [...assumed.faults, ...assumed.unknownFaults(), ...sheet.faults, ...sheet.overrideFaults()];
  if (faults.length > 0) throw new FaultError(faults);
  const notices = [...notMilledNotices(basis), ...defaultNotices(basis)];
  return { basis, sawing, milling, hours, yields, cautions: sawingCautions(basis), notices };
}

function refuseNothing(basis: Basis): void {
  if (millable(basis).length > 0) return;
  const why = basis.groups.map(({ group, notMilled }) => `${group.label}: ${notMilled ?? "not milled"}`);
  const wrong = `None of the pieces may be sawn. ${why.slice(0, 3).join("; ")}.`;
  throw new FaultError([
    { code: "cannot-build", at: "/structure/pieces", wrong, cure: "Ask for pieces that the logs' woods may serve." },
  ]);
}

/** Wide faces of the sawn pieces that are stacked to dry. */
function stickered({ sheet, groups }: Basis, { measures, proof }: PlannedLogs) {
  const faces = groups.flatMap(({ group, millable }) => {
    const sawn = measures.groups.find((one) => one.group === group.name)?.sawn ?? 0;
    if (!millable || sawn === 0 || group.rules.seasoning !== "dried") return [];
    const label = `${group.label}, sawn`;
    const count = sheet.planned(`${SAWING_KEY}.sawn.${group.name}`, plain(sawn), proof, { label });
    return [times(count, millable.rough.width, millable.rough.length)];
  });
  return sumOr(faces, "m2");
}
