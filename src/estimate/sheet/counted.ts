/** Counts of what is taken one by one, held to a limit before anything is listed or planned from them. */
import { FaultError } from "../faults.js";
import { ZERO } from "../quantity/decimal.js";
import { aside } from "./aside.js";
import type { Cell } from "./expression.js";
import { MOST_COUNTED, type Sheet } from "./sheet.js";

/** What is counted, and where the request says how large it is to be. */
export interface Counted {
  /** In the plural, such as `panels and boards`. */
  readonly what: string;
  /** JSON Pointer, where no override or assumption is to blame. */
  readonly at: string;
  /** What to give, in a sentence. */
  readonly cure: string;
}

/** @throws FaultError where the counts come to more than anybody takes one by one. */
export function refuseTooMany(sheet: Sheet, counts: readonly Cell[], { what, at, cure }: Counted): void {
  const all = counts.reduce((total, count) => total.plus(aside(count)), ZERO);
  if (all.lte(MOST_COUNTED)) return;
  const largest = counts.reduce((most, count) => (aside(count).gt(aside(most)) ? count : most));
  const shown = all.toDecimalPlaces(0).toFixed();
  const wrong = `There are ${shown.length > 20 ? all.toPrecision(3) : shown} ${what}; the limit is ${MOST_COUNTED}.`;
  throw new FaultError([{ code: "too-large", at: sheet.blame(largest) || at, wrong, cure }]);
}
