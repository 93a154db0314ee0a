/**
 * The tree as people and spreadsheets read it: every cell in its display unit, and a named factor
 * (`in per ft`) only where units differ. The working and the workbook formula are both written from it,
 * so they cannot disagree.
 */
import { Decimal } from "../quantity/decimal.js";
import { factorBetween, NUMBER, type Unit, unit, unitOver, unitTimes } from "../quantity/unit.js";
import type { Cell, Comparison, Expression, Scaled, StepTable } from "./expression.js";

/** A tree in display units, factors put in by name: what workings and workbook formulas are written from. */
export type Readable =
  | { readonly kind: "number"; readonly unit: Unit; readonly value: Decimal }
  | { readonly kind: "cell"; readonly unit: Unit; readonly cell: Cell }
  | {
      readonly kind: "plus" | "minus" | "times" | "over";
      readonly unit: Unit;
      readonly left: Readable;
      readonly right: Readable;
    }
  | { readonly kind: "factor"; readonly unit: Unit; readonly value: Decimal; readonly name: string }
  | { readonly kind: "sum" | "least" | "greatest"; readonly unit: Unit; readonly items: readonly Readable[] }
  | {
      readonly kind: "square" | "root" | "roundUp" | "arctangent" | "tangent";
      readonly unit: Unit;
      readonly of: Readable;
    }
  | { readonly kind: "roundMoney"; readonly unit: Unit; readonly of: Readable; readonly places: number }
  | {
      readonly kind: "when";
      readonly unit: Unit;
      readonly comparison: Comparison;
      readonly left: Readable;
      readonly right: Readable;
      readonly yes: Readable;
      readonly otherwise: Readable;
    }
  | {
      readonly kind: "steps";
      readonly unit: Unit;
      readonly need: Readable;
      readonly table: StepTable;
      readonly column: number;
    };

/** A formula in display units, its result in the unit `wanted`. */
export function readable(expression: Expression, wanted: Unit): Readable {
  return brought(natural(expression, wanted), wanted);
}

/** In the unit that falls out; sums and choices already in the wanted one. */
function natural(node: Expression, wanted: Unit | undefined): Readable {
  const target = wanted && wanted.dimension === node.unit.dimension ? wanted : undefined;
  switch (node.kind) {
    case "number":
      return { kind: "number", unit: node.written, value: exactIn(node.value, node.unit, node.written) };
    case "cell":
      return { kind: "cell", unit: node.cell.display, cell: node.cell };
    case "plus":
    case "minus": {
      const left = target ? readable(node.left, target) : natural(node.left, undefined);
      return { kind: node.kind, unit: left.unit, left, right: readable(node.right, left.unit) };
    }
    case "times": {
      const [left, right] = [natural(node.left, undefined), natural(node.right, undefined)];
      return { kind: "times", unit: unitTimes(left.unit, right.unit), left, right };
    }
    case "over": {
      const [left, right] = [natural(node.left, undefined), natural(node.right, undefined)];
      return { kind: "over", unit: unitOver(left.unit, right.unit), left, right };
    }
    case "sum":
    case "least":
    case "greatest": {
      const items = inOneUnit(node.items, target);
      return { kind: node.kind, unit: items[0]?.unit ?? NUMBER, items };
    }
    case "square": {
      const of = natural(node.of, undefined);
      return { kind: "square", unit: unitTimes(of.unit, of.unit), of };
    }
    case "root":
      return readableRoot(node.of, target ?? defaultLength(node.unit));
    case "roundUp":
      return { kind: "roundUp", unit: node.step, of: readable(node.of, node.step) };
    case "roundMoney":
      return { kind: "roundMoney", unit: node.unit, of: readable(node.of, node.unit), places: node.places };
    case "arctangent":
      return { kind: "arctangent", unit: node.unit, of: readable(node.of, NUMBER) };
    case "tangent":
      return { kind: "tangent", unit: NUMBER, of: readable(node.of, unit("deg")) };
    case "when": {
      const left = natural(node.left, undefined);
      const then = target ? readable(node.yes, target) : natural(node.yes, undefined);
      return {
        kind: "when",
        unit: then.unit,
        comparison: node.comparison,
        left,
        right: readable(node.right.of, left.unit),
        yes: then,
        otherwise: readable(node.otherwise.of, then.unit),
      };
    }
    case "steps": {
      const need = readable(node.need.of, node.table.stepUnit);
      return { kind: "steps", unit: node.unit, need, table: node.table, column: node.column };
    }
  }
}

function inOneUnit(items: readonly Scaled[], target: Unit | undefined): readonly Readable[] {
  const first = items[0];
  if (!first) return [];
  const shared = target ?? natural(first.of, undefined).unit;
  return items.map((item) => readable(item.of, shared));
}

/** The root of an area in the square of the wanted length. */
function readableRoot(of: Expression, length: Unit): Readable {
  return { kind: "root", unit: length, of: readable(of, unitTimes(length, length)) };
}

const defaultLength = (of: Unit): Unit => (of.dimension === "" ? NUMBER : of);

/** With the named factor that turns it into the target unit, where the units differ. */
function brought(node: Readable, target: Unit): Readable {
  if (node.unit === target) return node;
  if (node.kind === "number" && node.value.isZero()) return { ...node, unit: target };
  const { num, den, isOne } = factorBetween(node.unit, target);
  if (isOne) return { ...node, unit: target };
  const perNode = unitOver(target, node.unit);
  const perTarget = unitOver(node.unit, target);
  if (den.eq(1)) return applied("times", node, target, num, perNode);
  const inverse = den.dividedBy(num);
  if (isShort(inverse, num, den)) return applied("over", node, target, inverse, perTarget);
  const direct = num.dividedBy(den);
  if (isShort(direct, den, num)) return applied("times", node, target, direct, perNode);
  return applied("over", applied("times", node, target, num, perNode), target, den, NUMBER);
}

function applied(kind: "times" | "over", node: Readable, target: Unit, value: Decimal, per: Unit): Readable {
  const factor: Readable = { kind: "factor", unit: per, value, name: per.symbol.replaceAll("/", " per ") };
  return { kind, unit: target, left: node, right: factor };
}

/** A quotient that ends within twelve digits is exact as written. */
function isShort(quotient: Decimal, divisor: Decimal, dividend: Decimal): boolean {
  return quotient.decimalPlaces() <= 12 && quotient.times(divisor).eq(dividend);
}

/** A value of one unit in another. */
function exactIn(value: Decimal, from: Unit, to: Unit): Decimal {
  const factor = factorBetween(from, to);
  return factor.isOne ? value : new Decimal(value).times(factor.num).dividedBy(factor.den);
}
