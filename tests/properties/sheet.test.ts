import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FaultError } from "../../src/estimate/faults.js";
import { decimal } from "../../src/estimate/quantity/decimal.js";
import { placesFor, pretty } from "../../src/estimate/quantity/text.js";
import { applyFactor, factorBetween } from "../../src/estimate/quantity/unit.js";
import { evaluateAgain } from "../../src/estimate/sheet/evaluate.js";
import { type Cell, cellsIn, type Expression, partsOf } from "../../src/estimate/sheet/expression.js";
import { type Draws, evaluateDraws, evaluateFloat } from "../../src/estimate/sheet/float64.js";
import { workbookFormula } from "../../src/estimate/sheet/workbook-formula.js";
import { workingOf } from "../../src/estimate/sheet/working.js";
import { upTo } from "../helpers/admissible.js";
import { workOutFormula } from "../judges/workbook-reader.js";
import { Decimal, type Meaning, namesBesideNumbers, readWorking, workOut } from "../judges/working-reader.js";
import { displayed, PACKS, type RandomSheet, randomSheet } from "./random-sheet.js";

const RUNS = { numRuns: 300 };

/** The same to one part in 10⁹, or to 10⁻⁹ about zero. */
function near(float: number, exact: InstanceType<typeof Decimal> | number): boolean {
  const expected = typeof exact === "number" ? exact : exact.toNumber();
  return Math.abs(float - expected) <= 1e-9 * Math.max(1e-3, Math.abs(expected));
}

/** Packs by going through them one after the other: shares nothing with the look-up that it checks. */
function packsByHand(column: string, need: InstanceType<typeof Decimal>): InstanceType<typeof Decimal> {
  const index = PACKS.columns.findIndex((heading) => heading.name === column);
  let left = need.toNumber();
  let total = new Decimal(0);
  if (left <= 0) return total;
  for (; left > PACKS.beyond.upTo; left -= PACKS.beyond.size) total = total.plus(PACKS.beyond.columns[index] ?? 0);
  const row = PACKS.rows.filter(({ from }) => from <= left).pop();
  return total.plus(row?.columns[index] ?? 0);
}

function meaningOf(cells: readonly Cell[]): Meaning {
  const byName = new Map(cells.map((cell) => [cell.name, cell]));
  const cell = (name: string) => {
    const of = byName.get(name) as Cell;
    const { num, den } = factorBetween(of.unit, of.display);
    return new Decimal(of.value.toFixed()).times(num.toFixed()).dividedBy(den.toFixed());
  };
  return { cell, table: (_, column, need) => packsByHand(column, need), places: 2 };
}

