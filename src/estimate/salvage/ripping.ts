/**
 * Ripping of slabs beside the mill: at the table saw what one feeds over it, and along a guide by a hand-held circular saw
 * what is too heavy or too long for it. Read off the cuts of a plan, each with the stock that it meets. In the round, stock
 * is as wide as the mean of its two faces half way along the bolt.
 */
import { decimal } from "../quantity/decimal.js";
import { inUnit } from "../quantity/quantity.js";
import { wholeNumber } from "../quantity/whole.js";
import type { Assumed } from "../request/assumed.js";
import type { Cell } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { chordWithin, diameterAt } from "./bolt.js";
import { type MetCut, type Part, walkCuts } from "./cut-walk.js";
import type { SawingPlan, SawingProblem, SawLog } from "./sawing-problem.js";
import type { WoodCells } from "./wood.js";

/** What the table saw is fed with, and how deep the saw on the guide cuts. Whole grid steps and cubes. */
export interface Feeding {
  /** Longest stock. */
  readonly longest: number;
  /** Heaviest stock, as cubes of each wood as it is green; none of any where there is no table saw. */
  readonly heaviest: ReadonlyMap<string, number>;
  readonly guideDepth: number;
}

/** Rips in one wood: whole grid steps and cubes. */
export interface RipWork {
  readonly cuts: number;
  /** Length ripped at the table saw. */
  readonly length: number;
  /** The cuts along a guide, and their length, twice where the saw goes through from both faces. */
  readonly guideCuts: number;
  readonly guideLength: number;
  /** Stock that is lifted for each of the cuts, added up. */
  readonly stock: number;
}

/** No rip at all. */
export const NO_RIPS: RipWork = { cuts: 0, length: 0, guideCuts: 0, guideLength: 0, stock: 0 };

/** What decides on the limits. */
export interface FeedingInput {
  readonly sheet: Sheet;
  readonly assumed: Assumed;
  readonly woods: ReadonlyMap<string, WoodCells>;
  readonly gridMm: string;
  readonly tableSaw: boolean;
}

/** Limits of the shop in steps of a plan's grid. Every one becomes structural: the cuts are counted by it. */
export function feedingOf({ sheet, assumed, woods, gridMm, tableSaw }: FeedingInput): Feeding {
  const decided = (cell: Cell, unit: string) => inUnit({ value: sheet.decide(cell), unit: cell.unit }, unit);
  const grid = decimal(gridMm);
  const steps = (name: string) => wholeNumber(decided(assumed.cell(name), "mm").dividedBy(grid).floor());
  const cubes = (density: Cell): number => {
    if (!tableSaw) return 0;
    const most = decided(assumed.cell("dress.heaviest"), "kg").dividedBy(decided(density, "kg/mm3"));
    return wholeNumber(most.dividedBy(grid.pow(3)).floor());
  };
  return {
    longest: steps("dress.longest"),
    heaviest: new Map([...woods].map(([id, { greenDensity }]) => [id, cubes(greenDensity)])),
    guideDepth: Math.max(1, steps("cut.depth")),
  };
}

/** Grid cubes of a part between two sawn faces, its wany edges included. */
export function stockOf(log: SawLog, { x, y, z }: Pick<Part, "x" | "y" | "z">): number {
  const radius = diameterAt(log, (z[0] + z[1]) / 2) / 2;
  const [low, high] = [Math.max(y[0], -radius), Math.min(y[1], radius)];
  const mean = (chordWithin(radius, low, x) + chordWithin(radius, high, x)) / 2;
  return Math.round(mean * Math.max(0, high - low) * (z[1] - z[0]));
}

/** Whether a saw along a guide rips it: it is too heavy or too long to be fed over the table saw. */
export function isGuided(log: SawLog, part: Pick<Part, "x" | "y" | "z">, feeding: Feeding): boolean {
  const [z0, z1] = part.z;
  return z1 - z0 > feeding.longest || stockOf(log, part) > (feeding.heaviest.get(log.species) ?? 0);
}

/** One cut by the rip saw. */
export function ripOf(log: SawLog, { part, length }: MetCut, feeding: Feeding): RipWork {
  const stock = stockOf(log, part);
  if (!isGuided(log, part, feeding)) return { ...NO_RIPS, cuts: 1, length, stock };
  const faces = Math.ceil((part.y[1] - part.y[0]) / feeding.guideDepth);
  return { ...NO_RIPS, cuts: 1, guideCuts: 1, guideLength: length * faces, stock };
}

/** Both together. */
export const addRips = (a: RipWork, b: RipWork): RipWork => ({
  cuts: a.cuts + b.cuts,
  length: a.length + b.length,
  guideCuts: a.guideCuts + b.guideCuts,
  guideLength: a.guideLength + b.guideLength,
  stock: a.stock + b.stock,
});

/** Rips of a whole plan by the species of the log, in the order of their names; only those of which there are any. */
export function ripsBySpecies(
  problem: SawingProblem,
  plan: SawingPlan,
  feeding: Feeding,
): ReadonlyMap<string, RipWork> {
  const logs = new Map(problem.logs.map((log) => [log.name, log]));
  const found = new Map<string, RipWork>();
  for (const logPlan of plan.logs) {
    const log = logs.get(logPlan.log) as SawLog;
    for (const met of walkCuts(log, logPlan).cuts)
      if (met.cut.tool === "rip")
        found.set(log.species, addRips(found.get(log.species) ?? NO_RIPS, ripOf(log, met, feeding)));
  }
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}
