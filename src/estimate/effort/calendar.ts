/**
 * From hours to days: what each stage takes one person and the crew, and a plain timeline in days from the start. There is
 * no date in it, for nobody knows yet when the first log is got out. Nothing is laid: every figure is read off cells.
 */
import { type Decimal, decimal, ZERO } from "../quantity/decimal.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { goAlongside } from "./alongside.js";

/** One stage, in the order of the work. */
export interface StageWork {
  /** Last part of its cell's name. */
  readonly stage: string;
  readonly label: string;
  readonly personHours: Decimal;
  /** At work at once. */
  readonly people: Decimal;
  /** Whether it cannot begin before the lumber is dry. */
  readonly needsDry: boolean;
}

/** Stages in their order, the hours of a day and a week, the time in the stack. */
export interface CalendarInput {
  readonly stages: readonly StageWork[];
  /** Last stage before lumber dries; what comes after it in the order may go on meanwhile. */
  readonly stacked: string;
  /** Days in the stack; undefined where nothing dries. */
  readonly drying: { readonly soonest: Decimal; readonly likely: Decimal; readonly latest: Decimal } | undefined;
  readonly hoursPerDay: Decimal;
  readonly hoursPerWeek: Decimal;
}

/** One bar of the timeline. Days are calendar days, at so many hours a week. */
export interface CalendarStage {
  readonly stage: string;
  readonly label: string;
  readonly personHours: Quantity;
  /** At work at once. */
  readonly people: Quantity;
  /** Elapsed, with all who are at it. */
  readonly crewHours: Quantity;
  /** Working days at so many hours a day, of the crew, and of one person who does it alone. */
  readonly crewDays: Quantity;
  readonly aloneDays: Quantity;
  readonly startDay: Quantity;
  readonly endDay: Quantity;
  /** Goes on while lumber lies in the stack. */
  readonly whileDrying: boolean;
  /** Other stages here that need not wait for it, nor it for them. The timeline lets nothing overlap but the drying. */
  readonly alongside: readonly string[];
}

/** Days and weeks of the job, and when drying holds it up. */
export interface Calendar {
  /** In working order: by the day on which they begin. */
  readonly stages: readonly CalendarStage[];
  /** When the last board is stacked, and when it is dry. */
  readonly drying:
    | {
        readonly startDay: Quantity;
        readonly soonestDay: Quantity;
        readonly likelyDay: Quantity;
        readonly latestDay: Quantity;
      }
    | undefined;
  readonly totalDays: Quantity;
  /** Working days without the waiting. */
  readonly crewDays: Quantity;
  readonly aloneDays: Quantity;
}

const DAYS_A_WEEK = decimal(7);
const days = (of: Decimal): Quantity => quantity(of, "day");

/**
 * One stage after the other, in the order of the work; what needs dry lumber lets the others pass while it waits. Stages
 * of no hours are left out.
 */
export function calendarOf(input: CalendarInput): Calendar {
  const waiting = input.stages.filter(({ personHours }) => personHours.gt(0));
  const done: CalendarStage[] = [];
  let now = ZERO;
  let stacked: Decimal | undefined;
  const dryAt = (): Decimal | undefined => input.drying && stacked?.plus(input.drying.likely);
  while (waiting.length > 0) {
    const dry = dryAt();
    const next = waiting.findIndex(({ needsDry }) => !needsDry || !input.drying || dry?.lte(now));
    if (next < 0) {
      // Only what waits is left; nothing dries that was never stacked.
      now = dry ?? now;
      stacked ??= now.minus(input.drying?.likely ?? ZERO);
      continue;
    }
    const [work] = waiting.splice(next, 1) as [StageWork];
    const others = input.stages.filter(({ personHours, stage }) => personHours.gt(0) && goAlongside(work.stage, stage));
    const alongside = others.map(({ stage }) => stage);
    const bar = { ...barOf(work, now, input), whileDrying: dry?.gt(now) ?? false, alongside };
    done.push(bar);
    now = bar.endDay.value;
    if (work.stage === input.stacked) stacked = now;
  }
  return { stages: done, drying: dryingOf(input, stacked), totalDays: days(now), ...workingDays(done) };
}

function barOf(
  work: StageWork,
  start: Decimal,
  input: CalendarInput,
): Omit<CalendarStage, "whileDrying" | "alongside"> {
  const { stage, label, personHours, people } = work;
  const elapsed = personHours.dividedBy(people);
  const end = start.plus(elapsed.times(DAYS_A_WEEK).dividedBy(input.hoursPerWeek));
  return {
    stage,
    label,
    personHours: quantity(personHours, "person-h"),
    people: quantity(people, "people"),
    crewHours: quantity(elapsed, "h"),
    crewDays: days(elapsed.dividedBy(input.hoursPerDay)),
    aloneDays: days(personHours.dividedBy(input.hoursPerDay)),
    startDay: days(start),
    endDay: days(end),
  };
}

function dryingOf({ drying }: CalendarInput, stacked: Decimal | undefined): Calendar["drying"] {
  if (!drying || !stacked) return undefined;
  const { soonest, likely, latest } = drying;
  return {
    startDay: days(stacked),
    soonestDay: days(stacked.plus(soonest)),
    likelyDay: days(stacked.plus(likely)),
    latestDay: days(stacked.plus(latest)),
  };
}

function workingDays(stages: readonly CalendarStage[]): Pick<Calendar, "crewDays" | "aloneDays"> {
  const total = (of: "crewDays" | "aloneDays") => days(stages.reduce((sum, one) => sum.plus(one[of].value), ZERO));
  return { crewDays: total("crewDays"), aloneDays: total("aloneDays") };
}
