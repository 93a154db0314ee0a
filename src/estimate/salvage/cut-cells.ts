/** A sawing plan's measures as planned cells: whole grid steps turned into exact lengths, areas and volumes. */
import { woodName } from "../../catalog/species.js";
import { type Cell, type Operand, type PlanProof, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { measureCuts, type PlanMeasures } from "./cut-measures.js";
import type { ExclusiveWork } from "./exclusive-work.js";
import { type MeasuredGrid, measuresUnder } from "./measures.js";
import { addFaces, type MillFaces, NO_FACES } from "./mill-faces.js";
import { type Feeding, ripsBySpecies } from "./ripping.js";
import type { SawingPlan, SawingProblem } from "./sawing-problem.js";
import type { SoundLog } from "./sound-wood.js";
import { type FaceCells, layFaces, layRips, type RipCells, type WoodLaying } from "./species-cuts.js";
import type { WoodCells } from "./wood.js";

/** What a plan's cuts amount to. */
export interface CutCells {
  readonly logsUsed: Operand;
  /** Person-time to get them to the mill, and to prepare them for it. */
  readonly getOut: Operand;
  readonly prepare: Operand;
  /** Green weight of the logs used. */
  readonly logWeight: Operand;
  readonly bolts: Operand;
  /** Slabs laid on the mill again to be sawn across. */
  readonly turns: Operand;
  readonly millCuts: Operand;
  /** Faces sawn by the mill, by species. */
  readonly faces: readonly FaceCells[];
  readonly ripCuts: Operand;
  /** Those of them along a guide. */
  readonly guideCuts: Operand;
  /** Rips by species. */
  readonly rips: readonly RipCells[];
  readonly crosscuts: Operand;
  /** Pieces sawn, spares included, and their rough wood. */
  readonly pieces: Operand;
  readonly pieceVolume: Operand;
  /** The same, hard wood counted for more by as much as it is harder. */
  readonly hardVolume: Operand;
  /** Green weight of the pieces, and wood of the logs used. */
  readonly pieceWeight: Operand;
  readonly logVolume: Operand;
}

/** A sawing plan with its question and its measures. */
export interface MeasuredPlan {
  readonly problem: SawingProblem;
  readonly plan: SawingPlan;
  readonly measures: PlanMeasures;
}

/** Measures a plan that has passed its judge: cuts, faces and lengths for each wood. */
export function measurePlan(problem: SawingProblem, plan: SawingPlan): MeasuredPlan {
  return { problem, plan, measures: measureCuts(problem, plan) };
}

/** What laying measures needs beside them. */
export interface CutLaying extends WoodLaying {
  readonly sheet: Sheet;
  readonly logs: readonly SoundLog[];
  /** Person-time to get each log to the mill and to prepare it, by name. */
  readonly getOut: ReadonlyMap<string, Cell>;
  readonly prepare: ReadonlyMap<string, Cell>;
  readonly feeding: Feeding;
}

/** Lays a whole plan's measures under `key`. */
export function layCuts(
  laying: CutLaying,
  key: string,
  { problem, plan, measures }: MeasuredPlan,
  proof: PlanProof,
): CutCells {
  const dirty = dirtyLogs(laying.logs);
  const work = {
    ...measures,
    bolts: measures.boltsSawn,
    logs: measures.logs.filter((log) => log.boltsSawn > 0).map(({ log }) => log),
    faces: facesBySpecies(measures, laying.logs, dirty),
    volumes: volumeBySpecies(plan, laying.logs),
    rips: ripsBySpecies(problem, plan, laying.feeding),
  };
  return layWork(laying, `${key}.cuts`, work, { gridMm: problem.gridMm, proof });
}

/** Names of the logs that are marked as dirty. */
export const dirtyLogs = (logs: readonly SoundLog[]): ReadonlySet<string> =>
  new Set(logs.filter((log) => log.dirty).map((log) => log.name));

/** Lays the work of a plan, or of one group of it, under a key. */
export function layWork(laying: CutLaying, key: string, work: ExclusiveWork, grid: MeasuredGrid): CutCells {
  const { sheet, logs, woods, units } = laying;
  const laid = measuresUnder(sheet, key, grid);
  const { count } = laid;
  const used = new Set(work.logs);
  const usedLogs = logs.filter(({ name }) => used.has(name));
  const volumes = [...work.volumes].map(([species, cubes]) => ({
    cell: laid.volume(`volume-${species}`, `rough wood sawn, ${woodName(species)}`, cubes, units.lumber),
    density: (woods.get(species) as WoodCells).greenDensity,
    hardness: laying.hardness.get(species) as Cell,
  }));
  const total = (of: "cuts" | "guideCuts") => [...work.rips.values()].reduce((sum, one) => sum + one[of], 0);
  const timeOf = (each: ReadonlyMap<string, Cell>): Operand =>
    sumOr(
      usedLogs.map(({ name }) => each.get(name) as Cell),
      "person-h",
    );
  return {
    logsUsed: count("logs", "logs used", work.logs.length),
    getOut: timeOf(laying.getOut),
    prepare: timeOf(laying.prepare),
    logWeight: sumOr(
      usedLogs.map((log) => log.weight),
      "kg",
    ),
    bolts: count("bolts", "bolts sawn", work.bolts),
    turns: count("turns", "cants laid on the mill again", work.cants),
    millCuts: count("millCuts", "cuts by the mill", work.millCuts),
    faces: [...work.faces].map(([species, faces]) => layFaces(laying, laid, species, faces)),
    ripCuts: count("ripCuts", "rip cuts beside the mill", total("cuts")),
    guideCuts: count("guideCuts", "rip cuts along a guide", total("guideCuts")),
    rips: [...work.rips].map(([species, rips]) => layRips(laying, laid, species, rips)),
    crosscuts: count("crosscuts", "crosscuts", work.crosscuts),
    pieces: count("pieces", "pieces sawn", work.pieces),
    pieceVolume: sumOr(
      volumes.map(({ cell }) => cell),
      "m3",
    ),
    hardVolume: sumOr(
      volumes.map(({ cell, hardness }) => times(cell, hardness)),
      "m3",
    ),
    pieceWeight: sumOr(
      volumes.map(({ cell, density }) => times(cell, density)),
      "kg",
    ),
    logVolume: sumOr(
      usedLogs.map((log) => log.scale.smalian),
      "m3",
    ),
  };
}

/** Faces of a whole plan, in the order of the species' names. */
function facesBySpecies(
  measures: PlanMeasures,
  logs: readonly SoundLog[],
  dirty: ReadonlySet<string>,
): ReadonlyMap<string, MillFaces> {
  const species = new Map(logs.map((log) => [log.name, log.species]));
  const found = new Map<string, MillFaces>();
  for (const { log, faces } of measures.logs) {
    if (faces.length === 0) continue;
    const wood = species.get(log) ?? "";
    const own = dirty.has(log) ? { ...faces, dirtyArea: faces.area } : faces;
    found.set(wood, addFaces(found.get(wood) ?? NO_FACES, own));
  }
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Grid cubes of sawn pieces by the species of their log, in the order of the names. */
function volumeBySpecies(plan: SawingPlan, logs: readonly SoundLog[]): ReadonlyMap<string, number> {
  const species = new Map(logs.map((log) => [log.name, log.species]));
  const cubes = new Map<string, number>();
  for (const log of plan.logs) {
    const wood = species.get(log.log) ?? "";
    const sum = log.pieces.reduce((total, p) => total + (p.x1 - p.x0) * (p.y1 - p.y0) * (p.z1 - p.z0), 0);
    if (sum > 0) cubes.set(wood, (cubes.get(wood) ?? 0) + sum);
  }
  return new Map([...cubes].sort(([a], [b]) => (a < b ? -1 : 1)));
}
