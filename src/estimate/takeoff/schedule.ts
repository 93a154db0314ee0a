/** What the schedule of connections is: one line a connection with its hardware. */
import type { CorrosionClassId, FastenerKind } from "../../catalog/fasteners.js";
import type { Cell } from "../sheet/expression.js";
import type { Connection } from "./connections.js";
import type { Placing } from "./placing.js";

/** One sort of fastener of a connection, all connections of a line together. */
export interface ScheduleItem {
  readonly fastener: FastenerKind;
  readonly count: Cell;
  readonly diameter?: Cell;
  readonly length?: Cell;
  readonly corrosion: CorrosionClassId;
}

/** Equal connections with their hardware. */
export interface ScheduleLine extends Connection {
  readonly items: readonly ScheduleItem[];
  /** Of `items` those that bought pieces, which measure otherwise, do not take, and what they take in their place; absent where all is alike, or
   * one of the two has no price. */
  readonly fitted?: { readonly milled: readonly ScheduleItem[]; readonly bought: readonly ScheduleItem[] };
  /** Undefined where all are driven aslant or through a connector. */
  readonly placing: Placing | undefined;
}
