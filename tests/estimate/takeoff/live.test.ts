import { describe, expect, it } from "vitest";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { exactly } from "../../../src/estimate/quantity/text.js";
import { evaluateAgain } from "../../../src/estimate/sheet/evaluate.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import type { OverrideText } from "../../../src/estimate/sheet/overriding.js";
import { coveredGable } from "../../../src/estimate/takeoff/covered-roof.js";
import { layCovering } from "../../../src/estimate/takeoff/covering.js";
import { layFasteners, layGableSupports } from "../../../src/estimate/takeoff/fasteners.js";
import { endSealer, layFaces, layFinish } from "../../../src/estimate/takeoff/finish.js";
import { layWeights } from "../../../src/estimate/takeoff/weight.js";
import { upTo } from "../../helpers/admissible.js";
import { laidGable } from "./shelter.js";

/** A roof flat enough to seal its laps, and all four takeoffs of it. */
function everything(overrides: Readonly<Record<string, OverrideText>> = {}) {
  const shape = { slope: { rise: "2 in", run: "12 in" }, span: "20 ft" };
  const { sheet, gable, groups, assumed, defaults, units } = laidGable(shape, { overrides });
  const exposure = { climate: "outdoors", treated: false, tannin: false } as const;
  layCovering(sheet, { kind: "ribbed-steel", roof: coveredGable(sheet, gable), exposure, assumed, defaults }, units);
  const supportsApart = layGableSupports(sheet, gable, units);
  const exposureOf = () => exposure;
  layFasteners(
    sheet,
    { groups, exposureOf, runs: { beams: 2, ridge: 1 }, supportsApart, light: "screws", assumed, defaults },
    units,
  );
  layFinish(sheet, { kind: "paint", assumed }, layFaces(sheet, groups, assumed, units), units);
  endSealer(sheet, groups, assumed, units);
  const densities = {
    green: sheet.input("wood.green", exactly("50 lb/ft3")),
    dry: sheet.input("wood.dry", exactly("30 lb/ft3")),
  };
  layWeights(sheet, { groups, densitiesOf: () => densities, assumed }, units);
  return sheet;
}

/** A tenth more, counts whole. */
const more = (cell: Cell) => upTo(cell, cell.value.times("1.1").plus("0.01").toDecimalPlaces(9));

describe("every live cell of the takeoffs", () => {
  it("gives on being changed what laying anew with it gives", () => {
    const sheet = everything();
    const live = sheet.cells.filter((cell) => !sheet.isStructural(cell));
    const leaves = live.filter((cell) => !cell.expression);
    expect(leaves.length).toBeGreaterThan(30);
    for (const cell of leaves) {
      const value = more(cell);
      const again = evaluateAgain(sheet.cells, new Map([[cell.name, decimal(value.toFixed())]]));
      const anew = everything({ [cell.name]: { value: value.toFixed(), unit: cell.unit.symbol } });
      const wrong = sheet.cells.filter((each) => !again(each).eq(anew.find(each.name)?.value ?? Number.NaN));
      expect([cell.name, wrong.map((each) => each.name)]).toEqual([cell.name, []]);
    }
  });

  it("is not what code branches on: sizes, laps, counts a joint and coverage are live", () => {
    const sheet = everything();
    const names = [
      "covering.coverWidth",
      "covering.trimLap",
      "covering.ridgeGap",
      "covering.screwsPerRow",
      "fastener.spare",
      "fastener.lapBolts",
      "finish.roughCoverage",
      "finish.smoothCoats",
      "carry.load",
      "wood.green",
    ];
    for (const name of names) expect([name, sheet.isStructural(sheet.find(name) as Cell)]).toEqual([name, false]);
  });
});
