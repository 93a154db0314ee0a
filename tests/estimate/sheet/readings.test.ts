import { describe, expect, it } from "vitest";
import { inUnit } from "../../../src/estimate/quantity/quantity.js";
import { expressionOf } from "../../../src/estimate/sheet/expression.js";
import { type Draws, evaluateDraws, evaluateFloat } from "../../../src/estimate/sheet/float64.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { workbookFormula } from "../../../src/estimate/sheet/workbook-formula.js";
import { workOutFormula } from "../../judges/workbook-reader.js";
import { everyKind } from "./kinds.js";

const KINDS = Object.keys(everyKind(new Sheet()));

function laid(kind: string) {
  const sheet = new Sheet();
  const readings = everyKind(sheet)[kind] as ReturnType<typeof everyKind>[string];
  const cell = sheet.lay("answer", readings.formula, { display: readings.display ?? "" });
  return { sheet, readings, cell };
}

describe("each kind of node in its five readings", () => {
  it("has all seventeen kinds", () => {
    const kinds = Object.values(everyKind(new Sheet())).map((readings) => expressionOf(readings.formula).kind);
    expect(kinds).toEqual(KINDS);
    expect(KINDS).toHaveLength(17);
  });

  it.each(KINDS)("%s: the exact value", (kind) => {
    const { sheet, readings, cell } = laid(kind);
    expect(sheet.in(cell, readings.unit).toDecimalPlaces(30).toString()).toBe(readings.value);
  });

  it.each(KINDS)("%s: the unit", (kind) => {
    const { readings, cell } = laid(kind);
    expect(inUnit({ value: cell.value, unit: cell.unit }, readings.unit).isFinite()).toBe(true);
    expect(cell.display.symbol).toBe(readings.unit);
  });

  it.each(KINDS)("%s: the working", (kind) => {
    const { sheet, readings, cell } = laid(kind);
    expect(sheet.workingLine(cell)).toBe(readings.working);
  });

  it.each(KINDS)("%s: the workbook formula, and what a spreadsheet makes of it", (kind) => {
    const { sheet, readings, cell } = laid(kind);
    const formula = workbookFormula(cell, (other) => other.name) as string;
    expect(formula).toBe(readings.workbook);
    const named = (name: string) => {
      const other = sheet.find(name);
      return other ? inUnit({ value: other.value, unit: other.unit }, other.display).toNumber() : Number.NaN;
    };
    expect(workOutFormula(formula, named)).toBeCloseTo(Number(readings.value), 12);
  });

  it.each(KINDS)("%s: floats, one and many", (kind) => {
    const { sheet, readings, cell } = laid(kind);
    const expected = Number(readings.value);
    const shown = (draws: Draws, at: number) => {
      const value = typeof draws === "number" ? draws : (draws[at] as number);
      return value * inUnit({ value: cell.value.mul(0).plus(1), unit: cell.unit }, cell.display).toNumber();
    };
    const single = evaluateFloat(cell.expression as never, (other) => other.value.toNumber());
    expect(shown(single, 0)).toBeCloseTo(expected, 9);
    const draws = new Map(
      sheet.cells.filter((c) => !c.expression).map((c) => [c.name, new Float64Array(4).fill(c.value.toNumber())]),
    );
    const many = evaluateDraws(sheet.cells, draws).get(cell) as Draws;
    expect(typeof many === "number").toBe(kind === "number");
    expect(shown(many, 3)).toBeCloseTo(expected, 9);
  });
});
