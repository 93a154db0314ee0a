import { describe, expect, it } from "vitest";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { times } from "../../../src/estimate/sheet/expression.js";
import { layColumnSum, layLines } from "../../../src/estimate/sheet/rows.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";

const BOARDS = [
  { name: "shelf", length: "4 ft", count: "3" },
  { name: "back", length: "30 in", count: "2" },
];

describe("lines that repeat", () => {
  it("are laid from one template, named by block and key, and summed by column", () => {
    const sheet = new Sheet();
    const lines = layLines(
      "boards",
      BOARDS,
      (board) => board.name,
      (board, line) => {
        const length = sheet.input(`${line}.length`, exactly(board.length));
        const count = sheet.input(`${line}.count`, exactly(board.count));
        return { total: sheet.lay(`${line}.total`, times(length, count), { display: "ft" }) };
      },
    );
    const total = layColumnSum(sheet, "boards.total", lines, (line) => line.total, "ft", { display: "ft" });
    expect(sheet.cells.map((cell) => cell.name)).toEqual([
      ...["boards.shelf.length", "boards.shelf.count", "boards.shelf.total"],
      ...["boards.back.length", "boards.back.count", "boards.back.total", "boards.total"],
    ]);
    expect(sheet.workingLine(total)).toBe("boards.shelf.total + boards.back.total = 12 ft + 5 ft = 17 ft");
  });

  it("come to zero in the unit asked for where there are none", () => {
    const sheet = new Sheet();
    const total = layColumnSum(sheet, "boards.cost", [] as { cost: never }[], (line) => line.cost, "USD");
    expect(sheet.shown(total)).toBe("0.00 USD");
    expect(total.kind).toBe("formula");
  });
});
