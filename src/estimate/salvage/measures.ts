/** Measures of a plan in whole grid steps, squares and cubes, laid as planned cells; what is nothing gets no cell of its own. */
import { decimal } from "../quantity/decimal.js";
import { quantity } from "../quantity/quantity.js";
import { number, type Operand, type PlanProof } from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";

/** Lays one measure under its name. */
type LayMeasure = (name: string, label: string, steps: number, display: string) => Operand;

/** Lays measures under one key, by what they are. */
export interface Measures {
  readonly count: (name: string, label: string, value: number) => Operand;
  readonly length: LayMeasure;
  readonly area: LayMeasure;
  readonly volume: LayMeasure;
}

/** The grid of the plan that is measured, and what is known of the plan. */
export interface MeasuredGrid {
  readonly gridMm: string;
  readonly proof: PlanProof;
}

/** Lays measures on a sheet under `key`. */
export function measuresUnder(sheet: Sheet, key: string, { gridMm, proof }: MeasuredGrid): Measures {
  const grid = decimal(gridMm);
  const of =
    (unit: string, power: number): LayMeasure =>
    (name, label, steps, display) =>
      steps === 0
        ? number(`0 ${display}`)
        : sheet.planned(`${key}.${name}`, quantity(grid.pow(power).times(steps), unit), proof, { label, display });
  return {
    count: (name, label, value) =>
      value === 0 ? number("0") : sheet.planned(`${key}.${name}`, plain(value), proof, { label }),
    length: of("mm", 1),
    area: of("mm2", 2),
    volume: of("mm3", 3),
  };
}
