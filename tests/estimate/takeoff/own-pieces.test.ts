/** Hardware and footings of pieces that the user lists, alone or beside a frame. */
import { describe, expect, it } from "vitest";
import { layBasis } from "../../../src/estimate/basis.js";
import { FaultError } from "../../../src/estimate/faults.js";
import { Sheet } from "../../../src/estimate/sheet/sheet.js";
import { structureNotices } from "../../../src/estimate/structure-notices.js";
import { layTakeoffs } from "../../../src/estimate/takeoffs.js";
import { request } from "../../helpers/estimating.js";

function takenOff(structure: object) {
  const basis = layBasis(new Sheet(), request({ structure }));
  const takeoffs = layTakeoffs(basis);
  const { fasteners, footings } = takeoffs;
  const sites = Object.fromEntries(fasteners?.lines.map(({ name, sites }) => [name, sites.value.toNumber()]) ?? []);
  const bought = new Map(takeoffs.needs.map(({ label, quantity }) => [label, quantity.value.toNumber()]));
  const notices = structureNotices(basis, takeoffs).map(({ text }) => text);
  return { sites, bought, notices, holes: footings?.holes.value.toNumber(), fasteners, footings };
}

const list = (pieces: readonly object[], more: object = {}) => takenOff({ kind: "pieces", pieces, ...more });

/** Faults of a structure, each with its place. */
function faultsOf(structure: object) {
  try {
    takenOff(structure);
  } catch (error) {
    if (error instanceof FaultError) return error.faults.map(({ code, at }) => [code, at]);
    throw error;
  }
  throw new Error("nothing was refused");
}

const POSTS = { name: "posts", role: "post", count: 6, section: "6 x 6 in", length: "9 ft" };
const SLATS = { name: "slats", role: "board", count: 20, section: "1 x 4 in", length: "8 ft" };
const BEAMS = { name: "beams", role: "beam", count: 6, section: "4 x 8 in", length: "12 ft" };
const FOOTINGS = { frostDepth: "36 in", diameter: "12 in" };
const SHELTER = { kind: "gable", span: "16 ft", length: "24 ft" }; // eight posts

describe("posts of a list that are joined by nothing", () => {
  it("take no metal, and a base each where they are given footings", () => {
    expect(list([{ ...POSTS, joint: "none" }]).sites).toEqual({});
    expect(list([{ ...POSTS, joint: "none" }]).notices).toEqual([]);
    expect(list([{ ...POSTS, joint: "none" }], { footings: FOOTINGS }).sites).toEqual({ "posts.post-base": 6 });
    expect(list([{ ...POSTS, joint: "post-top" }]).sites).toEqual({ "posts.post-base": 6, "posts.post-top": 6 });
  });
});

describe("footings of a list of pieces", () => {
  it("are as those of a frame with as many posts", () => {
    const frame = takenOff({ ...SHELTER, footings: FOOTINGS });
    const own = list([{ ...POSTS, count: 8 }], { footings: FOOTINGS });
    expect([own.holes, frame.holes]).toEqual([8, 8]);
    for (const label of ["Concrete mix, bags", "Form tubes", "Gravel", "Post base 6 × 6 in, coated or better"]) {
      expect(own.bought.get(label)).toBeGreaterThan(0);
      expect(own.bought.get(label)).toBe(frame.bought.get(label));
    }
    expect(own.sites).toEqual({ "posts.post-base": 8 }); // what their tops carry nobody said
  });

  it("are one below everything that is joined as a post, or as many as the request says", () => {
    const legs = { name: "legs", count: 4, section: "4 x 4 in", length: "5 ft", joint: "post-top" };
    expect(list([POSTS, legs, SLATS], { footings: FOOTINGS }).holes).toBe(10);
    expect(list([POSTS, SLATS], { footings: { ...FOOTINGS, holes: 4 } }).holes).toBe(4);
    expect(list([SLATS], { footings: { ...FOOTINGS, holes: 3 } }).bought.get("Concrete mix, bags")).toBeGreaterThan(0);
  });

  it("are refused where nothing stands on them, or where a post is wider", () => {
    const nothing = { kind: "pieces", pieces: [SLATS], footings: FOOTINGS };
    expect(faultsOf(nothing)).toEqual([["cannot-build", "/structure/footings"]]);
    const narrow = { kind: "pieces", pieces: [POSTS], footings: { ...FOOTINGS, diameter: "5 in" } };
    expect(faultsOf(narrow)).toEqual([["cannot-build", "/structure/footings/diameter"]]);
  });
});

