/**
 * How much slower a wood works than the softwood that the rates are for. Cutting takes effort about as the wood is dense;
 * an assumption, which one measures by a cut in each wood. Softer woods go no faster: the feed is the hand's.
 */

import { soldDensityAt, woodName } from "../../catalog/species.js";
import type { DisplayUnits } from "../quantity/display.js";
import type { Assumed } from "../request/assumed.js";
import type { WoodCells } from "../salvage/wood.js";
import { type Cell, greatest, number, over } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Lays one factor a wood, 1 or more. */
export function layHardness(
  sheet: Sheet,
  assumed: Assumed,
  woods: ReadonlyMap<string, WoodCells>,
): ReadonlyMap<string, Cell> {
  return new Map([...woods].map(([id, { dryDensity }]) => [id, layFactor(sheet, assumed, id, dryDensity)]));
}

/** A wood as it is sold: its weight, and how much slower it works than softwood, times. */
export interface SoldWood {
  readonly density: Cell;
  readonly hardness: Cell;
}

/** Lays a wood as it is sold, once. @param moisture - At which it is built in. */
export function laySoldWood(
  {
    sheet,
    assumed,
    units,
    moisture,
  }: { readonly sheet: Sheet; readonly assumed: Assumed; readonly units: DisplayUnits; readonly moisture: Cell },
  id: string,
): SoldWood {
  const known = { density: sheet.find(`wood.${id}.dryDensity`), hardness: sheet.find(`wood.${id}.hardness`) };
  if (known.density && known.hardness) return { density: known.density, hardness: known.hardness };
  const found = soldDensityAt(id, { value: sheet.decide(moisture), unit: moisture.unit });
  if (!found) throw new Error(`no wood is sold as ${id}`);
  sheet.title(`wood.${id}`, woodName(id));
  const notes = { label: "weight as built in", display: units.density, source: found.how };
  const density = sheet.input(`wood.${id}.dryDensity`, found.value, notes);
  return { density, hardness: layFactor(sheet, assumed, id, density) };
}

const layFactor = (sheet: Sheet, assumed: Assumed, id: string, density: Cell): Cell =>
  sheet.lay(`wood.${id}.hardness`, greatest(number("1"), over(density, assumed.cell("saw.softwood"))), {
    label: "slower to work than softwood, times",
  });
