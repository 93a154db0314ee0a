/**
 * Units by exact definition, and their dimensions.
 *
 * A unit is a product of named base units with whole exponents (`USD/ft` is USD¹ ft⁻¹), and its exact
 * factor to the held base units as a ratio of two whole numbers. Lengths are held in millimetres, where
 * every fraction of an inch ends; a rate keeps the unit it was given in, and is converted by one ratio of
 * integers, divided last.
 *
 * Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg (international yard and pound agreement, 1959);
 * 1 US gal = 231 in³ (NIST Handbook 44, appendix C); 1 bf = 144 in³ (PS 20, board measure).
 */
import { type Decimal, decimal } from "./decimal.js";

/** Independent dimensions. Person-hours and elapsed hours differ on purpose; so do work hours and calendar days. */
const AXES = ["length", "mass", "time", "work", "money", "angle", "calendar", "energy"] as const;
type Axis = (typeof AXES)[number];

interface BaseUnit {
  readonly axes: Partial<Record<Axis, number>>;
  /** Size in held base units: numerator and denominator. */
  readonly num: bigint;
  readonly den: bigint;
}

const INCH = { num: 127n, den: 5n };
const cubicInches = (count: bigint): BaseUnit => ({
  axes: { length: 3 },
  num: count * INCH.num ** 3n,
  den: INCH.den ** 3n,
});

const BASE: Readonly<Record<string, BaseUnit>> = {
  mm: { axes: { length: 1 }, num: 1n, den: 1n },
  cm: { axes: { length: 1 }, num: 10n, den: 1n },
  m: { axes: { length: 1 }, num: 1000n, den: 1n },
  km: { axes: { length: 1 }, num: 1_000_000n, den: 1n },
  in: { axes: { length: 1 }, ...INCH },
  ft: { axes: { length: 1 }, num: 1524n, den: 5n },
  yd: { axes: { length: 1 }, num: 4572n, den: 5n },
  mi: { axes: { length: 1 }, num: 8046720n, den: 5n },
  /** A roofer's square, 100 ft². */
  square: { axes: { length: 2 }, num: 232257600n, den: 25n },
  L: { axes: { length: 3 }, num: 1_000_000n, den: 1n },
  mL: { axes: { length: 3 }, num: 1000n, den: 1n },
  gal: cubicInches(231n),
  /** A US quart, a quarter of a gallon. */
  qt: { axes: { length: 3 }, num: 231n * INCH.num ** 3n, den: 4n * INCH.den ** 3n },
  /** Board foot of actual volume; nominal board measure is counted by its own formula. */
  bf: cubicInches(144n),
  /** A thousand board feet. */
  mbf: cubicInches(144_000n),
  kg: { axes: { mass: 1 }, num: 1n, den: 1n },
  g: { axes: { mass: 1 }, num: 1n, den: 1000n },
  t: { axes: { mass: 1 }, num: 1000n, den: 1n },
  lb: { axes: { mass: 1 }, num: 45359237n, den: 100_000_000n },
  oz: { axes: { mass: 1 }, num: 45359237n, den: 1_600_000_000n },
  h: { axes: { time: 1 }, num: 1n, den: 1n },
  min: { axes: { time: 1 }, num: 1n, den: 60n },
  "person-h": { axes: { work: 1 }, num: 1n, den: 1n },
  "person-min": { axes: { work: 1 }, num: 1n, den: 60n },
  /** Persons at work at once: person-hours for each elapsed hour. */
  people: { axes: { work: 1, time: -1 }, num: 1n, den: 1n },
  deg: { axes: { angle: 1 }, num: 1n, den: 1n },
  day: { axes: { calendar: 1 }, num: 1n, den: 1n },
  week: { axes: { calendar: 1 }, num: 7n, den: 1n },
  year: { axes: { calendar: 1 }, num: 365n, den: 1n },
  kWh: { axes: { energy: 1 }, num: 1n, den: 1n },
  kW: { axes: { energy: 1, time: -1 }, num: 1n, den: 1n },
  "%": { axes: {}, num: 1n, den: 100n },
  each: { axes: {}, num: 1n, den: 1n },
};

