/**
 * What the trade writes, to a quantity and back: `14' 6 1/2"`, `2 1/4 in`, `4.35 m`, `$4.85/ft`, `12 %`.
 * Everything is exact; what cannot be exact (a third of an inch) is refused with a cure. A bare number is
 * refused, since nobody knows its unit.
 */
import { type Decimal, decimal, fixed, parseDecimal, trimmed } from "./decimal.js";
import { isUnclear, parseNumeral, type Unclear } from "./numeral.js";
import { inUnit, type Quantity, quantity } from "./quantity.js";
import { plainly } from "./spelling.js";
import { describeDimension, minorDigits, NUMBER, parseUnit, type Unit, unit } from "./unit.js";

/** Longest text looked at; anything longer is refused unread. */
const LONGEST = 64;

/** What was wrong with a text, and what would be right. */
export class TextFault {
  constructor(
    readonly code: "not-a-quantity" | "wrong-dimension",
    readonly wrong: string,
    readonly cure: string,
  ) {}
}

// Word processors and telephones bend the marks of feet and inches: ’ and ” are taken too.
const FEET_AND_INCHES =
  /^(-?)([\d.]+)\s*(?:ft|feet|foot|'|′|’)\s*-?\s*([\d.]+(?:[ -]\d+\/\d+)?|\d+\/\d+)\s*(?:in|inch|inches|"|″|”|''|’’)$/i;
const HOURS_AND_MINUTES = /^(\d+)\s*(?:h|hrs?|hours?)\s*(\d{1,3})\s*(?:m|min|minutes?)$/i;
/** Behind an amount, or before a unit: per what it is. */
const PER = String.raw`(?:\s*(?:\/|per |an? |(?=each\b|ea\b))\s*(.+))?$`;
const MONEY_FIRST = new RegExp(String.raw`^(-?)\s*([$€£]|[A-Z]{3}(?=[\s\d]))\s*([\d.,]+(?: \d{3})*(?:[.,]\d+)?)${PER}`);
const CENTS = new RegExp(String.raw`^(-?[\d.]+)\s*(?:¢|cents?\b)${PER}`);
const NUMBER_THEN_UNIT = /^(-?\d+\/\d+|-?\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d/])|-?[\d.,]+(?:[ -]\d+\/\d+)?)\s*(.*)$/;

/**
 * Reads a quantity.
 * @param like - A unit of the dimension that is asked for. Hours are taken for person-hours where those are meant.
 */
export function parseQuantity(text: string, like: Unit): Quantity | TextFault {
  const given = quote(text);
  const found = forAnHour(text.trim(), like) ?? read(text.trim());
  const bare = () => (like.dimension !== "" || like.symbol === "%") && /^-?[\d.,\s/]+$/.test(text.trim());
  const noUnit = () => new TextFault("not-a-quantity", `${given} has no unit.`, `Give ${describeDimension(like)}.`);
  // What the comma says is only asked where the unit is there.
  if (found instanceof TextFault) return text.includes(",") && bare() ? noUnit() : found;
  if (found === undefined) {
    return new TextFault("not-a-quantity", `${given} is not a number with a unit.`, `Give ${describeDimension(like)}.`);
  }
  // Of a share nobody knows whether 0.6 means 60 % or 0.6 %.
  if (like.symbol === "%" && bare()) return noUnit();
  const meant = found.unit.dimension === like.dimension ? found : asWork(found, like);
  if (meant) return meant;
  if (bare()) return noUnit();
  const is = describeDimension(found.unit).replace(/, such as.*/, "");
  return new TextFault("wrong-dimension", `${given} is ${is}.`, `Give ${describeDimension(like)}.`);
}

/** As `parseQuantity`, for texts in our own code and tables; throws on a typing error there. */
export function exactly(text: string): Quantity {
  const known = own.get(text);
  if (known) return known;
  const found = read(text.trim());
  if (found === undefined || found instanceof TextFault) throw new Error(`not a quantity: ${text}`);
  if (own.size < MOST_OWN) own.set(text, found);
  return found;
}

/** Texts of our own tables, read once. */
const own = new Map<string, Quantity>();
const MOST_OWN = 5000;

/** Reads a quantity of whatever it measures. */
export function readQuantity(text: string): Quantity | TextFault {
  return (
    read(text.trim()) ??
    new TextFault(
      "not-a-quantity",
      `${quote(text)} is not a number with a unit.`,
      "Give a number with a unit, such as 14 ft, 2 h or 450 USD.",
    )
  );
}

