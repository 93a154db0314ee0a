/** Rows that were added but not filled in yet: they wait, and nobody is told off for them. */
import { isFields, type Json, listAt, withValue } from "./json.js";

const THICKNESS = ["smallDiameter", "smallGirth", "largeDiameter", "largeGirth"];

/** Whether a log has what an estimate can't do without: a length and one thickness. */
export const isMeasured = (log: Json): boolean =>
  isFields(log) && log.length !== undefined && THICKNESS.some((key) => log[key] !== undefined);

/** How many logs at the head of the list are counted; those after them wait to be measured. */
export function countedLogs(request: Json): number {
  return listAt(request, "/logs").findLastIndex(isMeasured) + 1;
}

/** The request as it is sent: without the logs that wait. Places of all others stay what they are. */
export function withoutPending(request: Json): Json {
  const logs = listAt(request, "/logs");
  const counted = countedLogs(request);
  return counted === logs.length ? request : withValue(request, "/logs", logs.slice(0, counted));
}
