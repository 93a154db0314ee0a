import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { cautionsOf } from "../../../src/estimate/cautions.js";
import type { GableShape } from "../../../src/estimate/request/structure-gable.js";
import type { Cell } from "../../../src/estimate/sheet/expression.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { layFasteners } from "../../../src/estimate/takeoff/fasteners.js";
import { layTakeoffs } from "../../../src/estimate/takeoffs.js";
import { request } from "../../helpers/estimating.js";
import { type Given, laidGable } from "./shelter.js";

/** Places by connection, in inches or millimetres: hole, edge, end, apart, least width; and whether they fit. */
function places(shape: Partial<GableShape> = {}, given: Given = {}, light: "screws" | "nails" = "screws") {
  const { sheet, groups, assumed, defaults, units, gable } = laidGable(shape, given);
  const exposureOf = () => ({ climate: "outdoors" as const, treated: false, tannin: false });
  const input = {
    groups,
    exposureOf,
    runs: { beams: 2, ridge: 1 },
    supportsApart: gable.rafterSpace,
    light,
    assumed,
    defaults,
  };
  const { lines, cautions } = layFasteners(sheet, input, units);
  const found = lines.map(({ name, placing }) => {
    const { hole, edge, end, apart, leastWidth, fits } = placing ?? {};
    const sizes = [hole, edge, end, apart, leastWidth].map((cell) => cell && sheet.in(cell, units.small).toNumber());
    return [name, placing ? [...sizes, fits] : undefined] as const;
  });
  return { cautions, at: Object.fromEntries(found) };
}

/** Connections of a whole structure with their places in inches. */
function placed(structure: object) {
  const basis = layBasis(new Sheet(new Map()), request({ structure }));
  const lines = layTakeoffs(basis).fasteners?.lines ?? [];
  const inches = (cell: Cell | undefined) => cell && basis.sheet.in(cell, "in").toNumber();
  return (wanted: string) => {
    const placing = lines.find(({ name }) => name === wanted)?.placing;
    if (!placing) throw new Error(`${wanted} has no placing`);
    const { hole, pilot, edge, end, boredEnd, endRoom, endFits, apart, leastWidth, fits } = placing;
    const [bored, thread, ...rest] = [hole, pilot, edge, end, boredEnd, endRoom, apart, leastWidth].map(inches);
    const [toEdge, toEnd, toBoredEnd, room, spaced, width] = rest;
    return {
      ...{ hole: bored, pilot: thread, edge: toEdge, end: toEnd, boredEnd: toBoredEnd, endRoom: room, endFits },
      ...{ apart: spaced, leastWidth: width, fits },
    };
  };
}

const floored = () => {
  const at = placed({ kind: "gable", span: "16 ft", length: "24 ft", floor: {} });
  const { hole, edge, end, apart, leastWidth, fits } = at("bearers.bearer-post");
  return { at: { "bearers.bearer-post": [hole, edge, end, apart, leastWidth, fits] } };
};

