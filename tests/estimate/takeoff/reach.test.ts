/** How far screws and nails reach where more than one piece lies between head and point, and in what wood they stand; by hand. */
import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

const gable = { kind: "gable", span: "12 ft", length: "24 ft" };
const battened = { ...gable, walls: { boards: "board-and-batten", sides: [{ side: "near" }] } };

/** Length of what holds a connection. */
function long(structure: object, cell: string, options: object = {}): string | undefined {
  const { sheet } = estimated({ structure, options }).basis;
  const found = sheet.find(`fasteners.${cell}`);
  return found && sheet.onTape(found);
}

describe("what goes through boards to the rails behind them", () => {
  it("bites there, not in the boards", () => {
    // Batten 1 in and board 1 in, then ten diameters of a No. 10 screw (0.19 in): 3.9 in.
    expect(long(battened, "wall-battens.crossing.screwLength")).toBe("4 in");
    expect(long(battened, "corner-boards.crossing.screwLength")).toBe("4 in");
    // The board below by itself: 2.9 in.
    expect(long(battened, "wall-boards.crossing.screwLength")).toBe("3 in");
    // 2 in and ten times 0.162 are 3.62 in: a 20d of 4 in is 0.192, 3.92; 16d of 3 1/2 in does not reach.
    expect(long(battened, "wall-battens.crossing.nail.length", { lightFixing: "nails" })).toBe("4 in");
  });
});

describe("planks that are halved end to end", () => {
  it("are screwed through both halves, and not out at the back", () => {
    // 2 in, less a sixth for what is sold as 2 in: 1.67, in steps of 1/2.
    expect(long(gable, "ridge.splice.screwLength")).toBe("1 1/2 in");
    expect(long(gable, "ridge.splice.screwLength", { lightFixing: "nails" })).toBe("1 1/2 in");
  });
});

describe("slats that are spliced", () => {
  it("take a screw of one step at the least", () => {
    const thin = { name: "thin", count: 4, section: "1/2 x 4 in", length: "8 ft", joint: "splice", runs: 2 };
    expect(long({ kind: "pieces", pieces: [thin] }, "thin.splice.screwLength")).toBe("1/2 in");
  });
});

describe("the class of fasteners", () => {
  const board = { name: "sign", role: "board", count: 1, section: "1 x 12 in", length: "6 ft" };
  const classOf = (species: string, more: object = {}) => {
    const { takeoffs } = estimated({
      structure: { kind: "pieces", pieces: [{ ...board, joint: "crossing", crossings: 2, ...more }] },
      catalog: {
        name: "A shelf",
        currency: "USD",
        lumber: [
          {
            name: "b",
            label: "b",
            section: "1 x 12 in",
            species,
            sold: { by: "piece", lengths: [{ length: "8 ft", price: "$9" }] },
          },
        ],
      },
    });
    return takeoffs.fasteners?.lines[0]?.exposure.tannin;
  };

  it("goes by the wood that is bought where nobody asks for one", () => {
    expect(classOf("western-redcedar")).toBe(true);
    expect(classOf("spruce-pine-fir")).toBe(false);
  });

  it("goes by the wood that is bought in the place of the one asked for", () => {
    expect(classOf("western-redcedar", { species: ["eastern-white-pine"] })).toBe(true);
  });
});
