/** A sawing plan's measures as planned cells: whole grid steps turned into exact lengths, areas and volumes. */

import type { Decimal } from "../quantity/decimal.js";
import { decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import { quantity } from "../quantity/quantity.js";
import { type Cell, type PlanProof, sumOr, times } from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { measureCuts, type PlanMeasures } from "./cut-measures.js";
import type { SawingPlan, SawingProblem } from "./sawing-problem.js";
import type { SoundLog } from "./sound-wood.js";
import type { WoodCells } from "./wood.js";

/** What a plan's cuts amount to. */
export interface CutCells {
  readonly logsUsed: Cell;
  readonly bolts: Cell;
  /** Slabs laid on the mill again to be sawn across. */
  readonly turns: Cell;
  readonly millCuts: Cell;
  readonly millArea: Cell;
  /** The part of that face that goes through dirty bark. */
  readonly dirtyArea: Cell;
  readonly ripCuts: Cell;
  readonly ripLength: Cell;
  readonly crosscuts: Cell;
  /** Pieces sawn, spares included, and their rough wood. */
  readonly pieces: Cell;
  readonly pieceVolume: Cell;
  /** Green weight of the pieces, and wood of the logs used. */
  readonly pieceWeight: Cell;
  readonly logVolume: Cell;
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

/** Lays the measures under `key`. */
export function layCuts(
  sheet: Sheet,
  key: string,
  { problem, plan, measures }: MeasuredPlan,
  logs: readonly SoundLog[],
  woods: ReadonlyMap<string, WoodCells>,
  proof: PlanProof,
  units: DisplayUnits,
): CutCells {
  const grid = decimal(problem.gridMm);
  const lay = (name: string, label: string, value: Decimal, unit: string, display: string) =>
    sheet.planned(`${key}.cuts.${name}`, quantity(value, unit), proof, { label, display });
  const count = (name: string, label: string, value: number) =>
    sheet.planned(`${key}.cuts.${name}`, plain(value), proof, { label });
  const volume = (name: string, label: string, cubes: number) =>
    lay(name, label, grid.pow(3).times(cubes), "mm3", units.lumber);

  const used = logs.filter((log) => measures.logs.some((one) => one.log === log.name && one.boltsSawn > 0));
  const dirty = new Set(logs.filter((log) => log.dirty).map((log) => log.name));
  const dirtySquares = measures.logs.reduce((sum, log) => sum + (dirty.has(log.log) ? log.millArea : 0), 0);
  const weights = [...volumeBySpecies(plan, logs)].map(([species, cubes]) => {
    const wood = woods.get(species);
    if (!wood) throw new Error(`no wood cells for ${species}`);
    return times(volume(`volume-${species}`, `pieces of ${species}`, cubes), wood.greenDensity);
  });
  return {
    logsUsed: count("logs", "logs used", measures.logsUsed),
    bolts: count("bolts", "bolts sawn", measures.boltsSawn),
    turns: count("turns", "cants laid on the mill again", measures.cants),
    millCuts: count("millCuts", "cuts by the mill", measures.millCuts),
    millArea: lay("millArea", "cut face, mill", grid.pow(2).times(measures.millArea), "mm2", units.area),
    dirtyArea: lay("dirtyArea", "of it in dirty logs", grid.pow(2).times(dirtySquares), "mm2", units.area),
    ripCuts: count("ripCuts", "rip cuts", measures.ripCuts),
    ripLength: lay("ripLength", "length ripped", grid.times(measures.ripLength), "mm", units.long),
    crosscuts: count("crosscuts", "crosscuts", measures.crosscuts),
    pieces: count("pieces", "pieces sawn", measures.pieces),
    pieceVolume: volume("pieceVolume", "rough wood sawn", measures.pieceVolume),
    pieceWeight: sheet.lay(`${key}.cuts.weight`, sumOr(weights, "kg"), {
      label: "weight of the pieces, green",
      display: units.mass,
    }),
    logVolume: sheet.lay(
      `${key}.cuts.logVolume`,
      sumOr(
        used.map((log) => log.scale.smalian),
        "m3",
      ),
      {
        label: "wood of the logs used",
        display: units.log,
      },
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
    cubes.set(wood, (cubes.get(wood) ?? 0) + sum);
  }
  return new Map([...cubes].sort(([a], [b]) => (a < b ? -1 : 1)));
}
