/**
 * Tree over arrays of draws, node by node, for sampling. No code is generated, which many runtimes forbid.
 * A node that no sampled cell reaches is one number, not an array.
 */
import type { Decimal } from "../quantity/decimal.js";
import type { Factor } from "../quantity/unit.js";
import { TOLD_APART } from "./evaluate.js";
import { type Cell, cellsIn, type Expression, type Scaled, type StepTable } from "./expression.js";

/** One value for all draws, or one a draw. */
export type Draws = number | Float64Array;

const ratios = new WeakMap<Factor, number>();

/** A factor as a float, worked out once. */
function ratio(factor: Factor): number {
  if (factor.isOne) return 1;
  const known = ratios.get(factor);
  if (known !== undefined) return known;
  const found = factor.num.dividedBy(factor.den).toNumber();
  ratios.set(factor, found);
  return found;
}

const DEGREE = Math.PI / 180;

/** Error that a float gathers on its way through a sheet, as a share of it; some 500 times its last digit. */
const GATHERED = 1e-13;

/** As the decimal reading: to nine decimals first, half away from zero, then up. */
function roundUpFloat(value: number): number {
  const whole = Math.round(value);
  const off = Math.abs(value - whole);
  return off < 5e-10 || off < Math.abs(value) * GATHERED ? whole : Math.ceil(value);
}

const roundHalfAway = (value: number, scale: number): number =>
  (Math.sign(value) * Math.round(Math.abs(value) * scale * (1 + GATHERED))) / scale;

/** As the decimal reading: 1, 0 or −1, values that are as good as equal being equal. */
function compared(left: number, right: number): number {
  const off = left - right;
  const larger = Math.max(Math.abs(left), Math.abs(right));
  return Math.abs(off) <= Math.max(TOLD_APART.by, larger * TOLD_APART.share) ? 0 : Math.sign(off);
}

function each(draws: Draws, f: (value: number) => number): Draws {
  if (typeof draws === "number") return f(draws);
  const out = new Float64Array(draws.length);
  for (let i = 0; i < draws.length; i++) out[i] = f(draws[i] as number);
  return out;
}

function scaleBy(draws: Draws, factor: number): Draws {
  return factor === 1 ? draws : pairwise("times", draws, factor);
}

/** One number stands for all draws when it is read again and again: a stride of 0. */
const asArray = (draws: Draws): Float64Array => (typeof draws === "number" ? Float64Array.of(draws) : draws);
const stride = (draws: Draws): 0 | 1 => (typeof draws === "number" ? 0 : 1);

type Arithmetic = "plus" | "minus" | "times" | "over" | "least" | "greatest";

/** Separate loops, so that each stays a tight one. */
function pairwise(kind: Arithmetic, a: Draws, b: Draws): Draws {
  if (typeof a === "number" && typeof b === "number") return arithmetic(kind, a, b);
  const [left, right] = [asArray(a), asArray(b)];
  const [p, q] = [stride(a), stride(b)];
  const n = Math.max(left.length, right.length);
  const out = new Float64Array(n);
  switch (kind) {
    case "plus":
      for (let i = 0; i < n; i++) out[i] = (left[i * p] as number) + (right[i * q] as number);
      break;
    case "minus":
      for (let i = 0; i < n; i++) out[i] = (left[i * p] as number) - (right[i * q] as number);
      break;
    case "times":
      for (let i = 0; i < n; i++) out[i] = (left[i * p] as number) * (right[i * q] as number);
      break;
    case "over":
      for (let i = 0; i < n; i++) out[i] = (left[i * p] as number) / (right[i * q] as number);
      break;
    case "least":
      for (let i = 0; i < n; i++) out[i] = Math.min(left[i * p] as number, right[i * q] as number);
      break;
    case "greatest":
      for (let i = 0; i < n; i++) out[i] = Math.max(left[i * p] as number, right[i * q] as number);
      break;
  }
  return out;
}

function arithmetic(kind: Arithmetic, a: number, b: number): number {
  switch (kind) {
    case "plus":
      return a + b;
    case "minus":
      return a - b;
    case "times":
      return a * b;
    case "over":
      return a / b;
    case "least":
      return Math.min(a, b);
    case "greatest":
      return Math.max(a, b);
  }
}

/** The draws of a cell that a formula names, in the cell's unit. */
type DrawsOf = (cell: Cell) => Draws;

/** Values of a formula in its own unit, for all draws at once. */
export function evaluateFloat(expression: Expression, drawsOf: DrawsOf): Draws {
  switch (expression.kind) {
    case "number":
      return expression.value.toNumber();
    case "cell":
      return drawsOf(expression.cell);
    case "plus":
    case "minus": {
      const right = inFactor({ of: expression.right, factor: expression.factor }, drawsOf);
      return pairwise(expression.kind, evaluateFloat(expression.left, drawsOf), right);
    }
    case "times":
    case "over": {
      const [left, right] = [evaluateFloat(expression.left, drawsOf), evaluateFloat(expression.right, drawsOf)];
      return scaleBy(pairwise(expression.kind, left, right), ratio(expression.factor));
    }
    case "sum":
      return fold("plus", expression.items, drawsOf);
    case "least":
    case "greatest":
      return fold(expression.kind, expression.items, drawsOf);
    case "square": {
      const side = evaluateFloat(expression.of, drawsOf);
      return scaleBy(pairwise("times", side, side), ratio(expression.factor));
    }
    case "root":
      return each(evaluateFloat(expression.of, drawsOf), Math.sqrt);
    case "roundUp":
      return scaleBy(each(inFactor(expression, drawsOf), roundUpFloat), 1 / ratio(expression.factor));
    case "roundMoney": {
      const scale = 10 ** expression.places;
      return each(evaluateFloat(expression.of, drawsOf), (v) => roundHalfAway(v, scale));
    }
    case "arctangent":
      return each(inFactor(expression, drawsOf), (v) => Math.atan(v) / DEGREE);
    case "tangent":
      return each(inFactor(expression, drawsOf), (v) => Math.tan(v * DEGREE));
    case "when":
      return choose(
        expression.comparison === "atLeast",
        evaluateFloat(expression.left, drawsOf),
        inFactor(expression.right, drawsOf),
        evaluateFloat(expression.yes, drawsOf),
        inFactor(expression.otherwise, drawsOf),
      );
    case "steps": {
      const lookUp = stepReader(expression.table, expression.column);
      return each(inFactor(expression.need, drawsOf), (v) => lookUp(roundUpFloat(v)));
    }
  }
}