describe("a sheet at random", () => {
  it("is the same in floats and in decimals, round-ups included", () => {
    fc.assert(
      fc.property(randomSheet, ({ sheet }) => {
        const floats = new Map<Cell, Draws>();
        const leaves = sheet.cells.filter((cell) => !cell.expression);
        const draws = evaluateDraws(
          sheet.cells,
          new Map(leaves.map((cell) => [cell.name, new Float64Array(3).fill(cell.value.toNumber())])),
        );
        for (const cell of sheet.cells) {
          const single = cell.expression ? evaluateFloat(cell.expression, (c) => floats.get(c) as Draws) : undefined;
          floats.set(cell, single ?? cell.value.toNumber());
          expect([cell.name, near(floats.get(cell) as number, cell.value)]).toEqual([cell.name, true]);
          const many = draws.get(cell) as Draws;
          const last = typeof many === "number" ? many : (many[2] as number);
          expect([cell.name, near(last, cell.value)]).toEqual([cell.name, true]);
        }
      }),
      RUNS,
    );
  });

  it("has workings that, read back with names for exact cells, give the value", () => {
    fc.assert(
      fc.property(randomSheet, ({ sheet }) => {
        const meaning = meaningOf(sheet.cells);
        for (const cell of sheet.cells) {
          const working = workingOf(cell);
          if (!working) continue;
          const answer = workOut(readWorking(working.formula), meaning);
          const exact = displayed(cell);
          const error = answer.minus(exact.toFixed()).abs();
          const close = error.lte(Decimal.max(exact.abs().toFixed(), "1e-3").times("1e-30"));
          expect([working.formula, answer.toFixed(), close]).toEqual([working.formula, answer.toFixed(), true]);
        }
      }),
      RUNS,
    );
  });

  it("shows numbers in its workings that are correct roundings of their cells", () => {
    fc.assert(
      fc.property(randomSheet, ({ sheet }) => {
        const byName = new Map(sheet.cells.map((cell) => [cell.name, cell]));
        for (const cell of sheet.cells) {
          const working = workingOf(cell);
          if (!working) continue;
          const shown = namesBesideNumbers(readWorking(working.formula), readWorking(working.numbers));
          for (const [name, number] of [...shown, [cell.name, readWorking(working.answer)] as const]) {
            const of = byName.get(name) as Cell;
            if (number.kind !== "number") throw new Error(`${working.answer} is no number`);
            expect(number.unit).toBe(pretty(of.display));
            const rounded = displayed(of).toDecimalPlaces(placesFor(of.display));
            expect([name, number.value.toFixed()]).toEqual([name, rounded.plus(0).toFixed().replace(/^-0$/, "0")]);
          }
        }
      }),
      RUNS,
    );
  });

  it("has workbook formulas that a spreadsheet works out to the same", () => {
    fc.assert(
      fc.property(randomSheet, ({ sheet }) => {
        const reference = (cell: Cell) => cell.name.replaceAll(/[^a-z0-9]/g, "_");
        const workbook = new Map<string, number>();
        const floats = new Map<Cell, Draws>();
        for (const cell of sheet.cells) {
          const formula = workbookFormula(cell, reference);
          const value =
            formula === undefined ? undefined : workOutFormula(formula, (name) => workbook.get(name) as number);
          workbook.set(reference(cell), value ?? displayed(cell).toNumber());
          const float = cell.expression ? evaluateFloat(cell.expression, (c) => floats.get(c) as Draws) : undefined;
          floats.set(cell, float ?? cell.value.toNumber());
          const shown = applyFactor(decimal(floats.get(cell) as number), factorBetween(cell.unit, cell.display));
          const agrees = near(workbook.get(reference(cell)) as number, shown.toNumber());
          expect([formula, workbook.get(reference(cell)), agrees]).toEqual([
            formula,
            workbook.get(reference(cell)),
            true,
          ]);
        }
      }),
      RUNS,
    );
  });

  it("is the same evaluated again with a cell changed as laid anew with that override", () => {
    const change = fc.record({ at: fc.nat(), tenths: fc.integer({ min: 0, max: 40 }) });
    fc.assert(
      fc.property(randomSheet, change, (random, { at, tenths }) => {
        const cell = random.sheet.cells[at % random.sheet.cells.length] as Cell;
        const text = upTo(cell, displayed(cell).times(tenths).dividedBy(10).toDecimalPlaces(6)).toFixed();
        const anew = attempt(() => laidAnew(random, cell, text));
        const again = attempt(() => evaluatedAgain(random, cell, text));
        expect(again).toEqual(anew);
      }),
      RUNS,
    );
  });

  it("moves nothing but the dependents of a changed cell", () => {
    fc.assert(
      fc.property(randomSheet, fc.nat(), ({ sheet }, at) => {
        const cell = sheet.cells[at % sheet.cells.length] as Cell;
        const dependents = new Set(sheet.dependents(cell));
        for (const other of sheet.cells) {
          const names = other.expression ? cellsIn(other.expression) : [];
          expect(dependents.has(other)).toBe(names.some((part) => part === cell || dependents.has(part)));
        }
      }),
      RUNS,
    );
  });
});

const valuesOf = (cells: readonly Cell[], valueIn: (cell: Cell) => Decimal): string[] =>
  cells.map((cell) => `${cell.name} ${valueIn(cell).toFixed()}`);

function laidAnew(random: RandomSheet, cell: Cell, value: string): string[] {
  const sheet = random.relay(new Map([[cell.name, { value, unit: cell.display.symbol }]]));
  expect([...sheet.faults, ...sheet.overrideFaults()]).toEqual([]);
  expect(sheet.find(cell.name)?.kind).toBe("override");
  return valuesOf(sheet.cells, (c) => c.value);
}

function evaluatedAgain(random: RandomSheet, cell: Cell, value: string): string[] {
  const given = applyFactor(decimal(value), factorBetween(cell.display, cell.unit));
  const values = evaluateAgain(random.sheet.cells, new Map([[cell.name, given]]));
  return valuesOf(random.sheet.cells, values);
}

/** The values, or the fault that ended the work. */
function attempt(work: () => string[]): string[] {
  try {
    return work();
  } catch (error) {
    if (error instanceof FaultError) return error.faults.map((fault) => fault.wrong);
    throw error;
  }
}

describe("the sheets at random", () => {
  it("are of some size, and have every kind of node", () => {
    const kinds = new Map<string, number>();
    const count = (node: Expression): void => {
      kinds.set(node.kind, (kinds.get(node.kind) ?? 0) + 1);
      for (const part of partsOf(node)) count(part);
    };
    for (const { sheet } of fc.sample(randomSheet, { numRuns: 100, seed: 7 })) {
      for (const cell of sheet.cells) if (cell.expression) count(cell.expression);
    }
    const every =
      "number cell plus minus times over sum least greatest square root roundUp roundMoney arctangent tangent when steps";
    for (const kind of every.split(" ")) expect([kind, (kinds.get(kind) ?? 0) > 20]).toEqual([kind, true]);
  });
});
