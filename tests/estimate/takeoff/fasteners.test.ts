import { describe, expect, it } from "vitest";
import type { Exposure } from "../../../src/catalog/fasteners.js";
import { corrosionClassIds, fastenerKinds } from "../../../src/catalog/fasteners.js";
import { layBasis } from "../../../src/estimate/basis.js";
import type { PieceGroup } from "../../../src/estimate/pieces/piece-group.js";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import type { StructureShape } from "../../../src/estimate/request/structure-kinds.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { type FastenersTakeoff, layFasteners, layGableSupports } from "../../../src/estimate/takeoff/fasteners.js";
import type { LightFixing } from "../../../src/estimate/takeoff/hardware.js";
import { layTakeoffs } from "../../../src/estimate/takeoffs.js";
import { request } from "../../helpers/estimating.js";
import { type Given, type Laid, laidGable, laidPieces } from "./shelter.js";

const OUTDOORS: Exposure = { climate: "outdoors", treated: false, tannin: false };

interface Fasten {
  readonly shape?: Partial<GableShape>;
  readonly given?: Given;
  readonly light?: LightFixing;
  readonly exposureOf?: (group: PieceGroup) => Exposure;
}

function fastened({
  shape,
  given,
  light = "screws",
  exposureOf = () => OUTDOORS,
}: Fasten = {}): Laid & FastenersTakeoff {
  const laid = laidGable(shape, given);
  const { sheet, groups, assumed, defaults, units, gable } = laid;
  const supportsApart = layGableSupports(sheet, gable, units);
  const input = { groups, exposureOf, runs: { beams: 2, ridge: 1 }, supportsApart, light, assumed, defaults };
  return { ...laid, ...layFasteners(sheet, input, units) };
}

const value = (cell: Cell) => cell.value.toString();
const sites = ({ lines }: FastenersTakeoff) => Object.fromEntries(lines.map((line) => [line.name, value(line.sites)]));
const bought = ({ needs }: FastenersTakeoff) =>
  Object.fromEntries(needs.map((need) => [need.label, value(need.quantity)]));

describe("the connections of a 16 × 24 ft gable", () => {
  // By hand, with the defaults of the structure: three bays, so four pairs of posts; rafters at 24 in at most, 13 lines.
  const gable = fastened();

  it("are counted joint by joint", () => {
    expect(sites(gable)).toEqual({
      "posts.post-base": "8",
      "posts.post-top": "8",
      "beams.splice": "4", // two plates of three pieces
      "gable-beams.lap": "4",
      "ties.lap": "4", // at the two inner pairs
      "braces.brace": "40", // 12 along the sides, 8 across; two ends each
      "ridge.splice": "2", // three pieces
      "rafters.rafter-plate": "26",
      "rafters.rafter-ridge": "26",
      "fly-rafters.rafter-plate": "4",
      "fly-rafters.rafter-ridge": "4",
      // Each of 12 purlin runs crosses 13 rafters and 2 fly rafters, and lies double at its two joints: 12 × 17.
      "purlins.crossing": "204",
      "eave-fascia.face": "34", // as a purlin: 2 × 17
      "rake-fascia.face": "24", // 9.87 ft over 2 ft: five spaces, six backings, four pieces
    });
  });

  it("are bolted, screwed and tied, and bought pooled with one spare in twenty", () => {
    expect(bought(gable)).toEqual({
      "Post base 6 × 6 in, coated or better": "8", // no spare
      "Hexagon-head bolt 1/2 × 8 in, coated or better": "17", // 16 through bases: 6 + 2 × 1/8 + 0.81 = 7.06 in
      "Threaded rod 1/2 × 8 in, coated or better": "9", // 7 + 0.109 + 0.4375 + 0.154 = 7.70 in
      "Angle bracket, coated or better": "16", // two at each of 8 post tops
      "Hexagon-head bolt 1/2 × 5 in, coated or better": "9", // 8 in splices of 4 in beams: 4.81 in
      "Hexagon nut 1/2 in, coated or better": "34", // 24 bolts, 8 rods: 32
      "Wide washer 1/2 in, coated or better": "59", // 2 × 24 and 8: 56
      // 80 at braces of 4 in, 16 down through half of ties of 8 in: either way 4 + 8 × 5/16 = 6.5 in
      "Structural wood screw 5/16 × 8 in, coated or better": "101",
      "Structural wood screw 1/4 × 4 in, coated or better": "429", // 2 × 204 crossings: 408
      "Exterior wood screw 1 1/2 in, coated or better": "17", // 2 × 8 in the ridge, 2 in thick
      "Structural wood screw 1/4 × 3 in, coated or better": "189", // 30 rafters, 3 + 3 each: 180
      "Rafter tie against uplift, coated or better": "30",
      "Ring-shank nail 0.148 × 1 1/2 in, coated or better": "483", // 10 a tie, 10 a bracket: 460
      "Exterior wood screw 3 in, coated or better": "122", // 2 × (34 + 24) in fascia: 1 + 10 × 0.19 = 2.9 in
    });
  });

  it("bear the cautions that apply: ties against uplift, ends of ties and of rows, and nothing else", () => {
    expect(gable.cautions).toEqual([
      { code: "uplift", lines: ["rafters.rafter-plate", "fly-rafters.rafter-plate"] },
      { code: "end-distance", lines: ["gable-beams.lap", "ties.lap", "purlins.crossing", "eave-fascia.face"] },
    ]);
    // In one piece rows meet nowhere, and ties of thick plates end far enough from their screws.
    const whole = fastened({ shape: { longestPiece: "40 ft", groups: { beams: { section: "8 x 8 in" } } } });
    expect(whole.cautions.map(({ code }) => code)).toEqual(["uplift"]);
    expect(Object.keys(sites(whole))).not.toContain("ridge.splice");
  });

  it("name only what a price catalog knows", () => {
    for (const { item } of gable.needs) {
      if (item.kind !== "fastener") throw new Error(item.kind);
      expect(fastenerKinds).toContain(item.fastener);
      expect(corrosionClassIds).toContain(item.corrosion);
    }
  });
});

