import { describe, expect, it } from "vitest";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import type { LeanToShape } from "../../../src/estimate/request/structure-lean-to.js";
import type { PergolaShape } from "../../../src/estimate/request/structure-pergola.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { estimated } from "../../helpers/estimating.js";
import { laidPieces } from "../takeoff/shelter.js";
import { listed, refused } from "./structures.js";

const walled = (walls: GableShape["walls"]): GableShape => ({
  kind: "gable",
  span: "16 ft",
  length: "24 ft",
  eaveHeight: "8 ft",
  bays: 3,
  ...(walls && { walls }),
});

// 24 ft by 8 ft less 4 in clearance, so 92 in of 1 × 8 boards. Worked by hand.
describe("a boarded side", () => {
  it("has upright boards that lap by half an inch", () => {
    const all = listed(walled({ sides: [{ side: "near" }] }));
    // (288 − 0.5) ÷ 7.5 = 38.3: 39 boards. Rails (96 − 4) ÷ 36 = 2.6: 4 rows in three bays.
    expect(all["wall-boards-near"]).toEqual([39, "92.000"]);
    expect(all["wall-rails-near"]).toEqual([12, "96.000"]);
  });

  it("has a batten over every gap, one fewer than boards", () => {
    const all = listed(walled({ boards: "board-and-batten", sides: [{ side: "near" }] }));
    // (288 + 0.5) ÷ 8.5 = 33.9: 34 boards.
    expect([all["wall-boards-near"]?.[0], all["wall-battens-near"]?.[0]]).toEqual([34, 33]);
  });

  it("has level boards a bay long, and studs behind them", () => {
    const all = listed(walled({ boards: "horizontal", sides: [{ side: "near" }] }));
    // (92 − 1) ÷ 7 = 13 courses of three boards; ⌈96 ÷ 24⌉ − 1 = 3 studs in each of three bays.
    expect(all["wall-boards-near"]).toEqual([39, "96.000"]);
    expect(all["wall-studs-near"]).toEqual([9, "92.000"]);
  });

  it("has a stud below each joint of level boards that no post carries", () => {
    const all = listed({ ...walled({ boards: "horizontal", sides: [{ side: "near" }] }), bays: 1 });
    // 288 in of one bay in two boards; ⌈144 ÷ 24⌉ − 1 = 5 studs behind each, and one where they meet.
    expect([all["wall-boards-near"]?.[1], all["wall-studs-near"]]).toEqual(["144.000", [11, "92.000"]]);
    // Two bays of 144 in with boards of 8 ft at most: two in each, so that they meet over the post, too.
    const two = listed({
      ...walled({ boards: "horizontal", sides: [{ side: "near" }] }),
      bays: 2,
      longestPiece: "8 ft",
    });
    expect([two["wall-boards-near"]?.[1], two["wall-studs-near"]?.[0]]).toEqual(["72.000", 4 * 2 + 2]);
  });

  it("takes off what openings save: whole boards over their height", () => {
    const openings = [{ width: "3 ft", height: "6 ft 8 in" }];
    const all = listed(walled({ sides: [{ side: "near", openings }] }));
    // ⌊36 ÷ 7.5⌋ = 4 boards save 80 in each: (39 × 92 − 320) ÷ 92 = 35.5.
    expect(all["wall-boards-near"]?.[0]).toBe(36);
  });

  it("takes off the courses between sill and head, and the battens between an opening's edges", () => {
    const level = (sill?: string) => {
      const openings = [{ width: "4 ft", height: "29 in", count: 2, ...(sill && { sill }) }];
      return listed(walled({ boards: "horizontal", sides: [{ side: "near", openings }] }))["wall-boards-near"]?.[0];
    };
    // Courses of 7 in: four within 0 … 29 and 7 … 36 in, three within 10 … 39; each saves 2 × 48 in of 39 boards of 96 in.
    expect([level(), level("7 in"), level("10 in")]).toEqual([35, 35, 36]);
    const openings = [{ width: "17 in", height: "84 in", count: 2 }];
    const all = listed(walled({ boards: "board-and-batten", sides: [{ side: "near", openings }] }));
    // Two boards of 8.5 in each are out, and the batten between them; those over the openings' edges stay: (34 × 92 − 4 × 84)
    // ÷ 92 = 30.3 and (33 × 92 − 2 × 84) ÷ 92 = 31.2.
    expect([all["wall-boards-near"]?.[0], all["wall-battens-near"]?.[0]]).toEqual([31, 32]);
  });

  it("has studs across the ends of a lean-to as high as the roof lets them: two out of one piece", () => {
    const shed: LeanToShape = {
      kind: "lean-to",
      span: "8 ft",
      length: "16 ft",
      eaveHeight: "7 ft",
      slope: { rise: "9 in", run: "12 in" },
      longestPiece: "20 ft",
      walls: { boards: "horizontal", sides: [{ side: "left" }] },
    };
    const all = listed(shed);
    // ⌈96 ÷ 24⌉ − 1 = 3 studs; 80 in low and 149 in high come to 229 in for two. (114.5 + 0.5) ÷ 7 = 16.4: 17 courses.
    expect(all["wall-studs-left"]).toEqual([2, "229.000"]);
    expect(all["wall-boards-left"]).toEqual([17, "96.000"]);
  });

  it("follows the roof across the ends of a lean-to: two boards in turn from one piece", () => {
    const shed: LeanToShape = {
      kind: "lean-to",
      span: "8 ft",
      length: "16 ft",
      eaveHeight: "7 ft",
      slope: { rise: "9 in", run: "12 in" },
      longestPiece: "20 ft",
      walls: { sides: [{ side: "left" }] },
    };
    // 84 − 4 = 80 low, 153 − 4 = 149 high: 229 in for a pair. (96 − 0.5) ÷ 7.5 = 12.7: 13 boards, 6.5 pairs.
    expect(listed(shed)["wall-boards-left"]).toEqual([7, "229.000"]);
  });
});

