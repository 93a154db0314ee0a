import { describe, expect, it } from "vitest";
import { FaultError } from "../../../src/estimate/faults.js";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import { laidGable } from "../takeoff/shelter.js";

/** Count and length in inches of every group. */
function listed(shape: Partial<GableShape> = {}) {
  const { sheet, groups } = laidGable(shape);
  return Object.fromEntries(
    groups.map((group) => [group.name, [group.count.value.toNumber(), sheet.in(group.length, "in").toFixed(3)]]),
  );
}

// 16 × 24 ft, plate's top at 8 ft, 5 in 12 (13 in of rafter a foot of run), 12 in of overhang all round, 3 bays, rafters
// and purlins 24 in apart, default sections. Every figure is worked by hand in the comment beside it.
describe("the pieces of a 16 × 24 ft gable", () => {
  const all = listed();

  it("has four pairs of posts, each up to the beam's underside", () => {
    expect(all.posts).toEqual([8, "88.000"]); // 96 − 8
  });

  it("has plate beams the whole roof long, joined over posts", () => {
    // Posts (288 − 6) ÷ 3 = 94 in apart; an end piece reaches 6 ÷ 2 + 12 past its last post: 109. 2 × (109 + 94 + 109) = 624.
    expect(all["beams-end"]).toEqual([4, "109.000"]);
    expect(all["beams-middle"]).toEqual([2, "94.000"]);
  });

  it("has a beam across each end and a tie across each inner pair of posts", () => {
    expect(all["gable-beams"]).toEqual([2, "192.000"]);
    expect(all.ties).toEqual([2, "192.000"]);
  });

  it("has a brace in each corner of post and beam, both ways", () => {
    // Lengthwise two a bay and side: 12. Across two a frame: 8. At 45° the long points are 30 √2 in apart.
    expect(all.braces).toEqual([20, (30 * Math.SQRT2).toFixed(3)]);
  });

  it("has 13 pairs of rafters, and a fly rafter at each of four corners", () => {
    // (288 − 2) ÷ 24 = 11.9: 12 spaces. (96 − 1 + 12) × 13 ÷ 12 = 115.917, and 6 × 5 ÷ 12 = 2.5 for the plumb cut.
    expect(all.rafters).toEqual([26, "118.417"]);
    expect(all["fly-rafters"]).toEqual([4, "118.417"]);
  });

  it("has ridge and purlins in three pieces, joined over rafters", () => {
    // Rafters 286 ÷ 12 = 23.833 in apart; 12 bays in three pieces of four: 95.333; an end reaches 1 + 12 further.
    expect(all["ridge-end"]).toEqual([2, "108.333"]);
    expect(all["ridge-middle"]).toEqual([1, "95.333"]);
    // (115.917 − 4) ÷ 24 = 4.66: 5 spaces, 6 rows a slope, 12 in all.
    expect(all["purlins-end"]).toEqual([24, "108.333"]);
    expect(all["purlins-middle"]).toEqual([12, "95.333"]);
    expect(2 * 108.333 + 95.333).toBeCloseTo(288 + 24, 2);
  });

  it("has fascia along both eaves and up the four rakes", () => {
    expect(all["eave-fascia-end"]).toEqual([4, "108.333"]);
    // Up to the peak, in front of the ridge: (96 + 12) × 13 ÷ 12 = 117, and 2.5 for the plumb cut of a 6 in fascia.
    expect(all["rake-fascia"]).toEqual([4, "119.500"]);
  });
});

