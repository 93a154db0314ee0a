/** Bought lumber priced with pencil and paper, on a yard that sells just what the case is about. */
import { describe, expect, it } from "vitest";
import { lengthSlugs } from "../../../src/estimate/purchase/board-prices.js";
import { decimal } from "../../../src/estimate/quantity/decimal.js";
import { estimated } from "../../helpers/estimating.js";

interface Sale {
  readonly pieces: readonly object[];
  readonly lumber: readonly object[];
}

/** Nothing is lost at the ends and nothing is spoiled, so that the yard's figures can be added up by hand. */
const bought = (
  { pieces, lumber }: Sale,
  more: { readonly waste?: string; readonly overrides?: object; readonly atHand?: readonly object[] } = {},
) => {
  const found = estimated({
    structure: { kind: "pieces", pieces: pieces.map((piece) => ({ role: "other", surface: "rough", ...piece })) },
    catalog: { name: "A yard", currency: "USD", lumber },
    shop: { lumber: "fetched" },
    options: { finish: "none" },
    assumptions: { "buy.endTrim": "0 in", "buy.wastage": more.waste ?? "0 %" },
    ...(more.atHand ? { atHand: more.atHand } : {}),
    ...(more.overrides ? { overrides: more.overrides } : {}),
  });
  const lines = found.routes.buy.lines.filter(({ department }) => department === "lumber");
  return {
    found,
    lines,
    told: lines.map(({ label, amount }) => `${label}: ${amount?.value.toFixed(2) ?? "no price"}`),
  };
};

const offer = (name: string, section: string, sold: object, more: object = {}) => ({
  name,
  label: name,
  species: "spruce-pine-fir",
  section,
  sold,
  ...more,
});
const each = (length: string, price: string) => ({ by: "piece", lengths: [{ length, price }] });

