/** Bolt and screw lengths: what must go through and into the wood, up to the next length that is stocked. */

import { boltRow, THREADS_PAST_NUT } from "../../catalog/fasteners.js";
import { FaultError } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import { exactly, type MeasureSystem } from "../quantity/text.js";
import { capital } from "../quantity/words.js";
import type { Defaults } from "../request/given.js";
import {
  type Cell,
  type Expression,
  number,
  type Operand,
  over,
  plus,
  roundUp,
  times,
  when,
} from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Hardware of the one bolt diameter that is used throughout. */
export interface BoltCells {
  readonly diameter: Cell;
  readonly nut: Cell;
  readonly washer: Cell;
  readonly pitch: Cell;
}

const CITED: Readonly<Record<MeasureSystem, string>> = {
  "inch-pound": "ASME B18.2.2 (nut), B18.22.1 (wide washer), UNC thread",
  metric: "ISO 4032 (nut), ISO 7094 (wide washer), coarse thread",
};

/**
 * Lays the bolt's diameter and what follows from it.
 * @throws FaultError when the diameter is in no table.
 */
export function layBolt(sheet: Sheet, defaults: Defaults, { small }: DisplayUnits): BoltCells {
  sheet.title("fasteners.bolt", "Bolts");
  const name = "fasteners.bolt.diameter";
  const usual = defaults.quantity(
    undefined,
    `/overrides/${name}`,
    { "inch-pound": "1/2 in", metric: "12 mm" },
    "common practice; no statement that it carries the load",
  );
  const diameter = sheet.input(name, usual, { label: "bolt diameter", display: small });
  const row = boltRow({ value: sheet.decide(diameter), unit: diameter.unit });
  if (!row) {
    const wrong = `No bolt of ${sheet.onTape(diameter)} is in the table of hexagon bolts.`;
    const cure = "Give 1/2 in, 5/8 in, 12 mm or another size that is made.";
    throw new FaultError([{ code: "out-of-range", at: `/overrides/${name}`, wrong, cure }]);
  }
  const source = CITED[row.diameter.endsWith("mm") ? "metric" : "inch-pound"];
  const given = (part: string, label: string, text: string) =>
    sheet.input(`fasteners.bolt.${part}`, exactly(text), { label, display: small, source });
  const [length, threads] = row.pitch;
  const pitch = threads === "1" ? number(length) : over(number(length), number(threads));
  return {
    diameter,
    nut: given("nut", "thickness of a nut", row.nutThickness),
    washer: given("washer", "thickness of a washer", row.washer.thickness),
    pitch: sheet.lay("fasteners.bolt.pitch", pitch, { label: "one thread", display: small, source }),
  };
}

/** Grip + washers + nut + two threads (NDS 2018; trade practice), before it is rounded up to stock. */
export function leastLength(grip: Operand, bolt: BoltCells, washers: 1 | 2): Expression {
  const past = times(number(String(THREADS_PAST_NUT)), bolt.pitch);
  return plus(grip, times(number(String(washers)), bolt.washer), bolt.nut, past);
}

/** Steps of stock: each up to and with a length, in turn; the last without end. */
export interface StockSteps {
  readonly fine: { readonly upTo: string; readonly step: string };
  readonly middle?: { readonly upTo: string; readonly step: string };
  readonly coarse: string;
}

/** Common practice; metric by ISO 888. */
export const BOLT_STEPS: Readonly<Record<MeasureSystem, StockSteps>> = {
  "inch-pound": {
    fine: { upTo: "6 in", step: "1/2 in" },
    middle: { upTo: "12 in", step: "1 in" },
    coarse: "2 in",
  },
  metric: { fine: { upTo: "160 mm", step: "10 mm" }, coarse: "20 mm" },
};

/** Common practice. */
export const SCREW_STEPS: Readonly<Record<MeasureSystem, StockSteps>> = {
  "inch-pound": { fine: { upTo: "4 in", step: "1/2 in" }, coarse: "2 in" },
  metric: { fine: { upTo: "100 mm", step: "10 mm" }, coarse: "20 mm" },
};

/** The next stocked length; live, so that another grip in the workbook finds its own bolt. */
function stocked(least: Cell, { fine, middle, coarse }: StockSteps): Expression {
  const upTo = (step: string): Expression => times(roundUp(over(least, number(step))), number(step));
  const beyond = middle ? when(least, "above", number(middle.upTo), upTo(coarse), upTo(middle.step)) : upTo(coarse);
  return when(least, "above", number(fine.upTo), beyond, upTo(fine.step));
}

/** Longest bolt in the shelves; beyond, threaded rod with a nut at either end. Common practice; ISO 888. */
export const LONGEST_BOLT: Readonly<Record<MeasureSystem, string>> = { "inch-pound": "24 in", metric: "400 mm" };

/** Lays a least length and the next stocked one, as `name.leastBolt` and `name.bolt`. */
export function layStocked(
  sheet: Sheet,
  name: string,
  what: string,
  least: Operand,
  { steps, small }: { readonly steps: StockSteps; readonly small: string },
): Cell {
  const column = capital(what);
  const atLeast = sheet.lay(`${name}.least${column}`, least, { label: `${what}, at least`, display: small });
  return sheet.lay(`${name}.${what}Length`, stocked(atLeast, steps), {
    label: `${what}, next stock length`,
    display: small,
  });
}