// 16 ft at 9 in 12: 72 in of rise. A rafter 6 in deep, seated 2.5 in (6 ÷ (4 × 0.6)), stands 7.5 − 1.875 = 5.625 in above the
// plate; boards reach 2 in below it, so 7.625 in at the corners and 79.625 in at the peak. Worked by hand.
describe("a gable", () => {
  const steep = (walls: GableShape["walls"]): GableShape => ({
    ...walled(walls),
    slope: { rise: "9 in", run: "12 in" },
  });

  it("has boards cut aslant two out of one piece, and rails as long as it is wide there", () => {
    const all = listed(steep({ sides: [{ side: "left" }] }));
    expect(all["wall-boards-left"]).toEqual([26, "92.000"]);
    // (192 − 0.5) ÷ 7.5 = 25.5: 26 boards, 13 pairs of 7.625 + 79.625 in, and half a lap at 9 in 12.
    expect(all["wall-boards-left-gable"]).toEqual([13, "87.438"]);
    // Rails 36 and 72 in up: 192 − 2 × (36 − 7.625) × 12 ÷ 9, and 36 in up the slope less.
    expect(all["wall-rails-left-gable"]).toEqual([1, "116.333"]);
    expect(all["wall-rails-left-gable-2"]).toEqual([1, "20.333"]);
  });

  it("has courses that shorten towards the peak, and studs cut aslant two out of one piece", () => {
    const all = listed(steep({ boards: "horizontal", sides: [{ side: "left" }] }));
    // Courses of 7 in: two of 192 in, then 192 − (7 i − 7.625) × 8 ÷ 3 for i = 2 … 11: 1294 in; ÷ 96 in = 13.5.
    expect(all["wall-boards-left-gable"]).toEqual([14, "96.000"]);
    // 192 ÷ 24 = 8 bays: 7 studs, each notched over the rafter: 5.625 + 77.625 in for two.
    expect(all["wall-studs-left-gable"]).toEqual([4, "83.250"]);
  });

  it("is boarded alone, or left open, as the request says; a roof that does not rise has none", () => {
    const groups = (walls: GableShape["walls"], rise = "9 in") =>
      Object.keys(listed({ ...walled(walls), slope: { rise, run: "12 in" } })).filter((name) =>
        name.startsWith("wall-b"),
      );
    expect(groups({ sides: [{ side: "left", part: "gable" }] })).toEqual(["wall-boards-left-gable"]);
    expect(groups({ sides: [{ side: "left", part: "below-plate" }] })).toEqual(["wall-boards-left"]);
    expect(groups({ sides: [{ side: "left" }] }, "0 in")).toEqual(["wall-boards-left"]);
    expect(groups({ sides: [{ side: "near" }] })).toEqual(["wall-boards-near"]);
  });

  it("is refused on sides that have none, and with openings that stand below it", () => {
    const at = (walls: GableShape["walls"]) => refused(steep(walls)).map(([, place]) => place);
    expect(at({ sides: [{ side: "near", part: "gable" }] })).toEqual(["/structure/walls/sides/0/part"]);
    const openings = [{ width: "3 ft", height: "6 ft" }];
    expect(at({ sides: [{ side: "left", part: "gable", openings }] })).toEqual(["/structure/walls/sides/0/openings"]);
  });
});

