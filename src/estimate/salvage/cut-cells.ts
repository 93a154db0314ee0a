/** A sawing plan's measures as planned cells: whole grid steps turned into exact lengths, areas and volumes. */
import { woodName } from "../../catalog/species.js";
import type { Decimal } from "../quantity/decimal.js";
import { decimal } from "../quantity/decimal.js";
import type { DisplayUnits } from "../quantity/display.js";
import { quantity } from "../quantity/quantity.js";
import { type Cell, number, type Operand, type PlanProof, plus, sumOr, times } from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";
import { measureCuts, type PlanMeasures } from "./cut-measures.js";
import type { ExclusiveWork } from "./exclusive-work.js";
import { addFaces, type MillFaces, NO_FACES } from "./mill-faces.js";
import { type Feeding, type RipWork, ripsBySpecies } from "./ripping.js";
import type { SawingPlan, SawingProblem } from "./sawing-problem.js";
import type { SoundLog } from "./sound-wood.js";
import type { WoodCells } from "./wood.js";

/** Faces sawn in one wood. */
export interface FaceCells {
  /** How much slower it saws than softwood, times. */
  readonly hardness: Cell;
  readonly area: Operand;
  /** The part of that face that goes through dirty bark. */
  readonly dirtyArea: Operand;
  /** Cuts up to a foot wide, and wider ones; only where the mill is fed at a speed. */
  readonly narrow: { readonly area: Operand; readonly length: Operand };
  readonly wide: { readonly area: Operand; readonly length: Operand };
}

/** Rips beside the mill in one wood. */
export interface RipCells {
  /** How much slower it rips than softwood, times. */
  readonly hardness: Cell;
  /** At the table saw; along a guide, from both faces where the saw is too shallow. */
  readonly length: Operand;
  readonly guided: Operand;
  /** Green weight of the stock that is lifted for each of the cuts. */
  readonly weight: Operand;
}

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
export interface CutLaying {
  readonly sheet: Sheet;
  readonly logs: readonly SoundLog[];
  readonly woods: ReadonlyMap<string, WoodCells>;
  readonly units: DisplayUnits;
  /** Person-time to get each log to the mill and to prepare it, and how hard each wood is to saw, by name. */
  readonly getOut: ReadonlyMap<string, Cell>;
  readonly prepare: ReadonlyMap<string, Cell>;
  readonly hardness: ReadonlyMap<string, Cell>;
  readonly mill: { readonly feed: Cell | undefined };
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

/** Names of the logs that are marked as dirty. */
export const dirtyLogs = (logs: readonly SoundLog[]): ReadonlySet<string> =>
  new Set(logs.filter((log) => log.dirty).map((log) => log.name));

type LayMeasure = (name: string, label: string, steps: number, each: Decimal, unit: string, display: string) => Operand;

/** What is nothing gets no cell of its own: a plan without cants has no line for them. */
function layWork(laying: CutLaying, key: string, work: ExclusiveWork, gridMm: string, proof: PlanProof): CutCells {
  const { sheet, logs, woods, units } = laying;
  const grid = decimal(gridMm);
  const lay: LayMeasure = (name, label, steps, each, unit, display) =>
    steps === 0
      ? number(`0 ${unit}`.trim())
      : sheet.planned(`${key}.${name}`, quantity(each.times(steps), unit), proof, { label, display });
  const count = (name: string, label: string, value: number): Operand =>
    value === 0 ? number("0") : sheet.planned(`${key}.${name}`, plain(value), proof, { label });
  const cube = grid.pow(3);
  const used = new Set(work.logs);
  const usedLogs = logs.filter(({ name }) => used.has(name));
  const volumes = [...work.volumes].map(([species, cubes]) => ({
    cell: lay(`volume-${species}`, `rough wood sawn, ${woodName(species)}`, cubes, cube, "mm3", units.lumber),
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
    faces: [...work.faces].map(([species, faces]) => layFaces(laying, lay, species, faces, grid)),
    ripCuts: count("ripCuts", "rip cuts beside the mill", total("cuts")),
    guideCuts: count("guideCuts", "rip cuts along a guide", total("guideCuts")),
    rips: [...work.rips].map(([species, rips]) => layRips(laying, lay, species, rips, grid)),
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

/** Rips in one wood. */
function layRips(
  { hardness, woods, units }: CutLaying,
  lay: LayMeasure,
  species: string,
  { length, guideLength, stock }: RipWork,
  grid: Decimal,
): RipCells {
  const of = (label: string) => `${label}, ${woodName(species)}`;
  const lifted = lay(`ripStock-${species}`, of("stock lifted for rip cuts"), stock, grid.pow(3), "mm3", units.lumber);
  return {
    hardness: hardness.get(species) as Cell,
    length: lay(`ripLength-${species}`, of("length ripped at the table saw"), length, grid, "mm", units.long),
    guided: lay(`guideLength-${species}`, of("length ripped along a guide"), guideLength, grid, "mm", units.long),
    weight: times(lifted, (woods.get(species) as WoodCells).greenDensity),
  };
}

/** A chain saws by the area alone, and needs no lengths. */
function layFaces(
  { hardness, mill, units }: CutLaying,
  lay: LayMeasure,
  species: string,
  faces: MillFaces,
  grid: Decimal,
): FaceCells {
  const area = (name: string, label: string, squares: number) =>
    lay(`${name}-${species}`, `${label}, ${woodName(species)}`, squares, grid.pow(2), "mm2", units.area);
  const length = (name: string, label: string, steps: number) =>
    lay(`${name}-${species}`, `${label}, ${woodName(species)}`, steps, grid, "mm", units.long);
  const known = {
    hardness: hardness.get(species) as Cell,
    dirtyArea: area("dirtyArea", "cut face, mill, in dirty logs", faces.dirtyArea),
  };
  if (!mill.feed) {
    const none = { area: number("0 mm2"), length: number("0 mm") };
    return { ...known, area: area("millArea", "cut face, mill", faces.area), narrow: none, wide: none };
  }
  const foot = units.small === "mm" ? "305 mm" : "12 in";
  const narrow = {
    area: area("narrowArea", `face of cuts up to ${foot} wide`, faces.area - faces.wideArea),
    length: length("narrowLength", `length of cuts up to ${foot} wide`, faces.length - faces.wideLength),
  };
  const wide = {
    area: area("wideArea", `face of cuts over ${foot} wide`, faces.wideArea),
    length: length("wideLength", `length of cuts over ${foot} wide`, faces.wideLength),
  };
  return { ...known, area: plus(narrow.area, wide.area), narrow, wide };
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