describe("bought lumber", () => {
  it("by the board foot is nominal thickness × width × length: 1 × 6 in × 8 ft is 4 bf, at $2.50 ten dollars", () => {
    const lumber = [
      offer("pine", "1 x 6 in", { by: "volume", price: "$2.50/bf", measure: "nominal", lengths: ["8 ft"] }),
    ];
    const pieces = [{ name: "boards", count: 3, section: "1 x 6 in", length: "7 ft" }];
    expect(bought({ pieces, lumber }).told).toEqual(["pine, 8': 30.00"]);
  });

  it("by the board foot of what it measures counts 3/4 × 5 1/2 in: 2.75 bf, $6.875 a board", () => {
    const lumber = [
      offer("pine", "1 x 6 in", { by: "volume", price: "$2.50/bf", measure: "actual", lengths: ["8 ft"] }),
    ];
    const pieces = [{ name: "boards", count: 4, section: "1 x 6 in", length: "7 ft" }];
    expect(bought({ pieces, lumber }).told).toEqual(["pine, 8': 27.50"]);
  });

  it("in bundles of twelve is paid for by the bundle: five pieces take twelve sticks, thirteen take twenty-four", () => {
    const lumber = [offer("furring", "1 x 3 in", each("8 ft", "$2.18"), { bundle: 12 })];
    const of = (count: number) => [{ name: "strips", count, section: "1 x 3 in", length: "7 ft" }];
    expect(bought({ pieces: of(5), lumber }).told).toEqual(["furring, 8': 26.16"]);
    expect(bought({ pieces: of(13), lumber }).told).toEqual(["furring, 8': 52.32"]);
  });

  it("in bundles is in whole bundles with its spares too: 7 % on 12 is 13, which only 24 hold; on 11 it is 12", () => {
    const lumber = [offer("furring", "1 x 3 in", each("8 ft", "$2.00"), { bundle: 12 })];
    const of = (count: number) => [{ name: "strips", count, section: "1 x 3 in", length: "7 ft" }];
    expect(bought({ pieces: of(12), lumber }, { waste: "7 %" }).told).toEqual(["furring, 8': 48.00"]);
    expect(bought({ pieces: of(11), lumber }, { waste: "7 %" }).told).toEqual(["furring, 8': 24.00"]);
    expect(bought({ pieces: of(5), lumber }, { waste: "7 %" }).told).toEqual(["furring, 8': 24.00"]);
  });

  // 26 of 10 ft want 2 spares (1.82) and come as 30; 36 in all want 3 (2.52), and 4 lie over: no more of 8 ft than the 10.
  it("takes what lies over in a bundle for spare", () => {
    const lengths = [
      { length: "8 ft", price: "$3.98" },
      { length: "10 ft", price: "$5.28" },
    ];
    const lumber = [offer("spf", "2 x 4 in", { by: "piece", lengths }, { bundle: 10 })];
    const pieces = [
      { name: "long", count: 26, section: "2 x 4 in", length: "9 ft 6 in" },
      { name: "short", count: 10, section: "2 x 4 in", length: "7 ft 6 in" },
    ];
    expect(bought({ pieces, lumber }, { waste: "7 %" }).told.sort()).toEqual(["spf, 10': 158.40", "spf, 8': 39.80"]);
  });

  it("is of the next size up by its name where the size is not sold, and says so", () => {
    const lumber = [
      offer("spf-2x4", "2 x 4 in", each("10 ft", "$5.00")),
      offer("spf-2x10", "2 x 10 in", each("10 ft", "$14.00")),
      offer("spf-2x8", "2 x 8 in", each("10 ft", "$11.00")),
    ];
    const pieces = [{ name: "long-rails", count: 3, section: "2 x 6 in", length: "9 ft" }];
    const { told, found } = bought({ pieces, lumber });
    expect(told).toEqual(["spf-2x8, 10': 33.00"]);
    const differences = found.basis.groups.flatMap(({ substitution }) =>
      "offer" in substitution ? substitution.differences : [],
    );
    expect(differences.join()).toContain("7 1/4");
  });

  it("has a spare stick as soon as any is to be set aside, however few there are", () => {
    const lumber = [offer("spf", "2 x 4 in", each("8 ft", "$2.00"))];
    const of = (count: number) => [{ name: "rails", count, section: "2 x 4 in", length: "7 ft" }];
    const told = (count: number, waste: string) => bought({ pieces: of(count), lumber }, { waste }).told;
    // A carpenter who fears one bad stick in fourteen takes one more than the five that are cut.
    expect(told(5, "7 %")).toEqual(["spf, 8': 12.00"]);
    expect(told(1, "1 %")).toEqual(["spf, 8': 4.00"]);
    expect(told(5, "0 %")).toEqual(["spf, 8': 10.00"]);
    expect(told(20, "5 %")).toEqual(["spf, 8': 42.00"]); // just one, no second
  });

  it("has its spares of the longest, one for all lengths together, and of the next where those run out", () => {
    const yard = (available?: number) => [
      offer("spf", "2 x 4 in", {
        by: "piece",
        lengths: [
          { length: "8 ft", price: "$2.00" },
          { length: "12 ft", price: "$3.00", ...(available === undefined ? {} : { available }) },
        ],
      }),
    ];
    const pieces = [
      { name: "short", count: 9, section: "2 x 4 in", length: "7 ft 6 in" },
      { name: "long", count: 4, section: "2 x 4 in", length: "11 ft" },
    ];
    const told = (available?: number) => bought({ pieces, lumber: yard(available) }, { waste: "7 %" });
    // 7 % of 4 is 0.28: one of 12 ft. Of all 13, 0.91: that one will do.
    expect(told().told.sort()).toEqual(["spf, 12': 15.00", "spf, 8': 18.00"]);
    expect(told(4).told.sort()).toEqual(["spf, 12': 12.00", "spf, 8': 20.00"]);
    const { sheet } = told().found.basis;
    const spares = sheet.find("bought.buy.spf-8.spares");
    expect(spares && sheet.workingLine(spares)).toContain("7 %");
  });

  it("at a bulk price is cut from the length that reaches it, and more sticks are bought where that costs less", () => {
    // By hand: 9 of 8 ft at 5.00 are 45.00; 9 of 10 ft at 6.00 are 54.00, ten at 4.30 are 43.00.
    const lengths = [
      { length: "8 ft", price: "$5.00" },
      { length: "10 ft", price: "$6.00", bulk: [{ from: 10, price: "$4.30" }] },
    ];
    const lumber = [offer("spf", "2 x 4 in", { by: "piece", lengths })];
    const of = (count: number) => [{ name: "rails", count, section: "2 x 4 in", length: "7 ft" }];
    const nine = bought({ pieces: of(9), lumber });
    expect(nine.told).toEqual(["spf, 10': 43.00"]);
    expect(nine.lines.map(({ quantity, leftOver }) => [quantity.value.toNumber(), leftOver?.value.toNumber()])).toEqual(
      [[10, 1]],
    );
    expect(bought({ pieces: of(8), lumber }).told).toEqual(["spf, 8': 40.00"]);
    // A spare brings nine to ten.
    expect(bought({ pieces: of(9), lumber }, { waste: "7 %" }).told).toEqual(["spf, 10': 43.00"]);
    const changed = bought({ pieces: of(9), lumber }, { overrides: { "price.spf-10-from10": "$4.60" } });
    expect(changed.told).toEqual(["spf, 8': 45.00"]);
  });

  it("by the foot and by volume has bulk prices for so many of one length", () => {
    // 8 ft at 0.50 are 4.00 each; from six on 0.40: 3.20. Five at 4.00 are 20.00, six at 3.20 19.20.
    const bulk = [{ from: 6, price: "$0.40/ft" }];
    const rate = [offer("spf", "2 x 4 in", { by: "length", price: "$0.50/ft", bulk, lengths: ["8 ft"] })];
    const pieces = [{ name: "rails", count: 5, section: "2 x 4 in", length: "7 ft" }];
    expect(bought({ pieces, lumber: rate }).told).toEqual(["spf, 8': 19.20"]);
    // 2 × 4 in × 8 ft are 5 1/3 bf: at 3.00 16.00 each, at 2.25 12.00.
    const volume = { by: "volume", price: "$3.00/bf", measure: "nominal", bulk: [{ from: 6, price: "$2.25/bf" }] };
    const boards = [offer("spf", "2 x 4 in", { ...volume, lengths: ["8 ft"] })];
    expect(bought({ pieces, lumber: boards }).told).toEqual(["spf, 8': 72.00"]);
  });

  it("of equal offers is the one that is cheaper at the prices in force", () => {
    const lumber = [offer("a", "2 x 4 in", each("8 ft", "$5.00")), offer("b", "2 x 4 in", each("8 ft", "$6.00"))];
    const pieces = [{ name: "rails", count: 4, section: "2 x 4 in", length: "7 ft" }];
    expect(bought({ pieces, lumber }).told).toEqual(["a, 8': 20.00"]);
    const dearer = bought({ pieces, lumber }, { overrides: { "price.a-8": "$7.00" } });
    expect(dearer.told).toEqual(["b, 8': 24.00"]);
    const { sheet } = dearer.found.basis;
    const price = sheet.find("price.b-8");
    expect(price && sheet.isStructural(price)).toBe(true);
  });

  it("is planned at the price that the user puts in the place of the yard's", () => {
    const lengths = [
      { length: "8 ft", price: "$5.00" },
      { length: "16 ft", price: "$9.00" },
    ];
    const lumber = [offer("spf", "2 x 4 in", { by: "piece", lengths })];
    const pieces = [{ name: "rails", count: 4, section: "2 x 4 in", length: "7 ft" }];
    expect(bought({ pieces, lumber }).told).toEqual(["spf, 16': 18.00"]);
    const changed = bought({ pieces, lumber }, { overrides: { "price.spf-16": "$20" } });
    expect(changed.told).toEqual(["spf, 8': 20.00"]);
    expect(changed.found.routes.buy.plan.stock.map(({ proof }) => proof.covers)).toEqual([
      "all ways to cut these pieces from these lengths; proven least",
    ]);
  });

  it("by the foot is planned at prices below the cent, rounded once where the line is added up", () => {
    // By hand: 8 × 1.0049 = $8.0392, and three of them $24.1176.
    const lengths = ["8 ft", "24 ft 1 in"];
    const lumber = [offer("spf", "2 x 4 in", { by: "length", price: "$1.0049/ft", lengths })];
    const pieces = [{ name: "rails", count: 3, section: "2 x 4 in", length: "8 ft" }];
    const { found, told } = bought({ pieces, lumber });
    expect(told).toEqual(["spf, 8': 24.12"]);
    expect(found.routes.buy.plan.stock[0]?.question.problem.stocks.map(({ priceMinor }) => priceMinor)).toEqual([
      8_039_200, 24_201_342,
    ]);
  });

  it("of groups that take the same offer is cut from the same sticks: 5 ft and 2 ft 9 in share one of 8 ft", () => {
    const lumber = [offer("spf", "2 x 4 in", each("8 ft", "$4.00"))];
    const pieces = [
      { name: "long", count: 3, section: "2 x 4 in", length: "5 ft" },
      { name: "short", count: 3, section: "2 x 4 in", length: "2 ft 9 in" },
    ];
    expect(bought({ pieces, lumber }).told).toEqual(["spf, 8': 12.00"]);
  });

  it("longer than anything sold is a line without a price that says what to add, never a zero", () => {
    const lumber = [offer("spf", "2 x 6 in", each("12 ft", "$9.00"))];
    const pieces = [{ name: "beam", count: 2, section: "2 x 6 in", length: "14 ft" }];
    const { lines, found } = bought({ pieces, lumber });
    expect(lines.map(({ amount, add, quantity }) => [amount, add, quantity.value.toFixed()])).toEqual([
      [undefined, "Add a longer stock length of spf.", "2"],
    ]);
    expect(found.verdict.doubt).toContain("no price yet");
  });
});