describe("what frames a wall", () => {
  it("is two jambs and a header round a door, and a sill as well round a window", () => {
    const openings = [
      { width: "3 ft", height: "6 ft 8 in" },
      { width: "2 ft", height: "30 in", sill: "3 ft", count: 2 },
    ];
    const all = listed(walled({ sides: [{ side: "near", openings }] }));
    // Of 2 × 4 in: header and sill lie across both jambs.
    expect(all["opening-jambs-near"]).toEqual([2, "80.000"]);
    expect(all["opening-headers-near"]).toEqual([1, "40.000"]);
    expect(all["opening-jambs-near-2"]).toEqual([4, "30.000"]);
    expect(all["opening-headers-near-2"]).toEqual([4, "28.000"]);
  });

  it("is a corner board at either end, a long and a short one below a single slope", () => {
    expect(listed(walled({ sides: [{ side: "near" }] }))["corner-boards-near"]).toEqual([2, "92.000"]);
    const shed: LeanToShape = {
      kind: "lean-to",
      span: "8 ft",
      length: "16 ft",
      eaveHeight: "7 ft",
      slope: { rise: "9 in", run: "12 in" },
      longestPiece: "20 ft",
      walls: { sides: [{ side: "left" }] },
    };
    const all = listed(shed);
    // The short one, 4 in wide, rises by 4 × 69 ÷ 96 = 2.875 in to its inner edge.
    expect(all["corner-boards-left"]).toEqual([1, "82.875"]);
    expect(all["corner-boards-left-2"]).toEqual([1, "149.000"]);
    // (114.5 − 0) ÷ 36 = 3.2 up to the mean height of 80 and 149 in: 5 rows in one length each of 8 ft.
    expect(all["wall-rails-left"]).toEqual([5, "96.000"]);
  });
});

describe("the finish of a wall", () => {
  const coated = (walls: GableShape["walls"], group: string, groups: GableShape["groups"] = {}) => {
    const structure = { ...walled(walls), groups };
    const { sheet } = estimated({ structure, assumptions: { "finish.jointShare": "0 %" } }).basis;
    return sheet.in(sheet.find(`finish.${group}.area`) as Cell, "ft2").toFixed();
  };

  it("is brushed on what shows of one wide face, the edges and the ends, laps off", () => {
    // 39 boards of 1 × 8 in and 92 in, less a lap of 1/2 in and the edge in it: 39 × (92 × (8 + 2 − 1.5) + 2 × 8) = 31122 in².
    expect(coated({ sides: [{ side: "near" }] }, "wall-boards-near")).toBe("216.125");
    // Where all faces are wanted, laps are coated, too: 39 × (92 × 18 + 16) = 65208 in².
    const all = { "wall-boards": { hiddenFaces: "none" as const } };
    expect(coated({ sides: [{ side: "near" }] }, "wall-boards-near", all)).toMatch(/^452\.8333/);
  });

  it("leaves out what battens cover", () => {
    // Gaps of 1/2 in below battens of 2 in cover 3/4 in on either side and both edges: 34 × (92 × (8 + 2 − 1.5 − 2) + 16).
    expect(coated({ boards: "board-and-batten", sides: [{ side: "near" }] }, "wall-boards-near")).toMatch(/^144\.972/);
  });
});

