/**
 * How many people can be at a stage at once: as many as there are machines, tools and places for. A larger crew does not
 * hurry one planer. Named assumptions, each replaced by what one's shop and site have.
 */
import type { Assumed } from "../request/assumed.js";
import type { MillCells } from "../salvage/mill.js";
import { type Cell, least, number, type Operand, plus } from "../sheet/expression.js";

/** Assumption of the most people at each stage, by the last part of its cell's name. */
const ROOM: Readonly<Record<string, string>> = {
  ...roomFor("room.machine", "edge dress cut"),
  ...roomFor("room.tools", "dressByHand sand join eaves trim"),
  ...roomFor("room.yard", "prepare carry stack slabs fetch sort move"),
  ...roomFor("room.ground", "trialAssemble dismantle dig pour finishFirst finishLater cleanUp"),
  ...roomFor("room.raise", "brace raise"),
  ...roomFor("room.aloft", "rafters deck enclose roof"),
};

function roomFor(name: string, stages: string): Record<string, string> {
  return Object.fromEntries(stages.split(" ").map((stage) => [stage, name]));
}

/** Stages at which the mill runs, or stands for them: they take its own people, whatever the crew. */
const AT_MILL: ReadonlySet<string> = new Set(["setUp", "saw"]);

/** Key of a stage: the last part of its cell's name. */
export const stageOf = ({ name }: Cell): string => name.slice(name.lastIndexOf(".") + 1);

/** Mill, people and rates, as they are laid. */
export interface Hands {
  readonly mill: MillCells;
  readonly labor: { readonly crew: Cell; readonly helpers: Cell };
  readonly assumed: Assumed;
}

/** True where a stage is of the mill's own clock. */
export const isAtMill = ({ mill }: Pick<Hands, "mill">, stage: string): boolean =>
  AT_MILL.has(stage) || (stage === "sharpen" && mill.stopsToSharpen);

/** People at a stage at once. @param helped - Whether helpers come to it. */
export function peopleAt({ mill, labor, assumed }: Hands, stage: string, helped: boolean): Operand {
  if (AT_MILL.has(stage)) return mill.crew;
  // One chain, one band, one wheel.
  if (stage === "sharpen") return number("1 people");
  const all = helped ? plus(labor.crew, labor.helpers) : labor.crew;
  // One arch, winch or tractor takes one log at a time; by hand there are as many gangs as there are hands.
  const room =
    stage === "getOut" ? (mill.getOut === "hand" ? "room.yard" : `getOut.${mill.getOut}.people`) : ROOM[stage];
  return room === undefined ? all : least(all, assumed.cell(room));
}