function read(given: string): Quantity | TextFault | undefined {
  if (given.length === 0 || given.length > LONGEST) return undefined;
  const text = plainly(given);
  return readPair(text, given) ?? readMoney(text, given) ?? readPlain(text, given);
}

/** Feet and inches, hours and minutes. */
function readPair(text: string, given: string): Quantity | TextFault | undefined {
  const time = HOURS_AND_MINUTES.exec(text);
  if (time) {
    const [hours, minutes] = [parseDecimal(time[1] as string), decimal(time[2] as string)];
    if (minutes.gte(60))
      return notBelow(given, "60 minutes behind hours", "Give less than 60 minutes, or minutes alone.");
    return hours && { ...quantity(hours.times(60).plus(minutes), "min"), written: unit("h") };
  }
  const both = FEET_AND_INCHES.exec(text);
  if (!both) return undefined;
  const [, sign, feet, inches] = both as unknown as [string, string, string, string];
  const whole = parseDecimal(feet);
  const part = parseNumeral(inches, unit("in"));
  if (part && isUnclear(part)) return unclear(given, part);
  if (!whole || !part) return undefined;
  if (!whole.isInteger())
    return notBelow(given, "parts of a foot beside inches", "Give whole feet and inches, or feet alone.");
  if (part.gte(12))
    return notBelow(given, "12 inches or more behind feet", "Give less than 12 inches, or inches alone.");
  const total = whole.times(12).plus(part);
  return { ...quantity(sign ? total.negated() : total, "in"), written: unit("ft") };
}

/** `$4.85/ft`, `USD 4.85`, `$3 each`, `85 ¢`. */
function readMoney(text: string, given: string): Quantity | TextFault | undefined {
  const cents = CENTS.exec(text);
  if (cents) {
    const [amount, of] = [parseDecimal(cents[1] as string), rateOf("$", cents[2])];
    return amount && of && quantity(amount.dividedBy(100), of);
  }
  const money = MONEY_FIRST.exec(text);
  if (!money) return undefined;
  const [, sign, symbol, digits, per] = money as unknown as [string, string, string, string, string?];
  const of = rateOf(symbol, per);
  return of && numbered(`${sign}${digits}`, of, given);
}

const rateOf = (symbol: string, per: string | undefined): Unit | undefined =>
  parseUnit(per ? `${symbol}/${per}` : symbol);

function readPlain(text: string, given: string): Quantity | TextFault | undefined {
  const plain = NUMBER_THEN_UNIT.exec(text);
  if (!plain) return undefined;
  const of = plain[2] === "" ? NUMBER : parseUnit(plain[2] as string);
  return of && numbered(plain[1] as string, of, given);
}

function numbered(digits: string, of: Unit, given: string): Quantity | TextFault | undefined {
  const amount = parseNumeral(digits, of);
  if (!amount) return undefined;
  return isUnclear(amount) ? unclear(given, amount) : quantity(amount, of);
}

const unclear = (given: string, { wrong, cure }: Unclear): TextFault =>
  new TextFault("not-a-quantity", `${quote(given)} ${wrong}.`, cure);

const notBelow = (given: string, has: string, cure: string): TextFault => unclear(given, { wrong: `has ${has}`, cure });

/** Where person-hours are asked for, `h` means them: nobody writes `$18/person-h`. */
function asWork(found: Quantity, like: Unit): Quantity | undefined {
  const written = found.written ?? found.unit;
  const symbol = written.symbol.replace(/\bh\b/, "person-h").replace(/\bmin\b/, "person-min");
  const of = parseUnit(symbol);
  if (!of || of.dimension !== like.dimension) return undefined;
  return quantity(inUnit(found, written), of);
}

const PAY = /^([A-Z]{3})\/person-h$/;

/** Of an hour of work people say the money alone or the hour alone, where the other goes without saying: `$25`, `25/h`. */
function forAnHour(text: string, like: Unit): Quantity | undefined {
  const currency = PAY.exec(like.symbol)?.[1];
  if (currency === undefined) return undefined;
  for (const whole of [`${text}/h`, `${currency} ${text}`]) {
    const found = read(whole);
    const meant = found instanceof TextFault || found === undefined ? undefined : asWork(found, like);
    if (meant) return meant;
  }
  return undefined;
}