/** ISO 4217 minor-unit digits of the currencies a catalog may use. */
const CURRENCIES: Readonly<Record<string, number>> = {
  AUD: 2,
  BRL: 2,
  CAD: 2,
  CHF: 2,
  CZK: 2,
  DKK: 2,
  EUR: 2,
  GBP: 2,
  INR: 2,
  JPY: 0,
  MXN: 2,
  NOK: 2,
  NZD: 2,
  PLN: 2,
  SEK: 2,
  USD: 2,
  ZAR: 2,
};
const MONEY: BaseUnit = { axes: { money: 1 }, num: 1n, den: 1n };

/** What a person may write for a unit beside its own symbol. */
const SPELLINGS: Readonly<Record<string, string>> = {
  in: "inch|inches|\"|″|”|''|’’",
  ft: "foot|feet|'|′|’|lf|lin ft|linear ft|linear foot|linear feet|lineal ft|lineal foot|lineal feet",
  yd: "yard|yards",
  mi: "mile|miles",
  mm: "millimetre|millimetres|millimeter|millimeters",
  m: "metre|metres|meter|meters",
  ft2: "sqft|sq ft|sf|square foot|square feet",
  in2: "sq in|square inch|square inches",
  yd2: "sq yd|square yard|square yards",
  m2: "sqm|sq m|square metre|square metres|square meter|square meters",
  ft3: "cuft|cu ft|cf|cubic foot|cubic feet",
  in3: "cu in|cubic inch|cubic inches",
  yd3: "cu yd|cy|cubic yard|cubic yards",
  m3: "cum|cu m|cubic metre|cubic metres|cubic meter|cubic meters",
  square: "squares|sq",
  L: "l|litre|litres|liter|liters",
  mL: "ml",
  gal: "gallon|gallons",
  qt: "quart|quarts",
  bf: "bdft|bd ft|fbm|board foot|board feet",
  mbf: "MBF",
  lb: "lbs|pound|pounds",
  oz: "ounce|ounces",
  t: "tonne|tonnes",
  h: "hour|hours|hr|hrs",
  min: "minute|minutes",
  people: "person|persons",
  "person-h": "person-hour|person-hours",
  deg: "degree|degrees|°",
  day: "days|d",
  week: "weeks",
  year: "years|yr",
  kWh: "kwh",
  kW: "kw",
  "%": "percent",
  each: "piece|pieces|pc|pcs|ea",
  USD: "$",
  EUR: "€",
  GBP: "£",
};
const ALIASES: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(SPELLINGS).flatMap(([symbol, words]) => words.split("|").map((word) => [word, symbol])),
);

/** Units and spellings by their small letters, for who writes `14 FT`. Two letters are left out, for they say two things:
 * M (metre, or a thousand board feet), T (tonne, or ton). */
const FOLDED: ReadonlyMap<string, string> = new Map(
  [...Object.keys(BASE), ...Object.keys(CURRENCIES)]
    .map((symbol) => [symbol.toLowerCase(), symbol] as const)
    .concat(Object.entries(ALIASES).map(([word, symbol]) => [word.toLowerCase(), symbol] as const)),
);
const TWO_MEANINGS: ReadonlySet<string> = new Set(["M", "T"]);

/** A unit: how it is written, what it measures, and how many base units it is, as a ratio of whole numbers. */
export interface Unit {
  /** As written: `USD/ft`, `ft2`, `person-h`; empty for a plain number. */
  readonly symbol: string;
  /** Base unit to exponent, never zero. */
  readonly parts: ReadonlyMap<string, number>;
  /** Equal exactly when two units measure the same thing; currencies are told apart. */
  readonly dimension: string;
  /** Exact size in held base units. */
  readonly num: bigint;
  readonly den: bigint;
  /** Lengths, areas, volumes, masses, times, money, angles and numbers are held in one unit each; rates are not. */
  readonly plain: boolean;
}