describe("wood that eats steel", () => {
  const exposureOf = (group: PieceGroup): Exposure => ({
    climate: "outdoors",
    treated: group.role === "post",
    tannin: group.role === "fascia",
  });
  const gable = fastened({ exposureOf });

  it("asks for better steel where its pieces are held, and only there", () => {
    const corrosion = Object.fromEntries(gable.lines.map((line) => [line.name, line.items[0]?.corrosion]));
    expect(corrosion).toMatchObject({ "eave-fascia.face": "hot-dip-galvanized", "purlins.crossing": "coated" });
  });

  it("is told of, with treated posts in all that goes through them", () => {
    expect(gable.cautions.filter(({ code }) => code === "tannin" || code === "treated")).toEqual([
      { code: "tannin", lines: ["eave-fascia.face", "rake-fascia.face"], corrosion: "hot-dip-galvanized" },
      {
        code: "treated",
        lines: ["posts.post-base", "posts.post-top", "gable-beams.lap", "ties.lap", "braces.brace"],
        corrosion: "hot-dip-galvanized",
      },
    ]);
  });

  it("keeps apart what differs only in its steel", () => {
    const tannin = (group: PieceGroup): Exposure => ({ ...OUTDOORS, tannin: group.role === "tie" });
    const screws = fastened({ exposureOf: tannin }).needs.filter(({ label }) =>
      label.startsWith("Structural wood screw 5/16 × 8"),
    );
    expect(screws.map((need) => [need.label.split(", ")[1], value(need.quantity)])).toEqual([
      ["hot dip galvanized or better", "17"], // 16 in ties
      ["coated or better", "84"], // 80 at braces
    ]);
  });
});

describe("nails in the place of screws", () => {
  it("are 20d at purlins of 2 in and 8d at fascia of 1 in, 10d at rafters", () => {
    const labels = Object.keys(bought(fastened({ light: "nails" }))).filter((label) => label.startsWith("Common nail"));
    // Lengths of TM 5-460: 20d 4 in, 10d 3 in, 8d 2 1/2 in
    expect(labels).toEqual([
      "Common nail 0.148 × 3 in, coated or better",
      "Common nail 0.192 × 4 in, coated or better",
      "Common nail 0.131 × 2 1/2 in, coated or better",
    ]);
  });

  it("are metric nails in a metric estimate", () => {
    const metric = fastened({ light: "nails", given: { system: "metric" } });
    expect(Object.keys(bought(metric)).filter((label) => label.includes("nail"))[0]).toContain("mm");
  });
});

