/**
 * Sheets at random, over lengths, areas, volumes, money, counts, rates, angles and work, with every kind of node.
 *
 * What no float can follow is left out as it is grown: differences of nearly equal numbers, and numbers that all but
 * stand on the edge of a round-up. Numbers that stand exactly on it stay.
 */
import fc from "fast-check";
import { Decimal, decimal } from "../../src/estimate/quantity/decimal.js";
import { type Quantity, quantity } from "../../src/estimate/quantity/quantity.js";
import { applyFactor, factorBetween, unit } from "../../src/estimate/quantity/unit.js";
import { DivisionByZero, evaluate } from "../../src/estimate/sheet/evaluate.js";
import {
  arctangent,
  type Cell,
  type Expression,
  expressionOf,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  partsOf,
  plus,
  root,
  roundMoney,
  roundUp,
  type StepTable,
  square,
  steps,
  sum,
  tangent,
  times,
  when,
} from "../../src/estimate/sheet/expression.js";
import type { OverrideText } from "../../src/estimate/sheet/overriding.js";
import { Sheet } from "../../src/estimate/sheet/sheet.js";

/** What is measured, and the units that it is written and shown in. */
const UNITS = {
  length: ["ft", "in", "mm", "m"],
  area: ["ft2", "m2", "square", "in2"],
  volume: ["gal", "L", "bf", "ft3"],
  count: ["", "%"],
  money: ["USD"],
  price: ["USD/ft", "USD/m"],
  coverage: ["ft2/gal", "m2/L"],
  work: ["person-h", "person-min"],
  wage: ["USD/person-h"],
  angle: ["deg"],
} as const;
type Measure = keyof typeof UNITS;
const MEASURES = Object.keys(UNITS) as Measure[];

/** Least cost and number of packs of 8, 20 and 33 square feet; repeats of the largest beyond. */
export const PACKS: StepTable = {
  name: "packs",
  stepUnit: unit("ft2"),
  columns: [
    { name: "cost", unit: unit("USD") },
    { name: "count", unit: unit("") },
  ],
  rows: [
    { from: 1, columns: [decimal("12.5"), decimal(1)] },
    { from: 9, columns: [decimal("24.99"), decimal(1)] },
    { from: 21, columns: [decimal("37.49"), decimal(2)] },
    { from: 29, columns: [decimal("38"), decimal(1)] },
  ],
  beyond: { upTo: 33, size: 33, columns: [decimal("38"), decimal(1)] },
};

/** Numbers thrown in advance; when they run out, each throw is 0, so that shrinking makes plain sheets. */
class Dice {
  private at = 0;
  constructor(private readonly thrown: readonly number[]) {}
  below(sides: number): number {
    return (this.thrown[this.at++] ?? 0) % sides;
  }
  of<T>(sides: readonly T[]): T {
    return sides[this.below(sides.length)] as T;
  }
}

type Find = (name: string) => Cell;
/** A formula that can be built on any sheet that has its cells. */
type Growth = (find: Find) => Operand;
type Planted = { readonly name: string; readonly measure: Measure };
/** Lays one cell. */
type Step = (sheet: Sheet, find: Find) => Cell;

interface Garden {
  readonly planted: Planted[];
  readonly dice: Dice;
}

function written(dice: Dice, measure: Measure): Quantity {
  const sign = dice.below(10) === 9 && (measure === "length" || measure === "count") ? -1 : 1;
  return quantity(decimal(sign * (1 + dice.below(320))).dividedBy(dice.of([1, 4, 200])), dice.of(UNITS[measure]));
}

function leaf(garden: Garden, measure: Measure): Growth {
  const known = garden.planted.filter((cell) => cell.measure === measure);
  if (known.length > 0 && garden.dice.below(4) !== 3) {
    const { name } = garden.dice.of(known);
    return (find) => find(name);
  }
  const { dice } = garden;
  const text = `${decimal(1 + dice.below(96)).dividedBy(dice.of([1, 4]))} ${dice.of(UNITS[measure])}`.trim();
  return () => number(text);
}