describe("limited stock and boards at hand", () => {
  const pieces = [{ name: "rails", count: 4, section: "2 x 4 in", length: "7 ft" }];
  const yard = (available?: number) => [
    offer("spf", "2 x 4 in", {
      by: "piece",
      lengths: [
        { length: "8 ft", price: "$4.00", ...(available === undefined ? {} : { available }) },
        { length: "10 ft", price: "$6.00" },
      ],
    }),
  ];

  it("takes no more sticks of a length than the yard has: three of 8 ft, and one of 10 ft", () => {
    expect(bought({ pieces, lumber: yard() }).told).toEqual(["spf, 8': 16.00"]);
    expect(bought({ pieces, lumber: yard(3) }).told.sort()).toEqual(["spf, 10': 6.00", "spf, 8': 12.00"]);
  });

  it("cuts boards at hand first, says which, and pays nothing for them", () => {
    const atHand = [{ section: "2 x 4 in", length: "7 ft 6 in", count: 3 }];
    expect(bought({ pieces, lumber: yard() }, { atHand }).told.sort()).toEqual([
      "spf, 8': 4.00",
      "spf, at hand, 7' 6\": 0.00",
    ]);
  });

  it("leaves boards of another section or wood where they lie", () => {
    const atHand = [
      { section: "2 x 6 in", length: "8 ft", count: 3 },
      { section: "2 x 4 in", length: "8 ft", count: 3, wood: "black-locust" },
    ];
    expect(bought({ pieces, lumber: yard() }, { atHand }).told).toEqual(["spf, 8': 16.00"]);
  });

  it("keeps untreated boards from treated posts, and treated ones for them", () => {
    const posts = [{ name: "posts", role: "post", count: 2, section: "4 x 4 in", length: "7 ft" }];
    const lumber = [offer("fir", "4 x 4 in", each("8 ft", "$9.00"), { treatment: "ground-contact" })];
    const told = (more: object) =>
      bought({ pieces: posts, lumber }, { atHand: [{ section: "4 x 4 in", length: "8 ft", count: 2, ...more }] }).told;
    expect(told({})).toEqual(["fir, 8': 18.00"]);
    expect(told({ treatment: "above-ground" })).toEqual(["fir, 8': 18.00"]);
    expect(told({ treatment: "ground-contact" })).toEqual(["fir, at hand, 8': 0.00"]);
    expect(told({ treatment: "ground-contact", surface: "rough" })).toEqual(["fir, 8': 18.00"]);
  });

  it("gives boards that serve for two offers to the dearer one, and what it cannot use to the other", () => {
    const both = [
      { name: "cheap", count: 3, section: "2 x 4 in", length: "7 ft", buyAs: "a-cheap" },
      { name: "dear", count: 2, section: "2 x 4 in", length: "7 ft", buyAs: "b-dear" },
    ];
    const lumber = [
      offer("a-cheap", "2 x 4 in", each("8 ft", "$4.00")),
      offer("b-dear", "2 x 4 in", each("8 ft", "$9.00")),
    ];
    const told = (count: number) =>
      bought({ pieces: both, lumber }, { atHand: [{ section: "2 x 4 in", length: "8 ft", count }] }).told.sort();
    expect(told(1)).toEqual(["a-cheap, 8': 12.00", "b-dear, 8': 9.00", "b-dear, at hand, 8': 0.00"]);
    expect(told(3)).toEqual(["a-cheap, 8': 8.00", "a-cheap, at hand, 8': 0.00", "b-dear, at hand, 8': 0.00"]);
  });

  it("says what is short where the yard has too few, never a zero", () => {
    const lumber = [
      offer("spf", "2 x 4 in", { by: "piece", lengths: [{ length: "8 ft", price: "$4.00", available: 3 }] }),
    ];
    const { lines } = bought({ pieces, lumber });
    expect(lines.map(({ label, add }) => [label, add])).toEqual([
      ["spf, 8'", undefined],
      ["spf: too few for rails", "Add sticks of spf: more than are available are wanted."],
    ]);
  });
});

