/** A sawing plan's measures as planned cells: whole grid steps turned into exact lengths, areas and volumes. */
import type { Decimal } from "../quantity/decimal.js";
import { decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import { quantity } from "../quantity/quantity.js";
import { number, type Operand, type PlanProof, sumOr, times } from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { measureCuts, type PlanMeasures } from "./cut-measures.js";
import type { ExclusiveWork } from "./exclusive-work.js";
import type { SawingPlan, SawingProblem } from "./sawing-problem.js";
import type { SoundLog } from "./sound-wood.js";
import type { WoodCells } from "./wood.js";

/** What a plan's cuts amount to. */
export interface CutCells {
  readonly logsUsed: Operand;
  readonly bolts: Operand;
  /** Slabs laid on the mill again to be sawn across. */
  readonly turns: Operand;
  readonly millCuts: Operand;
  readonly millArea: Operand;
  /** The part of that face that goes through dirty bark. */
  readonly dirtyArea: Operand;
  readonly ripCuts: Operand;
  readonly ripLength: Operand;
  readonly crosscuts: Operand;
  /** Pieces sawn, spares included, and their rough wood. */
  readonly pieces: Operand;
  readonly pieceVolume: Operand;
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

export function measurePlan(problem: SawingProblem, plan: SawingPlan): MeasuredPlan {
  return { problem, plan, measures: measureCuts(problem, plan) };
}

/** What laying measures needs beside them. */
export interface CutLaying {
  readonly sheet: Sheet;
  readonly logs: readonly SoundLog[];
  readonly woods: ReadonlyMap<string, WoodCells>;
  readonly units: DisplayUnits;
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
    dirtyArea: measures.logs.reduce((sum, log) => sum + (dirty.has(log.log) ? log.millArea : 0), 0),
    volumes: volumeBySpecies(plan, laying.logs),
  };
  return layWork(laying, `${key}.cuts`, work, problem.gridMm, proof);
}

/** Lays what one group adds to a plan. */
export function layExclusive(
  laying: CutLaying,
  key: string,
  work: ExclusiveWork,
  gridMm: string,
  proof: PlanProof,
): CutCells {
  return layWork(laying, key, work, gridMm, proof);
}

export const dirtyLogs = (logs: readonly SoundLog[]): ReadonlySet<string> =>
  new Set(logs.filter((log) => log.dirty).map((log) => log.name));

/** What is nothing gets no cell of its own: a plan without cants has no line for them. */
function layWork(laying: CutLaying, key: string, work: ExclusiveWork, gridMm: string, proof: PlanProof): CutCells {
  const { sheet, logs, woods, units } = laying;
  const grid = decimal(gridMm);
  const lay = (name: string, label: string, steps: number, each: Decimal, unit: string, display: string): Operand =>
    steps === 0
      ? number(`0 ${unit}`.trim())
      : sheet.planned(`${key}.${name}`, quantity(each.times(steps), unit), proof, { label, display });
  const count = (name: string, label: string, value: number): Operand =>
    value === 0 ? number("0") : sheet.planned(`${key}.${name}`, plain(value), proof, { label });
  const square = grid.pow(2);
  const cube = grid.pow(3);
  const used = new Set(work.logs);
  const volumes = [...work.volumes].map(([species, cubes]) => ({
    cell: lay(`volume-${species}`, `rough wood sawn, ${species}`, cubes, cube, "mm3", units.lumber),
    density: (woods.get(species) as WoodCells).greenDensity,
  }));
  return {
    logsUsed: count("logs", "logs used", work.logs.length),
    bolts: count("bolts", "bolts sawn", work.bolts),
    turns: count("turns", "cants laid on the mill again", work.cants),
    millCuts: count("millCuts", "cuts by the mill", work.millCuts),
    millArea: lay("millArea", "cut face, mill", work.millArea, square, "mm2", units.area),
    dirtyArea: lay("dirtyArea", "of it in dirty logs", work.dirtyArea, square, "mm2", units.area),
    ripCuts: count("ripCuts", "rip cuts", work.ripCuts),
    ripLength: lay("ripLength", "length ripped", work.ripLength, grid, "mm", units.long),
    crosscuts: count("crosscuts", "crosscuts", work.crosscuts),
    pieces: count("pieces", "pieces sawn", work.pieces),
    pieceVolume: sumOr(
      volumes.map(({ cell }) => cell),
      "m3",
    ),
    pieceWeight: sumOr(
      volumes.map(({ cell, density }) => times(cell, density)),
      "kg",
    ),
    logVolume: sumOr(
      logs.filter(({ name }) => used.has(name)).map((log) => log.scale.smalian),
      "m3",
    ),
  };
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