describe("a gable's choices", () => {
  it("has no fly rafters without a gable overhang, and the beams end at the posts' faces", () => {
    const flush = listed({ overhang: { gable: "0 in" } });
    expect(flush["fly-rafters"]).toBeUndefined();
    expect(flush["beams-end"]).toEqual([4, "97.000"]); // 94 + 3
  });

  it("has its last rafter bay short where that is wished, and the run is as long as before", () => {
    const short = listed({ rafterBays: "short-last", longestPiece: "30 ft" });
    // One piece over all: 12 × 24 + 13 + (13 − 2), for 288 is 2 in more than the 286 between outer rafters.
    expect(short.ridge).toEqual([1, "312.000"]);
    expect(listed({ longestPiece: "30 ft" }).ridge).toEqual([1, "312.000"]);
  });

  it("counts bays that nobody gave by the longest bay, 8 ft", () => {
    expect(listed({ length: "24 ft" }).posts?.[0]).toBe(8);
    expect(listed({ length: "24 ft 1 in" }).posts?.[0]).toBe(10);
  });

  it("replaces what the settings of a group say, and leaves out what they remove", () => {
    const own = listed({ groups: { braces: { remove: true }, ties: { count: 5, length: "17 ft" } } });
    expect(own.braces).toBeUndefined();
    expect(own.ties).toEqual([5, "204.000"]);
  });

  it("has rafters of two lengths where its eaves differ, and rows for each slope", () => {
    const wide = listed({ overhang: { eave: "12 in", farEave: "24 in" } });
    // A foot more of overhang is 13 in more of rafter: 118.417 and 131.417.
    expect(wide["rafters-near"]).toEqual([13, "118.417"]);
    expect(wide["rafters-far"]).toEqual([13, "131.417"]);
    expect(wide["rake-fascia-far"]?.[0]).toBe(2);
    // 6 rows on the near slope; (128.917 − 4) ÷ 24 = 5.2: 6 spaces, 7 rows on the far one.
    expect(wide["purlins-middle"]?.[0]).toBe(6 + 7);
  });

  it("has posts between the corners of its ends where they are wished", () => {
    expect(listed({ endBays: 3 })["end-posts"]).toEqual([4, "88.000"]);
  });

  it("has no piece past the longest where two meet over a post: one over all would reach past both ends", () => {
    // Two bays of 93 in and 2 × 15 in of ends: 216 in, over a longest of 17 ft 6 in.
    expect(listed({ length: "16 ft", bays: 2, longestPiece: "17 ft 6 in" }).beams).toEqual([4, "108.000"]);
  });

  it("has bays of unlike lengths: posts, ties and braces at each, the plates joined over posts", () => {
    // 288 − 6 = 282 in between outer centres: 8 ft, 10 ft, and 66 in left. 12 ft at most in a piece.
    const unlike = listed({ bayLengths: ["8 ft", "10 ft"] });
    expect(unlike.posts).toEqual([8, "88.000"]);
    expect(unlike.ties).toEqual([2, "192.000"]);
    expect(unlike.braces?.[0]).toBe(20);
    expect(unlike["beams-end"]).toEqual([2, "111.000"]); // 96 + 3 + 12
    expect(unlike["beams-middle"]).toEqual([2, "120.000"]);
    expect(unlike["beams-last"]).toEqual([2, "81.000"]); // 66 + 15
  });

  it("has boards and rails of a wall for each length of bay", () => {
    const walled = (boards: "horizontal" | "vertical") =>
      listed({ bayLengths: ["8 ft", "10 ft"], walls: { boards, sides: [{ side: "near" }] } });
    // To the outer faces of the corner posts: 99, 120 and 69 in. 96 − 4 = 92 in high, 7 in a course: 13.
    const along = walled("horizontal");
    expect(along["wall-boards-near"]).toEqual([13, "120.000"]);
    expect(along["wall-boards-near-2"]).toEqual([13, "99.000"]);
    expect(along["wall-boards-near-3"]).toEqual([13, "69.000"]);
    // Studs 24 in apart at most, the ends on posts: 4 in 120, 4 in 99, 2 in 69.
    expect(along["wall-studs-near"]?.[0]).toBe(10);
    // 92 ÷ 36: 3 spaces, 4 rows.
    expect(walled("vertical")["wall-rails-near-2"]).toEqual([4, "99.000"]);
  });

  it("carries fly rafters on lookouts where the overhang is more than 12 in, or where they are asked for", () => {
    // Rafters 23.833 in apart; from the inner one's face to the fly rafter's: 23.833 + 24 − 2. Up 115.917 in: 4 between 5 spaces.
    expect(listed({ overhang: { gable: "24 in" } }).lookouts).toEqual([16, "45.833"]);
    expect(listed().lookouts).toBeUndefined();
    expect(listed({ lookoutSpacing: "40 in" }).lookouts).toEqual([8, "33.833"]);
    const short = listed({ overhang: { gable: "24 in" }, rafterBays: "short-last", rafterSpacing: "25 in" });
    // 286 in between outer rafters: 11 bays of 25 and one of 11.
    expect([short.lookouts, short["lookouts-last"]]).toEqual([
      [8, "47.000"],
      [8, "33.000"],
    ]);
  });

  it("has no ties on a single bay, whose two frames are the gable ends", () => {
    expect(listed({ bays: 1 }).ties).toBeUndefined();
  });

  it.each([
    [{ bays: 1, length: "5 in" }, "/structure/length"],
    [{ bayLengths: ["8 ft", "16 ft"] }, "/structure/bayLengths/1"],
    [{ bayLengths: ["5 in", "16 ft"] }, "/structure/bayLengths/0"],
    [{ lookoutSpacing: "24 in", overhang: { gable: "0 in" } }, "/structure/lookoutSpacing"],
    [{ lookoutSpacing: "3 in" }, "/structure/lookoutSpacing"],
    [{ bayLengths: ["8 ft"], bays: 3 }, "/structure/bayLengths"],
    [{ bayLengths: ["8 ft", "13 ft"], braceLeg: "13 in" }, "/structure/braceLeg"],
    [{ eaveHeight: "7 in" }, "/structure/eaveHeight"],
    [{ span: "3 in" }, "/structure/span"],
    [{ slope: { rise: "-2 in", run: "12 in" } }, "/structure/slope/rise"],
  ])("is refused where it can't be built: %j", (shape, at) => {
    try {
      laidGable(shape);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(FaultError);
      expect((error as FaultError).faults.map((fault) => fault.at)).toContain(at);
    }
  });

  it("says of bays that leave nothing for the last one just that, and no negative length", () => {
    const wordsOf = (bayLengths: string[]): string => {
      try {
        laidGable({ bayLengths });
      } catch (error) {
        return (error as FaultError).faults.map(({ wrong }) => wrong).join(" ");
      }
      return "";
    };
    expect(wordsOf(["8 ft", "20 ft"])).toBe("These bays take up the whole 24': nothing is left for the last one.");
    expect(wordsOf(["8 ft", "15 ft 4 in"])).toMatch(/^These bays leave 2 in of 24' for the last/);
  });
});

describe("a gable in millimetres converted from inches", () => {
  it("has exactly the same counts and lengths: 1 in is 25.4 mm", () => {
    const inch = laidGable({
      span: "16 ft",
      length: "24 ft",
      eaveHeight: "9 ft",
      overhang: { eave: "12 in", gable: "12 in" },
      bays: 3,
      rafterSpacing: "24 in",
      purlinSpacing: "24 in",
      braceLeg: "30 in",
      longestPiece: "12 ft",
    });
    const sections = Object.fromEntries(
      [
        "posts",
        "beams",
        "gable-beams",
        "ties",
        "ridge",
        "rafters",
        "braces",
        "purlins",
        "eave-fascia",
        "rake-fascia",
      ].map((name) => {
        const group = inch.groups.find((one) => one.name.startsWith(name));
        const side = (cell: { value: { toString(): string } } | undefined) => cell?.value.toString();
        return [name, { section: `${side(group?.thickness)} x ${side(group?.width)} mm` }];
      }),
    );
    const metric = laidGable(
      {
        span: "4876.8 mm",
        length: "7315.2 mm",
        eaveHeight: "2743.2 mm",
        slope: { rise: "127 mm", run: "304.8 mm" },
        overhang: { eave: "304.8 mm", gable: "304.8 mm" },
        bays: 3,
        rafterSpacing: "609.6 mm",
        purlinSpacing: "609.6 mm",
        braceLeg: "762 mm",
        longestPiece: "3657.6 mm",
        groups: sections,
      },
      { system: "metric" },
    );
    const exact = (laid: typeof inch) =>
      laid.groups.map((group) => [group.name, group.count.value.toString(), group.length.value.toString()]);
    expect(exact(metric)).toEqual(exact(inch));
    const { slopeAngle, seat, stockLength } = metric.gable.rafter;
    expect(slopeAngle.value.eq(inch.gable.rafter.slopeAngle.value)).toBe(true);
    expect(seat.value.eq(inch.gable.rafter.seat.value)).toBe(true);
    expect(stockLength.value.eq(inch.gable.rafter.stockLength.value)).toBe(true);
  });
});
