import { describe, expect, it } from "vitest";
import { parseSection, TextFault } from "../../../src/estimate/quantity/text.js";
import { coveredRoof } from "../../../src/estimate/takeoff/covered-roof.js";
import { layCovering } from "../../../src/estimate/takeoff/covering.js";
import { layComparedDeck, planComparedDeck, usualDeckSection } from "../../../src/estimate/takeoff/deck-takeoff.js";
import { laidPieces } from "./shelter.js";

/** A steel roof of 16 × 24 ft at 5 in 12, and the boards that strips would want in its place. */
function boardsBelowStrips(shape: object = {}) {
  const roof = {
    span: "16 ft",
    length: "24 ft",
    slope: { rise: "5 in", run: "12 in" },
    covering: "ribbed-steel",
  } as const;
  const laid = laidPieces({ kind: "gable", ...roof, ...shape } as Parameters<typeof laidPieces>[0]);
  const { sheet, assumed, defaults, units } = laid;
  const covered = coveredRoof(sheet, laid, units);
  if (!covered) throw new Error("no roof");
  const exposure = { climate: "outdoors", treated: false, tannin: false } as const;
  const name = "coverings.asphalt-shingles";
  const input = { kind: "asphalt-shingles", name, roof: covered, exposure, assumed, defaults } as const;
  const { work } = layCovering(sheet, input, units);
  const usual = parseSection(usualDeckSection("solid-boards")["inch-pound"]);
  if (usual instanceof TextFault) throw new Error(usual.wrong);
  const deck = { kind: "solid-boards", spacing: undefined, closerRows: 0 } as const;
  const lumberFor = () => ({ offer: undefined, sold: { lengths: [], mayMill: true } });
  const plan = { name: `${name}.boards`, deck, settings: undefined, usual, lumberFor };
  const { needs } = layComparedDeck(work, planComparedDeck(sheet, plan, units.small));
  const [boards, screws] = needs;
  const cuts = boards?.item.kind === "covering" ? boards.item.cuts : undefined;
  return {
    cuts: cuts?.map(({ length, count }) => [sheet.in(length, "in").toDP(4).toNumber(), count.value.toNumber()]),
    length: boards && sheet.in(boards.quantity, "ft").toNumber(),
    screws: sheet.find("coverings.asphalt-shingles.deck-screws.order")?.value.toNumber(),
    spoken: screws?.label,
  };
}

describe("boards below a covering that is compared", () => {
  // By hand: rafters at 2 in thick over 24 ft stand 13 lines, 286 ÷ 12 = 23.8333 in apart; a row reaches 12 in and half a rafter
  // past the outer ones. Pieces of 12 ft at most hold 5 spaces: 13 lines fall into 4 + 4 + 4: ends 4 × 23.8333 + 13 = 108.3333 in,
  // the middle 95.3333. Strips lie 118.625 in up the slope, which boards of 6 in cover in 20 rows; two slopes, 40.
  it("are the pieces that the frame joins over its rafters, row by row", () => {
    const { cuts, length } = boardsBelowStrips();
    expect(cuts).toEqual([
      [108.3333, 80],
      [95.3333, 40],
    ]);
    expect(length).toBeCloseTo((80 * 108.33333333 + 40 * 95.33333333) / 12, 4);
  });

  // A row crosses 13 rafters and 2 fly rafters, and lies double at 2 joints: 40 × 17 × 2 screws, one spare in twenty: 1,428.
  it("are screwed to every rafter, at both ends of each joint", () => {
    expect(boardsBelowStrips()).toMatchObject({ screws: 1428, spoken: "Screws for the deck" });
    // Without overhangs there are no fly rafters, and two pieces of 12 ft reach: 40 × 14 × 2 × 1.05.
    expect(boardsBelowStrips({ overhang: { eave: "12 in", gable: "0 in" } }).screws).toBe(1176);
  });

  it("go by their length where rows shorten towards the ridge", () => {
    const hipped = boardsBelowStrips({ kind: "hip" });
    expect(hipped.cuts).toBeUndefined();
    expect(hipped.length).toBeGreaterThan(0);
  });
});