/** The text as given, cut short and free of control and format characters, in quotation marks. */
export function quote(text: string): string {
  const clean = text.slice(0, 48).replaceAll(/[\p{C}\p{Zl}\p{Zp}]/gu, "\ufffd");
  return `“${clean}${text.length > 48 ? "…" : ""}”`;
}

/** Two lengths written as a section: `2 x 6 in`, `1 1/2 in × 3 1/2 in`, `45 x 145 mm`. Thickness first. */
export function parseSection(text: string): { thickness: Quantity; width: Quantity } | TextFault {
  const cure = "Give thickness × width with a unit, such as 2 x 6 in or 45 x 145 mm.";
  const sides = text.trim().split(/\s*[x×X]\s*|\s+by\s+/i);
  const length = unit("mm");
  if (text.length > LONGEST || sides.length !== 2) {
    return new TextFault("not-a-quantity", `${quote(text)} is not a section.`, cure);
  }
  const width = parseQuantity(sides[1] as string, length);
  if (width instanceof TextFault) return new TextFault(width.code, `${quote(text)} is not a section.`, cure);
  let thickness = parseQuantity(sides[0] as string, length);
  if (thickness instanceof TextFault && width.written) {
    thickness = parseQuantity(`${sides[0]} ${width.written.symbol}`, length);
  }
  if (thickness instanceof TextFault) return new TextFault("not-a-quantity", `${quote(text)} is not a section.`, cure);
  return { thickness, width };
}

/** Which tape the project is built with. */
export type MeasureSystem = "inch-pound" | "metric";

/** A length as a person marks it: feet, inches and the nearest 1/16 in, or the nearest millimetre. */
export function marked(length: Quantity, system: MeasureSystem): string {
  if (system === "metric") return `${fixed(inUnit(length, "mm"), 0)} mm`;
  const { sign, count } = sixteenthsOf(length);
  const feet = count / 192n;
  const inches = count % 192n;
  if (feet === 0n) return `${sign}${inchesText(inches)}"`;
  // `9' 0 5/16"`, never `9' 5/16"`: that is heard as nine and five sixteenths.
  const whole = inches > 0n && inches < 16n ? "0 " : "";
  return inches === 0n ? `${sign}${feet}'` : `${sign}${feet}' ${whole}${inchesText(inches)}"`;
}

/** A length in inches and sixteenths, without feet: `5 1/2 in`; or millimetres. For sections and depths. */
export function markedSmall(length: Quantity, system: MeasureSystem): string {
  if (system === "metric") return `${fixed(inUnit(length, "mm"), 0)} mm`;
  const { sign, count } = sixteenthsOf(length);
  return `${sign}${inchesText(count)} in`;
}

/** Whole sixteenths of an inch, rounded once. */
function sixteenthsOf(length: Quantity): { readonly sign: string; readonly count: bigint } {
  const count = BigInt(fixed(inUnit(length, "in").times(16), 0));
  return count < 0n ? { sign: "-", count: -count } : { sign: "", count };
}

/** A section as it is said: `2 × 6 in`, `45 × 145 mm`. */
export function markedSection(thickness: Quantity, width: Quantity, system: MeasureSystem): string {
  const bare = (side: Quantity) => markedSmall(side, system).replace(/ (?:in|mm)$/, "");
  return `${bare(thickness)} × ${markedSmall(width, system)}`;
}

/**
 * A gauge or a drill as it is sold: inches in sixty-fourths, millimetres in tenths; decimals where it is neither: `15/64 in`,
 * `0.148 in`, `4.8 mm`.
 */
export function gauge(length: Quantity, system: MeasureSystem): string {
  if (system === "metric") return `${trimmed(inUnit(length, "mm"), 1)} mm`;
  const inches = inUnit(length, "in");
  const parts = inches.times(64);
  return `${parts.isInteger() ? inchesText(BigInt(parts.toFixed()), 64) : trimmed(inches, 3)} in`;
}