describe("what is sold for what is wanted", () => {
  const wanted = (section: string, more: object = {}) => [
    { name: "rails", count: 2, section, length: "7 ft", ...more },
  ];
  const yard = [
    offer("spf-2x4", "2 x 4 in", each("8 ft", "$4.00")),
    offer("spf-2x6", "2 x 6 in", each("8 ft", "$6.00")),
    offer("rough-2x6", "2 x 6 in", each("8 ft", "$5.00"), { sizing: "actual", surface: "rough" }),
  ];
  const words = (section: string, more: object = {}, lumber: readonly object[] = yard) => {
    const { found, told } = bought({ pieces: wanted(section, { seasoning: "dried", ...more }), lumber });
    return [...told, ...found.notices.filter(({ code }) => code === "substitution").map(({ text }) => text)];
  };

  it("is the yard's dressed 1 1/2 × 3 1/2 for a full 2 × 4, and says so (PS 20 dry sizes)", () => {
    expect(words("2 x 4 in", { surface: "dressed" })).toEqual([
      "spf-2x4, 8': 8.00",
      "rails, bought as spf-2x4: 2 × 4 in wanted, the bought piece measures 1 1/2 × 3 1/2 in.",
    ]);
  });

  it("is the next size up where the size is not sold, ripped down", () => {
    // 2 × 5 is nowhere nominal; only the full-sawn 2 × 6 is as large in fact.
    expect(words("2 x 5 in")).toEqual([
      "rough-2x6, 8': 10.00",
      "rails, bought as rough-2x6: 2 × 5 in wanted, the bought piece measures 2 × 6 in and is ripped down.",
    ]);
  });

  it.each([
    ["50 x 150 mm", "spf-2x6"], // 2 × 6 by name, at 25 mm to the inch
    ["38 x 140 mm", "spf-2x6"], // 38.1 × 139.7 mm is 1 1/2 × 5 1/2 in
    ["38 x 89 mm", "spf-2x4"],
    ["45 x 145 mm", "timber-4x8"], // no name, and larger than 1 1/2 × 5 1/2 in
  ])("for a metric %s in an inch yard is %s, not the next timber that is as large", (section, name) => {
    const lumber = [...yard.slice(0, 2), offer("timber-4x8", "4 x 8 in", each("8 ft", "$30.00"))];
    const { found, lines } = bought({ pieces: wanted(section, { surface: "dressed" }), lumber });
    expect(lines.map((line) => line.offer)).toEqual([name]);
    const ripped = found.basis.groups.map(({ ripDown }) => ripDown !== undefined);
    expect(ripped).toEqual([name === "timber-4x8"]);
  });

  it("for an inch size in a metric yard is the one of its name", () => {
    const lumber = [
      offer("s-50x150", "50 x 150 mm", each("2.4 m", "$6.00")),
      offer("s-75x200", "75 x 200 mm", each("2.4 m", "$9.00")),
    ];
    expect(bought({ pieces: wanted("2 x 6 in"), lumber }).lines.map((line) => line.offer)).toEqual(["s-50x150"]);
  });

  const notes = (piece: object, sold: object): string[] => {
    const stick = offer("stick", "4 x 4 in", each("8 ft", "$9.00"), { sizing: "actual", seasoning: "dry", ...sold });
    const asked = { surface: "dressed", structural: false, ...piece };
    return words("4 x 4 in", asked, [stick])
      .slice(1)
      .flatMap((text) => text.replace("rails, bought as stick: ", "").replace(/\.$/, "").split("; "));
  };

  it.each([
    ["no difference", {}, {}, []],
    ["treated", {}, { treatment: "above-ground" }, ["preservative-treated, where untreated would do"]],
    ["treated posts", { role: "post" }, { treatment: "ground-contact" }, []],
    [
      "posts treated too little",
      { role: "post" },
      { treatment: "above-ground" },
      ["treated for use above the ground only"],
    ],
    ["untreated posts", { role: "post" }, {}, ["not preservative-treated, as posts are wanted"]],
    [
      "posts of a wood that lasts",
      { role: "post" },
      { species: "black-locust" },
      ["not preservative-treated: the heartwood of black locust resists decay, its sapwood does not"],
    ],
    ["rough", {}, { surface: "rough" }, ["dressed wanted, sold rough: you dress it"]],
    ["dressed", { surface: "rough" }, {}, ["rough wanted, sold dressed"]],
    ["green", {}, { seasoning: "green" }, ["dried wanted, sold green: it shrinks as it dries"]],
    ["dry", { seasoning: "green" }, {}, ["sold dry, where green would do"]],
  ])("tells of treatment, surface and seasoning: %s", (_, piece, sold, told) => {
    expect(notes(piece, sold)).toEqual(told);
  });

  it("is what the user insists on, even where something else is cheaper", () => {
    expect(words("2 x 6 in", { buyAs: "spf-2x6" })[0]).toBe("spf-2x6, 8': 12.00");
    expect(words("2 x 6 in")[0]).toBe("rough-2x6, 8': 10.00");
  });

  it("is nothing where nothing is as large, and says what to add", () => {
    const { lines } = bought({ pieces: wanted("8 x 8 in"), lumber: yard });
    expect(lines.map(({ amount, add }) => [amount, add])).toEqual([
      [undefined, "Add a section of 8 × 8 in or larger to the catalog's lumber, for rails."],
    ]);
  });

  it.each(["a", "z"])("at the same cost is the first by name, whichever length it is sold in (%s)", (other) => {
    const lumber = [offer(other, "2 x 4 in", each("11 ft", "$3.00")), offer("m", "2 x 4 in", each("10 ft", "$3.00"))];
    const { lines } = bought({ pieces: wanted("2 x 4 in"), lumber });
    expect(lines[0]?.offer).toBe(other === "a" ? "a" : "m");
  });
});

