/** Dates of the Gregorian calendar by plain arithmetic: no clock is asked, so that the same request gives the same bytes. */
import type { Decimal } from "../quantity/decimal.js";
import { wholeNumber } from "../quantity/whole.js";

/** A day of the calendar: year, month, day of the month. */
type Day = readonly [year: number, month: number, day: number];

/**
 * The date so many whole days after a date of the Gregorian calendar, both as ISO 8601 writes them: `2027-03-01`.
 * @param after - Days; parts of a day belong to the day in which they fall.
 * @throws Error on a date that is none: the request has been read.
 */
export function dateAfter(start: string, after: Decimal): string {
  const found = /^(\d{4})-(\d\d)-(\d\d)$/.exec(start);
  if (!found) throw new Error(`not a date: ${start}`);
  const [, year, month, day] = found.map(Number) as [number, number, number, number];
  return written(dayOf(numberOf([year, month, day]) + wholeNumber(after.floor())));
}

const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Days before the first of January of a year. */
const beforeYear = (year: number): number =>
  365 * (year - 1) + Math.floor((year - 1) / 4) - Math.floor((year - 1) / 100) + Math.floor((year - 1) / 400);

const beforeMonth = (year: number, month: number): number =>
  (DAYS_BEFORE_MONTH[month - 1] as number) + (month > 2 && isLeap(year) ? 1 : 0);

const numberOf = ([year, month, day]: Day): number => beforeYear(year) + beforeMonth(year, month) + day - 1;

function dayOf(whole: number): Day {
  let year = Math.floor(whole / 366) + 1;
  while (beforeYear(year + 1) <= whole) year++;
  const inYear = whole - beforeYear(year);
  const month = DAYS_BEFORE_MONTH.findLastIndex((_, i) => beforeMonth(year, i + 1) <= inYear) + 1;
  return [year, month, inYear - beforeMonth(year, month) + 1];
}

const written = ([year, month, day]: Day): string =>
  [String(year).padStart(4, "0"), String(month).padStart(2, "0"), String(day).padStart(2, "0")].join("-");
