/** Several slim pieces out of one stick, on a yard that sells just what the case is about. Worked by hand beside each. */
import { describe, expect, it } from "vitest";
import { MarkBook } from "../../../src/api/render/json/marks.js";
import { shownPurchasing } from "../../../src/api/render/json/purchasing.js";
import type { FaultError } from "../../../src/estimate/faults.js";
import { pieceMarks } from "../../../src/estimate/pieces/cut-list.js";
import { estimated } from "../../helpers/estimating.js";

const stick = (section: string, price: string, more: object = {}) => ({
  name: section.replaceAll(/[^\dx]/g, ""),
  label: section,
  section,
  species: "douglas-fir-larch",
  surface: "dressed",
  sold: { by: "piece", lengths: [{ length: "8 ft", price, ...more }] },
});

const slats = { name: "slats", role: "other", count: 28, section: "2 x 2 in", length: "7 ft", surface: "rough" };

const bought = (lumber: readonly object[], piece: object = slats, assumptions: object = {}) => {
  const estimate = estimated({
    structure: { kind: "pieces", pieces: [piece] },
    catalog: { name: "A shelf", currency: "USD", lumber },
    assumptions: { "buy.wastage": "0 %", ...assumptions },
  });
  const { basis, routes } = estimate;
  const route = routes.buy;
  const marksOf = () => new MarkBook(pieceMarks(basis.sheet, basis.cutList.groups));
  const [shown] = shownPurchasing(estimate, [route], { marksOf, all: true, drawings: false }).routes;
  return {
    lines: route.lines
      .filter(({ department }) => department === "lumber")
      .map(({ label, quantity }) => `${quantity.value.toFixed()} ${label}`),
    cuts: shown?.stock?.flatMap(({ cuts }) => cuts) ?? [],
    substitution: basis.groups[0]?.substitution,
  };
};

describe("slim pieces that the yard sells wider", () => {
  it("are ripped side by side out of one stick, as square as it is thick", () => {
    // A 2 × 4 measures 3 1/2: two of 1 1/2 and a kerf of 1/8 take 3 1/8; 14 sticks of one length each give 28.
    const { lines, substitution } = bought([stick("2 x 4 in", "$5.00"), stick("4 x 4 in", "$12.00")]);
    expect(lines).toEqual(["14 2 x 4 in, 8'"]);
    expect(substitution).toMatchObject({
      abreast: 2,
      differences: expect.arrayContaining([
        "2 × 2 in wanted, the bought piece measures 1 1/2 × 3 1/2 in and is ripped into 2 of 1 1/2 × 1 1/2 in",
      ]),
    });
  });

  it("bear every mark once, and an odd one leaves a spare", () => {
    const { cuts, lines } = bought([stick("2 x 4 in", "$5.00")], { ...slats, count: 5 });
    expect(lines).toEqual(["3 2 x 4 in, 8'"]);
    expect(cuts.map(({ pieces }) => pieces)).toEqual([[{ group: "slats", length: "7'", count: 1, abreast: 2 }]]);
    const marks = cuts.flatMap((cut) => cut.marks).flat();
    expect(new Set(marks)).toEqual(new Set(["X-01", "X-02", "X-03", "X-04", "X-05", null]));
    expect(marks).toHaveLength(6);
  });

  it("come out of both sides of a stick that is twice as large both ways, full as wanted", () => {
    // 5 1/2 holds two of 2 and a kerf both ways: 4 a stick.
    const { lines, substitution } = bought([stick("6 x 6 in", "$20.00")], { ...slats, count: 10 });
    expect(substitution).toMatchObject({ abreast: 4 });
    expect(lines).toEqual(["3 6 x 6 in, 8'"]);
  });

  it("lose what is planed off each sawn face where they are wanted dressed", () => {
    // Three of 1 in, two kerfs and four sawn faces: 3 3/8 of 3 1/2 in at 1/32 a face, 3 3/4 at 1/8.
    const thin = { ...slats, section: "1 x 1 in", count: 6 };
    const from = [stick("2 x 4 in", "$5.00")];
    expect(bought(from, thin).substitution).toMatchObject({ abreast: 3 });
    const dressed = { ...thin, surface: "dressed" };
    expect(bought(from, dressed).substitution).toMatchObject({ abreast: 3 });
    expect(bought(from, dressed, { "rip.planed": "1/8 in" }).substitution).toMatchObject({ abreast: 2 });
  });

  it("lose nothing of the faces that the stick has dressed already", () => {
    // Two of 1 5/8, a kerf of 1/8 and two faces of 1/32 are 3 7/16 of 3 1/2 in.
    const narrow = { ...slats, section: "1 1/2 x 1 5/8 in", surface: "dressed", count: 6 };
    expect(bought([stick("2 x 4 in", "$5.00")], narrow).lines).toEqual(["3 2 x 4 in, 8'"]);
  });

  it("are as thick as the stick is, and as wide as what is sold by their name where more come out so, and said to be", () => {
    const from = (section: string, piece: object = {}) => {
      const { substitution } = bought([stick(section, "$20.00")], { ...slats, section: "1 x 4 in", ...piece });
      return substitution && "offer" in substitution ? substitution.differences.join() : "";
    };
    // A 1 × 4 measures 3/4 × 3 1/2: three of 3 1/2 and two kerfs are 10 3/4 of 11 1/4 in, where two of 4 are 8 1/8.
    expect(from("1 x 12 in")).toContain("is ripped into 3 of 3/4 × 3 1/2 in");
    // A 1 × 2 measures 3/4 × 1 1/2: two and a kerf are 3 1/8 of 3 1/2 in; planed, 3 3/16.
    expect(from("1 x 4 in", { section: "1 x 2 in" })).toContain("is ripped into 2 of 3/4 × 1 1/2 in");
    expect(from("1 x 4 in", { section: "1 x 2 in", surface: "dressed" })).toContain("ripped into 2 of 3/4 × 1 1/2 in");
    // 1 × 5 is 4 1/2 wide: of 11 1/4 in there are two of that, and two of 5 as well, so that they stay full.
    expect(from("1 x 12 in", { section: "1 x 5 in" })).toContain("is ripped into 2 of 3/4 × 5 in");
    // By its metric name, at 25 mm to the inch: 25 × 50 mm is 1 × 2 in.
    expect(from("1 x 4 in", { section: "25 x 50 mm" })).toContain("ripped into 2 of 3/4 × 1 1/2 in");
  });

  it("are as wide as by name where they are battens and slats, called boards or not: they lie in no rows", () => {
    const battens = { ...slats, section: "1 x 3 in", role: "board", count: 8 };
    // A 1 × 3 measures 3/4 × 2 1/2: four and three kerfs are 10 3/8 of 11 1/4 in, where three of 3 are 9 1/4.
    const { substitution, lines } = bought([stick("1 x 12 in", "$12.00")], battens);
    expect([substitution, lines]).toMatchObject([{ abreast: 4 }, ["2 1 x 12 in, 8'"]]);
    const shed = {
      structure: {
        kind: "gable",
        span: "8 ft",
        length: "12 ft",
        slope: { rise: "5 in", run: "12 in" },
        walls: { boards: "board-and-batten", sides: ["near", "left"].map((side) => ({ side })) },
      },
      catalog: {
        name: "A shelf",
        currency: "USD",
        lumber: [stick("1 x 12 in", "$12.00"), stick("2 x 4 in", "$5.00"), stick("6 x 6 in", "$40.00")],
      },
    };
    const { basis } = estimated(shed);
    const of = (base: string) => {
      const found = basis.groups.filter(({ group }) => group.name.startsWith(base));
      return found.map(({ substitution: one }) => ("offer" in one ? one.each[1].dividedBy("25.4").toFixed() : "none"));
    };
    // Battens of 2 in by name, corner boards of 4 in.
    expect(new Set([...of("wall-battens"), ...of("corner-boards")])).toEqual(new Set(["1.5", "3.5"]));
  });

  it("stay as wide as wanted where they are boards, whose rows are counted so, and where the stick is full", () => {
    const boards = { ...slats, section: "1 x 4 in", role: "board", count: 6 };
    expect(bought([stick("1 x 12 in", "$20.00")], boards).substitution).toMatchObject({ abreast: 2 });
    const full = { ...stick("1 x 4 in", "$3.00"), sizing: "actual", surface: "rough" };
    // Two of 2 in and a kerf are 4 1/8 in.
    expect(bought([full], { ...slats, section: "1 x 2 in" }).substitution).toMatchObject({ abreast: 1 });
  });

  it("that bear stay one a stick: its grade is that of the whole", () => {
    const { lines } = bought([stick("2 x 4 in", "$5.00")], { ...slats, structural: true });
    expect(lines).toEqual(["28 2 x 4 in, 8'"]);
  });

  it("are said to lack by the piece where sticks are few", () => {
    // Ten sticks give 20 of 28.
    const { lines } = bought([stick("2 x 4 in", "$5.00", { available: 10 })]);
    expect(lines).toEqual(["10 2 x 4 in, 8'", "8 2 x 4 in: too few for slats"]);
  });
});

