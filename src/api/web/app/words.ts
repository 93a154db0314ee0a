/** Numbers and units as they are read, not as they are computed with. Nothing is worked out here. */

/** Something with a value and a unit. */
export interface Amount {
  readonly value: string;
  readonly unit: string;
}

const SIGNS: Readonly<Record<string, string>> = { USD: "$", CAD: "CA$", AUD: "A$", EUR: "€", GBP: "£" };

const UNITS: Readonly<Record<string, string>> = {
  "person-h": "person-hours",
  h: "hours",
  bf: "board feet",
  deg: "°",
  square: "squares",
  day: "days",
  year: "years",
  week: "weeks",
  "h/week": "hours a week",
};

/** What a price is for. */
const ONE: Readonly<Record<string, string>> = {
  ...{ "person-h": "hour", h: "hour", bf: "board foot" },
};

/** Thousands apart, by a thin space that does not break: a comma is a decimal sign to half of the readers. */
function grouped(digits: string): string {
  const [whole = "", part] = digits.split(".");
  const apart = whole.length > 4 ? whole.replaceAll(/\B(?=(\d{3})+$)/g, "\u202f") : whole;
  return part === undefined ? apart : `${apart}.${part}`;
}

/** `$1,154.42` as `$1154.42`, `157.49 person-hours`, `−3 in`. */
export function said({ value, unit }: Amount): string {
  const minus = value.startsWith("-") ? "−" : "";
  const digits = grouped(value.replace("-", ""));
  const [money = "", per] = unit.split("/");
  const sign = SIGNS[money];
  // A rate has more places than anyone reads; its card shows them.
  if (sign && per) return `${minus}${sign}${rate(value)} per ${ONE[per] ?? raised(per)}`;
  if (sign) return `${minus}${sign}${digits}`;
  const words = UNITS[unit] ?? raised(unit);
  return words === "" ? `${minus}${digits}` : `${minus}${digits}${words === "°" ? "" : "\u00a0"}${words}`;
}

/** `yd³` for `yd3`. */
const raised = (unit: string): string => unit.replaceAll(/(?<=[a-z])2\b/g, "²").replaceAll(/(?<=[a-z])3\b/g, "³");

/** What a line's amount is the product of: said by itself, or its quantity and price; undefined of packs and without a price. */
export const multipliedOf = <Line extends Multiplied>({ product, quantity, price, amount }: Line) =>
  product ?? (price && amount ? { measure: quantity, price } : undefined);

interface Multiplied {
  readonly quantity: Amount;
  readonly price: Amount | null;
  readonly amount: Amount | null;
  readonly product?: { readonly measure: Amount; readonly price: Amount } | undefined;
}

/** A price to multiply by: `$2.10 per board foot`, with all its places. */
export function priceInFull({ value, unit }: Amount): string {
  const [money = "", per] = unit.split("/");
  return `${said({ value, unit: money })}${per === undefined ? "" : ` per ${ONE[per] ?? raised(per)}`}`;
}

/** Of a rate the money alone, where the sentence says what it is for. */
export const moneyOf = (amount: Amount): string => said(amount).replace(/ per .*$/, "");

/** Two places, or as many as it takes to show anything at all. */
function rate(value: string): string {
  const digits = value.replace("-", "");
  return /^0\.0\d/.test(digits) ? digits : rounded(digits, 2);
}

/** A value and its unit as the form takes it again. */
export const typed = ({ value, unit }: Amount): string => (unit === "" ? value : `${value} ${unit}`);

/** One place at most, for bars' labels and the like; money keeps its own. */
export const short = (amount: Amount): Amount =>
  /^[A-Z]{3}/.test(amount.unit) ? amount : { ...amount, value: rounded(amount.value, 1) };

/** Half up, away from zero, on the digits themselves: no float comes between. What is shorter stays as it is. */
export function rounded(value: string, places: number): string {
  const [, minus = "", whole = "", part = ""] = /^(-?)(\d+)\.(\d+)$/.exec(value) ?? [];
  if (part.length <= places) return value;
  const up = part.charAt(places) >= "5" ? 1n : 0n;
  const digits = String(BigInt(whole + part.slice(0, places)) + up).padStart(places + 1, "0");
  const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return /[1-9]/.test(text) ? minus + text : text;
}

/** First letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `eastern-white-pine` as words. */
export const plain = (name: string): string => name.replaceAll("-", " ");

/** `2027-03-01` as `Mar 1, 2027`. */
export const dateOf = (date: string): string =>
  new Intl.DateTimeFormat("en", { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }).format(
    new Date(`${date}T00:00:00Z`),
  );

/** Marks one after the other as one: R-01, R-02, R-03, R-07 as R-01–03, R-07. */
export function inRuns(marks: readonly string[]): string[] {
  const runs: { first: string; last: string }[] = [];
  for (const mark of marks) {
    const run = runs.at(-1);
    if (run && follows(run.last, mark)) run.last = mark;
    else runs.push({ first: mark, last: mark });
  }
  return runs.map(({ first, last }) => (first === last ? first : `${first}–${last.replace(/^.*-/, "")}`));
}

function follows(before: string, after: string): boolean {
  const [, stem, number] = /^(.*-)(\d+)$/.exec(before) ?? [];
  return number !== undefined && after === `${stem}${String(Number(number) + 1).padStart(number.length, "0")}`;
}

const ROUTES: Readonly<Record<string, string>> = {
  bought: "Buy everything",
  milled: "Mill all the logs serve",
  hired: "Have a sawyer mill it",
  mixed: "Best mix",
};

/** A way to get the wood, by the name of its route. A mix says so where a sawyer mills it. */
export const wayOf = ({ route, hired = false }: { readonly route: string; readonly hired?: boolean }): string =>
  `${ROUTES[route] ?? capital(route)}${hired && route !== "hired" ? ", by a sawyer" : ""}`;