/** Exact ratio of two units of one dimension. */
export interface Factor {
  readonly num: Decimal;
  readonly den: Decimal;
  readonly isOne: boolean;
  /** num ÷ den, where that ends: then one exact multiplication does. */
  readonly by?: Decimal;
  /** den ÷ num, where that ends and num ÷ den does not: then one division does. */
  readonly into?: Decimal;
}

/** Units and texts kept for the next time. Bounded, so that no stream of invented units fills the memory. */
const KEPT = 2000;
const built = new Map<string, Unit>();
const parsed = new Map<string, Unit>();

function keep(memory: Map<string, Unit>, key: string, of: Unit): Unit {
  if (memory.size >= KEPT) memory.delete(memory.keys().next().value as string);
  memory.set(key, of);
  return of;
}

function baseUnit(symbol: string): BaseUnit | undefined {
  if (Object.hasOwn(BASE, symbol)) return BASE[symbol];
  return Object.hasOwn(CURRENCIES, symbol) ? MONEY : undefined;
}

function build(parts: ReadonlyMap<string, number>): Unit {
  const kept = [...parts].filter(([, exponent]) => exponent !== 0);
  const symbol = symbolOf(kept);
  const known = built.get(symbol);
  if (known) return known;
  let num = 1n;
  let den = 1n;
  const axes = new Map<Axis, number>();
  let currency = "";
  for (const [name, exponent] of kept) {
    const base = baseUnit(name);
    if (!base) throw new Error(`no unit is called ${name}`);
    const power = BigInt(Math.abs(exponent));
    const [up, down] = exponent > 0 ? [base.num, base.den] : [base.den, base.num];
    num *= up ** power;
    den *= down ** power;
    for (const axis of AXES) {
      const step = (base.axes[axis] ?? 0) * exponent;
      if (step !== 0) axes.set(axis, (axes.get(axis) ?? 0) + step);
    }
    if (base === MONEY) currency = name;
  }
  const divisor = gcd(num, den);
  const live = AXES.filter((axis) => (axes.get(axis) ?? 0) !== 0);
  const dimension = live.map((axis) => `${axis === "money" ? currency : axis}${axes.get(axis)}`).join(" ");
  const only = live.length === 1 ? (axes.get(live[0] as Axis) ?? 0) : 0;
  const plain =
    live.length === 0 || (live.length === 1 && (only === 1 || (live[0] === "length" && only > 0 && only <= 3)));
  return keep(built, symbol, {
    symbol,
    parts: new Map(kept),
    dimension,
    num: num / divisor,
    den: den / divisor,
    plain,
  });
}

