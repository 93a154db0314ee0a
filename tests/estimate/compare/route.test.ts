import { describe, expect, it } from "vitest";
import { estimated } from "../../helpers/estimating.js";

interface Lot {
  readonly count: number;
  readonly section: string;
  readonly length: string;
}

/** One lot of pieces bought from one offer whose only stock length is the piece's own, without waste or tax. */
function bought(lots: readonly Lot[], price: string, by: "volume" | "length" = "volume") {
  return estimated({
    structure: {
      kind: "pieces",
      pieces: lots.map((lot, i) => ({ ...lot, name: `lot-${i}`, buyAs: `offer-${i}`, surface: "rough" })),
    },
    catalog: {
      name: "one price",
      currency: "USD",
      lumber: lots.map(({ section, length }, i) => ({
        name: `offer-${i}`,
        species: "eastern-white-pine",
        section,
        sizing: "actual",
        surface: "rough",
        sold: { by, price, lengths: [length], ...(by === "volume" ? { measure: "actual" } : {}) },
      })),
    },
    options: { finish: "none" },
    assumptions: { "buy.wastage": "0 %", "buy.endTrim": "0 in" },
  }).routes.buy;
}

const lumberOf = (lots: readonly Lot[], price: string, by?: "volume" | "length") =>
  bought(lots, price, by).lumber.value.toFixed();

describe("what bought lumber costs, against printed bills", () => {
  it.each([
    // US Navy, NAVEDTRA 14044, ch. 2: 8.33 board feet at 15 cents.
    [1, "1 x 10 in", "10 ft", "$0.15/bf", "1.25"],
    // Public-domain school arithmetic: 60 joists, 90 planks at 28 dollars a thousand.
    [60, "3 x 8 in", "20 ft", "$28/mbf", "67.2"],
    [90, "2 x 10 in", "14 ft", "$28/mbf", "58.8"],
    // School quiz: walnut.
    [1, "1 x 6 in", "14 ft", "$4.25/bf", "29.75"],
  ])("%i pieces %s × %s at %s cost %s", (count, section, length, price, printed) => {
    expect(lumberOf([{ count, section, length }], price)).toBe(printed);
  });

  // School quiz: trim by the foot at 2.75; 8 1/2 ft are 23.375, printed 23.38: half a cent goes up.
  it.each([
    ["13 ft", "35.75"],
    ["10 ft", "27.5"],
    ["8 ft 6 in", "23.38"],
  ])("%s of trim at $2.75 a foot cost %s", (length, printed) => {
    expect(lumberOf([{ count: 1, section: "1 x 4 in", length }], "$2.75/ft", "length")).toBe(printed);
  });

  it("both lots of joists and planks are 126.00 together", () => {
    const lots = [
      { count: 60, section: "3 x 8 in", length: "20 ft" },
      { count: 90, section: "2 x 10 in", length: "14 ft" },
    ];
    expect(lumberOf(lots, "$28/mbf")).toBe("126");
  });

  // Public-domain school arithmetic, a receipted bill: 365 ft at 25, 780 at 40, 980 at 29 a thousand, 68.745 in all.
  it.each([
    [5, "73 ft", "$25/mbf", "9.13"], // 9.125, to the cent
    [10, "78 ft", "$40/mbf", "31.2"],
    [10, "98 ft", "$29/mbf", "28.42"],
  ])("a line of %i boards 1 × 12, %s, at %s is %s", (count, length, price, printed) => {
    expect(lumberOf([{ count, section: "1 x 12 in", length }], price)).toBe(printed);
  });
});

describe("sticks that a route buys", () => {
  const piece = (count: number) => ({ name: "cleats", count, section: "2 x 4 in", length: "28 in", surface: "rough" });
  const sticks = (count: number) =>
    estimated({
      structure: { kind: "pieces", pieces: [piece(count)] },
      catalog: {
        name: "ten-footers",
        currency: "USD",
        lumber: [
          {
            name: "spf-2x4",
            species: "spruce-pine-fir",
            section: "2 x 4 in",
            sold: { by: "piece", lengths: [{ length: "10 ft", price: "$5" }] },
          },
        ],
      },
      assumptions: { "buy.wastage": "0 %", "buy.endTrim": "0 in" },
    }).routes.buy.lumber.value.toNumber() / 5;

  // US Army, EN0069, lesson 4: 28 in pieces from 10 ft: four, and 8 in of waste (here less three kerfs).
  it.each([
    [4, 1],
    [5, 2],
    [8, 2],
    [40, 10],
  ])("for %i cleats of 28 in are %i of 10 ft", (count, bars) => {
    expect(sticks(count)).toBe(bars);
  });
});
