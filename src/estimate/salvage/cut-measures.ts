/**
 * What the cuts of a plan amount to: counts, lengths, faces and volumes in whole grid steps, read off the cuts alone;
 * and what they cost. The estimate's decimals are made of these numbers.
 */
import { type MetCut, walkCuts } from "./cut-walk.js";
import { addFaces, faceOf, type MillFaces, NO_FACES } from "./mill-faces.js";
import type { SawGroup, SawingPlan, SawingProblem, SawLog, SawnPiece, SawRates } from "./sawing-problem.js";

/**
 * Work on the mill and saws. Lengths in grid steps, areas in grid squares. The face of each mill cut is rounded to
 * whole squares before they are added, so that decimals made of the sum are exact.
 */
export interface CutWork {
  readonly boltsSawn: number;
  readonly bucks: number;
  readonly millCuts: number;
  readonly millArea: number;
  readonly ripCuts: number;
  readonly ripLength: number;
  readonly crosscuts: number;
  /** Slabs that are laid on the mill again and sawn across: cants. */
  readonly cants: number;
  /** All pieces sawn, spare ones included. */
  readonly pieces: number;
  /** Grid cubes in the pieces' rough boxes. */
  readonly pieceVolume: number;
}

/** One bolt's share of the work, and where it lies in its log. */
export interface BoltMeasures extends CutWork {
  readonly z0: number;
  readonly z1: number;
}

/** One log's share of the work. Bucking belongs to the log, not to a bolt. */
export interface LogMeasures extends CutWork {
  readonly log: string;
  readonly bolts: readonly BoltMeasures[];
  /** Its cuts by the mill, as they tell on the pace; dirt apart. */
  readonly faces: MillFaces;
}

/** Pieces of one group. */
export interface GroupMeasures {
  readonly group: string;
  readonly sawn: number;
  /** Sawn and wanted: at most the group's count. */
  readonly wanted: number;
  /** Sawn beyond the count. */
  readonly spare: number;
  readonly bought: number;
}

/** A whole plan. */
export interface PlanMeasures extends CutWork {
  readonly logsUsed: number;
  readonly logs: readonly LogMeasures[];
  readonly groups: readonly GroupMeasures[];
}

const NO_WORK: CutWork = {
  boltsSawn: 0,
  bucks: 0,
  millCuts: 0,
  millArea: 0,
  ripCuts: 0,
  ripLength: 0,
  crosscuts: 0,
  cants: 0,
  pieces: 0,
  pieceVolume: 0,
};

function sumWork(shares: readonly CutWork[]): CutWork {
  const sum = { ...NO_WORK };
  for (const share of shares) {
    for (const key of Object.keys(NO_WORK) as (keyof CutWork)[])
      (sum as Record<keyof CutWork, number>)[key] += share[key];
  }
  return sum;
}

/**
 * Measures a plan by its cuts.
 * @throws Error when the plan names a log that the problem has not, or a cut meets no part.
 */
export function measureCuts(problem: SawingProblem, plan: SawingPlan): PlanMeasures {
  const byName = new Map(problem.logs.map((log) => [log.name, log]));
  const logs = plan.logs.map((logPlan): LogMeasures => {
    const log = byName.get(logPlan.log);
    if (log === undefined) throw new Error(`The plan names a log that is not there: ${logPlan.log}.`);
    return measureLog(log, logPlan, problem.gridMm);
  });
  const pieces = plan.logs.flatMap((logPlan) => logPlan.pieces);
  return {
    ...sumWork(logs),
    logsUsed: logs.filter((log) => log.boltsSawn > 0).length,
    logs,
    groups: problem.groups.map((group) => measureGroup(group, pieces, plan.buy[group.name] ?? 0)),
  };
}

function measureLog(log: SawLog, plan: SawingPlan["logs"][number], gridMm: string): LogMeasures {
  const walk = walkCuts(log, plan);
  const bolts = walk.bolts.map(([z0, z1], bolt): BoltMeasures => {
    const cuts = walk.cuts.filter(({ cut, part }) => cut.tool !== "buck" && part.bolt === bolt);
    const pieces = plan.pieces.filter((piece) => walk.parts.get(piece.part)?.bolt === bolt);
    return { z0, z1, ...boltWork(cuts, pieces) };
  });
  const bucks = walk.cuts.filter(({ cut }) => cut.tool === "buck").length;
  const milled = walk.cuts.filter(({ cut }) => cut.tool === "mill");
  const faces = milled.reduce((sum, cut) => addFaces(sum, faceOf(cut, gridMm, false)), NO_FACES);
  return { log: log.name, bolts, faces, ...sumWork(bolts), bucks };
}

