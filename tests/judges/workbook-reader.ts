/**
 * Works a workbook formula out as a spreadsheet program does, in floats. The part of the OpenFormula grammar
 * (OASIS OpenDocument 1.3, part 4) that is needed: a minus sign binds tighter than ^, which binds tighter than × and ÷.
 */

type Value = number | boolean | readonly number[];

const TOKEN = /\s*(>=|<=|<>|[-+*/^(),{}<>=]|\d+(?:\.\d+)?(?:E[+-]?\d+)?|[A-Za-z_][A-Za-z0-9_.]*)/y;

function tokensOf(formula: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < formula.length) {
    const found = TOKEN.exec(formula);
    if (!found) throw new Error(`cannot read ${formula}`);
    tokens.push(found[1] as string);
  }
  return tokens;
}

/** @param named - Value of a defined name. */
export function workOutFormula(formula: string, named: (name: string) => number): number {
  const tokens = tokensOf(formula);
  let at = 0;
  const peek = (): string => tokens[at] ?? "";
  const take = (token: string): boolean => {
    if (peek() !== token) return false;
    at++;
    return true;
  };
  const need = (token: string): void => {
    if (!take(token)) throw new Error(`expected ${token} but found ${peek()} in ${formula}`);
  };
  const oneOf = (signs: string): string | undefined => {
    const token = peek();
    if (token === "" || !signs.split(" ").includes(token)) return undefined;
    at++;
    return token;
  };

  function comparison(): Value {
    let left = sum();
    for (let sign = oneOf(">= <= <> > < ="); sign; sign = oneOf(">= <= <> > < ="))
      left = compare(sign, number(left), number(sum()));
    return left;
  }
  function sum(): Value {
    let left = product();
    for (let sign = oneOf("+ -"); sign; sign = oneOf("+ -")) {
      const right = number(product());
      left = sign === "+" ? number(left) + right : number(left) - right;
    }
    return left;
  }
  function product(): Value {
    let left = power();
    for (let sign = oneOf("* /"); sign; sign = oneOf("* /")) {
      const right = number(power());
      if (sign === "/" && right === 0) throw new Error("#DIV/0!");
      left = sign === "*" ? number(left) * right : number(left) / right;
    }
    return left;
  }
  function power(): Value {
    let left = signed();
    while (take("^")) left = number(left) ** number(signed());
    return left;
  }
  function signed(): Value {
    if (take("-")) return -number(signed());
    return primary();
  }
  function primary(): Value {
    if (take("(")) {
      const inside = comparison();
      need(")");
      return inside;
    }
    if (take("{")) return row();
    const token = peek();
    at++;
    if (/^\d/.test(token)) return Number(token);
    if (!/^[A-Za-z_]/.test(token)) throw new Error(`cannot read ${token} in ${formula}`);
    if (!take("(")) return named(token);
    const values = [comparison()];
    while (take(",")) values.push(comparison());
    need(")");
    return apply(token, values);
  }
  function row(): readonly number[] {
    const items: number[] = [];
    do items.push(number(signed()));
    while (take(","));
    need("}");
    return items;
  }

  const answer = number(comparison());
  if (at !== tokens.length) throw new Error(`left over in ${formula}`);
  return answer;
}

function number(value: Value): number {
  if (typeof value !== "number" || !Number.isFinite(value)) throw new Error(`no number: ${String(value)}`);
  return value;
}

/** A spreadsheet takes numbers for equal that differ in the last of their fifteen digits only. */
function compare(sign: string, left: number, right: number): boolean {
  const equal = Math.abs(left - right) <= Math.max(Math.abs(left), Math.abs(right)) * 1e-14;
  const more = !equal && left > right;
  const less = !equal && left < right;
  return { ">=": !less, "<=": !more, "<>": !equal, ">": more, "<": less, "=": equal }[sign] as boolean;
}

/** Half away from zero on the fifteen digits that a spreadsheet keeps. */
function round(value: number, places: number): number {
  const scaled = Number((Math.abs(value) * 10 ** places).toPrecision(15));
  return (Math.sign(value) * Math.floor(scaled + 0.5)) / 10 ** places;
}

/** Without mercy on a last digit: a formula that needs it must round first. */
const ceiling = (value: number, step: number): number => Math.ceil(value / step) * step;

function lookup(wanted: number, keys: readonly number[], values: readonly number[]): number {
  if (keys.some((key, index) => index > 0 && key <= (keys[index - 1] as number))) throw new Error("keys out of order");
  const found = keys.findLastIndex((key) => key <= wanted);
  if (found < 0 || keys.length !== values.length) throw new Error("#N/A");
  return values[found] as number;
}

function apply(name: string, values: readonly Value[]): Value {
  const numbers = (): number[] => values.map(number);
  const one = (): number => number(values[0] as Value);
  switch (name) {
    case "SUM":
      return numbers().reduce((a, b) => a + b, 0);
    case "MIN":
      return Math.min(...numbers());
    case "MAX":
      return Math.max(...numbers());
    case "SQRT":
      return Math.sqrt(one());
    case "CEILING":
      return ceiling(...(numbers() as [number, number]));
    case "ROUND":
      return round(...(numbers() as [number, number]));
    case "IF":
      return (values[0] ? values[1] : values[2]) as Value;
    case "LOOKUP":
      return lookup(one(), values[1] as readonly number[], values[2] as readonly number[]);
    case "DEGREES":
      return (one() * 180) / Math.PI;
    case "RADIANS":
      return (one() * Math.PI) / 180;
    case "ATAN":
      return Math.atan(one());
    case "TAN":
      return Math.tan(one());
    default:
      throw new Error(`#NAME? ${name}`);
  }
}
