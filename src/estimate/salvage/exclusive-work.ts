/**
 * What one group adds to a plan: the cuts that free nothing but its pieces, the bolts and logs that hold nothing else.
 * Leave the group out of the same plan, and exactly these fall away.
 */
import { type MetCut, walkCuts } from "./cut-walk.js";
import { addFaces, faceOf, type MillFaces, NO_FACES } from "./mill-faces.js";
import { addRips, type Feeding, NO_RIPS, type RipWork, ripOf } from "./ripping.js";
import type { LogPlan, SawingPlan, SawingProblem, SawLog } from "./sawing-problem.js";

/** Work in whole grid steps, squares and cubes. */
export interface ExclusiveWork {
  /** Logs that are sawn for this group alone. */
  readonly logs: readonly string[];
  readonly bolts: number;
  readonly cants: number;
  readonly millCuts: number;
  /** By the species of the log. */
  readonly faces: ReadonlyMap<string, MillFaces>;
  /** Rips beside the mill, by the species of the log. */
  readonly rips: ReadonlyMap<string, RipWork>;
  readonly crosscuts: number;
  readonly pieces: number;
  /** Cubes of all its pieces, by the species of their log. */
  readonly volumes: ReadonlyMap<string, number>;
}

type Tally = { -readonly [K in keyof ExclusiveWork]: ExclusiveWork[K] extends number ? number : ExclusiveWork[K] } & {
  logs: string[];
  faces: Map<string, MillFaces>;
  rips: Map<string, RipWork>;
  volumes: Map<string, number>;
};

/** Several groups share it. */
const SHARED = Symbol("shared");
/** A group's name, `SHARED`, or undefined where there are no pieces at all. */
type Owner = string | typeof SHARED | undefined;

/** What the work hangs on beside the cuts. */
export interface WorkTerms {
  /** Names of logs with dirty bark. */
  readonly dirty: ReadonlySet<string>;
  readonly feeding: Feeding;
}

/** Work by group, every group of the problem named. */
export function exclusiveWork(
  problem: SawingProblem,
  plan: SawingPlan,
  { dirty, feeding }: WorkTerms,
): ReadonlyMap<string, ExclusiveWork> {
  const tallies = new Map(problem.groups.map(({ name }) => [name, emptyTally()]));
  const logs = new Map(problem.logs.map((log) => [log.name, log]));
  for (const logPlan of plan.logs) {
    const log = logs.get(logPlan.log) as SawLog;
    tallyLog(tallies, log, logPlan, {
      face: (met) => faceOf(met, problem.gridMm, dirty.has(log.name)),
      rip: (met) => ripOf(log, met, feeding),
    });
  }
  return tallies;
}

function emptyTally(): Tally {
  return {
    logs: [],
    bolts: 0,
    cants: 0,
    millCuts: 0,
    faces: new Map(),
    rips: new Map(),
    crosscuts: 0,
    pieces: 0,
    volumes: new Map(),
  };
}

/** What one cut of a log is measured by. */
interface Measuring {
  readonly face: (met: MetCut) => MillFaces;
  readonly rip: (met: MetCut) => RipWork;
}

function tallyLog(tallies: ReadonlyMap<string, Tally>, log: SawLog, plan: LogPlan, measuring: Measuring): void {
  const { owners, ofCut } = ownersOf(plan);
  const { cuts } = walkCuts(log, plan);
  const bolts = new Map<number, Owner>();
  // A slab is laid on the mill again for all that is sawn across it.
  const turned = new Map<string, Owner>();
  cuts.forEach((met, index) => {
    const owner = ofCut[index];
    // The first cut that meets a bolt is through the whole of it.
    if (met.cut.tool !== "buck" && !bolts.has(met.part.bolt)) bolts.set(met.part.bolt, owner);
    if (isAcross(met)) {
      const slab = `${met.part.bolt}:${met.part.y[0]}`;
      turned.set(slab, turned.has(slab) ? together(turned.get(slab), owner) : owner);
    }
    if (typeof owner === "string") tallyCut(tallies.get(owner) as Tally, met, log.species, measuring);
  });
  for (const owner of turned.values()) if (typeof owner === "string") (tallies.get(owner) as Tally).cants++;
  for (const owner of bolts.values()) if (typeof owner === "string") (tallies.get(owner) as Tally).bolts++;
  const whole = owners.get(0);
  if (typeof whole === "string") (tallies.get(whole) as Tally).logs.push(log.name);
  for (const piece of plan.pieces) {
    const tally = tallies.get(piece.group);
    if (!tally) continue;
    tally.pieces++;
    const cubes = (piece.x1 - piece.x0) * (piece.y1 - piece.y0) * (piece.z1 - piece.z0);
    tally.volumes.set(log.species, (tally.volumes.get(log.species) ?? 0) + cubes);
  }
}

/** Across a slab that already has both faces. */
const isAcross = ({ cut, flat }: MetCut): boolean => cut.tool === "mill" && flat && cut.axis === "x";

function tallyCut(tally: Tally, met: MetCut, species: string, { face, rip }: Measuring): void {
  const { cut } = met;
  if (cut.tool === "mill") {
    tally.millCuts++;
    tally.faces.set(species, addFaces(tally.faces.get(species) ?? NO_FACES, face(met)));
  } else if (cut.tool === "rip") {
    tally.rips.set(species, addRips(tally.rips.get(species) ?? NO_RIPS, rip(met)));
  } else if (cut.tool === "cross") tally.crosscuts++;
}

/** Who owns each part and each cut, from the last cut back: a part belongs to whoever owns all that comes out of it. */
function ownersOf(plan: LogPlan): { readonly owners: ReadonlyMap<number, Owner>; readonly ofCut: readonly Owner[] } {
  const owners = new Map<number, Owner>(plan.pieces.map(({ part, group }) => [part, group]));
  const ofCut: Owner[] = [];
  for (let i = plan.cuts.length - 1; i >= 0; i--) {
    const owner = together(owners.get(2 * i + 1), owners.get(2 * i + 2));
    owners.set((plan.cuts[i] as LogPlan["cuts"][number]).part, owner);
    ofCut[i] = owner;
  }
  return { owners, ofCut };
}

function together(a: Owner, b: Owner): Owner {
  if (a === undefined) return b;
  return b === undefined || a === b ? a : SHARED;
}