function inchesText(parts: bigint, of = 16): string {
  const whole = parts / BigInt(of);
  let above = Number(parts % BigInt(of));
  let below = of;
  while (above !== 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return String(whole);
  return `${whole === 0n ? "" : `${whole} `}${above}/${below}`;
}

/** Places after the point that make sense for a unit on paper. Money keeps its minor unit. */
export function placesFor(of: Unit): number {
  const money = minorDigits(of.symbol);
  if (money !== undefined) return money;
  return PLACES[of.symbol] ?? (of.symbol === "" ? 3 : 4);
}

const PLACES: Readonly<Record<string, number>> = {
  ft: 3,
  in: 4,
  mm: 1,
  m: 3,
  ft2: 2,
  in2: 2,
  m2: 3,
  ft3: 2,
  m3: 3,
  bf: 1,
  gal: 2,
  L: 2,
  lb: 1,
  kg: 1,
  h: 2,
  "person-h": 2,
  deg: 2,
  "%": 2,
  day: 0,
  people: 0,
  kWh: 2,
};

/** A value in its unit, rounded for paper: `10.063 ft`, `523.12 ft²`, `$12.50`. */
export function shown(of: Quantity, display: Unit = of.unit): string {
  return shownValue(inUnit(of, display), display);
}

/**
 * The same, but a length as a tape shows it: to the sixteenth of an inch, or to the millimetre. Less than a tape shows is told as
 * it is, so that nothing that is something reads as nothing.
 * @param limit - Of a least or a most: to the mark that still holds.
 */
export function onTape(of: Quantity, display: Unit = of.unit, limit?: "least" | "most"): string {
  const mark = TAPE[display.symbol];
  if (!mark) return shown(of, display);
  const length = inUnit(of, "mm");
  if (!length.isZero() && length.abs().lt("0.8")) return shown(of, display);
  if (!limit) return mark(of);
  const step = display.symbol === "in" || display.symbol === "ft" ? exactly("1/16 in").value : exactly("1 mm").value;
  // Nine places, as everywhere that is rounded up: a last digit makes no mark of its own.
  const marks = length.dividedBy(step).toDecimalPlaces(9);
  return mark({ value: (limit === "least" ? marks.ceil() : marks.floor()).times(step), unit: unit("mm") });
}

const TAPE: Readonly<Record<string, ((of: Quantity) => string) | undefined>> = {
  in: (of) => markedSmall(of, "inch-pound"),
  ft: (of) => marked(of, "inch-pound"),
  mm: (of) => markedSmall(of, "metric"),
  m: (of) => `${trimmed(inUnit(of, "m"), 3)} m`,
};

/** A value in its display unit as people see it: rounded to the places of that unit, the unit behind it. */
export function shownValue(value: Decimal, display: Unit): string {
  const places = placesFor(display);
  const money = minorDigits(display.symbol) !== undefined;
  const digits = money ? fixed(value, places) : trimmed(value, places);
  return display.symbol === "" ? digits : `${digits} ${pretty(display)}`;
}

/** A unit for people: `ft²`, `USD/ft`. */
export function pretty(of: Unit): string {
  return of.symbol.replace(/(?<=[A-Za-z])2/g, "²").replace(/(?<=[A-Za-z])3/g, "³");
}

/** Signs that people write before an amount; other currencies stand behind it by their code. */
const MONEY_SIGNS: Readonly<Record<string, string>> = { USD: "$", CAD: "CA$", AUD: "A$", EUR: "€", GBP: "£" };

/** Places that tell a price in full: no fewer than its money is written with. */
export const placesInFull = (price: Decimal, currency: string): number =>
  Math.max(minorDigits(currency) ?? 2, price.decimalPlaces());

/**
 * Money as people write it: `$4060.69`, `−$12.50`, `$12 345.00`, `812.00 NOK`. Thousands stand apart by a thin space from
 * five digits on, for a comma is a decimal sign to half of the readers.
 * @param places - After the point; those of the currency's minor unit when absent.
 */
export function moneyText(value: Decimal, currency: string, places = minorDigits(currency) ?? 2): string {
  const digits = fixed(value.abs(), places);
  const [whole = "", part] = digits.split(".");
  const apart = whole.length > 4 ? whole.replaceAll(/\B(?=(\d{3})+$)/g, "\u202f") : whole;
  const amount = part === undefined ? apart : `${apart}.${part}`;
  const minus = value.lt(0) && /[1-9]/.test(digits) ? "−" : "";
  const sign = MONEY_SIGNS[currency];
  return sign ? `${minus}${sign}${amount}` : `${minus}${amount} ${currency}`;
}
