/** Properties of a wood as cells: laid once for all logs and pieces of that species. */
import { densityAt, greenDensity, type Known, shrinkage, speciesOf } from "../../catalog/species.js";
import type { Species } from "../../catalog/species-table.js";
import type { DisplayUnits } from "../quantity/display.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import type { Defaults } from "../request/given.js";
import { type Cell, number, plus, root } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Densities and shrinkage of one wood. */
export interface WoodCells {
  /** Bark, as a share of the wood's volume. */
  readonly barkShare: Cell;
  /** Diameter over bark to diameter inside it: √(1 + bark share). */
  readonly overBark: Cell;
  /** Weight of the green wood, bark not counted. */
  readonly greenDensity: Cell;
  /** Weight at the moisture at which it is built in. */
  readonly dryDensity: Cell;
  /** Green to oven-dry, tangential, as a share. */
  readonly shrinkage: Cell;
}

/** Where the inventory has no bark share. Assumption: the middle of its softwoods. */
const BARK = "15";

/** Lays one species. @param id - A species that the catalog knows; anything else is a bug. */
export function layWood(
  sheet: Sheet,
  id: string,
  moisture: Quantity,
  defaults: Defaults,
  units: DisplayUnits,
): WoodCells {
  const species = speciesOf(id);
  if (!species) throw new Error(`no species is called ${id}`);
  const line = `wood.${id}`;
  sheet.title(line, species.name);
  const lay = (column: string, label: string, found: Known, display: string): Cell => {
    if (found.fallback)
      defaults.taken.push({ at: `/overrides/${line}.${column}`, value: "a stand-in", why: found.how });
    return sheet.input(`${line}.${column}`, found.value, { label, display, source: found.how });
  };
  const bark = lay("bark", "bark, share of the wood's volume", barkShareOf(species), "%");
  return {
    barkShare: bark,
    overBark: sheet.lay(`${line}.overBark`, root(plus(number("1"), bark)), {
      label: "diameter over bark, times that inside",
    }),
    greenDensity: lay("greenDensity", "green weight", greenDensity(species), units.density),
    dryDensity: lay("dryDensity", "weight as built in", densityAt(species, moisture), units.density),
    shrinkage: lay("shrinkage", "tangential shrinkage, green to oven-dry", shrinkage(species, "tangential"), "%"),
  };
}

function barkShareOf({ inventory: [, , bark] }: Species): Known {
  const measured = bark !== null;
  return {
    value: quantity(bark ?? BARK, "%"),
    fallback: !measured,
    how: measured ? "Bark share of the forest inventory's table." : "Bark taken as 15 % of the wood; an assumption.",
  };
}
