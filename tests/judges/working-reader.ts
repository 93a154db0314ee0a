/**
 * Reads a working back. Written from the page, not from the code that writes it: a small recursive descent over
 * `a + b × c ÷ d`, brackets, `²`, `√( )`, `roundUp( )`, `toCent( )`, `arctan( )`, `tan( )`, `least( ; )`,
 * `greatest( ; )`, `if( ≥ ; ; )` and `table[column]( )`.
 *
 * A cell's name stands for its exact value in its display unit; what is written behind a number is for people.
 */
import { Decimal as Project } from "../../src/estimate/quantity/decimal.js";

/** Twenty digits more than the sheet works with, so that the judge's own rounding is out of the way. */
export const Decimal = Project.clone({ precision: 60 });
export type Decimal = InstanceType<typeof Decimal>;

export type Read =
  | { readonly kind: "number"; readonly value: Decimal; readonly digits: string; readonly unit: string }
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "call"; readonly name: string; readonly column?: string; readonly parts: readonly Read[] };

/** What the names in a working stand for. */
export interface Meaning {
  cell(name: string): Decimal;
  /** Value of a step table's column at a need. */
  table(name: string, column: string, need: Decimal): Decimal;
  /** Places of the currency's minor unit. */
  readonly places: number;
}

const NUMBER = /-?\d+(?:\.\d+)?/y;
const NAME = /[A-Za-z√][A-Za-z0-9_-]*(?:\.[A-Za-z0-9_-]+)*/y;
/** The unit behind a number: up to the next sign, bracket or semicolon. */
const UNIT = / (?![+−×÷≥>])[^()[\];+−×÷≥>]*?(?= [+−×÷≥>] |[();]|$)/y;

/** Text to tree. Throws where the text does not follow the grammar above. */
export function readWorking(text: string): Read {
  let at = 0;
  const take = (token: string): boolean => {
    if (!text.startsWith(token, at)) return false;
    at += token.length;
    return true;
  };
  const need = (token: string): void => {
    if (!take(token)) throw new Error(`expected “${token}” at ${at} of ${text}`);
  };
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    if (found !== undefined) at += found.length;
    return found;
  };
  const call = (name: string, ...parts: Read[]): Read => ({ kind: "call", name, parts });

  function chain(signs: readonly string[], next: () => Read): Read {
    let left = next();
    for (;;) {
      const sign = signs.find((candidate) => take(` ${candidate} `));
      if (!sign) return left;
      left = call(sign, left, next());
    }
  }
  const expression = (): Read => chain(["+", "−"], () => chain(["×", "÷"], powered));
  const comparison = (): Read => chain(["≥", ">"], expression);

  function powered(): Read {
    const base = primary();
    if (!take("²")) return base;
    // People read −3² as −9 and a²² as they please: neither may be written.
    if (text.startsWith("²", at) || bareNegative(base)) throw new Error(`unclear power at ${at} of ${text}`);
    return call("²", base);
  }

  const bareNegative = (read: Read): boolean => {
    return read.kind === "number" && read.value.isNegative() && text[at - 2] !== ")";
  };

  function primary(): Read {
    if (take("(")) {
      const inside = expression();
      need(")");
      return inside;
    }
    const digits = match(NUMBER);
    if (digits !== undefined) {
      return { kind: "number", value: new Decimal(digits), digits, unit: match(UNIT)?.slice(1) ?? "" };
    }
    const name = match(NAME);
    if (name === undefined) throw new Error(`nothing to read at ${at} of ${text}`);
    const column = take("[") ? match(/[^\]]*/y) : undefined;
    if (column !== undefined) need("]");
    if (!take("(")) return { kind: "name", name };
    const parts = [comparison()];
    while (take("; ")) parts.push(comparison());
    need(")");
    return { kind: "call", name, parts, ...(column === undefined ? {} : { column }) };
  }

  const whole = expression();
  if (at !== text.length) throw new Error(`left over at ${at} of ${text}`);
  return whole;
}

/** Up to whole ones; nine decimals count. */
const roundedUp = (value: Decimal): Decimal => value.toDecimalPlaces(9, Decimal.ROUND_HALF_UP).ceil();

/** Half away from zero. Twenty decimals count: what is beyond them is the tail of a division. */
const rounded = (value: Decimal, places: number): Decimal =>
  value.toDecimalPlaces(20, Decimal.ROUND_HALF_UP).toDecimalPlaces(places, Decimal.ROUND_HALF_UP);

/** Two values are told apart by a billionth, or by one part in 10¹² where that is more. */
function apart(a: Decimal, b: Decimal): boolean {
  const tolerance = Decimal.max("1e-9", Decimal.max(a.abs(), b.abs()).times("1e-12"));
  return a.minus(b).abs().gt(tolerance);
}

const DEGREE = Decimal.acos(-1).dividedBy(180);

/** Tree to value. */
export function workOut(read: Read, meaning: Meaning): Decimal {
  if (read.kind === "number") return read.value;
  if (read.kind === "name") return meaning.cell(read.name);
  const value = (index: number): Decimal => workOut(read.parts[index] as Read, meaning);
  switch (read.name) {
    case "+":
      return value(0).plus(value(1));
    case "−":
      return value(0).minus(value(1));
    case "×":
      return value(0).times(value(1));
    case "÷":
      return value(0).dividedBy(value(1));
    case "²":
      return value(0).pow(2);
    case "√":
      return value(0).sqrt();
    case "roundUp":
      return roundedUp(value(0));
    case "toCent":
      return rounded(value(0), meaning.places);
    case "arctan":
      return value(0).atan().dividedBy(DEGREE);
    case "tan":
      return value(0).times(DEGREE).tan();
    case "least":
      return Decimal.min(...read.parts.map((_, index) => value(index)));
    case "greatest":
      return Decimal.max(...read.parts.map((_, index) => value(index)));
    case "if":
      return holds(read.parts[0] as Read, meaning) ? value(1) : value(2);
    default:
      if (read.column === undefined) throw new Error(`no such function: ${read.name}`);
      return meaning.table(read.name, read.column, roundedUp(value(0)));
  }
}

function holds(condition: Read, meaning: Meaning): boolean {
  if (condition.kind !== "call" || !["≥", ">"].includes(condition.name)) throw new Error("no comparison");
  const [left, right] = condition.parts.map((part) => workOut(part, meaning)) as [Decimal, Decimal];
  return apart(left, right) ? left.gt(right) : condition.name === "≥";
}

/** Each cell's name in a formula, beside the number that stands in its place in the same working with numbers. */
export function namesBesideNumbers(formula: Read, numbers: Read): [string, Read & { kind: "number" }][] {
  if (formula.kind === "name") {
    if (numbers.kind !== "number") throw new Error(`${formula.name} has no number in its place`);
    return [[formula.name, numbers]];
  }
  if (formula.kind === "number") {
    if (numbers.kind !== "number" || !numbers.value.eq(formula.value) || numbers.unit !== formula.unit) {
      throw new Error(`${formula.digits} ${formula.unit} has become something else`);
    }
    return [];
  }
  if (numbers.kind !== "call" || numbers.name !== formula.name || numbers.parts.length !== formula.parts.length) {
    throw new Error(`${formula.name} has become something else`);
  }
  return formula.parts.flatMap((part, index) => namesBesideNumbers(part, numbers.parts[index] as Read));
}