describe("what the user changes", () => {
  it("moves all that follows: other posts have other bolts", () => {
    const gable = fastened({ shape: { groups: { posts: { section: "8 x 8 in" } } } });
    expect(bought(gable)).toMatchObject({ "Hexagon-head bolt 1/2 × 10 in, coated or better": "17" }); // bases: 8 + 1/4 + 0.81 = 9.06
  });

  it("may be a group that is left out", () => {
    const gable = fastened({ shape: { groups: { braces: { remove: true }, purlins: { remove: true } } } });
    expect(Object.keys(sites(gable)).filter((name) => /brace|purlin/.test(name))).toEqual([]);
  });

  it("may be a size so near another that their words are alike", () => {
    const overrides = { "fasteners.ties.lap.screwLength": "8.0000001 in" };
    const labels = fastened({ given: { overrides } }).needs.map((need) => need.label);
    expect(labels.filter((label) => label.startsWith("Structural wood screw 5/16 × 8"))).toHaveLength(2);
  });

  it("may be more wood than any bolt reaches: threaded rod with two nuts", () => {
    const gable = fastened({ shape: { groups: { beams: { section: "24 x 24 in" } }, eaveHeight: "12 ft" } });
    expect(gable.cautions).toContainEqual({ code: "long-bolt", lines: ["beams.splice"] });
    const line = gable.lines.find(({ name }) => name === "beams.splice");
    expect(line?.items.map((item) => [item.fastener, value(item.count)])).toEqual([
      ["threaded-rod", "8"],
      ["nut", "16"],
      ["washer", "16"],
    ]);
  });

  it("stays live where it is an assumption", () => {
    const gable = fastened({ given: { assumptions: { "fastener.crossing": "3", "fastener.spare": "0 %" } } });
    expect(bought(gable)).toMatchObject({ "Structural wood screw 1/4 × 4 in, coated or better": "612" }); // 3 × 204
    expect(gable.sheet.isStructural(gable.sheet.find("fastener.crossing") as Cell)).toBe(false);
  });
});

describe("more structure", () => {
  it("never needs fewer fasteners", () => {
    const total = (length: string) =>
      fastened({ shape: { length } }).needs.reduce((sum, need) => sum + need.quantity.value.toNumber(), 0);
    const totals = ["16 ft", "17 ft", "20 ft", "24 ft", "31 ft", "40 ft"].map(total);
    expect(totals).toEqual([...totals].sort((a, b) => a - b));
  });

  it("is the same when the same lengths are written in millimetres", () => {
    const metric = fastened({
      shape: { span: "4876.8 mm", length: "7315.2 mm", slope: { rise: "127 mm", run: "304.8 mm" } },
    });
    expect(bought(metric)).toEqual(bought(fastened()));
  });
});

describe("a list of pieces", () => {
  const list: StructureShape = {
    kind: "pieces",
    pieces: [
      { name: "legs", count: 4, section: "4 x 4 in", length: "3 ft" },
      { name: "shelf", role: "board", count: 3, section: "1 x 8 in", length: "5 ft" },
    ],
  };

  it("is held at its supports; pieces without a joint need nothing", () => {
    const laid = laidPieces(list);
    const supportsApart = laid.sheet.input("apart", { ...laid.assumed.cell("fastener.faceEvery") });
    const { sheet, units, groups, assumed, defaults } = laid;
    const input = {
      groups,
      exposureOf: () => OUTDOORS,
      runs: {},
      supportsApart,
      light: "screws" as const,
      assumed,
      defaults,
    };
    const found = layFasteners(sheet, input, units);
    expect(sites(found)).toEqual({ "shelf.crossing": "12" }); // 5 ft over 2 ft: three spaces, four supports, three boards
    expect(bought(found)).toEqual({ "Exterior wood screw 3 in, coated or better": "26" }); // 24 × 1.05 = 25.2
  });
});

