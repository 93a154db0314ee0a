import { describe, expect, it } from "vitest";
import { estimated, THIN_LOG } from "../../helpers/estimating.js";

/** Every board is sold as dressed lumber is: 1 × 6 in measures 5 1/2 in across, 1 × 8 in 7 1/4 in. */
const board = (name: string, section: string) => ({
  name,
  species: "eastern-white-pine",
  section,
  sizing: "nominal",
  seasoning: "dry",
  sold: { by: "piece", lengths: [8, 12, 16].map((feet) => ({ length: `${feet} ft`, price: `$${feet}.00` })) },
});
const body = {
  structure: {
    kind: "gable",
    span: "16 ft",
    length: "24 ft",
    slope: { rise: "5 in", run: "12 in" },
    overhang: { eave: "12 in", gable: "12 in" },
    covering: "asphalt-shingles",
    deck: { kind: "solid-boards" },
    floor: {},
    walls: { sides: [{ side: "near" }] },
  },
  catalog: { name: "boards", currency: "USD", lumber: [board("six", "1 x 6 in"), board("eight", "1 x 8 in")] },
};

function counted(request: object) {
  const { basis, notices } = estimated(request);
  const { sheet } = basis;
  const rows = (name: string) => sheet.find(name)?.value.toFixed();
  const all = ["roof.deckRows", "floor.rows", "walls.near.boardsAcross"];
  return {
    laid: all.map(rows),
    bought: all.map((name) => rows(`${name}Bought`)),
    told: notices.filter(({ text }) => text.includes("those bought measure")).map(({ text }) => text),
  };
}

// (96 − 1 + 12) × 13 ÷ 12 = 115.9 in of slope: 20 boards of 6 in, 22 of 5 1/2 in. 192 in of floor with 1/4 in between:
// 31 and 34. 288 in of wall with laps of 1/2 in: 39 of 8 in, 43 of 7 1/4 in.
describe("boards that lie side by side", () => {
  it("are counted as wide as they are sold where they can only be bought", () => {
    expect(counted(body)).toEqual({ laid: ["22", "34", "43"], bought: [undefined, undefined, undefined], told: [] });
  });

  it("are counted as wide as they are milled where logs may serve, and a notice says what is short when they are bought", () => {
    const { laid, bought, told } = counted({ ...body, logs: [THIN_LOG] });
    expect(laid).toEqual(["20", "31", "39"]);
    expect(bought).toEqual(["22", "34", "43"]);
    expect(told).toEqual([
      expect.stringMatching(
        /^Deck boards are counted 6 in wide, .* 5 1\/2 in: .* 22 rows of deck boards, one slope in place of 20\./,
      ),
      expect.stringMatching(/^Floor boards .* 34 rows of boards in place of 31\./),
      expect.stringMatching(/^Wall boards .* 43 boards across, near side, in place of 39\./),
    ]);
  });

  it("are counted as they are laid out where nothing is sold", () => {
    const none = { ...body, catalog: { ...body.catalog, lumber: [] } };
    expect(counted(none).laid).toEqual(["20", "31", "39"]);
  });
});
