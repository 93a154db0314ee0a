/** Members below a slope that no piece holds two of, worked out by hand. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { request } from "../../helpers/estimating.js";

/** Groups as `name: count of millimetres`. */
function wallsOf(structure: object, bases: RegExp): string[] {
  const { sheet, cutList } = layBasis(new Sheet(), request({ structure }));
  return cutList.groups
    .filter(({ name }) => bases.test(name))
    .map(
      ({ name, count, length }) => `${name}: ${sheet.decide(count).toFixed()} of ${sheet.decide(length).toFixed(1)}`,
    );
}

/** Posts of 2 m below the low beam; the slope rises 1 in 4 over the 2.3 m that the posts of 100 mm stand apart, middle to middle. */
const leanTo = (longestPiece: string, boards: string) => ({
  kind: "lean-to",
  span: "2.4 m",
  length: "7.2 m",
  eaveHeight: "2 m",
  slope: { rise: "75 mm", run: "300 mm" },
  longestPiece,
  groups: { "wall-boards": { section: "25 x 200 mm" } },
  walls: { boards, lap: "10 mm", sides: [{ side: "left" }] },
});

describe("boards and studs below one slope", () => {
  // From 100 mm above the ground to 2,000 and to 2,575 mm: 1,900 and 2,475. Boards of 200 with gaps of 10: twelve in 2.4 m.
  it("come two out of one piece where one is as long", () => {
    expect(wallsOf(leanTo("5 m", "board-and-batten"), /^wall-(?:boards|battens)/)).toEqual([
      "wall-boards-left: 6 of 4375.0",
      "wall-battens-left: 6 of 4375.0",
    ]);
  });

  it("come in two halves where none is, the lower up to the middle", () => {
    expect(wallsOf(leanTo("4 m", "board-and-batten"), /^wall-(?:boards|battens)/)).toEqual([
      "wall-boards-left: 6 of 2475.0",
      "wall-boards-left-lower: 6 of 2187.5",
      "wall-battens-left: 6 of 2475.0",
      "wall-battens-left-lower: 5 of 2187.5",
    ]);
  });

  it("that lap reach half a lap past the middle", () => {
    // Boards of 190 of their own: (2,400 − 10) ÷ 190 are thirteen; 575 over 2,400 rise 1.2 in half a lap of 5.
    expect(wallsOf(leanTo("4 m", "vertical"), /^wall-boards/)).toEqual([
      "wall-boards-left: 7 of 2475.0",
      "wall-boards-left-lower: 6 of 2188.7",
    ]);
  });

  it("stand behind level boards by themselves as well", () => {
    // 2.4 m at 600: three studs, of which one stands in the lower half.
    expect(wallsOf(leanTo("4 m", "horizontal"), /^wall-studs/)).toEqual([
      "wall-studs-left: 2 of 2475.0",
      "wall-studs-left-lower: 1 of 2187.5",
    ]);
  });
});

describe("boards of a gable", () => {
  it("come in two halves of both slopes where no piece holds two", () => {
    const gable = (longestPiece: string) => ({
      ...{ kind: "gable", span: "16 ft", length: "24 ft", longestPiece },
      walls: { boards: "board-and-batten", sides: [{ side: "left", part: "gable" }] },
    });
    const counts = (longestPiece: string) =>
      wallsOf(gable(longestPiece), /^wall-boards/).map((one) => one.replace(/ of .*/, ""));
    // 192 in of boards of 8 with gaps of 1/2 are 23: eleven on either slope, of which five are in the lower half.
    expect(counts("16 ft")).toEqual(["wall-boards-left-gable: 12"]);
    expect(counts("3 ft")).toEqual(["wall-boards-left-gable: 13", "wall-boards-left-gable-lower: 10"]);
    // Two out of one piece are the lowest and the highest; the middle of a slope is half of both.
    const lengths = ["16 ft", "3 ft"].flatMap((one) =>
      wallsOf(gable(one), /^wall-boards/).map((text) => Number(text.replace(/.* /, ""))),
    );
    expect(lengths[2]).toBeCloseTo((lengths[0] as number) / 2, 0);
  });
});
