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

/** How many jobs at the head of a timed rate say both how much and how long. */
export const jobsCounted = (timed: Json): number =>
  listAt(timed, "/jobs").findLastIndex((job) => isFields(job) && job.amount !== undefined && job.time !== undefined) +
  1;

/** Without timed jobs that wait at the end of their lists, and timed rates at the end that have no job yet. */
function withoutWaitingJobs(request: Json): Json {
  const timed = listAt(request, "/calibration");
  if (timed.length === 0) return request;
  const measured = timed.map((one) => withValue(one, "/jobs", listAt(one, "/jobs").slice(0, jobsCounted(one))));
  const counted = measured.slice(0, measured.findLastIndex((one) => listAt(one, "/jobs").length > 0) + 1);
  return withValue(request, "/calibration", counted.length > 0 ? counted : undefined);
}

/** The request as it is sent: without rows that wait. Places of all others stay what they are. */
export function withoutPending(whole: Json): Json {
  const request = withoutWaitingJobs(whole);
  const logs = listAt(request, "/logs");
  const counted = countedLogs(request);
  return counted === logs.length ? request : withValue(request, "/logs", logs.slice(0, counted));
}