describe("where fasteners may stand", () => {
  // NDS 2018, 12.1.3.2: a hole up to 1/16 in larger. Tables 12.5.1A to D, softwood, full value, for D = 1/2 in: along the
  // grain edge 1.5 D, end 7 D, apart 4 D; across it the loaded edge 4 D, the other 1.5 D. (All from memory.)
  it("is said of bolts by their diameter", () => {
    const { at } = places();
    expect(at["posts.post-base"]).toEqual([0.5625, 0.75, 3.5, 2, 1.5, true]);
    expect(at["beams.splice"]).toEqual([0.5625, 0.75, 3.5, 2, 1.5, true]);
    // Pressed across the grain of a bearer: floor.
    expect(floored().at["bearers.bearer-post"]).toEqual([0.5625, 2, 3.5, 2, 2.75, true]);
  });

  // Two screws of 5/16 in from above through a halved tie stand side by side in its 4 in of thickness: 3 1/8 in.
  it("is said of the screws of a halved tie by its thickness", () => {
    expect(places().at["ties.lap"]?.slice(4)).toEqual([3.125, true]);
    expect(places({ groups: { ties: { section: "3 x 8 in" } } }).at["ties.lap"]?.slice(4)).toEqual([3.125, false]);
  });

  // NDS 12.1.4.2, softwood: the shank's hole as wide as the shank, the thread's 40 to 70 % of it.
  it("is said of lag screws with both their holes", () => {
    const { hole, pilot, boredEnd } = placed({ kind: "lean-to", span: "8 ft", length: "24 ft", highSide: "ledger" })(
      "ledger.ledger",
    );
    expect([hole, pilot, boredEnd]).toEqual([0.5, 22 / 64, undefined]); // 0.35 in, down to the next drill;
  });

  // NDS 12.1.6.1 (from memory): up to 75 % of the diameter, 90 % where the specific gravity is above 0.6. Black locust, 0.66 on
  // green volume (Wood Handbook, table 5-3), is 0.8 oven-dry. Screws of 5/16 in: 0.234 and 0.281 in, down to 1/64 in.
  it("is said of pilot holes by the wood that the thread bites in", () => {
    const pilot = (groups: object) =>
      placed({ kind: "gable", span: "16 ft", length: "24 ft", groups })("braces.brace").pilot;
    expect(pilot({ posts: { species: ["eastern-white-pine"] } })).toBe(15 / 64);
    expect(pilot({ posts: { species: ["black-locust"] } })).toBe(18 / 64);
    // Either may be used: no wider than the softer one allows.
    expect(pilot({ posts: { species: ["black-locust", "eastern-white-pine"] } })).toBe(15 / 64);
  });

  // NDS 12.1.4.2 (from memory): 60 to 75 % of a lag screw above 0.5, 65 to 85 % above 0.6. Of 1/2 in: 3/8 and 0.425 in.
  it("is said of lag screws by the ledger's wood", () => {
    const pilot = (species: string) =>
      placed({
        kind: "lean-to",
        span: "8 ft",
        length: "24 ft",
        highSide: "ledger",
        groups: { ledger: { species: [species] } },
      })("ledger.ledger").pilot;
    expect(pilot("loblolly-pine")).toBe(24 / 64);
    expect(pilot("white-oak")).toBe(27 / 64);
  });

  // Table C12.1.6.6: 15 d to the end, 10 d in a bored hole; half of a rafter of 2 in is what two purlins share it with.
  it("is said of the ends of purlins that meet over a rafter", () => {
    const at = placed({ kind: "gable", span: "16 ft", length: "24 ft" });
    expect(at("purlins.crossing")).toMatchObject({ end: 3.75, boredEnd: 2.5, endRoom: 1, endFits: false });
    const wide = placed({
      kind: "gable",
      span: "16 ft",
      length: "24 ft",
      groups: { rafters: { section: "6 x 6 in" } },
    });
    expect(wide("purlins.crossing")).toMatchObject({ endRoom: 3, endFits: true });
  });

  // Two screws of 5/16 in want 10 d = 3 1/8 in in bored holes; a tie flush with a plate of 4 in has its middle 2 in from the end.
  it("is said of the ends of ties that are flush with their plates", () => {
    const tied = (beams: string) =>
      placed({ kind: "gable", span: "16 ft", length: "24 ft", groups: { beams: { section: beams } } });
    expect(tied("4 x 8 in")("ties.lap")).toMatchObject({ boredEnd: 3.125, endRoom: 2, endFits: false });
    expect(tied("8 x 8 in")("ties.lap")).toMatchObject({ endRoom: 4, endFits: true });
  });

  it("is said of fascia that meets over a rafter's tail, of rails and bearers that meet over posts", () => {
    const at = placed({
      kind: "gable",
      span: "16 ft",
      length: "24 ft",
      floor: {},
      walls: { boards: "vertical", sides: [{ side: "near" }] },
    });
    expect(at("eave-fascia.face")).toMatchObject({ endRoom: 1, endFits: false });
    expect(at("wall-rails.ends")).toMatchObject({ boredEnd: 2.5, endRoom: 3, endFits: true });
    expect(at("bearers.bearer-post")).toMatchObject({ end: 3.5, endRoom: 3, endFits: false });
    // Nothing ends where a run is one piece, or where a base holds a post.
    expect(placed({ kind: "gable", span: "8 ft", length: "8 ft" })("eave-fascia.face")).toMatchObject({
      endRoom: undefined,
    });
    expect(at("posts.post-base")).toMatchObject({ endRoom: undefined, endFits: true });
  });

  // NDS commentary, table C12.1.6.6, not bored: edge 2.5 d, end 15 d, apart 15 d, rows 5 d. Two screws of 1/4 in: 2.5 + 5 + 2.5.
  it("is said of screws, side by side", () => {
    expect(places().at["purlins.crossing"]).toEqual([undefined, 0.625, 3.75, 3.75, 2.5, true]);
    // 20d nails of 0.192 in: ten diameters for two.
    expect(places({}, {}, "nails").at["purlins.crossing"]?.[4]).toBeCloseTo(1.92, 9);
  });

  it("is not said of what is driven aslant or through a connector", () => {
    const { at } = places();
    expect([at["rafters.rafter-plate"], at["rafters.rafter-ridge"]]).toEqual([undefined, undefined]);
  });

  // Eurocode 5, 10.4.3: a hole not more than 1 mm larger than its bolt.
  it("is metric where the structure is", () => {
    const metric: Partial<GableShape> = { span: "4.8 m", length: "7.2 m", slope: { rise: "100 mm", run: "300 mm" } };
    expect(places(metric, { system: "metric" }).at["posts.post-base"]).toEqual([13, 18, 84, 48, 36, true]);
  });

  it("is one in the middle of a slat, which two side by side would split", () => {
    const basis = layBasis(
      new Sheet(new Map()),
      request({ structure: { kind: "pergola", span: "10 ft", length: "14 ft", slatSpacing: "12 in" } }),
    );
    const found = layTakeoffs(basis).fasteners;
    const slats = found?.lines.find(({ name }) => name === "slats.crossing");
    expect(slats?.placing?.fits).toBe(true);
    expect(slats?.items.map(({ count }) => count.value.toFixed())).toEqual([slats?.sites.value.toFixed()]);
    expect(found?.cautions.map(({ code }) => code)).not.toContain("edge-distance");
  });

  it("is warned of where the pieces are too narrow", () => {
    expect(places().cautions.map(({ code }) => code)).not.toContain("edge-distance");
    const { at, cautions } = places({}, { overrides: { "fasteners.bolt.diameter": "1 in" } });
    // 3 in of width wanted along the grain: posts of 6 in hold it, beams of 8 in too.
    expect(at["posts.post-base"]?.slice(4)).toEqual([3, true]);
    expect(cautions.map(({ code }) => code)).not.toContain("edge-distance");
    const thin = places(
      { groups: { posts: { section: "2 x 2 in" } } },
      { overrides: { "fasteners.bolt.diameter": "1 in" } },
    );
    expect(thin.cautions).toContainEqual({ code: "edge-distance", lines: ["posts.post-base"] });
  });
});

