/** Units in which people of each measure system see things. */
import { inUnit, type Quantity, quantity } from "./quantity.js";
import type { MeasureSystem } from "./text.js";
import { type Unit, unit } from "./unit.js";

/** Units in which people of a measure system see each kind of quantity. */
export interface DisplayUnits {
  /** Lengths of pieces and buildings. */
  readonly long: string;
  /** Sections, depths, kerfs. */
  readonly small: string;
  readonly area: string;
  /** Lumber. */
  readonly lumber: string;
  /** Logs. */
  readonly log: string;
  readonly liquid: string;
  readonly mass: string;
  readonly density: string;
}

const UNITS: Readonly<Record<MeasureSystem, DisplayUnits>> = {
  "inch-pound": {
    long: "ft",
    small: "in",
    area: "ft2",
    lumber: "bf",
    log: "ft3",
    liquid: "gal",
    mass: "lb",
    density: "lb/ft3",
  },
  metric: { long: "m", small: "mm", area: "m2", lumber: "m3", log: "m3", liquid: "L", mass: "kg", density: "kg/m3" },
};

/** The display units of a measure system. */
export const displayUnits = (system: MeasureSystem): DisplayUnits => UNITS[system];

/** Metric unit in the place of each that is not: of a cubic foot the cubic metre, of a foot in a rate the metre. */
const METRIC: Readonly<Record<string, string>> = {
  ...{ in: "mm", ft: "m", yd: "m", mi: "km", square: "m2", bf: "m3", mbf: "m3", gal: "L", qt: "L" },
  ...{ lb: "kg", oz: "g" },
};

/** Figures that a converted figure keeps. Three: a default is never known better. */
const KEPT_FIGURES = 3;

/** A default of our own as a metric project has it: in metric units, to three figures; one that is metric already as it is. */
export function metricDefault(of: Quantity): Quantity {
  const from = of.written ?? of.unit;
  const to = metricOf(from);
  return to === from ? of : quantity(inUnit(of, to).toSignificantDigits(KEPT_FIGURES), to);
}

function metricOf(of: Unit): Unit {
  const parts = [...of.parts].map(([name, exponent]) => ({ name: METRIC[name], own: name, exponent }));
  if (parts.every(({ name }) => name === undefined)) return of;
  const power = (exponent: number) => (exponent === 1 ? "" : String(exponent));
  const side = (sign: 1 | -1) =>
    parts
      .filter(({ exponent }) => Math.sign(exponent) === sign)
      .map(({ name, own, exponent }) => (name ?? own) + power(Math.abs(exponent)));
  const [above, below] = [side(1), side(-1)];
  return unit([above.join("·") || "1", ...below].join("/"));
}