describe("footings beside a frame", () => {
  it("are dug below posts of one's own, too, and not below king posts", () => {
    expect(takenOff({ ...SHELTER, footings: FOOTINGS, extraPieces: [{ ...POSTS, name: "porch-posts" }] }).holes).toBe(
      14,
    );
    expect(takenOff({ ...SHELTER, ridge: "beam", footings: FOOTINGS }).holes).toBe(8);
  });
});

describe("precast footings", () => {
  it("take no rod of a poured one, and say so", () => {
    const rods = (kind: "poured" | "precast") => {
      const { bought, notices } = list([POSTS], { footings: { ...FOOTINGS, kind } });
      return [[...bought.keys()].some((label) => label.startsWith("Threaded rod")), notices.length];
    };
    expect([rods("poured"), rods("precast")]).toEqual([
      [true, 0],
      [false, 1],
    ]);
  });
});

describe("joints of pieces of one's own", () => {
  it("lay hardware where the request says them, in a list as beside a frame", () => {
    const crossed = { ...SLATS, joint: "crossing", crossings: 5 };
    // 20 slats over 5 supports, two screws each; 5 % spare.
    const { sites, bought } = list([crossed]);
    expect(sites).toEqual({ "slats.crossing": 100 });
    expect([...bought].find(([label]) => label.startsWith("Exterior wood screw"))?.[1]).toBe(210);
    expect(takenOff({ ...SHELTER, extraPieces: [crossed] }).sites).toMatchObject({ "slats.crossing": 100 });
  });

  it("protect it as the exposure of the group asks, else of the structure", () => {
    const classOf = (structure?: string, group?: string) => {
      const slats = { ...SLATS, joint: "crossing", crossings: 2, ...(group && { exposure: group }) };
      return list([slats], structure ? { exposure: structure } : {}).fasteners?.lines[0]?.items[0]?.corrosion;
    };
    expect([classOf(), classOf("dry"), classOf("dry", "salt"), classOf("salt")]).toEqual([
      "coated",
      "plain",
      "stainless",
      "stainless",
    ]);
  });

  it("count splices by the runs: six beams in two runs have four, each for itself none", () => {
    expect(list([{ ...BEAMS, joint: "splice", runs: 2 }]).sites).toEqual({ "beams.splice": 4 });
    expect(list([{ ...BEAMS, joint: "splice", runs: 6 }]).sites).toEqual({});
    const header = { ...BEAMS, name: "header", count: 1 };
    expect(Object.keys(takenOff({ ...SHELTER, extraPieces: [header] }).sites)).not.toContain("header.splice");
  });

  it("bolt bearers to the posts that they cross", () => {
    const bearers = { name: "bearers", count: 2, section: "2 x 8 in", length: "10 ft", joint: "bearer", crossings: 3 };
    expect(list([bearers, POSTS]).sites).toEqual({ "bearers.bearer-post": 6 });
  });

  it("are refused where nobody can count them, naming the joint", () => {
    const pieces = [
      { ...SLATS, joint: "crossing" },
      { ...BEAMS, joint: "splice" },
      { ...BEAMS, name: "bearers", joint: "bearer" },
    ];
    const at = (i: number) => ["missing-field", `/structure/pieces/${i}/joint`];
    expect(faultsOf({ kind: "pieces", pieces })).toEqual([at(0), at(1), at(2)]);
    const derived = { ...SHELTER, groups: { posts: { joint: "bearer" } } };
    expect(faultsOf(derived)).toEqual([["missing-field", "/structure/groups/posts/joint"]]);
    const many = { kind: "pieces", pieces: [{ ...BEAMS, joint: "splice", runs: 7 }] };
    expect(faultsOf(many)).toEqual([["cannot-build", "/structure/pieces/0/runs"]]);
  });

  it("are missed in words where nothing is said", () => {
    const { fasteners, notices } = list([SLATS, { ...BEAMS, joint: "none" }]);
    expect([fasteners?.lines, notices.length]).toEqual([[], 1]);
    expect(notices[0]).toMatch(/^slats: no bolts, screws or nails/);
    expect(list([SLATS]).fasteners).toBeUndefined();
  });
});