describe("posts that can only be bought", () => {
  const taken = (logs: object[], overrides: object = {}) => {
    const body = {
      structure: { kind: "gable", span: "12 ft", length: "16 ft" },
      catalog: { demo: "orchard-yard" },
      ...(logs.length > 0 && { logs }),
      overrides,
    };
    const basis = layBasis(new Sheet(new Map(Object.entries(overrides) as [string, string][])), request(body));
    return { basis, takeoffs: layTakeoffs(basis) };
  };
  const base = ({ basis, takeoffs }: ReturnType<typeof taken>) => {
    const line = takeoffs.fasteners?.lines.find(({ kind }) => kind === "post-base");
    return [line?.thickness, line?.width].map((cell) => cell && basis.sheet.in(cell, "in").toNumber());
  };

  it("stand in bases of the size that is sold; others in bases of the size that was asked for", () => {
    // A treated 6 × 6 from the yard measures 5 1/2 in (PS 20).
    expect(base(taken([]))).toEqual([5.5, 5.5]);
    const pine = { name: "pine", species: "eastern-white-pine", length: "12 ft", smallDiameter: "14 in", count: 3 };
    expect(base(taken([pine]))).toEqual([6, 6]);
  });

  it("have rafters in hangers of the size that is sold", () => {
    const hung = (source: string) => {
      const structure = {
        kind: "lean-to",
        span: "8 ft",
        length: "12 ft",
        highSide: "ledger",
        groups: { rafters: { source } },
      };
      const pine = { name: "pine", species: "eastern-white-pine", length: "12 ft", smallDiameter: "14 in", count: 3 };
      const basis = layBasis(
        new Sheet(new Map()),
        request({ structure, catalog: { demo: "orchard-yard" }, logs: [pine] }),
      );
      const line = layTakeoffs(basis).fasteners?.lines.find(({ name }) => name === "rafters.hanger");
      return [line?.thickness, line?.width].map((cell) => cell && basis.sheet.in(cell, "in").toNumber());
    };
    expect(hung("buy")).toEqual([1.5, 5.5]); // a nominal 2 × 6, dressed (PS 20)
    expect(hung("auto")).toEqual([2, 6]);
  });

  it("bring the caution of crowded joints to the answer, with their names", () => {
    const { basis, takeoffs } = taken([], {
      "fasteners.bolt.diameter": "1 in",
      "sections.beams.width": "2 in",
    });
    const found = cautionsOf(basis, takeoffs, false).find(({ code }) => code === "edge-distance");
    expect(found?.text).toContain("Plate beams, at the splices");
  });
});