describe("names of lengths in cells", () => {
  it("tell all lengths of an offer apart", () => {
    const lengths = new Map(["1' 1/2\"", '1 1/2"', "8'", "10' 6\""].map((name, i) => [name, decimal(i)]));
    expect([...lengthSlugs({ lengths }).values()]).toEqual(["1_1_2", "1_1_2_no2", "8", "10_6"]);
  });
});

describe("runs that are bought", () => {
  const purlins = (lengths: readonly string[], more: object = {}) => {
    const found = estimated({
      structure: {
        kind: "gable",
        span: "16 ft",
        length: "24 ft",
        slope: { rise: "5 in", run: "12 in" },
        longestPiece: "14 ft",
        groups: { purlins: more },
      },
      catalog: {
        name: "A yard",
        currency: "USD",
        lumber: [offer("spf", "2 x 4 in", { by: "length", price: "$1/ft", lengths })],
      },
    });
    const inches = (cell: (typeof found.basis.cutList.groups)[number]["length"]) =>
      found.basis.sheet.in(cell, "in").toDP(2).toNumber();
    return found.basis.cutList.groups
      .filter(({ name }) => name.startsWith("purlins"))
      .map(({ length, begins = [] }) => [inches(length), begins.map(inches)]);
  };

  // 12 rafter bays of 23.833 in and 13 in past either outer rafter's middle: 26 ft a row.
  const two = [[156, [0, 156]]];
  const three = [
    [108.33, [0, 203.67]],
    [95.33, [108.33]],
  ];

  it("are joined where the lengths sold take least stock, and evenly where none do better", () => {
    expect(purlins(["14 ft"])).toEqual(two); // 28 ft a row; three pieces would take 42
    expect(purlins(["10 ft", "16 ft"])).toEqual(three); // 3 × 10 = 30 ft; two pieces of 13 ft would take 32
    expect(purlins(["13 ft 6 in"])).toEqual(two);
  });

  it("are shared out evenly where the saw cuts them, whatever the yard sells", () => {
    expect(purlins(["10 ft", "16 ft"], { source: "mill" })).toEqual(two);
  });
});