describe("a ridge beam, a floor and a ledger", () => {
  const laidOf = (structure: object) => {
    const basis = layBasis(new Sheet(new Map()), request({ structure }));
    const { fasteners } = layTakeoffs(basis);
    if (!fasteners) throw new Error("no frame");
    return fasteners;
  };
  const items = ({ lines }: FastenersTakeoff, name: string) =>
    lines.find((line) => line.name === name)?.items.map((item) => [item.fastener, value(item.count)]);

  it("stand on king posts that are bracketed at both ends, and are bolted where they are spliced over them", () => {
    const beam = laidOf({ kind: "gable", span: "16 ft", length: "24 ft", ridge: "beam" });
    expect(sites(beam)).toMatchObject({ "king-posts.post-top": "8", "ridge.splice": "2" });
    expect(items(beam, "king-posts.post-top")).toEqual([
      ["angle-bracket", "16"],
      ["ring-shank-nail", "160"],
    ]);
    expect(items(beam, "ridge.splice")?.[0]).toEqual(["hex-bolt", "4"]);
  });

  it("have a floor at a wall lagged to it, and only the outer bearer bolted to posts", () => {
    const shed = { kind: "lean-to", span: "8 ft", length: "16 ft", highSide: "ledger", bays: 2 } as const;
    const floored = laidOf({ ...shed, floor: {} });
    // Three posts. Lags 16 in apart along either half of 8 ft of the wall: 6 spaces, 7 lags.
    expect(sites(floored)).toMatchObject({
      "low-posts.post-base": "3",
      "bearers.bearer-post": "3",
      "floor-ledger.ledger": "14",
    });
    expect(items(floored, "floor-ledger.ledger")).toEqual([
      ["lag-screw", "14"],
      ["washer", "14"],
    ]);
    expect(Object.keys(sites(laidOf(shed)))).not.toContain("floor-ledger.ledger");
  });

  it("have bearers bolted to every post and joists toed down on them", () => {
    const floored = laidOf({ kind: "gable", span: "16 ft", length: "24 ft", floor: {} });
    // Two bearers along four posts each; joists at 16 in over 24 ft: 19, two seats each.
    expect(sites(floored)).toMatchObject({
      "bearers.bearer-post": "8",
      "bearers.splice": "4",
      "joists.joist-seat": "38",
    });
    // 4 in of bearer, 6 in of post, and 0.81 in of washers, nut and thread: 10.81, so 11 in.
    expect(bought(floored)["Hexagon-head bolt 1/2 × 11 in, coated or better"]).toBe("17");
    expect(items(floored, "joists.joist-seat")).toEqual([["structural-screw", "114"]]);
  });

  it("have walls whose rails are held at their ends, on the posts, and their boards at every rail", () => {
    const sides = [{ side: "near" }, { side: "left" }];
    const walled = laidOf({ kind: "gable", span: "16 ft", length: "24 ft", walls: { boards: "vertical", sides } });
    const rails = walled.lines.find(({ name }) => name === "wall-rails.ends");
    // Four rows over 7 ft 8 in at 36 in: in three bays along the side and two lengths across the end, and one rail in the
    // gable (4 in 12 over 8 ft: 32 in and what is above the plate and below it); two ends each.
    expect(rails && [value(rails.sites), rails.label]).toEqual(["42", "Wall rails, at both ends"]);
    const boards = walled.lines.find(({ name }) => name === "wall-boards.crossing");
    expect(boards?.label).toBe("Wall boards, at their supports");
    // 39 boards along, 26 across (16 ft less the lap, 7 1/2 in each), on four rails. Two boards of the gable, 45 in together,
    // lie on plate and rafter, and one of them on the rail: five places. Corner boards lie on rails as well, two a side.
    expect(boards && value(boards.sites)).toBe(String((39 + 26) * 4 + 13 * 5));
    const corners = walled.lines.find(({ name }) => name === "corner-boards.crossing");
    expect(corners && value(corners.sites)).toBe(String(4 * 4));
  });

  it("are lagged to the wall every 16 in, with the rafters in hangers", () => {
    const shed = laidOf({ kind: "lean-to", span: "8 ft", length: "24 ft", highSide: "ledger" });
    // Ledger in three pieces of 9' 1", 8' and 9' 1"-like lengths: each ⌈length ÷ 16 in⌉ + 1.
    const ledger = Number(sites(shed)["ledger.ledger"]);
    expect(ledger).toBeGreaterThan(26 / 1.34);
    expect(items(shed, "ledger.ledger")).toEqual([
      ["lag-screw", String(ledger)],
      ["washer", String(ledger)],
    ]);
    // 2 in of ledger and eight diameters of 1/2 in: 6 in.
    expect(Object.keys(bought(shed))).toContain("Lag screw 1/2 × 6 in, coated or better");
    expect(sites(shed)).toMatchObject({ "rafters.hanger": "13", "rafters.rafter-plate": "13", "end-beams.lap": "2" });
    expect(items(shed, "rafters.hanger")).toEqual([
      ["joist-hanger", "13"],
      ["ring-shank-nail", "130"],
    ]);
    expect(shed.lines.some(({ name }) => name === "rafters.rafter-ridge")).toBe(false);
  });
});
