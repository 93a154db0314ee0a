/** Optional values of a request: taken as given, or by a default that is put on record. */
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import type { Quantity } from "../quantity/quantity.js";
import type { MeasureSystem } from "../quantity/text.js";
import { exactly } from "../quantity/text.js";

/** A value that the request left open, and what was taken for it. */
export interface TakenDefault {
  /** JSON Pointer at which the user may say otherwise. */
  readonly at: string;
  readonly value: string;
  readonly why: string;
}

/** A default in both measure systems; round in each, not converted. */
export type InEither = Readonly<Record<MeasureSystem, string>>;

/** Collects defaults while a request is read. */
export class Defaults {
  readonly taken: TakenDefault[] = [];
  constructor(readonly system: MeasureSystem) {}

  quantity(given: QuantityText | undefined, at: string, otherwise: InEither, why: string): Quantity {
    if (given !== undefined) return toQuantity(given, exactly(otherwise[this.system]).unit);
    const text = otherwise[this.system];
    this.taken.push({ at, value: text, why });
    return exactly(text);
  }

  choice<T extends string | number | boolean>(given: T | undefined, at: string, otherwise: T, why: string): T {
    if (given !== undefined) return given;
    this.taken.push({ at, value: String(otherwise), why });
    return otherwise;
  }
}
