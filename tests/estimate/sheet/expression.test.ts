import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import {
  arctangent,
  cellsIn,
  count,
  greatest,
  least,
  minus,
  number,
  over,
  plus,
  root,
  roundMoney,
  roundUp,
  square,
  steps,
  sum,
  sumOr,
  tangent,
  times,
  when,
} from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { CANS, inputs } from "./kinds.js";

describe("units are worked out as the formula is built", () => {
  const { rise, run, price, eave, count: pieces, fee, area, paint, angle } = inputs(new Sheet());

  it.each([
    ["a length times a price per length is money", times(price, eave), "USD1"],
    ["a length times a length is an area", times(rise, run), "length2"],
    ["an area over a length is a length", over(area, run), "length1"],
    ["a length over a length is a number", over(rise, run), ""],
    ["money over a number is money", over(fee, pieces), "USD1"],
    ["an area over a volume is a coverage", over(area, paint), "length-1"],
    ["the square of a length is an area", square(run), "length2"],
    ["the root of an area is a length", root(area), "length1"],
    ["the root of a number is a number", root(pieces), ""],
    ["an arctangent is an angle", arctangent(over(rise, run)), "angle1"],
    ["a tangent is a number", tangent(angle), ""],
    ["a step table has the unit of its column", steps(paint, CANS, 0), "USD1"],
  ])("%s", (_, expression, dimension) => {
    expect(expression.unit.dimension).toBe(dimension);
  });

  it.each([
    ["feet plus dollars", () => plus(run, fee)],
    ["feet minus a number", () => minus(run, pieces)],
    ["a sum of feet and square feet", () => sum([run, area])],
    ["the least of feet and dollars", () => least(run, fee)],
    ["the greatest of feet and gallons", () => greatest(run, paint)],
    ["a comparison of feet with dollars", () => when(run, "atLeast", fee, run, run)],
    ["a choice between feet and dollars", () => when(run, "above", rise, run, fee)],
    ["the root of a volume", () => root(paint)],
    ["feet rounded up to whole gallons", () => roundUp(run, "gal")],
    ["feet rounded to the cent", () => roundMoney(run, 2)],
    ["a price a foot rounded to the cent", () => roundMoney(price, 2)],
    ["the arctangent of a length", () => arctangent(run)],
    ["the tangent of a length", () => tangent(run)],
    ["gallons looked up for feet", () => steps(run, CANS, 0)],
    ["dollars times euros", () => times(fee, number("5 EUR"))],
    ["a column that the table does not have", () => steps(paint, CANS, 2)],
    ["a table that begins at two", () => steps(paint, { ...CANS, rows: CANS.rows.slice(1) }, 0)],
    ["a table that goes down", () => steps(paint, { ...CANS, rows: [...CANS.rows].reverse() }, 0)],
    ["a sum of nothing", () => sum([])],
    ["a constant that is no quantity", () => number("5 furlong")],
  ])("%s throws", (_, build) => {
    expect(build).toThrow(Error);
  });

  it("an empty column is zero in the unit asked for", () => {
    expect(sumOr([], "USD")).toMatchObject({ unit: { symbol: "USD" } });
    expect(sumOr([run], "ft").kind).toBe("sum");
  });

  it("tells the cells of a formula, each once, in the order written", () => {
    const formula = when(run, "above", rise, plus(times(price, eave), fee), times(fee, over(run, rise), count(2)));
    expect(cellsIn(formula).map((cell) => cell.name)).toEqual(["run", "rise", "price", "eave", "fee"]);
  });

  it("keeps the unit that a constant is written in", () => {
    expect(number("8 in")).toMatchObject({ unit: { symbol: "mm" }, written: { symbol: "in" } });
    expect(exactly("8 in").value.toString()).toBe("203.2");
  });
});
