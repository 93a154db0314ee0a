/** The formula of a line of the user's own as a tree over cells, every unit checked before a node is built. */
import { type FaultCode, nearest } from "../faults.js";
import { quote } from "../quantity/text.js";
import { describeDimension, minorDigits, type Unit } from "../quantity/unit.js";
import { count, type Expression, expressionOf, minus, over, plus, times } from "./expression.js";
import type { FormulaNode } from "./own-formula.js";
import type { Sheet } from "./sheet.js";

/** Names of the cells of own lines begin with this. */
export const OWN_PREFIX = "own.";

/** A fault whose place is known to the caller. */
export class LineFault {
  constructor(
    readonly code: FaultCode,
    readonly wrong: string,
    readonly cure: string,
    /** The name of no cell, where that is what is wrong. */
    readonly unknown?: string,
  ) {}
}

/** The currency of an amount of money. */
export const moneyOf = (of: Unit): string | undefined => /^([A-Z]{3})1$/.exec(of.dimension)?.[1];

/**
 * @param own - Names of the cells that own lines may become, for suggestions.
 * @returns The first thing that is wrong, where something is: an unknown name, units that do not go together.
 */
export function buildFormula(node: FormulaNode, sheet: Sheet, own: ReadonlySet<string>): Expression | LineFault {
  switch (node.kind) {
    case "quantity": {
      const { value, unit: of, written } = node.value;
      return { kind: "number", unit: of, value, written: written ?? of };
    }
    case "name": {
      const cell = sheet.find(node.name);
      return cell ? expressionOf(cell) : unknownName(node, sheet, own);
    }
    case "negative": {
      const of = buildFormula(node.of, sheet, own);
      return of instanceof LineFault ? of : times(count(-1), of);
    }
    default: {
      const left = buildFormula(node.left, sheet, own);
      if (left instanceof LineFault) return left;
      const right = buildFormula(node.right, sheet, own);
      return right instanceof LineFault ? right : combine(node, left, right);
    }
  }
}

function unknownName({ name, at }: { name: string; at: number }, sheet: Sheet, own: ReadonlySet<string>): LineFault {
  const near = own.has(OWN_PREFIX + name)
    ? OWN_PREFIX + name
    : nearest(name, [...sheet.cells.map((cell) => cell.name), ...own]);
  const minusSign = name.includes("-") ? " A minus sign between names needs a space on either side." : "";
  return new LineFault(
    "unknown-name",
    `At character ${at + 1}, no cell is called ${quote(name)}.`,
    `${near ? `Did you mean ${near}?` : "Take a name from the sheet of an estimate."}${minusSign}`,
    name,
  );
}

/** Powers and parts beyond these measure nothing that a line could mean. */
const MOST_POWER = 4;
const MOST_PARTS = 5;

type Binary = FormulaNode & { readonly kind: "plus" | "minus" | "times" | "over" };

function combine({ kind, at }: Binary, left: Expression, right: Expression): Expression | LineFault {
  const place = `At character ${at + 1}`;
  if (kind === "plus" || kind === "minus") {
    if (left.unit.dimension === right.unit.dimension) return kind === "plus" ? plus(left, right) : minus(left, right);
    const both = `${measured(left.unit)} and ${measured(right.unit)}`;
    const code = moneyOf(left.unit) && moneyOf(right.unit) ? "currency-mix" : "wrong-dimension";
    return new LineFault(
      code,
      `${place}, ${both} cannot be ${kind === "plus" ? "added" : "subtracted"}.`,
      cureFor(left.unit, right.unit),
    );
  }
  const [one, other] = [currencyIn(left.unit), currencyIn(right.unit)];
  if (one !== undefined && other !== undefined && one !== other) {
    return new LineFault("currency-mix", `${place}, ${one} and ${other} meet.`, "Keep a line in one currency.");
  }
  const made = kind === "times" ? times(left, right) : over(left, right);
  const powers = [...made.unit.parts.values()];
  if (powers.length <= MOST_PARTS && powers.every((power) => Math.abs(power) <= MOST_POWER)) return made;
  return new LineFault(
    "wrong-dimension",
    `${place}, the formula comes to ${made.unit.symbol.slice(0, 40)}, which measures nothing.`,
    "Check which values are multiplied and which divided.",
  );
}

const currencyIn = (of: Unit): string | undefined =>
  [...of.parts.keys()].find((part) => minorDigits(part) !== undefined);

const measured = (of: Unit): string => describeDimension(of).replace(/, such as.*/, "");

/** What to do where hours on the clock and hours of work are taken for each other. */
export const HOURS_CURE = "Write person-h for hours of work; h is an hour on the clock.";

/** True for `USD·h/person-h`, which is 2 h × 18 USD/person-h; person-h ÷ h is a number of people. */
export function mixesHours(of: Unit): boolean {
  const has = (...names: string[]): boolean => names.some((name) => of.parts.has(name));
  return has("h", "min") && has("person-h", "person-min") && of.dimension !== "time-1 work1";
}

function cureFor(left: Unit, right: Unit): string {
  const hours = [left.dimension, right.dimension].sort().join(" ") === "time1 work1";
  return hours ? HOURS_CURE : `Give ${describeDimension(left)}, on both sides of the sign.`;
}