/** A formula of one measure, at most so deep. */
function grow(garden: Garden, measure: Measure, depth: number): Growth {
  if (depth === 0) return leaf(garden, measure);
  const { dice } = garden;
  const a = (of: Measure): Growth => grow(garden, of, depth - 1);
  const pair = (make: (x: Operand, y: Operand) => Operand, x: Growth, y: Growth): Growth => {
    return (find) => make(x(find), y(find));
  };
  const single = (make: (x: Operand) => Operand, x: Growth): Growth => {
    return (find) => make(x(find));
  };
  const many = (make: (...x: Operand[]) => Operand): Growth => {
    const parts = Array.from({ length: 1 + dice.below(4) }, () => a(measure));
    return (find) => make(...parts.map((part) => part(find)));
  };
  const choice = (): Growth => {
    const compared = dice.of(MEASURES);
    const comparison = dice.of(["atLeast", "above"] as const);
    const parts = [a(compared), a(compared), a(measure), a(measure)];
    // Now and then the two are the same but for the tail of a division.
    if (dice.below(3) === 0) {
      const [whole, share] = [parts[0] as Growth, a("count")];
      const divided: Growth = (find) => times(over(whole(find), share(find)), share(find));
      parts.splice(0, 2, ...(dice.below(2) === 0 ? [whole, divided] : [divided, whole]));
    }
    return (find) => {
      const [left, right, yes, no] = parts.map((part) => part(find)) as [Operand, Operand, Operand, Operand];
      return when(left, comparison, right, yes, no);
    };
  };
  const everywhere: (() => Growth)[] = [
    () => pair(plus, a(measure), a(measure)),
    () => pair(minus, a(measure), a(measure)),
    () => pair(times, a("count"), a(measure)),
    () => pair(over, a(measure), a("count")),
    () => many((...parts) => sum(parts)),
    () => many(least),
    () => many(greatest),
    choice,
  ];
  const up = (step: string): (() => Growth) => {
    return () => single((x) => roundUp(x, step), a(measure));
  };
  const own: Record<Measure, (() => Growth)[]> = {
    length: [
      () => single(root, a("area")),
      () => pair(over, a("area"), a("length")),
      () => pair((x, y) => times(x, tangent(y)), a("length"), a("angle")),
      () => pair((x, y) => root(plus(square(x), square(y))), a("length"), a("length")),
      ...["ft", "in", "mm", "m"].map(up),
    ],
    area: [
      () => pair(times, a("length"), a("length")),
      () => single(square, a("length")),
      () => pair(times, a("volume"), a("coverage")),
      ...["ft2", "square", "m2"].map(up),
    ],
    volume: [() => pair(over, a("area"), a("coverage")), () => pair(times, a("area"), a("length")), up("gal"), up("L")],
    count: [
      () => pair(over, a("length"), a("length")),
      () => pair((x, y) => roundUp(over(x, y)), a("length"), a("length")),
      // The trap of the trade: divided, multiplied again, rounded up.
      () => pair((x, y) => roundUp(times(over(x, y), y)), a("count"), a("count")),
      () => pair(over, a("money"), a("money")),
      () => single(square, a("count")),
      () => single(root, a("count")),
      () => single(tangent, a("angle")),
      () => single((need) => steps(need, PACKS, 1), a("area")),
      up(""),
    ],
    money: [
      () => pair(times, a("price"), a("length")),
      () => pair(times, a("wage"), a("work")),
      () => single((x) => roundMoney(x, 2), a("money")),
      () => pair((x, y) => roundMoney(times(x, y), 2), a("price"), a("length")),
      () => pair((x, y) => roundMoney(times(over(x, y), y), 2), a("money"), a("count")),
      () => single((need) => steps(need, PACKS, 0), a("area")),
    ],
    price: [() => pair(over, a("money"), a("length"))],
    coverage: [() => pair(over, a("area"), a("volume"))],
    work: [() => pair(over, a("money"), a("wage"))],
    wage: [() => pair(over, a("money"), a("work"))],
    angle: [() => single(arctangent, a("count"))],
  };
  return dice.of([...own[measure], ...everywhere])();
}

const exact = (node: Expression): Decimal => evaluate(node, (cell) => cell.value);

/** Well off the halfway between two whole numbers, or exactly on it. */
function clearOf(edge: Decimal): boolean {
  const off = edge.minus(edge.round()).abs();
  return edge.abs().lt("1e6") && (off.lt("1e-25") || off.gt("1e-5"));
}

/** True when a float can follow: see the head of this file. */
function sound(node: Expression): boolean {
  if (!partsOf(node).every(sound)) return false;
  try {
    const value = exact(node);
    if (!value.isFinite() || value.abs().gt("1e12") || (!value.isZero() && value.abs().lt("1e-5"))) return false;
    return followable(node, value);
  } catch (error) {
    if (error instanceof DivisionByZero) return false;
    throw error;
  }
}

