import { describe, expect, it } from "vitest";
import { nearMiss } from "../../../src/estimate/salvage/near-miss.js";
import type { SawGroup, SawingProblem, SawLog } from "../../../src/estimate/salvage/sawing-problem.js";

const sound = { smallEnd: 0, largeEnd: 0 };
const log = (name: string, inches: number, feet: number, more: Partial<SawLog> = {}): SawLog => ({
  name,
  species: "larch",
  length: feet * 192,
  smallDiameter: inches * 16,
  largeDiameter: inches * 16,
  sweep: 0,
  rot: sound,
  bark: 0,
  ...more,
});
const group = (inches: number, feet: number, more: Partial<SawGroup> = {}): SawGroup => ({
  name: "beam",
  thickness: inches * 16,
  width: inches * 16,
  length: feet * 192,
  count: 1,
  species: [],
  heart: "any",
  wane: 0,
  buy: { cash: 1, hours: 0 },
  ...more,
});
const ask = (logs: SawLog[], wanted: SawGroup, throat = 0, thinnestSlab = 0) => {
  const shop = {
    millKerf: 4,
    ripKerf: 2,
    crossKerf: 4,
    buckKerf: 6,
    deepestRip: 50,
    longestBolt: 16 * 192,
    throat,
    pith: 32,
    thinnestSlab,
  };
  return nearMiss({ gridMm: "1.5875", logs, groups: [wanted], shop } as unknown as SawingProblem, wanted);
};

describe("the nearest miss", () => {
  it("names the log that is too thin by least: 8 × 8 needs 8 √2 = 11.3137 in, 181.02 steps", () => {
    expect(ask([log("a", 10, 12), log("b", 11, 12)], group(8, 10))).toEqual({ lacks: "diameter", log: "b", by: 6 });
  });

  it("names the length that is lacking", () => {
    expect(ask([log("a", 20, 9)], group(4, 10))).toEqual({ lacks: "length", log: "a", by: 192 });
  });

  it("says that the mill is too short when the log is not", () => {
    expect(ask([log("a", 20, 20)], group(4, 18))).toEqual({ lacks: "bolt-length", log: "a", by: 384 });
  });

  it("says by how much the butt is too thick for the mill, bark included", () => {
    expect(ask([log("a", 20, 10, { bark: 8 })], group(4, 10), 320)).toEqual({ lacks: "throat", log: "a", by: 16 });
  });

  it("sees that no thickness gives a boxed heart where it is rotten", () => {
    const rotten = log("a", 20, 10, { rot: { smallEnd: 16, largeEnd: 64 } });
    expect(ask([rotten], group(6, 8, { heart: "boxed" }))).toEqual({ lacks: "sound-heart", log: "a" });
  });

  it("adds the sweep to the thickness that is needed: an 8 × 8 from a 12 in log that bows 1 in lacks 5.02 steps", () => {
    expect(ask([log("a", 12, 10, { sweep: 16 })], group(8, 10))).toEqual({ lacks: "diameter", log: "a", by: 6 });
  });

  it("says by how much a board is thinner than the mill saws, unless a saw rips it out of a thick slab", () => {
    const board = group(1, 8, { width: 4 * 16 });
    // The mill would rip a slab 4 in deep, for the saw takes 50 steps; out of one 3 in deep the saw rips the board.
    expect(ask([log("a", 12, 10)], board, 0, 20)).toEqual({ lacks: "mill-slab", log: "a", by: 4 });
    expect(ask([log("a", 12, 10)], { ...board, width: 3 * 16 }, 0, 20)).toEqual({ lacks: "nothing", log: "a" });
    expect(ask([log("a", 12, 10)], group(1, 8, { width: 18 }), 0, 20)).toEqual({ lacks: "mill-slab", log: "a", by: 2 });
  });

  it("lacks nothing where the log holds the piece, and a species where none serves", () => {
    expect(ask([log("a", 12, 10)], group(8, 10))).toEqual({ lacks: "nothing", log: "a" });
    expect(ask([log("a", 12, 10)], group(8, 10, { species: ["oak"] }))).toEqual({ lacks: "species" });
  });
});
