import { describe, expect, it } from "vitest";
import { laidPieces } from "../takeoff/shelter.js";

/** One group of pieces, as its own cells in feet, square feet and board feet. */
function pieces(count: number, section: string, length: string) {
  const { sheet, groups } = laidPieces({ kind: "pieces", pieces: [{ name: "lot", count, section, length }] });
  const [lot] = groups;
  if (!lot) throw new Error("no group");
  return {
    boardFeet: sheet.in(lot.volume, "bf"),
    feet: sheet.in(lot.totalLength, "ft"),
    squareFeet: sheet.in(lot.surface, "ft2"),
  };
}

describe("board feet of a piece group", () => {
  // Where a source prints a rounded figure, it is compared to its own places.
  it.each([
    // US Navy, NAVEDTRA 14044, ch. 2.
    [1, "1 x 10 in", "10 ft", "8.33"],
    [1, "1 x 7 in", "11 ft", "6.42"],
    // The manual prints 19.26 for 33 ft: it multiplies its rounded 6.42 by three. Exact is 19.25.
    [1, "1 x 7 in", "33 ft", "19.25"],
    // US Army, EN5155.
    [4, "1 x 8 in", "14 ft", "37.3333"],
    // Public-domain carpentry text, section 77.
    [1, "6 x 8 in", "16 ft", "64"],
    // Public-domain Building Construction, estimating the framing.
    [1, "6 x 12 in", "8 ft 9 in", "52.5"],
    // Public-domain school arithmetic: sill, planks, joists; 60 joists and 90 planks.
    [1, "4 x 12 in", "4 ft", "16"],
    [1, "3 x 12 in", "15 ft", "45"],
    [1, "2 x 18 in", "16 ft", "48"],
    [1, "6 x 10 in", "20 ft", "100"],
    [60, "3 x 8 in", "20 ft", "2400"],
    [90, "2 x 10 in", "14 ft", "2100"],
    // School quiz. Its 3/4-in board counts as 1 in thick; a piece group counts actual wood, so only 5/4 is comparable.
    [1, "1 1/4 x 6 in", "8 ft", "5"],
    [1, "1 x 6 in", "14 ft", "7"],
    // University estimating notes.
    [1, "2 x 8 in", "16 ft", "21.33"],
    // Construction-estimating textbook, ch. 12: 100 joists.
    [100, "2 x 10 in", "20 ft", "3333"],
    // Labor estimate sheet: six posts.
    [6, "4 x 4 in", "12 ft", "96"],
  ])("%i pieces %s, %s long: %s", (count, section, length, printed) => {
    const places = printed.split(".")[1]?.length ?? 0;
    expect(pieces(count, section, length).boardFeet.toFixed(places)).toBe(printed);
  });

  // Public-domain Building Construction, estimating the framing: lineal feet of joists.
  it.each([
    [6, "14 ft 6 in", "87"],
    [2, "15 ft 3 in", "30.5"],
    [5, "17 ft 6 in", "87.5"],
  ])("%i pieces of %s are %s lineal feet", (count, length, feet) => {
    expect(pieces(count, "3 x 10 in", length).feet.toString()).toBe(feet);
  });

  it("has 2.5 board feet in a lineal foot of 3 × 10, so 205 ft of them hold 512.5", () => {
    const all = [
      pieces(6, "3 x 10 in", "14.5 ft"),
      pieces(2, "3 x 10 in", "15.25 ft"),
      pieces(5, "3 x 10 in", "17.5 ft"),
    ];
    expect(all.reduce((sum, { boardFeet }) => sum + boardFeet.toNumber(), 0)).toBeCloseTo(205 * 2.5, 9);
  });
});

describe("faces of a piece group", () => {
  it("are four long faces and two ends of every piece", () => {
    // 2 × 6 × 10 ft: 2 × (2 + 6) ÷ 12 × 10 = 13.333, and two ends of 12 in²: 0.1667. Three pieces: 40.5 ft².
    expect(pieces(3, "2 x 6 in", "10 ft").squareFeet.toFixed(6)).toBe("40.500000");
  });
});
