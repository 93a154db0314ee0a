/** Screws at the ends of studs and rails, counted by hand member by member: two that are cut out of one piece have four ends. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { layTakeoffs } from "../../../src/estimate/takeoffs.js";
import { request } from "../../helpers/estimating.js";

function endsOf(structure: object): Record<string, string | undefined> {
  const sheet = new Sheet();
  layTakeoffs(layBasis(sheet, request({ structure })));
  const sites = sheet.cells.filter(({ name }) => /^fasteners\.wall-(?:studs|rails)\.ends\.sites$/.test(name));
  return Object.fromEntries(sites.map(({ name, value }) => [name.split(".")[1], value.toFixed()]));
}

const GABLE = { kind: "gable", span: "16 ft", length: "24 ft" };
const wall = (boards: string, side: object) => ({ walls: { boards, sides: [side] } });
const window = { width: "3 ft", height: "3 ft", sill: "3 ft" };

describe("the ends of what stands behind boards", () => {
  it.each([
    // 3 m at 600 mm: four studs between the posts, out of two pieces.
    [
      "of a lean-to's end",
      { kind: "lean-to", span: "3 m", length: "6 m", ...wall("horizontal", { side: "left" }) },
      { "wall-studs": "8" },
    ],
    // 16 ft at 24 in: seven studs, out of four pieces, the last of which gives one.
    ["of a gable alone", { ...GABLE, ...wall("horizontal", { side: "left", part: "gable" }) }, { "wall-studs": "14" }],
    // Three bays of 8 ft at 24 in: nine studs, of which the window cuts one, into one above it and one below.
    [
      "around a window",
      { ...GABLE, ...wall("horizontal", { side: "near", openings: [window] }) },
      { "wall-studs": "20" },
    ],
    // Three bays of four rails: twelve, of which the window cuts two, into one on either side of it.
    [
      "of rails at a window",
      { ...GABLE, ...wall("vertical", { side: "near", openings: [window] }) },
      { "wall-rails": "28" },
    ],
  ])("%s are counted one by one", (_, structure, ends) => {
    expect(endsOf(structure)).toMatchObject(ends);
  });
});
