/**
 * From hours to days: what each stage takes one person and the crew, and a plain timeline in days from the start. Nothing is laid: every figure is read off cells.
 */
import { type Decimal, ZERO } from "../quantity/decimal.js";
import { type Quantity, quantity } from "../quantity/quantity.js";
import { goAlongside } from "./alongside.js";
import { type StageWork, type TimedStage, timelineOf } from "./timeline.js";

/** Stages in their order, the crew, the hours of a day and a week, the time in the stack. */
export interface CalendarInput {
  readonly stages: readonly StageWork[];
  /** Days in the stack; undefined where nothing dries. */
  readonly drying: { readonly soonest: Decimal; readonly likely: Decimal; readonly latest: Decimal } | undefined;
  readonly crew: Decimal;
  readonly hoursPerDay: Decimal;
  readonly hoursPerWeek: Decimal;
}

/** One bar of the timeline. Days are calendar days, at so many hours a week. */
export interface CalendarStage {
  readonly stage: string;
  readonly label: string;
  /** Where pieces that need not dry go ahead of the others: which part of the stage it is. */
  readonly part: "green" | "dried" | undefined;
  readonly personHours: Quantity;
  /** At work at once, at most. */
  readonly people: Quantity;
  /** Elapsed, with all who may be at it. */
  readonly crewHours: Quantity;
  /** Working days at so many hours a day, of the crew, and of one person who does it alone. */
  readonly crewDays: Quantity;
  readonly aloneDays: Quantity;
  readonly startDay: Quantity;
  readonly endDay: Quantity;
  /** When what it leaves has dried or set; the day of its end where nothing has to. */
  readonly setDay: Quantity;
  /** Goes on while lumber lies in the stack. */
  readonly whileDrying: boolean;
  /** Other stages here that need not wait for it, nor it for them. */
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
  /** Working days without the waiting, one stage after the other. */
  readonly crewDays: Quantity;
  readonly aloneDays: Quantity;
}

const days = (of: Decimal): Quantity => quantity(of, "day");

/** The stages that have hours, each with its days. */
export function calendarOf(input: CalendarInput): Calendar {
  const { crew, hoursPerWeek } = input;
  const { stages, stacked } = timelineOf({ stages: input.stages, drying: input.drying?.likely, crew, hoursPerWeek });
  const drying = dryingOf(input, stacked);
  const worked = [...new Set(input.stages.filter(({ personHours }) => personHours.gt(0)).map(({ stage }) => stage))];
  const bars = stages.map((one) => barOf(one, worked, drying, input.hoursPerDay));
  const last = bars.reduce((latest, { setDay }) => (setDay.value.gt(latest) ? setDay.value : latest), ZERO);
  return { stages: bars, drying, totalDays: days(last), ...workingDays(bars) };
}

function barOf(
  { work, start, end }: TimedStage,
  all: readonly string[],
  drying: Calendar["drying"],
  hoursPerDay: Decimal,
): CalendarStage {
  const { stage, label, part, personHours, people, sets } = work;
  const elapsed = personHours.dividedBy(people);
  const whileDrying = drying && start.gte(drying.startDay.value) && start.lt(drying.likelyDay.value);
  return {
    stage,
    label,
    part,
    personHours: quantity(personHours, "person-h"),
    people: quantity(people, "people"),
    crewHours: quantity(elapsed, "h"),
    crewDays: days(elapsed.dividedBy(hoursPerDay)),
    aloneDays: days(personHours.dividedBy(hoursPerDay)),
    startDay: days(start),
    endDay: days(end),
    setDay: days(end.plus(sets)),
    whileDrying: whileDrying ?? false,
    alongside: all.filter((other) => other !== stage && goAlongside(stage, other)),
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