/** A part in its neighbours' unit. */
function inFactor({ of, factor }: Scaled, drawsOf: DrawsOf): Draws {
  return scaleBy(evaluateFloat(of, drawsOf), ratio(factor));
}

function fold(kind: Arithmetic, items: readonly Scaled[], drawsOf: DrawsOf): Draws {
  return items.map((item) => inFactor(item, drawsOf)).reduce((a, b) => pairwise(kind, a, b));
}

/** A column of a step table as floats, read out once for all draws. */
function stepReader(table: StepTable, column: number): (need: number) => number {
  const from = table.rows.map((row) => row.from);
  const values = table.rows.map((row) => row.columns[column]?.toNumber() ?? 0);
  const { upTo, size } = table.beyond;
  const repeat = table.beyond.columns[column]?.toNumber() ?? 0;
  return (need) => {
    if (need <= 0) return 0;
    const repeats = need > upTo ? Math.ceil((need - upTo) / size) : 0;
    const inside = need - repeats * size;
    if (inside <= 0) return repeat * repeats;
    let low = 0;
    let high = from.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((from[middle] as number) <= inside) low = middle;
      else high = middle - 1;
    }
    return (values[low] ?? 0) + repeat * repeats;
  };
}

function choose(orEqual: boolean, left: Draws, right: Draws, then: Draws, otherwise: Draws): Draws {
  const least = orEqual ? 0 : 1;
  const all = [left, right, then, otherwise];
  if (typeof left === "number" && typeof right === "number") return compared(left, right) >= least ? then : otherwise;
  const [l, r, t, o] = all.map(asArray) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const [ls, rs, ts, os] = all.map(stride) as [number, number, number, number];
  const out = new Float64Array(Math.max(l.length, r.length));
  for (let i = 0; i < out.length; i++) {
    const holds = compared(l[i * ls] as number, r[i * rs] as number) >= least;
    out[i] = (holds ? t[i * ts] : o[i * os]) as number;
  }
  return out;
}

/**
 * All cells over draws. Sampled cells take the given arrays; a formula that no sampled cell reaches keeps its
 * exact value, turned into a float once.
 */
export function evaluateDraws(cells: readonly Cell[], sampled: ReadonlyMap<string, Float64Array>): Map<Cell, Draws> {
  const draws = new Map<Cell, Draws>();
  const moved = new Set<Cell>();
  const drawsOf = (cell: Cell): Draws => draws.get(cell) ?? floatOf(cell.value);
  for (const cell of cells) {
    const given = sampled.get(cell.name);
    if (given) {
      draws.set(cell, given);
      moved.add(cell);
    } else if (
      cell.expression &&
      cell.kind !== "override" &&
      cellsIn(cell.expression).some((part) => moved.has(part))
    ) {
      draws.set(cell, evaluateFloat(cell.expression, drawsOf));
      moved.add(cell);
    } else draws.set(cell, floatOf(cell.value));
  }
  return draws;
}

/** All cells over one draw for each change: there its cell alone is at that end, and what hangs on it follows. */
export function evaluateEachAlone(
  cells: readonly Cell[],
  changes: readonly { readonly cell: Cell; readonly end: Decimal }[],
): Map<Cell, Draws> {
  const sampled = new Map<string, Float64Array>();
  for (const [i, { cell, end }] of changes.entries()) {
    const draws = sampled.get(cell.name) ?? new Float64Array(changes.length).fill(floatOf(cell.value));
    draws[i] = floatOf(end);
    sampled.set(cell.name, draws);
  }
  return evaluateDraws(cells, sampled);
}

/** The change that alone leaves least of one cell less another, by floats, which rank; of equals the first, of none nothing. */
export function leastLeft<Change extends { readonly cell: Cell; readonly end: Decimal }>(
  cells: readonly Cell[],
  changes: readonly Change[],
  { of, less }: { readonly of: Cell; readonly less: Cell },
): Change | undefined {
  const draws = evaluateEachAlone(cells, changes);
  const left = changes.map((_, i) => drawAt(draws.get(of), i) - drawAt(draws.get(less), i));
  return changes[left.indexOf(Math.min(...left))];
}

/** One draw of a cell's; NaN of a cell that was not evaluated. */
export const drawAt = (draws: Draws | undefined, i: number): number =>
  (typeof draws === "object" ? draws[i] : draws) ?? Number.NaN;

const floatOf = (value: Decimal): number => value.toNumber();
