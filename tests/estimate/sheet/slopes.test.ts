/** Slopes against the quotient of small differences, which knows nothing of the chain rule. */
import { describe, expect, it } from "vitest";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { arctangent, over, roundMoney, roundUp, steps, times } from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { slopesOf } from "../../../src/estimate/sheet/slopes.js";
import { demoBody, estimated } from "../../helpers/estimating.js";
import { CANS, everyKind, inputs } from "./kinds.js";

/** (f(x + h) − f(x − h)) ÷ 2h, in exact decimals. */
function quotient(cells: readonly Cell[], of: Cell, by: Cell): number {
  const h = by.value.abs().times("1e-9").plus("1e-12");
  const at = (value: typeof h) => evaluateAgain(cells, new Map([[by.name, value]])).get(of) ?? of.value;
  return at(by.value.plus(h))
    .minus(at(by.value.minus(h)))
    .dividedBy(h.times(2))
    .toNumber();
}

describe("the slope of a cell", () => {
  it("is the quotient of small differences, for every kind of node that does not jump", () => {
    const sheet = new Sheet();
    const jumps = new Set(["roundUp", "roundMoney", "steps"]);
    const made = Object.entries(everyKind(sheet)).filter(([kind]) => !jumps.has(kind));
    const cells = made.map(([kind, { formula }]) => sheet.lay(`kind.${kind}`, formula));
    expect(cells.length).toBeGreaterThan(10);
    const given = sheet.cells.filter(({ expression }) => !expression);
    for (const cell of cells) {
      const slopes = slopesOf(sheet.cells, new Map([[cell, 1]]));
      for (const input of given) {
        const slope = quotient(sheet.cells, cell, input);
        expect([cell.name, input.name, slopes.get(input) ?? 0]).toEqual([
          cell.name,
          input.name,
          expect.closeTo(slope, Math.abs(slope) > 1 ? 3 : 6),
        ]);
      }
    }
  });

  it("looks through rounding, and takes packs by their best price", () => {
    const sheet = new Sheet();
    const { paint, price, rise, run } = inputs(sheet);
    const slope = (cell: Cell, by: Cell) => slopesOf(sheet.cells, new Map([[cell, 1]])).get(by) ?? 0;
    expect(slope(sheet.lay("up", roundUp(paint, "gal")), paint)).toBe(1);
    // A foot of it for each foot, and 9 in are three quarters of one.
    expect(slope(sheet.lay("money", roundMoney(times(price, rise), 2)), price)).toBeCloseTo(0.75, 9);
    // $40 for 5 gal are $8 a gallon; the sheet holds volumes in mm³.
    expect(slope(sheet.lay("cans", steps(paint, CANS, 0)), paint)).toBeCloseTo(8 / 231 / 25.4 ** 3, 15);
    expect(slope(sheet.lay("pitch", arctangent(over(rise, run))), rise)).toBeGreaterThan(0);
  });

  it("is that of a whole demo's total but for what packs and cents add", () => {
    const { basis, routes } = estimated(demoBody("market-stall"));
    const { cells } = basis.sheet;
    const total = routes.buy.total;
    const slopes = slopesOf(cells, new Map([[total, 1]]));
    const hour = basis.labor.valueOfHour;
    // Nothing is rounded between an hour's worth and the total.
    expect(slopes.get(hour)).toBeCloseTo(quotient(cells, total, hour), 4);
    const pace = basis.assumed.cell("pace");
    const more = evaluateAgain(cells, new Map([[pace.name, pace.value.plus(decimal("0.5"))]])).get(total);
    const moved = more?.minus(total.value).toNumber() ?? Number.NaN;
    expect((slopes.get(pace) ?? 0) * 0.5).toBeCloseTo(moved, 0);
  });
});
