/**
 * Rates that the user timed. Total amount over total time replaces the likely value of a rate; the slowest and the fastest
 * job become its low and high. One job alone keeps the catalog's spread about it.
 */
import { z } from "zod";
import { measuredValue, parseText, type QuantityText } from "../../catalog/reading.js";
import { type Fault, pointer } from "../faults.js";
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { inUnit, type Quantity } from "../quantity/quantity.js";
import { TextFault } from "../quantity/text.js";
import { type Unit, unit, unitOver, unitTimes } from "../quantity/unit.js";
import type { Range } from "../sheet/sheet.js";

const text = z.union([z.string().min(1).max(64), measuredValue]);

/** Measurements of one's own, from which assumptions are set. */
export const calibrationShape = z
  .strictObject({
    rate: z
      .string()
      .min(1)
      .max(120)
      .meta({ description: "Name of the rate; see GET /v1/assumptions.", examples: ["mill.rate"] }),
    jobs: z
      .array(
        z
          .strictObject({
            amount: text.meta({
              description:
                "How much was done, in the rate's own measure: a face, a length, a weight; a count where the rate is for one.",
              examples: ["41 ft2"],
            }),
            time: text.meta({ description: "How long it took.", examples: ["33 min"] }),
            people: z
              .int()
              .min(1)
              .max(20)
              .optional()
              .meta({
                description: "How many were at it, where the rate counts person-hours; one where nothing is said.",
                examples: [2],
              }),
          })
          .meta({ id: "TimedJob", description: "One job, timed.", examples: [{ amount: "41 ft2", time: "33 min" }] }),
      )
      .min(1)
      .max(100)
      .meta({ description: "Jobs timed." }),
  })
  .meta({
    id: "Calibration",
    description: "A rate as you timed it, in the place of the catalog's.",
    examples: [{ rate: "mill.rate", jobs: [{ amount: "41 ft2", time: "33 min" }] }],
  });

/** What `calibrationShape` reads. */
export type CalibrationShape = z.infer<typeof calibrationShape>;

/** How a rate is timed. */
interface Timing {
  /** Axis of the time: elapsed, or that of the people at it. */
  readonly time: Unit;
  readonly byPerson: boolean;
  readonly amount: Unit;
  /** Amount over time; else time over amount, as in hours a log. */
  readonly perTime: boolean;
}

/** How the unit of a rate says it is timed; undefined where no time is in it. */
function timingOf(rate: Unit): Timing | undefined {
  const found = /(?:^| )(time|work)(-?1)(?: |$)/.exec(rate.dimension);
  if (!found) return undefined;
  const byPerson = found[1] === "work";
  const time = unit(byPerson ? "person-min" : "min");
  const perTime = found[2] === "-1";
  return { time, byPerson, perTime, amount: perTime ? unitTimes(rate, time) : unitOver(time, rate) };
}

/** A timed rate is refused when it is this many times beyond the catalog's range: a unit was mistaken. Assumption. */
const BEYOND = 20;

/**
 * The range of a rate from the jobs.
 * @param like - The catalog's own range.
 * @param at - JSON Pointer of the calibration.
 */
export function calibrated(
  { rate, jobs }: CalibrationShape,
  like: Range,
  at: string,
): { readonly range: Range } | { readonly faults: readonly Fault[] } {
  const timing = timingOf(like.likely.unit);
  if (!timing) {
    const cure = "Give it under assumptions, or time a rate such as mill.rate.";
    return {
      faults: [{ code: "wrong-dimension", at: pointer(at, "rate"), wrong: `${rate} has no time in it.`, cure }],
    };
  }
  const read = jobs.map((job, i) => readJob(job, timing, pointer(at, "jobs", i)));
  const faults = read.flatMap((one) => ("faults" in one ? one.faults : []));
  if (faults.length > 0) return { faults };
  const done = read.flatMap((one) => ("time" in one ? [one] : []));
  const total = done.reduce((sum, job) => ({ amount: sum.amount.plus(job.amount), time: sum.time.plus(job.time) }), {
    amount: ZERO,
    time: ZERO,
  });
  return inReason(rate, rangeOf(done, total, timing, like), like, at);
}

interface Job {
  readonly amount: Decimal;
  readonly time: Decimal;
}

function readJob(
  job: CalibrationShape["jobs"][number],
  timing: Timing,
  at: string,
): Job | { readonly faults: readonly Fault[] } {
  const amount = readText(job.amount, timing.amount, pointer(at, "amount"));
  const time = readTime(job, timing, pointer(at, "time"));
  const faults = [amount, time].flatMap((one) => ("code" in one ? [one] : []));
  if ("code" in amount || "code" in time) return { faults };
  return { amount, time };
}

/** Time in the timing's unit; plain hours of several people are so many person-hours. */
function readTime({ time, people = 1 }: CalibrationShape["jobs"][number], timing: Timing, at: string): Decimal | Fault {
  if (!timing.byPerson) return readText(time, timing.time, at);
  // Read as hours first: a text of person-hours is no time of several people.
  if (parseText(time, unit("min")) instanceof TextFault) return readText(time, timing.time, at);
  const elapsed = readText(time, unit("min"), at);
  return "code" in elapsed ? elapsed : elapsed.times(people);
}

/** A text in a unit, above zero. */
function readText(given: QuantityText, like: Unit, at: string): Decimal | Fault {
  const found = parseText(given, like);
  if (found instanceof TextFault) return { code: found.code, at, wrong: found.wrong, cure: found.cure };
  if (found.value.gt(0)) return inUnit(found, like);
  const wrong = "A timed job of nothing, or in no time, says nothing.";
  return { code: "out-of-range", at, wrong, cure: "Give an amount and a time above zero." };
}

function rangeOf(jobs: readonly Job[], total: Job, { perTime }: Timing, like: Range): Range {
  const of = ({ amount, time }: Job): Decimal => (perTime ? amount.dividedBy(time) : time.dividedBy(amount));
  const likely = of(total);
  const rates = jobs.map(of).sort((a, b) => a.cmp(b));
  const [slow, fast] = [rates[0] ?? likely, rates.at(-1) ?? likely];
  const scaled = (side: Quantity): Decimal => {
    const middle = like.likely.value;
    return middle.isZero() ? likely : likely.times(inUnit(side, like.likely.unit)).dividedBy(middle);
  };
  const quantityOf = (value: Decimal): Quantity => ({ ...like.likely, value });
  if (jobs.length === 1)
    return { low: quantityOf(scaled(like.low)), likely: quantityOf(likely), high: quantityOf(scaled(like.high)) };
  return { low: quantityOf(slow), likely: quantityOf(likely), high: quantityOf(fast) };
}

function inReason(
  rate: string,
  range: Range,
  like: Range,
  at: string,
): { readonly range: Range } | { readonly faults: readonly Fault[] } {
  const [low, high] = [inUnit(like.low, like.likely.unit), inUnit(like.high, like.likely.unit)];
  const { value } = range.likely;
  if (value.gte(low.dividedBy(BEYOND)) && value.lte(high.times(BEYOND))) return { range };
  const wrong = `${rate} comes to ${value.toPrecision(3)} ${like.likely.unit.symbol}, far from the usual ${low.toFixed()} to ${high.toFixed()}.`;
  return { faults: [{ code: "out-of-range", at, wrong, cure: "Check the units and what was counted." }] };
}
