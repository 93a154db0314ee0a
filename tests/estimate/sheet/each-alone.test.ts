/** Many changes at once, each alone, against one evaluation in decimals for each of them. */
import { describe, expect, it } from "vitest";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import { leadingTo } from "../../../src/estimate/sheet/expression.js";
import { drawAt, evaluateEachAlone } from "../../../src/estimate/sheet/float64.js";
import { demoBody, estimated } from "../../helpers/estimating.js";

const { basis, routes } = estimated(demoBody("orchard-shelter"));
const all = basis.sheet.cells;
const wanted = [routes.mix.total, routes.buy.hours];
const cells = leadingTo(all, wanted);

describe("the cells that lead to some", () => {
  it("are all on which they hang, in the order laid, and no other", () => {
    const hangsOn = all.filter((cell) =>
      [cell, ...basis.sheet.dependents(cell)].some((later) => wanted.includes(later)),
    );
    expect(cells).toEqual(hangsOn);
    expect(cells.length).toBeLessThan(all.length);
  });
});

describe("changes that are each tried alone", () => {
  it("give what one change at a time gives in decimals, on the whole sheet", () => {
    const changes = cells.flatMap((cell) => (cell.range ? [{ cell, end: cell.range.high }] : [])).slice(0, 40);
    expect(changes.length).toBe(40);
    const draws = evaluateEachAlone(cells, changes);
    for (const [i, { cell, end }] of changes.entries()) {
      const again = evaluateAgain(all, new Map([[cell.name, end]]));
      for (const of of wanted) {
        const exact = again(of).toNumber();
        expect([cell.name, of.name, drawAt(draws.get(of), i) / exact]).toEqual([
          cell.name,
          of.name,
          expect.closeTo(1, 9),
        ]);
      }
    }
  });
});