describe("where openings stand", () => {
  const side = (openings: readonly Record<string, unknown>[], boards: "vertical" | "horizontal" = "vertical") =>
    walled({ boards, sides: [{ side: "near", openings: openings as never }] });
  const door = { width: "3 ft", height: "6 ft 8 in" };

  // Three bays of (288 − 6) ÷ 3 = 94 in between centres: clear from 6 to 94, 100 to 188 and 194 to 282.
  it("is the middle of the widest free bay, of bays alike the middle one, and beside one another where none is free", () => {
    const places = (openings: readonly Record<string, unknown>[]) => {
      const { sheet } = laidPieces(side(openings));
      return sheet.cells.filter(({ name }) => name.includes(".from")).map((cell) => sheet.in(cell, "in").toFixed(2));
    };
    expect(places([door])).toEqual(["126.00"]); // 100 + (88 − 36) ÷ 2
    expect(places([door, { ...door, width: "2 ft" }])).toEqual(["38.00", "126.00"]);
    // Four: two share the bay with most room left, three gaps of (88 − 36 − 36) ÷ 3.
    expect(
      places([
        { ...door, count: 3 },
        { ...door, width: "2 ft" },
      ])[0],
    ).toBe("32.00");
    expect(places([{ ...door, from: "8 in" }])).toEqual(["8.00"]);
    // Thirds of an inch, none of which ends: bays are alike all the same.
    const thirds: GableShape = { ...side([door]), length: "208 in", groups: { posts: { section: "4.5 x 4.5 in" } } };
    const { sheet } = laidPieces(thirds);
    expect(sheet.in(sheet.find("walls.near.opening1.from") as Cell, "in").toFixed(2)).toBe("86.00"); // 104 − 18
  });

  it("cuts rails there: a door through the lower three of four rows leaves three pairs of stubs", () => {
    const all = listed(side([door]));
    // Rows at 4, 34 2/3, 65 1/3 and 92 in; door and header reach to 4 + 80 + 2. 96 − 36 − 2 × 2 = 56.
    expect([all["wall-rails-near"], all["wall-rails-near-2"]]).toEqual([
      [9, "96.000"],
      [3, "56.000"],
    ]);
    // A window from 40 to 64 in is 38 to 66 with header and sill: rows of 4 in from 34 2/3 and from 65 1/3 in reach into it.
    const window = listed(side([{ width: "3 ft", height: "2 ft", sill: "3 ft" }]));
    expect([window["wall-rails-near"]?.[0], window["wall-rails-near-2"]?.[0]]).toEqual([10, 2]);
  });

  it("cuts studs there: what is above a door, or above and below a window, is left of each", () => {
    const all = listed(side([door], "horizontal"));
    // Studs at 120, 144 and 168 in behind the middle board; between 124 and 164 there is one. 92 − 80 − 2 = 10.
    expect([all["wall-studs-near"], all["wall-studs-near-2"]]).toEqual([
      [8, "92.000"],
      [1, "10.000"],
    ]);
    const window = listed(side([{ width: "5 ft", height: "2 ft", sill: "3 ft" }], "horizontal"));
    expect([window["wall-studs-near"]?.[0], window["wall-studs-near-2"]]).toEqual([6, [3, "64.000"]]); // 92 − 24 − 2 × 2
  });

  it("is refused where a post stands, where another opening does, and for several at once", () => {
    const faultOf = (openings: readonly Record<string, unknown>[]) => refused(side(openings))[0];
    expect(faultOf([{ ...door, from: "70 in" }])).toEqual([
      "cannot-build",
      "/structure/walls/sides/0/openings/0/from",
      expect.stringMatching(/From 5' 10" to 8' 10" a post would stand/),
    ]);
    expect(
      faultOf([
        { ...door, from: "10 in" },
        { ...door, from: "48 in" },
      ])?.[1],
    ).toMatch(/openings\/1\/from$/);
    expect(faultOf([{ ...door, from: "10 in", count: 2 }])?.[1]).toMatch(/openings\/0\/count$/);
    expect(faultOf([{ ...door, count: 8 }])?.[1]).toMatch(/openings\/0\/width$/);
  });
});

describe("a wall of a pergola", () => {
  const pergola = (walls: NonNullable<PergolaShape["walls"]>): PergolaShape => ({
    ...{ kind: "pergola", span: "10 ft", length: "16 ft", height: "8 ft", bays: 2, walls },
  });

  it("is boarded along the beams to their tops, and across the ends to their undersides, past which they reach", () => {
    const all = listed(pergola({ sides: [{ side: "near" }, { side: "left" }] }));
    // (192 − 0.5) ÷ 7.5 = 25.5: 26 boards of 96 − 4; (120 − 0.5) ÷ 7.5 = 15.9: 16 of 96 − 8 − 4.
    expect([all["wall-boards-near"], all["wall-boards-left"]]).toEqual([
      [26, "92.000"],
      [16, "84.000"],
    ]);
  });

  it("has a head rail where no beam lies over level boards", () => {
    const all = listed(pergola({ boards: "horizontal", sides: [{ side: "far" }, { side: "right" }] }));
    // (84 − 1) ÷ 7 = 11.9: 12 courses; four studs between the corners, ⌈120 ÷ 24⌉ − 1.
    expect([all["wall-boards-right"], all["wall-studs-right"], all["wall-rails-right"]]).toEqual([
      [12, "120.000"],
      [4, "84.000"],
      [1, "120.000"],
    ]);
    expect(Object.keys(all)).not.toContain("wall-rails-far");
  });
});

describe("a wall that can't be boarded", () => {
  const of = (openings: { width: string; height: string; count?: number }[]) =>
    refused(walled({ sides: [{ side: "near", openings }] }));

  it("names an opening that is higher or wider than its wall, and the limit", () => {
    const [tall] = of([{ width: "3 ft", height: "9 ft" }]);
    expect(tall?.[1]).toBe("/structure/walls/sides/0/openings/0/height");
    expect(tall?.[2]).toContain("7' 8\"");
    const [wide] = of([
      { width: "7 ft", height: "6 ft" },
      { width: "6 ft", height: "6 ft", count: 3 },
    ]);
    expect(wide?.[1]).toBe("/structure/walls/sides/0/openings/1/width");
    expect(wide?.[2]).toContain("24'");
  });

  it("names an opening that would cut the beam over it, and what room there is", () => {
    // 96 in less 4 in to the boards and a beam of 8 in.
    expect(of([{ width: "3 ft", height: "7 ft 2 in" }])).toEqual([
      [
        "cannot-build",
        "/structure/walls/sides/0/openings/0/height",
        expect.stringMatching(/cut the beam .* room for 7'\./),
      ],
    ]);
    expect(listed(walled({ sides: [{ side: "near", openings: [{ width: "3 ft", height: "7 ft" }] }] }))).toBeDefined();
  });

  it("names an opening that a post would stand in, and how wide the widest bay is", () => {
    // (288 − 6) ÷ 3 − 6 = 88 in clear in each of three bays; 24 ft less two posts in one.
    const [wide, ...more] = of([{ width: "12 ft", height: "6 ft" }]);
    expect([wide?.[1], more]).toEqual(["/structure/walls/sides/0/openings/0/width", []]);
    expect(wide?.[2]).toContain("7' 4\"");
    expect(of([{ width: "88 in", height: "6 ft" }])).toEqual([]);
    expect(of([{ width: "88.1 in", height: "6 ft" }])).toHaveLength(1);
    const opened = walled({ sides: [{ side: "near", openings: [{ width: "12 ft", height: "6 ft" }] }] });
    expect(refused({ ...opened, bays: 1 })).toEqual([]);
    // Unlike bays: the last takes 282 − 2 × 60 = 162 in, 156 in clear.
    expect(refused({ ...opened, bays: 3, bayLengths: ["60 in", "60 in"] })).toEqual([]);
    expect(refused({ ...opened, bays: 3, bayLengths: ["90 in", "90 in"] })[0]?.[2]).toContain("8'");
  });

  it("names an opening across an end that its middle posts would stand in", () => {
    const shed = { kind: "lean-to", span: "8 ft", length: "16 ft", endBays: 2 } as const;
    const walls = (width: string): LeanToShape["walls"] => ({
      sides: [{ side: "left", openings: [{ width, height: "5 ft" }] }],
    });
    // (96 − 6) ÷ 2 − 6 = 39 in.
    expect(refused({ ...shed, walls: walls("39 in") })).toEqual([]);
    expect(refused({ ...shed, walls: walls("40 in") })[0]?.[2]).toContain("3' 3\"");
  });

  it("names a lap that leaves nothing to cover, and a side that is named twice", () => {
    expect(refused(walled({ lap: "4 in", sides: [{ side: "near" }] })).map(([, at]) => at)).toEqual([
      "/structure/walls/lap",
    ]);
    expect(refused(walled({ sides: [{ side: "near" }, { side: "near" }] })).map(([code]) => code)).toEqual([
      "duplicate-name",
    ]);
  });
});

describe("a floor", () => {
  it("has bearers along, joists across and boards along", () => {
    const { bearers: _, ...all } = listed({ ...walled(undefined), floor: { joistSpacing: "16 in", gap: "1/4 in" } });
    // (288 − 2) ÷ 16 = 17.9: 18 spaces. (192 + 0.25) ÷ 6.25 = 30.8: 31 rows.
    expect(all.joists).toEqual([19, "192.000"]);
    const rows = Object.entries(all).filter(([name]) => name.startsWith("floor-boards"));
    const whole = rows.reduce((sum, [, row]) => sum + Number(row?.[0]) * Number(row?.[1]), 0);
    expect(whole).toBeCloseTo(31 * 288, 1);
  });

  it("refuses joists in one another's place", () => {
    expect(refused({ ...walled(undefined), floor: { joistSpacing: "2 in" } }).map(([, at]) => at)).toEqual([
      "/structure/floor/joistSpacing",
    ]);
  });
});