describe("a held plan of slim pieces", () => {
  const refusalOf = (times: number) => {
    const body = {
      structure: { kind: "pieces", pieces: [{ ...slats, count: 5 }] },
      catalog: { name: "A shelf", currency: "USD", lumber: [stick("2 x 4 in", "$5.00")] },
      heldPlans: { stock: { bought: { "2x4": [{ stock: "8'", pieces: ["slats"], times }] } } },
    };
    try {
      estimated(body);
    } catch (error) {
      return (error as FaultError).faults.map(({ wrong }) => wrong);
    }
    return [];
  };

  it("is told by its pieces, not by the sticks that they are ripped out of", () => {
    // Two come out of each: three sticks give the five, two give four, four give eight.
    expect(refusalOf(3)).toEqual([]);
    expect(refusalOf(2)).toEqual([`4 of 5 "slats" cut; "8'" would hold one more.`]);
    expect(refusalOf(1)).toEqual([`2 of 5 "slats" cut; "8'" would hold 2 more.`]);
    expect(refusalOf(4)).toEqual([`8 of "slats" cut, 5 wanted.`]);
  });
});

describe("of what is not sold by its name", () => {
  it("what no stick is long enough of comes after what is wider and long enough", () => {
    const long = { ...slats, section: "1 x 2 in", length: "9 ft", count: 4 };
    const furring = stick("1 x 2 in", "$2.00");
    const pine = {
      ...stick("1 x 4 in", "$9.00"),
      sold: { by: "piece", lengths: [{ length: "10 ft", price: "$9.00" }] },
    };
    // 3 1/2 in hold two of 1 1/2.
    expect(bought([furring, pine], long).lines).toEqual(["2 1 x 4 in, 10'"]);
    expect(bought([furring, pine], { ...long, length: "7 ft" }).lines).toEqual(["4 1 x 2 in, 8'"]);
    expect(bought([furring], long).lines).toEqual(["4 1 x 2 in: too short for slats"]);
  });

  it("the same thickness by name and a greater width is bought before what is thicker", () => {
    const joists = { ...slats, name: "joists", section: "2 x 10 in", structural: true, count: 4 };
    const { lines } = bought([stick("3 x 12 in", "$60.00"), stick("2 x 12 in", "$30.00")], joists);
    expect(lines).toEqual(["4 2 x 12 in, 8'"]);
  });
});
