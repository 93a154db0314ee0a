/** Counts on which code branches, overridden with what is no count: a fault that names the place, or an answer; never a bug. */
import { describe, expect, it, vi } from "vitest";
import { FaultError } from "../../src/estimate/faults.js";
import { estimated } from "../helpers/estimating.js";

/** Every count costs an estimate of its own. */
vi.setConfig({ testTimeout: 240_000 });

const body = {
  structure: { kind: "gable", span: "12 ft", length: "16 ft", floor: {}, walls: { sides: [{ side: "near" }] } },
  logs: [{ name: "pine", species: "eastern-white-pine", length: "12 ft", smallDiameter: "10 in" }],
  catalog: { demo: "orchard-yard" },
};

describe("a count that code branches on", () => {
  const { sheet } = estimated(body).basis;
  const counts = sheet.cells.filter(
    (cell) => cell.unit.symbol === "" && cell.kind !== "planned" && cell.value.isInteger() && sheet.isStructural(cell),
  );

  it("is asked for whole, in words that name the cell, where an override is not", () => {
    expect(counts.length).toBeGreaterThan(30);
    let refused = 0;
    for (const { name, value } of counts) {
      try {
        estimated({ ...body, overrides: { [name]: value.plus("0.5").toFixed() } });
      } catch (error) {
        expect(error, name).toBeInstanceOf(FaultError);
        refused += 1;
      }
    }
    expect(refused).toBeGreaterThan(20);
  });

  it("is told by its name", () => {
    const overrides = { "rough.rafters.spares": "0.5" };
    expect(() => estimated({ ...body, overrides })).toThrow(
      expect.objectContaining({ faults: [expect.objectContaining({ at: "/overrides/rough.rafters.spares" })] }),
    );
  });
});
