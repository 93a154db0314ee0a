/** Faces and rips of a plan in one wood, as planned cells. */
import { woodName } from "../../catalog/species.js";
import type { DisplayUnits } from "../quantity/display.js";
import { type Cell, number, type Operand, plus, times } from "../sheet/expression.js";
import type { Measures } from "./measures.js";
import type { MillFaces } from "./mill-faces.js";
import type { RipWork } from "./ripping.js";
import type { WoodCells } from "./wood.js";

/** What is known of the woods, and how their cuts are told. */
export interface WoodLaying {
  readonly woods: ReadonlyMap<string, WoodCells>;
  /** How hard each wood is to saw, by name. */
  readonly hardness: ReadonlyMap<string, Cell>;
  readonly mill: { readonly feed: Cell | undefined };
  readonly units: DisplayUnits;
}

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

/** Lays the rips in one wood. */
export function layRips(
  { hardness, woods, units }: WoodLaying,
  laid: Measures,
  species: string,
  { length, guideLength, stock }: RipWork,
): RipCells {
  const of = (label: string) => `${label}, ${woodName(species)}`;
  const lifted = laid.volume(`ripStock-${species}`, of("stock lifted for rip cuts"), stock, units.lumber);
  return {
    hardness: hardness.get(species) as Cell,
    length: laid.length(`ripLength-${species}`, of("length ripped at the table saw"), length, units.long),
    guided: laid.length(`guideLength-${species}`, of("length ripped along a guide"), guideLength, units.long),
    weight: times(lifted, (woods.get(species) as WoodCells).greenDensity),
  };
}

/** Lays the faces in one wood. A chain saws by the area alone, and needs no lengths. */
export function layFaces(
  { hardness, mill, units }: WoodLaying,
  laid: Measures,
  species: string,
  faces: MillFaces,
): FaceCells {
  const area = (name: string, label: string, squares: number) =>
    laid.area(`${name}-${species}`, `${label}, ${woodName(species)}`, squares, units.area);
  const length = (name: string, label: string, steps: number) =>
    laid.length(`${name}-${species}`, `${label}, ${woodName(species)}`, steps, units.long);
  const known = {
    hardness: hardness.get(species) as Cell,
    dirtyArea: area("dirtyArea", "cut face, mill, in dirty logs", faces.dirtyArea),
  };
  if (!mill.feed) {
    const none = { area: number(`0 ${units.area}`), length: number(`0 ${units.long}`) };
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