function followable(node: Expression, value: Decimal): boolean {
  switch (node.kind) {
    case "plus":
    case "minus":
      return value.abs().gte(exact(node.left).abs().times("0.3"));
    case "sum": {
      const sizes = node.items.map((item) => applyFactor(exact(item.of), item.factor).abs());
      return value.abs().gte(Decimal.max(...sizes).times("0.3"));
    }
    case "roundUp":
      return clearOf(applyFactor(exact(node.of), node.factor));
    case "roundMoney":
      return clearOf(exact(node.of).times(100).plus("0.5"));
    case "tangent":
      return exact(node.of).abs().lt(80);
    case "steps":
      return clearOf(applyFactor(exact(node.need.of), node.need.factor));
    case "when": {
      const left = exact(node.left);
      const off = left.minus(applyFactor(exact(node.right.of), node.right.factor)).abs();
      return off.lt("1e-25") || off.gt(Decimal.max("1e-4", left.abs().times("1e-4")));
    }
    default:
      return true;
  }
}

/** A sheet, and the means to lay it once more with something put in the place of its cells. */
export interface RandomSheet {
  readonly sheet: Sheet;
  /** For the report of a failure: each cell with its working. */
  [fc.toStringMethod](): string;
  relay(overrides: ReadonlyMap<string, OverrideText>): Sheet;
}

const LEAVES = ["input", "assumption", "catalog"] as const;

function leafStep(dice: Dice, name: string, measure: Measure): Step {
  const kind = dice.of(LEAVES);
  const likely = written(dice, measure);
  const display = dice.of(UNITS[measure]);
  return (sheet) => {
    if (kind !== "assumption") return sheet[kind](name, likely, { display });
    return sheet.assumption(name, { low: likely, likely, high: likely }, { display });
  };
}

function formulaStep(garden: Garden, name: string, measure: Measure): Step {
  const growth = grow(garden, measure, 1 + garden.dice.below(3));
  const display = garden.dice.of(UNITS[measure]);
  return (sheet, find) => sheet.lay(name, growth(find), { display });
}

/** Lays what the dice say, leaving out what is not sound. */
function plant(throws: readonly (readonly number[])[]): RandomSheet {
  const sheet = new Sheet();
  const planted: Planted[] = [];
  const laid: Step[] = [];
  const findOn = (on: Sheet): Find => {
    return (name) => on.find(name) as Cell;
  };
  for (const [index, thrown] of throws.entries()) {
    const dice = new Dice(thrown);
    const measure = dice.of(MEASURES);
    const name = `block-${index % 3}.cell-${index}`;
    if (dice.below(3) === 0) laid.push(leafStep(dice, name, measure));
    else {
      const step = formulaStep({ planted: [...planted], dice }, name, measure);
      const trial = trialOf(step, findOn(sheet));
      if (!trial || !sound(trial)) continue;
      laid.push(step);
    }
    (laid.at(-1) as Step)(sheet, findOn(sheet));
    planted.push({ name, measure });
  }
  const relay = (overrides: ReadonlyMap<string, OverrideText>): Sheet => {
    const again = new Sheet(overrides);
    for (const step of laid) step(again, findOn(again));
    return again;
  };
  const lines = () => sheet.cells.map((cell) => `${cell.name} = ${sheet.workingLine(cell)}`).join("\n");
  return { sheet, relay, [fc.toStringMethod]: lines };
}

/** The formula that a step would lay. */
function trialOf(step: Step, find: Find): Expression | undefined {
  let caught: Expression | undefined;
  const catcher = { lay: (_: string, operand: Operand) => (caught = expressionOf(operand)) };
  step(catcher as unknown as Sheet, find);
  return caught;
}

/** Arbitrary sheets of up to forty cells. */
export const randomSheet = fc
  .array(fc.array(fc.nat(2 ** 20), { minLength: 4, maxLength: 60 }), { minLength: 1, maxLength: 40, size: "max" })
  .map(plant)
  .filter(({ sheet }) => sheet.cells.length > 0);

/** A value in the cell's display unit. */
export function displayed(cell: Cell, value: Decimal = cell.value): Decimal {
  return applyFactor(value, factorBetween(cell.unit, cell.display));
}
