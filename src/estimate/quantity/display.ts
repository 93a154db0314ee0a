/** Units in which people of each measure system see things. */
import type { MeasureSystem } from "./text.js";

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