function symbolOf(parts: readonly (readonly [string, number])[]): string {
  const power = ([name, exponent]: readonly [string, number]) =>
    name + (Math.abs(exponent) === 1 ? "" : Math.abs(exponent));
  const above = parts
    .filter(([, exponent]) => exponent > 0)
    .map(power)
    .sort();
  const below = parts
    .filter(([, exponent]) => exponent < 0)
    .map(power)
    .sort();
  if (below.length === 0) return above.join("·");
  return `${above.join("·") || "1"}/${below.join("/")}`;
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** The plain number. */
export const NUMBER: Unit = build(new Map());

/** Longest unit that is read. With five parts a ratio of kilometres to millimetres would pass the exponent fence. */
const MOST_PARTS = 4;

/**
 * Reads a unit: `ft`, `ft2`, `ft²`, `USD/ft`, `$/person-h`, `ft2/gal`, `lb/ft3`, `1/ft`.
 * @returns undefined when a part is no unit that we know, or there are more than four.
 */
export function parseUnit(text: string): Unit | undefined {
  if (text.length > 48) return undefined;
  const known = parsed.get(text);
  if (known) return known;
  const found = readUnit(
    text
      .trim()
      .replace(/²|\^2/g, "2")
      .replace(/³|\^3/g, "3")
      .replace(/ (?:per|an?) /g, "/"),
  );
  return found && keep(parsed, text, found);
}

function readUnit(clean: string): Unit | undefined {
  if (clean.split(/[/·*]/).length > MOST_PARTS) return undefined;
  const parts = new Map<string, number>();
  for (const [index, side] of clean.split("/").entries()) {
    for (const factor of side.split(/[·*]/)) {
      const part = parsePart(factor.trim());
      if (!part) return undefined;
      for (const [name, exponent] of part) {
        parts.set(name, (parts.get(name) ?? 0) + (index === 0 ? exponent : -exponent));
      }
    }
  }
  const currencies = [...parts.keys()].filter((name) => Object.hasOwn(CURRENCIES, name));
  return currencies.length > 1 ? undefined : build(parts);
}

function parsePart(text: string): [string, number][] | undefined {
  if (text === "" || text === "1") return text === "" ? undefined : [];
  if (text === "%") return [["%", 1]];
  const alias = (name: string): string => {
    if (Object.hasOwn(ALIASES, name)) return ALIASES[name] as string;
    return baseUnit(name) || TWO_MEANINGS.has(name) ? name : (FOLDED.get(name.toLowerCase()) ?? name);
  };
  const whole = alias(text);
  if (baseUnit(whole)) return whole === "each" ? [] : [[whole, 1]];
  const powered = /^(.*?)([23])$/.exec(whole);
  if (!powered) return undefined;
  const base = alias(powered[1] as string);
  return baseUnit(base) ? [[base, Number(powered[2])]] : undefined;
}

/** As `parseUnit`, for units written in our own code; throws on a typing error there. */
export function unit(text: string): Unit {
  const known = ours.get(text);
  if (known) return known;
  const found = text === "" ? NUMBER : parseUnit(text);
  if (!found) throw new Error(`no such unit: ${text}`);
  if (ours.size < KEPT) ours.set(text, found);
  return found;
}

/** Units that our own code names, found without reading their text again. */
const ours = new Map<string, Unit>();

/** The one unit in which a plain dimension is held; a rate keeps its own. */
export function held(of: Unit): Unit {
  const known = holding.get(of);
  if (known) return known;
  const found = heldUnit(of);
  holding.set(of, found);
  return found;
}

const holding = new WeakMap<Unit, Unit>();

function heldUnit(of: Unit): Unit {
  if (!of.plain) return of;
  const first = of.dimension;
  if (first === "") return NUMBER;
  const match = /^(\w+?)(\d)$/.exec(first);
  if (!match) throw new Error(`dimension out of form: ${first}`);
  const [, axis, power] = match as unknown as [string, string, string];
  const symbol = HELD[axis] ?? axis;
  return unit(power === "1" ? symbol : `${symbol}${power}`);
}

const HELD: Readonly<Record<string, string>> = {
  length: "mm",
  mass: "kg",
  time: "h",
  work: "person-h",
  angle: "deg",
  calendar: "day",
  energy: "kWh",
};

type UnitPairs = WeakMap<Unit, WeakMap<Unit, Unit>>;
const products: UnitPairs = new WeakMap();
const quotients: UnitPairs = new WeakMap();

/** Throws where two currencies meet. Each pair is worked out once. */
function combine(known: UnitPairs, a: Unit, b: Unit, sign: 1 | -1): Unit {
  const row = known.get(a) ?? new WeakMap<Unit, Unit>();
  known.set(a, row);
  const found = row.get(b);
  if (found) return found;
  const parts = new Map(a.parts);
  for (const [name, exponent] of b.parts) parts.set(name, (parts.get(name) ?? 0) + sign * exponent);
  const currencies = [...parts].filter(([name, exponent]) => exponent !== 0 && Object.hasOwn(CURRENCIES, name));
  if (currencies.length > 1) throw new Error(`two currencies meet: ${a.symbol} and ${b.symbol}`);
  const made = build(parts);
  row.set(b, made);
  return made;
}

/** Unit of a product. */
export const unitTimes = (a: Unit, b: Unit): Unit => combine(products, a, b, 1);

/** Unit of a quotient. */
export const unitOver = (a: Unit, b: Unit): Unit => combine(quotients, a, b, -1);

/** Weak, so that a factor lives no longer than its units. */
const factors = new WeakMap<Unit, WeakMap<Unit, Factor>>();

/** What a value in `from` is multiplied by to be in `to`: an exact ratio. Throws when they measure different things. */
export function factorBetween(from: Unit, to: Unit): Factor {
  if (from === to) return SAME;
  const row = factors.get(from) ?? new WeakMap<Unit, Factor>();
  factors.set(from, row);
  let factor = row.get(to);
  if (!factor) {
    if (from.dimension !== to.dimension)
      throw new Error(`${from.symbol || "a number"} is not ${to.symbol || "a number"}`);
    const num = from.num * to.den;
    const den = from.den * to.num;
    const divisor = gcd(num, den);
    factor = ratioOf(num / divisor, den / divisor);
    row.set(to, factor);
  }
  return factor;
}

/** Between a unit and itself, as most are. */
const SAME: Factor = ratioOf(1n, 1n);

/** From numbers without a common divisor. */
function ratioOf(num: bigint, den: bigint): Factor {
  const by = ending(num, den);
  const into = by ? undefined : ending(den, num);
  return { num: decimal(num), den: decimal(den), isOne: num === den, ...(by && { by }), ...(into && { into }) };
}

/** The quotient, where it ends within the digits that are kept: the divisor is made of twos and fives. */
function ending(above: bigint, below: bigint): Decimal | undefined {
  let rest = below;
  while (rest % 2n === 0n) rest /= 2n;
  while (rest % 5n === 0n) rest /= 5n;
  const quotient = decimal(above).dividedBy(decimal(below));
  return rest === 1n && quotient.precision() < 40 ? quotient : undefined;
}

/** Rounded once where the factor or its inverse ends; else multiplied before divided. */
export function applyFactor(value: Decimal, factor: Factor): Decimal {
  if (factor.isOne) return value;
  if (factor.by) return value.times(factor.by);
  if (factor.into) return value.dividedBy(factor.into);
  return value.times(factor.num).dividedBy(factor.den);
}

/** The way back: from the unit that the factor leads to. */
export function removeFactor(value: Decimal, factor: Factor): Decimal {
  if (factor.isOne) return value;
  if (factor.into) return value.times(factor.into);
  if (factor.by) return value.dividedBy(factor.by);
  return value.times(factor.den).dividedBy(factor.num);
}

/** A quotient in the factor's unit, rounded as late as can be. */
export function divideWithFactor(left: Decimal, right: Decimal, factor: Factor): Decimal {
  if (factor.isOne) return left.dividedBy(right);
  if (factor.by) return left.times(factor.by).dividedBy(right);
  if (factor.into) return left.dividedBy(right.times(factor.into));
  return left.times(factor.num).dividedBy(right.times(factor.den));
}

/** Digits after the point of a currency (ISO 4217), or undefined when the symbol is no currency. */
export function minorDigits(symbol: string): number | undefined {
  return Object.hasOwn(CURRENCIES, symbol) ? CURRENCIES[symbol] : undefined;
}

/** Plain words for what a unit measures, for faults: "a length, such as 14 ft or 4.35 m". */
export function describeDimension(of: Unit): string {
  const words: Readonly<Record<string, string>> = {
    "": "a plain number",
    length1: `a length, such as 14 ft, 12' 6", 2 1/4 in or 95 mm`,
    length2: "an area, such as 120 ft2 or 11 m2",
    length3: "a volume, such as 5 gal, 2.5 L or 120 bf",
    mass1: "a mass, such as 40 lb or 18 kg",
    time1: "a time, such as 1.5 h or 20 min",
    work1: "an amount of work, such as 3 person-h",
    angle1: "an angle, such as 22.5 deg",
    calendar1: "a calendar time, such as 90 day or 12 week",
    "time-1 work1": "a number of people, such as 2 people",
    energy1: "an energy, such as 3 kWh",
  };
  const known = of.symbol === "%" ? "a percentage, such as 12 %" : words[of.dimension];
  if (known) return known;
  const money = /^([A-Z]{3})1$/.exec(of.dimension);
  if (money)
    return `an amount of money in ${money[1]}, such as ${minorDigits(money[1] as string) === 0 ? 12 : "12.50"} ${money[1]}`;
  return `a rate in ${of.symbol}`;
}