function boltWork(cuts: readonly MetCut[], pieces: readonly SawnPiece[]): CutWork {
  const by = (tool: string) => cuts.filter(({ cut }) => cut.tool === tool);
  const sum = (met: readonly MetCut[], amount: (one: MetCut) => number) => met.reduce((a, one) => a + amount(one), 0);
  const across = by("mill").filter(({ cut, flat }) => flat && cut.axis === "x");
  return {
    boltsSawn: 1,
    bucks: 0,
    millCuts: by("mill").length,
    millArea: sum(by("mill"), ({ area }) => Math.round(area)),
    ripCuts: by("rip").length,
    ripLength: sum(by("rip"), ({ length }) => length),
    crosscuts: by("cross").length,
    cants: new Set(across.map(({ part }) => `${part.y[0]}`)).size,
    pieces: pieces.length,
    pieceVolume: pieces.reduce((total, p) => total + (p.x1 - p.x0) * (p.y1 - p.y0) * (p.z1 - p.z0), 0),
  };
}

function measureGroup(group: SawGroup, pieces: readonly SawnPiece[], bought: number): GroupMeasures {
  const sawn = pieces.filter((piece) => piece.group === group.name).length;
  const wanted = Math.min(sawn, group.count);
  return { group: group.name, sawn, wanted, spare: sawn - wanted, bought };
}

/** 1 ft = 304.8 mm, exact by definition (international foot). */
const MM_PER_FOOT = 304.8;

/** Cash and hours of one plan, and both together at the problem's wage. */
export interface PlanCost {
  readonly cash: number;
  readonly hours: number;
  /** cash + wage × hours: what plans are compared by. */
  readonly total: number;
}

/**
 * What a plan costs, in float: sawing by its cuts, faces not rounded, and what it leaves to buy. A crosscut is counted
 * a piece, whether or not its end needs one. Dressing is in the groups' net prices.
 */
export function planCost(problem: SawingProblem, plan: SawingPlan): PlanCost {
  const { rates } = problem;
  const work = measureCuts(problem, plan);
  const foot = Number(problem.gridMm) / MM_PER_FOOT;
  const millFt2 = millFace(problem, plan) * foot * foot;
  const ripFt = work.ripLength * foot;
  let cash = work.logsUsed * rates.logCash + millFt2 * rates.millCashPerFt2 + ripFt * rates.ripCashPerFt;
  let hours = handlingHours(rates, work) + millFt2 * rates.millHoursPerFt2 + ripFt * rates.ripHoursPerFt;
  const sawn = new Set(work.logs.filter(({ boltsSawn }) => boltsSawn > 0).map(({ log }) => log));
  for (const { name, ready } of problem.logs) {
    if (ready === undefined || !sawn.has(name)) continue;
    cash += ready.cash;
    hours += ready.hours;
  }
  for (const group of problem.groups) {
    const bought = plan.buy[group.name] ?? 0;
    cash += bought * group.buy.cash;
    hours += bought * group.buy.hours;
  }
  return { cash, hours, total: cash + rates.wage * hours };
}

/** Faces of all cuts by the mill, grid squares, not rounded. */
function millFace(problem: SawingProblem, plan: SawingPlan): number {
  const byName = new Map(problem.logs.map((log) => [log.name, log]));
  const cuts = plan.logs.flatMap((logPlan) => walkCuts(byName.get(logPlan.log) as SawLog, logPlan).cuts);
  return cuts.reduce((total, { cut, area }) => (cut.tool === "mill" ? total + area : total), 0);
}

/** Hours that do not depend on the length or face of a cut. */
function handlingHours(rates: SawRates, work: PlanMeasures): number {
  return (
    work.logsUsed * rates.logHours +
    work.boltsSawn * rates.boltHours +
    work.millCuts * rates.millCutHours +
    work.ripCuts * rates.ripCutHours +
    work.pieces * rates.crosscutHours
  );
}
